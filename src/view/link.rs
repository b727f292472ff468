//! The bike as a link: making one and pasting one.

use super::element::{El, button, el, paragraph};
use super::live::{Derived, Live};
use super::page::Page;
use super::{browser, look};
use crate::entry::text::from;
use crate::storage::link;
use crate::words::page as words;

/// The link of the bike on the sheet.
pub fn make(page: Page) -> El {
    let with_names = Live::new(false);
    let copied = Live::new(false);
    let link =
        Derived::new(move |_| link::made(&browser::address(), &page.parcel(), with_names.get()));
    let field =
        el("textarea").set("id", "link-made").set("rows", "3").set("readonly", "").live_value(
            move || {
                copied.set(false);
                link.get().unwrap_or_default()
            },
        );
    let made = field.element();
    let copy = move || {
        if let Some(link) = link.get_untracked() {
            browser::copy(&made, &link);
            copied.set(true);
        }
    };
    let names =
        el("input").set("type", "checkbox").set("id", "link-names").on("change", move |_| {
            with_names.update(|it| *it = !*it);
        });
    let names = el("span")
        .class("box")
        .child(names)
        .child(el("label").set("for", "link-names").text(words::WITH_NAMES));
    let said = el("span").set("role", "status").live_text(move || {
        let words = match link.get() {
            None => words::TOO_MUCH_FOR_A_LINK,
            Some(_) if copied.get() => words::COPIED,
            Some(_) => "",
        };
        words.to_owned()
    });
    el("div")
        .class("drawer")
        .child(el("label").set("for", "link-made").text(words::YOUR_LINK))
        .child(field)
        .child(el("p").class("row").child(button("do", words::COPY, copy)).child(names).child(said))
        .child(paragraph("why", words::LINK_HINT))
        .children(paste(page))
}

/// A field to paste a link in.
pub fn paste(page: Page) -> Vec<El> {
    let pasted = Live::new(String::new());
    let refused = Live::new(String::new());
    let look = move || {
        let whole = pasted.get_untracked();
        let fragment = whole.rfind('#').map_or(whole.as_str(), |at| from(&whole, at)).trim();
        match link::read(fragment) {
            // No step in the history: the link is not to stay there.
            Ok(_) => look::go(page, fragment),
            Err(why) => refused.set(why.to_string()),
        }
    };
    let field = el("textarea")
        .set("id", "link-pasted")
        .set("rows", "2")
        .set("aria-describedby", "link-refused")
        .take("input", move |text| {
            refused.set(String::new());
            pasted.set(text);
        });
    let why = el("p")
        .set("id", "link-refused")
        .class("care")
        .set("role", "alert")
        .live_text(move || refused.get());
    vec![
        el("label").set("for", "link-pasted").text(words::LINK_HERE),
        field,
        why,
        el("p").child(button("do", words::LOOK_AT_IT, look)),
    ]
}
