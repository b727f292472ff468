//! Words that stand on paper alone.

/// The button.
pub const PRINT: &str = "Print";
/// Before the day.
pub const PRINTED: &str = "Printed ";
/// Over the days between the sides.
pub const IN_BETWEEN: &str = "In between";
/// A column.
pub const FASTENER: &str = "Fastener";
/// A column.
pub const MANUAL: &str = "Manual’s figure";
/// A column.
pub const NOTES: &str = "With, and in what order";
/// Over the documents that the figures come from.
pub const SOURCES: &str = "Sources";
/// Under the code.
pub const SCAN: &str =
    "This bike with its figures, as a link for a phone’s camera. Nothing is sent anywhere.";
/// In place of the code.
pub const NO_CODE: &str = "This bike’s link is too long for a code: save the backup file instead.";
/// At the torques' step.
pub const IN_THE_LIST: &str = "see the list of fasteners";

/// At the torques' step.
pub fn fasteners(count: usize) -> String {
    match count {
        0 => IN_THE_LIST.to_owned(),
        1 => format!("1 fastener: {IN_THE_LIST}"),
        _ => format!("{count} fasteners: {IN_THE_LIST}"),
    }
}
