//! From the manual's torque to the mark on the wrench.
//!
//! A [`Figure`] is what the manual asks for. An [`OffsetAdapter`] changes what reaches the fastener. A [`Wrench`] can
//! only be set to its own marks and is only as good as its accuracy: [`Wrench::mark`] picks the mark, and
//! [`Wrench::fastener_gets`] says what that mark delivers. Where the manual has no figure, [`Joint`] estimates one from
//! [`Thread`], [`PropertyClass`] and [`FrictionClass`].
//!
//! ```
//! use torpor::torque::{Figure, OffsetAdapter, Verdict, Wrench};
//! use uom::si::{angle::degree, f64::*, length::millimeter, ratio::percent, torque::newton_meter};
//! # fn main() -> Result<(), torpor::torque::TorqueError> {
//! let nm = Torque::new::<newton_meter>;
//! let axle_nut = Figure::between(nm(22.0), nm(26.0), Some(nm(25.0)))?;
//! let [grip, reach] = [285.0, 40.0].map(Length::new::<millimeter>);
//! let crowfoot = OffsetAdapter::new(grip, reach, Angle::new::<degree>(0.0))?;
//! let wrench = Wrench::new(Some(nm(10.0)), Some(nm(60.0)), Some(nm(1.0)), Some(Ratio::new::<percent>(4.0)))?;
//! let set = wrench.mark(Some(&crowfoot), &axle_nut)?.value;
//! assert_eq!(set, nm(21.0));
//! let gets = wrench.fastener_gets(set, Some(&crowfoot));
//! assert_eq!(axle_nut.verdict(&gets), Some(Verdict::Inside));
//! # Ok(()) }
//! ```

mod adapter;
mod joint;
mod passes;
pub mod pattern;
mod pick;
mod strength;
mod thread;
mod wrench;

pub(crate) use adapter::cosine;
pub use adapter::{
    ADAPTER_SETTING, ANGLE_OFF, AT_FASTENER, GRIP_OFF, OffsetAdapter, PULL_OFF, direct, unusual,
};
pub use joint::{
    AT_YIELD, EQUIVALENT_K, ESTIMATE, Joint, JointError, PRELOAD, PRELOAD_RISE, PROOF_LOAD,
    SCATTER, SHARE_OF_PROOF, TORQUE_FOR, at_yield, equivalent_k, over_any_bolt, preload_from,
    preload_rise, proof_load, scatter, torque_for,
};
pub use passes::{Pass, TURNED, passes, turned};
pub use pick::{Fit, best};
pub use strength::{FrictionClass, PropertyClass};
pub use thread::{Thread, ThreadError};
pub use wrench::{
    AccuracyFrom, Caution, FASTENER_GETS, FASTENER_GETS_DIRECT, MARK, NEAREST_MARK, Wrench,
};

use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, Quantity, term};
use std::fmt;
use uom::si::f64::{Ratio, Torque};

/// What the wrench has to show where the manual's figure is without the drag of a self-locking nut.
pub const DRAG_ON_TOP: Law = Law {
    formula: "T = Tm + Tp",
    gives: Measure::Torque,
    source: source::PREVAILING,
    holds: "only where the manual says that its figure is without drag; drag measured on this nut, turning freely before it seats",
};

/// What a setting misses the figure by.
pub const ROUNDING: Law = Law {
    formula: "e = (Tf − T) / T",
    gives: Measure::Share,
    source: source::ROUNDING,
    holds: "always; the wrench’s own accuracy comes on top",
};

/// Slack for comparing sums that were rounded on the way: far under what a wrench resolves.
const SLACK: f64 = 1e-9;

/// A number above zero that is neither infinite nor undefined.
fn positive(quantity: impl Quantity) -> bool {
    quantity.base().is_finite() && quantity.base() > 0.0
}

/// What the manual asks for at the fastener: one torque, or a lowest and highest with a torque to aim for.
///
/// Invariant: everything in it is above zero; the aim lies in the range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    aim: Torque,
    range: Option<[Torque; 2]>,
}

impl Figure {
    /// A single torque.
    ///
    /// # Errors
    /// [`TorqueError::NotPositive`] where it is not above zero.
    pub fn exactly(torque: Torque) -> Result<Self, TorqueError> {
        positive(torque)
            .then_some(Self { aim: torque, range: None })
            .ok_or(TorqueError::NotPositive)
    }

    /// A range; the aim is its middle where the manual prints none.
    ///
    /// # Errors
    /// [`TorqueError::NotPositive`], [`TorqueError::RangeOrder`], [`TorqueError::AimOutside`].
    pub fn between(
        lowest: Torque,
        highest: Torque,
        aim: Option<Torque>,
    ) -> Result<Self, TorqueError> {
        if !positive(lowest) || !positive(highest) {
            return Err(TorqueError::NotPositive);
        }
        if lowest >= highest {
            return Err(TorqueError::RangeOrder);
        }
        let aim = aim.unwrap_or((lowest + highest) / 2.0);
        (lowest <= aim && aim <= highest)
            .then_some(Self { aim, range: Some([lowest, highest]) })
            .ok_or(TorqueError::AimOutside)
    }

    /// The torque to aim for.
    pub fn aim(&self) -> Torque {
        self.aim
    }

    /// Lowest and highest, where the manual gives them.
    pub fn range(&self) -> Option<[Torque; 2]> {
        self.range
    }

    /// The figure with the drag of a self-locking nut on top: what the wrench has to show where the manual's figure is
    /// without it. The drag is taken as it is; one of zero or less changes nothing.
    ///
    /// Source: see [`DRAG_ON_TOP`].
    pub fn with_drag(&self, drag: Torque) -> Self {
        let drag = Torque::of_base(if positive(drag) { drag.base() } else { 0.0 });
        Self { aim: self.aim + drag, range: self.range.map(|it| it.map(|end| end + drag)) }
    }

