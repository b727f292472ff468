//! The bike as a link: making one, pasting one, and looking at one before anything of it is kept.

use super::element::{El, button, el, paragraph};
use super::live::{Derived, Live};
use super::page::Page;
use super::{browser, kept};
use crate::entry::text::from;
use crate::show;
use crate::storage::link;
use crate::words::page as words;

/// The link of the bike on the sheet.
pub fn make(page: Page) -> El {
    let with_names = Live::new(false);
    let copied = Live::new(false);
    let link = Derived::new(move |_| {
        let link = link::written(&page.parcel(), with_names.get());
        link.map(|it| format!("{}{it}", browser::address()))
    });
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
        .children(paste())
}

/// A field to paste a link in.
pub fn paste() -> Vec<El> {
    let pasted = Live::new(String::new());
    let refused = Live::new(String::new());
    let look = move || {
        let whole = pasted.get_untracked();
        let fragment = whole.rfind('#').map_or(whole.as_str(), |at| from(&whole, at)).trim();
        match link::read(fragment) {
            Ok(_) => browser::go(fragment),
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

/// What a link carries, before anything of it is kept.
pub fn preview(page: Page, fragment: &str) -> Vec<El> {
    let leave = move || browser::go("layup");
    let title = el("h1").set("id", "shared-title").text(words::SHARED_BIKE);
    let parcel = match link::read(fragment) {
        Ok(parcel) => parcel,
        Err(why) => {
            let leave = el("p").child(button("do", words::LEAVE_IT, leave));
            return vec![title, paragraph("care", &why.to_string()).set("role", "alert"), leave];
        }
    };
    let mut facts: Vec<El> =
        link::listed(&parcel).iter().map(|(label, text)| fact(label, text)).collect();
    if !parcel.kept.bike.fasteners.is_empty() {
        facts.push(fact(words::KEPT_FASTENERS, &parcel.kept.bike.fasteners.len().to_string()));
    }
    let made = format!("{}{}. {}", words::MADE_ON, show::long_day(parcel.made), words::SHARED_HINT);
    let keep = move || {
        kept::take_in(page, parcel.kept.clone());
        // Another's figures do not stay in the address.
        browser::go("layup");
    };
    let row = el("p").class("row").child(button("do", words::KEEP_AS_NEW, keep)).child(button(
        "quiet",
        words::LEAVE_IT,
        leave,
    ));
    let section = el("section")
        .class("shared")
        .set("aria-labelledby", "shared-title")
        .child(title)
        .child(paragraph("why", &made))
        .child(el("dl").children(facts))
        .child(row);
    vec![section]
}

fn fact(label: &str, text: &str) -> El {
    el("div").child(el("dt").text(label)).child(el("dd").text(text))
}
