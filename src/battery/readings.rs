//! What readings of the meter tell: the draw that they imply, and whether the battery does as foretold.

use super::decay::{Decay, Step};
use super::voltage::ABOVE_FULL;
use super::{Battery, Edges, FAST, Forecast, Parameters, SLOW, TYPICAL, VoltageError, curve};
use crate::season::Temperatures;
use crate::source;
use crate::units::Measure;
use crate::working::{Amount, Answer, Law, Term, term};
use chrono::NaiveDate;
use std::fmt;
use uom::si::{
    electric_current::ampere,
    electric_potential::volt,
    f64::{ElectricCurrent, ElectricPotential, ThermodynamicTemperature},
    thermodynamic_temperature::degree_celsius,
};

/// Draw from two readings.
pub static IMPLIED_DRAW: Law = Law {
    formula: "I = (A · s1 − s2) / B · C / 24 h; s = s(V − ΔV(T))",
    gives: Measure::Draw,
    source: source::IMPLIED_DRAW,
    holds: "the same meter on the same battery, both times at rest and not charged between, so that the meter’s and the \
        battery’s own error cancel; each reading good to ±0.01 V. Bounds hold self-discharge and real capacity",
};

/// How well one meter repeats itself, V. Common practice, no source: its last digit.
const REPEATS: f64 = 0.01;

/// A resting voltage on a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// When.
    pub day: NaiveDate,
    /// At rest.
    pub voltage: ElectricPotential,
    /// Of the battery.
    pub temperature: ThermodynamicTemperature,
}

/// Why no draw follows from two readings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ReadingError {
    /// The later one is not later.
    NotLater,
    /// The later one is more than the earlier one can have left.
    Rose,
    /// LiFePO4 hardly changes its voltage.
    Lithium,
    /// Not a resting voltage.
    Voltage(VoltageError),
}

impl fmt::Display for ReadingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotLater => f.write_str("has to be later than the earlier reading"),
            Self::Rose => f.write_str(
                "has to be lower than the earlier reading: it was charged between, or had not rested once",
            ),
            Self::Lithium => f.write_str("the voltage of LiFePO4 hardly changes: measure the draw itself"),
            Self::Voltage(why) => why.fmt(f),
        }
    }
}

impl std::error::Error for ReadingError {}

/// A voltage against the band.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// As foretold.
    Inside,
    /// Under the band: it draws or loses more than was thought, or was not as full.
    Below,
    /// Over the band: charged since, or not at rest.
    Above,
}

impl Forecast {
    /// Voltage to expect on a day, at a temperature of the battery; none outside of the season.
    pub fn resting_voltage_on(
        &self,
        day: NaiveDate,
        temperature: ThermodynamicTemperature,
    ) -> Option<Answer<ElectricPotential>> {
        Some(self.battery.parameters.resting_voltage(self.charge_on(day)?, temperature))
    }

    /// A reading against the band of its day; none outside of the season.
    pub fn verdict(&self, reading: &Reading) -> Option<Verdict> {
        let band = self.resting_voltage_on(reading.day, reading.temperature)?.bounds?;
        Some(if reading.voltage < band[0] {
            Verdict::Below
        } else if reading.voltage > band[1] {
            Verdict::Above
        } else {
            Verdict::Inside
        })
    }
}

/// The draw that two readings imply, lowest and highest with it. `battery` gives chemistry and real capacity.
///
/// # Errors
/// Readings that are no resting voltages, in the wrong order or rising, and LiFePO4.
pub fn implied_draw(
    battery: &Battery,
    [first, second]: [Reading; 2],
    temperatures: &Temperatures,
) -> Result<Answer<ElectricCurrent>, ReadingError> {
    let Battery { parameters, capacity, .. } = battery;
    if !parameters.chemistry.is_lead_acid() {
        return Err(ReadingError::Lithium);
    }
    let days = (second.day - first.day).num_days();
    if days <= 0 {
        return Err(ReadingError::NotLater);
    }
    let [before, after] = [charges(parameters, &first)?, charges(parameters, &second)?];
    let (kept, drawn) = over(parameters, first.day, days as usize, temperatures);
    let current = |edge: usize, s1: f64, s2: f64| {
        (kept[edge] * s1 - s2) / drawn[edge] * capacity[edge] / 24.0
    };
    // Least draw: it lost most to itself, began with least, ends with most, and is the smallest battery.
    let low = current(FAST, before[FAST], after[SLOW]);
    let high = current(SLOW, before[SLOW], after[FAST]);
    if high < 0.0 {
        return Err(ReadingError::Rose);
    }
    let value = current(TYPICAL, before[TYPICAL], after[TYPICAL]);
    let amperes = |it: f64| ElectricCurrent::new::<ampere>(it.max(0.0));
    let terms = vec![
        term("V1", "earlier reading", Measure::Voltage, first.voltage),
        term("V2", "later reading", Measure::Voltage, second.voltage),
        Term { symbol: "N", name: "days between", amount: Amount::Days(days) },
        Term { symbol: "s1", name: "charge, earlier", amount: Amount::Number(before[TYPICAL]) },
        Term { symbol: "s2", name: "charge, later", amount: Amount::Number(after[TYPICAL]) },
        Term { symbol: "A", name: "left without a draw", amount: Amount::Number(kept[TYPICAL]) },
        Term {
            symbol: "B",
            name: "days of draw that count",
            amount: Amount::Number(drawn[TYPICAL]),
        },
        term("C", "real capacity", Measure::Charge, battery.holds(TYPICAL)),
    ];
    let [low, value, high] = [low, value, high].map(amperes);
    Ok(Answer::within(value, [low, high], &IMPLIED_DRAW, terms))
}

/// Charge from a reading: highest, typical, lowest, as the edges have it.
fn charges(parameters: &Parameters, it: &Reading) -> Result<Edges, ReadingError> {
    parameters.charge_from_voltage(it.voltage, it.temperature).map_err(ReadingError::Voltage)?;
    let [shift_low, shift_high] = parameters.shift_bounds(it.temperature.get::<degree_celsius>());
    let shift = curve::at(parameters.shift, it.temperature.get::<degree_celsius>());
    let volts = it.voltage.get::<volt>();
    let charge = |off: f64| curve::inverse(parameters.resting, volts + off);
    let low = charge(-shift_high - REPEATS).min(ABOVE_FULL);
    Ok([charge(REPEATS - shift_low), charge(-shift), low])
}

/// Over so many days: the share of the charge that stays without a draw, and how many days' draw a constant one takes.
fn over(
    parameters: &Parameters,
    from: NaiveDate,
    days: usize,
    temperatures: &Temperatures,
) -> (Edges, Edges) {
    let decay = Decay::new(parameters, temperatures.swing());
    let (mut kept, mut drawn) = ([1.0; 3], [0.0; 3]);
    for night in from.iter_days().take(days) {
        let rates = decay.rates(temperatures.celsius_on(night));
        for ((kept, drawn), rate) in kept.iter_mut().zip(&mut drawn).zip(rates) {
            let Step { left, taken } = Step::new(rate, 1.0);
            *kept *= left;
            *drawn = *drawn * left + taken;
        }
    }
    (kept, drawn)
}
