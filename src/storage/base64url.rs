//! Base64 with the URL alphabet, without padding (RFC 4648 §5).

const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Bytes as text.
pub(super) fn encoded(bytes: &[u8]) -> String {
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let group = (0..3)
            .fold(0u32, |group, at| group << 8 | u32::from(chunk.get(at).copied().unwrap_or(0)));
        for place in 0..=chunk.len() {
            out.push(char::from(ALPHABET[(group >> (18 - 6 * place)) as usize & 63]));
        }
    }
    out
}

/// Text as bytes; `None` where it holds any other character or cannot be so long.
pub(super) fn decoded(text: &str) -> Option<Vec<u8>> {
    let mut out = Vec::with_capacity(text.len() / 4 * 3 + 2);
    for chunk in text.as_bytes().chunks(4) {
        if chunk.len() == 1 {
            return None;
        }
        let mut group = 0u32;
        for place in 0..4 {
            let value = match chunk.get(place) {
                Some(letter) => u32::try_from(ALPHABET.iter().position(|it| it == letter)?).ok()?,
                None => 0,
            };
            group = group << 6 | value;
        }
        let bytes = group.to_be_bytes();
        out.extend_from_slice(&bytes[1..chunk.len()]);
    }
    Some(out)
}
