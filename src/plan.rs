//! The lines of the sheet: which facts each asks for, which laws it calls, what stands in its head. Gathers facts and
//! calls laws; computes nothing itself.

pub mod address;
mod battery;
mod bench;
mod brakes;
mod coolant;
mod dates;
mod drawer;
mod estimate;
mod fuel;
mod last_run;
mod life;
mod log;
mod needs;
mod night;
mod oil;
mod oil_used;
mod other_oils;
mod own_step;
mod paper;
mod season;
mod step;
mod tires;
mod torque;

pub use battery::{Course, battery, battery_in_season, course};
pub use bench::{Stop, stop_at, stops};
pub use brakes::brakes;
pub use coolant::coolant;
pub use dates::dates;
pub use drawer::{Held, drawer, held, wrench};
pub use estimate::estimate;
pub use fuel::fuel;
pub use last_run::last_run;
pub use life::{Life, backup_due, is_long_over, past};
pub use log::{due, due_told, figures, log, shortened};
pub use needs::needs;
pub use night::night_refused;
pub use oil::oil;
use oil_used::oil_used;
pub use other_oils::other_oils;
pub use own_step::OwnSteps;
pub use paper::{Field, Listed, Paper, Task, paper};
pub use season::{judged_on, season, season_of, stored};
pub use step::{Side, Step, begun, is_stale};
pub use tires::tires;
pub use torque::{Asked, Offer, Row, reverse, row, torque, torque_line, wrenches_needed};

use crate::entry::Entry;
use crate::entry::text::joined;
use crate::facts::{Facts, Id, Lack};
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::lines as words;
use std::sync::Arc;
use uom::si::f64::{Angle, Length};

/// A calculator. Where it stands in the work, [`Step`] says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Line {
    /// Strength read cold; exchanged before the run that mixes it.
    Coolant,
    /// Fill up and stabilize.
    Fuel,
    /// Ride it through and warm the oil.
    LastRun,
    /// Drain and fill.
    Oil,
    /// Final drive, gearbox, primary, fork, two-stroke tank.
    OtherOils,
    /// On a cold bike.
    Tires,
    /// The same in spring, on the morning of the ride: a step's alone, not among [`Line::ALL`].
    TiresAgain,
    /// Fasteners, on a cold bike.
    Torques,
    /// Brake and clutch fluid.
    Brakes,
    /// After the last start.
    Battery,
}

impl Line {
    /// All, as the steps of the lay-up side open them.
    pub const ALL: [Line; 9] = [
        Line::Coolant,
        Line::Fuel,
        Line::LastRun,
        Line::Oil,
        Line::OtherOils,
        Line::Tires,
        Line::Torques,
        Line::Brakes,
        Line::Battery,
    ];

    /// Name in the address.
    pub fn key(self) -> &'static str {
        match self {
            Line::Coolant => "coolant",
            Line::Fuel => "fuel",
            Line::LastRun => "last-run",
            Line::Oil => "oil",
            Line::OtherOils => "other-oils",
            Line::Tires | Line::TiresAgain => "tires",
            Line::Torques => "torques",
            Line::Brakes => "brakes",
            Line::Battery => "battery",
        }
    }

    /// What is done and why it is done now.
    pub fn words(self) -> &'static words::Said {
        match self {
            Line::Coolant => &words::COOLANT,
            Line::Fuel => &words::FUEL,
            Line::LastRun => &words::LAST_RUN,
            Line::Oil => &words::OIL,
            Line::OtherOils => &words::OTHER_OILS,
            Line::Tires | Line::TiresAgain => &words::TIRES,
            Line::Torques => &words::TORQUES,
            Line::Brakes => &words::BRAKES,
            Line::Battery => &words::BATTERY,
        }
    }

    /// The line's calculator; `drawer` are the wrenches at hand.
    pub fn panel(self, from: &dyn Facts, drawer: &[Held], set: UnitSet) -> Panel {
        match self {
            Line::Coolant => coolant(from, set),
            Line::Fuel => fuel(from, set),
            Line::LastRun => last_run(from, set),
            Line::Oil => oil(from, set),
            Line::OtherOils => other_oils(from, set),
            Line::Tires => tires(from, set, false),
            Line::TiresAgain => tires(from, set, true),
            Line::Torques => torque(from, drawer, set),
            Line::Brakes => brakes(from, set),
            Line::Battery => battery(from, set),
        }
    }
}

/// A calculator: what it asks, what it answers.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// The answer that stands large in the line's head.
    pub head: Shown,
    /// The first of the answers is as much of a head: the other tire's.
    pub pair: bool,
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
    /// The battery's season day by day.
    pub course: Option<Arc<Course>>,
    /// A figure that was found and can be kept as a fact.
    pub accept: Option<Accept>,
    /// What follows from the figures and needs care.
    pub warnings: Vec<String>,
    /// What the work needs care for.
    pub cautions: &'static [&'static str],
}

/// A figure that was found, offered as a fact: taken only where the owner says so.
#[derive(Debug, Clone, PartialEq)]
pub struct Accept {
    /// The fact.
    pub id: Id,
    /// What would be typed there.
    pub entry: Entry,
    /// What taking it is called.
    pub words: String,
}

/// What a calculator shows in pictures.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Pictured {
    /// An adapter on a wrench.
    pub adapter: Option<OnWrench>,
    /// So many bolts on a circle, in their order.
    pub bolts: Option<u32>,
    /// The battery, with its charge on a day of the season.
    pub battery: bool,
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
    /// A calculator with nothing but its head. Compiled once: laid out anew in every calculator it would be code in each.
    #[inline(never)]
    pub fn of(head: Shown) -> Self {
        Self {
            head,
            pair: false,
            note: String::new(),
            blanks: Vec::new(),
            more: Vec::new(),
            stated: Vec::new(),
            answers: Vec::new(),
            steps: Vec::new(),
            asides: Vec::new(),
            offers: Vec::new(),
            pictured: Pictured::default(),
            course: None,
            accept: None,
            warnings: Vec::new(),
            cautions: &[],
        }
    }

    /// Head and answers.
    pub fn all(&self) -> impl Iterator<Item = &Shown> {
        std::iter::once(&self.head).chain(&self.answers)
    }

    /// So many of all answers stand large.
    pub fn heads(&self) -> usize {
        1 + usize::from(self.pair)
    }

    /// The same in a sentence, as far as they are known.
    pub fn spoken(&self) -> Option<String> {
        let said: Vec<String> = self.all().take(self.heads()).filter_map(Shown::spoken).collect();
        (!said.is_empty()).then(|| joined(&said, ", "))
    }

    /// What it asks, in order. What the sheet's first sentence has already comes last, and only where it is lacking or `shown`
    /// all the same: the head's own blanks are to be seen first.
    pub fn asked(&self, shown: impl Fn(Id) -> bool) -> impl Iterator<Item = Id> {
        let lacks = |id| self.all().flat_map(Shown::lacks).any(|it| it.id() == id);
        let stated = self.stated.iter().copied().filter(move |id| lacks(*id) || shown(*id));
        self.blanks.iter().copied().chain(stated)
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
