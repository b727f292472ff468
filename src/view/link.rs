//! The bike as a link: making one, pasting one, and looking at one before anything of it is kept.

use super::page::Page;
use super::{browser, kept};
use crate::show;
use crate::storage::link;
use crate::words::page as words;
use leptos::{html, prelude::*};

/// The link of the bike on the sheet.
#[component]
pub fn Make() -> impl IntoView {
    let page = expect_context::<Page>();
    let with_names = RwSignal::new(false);
    let copied = RwSignal::new(false);
    let field = NodeRef::<html::Textarea>::new();
    let link = Memo::new(move |_| {
        copied.set(false);
        format!("{}{}", browser::address(), link::written(&page.parcel(), with_names.get()))
    });
    let copy = move |_| {
        if let Some(field) = field.get_untracked() {
            field.select();
        }
        browser::copy(&link.get_untracked());
        copied.set(true);
    };
    view! {
        <div class="drawer">
            <label for="link-made">{words::YOUR_LINK}</label>
            <textarea id="link-made" rows="3" readonly node_ref=field prop:value=move || link.get()></textarea>
            <p class="row">
                <button type="button" class="do" on:click=copy>{words::COPY}</button>
                <span class="tick">
                    <input type="checkbox" id="link-names" on:change:target=move |event| with_names.set(event.target().checked()) />
                    <label for="link-names">{words::WITH_NAMES}</label>
                </span>
                <span role="status">{move || copied.get().then_some(words::COPIED)}</span>
            </p>
            <p class="why">{words::LINK_HINT}</p>
            <Paste />
        </div>
    }
}

/// A field to paste a link in.
#[component]
pub fn Paste() -> impl IntoView {
    let text = RwSignal::new(String::new());
    let refused = RwSignal::new(None::<String>);
    let look = move |_| {
        let text = text.get_untracked();
        let fragment = text.rfind('#').map_or(text.as_str(), |at| &text[at..]);
        match link::read(fragment) {
            Ok(_) => browser::go(fragment.trim()),
            Err(why) => refused.set(Some(why.to_string())),
        }
    };
    view! {
        <label for="link-pasted">{words::LINK_HERE}</label>
        <textarea id="link-pasted" rows="2" aria-describedby="link-refused" prop:value=text
            on:input:target=move |event| {
                refused.set(None);
                text.set(event.target().value());
            }
        ></textarea>
        <p id="link-refused" class="care" role="alert">{move || refused.get()}</p>
        <p><button type="button" class="do" on:click=look>{words::LOOK_AT_IT}</button></p>
    }
}

/// What a link carries, before anything of it is kept.
#[component]
pub fn Preview(fragment: String) -> impl IntoView {
    let page = expect_context::<Page>();
    let leave = move |_| browser::go("layup");
    let parcel = match link::read(&fragment) {
        Ok(parcel) => parcel,
        Err(why) => {
            return view! {
                <h1>{words::SHARED_BIKE}</h1>
                <p class="care" role="alert">{why.to_string()}</p>
                <p><button type="button" class="do" on:click=leave>{words::LEAVE_IT}</button></p>
            }
            .into_any();
        }
    };
    let facts = link::listed(&parcel);
    let fasteners = parcel.kept.bike.fasteners.len();
    let made = show::long_day(parcel.made);
    let keep = move |_| {
        kept::take_in(page, parcel.kept.clone());
        // Another's figures do not stay in the address.
        browser::go("layup");
    };
    view! {
        <section class="shared" aria-labelledby="shared-title">
            <h1 id="shared-title">{words::SHARED_BIKE}</h1>
            <p class="why">{words::MADE_ON} {made} ". " {words::SHARED_HINT}</p>
            <dl>
                {facts.into_iter().map(|(label, text)| view! { <div><dt>{label}</dt> <dd>{text}</dd></div> }).collect_view()}
                {(fasteners > 0).then(|| view! { <div><dt>{words::KEPT_FASTENERS}</dt> <dd>{fasteners}</dd></div> })}
            </dl>
            <p class="row">
                <button type="button" class="do" on:click=keep>{words::KEEP_AS_NEW}</button>
                <button type="button" class="quiet" on:click=leave>{words::LEAVE_IT}</button>
            </p>
        </section>
    }
    .into_any()
}
