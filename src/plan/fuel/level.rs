//! What is in the tank, and how full it may be.

use crate::facts::{self, Facts, FuelType, Lacks, Level, Told, all3, both};
use crate::fuel::{self, FuelError, Warming};
use crate::show;
use crate::units::{Measure, UnitSet};
use crate::words::{fuel as words, notes};
use crate::working::Answer;
use uom::si::f64::Volume;

/// A tank before it is filled, and what it is to be filled to.
#[derive(Debug, Clone, PartialEq)]
pub struct Filled {
    /// What it takes.
    pub tank: Volume,
    /// What is in it, and its bounds where it was reckoned.
    pub inside: (Volume, Option<[Volume; 2]>),
    /// What is to be in it.
    pub level: Volume,
    /// What goes in.
    pub to_add: Answer<Volume>,
    /// The most that does not run over, and how it warms, where both temperatures are known.
    pub most: Option<(Answer<Volume>, Warming)>,
    /// Whether the usual level was lowered for it.
    lowered: bool,
}

/// Tank, what is inside, and the level to fill to.
pub fn filled(
    from: &dyn Facts,
    reckoned: &Option<Told<Answer<Volume>>>,
    set: UnitSet,
) -> Told<Filled> {
    let (tank, inside, level) =
        all3(facts::TANK_VOLUME.of(from), inside(from, reckoned), facts::FILL_TO.maybe(from))?;
    let most = match warming(from)? {
        Some(it) => Some((fuel::most_fill(tank, &it).map_err(outside)?, it)),
        None => None,
    };
    let usual = fuel::usual_level(tank);
    let typed = level.map(|level| amount(level, tank));
    let least = most.as_ref().map_or(tank, |it| it.0.value);
    if let (Some(level), Some((_, warming))) = (typed, &most)
        && level > least
        && level <= tank
    {
        let over = fuel::runs_out(tank, level, warming).map_err(outside)?;
        let over = show::rounded(Measure::Dose, over.value, set);
        let most = show::rounded_down(Measure::Tank, least, set);
        return Err(facts::FILL_TO.not_together(words::would_run_out(&over, &most)));
    }
    let lowered = typed.is_none() && least < usual;
    let level = typed.unwrap_or(if lowered { least } else { usual });
    let to_add = fuel::to_add_about(tank, inside.0, inside.1, level).map_err(|why| match why {
        FuelError::Tank => facts::TANK_VOLUME.not_together(why),
        FuelError::Inside | FuelError::InsideOverTank => facts::FUEL_IN_TANK.not_together(why),
        _ => facts::FILL_TO.not_together(why),
    })?;
    Ok(Filled { tank, inside, level, to_add, most, lowered })
}

fn amount(level: Level, tank: Volume) -> Volume {
    match level {
        Level::Share(share) => fuel::share_of(tank, share),
        Level::Amount(amount) => amount,
    }
}

fn outside(why: FuelError) -> Lacks {
    match why {
        FuelError::Tank => facts::TANK_VOLUME.not_together(why),
        _ => facts::WARMEST_FUEL.not_together(why),
    }
}

/// As typed, or reckoned from the distance since it was full.
fn inside(
    from: &dyn Facts,
    reckoned: &Option<Told<Answer<Volume>>>,
) -> Told<(Volume, Option<[Volume; 2]>)> {
    match reckoned {
        Some(Ok(it)) => Ok((it.value, it.bounds)),
        Some(Err(lacks)) => Err(lacks.clone()),
        None => {
            let (tank, level) = both(facts::TANK_VOLUME.of(from), facts::FUEL_IN_TANK.of(from))?;
            Ok((amount(level, tank), None))
        }
    }
}

/// What is in the tank by the distance since it was full; `None` where the owner says it, or says neither.
pub fn reckoned(from: &dyn Facts) -> Option<Told<Answer<Volume>>> {
    let since = facts::given(from, facts::SINCE_FULL.id());
    if facts::given(from, facts::FUEL_IN_TANK.id()) || !since {
        return None;
    }
    let given =
        all3(facts::TANK_VOLUME.of(from), facts::SINCE_FULL.of(from), facts::CONSUMPTION.of(from));
    Some(given.and_then(|(tank, since, used)| {
        fuel::fuel_left(tank, since, used.value, used.bounds).map_err(|why| match why {
            FuelError::Since | FuelError::SinceOverTank => facts::SINCE_FULL.not_together(why),
            _ => facts::CONSUMPTION.not_together(why),
        })
    }))
}

fn warming(from: &dyn Facts) -> Told<Option<Warming>> {
    if !facts::given(from, facts::WARMEST_FUEL.id()) {
        return Ok(None);
    }
    let (filled, warmest) = both(facts::FILL_TEMPERATURE.of(from), facts::WARMEST_FUEL.of(from))?;
    Ok(Some(Warming { filled, warmest }))
}

/// Warnings about levels that fuel grows out of, or that are fuller than wanted.
pub fn warnings(from: &dyn Facts, filled: &Filled, set: UnitSet, warnings: &mut Vec<String>) {
    let (inside, _) = filled.inside;
    let over = filled.most.as_ref().filter(|it| inside > it.0.value);
    let most = |it: &(Answer<Volume>, Warming)| show::rounded_down(Measure::Tank, it.0.value, set);
    let said = if let Some(it) = over
        && let Ok(over) = fuel::runs_out(filled.tank, inside, &it.1)
    {
        words::will_run_out(&show::rounded(Measure::Dose, over.value, set), &most(it))
    } else if inside > filled.level {
        notes::overfull(&show::rounded(Measure::Tank, inside - filled.level, set))
    } else if let Some(it) = &filled.most {
        if filled.lowered { words::filled_lower(&most(it)) } else { String::new() }
    } else if fuel::no_room(filled.tank, filled.level) {
        notes::NO_ROOM_TO_GROW.to_owned()
    } else {
        String::new()
    };
    warnings.extend(Some(said).filter(|it| !it.is_empty()));
    if let (Some(_), Ok(Some(FuelType::E10))) = (&filled.most, facts::FUEL_TYPE.maybe(from)) {
        warnings.push(words::GROWTH_OF_E10.to_owned());
    }
}
