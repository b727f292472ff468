//! An answer as it stands on the page, and its working.

use super::element::{El, el, paragraph};
use super::leaf::Leaves;
use super::live::{Derived, Live};
use crate::entry::text::joined;
use crate::facts::Lack;
use crate::plan::Panel;
use crate::show::{self, Figure, Shown, Working};
use crate::words::page as words;

/// Label and figure of the answer at a place of a line's panel. The head is at place 0.
pub fn answer(panel: Derived<Panel>, at: usize, scope: &str) -> [El; 2] {
    let id = format!("{scope}-answer-{at}");
    let (cap, label) = el("span").class("cap").set("id", &id).words();
    let output = el("output").set("aria-live", "off").set("aria-labelledby", &id);
    let leaves = move |leaves: &Leaves| {
        panel.with(|it| {
            let Some(shown) = it.all().nth(at) else { return };
            label.say(shown.label);
            figure_without(leaves, &shown.figure, if at > 0 { it.head.lacks() } else { &[] });
        });
    };
    [cap, output.leaves(leaves)]
}

/// A figure with its unit and its range; what it lacks by name.
pub fn figure(leaves: &Leaves, shown: &Shown) {
    figure_without(leaves, &shown.figure, &[]);
}

/// The same, without the lacks that were `said` already: a line says once what it needs.
fn figure_without(leaves: &Leaves, figure: &Figure, said: &[Lack]) {
    match figure {
        Figure::Number { text, unit, data, range } => {
            leaves.next("data", "n").set("value", data).text(text);
            if !unit.is_empty() {
                leaves.next("span", "u").text(&format!("\u{a0}{unit}"));
            }
            if let Some([low, high]) = range {
                let range = format!(" {low}{}{high}\u{a0}{unit}", words::TO);
                leaves.next("small", "range").text(&range);
            }
        }
        Figure::Day { text, data } => {
            leaves.next("time", "n day").set("datetime", data).text(text);
        }
        Figure::Words(text) => {
            leaves.next("span", "words").text(text);
        }
        Figure::Lacks(lacks) => {
            let more: Vec<&Lack> =
                lacks.iter().filter(|it| !said.iter().any(|said| said.id() == it.id())).collect();
            if more.is_empty() {
                leaves.next("span", "why").text(words::NOT_YET_KNOWN);
            } else {
                leaves.next("span", "care").text(&show::needs(more));
            }
        }
    }
}

/// The workings of all answers of a line, the head's first; written out while they are looked at.
pub fn workings(panel: Derived<Panel>) -> El {
    let open = Live::new(false);
    let details = el("details");
    let folds = details.element();
    let workings = move || {
        if !open.get() {
            return Vec::new();
        }
        panel.with(|it| {
            it.worked()
                .filter_map(|it| Some(working(it.label, &it.working.as_ref()?.written())))
                .collect()
        })
    };
    let none = move || panel.with(|it| it.worked().all(|it| it.working.is_none()));
    details
        .live_so("hidden", none)
        .on("toggle", move |_| open.set(folds.has_attribute("open")))
        .child(el("summary").text(words::WORKING))
        .child(el("div").part(workings))
}

fn working(label: &str, working: &Working) -> El {
    let Working { formula, substituted, legend, source, holds } = working;
    let legend: Vec<String> =
        legend.iter().map(|(symbol, name, amount)| format!("{symbol} {name} {amount}")).collect();
    el("div")
        .class("work")
        .child(paragraph("cap", label))
        .child(paragraph("", &format!("{formula} = {substituted}")))
        .child(paragraph("legend", &joined(&legend, " · ")))
        .child(paragraph("source", &format!("{}{source}. {}{holds}.", words::SOURCE, words::HOLDS)))
}
