//! One row of a table as a fastener: what would have been typed, with the units of the file.

use super::columns::{Column, Part, THREAD, fold};
use super::{CellError, Sheet};
use crate::entry::text::joined;
use crate::entry::{Entry, Refusal, form, quoted};
use crate::facts::{self, Choice, Id, Kind, Lack, Rough};
use crate::garage::Entries;
use crate::units::{self, Dimension, Unit, UnitSet};
use crate::words::table as words;
use crate::working::Quantity;
use uom::si::f64::Torque;

struct Reading<'a> {
    sheet: &'a Sheet,
    cells: &'a [String],
    /// Of the row's own unit column.
    unit: Option<&'static Unit>,
    entries: Entries,
    notes: Vec<String>,
    errors: Vec<CellError>,
}

/// Reads cells under the columns of `sheet`.
pub(super) fn read(sheet: &Sheet, cells: &[String]) -> Result<Entries, Vec<CellError>> {
    let mut reading = Reading {
        sheet,
        cells,
        unit: None,
        entries: Entries::new(),
        notes: Vec::new(),
        errors: Vec::new(),
    };
    reading.unit_column();
    reading.torque();
    reading.all_else();
    reading.note();
    if reading.errors.is_empty() {
        reading.whole();
    }
    if reading.errors.is_empty() { Ok(reading.entries) } else { Err(reading.errors) }
}

/// A torque in a cell.
struct Amount {
    /// Its column.
    at: usize,
    entry: Entry,
    read: Rough<Torque>,
}

impl Amount {
    fn base(&self) -> f64 {
        self.read.value.base()
    }
    /// As typed, or with its unit written out.
    fn text(&self, spelled: bool) -> String {
        if spelled {
            facts::as_read(&facts::TORQUE.about, &self.entry)
        } else {
            self.entry.text.clone()
        }
    }
}

