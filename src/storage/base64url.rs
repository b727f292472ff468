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

/// Text as bytes; `None` where it holds any other character, cannot be so long, or has bits set that none needs: one
/// text for the same bytes.
pub(super) fn decoded(text: &str) -> Option<Vec<u8>> {
    let mut out = Vec::with_capacity(text.len() / 4 * 3 + 2);
    for chunk in text.as_bytes().chunks(4) {
        let mut group = 0u32;
        for place in 0..4 {
            group = group << 6 | chunk.get(place).map_or(Some(0), |it| value(*it))?;
        }
        let [_, bytes @ ..] = group.to_be_bytes();
        let (taken, spare) = bytes.split_at(chunk.len() - 1);
        if taken.is_empty() || spare.iter().any(|it| *it != 0) {
            return None;
        }
        out.extend_from_slice(taken);
    }
    Some(out)
}

/// What a letter of the alphabet stands for.
fn value(letter: u8) -> Option<u32> {
    Some(u32::from(match letter {
        b'A'..=b'Z' => letter - b'A',
        b'a'..=b'z' => letter - b'a' + 26,
        b'0'..=b'9' => letter - b'0' + 52,
        b'-' => 62,
        b'_' => 63,
        _ => return None,
    }))
}
