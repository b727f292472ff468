//! Coolant: where it freezes, and how much of it to exchange for another strength.
//!
//! ```
//! use torpor::{coolant::{self, Glycol}, working::Quantity};
//! use uom::si::f64::Ratio;
//! # fn main() -> Result<(), torpor::coolant::CoolantError> {
//! let half = Ratio::of_base(0.5);
//! let freezes = coolant::freezes_at(Glycol::Ethylene, half, [half; 2])?;
//! assert!((freezes.value.base() - (273.15 - 37.1)).abs() < 0.05);
//! # Ok(()) }
//! ```

mod exchange;

pub use exchange::{EXCHANGE, Job, PREMIX, READY_MIXED, Refill, Short, WATER, refill};

use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, Quantity, term};
use std::fmt;
use uom::si::f64::{Ratio, TemperatureInterval, ThermodynamicTemperature};

/// How the engine is cooled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cooling {
    /// With coolant.
    Liquid,
    /// By air, with or without an oil cooler.
    Air,
}

/// What keeps the water from freezing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Glycol {
    /// The usual one.
    Ethylene,
    /// The less poisonous one.
    Propylene,
}

/// First ice.
pub const FREEZES_AT: Law = Law {
    formula: "Tf = T1 + (T2 − T1) · (c − c1) / 5 %",
    gives: Measure::Temperature,
    source: source::COOLANT_FREEZING,
    holds: "glycol coolant with inhibitors, 10 to 60 % by volume; first ice, which is slush and bursts nothing yet; bottles differ, so ±3 K",
};

/// What is left on the coldest night.
pub const MARGIN: Law = Law {
    formula: "m = Tn − Tf",
    gives: Measure::TemperatureStep,
    source: source::ARITHMETIC,
    holds: "the coolant gets as cold as the air around",
};

/// From one row of the table to the next, by volume.
const STEP: f64 = 0.05;
/// Rows of published tables and bottles lie so far around these, K.
const SPREAD: f64 = 3.0;
/// The first row.
const LEAST: f64 = 0.1;
/// More glycol than this freezes no later.
const MOST: f64 = 0.6;
/// Under this share the inhibitor is weak. Common practice, no source.
pub const WEAK: f64 = 1.0 / 3.0;

impl Glycol {
    /// Freezing points at 10, 15, 20 … 60 % by volume, tenths of a kelvin under 0 °C.
    fn table(self) -> &'static [u16; 11] {
        match self {
            Glycol::Ethylene => &[36, 62, 90, 121, 157, 199, 248, 305, 371, 444, 520],
            Glycol::Propylene => &[34, 52, 74, 100, 131, 169, 215, 270, 337, 416, 511],
        }
    }

    /// Freezing point of a row and of the next one, °C.
    fn rows(self, row: usize) -> [f64; 2] {
        [row, row + 1]
            .map(|it| -f64::from(self.table().get(it).copied().unwrap_or_default()) / 10.0)
    }

    /// Freezing point, °C.
    fn freezes(self, share: f64) -> f64 {
        let row = row_under(share);
        let [one, next] = self.rows(row);
        one + (next - one) * ((share - LEAST) / STEP - row as f64)
    }

    /// The share by volume that freezes at a temperature, as a tester reads it; the weaker one where two do.
    ///
    /// # Errors
    /// [`CoolantError::UnderTen`] for what freezes before the first row, [`CoolantError::OverSixty`] past the last.
    pub fn share(self, freezes: ThermodynamicTemperature) -> Result<Ratio, CoolantError> {
        let celsius = freezes.base() - 273.15;
        if celsius > self.rows(0)[0] + ROUNDED {
            return Err(CoolantError::UnderTen);
        }
        for row in 0..LAST {
            let [one, next] = self.rows(row);
            if celsius >= next - ROUNDED {
                let share = LEAST + STEP * (row as f64 + (one - celsius) / (one - next));
                return Ok(Ratio::of_base(share.max(LEAST).min(MOST)));
            }
        }
        Err(CoolantError::OverSixty)
    }
}

/// Rows are rounded to a tenth of a kelvin.
const ROUNDED: f64 = 0.05;
/// The last row.
const LAST: usize = 10;

/// The row at a share or under it that has a next one.
fn row_under(share: f64) -> usize {
    (((share - LEAST) / STEP) as usize).min(LAST - 1)
}

/// Where a coolant with the share `glycol` by volume freezes, known to lie within `bounds`.
///
/// # Errors
/// [`CoolantError::Impossible`] outside 0 to 100 %; [`CoolantError::UnderTen`], where no row is published;
/// [`CoolantError::OverSixty`], as nothing is to be told from there on: the freezing point rises again.
pub fn freezes_at(
    glycol: Glycol,
    share: Ratio,
    bounds: [Ratio; 2],
) -> Result<Answer<ThermodynamicTemperature>, CoolantError> {
    let [low, high] = bounds.map(Quantity::base);
    let share = share.base();
    if !(0.0 <= low && low <= share && share <= high && high <= 1.0) {
        return Err(CoolantError::Impossible);
    }
    if low < LEAST - 1e-9 {
        return Err(CoolantError::UnderTen);
    }
    if high > MOST + 1e-9 {
        return Err(CoolantError::OverSixty);
    }
    let kelvin = |celsius: f64| ThermodynamicTemperature::of_base(celsius + 273.15);
    let row = row_under(share);
    let [first, second] = glycol.rows(row).map(kelvin);
    let terms = vec![
        term("c", "glycol by volume", Measure::Share, Ratio::of_base(share)),
        term("c1", "next row below", Measure::Share, Ratio::of_base(LEAST + row as f64 * STEP)),
        term("T1", "freezing point there", Measure::Temperature, first),
        term("T2", "freezing point at the next row above", Measure::Temperature, second),
    ];
    let ends = [glycol.freezes(high) - SPREAD, (glycol.freezes(low) + SPREAD).min(0.0)];
    Ok(Answer::within(kelvin(glycol.freezes(share)), ends.map(kelvin), &FREEZES_AT, terms))
}

/// How much colder than a `night`, known to lie within `ends`, it may get until the coolant freezes.
pub fn margin(
    freezes: &Answer<ThermodynamicTemperature>,
    night: ThermodynamicTemperature,
    ends: [ThermodynamicTemperature; 2],
) -> Answer<TemperatureInterval> {
    let from = |night: ThermodynamicTemperature, it: ThermodynamicTemperature| {
        TemperatureInterval::of_base(night.base() - it.base())
    };
    let [low, high] = freezes.bounds.unwrap_or([freezes.value; 2]);
    let terms = vec![
        term("Tn", "coldest night", Measure::Temperature, night),
        term("Tf", "freezes at", Measure::Temperature, freezes.value),
    ];
    let [coldest, warmest] = ends;
    let ends = [from(coldest, high), from(warmest, low)];
    Answer::within(from(night, freezes.value), ends, &MARGIN, terms)
}

/// Why a concentration or an exchange is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CoolantError {
    /// A number that the facts' limits or readers do not take.
    Impossible,
    /// No figure is given under 10 %.
    UnderTen,
    /// No figure is given past 60 %.
    OverSixty,
    /// More runs out than the circuit holds.
    Drains,
}

impl fmt::Display for CoolantError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Impossible => "impossible",
            Self::UnderTen => "has to be at least 10 %",
            Self::OverSixty => "has to be at most 60 %: past that it freezes sooner again",
            Self::Drains => "what runs out has to be at most the coolant circuit",
        })
    }
}

impl std::error::Error for CoolantError {}
