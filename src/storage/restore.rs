//! What a backup file would change here: looked at record by record, and merged. Nothing is written here.

use super::backup::{Found, Shape, bike_of};
use super::compare::{self, Row};
use super::removed;
use crate::facts::{self, Facts};
use crate::garage::{Bike, Kept};
use crate::words::{backup, page as words};
use chrono::NaiveDate;

/// How a record of the file stands to what is here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stands {
    /// Nothing of it is here.
    New,
    /// It is here already.
    Same,
    /// It is here otherwise, and the owner chooses.
    Differs,
    /// It is here otherwise, and stays so.
    Left,
    /// Of a bike that is neither in the file nor here: it stays where it is.
    Orphan,
}

/// What becomes of a record that differs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Choice {
    /// Both; of a fact given in both, the one typed last.
    Merge,
    /// As the file has it.
    Take,
    /// As it is here.
    Leave,
}

/// A key, and the text that is to stand under it; nothing is to stand under it for `None`.
pub type Write = (String, Option<String>);

/// A record of the file beside what is here.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// As the file has it.
    pub file: Found,
    /// How it stands to what is here.
    pub stands: Stands,
    /// Fact by fact, what is here and what the file has.
    pub rows: Vec<Row>,
    /// What is chosen unless the owner chooses otherwise.
    pub usual: Choice,
    here: Found,
    now: u64,
}

/// Holds all records of a file against those that are here, a bike before what is its own. `now`: milliseconds since 1970.
pub fn parts(here: &[Found], file: &[Found], now: u64) -> Vec<Part> {
    let mut all: Vec<Part> = Vec::new();
    for it in file {
        let mut part = part(here, it, now);
        let bike = bike_of(&it.key);
        if here.iter().chain(file).all(|it| it.key != bike) {
            part.stands = Stands::Orphan;
            part.rows.clear();
        }
        // Behind the first of its bike, which is the bike itself.
        let first = all.iter().position(|it| bike_of(&it.file.key) == bike);
        let at = first.map_or(all.len(), |at| at + usize::from(it.key != bike));
        all.insert(at, part);
    }
    all
}

/// Holds a record of a file against those that are here.
pub fn part(here: &[Found], file: &Found, now: u64) -> Part {
    let mut part = Part {
        file: file.clone(),
        stands: Stands::New,
        rows: Vec::new(),
        usual: Choice::Merge,
        here: Found::default(),
        now,
    };
    for own in here {
        // Of a logbook a single leaf may be one that cannot be read.
        if own.key == file.key || own.raw.is_some() && own.key.starts_with(&file.key) {
            part.here = own.clone();
            part.stands = if (&own.held, &own.raw) == (&file.held, &file.raw) {
                Stands::Same
            } else if own.raw.is_some() || part.stands == Stands::Left {
                Stands::Left
            } else {
                Stands::Differs
            };
        }
    }
    if part.stands == Stands::Differs {
        let mark = |it: &Found| it.held.entries.entry(facts::SEASON_MARK.id()).text;
        // Another winter's days and ticks are not this one's.
        if mark(&part.here) != mark(file) {
            part.usual = Choice::Leave;
        }
    }
    if matches!(part.stands, Stands::Differs | Stands::New) {
        let called = if file.shape == Shape::Garage { words::wrench } else { words::fastener };
        part.rows = compare::records(&part.here.held, &file.held, called, now);
    }
    part
}

impl Part {
    /// Whether the owner has to choose, as merging would leave a fact of the file.
    pub fn asks(&self) -> bool {
        self.usual == Choice::Merge && self.counts(Choice::Merge)[1] > 0
    }

    /// How many facts a choice takes out of the file, and how many of it that differ it leaves.
    pub fn counts(&self, choice: Choice) -> [usize; 2] {
        let mut counts = [0; 2];
        for it in &self.rows {
            let left = match choice {
                Choice::Merge => it.taken == Some(false),
                choice => choice == Choice::Leave && self.stands == Stands::Differs,
            };
            let none = it.there.is_empty() || it.there == backup::UNREAD;
            if it.here != it.there && !none {
                counts[usize::from(left)] += 1;
            }
        }
        counts
    }

