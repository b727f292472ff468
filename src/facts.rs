//! What can be known of a bike, a season and a garage: the table of facts, each with its number (frozen for ever), its
//! words, its reader and the record it lives in; and how a calculation asks for facts and says which it lacks.

mod choices;
mod doubt;
mod echo;
mod fluids;
mod general;
mod intervals;
mod lacks;
mod read;
mod steps;
mod table;

pub use choices::{
    Adapter, BatteryKept, Climate, Dressing, FinalDrive, FuelSupply, Mind, Place, SelfLocking,
    ThreadsInto,
};
pub use doubt::to_come;
pub use echo::{as_read, echo, value};
pub use fluids::{Bowls, FuelType, LevelRead, Measures, Stand, Tap, Warm};
pub use general::GeneralTorque;
pub use intervals::Interval;
pub use lacks::{Lack, Lacks, Told, all3, both};
pub use read::{Capacity, Chosen, Level, Recharge, Rough, Strength, TypedThread};
pub(crate) use read::{chosen, several_keys};
pub use steps::{LAY_UP_STEPS, WAKE_UP_STEPS};
pub use table::*;

use crate::entry::{Entry, Refusal};
use crate::units::{Dimension, Measure, Unit, UnitSet};
use serde::{Deserialize, Serialize};
use std::fmt::Display;

/// A fact's number: in records and links for ever, never used again for another fact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Id(pub u16);

/// Which record a fact lives in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Home {
    /// The bike itself: what its manual says.
    Bike,
    /// This bike's season: dates, how full, how charged.
    Season,
    /// The garage: where it stands, what is on the shelf.
    Garage,
    /// One of the garage's wrenches.
    Wrench,
    /// One of the bike's fasteners.
    Fastener,
    /// One entry of the bike's logbook.
    Log,
}

/// One of the answers that a choice offers.
#[derive(Debug, PartialEq)]
pub struct Choice {
    /// Frozen for ever; links carry it.
    pub code: u8,
    /// As stored.
    pub key: &'static str,
    /// As shown.
    pub label: &'static str,
}

/// What is accepted of one measure, in `unit`.
#[derive(Debug, PartialEq)]
pub struct Limit {
    /// The measure.
    pub measure: Measure,
    /// The unit of `low` and `high`.
    pub unit: &'static Unit,
    /// Lowest.
    pub low: f64,
    /// Whether `low` itself is taken.
    pub low_taken: bool,
    /// Highest, itself taken.
    pub high: f64,
}

