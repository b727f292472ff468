//! The bench view's stops: one step of a side after another, of the torques one fastener after another.

use super::{Line, Side, Step};
use crate::facts::Facts;

/// What stands alone on the bench view.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stop {
    /// Its side.
    pub side: Side,
    /// Its step's place among those of the side, from 0.
    pub at: usize,
    /// Of the torques the fastener, counted from 1; else 0.
    pub place: usize,
}

impl Stop {
    /// Its step.
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
        address.push_str(self.step().map_or("", |it| it.choice.key));
        if self.place > 0 {
            address.push('/');
            address.push_str(&self.place.to_string());
        }
        address
    }

    fn is_over(self, from: &dyn Facts) -> bool {
        self.step().is_none_or(|it| it.is_done(from) || it.left_out(from).is_some())
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
    all
}

/// The place among the stops of the one that is wanted, or of its step; else of the first that is neither done nor left out.
pub fn stop_at(stops: &[Stop], wanted: Option<Stop>, from: &dyn Facts) -> usize {
    let first = |so: &dyn Fn(Stop) -> bool| stops.iter().position(|it| so(*it));
    first(&|it| Some(it) == wanted)
        .or_else(|| first(&|it| wanted.is_some_and(|wanted| it.at == wanted.at)))
        .or_else(|| first(&|it| !it.is_over(from)))
        .unwrap_or_default()
}
