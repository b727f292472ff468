//! Fasteners as a table that any spreadsheet opens, and that [`super::read`] takes back.

use super::columns;
use crate::garage::Entries;
use crate::storage::cells;

/// Writes fasteners as comma-separated text. A file for a spreadsheet wants a byte order mark in front, which is not part
/// of this.
///
/// What this page does not know of a fastener, and the wrench taken, is left out.
pub fn written(fasteners: &[Entries]) -> String {
    cells::table(fasteners, columns::held().collect())
}
