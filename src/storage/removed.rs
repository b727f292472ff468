//! Bikes that were removed: their records under keys that say when, for thirty days.

use crate::entry::{self, Entry, day_written};
use chrono::{Days, NaiveDate};

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
