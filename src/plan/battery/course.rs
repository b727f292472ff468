//! The season day by day, for the season line.

use super::state::{ChargeFrom, Parked, look, parked, threshold};
use crate::battery::{Edges, FAST, Parameters, RechargePlan, Roughly};
use crate::facts::{self, Facts, Told, both};
use crate::fuel;
use crate::plan::{Panel, night};
use crate::units::UnitSet;
use crate::working::Quantity;
use chrono::NaiveDate;
use std::sync::Arc;
use uom::si::f64::{Ratio, ThermodynamicTemperature};

/// What the season line draws.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// First day.
    pub park: NaiveDate,
    /// Last day.
    pub end: NaiveDate,
    /// Whether that is the ride date, or only the end of the twelve months that are looked at.
    pub rides: bool,
    /// Of its chemistry.
    pub parameters: Parameters,
    /// Charge at the start of each day, charged on the days of `recharges`: slow, typical, fast.
    pub charge: Vec<Edges>,
    /// False where the charge was read from a voltage that gives a range alone: its middle is no forecast.
    pub typical_known: bool,
    /// Mean temperature of the day on which each night begins, degrees Celsius.
    pub celsius: Vec<f64>,
    /// Margin to freezing of each night on the fast edge, K; empty where nothing freezes or no coldest night is known.
    pub margin: Vec<f64>,
    /// Charge to recharge below.
    pub threshold: f64,
    /// Day of the meter check.
    pub look: Option<NaiveDate>,
    /// Days to charge on, evenly spread; empty where none is needed, none is enough, or
    /// they would be more often than every two weeks.
    pub recharges: Vec<NaiveDate>,
    /// First day below the threshold, on the fast edge, where it is not held by charging now and then.
    pub charge_by: Option<NaiveDate>,
    /// Day from which fuel is too old to be treated any longer, where it falls into the season.
    pub fuel_old: Option<NaiveDate>,
}

impl Course {
    /// Days from the first to the last.
    pub fn last_day(&self) -> usize {
        self.charge.len().saturating_sub(1)
    }

    /// How many days after the first one `day` is, where it is one of the season.
    pub fn day_of(&self, day: NaiveDate) -> Option<usize> {
        usize::try_from((day - self.park).num_days()).ok().filter(|it| *it <= self.last_day())
    }
}

/// The season day by day, for the season line.
pub fn course(from: &dyn Facts) -> Told<Course> {
    let (parked, threshold) = both(parked(from), threshold(from))?;
    let coldest = night::of_battery(from, UnitSet::Metric).ok().map(|it| it.roughly);
    let plan = parked.forecast.recharge_plan(threshold.value, coldest).parts().value;
    let look = look(&parked, Some(&plan), coldest).map(|it| it.value);
    let mut course = course_of(&parked, threshold.value, &plan, look, coldest);
    course.fuel_old = fuel_old(from, &course);
    Ok(course)
}

/// The battery line's calculator, its season with the day on which fuel is too old: the season line's business, which no
/// battery asks for.
pub fn battery_in_season(from: &dyn Facts, set: UnitSet) -> Panel {
    let mut panel = super::battery(from, set);
    if let Some(course) = panel.course.as_mut().and_then(Arc::get_mut) {
        course.fuel_old = fuel_old(from, course);
    }
    panel
}

fn fuel_old(from: &dyn Facts, course: &Course) -> Option<NaiveDate> {
    let bought = facts::FUEL_BOUGHT.known(from).unwrap_or(course.park);
    fuel::keeps_until(bought).filter(|it| *it >= course.park && *it < course.end)
}

/// The same of what was worked out already, without the fuel.
pub(super) fn course_of(
    parked: &Parked,
    threshold: Ratio,
    plan: &RechargePlan,
    look: Option<NaiveDate>,
    coldest: Option<Roughly<ThermodynamicTemperature>>,
) -> Course {
    let forecast = &parked.forecast;
    let season = forecast.season();
    let maintained = forecast.battery().is_maintained();
    // Teeth by the dozen would show nothing: there the picture shows what comes without them.
    let holds = plan.feasible && !plan.is_a_burden(season.days());
    let recharges = if holds && !maintained { plan.days.clone() } else { Vec::new() };
    let charge = match recharges.is_empty() {
        true => forecast.days().to_vec(),
        false => forecast.charged_on(&recharges),
    };
    let below = || forecast.first_day_below(threshold).map(|it| it.act_by.value);
    let margin = coldest.and_then(|it| forecast.margins(&charge, it));
    Course {
        park: season.park(),
        end: season.end(),
        rides: season.ride().is_some(),
        typical_known: maintained || !matches!(parked.read, Some(ChargeFrom::Range(_))),
        parameters: *forecast.battery().parameters(),
        celsius: forecast.celsius().to_vec(),
        margin: margin.unwrap_or_default().iter().map(|it| it[FAST]).collect(),
        threshold: threshold.base(),
        look: look.filter(|_| !maintained),
        charge_by: if holds || maintained { None } else { below() },
        fuel_old: None,
        charge,
        recharges,
    }
}
