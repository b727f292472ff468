//! The lines of the sheet: which facts each asks for, which laws it calls, what stands in its head. Gathers facts and
//! calls laws; computes nothing itself.

pub mod address;
mod battery;
mod fuel;
mod last_run;
mod oil;
mod season;
mod torque;

pub use battery::{Course, battery, course};
pub use fuel::fuel;
pub use last_run::last_run;
pub use oil::oil;
pub use season::{season, season_of};
pub use torque::torque;

use crate::facts::{Facts, Id, Lack};
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::lines as words;

/// A line of the lay-up side, in the order of the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// Fill up and stabilize.
    Fuel,
    /// Ride it through and warm the oil.
    LastRun,
    /// Drain and fill.
    Oil,
    /// Fasteners, on a cold bike.
    Torques,
    /// After the last start.
    Battery,
}

impl Line {
    /// All, in the order of the work. Fuel comes before the last run, which draws treated fuel through and warms the
    /// oil; torques want a cold bike; the battery comes after the last start.
    pub const ALL: [Line; 5] = [Line::Fuel, Line::LastRun, Line::Oil, Line::Torques, Line::Battery];

    /// Name in the address.
    pub fn key(self) -> &'static str {
        match self {
            Line::Fuel => "fuel",
            Line::LastRun => "last-run",
            Line::Oil => "oil",
            Line::Torques => "torques",
            Line::Battery => "battery",
        }
    }

    /// What is done and why it is done now.
    pub fn words(self) -> &'static words::Said {
        match self {
            Line::Fuel => &words::FUEL,
            Line::LastRun => &words::LAST_RUN,
            Line::Oil => &words::OIL,
            Line::Torques => &words::TORQUES,
            Line::Battery => &words::BATTERY,
        }
    }

    /// The line's calculator.
    pub fn panel(self, from: &dyn Facts, set: UnitSet) -> Panel {
        match self {
            Line::Fuel => fuel(from, set),
            Line::LastRun => last_run(from, set),
            Line::Oil => oil(from, set),
            Line::Torques => torque(from, set),
            Line::Battery => battery(from, set),
        }
    }
}

/// A calculator: what it asks, what it answers.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// The answer that stands large in the line's head.
    pub head: Shown,
    /// Said small beside the head.
    pub note: String,
    /// Entries, in their order.
    pub blanks: Vec<Id>,
    /// Entries that the sheet's first sentence has already; shown where the calculator stands alone.
    pub stated: Vec<Id>,
    /// All answers but the head.
    pub answers: Vec<Shown>,
    /// What follows from the figures and needs care.
    pub warnings: Vec<String>,
    /// What the work needs care for.
    pub cautions: &'static [&'static str],
}

impl Panel {
    /// Head and answers.
    pub fn all(&self) -> impl Iterator<Item = &Shown> {
        std::iter::once(&self.head).chain(&self.answers)
    }

    /// The answer under a label.
    pub fn answer(&self, label: &str) -> Option<&Shown> {
        self.all().find(|it| it.label == label)
    }

    /// Why a fact cannot be used together with the others, in the words of the law that found it.
    pub fn refusal(&self, id: Id) -> Option<String> {
        self.all().flat_map(Shown::lacks).find_map(|it| match it {
            Lack::Refused(fact, why) if *fact == id => Some(why.to_string()),
            _ => None,
        })
    }
}
