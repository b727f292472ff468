//! The texts of files.

pub(super) use crate::entry::text::{hides, plain};
use crate::entry::text::{past, replaced};

/// The text of a file, whatever a spreadsheet wrote it in: UTF-8, UTF-16 with its byte order mark, else Windows-1252.
/// Every line ends in LF.
///
/// ```
/// assert_eq!(torpor::storage::text::of_file(b"25 N\xb7m\r\n"), "25 N·m\n");
/// ```
pub fn of_file(bytes: &[u8]) -> String {
    let text = match bytes {
        [0xff, 0xfe, rest @ ..] => utf16(rest, u16::from_le_bytes),
        [0xfe, 0xff, rest @ ..] => utf16(rest, u16::from_be_bytes),
        _ => match std::str::from_utf8(bytes) {
            Ok(text) => text.to_owned(),
            Err(_) => bytes.iter().map(|it| windows_1252(*it)).collect(),
        },
    };
    let text = past(&text, |it| it == '\u{feff}');
    replaced(&replaced(text, "\r\n", "\n"), "\r", "\n")
}

/// As [`of_file`], but what is no UTF-8 is taken byte by byte: a single bent one bends no other text.
///
/// ```
/// assert_eq!(torpor::storage::text::of_backup("25 N·m, \u{fe}".as_bytes()), "25 N·m, þ");
/// assert_eq!(torpor::storage::text::of_backup(b"18 \xff 25 N\xc2\xb7m"), "18 ÿ 25 N·m");
/// ```
pub fn of_backup(bytes: &[u8]) -> String {
    let (mut text, mut rest) = (String::new(), bytes);
    while let (Err(why), false) = (std::str::from_utf8(rest), matches!(bytes, [0xfe | 0xff, ..])) {
        let (good, bad) = rest.split_at(why.valid_up_to());
        text.push_str(std::str::from_utf8(good).unwrap_or_default());
        let Some((bad, behind)) = bad.split_first() else { break };
        text.push(windows_1252(*bad));
        rest = behind;
    }
    text.push_str(&of_file(rest));
    text
}

fn utf16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> String {
    let units = bytes.as_chunks().0.iter().map(|it| unit(*it));
    char::decode_utf16(units).map(|it| it.unwrap_or(char::REPLACEMENT_CHARACTER)).collect()
}

/// As the WHATWG Encoding Standard has it, index windows-1252: Latin-1 but for these.
fn windows_1252(byte: u8) -> char {
    const OTHER: [char; 32] = [
        '€', '\u{81}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{8d}', 'Ž',
        '\u{8f}', '\u{90}', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{9d}',
        'ž', 'Ÿ',
    ];
    match byte {
        0x80..=0x9f => OTHER[usize::from(byte - 0x80)],
        _ => char::from(byte),
    }
}
