//! The season's days to act, for a calendar.

use super::battery::course;
use super::season::season_of;
use crate::calendar::Event;
use crate::entry::{day_written, replaced};
use crate::facts::{self, Facts};
use crate::words::dates as words;
use chrono::{Months, NaiveDate};

/// The days of the season, in no order; none without a park date.
pub fn dates(from: &dyn Facts) -> Vec<Event> {
    let bike = facts::BIKE_NAME.known(from);
    // One season's days never take the place of another's.
    let season = super::step::mark(from).or(facts::PARK_DATE.known(from)).unwrap_or_default();
    let season = replaced(&day_written(season), "-", "");
    let event = |(key, day, what): (String, NaiveDate, &str)| {
        let title = bike.as_ref().map_or_else(|| what.to_owned(), |it| words::of_bike(it, what));
        Event { key: format!("{season}-{key}"), day, title, says: String::new(), called_off: false }
    };
    days(from).into_iter().map(event).collect()
}

/// The same days, each with its key within the season and what is done on it.
pub(super) fn days(from: &dyn Facts) -> Vec<(String, NaiveDate, &'static str)> {
    let Ok(season) = season_of(from) else { return Vec::new() };
    let mut days = Vec::new();
    let mut add = |key: &str, day: NaiveDate, what| days.push((key.to_owned(), day, what));
    add("park", season.park(), words::PARK);
    for month in 1.. {
        let day = season.park().checked_add_months(Months::new(month));
        let Some(day) = day.filter(|it| *it < season.end()) else { break };
        add(&format!("month-{month}"), day, words::MONTHLY);
    }
    if let Ok(course) = course(from) {
        if let Some(day) = course.look {
            add("look", day, words::LOOK);
        }
        for (at, day) in course.recharges.iter().enumerate() {
            add(&format!("charge-{}", at + 1), *day, words::CHARGE);
        }
        if let Some(day) = course.charge_by {
            add("charge-by", day, words::CHARGE_BY);
        }
        if let Some(day) = course.fuel_old {
            add("fuel", day, words::FUEL);
        }
    }
    if let Some(day) = facts::PAPERS_DUE.known(from) {
        add("papers", day, words::PAPERS);
    }
    if let Some(ride) = season.ride() {
        if let Some(day) = ride.checked_sub_days(super::step::WAKES_BEFORE) {
            add("wake", day.max(season.park()), words::WAKE);
        }
        add("ride", ride, words::RIDE);
    }
    days
}
