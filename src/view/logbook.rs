//! The logbook on the page: what is due, entries found by words, line and year, each to be changed or taken out.

use super::boxed::{Gives, Takes};
use super::element::{El, button, el, paragraph, span, while_so};
use super::entry_field::{Dress, blank};
use super::line::{self, Told, fold_button};
use super::live::{Derived, Live};
use super::page::{Desk, Page, Sheet};
use super::{browser, log_file, season_life};
use crate::entry::{Entry, day_written};
use crate::facts::{self, Facts, Home, Id};
use crate::garage::Entries;
use crate::logbook::{Logbook, Row, Search, lines, years};
use crate::plan;
use crate::show;
use crate::words::{logbook as words, page as page_words};
use leptos::prelude::untrack;
use std::cell::RefCell;

/// So many entries are laid out at once.
const AT_ONCE: usize = 40;

/// The logbook, folded at first.
pub fn logbook(page: Page) -> El {
    let open = Live::new(false);
    let turn = move || open.update(|it| *it = !*it);
    let title = "logbook-title";
    let fold = fold_button(title, move || open.get(), turn).text(words::LOGBOOK);
    el("section")
        .class("needs logbook")
        .set("aria-labelledby", title)
        .child(el("h3").child(fold))
        .child(while_so(
            "div",
            move || open.get(),
            move || {
                // Another bike's book has other entries under the same keys.
                page.book.laid.track();
                inside(page)
            },
        ))
}

fn inside(page: Page) -> Vec<El> {
    let desk = Desk::of_bike(page);
    let told = Told::of(&desk, page, move |desk, _, set| {
        page.book.follow();
        let today = page.today.get();
        plan::log(&page.logbook(), desk, today, set)
    });
    let some = move || facts::INTERVALS.known(&page.sheet()).is_some();
    let due = move || vec![paragraph("cap", words::DUE_LIST), due(page)];
    vec![
        line::panel(page, &desk, told, "logbook"),
        while_so("div", some, due),
        entries(page),
        log_file::file(page),
        season_life::past_seasons(page),
    ]
}

/// What the intervals make due.
pub fn due(page: Page) -> El {
    let due = move || {
        let one = |(past, said): &(bool, String)| paragraph(if *past { "care" } else { "" }, said);
        due_now(page).iter().map(|it| el("li").child(one(it))).collect()
    };
    el("ul").class("how").set("aria-label", words::DUE_LIST).part(due)
}

fn due_now(page: Page) -> Vec<(bool, String)> {
    page.book.follow();
    plan::due(&page.logbook(), &page.sheet(), page.today.get(), page.set.get())
}

/// What of it is past, in one line.
pub fn past(page: Page) -> String {
    plan::due_told(&due_now(page), true)
}

/// The search and what it finds.
fn entries(page: Page) -> El {
    let search = Live::new(Search::default());
    let shown = Live::new(AT_ONCE);
    let opened = Live::new(None::<usize>);
    // Not with every letter that is typed in an entry: it would move away under its owner's hands.
    let found = Derived::new(move |_| {
        page.book.turns.track();
        keys(&search.get(), &page.logbook())
    });
    let now =
        move || found.with(|all: &Vec<usize>| all.iter().take(shown.get()).copied().collect());
    let add = move || {
        search.set(Search::default());
        // The time tells it from one that another tab adds.
        let text = day_written(page.today.get_untracked());
        let today = Entry { text, unit: 0, edited: browser::now() };
        let mut own = Entries::from([(facts::LOG_DAY.id(), today)]);
        let odometer = untrack(|| page.sheet().entry(facts::ODOMETER.id()));
        if !odometer.is_blank() {
            own.insert(facts::LOG_ODOMETER.id(), odometer);
        }
        if page.is_example_untracked() {
            page.start_own();
        }
        opened.set(Some(page.add_to_book(own)));
    };
    let none = move || match found.with(Vec::is_empty) {
        false => String::new(),
        true if page.logbook().rows().is_empty() => words::EMPTY.to_owned(),
        true => words::NONE_FOUND.to_owned(),
    };
    let more = move || found.with(Vec::len) > shown.get();
    let show_more =
        move || vec![button("quiet", words::MORE, move || shown.update(|it| *it += AT_ONCE))];
    el("div")
        .child(looking(page, search))
        .child(el("p").child(button("do", words::ADD, add)))
        .child(el("p").class("why").set("role", "status").live_text(none))
        .child(el("ul").class("rows").each(now, move |key| entry(page, key, opened)))
        .child(while_so("p", more, show_more))
}

fn keys(search: &Search, book: &Logbook) -> Vec<usize> {
    search.found(book).iter().map(|it| it.key).collect()
}

