//! How much is in a tank, and how full it may be: fuel grows when it warms.

use super::{FuelError, positive, positive_or_none, to_add};
use crate::expansion::Table;
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Quantity, Term, term},
};
use uom::si::f64::{Area, Length, MassDensity, ThermodynamicTemperature, Volume};

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

/// Density of gasoline at 15 °C, kg/m³: lightest, typical, heaviest. EN 228 has 720 to 775, from memory; table 54B ends
/// at 770.
const DENSITY: [f64; 3] = [720.0, 745.0, 770.0];

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
    inside: &Answer<Volume>,
    fill_to: Volume,
) -> Result<Answer<Volume>, FuelError> {
    let mut answer = to_add(tank, inside.value, fill_to)?;
    if let Some([least, most]) = inside.bounds {
        let [more, less] = [to_add(tank, least, fill_to)?, to_add(tank, most, fill_to)?];
        answer.bounds = Some([less.value, more.value]);
    }
    Ok(answer)
}

/// Volumes at 15 °C of one unit of fuel, when filled and when warmest.
fn factors(
    density: f64,
    filled: ThermodynamicTemperature,
    warmest: ThermodynamicTemperature,
) -> Result<[f64; 2], FuelError> {
    let factor = |at| Table::Gasoline.factor(MassDensity::of_base(density), at);
    factor(filled)
        .zip(factor(warmest))
        .map(|(one, other)| [one, other])
        .ok_or(FuelError::OutsideTable)
}

fn terms_of(first: Term, [filled, warm]: [f64; 2]) -> Vec<Term> {
    let number = |symbol, name, number| Term { symbol, name, amount: Amount::Number(number) };
    vec![
        first,
        number("K", "its volume at 15 °C, as a share, when filled", filled),
        number("H", "the same when warmest", warm),
    ]
}

/// The most that a `tank` takes of fuel `filled` at one temperature so that it does not run over at the `warmest` that it
/// may get; bounds from light to heavy gasoline.
///
/// # Errors
/// [`FuelError::Tank`], [`FuelError::OutsideTable`].
pub fn most_fill(
    tank: Volume,
    filled: ThermodynamicTemperature,
    warmest: ThermodynamicTemperature,
) -> Result<Answer<Volume>, FuelError> {
    if !positive(tank) {
        return Err(FuelError::Tank);
    }
    let size = term("W", "tank volume", Measure::Tank, tank);
    let [light, usual, heavy] = DENSITY;
    let at = |density| factors(density, filled, warmest);
    let most = |[filled, warm]: [f64; 2]| tank * (warm / filled);
    if warmest <= filled {
        at(usual)?;
        return Ok(Answer::exact(tank, &FILLED_WARM, vec![size]));
    }
    let bounds = [most(at(light)?), most(at(heavy)?)];
    Ok(Answer::within(most(at(usual)?), bounds, &MOST_FILL, terms_of(size, at(usual)?)))
}

/// What runs out of a `tank` that holds as much as `level` when it is `filled` and gets as warm as `warmest`; bounds from
/// heavy to light gasoline.
///
/// # Errors
/// [`FuelError::Tank`], [`FuelError::Inside`], [`FuelError::OutsideTable`].
pub fn runs_out(
    tank: Volume,
    level: Volume,
    filled: ThermodynamicTemperature,
    warmest: ThermodynamicTemperature,
) -> Result<Answer<Volume>, FuelError> {
    if !positive(tank) {
        return Err(FuelError::Tank);
    }
    if !positive_or_none(level) {
        return Err(FuelError::Inside);
    }
    let at = |density| factors(density, filled, warmest);
    let over = |[filled, warm]: [f64; 2]| {
        Volume::of_base((level * (filled / warm) - tank).base().max(0.0))
    };
    let [light, usual, heavy] = DENSITY;
    let mut bounds = [over(at(heavy)?), over(at(light)?)];
    if warmest < filled {
        bounds.swap(0, 1);
    }
    let mut terms = terms_of(term("L", "filled to", Measure::Tank, level), at(usual)?);
    terms.push(term("W", "tank volume", Measure::Tank, tank));
    Ok(Answer::within(over(at(usual)?), bounds, &RUNS_OUT, terms))
}
