//! The fasteners that are kept: what to set for each, one tap away.

use super::line::{Told, fold_button, head, panel};
use super::live::{act, button, each, steady_flag, steady_text, while_so};
use super::page::{Desk, Owner, Page};
use crate::facts;
use crate::plan::{Line, address::Address};
use crate::words::page as words;
use leptos::prelude::*;

/// The button that keeps the open fastener, and the list of those kept.
pub fn kept(page: Page, _: &Desk, told: Told) -> AnyView {
    let can_keep = steady_flag(move || {
        page.owner.get() != Owner::Example && told.panel.with(|it| it.head.lacks().is_empty())
    });
    let some = steady_flag(move || page.fasteners.with(|it| !it.is_empty()));
    let keys = Memo::new(move |_| {
        page.fasteners.with(|all| all.iter().map(|it| it.key).collect::<Vec<_>>())
    });
    view! {
        {while_so(can_keep, move || button("do", words::KEEP_FASTENER, move || page.keep_fastener()))}
        {while_so(some, || view! { <h4 class="cap">{words::KEPT_FASTENERS}</h4> }.into_any())}
        <ol class="fasteners">{each(keys.into(), move |key| row(page, key))}</ol>
    }
    .into_any()
}

fn row(page: Page, key: usize) -> AnyView {
    let place = move || page.fasteners.with(|all| all.iter().position(|it| it.key == key));
    let Some(sheet) = page
        .fasteners
        .with_untracked(|all| all.iter().find(|it| it.key == key).map(|it| it.sheet.clone()))
    else {
        return ().into_any();
    };
    let desk = Desk::of_fastener(page, sheet);
    let told = Told::new(Line::Torques, &desk, page);
    let named = desk.clone();
    let name = steady_text(move || {
        let own = facts::FASTENER_NAME.maybe(&named).ok().flatten();
        own.unwrap_or_else(|| words::fastener(place().map_or(0, |it| it + 1)))
    });
    let number = untrack(place).map(|it| it + 1);
    let open =
        RwSignal::new(page.address.get_untracked() == Address::Sheet(Some(Line::Torques), number));
    let scope = format!("fastener-{key}");
    let [title, panel_id] = ["title", "panel"].map(|it| format!("{scope}-{it}"));
    let labelled_by = title.clone();
    let fold = fold_button(title, panel_id.clone(), open.into(), name, move || {
        open.update(|it| *it = !*it)
    });
    let head = head(page, &desk, told, &scope, open.into());
    let remove = act(move || page.remove_fastener(key, &name.get_untracked()));
    view! {
        <li class="fastener">
            <section aria-labelledby=labelled_by>
                <div class="fold">
                    <h5>{fold}</h5>
                    {head}
                    <button type="button" class="quiet" on:click=remove>{words::REMOVE} <span class="aloud">{name}</span></button>
                </div>
                <div id=panel_id>{while_so(open.into(), move || panel(page, &desk, told, &scope))}</div>
            </section>
        </li>
    }
    .into_any()
}
