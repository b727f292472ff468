//! How old the fuel gets, and the water it meets.

use super::level::Filled;
use crate::facts::{self, Facts, FuelType, Told};
use crate::fuel::{self, Air, DAYS};
use crate::season::Season;
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::{fuel as words, labels};
use crate::working::Answer;

/// How old the fuel gets.
pub struct Age {
    /// On the ride date, or in twelve months where there is none.
    pub days: Answer<f64>,
    /// Whether it is drained rather than treated, as far as the dates tell.
    pub too_old: bool,
    /// Whether untreated fuel keeps until the bike is parked, and until it is ridden.
    keeps: [bool; 2],
}

/// Age over the season.
pub fn age(from: &dyn Facts, season: &Season) -> Told<Age> {
    let bought = facts::FUEL_BOUGHT.maybe(from)?.unwrap_or(season.park());
    let days =
        fuel::age(bought, season.end()).map_err(|why| facts::FUEL_BOUGHT.not_together(why))?;
    let parked = days.value - season.days() as f64;
    // Twelve months that were only taken for want of a date are no age to judge by.
    let known = if season.ride().is_some() { days.value } else { parked };
    let keeps = [parked, days.value].map(|it| fuel::keeps(it, false));
    Ok(Age { too_old: !fuel::keeps(known, true), keeps, days })
}

impl Age {
    /// Against what is said of untreated fuel; what was `treated` before keeps as long as treated fuel.
    pub fn warnings(&self, treated: bool, will_be: bool, warnings: &mut Vec<String>) {
        let [until_parked, until_ridden] = self.keeps;
        let (kept, said) =
            if will_be { (until_parked, words::STALE) } else { (until_ridden, words::UNTREATED) };
        if !(kept || treated || self.too_old) {
            warnings.push(said.to_owned());
        }
    }
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
