//! The bench view: one step of the sheet, or one fastener, very large, for oily hands and the sun. Keys and the screen's lock are
//! boot.js's.

use super::answer::figure;
use super::element::{El, button, el, paragraph, span};
use super::page::{Desk, Owner, Page};
use super::{browser, logbook, look, own_steps, step};
use crate::entry::text;
use crate::facts;
use crate::plan::address::{self, Address};
use crate::plan::{OwnSteps, Panel, Side, Stop, stop_at, stops};
use crate::show::Shown;
use crate::storage::keys;
use crate::words::{bench as words, page as page_words};
use leptos::prelude::*;

/// Where it was last on a side is kept under this key.
fn key(page: Page, side: Side) -> String {
    keys::several(keys::BENCH, &page.key()) + side.key()
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
    let Stop { side, place, .. } = stop;
    let step = stop.step();
    let desk = Desk::of_bike(page);
    let own = OwnSteps::of(side, &desk).titles;
    let title = match step {
        Some(step) => step.said.title,
        None => own.get(place.checked_sub(1)?)?,
    };
    let name = match side {
        Side::LayUp => page_words::LAY_UP,
        Side::WakeUp => page_words::WAKE_UP,
    };
    let steps = side.count(&desk);
    let number = step.map_or(steps + place, |it| it.number(&desk));
    let number = words::number(name, number, steps + own.len());
    let mut heading =
        el("h1").set("tabindex", "-1").child(el("small").text(&number)).text(" ").text(title);
    let mut from = desk.clone();
    let mut reason = step.map(|it| step::reason_now(it, &desk)).unwrap_or_default();
    let fasteners = page.fasteners.keys();
    if let (Some(_), Some(key)) = (step, place.checked_sub(1).and_then(|it| fasteners.get(it))) {
        from = Desk::of_item(page, page.fasteners.sheet(*key)?);
        let name = facts::FASTENER_NAME.known(&from);
        let name = name.unwrap_or_else(|| page_words::fastener(place));
        heading = heading.text(words::COLON).text(&name);
        reason = words::number(facts::FASTENER_NAME.about.label, place, fasteners.len());
    }
    browser::focus_soon(&heading);
    let mut bench =
        el("div").class("bench").child(back(stop)).child(heading).child(paragraph("why", &reason));
    let next = all.get(at + 1);
    let before = at.checked_sub(1).and_then(|it| all.get(it));
    let mut turn =
        el("nav").set("aria-label", words::BENCH).child(to(page, words::PREVIOUS, before));
    let mut tick = None;
    if let Some(step) = step {
        bench = bench.child(paragraph("care", &step::waits(step, &desk)));
        let panel = step.sum.map(|it| it.panel(&from, &from.drawer(), page.set.get()));
        if let Some(panel) = panel {
            // Here the wrench is turned: what nobody has held against the manual says so again.
            if let Some(said) = look::unchecked(&page.sheet()) {
                bench = bench.child(paragraph("warning", &said));
            }
            bench = answers(bench, &panel);
        }
        bench = bench.child(list("how", step.said.how));
        if step.lists_due {
            bench = bench.child(logbook::due(page));
        }
        // Torques are done when the last of them is.
        if next.is_none_or(|it| it.at != stop.at) {
            tick = Some(step::tick_box(page, step, &desk));
        }
    } else {
        tick = Some(own_steps::tick_box(page, side, title));
    }
    if let (Some(tick), Owner::Own(_)) = (tick, page.owner.get()) {
        turn = turn.child(el("label").child(tick).text(words::DONE));
    }
    Some(bench.child(turn.child(to(page, words::NEXT, next))))
}

/// To the same step on the sheet.
fn back(stop: Stop) -> El {
    let address = stop.address();
    let place =
        if stop.step().is_some() { text::from(&address, "bench/".len()) } else { stop.side.key() };
    el("a").class("quiet").set("href", &format!("#{place}")).text(words::BACK)
}

/// The head's answer largest, then all that it needs care for, then the others that are known.
fn answers(mut bench: El, panel: &Panel) -> El {
    for shown in panel.all().take(panel.heads()) {
        bench = answer(bench, "answer head", shown.label, shown);
    }
    bench = bench.child(paragraph("why", &panel.note));
    for warning in &panel.warnings {
        bench = bench.child(paragraph("warning", warning));
    }
    // Before the figures that matter less: what lies below the bar is read last, if at all.
    bench = bench.child(list("cautions", panel.cautions));
    for (what, shown) in &panel.steps {
        bench = answer(bench, "answer", what, shown);
    }
    for shown in panel.all().skip(panel.heads()) {
        if shown.lacks().is_empty() {
            bench = answer(bench, "answer", shown.label, shown);
        }
    }
    bench
}

fn answer(bench: El, class: &str, label: &str, shown: &Shown) -> El {
    let answer = el("p").class(class).child(span("cap", label));
    // Figures are leaves: they come behind what the answer holds already.
    bench.child(answer.holding(&|leaves| figure(leaves, shown)))
}

fn list(class: &str, all: &[&str]) -> El {
    el("ul").class(class).children(all.iter().map(|it| el("li").text(it)))
}

fn to(page: Page, name: &str, stop: Option<&Stop>) -> El {
    let Some(stop) = stop.copied() else {
        return el("button").class("go").text(name).set("disabled", "");
    };
    button("go", name, move || {
        page.address.set(Address::Bench(Some(stop.side), Some(stop)));
        browser::scroll_to_top();
    })
}
