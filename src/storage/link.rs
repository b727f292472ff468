//! A bike as a static link: `#1.` and base64url of a frozen wire.
//!
//! ```text
//! wire   = day made, groups to the end, CRC-32 of all before it (4 bytes, little end first)
//! group  = kind (0 facts of bike, season and garage; 1 a wrench; 2 a fastener; 3 the open fastener), count, items
//! item   = (fact number − the one before) × 8 + tag, value
//! value  = tag 0, 1, 2: mantissa, unit (× 1, 0.1, 0.01) · 3: mantissa, exponent, unit · 4: text · 5: choice
//!          · 6: day · 7: unit, text
//! ```
//! Whole numbers are LEB128; signed ones zigzag first. Days count from 2020-01-01. A text is its length in bytes × 2 and
//! UTF-8; or, where it is made of "0123456789 -–.()" alone, its length in characters × 2 + 1 and their places in that row,
//! four bits each, the high ones first. Facts and groups that this page does not know are kept and passed on. The form never changes: another form
//! gets another number before the point.

mod wire;

use super::text::{hides, plain};
use super::{base64url, checksum::crc32};
use crate::entry::{self, Decimal, Entry};
use crate::facts::{self, Id, Kind};
use crate::garage::{Bike, Entries, Kept};
use crate::words::fasteners;
use chrono::NaiveDate;
use std::fmt;
use wire::{PLACES, Reader, Value, Writer};

/// What every link of this form starts with, behind the address.
pub const START: &str = "#1.";
/// The longest fragment that is looked at, bytes.
pub const LONGEST: usize = 16 * 1024;
/// The longest link that is made, its address included: what a QR code of version 20 takes at level M, bytes in byte mode.
/// Source: ISO/IEC 18004.
pub const MOST: usize = 666;
const MOST_GROUPS: usize = 400;
const MOST_ITEMS: u64 = 400;

const FACTS: u64 = 0;
const WRENCH: u64 = 1;
const FASTENER: u64 = 2;
const OPEN_FASTENER: u64 = 3;

/// What a link carries.
#[derive(Debug, Clone, PartialEq)]
pub struct Parcel {
    /// The day it was made.
    pub made: NaiveDate,
    /// The bike, its season, where it stands and the wrenches that its answers need.
    pub kept: Kept,
}

/// Why a fragment is not taken as a link.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LinkError {
    /// Over [`LONGEST`].
    TooLong,
    /// Another form.
    Newer,
    /// Not base64url, or cut off.
    CutOff,
    /// The checksum does not fit.
    Checksum,
    /// The checksum fits but the inside is not a bike.
    NotABike,
    /// Characters that hide or turn round what is shown.
    HiddenCharacters,
}

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TooLong => {
                "This link is far longer than a bike’s: a Torpor link has at most 16,384 characters"
            }
            Self::Newer => {
                "This link was made by a newer Torpor: reload the page, then open the link again"
            }
            Self::CutOff => {
                "This link is cut off or altered: copy the whole of it, from # to its end"
            }
            Self::Checksum => {
                "This link was altered on its way: copy it again from where it was made"
            }
            Self::NotABike => "This link does not hold a bike: make it again with “Link”",
            Self::HiddenCharacters => {
                "This link holds hidden characters in a text: make it again with plain text"
            }
        })
    }
}

impl std::error::Error for LinkError {}

/// Whether a fragment claims to be a link, readable or not: `#`, a number, a point.
pub fn claims(fragment: &str) -> bool {
    let body = fragment.strip_prefix('#').unwrap_or(fragment);
    body.split_once('.')
        .is_some_and(|(form, _)| !form.is_empty() && form.chars().all(|it| it.is_ascii_digit()))
}

/// A whole link behind the page's address. Names leave only `with_names`. `None` where it is longer than [`MOST`].
///
/// ```
/// use chrono::NaiveDate;
/// use torpor::{garage::Kept, storage::link::{self, Parcel}};
/// let parcel = Parcel { made: NaiveDate::from_ymd_opt(2026, 11, 25).unwrap(), kept: Kept::default() };
/// assert_eq!(link::made("page.html", &parcel, false).unwrap(), "page.html#1.sCcsCRYA");
/// ```
pub fn made(address: &str, parcel: &Parcel, with_names: bool) -> Option<String> {
    written(parcel, with_names).map(|it| format!("{address}{it}")).filter(|it| it.len() <= MOST)
}

