//! The fasteners that are kept: what to set for each, one tap away.

use super::element::{El, button, el, span, while_so};
use super::line::{Told, fold_button, head, panel};
use super::page::{Desk, Owner, Page};
use crate::facts;
use crate::plan::{Line, address::Address};
use crate::words::page as words;
use leptos::prelude::*;

/// The button that keeps the open fastener, and the list of those kept.
pub fn kept(page: Page, told: Told) -> El {
    let can_keep = move || {
        page.owner.get() != Owner::Example && told.panel.with(|it| it.head.lacks().is_empty())
    };
    let keep = move || vec![button("do", words::KEEP_FASTENER, move || page.keep_fastener())];
    let some = move || page.fasteners.with(|it| !it.is_empty());
    let title = || vec![el("h4").class("cap").text(words::KEPT_FASTENERS)];
    let keys = move || page.fasteners.with(|all| all.iter().map(|it| it.key).collect());
    el("div")
        .child(while_so("p", can_keep, keep))
        .child(while_so("div", some, title))
        .child(el("ol").class("fasteners").each(keys, move |key| row(page, key)))
}

fn row(page: Page, key: usize) -> El {
    let place = move || page.fasteners.with(|all| all.iter().position(|it| it.key == key));
    let sheet = page
        .fasteners
        .with_untracked(|all| all.iter().find(|it| it.key == key).map(|it| it.sheet.clone()));
    let Some(sheet) = sheet else { return el("li") };
    let desk = Desk::of_fastener(page, sheet);
    let told = Told::new(Line::Torques, &desk, page);
    let named = desk.clone();
    let name = Memo::new(move |_| {
        let own = facts::FASTENER_NAME.maybe(&named).ok().flatten();
        own.unwrap_or_else(|| words::fastener(place().map_or(0, |it| it + 1)))
    });
    let number = untrack(place).map(|it| it + 1);
    let open =
        RwSignal::new(page.address.get_untracked() == Address::Sheet(Some(Line::Torques), number));
    let scope = format!("fastener-{key}");
    let title = format!("{scope}-title");
    let fold = fold_button(&title, move || open.get(), move || open.update(|it| *it = !*it))
        .live_text(move || name.get());
    let remove =
        button("quiet", words::REMOVE, move || page.remove_fastener(key, &name.get_untracked()))
            .child(span("aloud", " ").live_text(move || name.get()));
    let row = el("div")
        .class("fold")
        .child(el("h5").child(fold))
        .child(head(page, &desk, told, &scope, move || open.get()))
        .child(remove);
    let inside =
        while_so("div", move || open.get(), move || vec![panel(page, &desk, told, &scope)]);
    el("li")
        .class("fastener")
        .child(el("section").set("aria-labelledby", &title).child(row).child(inside))
}
