//! The paper: made when the browser is about to print, taken away after it. The style sheet shows it in print alone, and then
//! alone. Elements are made by plain calls, so that all of it stands there before the browser goes on.

use super::browser;
use super::element::{El, el, paragraph, span};
use super::look;
use super::page::Page;
use super::picture::{SAYS, picture};
use super::season_line::season_drawn;
use crate::digits;
use crate::drawing;
use crate::entry::text::joined;
use crate::plan::address::Address;
use crate::plan::{self, Field, Listed, Task};
use crate::qr::{QUIET, Qr};
use crate::show::{self, Figure};
use crate::storage::link;
use crate::words::{cautions, labels, needs, page as words, paper};
use leptos::prelude::{document, untrack};

const PAPER: &str = "paper";
/// Edge of a module in inches: six dots of a printer with 300 to the inch, half a millimeter.
const MODULE: f64 = 0.02;

/// Lays the bike's paper out, where its sheet is open. Quick sums and bikes that are looked at print as they stand.
pub fn lay_out(page: Page) {
    put_away();
    let bike = |it: &Address| matches!(it, Address::Sheet(..) | Address::Unknown(_));
    if let (true, Some(body)) = (page.address.with_untracked(bike), document().body()) {
        let _ = body.prepend_with_node_1(&untrack(|| made(page)).element());
    }
}

/// Takes the paper away.
pub fn put_away() {
    if let Some(paper) = document().get_element_by_id(PAPER) {
        paper.remove();
    }
}

/// What stands at the head of each page, and the bike that it is of.
struct Head {
    name: Option<String>,
    mark: String,
    printed: String,
}

impl Head {
    /// A table under it: a table's head comes again on each page that it goes on to.
    fn over(&self, names: &[&str], rows: Vec<El>) -> El {
        let head = el("div").class("head").child(written("h1", &self.name));
        let head = match self.mark.as_str() {
            "" => head,
            mark => head.child(span("example", mark)),
        };
        let head = head.child(span("made", &self.printed)).child(span("mark", words::NAME));
        let mut named = el("tr").class("names");
        for it in names {
            named = named.child(el("th").text(it));
        }
        let head = el("tr").child(el("td").set("colspan", "5").child(head));
        el("table").child(el("thead").child(head).child(named)).child(all("tbody", "", rows))
    }
}

fn all(tag: &str, class: &str, inside: Vec<El>) -> El {
    el(tag).class(class).children(inside)
}

fn made(page: Page) -> El {
    let parcel = page.parcel();
    let set = page.set.get();
    let due = plan::due(&page.logbook(), &parcel.kept, page.today.get(), set);
    let it = plan::paper(&parcel.kept, &due, set);
    let printed = paper::PRINTED.to_owned() + &show::long_day(page.today.get());
    let mark = match page.is_example() {
        true => words::EXAMPLE.to_owned(),
        false => look::unchecked(&parcel.kept).unwrap_or_default(),
    };
    let head = Head { name: it.name, mark, printed };

    let mut needed = vec![el("b").text(needs::NEEDS)];
    for it in &it.needs {
        needed.push(span("box", it));
    }
    if it.needs.is_empty() {
        needed.push(span("rule", ""));
    }
    let [lay_up, wake_up] = &it.sides;
    let mut plan = Vec::new();
    tasks(&mut plan, words::LAY_UP, lay_up);
    if !it.between.is_empty() {
        plan.push(el("h2").text(paper::IN_BETWEEN));
    }
    for (what, days) in &it.between {
        let mut row = paragraph("task", what).text(" ");
        for day in days {
            row = row.child(span("box", &show::short_day(*day)));
        }
        plan.push(row);
    }
    tasks(&mut plan, words::WAKE_UP, wake_up);
    let mut first = vec![fields("season", &it.season)];
    if let Ok(course) = plan::course(&parcel.kept) {
        let strip = drawing::season_strip(&course, set);
        let [width, height] = drawing::STRIP_SIZE;
        let drawn = picture("wide", [0.0, 0.0, width, height])
            .set(SAYS, &strip.told)
            .holding(&|leaves| season_drawn(leaves, &strip));
        first.push(all("figure", "line-of-season", vec![drawn]));
    }
    first.extend([all("div", "needed", needed), all("div", "plan", plan)]);
    let first = el("tr").child(all("td", "", first).set("colspan", "5"));

    let mut rows = Vec::new();
    for it in &it.torques {
        rows.push(row(it));
    }
    let mut sources = el("p").class("sources");
    let mut before = "";
    for [of, source] in it.sources {
        if of == before {
            sources = sources.text("; ");
        } else {
            let end = if before.is_empty() { "" } else { ". " };
            sources = sources.text(end).child(el("b").text(of)).text(": ");
        }
        sources = sources.text(source);
        before = of;
    }
    let mut last = Vec::new();
    cares(&mut last, cautions::TORQUE);
    for [of, caution] in &it.cautions {
        // What begins with the step's name says itself whose it is.
        let whose = if caution.starts_with(of) { ["", ""] } else { [of, ": "] };
        cares(&mut last, &[joined(&[whose[0], whose[1], caution], "")]);
    }
    last.push(code(link::made(&browser::address(), &parcel, false)));
    last.push(paragraph("", cautions::MANUAL_DECIDES));
    if !before.is_empty() {
        last.extend([el("h2").text(paper::SOURCES), sources]);
    }
    let names = ["", paper::FASTENER, paper::MANUAL, labels::SET_TO, paper::NOTES];
    let both = vec![head.over(&[], vec![first]), head.over(&names, rows), all("div", "last", last)];
    all("div", "", both).set("id", PAPER)
}

