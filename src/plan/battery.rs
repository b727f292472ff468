//! The battery over the season.

use super::{Panel, season_of};
use crate::battery::{
    self, Battery, BatteryError, ChargeRead, Chemistry, Edges, Forecast, Parameters, Roughly,
};
use crate::facts::{self, Capacity, Facts, Recharge, Told, all3, both};
use crate::season::{Season, Temperatures};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::{Answer, Quantity};
use chrono::NaiveDate;
use uom::si::f64::{
    ElectricCharge, ElectricCurrent, ElectricPotential, Ratio, ThermodynamicTemperature,
};

/// The battery line's calculator.
pub fn battery(from: &dyn Facts, set: UnitSet) -> Panel {
    let forecast = forecast(from);
    let threshold = threshold(from);
    let charge = forecast.as_ref().map(Forecast::charge_on_ride_date).map_err(Clone::clone);
    // Read where it stands, on the morning of the ride.
    let voltage = both(forecast.as_ref().map_err(Clone::clone), facts::MONTHLY_MEANS.of(from)).map(
        |(forecast, place)| {
            forecast.resting_voltage_on_ride_date(place.on(forecast.season().end()))
        },
    );
    let look = forecast.as_ref().map(Forecast::look_at_the_meter_by).map_err(Clone::clone);
    let below = both(forecast.as_ref().map_err(Clone::clone), threshold.clone())
        .map(|(forecast, threshold)| forecast.first_day_below(threshold.value).map(|it| it.act_by));
    let margin = both(forecast.as_ref().map_err(Clone::clone), coldest_night(from, set))
        .map(|(forecast, coldest)| forecast.freeze_margin(coldest));
    let recharges = both(forecast.as_ref().map_err(Clone::clone), threshold.clone())
        .map(|(forecast, threshold)| forecast.recharge_days(threshold.value).parts().value);

    let mut warnings = Vec::new();
    if let Ok(Some(margin)) = &margin {
        warnings.extend(match (margin.freezes, margin.may_freeze, margin.near) {
            (Some(day), ..) => Some(notes::freezes(&show::long_day(day))),
            (None, Some(day), near) => {
                Some(notes::may_freeze(&show::long_day(near.unwrap_or(day))))
            }
            (None, None, Some(day)) => Some(notes::near_freezing(&show::long_day(day))),
            _ => None,
        });
    }
    if recharges.as_ref().is_ok_and(|it| !it.feasible) {
        warnings.push(notes::NO_CHARGE_HOLDS.to_owned());
    }
    if forecast.as_ref().is_ok_and(|it| it.battery().draw_is_doubtful()) {
        warnings.push(notes::DOUBTFUL_DRAW.to_owned());
    }
    let both_typed = facts::CHARGE_WHEN_PARKED.maybe(from).is_ok_and(|it| it.is_some())
        && facts::RESTING_VOLTAGE.maybe(from).is_ok_and(|it| it.is_some());
    if both_typed {
        warnings.push(notes::VOLTAGE_COUNTS.to_owned());
    }
    let mut note = Vec::new();
    if season_of(from).is_ok_and(|it| it.ride().is_none()) {
        note.push(notes::IN_TWELVE_MONTHS.to_owned());
    }
    let first_charge = recharges.as_ref().ok().and_then(|it| it.days.first().copied());
    if let (Ok(Some(day)), Ok(volts)) = (&look, look_volts(from, look.as_ref().ok(), &threshold)) {
        // A meter check after the first charge would check nothing.
        if first_charge.is_none_or(|it| it > day.value) {
            note.push(notes::look_by(
                &show::short_day(day.value),
                &show::rounded(Measure::Voltage, volts, set),
            ));
        }
    }
    match recharges {
        Ok(plan) if plan.days.is_empty() => note.push(notes::NO_CHARGE_NEEDED.to_owned()),
        Ok(plan) if plan.feasible => {
            // The plan's days are the last ones above the threshold: "by" is the first one below, as in the answer.
            let by = |it: &NaiveDate| show::short_day(it.succ_opt().unwrap_or(*it));
            let days: Vec<String> = plan.days.iter().take(MOST_DAYS).map(by).collect();
            note.push(notes::charge_by(&days.join("; "), plan.days.len() > MOST_DAYS));
        }
        _ => {}
    }
    let frozen = match margin {
        Ok(Some(it)) => Shown::quantity(labels::FREEZE_MARGIN, Ok(it.margin), set),
        Ok(None) => Shown::words(labels::FREEZE_MARGIN, notes::DOES_NOT_FREEZE),
        Err(lacks) => Shown::lacking(labels::FREEZE_MARGIN, lacks),
    };
    Panel {
        note: note.join(" · "),
        blanks: vec![
            facts::CHEMISTRY.id(),
            facts::CAPACITY.id(),
            facts::CHARGE_WHEN_PARKED.id(),
            facts::RESTING_VOLTAGE.id(),
            facts::KEY_OFF_DRAW.id(),
            facts::CHARGE_BELOW.id(),
            facts::MONTHLY_MEANS.id(),
        ],
        stated: vec![facts::PARK_DATE.id(), facts::RIDE_DATE.id(), facts::COLDEST_NIGHT.id()],
        answers: vec![
            Shown::quantity(labels::VOLTAGE_ON_RIDE_DATE, voltage, set),
            Shown::day(labels::LOOK_BY, look, notes::NO_LOOK, set),
            Shown::day(labels::RECHARGE_BY, below, notes::NOT_BELOW, set),
            frozen,
        ],
        warnings,
        cautions: cautions::BATTERY,
        ..Panel::of(Shown::quantity(labels::CHARGE_ON_RIDE_DATE, charge, set))
    }
}

