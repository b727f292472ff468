//! The torque list as a table: pasted with a preview of every row, and copied out.

use super::browser;
use super::element::{El, button, el, paragraph, while_so};
use super::line::fold_button;
use super::page::Page;
use crate::garage::Entries;
use crate::storage::torque_csv::{self, NotATable, Sheet};
use crate::units::Measure;
use crate::words::{page as words, table};
use leptos::prelude::*;

/// A fold with the field to paste a table in, and the list as one.
pub fn table(page: Page) -> El {
    let open = RwSignal::new(false);
    let turn = move || open.update(|it| *it = !*it);
    let fold =
        fold_button("table-title", move || open.get(), turn).class("more").text(table::AS_A_TABLE);
    el("section").class("aside").set("aria-labelledby", "table-title").child(fold).child(while_so(
        "div",
        move || open.get(),
        move || inside(page),
    ))
}

fn inside(page: Page) -> Vec<El> {
    let pasted = RwSignal::new(String::new());
    let read = Memo::new(move |_| {
        let usual = Measure::Torque.usual(page.set.get())?;
        pasted.with(|it| (!it.trim().is_empty()).then(|| torque_csv::read(it, usual)))
    });
    let field = el("textarea")
        .set("id", "table-pasted")
        .set("rows", "5")
        .live_value(move || pasted.get())
        .take("input", move |text| pasted.set(text));
    let written = move || {
        page.changes.track();
        torque_csv::written(&untrack(|| page.fasteners.entries()))
    };
    let out = el("textarea")
        .set("id", "table-out")
        .set("rows", "4")
        .set("readonly", "")
        .live_value(written);
    let made = out.element();
    let copy = button("quiet", words::COPY, move || browser::copy(&made, &untrack(written)));
    vec![
        el("label").set("for", "table-pasted").text(table::PASTE_HERE),
        field,
        el("div").set("role", "status").part(move || {
            read.with(|it| it.as_ref().map_or_else(Vec::new, |it| preview(page, pasted, it)))
        }),
        el("label").set("for", "table-out").text(table::THE_LIST),
        out,
        el("p").child(copy),
    ]
}

/// Every row as it was read, or what is wrong with it; those that are whole can be added.
fn preview(page: Page, pasted: RwSignal<String>, read: &Result<Sheet, NotATable>) -> Vec<El> {
    let sheet = match read {
        Ok(sheet) => sheet,
        Err(why) => return vec![paragraph("care", &why.to_string())],
    };
    let whole: Vec<Entries> = sheet.rows.iter().filter_map(|it| it.read.clone().ok()).collect();
    let row = |it: &torque_csv::Row| {
        let class = if it.read.is_ok() { "" } else { "care" };
        el("li").class(class).text(&table::line(it.line, &torque_csv::told(it)))
    };
    let mut all = vec![el("ol").class("preview").children(sheet.rows.iter().map(row))];
    if !sheet.header {
        all.insert(0, paragraph("why", table::GUESSED));
    }
    if !whole.is_empty() {
        let name = table::add(whole.len());
        let sheet = sheet.clone();
        let add = button("do", &name, move || {
            page.add_fasteners(&whole);
            // What is still to be mended stays.
            pasted.update(|it| *it = sheet.left_of(it));
        });
        all.push(el("p").child(add));
    }
    all
}
