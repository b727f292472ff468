//! Oil change: what the engine needs, what to pour first, what to buy.
//!
//! Oil on the glass or stick decides, never the sum: pour short of it, run, let it rest, look, top up.

mod consumption;
mod grade;
mod level;
mod other;
mod sizes;

pub use consumption::{OIL_USE, consumption};
pub use grade::{CRANKS_TO, Grade, Jaso, PUMPS_TO, TooCold};
pub use level::{
    ADD_BY_LEVEL, COLD_SHRINKING, HEAT_GROWTH, TAKE_OUT, USED_OIL, by_level, heat_growth,
    over_full, still_warm, under_low, used_oil,
};
pub use other::{OTHER_FILL, OtherOil, other_fill};
pub use sizes::{BOTTLES, LEFT_OF_SIZES, MOST_SIZES, Purchase, purchases};

use crate::source;
use crate::{
    units::Measure,
    working::{Answer, Law, Quantity, term},
};
use std::fmt;
use uom::si::{
    f64::{Ratio, Volume},
    ratio::percent,
};

/// What the engine takes.
pub const OIL_NEEDED: Law = Law {
    formula: "V = F",
    gives: Measure::Oil,
    source: source::MANUAL_FILL,
    holds: "a rough figure until the level is read: some old oil always stays behind",
};

/// What a new filter takes.
pub const FILTER_ALLOWANCE: Law = Law {
    formula: "a = F − D",
    gives: Measure::Oil,
    source: source::FILTER_ALLOWANCE,
    holds: "both fills are from the same manual",
};

/// First pour, to the middle between the marks.
pub const FIRST_POUR: Law = Law {
    formula: "P = F − B / 2",
    gives: Measure::Oil,
    source: source::MARKS,
    holds: "the level is then read as the manual says and topped up; never start with it under the lower mark",
};

/// First pour, where the volume between the marks is not known.
pub const FIRST_POUR_SHARE: Law = Law {
    formula: "P = s · F",
    gives: Measure::Oil,
    source: source::PRACTICE,
    holds: "then fill to the level on the glass or stick before starting",
};

/// The rest of the fill, after the run.
pub const TOP_UP: Law = Law {
    formula: "U = F − P",
    gives: Measure::Oil,
    source: source::ARITHMETIC,
    holds: "an upper limit: the level on the glass or stick decides, and too much oil does harm",
};

/// Which oil change it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Job {
    /// The old filter stays.
    DrainOnly,
    /// With a new filter.
    WithFilter,
    /// The engine was apart and is dry.
    AfterOverhaul,
}

/// The manual's fills, as far as they are known.
///
/// Invariant: those known are above zero, and grow from drain only over with filter to after overhaul.
///
/// ```
/// use torpor::oil::{Fills, Job};
/// use uom::si::{f64::Volume, volume::milliliter};
/// # fn main() -> Result<(), torpor::oil::OilError> {
/// let ml = Volume::new::<milliliter>;
/// let fills = Fills::new(Some(ml(2900.0)), Some(ml(3100.0)), None)?;
/// assert!(fills.needed(Job::WithFilter).is_some_and(|it| it.value == ml(3100.0)));
/// assert_eq!(fills.needed(Job::AfterOverhaul), None);
/// # Ok(()) }
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fills {
    drain: Option<Volume>,
    filter: Option<Volume>,
    overhaul: Option<Volume>,
}

impl Fills {
    /// Fill without filter (drain only), with filter, and after overhaul.
    ///
    /// # Errors
    /// [`OilError::Fill`], [`OilError::FilterUnderDrain`], [`OilError::OverhaulUnderFilter`],
    /// [`OilError::OverhaulUnderDrain`].
    pub fn new(
        drain: Option<Volume>,
        filter: Option<Volume>,
        overhaul: Option<Volume>,
    ) -> Result<Self, OilError> {
        if [drain, filter, overhaul].into_iter().flatten().any(|it| !positive(it)) {
            return Err(OilError::Fill);
        }
        let over = |less: Option<Volume>, more: Option<Volume>| {
            less.zip(more).is_some_and(|(less, more)| less > more)
        };
        if over(drain, filter) {
            return Err(OilError::FilterUnderDrain);
        }
        if over(filter, overhaul) {
            return Err(OilError::OverhaulUnderFilter);
        }
        if over(drain, overhaul) {
            return Err(OilError::OverhaulUnderDrain);
        }
        Ok(Self { drain, filter, overhaul })
    }

    /// Oil needed for `job`; `None` where that fill is not known. Another one never stands in for it.
    pub fn needed(&self, job: Job) -> Option<Answer<Volume>> {
        let (fill, name) = match job {
            Job::DrainOnly => (self.drain?, WITHOUT),
            Job::WithFilter => (self.filter?, WITH),
            Job::AfterOverhaul => (self.overhaul?, "fill after overhaul"),
        };
        Some(Answer::exact(fill, &OIL_NEEDED, vec![term("F", name, Measure::Oil, fill)]))
    }

    /// Filter allowance; `None` where one of the two fills is not known.
    pub fn allowance(&self) -> Option<Answer<Volume>> {
        let (drain, filter) = self.drain.zip(self.filter)?;
        let terms =
            vec![term("F", WITH, Measure::Oil, filter), term("D", WITHOUT, Measure::Oil, drain)];
        Some(Answer::exact(filter - drain, &FILTER_ALLOWANCE, terms))
    }
}

