//! The battery over the season.

mod course;
mod readings;
mod state;

pub use course::{Course, battery_in_season, course};
pub(super) use state::{bikes_place, climate, kept};

use super::{Panel, Pictured, night, season_of};
use crate::battery::charging::{ChargingError, current_is_high, indoors, lithium_current_is_high};
use crate::battery::freezing::NEAR;
use crate::battery::voltage::{Rest, rested};
use crate::battery::{Chemistry, FreezeMargin, RechargePlan, Remedy, Roughly, TYPICAL, lithium};
use crate::entry::text::joined;
use crate::facts::{self, BatteryKept, Facts, Id, Place, Told, both};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::{Answer, Quantity};
use chrono::NaiveDate;
use course::course_of;
use state::{ChargeFrom, Parked, given, look, parked, threshold};
use std::sync::Arc;
use uom::si::{
    f64::{ElectricPotential, Ratio, TemperatureInterval, ThermodynamicTemperature},
    temperature_interval::kelvin,
};

/// The battery line's calculator.
pub fn battery(from: &dyn Facts, set: UnitSet) -> Panel {
    let parked = parked(from);
    let known = parked.as_ref().map_err(Clone::clone);
    let threshold = threshold(from);
    let maintained = known.as_ref().is_ok_and(|it| it.forecast.battery().is_maintained());
    let coldest = night::of_battery(from, set);
    let night = coldest.as_ref().ok().map(|it| it.roughly);
    let margin = both(known.clone(), coldest.as_ref().map_err(Clone::clone))
        .map(|(it, coldest)| it.forecast.freeze_margin(coldest.roughly));
    let plan = both(known.clone(), threshold.clone()).map(|(it, threshold)| {
        (it, threshold.value, it.forecast.recharge_plan(threshold.value, night).parts().value)
    });
    let judged = readings::judged(from, &parked, &threshold, night, set);
    let range =
        matches!(&parked, Ok(Parked { read: Some(ChargeFrom::Range(_)), .. })) && !maintained;

    let looked = known.clone().map(|it| look(it, plan.as_ref().ok().map(|it| &it.2), night));
    let course = plan.as_ref().ok().map(|(parked, threshold, plan)| {
        let look = looked.as_ref().ok().and_then(|it| it.as_ref()).map(|it| it.value);
        Arc::new(course_of(parked, *threshold, plan, look, night))
    });

    let mut answers = standing(&known, &threshold, &looked, maintained, range, set);
    answers.extend(frozen(&margin, set));
    if let Ok(parked) = &parked {
        answers.extend(match &parked.read {
            Some(ChargeFrom::Number(it)) => {
                Some(Shown::quantity(labels::CHARGE_READ, Ok(it.clone()), set))
            }
            Some(ChargeFrom::Range(it)) => {
                Some(Shown::span(labels::CHARGE_READ, Ok(it.clone()), set))
            }
            None => None,
        });
    }
    if let Ok(coldest) = &coldest {
        answers.extend(coldest.shown(set));
    }
    // Wherever the battery is kept, it starts the bike where that stands.
    if let (Ok(parked), Ok(place)) = (&parked, bikes_place(from)) {
        let at = place.on(parked.forecast.season().end());
        let cranking = parked.forecast.battery().parameters().cold_cranking(at);
        answers.extend(cranking.map(|it| Shown::quantity(labels::COLD_CRANKING, Ok(it), set)));
    }

    let mut warnings = warned(from, &known, &margin, &plan, night, maintained, set);
    let (charging, cold) = charging(from, &plan, maintained, set);
    answers.extend(charging);
    warnings.extend(cold);
    warnings.extend(judged.warnings);
    warnings.extend(coldest.ok().and_then(|it| it.refused));
    answers.extend(judged.answers);
    if let (Ok(current), Ok(capacity)) = (facts::CHARGER_CURRENT.of(from), facts::CAPACITY.of(from))
    {
        let (high, why) = match capacity {
            facts::Capacity::Charge(it) => (current_is_high(it, current), notes::CURRENT_IS_HIGH),
            facts::Capacity::Energy(it) => {
                (lithium_current_is_high(lithium(it), current), notes::LITHIUM_CURRENT_IS_HIGH)
            }
        };
        if high {
            warnings.push(why.to_owned());
        }
    }

    let mut note = match judged.dead {
        true => Vec::new(),
        false => noted(from, &known, &plan, &looked, maintained, set),
    };
    note.extend(judged.note.map(str::to_owned));
    let charge = known.map(|it| it.forecast.charge_on_ride_date());
    let head = one_or_range(labels::CHARGE_ON_RIDE_DATE, charge, range, set);
    let (blanks, more) = asked(from);
    Panel {
        note: joined(&note, " · "),
        blanks,
        more,
        stated: [
            &facts::PARK_DATE.about,
            &facts::RIDE_DATE.about,
            &facts::WHERE_IT_STANDS.about,
            &facts::COLDEST_NIGHT.about,
        ]
        .map(|it| it.id)
        .to_vec(),
        answers,
        warnings,
        accept: judged.accept,
        pictured: Pictured { battery: course.is_some(), ..Pictured::default() },
        course,
        cautions: cautions::BATTERY,
        ..Panel::of(head)
    }
}