/// A text, or a rule to write it on.
fn written(tag: &str, text: &Option<String>) -> El {
    match text {
        Some(text) => el(tag).text(text),
        None => el(tag).class("rule"),
    }
}

fn fields(class: &str, fields: &[Field]) -> El {
    let mut made = Vec::new();
    for it in fields {
        let mut label = it.label.to_owned();
        if it.says.is_none() && !it.unit.is_empty() {
            label = joined(&[it.label, it.unit], ", ");
        }
        made.push(el("p").child(span("cap", &label)).child(written("b", &it.says)));
    }
    all("div", class, made)
}

fn cares<T: AsRef<str>>(made: &mut Vec<El>, cares: &[T]) {
    for it in cares {
        made.push(paragraph("care", it.as_ref()));
    }
}

fn tasks(made: &mut Vec<El>, title: &str, tasks: &[Task]) {
    made.push(el("h2").text(title));
    for it in tasks {
        made.push(task(it));
    }
}

fn task(it: &Task) -> El {
    let class = match (it.left_out, it.done) {
        (true, _) => "task",
        (_, true) => "task box done",
        _ => "task box",
    };
    let mut figures = Vec::new();
    for (label, it) in &it.figures {
        figures.push(figure(el("p"), label, it));
    }
    let mut made = Vec::new();
    if !figures.is_empty() {
        made.push(all("div", "fig", figures));
    }
    made.push(el("h3").text(&it.number.to_string()).text(" ").text(&it.title).text(" "));
    made.push(span("", &it.says));
    if !it.fields.is_empty() {
        made.push(fields("fields", &it.fields));
    }
    cares(&mut made, &it.cares);
    all("div", class, made)
}

/// A figure; a rule where it is not known.
fn figure(made: El, label: &str, it: &Figure) -> El {
    let made = made.child(span("cap", label));
    let (class, text) = match it {
        Figure::Number { text, .. } => ("n", text.as_str()),
        Figure::Day { text, .. } => ("day", text.as_str()),
        Figure::Words(text) => ("", text.as_str()),
        Figure::Lacks(_) => ("rule", ""),
    };
    let made = made.child(el("b").class(class).text(text));
    let Figure::Number { unit, range, .. } = it else { return made };
    let made = made.text("\u{a0}").text(unit);
    match range {
        Some([low, high]) => made.text(" (").text(low).text(words::TO).text(high).text(")"),
        None => made,
    }
}

fn row(it: &Listed) -> El {
    let name = el("td").child(el("b").text(&it.name)).child(paragraph("", &it.mind));
    let mut set_to = el("td").class("fig");
    let mut notes = Vec::new();
    if let Some(row) = &it.row {
        let label = if row.label == labels::SET_TO { "" } else { row.label };
        set_to = figure(set_to, label, &row.figure);
        for it in [&row.then, &row.with] {
            notes.push(paragraph("", it));
        }
        if let Figure::Lacks(lacks) = &row.figure {
            notes.push(paragraph("", &show::needs(lacks)));
        }
    }
    cares(&mut notes, &it.cares);
    el("tr")
        .child(el("td").child(span("box", "")))
        .child(name)
        .child(el("td").text(&it.manual))
        .child(set_to)
        .child(all("td", "", notes))
}

/// The bike's link as a code; why not, where there is none.
fn code(link: Option<String>) -> El {
    let made = el("figure").class("code");
    let Some(qr) = link.and_then(|it| Qr::of(it.as_bytes())) else {
        return made.text(paper::NO_CODE);
    };
    let side = qr.side + 2 * QUIET;
    let edge = digits::plain(side as f64 * MODULE, 2) + "in";
    let frame = [0.0, 0.0, side as f64, side as f64];
    let drawn = picture("", frame)
        .set(SAYS, paper::SCAN)
        .set("width", &edge)
        .holding(&|leaves| leaves.path("", &qr.path()));
    made.child(drawn).child(el("figcaption").text(paper::SCAN))
}
