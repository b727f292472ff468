//! An answer as it stands on the page, and its working.

use super::element::{El, el, paragraph, span};
use super::live::{Derived, Live};
use crate::entry::text::joined;
use crate::facts::Lack;
use crate::plan::Panel;
use crate::show::{self, Figure, Shown, Working};
use crate::words::page as words;

/// Label and figure of the answer at a place of a line's panel. The head is at place 0.
pub fn answer(panel: Derived<Panel>, at: usize, scope: &str) -> [El; 2] {
    let id = format!("{scope}-answer-{at}");
    let label = move || panel.with(|it| it.all().nth(at).map_or("", |it| it.label)).to_owned();
    // Of the answers of a line a letter changes some: only those are laid out anew.
    let figure =
        Derived::new(move |_| panel.with(|it| it.all().nth(at).map(|it| it.figure.clone())));
    let said =
        Derived::new(
            move |_| {
                if at > 0 { panel.with(|it| it.head.lacks().to_vec()) } else { Vec::new() }
            },
        );
    let shown = move || {
        figure.with(|it| {
            let laid_out = |it: &Figure| said.with(|said| figure_without(it, said));
            it.as_ref().map(laid_out).unwrap_or_default()
        })
    };
    [
        el("span").class("cap").set("id", &id).live_text(label),
        el("output").set("aria-live", "off").set("aria-labelledby", &id).part(shown),
    ]
}

/// A figure with its unit and its range; what it lacks by name.
pub fn figure(shown: &Shown) -> Vec<El> {
    figure_without(&shown.figure, &[])
}

/// The same, without the lacks that were `said` already: a line says once what it needs.
fn figure_without(figure: &Figure, said: &[Lack]) -> Vec<El> {
    match figure {
        Figure::Number { text, unit, data, range } => {
            let mut all = vec![el("data").set("value", data).class("n").text(text)];
            if !unit.is_empty() {
                all.push(span("u", &format!("\u{a0}{unit}")));
            }
            let range =
                range.as_ref().map(|[low, high]| format!(" {low}{}{high}\u{a0}{unit}", words::TO));
            all.extend(range.map(|it| el("small").class("range").text(&it)));
            all
        }
        Figure::Day { text, data } => {
            vec![el("time").set("datetime", data).class("n day").text(text)]
        }
        Figure::Words(text) => vec![span("words", text)],
        Figure::Lacks(lacks) => {
            let more: Vec<&Lack> =
                lacks.iter().filter(|it| !said.iter().any(|said| said.id() == it.id())).collect();
            vec![if more.is_empty() {
                span("why", words::NOT_YET_KNOWN)
            } else {
                span("care", &show::needs(more))
            }]
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