/// Words, line and year to look for.
fn looking(page: Page, search: Live<Search>) -> El {
    let words_ = el("input")
        .set("type", "search")
        .set("id", "logbook-search")
        .set("autocomplete", "off")
        .live_value(move || search.with(|it| it.words.clone()))
        .take("input", move |words| search.update(|it| it.words = words));
    let line = chosen(
        "logbook-line",
        Box::new(move || lines(&page.logbook())),
        Box::new(move || search.get().line),
        Box::new(move |line| search.update(|it| it.line = line)),
        page,
    );
    let year = chosen(
        "logbook-year",
        Box::new(move || years(&page.logbook())),
        Box::new(move || search.get().year),
        Box::new(move |year| search.update(|it| it.year = year)),
        page,
    );
    let labelled = |id: &str, name: &str, field: El| {
        el("div")
            .class("blank")
            .child(el("label").set("for", id).text(name))
            .child(el("span").class("in").child(field))
    };
    el("div")
        .class("blanks columns")
        .set("role", "search")
        .child(labelled("logbook-search", words::SEARCH, words_))
        .child(labelled("logbook-line", words::LINE, line))
        .child(labelled("logbook-year", words::YEAR, year))
}

/// A list to choose from, "all" first.
fn chosen(
    id: &str,
    of: Box<dyn Gives<Vec<String>>>,
    now: Box<dyn Gives<Option<String>>>,
    mut take: Box<dyn Takes<Option<String>>>,
    page: Page,
) -> El {
    let options = move || {
        page.book.turns.track();
        let now = now.give();
        let option = |value: &str, name: &str, so: bool| {
            let option = el("option").set("value", value).text(name);
            if so { option.set("selected", "") } else { option }
        };
        let all = of.give();
        let each = all.iter().map(|it| option(it, it, now.as_ref() == Some(it)));
        std::iter::once(option("", words::ALL, now.is_none())).chain(each).collect()
    };
    el("select")
        .set("id", id)
        .part(options)
        .take("change", move |it| take.take(Some(it).filter(|it| !it.is_empty())))
}

/// An entry: a line of it, and unfolded its blanks.
fn entry(page: Page, key: usize, opened: Live<Option<usize>>) -> El {
    let scope = format!("logged-{key}");
    let title = format!("{scope}-title");
    let open = Derived::new(move |_| opened.get() == Some(key));
    let said = move || {
        // Only what is open can change.
        if open.get() {
            page.book.follow();
        }
        page.logbook().row(key).map(told).unwrap_or_default()
    };
    let turn = move || opened.set(Some(key).filter(|_| !open.get_untracked()));
    let fold = fold_button(&title, move || open.get(), turn).live_text(move || said()[0].clone());
    let row = el("div")
        .class("fold")
        .child(el("h4").child(fold))
        .child(el("p").class("why").live_text(move || said()[1].clone()));
    let inside = move || blanks(page, key, &scope);
    el("li").class("row-of").child(
        el("section").set("aria-labelledby", &title).child(row).child(while_so(
            "div",
            move || open.get(),
            inside,
        )),
    )
}

/// Day and line; odometer, figures and note.
fn told(row: &Row) -> [String; 2] {
    let line = row.line();
    let line = if line.is_empty() { words::UNNAMED } else { &line };
    let day = row.day.map_or_else(|| words::NO_DAY.to_owned(), show::long_day);
    let as_read = |id: Id| {
        let about = facts::about(id)?;
        let text = facts::as_read(about, &row.entry(id));
        Some(text).filter(|it| !it.is_empty())
    };
    let rest = [facts::LOG_ODOMETER.id(), facts::LOG_FIGURES.id(), facts::LOG_NOTE.id()];
    let rest: Vec<String> = rest.into_iter().filter_map(as_read).collect();
    [format!("{day} · {line}"), crate::entry::text::joined(&rest, " · ")]
}

fn blanks(page: Page, key: usize, scope: &str) -> Vec<El> {
    // The page's own mark is no blank.
    let asked = |id: &Id| crate::garage::home(*id) == Home::Log && *id != facts::LOG_STEP.id();
    let asked: Vec<Id> = facts::TABLE.iter().map(|it| it.id).filter(asked).collect();
    let remove = button("quiet", page_words::REMOVE, move || page.strike_out(key));
    vec![
        blanks_of(page, key, &asked, scope),
        el("p").child(remove.child(span("aloud", " ").text(words::UNNAMED))),
    ]
}

/// Blanks of an entry. Others of it may be open elsewhere: what changes here goes to it, and no more.
pub fn blanks_of(page: Page, key: usize, asked: &[Id], scope: &str) -> El {
    let own = page.logbook().row(key).map(|it| it.own.clone()).unwrap_or_default();
    let sheet = Sheet::blank(|home| home == Home::Log);
    sheet.take(&own);
    let desk = Desk::of_item(page, sheet.clone());
    let blanks = asked.iter().map(|id| blank(page, &desk, None, *id, scope, Dress::Whole));
    let last = RefCell::new(own);
    let taken = move || {
        let now = sheet.entries();
        let mut changed = now.clone();
        changed.retain(|id, it| last.borrow().entry(*id) != *it);
        last.replace(now);
        untrack(|| page.amend(key, changed));
    };
    el("div").class("blanks columns").children(blanks).follow(taken)
}
