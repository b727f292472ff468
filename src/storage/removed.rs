//! Bikes that were removed: their records under keys that say when, for thirty days.

use crate::entry::{self, Entry, day_written};
use chrono::{Days, NaiveDate};

/// What the keys of a bike's own records start with; the bike's key follows, and where there are several a point and a number.
pub const OF_A_BIKE: [&str; 6] = ["bike.", "season.", "calendar.", "log.", "past.", "bench."];

/// Whether a key is that of a record of this bike.
///
/// ```
/// use torpor::storage::removed::is_of;
/// assert!(is_of("bike.a1", "a1") && is_of("log.a1.0", "a1"));
/// assert!(!is_of("bike.a12", "a1") && !is_of("garage", "a1"));
/// ```
pub fn is_of(key: &str, bike: &str) -> bool {
    let own = OF_A_BIKE.iter().find_map(|start| key.strip_prefix(start)?.strip_prefix(bike));
    own.is_some_and(|it| it.is_empty() || it.starts_with('.'))
}

/// What the keys of removed records start with.
pub const START: &str = "removed.";

/// So long one can be brought back.
const KEPT: Days = Days::new(30);

/// What comes before the key of a record that is removed on a day.
///
/// ```
/// use chrono::NaiveDate;
/// use torpor::storage::removed;
/// let today = NaiveDate::from_ymd_opt(2026, 11, 30).unwrap();
/// assert_eq!(removed::on(today) + "bike.a1", "removed.2026-11-30.bike.a1");
/// ```
pub fn on(day: NaiveDate) -> String {
    format!("{START}{}.", day_written(day))
}

/// The day a record was removed, and the key that it had.
pub fn read(key: &str) -> Option<(NaiveDate, &str)> {
    let (day, own) = key.strip_prefix(START)?.split_once('.')?;
    Some((entry::day(&Entry::new(day, entry::form::NONE)).ok()??, own))
}

/// The last day that it can be brought back.
pub fn until(removed: NaiveDate) -> NaiveDate {
    removed.checked_add_days(KEPT).unwrap_or(removed)
}
