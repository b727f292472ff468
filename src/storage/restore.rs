//! What a backup file would change here: looked at record by record, and merged. Nothing is written here.

use super::backup::{Found, Shape, bike_of};
use super::compare::{self, Row};
use crate::facts::{self, Facts};
use crate::words::{backup, page as words};

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

    /// Adds what is to be written for a choice.
    pub fn write(&self, choice: Choice, into: &mut Vec<Write>) {
        let mut new = self.file.clone();
        match (self.stands, choice) {
            (Stands::New, _) => {}
            (Stands::Differs, Choice::Merge) => {
                new = self.here.clone();
                compare::both(&mut new.held, &self.file.held, self.now);
            }
            (Stands::Differs, Choice::Take) => {
                compare::completed(&mut new.held, &self.here.held);
                new.revision = self.here.revision;
            }
            _ => return,
        }
        let (mut old, from) = (Vec::new(), into.len());
        self.here.stored(&mut old);
        new.stored(into);
        for (key, _) in old {
            // Leaves that the file has not.
            if self.stands == Stands::Differs && into.iter().skip(from).all(|it| it.0 != key) {
                into.push((key, None));
            }
        }
    }
}
