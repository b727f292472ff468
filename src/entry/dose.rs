//! The dose printed on a stabilizer's container: "30 mL per 10 L", "1 fl oz per 2.5 gal", "1:320".

use super::{
    Entry, LONGEST,
    number::{Leading, leading},
    refusal::{Refusal, quoted},
    text::{cut, from},
};
use crate::units::{self, Dimension, Spelled, Unit};

/// So much stabilizer for so much fuel, both in cubic meters.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dose {
    /// Stabilizer.
    pub stabilizer: f64,
    /// Fuel that it treats.
    pub fuel: f64,
    /// The unit of the stabilizer, as printed; `None` for a bare ratio.
    pub unit: Option<&'static Unit>,
    /// The unit of the fuel, as printed.
    pub fuel_unit: Option<&'static Unit>,
    /// "oz" or "gal" was read as American or British, and nothing in the text says which it is.
    pub ambiguous: bool,
}

const PER: [&str; 9] = [" per ", " for ", " to ", " treats ", " in ", " auf ", "/", ":", "→"];

/// Reads a dose; `Ok(None)` for a blank.
///
/// # Errors
/// Anything but two volumes, or two numbers with a colon between.
///
/// ```
/// use torpor::entry::{self, Entry};
/// let dose = entry::dose(&Entry::new("30 mL per 10 L", 0)).unwrap().unwrap();
/// assert!((dose.fuel / dose.stabilizer - 1000.0 / 3.0).abs() < 1e-9);
/// ```
pub fn dose(entry: &Entry) -> Result<Option<Dose>, Refusal> {
    if entry.is_blank() {
        return Ok(None);
    }
    if entry.text.chars().count() > LONGEST {
        return Err(Refusal::TooLong);
    }
    let refused = || Refusal::NotADose { text: quoted(&entry.text) };
    let text = entry.text.trim();
    // ASCII lower case keeps every byte in its place, so a find in it cuts the original.
    let lower = text.to_ascii_lowercase();
    let first = |sign: &&'static str| {
        let mut places = lower.char_indices().map(|(at, _)| at);
        places.find(|at| from(&lower, *at).starts_with(sign)).map(|at| (at, *sign))
    };
    let (at, sign) = PER.iter().find_map(first).ok_or_else(refused)?;
    let (stabilizer, fuel) = (cut(text, at).0, from(text, at + sign.len()));
    let stabilizer = leading(stabilizer)?.ok_or_else(refused)?;
    // "1 oz per gal" is for one of them.
    let fuel = leading(fuel)?.unwrap_or(Leading { value: 1.0, plain: None, rest: fuel });
    let (left, right) = (stabilizer.rest.trim(), fuel.rest.trim());
    let beside = entry.unit();

    let dose = if left.is_empty() && right.is_empty() && matches!(sign, ":" | " to ") {
        Dose {
            stabilizer: stabilizer.value,
            fuel: fuel.value,
            unit: None,
            fuel_unit: None,
            ambiguous: false,
        }
    } else {
        let spelled = |beside| {
            let [one, other] =
                [left, right].map(|it| units::spelled(it, Dimension::Volume, beside));
            one.zip(other).map(|(one, other)| [one, other]).ok_or_else(refused)
        };
        let both = spelled(beside)?;
        // A clear country on one side settles a bare "oz" or "gal" on the other; a metric unit has none.
        let clear = |it: Spelled| match it {
            Spelled::Clear(unit) if unit.is_national() => Some(unit),
            _ => None,
        };
        let country = both.into_iter().find_map(clear);
        let [one, other] = match country {
            Some(_) => spelled(country)?,
            None => both,
        };
        let shared = |it: &Spelled| matches!(it, Spelled::Shared { .. });
        Dose {
            stabilizer: one.unit().to_base(stabilizer.value),
            fuel: other.unit().to_base(fuel.value),
            unit: Some(one.unit()),
            fuel_unit: Some(other.unit()),
            ambiguous: country.is_none() && (shared(&one) || shared(&other)),
        }
    };
    let sound = dose.stabilizer > 0.0 && dose.fuel > dose.stabilizer && dose.fuel.is_finite();
    if sound { Ok(Some(dose)) } else { Err(refused()) }
}
