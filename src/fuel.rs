//! Fuel for the season: filling, stabilizer, and running the treated fuel through.
//!
//! ```
//! use torpor::fuel::{self, Label};
//! use uom::si::{f64::{Ratio, Volume}, volume::{liter, milliliter}};
//! # fn main() -> Result<(), torpor::fuel::FuelError> {
//! let l = Volume::new::<liter>;
//! let add = fuel::to_add(l(17.0), l(4.8), l(16.0))?;
//! assert!((add.value - l(11.2)).abs() < Volume::new::<milliliter>(0.001));
//! let label = Label::dose_per_fuel(l(1.0), l(320.0))?;
//! let dose = fuel::stabilizer(l(16.0), l(4.8), Ratio::default(), label, 1.0)?;
//! assert!((dose.value.get::<milliliter>() - 50.0).abs() < 1e-9);
//! # Ok(()) }
//! ```

mod keep;
mod level;
mod run;
mod treat;
mod water;

pub use keep::{FUEL_AGE, age, keeps, keeps_until};
pub use level::{
    FILLED_WARM, FUEL_LEFT, MOST_FILL, RUNS_OUT, Warming, fuel_left, most_fill, no_room, runs_out,
    share_of, to_add_about, usual_level,
};
pub use run::{BOWLS_LEFT, INJECTION_RUN, RUN_DISTANCE, RunThrough, Supply, run_through};
pub use treat::{Label, STABILIZER, is_rich, spoons, stabilizer, stabilizer_about};
pub use water::{
    Air, DAYS, HELD_BY_E0, HELD_BY_E10, SHED, WATER_BREATHED, breathed, dissolved, held_by_e0,
    held_by_e10, shed,
};

use crate::source;
use crate::{
    units::Measure,
    working::{Answer, Law, Quantity, term},
};
use std::fmt;
use uom::si::f64::Volume;

/// Fuel to add.
pub const FUEL_TO_ADD: Law = Law {
    formula: "a = F − I",
    gives: Measure::Tank,
    source: source::ARITHMETIC,
    holds: "the level to fill to is no higher than the bottom of the filler neck: fuel grows as it warms",
};

/// Nothing to add: there is already as much in the tank as it was to be filled to, or more.
pub const FULL_ENOUGH: Law = Law {
    formula: "a = max(0, F − I)",
    gives: Measure::Tank,
    source: source::ARITHMETIC,
    holds: "the tank already holds what it was to be filled to, or more",
};

/// Fuel to add to what is `inside` a `tank` to have `fill_to` in it. Nothing where there is as much in it already;
/// the answer's law is then [`FULL_ENOUGH`], and [`final_volume`] is what is inside.
///
/// # Errors
/// [`FuelError::Tank`], [`FuelError::Inside`], [`FuelError::InsideOverTank`], [`FuelError::FillTo`],
/// [`FuelError::FillToOverTank`].
pub fn to_add(tank: Volume, inside: Volume, fill_to: Volume) -> Result<Answer<Volume>, FuelError> {
    if !positive(tank) {
        return Err(FuelError::Tank);
    }
    if !positive_or_none(inside) {
        return Err(FuelError::Inside);
    }
    if inside > tank {
        return Err(FuelError::InsideOverTank);
    }
    if !positive(fill_to) {
        return Err(FuelError::FillTo);
    }
    if fill_to > tank {
        return Err(FuelError::FillToOverTank);
    }
    let terms = vec![
        term("F", "fill to", Measure::Tank, fill_to),
        term("I", "fuel in the tank", Measure::Tank, inside),
    ];
    let law = if inside < fill_to { &FUEL_TO_ADD } else { &FULL_ENOUGH };
    Ok(Answer::exact(final_volume(inside, fill_to) - inside, law, terms))
}

/// What is in the tank after filling to `fill_to`: all that was `inside` where that is more.
pub fn final_volume(inside: Volume, fill_to: Volume) -> Volume {
    if inside > fill_to { inside } else { fill_to }
}

/// A number above zero that is neither infinite nor undefined.
fn positive(quantity: impl Quantity) -> bool {
    quantity.base().is_finite() && quantity.base() > 0.0
}

/// The same, or exactly zero.
fn positive_or_none(quantity: impl Quantity) -> bool {
    positive(quantity) || quantity.base() == 0.0
}

/// Why a volume, a label or a consumption is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FuelError {
    /// Tank of zero or less.
    Tank,
    /// Fuel in the tank under zero.
    Inside,
    /// More fuel than the tank holds.
    InsideOverTank,
    /// Fill to of zero or less.
    FillTo,
    /// Fill to over the tank volume.
    FillToOverTank,
    /// Dose or fuel on the label of zero or less.
    Label,
    /// As much dose as fuel, or more.
    LabelOrder,
    /// Doses of zero or less.
    Multiple,
    /// More fuel before than after filling.
    InsideOverFinal,
    /// Share treated outside zero to one.
    Treated,
    /// Line volume of zero or less.
    Line,
    /// Bowl volume of zero or less.
    Bowls,
    /// Consumption of zero or less.
    Consumption,
    /// Lowest consumption over the highest.
    ConsumptionOrder,
    /// Distance under zero.
    Since,
    /// A distance for which one tank is not enough.
    SinceOverTank,
    /// Temperature that the table has no factor for.
    OutsideTable,
    /// Fuel bought after it is ridden on.
    BoughtAfterRide,
    /// Air over the fuel, or nights, under zero.
    Space,
}

impl fmt::Display for FuelError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Tank => "tank volume has to be more than 0",
            Self::Inside => "fuel in the tank has to be 0 or more",
            Self::InsideOverTank => "fuel in the tank has to be at most the tank volume",
            Self::FillTo => "volume to fill to has to be more than 0",
            Self::FillToOverTank => "volume to fill to has to be at most the tank volume",
            Self::Label => "dose and fuel on the label have to be more than 0 each",
            Self::LabelOrder => "dose on the label has to be less than the fuel it treats",
            Self::Multiple => "number of doses has to be more than 0",
            Self::InsideOverFinal => "fuel in the tank has to be at most the volume to fill to",
            Self::Treated => "share already treated has to be from 0 % to 100 %",
            Self::Line => "volume of the fuel line has to be more than 0",
            Self::Bowls => "volume of the carburetor bowls has to be more than 0",
            Self::Consumption => "consumption has to be more than 0",
            Self::ConsumptionOrder => "lowest consumption has to be at most the highest",
            Self::Since => "distance since the last fill has to be 0 or more",
            Self::SinceOverTank => "distance since the last fill has to be one that a tank lasts",
            Self::OutsideTable => "the table ends there: −18 to 90 °C (−0.4 to 194 °F)",
            Self::BoughtAfterRide => "fuel has to be bought on the ride date or before",
            Self::Space => "air over the fuel and nights have to be 0 or more",
        })
    }
}

impl std::error::Error for FuelError {}
