//! One file of everything that is kept: JSON that people can read, and edit.
//!
//! ```text
//! {"torpor_backup": 1, "made": day, "contents": {key: name, …}, "records": [record, …]}
//! record = {"record": key, "name": for people, "revision", "sum": CRC-32 of key, blank and the text in the store, "lists": [list, …]}
//!          or, of what has no facts, in place of the lists "stored": that text
//! list   = {"facts" or "wrench", "fastener", "open_fastener", "entry" or "kind_" and a number: {fact's key: fact, …}}
//! fact   = {"text": as typed, "unit": symbol or code of what a bare number meant, "edited": milliseconds, "id": number}
//! ```
//! Beside a text stands what it means, under `value_` and the unit, or `means`: for people, and read only where no text is. A
//! fact that is nothing but a text is taken, too. The form never changes: another form gets another number. What is left of a
//! damaged file is found by its records' beginnings, each for itself; `contents` tells which ones are gone.

mod read;

pub use read::{File, read};

use super::checksum::crc32;
use super::json::quoted_text;
use super::record::{self, Unreadable};
use super::removed;
use super::text::plain;
use crate::digits;
use crate::entry::text::{joined, replaced};
use crate::entry::{Entry, day_written};
use crate::facts::{self, Id};
use crate::garage::{Bike, Entries, Garage, Season};
use crate::words::{backup as words, page as page_words};
use chrono::NaiveDate;

/// The longest file that is looked at, bytes: a full store is less.
pub const LONGEST: usize = 32 * 1024 * 1024;

/// Facts by what they are of, as a record has them: its own, a wrench's, a fastener's, those of one being filled in, a logbook
/// entry's. Numbers as in a link; others are a newer page's.
pub type Lists = Vec<(u64, Entries)>;
const KINDS: [&str; 5] = ["facts", "wrench", "fastener", "open_fastener", "entry"];
/// A record's own facts.
pub(super) const OWN: u64 = 0;
const WRENCH: u64 = 1;
/// A fastener in the list.
pub(super) const FASTENER: u64 = 2;
/// The fastener that is being filled in.
pub(super) const OPEN: u64 = 3;
const ENTRY: u64 = 4;

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
        let whole = !bike.is_empty() && bike == rest;
        let numbered = !bike.is_empty() && place(number).is_some();
        match sort {
            "garage" if key == sort => Some(Self::Garage),
            "open" if key == sort => Some(Self::Text),
            "bike" if whole => Some(Self::Bike),
            "season" if whole => Some(Self::Season),
            "past" if numbered => Some(Self::Season),
            "log" if numbered => Some(Self::Leaf),
            "calendar" | "bench" | "damaged" if !bike.is_empty() => Some(Self::Text),
            _ => None,
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
    /// What it holds.
    pub held: Lists,
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
        let mut held = Lists::new();
        let mut several =
            |kind: u64, all: Vec<Entries>| held.extend(all.into_iter().map(|it| (kind, it)));
        let revision = match shape {
            Shape::Bike => {
                let it = record::read::<Bike>(stored)?;
                several(OWN, vec![it.kept.entries]);
                several(FASTENER, it.kept.fasteners);
                several(OPEN, vec![it.kept.scratch]);
                held.extend(it.kept.others);
                it.revision
            }
            Shape::Season => {
                let it = record::read::<Season>(stored)?;
                several(OWN, vec![it.kept.entries]);
                it.revision
            }
            Shape::Garage => {
                let it = record::read::<Garage>(stored)?;
                several(OWN, vec![it.kept.entries]);
                several(WRENCH, it.kept.wrenches);
                it.revision
            }
            Shape::Leaf => {
                let it = record::read::<Vec<Entries>>(stored)?;
                several(ENTRY, it.kept);
                it.revision
            }
            Shape::Text => 0,
        };
        let raw = (shape == Shape::Text).then(|| stored.to_owned());
        Ok(Self { key: key.to_owned(), shape, revision, held, raw, changed: false })
    }

    /// The text that the store keeps of it.
    pub fn stored(&self) -> Option<String> {
        if self.raw.is_some() {
            return self.raw.clone();
        }
        let mut all = Bike::default();
        for (kind, own) in self.held.iter().cloned() {
            match kind {
                OWN => all.entries = own,
                OPEN => all.scratch = own,
                WRENCH | FASTENER | ENTRY => all.fasteners.push(own),
                _ => all.others.push((kind, own)),
            }
        }
        let Bike { entries, fasteners: wrenches, .. } = all;
        match self.shape {
            Shape::Bike => {
                record::written(&Bike { entries, fasteners: wrenches, ..all }, self.revision)
            }
            Shape::Season => record::written(&Season { entries }, self.revision),
            Shape::Garage => record::written(&Garage { entries, wrenches }, self.revision),
            Shape::Leaf => record::written(&wrenches, self.revision),
            Shape::Text => None,
        }
    }

    /// Its own facts.
    pub fn own(&self) -> Entries {
        self.held.iter().find(|it| it.0 == OWN).map(|it| it.1.clone()).unwrap_or_default()
    }

    fn sum(&self) -> String {
        let all = [self.key.as_str(), &self.stored().unwrap_or_default()];
        u64::from(crc32(joined(&all, " ").as_bytes())).to_string()
    }
}