/// So many days to charge on are named beside the charge.
const MOST_DAYS: usize = 4;

type Known<'a> = Told<&'a Parked>;
type Looked = Told<Option<Answer<NaiveDate>>>;
type Planned<'a> = Told<(&'a Parked, Ratio, RechargePlan)>;

/// A figure with its bounds; the bounds alone where the charge was read from a voltage that hardly tells it.
fn one_or_range(
    label: &'static str,
    told: Told<Answer<impl Quantity>>,
    range: bool,
    set: UnitSet,
) -> Shown {
    if range { Shown::span(label, told, set) } else { Shown::quantity(label, told, set) }
}

/// Where it stands, on the morning of the ride.
fn on_ride_day(parked: &Parked) -> ThermodynamicTemperature {
    parked.place.on(parked.forecast.season().end())
}

/// Voltage on the ride date, the meter check, the first day below the threshold.
fn standing(
    known: &Known<'_>,
    threshold: &Told<Answer<Ratio>>,
    looked: &Looked,
    maintained: bool,
    range: bool,
    set: UnitSet,
) -> Vec<Shown> {
    let known = known.clone();
    let voltage = known.clone().map(|it| it.forecast.resting_voltage_on_ride_date(on_ride_day(it)));
    // Without a plan that comes before it, only the ride does.
    let rides = known.as_ref().is_ok_and(|it| it.forecast.look_at_the_meter_by().is_none());
    let no_look = if rides { notes::NO_LOOK } else { notes::CHARGED_BEFORE };
    let below = both(known, threshold.clone())
        .map(|(it, threshold)| it.forecast.first_day_below(threshold.value).map(|it| it.act_by));
    let voltage = one_or_range(labels::VOLTAGE_ON_RIDE_DATE, voltage, range, set);
    if maintained {
        return vec![
            voltage,
            Shown::words(labels::LOOK_BY, notes::LOOK_AT_ITS_LIGHT),
            Shown::words(labels::UNDER_FROM, notes::KEPT_FULL),
        ];
    }
    vec![
        voltage,
        Shown::day(labels::LOOK_BY, looked.clone(), no_look, set),
        Shown::day(labels::UNDER_FROM, below, notes::NOT_BELOW, set),
    ]
}

fn frozen(margin: &Told<Option<FreezeMargin>>, set: UnitSet) -> Vec<Shown> {
    match margin {
        Ok(Some(it)) => vec![
            Shown::quantity(labels::FREEZE_MARGIN, Ok(it.margin.clone()), set),
            Shown::words(labels::LEAST_MARGIN_ON, show::short_day(it.night)),
        ],
        Ok(None) => vec![Shown::words(labels::FREEZE_MARGIN, notes::DOES_NOT_FREEZE)],
        Err(lacks) => vec![Shown::lacking(labels::FREEZE_MARGIN, lacks.clone())],
    }
}

