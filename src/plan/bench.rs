//! The bench view's stops: one step of a side after another, of the torques one fastener after another.

use super::{Line, OwnSteps, Side, Step};
use crate::facts::Facts;

/// The owner's own steps in the address.
pub(super) const OWN: &str = "own";

/// What stands alone on the bench view.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stop {
    /// Its side.
    pub side: Side,
    /// Its step's place among those of the side, from 0; behind them the owner's own.
    pub at: usize,
    /// Of the torques the fastener, of the owner's own steps which, counted from 1; else 0.
    pub place: usize,
}

impl Stop {
    /// Its step, unless it is one of the owner's own.
    pub fn step(self) -> Option<&'static Step> {
        self.side.steps().get(self.at)
    }

    /// Its part of the address, without `#`.
    ///
    /// ```
    /// use torpor::plan::{Side, Stop};
    /// assert_eq!(Stop { side: Side::LayUp, at: 10, place: 3 }.address(), "bench/layup/torques/3");
    /// ```
    pub fn address(self) -> String {
        let mut address = format!("bench/{}/", self.side.key());
        address.push_str(self.step().map_or(OWN, |it| it.choice.key));
        if self.place > 0 {
            address.push('/');
            address.push_str(&self.place.to_string());
        }
        address
    }

    fn is_over(self, from: &dyn Facts) -> bool {
        match self.step() {
            Some(step) => step.is_done(from) || step.left_out(from).is_some(),
            None => {
                let own = OwnSteps::of(self.side, from);
                own.titles.get(self.place.saturating_sub(1)).is_none_or(|it| own.is_done(it))
            }
        }
    }
}

/// All stops of a side, in the order of the work: the steps that this bike has, and so many kept fasteners.
pub fn stops(side: Side, from: &dyn Facts, fasteners: usize) -> Vec<Stop> {
    let mut all = Vec::new();
    for (at, step) in side.steps().iter().enumerate() {
        if step.is_asked(from) {
            let last = if step.sum == Some(Line::Torques) { fasteners } else { 0 };
            for place in last.min(1)..=last {
                all.push(Stop { side, at, place });
            }
        }
    }
    for place in 1..=OwnSteps::of(side, from).titles.len() {
        all.push(Stop { side, at: side.steps().len(), place });
    }
    all
}

/// The place among the stops of the one that is wanted; else of the first that is neither done nor left out.
pub fn stop_at(stops: &[Stop], wanted: Option<Stop>, from: &dyn Facts) -> usize {
    let mut open = None;
    for (at, stop) in stops.iter().enumerate() {
        if Some(*stop) == wanted {
            return at;
        }
        if open.is_none() && !stop.is_over(from) {
            open = Some(at);
        }
    }
    open.unwrap_or_default()
}
