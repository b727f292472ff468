//! The season's days as an iCalendar file (RFC 5545): all-day events with identifiers that stay, so that a file saved later
//! takes the place of an earlier one.

use crate::entry::text::{cut, replaced};
use crate::entry::{Entry, day_written};
use crate::words::dates as words;
use chrono::{Datelike, NaiveDate};

/// An all-day event.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// What tells it from the others, in letters, digits and hyphens, its season first; the same in every file.
    pub key: String,
    /// Its day.
    pub day: NaiveDate,
    /// Its name.
    pub title: String,
    /// What is said of it.
    pub says: String,
    /// It stood in an earlier file and is not to be any more.
    pub called_off: bool,
}

/// What is remembered of a file: the key and the day of each event in it.
pub type Saved = Vec<(String, String)>;

/// What is to be remembered of the file of these events.
pub fn saved(events: &[Event]) -> Saved {
    let on = events.iter().filter(|it| !it.called_off);
    on.map(|it| (it.key.clone(), day_written(it.day))).collect()
}

/// Calls off what the file before this one had of the same season and this one has not: a calendar would keep it for ever.
/// Days of a season that is over stay.
pub fn call_off(events: &mut Vec<Event>, before: Saved) {
    let season = |key: &str| key.split_once('-').map(|it| it.0.to_owned());
    for (key, day) in before {
        let day = crate::entry::day(&Entry::new(day, 0)).ok().flatten();
        let gone = events.iter().any(|it| season(&it.key) == season(&key))
            && events.iter().all(|it| it.key != key);
        if let Some(day) = day.filter(|_| gone) {
            let title = words::CALLED_OFF.to_owned();
            events.push(Event { key, day, title, says: String::new(), called_off: true });
        }
    }
}

/// Longest line in bytes, its end left out (RFC 5545 §3.1).
const LONGEST: usize = 75;

/// Milliseconds of a day, a minute, a second.
const DAY: u64 = 86_400_000;
const MINUTE: u64 = 60_000;
const SECOND: u64 = 1000;
/// Days from the first of January of the year 1 to that of 1970, counted from 1.
const EPOCH: i32 = 719_163;

/// The file of these events of one `bike`, by its key; `link` stands in each of them; `now` counts milliseconds from 1970.
///
/// ```
/// use chrono::NaiveDate;
/// use torpor::calendar::{Event, written};
/// let day = NaiveDate::from_ymd_opt(2026, 11, 14).unwrap();
/// let park = Event { key: "park".into(), day, title: "Park it".into(), says: "Steps".into(), called_off: false };
/// assert!(written(&[park], "b1", "#1.x", 0).contains("DTSTART;VALUE=DATE:20261114\r\n"));
/// ```
pub fn written(events: &[Event], bike: &str, link: &str, now: u64) -> String {
    let mut file = String::new();
    let mut line = |name: &str, value: &str| fold(&mut file, &format!("{name}:{value}"));
    line("BEGIN", "VCALENDAR");
    line("VERSION", "2.0");
    line("PRODID", "-//Torpor//Season//EN");
    line("METHOD", "PUBLISH");
    for event in events {
        line("BEGIN", "VEVENT");
        line("UID", &format!("{}-{bike}@torpor.invalid", event.key));
        line("DTSTAMP", &stamp(now));
        // Rises with each file: a calendar takes the newer one of two with the same identifier (§3.8.7.4).
        line("SEQUENCE", &(now / MINUTE % (1 << 31)).to_string());
        if event.called_off {
            // §3.8.1.11.
            line("STATUS", "CANCELLED");
        }
        line("DTSTART;VALUE=DATE", &digits(event.day));
        if let Some(next) = event.day.succ_opt() {
            line("DTEND;VALUE=DATE", &digits(next));
        }
        line("SUMMARY", &escaped(&event.title));
        let says =
            if event.says.is_empty() { link.to_owned() } else { format!("{}\n{link}", event.says) };
        line("DESCRIPTION", &escaped(&says));
        line("URL", link);
        // Nobody is busy for it.
        line("TRANSP", "TRANSPARENT");
        line("END", "VEVENT");
    }
    line("END", "VCALENDAR");
    file
}

/// A text's value: backslash, semicolon, comma and line end escaped (§3.3.11).
fn escaped(text: &str) -> String {
    let text = replaced(text, "\\", "\\\\");
    let text = replaced(&replaced(&text, ";", "\\;"), ",", "\\,");
    replaced(&text, "\n", "\\n")
}

/// Adds a line, folded where it is long: the next one begins with a space. No letter is torn.
fn fold(file: &mut String, line: &str) {
    let mut bytes = 0;
    for letter in line.chars() {
        if bytes + letter.len_utf8() > LONGEST {
            file.push_str("\r\n ");
            bytes = 1;
        }
        file.push(letter);
        bytes += letter.len_utf8();
    }
    file.push_str("\r\n");
}

/// Year, month, day.
fn digits(day: NaiveDate) -> String {
    let (year, month, day) = (day.year() as u32, day.month(), day.day());
    (year * 10_000 + month * 100 + day).to_string()
}

/// A moment of universal time.
fn stamp(now: u64) -> String {
    let day = NaiveDate::from_num_days_from_ce_opt(EPOCH + (now / DAY) as i32).unwrap_or_default();
    let seconds = now % DAY / SECOND;
    // A one in front keeps the zeros.
    let time = 1_000_000 + seconds / 3600 * 10_000 + seconds / 60 % 60 * 100 + seconds % 60;
    format!("{}T{}Z", digits(day), cut(&time.to_string(), 1).1)
}
