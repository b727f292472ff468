//! A backup file, read: whole, or what is left of it.

use super::{FACTS, FORM, Found, GROUP, OPEN, Shape, add, short};
use crate::entry::text::{cut, from, joined, past, without_end};
use crate::entry::{Entry, LONGEST};
use crate::facts::{self, Id};
use crate::garage::Entries;
use crate::storage::json::{Json, first};
use crate::storage::record::PREFIX;
use crate::storage::text::hides;
use crate::units;
use crate::words::backup as words;

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
    let head = head.unwrap_or(Json::List(Vec::new()));
    let mut file = File::default();
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
    if lost > 0 {
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
                None => self.wrong.push(words::lost(name)),
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
        let mut found = Found { key: key.to_owned(), name, shape, ..Found::default() };
        for list in lists {
            let Json::Map(list) = list else { continue };
            for (of, facts) in list {
                let own = self.facts(&found.name, facts);
                let held = &mut found.held;
                match (of.as_str(), of.strip_prefix(GROUP)) {
                    (FACTS, _) => held.entries = own,
                    (OPEN, _) => held.scratch = own,
                    (_, Some(group)) => held.others.push((number(group), own)),
                    _ => held.fasteners.push(own),
                }
            }
        }
        self.records.push(found);
    }

    fn facts(&mut self, name: &str, json: &Json) -> Entries {
        let mut own = Entries::new();
        let Json::Map(all) = json else { return own };
        for (key, it) in all {
            match fact(key, it) {
                Some((id, entry)) => drop(own.insert(id, entry)),
                None => self.wrong.push(words::wrong_fact(name, &short(key))),
            }
        }
        own
    }
}

fn fact(key: &str, json: &Json) -> Option<(Id, Entry)> {
    let known = facts::TABLE.iter().find(|it| it.key == key);
    let id = known.map_or_else(|| number(said(json, "id")), |it| u64::from(it.id.0));
    let unit = said(json, "unit");
    let known = units::ALL.iter().find(|it| it.symbol == unit);
    let code = known.map_or_else(|| number(unit), |it| u64::from(it.code));
    let wrong = known.is_none() && code == 0 && !unit.is_empty();
    let Some(Json::Text(text) | Json::Bare(text)) = json.get("text") else { return None };
    let mut entry = Entry::new(text, u8::try_from(code).ok()?);
    entry.edited = number(said(json, "edited"));
    // A line's end is typed in tables, a mark of direction in texts of that writing; nothing else of the kind is.
    let typed = |it| matches!(it, '\n' | '\t' | '\u{61c}' | '\u{200e}' | '\u{200f}');
    entry.text.retain(|it| !hides(it) || typed(it));
    let taken = id > 0 && !wrong && text.len() < LONGEST_TEXT;
    Some((Id(u16::try_from(id).ok()?), entry)).filter(|_| taken)
}
