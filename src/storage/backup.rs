//! One file of everything that is kept: JSON that people can read, and edit.
//!
//! ```text
//! {"torpor_backup": 1, "made": day, "about": for people, "contents": {key: name, …}, "records": [record, …]}
//! record = {"record": key, "name": for people, "lists": [list, …]}, or of what has no facts "stored": its text, in place of lists
//! list   = {"facts", "open_fastener", "fastener", "wrench" or "group_" and a number: {fact's key: fact, …}}
//! fact   = {"text": as typed, "unit": symbol or code of what a bare number meant, "value_" and a unit: the same for people,
//!           "edited": milliseconds, "id": number}
//! ```
//! A logbook is one record, its entries in the groups of their leaves; of a bike, groups are what only a newer page knows. A record
//! begins with "record", and nothing else looks like that, as within a text a quote has a backslash before it: what is left of
//! a damaged file is found by it, and `contents` tells what is gone. The form never changes: another one gets another number.

mod read;

pub use read::{File, read};

use super::json::Json;
use super::text::plain;
use super::{keys, record, removed};
use crate::digits;
use crate::entry::day_written;
use crate::entry::text::{has, joined, replaced};
use crate::facts;
use crate::garage::{Bike, Entries, Garage, Season};
use crate::units::Unit;
use crate::words::{backup as words, page as page_words};
use chrono::NaiveDate;

/// The longest file that is looked at, bytes: a full store is less.
pub const LONGEST: usize = 32 * 1024 * 1024;

/// So many places there are for a bike's past seasons and for the leaves of its logbook: more than any fills, and what stood beyond
/// them would be seen nowhere.
pub const PLACES: usize = 4096;

/// The name that says what a file is, and its form.
const FORM: &str = "torpor_backup";
const FACTS: &str = "facts";
const OPEN: &str = "open_fastener";
const GROUP: &str = "group_";
const VALUE: &str = "value_";

/// What sort of record stands under a key.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Shape {
    /// A bike.
    Bike,
    /// A season.
    Season,
    /// The garage.
    Garage,
    /// A logbook, in the store a leaf of one.
    Log,
    /// A text that is kept as it is.
    #[default]
    Text,
}

impl Shape {
    /// The shape of a key of ours; `None` for any other, and for what a backup has no part of.
    ///
    /// ```
    /// use torpor::storage::backup::Shape;
    /// assert_eq!(Shape::of("log.a1.0"), Some(Shape::Log));
    /// assert_eq!(Shape::of("../bike.a1"), None);
    /// assert_eq!(Shape::of("past.a1.4096"), None);
    /// ```
    pub fn of(key: &str) -> Option<Self> {
        let plain = |it: char| it.is_ascii_alphanumeric() || matches!(it, '.' | '-' | '_');
        if key.len() > 200 || !key.chars().all(plain) {
            return None;
        }
        let (_, sort, rest) = parted(key);
        let place = rest.split_once('.').map(|it| it.1.parse().unwrap_or(PLACES));
        match (sort, rest.is_empty()) {
            (keys::GARAGE, true) => Some(Self::Garage),
            (keys::CALENDAR | keys::DAMAGED, false) => Some(Self::Text),
            (keys::PAST, false) if place.is_some_and(|it| it < PLACES) => Some(Self::Season),
            (keys::LOG, false) if place.is_none_or(|it| it < PLACES) => Some(Self::Log),
            (keys::BIKE, false) if !has(rest, '.') => Some(Self::Bike),
            (keys::SEASON, false) if !has(rest, '.') => Some(Self::Season),
            _ => None,
        }
    }
}

/// A record, from the store or from a file.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Found {
    /// Its key, without the page's prefix; of a logbook without a leaf's number.
    pub key: String,
    /// What a file calls it.
    pub name: String,
    /// Its shape.
    pub shape: Shape,
    /// How often it was written here.
    pub revision: u64,
    /// What it holds: wrenches as fasteners, a logbook's entries as others, each with its leaf.
    pub held: Bike,
    /// The text of one that is kept as it is, or that cannot be read.
    pub raw: Option<String>,
}

