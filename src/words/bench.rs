//! Words of the bench view.

/// Opens it.
pub const BENCH: &str = "Bench view";
/// Leaves it.
pub const BACK: &str = "Back to the sheet";
/// To the step before.
pub const PREVIOUS: &str = "Previous";
/// To the next step.
pub const NEXT: &str = "Next";
/// The tick.
pub const DONE: &str = "Done";
/// Between a step and its fastener.
pub const COLON: &str = ": ";

/// A number of so many, behind what is counted.
pub fn number(what: &str, number: usize, of: usize) -> String {
    format!("{what} {number} of {of}")
}
