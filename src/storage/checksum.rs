//! CRC-32 as in ISO 3309 and ITU-T V.42, half a byte at a time.

/// What four bits make of the sum.
const STEPS: [u32; 16] = {
    let mut steps = [0; 16];
    let mut at = 0;
    while at < 16 {
        let mut step = at as u32;
        let mut bit = 0;
        while bit < 4 {
            step = (step >> 1) ^ (0xEDB8_8320 & (step & 1).wrapping_neg());
            bit += 1;
        }
        steps[at] = step;
        at += 1;
    }
    steps
};

/// Checksum of `bytes`.
pub(super) fn crc32(bytes: &[u8]) -> u32 {
    let half = |sum: u32| (sum >> 4) ^ STEPS[sum as usize & 15];
    !bytes.iter().fold(u32::MAX, |sum, byte| half(half(sum ^ u32::from(*byte))))
}

#[cfg(test)]
mod tests {
    /// Source: the check value that catalogs of CRCs print for CRC-32/ISO-HDLC, from memory.
    #[test]
    fn check_value() {
        assert_eq!(super::crc32(b"123456789"), 0xCBF4_3926);
    }
}
