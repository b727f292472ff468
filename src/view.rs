//! The page: reads the live sheet, lays out lines, entries and answers. Computes nothing and names no quantity.

mod answer;
mod browser;
mod entry_field;
mod garage;
mod kept;
mod line;
mod link;
mod live;
mod page;
mod quick_sum;
mod season;
mod sheet;
mod torques;

use crate::plan::address::Address;
use crate::words::{cautions, page as words};
use leptos::prelude::*;
use live::{act, nothing, paragraph, part, text};
use page::{Page, Saving};

/// The whole page.
#[component]
pub fn App() -> impl IntoView {
    let page = Page::open();
    provide_context(page);
    kept::keep(page);
    browser::on_hash_change(move || page.read_address());
    browser::on_show(move || page.today.set(browser::today()));

    let content = part(move || match page.address.get() {
        Address::Sheet(..) => sheet::lay_up(page),
        Address::Quick(sum) => quick_sum::page(page, sum),
        Address::Link(fragment) => link::preview(page, &fragment),
        Address::Unknown(body) => {
            let said = paragraph("care", format!("{}{body}", words::UNKNOWN_ADDRESS));
            [said, sheet::lay_up(page)].into_iter().collect_view().into_any()
        }
    });
    let kept_here = text(move || match page.saving.get() {
        Saving::Kept => words::KEPT_HERE.to_owned(),
        _ => String::new(),
    });
    view! {
        <div class="page">
            <header class="top">
                <a class="mark" href="#layup">{words::NAME}</a>
                {garage::tools(page)}
            </header>
            {notices(page)}
            <main>{content}</main>
            <footer>
                {quick_sum::offer()}
                <p>{cautions::MANUAL_DECIDES}</p>
                <p>{kept_here}</p>
            </footer>
            <p class="aloud" role="status">{text(move || page.spoken.get())}</p>
        </div>
    }
}

/// What has to be said above the sheet: storage that fails, records set aside, the last removal.
fn notices(page: Page) -> AnyView {
    let said = part(move || {
        let saving = match page.saving.get() {
            Saving::Kept => None,
            Saving::Blocked => Some(words::NOT_KEPT.to_owned()),
            Saving::Failed(why) => Some(format!("{}{why}", words::NOT_SAVED)),
        };
        let all = saving.into_iter().chain(page.notices.get());
        all.map(|it| paragraph("notice care", it)).collect_view().into_any()
    });
    let undo = part(move || {
        match page.undo.get() {
        Some(undo) => view! {
            <p class="notice">
                {undo.said} " "
                <button type="button" class="quiet" on:click=act(move || page.take_back())>{words::UNDO}</button>
            </p>
        }
        .into_any(),
        None => nothing(),
    }
    });
    view! { <div role="alert">{said}</div> {undo} }.into_any()
}
