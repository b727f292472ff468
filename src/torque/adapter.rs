//! A torque wrench that reaches the fastener through an offset adapter (crowfoot).

use super::{TorqueError, positive};
use crate::source;
use crate::{
    units::Measure,
    working::{Answer, Law, Quantity, Term, term},
};
use uom::si::f64::{Angle, Length, Ratio, Torque};

const PULLED_RIGHT: &str = "hand at the middle of the grip and nowhere else, pulling square to the handle; adapter in the plane of the handle; \
     no universal joint, no pipe over the handle; a plain extension on the drive’s axis changes nothing";

/// What to set so that the fastener gets a torque.
pub const ADAPTER_SETTING: Law = Law {
    formula: "Ts = T · L / (L + A · cos θ)",
    gives: Measure::Torque,
    source: source::LEVER,
    holds: PULLED_RIGHT,
};

/// What to set where no adapter has a lever: the torque itself.
pub const DIRECT_SETTING: Law = Law {
    formula: "Ts = T",
    gives: Measure::Torque,
    source: source::ONE_AXIS,
    holds: "socket straight on the square drive, or an adapter square to the handle; hand at mid-grip, pulling square to it",
};

/// What the fastener gets from a setting.
pub const AT_FASTENER: Law = Law {
    formula: "T = Ts · (L + A · cos θ) / L",
    gives: Measure::Torque,
    source: source::LEVER,
    holds: PULLED_RIGHT,
};

/// What a hand that is not where the wrench expects it changes.
pub const GRIP_OFF: Law = Law {
    formula: "e = L · (L + d + A · cos θ) / ((L + d) · (L + A · cos θ)) − 1",
    gives: Measure::Share,
    source: source::LEVER,
    holds: PULLED_RIGHT,
};

/// What an adapter that stands at another angle than thought changes.
pub const ANGLE_OFF: Law = Law {
    formula: "e = (L + A · cos (θ + δ)) / (L + A · cos θ) − 1",
    gives: Measure::Share,
    source: source::LEVER,
    holds: PULLED_RIGHT,
};

/// What a pull that is not square to the handle changes.
pub const PULL_OFF: Law = Law {
    formula: "e = A · sin θ · tan δ / (L + A · cos θ)",
    gives: Measure::Share,
    source: source::MOMENTS,
    holds: "hand at the middle of the grip and nowhere else; adapter in the plane of the handle",
};

/// Wrench and adapter as put together.
///
/// Invariant: the wrench has a length, and the fastener is on the drive's side of the hand, so there is a lever.
///
/// ```
/// use torpor::torque::OffsetAdapter;
/// use uom::si::{angle::degree, f64::*, length::inch, torque::pound_force_foot};
/// # fn main() -> Result<(), torpor::torque::TorqueError> {
/// let [grip, reach] = [12.0, 4.0].map(Length::new::<inch>);
/// let in_line = OffsetAdapter::new(grip, reach, Angle::new::<degree>(0.0))?;
/// let set = in_line.setting(Torque::new::<pound_force_foot>(40.0)).value;
/// // US Army TM 9-2350-261-20-1, p. 2-29: set 30.
/// assert!((set.get::<pound_force_foot>() - 30.0).abs() < 1e-9);
/// # Ok(()) }
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OffsetAdapter {
    wrench: Length,
    adapter: Length,
    angle: Angle,
    /// Hand to fastener, along the handle.
    lever: Length,
}

/// Setting without an adapter, or with one square to the handle: the torque itself.
pub fn direct(wanted: Torque) -> Answer<Torque> {
    Answer::exact(
        wanted,
        &DIRECT_SETTING,
        vec![term("T", "torque at the fastener", Measure::Torque, wanted)],
    )
}

/// Whether lengths are most likely swapped or typed in another unit: no crowfoot is shorter than a centimeter, no torque
/// wrench than ten, and none is as long as half its wrench. Common practice, no source.
pub fn unusual(wrench: Length, adapter: Length) -> bool {
    let (wrench, adapter) = (wrench.base(), adapter.base());
    adapter > wrench / 2.0 || wrench < 0.1 || adapter < 0.01
}

/// Cosine of an angle in radians, to the last digit but one of a double. The library's own, right for angles of any
/// number of turns, costs the page 3 kB.
pub(crate) fn cosine(angle: f64) -> f64 {
    use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI, TAU};
    let within = (angle - (angle / TAU).round() * TAU).abs();
    let (sign, acute) = if within > FRAC_PI_2 { (-1.0, PI - within) } else { (1.0, within) };
    // Series of cosine and sine, 1 − x²/2! + x⁴/4! … and x − x³/3! + x⁵/5! …, beyond the last digit under 45°.
    let series = |x: f64, first: f64, from: f64| {
        let term = |(sum, term): (f64, f64), n: u32| {
            let n = f64::from(n) * 2.0 + from;
            let term = -term * x * x / (n * (n + 1.0));
            (sum + term, term)
        };
        (0..10).fold((first, first), term).0
    };
    sign * if acute > FRAC_PI_4 {
        series(FRAC_PI_2 - acute, FRAC_PI_2 - acute, 2.0)
    } else {
        series(acute, 1.0, 1.0)
    }
}