/// What a record is called. The bike's name is looked for among `all`, then among `others`.
pub fn name(key: &str, all: &[Found], others: &[Found]) -> String {
    let own = removed::read(key).map_or(key, |it| it.1);
    let (sort, rest) = own.split_once('.').unwrap_or((own, ""));
    let bike = rest.split_once('.').map_or(rest, |it| it.0);
    let what = match sort {
        "garage" => return words::GARAGE.to_owned(),
        "open" | "damaged" => return words::SET_ASIDE.to_owned(),
        "bike" => "",
        "season" => words::SEASON,
        "past" => words::PAST,
        "log" => words::LOGBOOK,
        _ => words::OTHER,
    };
    let start = key.strip_suffix(own).unwrap_or_default();
    let bike = format!("{start}bike.{bike}");
    let name = all.iter().chain(others).find(|it| it.key == bike);
    let name = name.and_then(|it| facts::BIKE_NAME.known(&it.own()));
    let name = name.map_or_else(|| page_words::YOUR_BIKE.to_owned(), |it| short(&it));
    joined(&[name.as_str(), what, if start.is_empty() { "" } else { words::REMOVED }], "")
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
        let raw = || Found::of(key, Shape::Text, stored).map(|it| Found { shape, ..it });
        Found::of(key, shape, stored).or_else(|_| raw()).ok()
    };
    records.iter().filter_map(one).collect()
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
    let (mut contents, mut records) = (Vec::new(), Vec::new());
    for it in all {
        let (key, name) = (quoted_text(&it.key), quoted_text(&name(&it.key, all, &[])));
        contents.push(format!("\n{key}: {name}"));
        let held = match &it.raw {
            Some(raw) => format!("\"stored\": {}", quoted_text(raw)),
            None => {
                let lists: Vec<String> = it.held.iter().map(list).collect();
                format!("\"lists\": [{}]", joined(&lists, ","))
            }
        };
        let (revision, sum) = (it.revision, it.sum());
        records.push(format!("\n{{\"record\": {key}, \"name\": {name}, \"revision\": {revision}, \"sum\": \"{sum}\", {held}}}"));
    }
    format!(
        "{{\"torpor_backup\": 1,\n\"made\": \"{}\",\n\"about\": \"{}\",\n\"contents\": {{{}}},\n\"records\": [{}]}}\n",
        day_written(made),
        words::ABOUT,
        joined(&contents, ","),
        joined(&records, ",")
    )
}

fn list((kind, own): &(u64, Entries)) -> String {
    let facts: Vec<String> = own.iter().map(fact).collect();
    let kind =
        KINDS.get(*kind as usize).map_or_else(|| format!("kind_{kind}"), |it| (*it).to_owned());
    format!("\n {{\"{kind}\": {{{}}}}}", joined(&facts, ","))
}

/// The part of a value's name that says its unit.
fn in_name(symbol: &str) -> String {
    replaced(symbol, " ", "_")
}

fn fact((id, entry): (&Id, &Entry)) -> String {
    let number = u64::from(id.0);
    let about = facts::about(*id);
    let key = about.map_or_else(|| format!("fact_{number}"), |it| it.key.to_owned());
    let mut text = format!("\n  \"{key}\": {{\"text\": {}", quoted_text(&entry.text));
    match entry.unit() {
        Some(unit) => text.push_str(&format!(", \"unit\": \"{}\"", unit.symbol)),
        None if entry.unit > 0 => text.push_str(&format!(", \"unit\": {}", u64::from(entry.unit))),
        None => {}
    }
    if let Some(about) = about {
        let means = facts::as_read(about, entry);
        if let Some((value, unit)) = facts::value(about, entry) {
            let value = digits::exact(value);
            text.push_str(&format!(", \"value_{}\": {value}", in_name(unit.symbol)));
        } else if means != entry.text.trim() {
            text.push_str(&format!(", \"means\": {}", quoted_text(&means)));
        }
    }
    if entry.edited > 0 {
        text.push_str(&format!(", \"edited\": {}", entry.edited));
    }
    text.push_str(&format!(", \"id\": {number}}}"));
    text
}
