//! Under which names records are kept in the store, behind the page's prefix (`record::PREFIX`). They stay for ever, as a record
//! is found by its name alone. A bike's own are a sort and the bike's key, `bike.a1`, and where there are several a number, `log.a1.0`;
//! those of a bike that was removed have a day before that (`removed.rs`).

use crate::entry::text::joined;

/// The key of the bike that was open last.
pub const OPEN: &str = "open";
/// What belongs to no bike.
pub const GARAGE: &str = "garage";
/// The day of the last backup file.
pub const BACKUP: &str = "backup";
/// Written and removed, to know whether anything can be.
pub const PROBE: &str = "probe";
/// Records that could not be read are set aside under this; when, and the name that they had.
pub const DAMAGED: &str = "damaged";

/// The sort of a bike's facts.
pub const BIKE: &str = "bike";
/// That of the season on its sheet.
pub const SEASON: &str = "season";
/// That of seasons that are over, of which there are several.
pub const PAST: &str = "past";
/// That of the logbook's leaves, of which there are several.
pub const LOG: &str = "log";
/// That of what its last calendar file had.
pub const CALENDAR: &str = "calendar";
/// That of the place on the bench, one for each side.
pub const BENCH: &str = "bench";

/// The sorts of a bike's own records.
const OF_A_BIKE: [&str; 6] = [BIKE, SEASON, CALENDAR, LOG, PAST, BENCH];

/// The name of a bike's record of a sort.
///
/// ```
/// use torpor::storage::keys;
/// assert_eq!(keys::of(keys::SEASON, "a1"), "season.a1");
/// ```
pub fn of(sort: &str, bike: &str) -> String {
    joined(&[sort, bike], ".")
}

/// What the names of a bike's records of a sort begin with, of which there are several.
///
/// ```
/// use torpor::storage::keys;
/// assert_eq!(keys::several(keys::LOG, "a1"), "log.a1.");
/// ```
pub fn several(sort: &str, bike: &str) -> String {
    joined(&[sort, bike, ""], ".")
}

/// Whether a name is that of a record of this bike.
///
/// ```
/// use torpor::storage::keys::is_of;
/// assert!(is_of("bike.a1", "a1") && is_of("log.a1.0", "a1"));
/// assert!(!is_of("bike.a12", "a1") && !is_of("garage", "a1"));
/// ```
pub fn is_of(key: &str, bike: &str) -> bool {
    let own = |sort: &&str| key.strip_prefix(*sort)?.strip_prefix('.')?.strip_prefix(bike);
    OF_A_BIKE.iter().find_map(own).is_some_and(|it| it.is_empty() || it.starts_with('.'))
}

/// The key of the bike whose facts have this name.
///
/// ```
/// use torpor::storage::keys::bike_in;
/// assert_eq!(bike_in("bike.a1"), Some("a1"));
/// assert_eq!(bike_in("season.a1"), None);
/// ```
pub fn bike_in(key: &str) -> Option<&str> {
    key.strip_prefix(BIKE)?.strip_prefix('.')
}
