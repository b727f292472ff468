//! What a backup file would change here: looked at record by record, and merged. Nothing is written here.

use super::backup::{Found, Shape};
use super::compare::{self, Row};
use crate::facts::{self, Facts};
use crate::words::page as words;

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
}

/// Holds a record of a file against those that are here.
pub fn part(here: &[Found], file: &Found) -> Part {
    let mut part = Part {
        file: file.clone(),
        stands: Stands::New,
        rows: Vec::new(),
        usual: Choice::Merge,
        here: Found::default(),
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
        let called = if file.shape == Shape::Garage { words::wrench } else { words::fastener };
        part.rows = compare::records(&part.here.held, &file.held, called);
    }
    part
}

impl Part {
    /// Adds what is to be written for a choice.
    pub fn write(&self, choice: Choice, into: &mut Vec<Write>) {
        let mut new = self.file.clone();
        match (self.stands, choice) {
            (Stands::New, _) => {}
            (Stands::Differs, Choice::Merge) => {
                new = self.here.clone();
                compare::both(&mut new.held, &self.file.held);
            }
            (Stands::Differs, Choice::Take) => new.revision = self.here.revision,
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
