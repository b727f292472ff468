//! The torque list as a table: pasted or opened with a preview of every row, copied out or saved.

use super::browser;
use super::element::{El, button, el, paragraph, while_so};
use super::line::fold_button;
use super::live::Live;
use super::page::Page;
use crate::garage::Entries;
use crate::storage::text;
use crate::storage::torque_csv::{self, NotATable, Sheet};
use crate::units::{self, Measure};
use crate::words::{page as words, table};
use leptos::prelude::*;

/// The field's text is what there is to read; what was read of it stands beside it. Both stay while the fold is shut.
#[derive(Clone, Copy)]
pub struct Pasted {
    text: Live<String>,
    /// Read anew when the text comes from the field or a file, not for each cell that is mended below it.
    read: Live<Option<Result<Sheet, NotATable>>>,
    /// What a bare number in it means, from its first letter on.
    usual: Live<u8>,
}

/// A fold with the field to paste a table in, and the list as one.
pub fn table(page: Page) -> El {
    let open = Live::new(false);
    let turn = move || open.update(|it| *it = !*it);
    let fold =
        fold_button("table-title", move || open.get(), turn).class("more").text(table::AS_A_TABLE);
    el("section")
        .class("aside table")
        .set("aria-labelledby", "table-title")
        .child(fold)
        .child(while_so("div", move || open.get(), move || inside(page)))
}

fn inside(page: Page) -> Vec<El> {
    let pasted = page.pasted;
    let field = el("textarea")
        .set("id", "table-pasted")
        .set("rows", "5")
        .live_value(move || pasted.text.get())
        .take("input", move |text| pasted.take(page, text));
    let not_read = Live::new(false);
    let file = el("input")
        .set("type", "file")
        .set("id", "table-file")
        .set("accept", ".csv,.tsv,.txt,text/csv,text/plain");
    let chosen = file.element();
    let file = file.on("change", move |_| {
        browser::read_file(&chosen, torque_csv::LONGEST, move |bytes| {
            // The fold may have been shut meanwhile.
            not_read.set(bytes.is_none());
            if let Some(bytes) = bytes {
                pasted.add(page, &text::of_file(&bytes));
            }
        });
    });
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
    let save = button("quiet", table::SAVE, move || {
        // The mark in front tells a spreadsheet that it is UTF-8.
        let text = format!("\u{feff}{}", untrack(written));
        browser::save(table::FILE_NAME, "text/csv;charset=utf-8", &text);
    });
    let some = move || page.fasteners.with(|it| !it.is_empty());
    let list = move || {
        vec![
            el("label").set("for", "table-out").class("cap").text(table::THE_LIST),
            out.same(),
            el("p").class("row").children([copy.same(), save.same()]),
        ]
    };
    vec![
        el("label").set("for", "table-pasted").class("cap").text(table::PASTE_HERE),
        paragraph("why", table::PASTE_HINT),
        field,
        el("p")
            .class("row")
            .child(el("label").set("for", "table-file").text(table::OPEN_A_FILE))
            .child(file),
        el("p").class("care").set("role", "alert").live_text(move || {
            if not_read.get() { table::FILE_NOT_READ.to_owned() } else { String::new() }
        }),
        el("div").part(move || pasted.preview(page)),
        while_so("div", some, list),
    ]
}

impl Pasted {
    /// Nothing yet.
    pub fn new() -> Self {
        Self { text: Live::new(String::new()), read: Live::new(None), usual: Live::new(0) }
    }

    fn take(self, page: Page, text: String) {
        if self.text.with_untracked(|it| it.trim().is_empty()) {
            let usual = Measure::Torque.usual(page.set.get_untracked());
            self.usual.set(usual.map_or(0, |it| it.code));
        }
        let usual = units::by_code(self.usual.get_untracked());
        let read = usual.filter(|_| !text.trim().is_empty());
        self.read.set(read.map(|it| torque_csv::read(&text, it)));
        self.text.set(text);
    }

