//! Tires: what to set for the ride, what they will read, what is good for storage, and how old they are.

use super::{Panel, season::judged_on};
use crate::facts::{self, Fact, Facts, Rough, Told, all3, both};
use crate::show::{self, Shown};
use crate::tire::{self, Age, DateCode, Gauge, OLD, TOO_OLD, TireError, TiresAre};
use crate::units::{Measure, UnitSet, YEAR};
use crate::words::{cautions, labels, notes};
use crate::working::{Answer, Quantity};
use uom::si::f64::ThermodynamicTemperature;

/// One tire with its facts and the labels of its answers.
struct Side {
    cold: &'static Fact<Gauge>,
    reads: &'static Fact<Gauge>,
    maximum: &'static Fact<Gauge>,
    code: &'static Fact<String>,
    set_at: &'static str,
    on_the_night: &'static str,
    on_the_ride: &'static str,
    storage: &'static str,
    age: &'static str,
}

static FRONT: Side = Side {
    cold: &facts::FRONT_PRESSURE,
    reads: &facts::FRONT_READS,
    maximum: &facts::FRONT_MAXIMUM,
    code: &facts::FRONT_DATE_CODE,
    set_at: labels::FRONT_SET_AT,
    on_the_night: labels::FRONT_ON_THE_NIGHT,
    on_the_ride: labels::FRONT_ON_THE_RIDE,
    storage: labels::FRONT_STORAGE,
    age: labels::FRONT_AGE,
};
static REAR: Side = Side {
    cold: &facts::REAR_PRESSURE,
    reads: &facts::REAR_READS,
    maximum: &facts::REAR_MAXIMUM,
    code: &facts::REAR_DATE_CODE,
    set_at: labels::REAR_SET_AT,
    on_the_night: labels::REAR_ON_THE_NIGHT,
    on_the_ride: labels::REAR_ON_THE_RIDE,
    storage: labels::REAR_STORAGE,
    age: labels::REAR_AGE,
};

/// The tires' calculator.
pub fn tires(from: &dyn Facts, set: UnitSet) -> Panel {
    let [front, rear] = [&FRONT, &REAR].map(|it| set_at(from, it));
    let warm = facts::TIRES_ARE.maybe(from) == Ok(Some(TiresAre::Warm));
    let shown = |label, told| {
        if warm {
            Shown::words(label, notes::LET_IT_STAND)
        } else {
            Shown::quantity(label, told, set)
        }
    };
    let note = match &rear {
        _ if warm => notes::WARM_TIRE.to_owned(),
        Ok(rear) => notes::rear(&show::rounded(Measure::Pressure, rear.value, set)),
        Err(_) => String::new(),
    };
    let [front_set, rear_set] =
        [&front, &rear].map(|it| it.as_ref().ok().filter(|_| !warm).map(|it| it.value));
    let mut answers = vec![shown(REAR.set_at, rear)];
    let mut stated = vec![facts::RIDE_DATE.id()];
    let mut warnings = Vec::new();
    for (side, set_to) in [(&FRONT, front_set), (&REAR, rear_set)] {
        let read = !matches!(side.reads.maybe(from), Ok(None));
        if read && !warm {
            let night = will_read(from, side, facts::COLDEST_NIGHT.of(from).map(exactly));
            answers.push(Shown::quantity(side.on_the_night, night, set));
            if !stated.contains(&facts::COLDEST_NIGHT.id()) {
                stated.push(facts::COLDEST_NIGHT.id());
            }
            let ride = will_read(from, side, facts::RIDE_TEMPERATURE.of(from));
            answers.push(Shown::quantity(side.on_the_ride, ride, set));
        }
        if !matches!(side.maximum.maybe(from), Ok(None)) {
            let storage =
                both(side.cold.of(from), side.maximum.of(from)).and_then(|(cold, most)| {
                    tire::for_storage(cold, most).map_err(|why| side.maximum.not_together(why))
                });
            answers.push(Shown::quantity(side.storage, storage, set));
            let most = side.maximum.maybe(from).ok().flatten();
            if set_to.zip(most).is_some_and(|(set_to, most)| set_to > most) {
                warnings.push(notes::over_sidewall(side.set_at));
            }
            if !warnings.iter().any(|it| it == notes::LET_DOWN_IN_SPRING) {
                warnings.push(notes::LET_DOWN_IN_SPRING.to_owned());
            }
        }
        answers.push(match age(from, side) {
            Ok(Age::Known(age)) => {
                let years = YEAR.of_base(age.value.base());
                if years >= OLD {
                    warnings.push(notes::old_tire(side.age, years >= TOO_OLD));
                }
                Shown::quantity(side.age, Ok(age), set)
            }
            Ok(Age::BeforeMillennium) => {
                warnings.push(notes::old_tire(side.age, true));
                Shown::words(side.age, notes::BEFORE_MILLENNIUM)
            }
            Err(lacks) => Shown::lacking(side.age, lacks),
        });
    }
    match facts::NEW_TIRES.maybe(from) {
        Ok(None) => {}
        new => answers.push(Shown::quantity(labels::RUN_IN, new.map(|_| tire::run_in()), set)),
    }
    Panel {
        note,
        blanks: vec![
            facts::FRONT_PRESSURE.id(),
            facts::REAR_PRESSURE.id(),
            facts::TIRES_ARE.id(),
            facts::SET_TEMPERATURE.id(),
            facts::RIDE_TEMPERATURE.id(),
            facts::FRONT_DATE_CODE.id(),
            facts::REAR_DATE_CODE.id(),
        ],
        more: vec![
            facts::FRONT_READS.id(),
            facts::REAR_READS.id(),
            facts::FRONT_MAXIMUM.id(),
            facts::REAR_MAXIMUM.id(),
            facts::NEW_TIRES.id(),
            facts::TIRE_REFERENCE.id(),
            facts::ALTITUDE.id(),
        ],
        stated,
        answers,
        warnings,
        cautions: cautions::TIRES,
        ..Panel::of(shown(FRONT.set_at, front))
    }
}

