//! One temperature for a steady place, or twelve monthly means.

use super::{
    Entry, LONGEST,
    number::leading,
    refusal::{Refusal, quoted},
};
use crate::units::CELSIUS;

/// Reads one number or twelve, January first, spaces between; degrees Celsius. `Ok(None)` for a blank.
///
/// # Errors
/// Any other count, and what is not a number.
pub fn temperatures(entry: &Entry) -> Result<Option<Vec<f64>>, Refusal> {
    if entry.is_blank() {
        return Ok(None);
    }
    if entry.text.chars().count() > LONGEST {
        return Err(Refusal::TooLong);
    }
    let unit = entry.unit().unwrap_or(&CELSIUS);
    let mut read = Vec::new();
    for word in entry.text.split(|it: char| it.is_whitespace() || matches!(it, ';' | '|')) {
        let word = word.trim_end_matches([',', '°', 'C', 'F']);
        if word.is_empty() {
            continue;
        }
        let refused = || Refusal::NotANumber {
            text: quoted(word),
            example: "-8 -6 -1 6 13 18 21 19 14 7 0 -7".into(),
        };
        let number = leading(word)?.filter(|it| it.rest.is_empty()).ok_or_else(refused)?;
        let celsius = CELSIUS.of_base(unit.to_base(number.value));
        read.push(celsius);
    }
    if matches!(read.len(), 1 | 12) {
        Ok(Some(read))
    } else {
        Err(Refusal::NotTemperatures { count: read.len() })
    }
}