impl OffsetAdapter {
    /// `wrench`: middle of the grip to the axis of the square drive. `adapter`: that axis to the fastener's, 0 for
    /// none. `angle`: of the adapter from the line of the handle, 0° straight out, 180° pointing back at the hand.
    ///
    /// # Errors
    /// [`TorqueError::WrenchLength`], [`TorqueError::AdapterLength`], [`TorqueError::AdapterAngle`], and
    /// [`TorqueError::BehindHand`] where no lever is left.
    pub fn new(wrench: Length, adapter: Length, angle: Angle) -> Result<Self, TorqueError> {
        if !positive(wrench) {
            return Err(TorqueError::WrenchLength);
        }
        if !(positive(adapter) || adapter.base() == 0.0) {
            return Err(TorqueError::AdapterLength);
        }
        if !angle.base().is_finite() {
            return Err(TorqueError::AdapterAngle);
        }
        let lever = wrench + adapter * cosine(angle.base());
        let assembled = Self { wrench, adapter, angle, lever };
        positive(lever).then_some(assembled).ok_or(TorqueError::BehindHand)
    }

    /// What the fastener gets for each unit of the setting: over 1 in line, under 1 pointing back.
    pub fn gain(&self) -> f64 {
        self.lever.base() / self.wrench.base()
    }

    /// The exact setting that puts `wanted` on the fastener.
    pub fn setting(&self, wanted: Torque) -> Answer<Torque> {
        let mut terms = vec![term("T", "torque at the fastener", Measure::Torque, wanted)];
        terms.extend(self.terms());
        Answer::exact(wanted / self.gain(), &ADAPTER_SETTING, terms)
    }

    /// What the fastener gets from a wrench that clicks at exactly `set`.
    pub fn at_fastener(&self, set: Torque) -> Answer<Torque> {
        let mut terms = vec![term("Ts", "setting", Measure::Torque, set)];
        terms.extend(self.terms());
        Answer::exact(set * self.gain(), &AT_FASTENER, terms)
    }

    /// Relative change of what the fastener gets where the hand holds `by` farther from the drive than measured
    /// (under zero: nearer). `None` where that leaves no lever.
    pub fn grip_off(&self, by: Length) -> Option<Answer<Ratio>> {
        let [moved, lever] = [self.wrench + by, self.lever + by];
        (positive(moved) && positive(lever)).then(|| {
            let gain = lever.base() / moved.base();
            let off = term("d", "hand farther out", Measure::Span, by);
            self.change(gain / self.gain() - 1.0, &GRIP_OFF, off)
        })
    }

    /// Relative change of what the fastener gets where the adapter stands at its angle and `by` more.
    pub fn angle_off(&self, by: Angle) -> Answer<Ratio> {
        let lever = self.wrench + self.adapter * cosine((self.angle + by).base());
        let off = term("δ", "adapter turned farther", Measure::Angle, by);
        self.change(lever.base() / self.lever.base() - 1.0, &ANGLE_OFF, off)
    }

    /// Relative change of what the fastener gets where the pull is `by` away from square to the handle, counted
    /// toward the side that lengthens the lever. `None` from 90° on, where nothing turns.
    pub fn pull_off(&self, by: Angle) -> Option<Answer<Ratio>> {
        (by.cos().base() > super::SLACK).then(|| {
            let change = self.adapter.base() * self.angle.sin().base() * by.tan().base();
            let off = term("δ", "pull off square", Measure::Angle, by);
            self.change(change / self.lever.base(), &PULL_OFF, off)
        })
    }

    fn change(&self, change: f64, law: &'static Law, off: Term) -> Answer<Ratio> {
        let mut terms = self.terms().to_vec();
        terms.push(off);
        Answer::exact(Ratio::of_base(change), law, terms)
    }

    /// Its own terms of every formula here.
    pub(super) fn terms(&self) -> [Term; 3] {
        [
            term("L", "wrench length, hand to square drive", Measure::Span, self.wrench),
            term("A", "adapter length, drive to fastener", Measure::Span, self.adapter),
            term("θ", "adapter angle", Measure::Angle, self.angle),
        ]
    }
}

#[cfg(test)]
mod tests {
    /// Source: the standard library's cosine, which is right for any angle.
    #[test]
    fn cosine_is_the_library_s() {
        for tenth in -7_200..=7_200 {
            let angle = f64::from(tenth).to_radians() / 10.0;
            assert!(
                (super::cosine(angle) - angle.cos()).abs() < 1e-14,
                "{tenth} tenths of a degree"
            );
        }
    }
}
