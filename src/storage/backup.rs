//! One file of everything that is kept: JSON that people can read, and edit.
//!
//! ```text
//! {"torpor_backup": 1, "made": day, "contents": {key: name, …}, "records": [record, …]}
//! record = {"record": key, "name": for people, "revision", "sum": CRC-32 of the stored text,
//!           "facts": {fact's key: fact, …}, then of a bike "open_fastener", "fasteners", "others"; of a garage "wrenches";
//!           of a leaf of the logbook "entries"; or "stored": the text as it is kept, of what has no facts}
//! fact   = {"text": as typed, "unit": symbol or code of what a bare number meant, "edited": milliseconds, "id": number}
//! ```
//! Beside a text stands what it means, under `value_` and the unit, or `means`: for people, and read only where no text is. A fact
//! that is nothing but a text is taken, too. The form never changes: another form gets another number. What is left of a damaged
//! file is found by its records' beginnings, each for itself; `contents` tells which ones are gone.

mod read;

pub use read::{File, read};

use super::checksum::crc32;
use super::json::Json;
use super::record::{self, Unreadable};
use super::removed;
use super::text::plain;
use crate::digits;
use crate::entry::text::replaced;
use crate::entry::{Entry, day_written};
use crate::facts::{self, Id};
use crate::garage::{Bike, Entries, Garage, Season};
use crate::words::{backup as words, page as page_words};
use chrono::NaiveDate;
use serde::de::DeserializeOwned;

/// The longest file that is looked at, bytes: a full store is less.
pub const LONGEST: usize = 32 * 1024 * 1024;
/// The name that says what the file is, and its form.
const FORM: &str = "torpor_backup";
const CONTENTS: &str = "contents";
const RECORD: &str = "record";
const NAME: &str = "name";
const FACTS: &str = "facts";
const SCRATCH: &str = "open_fastener";
const OTHERS: &str = "others";
const STORED: &str = "stored";

/// What sort of record stands under a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// A bike.
    Bike,
    /// A season.
    Season,
    /// The garage.
    Garage,
    /// A leaf of a logbook.
    Leaf,
    /// A text that is kept as it is.
    Text,
}

impl Shape {
    /// The shape of a key of ours; `None` for any other, and for what a backup has no part of.
    ///
    /// ```
    /// use torpor::storage::backup::Shape;
    /// assert_eq!(Shape::of("log.a1.0"), Some(Shape::Leaf));
    /// assert_eq!(Shape::of("../bike.a1"), None);
    /// ```
    pub fn of(key: &str) -> Option<Self> {
        let plain = |it: char| it.is_ascii_alphanumeric() || matches!(it, '.' | '-' | '_');
        if key.len() > 200 || !key.chars().all(plain) {
            return None;
        }
        if let Some((_, own)) = removed::read(key) {
            return Self::of(own).filter(|it| *it != Self::Garage && own != "open");
        }
        let (sort, rest) = key.split_once('.').unwrap_or((key, ""));
        let (bike, number) = rest.split_once('.').unwrap_or((rest, ""));
        let whole = !bike.is_empty() && number.is_empty() && !rest.ends_with('.');
        let numbered = !bike.is_empty() && place(number).is_some();
        match sort {
            "garage" | "open" if key != sort => None,
            "garage" => Some(Self::Garage),
            "open" => Some(Self::Text),
            "bike" if whole => Some(Self::Bike),
            "season" if whole => Some(Self::Season),
            "calendar" if whole => Some(Self::Text),
            "log" if numbered => Some(Self::Leaf),
            "past" if numbered => Some(Self::Season),
            "bench" | "damaged" if !bike.is_empty() && !number.is_empty() => Some(Self::Text),
            _ => None,
        }
    }

    /// The name of the list that such a record holds, if it holds one.
    fn list(self) -> Option<&'static str> {
        match self {
            Self::Bike => Some("fasteners"),
            Self::Garage => Some("wrenches"),
            Self::Leaf => Some("entries"),
            Self::Season | Self::Text => None,
        }
    }
}

/// A leaf's or a past season's number, as it is written: no sign, no nought in front.
pub(super) fn place(number: &str) -> Option<usize> {
    let place = number.parse().ok().filter(|it| *it < 4096)?;
    (usize::to_string(&place) == number).then_some(place)
}

