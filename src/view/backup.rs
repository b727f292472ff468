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
use crate::storage::text;
use crate::words::backup as words;
use chrono::NaiveDate;
use std::sync::Arc;

/// Where the day of the last backup stands. It is no part of a backup.
const LAST: &str = "backup";
/// So many of what is not taken are listed.
const MOST_LISTED: usize = 200;

/// The day of the last backup, as it was kept.
pub fn last(store: Option<Store>) -> Option<NaiveDate> {
    entry::day(&Entry::new(store?.read(LAST)?, entry::form::NONE)).ok().flatten()
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
        put(kept::bike_key(bike), Shape::Bike, held);
        let entries = season.entries;
        put(kept::season_key(bike), Shape::Season, Bike { entries, ..Bike::default() });
        let Garage { entries, wrenches: fasteners } = garage;
        put("garage".to_owned(), Shape::Garage, Bike { entries, fasteners, ..Bike::default() });
        if let Some(book) = &own.book {
            let others = book.rows().iter().map(|it| (it.leaf as u64, it.own.clone())).collect();
            put(format!("log.{bike}"), Shape::Log, Bike { others, ..Bike::default() });
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
    if let Some(store) = page.store.get_untracked() {
        // Where that fails the page reminds once more.
        let _ = store.write(LAST, &day);
    }
    page.backup.set(Some(today));
}

/// The button that saves one.
pub fn save_button(page: Page) -> El {
    button("do", words::SAVE, move || save(page))
}

/// Saving and opening.
pub fn drawer(page: Page) -> El {
    let row = el("p").class("row").child(save_button(page)).child(last_words(page));
    let drawer = el("div").class("drawer").child(row).child(paragraph("why", words::HINT));
    drawer.children(open(page))
}

/// A blank for a file, and what is in it.
fn open(page: Page) -> Vec<El> {
    const ID: &str = "backup-file";
    let brought = Live::new(Brought::default());
    let file = el("input")
        .set("type", "file")
        .set("id", ID)
        .set("accept", ".json,.txt,application/json,text/plain");
    let chosen = file.element();
    let file = file.on("change", move |_| {
        browser::read_file(&chosen, backup::LONGEST, move |bytes| {
            let mut file = File::default();
            match bytes {
                Some(it) => file = backup::read(&text::of_file(&it)),
                None => file.wrong.push(words::NOT_READ.to_owned()),
            }
            let here = here(page);
            let parts = file.records.iter().map(|it| restore::part(&here, it)).collect();
            brought.set(Arc::new((parts, file.wrong)));
        });
    });
    vec![
        el("p").class("row").child(el("label").set("for", ID).text(words::OPEN)).child(file),
        el("div").class("parts").set("role", "status").part(move || preview(page, brought)),
    ]
}

/// Records of a chosen file beside what is here, and what is not taken.
type Brought = Arc<(Vec<Part>, Vec<String>)>;

fn preview(page: Page, brought: Live<Brought>) -> Vec<El> {
    let file = brought.get();
    let mut all = Vec::new();
    if !file.1.is_empty() {
        let wrong = file.1.iter().take(MOST_LISTED).map(|it| el("li").text(it));
        all.push(paragraph("care", words::NOT_TAKEN));
        all.push(el("ul").class("how care").children(wrong));
    }
    let (mut some, mut differs) = (false, false);
    let mut choices = Vec::new();
    for it in &file.0 {
        let name = it.file.name.as_str();
        let mut names = [words::MERGE, words::TAKE, words::LEAVE];
        if it.usual == Choice::Leave {
            names.swap(0, 2);
        }
        let names = names.into_iter().map(|it| el("option").text(it));
        let choice = el("select").set("aria-label", name).children(names);
        choices.push(choice.same());
        let row = el("p").child(el("strong").text(name));
        some |= matches!(it.stands, Stands::New | Stands::Differs);
        all.push(match it.stands {
            Stands::New => row.text(words::NEW),
            Stands::Same => row.text(words::SAME),
            Stands::Left => row.text(words::STANDS),
            Stands::Differs => row.text(words::DIFFERS).child(choice),
        });
        if it.stands == Stands::Differs {
            differs = true;
            let mut both = vec![el("summary").text(words::LOOK)];
            laid_out(&mut both, &it.rows, [words::ONLY_IN_THE_FILE, words::IN_THE_FILE]);
            all.push(el("details").children(both));
        }
    }
    if differs {
        all.push(paragraph("why", words::WHAT_MERGE_IS));
    }
    let blocked = page.store.get_untracked().is_none();
    if blocked && some {
        all.push(paragraph("care", words::NO_STORE));
    } else if some {
        all.push(button("do", words::RESTORE, move || {
            let mut chosen = Vec::new();
            for choice in &choices {
                let value = choice.value();
                let choice = match value.as_str() {
                    words::MERGE => Choice::Merge,
                    words::TAKE => Choice::Take,
                    _ => Choice::Leave,
                };
                chosen.push(choice);
            }
            let file = file.clone();
            let restore = move || {
                if restore_all(page, &file.0, &chosen) {
                    brought.set(Brought::default());
                }
            };
            browser::in_turn(Box::new(restore));
        }));
    }
    all
}

/// Writes what was chosen; whether it is done.
fn restore_all(page: Page, parts: &[Part], chosen: &[Choice]) -> bool {
    let Some(store) = page.store.get_untracked().filter(|_| kept::flush(page)) else {
        return false;
    };
    // As it stands now: another tab may have written since it was looked at.
    let now = here(page);
    let (mut writes, mut changes) = (Vec::new(), Vec::new());
    for (it, choice) in parts.iter().zip(chosen) {
        let mut file = it.file.clone();
        restore::renew(&now, &mut file, page.today.get_untracked());
        changes.extend(restore::part(&now, &file).write(*choice, &mut writes));
    }
    if !kept::swap(page, store, &writes) {
        return false;
    }
    lay(page, store);
    let changes = Arc::new(changes);
    page.can_undo_by(words::RESTORED.to_owned(), move || {
        let changes = changes.clone();
        browser::in_turn(Box::new(move || {
            // What was typed since is not lost.
            if !kept::flush(page) {
                return;
            }
            let now = here(page);
            let mut writes = Vec::new();
            for it in changes.iter() {
                if !it.back(&now, &mut writes) {
                    page.notices
                        .update(|all| all.push(joined(&[&it.file.name, words::STANDS], "")));
                }
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
    if store.read(&kept::bike_key(&key)).is_some() {
        kept::open(page, store, &key);
    } else {
        bikes::lay_another(page);
    }
}
