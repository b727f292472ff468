//! The oils besides the engine's.

use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, term};
use uom::si::f64::Volume;

/// What has an oil of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OtherOil {
    /// Of a shaft drive.
    FinalDrive,
    /// Where it does not share the engine's.
    Gearbox,
    /// A chain case of its own.
    Primary,
    /// Each leg.
    Fork,
    /// Oil that is burnt with the fuel.
    TwoStroke,
    /// There is none of these.
    None,
}

/// The manual's fill.
pub const OTHER_FILL: Law = Law {
    formula: "V = M",
    gives: Measure::Oil,
    source: source::MANUAL,
    holds: "drained as the manual says; the level plug, stick or air gap decides in the end",
};

/// The fill of one of them, as the manual has it.
pub fn other_fill(manual: Volume) -> Answer<Volume> {
    Answer::exact(
        manual,
        &OTHER_FILL,
        vec![term("M", "fill from the manual", Measure::Oil, manual)],
    )
}
