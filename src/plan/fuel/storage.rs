//! How old the fuel gets, and the water it meets.

use super::level::Filled;
use crate::facts::{self, Facts, FuelType, Told};
use crate::fuel::{self, Air, DAYS};
use crate::season::Season;
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::{fuel as words, labels, notes};
use crate::working::{Answer, Quantity};

/// How old the fuel gets, and what is said of that.
pub struct Age {
    /// Days on the ride date, or in twelve months where there is none.
    pub days: Told<Answer<f64>>,
    /// Whether it is drained rather than treated, as far as the dates tell.
    pub too_old: bool,
    /// Warning.
    pub care: Option<&'static str>,
}

/// Age over the season of fuel that `will_be` treated or not; what was treated before is neither stale nor untreated.
pub fn age(from: &dyn Facts, season: &Season, will_be: bool) -> Age {
    let days = facts::FUEL_BOUGHT.maybe(from).and_then(|bought| {
        let bought = bought.unwrap_or(season.park());
        fuel::age(bought, season.end()).map_err(|why| facts::FUEL_BOUGHT.not_together(why))
    });
    let old = days.as_ref().map_or(0.0, |it| it.value);
    let parked = old - season.days() as f64;
    // Twelve months that were only taken for want of a date are no age to judge by.
    let too_old = !fuel::keeps(if season.ride().is_some() { old } else { parked }, true);
    let (judged, said) = if will_be { (parked, words::STALE) } else { (old, words::UNTREATED) };
    let care = match facts::ALREADY_TREATED.maybe(from) {
        _ if too_old => Some(notes::TOO_LONG_TO_TREAT),
        Ok(Some(it)) if it.base() >= 1.0 => None,
        _ => (!fuel::keeps(judged, false)).then_some(said),
    };
    Age { days, too_old, care }
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
