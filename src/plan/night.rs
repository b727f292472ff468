//! The coldest night that is reckoned with: as typed where it can be one, else as counted. One that is refused is never a
//! margin, and never silence either.

use super::battery::{bikes_place, climate, kept};
use super::season_of;
use crate::battery::Roughly;
use crate::facts::{self, BatteryKept, Fact, Facts, Place, Rough, Told, both};
use crate::season::Temperatures;
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{labels, notes};
use crate::working::Answer;
use uom::si::f64::ThermodynamicTemperature;

/// A coldest night.
pub(super) struct Night {
    /// What is reckoned with.
    pub roughly: Roughly<ThermodynamicTemperature>,
    /// Its working and the station, where it is that of a climate.
    pub counted: Option<(Answer<ThermodynamicTemperature>, &'static str)>,
    /// Why what was typed cannot be one, with its label: the other counts in its place.
    pub refused: Option<String>,
}

impl Night {
    /// The counted one as an answer.
    pub fn shown(&self, set: UnitSet) -> Option<Shown> {
        let (answer, _) = self.counted.as_ref()?;
        Some(Shown::quantity(labels::COLDEST_NIGHT, Ok(answer.clone()), set))
    }

    /// As a temperature with its bounds.
    pub fn rough(&self) -> Rough<ThermodynamicTemperature> {
        let Roughly { low, typical, high } = self.roughly;
        Rough { value: typical, bounds: Some([low, high]), about: false, unit: None }
    }
}

/// That of the battery, wherever it is kept.
pub(super) fn of_battery(from: &dyn Facts, set: UnitSet) -> Told<Night> {
    match kept(from)? {
        BatteryKept::Elsewhere => {
            night(from, &facts::KEPT_COLDEST, facts::KEPT_AT.of(from), true, set)
        }
        _ => of_bike(from, set),
    }
}

/// That of the bike, wherever its battery is kept.
pub(super) fn of_bike(from: &dyn Facts, set: UnitSet) -> Told<Night> {
    night(from, &facts::COLDEST_NIGHT, bikes_place(from), false, set)
}

fn night(
    from: &dyn Facts,
    fact: &Fact<ThermodynamicTemperature>,
    place: Told<Temperatures>,
    elsewhere: bool,
    set: UnitSet,
) -> Told<Night> {
    let known = season_of(from).ok().zip(place.ok());
    let day = known.as_ref().map(|(season, place)| place.coldest_of(season));
    let typed = fact.of(from).and_then(|night| match too_warm(night, day, set) {
        Some(why) => Err(fact.not_together(why)),
        None => Ok(night),
    });
    let lacks = match typed {
        Ok(night) => {
            return Ok(Night { roughly: Roughly::exactly(night), counted: None, refused: None });
        }
        Err(lacks) => lacks,
    };
    let why = lacks.iter().find_map(|it| it.refusal());
    let refused = why.map(|why| notes::night_refused(fact.about.label, &why.to_string()));
    let heated = !elsewhere && facts::WHERE_IT_STANDS.known(from) == Some(Place::Heated);
    if let (Some((_, place)), Some(day)) = (&known, day)
        && place.is_steady()
        && (heated || elsewhere)
    {
        return Ok(Night { roughly: Roughly::exactly(day), counted: None, refused });
    }
    if !heated
        && !elsewhere
        && let (Ok(Some(climate)), Some((season, _))) = (climate(from), &known)
    {
        let answer = climate.coldest_night(Temperatures::of(climate).coldest_of(season));
        let [low, high] = answer.bounds.unwrap_or([answer.value; 2]);
        let roughly = Roughly { low, typical: answer.value, high };
        return Ok(Night { roughly, counted: Some((answer, climate.name)), refused });
    }
    Err(lacks)
}

/// Why a night cannot be the coldest: none is warmer than the coldest mean of the season. Mostly a minus was left out.
fn too_warm(
    night: ThermodynamicTemperature,
    mean: Option<ThermodynamicTemperature>,
    set: UnitSet,
) -> Option<String> {
    let mean = mean.filter(|it| night > *it)?;
    Some(notes::colder_than(&show::rounded(Measure::Temperature, mean, set)))
}

/// Why the coldest night that was typed cannot be one, where it cannot.
pub fn night_refused(from: &dyn Facts, set: UnitSet) -> Option<String> {
    let night = facts::COLDEST_NIGHT.known(from)?;
    let (season, place) = both(season_of(from), bikes_place(from)).ok()?;
    too_warm(night, Some(place.coldest_of(&season)), set)
}
