//! One temperature for a steady place, or twelve monthly means.

use super::{
    Entry, LONGEST,
    number::leading,
    refusal::{Refusal, quoted},
    text::{parts, without_end},
};
use crate::units::{self, CELSIUS, Dimension, Spelled, Unit};

/// Reads one number or twelve, January first, spaces between; degrees Celsius. `Ok(None)` for a blank. A unit in the
/// text, behind one number or behind all, wins over the blank's own.
///
/// # Errors
/// Any other count, what is not a number, and two units in one text.
pub fn temperatures(entry: &Entry) -> Result<Option<Vec<f64>>, Refusal> {
    if entry.is_blank() {
        return Ok(None);
    }
    if entry.text.chars().count() > LONGEST {
        return Err(Refusal::TooLong);
    }
    let mut numbers = Vec::new();
    let mut written: Option<&Unit> = None;
    for word in parts(&entry.text, |it| it.is_whitespace() || matches!(it, ';' | '|')) {
        let word = without_end(word, |it| it == ',');
        let number = leading(word)?;
        let spelling = number.as_ref().map_or(word, |it| it.rest);
        numbers.extend(number.as_ref().map(|it| it.value));
        if matches!(spelling, "" | "°") {
            continue;
        }
        let unit = units::spelled(spelling, Dimension::Temperature, None).map(Spelled::unit);
        let unit = unit.filter(|_| !numbers.is_empty()).ok_or_else(|| Refusal::NotANumber {
            text: quoted(word),
            example: "-8 -6 -1 6 13 18 21 19 14 7 0 -7".into(),
        })?;
        if let Some(first) = written.filter(|it| *it != unit) {
            let offered = first.symbol.to_owned();
            return Err(Refusal::UnknownUnit { spelling: quoted(spelling), offered });
        }
        written = Some(unit);
    }
    let unit = written.or(entry.unit()).unwrap_or(&CELSIUS);
    match numbers.len() {
        1 | 12 => {
            Ok(Some(numbers.into_iter().map(|it| CELSIUS.of_base(unit.to_base(it))).collect()))
        }
        count => Err(Refusal::NotTemperatures { count }),
    }
}
