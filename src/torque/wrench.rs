//! A click wrench: its marks, its accuracy, and the mark to set it to.

use super::{Figure, OffsetAdapter, SLACK, TorqueError, positive};
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Quantity, Term, term},
};
use std::fmt;
use uom::si::{
    f64::{Ratio, Torque},
    ratio::percent,
    torque::newton_meter,
};

/// The mark that keeps the fastener best between the manual's lowest and highest.
pub const MARK: Law = Law {
    formula: "Ts = n · G",
    gives: Measure::Torque,
    source: source::BEST_MARK,
    holds: "marks go up from the lowest by the graduation; from 0 where the lowest is not given",
};

/// The mark nearest to the exact setting, where the manual gives no range to stay inside.
pub const NEAREST_MARK: Law = Law {
    formula: "Ts = n · G",
    gives: Measure::Torque,
    source: source::NEAREST_MARK,
    holds: "marks go up from the lowest by the graduation; from 0 where the lowest is not given",
};

/// What the fastener gets through an adapter from a wrench of known accuracy.
pub const FASTENER_GETS: Law = Law {
    formula: "T = Ts · (1 ± p) · (L + A · cos θ) / L",
    gives: Measure::Torque,
    source: source::ISO_6789,
    holds: "hand at the middle of the grip, one slow pull square to the handle until it clicks",
};

/// What the fastener gets without an adapter from a wrench of known accuracy.
pub const FASTENER_GETS_DIRECT: Law = Law {
    formula: "T = Ts · (1 ± p)",
    gives: Measure::Torque,
    source: source::ISO_6789,
    holds: "hand at the middle of the grip, one slow pull square to the handle until it clicks",
};

/// A torque wrench as printed on it. What is not known stays unknown: without marks, nothing is refused for them.
///
/// Invariant: marks in order and at least one mark between them; graduation and accuracy above zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wrench {
    lowest: Option<Torque>,
    highest: Option<Torque>,
    graduation: Option<Torque>,
    accuracy: Ratio,
    from: AccuracyFrom,
}

/// Where a wrench's accuracy is known from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AccuracyFrom {
    /// Given by the owner, from the wrench or its paper.
    Stated,
    /// ISO 6789 for a highest mark over 10 N·m: 4 %.
    IsoOver10,
    /// ISO 6789 for a highest mark of 10 N·m or less: 6 %.
    IsoUpTo10,
    /// ISO 6789, 4 %, taking the highest mark to be over 10 N·m because it is not known.
    IsoHighestUnknown,
}

/// Something to mind about a setting that is not refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Caution {
    /// Under 20 % of the highest mark. Source: US Army TM 1-1500-204-23-9 Table 8-1, no accuracy is required there;
    /// ISO 6789:2003 checks from 20 % up.
    UnderFifth,
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::UnderFifth => {
                "under 20 % of the highest mark, where a wrench need not keep its accuracy"
            }
        })
    }
}

impl Wrench {
    /// `lowest` and `highest` mark, `graduation` from mark to mark, `accuracy` as ± share of the reading; what is not
    /// known is `None`, and accuracy is then that of ISO 6789.
    ///
    /// # Errors
    /// [`TorqueError::LowestMark`], [`TorqueError::HighestMark`], [`TorqueError::MarkOrder`],
    /// [`TorqueError::Graduation`], [`TorqueError::NoMark`], [`TorqueError::Accuracy`].
    pub fn new(
        lowest: Option<Torque>,
        highest: Option<Torque>,
        graduation: Option<Torque>,
        accuracy: Option<Ratio>,
    ) -> Result<Self, TorqueError> {
        if lowest.is_some_and(|it| !(positive(it) || it.base() == 0.0)) {
            return Err(TorqueError::LowestMark);
        }
        if highest.is_some_and(|it| !positive(it)) {
            return Err(TorqueError::HighestMark);
        }
        if lowest.zip(highest).is_some_and(|(lowest, highest)| lowest >= highest) {
            return Err(TorqueError::MarkOrder);
        }
        if graduation.is_some_and(|it| !positive(it)) {
            return Err(TorqueError::Graduation);
        }
        let most = Ratio::new::<percent>(20.0);
        if accuracy.is_some_and(|it| !positive(it) || it.base() > most.base() * (1.0 + SLACK)) {
            return Err(TorqueError::Accuracy);
        }
        let (accuracy, from) = match (accuracy, highest) {
            (Some(stated), _) => (stated, AccuracyFrom::Stated),
            (None, None) => (Ratio::new::<percent>(4.0), AccuracyFrom::IsoHighestUnknown),
            (None, Some(it)) if it.get::<newton_meter>() <= 10.0 + SLACK => {
                (Ratio::new::<percent>(6.0), AccuracyFrom::IsoUpTo10)
            }
            (None, Some(_)) => (Ratio::new::<percent>(4.0), AccuracyFrom::IsoOver10),
        };
        let wrench = Self { lowest, highest, graduation, accuracy, from };
        let marked = graduation.is_none_or(|it| {
            let [first, last] = wrench.counts(it);
            // A scale from mark to mark has at least two.
            let next = if lowest.is_some() { 1.0 } else { 0.0 };
            first + next <= last + SLACK
        });
        marked.then_some(wrench).ok_or(TorqueError::NoMark)
    }

