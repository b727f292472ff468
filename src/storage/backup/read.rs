//! A backup file, read: whole, or what is left of it.

use super::{Found, KINDS, Lists, Shape, in_name, short};
use crate::entry::text::{cut, from, past};
use crate::entry::{Entry, LONGEST};
use crate::facts::{self, Id};
use crate::garage::Entries;
use crate::storage::json::{Json, first, first_named, quoted_text};
use crate::storage::record::{PREFIX, Unreadable};
use crate::storage::text::hides;
use crate::units::{self, Unit};
use crate::words::backup as words;

/// Longer texts are damage or malice: sixteen times what an entry takes.
const MOST_LETTERS: usize = 16 * LONGEST;

/// More records than any store holds; what comes behind them is said, not read.
const MOST_RECORDS: usize = 8192;

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
///
/// # Errors
/// What is wrong with the whole of it, in words.
pub fn read(text: &str) -> Result<File, &'static str> {
    let text = past(text, |it| it == '\u{feff}');
    let whole = Json::read(text);
    let pieces = if whole.is_none() { salvaged(text) } else { Vec::new() };
    // Within a text a quote has a backslash before it, so that these stand nowhere else.
    let head = |name: &str| {
        let at = places(text, &quoted_text(name)).into_iter();
        at.filter_map(|at| first_named(from(text, at))).next().map(|it| it.0.1)
    };
    let mut file = File::default();
    match head("torpor_backup") {
        Some(Json::Bare(form)) if form == "1" => {}
        Some(form) if number(&form) > Some(1) => return Err(words::NEWER),
        _ if head("torpor_logbook").is_some() => return Err(words::A_LOGBOOK),
        _ => {
            copied(text, &mut file);
            // A file that has lost its head is known by its records.
            if file == File::default() && pieces.is_empty() {
                return Err(words::NO_BACKUP);
            }
        }
    }
    let all = match whole.as_ref().and_then(|it| it.get("records")) {
        Some(Json::List(all)) => &all[..],
        _ => &[],
    };
    all.iter().take(MOST_RECORDS).for_each(|it| file.take(it));
    if all.len().max(pieces.len()) > MOST_RECORDS {
        file.wrong.push(words::TOO_MANY.to_owned());
    }
    for it in pieces.iter().take(MOST_RECORDS) {
        match it {
            Ok(json) => file.take(json),
            Err((_, name)) => file.wrong.push(words::damaged(name)),
        }
    }
    if let Some(Json::Map(contents)) = head("contents") {
        for (key, name) in contents.into_iter().take(MOST_RECORDS) {
            let there = file.seen.contains(&key)
                || pieces.iter().any(|it| matches!(it, Err((broken, _)) if *broken == key));
            if let (false, Json::Text(name)) = (there, name) {
                file.wrong.push(words::missing(&short(&name)));
            }
        }
    }
    Ok(file)
}

/// Where a mark stands in a text.
fn places(text: &str, mark: &str) -> Vec<usize> {
    let windows = text.as_bytes().windows(mark.len()).enumerate();
    windows.filter(|it| it.1 == mark.as_bytes()).map(|it| it.0).collect()
}

/// Records of a file that is no JSON any more: each that is whole, or key and name of one that is not. Within a text a quote
/// has a backslash before it, so that nothing there looks like the beginning of a record.
fn salvaged(text: &str) -> Vec<Result<Json, (String, String)>> {
    let mut all = Vec::new();
    let mut seen = 0;
    for at in places(text, "\"record\"") {
        let Some(long) = at.checked_sub(seen) else { continue };
        let before = cut(from(text, seen), long).0.trim_end().strip_suffix('{');
        let Some(before) = before else { continue };
        if let Some((json, rest)) = first(from(text, seen + before.len())) {
            all.push(Ok(json));
            seen = text.len() - rest.len();
            continue;
        }
        let mut named = first_named(from(text, at));
        let mut next = |wanted: &str| match named.take() {
            Some(((name, Json::Text(value)), rest)) if name == wanted => {
                named = first_named(rest);
                Some(value)
            }
            _ => None,
        };
        let key = next("record").unwrap_or_default();
        // One that has lost its name is found by the contents.
        all.push(Err(match next("name") {
            Some(name) => (key, short(&name)),
            None => (String::new(), words::NAMELESS.to_owned()),
        }));
    }
    all
}

/// Takes what the rescue panel copied: keys with the page's prefix, each with its text as it is kept.
fn copied(text: &str, file: &mut File) {
    for at in places(text, &format!("\"{PREFIX}")).into_iter().take(MOST_RECORDS) {
        if let Some(((key, Json::Text(stored)), _)) = first_named(from(text, at)) {
            let key = key.strip_prefix(PREFIX).unwrap_or_default();
            // The day of the last backup is none of it.
            if let Some(shape) = Shape::of(key).filter(|_| file.is_new(key, key)) {
                file.take_stored(key, shape, &stored, key);
            }
        }
    }
}

