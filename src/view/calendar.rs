//! The season's days as a calendar file, and what the last one had, so that what is no more is called off.

use super::browser;
use super::element::{El, button, el};
use super::page::{Desk, Page};
use super::records::{load, write};
use crate::calendar::{self, Saved};
use crate::plan;
use crate::storage::{keys, link};
use crate::words::dates as words;
use leptos::prelude::untrack;

/// The button that saves the file.
pub fn save_button(page: Page) -> El {
    el("p").child(button("quiet", words::SAVE, move || save(page)))
}

/// The season's days, each with the bike's link.
fn save(page: Page) {
    // Its events keep their names whatever becomes of the dates.
    if !page.is_example_untracked() {
        page.begin_season(&Desk::of_bike(page));
    }
    let text = untrack(|| {
        let parcel = page.parcel();
        let address = browser::address();
        // More than a link takes: the page alone.
        let link = link::made(&address, &parcel, false).unwrap_or(address);
        let mut events = plan::dates(&parcel.kept);
        calendar::call_off(&mut events, last(page));
        remember(page, &calendar::saved(&events));
        calendar::written(&events, &page.key(), &link, browser::now())
    });
    browser::save(words::FILE_NAME, "text/calendar;charset=utf-8", &text);
}

/// What the last file of the bike on the sheet had; nothing where there was none.
fn last(page: Page) -> Saved {
    page.store
        .get_untracked()
        .map(|store| load(page, store, &keys::of(keys::CALENDAR, &page.key())))
        .unwrap_or_default()
}

/// Remembers what the file has now. Where that fails an old event stays in the calendar, and no more.
fn remember(page: Page, saved: &Saved) {
    if let Some((key, store)) = page.own_place() {
        let _ = write(page, store, &keys::of(keys::CALENDAR, &key), saved);
    }
}