/// The fragment of a link, from `#` on, however long. Names leave only `with_names`. `None` where there is more than [`read`] takes.
pub fn written(parcel: &Parcel, with_names: bool) -> Option<String> {
    let Kept { bike, season, garage } = &parcel.kept;
    let mut writer = Writer::default();
    writer.day(parcel.made);
    let mut facts: Entries = bike.entries.clone();
    facts.extend(season.entries.clone());
    facts.extend(garage.entries.clone());
    facts.remove(&facts::UNIT_SET.id());
    facts.remove(&facts::FROM_LINK.id());
    group(&mut writer, FACTS, &facts, with_names);
    for wrench in &garage.wrenches {
        group(&mut writer, WRENCH, wrench, with_names);
    }
    for fastener in &bike.fasteners {
        group(&mut writer, FASTENER, fastener, with_names);
    }
    group(&mut writer, OPEN_FASTENER, &bike.scratch, with_names);
    for (kind, entries) in &bike.others {
        group(&mut writer, *kind, entries, with_names);
    }
    let mut bytes = writer.bytes;
    let sum = crc32(&bytes);
    bytes.extend_from_slice(&sum.to_le_bytes());
    let link = format!("{START}{}", base64url::encoded(&bytes));
    // Reading it is the one check that leaves nothing out.
    read(&link).is_ok().then_some(link)
}

/// Reads the fragment of a link, with or without its `#`.
///
/// # Errors
/// [`LinkError`]; nothing of a link is taken unless all of it is whole.
pub fn read(fragment: &str) -> Result<Parcel, LinkError> {
    if fragment.len() > LONGEST {
        return Err(LinkError::TooLong);
    }
    let body = entry::text::past(fragment.trim(), |it| it == '#');
    let (form, body) = body.split_once('.').ok_or(LinkError::CutOff)?;
    if form != "1" {
        let number = !form.is_empty() && form.chars().all(|it| it.is_ascii_digit());
        return Err(if number { LinkError::Newer } else { LinkError::CutOff });
    }
    let bytes = base64url::decoded(body).ok_or(LinkError::CutOff)?;
    let (bytes, sum) = bytes.split_last_chunk::<4>().ok_or(LinkError::CutOff)?;
    if crc32(bytes) != u32::from_le_bytes(*sum) {
        return Err(LinkError::Checksum);
    }
    inside(&mut Reader::new(bytes)).ok_or(LinkError::NotABike).and_then(|parcel| {
        let clean = parcel.texts().all(|it| !it.text.chars().any(hides));
        if clean { Ok(parcel) } else { Err(LinkError::HiddenCharacters) }
    })
}

impl Parcel {
    fn texts(&self) -> impl Iterator<Item = &Entry> {
        let Kept { bike: Bike { entries, scratch, fasteners, others }, season, garage } =
            &self.kept;
        let lists = [entries, scratch, &season.entries, &garage.entries].into_iter();
        lists
            .chain(fasteners)
            .chain(&garage.wrenches)
            .chain(others.iter().map(|(_, it)| it))
            .flat_map(|it| it.values())
    }
}

fn inside(reader: &mut Reader<'_>) -> Option<Parcel> {
    let made = reader.day()?;
    let mut kept = Kept::default();
    let mut groups = 0;
    while !reader.is_done() {
        groups += 1;
        if groups > MOST_GROUPS {
            return None;
        }
        let kind = reader.whole()?;
        let entries = read_group(reader)?;
        match kind {
            FACTS => entries.into_iter().for_each(|(id, entry)| kept.put(id, entry)),
            WRENCH => kept.garage.wrenches.push(entries),
            FASTENER => kept.bike.fasteners.push(entries),
            OPEN_FASTENER => kept.bike.scratch = entries,
            other => kept.bike.others.push((other, entries)),
        }
    }
    Some(Parcel { made, kept })
}

fn group(writer: &mut Writer, kind: u64, entries: &Entries, with_names: bool) {
    let values: Vec<(Id, Value)> = entries
        .iter()
        .filter_map(|(id, entry)| {
            let entry = plainly(*id, entry);
            // What no entry takes, no reader of a link takes either: the rest of the bike must not suffer for it.
            let taken = !entry.is_blank() && entry.text.chars().count() <= entry::LONGEST;
            taken.then(|| (*id, value(*id, &entry))).filter(|it| with_names || !names(*id, &it.1))
        })
        .collect();
    if values.is_empty() && kind != FASTENER {
        return;
    }
    writer.whole(kind);
    writer.whole(values.len() as u64);
    let mut before = 0;
    for (id, value) in values {
        writer.item(id.0 - before, &value);
        before = id.0;
    }
}

/// An entry in one line, without what hides.
fn plainly(id: Id, entry: &Entry) -> Entry {
    // A link has no line ends; the general table reads a semicolon as well.
    let text = match id {
        id if id == facts::GENERAL_TORQUES.id() => plain(&entry::replaced(&entry.text, "\n", ";")),
        _ => plain(&entry.text),
    };
    Entry { text, ..entry.clone() }
}

/// An entry as it would come out of a link.
pub(super) fn as_sent(id: Id, entry: &Entry) -> Entry {
    entry_of(id, value(id, &plainly(id, entry))).unwrap_or_default()
}

fn read_group(reader: &mut Reader<'_>) -> Option<Entries> {
    let count = reader.whole().filter(|it| *it <= MOST_ITEMS)?;
    let mut id = 0u16;
    let mut entries = Entries::new();
    for _ in 0..count {
        let (step, value) = reader.item()?;
        id = id.checked_add(step)?;
        entries.insert(Id(id), entry_of(Id(id), value)?);
    }
    Some(entries)
}

