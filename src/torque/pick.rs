//! Which wrench serves a figure best, and what its nearest usable mark costs.

use super::{Caution, Figure, OffsetAdapter, SLACK, TorqueError, Verdict, Wrench, wrench::gain};
use crate::working::Quantity;
use uom::si::f64::Torque;

/// How one wrench serves a figure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    /// What to set.
    pub set: Torque,
    /// What the fastener gets from a wrench that clicks exactly there.
    pub gets: Torque,
    /// How that lies to the manual's range, accuracy and all; `None` where the manual gives no range.
    pub verdict: Option<Verdict>,
    /// What there is to mind.
    pub caution: Option<Caution>,
    /// The mark is farther from the figure than the wrench's accuracy explains, though there is no range to leave.
    pub far: bool,
    /// The exact setting lies beyond the scale; the end of it only just gets into the manual's range.
    short: bool,
    off_middle: f64,
}

impl Fit {
    /// Sets `wrench`, with its adapter, for `figure`.
    ///
    /// # Errors
    /// [`TorqueError::BelowMarks`] and [`TorqueError::AboveMarks`] where it cannot be set so.
    pub fn of(
        figure: &Figure,
        wrench: &Wrench,
        adapter: Option<&OffsetAdapter>,
    ) -> Result<Self, TorqueError> {
        let set = wrench.set_to(adapter, figure)?;
        let gets = set * gain(adapter);
        let accuracy = wrench.accuracy_at(set).0.base();
        let verdict = figure.compared([gets * (1.0 - accuracy), gets * (1.0 + accuracy)]);
        let off = (gets.base() - figure.aim().base()).abs();
        Ok(Self {
            set,
            gets,
            verdict,
            caution: wrench.caution(set),
            short: wrench.off_scale(figure.aim() / gain(adapter)).is_some(),
            far: verdict.is_none() && off > accuracy * figure.aim().base() * (1.0 + SLACK) + SLACK,
            off_middle: wrench.off_middle(set),
        })
    }

    /// Whether it serves better than another: where what is aimed for is on its scale, or all that it may give is inside of the
    /// range; where its accuracy is asked of it, then by what the fastener gets, then nearer to the middle of its scale.
    fn better_than(&self, other: &Self) -> bool {
        let rank = |it: &Self| {
            let inside = match it.verdict {
                Some(Verdict::Inside) => 2,
                None if !it.far => 2,
                Some(Verdict::Partly) => 1,
                _ => 0,
            };
            (!it.short || inside == 2, it.caution.is_none(), inside)
        };
        let [own, others] = [rank(self), rank(other)];
        own > others || (own == others && self.off_middle < other.off_middle - SLACK)
    }
}

/// The place of the wrench that serves best; the first of equals. `None` where none can be set so.
pub fn best<'a>(fits: impl IntoIterator<Item = Option<&'a Fit>>) -> Option<usize> {
    let mut best: Option<(usize, &Fit)> = None;
    for (at, fit) in fits.into_iter().enumerate() {
        let Some(fit) = fit else { continue };
        if best.is_none_or(|(_, it)| fit.better_than(it)) {
            best = Some((at, fit));
        }
    }
    best.map(|(at, _)| at)
}
