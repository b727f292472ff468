//! Dates of a season and the temperature of the place where the bike stands.
//!
//! A [`Season`] runs from the day the bike is parked to the day it is ridden again. [`Temperatures`] says how warm the
//! place is on any day of the year. Neither asks for today: what depends on today takes it as an argument.

pub mod age;
pub mod places;

pub use places::{PLACES, Place};

use chrono::{Datelike, Days, Months, NaiveDate};
use std::fmt;
use uom::si::{
    f64::{TemperatureInterval, ThermodynamicTemperature},
    temperature_interval::kelvin,
    thermodynamic_temperature::degree_celsius,
};

/// Years that a park date may lie in. Anything else is a slip of the finger, such as 0206 for 2026.
const YEARS: std::ops::RangeInclusive<i32> = 1900..=2199;
/// Longest season, months. The laws of storage are not known to hold for longer.
const LONGEST: Months = Months::new(36);
/// How far the forecast runs where the ride date is not known, months.
const FORECAST: Months = Months::new(12);

/// From parking to riding. Invariant: the end is not before the park date and at most three years after it.
///
/// ```
/// use chrono::NaiveDate;
/// use torpor::season::Season;
/// let day = |year, month, day| NaiveDate::from_ymd_opt(year, month, day).ok_or("no such day");
/// let season = Season::new(day(2025, 11, 1)?, Some(day(2026, 3, 15)?))?;
/// assert_eq!((season.days(), season.whole_months()), (134, 4));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Season {
    park: NaiveDate,
    ride: Option<NaiveDate>,
    end: NaiveDate,
}

/// Why a season was refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SeasonError {
    /// The park date is in a year that no bike of this page is parked in.
    YearOutOfRange,
    /// The ride date is before the park date.
    RideBeforePark,
    /// The ride date is more than three years after the park date.
    TooLong,
}

impl fmt::Display for SeasonError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::YearOutOfRange => "park date has to be in the years 1900 to 2199",
            Self::RideBeforePark => "ride date has to be the park date or a later day",
            Self::TooLong => "ride date has to be within three years of the park date",
        })
    }
}

impl std::error::Error for SeasonError {}

impl Season {
    /// A season from `park` to `ride`; where the ride date is not known yet, twelve months are forecast.
    ///
    /// # Errors
    /// A ride date before the park date or more than three years after it; a park date outside 1900 to 2199.
    pub fn new(park: NaiveDate, ride: Option<NaiveDate>) -> Result<Self, SeasonError> {
        if !YEARS.contains(&park.year()) {
            return Err(SeasonError::YearOutOfRange);
        }
        if ride.is_some_and(|it| it < park) {
            return Err(SeasonError::RideBeforePark);
        }
        // Cannot overflow within YEARS; if it did, no ride date could be allowed.
        let latest = park.checked_add_months(LONGEST).unwrap_or(park);
        let end = ride.or(park.checked_add_months(FORECAST)).unwrap_or(park);
        (end <= latest).then_some(Self { park, ride, end }).ok_or(SeasonError::TooLong)
    }

    /// The day it is parked.
    pub fn park(&self) -> NaiveDate {
        self.park
    }

    /// The day it is ridden again, where that is known.
    pub fn ride(&self) -> Option<NaiveDate> {
        self.ride
    }

    /// The ride date, or the last day of the twelve months that are forecast.
    pub fn end(&self) -> NaiveDate {
        self.end
    }

    /// Days stored: nights between the park date and the end.
    pub fn days(&self) -> i64 {
        (self.end - self.park).num_days()
    }

    /// Weeks stored, with the part of a week that is left over.
    pub fn weeks(&self) -> f64 {
        self.days() as f64 / 7.0
    }

    /// Whole calendar months stored. A month from January 31 ends on the last day of February.
    pub fn whole_months(&self) -> u32 {
        let [from, to] = [self.park, self.end].map(|it| it.year() * 12 + it.month0() as i32);
        let between = (to - from).max(0) as u32;
        let reached = self.park.checked_add_months(Months::new(between));
        if reached.is_some_and(|it| it <= self.end) { between } else { between.saturating_sub(1) }
    }

    /// Months stored: whole calendar months, and the days left over as a share of the month they fall in.
    pub fn months(&self) -> f64 {
        let whole = self.whole_months();
        let after = |months| self.park.checked_add_months(Months::new(months));
        match (after(whole), after(whole + 1)) {
            (Some(from), Some(to)) if to > from => {
                let [left, month] = [self.end - from, to - from].map(|it| it.num_days() as f64);
                f64::from(whole) + left / month
            }
            _ => f64::from(whole),
        }
    }

    /// Days left over behind the whole months.
    pub fn days_over_months(&self) -> i64 {
        let whole = self.park.checked_add_months(Months::new(self.whole_months()));
        whole.map_or(0, |it| (self.end - it).num_days())
    }

    /// The day so many days after the park date.
    pub fn day(&self, index: usize) -> NaiveDate {
        self.park.checked_add_days(Days::new(index as u64)).unwrap_or(self.end)
    }

    /// Every night stored, by the day it begins on: the park date first, the end left out.
    pub fn nights(&self) -> impl Iterator<Item = NaiveDate> + use<> {
        self.park.iter_days().take(self.days().max(0) as usize)
    }
}