/// Where they are measured: that they are cold, the air's temperature and its pressure.
fn measured(from: &dyn Facts) -> Told<(ThermodynamicTemperature, Gauge)> {
    let air = facts::ALTITUDE.maybe(from).and_then(|altitude| {
        tire::atmosphere(altitude).map_err(|why| facts::ALTITUDE.not_together(why))
    });
    let known = all3(facts::SET_TEMPERATURE.of(from), air, facts::TIRES_ARE.of(from));
    known.map(|(here, air, _)| (here, air.value))
}

/// What the gauge is to say where they are set, so that the figure is right on the ride.
fn set_at(from: &dyn Facts, side: &Side) -> Told<Answer<Gauge>> {
    let figure_for = match facts::TIRE_REFERENCE.maybe(from) {
        Ok(Some(reference)) => Ok(exactly(reference)),
        Ok(None) => facts::RIDE_TEMPERATURE.of(from),
        Err(lacks) => Err(lacks),
    };
    let (cold, right_at, (here, air)) = all3(side.cold.of(from), figure_for, measured(from))?;
    roughly(right_at, |right_at| tire::at(cold, right_at, here, air))
        .map_err(|why| refused(side.cold, why))
}

/// A temperature that is known.
fn exactly(value: ThermodynamicTemperature) -> Rough<ThermodynamicTemperature> {
    Rough { value, bounds: None, about: false, unit: None }
}

/// A pressure by a temperature, and by both ends of it where it is a range.
fn roughly(
    temperature: Rough<ThermodynamicTemperature>,
    pressure: impl Fn(ThermodynamicTemperature) -> Result<Answer<Gauge>, TireError>,
) -> Result<Answer<Gauge>, TireError> {
    let typical = pressure(temperature.value)?;
    let Some([low, high]) = temperature.bounds else { return Ok(typical) };
    Ok(tire::within(typical, [pressure(low)?, pressure(high)?]))
}

/// What a tire that reads so now will read at another temperature.
fn will_read(
    from: &dyn Facts,
    side: &Side,
    then: Told<Rough<ThermodynamicTemperature>>,
) -> Told<Answer<Gauge>> {
    let (now, then, (here, air)) = all3(side.reads.of(from), then, measured(from))?;
    roughly(then, |then| tire::at(now, here, then, air)).map_err(|why| refused(side.reads, why))
}

fn refused(pressure: &Fact<Gauge>, why: TireError) -> Vec<facts::Lack> {
    match why {
        TireError::Temperature => facts::SET_TEMPERATURE.not_together(why),
        TireError::Altitude => facts::ALTITUDE.not_together(why),
        _ => pressure.not_together(why),
    }
}

fn age(from: &dyn Facts, side: &Side) -> Told<Age> {
    // A code that is none is refused whether or not a day is known.
    let code = side
        .code
        .of(from)
        .and_then(|text| DateCode::read(&text).map_err(|why| side.code.not_together(why)));
    let (code, on) = both(code, judged_on(from))?;
    code.age(on).map_err(|why| side.code.not_together(why))
}