impl File {
    /// Whether a record comes for the first time.
    fn is_new(&mut self, key: &str, name: &str) -> bool {
        let new = self.seen.iter().all(|it| it != key);
        if new {
            self.seen.push(key.to_owned());
        } else {
            self.wrong.push(words::twice(name));
        }
        new
    }

    fn take_stored(&mut self, key: &str, shape: Shape, stored: &str, name: &str) -> Option<()> {
        match Found::of(key, shape, stored) {
            Ok(found) => self.records.push(found),
            Err(Unreadable::Newer(_)) => self.wrong.push(words::newer(name)),
            Err(Unreadable::Damaged) => self.wrong.push(words::damaged(name)),
        }
        Some(())
    }

    fn take(&mut self, json: &Json) {
        let text = |name: &str| match json.get(name) {
            Some(Json::Text(it)) => it.as_str(),
            _ => "",
        };
        let key = text("record");
        let name = match text("name") {
            "" => short(key),
            name => short(name),
        };
        let Some(shape) = Shape::of(key) else {
            return self.wrong.push(words::not_ours(&name));
        };
        if !self.is_new(key, &name) {
            return;
        }
        let sum = text("sum");
        if let Some(Json::Text(stored)) = json.get("stored") {
            let before = self.records.len();
            self.take_stored(key, shape, stored, &name);
            // Of such a text nothing shows what is wrong with it.
            if self.records.len() > before && self.records[before].sum() != sum && !sum.is_empty() {
                self.records.truncate(before);
                self.wrong.push(words::damaged(&name));
            }
            return;
        }
        let mut held = Lists::new();
        let lists = match json.get("lists") {
            Some(Json::List(all)) if shape != Shape::Text => &all[..],
            _ => return self.wrong.push(words::damaged(&name)),
        };
        for list in lists {
            let named = match list {
                Json::Map(all) => all.first(),
                _ => None,
            };
            let kind = |name: &str| match KINDS.iter().position(|it| *it == name) {
                Some(kind) => Some(kind as u64),
                None => whole(name.strip_prefix("kind_")?),
            };
            match named.map(|(name, facts)| (kind(name), facts)) {
                Some((Some(kind), Json::Map(all))) => {
                    let mut own = Entries::new();
                    for (key, it) in all {
                        match fact(key, it) {
                            Some((id, entry)) => drop(own.insert(id, entry)),
                            None => self.wrong.push(words::wrong_fact(&name, &short(key))),
                        }
                    }
                    held.push((kind, own));
                }
                _ => self.wrong.push(words::wrong_fact(&name, "lists")),
            }
        }
        let revision = json.get("revision").and_then(number).unwrap_or_default();
        let key = key.to_owned();
        let mut found = Found { key, shape, revision, held, raw: None, changed: false };
        found.changed = !sum.is_empty() && found.sum() != sum;
        self.records.push(found);
    }
}

#[inline(never)]
fn whole(text: &str) -> Option<u64> {
    text.parse().ok()
}

/// A number without sign or point.
fn number(json: &Json) -> Option<u64> {
    match json {
        Json::Bare(it) => whole(it),
        _ => None,
    }
}

fn fact(key: &str, json: &Json) -> Option<(Id, Entry)> {
    let known = facts::TABLE.iter().find(|it| it.key == key).map(|it| it.id);
    let given = || json.get("id").and_then(number).or_else(|| whole(key.strip_prefix("fact_")?));
    let id = known.or_else(|| Some(Id(u16::try_from(given()?).ok()?)))?;
    let mut entry = match json {
        Json::Map(all) => {
            let unit = match json.get("unit") {
                Some(Json::Text(symbol)) => by_symbol(&in_name(symbol))?.code,
                Some(code) => number(code).and_then(|it| u8::try_from(it).ok())?,
                None => 0,
            };
            let edited = json.get("edited").map_or(Some(0), number)?;
            let value = |(name, value): &(String, Json)| {
                let symbol = name.strip_prefix("value_")?;
                let unit = by_symbol(symbol)?;
                Some(Entry::new(written(value)?, unit.code))
            };
            match json.get("text") {
                Some(text) => Entry { text: written(text)?, unit, edited },
                None => Entry { edited, ..all.iter().find_map(value)? },
            }
        }
        other => Entry::new(written(other)?, 0),
    };
    // A line's end is typed in tables, a mark of direction in texts of that writing; nothing else of the kind is.
    entry
        .text
        .retain(|it| !hides(it) || matches!(it, '\n' | '\t' | '\u{61c}' | '\u{200e}' | '\u{200f}'));
    (entry.text.chars().count() <= MOST_LETTERS).then_some((id, entry))
}

/// A text, or a number where somebody forgot the quotes.
fn written(json: &Json) -> Option<String> {
    match json {
        Json::Text(it) => Some(it.clone()),
        Json::Bare(it) if it.chars().any(|it| it.is_ascii_digit()) => Some(it.clone()),
        _ => None,
    }
}

/// The unit of a symbol as it stands in a value's name.
fn by_symbol(symbol: &str) -> Option<&'static Unit> {
    units::ALL.iter().copied().find(|it| in_name(it.symbol) == symbol)
}
