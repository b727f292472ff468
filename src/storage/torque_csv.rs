//! A bike's torque list as a table: comma-separated text, or cells copied from a spreadsheet.
//!
//! Columns are known by their names, in any order and usual spelling. A number keeps the unit that it has in the file:
//! its own, else that of the row's unit column, else that of the column's name, else the one that is usual on the page.

mod columns;
mod row;
mod told;
mod written;

pub use told::told;
pub use written::written;

use crate::entry::{Refusal, quoted};
use crate::facts::Id;
use crate::garage::Entries;
use crate::storage::cells::{self, MOST_COLUMNS};
use crate::storage::text::plain;
use crate::units::Unit;
use crate::words::table as words;
use columns::Column;
use std::fmt;

/// The longest text that is looked at, bytes.
pub const LONGEST: usize = 256 * 1024;
/// Most rows at once: more than any bike has fasteners.
pub const MOST_ROWS: usize = 400;

/// A table as read.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Whether a row names the columns. Without one they were guessed, as far as that is safe: to be looked at.
    pub header: bool,
    /// Each column's name and the fact that its cells go into; `None` for a name that is not known, whose cells are
    /// added to the note.
    pub columns: Vec<(String, Option<Id>)>,
    /// Every row that is not blank, but the one with the names.
    pub rows: Vec<Row>,
    parts: Vec<Column>,
    separator: char,
    usual: &'static Unit,
}

/// A row of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The line of the text that it begins on; the first is 1.
    pub line: usize,
    /// As in the file, without characters that do not show.
    pub cells: Vec<String>,
    /// Whether it stands under the names of the columns, so that other cells may mend it.
    pub mends: bool,
    /// The fastener as if it had been typed, or all that is wrong with it.
    pub read: Result<Entries, Vec<CellError>>,
}

/// What is wrong with a cell, or with a row.
#[derive(Debug, Clone, PartialEq)]
pub struct CellError {
    /// Name of the column; empty where it is about the row.
    pub column: String,
    /// What stands there, cut at 40 characters.
    pub cell: String,
    /// Why it is not taken.
    pub why: Refusal,
}

impl CellError {
    fn new(column: &str, cell: &str, why: Refusal) -> Self {
        Self { column: quoted(column), cell: quoted(cell), why }
    }

    fn of_row(cell: &str, words: &str) -> Self {
        Self::new("", cell, Refusal::Together(words.to_owned()))
    }
}

impl fmt::Display for CellError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&words::wrong(&self.column, &self.cell, &self.why.to_string()))
    }
}

/// Why a text is not taken as a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotATable {
    /// Over [`LONGEST`].
    TooLong,
    /// Over [`MOST_ROWS`].
    TooManyRows,
    /// More columns than any such list has.
    TooWide,
    /// No rows, or names of columns only.
    Empty,
}

impl fmt::Display for NotATable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TooLong => words::TOO_LONG,
            Self::TooManyRows => words::TOO_MANY_ROWS,
            Self::TooWide => words::TOO_WIDE,
            Self::Empty => words::EMPTY,
        })
    }
}

impl std::error::Error for NotATable {}

/// Reads a table. `usual` is the torque unit that the page's blanks start with; it is what a number means that has no
/// unit in the file.
///
/// # Errors
/// [`NotATable`]; what is wrong within a row is told by the row and stops no other.
///
/// ```
/// use torpor::{facts, storage::torque_csv, units};
/// let sheet = torque_csv::read("Part;Torque (N·m)\nAxle nut;2,5\n", &units::LBF_FT).unwrap();
/// let torque = &sheet.rows[0].read.as_ref().unwrap()[&facts::TORQUE.id()];
/// assert_eq!((torque.text.as_str(), torque.unit), ("2,5", units::NEWTON_METER.code));
/// ```
pub fn read(text: &str, usual: &'static Unit) -> Result<Sheet, NotATable> {
    if text.len() > LONGEST {
        return Err(NotATable::TooLong);
    }
    let mut cut = cells::cut(text, MOST_ROWS + 2, columns::names);
    if cut.lines.iter().any(|it| it.cells.len() > MOST_COLUMNS) {
        return Err(NotATable::TooWide);
    }
    for cell in cut.lines.iter_mut().flat_map(|it| &mut it.cells) {
        *cell = plain(cell);
    }
    let lines = cut.lines;
    let mut named: Vec<Option<Vec<Column>>> = lines.iter().map(columns::header).collect();
    let sure = |it: &Option<Vec<Column>>| it.as_deref().is_some_and(columns::sure);
    // Above the names there may be a title; names of which none is a torque stand in the first row or nowhere.
    let header_at = named.iter().position(sure);
    let header_at = header_at.or_else(|| named.first()?.is_some().then_some(0));
    let header = header_at.and_then(|at| named[at].take());
    if lines.len() > MOST_ROWS + usize::from(header.is_some()) {
        return Err(NotATable::TooManyRows);
    }
    let names: Vec<String> = match header_at {
        Some(at) => lines[at].cells.clone(),
        None => {
            let most = lines.iter().map(|it| it.cells.len()).max().unwrap_or_default();
            (1..=most).map(words::column).collect()
        }
    };
    let parts = header.unwrap_or_else(|| columns::guessed(&lines));
    let ids = parts.iter().map(|it| it.part.map(columns::Part::id));
    let mut sheet = Sheet {
        header: header_at.is_some(),
        columns: names.into_iter().zip(ids).collect(),
        rows: Vec::new(),
        parts,
        separator: cut.separator,
        usual,
    };
    let mut other_columns = false;
    for (at, line) in lines.into_iter().enumerate() {
        if header_at == Some(at) {
            continue;
        }
        let above = header_at.is_some_and(|it| at < it);
        let again = !above && sure(&named[at]);
        if again && named[at].as_ref() == Some(&sheet.parts) {
            continue;
        }
        let why = match (above, again, other_columns) {
            (true, ..) => Some(words::ABOVE_THE_HEADER),
            (_, true, _) => Some(words::SECOND_HEADER),
            (.., true) => Some(words::BELOW_SECOND_HEADER),
            _ => None,
        };
        other_columns |= again;
        let mut row = sheet.row_of(line.number, line.cells);
        if let Some(why) = why {
            row.mends = false;
            row.read = Err(vec![CellError::of_row(&first_said(&row.cells), why)]);
        }
        sheet.rows.push(row);
    }
    if sheet.rows.is_empty() { Err(NotATable::Empty) } else { Ok(sheet) }
}

