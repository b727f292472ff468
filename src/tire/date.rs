//! The date code on a tire's sidewall: week and year of its making.

use crate::season::age::between;
use crate::source;
use crate::units::Measure;
use crate::working::{Amount, Answer, Law, Quantity, Term};
use chrono::{Datelike, Days, NaiveDate};
use std::fmt;
use uom::si::f64::Time;

/// Age of a tire.
pub const TIRE_AGE: Law = Law {
    formula: "a = D − W",
    gives: Measure::Age,
    source: source::DATE_CODE,
    holds: "four digits, week then year, since July 2000; counted to the ride date, or to the park date where there is none",
};

/// Old from here on, years. Several vehicle makers and a US agency's report of 2007, as newspapers quote them.
pub const OLD: f64 = 6.0;
/// To be replaced, years. British rubber trade 2001, as quoted.
pub const TOO_OLD: f64 = 10.0;

/// Week and year of a tire.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DateCode {
    /// The Sunday that its week begins on.
    Week(NaiveDate),
    /// Three digits: before 2000, in a decade that they do not tell.
    BeforeMillennium,
}

/// How old a tire is.
#[derive(Debug, Clone, PartialEq)]
pub enum Age {
    /// Years, within two weeks.
    Known(Answer<Time>),
    /// Made before 2000.
    BeforeMillennium,
}

/// Why a date code is refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DateCodeError {
    /// Not three or four digits at the end.
    NotACode,
    /// A week that no year has.
    Week(u32),
    /// Week 53 of a year with 52.
    Week53(i32),
    /// Made after the day that its age is asked for.
    Future {
        /// Year.
        year: i32,
    },
}

impl fmt::Display for DateCodeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotACode => f.write_str(
                "not a date code: write the last four digits of the DOT number, such as 3623; both sides of the tire are worth a look",
            ),
            Self::Week(week) => write!(
                f,
                "there is no week {week}: the first two digits have to be 01 to 53, then the year, such as 3623"
            ),
            Self::Week53(year) => {
                write!(f, "{year} has no week 53: the first two digits have to be 01 to 52")
            }
            Self::Future { year } => write!(
                f,
                "made after the day it is judged on, in {year}: the week comes first, then the year; the code has to be of an earlier week"
            ),
        }
    }
}

impl std::error::Error for DateCodeError {}

impl DateCode {
    /// Reads a code alone, or at the end of a whole DOT number.
    ///
    /// # Errors
    /// [`DateCodeError`].
    pub fn read(text: &str) -> Result<Self, DateCodeError> {
        let last = text.split_whitespace().last().unwrap_or_default();
        let digits = |it: &str| it.bytes().all(|it| it.is_ascii_digit());
        let code = match last.len() {
            3 | 4 if digits(last) => last,
            // A DOT number without spaces has letters before its last four digits.
            5.. if !digits(last) => match last.len().checked_sub(4).and_then(|it| last.get(it..)) {
                Some(end) if digits(end) => end,
                _ => return Err(DateCodeError::NotACode),
            },
            _ => return Err(DateCodeError::NotACode),
        };
        let number = code.bytes().fold(0, |number, it| number * 10 + u32::from(it - b'0'));
        if code.len() == 3 {
            let week = number / 10;
            let there = (1..=53).contains(&week);
            return there.then_some(Self::BeforeMillennium).ok_or(DateCodeError::Week(week));
        }
        let (week, year) = (number / 100, 2000 + (number % 100) as i32);
        if !(1..=53).contains(&week) {
            return Err(DateCodeError::Week(week));
        }
        let start = NaiveDate::from_ymd_opt(year, 1, 1).and_then(|first| {
            let to_sunday = (7 - first.weekday().num_days_from_sunday()) % 7;
            first.checked_add_days(Days::new(u64::from(to_sunday + 7 * (week - 1))))
        });
        match start {
            Some(start) if start.year() == year => Ok(Self::Week(start)),
            _ => Err(DateCodeError::Week53(year)),
        }
    }

    /// How old the tire is on a day.
    ///
    /// # Errors
    /// [`DateCodeError::Future`].
    pub fn age(self, on: NaiveDate) -> Result<Age, DateCodeError> {
        let Self::Week(start) = self else { return Ok(Age::BeforeMillennium) };
        let oldest = between(start, on);
        if oldest.base() < 0.0 {
            return Err(DateCodeError::Future { year: start.year() });
        }
        let day = |symbol, name, day| Term { symbol, name, amount: Amount::Date(day) };
        let terms =
            vec![day("D", "day it is counted to", on), day("W", "first day of its week", start)];
        // A week either way: which day a week begins on is from memory.
        let week = 7.0 * 86_400.0;
        let ends = [(oldest.base() - week).max(0.0), oldest.base() + week].map(Time::of_base);
        Ok(Age::Known(Answer::within(oldest, ends, &TIRE_AGE, terms)))
    }
}
