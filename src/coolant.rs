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

pub use exchange::{EXCHANGE, PREMIX, Premix, READY_MIXED, WATER, exchange, premix};

use crate::digits;
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
    holds: "glycol coolant with inhibitors, 0 to 60 % by volume; first ice, which is slush and bursts nothing yet; bottles differ, so ±3 K",
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
/// More glycol than this freezes no later.
const MOST: f64 = 0.6;
/// Under this share the inhibitor is weak. Common practice, no source.
pub const WEAK: f64 = 1.0 / 3.0;

impl Glycol {
    /// Freezing points at 0, 5, 10 … 60 % by volume, tenths of a kelvin under 0 °C.
    fn table(self) -> &'static [u16; 13] {
        match self {
            Glycol::Ethylene => &[0, 18, 36, 62, 90, 121, 157, 199, 248, 305, 371, 444, 520],
            Glycol::Propylene => &[0, 17, 34, 52, 74, 100, 131, 169, 215, 270, 337, 416, 511],
        }
    }

    /// Row under a share, and the temperatures of it and of the next one, °C.
    fn rows(self, share: f64) -> (usize, [f64; 2]) {
        let table = self.table();
        let row = ((share / STEP) as usize).min(table.len() - 2);
        let at = |row: usize| -f64::from(table.get(row).copied().unwrap_or_default()) / 10.0;
        (row, [at(row), at(row + 1)])
    }

    /// Freezing point, °C.
    fn freezes(self, share: f64) -> f64 {
        let (row, [one, next]) = self.rows(share);
        one + (next - one) * (share / STEP - row as f64)
    }
}

/// Where a coolant with the share `glycol` by volume freezes, known to lie within `bounds`.
///
/// # Errors
/// [`CoolantError::Concentration`] outside 0 to 100 %; [`CoolantError::OverSixty`], as nothing is to be told from there on:
/// the freezing point rises again.
pub fn freezes_at(
    glycol: Glycol,
    share: Ratio,
    bounds: [Ratio; 2],
) -> Result<Answer<ThermodynamicTemperature>, CoolantError> {
    let [low, high] = bounds.map(Quantity::base);
    let share = share.base();
    if !(0.0 <= low && low <= share && share <= high && high <= 1.0) {
        return Err(CoolantError::Concentration);
    }
    if high > MOST + 1e-9 {
        return Err(CoolantError::OverSixty);
    }
    let kelvin = |celsius: f64| ThermodynamicTemperature::of_base(celsius + 273.15);
    let (row, rows) = glycol.rows(share);
    let [first, second] = rows.map(kelvin);
    let terms = vec![
        term("c", "glycol by volume", Measure::Share, Ratio::of_base(share)),
        term("c1", "next row below", Measure::Share, Ratio::of_base(row as f64 * STEP)),
        term("T1", "freezing point there", Measure::Temperature, first),
        term("T2", "freezing point at the next row above", Measure::Temperature, second),
    ];
    let ends = [glycol.freezes(high) - SPREAD, (glycol.freezes(low) + SPREAD).min(0.0)];
    Ok(Answer::within(kelvin(glycol.freezes(share)), ends.map(kelvin), &FREEZES_AT, terms))
}

/// How much colder than a `night` it may get until the coolant freezes.
pub fn margin(
    freezes: &Answer<ThermodynamicTemperature>,
    night: ThermodynamicTemperature,
) -> Answer<TemperatureInterval> {
    let to = |it: ThermodynamicTemperature| TemperatureInterval::of_base(night.base() - it.base());
    let [low, high] = freezes.bounds.unwrap_or([freezes.value; 2]);
    let terms = vec![
        term("Tn", "coldest night", Measure::Temperature, night),
        term("Tf", "freezes at", Measure::Temperature, freezes.value),
    ];
    Answer::within(to(freezes.value), [to(high), to(low)], &MARGIN, terms)
}

/// Why a concentration or an exchange is refused.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CoolantError {
    /// Outside 0 to 100 %, or outside of its own bounds.
    Concentration,
    /// No figure is given past 60 %.
    OverSixty,
    /// Circuit of zero or less.
    Circuit,
    /// Nothing runs out, or more than the circuit holds.
    Drains,
    /// Bottle with no glycol, or over 100 %.
    Bottle,
    /// With what runs out nothing but these concentrations can be had.
    OutOfReach([f64; 2]),
    /// No exchange for what is in the bottle alone gets there.
    NotWithBottle,
}

impl fmt::Display for CoolantError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Concentration => "concentration has to be from 0 % to 100 %",
            Self::OverSixty => {
                "concentration has to be at most 60 %: past that it freezes sooner again"
            }
            Self::Circuit => "coolant circuit has to be more than 0",
            Self::Drains => {
                "what runs out has to be more than 0 and at most the coolant circuit"
            }
            Self::Bottle => "glycol in the bottle has to be more than 0 % and at most 100 %",
            Self::NotWithBottle => "needs water or another bottle too",
            Self::OutOfReach([low, high]) => {
                // Rounded inward: what is said to be accepted is.
                let low = digits::fixed((low * 100.0 - 1e-6).ceil(), 0);
                let high = digits::fixed((high * 100.0 + 1e-6).floor(), 0);
                return write!(
                    f,
                    "out of reach, as a part stays in the engine: with this bottle and this drain it has to be from {low} % to {high} %; drain twice, or take concentrate"
                );
            }
        })
    }
}

impl std::error::Error for CoolantError {}
