//! How much is in a tank, and how full it may be: fuel grows when it warms.

use super::{FuelError, final_volume, positive, positive_or_none, to_add};
use crate::expansion::Table;
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Quantity, Term, term},
};
use uom::si::f64::{Area, Length, MassDensity, Ratio, ThermodynamicTemperature, Volume};

/// Fuel left in the tank since it was full.
pub const FUEL_LEFT: Law = Law {
    formula: "I = max(0, W − D · C)",
    gives: Measure::Tank,
    source: source::FUEL_LEFT,
    holds: "filled to the bottom of the neck then, and ridden since as the consumption was taken",
};

/// Highest level that does not run over.
pub const MOST_FILL: Law = Law {
    formula: "M = W · H / K",
    gives: Measure::Tank,
    source: source::GASOLINE_EXPANSION,
    holds: "gasoline without ethanol, at rest, bike level; E10 is not in the table",
};

/// Highest level of fuel that only gets colder.
pub const FILLED_WARM: Law = Law {
    formula: "M = W",
    gives: Measure::Tank,
    source: source::GASOLINE_EXPANSION,
    holds: "it is never warmer than when it was filled: sun on the tank counts",
};

/// What runs out of a tank that was filled too high.
pub const RUNS_OUT: Law = Law {
    formula: "O = max(0, L · K / H − W)",
    gives: Measure::Dose,
    source: source::GASOLINE_EXPANSION,
    holds: "gasoline without ethanol, at rest, bike level; E10 is not in the table",
};

/// Density of gasoline at 15 °C, kg/m³: lightest and heaviest. EN 228 has 720 to 775, from memory; table 54B ends at 770.
const DENSITY: [f64; 2] = [720.0, 770.0];

/// How far off a consumption is that was typed as one number. Common practice, no source.
const CONSUMPTION_OFF: f64 = 0.15;

/// Fuel left in a `tank` that was full `since` so many kilometers at a `consumption` (fuel for a distance), within bounds:
/// those of the consumption, or 15 % of what was used.
///
/// # Errors
/// [`FuelError::Tank`], [`FuelError::Since`], [`FuelError::Consumption`], [`FuelError::ConsumptionOrder`],
/// [`FuelError::SinceOverTank`].
pub fn fuel_left(
    tank: Volume,
    since: Length,
    consumption: Area,
    bounds: Option<[Area; 2]>,
) -> Result<Answer<Volume>, FuelError> {
    if !positive(tank) {
        return Err(FuelError::Tank);
    }
    if !positive_or_none(since) {
        return Err(FuelError::Since);
    }
    let off = |share: f64| consumption * share;
    let [low, high] = bounds.unwrap_or([off(1.0 - CONSUMPTION_OFF), off(1.0 + CONSUMPTION_OFF)]);
    if !positive(low) || !positive(high) {
        return Err(FuelError::Consumption);
    }
    if low > consumption || consumption > high {
        return Err(FuelError::ConsumptionOrder);
    }
    let left = |consumption: Area| tank - since * consumption;
    if left(low).base() < 0.0 {
        return Err(FuelError::SinceOverTank);
    }
    let [least, most, left] =
        [high, low, consumption].map(|it| Volume::of_base(left(it).base().max(0.0)));
    let terms = vec![
        term("W", "tank volume", Measure::Tank, tank),
        term("D", "distance since it was full", Measure::Distance, since),
        term("C", "consumption", Measure::Consumption, consumption),
    ];
    Ok(Answer::within(left, [least, most], &FUEL_LEFT, terms))
}

/// [`to_add`] for a tank whose contents are known within bounds.
///
/// # Errors
/// As of [`to_add`].
pub fn to_add_about(
    tank: Volume,
    inside: Volume,
    bounds: Option<[Volume; 2]>,
    fill_to: Volume,
) -> Result<Answer<Volume>, FuelError> {
    let mut answer = to_add(tank, inside, fill_to)?;
    let add = |inside| final_volume(inside, fill_to) - inside;
    answer.bounds = bounds.map(|[least, most]| [add(most), add(least)]);
    Ok(answer)
}

