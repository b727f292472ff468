//! One calculator alone, with nothing saved and nothing set up.

use super::element::{El, el, paragraph, span};
use super::line::{Told, head, panel};
use super::page::{Desk, Page};
use super::torques;
use crate::entry::Entry;
use crate::facts;
use crate::plan::{Line, address::QuickSum};
use crate::words::{lines, page as words};
use leptos::prelude::*;

/// The calculator that a quick sum opens.
pub fn page(page: Page, sum: QuickSum) -> Vec<El> {
    let QuickSum::Of(line) = sum else {
        return vec![el("h1").text(name(sum)), paragraph("", words::NOT_YET), offer()];
    };
    let desk = Desk::quick(page);
    if line == Line::Torques {
        // Who comes for a quick sum of a torque mostly has an adapter in hand; it shows, and one tap changes it.
        desk.signal(facts::ADAPTER.id()).set(Entry::new("in_line", 0));
    }
    let told = Told::new(line, &desk, page);
    let said = line.words();
    let scope = format!("quick-{}", line.key());
    let title = "quick-title";
    let section = el("section")
        .class("quick line open")
        .set("aria-labelledby", title)
        .child(paragraph("kind", words::QUICK_SUM))
        .child(el("h1").set("id", title).text(said.quick))
        .child(paragraph("why", &format!("{}. {}", said.quick_reason, words::NOTHING_SAVED)))
        .child(el("div").class("fold").child(head(page, &desk, told, &scope, || true)))
        .children(match line {
            Line::Torques => torques::fastener(page, &desk, told, &scope),
            _ => vec![panel(page, &desk, told, &scope)],
        });
    vec![section, el("p").child(el("a").class("to-sheet").set("href", "#layup").text(words::SHEET))]
}

/// Links to the quick sums.
pub fn offer() -> El {
    let live = QuickSum::ALL.into_iter().filter(|it| matches!(it, QuickSum::Of(_)));
    let links = live
        .map(|it| el("li").child(el("a").set("href", &format!("#{}", it.key())).text(name(it))));
    el("nav")
        .class("offer")
        .set("aria-label", words::QUICK_SUMS)
        .child(span("cap", words::QUICK_SUMS))
        .child(el("ul").children(links))
}

fn name(sum: QuickSum) -> &'static str {
    match sum {
        QuickSum::Of(line) => line.words().quick,
        QuickSum::Coolant => lines::COOLANT_QUICK,
        QuickSum::Tires => lines::TIRES_QUICK,
    }
}
