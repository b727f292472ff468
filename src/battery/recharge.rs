//! Days to charge on.

use super::charging::LITHIUM_CHARGES_FROM;
use super::decay::Step;
use super::{Battery, Chemistry, FAST, Forecast, Roughly};
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
    formula: "as many as hold the threshold and the margin to freezing on the fast edge, each from the same charge; a lone one as late as it may be",
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
        let (nights, feasible) = latest(&self.steps, self.battery.charge[FAST], |_, it| it < line);
        self.plan(nights, feasible, &RECHARGE_DAYS, threshold)
    }

    /// As many days to charge on as [`Self::recharge_days`] needs, evenly spread: each from the same charge, the highest
    /// that this many hold; where a coldest night is given, charged before the acid is near freezing. One that is needed in
    /// the last three weeks alone is left for the first start, unless it is due when parked or frost needs it. A lone one
    /// waits until it is due.
    pub fn recharge_plan(
        &self,
        threshold: Ratio,
        coldest_night: Option<Roughly<ThermodynamicTemperature>>,
    ) -> Answer<RechargePlan> {
        let line = threshold.get::<ratio>();
        let start = self.battery.charge[FAST];
        let nears = self.nears(coldest_night);
        let freezes = |charge: f64| self.battery.parameters.freezes_at_celsius(charge);
        let held = |line: f64| {
            // More charge freezes no warmer than this: where a night does no harm to it, the tables are not asked again.
            let warmest = freezes(line).map(|it| it + 1e-9);
            latest(&self.steps, start, |night, charge| {
                charge < line || nears(night, warmest) && nears(night, freezes(charge))
            })
        };
        let (mut nights, feasible) = held(line);
        let plan = |nights: Vec<usize>| self.plan(nights, feasible, &RECHARGE_PLAN, threshold);
        let count = nights.len();
        let Some(last) = nights.last().copied().filter(|_| feasible) else { return plan(nights) };
        if self.steps.len() as i64 - last as i64 <= LAST_DAYS && last != 0 {
            nights.pop();
            let mut fewer = plan(nights.clone());
            let charged = self.charged_on(&fewer.value.days);
            let mut after = charged.iter().skip(1).enumerate().skip(last);
            if !after.any(|(night, charge)| nears(night, freezes(charge[FAST]))) {
                fewer.value.last_before_first_start = true;
                return fewer;
            }
            nights.push(last);
        }
        // Spread, a lone one would come as soon as a full battery holds the rest.
        if count == 1 {
            return plan(nights);
        }
        let (mut low, mut high) = (line, 1.0);
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            let (tried, holds) = held(middle);
            if holds && tried.len() == count {
                (low, nights) = (middle, tried);
            } else {
                high = middle;
            }
        }
        plan(nights)
    }

    /// What would spare the charging. `temperatures` are those of the forecast.
    pub fn remedy(
        &self,
        threshold: Ratio,
        temperatures: &Temperatures,
        coldest_night: Option<Roughly<ThermodynamicTemperature>>,
    ) -> Remedy {
        let battery: Battery = self.battery.with_lead_off();
        if battery == self.battery {
            return Remedy::Maintainer;
        }
        let forecast = Forecast::new(&battery, &self.season, temperatures);
        let plan = forecast.recharge_plan(threshold, coldest_night);
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
/// `under`: whether a charge at the end of a night is too little.
fn latest(
    steps: &[[Step; 3]],
    mut charge: f64,
    under: impl Fn(usize, f64) -> bool,
) -> (Vec<usize>, bool) {
    let mut nights = Vec::new();
    for (night, step) in steps.iter().enumerate() {
        let step = step[FAST];
        let mut next = step.after(charge);
        if under(night, next) {
            nights.push(night);
            next = step.after(1.0);
            if under(night, next) {
                return (nights, false);
            }
        }
        charge = next;
    }
    (nights, true)
}
