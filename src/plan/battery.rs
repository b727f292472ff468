//! The battery over the season.

use super::{Panel, season_of};
use crate::battery::{
    self, Battery, BatteryError, ChargeRead, Chemistry, Edges, Forecast, Parameters, Roughly,
};
use crate::facts::{self, Capacity, Facts, Recharge, Told, all3, both};
use crate::season::{Season, Temperatures};
use crate::show::{self, Shown};
use crate::units::UnitSet;
use crate::words::{cautions, labels, notes};
use crate::working::{Answer, Quantity};
use chrono::NaiveDate;
use uom::si::f64::{ElectricCharge, ElectricCurrent, Ratio};

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
    let below = both(forecast.as_ref().map_err(Clone::clone), threshold)
        .map(|(forecast, threshold)| forecast.first_day_below(threshold.value).map(|it| it.act_by));
    let margin = both(forecast.as_ref().map_err(Clone::clone), facts::COLDEST_NIGHT.of(from))
        .map(|(forecast, coldest)| forecast.freeze_margin(coldest));

    let mut warnings = Vec::new();
    if let Ok(Some(margin)) = &margin {
        let least = margin.margin.bounds.map_or(margin.margin.value, |[low, _]| low).base();
        if least <= 0.0 {
            warnings.push(notes::may_freeze(&show::short_day(margin.night)));
        } else if least < 5.0 {
            warnings.push(notes::near_freezing(&show::short_day(margin.night)));
        }
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
    if let Ok(Some(day)) = &look {
        note.push(notes::look_by(&show::short_day(day.value)));
    }
    match &below {
        Ok(Some(day)) => note.push(notes::charge_by(&show::short_day(day.value))),
        Ok(None) => note.push(notes::NO_CHARGE_NEEDED.to_owned()),
        Err(_) => {}
    }
    let frozen = match margin {
        Ok(Some(it)) => Shown::quantity(labels::FREEZE_MARGIN, Ok(it.margin), set),
        Ok(None) => Shown::words(labels::FREEZE_MARGIN, notes::DOES_NOT_FREEZE),
        Err(lacks) => Shown::lacking(labels::FREEZE_MARGIN, lacks),
    };
    Panel {
        head: Shown::quantity(labels::CHARGE_ON_RIDE_DATE, charge, set),
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
    }
}

/// What the season line draws.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// First day.
    pub park: NaiveDate,
    /// Last day.
    pub end: NaiveDate,
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
