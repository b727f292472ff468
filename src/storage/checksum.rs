//! CRC-32 as in ISO 3309 and ITU-T V.42, bit by bit: a link is short.

/// Checksum of `bytes`.
pub(super) fn crc32(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| {
            (crc >> 1) ^ (0xEDB8_8320 & (crc & 1).wrapping_neg())
        })
    })
}

#[cfg(test)]
mod tests {
    /// Source: the check value that catalogs of CRCs print for CRC-32/ISO-HDLC, from memory.
    #[test]
    fn check_value() {
        assert_eq!(super::crc32(b"123456789"), 0xCBF4_3926);
    }
}
