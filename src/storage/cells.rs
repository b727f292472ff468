//! Cells with a separator between them. Source: RFC 4180, section 2; a text that breaks its rules is read all the same.

use super::text::plain;
use crate::entry;
use crate::entry::text::{self, from, replaced};
use crate::facts::{self, About, Facts, Kind};
use crate::garage::Entries;

/// More columns than any list has that is read here.
pub(super) const MOST_COLUMNS: usize = 64;

/// A row that is not blank.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Line {
    /// The line of the text that it begins on; the first is 1.
    pub number: usize,
    /// As in the text, quotes taken off.
    pub cells: Vec<String>,
}

/// A text cut into rows and cells, and the separator that was found in it.
pub(super) struct Cut {
    pub separator: char,
    pub lines: Vec<Line>,
}

/// No separator: a character that no text may hold (Unicode Standard, noncharacters).
const NONE: char = '\u{fffe}';

/// What a row looks like.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Names {
    /// No names of columns.
    None,
    /// Of one sort: a word among a fastener's words too.
    Some,
    /// Surely the names of a list of torques.
    Several,
}

/// Cuts a text by the separator that makes names of columns of a row, else by the one that most of its rows have: tab,
/// semicolon or comma; no more than `most` rows. A first row that is one name says that there is one column only.
pub(super) fn cut(text: &str, most: usize, names: fn(&Line) -> Names) -> Cut {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    // Some programs write the separator into a line of its own.
    if let Some(rest) = text.strip_prefix("sep=") {
        let mut rest = rest.chars();
        let separator = rest.next().filter(|it| ['\t', ';', ','].contains(it));
        if let Some(separator) = separator.filter(|_| rest.as_str().starts_with(['\r', '\n'])) {
            // What is left of that line is a blank row, so that the next one is the second.
            let lines = lines(rest.as_str(), separator, most);
            return Cut { separator, lines };
        }
    }
    let mut best = Cut { separator: NONE, lines: lines(text, NONE, most) };
    let mut best_rank = (false, 0);
    for separator in ['\t', ';', ','] {
        if !text::has(text, separator) {
            continue;
        }
        let lines = lines(text, separator, most);
        let count = lines.iter().filter(|it| it.cells.len() > 1).count();
        let rank = (lines.iter().take(8).any(|it| names(it) == Names::Several), count);
        let one =
            || lines.first().is_some_and(|it| it.cells.len() == 1 && names(it) == Names::Some);
        // A comma between two digits may be a decimal one: alone it parts nothing.
        let parts = || separator != ',' || lines.iter().any(|it| it.cells.windows(2).any(parted));
        if rank > best_rank && (rank.0 || (2 * count > lines.len() && parts() && !one())) {
            best = Cut { separator, lines };
            best_rank = rank;
        }
    }
    best
}

/// Whether a comma between two cells is surely no decimal one.
fn parted(pair: &[String]) -> bool {
    let digit = |it: char| it.is_ascii_digit();
    !(pair[0].ends_with(digit) && pair[1].starts_with(digit))
}

fn lines(text: &str, separator: char, most: usize) -> Vec<Line> {
    let mut lines = Vec::new();
    let (mut rest, mut number) = (text, 1);
    while !rest.is_empty() && lines.len() < most {
        let mut line = Line { number, cells: Vec::new() };
        loop {
            let (cell, taken, more) = cell(rest, separator);
            let (cut, behind) = text::cut(rest, taken);
            number += ends(cut);
            rest = behind;
            line.cells.push(cell);
            if !more {
                break;
            }
        }
        let blank = |it: char| it.is_whitespace() || (separator == NONE && matches!(it, ',' | ';'));
        let says = |it: &String| !it.chars().all(blank);
        // Blank columns behind the last one that says something are a spreadsheet's own.
        while line.cells.len() > MOST_COLUMNS && line.cells.last().is_some_and(|it| !says(it)) {
            line.cells.pop();
        }
        if line.cells.iter().any(says) {
            lines.push(line);
        }
    }
    lines
}

/// The first cell of `text`, how many bytes it takes with what ends it, and whether its row goes on.
fn cell(text: &str, separator: char) -> (String, usize, bool) {
    let mut cell = String::new();
    let mut at = 0;
    let body = text::past(text, |it| it == ' ');
    // A quote that nothing closes is an inch or a slip: a letter like any other.
    if let Some(end) = body.strip_prefix('"').and_then(closing) {
        cell = replaced(text::cut(from(body, 1), end).0, "\"\"", "\"");
        at = text.len() - body.len() + end + 2;
    }
    let rest = from(text, at);
    let ends = |(_, it): &(usize, char)| *it == separator || matches!(it, '\r' | '\n');
    let length = rest.char_indices().find(ends).map_or(rest.len(), |(length, _)| length);
    let (said, behind) = text::cut(rest, length);
    cell.push_str(said);
    let more = behind.starts_with(separator);
    let width = match behind.chars().next() {
        Some('\r') if behind.starts_with("\r\n") => 2,
        ending => ending.map_or(0, char::len_utf8),
    };
    (cell, at + length + width, more)
}

/// Where the quote stands that closes a cell; two of them are one in the cell.
fn closing(body: &str) -> Option<usize> {
    let mut at = 0;
    loop {
        at += text::place(from(body, at), |it| it == '"')?;
        if !from(body, at + 1).starts_with('"') {
            return Some(at);
        }
        at += 2;
    }
}

/// How many lines end in a text: at LF, at CR, at both together.
fn ends(text: &str) -> usize {
    let text = replaced(text, "\r\n", "\n");
    text::count(&text, '\r') + text::count(&text, '\n')
}

/// Writes a cell. What parts cells for any program that may open the file stands in quotes.
pub(super) fn put(into: &mut String, cell: &str) {
    if text::place(cell, |it| matches!(it, ',' | ';' | '\t' | '"' | '\r' | '\n')).is_some() {
        into.push('"');
        into.push_str(&replaced(cell, "\"", "\"\""));
        into.push('"');
    } else {
        into.push_str(cell);
    }
}

/// Writes a list as comma-separated text (RFC 4180): a column for each fact that any of `rows` has, numbers with their
/// unit, choices in words, days as every spreadsheet reads them (ISO 8601).
pub(super) fn table(rows: &[Entries], mut columns: Vec<&About>) -> String {
    columns.retain(|about| rows.iter().any(|it| !it.entry(about.id).is_blank()));
    let mut text = String::new();
    let mut line = |cell: &dyn Fn(&About) -> String| {
        for (at, about) in columns.iter().enumerate() {
            if at > 0 {
                text.push(',');
            }
            put(&mut text, &no_formula(plain(&cell(about))));
        }
        text.push_str("\r\n");
    };
    line(&|about| about.label.to_owned());
    for row in rows {
        line(&|about| {
            let entry = row.entry(about.id);
            let day = matches!(about.kind, Kind::Day).then(|| entry::day(&entry).ok().flatten());
            day.flatten().map_or_else(|| facts::as_read(about, &entry), entry::day_written)
        });
    }
    text
}

/// A spreadsheet runs what starts with one of these signs. Source: OWASP Application Security Verification Standard,
/// 1.2.10 (there an apostrophe is put before it; a space is taken off again by every reader that trims).
fn no_formula(cell: String) -> String {
    let number = entry::plain_decimal(cell.strip_prefix('+').unwrap_or(&cell)).is_some();
    if cell.starts_with(['=', '+', '-', '@']) && !number { format!(" {cell}") } else { cell }
}
