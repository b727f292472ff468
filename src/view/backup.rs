//! The backup file: saved, and opened with a look at each of its records before anything is taken.

use super::element::{El, button, el, paragraph, span};
use super::live::Live;
use super::page::{Owner, Page};
use super::{browser, kept};
use crate::entry::{self, Entry, day_written};
use crate::garage::{Bike, Garage, Season};
use crate::show;
use crate::storage::backup::{self, Found, Shape};
use crate::storage::browser::Store;
use crate::storage::restore::{self, Choice, Part, Stands, Write};
use crate::storage::{record, text};
use crate::words::backup as words;
use chrono::NaiveDate;

/// Where the day of the last backup stands. It is no part of a backup.
const LAST: &str = "backup";
/// So many differences, and records that are not taken, are listed.
const MOST_LISTED: usize = 12;

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

/// Records as they are kept; what could not be kept as it stands on the sheet.
fn here(page: Page) -> Vec<Found> {
    let store = page.store.get_untracked();
    let mut all = Vec::new();
    if let Some(store) = store {
        for key in store.keys("") {
            all.extend(store.read(&key).map(|text| (key, text)));
        }
    }
    let Owner::Own(bike) = page.owner.get_untracked() else { return backup::found(&all) };
    if !kept::flush(page) || store.is_none() {
        let sheet = page.kept();
        let mut put = |key: String, text: Option<String>| {
            all.retain(|it| it.0 != key);
            all.extend(text.map(|it| (key, it)));
        };
        put(kept::bike_key(&bike), record::written::<Bike>(&sheet.bike, 1));
        put(format!("season.{bike}"), record::written::<Season>(&sheet.season, 1));
        put("garage".to_owned(), record::written::<Garage>(&sheet.garage, 1));
        let book = page.logbook();
        let mut written = usize::MAX;
        for row in book.rows() {
            // Those of a leaf mostly stand together.
            if std::mem::replace(&mut written, row.leaf) != row.leaf {
                put(format!("log.{bike}.{}", row.leaf), record::written(&book.leaf(row.leaf), 1));
            }
        }
    }
    backup::found(&all)
}

/// Hands the owner the file; `said` takes what became of it.
fn save(page: Page, said: Live<String>) {
    kept::flush(page);
    let (all, today) = (here(page), page.today.get_untracked());
    if all.iter().all(|it| it.shape == Shape::Text) {
        said.set(words::NOTHING.to_owned());
        return;
    }
    let name = words::file_name(&day_written(today));
    browser::save(&name, "application/json", &backup::written(&all, today));
    if let Some(store) = page.store.get_untracked() {
        // Where that fails the page reminds once more.
        let _ = store.write(LAST, &day_written(today));
    }
    page.backup.set(Some(today));
    page.say(&words::saved(&name));
    said.set(words::saved(&name));
}

/// The button that saves one.
pub fn save_button(page: Page) -> El {
    button("do", words::SAVE, move || save(page, Live::new(String::new())))
}

/// Where nothing can be kept, a file still can.
pub fn offer(page: Page) -> El {
    el("p").child(save_button(page))
}

/// Saving and opening.
pub fn drawer(page: Page) -> El {
    let said = Live::new(String::new());
    let row = el("p")
        .class("row")
        .child(button("do", words::SAVE, move || save(page, said)))
        .child(last_words(page))
        .child(span("", "").set("role", "status").live_text(move || said.get()));
    el("div")
        .class("drawer")
        .child(row)
        .child(paragraph("why", words::HINT))
        .children(open(page, "backup-file"))
}

