//! Words about a table of torques: why it is not taken, what is wrong in a row, and how a row is told before it is kept.

macro_rules! words {
    ($($name:ident: $words:literal;)*) => { $(#[doc = $words] pub const $name: &str = $words;)* };
}
words! {
    TOO_LONG: "This is far more than a bike’s torque list: at most 256 KiB of text. Take out what is no fastener.";
    TOO_MANY_ROWS: "More than 400 rows, which is the most that a bike and its link take: bring in a part of them.";
    TOO_WIDE: "More than 64 columns: keep those of the fasteners, name and torque first.";
    EMPTY: "No rows: paste a first row that names the columns, such as Fastener and Torque (N·m), and a row for each fastener.";
    NEITHER: "no torque, no thread and no turn in this row: one of them is needed";
    UNNAMED: "which column is the torque is not clear: put a first row above that names the columns, for example Fastener, Torque (N·m), Note";
    TOO_MANY_CELLS: "more cells than there are columns: put quotes round a text or number with the separator in it";
    SPLIT_NUMBER: "this number may be split at its decimal comma: put quotes round it, or write a point";
    ABOVE_THE_HEADER: "stands above the names of the columns";
    SECOND_HEADER: "other columns begin here: bring them in by themselves, each part with its own first row";
    BELOW_SECOND_HEADER: "stands below other names of columns: bring it in by itself";
    ONE_END: "one end of a range without the other: write both, or none";
    MIN_OVER_MAX: "the lowest is more than the highest";
    OUTSIDE_ENDS: "the figure lies outside of its lowest and highest";
    TWO_RANGES: "a range stands here and in lowest and highest: keep one of them";
    UNCLEAR_ENDS: "figure, lowest and highest cannot be put together: write them in one unit, or as 25 (22–26) in one cell";
    AS_A_TABLE: "The list as a table";
    PASTE_HERE: "Paste a table from a spreadsheet";
    PASTE_HINT: "A first row that names the columns, such as Fastener, Torque (N·m), Note; columns in any order, any other unit in its cell.";
    OPEN_A_FILE: "or open a CSV file";
    FILE_NOT_READ: "This file cannot be read: a torque list is text of at most 256 KiB.";
    THE_LIST: "The list as CSV";
    SAVE: "Save as a file";
    FILE_NAME: "torpor-torques.csv";
    GUESSED: "No row names the columns, so they were guessed: look at every row before you add them.";
    BETWEEN: " · ";
    BETWEEN_NOTES: "; ";
}

/// A row of the preview.
pub fn line(number: usize, told: &str) -> String {
    format!("Line {number}: {told}")
}
/// What the preview shows below.
pub fn summary(read: usize, wrong: usize) -> String {
    match (read, wrong) {
        (read, 0) => format!("Read: {}", rows(read)),
        (0, wrong) => format!("To mend: {}", rows(wrong)),
        (read, wrong) => format!("Read: {} · to mend: {}", rows(read), rows(wrong)),
    }
}
fn rows(count: usize) -> String {
    if count == 1 { "1 row".to_owned() } else { format!("{count} rows") }
}
/// Takes the rows in.
pub fn add(count: usize) -> String {
    if count == 1 { "Add 1 fastener".to_owned() } else { format!("Add {count} fasteners") }
}
/// Name of a column in a table without names.
pub fn column(number: usize) -> String {
    format!("Column {number}")
}
/// A cell under its column's name, or a fact under its label.
pub fn named(name: &str, text: &str) -> String {
    format!("{name}: {text}")
}
/// What is wrong in a cell.
pub fn wrong(column: &str, cell: &str, why: &str) -> String {
    match (column.is_empty(), cell.is_empty()) {
        (true, true) => why.to_owned(),
        (true, false) => format!("“{cell}”: {why}"),
        (false, true) => format!("{column}: {why}"),
        (false, false) => format!("{column}, “{cell}”: {why}"),
    }
}
/// A cell that has to say something.
pub fn missing(column: &str) -> String {
    format!("{column} is missing")
}