    /// ± share of the reading, and where it is known from.
    pub fn accuracy(&self) -> (Ratio, AccuracyFrom) {
        (self.accuracy, self.from)
    }

    /// The same at a setting: while the highest mark is not known, a setting of 10 N·m or less is most likely that of a
    /// small wrench.
    pub fn accuracy_at(&self, set: Torque) -> (Ratio, AccuracyFrom) {
        let small = set.get::<newton_meter>() <= 10.0 + SLACK;
        if self.from == AccuracyFrom::IsoHighestUnknown && small {
            return (Ratio::new::<percent>(6.0), self.from);
        }
        self.accuracy()
    }

    /// What there is to mind about setting it to `set`.
    pub fn caution(&self, set: Torque) -> Option<Caution> {
        let fifth = self.highest?.base() / 5.0;
        (set.base() < fifth * (1.0 - SLACK)).then_some(Caution::UnderFifth)
    }

    /// What the fastener gets when the wrench is set to `set`; bounds are for its accuracy.
    pub fn fastener_gets(&self, set: Torque, adapter: Option<&OffsetAdapter>) -> Answer<Torque> {
        let value = set * gain(adapter);
        let accuracy = self.accuracy_at(set).0;
        let spread = value * accuracy.base();
        let mut terms = vec![
            term("Ts", "setting", Measure::Torque, set),
            term("p", "accuracy of the wrench", Measure::Share, accuracy),
        ];
        terms.extend(adapter.into_iter().flat_map(OffsetAdapter::terms));
        let law = if adapter.is_some() { &FASTENER_GETS } else { &FASTENER_GETS_DIRECT };
        Answer::within(value, [value - spread, value + spread], law, terms)
    }

    /// Why this wrench cannot be set to `exact`, where it is off its scale.
    pub fn off_scale(&self, exact: Torque) -> Option<TorqueError> {
        let under = |it: Torque| exact.base() < it.base() * (1.0 - SLACK);
        let over = |it: Torque| exact.base() > it.base() * (1.0 + SLACK);
        match (self.lowest.is_some_and(under), self.highest.is_some_and(over)) {
            (true, _) => Some(TorqueError::BelowMarks),
            (_, true) => Some(TorqueError::AboveMarks),
            _ => None,
        }
    }

    /// Lowest and highest mark, as far as they are known.
    pub fn marks(&self) -> [Option<Torque>; 2] {
        [self.lowest, self.highest]
    }

    /// Distance from one mark to the next, where it is known.
    pub fn graduation(&self) -> Option<Torque> {
        self.graduation
    }

    /// The mark to set for `figure`. With a range: the mark that keeps what the fastener may get, accuracy and all,
    /// best inside it; among equals the nearest to the aim. Without: the mark nearest to the exact setting.
    ///
    /// # Errors
    /// [`TorqueError::GraduationUnknown`]; [`TorqueError::BelowMarks`] and [`TorqueError::AboveMarks`] where the exact
    /// setting is off the scale and no mark on it puts the fastener inside the range.
    pub fn mark(
        &self,
        adapter: Option<&OffsetAdapter>,
        figure: &Figure,
    ) -> Result<Answer<Torque>, TorqueError> {
        let graduation = self.graduation.ok_or(TorqueError::GraduationUnknown)?;
        let count = self.count(graduation, adapter, figure)?;
        let terms = vec![
            Term { symbol: "n", name: "graduations up to the mark", amount: Amount::Number(count) },
            term("G", "graduation", Measure::Torque, graduation),
        ];
        let law = if figure.range().is_some() { &MARK } else { &NEAREST_MARK };
        Ok(Answer::exact(graduation * count, law, terms))
    }

    /// The mark nearest to the exact setting where [`Wrench::mark`] is another one, and the end of the range that the fastener
    /// could pass with it, accuracy and all; true where that is the highest.
    pub fn passed_over(
        &self,
        adapter: Option<&OffsetAdapter>,
        figure: &Figure,
    ) -> Option<(Torque, Torque, bool)> {
        let (graduation, [lowest, highest]) = (self.graduation?, figure.range()?);
        let one = graduation.base() * gain(adapter);
        let nearest = self.nearest(figure.aim().base() / one, self.counts(graduation));
        let mark = graduation * nearest;
        let set = self.set_to(adapter, figure).ok()?;
        if (mark - set).base().abs() <= set.base() * SLACK {
            return None;
        }
        let gets = self.fastener_gets(mark, adapter).bounds?;
        let over = gets[1].base() > highest.base() * (1.0 + SLACK);
        let under = gets[0].base() < lowest.base() * (1.0 - SLACK);
        (over || under).then_some((mark, if over { highest } else { lowest }, over))
    }

