//! The lay-up side: whose bike it is, the season in a sentence, the season line, the lines in the order of the work.

use super::line::LineView;
use super::link;
use super::page::{Desk, Owner, Page};
use super::season::{SeasonLineView, Sentence};
use crate::facts;
use crate::plan::Line;
use crate::words::page as words;
use leptos::prelude::*;

/// The lay-up side of the sheet.
#[component]
pub fn LayUp() -> impl IntoView {
    let page = expect_context::<Page>();
    let desk = Desk::of_bike(page);
    let named = desk.clone();
    let name = Memo::new(move |_| facts::BIKE_NAME.maybe(&named).ok().flatten());
    provide_context(desk);
    let example = Memo::new(move |_| page.owner.get() == Owner::Example);
    let pasting = RwSignal::new(false);
    view! {
        {move || example.get().then(|| view! {
            <div class="back">
                <p>
                    {words::HAD_A_BIKE}
                    <button type="button" class="quiet" aria-expanded=move || pasting.get().to_string() on:click=move |_| pasting.update(|it| *it = !*it)>
                        {words::PASTE_A_LINK}
                    </button>
                    ". " {words::INVENTED}
                    <button type="button" class="quiet" on:click=move |_| page.start_own()>{words::START_YOUR_OWN}</button>
                    {words::TYPE_OVER}
                </p>
                {move || pasting.get().then(|| view! { <link::Paste /> })}
            </div>
        })}
        <h1>
            {move || name.get().unwrap_or_else(|| words::YOUR_BIKE.to_owned())}
            {move || example.get().then(|| view! { " " <span class="example">{words::EXAMPLE}</span> })}
        </h1>
        <Sentence />
        <SeasonLineView />
        <h2 class="side">{words::LAY_UP} {move || example.get().then(|| view! { " " <span class="example">{words::EXAMPLE}</span> })}</h2>
        <ol class="sheet">
            {Line::ALL.into_iter().enumerate().map(|(at, line)| view! { <LineView line number=at + 1 /> }).collect_view()}
        </ol>
    }
}
