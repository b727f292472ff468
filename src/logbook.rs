//! The logbook of a bike: what was done, on which day, at which odometer reading, with the figures as they stood.
//!
//! An entry is a list of facts of [`Home::Log`](crate::facts::Home), each as it was typed. Entries are kept in leaves of
//! [`LEAF`], so that a tick writes one small record however long the book has grown.

mod due;
mod find;

pub use due::{Due, Left, due};
pub use find::{Search, lines, years};

use crate::entry::day_written;
use crate::entry::text::{joined, plain};
use crate::facts::{self, Facts, Home, Id};
use crate::garage::Entries;
use chrono::NaiveDate;

/// Entries of a leaf.
pub const LEAF: usize = 64;

/// An entry with its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Tells it from the others as long as the book is open.
    pub key: usize,
    /// The leaf it is kept on.
    pub leaf: usize,
    /// When it was done, where that is known.
    pub day: Option<NaiveDate>,
    /// Its facts.
    pub own: Entries,
}

impl Facts for Row {
    fn entry(&self, id: Id) -> crate::entry::Entry {
        self.own.entry(id)
    }
}

impl Row {
    /// What was done.
    pub fn line(&self) -> String {
        facts::LOG_LINE.known(self).unwrap_or_default()
    }
}

/// A bike's logbook, in the order of its days; entries without a day come last, to be seen, and of one day they stand as they
/// were written. It is never sorted: a day finds its place from the end, where it mostly belongs.
///
/// ```
/// use torpor::{entry::Entry, facts, garage::Entries, logbook::Logbook};
/// let mut book = Logbook::default();
/// let oil = Entries::from([(facts::LOG_LINE.id(), Entry::new("Oil", 0))]);
/// let key = book.add(oil.clone());
/// assert_eq!(book.leaf(0), [oil]);
/// assert_eq!(book.take_changed(), [(0, vec![])]);
/// book.remove(key);
/// assert!(book.rows().is_empty());
/// ```
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Logbook {
    rows: Vec<Row>,
    next: usize,
    /// Leaves to be written, each with what stood on it when it was written last.
    changed: Vec<(usize, Vec<Entries>)>,
}

impl Logbook {
    /// The book whose leaves hold these entries.
    pub fn of(leaves: Vec<Vec<Entries>>) -> Self {
        let mut book = Self::default();
        for (leaf, entries) in leaves.into_iter().enumerate() {
            for own in entries {
                book.push(leaf, own);
            }
        }
        book
    }

    fn push(&mut self, leaf: usize, own: Entries) -> usize {
        let key = self.next;
        self.next += 1;
        self.put_in(Row { key, leaf, day: facts::LOG_DAY.known(&own), own });
        key
    }

    fn put_in(&mut self, row: Row) {
        // Keys grow as entries are written.
        let place = |it: &Row| (it.day.is_none(), it.day, it.key);
        let at = self.rows.iter().rposition(|it| place(it) <= place(&row));
        let at = at.map_or(0, |it| it + 1);
        self.rows.insert(at, row);
    }

    /// All entries.
    pub fn rows(&self) -> &[Row] {
        &self.rows
    }

    /// The entry of a key.
    pub fn row(&self, key: usize) -> Option<&Row> {
        self.at(key).map(|at| &self.rows[at])
    }

    fn at(&self, key: usize) -> Option<usize> {
        self.rows.iter().position(|it| it.key == key)
    }

    /// The key of the next entry.
    pub fn next_key(&self) -> usize {
        self.next
    }

    /// Whether no leaf is to be written.
    pub fn is_kept(&self) -> bool {
        self.changed.is_empty()
    }

    /// Writes an entry on the last leaf; its key.
    pub fn add(&mut self, own: Entries) -> usize {
        let last = self.rows.iter().map(|it| it.leaf).max().unwrap_or_default();
        let full = self.rows.iter().filter(|it| it.leaf == last).count() >= LEAF;
        let leaf = last + usize::from(full);
        self.touch(leaf);
        self.push(leaf, own)
    }