const WITH: &str = "fill with filter";
const WITHOUT: &str = "fill without filter";
const NEEDED: &str = "oil needed";

/// What to pour first of `fill`: to the middle between the marks where the volume `between` them is known, else 85 %
/// (common practice, no source).
///
/// # Errors
/// [`OilError::Needed`], [`OilError::Between`], [`OilError::BetweenOverFill`].
pub fn first_pour(fill: Volume, between: Option<Volume>) -> Result<Answer<Volume>, OilError> {
    let Some(between) = between else {
        return first_pour_share(fill, Ratio::new::<percent>(85.0));
    };
    if !positive(fill) {
        return Err(OilError::Needed);
    }
    if !positive(between) {
        return Err(OilError::Between);
    }
    if between > fill {
        return Err(OilError::BetweenOverFill);
    }
    let terms = vec![
        term("F", NEEDED, Measure::Oil, fill),
        term("B", "between the marks", Measure::Oil, between),
    ];
    Ok(Answer::exact(fill - between / 2.0, &FIRST_POUR, terms))
}

/// What to pour first as a plain `share` of `fill`.
///
/// # Errors
/// [`OilError::Needed`], [`OilError::Share`].
pub fn first_pour_share(fill: Volume, share: Ratio) -> Result<Answer<Volume>, OilError> {
    if !positive(fill) {
        return Err(OilError::Needed);
    }
    if !positive(share) || share.base() > 1.0 {
        return Err(OilError::Share);
    }
    let terms = vec![
        term("s", "share poured first", Measure::Share, share),
        term("F", NEEDED, Measure::Oil, fill),
    ];
    Ok(Answer::exact(fill * share, &FIRST_POUR_SHARE, terms))
}

/// The rest of `fill` when `poured` is in.
///
/// # Errors
/// [`OilError::Needed`], [`OilError::Poured`], [`OilError::PouredOverFill`].
pub fn top_up(fill: Volume, poured: Volume) -> Result<Answer<Volume>, OilError> {
    if !positive(fill) {
        return Err(OilError::Needed);
    }
    if !(positive(poured) || poured.base() == 0.0) {
        return Err(OilError::Poured);
    }
    if poured > fill {
        return Err(OilError::PouredOverFill);
    }
    let terms =
        vec![term("F", NEEDED, Measure::Oil, fill), term("P", "oil poured", Measure::Oil, poured)];
    Ok(Answer::exact(fill - poured, &TOP_UP, terms))
}

/// A number above zero that is neither infinite nor undefined.
fn positive(quantity: impl Quantity) -> bool {
    quantity.base().is_finite() && quantity.base() > 0.0
}

/// Why a volume of oil is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OilError {
    /// A fill of zero or less.
    Fill,
    /// A negative filter allowance.
    FilterUnderDrain,
    /// Fill after overhaul under the fill with filter.
    OverhaulUnderFilter,
    /// Fill after overhaul under the fill without filter.
    OverhaulUnderDrain,
    /// Oil needed of zero or less.
    Needed,
    /// Between the marks of zero or less.
    Between,
    /// More between the marks than the engine takes.
    BetweenOverFill,
    /// A share of zero or less, or over all of it.
    Share,
    /// Oil poured under zero.
    Poured,
    /// More poured than the engine takes.
    PouredOverFill,
    /// Bottle of less than a milliliter.
    Bottle,
    /// Oil on the shelf under zero.
    Shelf,
    /// More sizes than are compared.
    Sizes,
    /// A level that no stick or glass shows.
    Level,
    /// Temperature or density that the table has no factor for.
    OutsideTable,
    /// No SAE grade of an engine oil.
    Grade,
}

impl fmt::Display for OilError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Fill => "each fill has to be more than 0",
            Self::FilterUnderDrain => "fill with filter has to be at least the fill without filter",
            Self::OverhaulUnderFilter => {
                "fill after overhaul has to be at least the fill with filter"
            }
            Self::OverhaulUnderDrain => {
                "fill after overhaul has to be at least the fill without filter"
            }
            Self::Needed => "oil needed has to be more than 0",
            Self::Between => "volume between the marks has to be more than 0",
            Self::BetweenOverFill => "volume between the marks has to be at most the oil needed",
            Self::Share => "share poured first has to be more than 0 % and at most 100 %",
            Self::Poured => "oil poured has to be 0 or more",
            Self::PouredOverFill => {
                "oil poured has to be at most the oil needed: draw off what is over"
            }
            Self::Bottle => "bottle size has to be at least 1 mL",
            Self::Shelf => "oil on the shelf has to be 0 or more",
            Self::Sizes => "at most eight sizes of bottles are compared",
            Self::Level => "level has to be between −200 % and 300 %",
            Self::OutsideTable => {
                "the table ends there: −18 to 149 °C (0 to 300 °F), 800 to 1164 kg/m³"
            }
            Self::Grade => {
                "not an engine oil’s SAE grade: write for example 10W-40, 0W-8 or SAE 30 (without W: 20 to 60)"
            }
        })
    }
}

impl std::error::Error for OilError {}