/// What follows from the figures and needs care.
fn warned(
    from: &dyn Facts,
    known: &Known<'_>,
    margin: &Told<Option<FreezeMargin>>,
    plan: &Planned<'_>,
    night: Option<Roughly<ThermodynamicTemperature>>,
    maintained: bool,
    set: UnitSet,
) -> Vec<String> {
    let mut warnings = Vec::new();
    if let Ok(Some(margin)) = margin
        && let Some(day) = margin.act_by()
    {
        let day = show::long_day(day);
        warnings.push(match (margin.freezes, margin.may_freeze) {
            (Some(_), _) => notes::freezes(&day),
            (None, Some(_)) => notes::may_freeze(&day),
            (None, None) => {
                let near = TemperatureInterval::new::<kelvin>(NEAR);
                notes::near_freezing(&show::step(near, set), &day)
            }
        });
    }
    let lithium = facts::CHEMISTRY.maybe(from) == Ok(Some(Chemistry::LiFePO4));
    if let Ok((parked, ..)) = plan
        && maintained
        && lithium
    {
        let coldest = parked.place.coldest_of(parked.forecast.season());
        let coldest = night.map_or(coldest, |it| it.low);
        if parked.forecast.battery().parameters().charges_at(Ratio::of_base(1.0), coldest).is_err()
        {
            warnings.push(notes::LITHIUM_MAINTAINED.to_owned());
        }
    }
    // A maintainer holds what is charged, and charges nothing that is frozen or flat.
    if let Ok((parked, threshold, _)) = plan
        && let Some(charge) = parked.put_on
    {
        if parked.forecast.parked_frozen(charge.low, parked.night_or_day(night)) {
            warnings.push(notes::PUT_ON_FROZEN.to_owned());
        } else if charge.typical < *threshold {
            warnings.push(notes::PUT_ON_LOW.to_owned());
        }
    }
    if let Ok((parked, threshold, plan)) = plan
        && !maintained
    {
        let days = parked.forecast.season().days();
        if !plan.feasible || plan.is_a_burden(days) {
            let remedy = parked.forecast.remedy(*threshold, &parked.place, night);
            warnings.push(match (remedy, plan.feasible) {
                (Remedy::LeadOff(count), _) => notes::lead_off_helps(count, lithium),
                (Remedy::Maintainer, false) => notes::no_charge_holds(lithium),
                (Remedy::Maintainer, true) => notes::often(lithium),
            });
        }
        if !plan.indoors.is_empty() {
            warnings.push(notes::CHARGE_INDOORS.to_owned());
        }
        if parked.forecast.battery().draw_is_doubtful() {
            warnings.push(notes::DOUBTFUL_DRAW.to_owned());
        }
    }
    let measured = facts::RESTING_VOLTAGE.known(from);
    let parameters = plan.as_ref().map(|it| it.0.forecast.battery().parameters());
    let surface = measured.as_ref().zip(parameters.ok());
    let surface = surface.is_some_and(|(volts, it)| it.is_surface_charge(volts.value));
    if surface {
        warnings.push(notes::SURFACE_CHARGE.to_owned());
    }
    let rest = measured.and_then(|_| facts::RESTED.known(from));
    if rest.is_some_and(|it| rested(it) == Rest::Short) {
        warnings.push(notes::SHORT_REST.to_owned());
    }
    let caps = facts::CHEMISTRY.known(from).is_some_and(|it| it.has_filler_caps());
    let by_acid = caps && given(&facts::SPECIFIC_GRAVITY, from);
    let by_volts = given(&facts::RESTING_VOLTAGE, from) && !surface;
    // What is refused counts for nothing.
    let counts = known.as_ref().is_ok_and(|it| it.read.is_some());
    if by_acid && (by_volts || given(&facts::CHARGE_WHEN_PARKED, from)) {
        warnings.push(notes::HYDROMETER_COUNTS.to_owned());
    } else if counts && by_volts && given(&facts::CHARGE_WHEN_PARKED, from) {
        warnings.push(notes::VOLTAGE_COUNTS.to_owned());
    }
    warnings
}

