//! A step of the sheet: its tick, what is done and why now, its answer; unfolded how it is done, its calculator, and a
//! reason to leave it out.

use super::element::{El, el, paragraph, while_so};
use super::entry_field::{Dress, blank};
use super::line::{Told, fold_button, head};
use super::live::Derived;
use super::page::{Desk, Page};
use super::{browser, logbook};
use crate::entry::text::joined;
use crate::facts::{self, Id};
use crate::plan::{Line, Step};
use crate::words::{page as words, steps};
use leptos::prelude::*;

/// The calculator of a step: what answers it, and what stands inside.
#[derive(Clone, Copy)]
pub struct Sum {
    /// Its answers.
    pub told: Told,
    /// What stands inside when it is unfolded.
    pub inside: fn(Page, &Desk, Told, &str) -> Vec<El>,
}

/// A step of the sheet.
pub fn step(page: Page, step: &'static Step, sum: Option<Sum>) -> El {
    let desk = Desk::of_bike(page);
    let id = format!("line-{}", step.choice.key);
    let title = format!("{id}-title");
    let open = Derived::new(move |_| page.open.with(|it| it.contains(&step)));
    let fold =
        fold_button(&title, move || open.get(), move || turn(page, step)).text(step.said.title);
    let waiting = desk.clone();
    let left_out = desk.clone();
    let left_out = Derived::new(move |_| step.left_out(&left_out).unwrap_or_default());
    let reason = desk.clone();
    let what = el("div")
        .class("what")
        .child(el("h3").child(fold))
        .child(el("p").class("why").live_text(move || reason_now(step, &reason)))
        .child(el("p").class("care").live_text(move || waits(step, &waiting)))
        .maybe(
            step.lists_due.then(|| el("p").class("care").live_text(move || logbook::past(page))),
        );
    let row = el("div")
        .class("fold")
        .child(tick(page, step, &desk))
        .child(what)
        .maybe(sum.map(|it| head(page, &desk, it.told, &id, Some(open))));
    let [inside, state] = [(); 2].map(|()| desk.clone());
    let scope = id.clone();
    let inside = el("div").part(move || match open.get() {
        true => unfolded(page, step, &inside, sum, &scope),
        false => Vec::new(),
    });
    let class = move || {
        let folded = match (open.get(), page.open_rows.get()) {
            (false, _) => "line",
            (true, 0) => "line open",
            // A row's own head stays in sight in place of the line's.
            (true, _) => "line open in-row",
        };
        let over = step.is_done(&state) || !left_out.with(String::is_empty);
        format!("{folded}{}", if over { " over" } else { "" })
    };
    let section =
        el("section").set("aria-labelledby", &title).set("id", &id).child(row).child(inside);
    el("li").live("class", class).child(section)
}

fn turn(page: Page, step: &'static Step) {
    let side = step.side.key();
    let was = page.open.with_untracked(|it| it.contains(&step));
    page.open.update(|it| {
        it.retain(|it| *it != step);
        if !was {
            it.push(step);
        }
    });
    let key = if was { String::new() } else { format!("/{}", step.choice.key) };
    browser::replace_fragment(&format!("{side}{key}"));
}

/// Why it is done now, or why it is left out.
pub fn reason_now(step: &Step, desk: &Desk) -> String {
    match step.left_out(desk) {
        None => step.said.reason.to_owned(),
        Some(reason) => format!("{}{reason}", words::LEFT_OUT),
    }
}

/// What it waits for, in words.
pub fn waits(step: &Step, desk: &Desk) -> String {
    let titles = step.waits_for(desk);
    if titles.is_empty() { String::new() } else { steps::waits_for(&joined(&titles, ", ")) }
}

/// The step's number, and on a bike of one's own a box to tick, which waits for the steps before it.
fn tick(page: Page, step: &'static Step, desk: &Desk) -> El {
    let desk = desk.clone();
    el("div").class("no").part(move || {
        let of = desk.clone();
        let number =
            el("span").set("aria-hidden", "true").live_text(move || step.number(&of).to_string());
        if page.is_example() {
            return vec![number];
        }
        vec![el("label").child(tick_box(page, step, &desk)).child(number)]
    })
}

/// The box alone.
pub fn tick_box(page: Page, step: &'static Step, desk: &Desk) -> El {
    let [done, waits, take] = [(); 3].map(|()| desk.clone());
    el("input")
        .set("type", "checkbox")
        .set("aria-label", &format!("{}{}", words::DONE, step.said.title))
        .live_so("checked", move || step.is_done(&done))
        .live_so("disabled", move || !step.is_done(&waits) && !step.waits_for(&waits).is_empty())
        .on("change", move |_| page.tick(step, &take))
}

fn unfolded(
    page: Page,
    step: &'static Step,
    desk: &Desk,
    sum: Option<Sum>,
    scope: &str,
) -> Vec<El> {
    let how = step.said.how.iter().map(|it| el("li").text(it));
    // The calculator may ask the same further down: two blanks, each with its own name.
    let first = format!("{scope}-first");
    let told = sum.map(|it| it.told);
    let blanks = step.blanks.iter().map(|it| blank(page, desk, told, *it, &first, Dress::Whole));
    let mut all =
        vec![el("ul").class("how").children(how), el("div").class("blanks").children(blanks)];
    all.extend(step.lists_due.then(|| logbook::due(page)));
    all.extend(sum.map(|it| (it.inside)(page, desk, it.told, scope)).into_iter().flatten());
    all.push(logged(page, step, desk, scope));
    let desk = desk.clone();
    let scope = scope.to_owned();
    let own = move || !page.is_example();
    all.push(while_so("div", own, move || vec![leave_out(page, step, &desk, &scope)]));
    all
}

/// Of a step that is done, when it was and at which reading, as its tick wrote it in the logbook.
fn logged(page: Page, step: &'static Step, desk: &Desk, scope: &str) -> El {
    const ASKED: [Id; 6] = [
        facts::LOG_DAY.id(),
        facts::LOG_ODOMETER.id(),
        facts::LOG_NOTE.id(),
        // What was changed and not only looked at goes under its own name.
        facts::LOG_LINE.id(),
        facts::OIL_POURED.id(),
        facts::OIL_DRAINED.id(),
    ];
    let asked = match step.sum {
        Some(Line::Oil) => &ASKED[..],
        _ => &ASKED[..if step.looks { 4 } else { 3 }],
    };
    let (desk, scope) = (desk.clone(), format!("{scope}-logged"));
    el("div").part(move || {
        page.book.turns.track();
        if !step.is_done(&desk) {
            return Vec::new();
        }
        let tag = step.tag(&desk, page.today.get());
        let key = page.logbook().ticked(&tag).map(|it| it.key);
        key.map(|it| logbook::blanks_of(page, it, asked, &scope)).into_iter().collect()
    })
}

/// A reason to leave it out this season.
fn leave_out(page: Page, step: &'static Step, desk: &Desk, scope: &str) -> El {
    let id = format!("{scope}-leave-out");
    let [now, room, take] = [(); 3].map(|()| desk.clone());
    let input = el("input")
        .set("type", "text")
        .set("id", &id)
        .set("autocomplete", "off")
        .live("maxlength", move || step.room(&room).to_string())
        .live_value(move || step.reason(&now))
        .take("input", move |reason| {
            let (id, text) = untrack(|| step.leaving_out(&take, &reason));
            page.typed(&take, id, text);
        });
    el("div")
        .class("blank")
        .child(el("label").set("for", &id).text(words::LEAVE_OUT))
        .child(el("span").class("in").child(input))
        .child(paragraph("hint", words::LEAVE_OUT_HINT))
}