    /// Below what is there already, of which nothing is lost.
    fn add(self, page: Page, text: &str) {
        let before = self.text.get_untracked();
        let all = if before.trim().is_empty() { text.to_owned() } else { before + "\n" + text };
        self.take(page, all);
    }

    /// The table whose fasteners are taken back, in place of what was left of it; what was typed since stays below.
    pub fn put_back(self, page: Page, text: String) {
        let left = self
            .text
            .with_untracked(|now| now.lines().all(|line| text.lines().any(|known| known == line)));
        if left {
            self.take(page, text);
        } else {
            self.take(page, text + "\n" + &self.text.get_untracked());
        }
    }

    /// Every row as it was read, or what is wrong with it, to be mended there; those that are whole can be added.
    fn preview(self, page: Page) -> Vec<El> {
        let sheet = match self.read.get() {
            None => return Vec::new(),
            Some(Ok(sheet)) => sheet,
            Some(Err(why)) => {
                return vec![paragraph("care", &why.to_string()).set("role", "status")];
            }
        };
        let header = sheet.header;
        let rows = sheet.rows.len();
        let now = Live::new(sheet);
        let whole = move || now.with(|it| it.rows.iter().filter(|row| row.read.is_ok()).count());
        let add = button("do", "", move || self.add_whole(page, &now.get_untracked()))
            .live_text(move || table::add(whole()));
        vec![
            paragraph("cap", "")
                .set("role", "status")
                .live_text(move || table::summary(whole(), rows - whole())),
            el("p").class("why").text(if header { "" } else { table::GUESSED }),
            el("ol").class("preview").children((0..rows).map(|at| self.row(now, at))),
            while_so("p", move || whole() > 0, move || vec![add.same()]),
        ]
    }

    fn row(self, now: Live<Sheet>, at: usize) -> El {
        let told = move || {
            now.with(|it| it.rows.get(at).map(|row| table::line(row.line, &torque_csv::told(row))))
                .unwrap_or_default()
        };
        let (wrong, cells) = now.with_untracked(|sheet| {
            let Some(row) = sheet.rows.get(at) else { return (false, Vec::new()) };
            let cell = |cell: usize| {
                let said = row.cells.get(cell).map_or("", String::as_str);
                (cell, sheet.name(cell).to_owned(), said.to_owned())
            };
            (row.read.is_err(), sheet.to_mend(row).into_iter().map(cell).collect())
        });
        // Only what was wrong can change.
        if !wrong {
            return el("li").text(&untrack(told));
        }
        let class = move || {
            let mended = now.with(|it| it.rows.get(at).is_some_and(|row| row.read.is_ok()));
            if mended { "" } else { "care" }.to_owned()
        };
        let fields = cells.into_iter().map(|(cell, name, said)| {
            let id = format!("table-{at}-{cell}");
            let name = if name.is_empty() { table::column(cell + 1) } else { name };
            let field = el("input").set("id", &id).set("value", &said).take("input", move |said| {
                let text = self.text.get_untracked();
                if let Some(text) = now.try_update(|it| it.mend(&text, at, cell, &said)) {
                    self.text.set(text);
                    // For the next time that the fold is opened; what stands here stays under the cursor.
                    self.read.set_untracked(Some(Ok(now.get_untracked())));
                }
            });
            el("div")
                .child(el("label").set("for", &id).class("cap").text(&name))
                .child(el("div").class("in").child(field))
        });
        el("li")
            .child(el("span").live("class", class).live_text(told))
            .child(el("div").class("mend").children(fields))
    }

    /// Adds the rows that are whole; what is still to be mended stays in the field.
    fn add_whole(self, page: Page, sheet: &Sheet) {
        let whole: Vec<Entries> = sheet.rows.iter().filter_map(|it| it.read.clone().ok()).collect();
        let text = self.text.get_untracked();
        let (rest, left) = sheet.rest(&text);
        page.add_fasteners(&whole, text);
        self.read.set((!left.is_empty()).then_some(Ok(rest)));
        self.text.set(left);
    }
}