/// How a fact is written.
#[derive(Debug, PartialEq)]
pub enum Kind {
    /// A number with a unit, of any of these measures.
    Quantity {
        /// What is accepted, the usual measure first.
        limits: &'static [Limit],
        /// Whether a range is taken too.
        range: bool,
    },
    /// One number with a unit, or several of them.
    Sizes(&'static [Limit]),
    /// One of some.
    Choice(&'static [Choice]),
    /// A day.
    Day,
    /// A dose for an amount of fuel.
    Dose,
    /// One temperature or twelve.
    Temperatures,
    /// Any of some, or none: their keys with spaces between.
    Several(&'static [Choice]),
    /// A whole number of things.
    Count {
        /// Fewest.
        least: u32,
        /// Most.
        most: u32,
    },
    /// Passes of a tightening, in their order.
    Stages,
    /// Threads, each with its torque.
    ThreadTorques,
    /// How often something is due, by distance and by time.
    Intervals,
    /// An engine oil's SAE grade.
    Grade,
    /// Any words.
    Text,
}

/// All of a fact but its type.
#[derive(Debug, PartialEq)]
pub struct About {
    /// Number.
    pub id: Id,
    /// Name in the backup file.
    pub key: &'static str,
    /// Label on the page.
    pub label: &'static str,
    /// One plain hint.
    pub hint: &'static str,
    /// Record it lives in.
    pub home: Home,
    /// How it is written.
    pub kind: Kind,
}

impl About {
    /// The units that the blank's button goes through under `set`, the usual one first.
    pub fn offered(&self, set: UnitSet) -> Vec<&'static Unit> {
        match &self.kind {
            Kind::Quantity { limits, .. } | Kind::Sizes(limits) => {
                limits.iter().flat_map(|it| it.measure.offered(set)).copied().collect()
            }
            Kind::Temperatures => Measure::Temperature.offered(set).to_vec(),
            Kind::ThreadTorques => Measure::Torque.offered(set).to_vec(),
            // "20 N·m, then 100 %": a bare number would be either.
            _ => Vec::new(),
        }
    }

    /// The unit that a number typed now would mean: the entry's own where something was typed, else the usual one.
    pub fn unit_for(&self, entry: &Entry, set: UnitSet) -> Option<&'static Unit> {
        let offered = self.offered(set);
        entry.unit().filter(|it| self.takes(it.dimension)).or_else(|| offered.first().copied())
    }

    fn takes(&self, dimension: Dimension) -> bool {
        match &self.kind {
            Kind::Quantity { limits, .. } | Kind::Sizes(limits) => {
                limits.iter().any(|it| it.unit.dimension == dimension)
            }
            Kind::Temperatures => dimension == Dimension::Temperature,
            Kind::ThreadTorques => dimension == Dimension::Torque,
            _ => false,
        }
    }

    /// Whether numbers below zero are taken, for which a decimal keypad alone is not enough.
    pub fn signed(&self) -> bool {
        match &self.kind {
            Kind::Quantity { limits, .. } => limits.iter().any(|it| it.low < 0.0),
            _ => false,
        }
    }
}

/// A fact and how it is read.
pub struct Fact<T: 'static> {
    /// All of it but its type.
    pub about: About,
    read: fn(&About, &Entry) -> Result<Option<T>, Refusal>,
}

/// Where facts are: a saved bike, the live sheet, one fastener of either.
pub trait Facts {
    /// The entry of a fact; blank where it is not known.
    fn entry(&self, id: Id) -> Entry;
}

impl<T> Fact<T> {
    /// Number.
    pub const fn id(&self) -> Id {
        self.about.id
    }

    /// The fact, or that it is missing or refused.
    pub fn of(&self, from: &dyn Facts) -> Told<T> {
        match self.read(from) {
            Ok(Some(it)) => Ok(it),
            Ok(None) => Err(Lacks::missing(self.about.id)),
            Err(why) => Err(Lacks::refused(self.about.id, why)),
        }
    }

    /// The fact where it is known; a refused one is a lack all the same.
    pub fn maybe(&self, from: &dyn Facts) -> Told<Option<T>> {
        match self.read(from) {
            Ok(it) => Ok(it),
            Err(why) => Err(Lacks::refused(self.about.id, why)),
        }
    }

    /// The fact where it is known and can be used: for what a lack would not change.
    pub fn known(&self, from: &dyn Facts) -> Option<T> {
        self.read(from).unwrap_or_default()
    }

    fn read(&self, from: &dyn Facts) -> Result<Option<T>, Refusal> {
        (self.read)(&self.about, &from.entry(self.about.id))
    }

    /// That this fact cannot be used, because of `why`.
    pub fn refused(&self, why: Refusal) -> Lacks {
        Lacks::refused(self.about.id, why)
    }

    /// That this fact does not go together with others, in the words of the law that found it.
    pub fn not_together(&self, words: impl Display) -> Lacks {
        Lacks::together(self.about.id, &words)
    }
}

/// Whether anything is typed for a fact, readable or not.
pub fn given(from: &dyn Facts, id: Id) -> bool {
    !from.entry(id).is_blank()
}

/// All of a fact but its type, by its number.
pub fn about(id: Id) -> Option<&'static About> {
    TABLE.binary_search_by_key(&id, |it| it.id).ok().map(|at| TABLE[at])
}

/// Why an entry cannot be used, where it cannot; the table's reader decides, without its type.
pub fn refusal(about: &About, entry: &Entry) -> Option<Refusal> {
    read::check(about, entry).err()
}
