//! Coolant, tires, brake fluid and the other oils: laws against the reference tables, and the lines as wholes.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod brakes;
mod coolant;
mod oils;
mod pressure;
mod tires;

use chrono::NaiveDate;
use torpor::entry::Entry;
use torpor::facts::{Facts, Id};
use torpor::garage::Kept;
use torpor::plan::{Line, Panel};
use torpor::show::{Figure, Shown};
use torpor::units::UnitSet;
use torpor::working::Quantity;
use uom::si::f64::{Ratio, ThermodynamicTemperature};

/// Rows of a table of check values, each with its source.
fn rows(name: &str) -> Vec<csv::StringRecord> {
    let path = format!("{}/tests/reference/fluids/{name}", env!("CARGO_MANIFEST_DIR"));
    csv::Reader::from_path(path).unwrap().records().map(Result::unwrap).collect()
}

fn number(text: &str) -> f64 {
    text.parse().unwrap_or_else(|_| panic!("{text}"))
}

fn percent(it: f64) -> Ratio {
    Ratio::of_base(it / 100.0)
}

fn celsius(it: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::of_base(it + 273.15)
}

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

#[track_caller]
fn close(got: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((got - expected).abs() <= tolerance, "{what}: {got}, expected {expected}");
}

/// Entries that each say their unit.
fn typed(list: &[(Id, &str)]) -> Kept {
    let mut kept = Kept::default();
    for (id, text) in list {
        kept.put(*id, Entry::new(*text, 0));
    }
    kept
}

fn panel(line: Line, from: &dyn Facts) -> Panel {
    line.panel(from, &[], UnitSet::Metric)
}

#[track_caller]
fn answer<'a>(panel: &'a Panel, label: &str) -> &'a Shown {
    panel.answer(label).unwrap_or_else(|| panic!("no answer “{label}”"))
}

/// An answer as it stands on the page.
#[track_caller]
fn figure(panel: &Panel, label: &str) -> String {
    match &answer(panel, label).figure {
        Figure::Number { text, unit, .. } => format!("{text} {unit}"),
        Figure::Day { data, .. } => data.clone(),
        Figure::Words(words) => words.clone(),
        other => panic!("{label}: {other:?}"),
    }
}

fn lacks(shown: &Shown) -> Vec<u16> {
    shown.lacks().iter().map(|it| it.id().0).collect()
}
