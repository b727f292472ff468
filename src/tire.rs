//! Tires: cold pressure from one temperature to another, what is good for storage, and how old they are.
//!
//! ```
//! use torpor::tire::{self, Gauge};
//! use torpor::units;
//! use torpor::working::Quantity;
//! use uom::si::f64::ThermodynamicTemperature;
//! # fn main() -> Result<(), torpor::tire::TireError> {
//! let celsius = |it: f64| ThermodynamicTemperature::of_base(it + 273.15);
//! let wanted = Gauge::of_base(units::BAR.to_base(2.5));
//! let set = tire::at(wanted, celsius(5.0), celsius(20.0), tire::atmosphere(None)?.value)?;
//! assert!((units::BAR.of_base(set.value.base()) - 2.69).abs() < 0.005);
//! # Ok(()) }
//! ```

mod date;
mod pressure;

pub use date::{Age, DateCode, DateCodeError, OLD, TIRE_AGE, TOO_OLD};
pub use pressure::{
    AS_THE_MANUAL, ATMOSPHERE, Gauge, PRESSURE, Reading, STORAGE, TireError, as_the_manual, at,
    atmosphere, for_storage, is_usual, judged, within,
};

use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, Quantity};
use uom::si::f64::Length;

/// Whether they can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TiresAre {
    /// Not ridden for three hours, no sun on them.
    Cold,
    /// A figure would be a guess.
    Warm,
}

/// One of the two.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wheel {
    /// Front.
    Front,
    /// Rear.
    Rear,
}

/// How far a new tire is ridden gently.
pub const RUN_IN: Law = Law {
    formula: "s = 80 to 160 km",
    gives: Measure::Distance,
    source: source::RUNNING_IN,
    holds: "dry road, no hard braking, leaning or throttle: a new tire is slippery; the tire’s maker decides",
};

/// How far new tires are ridden gently.
pub fn run_in() -> Answer<Length> {
    let [low, high] = [80e3, 160e3].map(Length::of_base);
    Answer::within(high, [low, high], &RUN_IN, vec![])
}
