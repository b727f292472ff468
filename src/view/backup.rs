//! The backup file: saved, and opened with a look at each of its records before anything is taken.

use super::element::{El, button, el, paragraph, span};
use super::live::Live;
use super::page::{Owner, Page};
use super::preview::laid_out;
use super::{bikes, browser, kept, look};
use crate::entry::{self, Entry, day_written, text::joined};
use crate::garage::{Bike, Garage, Kept};
use crate::show;
use crate::storage::backup::{self, File, Found, Shape};
use crate::storage::browser::Store;
use crate::storage::restore::{self, Choice, Part, Stands};
use crate::storage::{keys, text};
use crate::words::{backup as words, page as page_words};
use chrono::NaiveDate;
use std::sync::Arc;

const OF_A_FILE: [&str; 3] = [words::ONLY_IN_THE_FILE, words::IN_THE_FILE, words::ONLY_HERE];
/// So many of what is not taken are listed.
const MOST_LISTED: usize = 200;

/// The day of the last backup, as it was kept.
pub fn last(store: Option<Store>) -> Option<NaiveDate> {
    entry::day(&Entry::new(store?.read(keys::BACKUP)?, entry::form::NONE)).ok().flatten()
}

/// When the last backup was made.
pub fn last_words(page: Page) -> El {
    span("", "").live_text(move || match page.backup.get() {
        Some(day) => words::last(&show::plain_day(day)),
        None => words::NEVER.to_owned(),
    })
}

/// Records as they are kept; what could not be kept as it stands on the sheet, or stood there before a bike was only looked at.
fn here(page: Page) -> Vec<Found> {
    let own = look::set_aside(page);
    let mut all = Vec::new();
    let store = page.store.get_untracked();
    if let Some(store) = store {
        for key in store.keys("") {
            all.extend(store.read(&key).map(|text| (key, text)));
        }
    }
    let mut all = backup::found(&all);
    if let (Owner::Own(bike), true) = (&own.owner, !own.safe || store.is_none()) {
        let Kept { bike: held, season, garage } = own.kept.clone();
        let mut put = |key: String, shape: Shape, held: Bike| {
            all.retain(|it| it.key != key);
            all.push(Found { key, shape, held, ..Found::default() });
        };
        put(keys::of(keys::BIKE, bike), Shape::Bike, held);
        let entries = season.entries;
        put(keys::of(keys::SEASON, bike), Shape::Season, Bike { entries, ..Bike::default() });
        let Garage { entries, wrenches: fasteners } = garage;
        put(keys::GARAGE.to_owned(), Shape::Garage, Bike { entries, fasteners, ..Bike::default() });
        if let Some(book) = &own.book {
            let others = book.rows().iter().map(|it| (it.leaf as u64, it.own.clone())).collect();
            put(keys::of(keys::LOG, bike), Shape::Log, Bike { others, ..Bike::default() });
        }
    }
    all
}

/// Hands the owner the file.
fn save(page: Page) {
    let (all, today) = (here(page), page.today.get_untracked());
    if all.is_empty() {
        page.notices.update(|it| it.push(words::NOTHING.to_owned()));
        return;
    }
    let day = day_written(today);
    browser::save(&words::file_name(&day), "application/json", &backup::written(&all, today));
    backed_up(page, Some(today));
}

/// Remembers the day of the last backup.
fn backed_up(page: Page, day: Option<NaiveDate>) {
    if let (Some(store), Some(day)) = (page.store.get_untracked(), day) {
        // Where that fails the page reminds once more.
        let _ = store.write(keys::BACKUP, &day_written(day));
    }
    page.backup.set(day);
}

/// The button that saves one.
pub fn save_button(page: Page) -> El {
    button("do", words::SAVE, move || save(page))
}

/// Saving and opening.
pub fn drawer(page: Page) -> El {
    let row = el("p").class("row").child(save_button(page)).child(last_words(page));
    let drawer = el("div").class("drawer").child(row).child(paragraph("", words::WHY));
    let drawer = drawer.child(paragraph("why", words::HINT));
    drawer.children(open(page))
}

/// A blank for a file, and what is in it.
fn open(page: Page) -> Vec<El> {
    const ID: &str = "backup-file";
    let brought = Live::new(Arc::<Brought>::default());
    let file = el("input")
        .set("type", "file")
        .set("id", ID)
        .set("accept", ".json,.txt,application/json,text/plain");
    let chosen = file.element();
    let file = file.on("change", move |_| {
        browser::read_file(&chosen, backup::LONGEST, move |bytes| {
            let mut file = File::default();
            match bytes {
                Some(it) => file = backup::read(&text::of_backup(&it)),
                None => file.wrong.push(words::NOT_READ.to_owned()),
            }
            let here = here(page);
            let parts = restore::parts(&here, &file.records, browser::now());
            let all = here.is_empty();
            brought.set(Arc::new(Brought { parts, wrong: file.wrong, made: file.made, all }));
        });
    });
    vec![
        el("p").class("row").child(el("label").set("for", ID).text(words::OPEN)).child(file),
        el("div").class("parts").set("role", "status").part(move || preview(page, brought)),
    ]
}

/// A chosen file: its records beside what is here, what is not taken, its day, and whether nothing was here before.
#[derive(Default, PartialEq)]
struct Brought {
    parts: Vec<Part>,
    wrong: Vec<String>,
    made: Option<NaiveDate>,
    all: bool,
}

