//! Days to charge on, and how long that takes.

use super::decay::after_a_day;
use super::{Chemistry, FAST, Forecast, Parameters};
use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, term};
use chrono::NaiveDate;
use std::fmt;
use uom::si::{
    electric_charge::ampere_hour,
    electric_current::ampere,
    f64::{ElectricCharge, ElectricCurrent, Ratio, ThermodynamicTemperature, Time},
    ratio::ratio,
    thermodynamic_temperature::degree_celsius,
    time::hour,
};

/// Days to charge on.
pub static RECHARGE_DAYS: Law = Law {
    formula: "charge to full on the last day that begins at or above the threshold, on the fast edge; repeat",
    gives: Measure::Days,
    source: source::SELF_DISCHARGE,
    holds: super::forecast::CHARGE.holds,
};

/// Charging time, lead-acid.
pub static CHARGING_LEAD_ACID: Law = Law {
    formula: "t = (0.80 − s) · C / (0.95 · I) + 0.20 · C / (0.80 · min(I, C / 20 h))",
    gives: Measure::Time,
    source: source::LEAD_ACID_CHARGING,
    holds: "sound lead-acid battery above its freezing point; ±40 %. Current no more than a tenth of the capacity",
};

/// Charging time, LiFePO4.
pub static CHARGING_LIFEPO4: Law = Law {
    formula: "t = (0.95 − s) · C / (0.99 · I) + 0.05 · C / (0.495 · I)",
    gives: Measure::Time,
    source: source::LITHIUM_CHARGING,
    holds: "LiFePO4 at 0 °C or above; ±40 %",
};

/// How far a charging time may be off. Common practice, no source.
const CHARGING_SPREAD: f64 = 0.40;
/// LiFePO4 is not charged below this, °C. Source: 12.8 V pack specification, charging 0 to 50 °C.
const LITHIUM_CHARGES_FROM: f64 = 0.0;
/// A recharge in so many days before the ride date becomes a charge before the first start. Common practice, no source.
const LAST_DAYS: i64 = 21;

/// Days to charge on, and whether that is enough.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RechargePlan {
    /// In order, each to full.
    pub days: Vec<NaiveDate>,
    /// The last one is so near the ride date that it becomes "charge before the first start".
    pub last_before_first_start: bool,
    /// Days on which the place is under 0 °C and the battery LiFePO4: bring it indoors to charge.
    pub indoors: Vec<NaiveDate>,
    /// False where even a full battery falls below the threshold within a day: disconnect it or leave it on a maintainer.
    /// `days` then ends with the day on which that happens.
    pub feasible: bool,
}

/// Why no charging time is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ChargingError {
    /// LiFePO4 below 0 °C.
    TooCold,
    /// The acid is frozen.
    Frozen,
    /// A capacity or a current of nothing or less.
    NotPositive(&'static str),
}

impl fmt::Display for ChargingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooCold => {
                f.write_str("LiFePO4 has to be at 0 °C (32 °F) or above to be charged; bring it indoors")
            }
            Self::Frozen => f.write_str(
                "acid of this charge is frozen at this temperature; it has to thaw indoors first, and a bulged case is scrap",
            ),
            Self::NotPositive(what) => write!(f, "{what} has to be more than 0"),
        }
    }
}

impl std::error::Error for ChargingError {}

impl Forecast {
    /// Days to charge on so that even the fast edge does not begin a day below `threshold`.
    pub fn recharge_days(&self, threshold: Ratio) -> Answer<RechargePlan> {
        let line = threshold.get::<ratio>();
        let drawn = self.battery.drawn_in_a_day()[FAST];
        let lithium = self.battery.parameters.chemistry == Chemistry::LiFePO4;
        let mut plan = RechargePlan { feasible: true, ..RechargePlan::default() };
        let mut charge = self.battery.charge[FAST];
        for (night, celsius) in self.season.nights().zip(self.celsius.iter().copied()) {
            let rate = self.decay.fast_rate(celsius);
            let mut next = after_a_day(charge, rate, drawn);
            if next < line {
                plan.days.push(night);
                if lithium && celsius < LITHIUM_CHARGES_FROM {
                    plan.indoors.push(night);
                }
                next = after_a_day(1.0, rate, drawn);
                if next < line {
                    plan.feasible = false;
                    break;
                }
            }
            charge = next;
        }
        let last = plan.days.last().map(|it| (self.season.end() - *it).num_days());
        plan.last_before_first_start = plan.feasible && last.is_some_and(|it| it <= LAST_DAYS);
        let mut terms = self.terms();
        terms.insert(0, term("threshold", "charge to recharge below", Measure::Share, threshold));
        Answer::exact(plan, &RECHARGE_DAYS, terms)
    }
}

/// Time to charge from `charge` to full with so much current, good to ±40 %.
///
/// # Errors
/// LiFePO4 below 0 °C, frozen acid, and a capacity or current that is not above 0.
pub fn charging_time(
    parameters: &Parameters,
    charge: Ratio,
    capacity: ElectricCharge,
    current: ElectricCurrent,
    temperature: ThermodynamicTemperature,
) -> Result<Answer<Time>, ChargingError> {
    let celsius = temperature.get::<degree_celsius>();
    let s = charge.get::<ratio>().max(0.0).min(1.0);
    let lithium = parameters.chemistry == Chemistry::LiFePO4;
    if lithium && celsius < LITHIUM_CHARGES_FROM {
        return Err(ChargingError::TooCold);
    }
    if parameters.freezes_at_celsius(s).is_some_and(|it| celsius <= it) {
        return Err(ChargingError::Frozen);
    }
    let (c, i) = (capacity.get::<ampere_hour>(), current.get::<ampere>());
    for (what, it) in [("capacity", c), ("charger current", i)] {
        (it > 0.0).then_some(()).ok_or(ChargingError::NotPositive(what))?;
    }
    let (hours, law) = if lithium {
        let slow = (1.0 - s).min(0.05) * c / (0.495 * i);
        ((0.95 - s).max(0.0) * c / (0.99 * i) + slow, &CHARGING_LIFEPO4)
    } else {
        let slow = (1.0 - s).min(0.20) * c / (0.80 * i.min(c / 20.0));
        ((0.80 - s).max(0.0) * c / (0.95 * i) + slow, &CHARGING_LEAD_ACID)
    };
    let terms = vec![
        term("s", "charge", Measure::Share, charge),
        term("C", "capacity", Measure::Charge, capacity),
        term("I", "charger current", Measure::ChargingCurrent, current),
    ];
    let ends = [1.0 - CHARGING_SPREAD, 1.0 + CHARGING_SPREAD];
    let bounds = ends.map(|it| Time::new::<hour>(hours * it));
    Ok(Answer::within(Time::new::<hour>(hours), bounds, law, terms))
}

/// Whether a charger's current is over a tenth of the capacity, which lead-acid batteries should be spared.
/// Source: a riders' association's storage note, 10 % of the Ah rating; the label's own limit comes first.
pub fn current_is_high(capacity: ElectricCharge, current: ElectricCurrent) -> bool {
    current.get::<ampere>() > capacity.get::<ampere_hour>() / 10.0
}
