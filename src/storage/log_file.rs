//! A logbook as a file: CSV for a spreadsheet, JSON for keeping; either is taken back.

use super::cells::{self, Line, Names};
use super::json::Json;
use super::text::plain;
use crate::entry::Entry;
use crate::facts::{self, About, Facts, Home, TABLE};
use crate::garage::Entries;
use crate::units::UnitSet;
use crate::words::table as words;

/// The longest text that is looked at, bytes: ten thousand entries are a quarter of it.
pub const LONGEST: usize = 8 * 1024 * 1024;
/// The name that says what a JSON file is, and its form.
const FORM: &str = "torpor_logbook";
const ENTRIES: &str = "entries";

/// The facts of an entry.
fn held() -> Vec<&'static About> {
    TABLE.iter().copied().filter(|it| it.home == Home::Log).collect()
}

/// Writes entries as comma-separated text, numbers with their unit.
pub fn csv(entries: &[Entries]) -> String {
    cells::table(entries, held())
}

/// Writes entries as JSON, each fact under its key, numbers with their unit.
pub fn json(entries: &[Entries]) -> String {
    let held = held();
    let one = |own: &Entries| {
        let said = held.iter().filter(|it| !own.entry(it.id).is_blank());
        let fact = |it: &&About| {
            let text = facts::as_read(it, &own.entry(it.id));
            (it.key.to_owned(), Json::Text(text))
        };
        Json::Map(said.map(fact).collect())
    };
    let all = Json::List(entries.iter().map(one).collect());
    Json::Map(vec![(FORM.to_owned(), Json::Bare("1".to_owned())), (ENTRIES.to_owned(), all)])
        .written()
}

/// A row of a file: the line of a table, or the number of an entry; the entry, or what is wrong with it.
pub type Row = (usize, Result<Entries, String>);

/// Reads what [`csv`] or [`json`] wrote, or a table of one's own whose first row has the columns' names. Each entry, or what
/// is wrong with it; it stops no other. A bare number means the usual unit of `set`. `None`: no logbook.
///
/// ```
/// use torpor::{facts, storage::log_file, units::UnitSet};
/// let read = log_file::read("Day;What was done\n2026-11-14;Oil\nsoon;Coolant\n", UnitSet::Metric).unwrap();
/// assert_eq!(read[0].1.as_ref().unwrap()[&facts::LOG_LINE.id()].text, "Oil");
/// assert!(read[1].0 == 3 && read[1].1.as_ref().unwrap_err().contains("soon"));
/// ```
pub fn read(text: &str, set: UnitSet) -> Option<Vec<Row>> {
    if text.len() > LONGEST {
        return None;
    }
    match Json::read(text) {
        Some(json) => from_json(&json, set),
        None => from_csv(text, set),
    }
}

fn from_json(json: &Json, set: UnitSet) -> Option<Vec<Row>> {
    if json.get(FORM)? != &Json::Bare("1".to_owned()) {
        return None;
    }
    let Json::List(all) = json.get(ENTRIES)? else { return None };
    let held = held();
    let one = |(at, it): (usize, &Json)| {
        let Json::Map(facts) = it else { return (at + 1, entry(&[], set)) };
        let of = |(key, value): &(String, Json)| {
            let about = held.iter().find(|it| it.key == key)?;
            match value {
                Json::Text(text) => Some((about.id, Entry::new(plain(text), 0))),
                _ => None,
            }
        };
        // What was kept is taken as it stands, whatever is still wrong with it.
        let own: Entries = facts.iter().filter_map(of).collect();
        (at + 1, if own.is_empty() { entry(&[], set) } else { Ok(own) })
    };
    Some(all.iter().enumerate().map(one).collect())
}

/// The fact that a column's name says.
fn named(name: &str) -> Option<&'static About> {
    let name = plain(name);
    held().into_iter().find(|it| it.label.eq_ignore_ascii_case(&name) || it.key == name)
}

fn names(line: &Line) -> Names {
    match line.cells.iter().filter(|it| named(it).is_some()).count() {
        0 => Names::None,
        1 => Names::Some,
        _ => Names::Several,
    }
}

fn from_csv(text: &str, set: UnitSet) -> Option<Vec<Row>> {
    let lines = cells::cut(text, usize::MAX, names).lines;
    let (header, rows) = lines.split_first()?;
    if names(header) != Names::Several {
        return None;
    }
    let columns: Vec<Option<&About>> = header.cells.iter().map(|it| named(it)).collect();
    let one = |line: &Line| {
        let cells = columns.iter().zip(&line.cells);
        let cells = cells.filter_map(|(column, cell)| Some(((*column)?, plain(cell))));
        (line.number, entry(&cells.collect::<Vec<_>>(), set))
    };
    Some(rows.iter().map(one).collect())
}

/// One entry of the texts of its facts, or the first thing that is wrong with it.
fn entry(texts: &[(&'static About, String)], set: UnitSet) -> Result<Entries, String> {
    let mut own = Entries::new();
    for (about, text) in texts.iter().filter(|it| !it.1.is_empty()) {
        let unit = about.unit_for(&Entry::default(), set).map_or(0, |it| it.code);
        let entry = Entry::new(text, unit);
        if let Some(why) = facts::refusal(about, &entry) {
            return Err(words::wrong(about.label, &crate::entry::quoted(text), &why.to_string()));
        }
        own.insert(about.id, entry);
    }
    if own.is_empty() || own.keys().all(|it| *it == facts::LOG_STEP.id()) {
        return Err(words::missing(facts::LOG_LINE.about.label));
    }
    Ok(own)
}
