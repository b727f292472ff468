//! The lay-up side: whose bike it is, the season in a sentence, the season line, the lines in the order of the work.

use super::line;
use super::live::{act, button, nothing, steady_flag, steady_text, text, while_so};
use super::page::{Desk, Owner, Page};
use super::{link, season, torques};
use crate::facts;
use crate::plan::Line;
use crate::words::page as words;
use leptos::prelude::*;

/// The lay-up side of the sheet.
pub fn lay_up(page: Page) -> AnyView {
    let desk = Desk::of_bike(page);
    let named = desk.clone();
    let name = steady_text(move || {
        facts::BIKE_NAME.maybe(&named).ok().flatten().unwrap_or_else(|| words::YOUR_BIKE.to_owned())
    });
    let example = steady_flag(move || page.owner.get() == Owner::Example);
    let mark = move || {
        while_so(example, || view! { " " <span class="example">{words::EXAMPLE}</span> }.into_any())
    };
    let lines = Line::ALL.into_iter().enumerate().map(|(at, it)| {
        let below = if it == Line::Torques { torques::kept } else { |_, _: &Desk, _| nothing() };
        line::line(page, &desk, it, at + 1, below)
    });
    let lines = lines.collect_view();
    view! {
        {while_so(example, move || introduction(page))}
        <h1>{name} {mark()}</h1>
        {season::sentence(page, &desk)}
        {season::season_line(page, &desk)}
        <h2 class="side">{words::LAY_UP} {mark()}</h2>
        <ol class="sheet">{lines}</ol>
    }
    .into_any()
}

/// Above the example: the way back for an owner, and the way in for everybody else.
fn introduction(page: Page) -> AnyView {
    let pasting = RwSignal::new(false);
    let expanded = text(move || pasting.get().to_string());
    let turn = act(move || pasting.update(|it| *it = !*it));
    view! {
        <div class="back">
            <p>
                {words::HAD_A_BIKE}
                <button type="button" class="quiet" aria-expanded=expanded on:click=turn>{words::PASTE_A_LINK}</button>
                {words::INVENTED} {button("quiet", words::START_YOUR_OWN, move || page.start_own())} {words::TYPE_OVER}
            </p>
            {while_so(pasting.into(), link::paste)}
        </div>
    }
    .into_any()
}
