//! Brake and clutch fluid: what mixes with what, how hot it stands, and when it is due.

use crate::source;
use crate::units::Measure;
use crate::working::{Amount, Answer, Law, Quantity, Term};
use chrono::{Months, NaiveDate};
use uom::si::f64::ThermodynamicTemperature;

/// A fluid by its grade.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fluid {
    /// Glycol.
    Dot3,
    /// Glycol with borate.
    Dot4,
    /// Silicone.
    Dot5,
    /// Glycol with borate, as hot as silicone.
    Dot51,
    /// Mineral oil: other seals.
    Mineral,
}

/// What is in the clutch's line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Clutch {
    /// A fluid.
    Hydraulic(Fluid),
    /// No fluid.
    Cable,
}

/// What happens when a fluid is poured onto another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mixing {
    /// The same.
    Same,
    /// Both mineral oil, of which makers have their own.
    OnlyTheNamed,
    /// They mix, and it stands no less heat.
    Mixes,
    /// They mix, but it boils sooner than what is printed on the cap.
    BoilsSooner,
    /// Never: seals swell or brakes fail.
    Never,
}

/// Least boiling point with water in it.
pub const WET_BOILING: Law = Law {
    formula: "Tb = W",
    gives: Measure::Temperature,
    source: source::BRAKE_FLUID,
    holds: "the least that new fluid of the grade has to reach with about 3.7 % of water in it; the bottle may be better, old fluid worse",
};

/// Change by.
pub const CHANGE_BY: Law = Law {
    formula: "B = C + 24 months",
    gives: Measure::Days,
    source: source::TWO_YEARS,
    holds: "glycol fluids, DOT 3, 4 and 5.1, which draw water; the manual may ask for less",
};

/// How far past its day a fluid is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Late {
    /// Not yet.
    No,
    /// By the day it is judged on.
    ByThen,
    /// Already when it is parked, or more than a year by the day it is judged on.
    Overdue,
}

/// How late a fluid is that was due `by` a day, judged `on` another, with the park date where that is known.
pub fn late(by: NaiveDate, on: NaiveDate, park: Option<NaiveDate>) -> Late {
    if park.is_some_and(|park| by <= park) || (on - by).num_days() > 365 {
        Late::Overdue
    } else if by <= on {
        Late::ByThen
    } else {
        Late::No
    }
}

/// Usual time from one change to the next.
const USUAL: Months = Months::new(24);

impl Fluid {
    /// Least boiling points by its standard, °C: dry, and with water in it. None for mineral oil.
    pub fn boils(self) -> Option<[f64; 2]> {
        match self {
            Fluid::Dot3 => Some([205.0, 140.0]),
            Fluid::Dot4 => Some([230.0, 155.0]),
            Fluid::Dot5 | Fluid::Dot51 => Some([260.0, 180.0]),
            Fluid::Mineral => None,
        }
    }

    /// Least boiling point with water in it; none for what water does not mix into.
    pub fn wet_boiling(self) -> Option<Answer<ThermodynamicTemperature>> {
        let [_, wet] = self.boils().filter(|_| self.is_glycol())?;
        let wet = ThermodynamicTemperature::of_base(wet + 273.15);
        let amount = Amount::Quantity(Measure::Temperature, wet.base());
        let terms =
            vec![Term { symbol: "W", name: "least wet boiling point of the grade", amount }];
        Some(Answer::exact(wet, &WET_BOILING, terms))
    }

    /// Whether it draws water, and is changed by the calendar.
    pub fn is_glycol(self) -> bool {
        matches!(self, Fluid::Dot3 | Fluid::Dot4 | Fluid::Dot51)
    }

    /// What happens when `other` is poured onto it.
    pub fn with(self, other: Fluid) -> Mixing {
        if self == other {
            return if self == Fluid::Mineral { Mixing::OnlyTheNamed } else { Mixing::Same };
        }
        match (self.boils(), other.boils()) {
            (Some([_, own]), Some([_, its])) if self.is_glycol() && other.is_glycol() => {
                if its < own { Mixing::BoilsSooner } else { Mixing::Mixes }
            }
            _ => Mixing::Never,
        }
    }
}

/// The day a glycol fluid is due that was changed on another; none for silicone and mineral oil, where no rule is known.
pub fn change_by(fluid: Fluid, changed: NaiveDate) -> Option<Answer<NaiveDate>> {
    let due = changed.checked_add_months(USUAL).filter(|_| fluid.is_glycol())?;
    let terms = vec![Term { symbol: "C", name: "last change", amount: Amount::Date(changed) }];
    Some(Answer::exact(due, &CHANGE_BY, terms))
}