/// How full where the owner does not say. Common practice, no source; the blank says so.
const USUAL_LEVEL: f64 = 0.95;

/// What a `tank` is filled to where the owner does not say.
pub fn usual_level(tank: Volume) -> Volume {
    tank * USUAL_LEVEL
}

/// Whether a `level` leaves less room than the usual one: typed as a share it is the same but for its last digit.
pub fn no_room(tank: Volume, level: Volume) -> bool {
    level > usual_level(tank) * (1.0 + 1e-9)
}

/// A `share` of a `tank`.
pub fn share_of(tank: Volume, share: Ratio) -> Volume {
    tank * share
}

/// Fuel between two temperatures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Warming {
    /// When it is filled.
    pub filled: ThermodynamicTemperature,
    /// The warmest it may get.
    pub warmest: ThermodynamicTemperature,
}

impl Warming {
    /// Volumes at 15 °C of one unit of fuel, when filled and when warmest.
    fn factors(&self, density: f64) -> Result<[f64; 2], FuelError> {
        let factor = |at| Table::Gasoline.factor(MassDensity::of_base(density), at);
        let [filled, warm] = [self.filled, self.warmest].map(factor);
        filled.zip(warm).map(|(filled, warm)| [filled, warm]).ok_or(FuelError::OutsideTable)
    }

    /// What `of` makes of the factors: for the lightest gasoline, which grows most, with bounds.
    fn answer(
        &self,
        first: Term,
        law: &'static Law,
        of: &dyn Fn([f64; 2]) -> Volume,
    ) -> Result<Answer<Volume>, FuelError> {
        let [factors, heavy] = DENSITY.map(|it| self.factors(it));
        let (factors, other) = (factors?, of(heavy?));
        let value = of(factors);
        let bounds = if other < value { [other, value] } else { [value, other] };
        let [filled, warm] = factors;
        let number = |symbol, name, number| Term { symbol, name, amount: Amount::Number(number) };
        let terms = vec![
            first,
            number("K", "its volume at 15 °C, as a share, when filled", filled),
            number("H", "the same when warmest", warm),
        ];
        Ok(Answer::within(value, bounds, law, terms))
    }
}

/// The most that a `tank` takes so that it does not run over at the warmest. Its value is for the lightest gasoline, the
/// lowest of its bounds: more may run over.
///
/// # Errors
/// [`FuelError::Tank`], [`FuelError::OutsideTable`].
pub fn most_fill(tank: Volume, warming: &Warming) -> Result<Answer<Volume>, FuelError> {
    if !positive(tank) {
        return Err(FuelError::Tank);
    }
    let size = term("W", "tank volume", Measure::Tank, tank);
    if warming.warmest <= warming.filled {
        warming.factors(DENSITY[0])?;
        return Ok(Answer::exact(tank, &FILLED_WARM, vec![size]));
    }
    warming.answer(size, &MOST_FILL, &|[filled, warm]| tank * (warm / filled))
}

/// What runs out of a `tank` that is filled to `level` when it is warmest. Its value is for the lightest gasoline, the
/// highest of its bounds.
///
/// # Errors
/// [`FuelError::Tank`], [`FuelError::Inside`], [`FuelError::OutsideTable`].
pub fn runs_out(
    tank: Volume,
    level: Volume,
    warming: &Warming,
) -> Result<Answer<Volume>, FuelError> {
    if !positive(tank) {
        return Err(FuelError::Tank);
    }
    if !positive_or_none(level) {
        return Err(FuelError::Inside);
    }
    let first = term("L", "filled to", Measure::Tank, level);
    let over = |[filled, warm]: [f64; 2]| {
        Volume::of_base((level * (filled / warm) - tank).base().max(0.0))
    };
    let mut answer = warming.answer(first, &RUNS_OUT, &over)?;
    answer.terms.push(term("W", "tank volume", Measure::Tank, tank));
    Ok(answer)
}
