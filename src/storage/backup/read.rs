//! A backup file, read: whole, or what is left of it.

use super::{FACTS, FORM, Found, GROUP, OPEN, Shape, VALUE, add, short, value_in};
use crate::entry::text::{cut, from, joined, past, without_end};
use crate::entry::{self, Entry, LONGEST};
use crate::facts::{self, Id};
use crate::garage::{Bike, Entries};
use crate::storage::json::{Json, first};
use crate::storage::record::{PREFIX, SCHEMA};
use crate::units;
use crate::words::backup as words;
use chrono::NaiveDate;

/// Longer texts are damage or malice: sixteen times what an entry takes, in bytes.
const LONGEST_TEXT: usize = 64 * LONGEST;

/// More records than any store holds; what comes behind them is not read.
const MOST_RECORDS: usize = 8192;

/// What a record begins with.
const START: &str = "\"record\":";

/// What a file brings.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct File {
    /// Records that are whole.
    pub records: Vec<Found>,
    /// What is not taken, and why.
    pub wrong: Vec<String>,
    /// The day it was made, where it says so.
    pub made: Option<NaiveDate>,
    seen: Vec<String>,
}

/// Reads a backup file, or what the rescue panel copied. Each record stands for itself.
pub fn read(text: &str) -> File {
    let text = past(text, |it| it == '\u{feff}');
    let mut pieces = Vec::new();
    let head = Json::read(text).or_else(|| {
        pieces = parts(text);
        let head = without_end(pieces.first()?, |it| it == '{' || it.is_ascii_whitespace());
        Json::read(&joined(&[head, "]}"], ""))
    });
    // What it names cannot be missed then, so that something may be gone.
    let headless = head.is_none();
    let head = head.unwrap_or(Json::List(Vec::new()));
    let mut file = File::default();
    let made = Entry::new(said(&head, "made"), entry::form::NONE);
    file.made = entry::day(&made).ok().flatten();
    let form = said(&head, FORM);
    if !matches!(form, "" | "1") {
        file.wrong.push(words::NEWER.to_owned());
        return file;
    }
    if let Some(Json::List(all)) = head.get("records") {
        all.iter().take(MOST_RECORDS).for_each(|it| file.take(it));
    }
    let mut lost = 0usize;
    for piece in pieces.iter().skip(1).take(MOST_RECORDS) {
        match first(&joined(&["{", START, piece], "")) {
            Some((json, _)) => file.take(&json),
            None => lost += 1,
        }
    }
    if let (Json::Map(all), "") = (&head, form) {
        for (key, stored) in all.iter().take(MOST_RECORDS) {
            if let (Some(key), Json::Text(stored)) = (key.strip_prefix(PREFIX), stored) {
                file.take_stored(key, key, stored);
            }
        }
    }
    if let Some(names @ Json::Map(contents)) = head.get("contents") {
        for (key, _) in contents.iter().take(MOST_RECORDS) {
            if !file.seen.contains(key) {
                lost = lost.saturating_sub(1);
                file.wrong.push(words::lost(&short(said(names, key))));
            }
        }
    }
    if lost > 0 || headless {
        file.wrong.push(words::lost(words::NAMELESS));
    }
    // A file that has lost its head is known by its records.
    if form.is_empty() && file.records.is_empty() {
        file.wrong = vec![words::NO_BACKUP.to_owned()];
    }
    file
}

/// What stands between the beginnings of records.
fn parts(text: &str) -> Vec<&str> {
    let (mut all, mut piece, mut rest) = (Vec::new(), text, text);
    while let Some(next) = rest.chars().next() {
        if let Some(behind) = rest.strip_prefix(START) {
            all.push(cut(piece, piece.len() - rest.len()).0);
            (piece, rest) = (behind, behind);
        } else {
            rest = from(rest, next.len_utf8());
        }
    }
    all.push(piece);
    all
}

/// A text, or a number where somebody forgot the quotes; nothing where there is none.
#[inline(never)]
fn said<'a>(json: &'a Json, name: &str) -> &'a str {
    match json.get(name) {
        Some(Json::Text(it) | Json::Bare(it)) => it,
        _ => "",
    }
}

/// A number without sign or point; nought where there is none.
#[inline(never)]
fn number(text: &str) -> u64 {
    text.parse().unwrap_or_default()
}

impl File {
    /// Takes a record as the store has it.
    fn take_stored(&mut self, key: &str, name: &str, stored: &str) {
        // The day of the last backup is none of it.
        if let Some(shape) = Shape::of(key) {
            match Found::of(key, shape, stored) {
                Some(mut it) => {
                    it.name = short(name);
                    add(&mut self.records, it);
                }
                None => {
                    let schema = stored.split_once('.').map_or("", |it| it.0);
                    let newer = number(schema) > u64::from(SCHEMA);
                    self.wrong.push(if newer { words::newer(name) } else { words::lost(name) });
                }
            }
        }
    }

