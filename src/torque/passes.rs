//! Passes up to the figure, and a turn instead of a torque.

use super::{Figure, SLACK, TorqueError};
use crate::entry::Stage;
use crate::source;
use crate::units::{Measure, TURN};
use crate::working::{Amount, Answer, Law, Quantity, Term};
use uom::si::f64::{Angle, Ratio, Torque};

/// A turn in degrees.
pub const TURNED: Law = Law {
    formula: "a = n · 360°",
    gives: Measure::Angle,
    source: source::PRINTED_TURN,
    holds: "from where the gasket or the seat touches, new gasket, thread as the part’s maker says",
};

/// One pass as it is done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pass {
    /// Up to a torque.
    Torque {
        /// At the fastener.
        torque: Torque,
        /// Share of the figure.
        share: Ratio,
        /// It is the figure itself, with its range.
        whole: bool,
    },
    /// On by an angle.
    Turn(Angle),
}

/// The passes of `stages` up to `figure`. The figure itself comes last where the stages stop short of it.
///
/// # Errors
/// [`TorqueError::StageOver`] where a stage is over the figure, [`TorqueError::StageOrder`] where one is not over the one
/// before it, [`TorqueError::StageTurn`] where a turn does not come behind the figure.
pub fn passes(figure: &Figure, stages: &[Stage]) -> Result<Vec<Pass>, TorqueError> {
    let aim = figure.aim();
    let mut passes = Vec::new();
    let mut reached = Torque::of_base(0.0);
    let pass = |torque: Torque| Pass::Torque {
        torque,
        share: Ratio::of_base(torque.base() / aim.base()),
        whole: (torque - aim).base().abs() <= aim.base() * SLACK,
    };
    for stage in stages {
        let torque = match stage {
            Stage::Share(share) => Torque::of_base(aim.base() * share.base()),
            Stage::Torque(torque) => *torque,
            Stage::Turn(angle) => {
                if reached < aim * (1.0 - SLACK) {
                    return Err(TorqueError::StageTurn);
                }
                passes.push(Pass::Turn(*angle));
                continue;
            }
        };
        if torque > aim * (1.0 + SLACK) {
            return Err(TorqueError::StageOver);
        }
        if torque <= reached || matches!(passes.last(), Some(Pass::Turn(_))) {
            return Err(TorqueError::StageOrder);
        }
        reached = torque;
        passes.push(pass(torque));
    }
    if reached < aim * (1.0 - SLACK) {
        passes.push(pass(aim));
    }
    Ok(passes)
}

/// A turn as printed on a part, in degrees.
pub fn turned(turn: Angle, bounds: Option<[Angle; 2]>) -> Answer<Angle> {
    let terms = vec![Term {
        symbol: "n",
        name: "turns, as printed",
        amount: Amount::Number(TURN.of_base(turn.base())),
    }];
    match bounds {
        Some(bounds) => Answer::within(turn, bounds, &TURNED, terms),
        None => Answer::exact(turn, &TURNED, terms),
    }
}
