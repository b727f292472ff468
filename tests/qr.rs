//! QR codes: the same modules as another encoder's, read by another reader, as much room as the standard prints, and the mask
//! that the standard's own rules like best.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use proptest::prelude::*;
use qrcodegen::{Mask, QrCode, QrCodeEcc, QrSegment, Version};
use torpor::qr::{QUIET, Qr};

/// The same code by the other encoder, with a mask.
fn other(text: &[u8], qr: &Qr, mask: usize) -> QrCode {
    let version = Version::new(((qr.side - 17) / 4) as u8);
    let segments = [QrSegment::make_bytes(text)];
    let mask = Some(Mask::new(mask as u8));
    QrCode::encode_segments_advanced(&segments, QrCodeEcc::Medium, version, version, mask, false)
        .unwrap()
}

fn modules(of: &QrCode) -> Vec<Vec<bool>> {
    (0..of.size()).map(|y| (0..of.size()).map(|x| of.get_module(x, y)).collect()).collect()
}

fn own(qr: &Qr) -> Vec<Vec<bool>> {
    (0..qr.side).map(|y| (0..qr.side).map(|x| qr.is_dark(x, y)).collect()).collect()
}

/// What a reader sees of the path that is drawn, three dots to a module.
fn read(qr: &Qr) -> String {
    const DOTS: usize = 3;
    let side = (qr.side + 2 * QUIET) * DOTS;
    let mut light = vec![255u8; side * side];
    for run in qr.path().split('M').skip(1) {
        let (place, run) = run.split_once('h').unwrap();
        let (x, y) = place.split_once(' ').unwrap();
        let (wide, back) = run.split_once("v1h-").unwrap();
        assert_eq!(back.trim_end_matches('z'), wide);
        let [x, y, wide] = [x, y, wide].map(|it| it.parse::<usize>().unwrap() * DOTS);
        for y in y..y + DOTS {
            light[y * side + x..][..wide].fill(0);
        }
    }
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| light[y * side + x]);
    let codes = image.detect_grids();
    assert_eq!(codes.len(), 1, "one code is seen");
    codes[0].decode().unwrap().1
}

/// A link of so many characters; no two alike.
fn link(length: usize) -> String {
    let letters = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
    let mut seed = length as u64 + 1;
    let mut letter = || {
        seed = seed.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
        char::from(letters[(seed >> 58) as usize])
    };
    (0..length).map(|_| letter()).collect()
}

/// ISO/IEC 18004:2015, table 7: bytes of versions 1 to 20 at level M.
#[rustfmt::skip]
const PRINTED: [usize; 20] =
    [14, 26, 42, 62, 84, 106, 122, 152, 180, 213, 251, 287, 331, 362, 412, 450, 504, 560, 624, 666];

#[test]
fn each_version_takes_what_the_standard_prints() {
    let mut before = 0;
    for (version, most) in (1..).zip(PRINTED) {
        for length in [before, before + 1, most] {
            let qr = Qr::of(link(length).as_bytes()).unwrap();
            // The empty text and the first past the version before are of this one.
            if length > before || length == 0 {
                assert_eq!(qr.side, 17 + 4 * version, "{length} bytes");
            }
        }
        before = most;
    }
    assert_eq!(Qr::of(link(667).as_bytes()), None);
}

#[test]
fn the_longest_link_has_a_code() {
    assert_eq!(PRINTED.last(), Some(&torpor::storage::link::MOST));
}

/// The standard's rules (7.8.3.1), looked at module by module.
fn penalty(modules: &[Vec<bool>]) -> usize {
    let side = modules.len();
    let turned: Vec<Vec<bool>> =
        (0..side).map(|x| modules.iter().map(|row| row[x]).collect()).collect();
    let mut points = 0;
    for row in modules.iter().chain(&turned) {
        let runs = row.chunk_by(|a, b| a == b);
        points += runs.map(<[bool]>::len).filter(|it| *it >= 5).map(|it| it - 2).sum::<usize>();
        // With the quiet zone on either side.
        let line: String = row.iter().map(|it| if *it { '1' } else { '0' }).collect();
        let line = format!("0000{line}0000");
        let finder = |from: usize| {
            line[from..].starts_with("10111010000") || line[from..].starts_with("00001011101")
        };
        points += 40 * (0..line.len()).filter(|it| finder(*it)).count();
    }
    for (one, next) in modules.iter().zip(&modules[1..]) {
        let same =
            |x: &usize| one[*x] == one[x + 1] && next[*x] == one[*x] && next[x + 1] == one[*x];
        points += 3 * (0..side - 1).filter(same).count();
    }
    let dark = modules.iter().flatten().filter(|it| **it).count() as f64;
    let percent = 100.0 * dark / (side * side) as f64;
    points + 10 * ((percent - 50.0).abs() / 5.0) as usize
}

#[test]
fn the_same_modules_as_another_encoder_has_and_the_mask_that_the_rules_like_best() {
    let mut masks = [false; 8];
    for length in (0..110).chain((110..660).step_by(43)).chain([13, 14, 15, 213, 214, 665, 666]) {
        let text = link(length).into_bytes();
        let qr = Qr::of(&text).unwrap();
        assert_eq!(own(&qr), modules(&other(&text, &qr, qr.mask)), "{length} bytes");
        let points: Vec<usize> =
            (0..8).map(|mask| penalty(&modules(&other(&text, &qr, mask)))).collect();
        assert_eq!(points[qr.mask], *points.iter().min().unwrap(), "{length} bytes: {points:?}");
        masks[qr.mask] = true;
    }
    assert_eq!(masks, [true; 8], "every mask was the best once");
}

#[test]
fn another_reader_reads_every_version() {
    for length in PRINTED {
        let text = format!("µ{}", link(length - 2));
        assert_eq!(read(&Qr::of(text.as_bytes()).unwrap()), text);
    }
}

#[test]
fn drawn_in_its_quiet_zone() {
    // By hand: a finder's first row of seven dark modules starts four from the corner.
    let qr = Qr::of(b"x").unwrap();
    assert!(qr.path().starts_with("M4 4h7v1h-7z"), "{}", qr.path());
    assert_eq!(QUIET, 4);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    #[test]
    fn any_bytes_are_as_another_encoder_has_them(text in prop::collection::vec(any::<u8>(), 0..=666)) {
        let qr = Qr::of(&text).unwrap();
        prop_assert_eq!(own(&qr), modules(&other(&text, &qr, qr.mask)));
    }

    #[test]
    fn any_text_is_read_back(text in "\\PC{0,166}") {
        let qr = Qr::of(text.as_bytes()).unwrap();
        prop_assert_eq!(read(&qr), text);
    }
}