    /// Adds what is to be written for a choice. The same part with what then stands there as the file's, to take it back.
    pub fn write(mut self, choice: Choice, into: &mut Vec<Write>) -> Option<Self> {
        match (self.stands, choice) {
            (Stands::New, _) => {}
            (Stands::Differs, Choice::Merge) => {
                let mut held = self.here.held.clone();
                compare::both(&mut held, &self.file.held, self.now);
                self.file.held = held;
            }
            (Stands::Differs, Choice::Take) => {
                compare::completed(&mut self.file.held, &self.here.held);
            }
            _ => return None,
        }
        self.file.revision = self.here.revision;
        over(&self.here, &self.file, into);
        Some(self)
    }

    /// Adds what is to be written so that a record that was restored is as it was, but for what was changed since. It counts as a
    /// later write than that of the restore, so that other tabs take it. False where the record stays, as it was new then and
    /// more has come to it, or where facts stay that were changed since.
    fn back(&self, here: &[Found], into: &mut Vec<Write>) -> bool {
        let Some(here) = here.iter().find(|it| it.key == self.file.key) else { return false };
        let mut back = self.here.clone();
        let [was, now, own] =
            [&back, &self.file, here].map(|it| Kept { bike: it.held.clone(), ..Kept::default() });
        let (Kept { bike: mut held, .. }, twice) = Kept::merged(&now, &own, &was);
        // Entries of a logbook, each for itself.
        let [was, now, mut all] = [was, now, own].map(|it| it.bike.others);
        all.retain(|it| was.contains(it) || !now.contains(it));
        for it in was {
            if !now.contains(&it) && !all.contains(&it) {
                all.push(it);
            }
        }
        held.others = all;
        if self.stands == Stands::New {
            if here.raw != self.file.raw || held != Bike::default() {
                return false;
            }
        } else {
            (back.held, back.revision) = (held, here.revision);
        }
        over(here, &back, into);
        twice.is_empty()
    }
}

/// Adds what is to be written so that a restore is taken back, each part of it for itself, but that a bike that was new goes whole or
/// not at all: of what was typed since nothing is left without its bike, and no bike without its days. The names of what
/// stays, if only in part.
pub fn back(changes: &[Part], here: &[Found], into: &mut Vec<Write>) -> Vec<String> {
    let mut stay = Vec::new();
    for it in changes {
        if !it.back(here, &mut Vec::new()) {
            stay.push(bike_of(&it.file.key));
        }
    }
    for it in here {
        // What the page keeps by itself of any bike is blank.
        let typed = it.raw.is_some() || it.held != Bike::default();
        if typed && changes.iter().all(|own| own.file.key != it.key) {
            stay.push(bike_of(&it.key));
        }
    }
    let new = |it: &Part, key: &str| it.stands == Stands::New && it.file.key == key;
    let mut names = Vec::new();
    for it in changes {
        let bike = bike_of(&it.file.key);
        let whole = stay.contains(&bike) && changes.iter().any(|it| new(it, &bike));
        if whole && it.stands == Stands::New || !it.back(here, into) {
            names.push(it.file.name.clone());
        }
    }
    names
}

/// Adds what is to be written so that `new` takes the place of `old`, which may have leaves that it has not.
fn over(old: &Found, new: &Found, into: &mut Vec<Write>) {
    let (mut gone, from) = (Vec::new(), into.len());
    old.stored(&mut gone);
    new.stored(into);
    for (key, _) in gone {
        if into.iter().skip(from).all(|it| it.0 != key) {
            into.push((key, None));
        }
    }
}

/// A bike that was removed, under the day on which it is restored: so long ago it would be swept at once.
pub fn renew(here: &[Found], file: &mut Found, today: NaiveDate) {
    if let Some((_, own)) = removed::read(&file.key)
        && here.iter().all(|it| it.key != file.key)
    {
        file.key = removed::on(today) + own;
    }
}
