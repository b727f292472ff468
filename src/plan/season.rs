//! The sentence that sets the season.

use crate::facts::{self, Facts, Lacks, Told, both};
use crate::season::{Season, SeasonError};
use crate::show::Shown;
use crate::source;
use crate::units::{Measure, UnitSet};
use crate::words::{labels, season_line};
use crate::working::{Amount, Answer, Law, Term};
use chrono::NaiveDate;

const DAYS_STORED: Law = Law {
    formula: "d = R − P",
    gives: Measure::Number,
    source: source::CALENDAR,
    holds: "counted in nights; where the ride date is not known, twelve months",
};

/// The dates of the season.
pub fn season_of(from: &dyn Facts) -> Told<Season> {
    let (park, ride) = both(facts::PARK_DATE.of(from), facts::RIDE_DATE.maybe(from))?;
    Season::new(park, ride).map_err(|why| match why {
        SeasonError::YearOutOfRange => facts::PARK_DATE.not_together(why),
        SeasonError::RideBeforePark | SeasonError::TooLong => facts::RIDE_DATE.not_together(why),
    })
}

/// The day that ages are counted to: the ride date, or the park date where there is none.
pub fn judged_on(from: &dyn Facts) -> Told<NaiveDate> {
    let (park, ride) = both(facts::PARK_DATE.maybe(from), facts::RIDE_DATE.maybe(from))?;
    ride.or(park).ok_or_else(|| Lacks::missing(facts::RIDE_DATE.id()))
}

/// Days stored.
pub fn season(from: &dyn Facts, set: UnitSet) -> Shown {
    let days = season_of(from).map(|season| {
        let day = |symbol, name, day| Term { symbol, name, amount: Amount::Day(day) };
        let terms = vec![day("R", "ride date", season.end()), day("P", "park date", season.park())];
        Answer::exact(season.days() as f64, &DAYS_STORED, terms)
    });
    Shown::count(labels::DAYS_STORED, days, set)
}

/// The time stored in weeks and in months of the calendar: "19 weeks 1 day · 4 months 14 days".
pub fn stored(season: Season) -> String {
    let days = season.days();
    season_line::stored(
        [days / 7, days % 7],
        [i64::from(season.whole_months()), season.days_over_months()],
    )
}
