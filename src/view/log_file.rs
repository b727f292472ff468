//! The logbook as a file: saved, and taken in with a look at it first.

use super::browser;
use super::element::{El, button, el, paragraph, while_so};
use super::line::fold_button;
use super::live::Live;
use super::page::Page;
use crate::entry::day_written;
use crate::facts;
use crate::garage::Entries;
use crate::storage::{log_file, text};
use crate::words::{logbook as words, page as page_words};

/// What a file brings.
#[derive(Clone)]
enum Brought {
    Nothing,
    NotRead,
    NoLogbook,
    /// Those that are new, how many are known already, what is wrong with the others.
    Entries(Vec<Entries>, usize, Vec<String>),
}

/// So many rows in error are listed.
const MOST_WRONG: usize = 20;

/// Save and open, behind a fold.
pub fn file(page: Page) -> El {
    let open = Live::new(false);
    let turn = move || open.update(|it| *it = !*it);
    let fold = fold_button("log-file-title", move || open.get(), turn)
        .class("more")
        .text(words::AS_A_FILE);
    el("section")
        .class("aside table")
        .set("aria-labelledby", "log-file-title")
        .child(fold)
        .child(while_so("div", move || open.get(), move || inside(page)))
}

fn inside(page: Page) -> Vec<El> {
    let brought = Live::new(Brought::Nothing);
    let all = move || page.logbook().rows().iter().map(|it| it.own.clone()).collect::<Vec<_>>();
    let csv = button("quiet", words::SAVE_CSV, move || {
        // The mark in front tells a spreadsheet that it is UTF-8.
        let text = format!("\u{feff}{}", log_file::csv(&all()));
        browser::save(&(name(page) + ".csv"), "text/csv;charset=utf-8", &text);
    });
    let json = button("quiet", words::SAVE_JSON, move || {
        browser::save(&(name(page) + ".json"), "application/json", &log_file::json(&all()));
    });
    let file = el("input")
        .set("type", "file")
        .set("id", "log-file")
        .set("accept", ".csv,.tsv,.txt,.json,text/csv,text/plain,application/json");
    let chosen = file.element();
    let file = file.on("change", move |_| {
        browser::read_file(&chosen, log_file::LONGEST, move |bytes| {
            brought.set(bytes.map_or(Brought::NotRead, |it| read(page, &text::of_file(&it))));
        });
    });
    vec![
        el("p").class("row").child(csv).child(json),
        el("p")
            .class("row")
            .child(el("label").set("for", "log-file").text(words::BRING_IN))
            .child(file),
        el("div").set("role", "status").part(move || preview(page, brought)),
    ]
}

/// Whose it is and when it was saved.
fn name(page: Page) -> String {
    let bike = facts::BIKE_NAME.known(&page.kept());
    let bike = bike.unwrap_or_else(|| page_words::YOUR_BIKE.to_owned());
    words::file_name(&bike, &day_written(page.today.get_untracked()))
}

fn read(page: Page, text: &str) -> Brought {
    let Some(rows) = log_file::read(text, page.set.get_untracked()) else {
        return Brought::NoLogbook;
    };
    let (mut new, mut wrong, count) = (Vec::new(), Vec::new(), rows.len());
    let book = page.logbook();
    for (line, row) in rows {
        match row {
            Ok(own) if book.has(&own) || new.contains(&own) => {}
            Ok(own) => new.push(own),
            Err(why) => wrong.push(words::wrong_row(line, &why)),
        }
    }
    let known = count - new.len() - wrong.len();
    Brought::Entries(new, known, wrong)
}

fn preview(page: Page, brought: Live<Brought>) -> Vec<El> {
    let care = |said: &str| vec![paragraph("care", said)];
    match brought.get() {
        Brought::Nothing => Vec::new(),
        Brought::NotRead => care(words::FILE_NOT_READ),
        Brought::NoLogbook => care(words::NOT_A_LOGBOOK),
        Brought::Entries(new, known, wrong) => {
            let summary = paragraph("cap", &words::summary(new.len(), known, wrong.len()));
            let errors = wrong.iter().take(MOST_WRONG).map(|it| el("li").class("care").text(it));
            let mut all = vec![summary, el("ul").class("how").children(errors)];
            if !new.is_empty() {
                let name = words::take_in(new.len());
                all.push(button("do", &name, move || {
                    take_in(page, new.clone());
                    brought.set(Brought::Nothing);
                }));
            }
            all
        }
    }
}

fn take_in(page: Page, new: Vec<Entries>) {
    if page.owner.get_untracked() == super::page::Owner::Example {
        page.start_own();
    }
    let first = page.logbook().next_key();
    let count = new.len();
    page.write_in_book(move |book| {
        for own in &new {
            book.add(own.clone());
        }
    });
    page.can_undo_by(page_words::added(count), move || {
        page.write_in_book(move |it| {
            for key in first..first + count {
                it.remove(key);
            }
        });
    });
}
