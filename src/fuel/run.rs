//! Running the treated fuel through: how much has to be drawn, and how far to ride for it.
//!
//! Never by idling: it overheats the engine, dilutes the oil and fills the garage with carbon monoxide.

use super::{FuelError, positive};
use crate::maths::ln;
use crate::source;
use crate::{
    units::Measure,
    working::{Answer, Law, Quantity, term},
};
use uom::si::{
    f64::{Area, Length, Ratio, Volume},
    length::kilometer,
    ratio::percent,
};

/// Fuel to draw with injection: line and rail are pushed through as a plug.
pub const INJECTION_RUN: Law = Law {
    formula: "V = L",
    gives: Measure::Dose,
    source: source::DISPLACEMENT,
    holds: "at least this much: a little old fuel clings and mixes",
};

/// Fuel to draw with carburetors: the line is pushed through, the bowls mix.
pub const BOWLS_LEFT: Law = Law {
    formula: "V = L + B · ln(1 / r)",
    gives: Measure::Dose,
    source: source::DILUTION_TO_FIVE_PERCENT,
    holds: "the bowls stay full and mix well",
};

/// How far to ride.
pub const RUN_DISTANCE: Law = Law {
    formula: "D = max(P, V / C)",
    gives: Measure::Distance,
    source: source::RIDE_AT_LEAST,
    holds: "ridden, never idled: outdoors, the engine warm and working",
};

/// What lies between tap and engine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Supply {
    /// Injection.
    Injection {
        /// Line and rail together.
        line: Volume,
    },
    /// Carburetors.
    Carburetor {
        /// Line from tap to carburetors.
        line: Volume,
        /// All bowls together.
        bowls: Volume,
    },
}

/// What to draw, and how far to ride for it.
#[derive(Debug, Clone, PartialEq)]
pub struct RunThrough {
    /// Fuel to draw.
    pub drawn: Answer<Volume>,
    /// Distance to ride. Its value is the longest of its bounds: less may be too little, more does no harm.
    pub distance: Answer<Length>,
}

/// What to draw through `supply` so that treated fuel has reached the engine, and how far to ride for it at a
/// `consumption` between lowest and highest (fuel for a distance).
///
/// # Errors
/// [`FuelError::Line`], [`FuelError::Bowls`], [`FuelError::Consumption`], [`FuelError::ConsumptionOrder`].
pub fn run_through(supply: Supply, consumption: [Area; 2]) -> Result<RunThrough, FuelError> {
    let [lowest, highest] = consumption;
    if !positive(lowest) || !positive(highest) {
        return Err(FuelError::Consumption);
    }
    if lowest > highest {
        return Err(FuelError::ConsumptionOrder);
    }
    let drawn = to_draw(supply)?;
    let [short, long] = [15.0, 20.0].map(Length::new::<kilometer>);
    let longer = |practice: Length, consumption: Area| {
        let asked: Length = drawn.value / consumption;
        if asked > practice { asked } else { practice }
    };
    let bounds = [longer(short, highest), longer(long, lowest)];
    let terms = vec![
        term("P", "ride at least", Measure::Distance, long),
        term("V", "fuel to draw", Measure::Dose, drawn.value),
        term("C", "lowest consumption", Measure::Consumption, lowest),
    ];
    let distance = Answer::within(bounds[1], bounds, &RUN_DISTANCE, terms);
    Ok(RunThrough { drawn, distance })
}

fn to_draw(supply: Supply) -> Result<Answer<Volume>, FuelError> {
    Ok(match supply {
        Supply::Injection { line } => {
            let line = checked(line, FuelError::Line)?;
            let terms = vec![term("L", "fuel line and rail", Measure::Dose, line)];
            Answer::exact(line, &INJECTION_RUN, terms)
        }
        Supply::Carburetor { line, bowls } => {
            let [line, bowls] =
                [checked(line, FuelError::Line)?, checked(bowls, FuelError::Bowls)?];
            let left = Ratio::new::<percent>(5.0);
            let terms = vec![
                term("L", "fuel line", Measure::Dose, line),
                term("B", "carburetor bowls", Measure::Dose, bowls),
                term("r", "old fuel left", Measure::Share, left),
            ];
            Answer::exact(line + bowls * ln(1.0 / left.base()), &BOWLS_LEFT, terms)
        }
    })
}

fn checked(volume: Volume, error: FuelError) -> Result<Volume, FuelError> {
    positive(volume).then_some(volume).ok_or(error)
}
