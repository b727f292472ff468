//! The lay-up side: whose bike it is, the season in a sentence, the season line, the lines in the order of the work.

use super::element::{El, button, el, paragraph, span, while_so};
use super::line::{self, Told};
use super::page::{Desk, Owner, Page};
use super::{link, season, season_line, torques};
use crate::facts;
use crate::plan::Line;
use crate::words::page as words;
use leptos::prelude::*;

/// The lay-up side of the sheet.
pub fn lay_up(page: Page) -> Vec<El> {
    let desk = Desk::of_bike(page);
    let named = desk.clone();
    let name = move || {
        facts::BIKE_NAME.maybe(&named).ok().flatten().unwrap_or_else(|| words::YOUR_BIKE.to_owned())
    };
    let example = move || page.owner.get() == Owner::Example;
    let mark = || while_so("span", example, || vec![span("example", words::EXAMPLE)]);
    let lines = Line::ALL.into_iter().enumerate().map(|(at, it)| {
        let (told, inside): (_, line::Inside) = match it {
            Line::Torques => (torques::told(page), torques::inside),
            _ => (Told::new(it, &Desk::of_bike(page), page), plain),
        };
        line::line(page, it, at + 1, told, inside)
    });
    vec![
        while_so("div", example, move || vec![introduction(page)]),
        el("h1").live_text(name).text(" ").child(mark()),
        season::sentence(page, &desk),
        season_line::season_line(page, &desk),
        el("h2").class("side").text(words::LAY_UP).text(" ").child(mark()),
        el("ol").class("sheet").children(lines),
    ]
}

/// The inside of a line that is a calculator and no more.
fn plain(page: Page, desk: &Desk, told: Told, scope: &str) -> Vec<El> {
    vec![line::panel(page, desk, told, scope)]
}

/// Above the example: the way back for an owner, and the way in for everybody else.
fn introduction(page: Page) -> El {
    let pasting = RwSignal::new(false);
    let paste = button("quiet", words::PASTE_A_LINK, move || pasting.update(|it| *it = !*it))
        .live("aria-expanded", move || pasting.get().to_string());
    let start = button("do", words::START_YOUR_OWN, move || page.start_own());
    let back = el("p").text(words::HAD_A_BIKE).child(paste).text(".");
    let row = el("div").class("row").child(start).child(el("p").text(words::INVENTED)).child(back);
    el("div").class("back").child(paragraph("purpose", words::PURPOSE)).child(row).child(while_so(
        "div",
        move || pasting.get(),
        link::paste,
    ))
}
