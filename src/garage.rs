//! What is kept: the bike, its season, its fasteners, the garage with its wrenches, and the invented example.

mod entries;
mod merge;

pub use entries::Entries;
pub use merge::{NOWHERE, Twice, name, places};

use crate::entry::Entry;
use crate::facts::{self, Facts, Home, Id};
use crate::units::{self, UnitSet};
use chrono::{Datelike, NaiveDate};
use serde::{Deserialize, Serialize};

/// What the manual says of a bike, and its fasteners.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Bike {
    /// Facts of [`Home::Bike`], and unknown ones.
    pub entries: Entries,
    /// The torque line's open fastener, before it is kept.
    pub scratch: Entries,
    /// Those that are kept, in their order.
    pub fasteners: Vec<Entries>,
    /// Groups of a link that this page does not know, with their kind; kept and passed on.
    pub others: Vec<(u64, Entries)>,
}

/// The place, the shelf and the tools; all bikes share them.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Garage {
    /// Facts of [`Home::Garage`].
    pub entries: Entries,
    /// Wrenches; the first is the one in hand.
    pub wrenches: Vec<Entries>,
}

impl Garage {
    /// Takes from another garage what this one does not know. What its owner has said of place, shelf and tools stays.
    pub fn welcome(&mut self, other: Garage) {
        for (id, entry) in other.entries {
            let own = self.entries.at(id);
            if own.is_blank() {
                *own = entry;
            }
        }
        if self.wrenches.is_empty() {
            self.wrenches = other.wrenches;
        }
    }
}

/// Dates and states of one season of a bike.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Season {
    /// Facts of [`Home::Season`].
    pub entries: Entries,
}

/// One bike with its season and the garage it stands in.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Kept {
    /// The bike.
    pub bike: Bike,
    /// Its season.
    pub season: Season,
    /// The garage.
    pub garage: Garage,
}

impl Kept {
    /// Writes an entry where its fact lives: the open fastener and the wrench in hand for theirs.
    pub fn put(&mut self, id: Id, entry: Entry) {
        if self.garage.wrenches.is_empty() && home(id) == Home::Wrench {
            self.garage.wrenches.push(Entries::new());
        }
        if let Some(entries) = self.entries_mut(home(id)) {
            entries.insert(id, entry);
        }
    }

    fn entries_mut(&mut self, home: Home) -> Option<&mut Entries> {
        match home {
            Home::Bike => Some(&mut self.bike.entries),
            Home::Season => Some(&mut self.season.entries),
            Home::Garage => Some(&mut self.garage.entries),
            Home::Wrench => self.garage.wrenches.first_mut(),
            Home::Fastener => Some(&mut self.bike.scratch),
            // The logbook is kept in pages of its own.
            Home::Log => None,
        }
    }

    /// Drops entries that were never typed: a record holds what is known.
    pub fn drop_blanks(&mut self) {
        let lists = [
            &mut self.bike.entries,
            &mut self.bike.scratch,
            &mut self.season.entries,
            &mut self.garage.entries,
        ];
        for entries in
            lists.into_iter().chain(&mut self.bike.fasteners).chain(&mut self.garage.wrenches)
        {
            entries.retain(|_, it| *it != Entry::default());
        }
    }
}

impl Facts for Kept {
    fn entry(&self, id: Id) -> Entry {
        match home(id) {
            Home::Bike => self.bike.entries.entry(id),
            Home::Season => self.season.entries.entry(id),
            Home::Garage => self.garage.entries.entry(id),
            Home::Wrench => self.garage.wrenches.first().map(|it| it.entry(id)).unwrap_or_default(),
            Home::Fastener => self.bike.scratch.entry(id),
            Home::Log => Entry::default(),
        }
    }
}

/// The record of a fact; unknown facts stay with the bike.
pub fn home(id: Id) -> Home {
    facts::about(id).map_or(Home::Bike, |it| it.home)
}

/// Facts seen from one kept fastener: its own first, the rest from the bike and the garage.
pub struct Subject<'a> {
    /// The fastener.
    pub own: &'a dyn Facts,
    /// All else.
    pub rest: &'a dyn Facts,
}

impl Facts for Subject<'_> {
    fn entry(&self, id: Id) -> Entry {
        if home(id) == Home::Fastener { self.own.entry(id) } else { self.rest.entry(id) }
    }
}