fn preview(page: Page, brought: Live<Arc<Brought>>) -> Vec<El> {
    let file = brought.get();
    let mut all = Vec::new();
    if let Some(day) = file.made {
        all.push(paragraph("", &words::made(&show::plain_day(day))));
    }
    if !file.wrong.is_empty() {
        let wrong = file.wrong.iter().take(MOST_LISTED).map(|it| el("li").text(it));
        all.push(paragraph("care", words::NOT_TAKEN));
        all.push(el("ul").class("how care").children(wrong));
    }
    let (mut some, mut differs) = (false, false);
    let mut choices = Vec::new();
    for it in &file.parts {
        let name = it.file.name.as_str();
        let mut names = [words::CHOOSE, words::MERGE, words::TAKE, words::LEAVE];
        if it.usual == Choice::Leave {
            names.swap(1, 3);
        }
        // Figures that differ are the owner's to choose.
        let names = names.into_iter().skip(usize::from(!it.asks())).map(|it| el("option").text(it));
        let choice = el("select").set("aria-label", name).children(names);
        choices.push(choice.same());
        let two = it.stands == Stands::Differs;
        let said = match it.stands {
            Stands::New => words::NEW,
            Stands::Same => words::SAME,
            Stands::Left => words::STANDS,
            Stands::Orphan => words::ORPHAN,
            Stands::Differs => words::DIFFERS,
        };
        let row = el("p").child(el("strong").text(name)).text(said);
        all.push(row.maybe(two.then_some(choice)));
        some |= two || it.stands == Stands::New;
        differs |= two;
        if !it.rows.is_empty() {
            let look = if two { words::LOOK } else { page_words::LOOK_AT_IT };
            let mut both = vec![el("summary").text(look)];
            laid_out(&mut both, &it.rows, OF_A_FILE);
            let fold = el("details").children(both);
            // What no blank takes is not hidden.
            let refused = it.rows.iter().any(|it| it.refused.is_some());
            all.push(if refused { fold.set("open", "") } else { fold });
        }
    }
    if some {
        all.push(paragraph("why", words::CHECK));
    }
    if differs {
        all.push(paragraph("why", words::WHAT_MERGE_IS));
    }
    let unchosen = Live::new(String::new());
    let blocked = page.store.get_untracked().is_none();
    if blocked && some {
        all.push(paragraph("care", words::NO_STORE));
    } else if some {
        all.push(el("p").class("care").live_text(move || unchosen.get()));
        all.push(button("do", words::RESTORE, move || {
            let (mut chosen, mut counts) = (Vec::new(), [0, 0]);
            for (it, select) in file.parts.iter().zip(&choices) {
                let value = select.value();
                let choice = match value.as_str() {
                    words::CHOOSE => {
                        unchosen.set(words::choose(&it.file.name));
                        return browser::focus_soon(select);
                    }
                    words::MERGE => Choice::Merge,
                    words::TAKE => Choice::Take,
                    _ => Choice::Leave,
                };
                let [taken, kept] = it.counts(choice);
                counts = [counts[0] + taken, counts[1] + kept];
                if it.stands != Stands::Orphan {
                    chosen.push((it.file.clone(), choice));
                }
            }
            let done = words::restored(counts, file.wrong.len());
            let file = file.clone();
            let restore = move || {
                // Pressed twice while a turn was waited for, it is done.
                if Arc::ptr_eq(&brought.get_untracked(), &file) && restore_all(page, &chosen, &done)
                {
                    // Nothing is here now but what the file has.
                    if file.all && page.backup.get_untracked() < file.made {
                        backed_up(page, file.made);
                    }
                    // What was not taken stays said.
                    let wrong = file.wrong.clone();
                    brought.set(Arc::new(Brought { wrong, ..Brought::default() }));
                }
            };
            browser::in_turn(Box::new(restore));
        }));
    }
    all
}

/// Writes what was chosen; whether it is done.
fn restore_all(page: Page, chosen: &[(Found, Choice)], done: &str) -> bool {
    let Some(store) = page.store.get_untracked().filter(|_| kept::flush(page)) else {
        return false;
    };
    // As it stands now: another tab may have written since it was looked at.
    let now = here(page);
    let (mut writes, mut changes) = (Vec::new(), Vec::new());
    for (it, choice) in chosen {
        let mut file = it.clone();
        restore::renew(&now, &mut file, page.today.get_untracked());
        changes.extend(restore::part(&now, &file, browser::now()).write(*choice, &mut writes));
    }
    if !kept::swap(page, store, &writes) {
        return false;
    }
    lay(page, store);
    let changes = Arc::new(changes);
    page.can_undo_by(done.to_owned(), move || {
        let changes = changes.clone();
        browser::in_turn(Box::new(move || {
            // What was typed since is not lost.
            if !kept::flush(page) {
                return;
            }
            let now = here(page);
            let mut writes = Vec::new();
            for name in restore::back(&changes, &now, &mut writes) {
                page.notices.update(|all| all.push(joined(&[&name, words::CHANGED_SINCE], "")));
            }
            if kept::swap(page, store, &writes) {
                lay(page, store);
            }
        }));
    });
    true
}

/// Lays the bike that was on the sheet there again, as it is kept now; else another one.
fn lay(page: Page, store: Store) {
    let key = page.key();
    if store.read(&keys::of(keys::BIKE, &key)).is_some() {
        kept::open(page, store, &key);
    } else {
        bikes::lay_another(page);
    }
}
