//! Pressure of a closed tire at another temperature.

use crate::source;
use crate::units::Measure;
use crate::working::{Amount, Answer, Law, Quantity, Term, term};
use std::fmt;
use uom::si::f64::{Length, ThermodynamicTemperature};

/// Pressure over that of the air around, as a gauge shows it, in pascals. It has no multiplication: what scales with
/// temperature is the absolute pressure.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Gauge(f64);

impl Quantity for Gauge {
    fn base(self) -> f64 {
        self.0
    }
    fn of_base(base: f64) -> Self {
        Self(base)
    }
}

/// What a tire reads at another temperature.
pub const PRESSURE: Law = Law {
    formula: "p2 = max(0, (p1 + pa) · T2 / T1 − pa)",
    gives: Measure::Pressure,
    source: source::CONSTANT_VOLUME,
    holds: "cold tire, not ridden for three hours, that keeps its air and its volume; the same place, so the same air pressure; where a manual names no temperature, its figure is for the day's air",
};

/// Pressure of the air.
pub const ATMOSPHERE: Law = Law {
    formula: "pa = 101.325 kPa · (1 − 0.0000225577 · h)^5.25588",
    gives: Measure::Pressure,
    source: source::ATMOSPHERE,
    holds: "0 to 11 km over the sea; weather changes it by some percent",
};

/// Most for storage.
pub const STORAGE: Law = Law {
    formula: "p = M",
    gives: Measure::Pressure,
    source: source::SIDEWALL,
    holds: "for standing, never for riding; let down to the cold pressure before the first ride",
};

/// Standard pressure at the sea, pascals.
const AT_SEA: f64 = 101_325.0;
/// Highest place that the formula is for, meters.
const HIGHEST: f64 = 11_000.0;

/// Why a pressure is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TireError {
    /// Pressure under zero.
    Pressure,
    /// Temperature at absolute zero or under it.
    Temperature,
    /// Outside of the standard atmosphere's lowest layer.
    Altitude,
    /// A maximum under the cold pressure.
    Maximum,
}

impl fmt::Display for TireError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Pressure => "pressure has to be 0 or more, as a gauge reads it",
            Self::Temperature => "temperature has to be over absolute zero",
            Self::Altitude => "altitude has to be from 0 to 11 km",
            Self::Maximum => "sidewall maximum has to be at least the cold pressure",
        })
    }
}

impl std::error::Error for TireError {}

/// Absolute pressure of the air at an altitude; at the sea where none is known.
///
/// # Errors
/// [`TireError::Altitude`].
pub fn atmosphere(altitude: Option<Length>) -> Result<Answer<Gauge>, TireError> {
    let height = altitude.map_or(0.0, Quantity::base);
    if !(0.0..=HIGHEST).contains(&height) {
        return Err(TireError::Altitude);
    }
    let share = (5.255_88 * (1.0 - 2.255_77e-5 * height).ln()).exp();
    let terms = vec![term("h", "altitude", Measure::Altitude, Length::of_base(height))];
    Ok(Answer::exact(Gauge(AT_SEA * share), &ATMOSPHERE, terms))
}

/// What a tire reads at temperature `to` that reads `pressure` at `from`, in air of the absolute pressure `air`.
///
/// # Errors
/// [`TireError::Pressure`], [`TireError::Temperature`], [`TireError::Altitude`] for air of no pressure.
pub fn at(
    pressure: Gauge,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
    air: Gauge,
) -> Result<Answer<Gauge>, TireError> {
    let Gauge(first) = pressure;
    if !(first.is_finite() && first >= 0.0) {
        return Err(TireError::Pressure);
    }
    if !(air.0.is_finite() && air.0 > 0.0) {
        return Err(TireError::Altitude);
    }
    let [from, to] = [from, to].map(Quantity::base);
    if !(from.is_finite() && to.is_finite() && from > 0.0 && to > 0.0) {
        return Err(TireError::Temperature);
    }
    // A tire that loses all its pressure has none, not less.
    let second = ((first + air.0) * (to / from) - air.0).max(0.0);
    let kelvin = |symbol, name, it| Term { symbol, name, amount: Amount::Of(it, "K") };
    let terms = vec![
        term("p1", "pressure at the first temperature", Measure::Pressure, pressure),
        term("pa", "pressure of the air", Measure::Pressure, air),
        kelvin("T1", "first temperature", from),
        kelvin("T2", "second temperature", to),
    ];
    Ok(Answer::exact(Gauge(second), &PRESSURE, terms))
}

/// A pressure that lies between those of two other temperatures.
pub fn within(typical: Answer<Gauge>, ends: [Answer<Gauge>; 2]) -> Answer<Gauge> {
    let [one, other] = ends.map(|it| it.value);
    let bounds = Some(if one < other { [one, other] } else { [other, one] });
    typical.bounded(bounds)
}

/// Pressure for storage: from the cold pressure up to the sidewall's maximum.
///
/// # Errors
/// [`TireError::Pressure`], [`TireError::Maximum`].
pub fn for_storage(cold: Gauge, maximum: Gauge) -> Result<Answer<Gauge>, TireError> {
    if !(cold.0.is_finite() && cold.0 >= 0.0 && maximum.0.is_finite()) {
        return Err(TireError::Pressure);
    }
    if maximum < cold {
        return Err(TireError::Maximum);
    }
    let terms = vec![term("M", "maximum on the sidewall", Measure::Pressure, maximum)];
    Ok(Answer::within(maximum, [cold, maximum], &STORAGE, terms))
}
