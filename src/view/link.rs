//! The bike as a link: making one, pasting one, and looking at one before anything of it is kept.

use super::live::{button, nothing, paragraph, text, ticked, typed, while_so};
use super::page::Page;
use super::{browser, kept};
use crate::show;
use crate::storage::link;
use crate::words::page as words;
use leptos::{html, prelude::*};

/// The link of the bike on the sheet.
pub fn make(page: Page) -> AnyView {
    let with_names = RwSignal::new(false);
    let copied = RwSignal::new(false);
    let field = NodeRef::<html::Textarea>::new();
    let link = text(move || {
        copied.set(false);
        format!("{}{}", browser::address(), link::written(&page.parcel(), with_names.get()))
    });
    let copy = move || {
        if let Some(field) = field.get_untracked() {
            field.select();
        }
        browser::copy(&link.get_untracked());
        copied.set(true);
    };
    view! {
        <div class="drawer">
            <label for="link-made">{words::YOUR_LINK}</label>
            <textarea id="link-made" rows="3" readonly node_ref=field prop:value=link></textarea>
            <p class="row">
                {button("do", words::COPY, copy)}
                <span class="box">
                    <input type="checkbox" id="link-names" on:change=ticked(move |on| with_names.set(on)) />
                    <label for="link-names">{words::WITH_NAMES}</label>
                </span>
                <span role="status">{while_so(copied.into(), || words::COPIED.into_any())}</span>
            </p>
            <p class="why">{words::LINK_HINT}</p>
            {paste()}
        </div>
    }
    .into_any()
}

/// A field to paste a link in.
pub fn paste() -> AnyView {
    let pasted = RwSignal::new(String::new());
    let refused = RwSignal::new(String::new());
    let look = move || {
        let whole = pasted.get_untracked();
        let fragment = whole.rfind('#').map_or(whole.as_str(), |at| &whole[at..]).trim();
        match link::read(fragment) {
            Ok(_) => browser::go(fragment),
            Err(why) => refused.set(why.to_string()),
        }
    };
    let take = typed(move |text| {
        refused.set(String::new());
        pasted.set(text);
    });
    view! {
        <label for="link-pasted">{words::LINK_HERE}</label>
        <textarea id="link-pasted" rows="2" aria-describedby="link-refused" prop:value=text(move || pasted.get()) on:input=take></textarea>
        <p id="link-refused" class="care" role="alert">{text(move || refused.get())}</p>
        <p>{button("do", words::LOOK_AT_IT, look)}</p>
    }
    .into_any()
}

/// What a link carries, before anything of it is kept.
pub fn preview(page: Page, fragment: &str) -> AnyView {
    let leave = move || browser::go("layup");
    let parcel = match link::read(fragment) {
        Ok(parcel) => parcel,
        Err(why) => {
            return view! {
                <h1>{words::SHARED_BIKE}</h1>
                {paragraph("care", why.to_string())}
                <p>{button("do", words::LEAVE_IT, leave)}</p>
            }
            .into_any();
        }
    };
    let facts =
        link::listed(&parcel).into_iter().map(|(label, text)| fact(label, text)).collect_view();
    let fasteners = match parcel.kept.bike.fasteners.len() {
        0 => nothing(),
        count => fact(words::KEPT_FASTENERS, count.to_string()),
    };
    let made = format!("{}{}. {}", words::MADE_ON, show::long_day(parcel.made), words::SHARED_HINT);
    let keep = move || {
        kept::take_in(page, parcel.kept.clone());
        // Another's figures do not stay in the address.
        browser::go("layup");
    };
    view! {
        <section class="shared" aria-labelledby="shared-title">
            <h1 id="shared-title">{words::SHARED_BIKE}</h1>
            {paragraph("why", made)}
            <dl>{facts} {fasteners}</dl>
            <p class="row">{button("do", words::KEEP_AS_NEW, keep)} {button("quiet", words::LEAVE_IT, leave)}</p>
        </section>
    }
    .into_any()
}

fn fact(label: &'static str, text: String) -> AnyView {
    view! { <div><dt>{label}</dt> <dd>{text}</dd></div> }.into_any()
}