impl Found {
    /// A record as it stands in the store; `None` where it is damaged or a newer page's.
    pub fn of(key: &str, shape: Shape, stored: &str) -> Option<Self> {
        let mut it = Self { key: key.to_owned(), shape, ..Self::default() };
        match shape {
            Shape::Bike => {
                let read = record::read::<Bike>(stored).ok()?;
                (it.held, it.revision) = (read.kept, read.revision);
            }
            Shape::Season => {
                let read = record::read::<Season>(stored).ok()?;
                (it.held.entries, it.revision) = (read.kept.entries, read.revision);
            }
            Shape::Garage => {
                let read = record::read::<Garage>(stored).ok()?;
                it.held.entries = read.kept.entries;
                (it.held.fasteners, it.revision) = (read.kept.wrenches, read.revision);
            }
            Shape::Log => {
                let read = record::read::<Vec<Entries>>(stored).ok()?;
                let (key, leaf) = key.rsplit_once('.')?;
                let leaf = leaf.parse().ok()?;
                it.held.others = read.kept.into_iter().map(|own| (leaf, own)).collect();
                (it.key, it.revision) = (key.to_owned(), read.revision);
            }
            Shape::Text => it.raw = Some(stored.to_owned()),
        }
        Some(it)
    }

    /// Adds the texts that the store keeps of it, with their keys.
    pub fn stored(&self, into: &mut Vec<(String, Option<String>)>) {
        let (held, next) = (&self.held, self.revision.saturating_add(1));
        let entries = held.entries.clone();
        let text = match self.shape {
            Shape::Text => self.raw.clone(),
            Shape::Bike => record::written(held, next),
            Shape::Season => record::written(&Season { entries }, next),
            Shape::Garage => {
                record::written(&Garage { entries, wrenches: held.fasteners.clone() }, next)
            }
            Shape::Log => {
                let mut rest = held.others.clone();
                while let Some(leaf) = rest.first().map(|it| it.0) {
                    let mut all = Vec::new();
                    rest.retain(|it| {
                        if it.0 == leaf {
                            all.push(it.1.clone());
                        }
                        it.0 != leaf
                    });
                    let key = format!("{}.{leaf}", self.key);
                    into.push((key, record::written(&all, next)));
                }
                return;
            }
        };
        into.extend(text.map(|it| (self.key.clone(), Some(it))));
    }
}

/// Adds a record to others, where there is none of its key yet; a leaf to those of its logbook.
fn add(all: &mut Vec<Found>, new: Found) {
    match all.iter_mut().find(|it| it.key == new.key) {
        Some(it) if it.shape == Shape::Log => {
            it.revision = it.revision.max(new.revision);
            it.held.others.extend(new.held.others);
        }
        Some(_) => {}
        None => all.push(new),
    }
}

/// Records with their keys, as the store has them, that a backup holds.
pub fn found(records: &[(String, String)]) -> Vec<Found> {
    let mut all = Vec::new();
    for (key, stored) in records {
        if let Some(shape) = Shape::of(key) {
            // What cannot be read here may be read by another page.
            let it = Found::of(key, shape, stored).or_else(|| Found::of(key, Shape::Text, stored));
            if let Some(it) = it {
                add(&mut all, it);
            }
        }
    }
    all
}

/// What stands before a key where its bike was removed, its sort, and what is behind that.
fn parted(key: &str) -> (&str, &str, &str) {
    let own = removed::read(key).map_or(key, |it| it.1);
    let (sort, rest) = own.split_once('.').unwrap_or((own, ""));
    (key.strip_suffix(own).unwrap_or_default(), sort, rest)
}

/// The key of the bike that a record is of; its own where it is of none.
///
/// ```
/// use torpor::storage::backup::bike_of;
/// assert_eq!(bike_of("removed.2026-11-20.log.b2.0"), "removed.2026-11-20.bike.b2");
/// assert_eq!(bike_of("garage"), "garage");
/// ```
pub fn bike_of(key: &str) -> String {
    let (start, sort, rest) = parted(key);
    match sort {
        keys::GARAGE | keys::DAMAGED => key.to_owned(),
        _ => joined(&[start, keys::BIKE, ".", rest.split_once('.').map_or(rest, |it| it.0)], ""),
    }
}

