//! What is due: the manual's intervals against the last time that the logbook has it.

use super::{Logbook, Row};
use crate::facts::{self, Facts, Interval};
use crate::working::Quantity;
use chrono::{Months, NaiveDate};
use uom::si::f64::Length;

/// When something is due.
#[derive(Debug, Clone, PartialEq)]
pub struct Due {
    /// What, as the interval names it.
    pub line: String,
    /// The last time, where the book has it.
    pub last: Option<NaiveDate>,
    /// What is left until the day and until the reading, whichever the interval has and can be told.
    pub left: Left,
    /// The interval has a distance that cannot be told: a reading is lacking.
    pub lacks_reading: bool,
    /// The odometer reads less now than it did then.
    pub reads_less: bool,
}

/// What is left; less than nothing is past.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Left {
    /// The day, and how many days until it.
    pub days: Option<(NaiveDate, i64)>,
    /// The distance still to be ridden.
    pub distance: Option<Length>,
}

impl Due {
    /// Whether it is past by either.
    pub fn is_past(&self) -> bool {
        self.left.days.is_some_and(|it| it.1 < 0)
            || self.left.distance.is_some_and(|it| it.base() < 0.0)
    }
}

/// Each interval of the bike against its last entry, in the order in which they are typed.
///
/// By time: the same day so many months on, or the month's last day where it is shorter. By distance: the reading then and
/// the interval, less the reading now.
pub fn due(book: &Logbook, today: NaiveDate, from: &dyn Facts) -> Vec<Due> {
    let odometer = facts::ODOMETER.known(from);
    let each = |it: Interval| {
        // The latest day counts; of one day the entry written last.
        // A day that is still to come is a slip.
        let named = |row: &&Row| {
            row.day.is_some_and(|day| day <= today)
                && row.line().trim().eq_ignore_ascii_case(&it.line)
        };
        let last = book.rows().iter().filter(named).max_by_key(|it| it.day);
        let then = last.and_then(|row| facts::LOG_ODOMETER.known(row));
        let day = last.and_then(|row| row.day?.checked_add_months(Months::new(it.months?)));
        let days = day.map(|day| (day, (day - today).num_days()));
        let reads_less = then.zip(odometer).is_some_and(|(then, now)| now < then);
        let distance = match (it.distance, then, odometer) {
            (Some(every), Some(then), Some(now)) if !reads_less => {
                Some(Length::of_base(then.base() + every.base() - now.base()))
            }
            _ => None,
        };
        let lacks_reading = it.distance.is_some() && distance.is_none() && !reads_less;
        let left = Left { days, distance };
        Due { line: it.line, last: last.and_then(|it| it.day), left, lacks_reading, reads_less }
    };
    facts::INTERVALS.known(from).unwrap_or_default().into_iter().map(each).collect()
}
