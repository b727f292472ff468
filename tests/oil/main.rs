//! Oil change, worked by hand.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "../formula/mod.rs"]
mod formula;
mod grade;
mod level;
mod sizes;

use proptest::prelude::*;
use torpor::{
    oil::{self, Fills, Job},
    units::{self, Unit},
};
use uom::si::{
    f64::{Ratio, Volume},
    ratio::percent,
    volume::{cubic_meter, milliliter},
};

fn ml(number: f64) -> Volume {
    Volume::new::<milliliter>(number)
}

fn of(unit: &Unit, number: f64) -> Volume {
    Volume::new::<cubic_meter>(unit.to_base(number))
}

/// Rows of a table of reference values.
fn rows(name: &str) -> Vec<csv::StringRecord> {
    let path = format!("{}/tests/reference/fluids/{name}", env!("CARGO_MANIFEST_DIR"));
    csv::Reader::from_path(path).unwrap().records().map(Result::unwrap).collect()
}

#[track_caller]
fn close(got: Volume, expected: f64, tolerance: f64, what: &str) {
    let got = got.get::<milliliter>();
    assert!((got - expected).abs() <= tolerance, "{what}: {got} mL, expected {expected} mL");
}

/// Source: oil_fill.csv, worked by hand from the definitions. Its first pour is a plain share of the fill, 0.9, and
/// 0.85 in the cold shed of O10; both are common practice, no source. Its figures are whole milliliters.
#[test]
fn oil_change_by_hand() {
    let rows = rows("oil_fill.csv");
    assert_eq!(rows.len(), 9);
    for row in rows {
        let known = |column: usize| row[column].parse::<f64>().ok();
        let number = |column: usize| known(column).unwrap();
        let case = &row[0];
        let [overhaul, drain, filter] = [1, 2, 3].map(|it| known(it).map(ml));
        let fills = Fills::new(drain, filter, overhaul);
        if !row[18].is_empty() {
            let words = "fill with filter has to be at least the fill without filter";
            assert_eq!(fills.map_err(|it| it.to_string()), Err(words.to_owned()), "{case}");
            continue;
        }
        let fills = fills.unwrap();
        let job = if &row[4] == "drain" { Job::DrainOnly } else { Job::WithFilter };
        let allowance = fills.allowance();
        assert_eq!(allowance.is_some(), known(5).is_some(), "{case}");
        if let Some(allowance) = allowance {
            formula::is_whole(&allowance);
            close(allowance.value, number(5), 1e-6, case);
        }
        let needed = fills.needed(job).unwrap();
        formula::is_whole(&needed);
        close(needed.value, number(7), 1e-6, case);
        let share = if case == "O10" { 85.0 } else { 90.0 };
        let first = oil::first_pour_share(needed.value, Ratio::new::<percent>(share)).unwrap();
        formula::is_whole(&first);
        close(first.value, number(8), 0.501, case);
        let rest = oil::top_up(needed.value, ml(number(8))).unwrap();
        formula::is_whole(&rest);
        close(rest.value, number(9), 0.501, case);
        let [bottles, _] = oil::purchases(needed.value, &[ml(number(10))], ml(number(11))).unwrap();
        formula::is_whole(&bottles.left_over);
        let to_buy = bottles.to_buy.unwrap();
        formula::is_whole(&to_buy);
        assert_eq!(to_buy.value, number(12), "{case}");
        close(bottles.left_over.value, number(13), 0.5, case);
    }
}

/// Source: by hand: half of 300 under 3550 is 3400, which is 150 over the low mark. Where the volume between the marks
/// is not known, 85 % (common practice, no source).
#[test]
fn first_pour_reaches_the_middle_between_the_marks() {
    let known = oil::first_pour(ml(3550.0), Some(ml(300.0))).unwrap();
    formula::is_whole(&known);
    close(known.value, 3400.0, 1e-9, "between the marks known");
    let unknown = oil::first_pour(ml(3550.0), None).unwrap();
    formula::is_whole(&unknown);
    close(unknown.value, 3017.5, 1e-9, "not known");
    assert_eq!(unknown.law.source, "common practice, no source");
    // All of it between the marks: the low mark is the empty engine, and half is still over it.
    close(oil::first_pour(ml(800.0), Some(ml(800.0))).unwrap().value, 400.0, 1e-9, "all");
}

/// A fill that is not known is never taken from another oil change.
#[test]
fn a_missing_fill_stays_missing() {
    let fills = Fills::new(Some(ml(2900.0)), None, None).unwrap();
    assert_eq!(fills.needed(Job::WithFilter), None);
    assert_eq!(fills.needed(Job::AfterOverhaul), None);
    assert_eq!(fills.allowance(), None);
    let overhaul = Fills::new(None, None, Some(ml(3600.0))).unwrap();
    close(overhaul.needed(Job::AfterOverhaul).unwrap().value, 3600.0, 1e-9, "after overhaul");
    assert_eq!(overhaul.needed(Job::DrainOnly), None);
    // The same fill with and without: a new filter takes nothing.
    let same = Fills::new(Some(ml(800.0)), Some(ml(800.0)), None).unwrap();
    close(same.allowance().unwrap().value, 0.0, 1e-9, "no allowance");
}

