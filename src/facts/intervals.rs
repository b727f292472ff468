//! How often something is due: what the manual's maintenance table says, by distance, by time, or by whichever comes first.

use super::{About, doubt};
use crate::entry::{self, Entry, Refusal, text};
use crate::units::{self, Dimension};
use crate::working::Quantity;
use uom::si::f64::Length;

/// Longest time between two, months.
const LONGEST: u32 = 1200;

/// One of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Interval {
    /// What is due, as the logbook names it.
    pub line: String,
    /// After so many months of the calendar.
    pub months: Option<u32>,
    /// After so long a ride.
    pub distance: Option<Length>,
}

/// Reads "Oil: 6000 km or 12 months; Coolant: 2 years", a semicolon or a line's end between them.
pub(super) fn intervals(_: &About, entry: &Entry) -> Result<Option<Vec<Interval>>, Refusal> {
    if entry.is_blank() {
        return Ok(None);
    }
    if entry.text.chars().count() > entry::LONGEST {
        return Err(Refusal::TooLong);
    }
    let ends = |it| matches!(it, '\n' | '\r' | ';');
    text::parts(&entry.text, ends).into_iter().map(interval).collect::<Result<_, _>>().map(Some)
}

fn interval(part: &str) -> Result<Interval, Refusal> {
    let refused = || Refusal::NotAnInterval { text: entry::quoted(part) };
    let (line, every) = part.split_once(':').ok_or_else(refused)?;
    let mut found = Interval { line: line.trim().to_owned(), months: None, distance: None };
    let every = every.trim();
    let mut every = every.strip_prefix("every ").unwrap_or(every).to_owned();
    for between in [" or ", " and ", ", "] {
        every = text::replaced(&every, between, "/");
    }
    for one in text::parts(&every, |it| it == '/') {
        let one = one.trim();
        let twice = match months(one) {
            Some(months) => found.months.replace(months).is_some(),
            None => {
                doubt::thousands(one)?;
                let entry = Entry::new(one, 0);
                let read = entry::quantity(&entry, &[Dimension::Length])?.ok_or_else(refused)?;
                let long = read.unit.is_some_and(|it| {
                    [units::KILOMETER.code, units::MILES.code].contains(&it.code)
                });
                if !long || read.bounds.is_some() || read.value <= 0.0 {
                    return Err(refused());
                }
                found.distance.replace(Length::of_base(read.value)).is_some()
            }
        };
        if twice {
            return Err(refused());
        }
    }
    let says = !found.line.is_empty() && (found.months.is_some() || found.distance.is_some());
    if says { Ok(found) } else { Err(refused()) }
}

/// "12 months", "2 years", "18mo".
fn months(text: &str) -> Option<u32> {
    let at = text::place(text, |it| !it.is_ascii_digit())?;
    let (count, unit) = text::cut(text, at);
    let unit = text::without_end(unit.trim(), |it| it == '.').to_ascii_lowercase();
    let each = match unit.as_str() {
        "mo" | "month" | "months" => 1,
        "y" | "yr" | "yrs" | "year" | "years" => 12,
        _ => return None,
    };
    let months = count.parse::<u32>().ok()?.checked_mul(each)?;
    (1..=LONGEST).contains(&months).then_some(months)
}
