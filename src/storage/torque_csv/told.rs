//! A row in words, to be looked at before anything of it is kept.

use super::Row;
use super::columns::{THREAD, held};
use crate::entry::text::joined;
use crate::entry::{self, Entry};
use crate::facts::{self, About, Facts, Kind};
use crate::words::table as words;

/// What a row was read as: "Axle nut · 25 N·m, from 22 to 26 · in line 40 mm"; or what is wrong with it.
pub fn told(row: &Row) -> String {
    let entries = match &row.read {
        Ok(entries) => entries,
        Err(errors) => {
            // A row that is not taken as a whole is named in what is wrong with it.
            let named = errors.iter().any(|it| it.column.is_empty());
            let errors: Vec<String> = errors.iter().map(ToString::to_string).collect();
            let said = joined(&errors, words::BETWEEN_NOTES);
            let name = super::first_said(&row.cells);
            return if named { said } else { words::named(&entry::quoted(&name), &said) };
        }
    };
    let text = |about: &About| {
        let entry = entries.entry(about.id);
        (!entry.is_blank()).then(|| read_out(about, &entry))
    };
    let (name, torque) = (&facts::FASTENER_NAME.about, &facts::TORQUE.about);
    let note = &facts::FASTENER_NOTE.about;
    let first = [Some(name), facts::about(THREAD), Some(torque)].into_iter().flatten();
    let mut told: Vec<String> = first.filter_map(text).collect();
    let adapter =
        [&facts::ADAPTER.about, &facts::ADAPTER_LENGTH.about, &facts::ADAPTER_ANGLE.about];
    // "in line 40 mm"; but "none" alone says nothing.
    let offset = entries.get(&adapter[0].id).is_some_and(|it| !it.is_blank() && it.text != "none");
    if offset {
        told.push(joined(&adapter.into_iter().filter_map(text).collect::<Vec<_>>(), " "));
    }
    for about in held() {
        let apart = [name.id, torque.id, note.id, THREAD].contains(&about.id);
        if apart || (offset && adapter.contains(&about)) {
            continue;
        }
        let labelled = !matches!(about.kind, Kind::Several(_));
        let label = |it: String| if labelled { words::named(about.label, &it) } else { it };
        told.extend(text(about).map(label));
    }
    told.extend(text(note));
    joined(&told, words::BETWEEN)
}

/// An entry as it was read, where its text alone leaves doubt.
fn read_out(about: &About, entry: &Entry) -> String {
    let echo = facts::echo(about, entry);
    let echo = echo.as_deref().and_then(|it| it.strip_prefix("read as "));
    echo.map_or_else(|| facts::as_read(about, entry), str::to_owned)
}