/// Source: by hand from 1 US qt = 946.352946 mL and 1 imperial qt = 1136.5225 mL.
#[test]
fn bottles_do_not_trip_over_rounding() {
    let quart = of(&units::US_QT, 1.0);
    for (what, needed, bottle, shelf, count, left) in [
        // 3785.41 mL by the milliliter is 3785, four bottles of 946 are 3784: rounding each would buy a fifth.
        ("four quarts", of(&units::US_QT, 4.0), quart, ml(0.0), 4.0, 0.0),
        ("a gallon typed in milliliters", ml(3785.0), quart, ml(0.0), 4.0, 0.41),
        ("3.2 quarts", of(&units::US_QT, 3.2), quart, ml(0.0), 4.0, 757.08),
        ("quarts of one bottle and a bit", of(&units::US_QT, 1.1), quart, ml(0.0), 2.0, 851.72),
        ("imperial quart in liters", of(&units::IMP_QT, 1.0), ml(1000.0), ml(0.0), 2.0, 863.48),
        // 1137 is 0.48 mL over the quart it was rounded from.
        (
            "an imperial quart in milliliters",
            ml(1137.0),
            of(&units::IMP_QT, 1.0),
            ml(0.0),
            1.0,
            0.0,
        ),
        // 0.1 + 0.2 L of three bottles of 0.1 L: sums in binary are a little off.
        (
            "tenths of a liter",
            of(&units::LITER, 0.1 + 0.2),
            of(&units::LITER, 0.1),
            ml(0.0),
            3.0,
            0.0,
        ),
        ("three milliliters short", ml(3003.0), ml(1000.0), ml(0.0), 4.0, 997.0),
        // Four US quarts are 3785.4 mL, but a quart bottle says 946 mL.
        ("quarts as labels print them", of(&units::US_QT, 4.0), ml(946.0), ml(0.0), 4.0, 0.0),
        ("enough on the shelf", ml(3000.0), ml(1000.0), ml(3500.0), 0.0, 500.0),
        ("just enough on the shelf", ml(3000.0), ml(1000.0), ml(3000.0), 0.0, 0.0),
        ("shelf and bottles, exactly", ml(2600.0), ml(1000.0), ml(600.0), 2.0, 0.0),
    ] {
        let [bottles, _] = oil::purchases(needed, &[bottle], shelf).unwrap();
        assert_eq!(bottles.to_buy.unwrap().value, count, "{what}");
        close(bottles.left_over.value, left, 5e-3, what);
    }
}

#[test]
fn refusals_say_what_is_accepted() {
    let fills = |drain: f64, filter: Option<f64>, overhaul: Option<f64>| {
        Fills::new(Some(ml(drain)), filter.map(ml), overhaul.map(ml)).err()
    };
    let pct = Ratio::new::<percent>;
    for (got, words) in [
        (fills(0.0, None, None), "each fill has to be more than 0"),
        (fills(f64::NAN, None, None), "each fill has to be more than 0"),
        (
            fills(3200.0, Some(3000.0), None),
            "fill with filter has to be at least the fill without filter",
        ),
        (
            fills(2900.0, Some(3100.0), Some(3000.0)),
            "fill after overhaul has to be at least the fill with filter",
        ),
        (
            fills(2900.0, None, Some(2800.0)),
            "fill after overhaul has to be at least the fill without filter",
        ),
        (oil::first_pour(ml(0.0), None).err(), "oil needed has to be more than 0"),
        (oil::first_pour(ml(0.0), Some(ml(300.0))).err(), "oil needed has to be more than 0"),
        (
            oil::first_pour(ml(800.0), Some(ml(0.0))).err(),
            "volume between the marks has to be more than 0",
        ),
        (
            oil::first_pour(ml(800.0), Some(ml(801.0))).err(),
            "volume between the marks has to be at most the oil needed",
        ),
        (
            oil::first_pour_share(ml(800.0), pct(0.0)).err(),
            "share poured first has to be more than 0 % and at most 100 %",
        ),
        (
            oil::first_pour_share(ml(800.0), pct(101.0)).err(),
            "share poured first has to be more than 0 % and at most 100 %",
        ),
        (oil::top_up(ml(0.0), ml(0.0)).err(), "oil needed has to be more than 0"),
        (oil::top_up(ml(800.0), ml(-1.0)).err(), "oil poured has to be 0 or more"),
        (
            oil::top_up(ml(800.0), ml(801.0)).err(),
            "oil poured has to be at most the oil needed: draw off what is over",
        ),
    ] {
        assert_eq!(got.map(|it| it.to_string()).as_deref(), Some(words));
    }
}

proptest! {
    #[test]
    fn first_pour_is_between_the_marks(fill in 500.0..6_000.0, share in 0.01..=1.0) {
        let between = fill * share;
        let first = oil::first_pour(ml(fill), Some(ml(between))).unwrap().value;
        prop_assert!(first > ml(fill - between) && first < ml(fill));
        let rest = oil::top_up(ml(fill), first).unwrap().value;
        prop_assert!(((first + rest) - ml(fill)).abs() < ml(1e-6));
    }
}
