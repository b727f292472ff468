//! A manual's general table of torques: what every bolt of a thread gets that has no figure of its own.

use super::{About, Rough, TypedThread, read};
use crate::entry::{self, Entry, Refusal, text};
use crate::torque::Thread;
use crate::units::Dimension;
use crate::words::notes;
use uom::si::f64::Torque;

/// One row of it.
#[derive(Debug, Clone, PartialEq)]
pub struct GeneralTorque {
    /// As printed.
    pub thread: TypedThread,
    /// What it gets.
    pub torque: Rough<Torque>,
}

/// Reads "M6 10 N·m; M8: 20–25 N·m", a line or a semicolon between rows, or a comma before the next thread.
pub(super) fn general(about: &About, entry: &Entry) -> Result<Option<Vec<GeneralTorque>>, Refusal> {
    if entry.is_blank() {
        return Ok(None);
    }
    if entry.text.chars().count() > entry::LONGEST {
        return Err(Refusal::TooLong);
    }
    let text = entry::replaced(&entry::replaced(&entry.text, ", M", ";M"), ", m", ";m");
    let mut rows = Vec::new();
    for line in text::parts(&text, |it| matches!(it, '\n' | '\r' | ';')) {
        let line = line.trim();
        let row = row(about, entry, line);
        let row = row.ok_or_else(|| Refusal::NotThreadTorque { text: entry::quoted(line) })?;
        let same = |it: &GeneralTorque| it.thread.same(&row.thread) && it.torque != row.torque;
        if rows.iter().any(same) {
            return Err(Refusal::Together(notes::twice(&entry::quoted(&row.thread.text))));
        }
        rows.push(row);
    }
    Ok(Some(rows))
}

/// The first place between two words, or the colon, where a thread ends and a torque begins.
fn row(about: &About, entry: &Entry, line: &str) -> Option<GeneralTorque> {
    let mut first = None;
    for (at, sign) in line.char_indices() {
        if !(sign.is_whitespace() || matches!(sign, ':' | '=')) {
            continue;
        }
        let name = text::cut(line, at).0.trim();
        let torque = text::from(line, at + sign.len_utf8()).trim();
        let torque = text::past(torque, |it| matches!(it, ':' | '='));
        let Some(torque) = self::torque(about, entry, torque) else { continue };
        let thread = Thread::read(name);
        let found = GeneralTorque { thread: TypedThread { text: name.to_owned(), thread }, torque };
        if thread.is_ok() {
            return Some(found);
        }
        // A thread that is not known here is still the manual's: M4, 1/4-20.
        first.get_or_insert(found);
    }
    first
}

fn torque(about: &About, entry: &Entry, text: &str) -> Option<Rough<Torque>> {
    let unit = about.unit_for(entry, Default::default())?;
    let read = entry::quantity(&Entry::new(text, unit.code), &[Dimension::Torque]).ok()??;
    (read.value > 0.0).then(|| read::rough_of(read))
}
