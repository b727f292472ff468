//! The level after the run: how much to add or to take out, what heat alone does to it, what was drained.

use super::{NEEDED, OilError, positive};
use crate::expansion::Table;
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Parts, Quantity, Term, term},
};
use uom::si::{
    f64::{MassDensity, Ratio, ThermodynamicTemperature, Volume},
    thermodynamic_temperature::degree_celsius,
};

/// What brings a level to the full mark.
pub const ADD_BY_LEVEL: Law = Law {
    formula: "A = max(0, (1 − x) · B)",
    gives: Measure::Oil,
    source: source::LEVEL,
    holds: "an upper limit, read as the manual says: add it in parts and read again",
};

/// What brings a level down to the full mark.
pub const TAKE_OUT: Law = Law {
    formula: "T = max(0, (x − 1) · B)",
    gives: Measure::Oil,
    source: source::LEVEL,
    holds: "above the full mark no scale is marked: take out less, and read again",
};

/// What the same oil gains in volume up to the temperature it is read at.
pub const HEAT_GROWTH: Law = Law {
    formula: "G = V · (K / H − 1)",
    gives: Measure::Oil,
    source: source::OIL_EXPANSION,
    holds: "what heat alone does; the mark is never corrected by it: read the level as the manual says",
};

/// What it loses where it is read colder than it was poured.
pub const COLD_SHRINKING: Law = Law {
    formula: "G = V · (1 − K / H)",
    gives: Measure::Oil,
    source: source::OIL_EXPANSION,
    holds: HEAT_GROWTH.holds,
};

/// Used oil to catch.
pub const USED_OIL: Law = Law {
    formula: "U = F",
    gives: Measure::Oil,
    source: source::USED_OIL,
    holds: "the level was at the full mark: under it less comes out, over it more; a pan with room to spare",
};

/// Shares of the span between the marks that a level may be read at: a stick ends below it, a glass above.
const READABLE: [f64; 2] = [-2.0, 3.0];

/// Whether a level that is `read` between the marks (0 % low, 100 % full) stands above the full one.
pub fn over_full(read: Ratio) -> bool {
    read.base() > 1.0
}

/// Whether it stands below the low one, or may: `bounds` are the lowest and highest level it may be.
pub fn under_low(read: Ratio, bounds: Option<[Ratio; 2]>) -> bool {
    bounds.map_or(read, |it| it[0]).base() < 0.0
}

/// Oil from the level that is `read` to the full mark: to add, or to take out where it stands above; the answer's law
/// tells which. Of a level within `bounds` the least, so that it is read again before it is too much.
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
    let [low, high] = bounds.unwrap_or([read; 2]);
    let [least, most] = READABLE;
    if !(low.base() >= least && low <= read && read <= high && high.base() <= most) {
        return Err(OilError::Level);
    }
    let over = over_full(read);
    let level = match over {
        false => high,
        true if over_full(low) => low,
        true => read,
    };
    let share = if over { level.base() - 1.0 } else { 1.0 - level.base() };
    let terms = vec![
        term("x", "level, 0 % at the low mark and 100 % at the full mark", Measure::Share, level),
        term("B", "between the marks", Measure::Oil, between),
    ];
    let law = if over { &TAKE_OUT } else { &ADD_BY_LEVEL };
    // Adding 0 turns a negative zero, which would print as -0, into a plain one.
    Ok(Answer::exact(between * (share.max(0.0) + 0.0), law, terms))
}

/// Whether an engine that was stopped so many `minutes` ago, or whose oil has a `temperature`, is not cold yet: under half
/// an hour, over 50 °C. Common practice, no source.
pub fn still_warm(minutes: Option<u32>, temperature: Option<ThermodynamicTemperature>) -> bool {
    let hot = |it: ThermodynamicTemperature| it.get::<degree_celsius>() > 50.0;
    minutes.is_some_and(|it| it < 30) || temperature.is_some_and(hot)
}

/// Density of an engine oil at 15 °C where nobody has looked at its data sheet, and what it may lie between, kg/m³.
/// Common practice, no source.
const DENSITY: [f64; 3] = [840.0, 860.0, 900.0];

/// How much the volume `poured` at one temperature grows up to the temperature it is `read` at, or shrinks where that
/// is colder; the answer's law tells which. Without a `density` at 15 °C within bounds.
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
    let colder = read < poured;
    let grown = |(poured, read): (f64, f64)| {
        let grown = poured / read - 1.0;
        volume * if colder { -grown } else { grown }
    };
    let (before, after) = factors(typical)?;
    let value = grown((before, after));
    let bounds = match density {
        Some(_) => None,
        None => {
            // The lighter, the more.
            let [most, least] = [DENSITY[0], DENSITY[2]].map(MassDensity::of_base);
            let [most, least] = [grown(factors(most)?), grown(factors(least)?)];
            Some([least, most])
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
    let law = if colder { &COLD_SHRINKING } else { &HEAT_GROWTH };
    Ok(Answer::of(Parts { value, bounds, law, terms }))
}

/// Used oil to catch and to carry to disposal where `fill` goes in afterwards; within bounds where the volume `between`
/// the marks is known, as the old oil stood anywhere between them.
pub fn used_oil(fill: Volume, between: Option<Volume>) -> Answer<Volume> {
    let terms = vec![term("F", NEEDED, Measure::Oil, fill)];
    let bounds = between.filter(|it| *it <= fill).map(|it| [fill - it, fill]);
    Answer::of(Parts { value: fill, bounds, law: &USED_OIL, terms })
}