impl<'a> Reading<'a> {
    /// What a cell says; dashes say nothing.
    fn said(&self, at: usize) -> Option<&'a str> {
        let dash = |it: char| it.is_whitespace() || matches!(it, '-' | '–' | '—' | '−');
        self.cells.get(at).map(|it| it.trim()).filter(|it| !it.chars().all(dash))
    }

    fn wrong(&mut self, at: usize, why: Refusal) {
        let cell = self.cells.get(at).map_or("", String::as_str);
        self.errors.push(CellError::new(self.sheet.name(at), cell, why));
    }

    fn wrong_words(&mut self, at: usize, words: &str) {
        self.wrong(at, Refusal::Together(words.to_owned()));
    }

    /// Columns of a part with something in this row.
    fn of_part(&self, part: Part) -> Vec<usize> {
        let parts = self.sheet.parts.iter().enumerate();
        let ours = parts.filter(|(at, it)| it.part == Some(part) && self.said(*at).is_some());
        ours.map(|(at, _)| at).collect()
    }

    fn unit_column(&mut self) {
        for at in self.of_part(Part::Unit) {
            let text = self.said(at).unwrap_or_default();
            self.unit = units::spelled(text, Dimension::Torque, None).map(units::Spelled::unit);
            if self.unit.is_none() {
                // A number before it, so that the reader of torques names what it takes.
                let entry = Entry::new(format!("1 {text}"), form::NONE);
                let why = facts::refusal(&facts::TORQUE.about, &entry);
                self.wrong(
                    at,
                    why.unwrap_or(Refusal::NotANumber {
                        text: quoted(text),
                        example: String::new(),
                    }),
                );
            }
        }
    }

    fn amount(&mut self, at: usize) -> Option<Amount> {
        let unit = self.unit.or(self.sheet.parts.get(at)?.unit).unwrap_or(self.sheet.usual);
        let entry = Entry::new(self.said(at)?, unit.code);
        match torque_of(&entry) {
            Ok(read) => Some(Amount { at, entry, read }),
            Err(why) => {
                self.wrong(at, why);
                None
            }
        }
    }

    /// Figure, lowest and highest as one entry.
    fn torque(&mut self) {
        let before = self.errors.len();
        self.split_numbers();
        let mut all = [Part::Fact(facts::TORQUE.id()), Part::Lowest, Part::Highest].map(|part| {
            let at = self.of_part(part);
            at.into_iter().filter_map(|it| self.amount(it)).collect::<Vec<_>>()
        });
        if self.errors.len() > before {
            return;
        }
        let [figures, lows, highs] = &mut all;
        let figure = if figures.is_empty() { None } else { Some(figures.remove(0)) };
        let mut entry = figure.as_ref().map(|it| it.entry.clone());
        if let Some(first) = figure.as_ref().filter(|_| !figures.is_empty()) {
            let others: Vec<String> = figures.iter().map(|it| it.text(true)).collect();
            let text = format!("{} ({})", first.text(true), joined(&others, ", "));
            let both = Entry::new(text, first.entry.unit);
            if let Err(why) = torque_of(&both) {
                return self.wrong(first.at, why);
            }
            entry = Some(both);
        }
        entry = match (figure, lows.first(), highs.first()) {
            (_, None, None) => entry,
            (_, Some(it), None) | (_, None, Some(it)) => {
                return self.wrong_words(it.at, words::ONE_END);
            }
            (figure, Some(low), Some(high)) => {
                // Beside a range the same figure in other units goes into the note: it is no range.
                for other in figures {
                    self.labelled(other.at);
                }
                match ranged(figure.as_ref(), low, high) {
                    Ok(entry) => Some(entry),
                    Err((at, why)) => return self.wrong(at, why),
                }
            }
        };
        if let Some(entry) = entry {
            self.entries.insert(facts::TORQUE.id(), entry);
        }
    }

    /// A comma file whose rows are longer or shorter than its names may hold "2,5" without quotes: 2, and 5 in the note.
    fn split_numbers(&mut self) {
        let parts = &self.sheet.parts;
        if self.sheet.separator != ',' || (self.sheet.header && self.cells.len() == parts.len()) {
            return;
        }
        let digits = |it: &str| !it.is_empty() && it.bytes().all(|it| it.is_ascii_digit());
        let torque = |it: &Column| it.part.is_some_and(Part::is_torque);
        for at in 0..parts.len() {
            let next = self.cells.get(at + 1).map_or("", |it| it.trim());
            let number = parts.get(at + 1).is_some_and(|it| it.part.is_some_and(is_number));
            let split = torque(&parts[at]) && digits(self.cells.get(at).map_or("", |it| it.trim()));
            if split && !number && digits(next) && next.len() < 3 {
                self.wrong_words(at, words::SPLIT_NUMBER);
            }
        }
    }

    fn all_else(&mut self) {
        let mut too_many = false;
        for at in 0..self.cells.len() {
            let Some(cell) = self.said(at) else { continue };
            let Some(column) = self.sheet.parts.get(at).copied() else {
                if !too_many {
                    self.errors.push(CellError::of_row(cell, words::TOO_MANY_CELLS));
                }
                too_many = true;
                continue;
            };
            match column.part {
                Some(part) if part.is_torque() || part == Part::Unit => {}
                None | Some(Part::Page) => self.labelled(at),
                Some(part) if part.id() == facts::FASTENER_NOTE.id() => {
                    self.notes.push(cell.to_owned())
                }
                Some(part) => self.fact(at, part.id(), cell, column.unit),
            }
        }
    }

    fn fact(&mut self, at: usize, id: Id, cell: &str, unit: Option<&'static Unit>) {
        let Some(about) = facts::about(id) else { return };
        let entry = match &about.kind {
            Kind::Quantity { limits, .. } => {
                let torque = limits[0].unit.dimension == Dimension::Torque;
                let torques = self.unit.or(Some(self.sheet.usual)).filter(|_| torque);
                let usual = || about.offered(set_of(self.sheet.usual)).first().copied();
                let unit = unit.or(torques).or_else(usual);
                Entry::new(cell, unit.map_or(form::NONE, |it| it.code))
            }
            Kind::Choice(choices) => {
                let key = key(choices, cell).or_else(|| yes(id, cell, self.sheet.name(at)));
                Entry::new(key.unwrap_or(cell), form::NONE)
            }
            Kind::Several(choices) => match keys(choices, cell) {
                Ok(keys) => Entry::new(keys, form::NONE),
                Err(why) => return self.wrong(at, why),
            },
            _ => Entry::new(cell, form::NONE),
        };
        match facts::refusal(about, &entry) {
            Some(why) => self.wrong(at, why),
            None => drop(self.entries.insert(id, entry)),
        }
    }

    /// Adds a cell to the note, under its column's name where it has one.
    fn labelled(&mut self, at: usize) {
        let name = if self.sheet.header { self.sheet.name(at).trim() } else { "" };
        let cell = self.said(at).unwrap_or_default();
        let note = if name.is_empty() { cell.to_owned() } else { words::named(name, cell) };
        self.notes.push(note);
    }

    fn note(&mut self) {
        if self.notes.is_empty() {
            return;
        }
        let about = &facts::FASTENER_NOTE.about;
        let entry = Entry::new(joined(&self.notes, words::BETWEEN_NOTES), form::NONE);
        match facts::refusal(about, &entry) {
            Some(why) => self.errors.push(CellError::new(about.label, &entry.text, why)),
            None => drop(self.entries.insert(about.id, entry)),
        }
    }

    /// A fastener has a torque, or a thread to look one up for, or a turn instead.
    fn whole(&mut self) {
        let any = [facts::TORQUE.id(), THREAD, facts::TURN.id()];
        if any.iter().any(|it| self.entries.get(it).is_some()) {
            return;
        }
        let torque = self.sheet.parts.iter().any(|it| it.part.is_some_and(Part::is_torque));
        let words = if torque || self.sheet.header { words::NEITHER } else { words::UNNAMED };
        self.errors.push(CellError::of_row(&super::first_said(self.cells), words));
    }
}

