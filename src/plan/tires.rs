//! Tires: what to set for the ride, what they will read, what is good for storage, and how old they are.

use super::{Panel, night, season::judged_on};
use crate::facts::{self, Fact, Facts, Rough, Told, all3, both};
use crate::show::{self, Shown};
use crate::tire::{self, Age, DateCode, Gauge, OLD, TOO_OLD, TireError, TiresAre};
use crate::units::{Measure, UnitSet, YEAR};
use crate::words::{cautions, labels, upkeep as notes};
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

/// The tires' calculator: where they are set when the bike is put away or, `again`, on the morning of the ride.
pub fn tires(from: &dyn Facts, set: UnitSet, again: bool) -> Panel {
    // How warm they were in autumn says nothing of spring.
    let warm = !again && facts::TIRES_ARE.known(from) == Some(TiresAre::Warm);
    let shown = |label, told| {
        if warm {
            Shown::words(label, notes::LET_IT_STAND)
        } else {
            Shown::quantity(label, told, set)
        }
    };
    let right = if again { set_again } else { set_at };
    let [front, rear] = [&FRONT, &REAR].map(|it| right(from, it));
    let degrees = |it| show::rounded(Measure::Temperature, it, set);
    let mut note = String::new();
    if warm {
        note = notes::WARM_TIRE.to_owned();
    } else if again {
        let air = facts::RIDE_TEMPERATURE.known(from).map(|it| degrees(it.value));
        note = notes::set_on_the_morning(air.as_deref());
    } else if let (Ok(_), Ok(here), Ok(there)) =
        (&front, facts::SET_TEMPERATURE.of(from), right_at(from))
    {
        let [here, there] = [here, there.value].map(degrees);
        if here != there {
            note = notes::set_in(&here, &there);
        }
    }
    let sides = [&front, &rear].map(|it| it.as_ref().ok().map(|it| it.value));
    let mut answers = vec![shown(REAR.set_at, rear)];
    let mut stated = vec![facts::RIDE_DATE.id()];
    let mut warnings = Vec::new();
    let night = night::of_bike(from, set).map(|it| it.rough());
    for (side, set_to) in [&FRONT, &REAR].into_iter().zip(sides) {
        let cold = side.cold.known(from);
        if cold.is_some_and(|it| !tire::is_usual(it)) {
            warnings.push(notes::doubtful_pressure(side.cold.about.label));
        }
        let read = side.reads.maybe(from);
        if let (Ok(Some(reads)), Some(cold), false) = (&read, cold, warm) {
            let judged = tire::judged(*reads, [cold, set_to.unwrap_or(cold)]);
            warnings.extend(notes::reading(side.reads.about.label, judged));
        }
        // What is put away is foretold; on the morning of the ride it is read.
        if !matches!(read, Ok(None)) && !warm && !again {
            let night = will_read(from, side, night.clone());
            answers.push(Shown::quantity(side.on_the_night, night, set));
            if !stated.contains(&facts::COLDEST_NIGHT.id()) {
                stated.push(facts::COLDEST_NIGHT.id());
            }
            let ride = will_read(from, side, facts::RIDE_TEMPERATURE.of(from));
            answers.push(Shown::quantity(side.on_the_ride, ride, set));
        }
        match side.maximum.maybe(from) {
            Ok(None) => {}
            Ok(Some(most)) => {
                if !again {
                    answers.push(shown(side.storage, for_storage(from, side, most)));
                }
                if set_to.is_some_and(|it| it > most) && !warm {
                    warnings.push(notes::over_sidewall(side.set_at));
                }
                if !warnings.iter().any(|it| it == notes::LET_DOWN_IN_SPRING) {
                    warnings.push(notes::LET_DOWN_IN_SPRING.to_owned());
                }
            }
            Err(lacks) => answers.push(Shown::lacking(side.storage, lacks)),
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
    let mut blanks = vec![facts::FRONT_PRESSURE.id(), facts::REAR_PRESSURE.id()];
    // In autumn alone: the tires as they are then, and the garage's air.
    if !again {
        blanks.extend([facts::TIRES_ARE.id(), facts::SET_TEMPERATURE.id()]);
    }
    blanks.extend([
        facts::RIDE_TEMPERATURE.id(),
        facts::FRONT_DATE_CODE.id(),
        facts::REAR_DATE_CODE.id(),
    ]);
    Panel {
        pair: !warm,
        note,
        blanks,
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
    let known = all3(facts::SET_TEMPERATURE.of(from), air(from), facts::TIRES_ARE.of(from));
    known.map(|(here, air, _)| (here, air))
}

/// Pressure of the air.
fn air(from: &dyn Facts) -> Told<Gauge> {
    let altitude = facts::ALTITUDE.maybe(from)?;
    let air = tire::atmosphere(altitude).map_err(|why| facts::ALTITUDE.not_together(why))?;
    Ok(air.value)
}

/// The air that the manual's figures are for.
fn right_at(from: &dyn Facts) -> Told<Rough<ThermodynamicTemperature>> {
    match facts::TIRE_REFERENCE.maybe(from)? {
        Some(reference) => Ok(exactly(reference)),
        None => facts::RIDE_TEMPERATURE.of(from),
    }
}

/// What the gauge is to say where they are set, so that the figure is right on the ride.
fn set_at(from: &dyn Facts, side: &Side) -> Told<Answer<Gauge>> {
    let (cold, right_at, (here, air)) = all3(side.cold.of(from), right_at(from), measured(from))?;
    roughly(right_at, |right_at| tire::at(cold, right_at, here, air))
        .map_err(|why| side.cold.not_together(why))
}

/// What the gauge is to say on the morning of the ride, in its air: the manual's figure as it is, unless that is for another
/// air that the manual names.
fn set_again(from: &dyn Facts, side: &Side) -> Told<Answer<Gauge>> {
    let (cold, reference) = both(side.cold.of(from), facts::TIRE_REFERENCE.maybe(from))?;
    let Some(reference) = reference else { return Ok(tire::as_the_manual(cold)) };
    let (ride, air) = both(facts::RIDE_TEMPERATURE.of(from), air(from))?;
    roughly(ride, |ride| tire::at(cold, reference, ride, air))
        .map_err(|why| side.cold.not_together(why))
}

/// What it may have where it is set, so that it is not over the sidewall's maximum on the ride day.
fn for_storage(from: &dyn Facts, side: &Side, most: Gauge) -> Told<Answer<Gauge>> {
    let ride = match facts::RIDE_TEMPERATURE.maybe(from)? {
        Some(ride) => Ok(ride),
        None => facts::SET_TEMPERATURE.of(from).map(exactly),
    };
    let (cold, ride, (here, air)) = all3(side.cold.of(from), ride, measured(from))?;
    let warmest = ride.bounds.map_or(ride.value, |[_, high]| high);
    tire::for_storage(cold, most, here, warmest, air).map_err(|why| side.maximum.not_together(why))
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
    roughly(then, |then| tire::at(now, here, then, air)).map_err(|why| side.reads.not_together(why))
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