/// A record, from the store or from a file.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// Its key, without the page's prefix.
    pub key: String,
    /// Its shape.
    pub shape: Shape,
    /// How often it was written.
    pub revision: u64,
    /// What it holds. A record of another shape has its facts and its list there, where a bike has them.
    pub held: Bike,
    /// The text of one that is kept as it is, or that cannot be read.
    pub raw: Option<String>,
    /// It is not what was saved: the file was changed by hand or damaged.
    pub changed: bool,
}

impl Found {
    /// A record as it stands in the store.
    ///
    /// # Errors
    /// It is damaged or a newer page's.
    pub fn of(key: &str, shape: Shape, stored: &str) -> Result<Self, Unreadable> {
        fn read<T: DeserializeOwned>(
            stored: &str,
            as_bike: fn(T) -> Bike,
        ) -> Result<(u64, Bike), Unreadable> {
            record::read(stored).map(|it| (it.revision, as_bike(it.kept)))
        }
        let list = |fasteners: Vec<Entries>| Bike { fasteners, ..Bike::default() };
        let (revision, held) = match shape {
            Shape::Bike => read(stored, |it: Bike| it)?,
            Shape::Season => {
                read(stored, |it: Season| Bike { entries: it.entries, ..Bike::default() })?
            }
            Shape::Garage => read(stored, |it: Garage| Bike {
                entries: it.entries,
                fasteners: it.wrenches,
                ..Bike::default()
            })?,
            Shape::Leaf => read(stored, list)?,
            Shape::Text => (0, Bike::default()),
        };
        let raw = (shape == Shape::Text).then(|| stored.to_owned());
        Ok(Self { key: key.to_owned(), shape, revision, held, raw, changed: false })
    }

    /// The text that the store keeps of it.
    pub fn stored(&self) -> Option<String> {
        let (held, revision) = (&self.held, self.revision);
        let entries = || held.entries.clone();
        match (self.shape, &self.raw) {
            (_, Some(raw)) => Some(raw.clone()),
            (Shape::Bike, _) => record::written(held, revision),
            (Shape::Season, _) => record::written(&Season { entries: entries() }, revision),
            (Shape::Garage, _) => record::written(
                &Garage { entries: entries(), wrenches: held.fasteners.clone() },
                revision,
            ),
            (Shape::Leaf, _) => record::written(&held.fasteners, revision),
            (Shape::Text, _) => None,
        }
    }

    fn sum(&self) -> String {
        crc32(self.stored().unwrap_or_default().as_bytes()).to_string()
    }
}

/// What a record is called. The bike's name is looked for among `all`.
pub fn name(key: &str, all: &[Found]) -> String {
    if let Some((_, own)) = removed::read(key) {
        return words::removed(&name_of(own, key, all));
    }
    name_of(key, key, all)
}

fn name_of(own: &str, key: &str, all: &[Found]) -> String {
    let (sort, rest) = own.split_once('.').unwrap_or((own, ""));
    let bike = rest.split_once('.').map_or(rest, |it| it.0);
    match sort {
        "garage" => return words::GARAGE.to_owned(),
        "open" => return words::WAS_OPEN.to_owned(),
        "damaged" => return words::SET_ASIDE.to_owned(),
        _ => {}
    }
    // Of a removed one the bike is a removed one, too.
    let start = key.strip_suffix(own).unwrap_or_default();
    let of = |it: &&Found| {
        let key = it.key.strip_prefix(start).and_then(|it| it.strip_prefix("bike."));
        key == Some(bike)
    };
    let name = all.iter().find(of).and_then(|it| facts::BIKE_NAME.known(&it.held.entries));
    let name = name.map_or_else(|| page_words::YOUR_BIKE.to_owned(), |it| short(&it));
    match sort {
        "bike" => name,
        "season" => words::season(&name),
        "past" => words::past(&name),
        "log" => words::logbook(&name),
        _ => words::other(&name),
    }
}

/// A text of a file as it is shown: without what hides, and not without end.
pub(super) fn short(text: &str) -> String {
    plain(text).chars().take(80).collect()
}