/// So many days to charge on are named beside the charge.
const MOST_DAYS: usize = 4;

/// Resting voltage under which to charge at the meter check: that of the threshold, where and when it is read.
fn look_volts(
    from: &dyn Facts,
    look: Option<&Option<Answer<NaiveDate>>>,
    threshold: &Told<Answer<Ratio>>,
) -> Told<ElectricPotential> {
    let (chemistry, place) = both(facts::CHEMISTRY.of(from), facts::MONTHLY_MEANS.of(from))?;
    let (Some(Some(look)), Ok(threshold)) = (look, threshold) else { return Err(Vec::new()) };
    let charge = Roughly::exactly(threshold.value);
    Ok(chemistry.parameters().resting_voltage(charge, place.on(look.value)).value)
}

/// The coldest night, which cannot be warmer than the coldest mean of the season: mostly a minus that was left out.
fn coldest_night(from: &dyn Facts, set: UnitSet) -> Told<ThermodynamicTemperature> {
    let night = facts::COLDEST_NIGHT.of(from)?;
    let (Ok(season), Ok(place)) = (season_of(from), facts::MONTHLY_MEANS.of(from)) else {
        return Ok(night);
    };
    let coldest = season
        .nights()
        .map(|it| place.on(it))
        .reduce(|one, other| if other < one { other } else { one });
    match coldest.filter(|it| night > *it) {
        Some(mean) => {
            let mean = show::rounded(Measure::Temperature, mean, set);
            Err(facts::COLDEST_NIGHT.not_together(notes::colder_than(&mean)))
        }
        None => Ok(night),
    }
}

/// What the season line draws.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// First day.
    pub park: NaiveDate,
    /// Last day.
    pub end: NaiveDate,
    /// Whether that is the ride date, or only the end of the twelve months that are looked at.
    pub rides: bool,
    /// Charge at the start of each day: slow, typical, fast.
    pub charge: Vec<Edges>,
    /// Mean temperature of the day on which each night begins, degrees Celsius.
    pub celsius: Vec<f64>,
    /// Charge to recharge below.
    pub threshold: f64,
    /// Day of the meter check.
    pub look: Option<NaiveDate>,
    /// First day below the threshold, on the fast edge.
    pub charge_by: Option<NaiveDate>,
}

/// The season day by day, for the season line.
pub fn course(from: &dyn Facts) -> Told<Course> {
    let (forecast, threshold) = both(forecast(from), threshold(from))?;
    let season = forecast.season();
    Ok(Course {
        park: season.park(),
        end: season.end(),
        rides: season.ride().is_some(),
        charge: forecast.days().to_vec(),
        celsius: forecast.celsius().to_vec(),
        threshold: threshold.value.base(),
        look: forecast.look_at_the_meter_by().map(|it| it.value),
        charge_by: forecast.first_day_below(threshold.value).map(|it| it.act_by.value),
    })
}

