//! How old the fuel gets, and the water it meets.

use super::level::Filled;
use crate::facts::{self, Facts, FuelType};
use crate::fuel::{self, Air, DAYS, Keeps};
use crate::season::Season;
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::{fuel as words, labels, notes};

/// Age on the ride date, against what is said of fuel `treated` or not.
pub fn age(
    from: &dyn Facts,
    season: &Season,
    treated: bool,
    set: UnitSet,
    answers: &mut Vec<Shown>,
    warnings: &mut Vec<String>,
) {
    let bought = facts::FUEL_BOUGHT.maybe(from);
    let told = bought.and_then(|bought| {
        let bought = bought.unwrap_or(season.park());
        fuel::age(bought, season.end()).map_err(|why| facts::FUEL_BOUGHT.not_together(why))
    });
    if let Ok(age) = &told {
        let when_parked = age.value - season.days() as f64;
        match fuel::keeps(age.value, treated) {
            Keeps::Well => {}
            _ if treated => warnings.push(notes::TOO_LONG_TO_TREAT.to_owned()),
            Keeps::Perhaps | Keeps::No => warnings.push(words::UNTREATED.to_owned()),
        }
        if treated && fuel::keeps(when_parked, false) != Keeps::Well {
            warnings.push(words::STALE.to_owned());
        }
    }
    answers.push(Shown::count(labels::FUEL_AGE, told, set));
}

/// Water breathed in over the season, against what the fuel holds; only where the fuel is named.
pub fn water(
    from: &dyn Facts,
    filled: &Filled,
    season: Option<&Season>,
    set: UnitSet,
    answers: &mut Vec<Shown>,
) {
    let Ok(Some(fuel_type)) = facts::FUEL_TYPE.maybe(from) else { return };
    let last = fuel::final_volume(filled.inside.0, filled.level);
    if let Some(season) = season {
        let [usual, worst] = DAYS.map(|[day, humidity, night]| Air::new(day, humidity, night));
        let space = filled.tank - last;
        if let Ok(water) = fuel::breathed(space, season.days() as f64, usual, worst) {
            answers.push(Shown::quantity(labels::WATER_BREATHED, Ok(water), set));
        }
    }
    let held = match fuel_type {
        FuelType::E10 => fuel::held_by_e10(last),
        FuelType::E0 => fuel::held_by_e0(last),
    };
    if let Ok(held) = held {
        answers.push(Shown::quantity(labels::WATER_HELD, Ok(held), set));
    }
    if let (FuelType::E0, Ok(shed)) = (fuel_type, fuel::shed(last, 20.0, 0.0)) {
        answers.push(Shown::quantity(labels::WATER_SHED, Ok(shed), set));
    }
    answers.push(Shown::words(labels::WHY_FULL, words::WHY_FULL));
}