/// Records with their keys, as the store has them, that a backup holds.
pub fn found(records: &[(String, String)]) -> Vec<Found> {
    let one = |(key, stored): &(String, String)| {
        let shape = Shape::of(key)?;
        // What cannot be read here may be read by another page.
        let raw = || Found {
            key: key.clone(),
            shape,
            revision: 0,
            held: Bike::default(),
            raw: Some(stored.clone()),
            changed: false,
        };
        Some(Found::of(key, shape, stored).unwrap_or_else(|_| raw()))
    };
    records.iter().filter_map(one).collect()
}

fn bare(number: impl ToString) -> Json {
    Json::Bare(number.to_string())
}

/// Writes everything that is kept as the text of a backup file.
///
/// ```
/// use chrono::NaiveDate;
/// use torpor::storage::{backup, record};
/// use torpor::{entry::Entry, facts, garage::{Entries, Season}};
/// let season = Season { entries: Entries::from([(facts::PARK_DATE.id(), Entry::new("Nov 14", 0))]) };
/// let kept = [("season.a1".to_owned(), record::written(&season, 3).unwrap())];
/// let text = backup::written(&backup::found(&kept), NaiveDate::from_ymd_opt(2026, 11, 14).unwrap());
/// let back = backup::read(&text).unwrap();
/// assert!(back.wrong.is_empty());
/// assert_eq!(back.records[0].stored().unwrap(), kept[0].1);
/// ```
pub fn written(all: &[Found], made: NaiveDate) -> String {
    let named = |name: &str, value: Json| (name.to_owned(), value);
    let names: Vec<String> = all.iter().map(|it| name(&it.key, all)).collect();
    let contents = all.iter().zip(&names).map(|(it, name)| named(&it.key, Json::text(name)));
    let one = |(it, name): (&Found, &String)| {
        let held = &it.held;
        let mut map = vec![
            named(RECORD, Json::text(&it.key)),
            named(NAME, Json::text(name)),
            named("revision", bare(it.revision)),
            named("sum", Json::Text(it.sum())),
        ];
        let lists = |all: &[Entries]| Json::List(all.iter().map(facts_of).collect());
        if let Some(raw) = &it.raw {
            map.push(named(STORED, Json::text(raw)));
        } else if it.shape != Shape::Leaf {
            map.push(named(FACTS, facts_of(&held.entries)));
        }
        if let (Some(list), None) = (it.shape.list(), &it.raw) {
            map.push(named(list, lists(&held.fasteners)));
        }
        if !held.scratch.is_empty() {
            map.push(named(SCRATCH, facts_of(&held.scratch)));
        }
        if !held.others.is_empty() {
            let other = |(kind, own): &(u64, Entries)| {
                Json::Map(vec![named("kind", bare(kind)), named(FACTS, facts_of(own))])
            };
            map.push(named(OTHERS, Json::List(held.others.iter().map(other).collect())));
        }
        Json::Map(map)
    };
    Json::Map(vec![
        named(FORM, bare(1)),
        named("made", Json::Text(day_written(made))),
        named("about", Json::text(words::ABOUT)),
        named(CONTENTS, Json::Map(contents.collect())),
        named("records", Json::List(all.iter().zip(&names).map(one).collect())),
    ])
    .written()
}

/// The part of a value's name that says its unit.
fn in_name(symbol: &str) -> String {
    replaced(symbol, " ", "_")
}

fn facts_of(own: &Entries) -> Json {
    let fact = |(id, entry): (&Id, &Entry)| {
        let about = facts::about(*id);
        let mut map = vec![("text".to_owned(), Json::text(&entry.text))];
        let mut also = |name: &str, value: Json| map.push((name.to_owned(), value));
        match entry.unit() {
            Some(unit) => also("unit", Json::text(unit.symbol)),
            None if entry.unit > 0 => also("unit", bare(entry.unit)),
            None => {}
        }
        let value = about.and_then(|it| facts::value(it, entry));
        let means = about.map(|it| facts::as_read(it, entry)).filter(|it| it != entry.text.trim());
        match (value, means) {
            (Some((value, unit)), _) => {
                also(&format!("value_{}", in_name(unit.symbol)), Json::Bare(digits::exact(value)));
            }
            (None, Some(means)) => also("means", Json::Text(means)),
            _ => {}
        }
        if entry.edited > 0 {
            also("edited", bare(entry.edited));
        }
        also("id", bare(id.0));
        (about.map_or_else(|| format!("fact_{}", id.0), |it| it.key.to_owned()), Json::Map(map))
    };
    Json::Map(own.iter().map(fact).collect())
}
