//! Days to charge on.

use super::charging::LITHIUM_CHARGES_FROM;
use super::decay::Step;
use super::freezing::NEAR;
use super::{Battery, Chemistry, Edges, FAST, Forecast, Roughly};
use crate::season::Temperatures;
use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, term};
use chrono::NaiveDate;
use uom::si::{
    f64::{Ratio, ThermodynamicTemperature},
    ratio::ratio,
};

/// Days to charge on, each as late as it may be.
pub static RECHARGE_DAYS: Law = Law {
    formula: "charge to full on the last day that begins at or above the threshold, on the fast edge; repeat",
    gives: Measure::Days,
    source: source::SELF_DISCHARGE,
    holds: super::forecast::CHARGE.holds,
};

/// Days to charge on, evenly spread.
pub static RECHARGE_PLAN: Law = Law {
    formula: "as many as hold the threshold on the fast edge, each from the same charge",
    gives: Measure::Days,
    source: source::SPREAD,
    holds: super::forecast::CHARGE.holds,
};

/// A recharge in so many days before the ride date becomes a charge before the first start. Common practice, no source.
const LAST_DAYS: i64 = 21;
/// Halvings of the span of charges that the plan is spread over: to a thousandth of the charge.
const HALVINGS: usize = 10;

/// Days to charge on, and whether that is enough.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RechargePlan {
    /// In order, each to full.
    pub days: Vec<NaiveDate>,
    /// The last one is so near the ride date that it becomes "charge before the first start". Where the plan is spread,
    /// that one is not among the days.
    pub last_before_first_start: bool,
    /// Days on which the place is under 0 °C and the battery LiFePO4: bring it indoors to charge.
    pub indoors: Vec<NaiveDate>,
    /// False where even a full battery falls below the threshold within a day. `days` then ends with the day on which
    /// that happens.
    pub feasible: bool,
}

/// What makes a season bearable that no charging makes so, or only by charging every other day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Remedy {
    /// With the negative lead off so many charges are enough.
    LeadOff(usize),
    /// Nothing but a maintainer: it loses that much to itself, or the threshold is that of a full battery.
    Maintainer,
}

impl Forecast {
    /// Days to charge on so that even the fast edge does not begin a day below `threshold`, each as late as it may be.
    pub fn recharge_days(&self, threshold: Ratio) -> Answer<RechargePlan> {
        let line = threshold.get::<ratio>();
        let (nights, feasible) = latest(&self.steps, self.battery.charge[FAST], line);
        self.plan(nights, feasible, &RECHARGE_DAYS, threshold)
    }

    /// As many days to charge on as [`Self::recharge_days`] needs, evenly spread: each from the same charge, the highest
    /// that this many hold. One that is needed in the last three weeks alone is left for the first start, unless it is
    /// due when parked or is what keeps the acid from the coldest night.
    pub fn recharge_plan(
        &self,
        threshold: Ratio,
        coldest_night: Option<Roughly<ThermodynamicTemperature>>,
    ) -> Answer<RechargePlan> {
        let line = threshold.get::<ratio>();
        let start = self.battery.charge[FAST];
        let (mut nights, feasible) = latest(&self.steps, start, line);
        let count = nights.len();
        let left = nights.last().map(|it| self.steps.len() as i64 - *it as i64);
        if !feasible || count == 0 {
            return self.plan(nights, feasible, &RECHARGE_PLAN, threshold);
        }
        if left.is_some_and(|it| it <= LAST_DAYS) && nights.last() != Some(&0) {
            let kept = nights[..count - 1].to_vec();
            let mut plan = self.plan(kept, true, &RECHARGE_PLAN, threshold);
            plan.value.last_before_first_start = true;
            let charged = self.charged_on(&plan.value.days);
            let margins = coldest_night.and_then(|it| self.margins(&charged, it));
            let last = nights.last().copied().unwrap_or_default();
            let nears = |it: Vec<Edges>| it.iter().skip(last).any(|it| it[FAST] < NEAR);
            if !margins.is_some_and(nears) {
                return plan;
            }
        }
        let (mut low, mut high) = (line, 1.0);
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            let (tried, holds) = latest(&self.steps, start, middle);
            if holds && tried.len() == count {
                (low, nights) = (middle, tried);
            } else {
                high = middle;
            }
        }
        self.plan(nights, true, &RECHARGE_PLAN, threshold)
    }

    /// What would spare the charging. `temperatures` are those of the forecast.
    pub fn remedy(&self, threshold: Ratio, temperatures: &Temperatures) -> Remedy {
        let battery: Battery = self.battery.with_lead_off();
        if battery == self.battery {
            return Remedy::Maintainer;
        }
        let plan =
            Forecast::new(&battery, &self.season, temperatures).recharge_plan(threshold, None);
        match &plan.value {
            RechargePlan { feasible: true, days, .. } => Remedy::LeadOff(days.len()),
            _ => Remedy::Maintainer,
        }
    }

    fn plan(
        &self,
        nights: Vec<usize>,
        feasible: bool,
        law: &'static Law,
        threshold: Ratio,
    ) -> Answer<RechargePlan> {
        let lithium = self.battery.parameters.chemistry == Chemistry::LiFePO4;
        let too_cold = |night: &&usize| {
            lithium && self.celsius.get(**night).is_some_and(|it| *it < LITHIUM_CHARGES_FROM)
        };
        let day = |night: &usize| self.season.day(*night);
        let left = nights.last().map(|it| self.steps.len() as i64 - *it as i64);
        let late = std::ptr::eq(law, &RECHARGE_DAYS) && left.is_some_and(|it| it <= LAST_DAYS);
        let plan = RechargePlan {
            days: nights.iter().map(day).collect(),
            last_before_first_start: feasible && late,
            indoors: nights.iter().filter(too_cold).map(day).collect(),
            feasible,
        };
        let mut terms = self.terms();
        terms.insert(0, term("threshold", "charge to recharge below", Measure::Share, threshold));
        Answer::exact(plan, law, terms)
    }
}

impl RechargePlan {
    /// Whether it has to be charged more often than every two weeks. Common practice, no source.
    pub fn is_a_burden(&self, season: i64) -> bool {
        self.days.len() as i64 * 14 > season
    }
}

/// The nights to charge before, each as late as it may be, on the fast edge; and whether a full battery holds a day.
fn latest(steps: &[[Step; 3]], mut charge: f64, line: f64) -> (Vec<usize>, bool) {
    let mut nights = Vec::new();
    for (night, step) in steps.iter().enumerate() {
        let step = step[FAST];
        let mut next = step.after(charge);
        if next < line {
            nights.push(night);
            next = step.after(1.0);
            if next < line {
                return (nights, false);
            }
        }
        charge = next;
    }
    (nights, true)
}
