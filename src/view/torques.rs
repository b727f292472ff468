//! The fasteners that are kept: what to set for each, one tap away.

use super::line::{Head, PanelView, Told};
use super::page::{Desk, Fastener, Owner, Page};
use crate::facts;
use crate::plan::{Line, address::Address};
use crate::words::page as words;
use leptos::prelude::*;

/// The button that keeps the open fastener, and the list of those kept.
#[component]
pub fn Kept() -> impl IntoView {
    let page = expect_context::<Page>();
    let own = Memo::new(move |_| page.owner.get() != Owner::Example);
    let told = expect_context::<Told>();
    let named = move || told.panel.with(|it| it.head.lacks().is_empty());
    let rows = move || page.fasteners.get().into_iter().enumerate().collect::<Vec<_>>();
    view! {
        {move || (own.get() && named()).then(|| view! {
            <p><button type="button" class="do" on:click=move |_| page.keep_fastener()>{words::KEEP_FASTENER}</button></p>
        })}
        {move || (!page.fasteners.with(Vec::is_empty)).then(|| view! { <h4 class="cap">{words::KEPT_FASTENERS}</h4> })}
        <ol class="fasteners">
            <For each=rows key=|(at, it)| (*at, it.key) let((at, fastener))>
                <Row fastener number=at + 1 />
            </For>
        </ol>
    }
}

#[component]
fn Row(fastener: Fastener, number: usize) -> impl IntoView {
    let page = expect_context::<Page>();
    let Fastener { key, sheet } = fastener;
    let desk = Desk::of_fastener(page, sheet);
    let told = Told::new(Line::Torques, desk.clone(), page);
    let named = desk.clone();
    let name = Memo::new(move |_| {
        facts::FASTENER_NAME.maybe(&named).ok().flatten().unwrap_or_else(|| words::fastener(number))
    });
    provide_context(desk);
    provide_context(told);
    let here = page.address.get_untracked() == Address::Sheet(Some(Line::Torques), Some(number));
    let open = RwSignal::new(here);
    let scope = format!("fastener-{key}");
    let title = format!("{scope}-title");
    let titled_by = title.clone();
    view! {
        <li class="fastener">
            <section aria-labelledby=titled_by>
                <div class="fold">
                    <h5>
                        <button type="button" id=title aria-expanded=move || open.get().to_string() on:click=move |_| open.update(|it| *it = !*it)>
                            <span class="mk" aria-hidden="true">{move || if open.get() { "▾" } else { "▸" }}</span>
                            {name}
                        </button>
                    </h5>
                    <Head told scope=scope.clone() open />
                    <button type="button" class="quiet" on:click=move |_| page.remove_fastener(key, &name.get_untracked())>
                        {words::REMOVE} <span class="aloud">" " {name}</span>
                    </button>
                </div>
                {move || open.get().then(|| view! { <PanelView told scope=scope.clone() /> })}
            </section>
        </li>
    }
}
