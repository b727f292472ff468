//! Finding entries: by words, by line, by year.

use super::{Logbook, Row};
use crate::garage::Entries;
use chrono::{Datelike, NaiveDate};

/// What is looked for. A blank or `None` takes all.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Search {
    /// Words that an entry has in any of its facts, each of them; of ASCII in any case.
    pub words: String,
    /// What was done.
    pub line: Option<String>,
    /// The year it was done in.
    pub year: Option<String>,
}

impl Search {
    /// The entries that are found, the last of the book first.
    pub fn found<'a>(&self, book: &'a Logbook) -> Vec<&'a Row> {
        let words = self.words.to_ascii_lowercase();
        let words: Vec<&str> = words.split_whitespace().collect();
        let matches = |row: &&Row| {
            self.year.as_ref().is_none_or(|it| row.day.is_some_and(|day| year(day) == *it))
                && self.line.as_ref().is_none_or(|it| row.line() == *it)
                && words.iter().all(|it| says(&row.own, it))
        };
        book.rows().iter().rev().filter(matches).collect()
    }
}

fn says(own: &Entries, word: &str) -> bool {
    own.values().any(|it| holds(&it.text, word))
}

/// Whether `word`, in small letters, stands in `text` in any.
fn holds(text: &str, word: &str) -> bool {
    let small = text.to_ascii_lowercase();
    let mut rest = small.as_str();
    loop {
        if rest.starts_with(word) {
            return true;
        }
        let mut letters = rest.chars();
        if letters.next().is_none() {
            return false;
        }
        rest = letters.as_str();
    }
}

/// Every line of the book, the one written last first.
pub fn lines(book: &Logbook) -> Vec<String> {
    let mut lines = Vec::new();
    for row in book.rows().iter().rev() {
        let line = row.line();
        if !line.is_empty() && !lines.contains(&line) {
            lines.push(line);
        }
    }
    lines
}

/// Every year of the book, the latest first.
pub fn years(book: &Logbook) -> Vec<String> {
    let mut years: Vec<String> =
        book.rows().iter().rev().filter_map(|it| it.day.map(year)).collect();
    years.dedup();
    years
}

fn year(day: NaiveDate) -> String {
    day.year().to_string()
}
