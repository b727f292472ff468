//! The owner's own steps, behind those of a side: each with its tick, and a blank for one more.

use super::browser;
use super::element::{El, button, el, paragraph, span};
use super::live::{Derived, Live};
use super::page::{Desk, Page};
use crate::entry::text::joined;
use crate::plan::{OwnSteps, Side};
use crate::words::{own_steps as words, page as page_words};
use leptos::prelude::*;

/// The list and the blank.
pub fn own_steps(page: Page, side: Side) -> Vec<El> {
    let desk = Desk::of_bike(page);
    let [of, all] = [(); 2].map(|()| desk.clone());
    // Laid out anew when there are others, not with every tick.
    let titles = Derived::new(move |_| joined(&OwnSteps::of(side, &of).titles, "\n"));
    let room = Derived::new(move |_| OwnSteps::of(side, &desk).room());
    let rows = move || {
        titles.get();
        let own = untrack(|| OwnSteps::of(side, &all));
        own.titles.iter().enumerate().map(|it| row(page, side, it)).collect()
    };
    let typed = Live::new(String::new());
    let refused = Live::new(false);
    let add = move || {
        let (title, mut added) = (typed.get_untracked(), false);
        change(page, side, &mut |own| added = own.add(&title));
        refused.set(!added && !title.trim().is_empty());
        if added {
            typed.set(String::new());
        }
    };
    let id = "own-step";
    let blank = el("input")
        .set("type", "text")
        .set("id", id)
        .set("autocomplete", "off")
        .live("maxlength", move || room.get().to_string())
        .live_value(move || typed.get())
        .take("input", move |text| typed.set(text))
        .on("keydown", move |event| {
            if browser::is_enter(&event) {
                add();
            }
        });
    let full = move || {
        match (room.get(), refused.get()) {
            (0, _) => words::NO_ROOM,
            (_, true) => words::THERE_ALREADY,
            _ => "",
        }
        .to_owned()
    };
    vec![
        el("ol").class("mine").set("aria-label", words::OWN_STEPS).part(rows),
        el("div")
            .class("blank own")
            .child(el("label").set("for", id).text(words::ADD_OWN))
            .child(el("span").class("in").child(blank).child(button("quiet", words::ADD, add)))
            .child(paragraph("hint", "").live_text(full)),
    ]
}

fn row(page: Page, side: Side, (at, title): (usize, &String)) -> El {
    let desk = Desk::of_bike(page);
    let number = move || (side.count(&desk) + at + 1).to_string();
    let remove = {
        let title = title.clone();
        button("quiet", page_words::REMOVE, move || remove(page, side, &title))
    };
    let tick = el("label")
        .child(tick_box(page, side, title))
        .child(el("span").set("aria-hidden", "true").live_text(number));
    let fold = el("div")
        .class("fold")
        .child(el("div").class("no").child(tick))
        .child(el("h3").class("own").text(title))
        .child(remove.child(span("aloud", title)));
    el("li").class("line").child(fold)
}

/// The box of one of them.
pub fn tick_box(page: Page, side: Side, title: &str) -> El {
    let desk = Desk::of_bike(page);
    let [done, take] = [(); 2].map(|()| title.to_owned());
    el("input")
        .set("type", "checkbox")
        .set("aria-label", &format!("{}{title}", page_words::DONE))
        .live_so("checked", move || OwnSteps::of(side, &desk).is_done(&done))
        .on("change", move |_| turn(page, side, &take))
}

/// Ticks one or opens it again, with its entry in the logbook.
fn turn(page: Page, side: Side, title: &str) {
    let desk = Desk::of_bike(page);
    if !page.begin_season(&desk) {
        return;
    }
    let (mut done, own) = (false, title.to_owned());
    change(page, side, &mut |own| {
        own.turn(title);
        done = own.is_done(title);
    });
    let back = Box::new(move || change(page, side, &mut |it| it.turn(&own)));
    let today = page.today.get_untracked();
    let tag = untrack(|| side.tag(&format!("own/{title}"), &desk, today));
    page.log_tick(tag, title, title, done, "", back);
}

/// Changes them, and takes what they are then.
#[inline(never)]
fn change(page: Page, side: Side, how: &mut dyn FnMut(&mut OwnSteps)) {
    let desk = Desk::of_bike(page);
    let mut own = untrack(|| OwnSteps::of(side, &desk));
    how(&mut own);
    for (id, text) in own.written() {
        if desk.signal(id).get_untracked().text != text {
            page.typed(&desk, id, text);
        }
    }
}

fn remove(page: Page, side: Side, title: &str) {
    let mut was = None;
    change(page, side, &mut |own| was = own.remove(title));
    if let Some(was) = was {
        let back = title.to_owned();
        let back = move || change(page, side, &mut |own| own.put_back(&back, was));
        page.can_undo_by(page_words::removed(title), back);
    }
}
