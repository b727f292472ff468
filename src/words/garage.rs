//! Words of the list of bikes.

/// Behind the bike on the sheet.
pub const OPEN_NOW: &str = "on the sheet now";
/// Makes another of its facts and fasteners.
pub const DUPLICATE: &str = "Duplicate";
/// Takes it out of the list.
pub const ARCHIVE: &str = "Archive";
/// The fold with those that were.
pub const ARCHIVED: &str = "Archived";
/// Puts it in the list again.
pub const BRING_BACK: &str = "Bring back";

/// Name of a copy.
pub fn copy_of(name: &str) -> String {
    format!("{name}, copy")
}

/// Behind a bike that was removed.
pub fn removed_until(day: &str) -> String {
    format!(" removed; it can be brought back until {day} ")
}

/// After a bike was put in the archive.
pub fn archived(name: &str) -> String {
    format!("{name} is archived.")
}
