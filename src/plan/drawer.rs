//! The wrench drawer: the garage's wrenches as they are read, once for all fasteners.

use super::Panel;
use crate::entry::text::joined;
use crate::facts::{self, Facts, Told, all3, both};
use crate::garage::{Entries, Garage};
use crate::show::{self, Shown};
use crate::torque::{TorqueError, Wrench};
use crate::units::{Measure, Unit, UnitSet};
use crate::words::{fasteners as words, labels, notes};
use uom::si::f64::Length;

/// One wrench as it is read.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// Tells it from the others; none for one that nobody has chosen yet.
    pub key: Option<u32>,
    /// What its owner calls it, or its place in the drawer.
    pub name: String,
    /// Marks and accuracy.
    pub wrench: Told<Wrench>,
    /// Hand to square drive.
    pub length: Told<Option<Length>>,
    /// The unit of its scale.
    pub marked_in: Option<&'static Unit>,
    /// Nothing is known of it.
    pub blank: bool,
}

/// A wrench as it is read; `place` in the drawer counts from 0.
pub fn held(from: &dyn Facts, place: usize) -> Held {
    let key = facts::WRENCH_KEY.known(from);
    let named = facts::WRENCH_NAME.known(from);
    let marks = both(facts::LOWEST_MARK.maybe(from), facts::HIGHEST_MARK.maybe(from));
    let graduation = facts::GRADUATION.maybe(from);
    let marked_in = graduation.as_ref().ok().and_then(|it| it.as_ref()?.unit);
    let wrench = all3(marks, graduation, facts::ACCURACY.maybe(from)).and_then(
        |((lowest, highest), graduation, accuracy)| {
            let graduation = graduation.map(|it| it.value);
            Wrench::new(lowest, highest, graduation, accuracy).map_err(|why| match why {
                TorqueError::LowestMark => facts::LOWEST_MARK.not_together(why),
                TorqueError::HighestMark | TorqueError::MarkOrder => {
                    facts::HIGHEST_MARK.not_together(why)
                }
                TorqueError::Accuracy => facts::ACCURACY.not_together(why),
                _ => facts::GRADUATION.not_together(why),
            })
        },
    );
    let asked = [
        facts::WRENCH_LENGTH.id(),
        facts::LOWEST_MARK.id(),
        facts::HIGHEST_MARK.id(),
        facts::GRADUATION.id(),
    ];
    Held {
        key,
        name: named.unwrap_or_else(|| words::wrench(place + 1)),
        wrench,
        length: facts::WRENCH_LENGTH.maybe(from),
        marked_in,
        blank: asked.iter().all(|it| from.entry(*it).is_blank()),
    }
}

/// All wrenches of a garage; one of which nothing is known where there is none.
pub fn drawer(garage: &Garage) -> Vec<Held> {
    let nothing = [Entries::new()];
    let all = if garage.wrenches.is_empty() { &nothing[..] } else { &garage.wrenches };
    all.iter().enumerate().map(|(place, it)| held(it, place)).collect()
}

/// One wrench of the drawer: its scale in words at its head, its name beside it.
pub fn wrench(from: &dyn Facts, place: usize, set: UnitSet) -> Panel {
    let held = held(from, place);
    let head = match &held.wrench {
        Ok(_) if held.blank => Shown::words(labels::SCALE, notes::NOTHING_KNOWN),
        Ok(it) => Shown::words(labels::SCALE, scale(it, held.marked_in, set)),
        Err(lacks) => Shown::lacking(labels::SCALE, lacks.clone()),
    };
    Panel {
        note: held.name,
        blanks: vec![
            facts::WRENCH_NAME.id(),
            facts::LOWEST_MARK.id(),
            facts::HIGHEST_MARK.id(),
            facts::GRADUATION.id(),
            facts::WRENCH_LENGTH.id(),
            facts::ACCURACY.id(),
        ],
        ..Panel::of(head)
    }
}

/// "5 to 60 N·m, marks of 1, ±4 %".
fn scale(wrench: &Wrench, marked_in: Option<&'static Unit>, set: UnitSet) -> String {
    let unit = marked_in.or_else(|| Measure::Torque.usual(set));
    let [lowest, highest] = wrench.marks().map(|it| it.map(|it| show::setting(it, unit, true)));
    let mut words = match (lowest, highest) {
        (Some(lowest), Some(highest)) => vec![notes::from_to(&lowest, &highest)],
        (None, Some(highest)) => vec![notes::up_to(&highest)],
        (Some(lowest), None) => vec![notes::from_on(&lowest)],
        (None, None) => Vec::new(),
    };
    words.extend(wrench.graduation().map(|it| notes::marks_of(&show::setting(it, unit, true))));
    let accuracy = show::rounded(Measure::Share, wrench.accuracy().0, set);
    words.push(notes::plus_minus(&accuracy));
    joined(&words, ", ")
}
