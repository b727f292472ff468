//! What a backup file would change here: looked at record by record, and merged. Nothing is written here.
//!
//! A bike, its season and the garage are one record each. Its logbook and its past seasons are several, and one part here: their
//! entries have no place that both know. What has no facts, such as the days of a calendar file, and bikes that were removed, are
//! taken where nothing stands, and never over something.

use super::backup::{self, Found, Shape, place};
use super::record;
use super::removed;
use crate::entry::Entry;
use crate::facts::{self, Facts, Id};
use crate::garage::{Bike, Entries, Kept, Season};
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
    /// The key of its record, or what the keys of its records start with.
    key: String,
    series: bool,
    here: Vec<Found>,
    file: Vec<Found>,
}

/// A key, and the text that is to stand under it; nothing is to stand under it for `None`.
pub type Write = (String, Option<String>);

/// The key of the part that a record belongs to, and whether such a part has several records.
fn part_of(key: &str) -> (String, bool) {
    match key.rsplit_once('.') {
        Some((start, _)) if key.starts_with("log.") || key.starts_with("past.") => {
            (format!("{start}."), true)
        }
        _ => (key.to_owned(), false),
    }
}

/// Holds a file's records against those that are here, part by part.
pub fn parts(here: &[Found], file: &[Found]) -> Vec<Part> {
    let mut parts: Vec<Part> = Vec::new();
    for found in file {
        let (key, series) = part_of(&found.key);
        let at = parts.iter().position(|it| it.key == key).unwrap_or_else(|| {
            let belongs = |it: &&Found| part_of(&it.key).0 == key;
            parts.push(Part {
                name: backup::name(&found.key, file),
                stands: Stands::New,
                differs: Vec::new(),
                usual: Choice::Merge,
                changed: false,
                shape: found.shape,
                key: key.clone(),
                series,
                here: here.iter().filter(belongs).cloned().collect(),
                file: Vec::new(),
            });
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

    fn look(&mut self, all_here: &[Found]) {
        if self.here.is_empty() {
            // A bike that stands here is not among those that were removed.
            let own = removed::read(&self.key).map(|it| it.1);
            let again = own.is_some_and(|own| all_here.iter().any(|it| it.key == own));
            self.stands = if again { Stands::Left } else { Stands::New };
            return;
        }
        if self.series {
            let new = self.new_items().len();
            if new > 0 {
                let label = if self.shape == Shape::Leaf { words::ENTRIES } else { words::SEASONS };
                let here = items(&self.here).len();
                self.differs = vec![words::more(label, here, new)];
            }
        } else if let ([here], [file]) = (&self.here[..], &self.file[..]) {
            if here.raw.is_some() || file.raw.is_some() || removed::read(&self.key).is_some() {
                let same = here.stored() == file.stored();
                self.stands = if same { Stands::Same } else { Stands::Left };
                return;
            }
            self.differs = differences(self.shape, &here.held, &file.held);
            let mark = |it: &Entries| it.entry(facts::SEASON_MARK.id()).text;
            let (own, theirs) = (mark(&here.held.entries), mark(&file.held.entries));
            // Another winter's days and ticks are not this one's.
            let put_away =
                format!("past.{}.", self.key.strip_prefix("season.").unwrap_or_default());
            let over = all_here
                .iter()
                .any(|it| it.key.starts_with(&put_away) && mark(&it.held.entries) == theirs);
            if !theirs.is_empty() && own != theirs && (!own.is_empty() || over) {
                self.usual = Choice::Leave;
            }
        }
        self.stands = if self.differs.is_empty() { Stands::Same } else { Stands::Differs };
    }

    /// Entries of the logbook, or past seasons, of which nothing is here.
    fn new_items(&self) -> Vec<Entries> {
        let mut new: Vec<Entries> = Vec::new();
        let mut book = self.book();
        let here = items(&self.here);
        for own in items(&self.file) {
            let known = match self.shape {
                Shape::Leaf => book.has(&own),
                _ => here.iter().chain(&new).any(|it| said(it).eq(said(&own))),
            };
            if !known && !own.is_empty() {
                if self.shape == Shape::Leaf {
                    book.add(own.clone());
                }
                new.push(own);
            }
        }
        new
    }

    fn book(&self) -> Logbook {
        let mut leaves = Vec::new();
        for it in self.here.iter().filter(|it| it.shape == Shape::Leaf) {
            let at = self.place(it);
            if leaves.len() <= at {
                leaves.resize(at + 1, Vec::new());
            }
            leaves[at] = it.held.fasteners.clone();
        }
        Logbook::of(leaves)
    }

    fn place(&self, it: &Found) -> usize {
        it.key.strip_prefix(&self.key).and_then(place).unwrap_or_default()
    }

    /// What is to be written for a choice.
    pub fn writes(&self, choice: Choice) -> Vec<Write> {
        let file = || self.file.iter().map(|it| (it.key.clone(), it.stored()));
        match (self.stands, choice) {
            (Stands::New, _) => file().collect(),
            (Stands::Same | Stands::Left, _) | (_, Choice::Leave) => Vec::new(),
            (_, Choice::Take) => {
                let gone = self.here.iter().filter(|it| self.file.iter().all(|f| f.key != it.key));
                gone.map(|it| (it.key.clone(), None)).chain(file()).collect()
            }
            (_, Choice::Merge) if self.series => self.merged_series(),
            (_, Choice::Merge) => match (&self.here[..], &self.file[..]) {
                ([here], [file]) => {
                    let held = merged(&here.held, &file.held);
                    let revision = here.revision.saturating_add(1);
                    let both = Found { held, revision, ..here.clone() };
                    vec![(both.key.clone(), both.stored())]
                }
                _ => Vec::new(),
            },
        }
    }

    fn merged_series(&self) -> Vec<Write> {
        let new = self.new_items();
        if self.shape == Shape::Leaf {
            let mut book = self.book();
            for own in new {
                book.add(own);
            }
            let leaf = |(at, _): (usize, Vec<Entries>)| {
                let key = format!("{}{at}", self.key);
                let before = self.here.iter().find(|it| it.key == key).map_or(0, |it| it.revision);
                let text = record::written(&book.leaf(at), before.saturating_add(1));
                (key, text)
            };
            return book.clone().take_changed().into_iter().map(leaf).collect();
        }
        let free = self.here.iter().map(|it| self.place(it) + 1).max().unwrap_or_default();
        let season = |(at, entries): (usize, Entries)| {
            (format!("{}{}", self.key, free + at), record::written(&Season { entries }, 1))
        };
        new.into_iter().enumerate().map(season).collect()
    }
}

/// Entries or seasons of several records.
fn items(all: &[Found]) -> Vec<Entries> {
    let of = |it: &Found| match it.shape {
        Shape::Leaf => it.held.fasteners.clone(),
        _ => vec![it.held.entries.clone()],
    };
    all.iter().flat_map(of).collect()
}

/// What is typed: when it was does not matter, nor what was emptied.
fn said(own: &Entries) -> impl Iterator<Item = (Id, &str, u8)> {
    own.iter().filter(|it| !it.1.is_blank()).map(|(id, it)| (*id, it.text.as_str(), it.unit))
}

/// What two records of one key have otherwise, in words.
fn differences(shape: Shape, here: &Bike, file: &Bike) -> Vec<String> {
    let mut all = Vec::new();
    let both = Entries::merged(&Entries::new(), &here.entries, &file.entries);
    let all_ids: Entries = both.into_iter().chain(here.entries.clone()).collect();
    for id in all_ids.keys() {
        let [own, theirs] = [here, file].map(|it| it.entries.entry(*id));
        let blank = own.is_blank() && theirs.is_blank();
        if !blank && (&own.text, own.unit) != (&theirs.text, theirs.unit) {
            let about = facts::about(*id);
            let told = |it: &Entry| match about {
                _ if it.is_blank() => words::NOTHING_SAID.to_owned(),
                Some(about) => backup::short(&facts::as_read(about, it)),
                None => backup::short(&it.text),
            };
            let label = about.map_or_else(|| words::unknown(id.0), |it| it.label.to_owned());
            all.push(words::differs(&label, &told(&own), &told(&theirs)));
        }
    }
    let mut list = |label: &str, here: &[Entries], file: &[Entries]| {
        let given = |it: &[Entries]| -> Vec<Entries> {
            it.iter().filter(|it| said(it).next().is_some()).cloned().collect()
        };
        let (here, file) = (given(here), given(file));
        let same = here.len() == file.len()
            && here.iter().zip(&file).all(|(one, other)| said(one).eq(said(other)));
        if !same {
            all.push(words::differs(label, &here.len().to_string(), &file.len().to_string()));
        }
    };
    let label = if shape == Shape::Garage { words::WRENCHES } else { words::FASTENERS };
    list(label, &here.fasteners, &file.fasteners);
    list(
        words::OPEN_FASTENER,
        std::slice::from_ref(&here.scratch),
        std::slice::from_ref(&file.scratch),
    );
    let others = |it: &Bike| it.others.iter().map(|it| it.1.clone()).collect::<Vec<_>>();
    list(words::OTHERS, &others(here), &others(file));
    all
}

/// Both of two records; of a fact given in both, the one typed last. Whether a bike is archived stays as it is here.
fn merged(here: &Bike, file: &Bike) -> Bike {
    let facts = |one: &Entries, other: &Entries| Entries::merged(&Entries::new(), one, other);
    let mut both = Bike {
        entries: facts(&here.entries, &file.entries),
        scratch: here.scratch.clone(),
        fasteners: here.fasteners.clone(),
        others: here.others.clone(),
    };
    let archived = facts::ARCHIVED.id();
    both.entries.remove(&archived);
    both.entries.extend(here.entries.get(&archived).map(|it| (archived, it.clone())));
    let mut theirs: Vec<&Entries> = file.fasteners.iter().collect();
    // One that is being filled in is not mixed with another: it becomes one of the list.
    if said(&here.scratch).next().is_none() {
        both.scratch = file.scratch.clone();
    } else if !said(&file.scratch).eq(said(&here.scratch)) {
        theirs.push(&file.scratch);
    }
    let same = |one: &Entries, other: &Entries| said(one).eq(said(other));
    // Those that have their like in the file are no others' like.
    let mut taken: Vec<bool> =
        here.fasteners.iter().map(|own| theirs.iter().any(|it| same(own, it))).collect();
    for own in theirs {
        if said(own).next().is_none() || both.fasteners.iter().any(|it| same(it, own)) {
            continue;
        }
        let like = (0..taken.len()).find(|at| !taken[*at] && is_like(&here.fasteners[*at], own));
        match like {
            Some(at) => {
                taken[at] = true;
                both.fasteners[at] = facts(&here.fasteners[at], own);
            }
            None => both.fasteners.push(own.clone()),
        }
    }
    for other in &file.others {
        if !both.others.contains(other) {
            both.others.push(other.clone());
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

/// What is to stand under a key where a restore is taken back: what stood there before, with what was typed since.
///
/// `before`, `written` and `now` are what stood there before the restore, after it, and when it is taken back.
pub fn taken_back(
    key: &str,
    before: Option<String>,
    written: Option<&str>,
    now: Option<&str>,
) -> Option<String> {
    if now == written {
        return before;
    }
    let found = |text: Option<&str>| Found::of(key, Shape::of(key)?, text?).ok();
    let three = (found(written), found(now), found(before.as_deref()));
    let (Some(base), Some(mine), Some(theirs)) = three else { return now.map(str::to_owned) };
    if mine.raw.is_some() {
        return now.map(str::to_owned);
    }
    let [base, own, theirs] =
        [base, mine.clone(), theirs].map(|it| Kept { bike: it.held, ..Kept::default() });
    let mut held = Kept::merged(&base, &own, &theirs).bike;
    if mine.shape == Shape::Leaf {
        // Entries written since stay.
        let [base, mut own, theirs] = [base, own, theirs].map(|it| it.bike.fasteners);
        own.retain(|it| theirs.contains(it) || !base.contains(it));
        let again: Vec<_> =
            theirs.into_iter().filter(|it| !base.contains(it) && !own.contains(it)).collect();
        own.extend(again);
        held.fasteners = own;
    }
    Found { held, revision: mine.revision.saturating_add(1), ..mine }.stored()
}