fn forecast(from: &dyn Facts) -> Told<Forecast> {
    let place: Told<(Season, Temperatures)> = both(season_of(from), facts::MONTHLY_MEANS.of(from));
    let ((chemistry, capacity, draw), place) = both(
        all3(facts::CHEMISTRY.of(from), capacity(from), facts::KEY_OFF_DRAW.of(from)),
        both(place, charge(from)),
    )?;
    let ((season, temperatures), charge) = place;
    let parameters = chemistry.parameters();
    let draw = match draw.bounds {
        Some([low, high]) => Roughly { low, typical: draw.value, high },
        // "About 1 mA" is 0.5 to 1.5; a bare number is no better known.
        None if draw.value.base() > 0.0 => battery::drawing_about(draw.value),
        None => Roughly::exactly(ElectricCurrent::of_base(0.0)),
    };
    let battery = Battery::new(parameters, capacity, charge, draw).map_err(|why| match why {
        BatteryError::NoCapacity => facts::CAPACITY.not_together(why),
        BatteryError::ChargeOutOfRange => facts::CHARGE_WHEN_PARKED.not_together(why),
        BatteryError::NegativeDraw => facts::KEY_OFF_DRAW.not_together(why),
    })?;
    Ok(Forecast::new(&battery, &season, &temperatures))
}

fn capacity(from: &dyn Facts) -> Told<Roughly<ElectricCharge>> {
    let (chemistry, capacity) = both(facts::CHEMISTRY.of(from), facts::CAPACITY.of(from))?;
    match (chemistry, capacity) {
        (Chemistry::LiFePO4, Capacity::Energy(energy)) => {
            Ok(battery::labelled(battery::lithium(energy)))
        }
        (Chemistry::LiFePO4, Capacity::Charge(_)) => {
            Err(facts::CAPACITY.not_together(notes::ENERGY_WANTED))
        }
        (_, Capacity::Energy(_)) => Err(facts::CAPACITY.not_together(notes::CHARGE_WANTED)),
        (_, Capacity::Charge(charge)) => Ok(battery::labelled(charge)),
    }
}

/// A 12 V lead battery that rests below this has a dead cell, or is a 6 V one: half a volt under empty, in any
/// temperature of the table. Common practice, no source.
const DEAD_CELL: f64 = 11.3;

/// Charge when parked: from the resting voltage where that was measured, else as typed.
fn charge(from: &dyn Facts) -> Told<Roughly<Ratio>> {
    let Some(voltage) = facts::RESTING_VOLTAGE.maybe(from)? else {
        let typed = facts::CHARGE_WHEN_PARKED.of(from)?;
        return Ok(match typed.bounds {
            Some([low, high]) => Roughly { low, typical: typed.value, high },
            None => battery::charged_about(typed.value),
        });
    };
    let (chemistry, season, place) =
        all3(facts::CHEMISTRY.of(from), season_of(from), facts::MONTHLY_MEANS.of(from))?;
    let parameters = chemistry.parameters();
    let temperature = place.on(season.park());
    if chemistry.is_lead_acid() && voltage.value.base() < DEAD_CELL {
        return Err(facts::RESTING_VOLTAGE.not_together(notes::DEAD_CELL));
    }
    let read = |volts| {
        parameters
            .charge_from_voltage(volts, temperature)
            .map(|it: ChargeRead| it.roughly())
            .map_err(|why| facts::RESTING_VOLTAGE.not_together(why))
    };
    match voltage.bounds {
        Some([low, high]) => Ok(Roughly {
            low: read(low)?.low,
            typical: read(voltage.value)?.typical,
            high: read(high)?.high,
        }),
        None => read(voltage.value),
    }
}

fn threshold(from: &dyn Facts) -> Told<Answer<Ratio>> {
    let (chemistry, below) = both(facts::CHEMISTRY.of(from), facts::CHARGE_BELOW.maybe(from))?;
    let parameters: Parameters = chemistry.parameters();
    let volts = match below {
        Some(Recharge::Share(share)) => {
            return Ok(Answer::exact(share, &battery::voltage::THRESHOLD_TYPED, vec![]));
        }
        Some(Recharge::Voltage(volts)) => Some(volts),
        None => None,
    };
    parameters.threshold(volts).map_err(|why| facts::CHARGE_BELOW.not_together(why))
}