    /// The aim with its record, drag on top.
    pub fn drag_on_top(&self, drag: Torque) -> Answer<Torque> {
        let terms = vec![
            term("Tm", "manual’s figure, without drag", Measure::Torque, self.aim),
            term("Tp", "prevailing torque", Measure::Torque, drag),
        ];
        Answer::exact(self.with_drag(drag).aim, &DRAG_ON_TOP, terms)
    }

    /// How far what the fastener gets is over the aim (under zero: under it), as a share of the aim.
    pub fn missed_by(&self, gets: Torque) -> Answer<Ratio> {
        let terms = vec![
            term("Tf", "fastener gets at that setting", Measure::Torque, gets),
            term("T", "torque at the fastener", Measure::Torque, self.aim),
        ];
        let off = gets.base() / self.aim.base() - 1.0;
        Answer::exact(Ratio::of_base(off), &ROUNDING, terms)
    }

    /// Whether what the fastener gets, with all that it may be off by, stays between lowest and highest.
    /// `None` where the manual gives no range.
    pub fn verdict(&self, gets: &Answer<Torque>) -> Option<Verdict> {
        self.compared(gets.bounds.unwrap_or([gets.value; 2]))
    }

    /// Whether what the fastener got may be less, and may be more, than the manual says: than its range where there is
    /// one, else than its figure, of which the wrench's own accuracy is no miss.
    pub fn missed(&self, got: &Answer<Torque>) -> [bool; 2] {
        let [least, most] = got.bounds.unwrap_or([got.value; 2]).map(Quantity::base);
        let slack = self.aim.base() * SLACK;
        match self.range {
            Some([lowest, highest]) => {
                [least < lowest.base() - slack, most > highest.base() + slack]
            }
            None => [most < self.aim.base() - slack, least > self.aim.base() + slack],
        }
    }

    /// The same for the least and the most that it gets.
    fn compared(&self, gets: [Torque; 2]) -> Option<Verdict> {
        let [lowest, highest] = self.range?.map(Quantity::base);
        let [least, most] = gets.map(Quantity::base);
        let slack = highest * SLACK;
        Some(if least >= lowest - slack && most <= highest + slack {
            Verdict::Inside
        } else if most < lowest || least > highest {
            Verdict::Outside
        } else {
            Verdict::Partly
        })
    }
}

/// How what the fastener gets lies to the manual's lowest and highest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Inside, however the wrench errs within its accuracy.
    Inside,
    /// Inside or not, depending on how the wrench errs.
    Partly,
    /// Outside, however the wrench errs within its accuracy.
    Outside,
}

/// Why a torque, an adapter or a wrench is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TorqueError {
    /// A torque at the fastener of zero or less.
    NotPositive,
    /// Lowest torque not under the highest.
    RangeOrder,
    /// Aim outside lowest and highest.
    AimOutside,
    /// Wrench length of zero or less.
    WrenchLength,
    /// Adapter length under zero.
    AdapterLength,
    /// Adapter angle that is no number.
    AdapterAngle,
    /// The fastener would be behind the hand.
    BehindHand,
    /// Lowest mark under zero.
    LowestMark,
    /// Highest mark of zero or less.
    HighestMark,
    /// Highest mark not above the lowest.
    MarkOrder,
    /// Graduation of zero or less.
    Graduation,
    /// No multiple of the graduation from the lowest to the highest mark.
    NoMark,
    /// Accuracy of zero or less, or beyond all use.
    Accuracy,
    /// A mark is asked of a wrench whose graduation is not known.
    GraduationUnknown,
    /// The setting is under the lowest mark.
    BelowMarks,
    /// The setting is over the highest mark.
    AboveMarks,
    /// A stage over the figure.
    StageOver,
    /// A stage not over the one before it.
    StageOrder,
    /// A turn before the figure is reached.
    StageTurn,
}

impl fmt::Display for TorqueError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NotPositive => "torque at the fastener has to be more than 0",
            Self::RangeOrder => "lowest torque has to be less than the highest torque",
            Self::AimOutside => {
                "torque to aim for has to be between the lowest and the highest torque"
            }
            Self::WrenchLength => "wrench length, hand to square drive, has to be more than 0",
            Self::AdapterLength => "adapter length, drive to fastener, has to be 0 or more",
            Self::AdapterAngle => {
                "adapter angle has to be a number of degrees, 0° in line with the handle"
            }
            Self::BehindHand => {
                "an adapter pointing back has to end between the square drive and the hand"
            }
            Self::LowestMark => "lowest mark has to be 0 or more",
            Self::HighestMark => "highest mark has to be more than 0",
            Self::MarkOrder => "highest mark has to be more than the lowest mark",
            Self::Graduation => "graduation has to be more than 0",
            Self::NoMark => "graduation has to put a mark between the lowest and the highest mark",
            Self::Accuracy => "accuracy has to be more than 0 % and at most 20 %",
            Self::GraduationUnknown => "choosing a mark needs the graduation of the wrench",
            Self::BelowMarks => {
                "setting has to be at or above the lowest mark: take a smaller wrench"
            }
            Self::AboveMarks => {
                "setting has to be at or below the highest mark: take a larger wrench"
            }
            Self::StageOver => "a stage has to be at or under the torque at the fastener",
            Self::StageOrder => "each stage has to be over the one before it",
            Self::StageTurn => {
                "a turn has to come behind the torque at the fastener: write that as the stage before it"
            }
        })
    }
}

impl std::error::Error for TorqueError {}
