//! How an entry was read, said beside it where its text leaves any doubt.

use super::read::day;
use super::{About, Choice, Kind};
use crate::digits;
use crate::entry::text::joined;
use crate::entry::{self, Entry};
use crate::show;
use crate::units::{Dimension, Unit, UnitSet};
use crate::working::Quantity;
use uom::si::f64::Torque;

/// An entry as a person would write it whole: "15 L", "in line", "Sat, Nov 14 2026".
pub fn as_read(about: &About, entry: &Entry) -> String {
    let text = entry.text.trim();
    match &about.kind {
        Kind::Choice(choices) => {
            super::chosen(choices, entry).map_or(text, |it| it.label).to_owned()
        }
        Kind::Day => {
            day(about, entry).ok().flatten().map_or_else(|| text.to_owned(), show::long_day)
        }
        Kind::Quantity { limits, .. } => {
            let dimensions: Vec<Dimension> = limits.iter().map(|it| it.unit.dimension).collect();
            // Read without the unit of its blank, a bare number has none.
            let alone = entry::quantity(&Entry { unit: 0, ..entry.clone() }, &dimensions);
            let bare = alone.is_ok_and(|it| it.is_some_and(|it| it.unit.is_none()));
            with_unit(about, entry, bare)
        }
        Kind::Temperatures => {
            with_unit(about, entry, text.ends_with(|it: char| it.is_ascii_digit()))
        }
        Kind::Several(choices) => {
            let keys = super::several_keys(choices, entry);
            let label =
                |key| choices.iter().find(|it| it.key == key).map_or(key, |it: &Choice| it.label);
            joined(&keys.split_whitespace().map(label).collect::<Vec<_>>(), ", ")
        }
        Kind::Sizes(_) => with_unit(about, entry, text.ends_with(|it: char| it.is_ascii_digit())),
        Kind::Dose
        | Kind::Grade
        | Kind::Text
        | Kind::Count { .. }
        | Kind::Stages
        | Kind::Intervals
        | Kind::ThreadTorques => text.to_owned(),
    }
}

/// The number that was typed, of a range its middle, in the unit that it was typed in. None where it is refused.
pub fn value(about: &About, entry: &Entry) -> Option<(f64, &'static Unit)> {
    let read = super::read::quantity(about, entry).ok()??.0;
    let unit = read.unit?;
    Some((unit.of_base(read.value), unit))
}

fn with_unit(about: &About, entry: &Entry, bare: bool) -> String {
    let text = entry.text.trim();
    match about.unit_for(entry, UnitSet::Metric).filter(|_| bare) {
        Some(unit) => format!("{text} {}", unit.shown()),
        None => text.to_owned(),
    }
}

/// "read as 17 lbf·ft": only where the text is more than a plain number in the unit that the blank shows.
pub fn echo(about: &About, entry: &Entry) -> Option<String> {
    let text = entry.text.trim();
    match &about.kind {
        Kind::Quantity { limits, .. } => {
            if text.is_empty()
                || entry::plain_decimal(text).is_some()
                || text.chars().all(|it| it.is_ascii_digit())
            {
                return None;
            }
            let dimensions: Vec<Dimension> = limits.iter().map(|it| it.unit.dimension).collect();
            let bare = Entry {
                unit: about.unit_for(entry, UnitSet::Metric).map_or(0, |it| it.code),
                ..entry.clone()
            };
            let read = entry::quantity(&bare, &dimensions).ok()??;
            let unit = read.unit?;
            let of = |base: f64| digits::shortest(unit.of_base(base));
            let symbol = unit.shown();
            let number = match read.bounds {
                Some([low, high]) => {
                    format!("{} {symbol}, from {} to {}", of(read.value), of(low), of(high))
                }
                None => format!("{} {symbol}", of(read.value)),
            };
            let about_word = if read.about { "about " } else { "" };
            Some(match read.might_mean {
                Some(other) => format!(
                    "read as {about_word}{number}; if you mean the other one, write {}",
                    other.shown()
                ),
                None => format!("read as {about_word}{number}"),
            })
        }
        Kind::Sizes(_) => {
            if entry::plain_decimal(text).is_some() || text.chars().all(|it| it.is_ascii_digit()) {
                return None;
            }
            let sizes = super::read::sizes_read(about, entry).ok()??;
            let size = |it: &entry::Read| {
                let unit = it.unit?;
                Some(format!("{} {}", digits::shortest(unit.of_base(it.value)), unit.shown()))
            };
            let sizes: Vec<String> = sizes.iter().filter_map(size).collect();
            Some(format!("read as {}", joined(&sizes, ", ")))
        }
        Kind::Dose => {
            let dose = entry::dose(entry).ok()??;
            let ratio = digits::shortest((dose.fuel / dose.stabilizer * 10.0).round() / 10.0);
            let (Some(unit), Some(fuel_unit)) = (dose.unit, dose.fuel_unit) else {
                return Some(format!("read as 1 to {ratio}"));
            };
            let one = digits::shortest(unit.of_base(dose.stabilizer));
            let other = digits::shortest(fuel_unit.of_base(dose.fuel));
            let hint = if dose.ambiguous { "; US or British: see Label’s measures" } else { "" };
            Some(format!(
                "read as {one} {} per {other} {}, 1 to {ratio}{hint}",
                unit.shown(),
                fuel_unit.shown()
            ))
        }
        Kind::Day => {
            day(about, entry).ok().flatten().map(|it| format!("read as {}", show::long_day(it)))
        }
        Kind::ThreadTorques => {
            let rows = super::general::general(about, entry).ok()??;
            let row = |it: &super::GeneralTorque| {
                let unit = it.torque.unit?;
                let of = |it: Torque| digits::shortest(unit.of_base(it.base()));
                let torque = match it.torque.bounds {
                    Some([low, high]) => format!("{}–{}", of(low), of(high)),
                    None => of(it.torque.value),
                };
                let thread = it.thread.thread.map_or(it.thread.text.clone(), |it| it.to_string());
                Some(format!("{thread} {torque}\u{a0}{}", unit.shown()))
            };
            let rows: Vec<String> = rows.iter().filter_map(row).collect();
            Some(format!("read as {}", joined(&rows, " · ")))
        }
        _ => None,
    }
}
