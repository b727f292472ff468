//! The page: reads the live sheet, lays out lines, entries and answers. Computes nothing and names no quantity.

mod answer;
mod browser;
mod entry_field;
mod garage;
mod kept;
mod line;
mod link;
mod page;
mod quick_sum;
mod season;
mod sheet;
mod torques;

use crate::plan::address::Address;
use crate::words::{cautions, page as words};
use leptos::prelude::*;
use page::{Page, Saving};

/// The whole page.
#[component]
pub fn App() -> impl IntoView {
    let page = Page::open();
    provide_context(page);
    kept::keep(page);
    browser::on_hash_change(move || page.read_address());

    view! {
        <div class="page">
            <header class="top">
                <a class="mark" href="#layup">{words::NAME}</a>
                <garage::Tools />
            </header>
            <Notices page />
            <main>
                {move || match page.address.get() {
                    Address::Sheet(..) => view! { <sheet::LayUp /> }.into_any(),
                    Address::Quick(sum) => view! { <quick_sum::QuickSumPage sum /> }.into_any(),
                    Address::Link(fragment) => view! { <link::Preview fragment /> }.into_any(),
                    Address::Unknown(body) => view! {
                        <p class="care" role="alert">{words::UNKNOWN_ADDRESS} {body}</p>
                        <sheet::LayUp />
                    }
                    .into_any(),
                }}
            </main>
            <footer>
                <quick_sum::Offer />
                <p>{cautions::MANUAL_DECIDES}</p>
                <p>{move || (page.saving.get() == Saving::Kept).then_some(words::KEPT_HERE)}</p>
            </footer>
            <p class="aloud" role="status">{move || page.spoken.get()}</p>
        </div>
    }
}

/// What has to be said above the sheet: storage that fails, records set aside, the last removal.
#[component]
fn Notices(page: Page) -> impl IntoView {
    let saving = move || match page.saving.get() {
        Saving::Kept => None,
        Saving::Blocked => Some(words::NOT_KEPT.to_owned()),
        Saving::Failed(why) => Some(format!("{}{why}", words::NOT_SAVED)),
    };
    view! {
        <div role="alert">
            {move || saving().map(|it| view! { <p class="notice care">{it}</p> })}
            {move || {
                page.notices
                    .get()
                    .into_iter()
                    .map(|it| view! { <p class="notice care">{it}</p> })
                    .collect_view()
            }}
        </div>
        {move || page.undo.get().map(|undo| view! {
            <p class="notice">
                {undo.said.clone()} " "
                <button type="button" class="quiet" on:click=move |_| page.take_back()>{words::UNDO}</button>
            </p>
        })}
    }
}