/// Said small beside the charge.
fn noted(
    from: &dyn Facts,
    known: &Known<'_>,
    plan: &Planned<'_>,
    looked: &Looked,
    maintained: bool,
    set: UnitSet,
) -> Vec<String> {
    let mut note = Vec::new();
    if season_of(from).is_ok_and(|it| it.ride().is_none()) {
        note.push(notes::IN_TWELVE_MONTHS.to_owned());
    }
    if maintained {
        note.push(notes::WHILE_PLUGGED_IN.to_owned());
        return note;
    }
    if let Ok((parked, threshold, plan)) = plan {
        let before = note.len();
        if plan.days.is_empty() && plan.feasible && !plan.last_before_first_start {
            note.push(notes::NO_CHARGE_NEEDED.to_owned());
        }
        let burden = plan.is_a_burden(parked.forecast.season().days());
        if plan.feasible && !plan.days.is_empty() && !burden {
            // The season line draws it charged.
            note.push(notes::WITHOUT_CHARGING.to_owned());
            let day = |it: &NaiveDate| show::short_day(*it);
            let days: Vec<String> = plan.days.iter().take(MOST_DAYS).map(day).collect();
            note.push(notes::charge_on(
                &joined(&days, "; "),
                plan.days.len().saturating_sub(MOST_DAYS),
            ));
        }
        if plan.last_before_first_start && !burden {
            note.push(notes::BEFORE_FIRST_START.to_owned());
        }
        // What comes first is said first.
        if let Ok(Some(look)) = looked {
            let parameters = parked.forecast.battery().parameters();
            let volts = parameters.meter_line(*threshold, parked.place.on(look.value));
            let again = parked.forecast.look_again_by(look.value, &plan.days);
            let charged = plan.days.first().is_some_and(|it| *it <= look.value);
            let at = if charged { note.len() } else { before };
            let told = notes::look_by(
                &show::short_day(look.value),
                &show::rounded(Measure::Voltage, volts, set),
                again.map(show::short_day).as_deref(),
            );
            note.insert(at, told);
        }
    }
    if let Ok(parked) = known {
        note.extend(notes::counted_wide(parked.unknown));
    }
    note
}