/// How warm the place is where the bike, or its battery, stands.
///
/// ```
/// use chrono::NaiveDate;
/// use torpor::season::Temperatures;
/// use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};
/// let heated = Temperatures::constant(ThermodynamicTemperature::new::<degree_celsius>(15.0))?;
/// let day = NaiveDate::from_ymd_opt(2026, 1, 15).ok_or("no such day")?;
/// assert!((heated.on(day).get::<degree_celsius>() - 15.0).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Temperatures {
    /// Means, °C: of the day where constant, else of the twelve months.
    course: Course,
    /// Half of the difference between day and night, K.
    swing: f64,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Course {
    Constant(f64),
    Monthly([f64; 12]),
}

/// A temperature that no place on earth has over a month, or a swing that no day has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TemperatureError {
    /// A mean outside −60 to 60 °C.
    OutOfRange,
    /// Half the difference between day and night outside 0 to 30 K.
    SwingOutOfRange,
}

impl fmt::Display for TemperatureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::OutOfRange => "temperature has to be between −60 and 60 °C (−76 and 140 °F)",
            Self::SwingOutOfRange => {
                "half the difference between day and night has to be between 0 and 30 °C (0 and 54 °F)"
            }
        })
    }
}

impl std::error::Error for TemperatureError {}

fn sensible(mean: ThermodynamicTemperature) -> Result<f64, TemperatureError> {
    let celsius = mean.get::<degree_celsius>();
    // A not-a-number is in no range, so it is refused too.
    (-60.0..=60.0).contains(&celsius).then_some(celsius).ok_or(TemperatureError::OutOfRange)
}

impl Temperatures {
    /// The same temperature all year: a heated place.
    ///
    /// # Errors
    /// Outside −60 to 60 °C.
    pub fn constant(mean: ThermodynamicTemperature) -> Result<Self, TemperatureError> {
        Ok(Self { course: Course::Constant(sensible(mean)?), swing: 0.0 })
    }

    /// Means of the twelve months, January first, on either side of the equator. Between the 15th of one month and the
    /// 15th of the next the temperature follows a straight line.
    ///
    /// # Errors
    /// A mean outside −60 to 60 °C.
    pub fn monthly(means: [ThermodynamicTemperature; 12]) -> Result<Self, TemperatureError> {
        let mut celsius = [0.0; 12];
        for (slot, mean) in celsius.iter_mut().zip(means) {
            *slot = sensible(mean)?;
        }
        Ok(Self { course: Course::Monthly(celsius), swing: 0.0 })
    }

    /// The months of a known place, outdoors.
    pub fn of(place: &Place) -> Self {
        Self { course: Course::Monthly(place.means), swing: 0.0 }
    }

    /// The same place with day and night this far above and below the mean.
    ///
    /// # Errors
    /// Outside 0 to 30 K.
    pub fn swinging(self, half: TemperatureInterval) -> Result<Self, TemperatureError> {
        let swing = half.get::<kelvin>();
        let sensible = (0.0..=30.0).contains(&swing);
        sensible.then_some(Self { swing, ..self }).ok_or(TemperatureError::SwingOutOfRange)
    }

    /// A place that is so much warmer than this one all year: a shed against the air outside.
    pub fn warmer_by(self, step: TemperatureInterval) -> Self {
        let step = step.get::<kelvin>();
        let course = match self.course {
            Course::Constant(mean) => Course::Constant(mean + step),
            Course::Monthly(means) => Course::Monthly(means.map(|it| it + step)),
        };
        Self { course, ..self }
    }

    /// Whether it is the same temperature all year.
    pub fn is_steady(&self) -> bool {
        matches!(self.course, Course::Constant(_))
    }

    /// Mean of the coldest day of a season: of the park date where no night is stored.
    pub fn coldest_of(&self, season: &Season) -> ThermodynamicTemperature {
        let park = self.celsius_on(season.park());
        let coldest = season.nights().map(|it| self.celsius_on(it)).fold(park, f64::min);
        ThermodynamicTemperature::new::<degree_celsius>(coldest)
    }

    /// Mean temperature of a day.
    pub fn on(&self, date: NaiveDate) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(self.celsius_on(date))
    }

    /// Mean temperature of a day, °C.
    pub fn celsius_on(&self, date: NaiveDate) -> f64 {
        let means = match self.course {
            Course::Constant(mean) => return mean,
            Course::Monthly(means) => means,
        };
        let (month, day) = (date.month0() as usize, f64::from(date.day()));
        let (from, gone) = if day >= 15.0 {
            (month, day - 15.0)
        } else {
            let before = (month + 11) % 12;
            (before, day - 15.0 + month_length(before, date))
        };
        let mean = |month: usize| means.get(month % 12).copied().unwrap_or_default();
        mean(from) + (mean(from + 1) - mean(from)) * gone / month_length(from, date)
    }

    /// Half of the difference between day and night, K.
    pub(crate) fn swing(&self) -> f64 {
        self.swing
    }
}

/// Days in a month (January = 0) of the year that `date` is in. December before a January is as long in any year.
fn month_length(month0: usize, date: NaiveDate) -> f64 {
    match month0 {
        1 if date.leap_year() => 29.0,
        1 => 28.0,
        3 | 5 | 8 | 10 => 30.0,
        _ => 31.0,
    }
}
