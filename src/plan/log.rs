//! What the logbook takes from the sheet, and what it tells in turn: figures for a tick's entry, what is due, oil used up.

use super::{Asked, Held, Line, Panel, Row, brakes, drawer, oil_used, row};
use crate::entry::text::{cut, joined};
use crate::entry::{LONGEST, day_written};
use crate::facts::{self, Facts};
use crate::garage::{Kept, Subject};
use crate::logbook::{self, Due, Logbook};
use crate::show::{self, Figure, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{labels, logbook as words};
use crate::working::Quantity;
use chrono::NaiveDate;
use uom::si::f64::Length;

/// The figures of a calculator as they stand, for the entry of its tick: of the torque list what each fastener was to be
/// set to, else every answer that is known. Cut where they are longer than an entry takes.
pub fn figures(line: Line, kept: &Kept, set: UnitSet) -> String {
    let wrenches = drawer(&kept.garage);
    let all: Vec<String> = match line {
        Line::Torques => {
            // The one that is still open was tightened too, where it says what.
            let open = facts::given(kept, facts::TORQUE.id()).then_some(&kept.bike.scratch);
            let own = kept.bike.fasteners.iter().chain(open);
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
    let Row { label, figure, with, .. } = row(&asked, wrenches, set);
    let shown = Shown { label, figure, working: None }.figure_words();
    // Without the adapter it is another figure.
    let parts = [asked.name.unwrap_or_default(), shown, with];
    let parts: Vec<&str> = parts.iter().map(String::as_str).filter(|it| !it.is_empty()).collect();
    joined(&parts, " ")
}

/// A text as long as an entry takes.
pub fn shortened(text: &str) -> String {
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

/// Of what is [`due`] in one line what is `past`, or what is still to come; nothing where there is none.
pub fn due_told(due: &[(bool, String)], past: bool) -> String {
    let told: Vec<&str> = due.iter().filter(|it| it.0 == past).map(|it| it.1.as_str()).collect();
    joined(&told, "; ")
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
        if it.last.is_none() {
            parts = vec![words::NOT_IN_THE_BOOK.to_owned()];
        } else if it.reads_less {
            parts.push(words::READS_LESS.to_owned());
        } else if it.lacks_reading {
            parts.push(words::ODOMETER_LACKS.to_owned());
        }
        (it.is_past() || it.reads_less, words::of(&it.line, &joined(&parts, ", ")))
    };
    let mut all: Vec<_> = logbook::due(book, today, from).iter().map(told).collect();
    // What the page knows by itself: how old the fluids are.
    let panel = brakes(from, set);
    let fluids = [labels::CHANGE_BY, labels::CLUTCH_CHANGE_BY];
    for it in panel.all().filter(|it| fluids.contains(&it.label)) {
        if let Figure::Day { text, data } = &it.figure {
            // Year first: days in writing stand in their order.
            all.push((*data < day_written(today), words::of(it.label, text)));
        }
    }
    all
}
