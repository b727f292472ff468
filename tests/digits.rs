//! Numbers as digits, against the standard library's own printing and reading of floats.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use proptest::prelude::*;
use torpor::digits::{exact, fixed, plain, shortest};

/// Whether `value` lies half way between two numbers of so many places, as near as doubles tell. Left out of the
/// comparison: the standard library rounds the exact binary value (0.5 to 0, 1.45, which is a hair less, to 1.4), these
/// digits the decimal that was meant (to 1 and 1.5). Both are neighbors of the value, which is checked all the same.
fn half_way(value: f64, places: i32) -> bool {
    let units = value.abs() * 10f64.powi(places);
    (units.fract() - 0.5).abs() <= 2.0 * f64::EPSILON * units.max(1.0)
}

/// Doubles of every size that a page shows, and decimals as people type them.
fn shown() -> impl Strategy<Value = f64> {
    prop_oneof![
        -1e3..1e3f64,
        -1e9..1e9f64,
        (-1.0..1.0f64, -12..4i32).prop_map(|(it, power)| it * 10f64.powi(power)),
        (-999_999_999..999_999_999i64, 0..9i32)
            .prop_map(|(it, places)| it as f64 / 10f64.powi(places)),
        (-100_000..100_000i64).prop_map(|it| it as f64),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 4096, ..ProptestConfig::default() })]

    /// Source: the standard library's `{:.p$}`, up to 2^53 units of the last place.
    #[test]
    fn as_the_standard_library_prints(value in shown(), places in 0..13usize) {
        let units = value.abs() * 10f64.powi(places as i32);
        prop_assume!(units < 9e15);
        let ours = plain(value, places);
        if half_way(value, places as i32) {
            let off = (ours.parse::<f64>().unwrap() - value).abs();
            prop_assert!(off <= 0.5000001 / 10f64.powi(places as i32) + value.abs() * 1e-15, "{ours}");
        } else {
            let theirs = format!("{value:.places$}");
            // The standard library keeps the sign of what rounds to nothing.
            let nothing = theirs.chars().all(|it| "-0.".contains(it));
            prop_assert_eq!(&ours, if nothing { theirs.trim_start_matches('-') } else { &theirs });
        }
        // For people the same with a real minus sign (U+2212).
        prop_assert_eq!(fixed(value, places), ours.replace('-', "\u{2212}"));
    }

    /// Any double at all, any number of places: digits, no panic, and the number itself to fifteen digits or so.
    #[test]
    fn every_double_there_is(bits in any::<u64>(), places in 0..400usize) {
        let value = f64::from_bits(bits);
        let text = plain(value, places);
        if value.is_finite() {
            let digits = text.strip_prefix('-').unwrap_or(&text);
            let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
            prop_assert_eq!(part.len(), places);
            prop_assert!(whole == "0" || !whole.starts_with('0'), "{}", whole);
            prop_assert!(digits.chars().all(|it| it.is_ascii_digit() || it == '.'), "{}", digits);
            let read: f64 = text.parse().unwrap();
            // A half of the last place shown, of which there are twenty-two at most.
            let half = 0.51 * 10f64.powi(-(places.min(22) as i32));
            // Above 10^18 by one division a digit.
            prop_assert!((read - value).abs() <= half + value.abs() * 1e-13, "{} for {:e}", text, value);
        }
        prop_assert!(!shortest(value).is_empty() && !exact(value).is_empty());
    }

    /// An entry's number of up to six digits comes back as it was typed.
    #[test]
    fn shortest_is_as_typed(digits in 1..1_000_000i64, places in 0..6usize, negative: bool) {
        let sign = if negative { "-" } else { "" };
        let whole = digits / 10i64.pow(places as u32);
        let part = digits % 10i64.pow(places as u32);
        let typed = if part == 0 { format!("{sign}{whole}") } else {
            let part = format!("{part:0>places$}");
            format!("{sign}{whole}.{}", part.trim_end_matches('0'))
        };
        let value: f64 = typed.parse().unwrap();
        prop_assert_eq!(shortest(value), typed.replace('-', "\u{2212}"));
        prop_assert_eq!(exact(value), typed);
    }

    /// Fifteen digits or twelve places: a program that reads it has the number.
    #[test]
    fn exact_comes_back(value in shown()) {
        let read: f64 = exact(value).parse().unwrap();
        prop_assert!((read - value).abs() <= 5.3e-13f64.max(value.abs() * 5.5e-15), "{} for {:e}", exact(value), value);
        prop_assert!(exact(value).chars().filter(char::is_ascii_digit).count() <= 16);
    }
}

/// Source: each by hand.
#[test]
fn by_hand() {
    for (value, places, program, people) in [
        (0.0, 0, "0", "0"),
        (-0.0, 2, "0.00", "0.00"),
        (-0.004, 2, "0.00", "0.00"),
        (-0.4, 0, "0", "0"),
        (-0.006, 2, "-0.01", "\u{2212}0.01"),
        (-24.0, 0, "-24", "\u{2212}24"),
        (9.996, 2, "10.00", "10.00"),
        (0.95, 0, "1", "1"),
        (1e15, 2, "1000000000000000.00", "1000000000000000.00"),
        (1e19, 0, "10000000000000000000", "10000000000000000000"),
        (2e19, 1, "20000000000000000000.0", "20000000000000000000.0"),
        (-1e22, 0, "-10000000000000000000000", "\u{2212}10000000000000000000000"),
        (1.5, 20, "1.50000000000000000000", "1.50000000000000000000"),
        (0.0, 30, "0.000000000000000000000000000000", "0.000000000000000000000000000000"),
        (f64::NAN, 2, "NaN", "NaN"),
        (f64::INFINITY, 2, "Infinity", "Infinity"),
        (f64::NEG_INFINITY, 0, "-Infinity", "\u{2212}Infinity"),
    ] {
        assert_eq!(plain(value, places), program);
        assert_eq!(fixed(value, places), people);
    }
    assert!(plain(f64::MAX, 1000).starts_with("17976931348623"));
    assert_eq!(plain(f64::MAX, 0).len(), 309);
    for (value, short, long) in [
        (0.0, "0", "0"),
        (-0.0, "0", "0"),
        (25.0, "25", "25"),
        (100.0, "100", "100"),
        (3.785411784, "3.78541", "3.785411784"),
        (1.0 / 3.0, "0.333333", "0.333333333333"),
        (-2.0 / 3.0, "\u{2212}0.666667", "-0.666666666667"),
        (1_234_567.5, "1234568", "1234567.5"),
        (1e-13, "0", "0"),
        (f64::MIN_POSITIVE, "0", "0"),
        (f64::NAN, "NaN", "NaN"),
        (f64::INFINITY, "Infinity", "Infinity"),
        (f64::NEG_INFINITY, "\u{2212}Infinity", "-Infinity"),
    ] {
        assert_eq!((shortest(value).as_str(), exact(value).as_str()), (short, long));
    }
}