fn torque_of(entry: &Entry) -> Result<Rough<Torque>, Refusal> {
    let from = Entries::from([(facts::TORQUE.id(), entry.clone())]);
    facts::TORQUE.of(&from).map_err(|lacks| {
        let refused = lacks.iter().find_map(Lack::refusal).cloned();
        refused.unwrap_or_else(|| Refusal::NotANumber {
            text: quoted(&entry.text),
            example: "25".to_owned(),
        })
    })
}

/// "25 (22–26)", or "22–26" without a figure; else the column where it goes wrong.
fn ranged(figure: Option<&Amount>, low: &Amount, high: &Amount) -> Result<Entry, (usize, Refusal)> {
    let wrong = |it: &Amount, words: &str| Err((it.at, Refusal::Together(words.to_owned())));
    for end in [low, high] {
        if end.read.bounds.is_some() {
            return Err((end.at, Refusal::OneNumberWanted { text: quoted(&end.entry.text) }));
        }
    }
    if low.base() > high.base() {
        return wrong(low, words::MIN_OVER_MAX);
    }
    if let Some(figure) = figure {
        if figure.read.bounds.is_some() {
            return wrong(figure, words::TWO_RANGES);
        }
        if figure.base() < low.base() || figure.base() > high.base() {
            return wrong(figure, words::OUTSIDE_ENDS);
        }
    }
    let first = figure.unwrap_or(low);
    let spelled = [low, high].iter().any(|it| it.read.unit != first.read.unit);
    let ends = format!("{}–{}", low.text(spelled), high.text(spelled));
    let text = figure.map_or(ends.clone(), |it| format!("{} ({ends})", it.text(spelled)));
    let unit = first.read.unit.map_or(first.entry.unit, |it| it.code);
    let entry = Entry::new(text, unit);
    // Put together it has to say what its parts say.
    let near = |a: f64, b: f64| (a - b).abs() <= 1e-9 * b.abs();
    let same = torque_of(&entry).is_ok_and(|it| {
        let ends = it
            .bounds
            .is_some_and(|[a, b]| near(a.base(), low.base()) && near(b.base(), high.base()));
        ends && figure.is_none_or(|figure| near(it.value.base(), figure.base()))
    });
    if same { Ok(entry) } else { wrong(first, words::UNCLEAR_ENDS) }
}

/// Whether a part's cells are numbers, so that digits beside a torque are its own.
fn is_number(part: Part) -> bool {
    let kind = facts::about(part.id()).map(|it| &it.kind);
    part != Part::Page
        && part != Part::Unit
        && matches!(kind, Some(Kind::Quantity { .. } | Kind::Count { .. }))
}

/// The set that a torque unit belongs to: lengths without a unit follow it.
fn set_of(unit: &Unit) -> UnitSet {
    if [&units::LBF_FT, &units::LBF_IN, &units::OZF_IN].contains(&unit) {
        UnitSet::Us
    } else {
        UnitSet::Metric
    }
}

/// The key of the choice that a text names by key or label, in any case.
fn key(choices: &[Choice], text: &str) -> Option<&'static str> {
    let text = fold(text);
    let ours = |it: &&Choice| fold(it.label) == text || fold(it.key) == text;
    choices.iter().find(ours).map(|it| it.key)
}

/// "yes" in a column of self-locking nuts or of thread-lock.
fn yes(id: Id, cell: &str, column: &str) -> Option<&'static str> {
    let yes = ["yes", "y", "x"].contains(&fold(cell).as_str());
    if yes && id == facts::SELF_LOCKING.id() {
        // Drag is added only where the manual says that its figure is without it.
        return Some("drag_inside");
    }
    let thread_lock =
        yes && id == facts::THREAD_DRESSING.id() && fold(column).starts_with("threadlock");
    thread_lock.then_some("thread_lock")
}

/// The keys of several choices by key or label, commas or semicolons between them. A label may have a comma in it.
fn keys(choices: &[Choice], text: &str) -> Result<String, Refusal> {
    let mut keys: Vec<&str> = Vec::new();
    let parts = crate::entry::text::parts(text, |it| matches!(it, ',' | ';'));
    let mut at = 0;
    while at < parts.len() {
        let pair = parts.get(at + 1).map(|it| format!("{}{it}", parts[at]));
        let of_pair = pair.and_then(|it| key(choices, &it));
        at += 1 + usize::from(of_pair.is_some());
        match of_pair.or_else(|| key(choices, parts[at - 1])) {
            Some(key) if keys.contains(&key) => {}
            Some(key) => keys.push(key),
            None => {
                let offered: Vec<&str> = choices.iter().map(|it| it.label).collect();
                let text = quoted(parts[at - 1]);
                return Err(Refusal::NotAChoice { text, offered: joined(&offered, ", ") });
            }
        }
    }
    Ok(joined(&keys, " "))
}
