//! Days in words. chrono's own formatting costs the page 13 KB.

use crate::words::{MONTHS, WEEKDAYS};
use chrono::{Datelike, NaiveDate};

/// "Nov".
fn month(day: NaiveDate) -> &'static str {
    crate::entry::text::cut(MONTHS[day.month0() as usize], 3).0
}

/// "Sat, Nov 14".
pub fn short(day: NaiveDate) -> String {
    let weekday = WEEKDAYS[day.weekday().num_days_from_monday() as usize];
    format!("{weekday}, {} {}", month(day), day.day())
}

/// "Sat, Nov 14 2026".
pub fn long(day: NaiveDate) -> String {
    format!("{} {}", short(day), day.year())
}

/// "Nov 14 2026": as a person types it.
pub fn plain(day: NaiveDate) -> String {
    format!("{} {} {}", month(day), day.day(), day.year())
}
