//! What a backup file would change here: looked at record by record, and merged. Nothing is written here.
//!
//! A bike, each of its seasons and the garage are one record each. Its logbook is several, and one part here: entries have no
//! place that both know. What has no facts, such as the days of a calendar file, and bikes that were removed, are
//! taken where nothing stands, and never over something.

use super::backup::{self, FASTENER, Found, Lists, OPEN, OWN, Shape, place};
use super::record;
use super::removed;
use crate::entry::text;
use crate::facts::{self, Facts, Id};
use crate::garage::Entries;
use crate::logbook::Logbook;
use crate::words::backup as words;

/// How a part of the file stands to what is here.
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

/// What becomes of a part that differs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Choice {
    /// Both; of a fact given in both, the one typed last.
    Merge,
    /// As the file has it.
    Take,
    /// As it is here.
    Leave,
}

/// A part of the file.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// What it is called.
    pub name: String,
    /// How it stands to what is here.
    pub stands: Stands,
    /// What differs, in words.
    pub differs: Vec<String>,
    /// What is chosen unless the owner chooses otherwise.
    pub usual: Choice,
    /// One of its records is not as it was saved.
    pub changed: bool,
    shape: Shape,
    /// The key of its record, or what the keys of its leaves start with.
    key: String,
    here: Vec<Found>,
    file: Vec<Found>,
}

/// A key, and the text that is to stand under it; nothing is to stand under it for `None`.
pub type Write = (String, Option<String>);

/// The key of the part that a record belongs to: of a leaf of a logbook what the keys of all its leaves start with.
fn part_of(found: &Found) -> &str {
    let end = match found.shape {
        Shape::Leaf => text::without_end(&found.key, text::digit),
        _ => &found.key,
    };
    // A removed one's leaves are apart.
    if removed::read(&found.key).is_some() { &found.key } else { end }
}

/// Holds a file's records against those that are here, part by part.
pub fn parts(here: &[Found], file: &[Found]) -> Vec<Part> {
    let mut parts: Vec<Part> = Vec::new();
    for found in file {
        let key = part_of(found);
        let at = parts.iter().position(|it| it.key == key).unwrap_or_else(|| {
            let mut part = Part {
                name: backup::name(&found.key, file, here),
                stands: Stands::New,
                differs: Vec::new(),
                usual: Choice::Merge,
                changed: false,
                shape: found.shape,
                key: key.to_owned(),
                here: Vec::new(),
                file: Vec::new(),
            };
            for it in here {
                if part_of(it) == key {
                    part.here.push(it.clone());
                }
            }
            parts.push(part);
            parts.len() - 1
        });
        parts[at].changed |= found.changed;
        parts[at].file.push(found.clone());
    }
    for part in &mut parts {
        part.look(here);
    }
    parts
}

impl Part {
    /// Whether its owner is told of it: what the page notes for itself, such as which bike was open, comes along.
    pub fn is_told(&self) -> bool {
        self.shape != Shape::Text || self.key.starts_with("damaged.")
    }

    fn look(&mut self, all: &[Found]) {
        let gone = removed::read(&self.key);
        let (Some(here), Some(file)) = (self.here.first(), self.file.first()) else {
            // A bike that stands here is not among those that were removed.
            if gone.is_some_and(|(_, own)| all.iter().any(|it| it.key == own)) {
                self.stands = Stands::Left;
            }
            return;
        };
        if gone.is_some() || self.here.iter().any(|it| it.raw.is_some()) {
            let same = here.stored() == file.stored();
            self.stands = if same { Stands::Same } else { Stands::Left };
            return;
        }
        if self.shape == Shape::Leaf {
            let (mut book, count) = self.book();
            let new = add_new(&mut book, &self.file);
            if new > 0 {
                self.differs.push(words::more(count, new));
            }
        } else {
            self.differs = differences(here, file);
            let mark = |it: &Found| it.own().entry(facts::SEASON_MARK.id()).text;
            let (own, theirs) = (mark(here), mark(file));
            // Another winter's days and ticks are not this one's.
            let over = |it: &Found| it.key.starts_with("past.") && mark(it) == theirs;
            if !theirs.is_empty() && own != theirs && (!own.is_empty() || all.iter().any(over)) {
                self.usual = Choice::Leave;
            }
        }
        self.stands = if self.differs.is_empty() { Stands::Same } else { Stands::Differs };
    }

    /// The logbook as it is here, and how many entries it has.
    fn book(&self) -> (Logbook, usize) {
        let mut leaves: Vec<Vec<Entries>> = Vec::new();
        let mut count = 0;
        for it in &self.here {
            let at = it.key.strip_prefix(&self.key).and_then(place).unwrap_or_default();
            while leaves.len() <= at {
                leaves.push(Vec::new());
            }
            for (_, own) in &it.held {
                leaves[at].push(own.clone());
                count += 1;
            }
        }
        (Logbook::of(leaves), count)
    }

