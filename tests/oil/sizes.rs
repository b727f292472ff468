//! Bottles of several sizes.

use super::*;
use torpor::oil::{MOST_SIZES, Purchase};

fn bought(needed: f64, sizes: &[f64], shelf: f64) -> [Purchase; 2] {
    let sizes: Vec<Volume> = sizes.iter().copied().map(ml).collect();
    oil::purchases(ml(needed), &sizes, ml(shelf)).unwrap()
}

/// By hand: 3.1 L of bottles of 1 and 4 L: one of 4 L leaves 900, and so do four of 1 L; with half liters 3 + 0.5 leave
/// 400. 3.1 L less 0.35 on the shelf are 2.75: 0.5 · 2 + 1 · 2 leave 250, as do three of 1 L, which are fewer.
#[test]
fn least_left_and_fewest() {
    type Case<'a> = (f64, &'a [f64], f64, &'a [u32], f64, &'a [u32], f64);
    let cases: [Case<'_>; 7] = [
        (3100.0, &[1000.0, 4000.0], 0.0, &[0, 1], 900.0, &[0, 1], 900.0),
        (3100.0, &[1000.0, 500.0, 4000.0], 0.0, &[3, 1, 0], 400.0, &[0, 0, 1], 900.0),
        (3100.0, &[500.0, 1000.0], 350.0, &[0, 3], 250.0, &[0, 3], 250.0),
        (3000.0, &[1000.0, 4000.0], 3000.0, &[0, 0], 0.0, &[0, 0], 0.0),
        (3000.0, &[1000.0, 4000.0], 3200.0, &[0, 0], 200.0, &[0, 0], 200.0),
        (2600.0, &[1000.0, 600.0], 0.0, &[2, 1], 0.0, &[2, 1], 0.0),
        (5000.0, &[1000.0, 4000.0, 250e3], 0.0, &[1, 1, 0], 0.0, &[0, 0, 1], 245e3),
    ];
    for (needed, sizes, shelf, least, left, fewest, left_then) in cases {
        let [one, other] = bought(needed, sizes, shelf);
        formula::is_whole(&one.left_over);
        let what = format!("{needed} of {sizes:?}");
        assert_eq!(one.counts, least, "{what}");
        close(one.left_over.value, left, 1e-6, &what);
        assert_eq!(other.counts, fewest, "{what}, fewest");
        close(other.left_over.value, left_then, 1e-6, &what);
        assert_eq!(other.bottles(), fewest.iter().sum::<u32>());
    }
}

/// Source: a US quart is 946.352946 mL (NIST Handbook 44 Appendix C); a quart bottle says 946 mL.
#[test]
fn quarts_do_not_trip_over_rounding() {
    for quart in [of(&units::US_QT, 1.0), ml(946.0)] {
        let sizes = [quart, of(&units::US_QT, 5.0)];
        let [least, fewest] = oil::purchases(of(&units::US_GAL, 1.0), &sizes, ml(0.0)).unwrap();
        assert_eq!(least.counts, [4, 0]);
        assert_eq!(fewest.counts, [0, 1]);
    }
}

#[test]
fn sizes_that_make_no_sense_are_refused() {
    let many: Vec<Volume> = (1..=MOST_SIZES + 1).map(|it| ml(it as f64 * 100.0)).collect();
    for (got, words) in [
        (oil::purchases(ml(0.0), &[ml(1.0)], ml(0.0)).err(), "oil needed has to be more than 0"),
        (oil::purchases(ml(1.0), &[], ml(0.0)).err(), "bottle size has to be more than 0"),
        (
            oil::purchases(ml(1.0), &[ml(1.0), ml(-1.0)], ml(0.0)).err(),
            "bottle size has to be more than 0",
        ),
        (
            oil::purchases(ml(1.0), &many, ml(0.0)).err(),
            "at most eight sizes of bottles are compared",
        ),
        (
            oil::purchases(ml(1.0), &[ml(1.0)], ml(-1.0)).err(),
            "oil on the shelf has to be 0 or more",
        ),
    ] {
        assert_eq!(got.map(|it| it.to_string()).as_deref(), Some(words));
    }
}

proptest! {
    /// Against every combination of three sizes tried one after another. Half milliliters are forgiven in each bottle, so
    /// two that are as near as that may stand for each other.
    #[test]
    fn no_combination_is_better(
        needed in 200u32..5000, shelf in 0u32..1000,
        one in 200u32..1200, two in 200u32..2500, three in 500u32..5000,
    ) {
        let sizes = [one, two, three].map(f64::from);
        let [least, fewest] = bought(needed.into(), &sizes, shelf.into());
        let (mut best, mut few) = (f64::INFINITY, u32::MAX);
        for i in 0..=needed / one + 1 {
            for j in 0..=needed / two + 1 {
                for k in 0..=needed / three + 1 {
                    let left = f64::from(shelf + i * one + j * two + k * three) - f64::from(needed);
                    if left >= 0.0 {
                        best = best.min(left);
                        few = few.min(i + j + k);
                    }
                }
            }
        }
        let slack = 0.5 * f64::from(least.bottles()) + 0.5;
        let left = least.left_over.value.get::<milliliter>();
        prop_assert!(left <= best + slack, "{left} left, {best} would do");
        prop_assert!(fewest.bottles() <= few);
        for it in [&least, &fewest] {
            let sum: f64 = it.counts.iter().zip(sizes).map(|(n, size)| f64::from(*n) * size).sum();
            let short = f64::from(needed) - f64::from(shelf) - sum;
            prop_assert!(short <= 0.5 + 0.5 * f64::from(it.bottles()), "{short} short");
        }
        prop_assert!(fewest.bottles() <= least.bottles());
    }

    /// One size among several is the same as one size alone.
    #[test]
    fn one_size_as_before(needed in 100.0..10_000.0, size in 100.0..5_000.0, shelf in 0.0..12_000.0) {
        let alone = oil::bottles(ml(needed), ml(size), ml(shelf)).unwrap();
        let [least, _] = bought(needed, &[size], shelf);
        // Whole half milliliters against fractions of them: a bottle more or less only on the edge.
        let count = f64::from(least.bottles());
        let edge = (needed - shelf - 0.5) / (size + 0.5);
        let on_edge = (edge - edge.round()).abs() * size < 1.0 + 0.5 * edge.abs();
        prop_assert!(count == alone.to_buy.value || on_edge);
    }
}
