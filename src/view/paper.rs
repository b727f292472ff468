//! The paper: made when the browser is about to print, taken away after it. The style sheet shows it in print alone, and then
//! alone. Elements are made by plain calls, so that all of it stands there before the browser goes on.

use super::browser;
use super::element::{El, el, paragraph, span, svg};
use super::page::{Owner, Page};
use super::picture::path;
use super::season_line::drawn;
use crate::digits;
use crate::drawing;
use crate::entry::text::joined;
use crate::plan::address::Address;
use crate::plan::{self, Field, Listed, Paper, Task};
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

fn made(page: Page) -> El {
    let parcel = page.parcel();
    let set = page.set.get();
    let it = Paper::of(&parcel.kept, set);
    let example = page.owner.get() == Owner::Example;
    let printed = format!("{}{}", paper::PRINTED, show::long_day(page.today.get()));
    // A table's head comes again on each page that it goes on to.
    let table = |columns: &str, names: Vec<El>, rows: Vec<El>| {
        let head = el("div")
            .class("head")
            .child(written("h1", it.name.as_deref()))
            .maybe(example.then(|| span("example", words::EXAMPLE)))
            .child(span("made", &printed))
            .child(span("mark", words::NAME));
        let head = el("tr").child(el("td").set("colspan", columns).child(head));
        let names = el("tr").class("names").children(names);
        let head = el("thead").child(head).child(names);
        el("table").child(head).child(el("tbody").children(rows))
    };
    let course = plan::course(&parcel.kept).ok();
    let picture = course.map(|it| drawn(&drawing::season_strip(&it, set), true));
    let mut needed = vec![el("b").text(needs::NEEDS)];
    needed.extend(it.needs.iter().map(|it| span("box", it)));
    if it.needs.is_empty() {
        needed.push(span("rule", ""));
    }
    let mut plan = Vec::new();
    let [lay_up, wake_up] = &it.sides;
    tasks(&mut plan, words::LAY_UP, lay_up);
    if !it.between.is_empty() {
        plan.push(el("h2").text(paper::IN_BETWEEN));
    }
    for (what, days) in &it.between {
        let days = days.iter().map(|it| span("box", &show::short_day(*it)));
        plan.push(paragraph("task", what).text(" ").children(days));
    }
    tasks(&mut plan, words::WAKE_UP, wake_up);
    let first = el("td")
        .child(el("div").class("season").children(it.season.iter().map(field)))
        .child(el("figure").class("line-of-season").maybe(picture))
        .child(el("div").class("needed").children(needed))
        .child(el("div").class("plan").children(plan));
    let names = ["", paper::FASTENER, paper::MANUAL, labels::SET_TO, paper::NOTES];
    let names = names.map(|it| el("th").text(it));
    let sources = it
        .sources
        .iter()
        .flat_map(|(of, all)| [el("b").text(of), span("", &format!(": {}. ", joined(all, "; ")))]);
    let last = el("div")
        .class("last")
        .children(cautions::TORQUE.iter().map(|it| paragraph("care", it)))
        .child(code(link::written(&parcel, false)))
        .child(paragraph("", cautions::MANUAL_DECIDES))
        .child(el("h2").text(paper::SOURCES))
        .child(el("p").class("sources").children(sources));
    el("div")
        .set("id", PAPER)
        .child(table("1", Vec::new(), vec![el("tr").child(first)]))
        .child(table("5", names.into(), it.torques.iter().map(row).collect()))
        .child(last)
}

/// A text, or a rule to write it on.
fn written(tag: &str, text: Option<&str>) -> El {
    match text {
        Some(text) => el(tag).text(text),
        None => el(tag).class("rule"),
    }
}

fn field(it: &Field) -> El {
    let unit = if it.says.is_none() { it.unit } else { "" };
    el("p").child(span("cap", it.label)).child(written("b", it.says.as_deref())).text(unit)
}

fn tasks(made: &mut Vec<El>, title: &str, all: &[Task]) {
    made.push(el("h2").text(title));
    made.extend(all.iter().map(task));
}

fn task(it: &Task) -> El {
    let class = match (&it.left_out, it.done) {
        (Some(_), _) => "task over",
        (None, true) => "task box done",
        (None, false) => "task box",
    };
    let figures = it.figures.iter().map(|(label, it)| figure(el("p"), label, it));
    let left_out = it.left_out.as_ref().map(|it| span("", &format!("{}{it}", words::LEFT_OUT)));
    el("div")
        .class(class)
        .child(el("div").class("fig").children(figures))
        .child(el("h3").text(&format!("{} {}", it.number, it.title)))
        .maybe(left_out)
        .child(span("", &joined(&it.says, " ")))
        .child(el("div").class("fields").children(it.fields.iter().map(field)))
        .children(it.cares.iter().map(|it| paragraph("care", it)))
}

/// A figure; a rule where it is not known.
fn figure(made: El, label: &str, it: &Figure) -> El {
    let made = made.child(span("cap", label));
    match it {
        Figure::Number { text, unit, range, .. } => {
            let range = range.as_ref().map(|[low, high]| format!(" {low}{}{high}", words::TO));
            made.child(el("b").class("n").text(text))
                .text(&format!("\u{a0}{unit}{}", range.unwrap_or_default()))
        }
        Figure::Day { text, .. } => made.child(el("b").class("day").text(text)),
        Figure::Words(text) => made.child(el("b").text(text)),
        Figure::Lacks(_) => made.child(el("b").class("rule")),
    }
}

fn row(it: &Listed) -> El {
    let name = el("td")
        .child(el("b").text(it.name.as_deref().unwrap_or_default()))
        .child(paragraph("", &joined(&it.mind, ", ")));
    let set_to = el("td").class("fig");
    let (set_to, notes) = match &it.row {
        Some(row) => {
            let label = if row.label == labels::SET_TO { "" } else { row.label };
            let needs = match &row.figure {
                Figure::Lacks(lacks) => show::needs(lacks),
                _ => String::new(),
            };
            let notes = [&row.then, &row.with, &needs].map(|it| paragraph("", it));
            (figure(set_to, label, &row.figure), Vec::from(notes))
        }
        None => (set_to, Vec::new()),
    };
    let notes = el("td").children(notes).children(it.cares.iter().map(|it| paragraph("care", it)));
    el("tr")
        .child(el("td").child(span("box", "")))
        .child(name)
        .child(el("td").text(&it.manual))
        .child(set_to)
        .child(notes)
}

/// The bike's link as a code; why not, where there is none.
fn code(link: Option<String>) -> El {
    let made = el("figure").class("code");
    let Some(qr) = link.and_then(|it| Qr::of(&format!("{}{it}", browser::address()))) else {
        return made.text(paper::NO_CODE);
    };
    let side = qr.side + 2 * QUIET;
    let edge = format!("{}in", digits::plain(side as f64 * MODULE, 2));
    let drawn = svg("svg")
        .set("viewBox", &format!("0 0 {side} {side}"))
        .set("width", &edge)
        .set("height", &edge)
        .child(path("", &qr.path()));
    made.child(drawn).child(el("figcaption").text(paper::SCAN))
}
