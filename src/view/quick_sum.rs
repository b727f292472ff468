//! One calculator alone, with nothing saved and nothing set up.

use super::element::{El, el, paragraph, span};
use super::line::{Told, head, panel};
use super::page::{Desk, Page};
use super::torques;
use crate::entry::Entry;
use crate::facts;
use crate::plan::{Line, address::QuickSum};
use crate::words::page as words;

/// The calculator that a quick sum opens.
pub fn page(page: Page, sum: QuickSum) -> Vec<El> {
    let QuickSum::Of(line) = sum;
    let desk = Desk::quick(page);
    match line {
        // Who comes for a quick sum of a torque mostly has an adapter in hand; it shows, and one tap changes it.
        Line::Torques => desk.signal(facts::ADAPTER.id()).set(Entry::new("in_line", 0)),
        // Who comes for one of coolant has some.
        Line::Coolant => desk.signal(facts::COOLING.id()).set(Entry::new("liquid", 0)),
        _ => {}
    }
    let told = Told::of(&desk, page, move |desk, drawer, set| {
        let mut panel = line.panel(desk, drawer, set);
        // A name is for what is kept.
        panel.blanks.retain(|it| *it != facts::FASTENER_NAME.id());
        panel
    });
    let said = line.words();
    let scope = format!("quick-{}", line.key());
    let title = "quick-title";
    let section = el("section")
        .class("quick line open")
        .set("aria-labelledby", title)
        .child(paragraph("kind", words::QUICK_SUM))
        .child(el("h1").set("id", title).text(said.quick))
        .child(paragraph("why", &format!("{}. {}", said.quick_reason, words::NOTHING_SAVED)))
        .child(el("div").class("fold").child(head(page, &desk, told, &scope, None)))
        .children(match line {
            Line::Torques => torques::fastener(page, &desk, told, &scope),
            _ => vec![panel(page, &desk, told, &scope)],
        });
    vec![section, el("p").child(el("a").class("to-sheet").set("href", "#layup").text(words::SHEET))]
}

/// Links to the quick sums.
pub fn offer() -> El {
    let links = QuickSum::ALL.into_iter().map(|it| el("li").child(link(it)));
    el("nav")
        .class("offer")
        .set("aria-label", words::QUICK_SUMS)
        .child(span("cap", words::QUICK_SUMS))
        .child(el("ul").children(links))
}

/// Link to a quick sum.
pub fn link(sum: QuickSum) -> El {
    let QuickSum::Of(line) = sum;
    el("a").set("href", &format!("#{}", sum.key())).text(line.words().quick)
}