/// What a chosen file brings.
#[derive(Clone)]
enum Brought {
    Nothing,
    Refused(&'static str),
    File(Vec<Found>, Vec<Part>, Vec<String>),
}

/// A blank for a file, and what is in it.
pub fn open(page: Page, id: &str) -> Vec<El> {
    let brought = Live::new(Brought::Nothing);
    let file = el("input")
        .set("type", "file")
        .set("id", id)
        .set("accept", ".json,.txt,application/json,text/plain");
    let chosen = file.element();
    let file = file.on("change", move |_| {
        browser::read_file(&chosen, backup::LONGEST, move |bytes| {
            brought.set(match bytes.map(|it| backup::read(&text::of_file(&it))) {
                None => Brought::Refused(words::NOT_READ),
                Some(Err(why)) => Brought::Refused(why),
                Some(Ok(file)) => {
                    let parts = restore::parts(&here(page), &file.records);
                    Brought::File(file.records, parts, file.wrong)
                }
            });
        });
    });
    vec![
        el("p").class("row").child(el("label").set("for", id).text(words::OPEN)).child(file),
        el("div").set("role", "status").part(move || preview(page, brought)),
    ]
}

fn listed(all: &[String], class: &str) -> El {
    let more = all.len().saturating_sub(MOST_LISTED);
    let rows = all.iter().take(MOST_LISTED).map(|it| el("li").class(class).text(it));
    let more = (more > 0).then(|| el("li").class(class).text(&words::and_more(more)));
    el("ul").class("how").children(rows).maybe(more)
}

fn preview(page: Page, brought: Live<Brought>) -> Vec<El> {
    let (records, parts, wrong) = match brought.get() {
        Brought::Nothing => return Vec::new(),
        Brought::Refused(why) => return vec![paragraph("care", why)],
        Brought::File(records, parts, wrong) => (records, parts, wrong),
    };
    let choices = Live::new(parts.iter().map(|it| it.usual).collect::<Vec<_>>());
    let part = |(at, it): (usize, &Part)| {
        let row = el("li").child(el("strong").text(&it.name)).text(": ");
        let row = match it.stands {
            _ if !it.is_told() => return None,
            Stands::Same => return None,
            Stands::New => row.text(words::NEW),
            Stands::Left => row.text(words::STANDS),
            Stands::Differs => {
                row.text(&words::count(it.differs.len())).text(" ").child(choice(it, at, choices))
            }
        };
        let changed = it.changed.then(|| paragraph("care", words::CHANGED));
        Some(row.maybe(changed).child(listed(&it.differs, "")))
    };
    let rows: Vec<El> = parts.iter().enumerate().filter_map(part).collect();
    let mut all = Vec::new();
    if !wrong.is_empty() {
        all.extend([paragraph("care", words::NOT_TAKEN), listed(&wrong, "care")]);
    }
    let differs = parts.iter().any(|it| it.stands == Stands::Differs);
    let some = differs || parts.iter().any(|it| it.is_told() && it.stands == Stands::New);
    if rows.is_empty() && !parts.is_empty() {
        all.push(paragraph("cap", words::SAME));
    }
    all.push(el("ul").class("parts").children(rows));
    if page.store.get_untracked().is_none() {
        all.push(paragraph("care", words::NO_STORE));
    } else if some {
        let restore = move || {
            if restore_all(page, &records, &choices.get_untracked()) {
                brought.set(Brought::Nothing);
            }
        };
        all.extend(differs.then(|| paragraph("why", words::WHAT_MERGE_IS)));
        all.push(el("p").child(button("do", words::RESTORE, restore)));
    }
    all
}

const CHOICES: [(Choice, &str); 3] =
    [(Choice::Merge, words::MERGE), (Choice::Take, words::TAKE), (Choice::Leave, words::LEAVE)];

fn choice(part: &Part, at: usize, choices: Live<Vec<Choice>>) -> El {
    let options = CHOICES.iter().enumerate().map(|(place, (choice, name))| {
        let option = el("option").set("value", &place.to_string()).text(name);
        if *choice == part.usual { option.set("selected", "") } else { option }
    });
    let select = el("select").set("aria-label", &part.name).children(options);
    select.take("change", move |text| {
        let chosen = text.parse().ok().and_then(|it: usize| CHOICES.get(it));
        choices.update(|it| {
            if let (Some(now), Some(chosen)) = (it.get_mut(at), chosen) {
                *now = chosen.0;
            }
        });
    })
}

/// Writes what was chosen; whether it is done.
fn restore_all(page: Page, records: &[Found], choices: &[Choice]) -> bool {
    let Some(store) = page.store.get_untracked().filter(|_| kept::flush(page)) else {
        return false;
    };
    // As it stands now: another tab may have written since it was looked at.
    let parts = restore::parts(&here(page), records);
    let mut writes: Vec<Write> = Vec::new();
    for (part, choice) in parts.iter().zip(choices) {
        part.write(*choice, &mut writes);
    }
    let swapped = store.swap(&writes);
    let before = swapped.as_ref().ok().cloned().unwrap_or_default();
    if !kept::told(page, swapped.map(drop)) {
        return false;
    }
    let first = writes.iter().find_map(|it| it.0.strip_prefix("bike.")).map(str::to_owned);
    lay(page, store, first);
    page.can_undo_by(words::RESTORED.to_owned(), move || {
        kept::flush(page);
        // What was typed since is not lost: such a record stays.
        let mut back = before.clone();
        back.retain(|it| writes.contains(&(it.0.clone(), store.read(&it.0))));
        if kept::told(page, store.swap(&back).map(drop)) {
            lay(page, store, None);
        }
    });
    true
}

/// Lays the bike that was on the sheet there again, as it is kept now; else the one that was open last, or another one.
fn lay(page: Page, store: Store, other: Option<String>) {
    let kept_here = |key: &String| store.read(&kept::bike_key(key)).is_some();
    let mut next = [Some(page.key()), store.read("open"), other];
    let next = next.iter_mut().filter_map(Option::take).find(kept_here);
    kept::close(page, next);
}