impl Sheet {
    /// What is still to be mended once the whole rows are taken, and what is left of the `text` that this was read from:
    /// nothing where every row was whole. Columns, separator and unit stay those of the preview.
    pub fn rest(&self, text: &str) -> (Self, String) {
        let mut rest = Self { rows: Vec::new(), ..self.clone() };
        let mut left = String::new();
        let mut lines = 0;
        for (at, line) in text.lines().enumerate() {
            let row = self.rows.iter().rfind(|it| it.line <= at + 1);
            if row.is_some_and(|it| it.read.is_ok()) {
                continue;
            }
            lines += 1;
            left.push_str(line);
            left.push('\n');
            let begins = row.filter(|it| it.line == at + 1);
            rest.rows.extend(begins.map(|it| Row { line: lines, ..it.clone() }));
        }
        if rest.rows.is_empty() { (rest, String::new()) } else { (rest, left) }
    }

    /// Puts another text in a cell of a row, as one that mends it, and reads the row again; the `text` that this was
    /// read from with that row in it. Every other line stays, and stays where it is.
    pub fn mend(&mut self, text: &str, row: usize, cell: usize, said: &str) -> String {
        let Some(Row { line, cells, .. }) = self.rows.get(row) else { return text.to_owned() };
        let (line, mut cells) = (*line, cells.clone());
        if cell >= cells.len() {
            cells.resize(cell + 1, String::new());
        }
        cells[cell] = plain(said);
        let next = self.rows.get(row + 1).map_or(usize::MAX, |it| it.line);
        let mut mended = String::new();
        for (at, other) in text.lines().enumerate().map(|(at, other)| (at + 1, other)) {
            if at == line {
                for (at, cell) in cells.iter().enumerate() {
                    if at > 0 {
                        mended.push(self.separator);
                    }
                    cells::put(&mut mended, cell);
                }
            } else if at < line || at >= next {
                mended.push_str(other);
            }
            mended.push('\n');
        }
        self.rows[row] = self.row_of(line, cells);
        mended
    }

    /// The cells of a row that need another look, by their columns: those with something wrong in them, or all where the
    /// row as a whole is not taken.
    pub fn to_mend(&self, row: &Row) -> Vec<usize> {
        let Err(errors) = &row.read else { return Vec::new() };
        if !row.mends {
            return Vec::new();
        }
        let every = 0..self.columns.len().max(row.cells.len());
        let names_cell = |error: &CellError, at: usize| {
            !error.column.is_empty() && quoted(self.name(at)) == error.column
        };
        let of_row = |it: &CellError| !every.clone().any(|at| names_cell(it, at));
        if errors.iter().any(of_row) {
            return every.collect();
        }
        every.filter(|at| errors.iter().any(|it| names_cell(it, *at))).collect()
    }

    fn row_of(&self, line: usize, cells: Vec<String>) -> Row {
        let read = row::read(self, &cells);
        Row { line, cells, mends: true, read }
    }

    /// The name of a column.
    pub fn name(&self, at: usize) -> &str {
        self.columns.get(at).map_or("", |it| it.0.as_str())
    }
}

fn first_said(cells: &[String]) -> String {
    cells.iter().find(|it| !it.trim().is_empty()).cloned().unwrap_or_default()
}
