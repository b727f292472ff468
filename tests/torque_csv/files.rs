//! Files as spreadsheets write them, held against encoding_rs, the Encoding Standard's reader in a browser.

use encoding_rs::{Encoding, UTF_8, UTF_16BE, UTF_16LE, WINDOWS_1252};
use proptest::prelude::*;
use torpor::storage::text::of_file;

const LIST: &str = "Part;Torque (N·m)\nAxle nut – “left”;60–65\n";

fn written(encoding: &'static Encoding, text: &str) -> Vec<u8> {
    // Browsers write no UTF-16, so the crate does not either.
    if encoding == UTF_16LE || encoding == UTF_16BE {
        let bytes =
            |it: u16| if encoding == UTF_16LE { it.to_le_bytes() } else { it.to_be_bytes() };
        return std::iter::once(0xfeff).chain(text.encode_utf16()).flat_map(bytes).collect();
    }
    encoding.encode(text).0.into_owned()
}

#[test]
fn a_file_is_read_in_the_encodings_of_spreadsheets() {
    for encoding in [UTF_8, UTF_16LE, UTF_16BE, WINDOWS_1252] {
        let bytes = written(encoding, LIST);
        assert_eq!(of_file(&bytes), LIST, "{}", encoding.name());
    }
    assert_eq!(of_file("\u{feff}a;b\r\nc;d\re".as_bytes()), "a;b\nc;d\ne");
    assert_eq!(of_file(b""), "");
}

/// Every byte of the old encoding means what the standard says.
#[test]
fn windows_1252_is_that_of_the_encoding_standard() {
    for byte in 0x80..=0xff_u8 {
        // A byte that is no UTF-8 by itself, so that the old encoding is taken.
        let bytes = [b'a', byte, b' '];
        assert_eq!(of_file(&bytes), WINDOWS_1252.decode_without_bom_handling(&bytes).0);
    }
}

proptest! {
    /// Whatever the bytes are, they are read as the standard's reader has them.
    #[test]
    fn any_bytes(bytes in proptest::collection::vec(any::<u8>(), 0..40)) {
        let like = match bytes.get(..2) {
            Some([0xff, 0xfe]) => UTF_16LE,
            Some([0xfe, 0xff]) => UTF_16BE,
            _ if std::str::from_utf8(&bytes).is_ok() => UTF_8,
            _ => WINDOWS_1252,
        };
        let utf16 = like == UTF_16LE || like == UTF_16BE;
        prop_assume!(!utf16 || bytes.len() % 2 == 0);
        let lines = |text: &str| text.replace("\r\n", "\n").replace('\r', "\n");
        prop_assert_eq!(of_file(&bytes), lines(&like.decode_with_bom_removal(&bytes).0));
    }
}