    fn take(&mut self, json: &Json) {
        let key = said(json, "record");
        let name = match said(json, "name") {
            "" => short(key),
            name => short(name),
        };
        let shape = Shape::of(key).filter(|_| self.seen.iter().all(|it| it != key));
        let Some(shape) = shape else { return self.wrong.push(words::not_ours(&name)) };
        self.seen.push(key.to_owned());
        let Some(Json::List(lists)) = json.get("lists").filter(|_| shape != Shape::Text) else {
            return self.take_stored(key, &name, said(json, "stored"));
        };
        let mut held = Bike::default();
        for list in lists {
            let Json::Map(list) = list else {
                self.wrong.push(words::wrong_fact(&name, "lists", words::NO_LIST));
                continue;
            };
            for (of, facts) in list {
                let mut own = Entries::new();
                let into = match of.as_str() {
                    FACTS => &mut held.entries,
                    OPEN => &mut held.scratch,
                    _ => &mut own,
                };
                self.facts(&name, of, facts, into);
                match (of.as_str(), of.strip_prefix(GROUP)) {
                    (FACTS | OPEN, _) => {}
                    (_, Some(group)) => held.others.push((number(group), own)),
                    ("fastener" | "wrench", _) => held.fasteners.push(own),
                    _ => self.wrong.push(words::wrong_fact(&name, &short(of), words::NO_LIST)),
                }
            }
        }
        self.records.push(Found { key: key.to_owned(), name, shape, held, ..Found::default() });
    }

    /// Takes facts, and names those that it cannot take: they stand there blank, and never typed.
    fn facts(&mut self, name: &str, of: &str, json: &Json, own: &mut Entries) {
        let Json::Map(all) = json else {
            return self.wrong.push(words::wrong_fact(name, &short(of), words::NO_LIST));
        };
        let mut wrong = Vec::new();
        for (key, it) in all {
            let (id, mut entry, mut why) = fact(key, it);
            if own.get(&id).is_some() {
                (entry, why) = (Entry::default(), words::TWICE.to_owned());
            }
            if !why.is_empty() {
                wrong.push((key, why));
            }
            if id.0 > 0 {
                own.insert(id, entry);
            }
        }
        let of_name = facts::FASTENER_NAME.known(own).or_else(|| facts::WRENCH_NAME.known(own));
        // Without a name it is told by what stands over its facts.
        let of = short(of_name.as_deref().unwrap_or(of));
        for (key, why) in wrong {
            let fact = joined(&[of.as_str(), &short(key)], ": ");
            self.wrong.push(words::wrong_fact(name, &fact, &why));
        }
    }
}

/// A fact and why it is not taken as it stands, where it is not.
fn fact(key: &str, json: &Json) -> (Id, Entry, String) {
    let about = facts::TABLE.iter().find(|it| it.key == key);
    let id = about.map_or_else(|| number(said(json, "id")), |it| u64::from(it.id.0));
    let id = Id(u16::try_from(id).unwrap_or_default());
    let not = |why: String| (id, Entry::default(), why);
    let text = match json.get("text") {
        Some(Json::Text(text) | Json::Bare(text)) if id.0 > 0 && text.len() < LONGEST_TEXT => text,
        _ => return not(words::NO_FACT.to_owned()),
    };
    let means = |it: &Entry| facts::value(about?, it);
    let unit = said(json, "unit");
    let mut entry = Entry::new(text, number(unit).try_into().unwrap_or_default());
    if let Some(known) = units::ALL.iter().find(|it| it.symbol == unit) {
        entry.unit = known.code;
    } else if entry.unit == 0 && !unit.is_empty() {
        // As it may be typed behind the number.
        let typed = Entry::new(joined(&[text, " ", unit], ""), entry::form::NONE);
        match (means(&typed), about.and_then(|it| facts::refusal(it, &typed))) {
            (Some((_, unit)), _) => entry.unit = unit.code,
            (_, Some(why)) => return not(why.to_string()),
            _ => return not(words::NO_FACT.to_owned()),
        }
    }
    entry.edited = number(said(json, "edited"));
    if let Json::Map(all) = json {
        for (name, _) in all {
            let same = || {
                let (value, unit) = means(&entry).filter(|it| value_in(it.1) == *name)?;
                let (told, _) = means(&Entry::new(said(json, name), unit.code))?;
                Some((value - told).abs() <= value.abs() * 1e-9)
            };
            if name.starts_with(VALUE) && same() != Some(true) {
                return not(words::TWO_VALUES.to_owned());
            }
        }
    }
    // What turns a text round, and what nobody can type.
    let typed = |it| matches!(it, '\n' | '\t');
    let turns = |it| matches!(it, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    entry.text.retain(|it| !(it.is_control() || turns(it)) || typed(it));
    let why = if entry.text.len() < text.len() { words::HIDDEN } else { "" };
    (id, entry, why.to_owned())
}
