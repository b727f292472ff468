//! What people mistype: numbers that are read in two ways and asked about instead of guessed, days that cannot be yet.

use super::{About, Kind};
use crate::entry::text::{self, joined};
use crate::entry::{self, Entry, Refusal};
use crate::words::fuel as words;
use chrono::NaiveDate;

/// "18.500 km" is eighteen thousand where a point parts them, and no odometer shows meters: it is asked which.
pub(super) fn thousands(text: &str) -> Result<(), Refusal> {
    let number = text.trim();
    let Some((whole, rest)) = number.split_once('.') else { return Ok(()) };
    let end = text::place(rest, |it| !it.is_ascii_digit()).unwrap_or(rest.len());
    let whole_too = !whole.is_empty() && whole.chars().all(|it| it.is_ascii_digit());
    if end != 3 || !whole_too {
        return Ok(());
    }
    let digits = text::cut(rest, end).0;
    Err(Refusal::OneOrThousand {
        text: entry::quoted(number),
        thousand: joined(&[whole, digits], ""),
        decimal: joined(&[whole, ".", digits, "0"], ""),
    })
}

/// "1/2" on a gauge is half of the tank, and the blank's unit would make half a gallon of it.
pub(super) fn half(text: &str) -> Result<(), Refusal> {
    let bare = text.ends_with(|it: char| it.is_ascii_digit());
    if matches!(text, "½" | "¼" | "¾") || (bare && entry::slashed(text)) {
        return Err(Refusal::Together(words::HALF_OF_WHAT.to_owned()));
    }
    Ok(())
}

/// Whether an entry tells the day of something that was done, and that day is still to come: a slip of the month or year, which
/// would make old fuel or old fluid new.
///
/// ```
/// use chrono::NaiveDate;
/// use torpor::{entry::Entry, facts};
/// let today = NaiveDate::from_ymd_opt(2026, 11, 30).unwrap();
/// let entry = Entry::new("2026-12-01", 0);
/// assert!(facts::to_come(&facts::FUEL_BOUGHT.about, &entry, today));
/// assert!(!facts::to_come(&facts::RIDE_DATE.about, &entry, today));
/// ```
pub fn to_come(about: &About, entry: &Entry, today: NaiveDate) -> bool {
    let ahead = [super::PARK_DATE.id(), super::RIDE_DATE.id(), super::PAPERS_DUE.id()];
    matches!(about.kind, Kind::Day)
        && !ahead.contains(&about.id)
        && super::read::day(about, entry).is_ok_and(|it| it.is_some_and(|it| it > today))
}
