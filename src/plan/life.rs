//! A season's life: planned, parked from the first tick, out after the first ride, then put away with its ticks.

use super::{OwnSteps, Side, Step};
use crate::entry::{self, Entry};
use crate::facts::{self, Facts};
use crate::show;
use crate::words::logbook as words;
use chrono::{Days, NaiveDate};

/// How far a season is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Life {
    /// Nothing of the lay-up is done.
    Planned,
    /// From its first tick.
    Parked,
    /// Once it is ridden again.
    Out,
}

impl Life {
    /// How far this one is.
    pub fn of(from: &dyn Facts) -> Self {
        let over = |it: &Step| it.is_done(from) || it.left_out(from).is_some();
        let ridden = Side::WakeUp.step(FIRST_RIDE).is_some_and(over);
        let own = OwnSteps::of(Side::LayUp, from);
        let begun = Side::LayUp.steps().iter().any(|it| it.is_done(from))
            || own.titles.iter().any(|it| own.is_done(it));
        match (ridden, begun) {
            (true, _) => Self::Out,
            (_, true) => Self::Parked,
            _ => Self::Planned,
        }
    }
}

/// After so long nobody is at the wake-up any more. Common practice, no source.
const LONG: Days = Days::new(90);

/// Whether the ride date is so long past that a season is over though its first ride was never ticked.
///
/// ```
/// use torpor::{entry::Entry, facts, garage::Entries, plan};
/// use chrono::NaiveDate;
/// let season = Entries::from([(facts::RIDE_DATE.id(), Entry::new("Mar 28 2027", 0))]);
/// // 3 days of March, 30 of April, 31 of May: June 26 is the ninetieth.
/// let june = |it| NaiveDate::from_ymd_opt(2027, 6, it).unwrap();
/// assert!(!plan::is_long_over(&season, june(26)) && plan::is_long_over(&season, june(27)));
/// ```
pub fn is_long_over(from: &dyn Facts, today: NaiveDate) -> bool {
    let ride = facts::RIDE_DATE.known(from);
    ride.and_then(|it| it.checked_add_days(LONG)).is_some_and(|it| it < today)
}

/// Whether no backup of a parked bike was made since its park date; while that is still to come, since the first tick.
///
/// ```
/// use torpor::{entry::Entry, facts, garage::Entries, plan};
/// use chrono::{Days, NaiveDate};
/// let day = |it| NaiveDate::from_ymd_opt(2026, 11, it).unwrap();
/// let season = Entries::from([(facts::PARK_DATE.id(), Entry::new("Nov 14 2026", 0))]);
/// assert!(plan::backup_due(&season, Some(day(13)), day(20)));
/// assert!(!plan::backup_due(&season, Some(day(14)), day(20)));
/// ```
pub fn backup_due(from: &dyn Facts, last: Option<NaiveDate>, today: NaiveDate) -> bool {
    let day = [facts::PARK_DATE.known(from), facts::SEASON_MARK.known(from)];
    let since = day.into_iter().flatten().find(|it| *it <= today);
    last.is_none_or(|last| since.is_some_and(|it| last < it))
}

/// The step after which it is out.
const FIRST_RIDE: &str = "first-ride";

/// A season that is over, in a line: its days, and how many steps of either side were done.
pub fn past(season: &dyn Facts) -> String {
    let day = |entry: Entry| {
        let read = entry::day(&entry).ok().flatten();
        read.map_or_else(|| words::NO_DAY.to_owned(), show::long_day)
    };
    let [park, ride] =
        [facts::PARK_DATE.id(), facts::RIDE_DATE.id()].map(|it| day(season.entry(it)));
    let done = Side::ALL.map(|side| side.steps().iter().filter(|it| it.is_done(season)).count());
    words::past_season(&park, &ride, done)
}