    /// Adds what is to be written for a choice.
    pub fn write(&self, choice: Choice, into: &mut Vec<Write>) {
        let take = match (self.stands, choice) {
            (Stands::New, _) => true,
            (Stands::Same | Stands::Left, _) | (_, Choice::Leave) => return,
            (_, choice) => choice == Choice::Take,
        };
        if take {
            for it in &self.here {
                into.push((it.key.clone(), None));
            }
            for it in &self.file {
                into.retain(|other| other.0 != it.key);
                into.push((it.key.clone(), it.stored()));
            }
        } else if self.shape == Shape::Leaf {
            let (mut book, _) = self.book();
            add_new(&mut book, &self.file);
            for (at, _) in book.take_changed() {
                let key = format!("{}{at}", self.key);
                let before = self.here.iter().find(|it| it.key == key).map_or(0, |it| it.revision);
                into.push((key, record::written(&book.leaf(at), before.saturating_add(1))));
            }
        } else if let (Some(here), Some(file)) = (self.here.first(), self.file.first()) {
            let held = merged(here, file);
            let revision = here.revision.saturating_add(1);
            let both = Found { held, revision, ..here.clone() };
            into.push((here.key.clone(), both.stored()));
        }
    }
}

/// Adds the entries that a logbook has not; how many those are.
fn add_new(book: &mut Logbook, leaves: &[Found]) -> usize {
    let mut new = 0;
    for leaf in leaves {
        for (_, own) in &leaf.held {
            if !own.is_empty() && !book.has(own) {
                book.add(own.clone());
                new += 1;
            }
        }
    }
    new
}

/// What is typed: when it was does not matter, nor what was emptied.
fn said(own: &Entries) -> impl Iterator<Item = (Id, &str, u8)> {
    own.iter().filter(|it| !it.1.is_blank()).map(|(id, it)| (*id, it.text.as_str(), it.unit))
}

/// What two records of one key have otherwise, in words.
fn differences(here: &Found, file: &Found) -> Vec<String> {
    let mut all = Vec::new();
    let (own, theirs) = (here.own(), file.own());
    let mut both = theirs.clone();
    for id in own.keys() {
        both.at(*id);
    }
    for id in both.keys() {
        let [one, other] = [&own, &theirs].map(|it| it.entry(*id));
        let blank = one.is_blank() && other.is_blank();
        if !blank && (&one.text, one.unit) != (&other.text, other.unit) {
            let about = facts::about(*id);
            let [one, other] = [one, other].map(|it| match about {
                _ if it.is_blank() => words::NOTHING_SAID.to_owned(),
                Some(about) => backup::short(&facts::as_read(about, &it)),
                None => backup::short(&it.text),
            });
            let label = about.map_or(words::OTHER_FACT, |it| it.label);
            all.push(words::differs(label, &one, &other));
        }
    }
    let [one, other] = [here, file].map(|it| {
        let mut lists = it.held.clone();
        lists.retain(|it| it.0 != OWN && said(&it.1).next().is_some());
        lists
    });
    let mut at = 0;
    let same = one.len() == other.len()
        && one.iter().all(|it| {
            at += 1;
            it.0 == other[at - 1].0 && is_same(&it.1, &other[at - 1].1)
        });
    if !same {
        let label = if here.shape == Shape::Garage { words::WRENCHES } else { words::FASTENERS };
        all.push(words::differs(label, &one.len().to_string(), &other.len().to_string()));
    }
    all
}

fn is_same(one: &Entries, other: &Entries) -> bool {
    said(one).eq(said(other))
}

/// Both of two records; of a fact given in both, the one typed last. Whether a bike is archived stays as it is here.
fn merged(here: &Found, file: &Found) -> Lists {
    let facts = |one: &Entries, other: &Entries| Entries::merged(&Entries::new(), one, other);
    let mut both = here.held.clone();
    // Those that have their like in the file are no others' like.
    let mut taken = Vec::new();
    for own in &both {
        taken.push(file.held.iter().any(|it| is_same(&own.1, &it.1)));
    }
    for (kind, own) in &file.held {
        let mut kind = *kind;
        let at = both.iter().position(|it| it.0 == kind);
        if kind == OPEN {
            match at.filter(|at| said(&both[*at].1).next().is_none()) {
                Some(at) => both[at].1 = own.clone(),
                // One that is being filled in is not mixed with another: it becomes one of the list.
                None => kind = FASTENER,
            }
        }
        if let (OWN, Some(at)) = (kind, at) {
            let archived = facts::ARCHIVED.id();
            let was = both[at].1.get(&archived).cloned();
            both[at].1 = facts(&both[at].1, own);
            both[at].1.remove(&archived);
            both[at].1.extend(was.map(|it| (archived, it)));
        } else if said(own).next().is_some() && !both.iter().any(|it| is_same(&it.1, own)) {
            let like = (0..taken.len())
                .find(|at| !taken[*at] && both[*at].0 == kind && is_like(&both[*at].1, own));
            match like {
                Some(at) => {
                    taken[at] = true;
                    both[at].1 = facts(&both[at].1, own);
                }
                None => both.push((kind, own.clone())),
            }
        }
    }
    both
}

/// Whether two fasteners or wrenches are one: by a name that both have. Figures of two without a name are not mixed.
fn is_like(one: &Entries, other: &Entries) -> bool {
    let names = [facts::WRENCH_KEY.id(), facts::FASTENER_NAME.id(), facts::WRENCH_NAME.id()];
    names.iter().any(|id| {
        let [one, other] = [one, other].map(|it| it.entry(*id));
        !one.is_blank() && one.text.trim() == other.text.trim()
    })
}