/// Whether a value is a name or a note of the owner's own, or may be one: a text of a fact that this page does not know. A usual
/// fastener's name travels as its code.
fn names(id: Id, value: &Value) -> bool {
    let own = [
        facts::BIKE_NAME.id(),
        facts::FASTENER_NAME.id(),
        facts::FASTENER_NOTE.id(),
        facts::WRENCH_NAME.id(),
        facts::LAY_UP_LEFT_OUT.id(),
        facts::WAKE_UP_LEFT_OUT.id(),
        facts::WHERE_THINGS_LIE.id(),
        facts::OWN_LAY_UP.id(),
        facts::OWN_WAKE_UP.id(),
        facts::OWN_LAY_UP_DONE.id(),
        facts::OWN_WAKE_UP_DONE.id(),
    ];
    let text = matches!(value, Value::Text(_) | Value::Written(..));
    (own.contains(&id) && !matches!(value, Value::Choice(_)))
        || (text && facts::about(id).is_none())
}

/// An entry as the wire's value. Where its text is a plain number, choice or day it travels as that; else as typed.
fn value(id: Id, entry: &Entry) -> Value {
    let text = entry.text.as_str();
    let as_typed = || {
        if entry.unit == 0 {
            Value::Text(text.into())
        } else {
            Value::Written(entry.unit, text.into())
        }
    };
    // A code that a newer page gave goes out as it came in.
    let code = || match entry.unit {
        entry::form::CHOICE => text.parse().map_or_else(|_| as_typed(), Value::Choice),
        _ => as_typed(),
    };
    let number = || {
        let decimal = entry::plain_decimal(text).filter(|it| PLACES.contains(&it.exponent));
        decimal.map(|it| Value::Number(it, entry.unit))
    };
    match facts::about(id).map(|it| &it.kind) {
        Some(Kind::Choice(choices)) => {
            facts::chosen(choices, entry).map_or_else(code, |it| Value::Choice(it.code))
        }
        Some(Kind::Day) => match entry::day(entry) {
            Ok(Some(day)) => Value::Day(day),
            _ => as_typed(),
        },
        Some(Kind::Text) if id == facts::FASTENER_NAME.id() => {
            fasteners::code(text).map_or_else(code, Value::Choice)
        }
        Some(Kind::Quantity { .. } | Kind::Sizes(_) | Kind::Count { .. }) => {
            number().unwrap_or_else(as_typed)
        }
        Some(Kind::Several(choices)) => several(choices, entry).unwrap_or_else(as_typed),
        Some(_) => as_typed(),
        // Not known to this page: it goes out as it came in.
        None => match (entry.unit, entry::day(entry)) {
            (entry::form::CHOICE, _) => code(),
            (entry::form::DAY, Ok(Some(day))) => Value::Day(day),
            _ => number().unwrap_or_else(as_typed),
        },
    }
}

/// Several choices as one number with a binary digit for each; `None` where one of them is not known to this page.
fn several(choices: &[facts::Choice], entry: &Entry) -> Option<Value> {
    let mut mantissa = 0;
    for key in facts::several_keys(choices, entry).split_whitespace() {
        mantissa |= 1i64 << (choices.iter().find(|it| it.key == key)?.code - 1);
    }
    // A nought stands for none of them and would come back as a blank.
    let number = Value::Number(Decimal { mantissa, exponent: 0 }, entry::form::NONE);
    (mantissa > 0).then_some(number)
}

/// The inverse of [`value`].
fn entry_of(id: Id, value: Value) -> Option<Entry> {
    let kind = facts::about(id).map(|it| &it.kind);
    Some(match value {
        Value::Number(decimal, unit) => {
            let entry = Entry::new(decimal.written(), unit);
            match kind {
                Some(Kind::Several(choices)) => {
                    Entry::new(facts::several_keys(choices, &entry), entry::form::NONE)
                }
                _ => entry,
            }
        }
        Value::Text(text) => Entry::new(text, entry::form::NONE),
        Value::Written(unit, text) => Entry::new(text, unit),
        Value::Choice(code) => match kind {
            Some(Kind::Choice(choices)) => match choices.iter().find(|it| it.code == code) {
                Some(choice) => Entry::new(choice.key, entry::form::NONE),
                None => Entry::new(code.to_string(), entry::form::CHOICE),
            },
            Some(Kind::Text) => match fasteners::name(code) {
                Some(name) => Entry::new(name, entry::form::NONE),
                None => Entry::new(code.to_string(), entry::form::CHOICE),
            },
            _ => Entry::new(code.to_string(), entry::form::CHOICE),
        },
        Value::Day(day) => {
            let form = if kind.is_some() { entry::form::NONE } else { entry::form::DAY };
            Entry::new(entry::day_written(day), form)
        }
    })
}
