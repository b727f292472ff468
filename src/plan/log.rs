//! What the logbook takes from the sheet, and what it tells in turn: figures for a tick's entry, what is due, oil used up.

use super::{Asked, Held, Line, Panel, Row, drawer, row};
use crate::entry::LONGEST;
use crate::entry::text::{cut, joined};
use crate::facts::{self, Facts};
use crate::garage::{Kept, Subject};
use crate::logbook::{self, Due, Logbook};
use crate::oil;
use crate::show::{self, Figure, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{labels, logbook as words};
use crate::working::{Answer, Quantity};
use chrono::NaiveDate;
use uom::si::f64::{Area, Length, Volume};

/// The figures of a calculator as they stand, for the entry of its tick: of the torque list what each fastener was to be
/// set to, else every answer that is known. Cut where they are longer than an entry takes.
pub fn figures(line: Line, kept: &Kept, set: UnitSet) -> String {
    let wrenches = drawer(&kept.garage);
    let all: Vec<String> = match line {
        Line::Torques => {
            let own = kept.bike.fasteners.iter();
            own.map(|own| fastener(&Subject { own, rest: kept }, &wrenches, set)).collect()
        }
        _ => {
            let panel = line.panel(kept, &wrenches, set);
            panel.all().filter_map(|it| Some(it.spoken()?.trim().to_owned())).collect()
        }
    };
    shortened(&joined(&all, "; "))
}

fn fastener(from: &dyn Facts, wrenches: &[Held], set: UnitSet) -> String {
    let asked = Asked::of(from);
    let Row { label, figure, .. } = row(&asked, wrenches, set);
    let shown = Shown { label, figure, working: None };
    words::of(&asked.name.unwrap_or_default(), &shown.figure_words())
}

fn shortened(text: &str) -> String {
    match text.char_indices().nth(LONGEST - 1) {
        Some((end, _)) => format!("{}…", cut(text, end).0),
        None => text.to_owned(),
    }
}

/// The logbook's own blanks and answers: the odometer, the intervals, what the engine used up of oil.
pub fn log(book: &Logbook, from: &dyn Facts, today: NaiveDate, set: UnitSet) -> Panel {
    let due = logbook::due(book, today, from);
    let past = due.iter().filter(|it| it.is_past()).count();
    let mut panel = Panel::of(Shown::words(labels::DUE, words::due_now(past)));
    panel.blanks = vec![facts::ODOMETER.id(), facts::INTERVALS.id()];
    let [before, since] = oil_used(book);
    let answers = [(labels::OIL_USED, before), (labels::OIL_USED_SINCE, since)];
    panel.answers = answers
        .into_iter()
        .filter_map(|(label, told)| Some(Shown::quantity(label, Ok(told?), set)))
        .collect();
    let less =
        |it: &Shown| matches!(&it.figure, Figure::Number { data, .. } if data.starts_with('-'));
    if panel.answers.iter().any(less) {
        panel.warnings.push(words::MORE_CAME_OUT.to_owned());
    }
    panel
}

/// Each interval in words, and whether it is past.
pub fn due(
    book: &Logbook,
    from: &dyn Facts,
    today: NaiveDate,
    set: UnitSet,
) -> Vec<(bool, String)> {
    let told = |it: &Due| {
        let mut parts = Vec::new();
        if let Some((day, left)) = it.left.days {
            parts.push(words::by_day(left, &show::long_day(day)));
        }
        if let Some(left) = it.left.distance {
            let long = Length::of_base(left.base().abs());
            let long = show::rounded(Measure::Distance, long, set);
            parts.push(words::by_distance(left.base() < 0.0, &long));
        }
        let said = match (it.last, parts.is_empty()) {
            (None, _) => words::NOT_IN_THE_BOOK.to_owned(),
            (_, true) => words::ODOMETER_LACKS.to_owned(),
            _ => joined(&parts, ", "),
        };
        (it.is_past(), words::of(&it.line, &said))
    };
    logbook::due(book, today, from).iter().map(told).collect()
}

/// Oil used from the change before the last one until the last, and since the last by what was topped up.
fn oil_used(book: &Logbook) -> [Option<Answer<Area>>; 2] {
    let nothing = Volume::of_base(0.0);
    let mut entries: Vec<(Length, Option<Volume>, Option<Volume>)> = Vec::new();
    for row in book.rows() {
        let (poured, drained) = (facts::OIL_POURED.known(row), facts::OIL_DRAINED.known(row));
        let Some(at) = facts::LOG_ODOMETER.known(row) else { continue };
        if poured.is_some() || drained.is_some() {
            // In the order in which they were ridden to; of one reading in that of the book.
            let place = entries.iter().rposition(|it| it.0 <= at).map_or(0, |it| it + 1);
            entries.insert(place, (at, poured, drained));
        }
    }
    let changes: Vec<usize> = (0..entries.len()).filter(|at| entries[*at].2.is_some()).collect();
    let topped_up = |after: usize, until: usize| {
        let all = entries[after + 1..until].iter().filter_map(|it| it.1);
        Volume::of_base(all.map(Quantity::base).sum())
    };
    let ridden =
        |from: usize, to: usize| Length::of_base(entries[to].0.base() - entries[from].0.base());
    let last = changes.last().copied();
    let before = last.and_then(|last| {
        // Without a change before it the first pour of the book stands for one.
        let first = changes.iter().rev().nth(1).copied().unwrap_or(0);
        let (poured, drained) = (entries[first].1?, entries[last].2?);
        let used = (first < last).then(|| {
            oil::consumption(poured, topped_up(first, last), drained, ridden(first, last))
        });
        used.flatten()
    });
    // After the change every top-up brings it back to its mark: what was poured is what was used.
    let since = last.or((!entries.is_empty()).then_some(0)).and_then(|first| {
        let end = entries.len();
        let added = topped_up(first, end);
        (end > first + 1)
            .then(|| oil::consumption(nothing, added, nothing, ridden(first, end - 1)))
            .flatten()
    });
    [before, since]
}
