//! The lines of the sheet: which facts each asks for, which laws it calls, what stands in its head. Gathers facts and
//! calls laws; computes nothing itself.

pub mod address;
mod battery;
mod drawer;
mod estimate;
mod fuel;
mod last_run;
mod oil;
mod season;
mod torque;

pub use battery::{Course, battery, course};
pub use drawer::{Held, drawer, held, wrench};
pub use estimate::estimate;
pub use fuel::fuel;
pub use last_run::last_run;
pub use oil::oil;
pub use season::{season, season_of};
pub use torque::{Asked, Offer, Row, reverse, row, torque, torque_line, wrenches_needed};

use crate::facts::{Facts, Id, Lack};
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::lines as words;
use uom::si::f64::{Angle, Length};

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

    /// The line's calculator; `drawer` are the wrenches at hand.
    pub fn panel(self, from: &dyn Facts, drawer: &[Held], set: UnitSet) -> Panel {
        match self {
            Line::Fuel => fuel(from, set),
            Line::LastRun => last_run(from, set),
            Line::Oil => oil(from, set),
            Line::Torques => torque(from, drawer, set),
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
    /// Entries that few need, in their order; shown on demand.
    pub more: Vec<Id>,
    /// Entries that the sheet's first sentence has already; shown where the calculator stands alone.
    pub stated: Vec<Id>,
    /// All answers but the head.
    pub answers: Vec<Shown>,
    /// What is done one after another, in words, with what to set for each.
    pub steps: Vec<(String, Shown)>,
    /// Answers that stand in the working alone: what a slip of the hand would change.
    pub asides: Vec<Shown>,
    /// Tools that could serve, with what each would do.
    pub offers: Vec<Offer>,
    /// What is drawn of it.
    pub pictured: Pictured,
    /// What follows from the figures and needs care.
    pub warnings: Vec<String>,
    /// What the work needs care for.
    pub cautions: &'static [&'static str],
}

/// What a calculator shows in pictures.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Pictured {
    /// An adapter on a wrench.
    pub adapter: Option<OnWrench>,
    /// So many bolts on a circle, in their order.
    pub bolts: Option<u32>,
}

/// An adapter on a wrench, as far as its measures are known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnWrench {
    /// Hand to square drive.
    pub wrench: Option<Length>,
    /// Square drive to fastener.
    pub adapter: Option<Length>,
    /// From the line of the handle.
    pub angle: Option<Angle>,
}

impl Panel {
    /// A calculator with nothing but its head.
    pub fn of(head: Shown) -> Self {
        Self {
            head,
            note: String::new(),
            blanks: Vec::new(),
            more: Vec::new(),
            stated: Vec::new(),
            answers: Vec::new(),
            steps: Vec::new(),
            asides: Vec::new(),
            offers: Vec::new(),
            pictured: Pictured::default(),
            warnings: Vec::new(),
            cautions: &[],
        }
    }

    /// Head and answers.
    pub fn all(&self) -> impl Iterator<Item = &Shown> {
        std::iter::once(&self.head).chain(&self.answers)
    }

    /// Every answer that has a working.
    pub fn worked(&self) -> impl Iterator<Item = &Shown> {
        self.all().chain(self.steps.iter().map(|it| &it.1)).chain(&self.asides)
    }

    /// The answer under a label.
    pub fn answer(&self, label: &str) -> Option<&Shown> {
        self.all().find(|it| it.label == label)
    }

    /// Why a fact cannot be used together with the others, in the words of the law that found it.
    pub fn refusal(&self, id: Id) -> Option<String> {
        self.worked().flat_map(Shown::lacks).find_map(|it| match it {
            Lack::Refused(fact, why) if *fact == id => Some(why.to_string()),
            _ => None,
        })
    }
}
