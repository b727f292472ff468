//! The owner's own steps: their titles stay with the bike, their ticks with the season. They wait for nothing; those of the
//! wake-up come before the engine runs.

use super::{Side, is_stale};
use crate::entry::LONGEST;
use crate::entry::text::{joined, replaced};
use crate::facts::{self, Facts, Id};

/// What stands between two titles, so that one letter of it cannot stand in any.
const BETWEEN: &str = "; ";

/// The owner's own steps of a side, in the order they were added. A title is there once.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnSteps {
    side: Side,
    /// Their titles.
    pub titles: Vec<String>,
    done: Vec<String>,
}

/// The facts that hold titles and ticks.
const fn facts_of(side: Side) -> [Id; 2] {
    match side {
        Side::LayUp => [facts::OWN_LAY_UP.id(), facts::OWN_LAY_UP_DONE.id()],
        Side::WakeUp => [facts::OWN_WAKE_UP.id(), facts::OWN_WAKE_UP_DONE.id()],
    }
}

fn read(from: &dyn Facts, id: Id) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for title in from.entry(id).text.split(';').map(str::trim) {
        if !title.is_empty() && !all.iter().any(|it| it == title) {
            all.push(title.to_owned());
        }
    }
    all
}

impl OwnSteps {
    /// Those of a side.
    ///
    /// ```
    /// use torpor::{entry::Entry, facts, garage::Kept, plan::{OwnSteps, Side}};
    /// let mut kept = Kept::default();
    /// kept.put(facts::OWN_LAY_UP.id(), Entry::new("Grease the center stand; Camera off", 0));
    /// assert_eq!(OwnSteps::of(Side::LayUp, &kept).titles, ["Grease the center stand", "Camera off"]);
    /// ```
    pub fn of(side: Side, from: &dyn Facts) -> Self {
        let [titles, mut done] = facts_of(side).map(|it| read(from, it));
        if is_stale(from) {
            done.clear();
        }
        Self { side, titles, done }
    }

    /// Whether one of them is ticked.
    pub fn is_done(&self, title: &str) -> bool {
        self.done.iter().any(|it| it == title)
    }

    /// So many letters are left for another one: all of a side share one entry, which a link has to take.
    pub fn room(&self) -> usize {
        let taken = joined(&self.titles, BETWEEN).chars().count();
        LONGEST.saturating_sub(taken + BETWEEN.len())
    }

    /// Adds one behind the others, as it is typed; false where it says nothing, is there already, or has no room.
    pub fn add(&mut self, typed: &str) -> bool {
        // A semicolon would end it.
        let title = replaced(typed, ";", ",").trim().to_owned();
        let taken = !title.is_empty()
            && !self.titles.contains(&title)
            && title.chars().count() <= self.room();
        if taken {
            self.titles.push(title);
        }
        taken
    }

    /// Ticks one of them, or takes its tick away.
    pub fn turn(&mut self, title: &str) {
        if !self.untick(title) {
            self.done.push(title.to_owned());
        }
    }

    /// Takes a tick away; whether it was there.
    fn untick(&mut self, title: &str) -> bool {
        let before = self.done.len();
        self.done.retain(|it| it != title);
        self.done.len() < before
    }

    /// Takes one out; its place and whether it was ticked.
    pub fn remove(&mut self, title: &str) -> Option<(usize, bool)> {
        let at = self.titles.iter().position(|it| it == title)?;
        self.titles.remove(at);
        Some((at, self.untick(title)))
    }

    /// Puts one back where it was, unless it is there again.
    pub fn put_back(&mut self, title: &str, (at, done): (usize, bool)) {
        if !self.titles.iter().any(|it| it == title) {
            self.titles.insert(at.min(self.titles.len()), title.to_owned());
        }
        if done != self.is_done(title) {
            self.turn(title);
        }
    }

    /// What is to be typed so that they are these, and for which facts.
    pub fn written(&self) -> [(Id, String); 2] {
        let [titles, done] = facts_of(self.side);
        [(titles, joined(&self.titles, BETWEEN)), (done, joined(&self.done, BETWEEN))]
    }
}
