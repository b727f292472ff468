//! An answer as it stands on the page, and its working.

use super::live::{part, text};
use crate::facts::{self, Lack};
use crate::plan::Panel;
use crate::show::{Figure, Shown, Working};
use crate::words::page as words;
use leptos::prelude::*;

/// The answer at a place of a line's panel: its label, its figure, its range. The head is at place 0.
pub fn answer(panel: Memo<Panel>, at: usize, scope: &str) -> AnyView {
    let id = format!("{scope}-answer-{at}");
    let labelled_by = id.clone();
    let label =
        text(move || panel.with(|it| it.all().nth(at).map_or("", |it| it.label)).to_owned());
    let shown = part(move || panel.with(|it| it.all().nth(at).map(figure)).into_any());
    view! {
        <div class="answer">
            <span class="cap" id=id>{label}</span>
            <output aria-live="off" aria-labelledby=labelled_by>{shown}</output>
        </div>
    }
    .into_any()
}

/// A figure with its unit and its range; what it lacks by name.
pub fn figure(shown: &Shown) -> AnyView {
    match &shown.figure {
        Figure::Number { text, unit, data, range } => {
            let range = range
                .as_ref()
                .map(|[low, high]| format!("{low}{}{high} {unit}", words::TO))
                .unwrap_or_default();
            view! {
                <data value=data.clone() class="n">{text.clone()}</data>
                " "
                <span class="u">{*unit}</span>
                <small class="range">{range}</small>
            }
            .into_any()
        }
        Figure::Day { text, data } => {
            view! { <time datetime=data.clone() class="n day">{text.clone()}</time> }.into_any()
        }
        Figure::Words(text) => view! { <span class="words">{text.clone()}</span> }.into_any(),
        Figure::Lacks(lacks) => view! { <span class="care">{needs(lacks)}</span> }.into_any(),
    }
}

/// "needs Tank volume, Fuel in the tank"; a refused fact says why beside its blank.
fn needs(lacks: &[Lack]) -> String {
    let labels: Vec<&str> =
        lacks.iter().filter_map(|it| facts::about(it.id())).map(|it| it.label).collect();
    format!("{}{}", words::NEEDS, labels.join(", "))
}

/// The workings of all answers of a line, the head's first.
pub fn workings(panel: Memo<Panel>) -> AnyView {
    let workings = part(move || {
        panel.with(|it| {
            let all = it.all().filter_map(|it| Some(working(it.label, it.working.as_ref()?)));
            all.collect_view().into_any()
        })
    });
    view! {
        <details>
            <summary>{words::WORKING}</summary>
            {workings}
        </details>
    }
    .into_any()
}

fn working(label: &'static str, working: &Working) -> AnyView {
    let Working { formula, substituted, legend, source, holds } = working;
    let legend: Vec<String> =
        legend.iter().map(|(symbol, name, amount)| format!("{symbol} {name} {amount}")).collect();
    view! {
        <div class="work">
            <p class="cap">{label}</p>
            <p>{format!("{formula} = {substituted}")}</p>
            <p class="legend">{legend.join(" · ")}</p>
            <p class="source">{format!("{}{source}. {}{holds}.", words::SOURCE, words::HOLDS)}</p>
        </div>
    }
    .into_any()
}