/// What a record is called; the bike's name is looked for among `all`.
fn name(key: &str, all: &[Found]) -> String {
    let (start, sort, _) = parted(key);
    let what = match sort {
        keys::GARAGE => return words::GARAGE.to_owned(),
        keys::BIKE => "",
        keys::SEASON => words::SEASON,
        keys::PAST => words::PAST,
        keys::LOG => words::LOGBOOK,
        _ => words::OTHER,
    };
    let bike = bike_of(key);
    let bike = all.iter().find(|it| it.key == bike);
    let bike = bike.and_then(|it| facts::BIKE_NAME.known(&it.held.entries));
    let bike = bike.unwrap_or_else(|| page_words::YOUR_BIKE.to_owned());
    joined(&[bike.as_str(), what, if start.is_empty() { "" } else { words::REMOVED }], "")
}

/// A text of a file as it is shown: without what hides, and not without end.
#[inline(never)]
fn short(text: &str) -> String {
    plain(text).chars().take(80).collect()
}

type Named = Vec<(String, Json)>;

#[inline(never)]
fn put(into: &mut Named, name: &str, value: Json) {
    into.push((name.to_owned(), value));
}

#[inline(never)]
fn put_text(into: &mut Named, name: &str, text: &str) {
    put(into, name, Json::text(text));
}

#[inline(never)]
fn put_number(into: &mut Named, name: &str, number: u64) {
    if number > 0 {
        put(into, name, Json::Bare(number.to_string()));
    }
}

/// Writes everything that is kept as the text of a backup file.
///
/// ```
/// use chrono::NaiveDate;
/// use torpor::storage::{backup, record};
/// use torpor::{entry::Entry, facts, garage::{Entries, Season}};
/// let season = Season { entries: Entries::from([(facts::PARK_DATE.id(), Entry::new("Nov 14", 0))]) };
/// let kept = backup::found(&[("season.a1".to_owned(), record::written(&season, 3).unwrap())]);
/// let text = backup::written(&kept, NaiveDate::from_ymd_opt(2026, 11, 14).unwrap());
/// let back = backup::read(&text);
/// assert!(back.wrong.is_empty());
/// assert_eq!(back.records[0].held, kept[0].held);
/// ```
pub fn written(all: &[Found], made: NaiveDate) -> String {
    let (mut contents, mut records, mut file) = (Vec::new(), Vec::new(), Vec::new());
    for it in all {
        let (name, mut record) = (name(&it.key, all), Vec::new());
        put_text(&mut contents, &it.key, &name);
        put_text(&mut record, "record", &it.key);
        put_text(&mut record, "name", &name);
        if let Some(raw) = &it.raw {
            put_text(&mut record, "stored", raw);
        } else {
            let mut lists = vec![list(FACTS, &it.held.entries)];
            let one = if it.shape == Shape::Garage { "wrench" } else { "fastener" };
            for own in &it.held.fasteners {
                lists.push(list(one, own));
            }
            if !it.held.scratch.is_empty() {
                lists.push(list(OPEN, &it.held.scratch));
            }
            for (group, own) in &it.held.others {
                lists.push(list(&format!("{GROUP}{group}"), own));
            }
            put(&mut record, "lists", Json::List(lists));
        }
        records.push(Json::Map(record));
    }
    put_number(&mut file, FORM, 1);
    put_text(&mut file, "made", &day_written(made));
    put_text(&mut file, "about", words::ABOUT);
    put(&mut file, "contents", Json::Map(contents));
    put(&mut file, "records", Json::List(records));
    Json::Map(file).written()
}

/// The name of a value for people.
fn value_in(unit: &Unit) -> String {
    joined(&[VALUE, &replaced(unit.symbol, " ", "_")], "")
}

#[inline(never)]
fn list(name: &str, own: &Entries) -> Json {
    let (mut all, mut list) = (Vec::new(), Vec::new());
    for (id, entry) in own.iter() {
        let mut fact = Vec::new();
        put_text(&mut fact, "text", &entry.text);
        match entry.unit() {
            Some(unit) => put_text(&mut fact, "unit", unit.symbol),
            None => put_number(&mut fact, "unit", u64::from(entry.unit)),
        }
        let about = facts::about(*id);
        if let Some((value, unit)) = about.and_then(|it| facts::value(it, entry)) {
            put(&mut fact, &value_in(unit), Json::Bare(digits::exact(value)));
        }
        put_number(&mut fact, "edited", entry.edited);
        put_number(&mut fact, "id", u64::from(id.0));
        put(&mut all, about.map_or("newer", |it| it.key), Json::Map(fact));
    }
    put(&mut list, name, Json::Map(all));
    Json::Map(list)
}