    /// Changes facts of an entry; the others stay.
    pub fn amend(&mut self, key: usize, changed: Entries) {
        if let Some(mut row) = self.remove(key) {
            row.own.extend(changed);
            row.day = facts::LOG_DAY.known(&row.own);
            self.put_in(row);
        }
    }

    /// Takes an entry out.
    pub fn remove(&mut self, key: usize) -> Option<Row> {
        let at = self.at(key)?;
        self.touch(self.rows[at].leaf);
        Some(self.rows.remove(at))
    }

    /// Puts one that was taken out back.
    pub fn put_back(&mut self, row: Row) {
        self.touch(row.leaf);
        self.put_in(row);
    }

    fn touch(&mut self, leaf: usize) {
        if self.changed.iter().all(|it| it.0 != leaf) {
            let stood = self.leaf(leaf);
            self.changed.push((leaf, stood));
        }
    }

    /// Leaves that changed since they were last asked for, and are to be written; each with what stood on it before.
    pub fn take_changed(&mut self) -> Vec<(usize, Vec<Entries>)> {
        std::mem::take(&mut self.changed)
    }

    /// Says of leaves that they could not be written.
    pub fn unwritten(&mut self, leaves: Vec<(usize, Vec<Entries>)>) {
        self.changed.extend(leaves);
    }

    /// Takes entries that another page wrote on a leaf.
    pub fn take_in(&mut self, leaf: usize, theirs: Vec<Entries>) {
        for own in theirs {
            self.push(leaf, own);
        }
    }

    /// What stands on a leaf.
    pub fn leaf(&self, leaf: usize) -> Vec<Entries> {
        let here = self.rows.iter().filter(|it| it.leaf == leaf);
        here.map(|it| it.own.clone()).filter(|it| !it.is_empty()).collect()
    }

    /// The entry that a tick wrote, the last one where there are several.
    pub fn ticked(&self, step: &str) -> Option<&Row> {
        let wrote = |it: &&Row| it.own.get(&facts::LOG_STEP.id()).is_some_and(|it| it.text == step);
        self.rows.iter().filter(wrote).max_by_key(|it| it.key)
    }

    /// Whether an entry that says the same stands in the book already, whichever tick wrote it.
    pub fn has(&self, own: &Entries) -> bool {
        let (said, day) = (said(own), facts::LOG_DAY.known(own));
        // Those of its day stand together.
        let from =
            self.rows.partition_point(|it| (it.day.is_none(), it.day) < (day.is_none(), day));
        let same_day = self.rows.iter().skip(from).take_while(|it| it.day == day);
        same_day.into_iter().any(|row| self::said(&row.own) == said)
    }

    /// An entry as a tick writes it: the step's title, today, the odometer as it is known, the figures as they stand.
    pub fn of_tick(
        step: &str,
        title: &str,
        today: NaiveDate,
        figures: &str,
        from: &dyn Facts,
    ) -> Entries {
        let written = |text: &str| crate::entry::Entry::new(text, 0);
        let mut own = Entries::from([
            (facts::LOG_DAY.id(), written(&day_written(today))),
            (facts::LOG_LINE.id(), written(title)),
            (facts::LOG_STEP.id(), written(step)),
        ]);
        let odometer = from.entry(facts::ODOMETER.id());
        if !odometer.is_blank() {
            own.insert(facts::LOG_ODOMETER.id(), odometer);
        }
        if !figures.is_empty() {
            own.insert(facts::LOG_FIGURES.id(), written(figures));
        }
        own
    }
}

/// What an entry says, as a file has it.
fn said(own: &Entries) -> Vec<(Id, String)> {
    let about = |id: &Id| {
        facts::about(*id).filter(|it| *id != facts::LOG_STEP.id() && it.home == Home::Log)
    };
    let said = own.iter().filter_map(|(id, entry)| {
        let text = plain(&facts::as_read(about(id)?, entry));
        let words: Vec<&str> = text.split_whitespace().collect();
        Some((*id, joined(&words, " ")))
    });
    said.filter(|it| !it.1.is_empty()).collect()
}
