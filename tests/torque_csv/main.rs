//! The torque list as a table: what is read of one, what is written, and what it does with anything hostile. All parts
//! and figures are invented.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod columns;
mod files;
mod hostile;
#[path = "../hostile_inputs/mod.rs"]
mod hostile_inputs;
mod rows;
mod tables;
mod writing;

use torpor::entry::Entry;
use torpor::facts::{self, Id};
use torpor::garage::Entries;
use torpor::storage::torque_csv::{self, CellError, NotATable, Row, Sheet, told};
use torpor::units::{self, Unit};

/// Taken where the page's table has it.
const THREAD: Id = Id(77);

#[track_caller]
fn sheet(text: &str) -> Sheet {
    torque_csv::read(text, &units::NEWTON_METER).unwrap()
}

/// Every row in words.
#[track_caller]
fn told_all(text: &str) -> Vec<String> {
    sheet(text).rows.iter().map(told).collect()
}

#[track_caller]
fn only(text: &str) -> Entries {
    let sheet = sheet(text);
    assert_eq!(sheet.rows.len(), 1, "{sheet:?}");
    sheet.rows[0].read.clone().unwrap()
}

#[track_caller]
fn errors(row: &Row) -> &[CellError] {
    row.read.as_ref().unwrap_err()
}

/// Text and unit of one fact.
fn entry(entries: &Entries, id: Id) -> Option<(&str, u8)> {
    entries.get(&id).map(|it| (it.text.as_str(), it.unit))
}

fn typed(text: &str, unit: &Unit) -> Option<Entry> {
    Some(Entry::new(text, unit.code))
}

fn torque(entries: &Entries) -> Option<Entry> {
    entries.get(&facts::TORQUE.id()).cloned()
}
