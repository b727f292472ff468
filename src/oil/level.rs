//! The level after the run: how much to add or to take out, what heat alone does to it, what was drained.

use super::{NEEDED, OilError, positive};
use crate::expansion::Table;
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Parts, Quantity, Term, term},
};
use uom::si::f64::{MassDensity, Ratio, ThermodynamicTemperature, Volume};

/// What brings a level to the full mark.
pub const ADD_BY_LEVEL: Law = Law {
    formula: "A = (1 − x) · B",
    gives: Measure::Oil,
    source: source::LEVEL,
    holds: "an upper limit, read as the manual says: add it in parts and read again",
};

/// What brings a level down to the full mark.
pub const TAKE_OUT: Law = Law {
    formula: "T = (x − 1) · B",
    gives: Measure::Oil,
    source: source::LEVEL,
    holds: "above the full mark no scale is marked: take out less, and read again",
};

/// What the same oil gains in volume between two temperatures.
pub const HEAT_GROWTH: Law = Law {
    formula: "G = V · (K / H − 1)",
    gives: Measure::Oil,
    source: source::OIL_EXPANSION,
    holds: "what heat alone does; the mark is never corrected by it: read the level as the manual says",
};

/// Used oil to catch.
pub const USED_OIL: Law = Law {
    formula: "U = F",
    gives: Measure::Oil,
    source: source::USED_OIL,
    holds: "the level was at the full mark: under it less comes out, over it more; a pan with room to spare",
};

/// Oil from the level that is `read` between the marks (0 % low, 100 % full) to the full mark: to add, or to take out
/// where it stands above; the answer's law tells which. `bounds` are the lowest and highest level it may be.
///
/// # Errors
/// [`OilError::Between`], [`OilError::Level`].
pub fn by_level(
    read: Ratio,
    bounds: Option<[Ratio; 2]>,
    between: Volume,
) -> Result<Answer<Volume>, OilError> {
    if !positive(between) {
        return Err(OilError::Between);
    }
    let [low, high] = bounds.unwrap_or([read; 2]).map(Quantity::base);
    if !(low >= 0.0 && low <= read.base() && read.base() <= high && high <= 1.5) {
        return Err(OilError::Level);
    }
    let over = read.base() > 1.0;
    // Adding 0 turns a negative zero, which would print as -0, into a plain one.
    let missing = |level: f64| {
        let share = if over { level - 1.0 } else { 1.0 - level };
        between * (share.max(0.0) + 0.0)
    };
    let ends = if over { [low, high] } else { [high, low] };
    let terms = vec![
        term("x", "level, 0 % at the low mark and 100 % at the full mark", Measure::Share, read),
        term("B", "between the marks", Measure::Oil, between),
    ];
    let law = if over { &TAKE_OUT } else { &ADD_BY_LEVEL };
    let bounds = bounds.map(|_| ends.map(missing));
    Ok(Answer::of(Parts { value: missing(read.base()), bounds, law, terms }))
}

/// Density of an engine oil at 15 °C where nobody has looked at its data sheet, and what it may lie between, kg/m³.
/// Common practice, no source.
const DENSITY: [f64; 3] = [840.0, 860.0, 900.0];

/// How much the volume `poured` at one temperature grows up to the temperature it is `read` at; less than 0 where that
/// is colder. Without a `density` at 15 °C within bounds.
///
/// # Errors
/// [`OilError::Needed`], [`OilError::OutsideTable`].
pub fn heat_growth(
    volume: Volume,
    poured: ThermodynamicTemperature,
    read: ThermodynamicTemperature,
    density: Option<MassDensity>,
) -> Result<Answer<Volume>, OilError> {
    if !positive(volume) {
        return Err(OilError::Needed);
    }
    let typical = density.unwrap_or(MassDensity::of_base(DENSITY[1]));
    let factors = |density| {
        let factor = |at| Table::LubricatingOil.factor(density, at).ok_or(OilError::OutsideTable);
        Ok((factor(poured)?, factor(read)?))
    };
    let grown = |(poured, read): (f64, f64)| volume * (poured / read - 1.0);
    let (before, after) = factors(typical)?;
    let value = grown((before, after));
    let bounds = match density {
        Some(_) => None,
        None => {
            // The lighter, the more.
            let [most, least] = [DENSITY[0], DENSITY[2]].map(MassDensity::of_base);
            let [most, least] = [grown(factors(most)?), grown(factors(least)?)];
            Some(if most > least { [least, most] } else { [most, least] })
        }
    };
    let number = |symbol, name, number| Term { symbol, name, amount: Amount::Number(number) };
    let terms = vec![
        term("V", "oil as poured", Measure::Oil, volume),
        number("K", "its volume at 15 °C, as a share, when poured", before),
        number("H", "the same when the level is read", after),
        term("ρ", "density at 15 °C", Measure::Density, typical),
        term("t1", "temperature when poured", Measure::Temperature, poured),
        term("t2", "temperature when read", Measure::Temperature, read),
    ];
    Ok(Answer::of(Parts { value, bounds, law: &HEAT_GROWTH, terms }))
}

/// Used oil to catch and to carry to disposal where `fill` goes in afterwards; within bounds where the volume `between`
/// the marks is known, as the old oil stood anywhere between them.
pub fn used_oil(fill: Volume, between: Option<Volume>) -> Answer<Volume> {
    let terms = vec![term("F", NEEDED, Measure::Oil, fill)];
    let bounds = between.filter(|it| *it <= fill).map(|it| [fill - it, fill]);
    Answer::of(Parts { value: fill, bounds, law: &USED_OIL, terms })
}
