//! Pressure of a closed tire at another temperature.

use crate::maths::{exp, ln};
use crate::source;
use crate::units::Measure;
use crate::working::{Amount, Answer, Law, Parts, Quantity, Term, term};
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
    holds: "cold tire, not ridden for three hours, that keeps its air and its volume; the same place, so the same air pressure; where a manual names no temperature, its figure is for the day’s air",
};

/// What is set on the morning of the ride.
pub const AS_THE_MANUAL: Law = Law {
    formula: "ps = p",
    gives: Measure::Pressure,
    source: source::MANUAL,
    holds: "cold tire in the air of the ride; where the manual names no temperature, its figure is for the day’s air",
};

/// Pressure of the air.
pub const ATMOSPHERE: Law = Law {
    formula: "pa = 101.325 kPa · (1 − 0.0000225577 · h)^5.25588",
    gives: Measure::Pressure,
    source: source::ATMOSPHERE,
    holds: "0 to 5 km over the sea; weather changes it by some percent",
};

/// Most for storage.
pub const STORAGE: Law = Law {
    formula: PRESSURE.formula,
    gives: Measure::Pressure,
    source: source::SIDEWALL,
    holds: "p1 is the sidewall’s maximum, not passed on the ride day either; for standing, never for riding",
};

/// Standard pressure at the sea, pascals.
const AT_SEA: f64 = 101_325.0;
/// Highest place that is asked for, meters.
const HIGHEST: f64 = 5_000.0;
/// Cold pressures of motorcycles, pascals; others are likelier in another unit. Common practice, no source.
const USUAL: [f64; 2] = [1.2e5, 3.5e5];
/// A cold tire that reads less than this share of what it should has lost air by more than cold and time. Common
/// practice, no source: 15 to 20 % under.
const LEAKS: f64 = 0.82;
/// And one that reads more was filled too far, or warm. Common practice, no source.
const TOO_FULL: f64 = 1.2;

/// Why a pressure is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TireError {
    /// A number that the facts' limits do not take.
    Impossible,
    /// A maximum under the cold pressure.
    Maximum,
}

impl fmt::Display for TireError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Impossible => "impossible",
            Self::Maximum => "sidewall maximum has to be at least the cold pressure",
        })
    }
}

impl std::error::Error for TireError {}

/// What a reading on a cold tire tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reading {
    /// Leak, valve or bead.
    Leaks,
    /// Near enough to be set.
    Usual,
    /// Far over.
    TooFull,
}

/// What a reading tells of a cold tire that should read as `expected`, or anything between the two.
pub fn judged(Gauge(reads): Gauge, [Gauge(one), Gauge(other)]: [Gauge; 2]) -> Reading {
    if reads < LEAKS * one.min(other) {
        Reading::Leaks
    } else if reads > TOO_FULL * one.max(other) {
        Reading::TooFull
    } else {
        Reading::Usual
    }
}

/// Whether a cold pressure is one that motorcycles have.
pub fn is_usual(Gauge(cold): Gauge) -> bool {
    (USUAL[0] - 1.0..=USUAL[1] + 1.0).contains(&cold)
}

/// Absolute pressure of the air at an altitude; at the sea where none is known.
///
/// # Errors
/// [`TireError::Impossible`].
pub fn atmosphere(altitude: Option<Length>) -> Result<Answer<Gauge>, TireError> {
    let height = altitude.map_or(0.0, Quantity::base);
    if !(0.0..=HIGHEST).contains(&height) {
        return Err(TireError::Impossible);
    }
    let share = exp(5.255_88 * ln(1.0 - 2.255_77e-5 * height));
    let terms = vec![term("h", "altitude", Measure::Altitude, Length::of_base(height))];
    Ok(Answer::exact(Gauge(AT_SEA * share), &ATMOSPHERE, terms))
}

/// What a tire reads at temperature `to` that reads `pressure` at `from`, in air of the absolute pressure `air`.
///
/// # Errors
/// [`TireError::Impossible`].
pub fn at(
    pressure: Gauge,
    from: ThermodynamicTemperature,
    to: ThermodynamicTemperature,
    air: Gauge,
) -> Result<Answer<Gauge>, TireError> {
    let Gauge(first) = pressure;
    let [from, to] = [from, to].map(Quantity::base);
    let sound = first >= 0.0 && air.0 > 0.0 && from > 0.0 && to > 0.0;
    if !(sound && (first + air.0 + from + to).is_finite()) {
        return Err(TireError::Impossible);
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

/// The manual's cold pressure as it is: the tire is set in the air that it is ridden in.
pub fn as_the_manual(cold: Gauge) -> Answer<Gauge> {
    let terms = vec![term("p", "the manual’s cold pressure", Measure::Pressure, cold)];
    Answer::exact(cold, &AS_THE_MANUAL, terms)
}

/// A pressure that lies between those of two other temperatures.
pub fn within(typical: Answer<Gauge>, ends: [Answer<Gauge>; 2]) -> Answer<Gauge> {
    let [one, other] = ends.map(|it| it.value);
    let bounds = Some(if one < other { [one, other] } else { [other, one] });
    typical.bounded(bounds)
}

/// Pressure for storage: from the cold pressure up to what is the sidewall's maximum when it is as warm as `warmest`.
///
/// # Errors
/// [`TireError`].
pub fn for_storage(
    cold: Gauge,
    maximum: Gauge,
    here: ThermodynamicTemperature,
    warmest: ThermodynamicTemperature,
    air: Gauge,
) -> Result<Answer<Gauge>, TireError> {
    if maximum < cold {
        return Err(TireError::Maximum);
    }
    let most = at(maximum, if warmest > here { warmest } else { here }, here, air)?;
    let least = if cold < most.value { cold } else { most.value };
    let Parts { value, terms, .. } = most.parts();
    Ok(Answer::within(value, [least, value], &STORAGE, terms))
}
