//! The bench view: one step of the sheet, or one fastener, very large, for oily hands and the sun.

use super::answer::figure;
use super::element::{El, button, el, paragraph, span};
use super::page::{Desk, Owner, Page};
use super::{browser, step};
use crate::facts::{self, Facts, Id};
use crate::plan::address::{self, Address};
use crate::plan::{Panel, Side, Stop, stop_at, stops};
use crate::show::Shown;
use crate::words::{bench as words, page as page_words};
use leptos::prelude::*;
use web_sys::Event;

/// Where it was last on a side is kept under this key.
fn key(page: Page, side: Side) -> String {
    format!("bench.{}.{}", side.key(), page.key())
}

/// All stops of the side that is looked at, and the place of the one that is: the one wanted, or where it was.
fn here(page: Page, side: Option<Side>, wanted: Option<Stop>) -> (Vec<Stop>, usize) {
    let desk = Desk::of_bike(page);
    let side = side.unwrap_or_else(|| Side::on(page.today.get(), &desk));
    let written = || match address::read(&page.store.get()?.read(&key(page, side))?) {
        Address::Bench(_, stop) => stop,
        _ => None,
    };
    let all = stops(side, &desk, page.fasteners.keys().len());
    let at = stop_at(&all, wanted.or_else(written), &desk);
    (all, at)
}

/// The stop that an address names.
pub fn bench(page: Page, side: Option<Side>, wanted: Option<Stop>) -> Vec<El> {
    // Nothing of it changes while it is looked at, but for the tick.
    untrack(|| {
        let (all, at) = here(page, side, wanted);
        let Some(stop) = all.get(at) else { return Vec::new() };
        let address = stop.address();
        browser::replace_fragment(&address);
        if let (Some(store), Owner::Own(_)) = (page.store.get(), page.owner.get()) {
            // A full store has said so already, and this is no loss.
            let _ = store.write(&key(page, stop.side), &address);
        }
        laid_out(page, &all, at).into_iter().collect()
    })
}

fn laid_out(page: Page, all: &[Stop], at: usize) -> Option<El> {
    let stop = *all.get(at)?;
    let step = stop.step()?;
    let desk = Desk::of_bike(page);
    let side = match stop.side {
        Side::LayUp => page_words::LAY_UP,
        Side::WakeUp => page_words::WAKE_UP,
    };
    let number = words::number(side, stop.at + 1, stop.side.steps().len());
    let mut heading = el("h1")
        .set("tabindex", "-1")
        .child(el("small").text(&number))
        .text(" ")
        .text(step.said.title);
    let left_out = step.left_out(&desk).map(|it| format!("{}{it}", page_words::LEFT_OUT));
    let mut reason = left_out.unwrap_or_else(|| step.said.reason.to_owned());
    let mut from = desk.clone();
    let fasteners = page.fasteners.keys();
    if let Some(key) = stop.place.checked_sub(1).and_then(|it| fasteners.get(it)) {
        from = Desk::of_item(page, page.fasteners.sheet(*key)?);
        let name = facts::FASTENER_NAME.known(&from);
        let name = name.unwrap_or_else(|| page_words::fastener(stop.place));
        heading = heading.text(words::COLON).text(&name);
        reason = words::number(facts::FASTENER_NAME.about.label, stop.place, fasteners.len());
    }
    browser::focus_soon(&heading);
    let back = format!("#{}/{}", stop.side.key(), step.choice.key);
    let mut bench = el("div")
        .class("bench")
        .child(el("a").class("quiet").set("href", &back).text(words::BACK))
        .child(heading)
        .child(paragraph("why", &reason))
        .child(paragraph("care", &step::waits(step, &desk)));
    let panel = step.sum.map(|it| it.panel(&from, &from.drawer(), page.set.get()));
    if let Some(panel) = &panel {
        bench = answers(bench, panel);
    }
    bench = bench.child(list("how", step.said.how));
    for id in step.blanks {
        bench = known(bench, &desk, *id);
    }
    if let Some(panel) = panel {
        bench = bench.child(list("cautions", panel.cautions));
    }
    let next = all.get(at + 1);
    let mut turn = el("nav").set("aria-label", words::BENCH).child(to(
        page,
        words::PREVIOUS,
        at.checked_sub(1).and_then(|it| all.get(it)),
    ));
    // Torques are done when the last of them is.
    if page.owner.get() != Owner::Example && next.is_none_or(|it| it.at != stop.at) {
        let tick = step::tick_box(page, step, &desk);
        turn = turn.child(el("label").child(tick).text(words::DONE));
    }
    Some(bench.child(turn.child(to(page, words::NEXT, next))))
}

/// The head's answer largest, then what it needs care for, then all others that are known.
fn answers(bench: El, panel: &Panel) -> El {
    let mut bench = answer(bench, "answer head", panel.head.label, &panel.head)
        .child(paragraph("why", &panel.note));
    for warning in &panel.warnings {
        bench = bench.child(paragraph("warning", warning));
    }
    for (what, shown) in &panel.steps {
        bench = answer(bench, "answer", what, shown);
    }
    for shown in &panel.answers {
        if shown.lacks().is_empty() {
            bench = answer(bench, "answer", shown.label, shown);
        }
    }
    bench
}

fn answer(bench: El, class: &str, label: &str, shown: &Shown) -> El {
    bench.child(el("p").class(class).child(span("cap", label)).children(figure(shown)))
}

fn list(class: &str, all: &[&str]) -> El {
    el("ul").class(class).children(all.iter().map(|it| el("li").text(it)))
}

/// What the step asks, where it was said.
fn known(bench: El, desk: &Desk, id: Id) -> El {
    let entry = desk.entry(id);
    match facts::about(id) {
        Some(about) if !entry.is_blank() => {
            let said = facts::as_read(about, &entry);
            bench.child(el("p").child(span("cap", about.label)).text(&said))
        }
        _ => bench,
    }
}

fn to(page: Page, name: &str, stop: Option<&Stop>) -> El {
    let stop = stop.copied();
    let to = button("go", name, move || go(page, stop));
    if stop.is_none() { to.set("disabled", "") } else { to }
}

fn go(page: Page, stop: Option<Stop>) {
    if let Some(stop) = stop {
        page.address.set(Address::Bench(Some(stop.side), Some(stop)));
        browser::scroll_to_top();
    }
}

/// Keys that turn the steps like pages; up and down move the page as everywhere.
pub fn on_key(page: Page, event: &Event) {
    let Address::Bench(side, wanted) = page.address.get_untracked() else { return };
    let back = match browser::key(event).as_str() {
        "ArrowRight" | "PageDown" | " " => false,
        "ArrowLeft" | "PageUp" | "Shift+ " => true,
        _ => return,
    };
    event.prevent_default();
    let (all, at) = untrack(|| here(page, side, wanted));
    go(
        page,
        if back { at.checked_sub(1) } else { Some(at + 1) }.and_then(|it| all.get(it)).copied(),
    );
}