    /// What to set for `figure`: the mark of [`Wrench::mark`], or the exact setting where the graduation is not known.
    ///
    /// # Errors
    /// [`TorqueError::BelowMarks`] and [`TorqueError::AboveMarks`], as there.
    pub fn set_to(
        &self,
        adapter: Option<&OffsetAdapter>,
        figure: &Figure,
    ) -> Result<Torque, TorqueError> {
        match self.graduation {
            Some(graduation) => Ok(graduation * self.count(graduation, adapter, figure)?),
            None => {
                let exact = figure.aim() / gain(adapter);
                self.off_scale(exact).map_or(Ok(exact), Err)
            }
        }
    }

    /// The mark for `figure`, counted in graduations.
    fn count(
        &self,
        graduation: Torque,
        adapter: Option<&OffsetAdapter>,
        figure: &Figure,
    ) -> Result<f64, TorqueError> {
        let [first, last] = self.counts(graduation);
        let one = graduation.base() * gain(adapter);
        let aim = figure.aim().base();
        let count = match figure.range() {
            None => self.nearest(aim / one, [first, last]),
            Some(range) => self.inside(one, aim, range.map(Quantity::base), [first, last]),
        };
        let exact = Torque::of_base(aim / gain(adapter));
        let usable = figure.range().is_some_and(|[lowest, highest]| {
            let gets = count * one;
            lowest.base() <= gets * (1.0 + SLACK) && gets <= highest.base() * (1.0 + SLACK)
        });
        self.off_scale(exact).filter(|_| !usable).map_or(Ok(count), Err)
    }

    /// How far a setting is from the middle of the scale: 0 in the middle, 1 at its ends and where they are not known.
    /// Source: US Army TB 43-0218, a wrench serves best between a quarter and three quarters of its span.
    pub fn off_middle(&self, set: Torque) -> f64 {
        let Some(highest) = self.highest.map(Quantity::base) else { return 1.0 };
        let lowest = self.lowest.map_or(0.0, Quantity::base);
        let half = (highest - lowest) / 2.0;
        ((set.base() - lowest - half) / half).abs()
    }

    /// First and last mark, counted in graduations. Marks go up from the lowest: 7, 9, 11 where that is 7 and they are 2
    /// apart. A wrench cannot be set to 0.
    fn counts(&self, graduation: Torque) -> [f64; 2] {
        let count = |mark: Torque| mark.base() / graduation.base();
        let lowest = self.lowest.map_or(0.0, count);
        let first = if lowest > SLACK { lowest } else { 1.0 };
        let last = self.highest.map_or(f64::INFINITY, |it| mark_under(count(it) + SLACK, first));
        [first, last]
    }

    /// The mark nearest to `exact`; halfway the lower one, which cannot overtighten.
    fn nearest(&self, exact: f64, [first, last]: [f64; 2]) -> f64 {
        mark_over(exact - 0.5 - SLACK, first).max(first).min(last)
    }

    /// The mark that keeps the fastener best inside `range`; `one` is what it gets for each graduation.
    fn inside(&self, one: f64, aim: f64, range: [f64; 2], [first, last]: [f64; 2]) -> f64 {
        let [lowest, highest] = range;
        let accuracy = self.accuracy_at(Torque::of_base(aim / one)).0.base();
        // How much of what can be inside is inside. Where the wrench may be off by more than the range is wide, the
        // whole range inside is the best there is; a plain share would then drift to low marks, where ± is smaller.
        let score = |count: f64| {
            let [least, most] = [1.0 - accuracy, 1.0 + accuracy].map(|it| count * one * it);
            let overlap = (most.min(highest) - least.max(lowest)).max(0.0);
            overlap / (most - least).min(highest - lowest)
        };
        // The score is full between these two settings and falls off on both sides, so the best mark is beside one of
        // them or beside the aim.
        let full = [lowest / (1.0 - accuracy), highest / (1.0 + accuracy)];
        let near = [aim, full[0], full[1]].map(|it| it / one);
        let beside = near
            .into_iter()
            .flat_map(|it| [mark_under(it + SLACK, first), mark_over(it - SLACK, first)]);
        let off_aim = |count: f64| (count * one - aim).abs();
        beside
            .map(|it| it.max(first).min(last))
            .reduce(|best, it| {
                let gained = score(it) - score(best);
                let nearer = off_aim(it) < off_aim(best) - aim * SLACK;
                if gained > SLACK || (gained > -SLACK && nearer) { it } else { best }
            })
            .unwrap_or(first)
    }
}

/// The last mark that is not over `count`, the first of them at `first`; all in graduations.
fn mark_under(count: f64, first: f64) -> f64 {
    (count - first).floor() + first
}

/// The first mark that is not under `count`.
fn mark_over(count: f64, first: f64) -> f64 {
    (count - first).ceil() + first
}

/// What the fastener gets for each unit of the setting.
pub(super) fn gain(adapter: Option<&OffsetAdapter>) -> f64 {
    adapter.map_or(1.0, OffsetAdapter::gain)
}
