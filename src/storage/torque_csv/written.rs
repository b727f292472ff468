//! Fasteners as a table that any spreadsheet opens, and that [`super::read`] takes back.

use super::{cells, columns};
use crate::entry;
use crate::facts::{self, About, Facts};
use crate::garage::Entries;
use crate::storage::text::plain;

/// Writes fasteners as comma-separated text (RFC 4180): a column for each fact that any of them has, numbers with their
/// unit, choices in words. A file for a spreadsheet wants a byte order mark in front, which is not part of this.
///
/// What this page does not know of a fastener, and the wrench taken, is left out.
pub fn written(fasteners: &[Entries]) -> String {
    let said = |about: &&About| fasteners.iter().any(|it| !it.entry(about.id).is_blank());
    let columns: Vec<&About> = columns::held().filter(said).collect();
    let mut text = String::new();
    let mut line = |cell: &dyn Fn(&About) -> String| {
        for (at, about) in columns.iter().enumerate() {
            if at > 0 {
                text.push(',');
            }
            cells::put(&mut text, &no_formula(plain(&cell(about))));
        }
        text.push_str("\r\n");
    };
    line(&|about| about.label.to_owned());
    for fastener in fasteners {
        line(&|about| facts::as_read(about, &fastener.entry(about.id)));
    }
    text
}

/// A spreadsheet runs what starts with one of these signs. Source: OWASP Application Security Verification Standard,
/// 1.2.10 (there an apostrophe is put before it; a space is taken off again by every reader that trims).
fn no_formula(cell: String) -> String {
    let number = entry::plain_decimal(cell.strip_prefix('+').unwrap_or(&cell)).is_some();
    if cell.starts_with(['=', '+', '-', '@']) && !number { format!(" {cell}") } else { cell }
}
