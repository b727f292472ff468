//! A zip file as PKWARE's APPNOTE.TXT describes it, as much of it as is asked here: files as they are, not made smaller, since
//! what a compressor gives differs from one version of it to the next, and the same page must give the same zip everywhere.

/// 1980-01-01, the first day that a zip knows; time of day 0.
const DAY: u16 = 1 << 5 | 1;
/// Version 1.0 is needed: nothing but folders and stored files.
const NEEDED: u16 = 10;
/// Made as on Unix by version 2.0, so that the permissions below are read.
const MADE: u16 = 3 << 8 | 20;
/// A plain file that all may read and its owner may write.
const MODE: u32 = 0o100_644 << 16;

/// The zip of files with their names, in this order; none where they are more or larger than the plain form holds.
pub fn zip(files: &[(String, Vec<u8>)]) -> Option<Vec<u8>> {
    let mut all = Vec::new();
    let mut directory = Vec::new();
    for (name, bytes) in files {
        let offset = u32::try_from(all.len()).ok()?;
        let about = about(name, bytes)?;
        all.extend(b"PK\x03\x04");
        all.extend(&about);
        all.extend(name.as_bytes());
        all.extend(bytes);

        directory.extend(b"PK\x01\x02");
        directory.extend(MADE.to_le_bytes());
        directory.extend(&about);
        // No remark, the first disk, nothing said of what is inside.
        directory.extend([0; 6]);
        directory.extend(MODE.to_le_bytes());
        directory.extend(offset.to_le_bytes());
        directory.extend(name.as_bytes());
    }
    let count = u16::try_from(files.len()).ok()?.to_le_bytes();
    let (from, size) = (u32::try_from(all.len()).ok()?, u32::try_from(directory.len()).ok()?);
    all.extend(directory);
    all.extend(b"PK\x05\x06");
    // One disk.
    all.extend([0; 4]);
    all.extend([count, count].concat());
    all.extend([size.to_le_bytes(), from.to_le_bytes()].concat());
    all.extend([0; 2]);
    Some(all)
}

/// What is said of a file before it and again in the directory.
fn about(name: &str, bytes: &[u8]) -> Option<Vec<u8>> {
    let size = u32::try_from(bytes.len()).ok()?.to_le_bytes();
    let mut about = NEEDED.to_le_bytes().to_vec();
    // No flags, stored, midnight.
    about.extend([0; 6]);
    about.extend(DAY.to_le_bytes());
    about.extend(crc32(bytes).to_le_bytes());
    about.extend([size, size].concat());
    about.extend(u16::try_from(name.len()).ok()?.to_le_bytes());
    // Nothing extra.
    about.extend([0; 2]);
    Some(about)
}

/// CRC-32 of ISO-HDLC, bit by bit: there is less than a megabyte of it.
fn crc32(bytes: &[u8]) -> u32 {
    let bit = |crc: u32| if crc & 1 == 1 { crc >> 1 ^ 0xedb8_8320 } else { crc >> 1 };
    !bytes.iter().fold(u32::MAX, |crc, it| (0..8).fold(crc ^ u32::from(*it), |crc, _| bit(crc)))
}
