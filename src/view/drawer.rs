//! The wrench drawer: the garage's wrenches, for all of its bikes.

use super::browser;
use super::element::{El, button, el, span, while_so};
use super::entry_field::{Dress, blank};
use super::line::{Told, fold_button};
use super::live::Live;
use super::page::{Desk, Page};
use crate::entry::Entry;
use crate::facts::{self, Id};
use crate::garage::Entries;
use crate::plan;
use crate::words::page as words;
use leptos::prelude::*;

impl Page {
    /// Takes a wrench of the drawer for the fastener on a desk; `None`: the one that serves best.
    pub fn take_wrench(self, desk: &Desk, place: Option<usize>) {
        let key = place.and_then(|place| {
            let item = untrack(|| self.wrenches.with(|all| all.get(place).cloned()))?;
            let signal = item.sheet.signal(facts::WRENCH_KEY.id())?;
            if signal.get_untracked().is_blank() {
                let key = browser::new_number().to_string();
                signal.set(Entry { text: key, unit: 0, edited: browser::now() });
            }
            Some(signal.get_untracked().text)
        });
        self.typed(desk, facts::TAKEN_WRENCH.id(), key.unwrap_or_default());
    }
}

/// All wrenches, each with its marks, and a button for another.
pub fn drawer(page: Page) -> El {
    let add = move || {
        let added = page.wrenches.add([&Entries::new()]);
        page.opened.set(added.first().copied());
        page.changed();
    };
    el("section")
        .class("drawer-of-wrenches")
        .set("aria-labelledby", "drawer-title")
        .child(el("h4").class("cap").set("id", "drawer-title").text(words::DRAWER))
        .child(
            el("ul").class("rows").each(move || page.wrenches.keys(), move |key| wrench(page, key)),
        )
        .child(el("p").child(button("quiet", words::ANOTHER_WRENCH, add)))
}

fn wrench(page: Page, key: usize) -> El {
    let Some(sheet) = page.wrenches.sheet(key) else { return el("li") };
    let desk = Desk::of_item(page, sheet);
    let place = move || page.wrenches.place(key).unwrap_or(0);
    let told = Told::of(&desk, page, move |desk, _, set| plan::wrench(desk, place(), set));
    let open = Live::new(page.opened.get_untracked() == Some(key));
    let scope = format!("wrench-{key}");
    let title = format!("{scope}-title");
    let name = move || told.panel.with(|it| it.note.clone());
    let fold = fold_button(&title, move || open.get(), move || open.update(|it| *it = !*it))
        .live_text(name);
    let scale = move || told.panel.with(|it| it.head.figure_words());
    let row = el("div")
        .class("fold")
        .child(el("h5").child(fold))
        .child(el("p").class("fig why").live_text(scale));
    let inside = move || {
        let blanks = {
            let (desk, scope) = (desk.clone(), scope.clone());
            move |id: usize| blank(page, &desk, Some(told), Id(id as u16), &scope, Dress::Whole)
        };
        let ids =
            move || told.panel.with(|it| it.blanks.iter().map(|it| usize::from(it.0)).collect());
        let remove = button("quiet", words::REMOVE, move || {
            page.remove(page.wrenches, key, &untrack(name));
        });
        vec![
            el("div").class("blanks columns").each(ids, blanks),
            el("p").child(remove.child(span("aloud", " ").live_text(name))),
        ]
    };
    el("li").class("row-of").child(
        el("section").set("aria-labelledby", &title).child(row).child(while_so(
            "div",
            move || open.get(),
            inside,
        )),
    )
}
