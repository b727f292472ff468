//! An answer as it stands on the page, and its working.

use crate::facts::{self, Lack};
use crate::plan::Panel;
use crate::show::{Figure, Shown, Working};
use crate::words::page as words;
use leptos::prelude::*;

/// The answer under `label` of a line: its label, its figure large or small, its range.
#[component]
pub fn AnswerShown(
    panel: Memo<Panel>,
    label: &'static str,
    #[prop(into)] scope: String,
) -> impl IntoView {
    let shown = Memo::new(move |_| panel.with(|it| it.answer(label).cloned()));
    let id = format!("{scope}-{}", slug(label));
    view! {
        <div class="answer">
            <span class="cap" id=id.clone()>{label}</span>
            <output aria-live="off" aria-labelledby=id>{move || shown.get().map(figure)}</output>
        </div>
    }
}

/// A figure with its unit and its range; what it lacks by name.
pub fn figure(shown: Shown) -> AnyView {
    match shown.figure {
        Figure::Number { text, unit, data, range } => view! {
            <data value=data class="n">{text}</data>
            " "
            <span class="u">{unit}</span>
            {range.map(|[low, high]| view! { <small class="range">{low} {words::TO} {high} " " {unit}</small> })}
        }
        .into_any(),
        Figure::Day { text, data } => view! { <time datetime=data class="n day">{text}</time> }.into_any(),
        Figure::Words(text) => view! { <span class="words">{text}</span> }.into_any(),
        Figure::Lacks(lacks) => view! { <span class="care">{needs(&lacks)}</span> }.into_any(),
    }
}

/// "needs Tank volume, Fuel in the tank"; a refused fact says why beside its blank.
pub fn needs(lacks: &[Lack]) -> String {
    let labels: Vec<&str> =
        lacks.iter().filter_map(|it| facts::about(it.id())).map(|it| it.label).collect();
    format!("{}{}", words::NEEDS, labels.join(", "))
}

/// The workings of all answers of a line, the head's first.
#[component]
pub fn Workings(panel: Memo<Panel>) -> impl IntoView {
    let workings = move || {
        panel.with(|it| {
            it.all().filter_map(|it| Some((it.label, it.working.clone()?))).collect::<Vec<_>>()
        })
    };
    view! {
        <details>
            <summary>{words::WORKING}</summary>
            {move || workings().into_iter().map(|(label, working)| view! { <WorkingShown label working /> }).collect_view()}
        </details>
    }
}

#[component]
fn WorkingShown(label: &'static str, working: Working) -> impl IntoView {
    let Working { formula, substituted, legend, source, holds } = working;
    let legend =
        legend.into_iter().map(|(symbol, name, amount)| format!("{symbol} {name} {amount}"));
    view! {
        <div class="work">
            <p class="cap">{label}</p>
            <p>{formula} " = " {substituted}</p>
            <p class="legend">{legend.collect::<Vec<_>>().join(" · ")}</p>
            <p class="source">{words::SOURCE} {source} ". " {words::HOLDS} {holds} "."</p>
        </div>
    }
}

/// A label as part of an id.
pub fn slug(label: &str) -> String {
    label.to_lowercase().replace(|it: char| !it.is_ascii_alphanumeric(), "-")
}