/// The invented bike that a first visitor sees, with a northern winter around `today`. All its figures are made up.
pub fn example(today: NaiveDate, set: UnitSet) -> Kept {
    let autumn = if today.month() >= 6 { today.year() } else { today.year() - 1 };
    let mut kept = Kept::default();
    let mut put = |id: Id, text: &str, unit: u8| kept.put(id, Entry::new(text, unit));
    let metric = set == UnitSet::Metric;
    // The same bike as its owner would have typed it on either side of the ocean.
    let mut either =
        |id: Id, (text, unit): (&str, &units::Unit), (us_text, us_unit): (&str, &units::Unit)| {
            if metric { put(id, text, unit.code) } else { put(id, us_text, us_unit.code) }
        };
    use units::*;
    either(facts::TANK_VOLUME.id(), ("16", &LITER), ("4.2", &US_GAL));
    either(facts::FUEL_IN_TANK.id(), ("4", &LITER), ("1.1", &US_GAL));
    either(facts::LINE_VOLUME.id(), ("80", &MILLILITER), ("2.7", &US_FL_OZ));
    either(facts::CONSUMPTION.id(), ("4.8", &LITERS_PER_100_KM), ("49", &US_MPG));
    either(facts::FILL_WITH_FILTER.id(), ("3.1", &LITER), ("3.3", &US_QT));
    either(facts::FILL_WITHOUT_FILTER.id(), ("2.9", &LITER), ("3.1", &US_QT));
    either(facts::BETWEEN_MARKS.id(), ("0.3", &LITER), ("0.3", &US_QT));
    either(facts::BOTTLE_SIZE.id(), ("1", &LITER), ("1", &US_QT));
    either(facts::OIL_ON_SHELF.id(), ("0", &LITER), ("0", &US_QT));
    either(facts::COLDEST_NIGHT.id(), ("-24", &CELSIUS), ("-11", &FAHRENHEIT));
    either(
        facts::MONTHLY_MEANS.id(),
        ("-6 -5 0 6 13 18 21 20 15 9 3 -3", &CELSIUS),
        ("21 23 32 43 55 64 70 68 59 48 37 27", &FAHRENHEIT),
    );
    either(facts::TORQUE.id(), ("25 (22–26)", &NEWTON_METER), ("18 (16–19)", &LBF_FT));
    either(facts::ADAPTER_LENGTH.id(), ("40", &MILLIMETER), ("1.6", &INCHES));
    either(facts::WRENCH_LENGTH.id(), ("285", &MILLIMETER), ("11.2", &INCHES));
    either(facts::LOWEST_MARK.id(), ("5", &NEWTON_METER), ("4", &LBF_FT));
    either(facts::HIGHEST_MARK.id(), ("60", &NEWTON_METER), ("45", &LBF_FT));
    either(facts::GRADUATION.id(), ("1", &NEWTON_METER), ("1", &LBF_FT));
    either(
        facts::STABILIZER_LABEL.id(),
        ("30 mL per 10 L", &LITER),
        ("1 fl oz per 2.5 gal", &US_GAL),
    );
    either(facts::COOLANT_CIRCUIT.id(), ("2.4", &LITER), ("2.5", &US_QT));
    either(facts::FRONT_PRESSURE.id(), ("2.5", &BAR), ("36", &PSI));
    either(facts::REAR_PRESSURE.id(), ("2.9", &BAR), ("42", &PSI));
    either(facts::SET_TEMPERATURE.id(), ("12", &CELSIUS), ("54", &FAHRENHEIT));
    either(facts::RIDE_TEMPERATURE.id(), ("6", &CELSIUS), ("43", &FAHRENHEIT));
    either(facts::FORK_OIL.id(), ("0.5", &LITER), ("0.5", &US_QT));
    if !metric {
        put(facts::LABEL_MEASURES.id(), "us", 0);
    }
    put(facts::COOLING.id(), "liquid", 0);
    put(facts::GLYCOL.id(), "ethylene", 0);
    put(facts::CONCENTRATION.id(), "45", PERCENT.code);
    put(facts::WANTED_CONCENTRATION.id(), "50", PERCENT.code);
    put(facts::COOLANT_BOTTLE.id(), "100", PERCENT.code);
    put(facts::TIRES_ARE.id(), "cold", 0);
    put(facts::FRONT_DATE_CODE.id(), "1522", 0);
    put(facts::REAR_DATE_CODE.id(), "1822", 0);
    put(facts::BRAKE_FLUID.id(), "dot4", 0);
    put(facts::CLUTCH_FLUID.id(), "cable", 0);
    put(facts::OTHER_OILS.id(), "fork", 0);
    let before = |day: &str| format!("{day} {}", autumn - 1);
    put(facts::BRAKE_FLUID_CHANGED.id(), &before("Oct 4"), 0);
    put(facts::FORK_OIL_CHANGED.id(), &before("Oct 4"), 0);
    put(facts::BIKE_NAME.id(), "Alder 640", 0);
    put(facts::FASTENER_NAME.id(), "Header nut", 0);
    put(facts::FUEL_SUPPLY.id(), "injection", 0);
    put(facts::OIL_CHANGE.id(), "with_filter", 0);
    put(facts::CHEMISTRY.id(), "agm", 0);
    put(facts::CAPACITY.id(), "10", AMPERE_HOUR.code);
    put(facts::CHARGE_WHEN_PARKED.id(), "100", PERCENT.code);
    put(facts::KEY_OFF_DRAW.id(), "about 1", MILLIAMPERE.code);
    put(facts::WHERE_IT_STANDS.id(), "unheated", 0);
    put(facts::ADAPTER.id(), "in_line", 0);
    put(facts::PARK_DATE.id(), &format!("Nov 14 {autumn}"), 0);
    put(facts::RIDE_DATE.id(), &format!("Mar 28 {}", autumn + 1), 0);
    kept
}