/// On the charger, for who has one: time from the first day to charge on, else from the ride date, and volts.
fn charging(
    from: &dyn Facts,
    plan: &Planned<'_>,
    maintained: bool,
    set: UnitSet,
) -> (Vec<Shown>, Option<String>) {
    let current = facts::CHARGER_CURRENT.maybe(from);
    let asked = current != Ok(None) || maintained;
    let (parked, plan) = match plan {
        Ok((parked, _, plan)) => (parked, plan),
        Err(lacks) if asked => {
            return (vec![Shown::lacking(labels::CHARGING_TIME, lacks.clone())], None);
        }
        Err(_) => return (Vec::new(), None),
    };
    let planned = plan.days.first().copied().filter(|_| !maintained);
    let day = planned.unwrap_or(parked.forecast.season().end());
    let stands = parked.place.on(day);
    let parameters = parked.forecast.battery().parameters();
    let least = parked.forecast.charge_on(day).map_or(Ratio::of_base(1.0), |it| it.low);
    // What must not be charged where it stands is charged indoors, once it has thawed or warmed through.
    let hindered = parameters.charges_at(least, stands).err();
    let at = if hindered.is_some() { indoors() } else { stands };
    let warning = match hindered {
        Some(ChargingError::Frozen) if asked || planned.is_some() => {
            Some(notes::sentence(ChargingError::Frozen.to_string()))
        }
        Some(ChargingError::TooCold) if asked && !maintained && plan.indoors.is_empty() => {
            Some(notes::CHARGE_INDOORS.to_owned())
        }
        _ => None,
    };
    if !asked {
        return (Vec::new(), warning);
    }
    let mut answers = Vec::new();
    if let Ok(Some(current)) = current
        && !maintained
        && parameters.has_charging_time(parked.forecast.battery().holds(TYPICAL), current)
    {
        answers.push(match parked.forecast.charging_time(day, current, at) {
            Ok(_) if hindered == Some(ChargingError::Frozen) => {
                Shown::words(labels::CHARGING_TIME, notes::THAW_FIRST)
            }
            Ok(time) => Shown::quantity(labels::CHARGING_TIME, Ok(time), set),
            Err(why) => {
                Shown::lacking(labels::CHARGING_TIME, facts::CHARGER_CURRENT.not_together(why))
            }
        });
    }
    let mut tell = |label, volts: Option<Answer<ElectricPotential>>| {
        answers.extend(volts.map(|it| Shown::quantity(label, Ok(it), set)));
    };
    // Brought indoors, a lead battery would boil under what it takes in the cold.
    let both = parameters.chemistry.is_lead_acid();
    if hindered.is_none() {
        let charge = Some(parameters.charge_voltage(stands)).filter(|_| !maintained);
        tell(labels::CHARGE_VOLTAGE, charge);
        tell(labels::FLOAT_VOLTAGE, parameters.float_voltage(stands));
    }
    if hindered.is_some() || both {
        let charge = Some(parameters.charge_voltage(indoors())).filter(|_| !maintained);
        tell(labels::CHARGE_VOLTAGE_INDOORS, charge);
        tell(labels::FLOAT_VOLTAGE_INDOORS, parameters.float_voltage(indoors()));
    }
    (answers, warning)
}

/// What is asked: of everybody, and of the few that know it.
fn asked(from: &dyn Facts) -> (Vec<Id>, Vec<Id>) {
    let kept = kept(from).unwrap_or(BatteryKept::InBike);
    let heated = facts::WHERE_IT_STANDS.known(from) == Some(Place::Heated);
    let unheated = facts::WHERE_IT_STANDS.known(from) == Some(Place::Unheated);
    let caps = facts::CHEMISTRY.known(from).is_some_and(|it| it.has_filler_caps());
    let mut blanks = vec![facts::CHEMISTRY.id(), facts::CAPACITY.id(), facts::BATTERY_KEPT.id()];
    let mut more = Vec::new();
    blanks.extend([facts::CHARGE_WHEN_PARKED.id(), facts::RESTING_VOLTAGE.id()]);
    if kept == BatteryKept::InBike {
        blanks.push(facts::KEY_OFF_DRAW.id());
    }
    blanks.push(facts::CHARGE_BELOW.id());
    if kept == BatteryKept::Elsewhere {
        blanks.extend([facts::KEPT_AT.id(), facts::KEPT_COLDEST.id()]);
    } else {
        blanks.push(facts::MONTHLY_MEANS.id());
        if !heated {
            blanks.push(facts::CLIMATE.id());
            more.push(facts::DAY_AND_NIGHT.id());
        }
        if unheated {
            more.push(facts::WARMER_BY.id());
        }
    }
    if caps {
        more.extend([facts::SPECIFIC_GRAVITY.id(), facts::ACID_SCALE.id()]);
    }
    more.extend([
        facts::READ_AT.id(),
        facts::RESTED.id(),
        facts::CHARGER_CURRENT.id(),
        facts::METER_READS.id(),
        facts::METER_READ_ON.id(),
        facts::EARLIER_READING.id(),
        facts::EARLIER_READ_ON.id(),
    ]);
    (blanks, more)
}
