//! Dates and temperatures of a season against the calendar and against lines drawn by hand.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::NaiveDate;
use proptest::prelude::*;
use torpor::season::{Season, SeasonError, TemperatureError, Temperatures};
use uom::si::{
    f64::{TemperatureInterval, ThermodynamicTemperature},
    temperature_interval::kelvin,
    thermodynamic_temperature::degree_celsius,
};

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

fn season(park: NaiveDate, ride: NaiveDate) -> Season {
    Season::new(park, Some(ride)).unwrap()
}

fn celsius(it: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(it)
}

fn near(value: f64, expected: f64) -> bool {
    (value - expected).abs() < 1e-9
}

/// Source: month lengths and the leap rule of the Gregorian calendar, counted by hand.
#[test]
fn days_and_months_follow_the_calendar() {
    for (park, ride, days, whole, months) in [
        // The same day: nothing stored.
        (day(2025, 11, 1), day(2025, 11, 1), 0, 0, 0.0),
        // Nov 30 + Dec 31 + Jan 31 + Feb 28 + 14 of March.
        (day(2025, 11, 1), day(2026, 3, 15), 134, 4, 4.0 + 14.0 / 31.0),
        // The same dates over a leap day.
        (day(2027, 11, 1), day(2028, 3, 15), 135, 4, 4.0 + 14.0 / 31.0),
        // A century without a leap day, and one with it.
        (day(2100, 2, 28), day(2100, 3, 1), 1, 0, 1.0 / 28.0),
        (day(2000, 2, 28), day(2000, 3, 1), 2, 0, 2.0 / 29.0),
        // A month from the 31st ends with the shorter month.
        (day(2026, 1, 31), day(2026, 2, 28), 28, 1, 1.0),
        (day(2026, 1, 31), day(2026, 2, 27), 27, 0, 27.0 / 28.0),
        // Leap day to the last of February; to the day after.
        (day(2024, 2, 29), day(2025, 2, 28), 365, 12, 12.0),
        (day(2024, 2, 29), day(2025, 3, 1), 366, 12, 12.0 + 1.0 / 29.0),
        // Three years, the longest.
        (day(2025, 10, 1), day(2028, 10, 1), 1096, 36, 36.0),
    ] {
        let it = season(park, ride);
        assert_eq!((it.days(), it.whole_months()), (days, whole), "{park} to {ride}");
        assert!(near(it.months(), months), "{park} to {ride}: {}", it.months());
        assert!(near(it.weeks() * 7.0, days as f64));
        assert_eq!(it.nights().count() as i64, days);
        assert_eq!(it.day(days as usize), ride);
    }
}

/// Source: twelve calendar months.
#[test]
fn unknown_ride_date_forecasts_twelve_months() {
    for (park, end) in [
        (day(2025, 11, 1), day(2026, 11, 1)),
        (day(2024, 2, 29), day(2025, 2, 28)),
        (day(2023, 3, 1), day(2024, 3, 1)),
    ] {
        let it = Season::new(park, None).unwrap();
        assert_eq!((it.ride(), it.end()), (None, end));
    }
}

#[test]
fn refusals_say_what_is_accepted() {
    for (park, ride, error, words) in [
        (
            day(2025, 11, 1),
            day(2025, 10, 31),
            SeasonError::RideBeforePark,
            "ride date has to be the park date or a later day",
        ),
        (
            day(2025, 11, 1),
            day(2028, 11, 2),
            SeasonError::TooLong,
            "ride date has to be within three years of the park date",
        ),
        (
            day(206, 11, 1),
            day(2026, 3, 1),
            SeasonError::YearOutOfRange,
            "park date has to be in the years 1900 to 2199",
        ),
    ] {
        let refused = Season::new(park, Some(ride)).unwrap_err();
        assert_eq!((refused, refused.to_string().as_str()), (error, words));
    }
    for wrong in [-60.1, 60.1, f64::NAN] {
        let refused = Temperatures::constant(celsius(wrong)).unwrap_err();
        assert_eq!(refused, TemperatureError::OutOfRange);
        let words = "temperature has to be between −60 and 60 °C (−76 and 140 °F)";
        assert_eq!(refused.to_string(), words);
        assert_eq!(Temperatures::monthly([celsius(wrong); 12]), Err(TemperatureError::OutOfRange));
    }
    let swing = TemperatureInterval::new::<kelvin>(-1.0);
    let refused = Temperatures::constant(celsius(0.0)).unwrap().swinging(swing).unwrap_err();
    let words =
        "half the difference between day and night has to be between 0 and 30 °C (0 and 54 °F)";
    assert_eq!(refused.to_string(), words);
}

/// Source: straight lines between the 15ths, by hand. The means are a northern year and the same year half a turn on.
#[test]
fn months_are_joined_by_straight_lines() {
    let north = [-10.0, -8.0, -2.0, 6.0, 13.0, 18.0, 21.0, 19.0, 14.0, 7.0, 0.0, -7.0];
    let mut south = north;
    south.rotate_left(6);
    let [north, south] = [north, south].map(|it| Temperatures::monthly(it.map(celsius)).unwrap());
    for (date, in_north) in [
        (day(2026, 1, 15), -10.0),
        (day(2026, 12, 15), -7.0),
        // 17 of 31 days from the December mean to the January one.
        (day(2026, 1, 1), -7.0 - 3.0 * 17.0 / 31.0),
        // 16 of 31 days on, still in December.
        (day(2025, 12, 31), -7.0 - 3.0 * 16.0 / 31.0),
        // From February 15 to March 15 there are 28 days, 29 over a leap day.
        (day(2026, 3, 1), -8.0 + 6.0 * 14.0 / 28.0),
        (day(2024, 3, 1), -8.0 + 6.0 * 15.0 / 29.0),
        (day(2024, 2, 29), -8.0 + 6.0 * 14.0 / 29.0),
        (day(2026, 7, 15), 21.0),
    ] {
        let it = north.on(date).get::<degree_celsius>();
        assert!(near(it, in_north), "{date}: {it} for {in_north}");
    }
    for (date, in_south) in [(day(2026, 7, 15), -10.0), (day(2026, 1, 15), 21.0)] {
        assert!(near(south.on(date).get::<degree_celsius>(), in_south), "{date}");
    }
}

proptest! {
    /// A line between two means stays between them, and the twelve equal means are constant.
    #[test]
    fn stays_within_the_means(means in prop::array::uniform12(-30.0..40.0f64), offset in 0u64..1500) {
        let date = day(2023, 1, 1) + chrono::Days::new(offset);
        let it = Temperatures::monthly(means.map(celsius)).unwrap().on(date).get::<degree_celsius>();
        let low = means.iter().copied().fold(f64::INFINITY, f64::min);
        let high = means.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        prop_assert!(low - 1e-9 <= it && it <= high + 1e-9);
        let flat = Temperatures::monthly([celsius(means[0]); 12]).unwrap().on(date).get::<degree_celsius>();
        prop_assert!(near(flat, means[0]));
    }
}
