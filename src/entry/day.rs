//! A day of the calendar: "2026-11-14", "Nov 14 2026", "14 November 2026", "14.11.2026".

use super::{
    Entry, LONGEST,
    refusal::{Refusal, quoted},
    text::{digit, parts, without_end},
};
use crate::words::MONTHS;
use chrono::{Datelike, NaiveDate};

/// Years that a season can lie in. Beyond them a slip of the finger is likelier.
const YEARS: std::ops::RangeInclusive<i32> = 1990..=2199;

/// Reads a day; `Ok(None)` for a blank.
///
/// # Errors
/// What is not a day with a year, and day and month that can be swapped.
///
/// ```
/// use torpor::entry::{self, Entry};
/// let day = entry::day(&Entry::new("Nov 14, 2026", 0)).unwrap();
/// assert_eq!(day, chrono::NaiveDate::from_ymd_opt(2026, 11, 14));
/// ```
pub fn day(entry: &Entry) -> Result<Option<NaiveDate>, Refusal> {
    if entry.is_blank() {
        return Ok(None);
    }
    if entry.text.chars().count() > LONGEST {
        return Err(Refusal::TooLong);
    }
    let refused = || Refusal::NotADay { text: quoted(&entry.text) };
    let parts = parts(&entry.text, |it| !digit(it) && !letter(it));
    // A weekday in front says nothing more.
    let parts = match parts.as_slice() {
        [weekday, rest @ ..] if rest.len() == 3 && weekday.chars().all(letter) => rest,
        all => all,
    };
    let &[first, second, third] = parts else { return Err(refused()) };
    let number = |it: &str| without_end(it, letter).parse::<u32>().ok();
    let date = |year: Option<u32>, month: Option<u32>, day: Option<u32>| {
        let year = i32::try_from(year?).ok().filter(|it| YEARS.contains(it))?;
        NaiveDate::from_ymd_opt(year, month?, day?)
    };
    let found = if first.len() == 4 && first.chars().all(|it| it.is_ascii_digit()) {
        date(number(first), number(second).or_else(|| month(second)), number(third))
    } else if let Some(month) = month(first) {
        date(number(third), Some(month), number(second))
    } else if let Some(month) = month(second) {
        date(number(third), Some(month), number(first))
    } else {
        let readings = [(first, second), (second, first)]
            .map(|(d, m)| date(number(third), number(m), number(d)));
        match readings {
            [Some(one), Some(other)] if one != other => {
                let either = [written(one), written(other)];
                return Err(Refusal::DayOrMonth { text: quoted(&entry.text), either });
            }
            [one, other] => one.or(other),
        }
    };
    found.map(Some).ok_or_else(refused)
}

/// Letters of any script; digits, spaces and signs are not.
fn letter(it: char) -> bool {
    it.is_ascii_alphabetic()
        || !(it.is_ascii() || matches!(it, '–' | '—' | '−' | '\u{a0}' | '\u{202f}'))
}

/// A month by the first three letters or more of its name.
fn month(text: &str) -> Option<u32> {
    let starts =
        |month: &str| month.get(..text.len()).is_some_and(|it| it.eq_ignore_ascii_case(text));
    let at = MONTHS.iter().position(|it| text.len() >= 3 && starts(it))?;
    u32::try_from(at + 1).ok()
}

/// A day as every reader takes it: year-month-day.
pub fn written(day: NaiveDate) -> String {
    format!("{:04}-{:02}-{:02}", day.year(), day.month(), day.day())
}
