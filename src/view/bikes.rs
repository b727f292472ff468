//! The bikes that are kept here: listed, copied, archived, removed, brought back.

use super::browser;
use super::kept;
use super::look::new_bike_key;
use super::page::Page;
use super::records;
use crate::entry::text::replaced;
use crate::entry::{LONGEST, day_written};
use crate::facts;
use crate::garage::{Bike, Entries};
use crate::storage::browser::StoreError;
use crate::storage::record;
use crate::storage::{keys, removed};
use crate::words::{garage as words, page as page_words};
use chrono::NaiveDate;

/// One of them.
pub struct KeptBike {
    /// Its key.
    pub key: String,
    /// Its name.
    pub name: String,
    /// Where it stands.
    pub stands: Stands,
}

/// Where a kept bike stands.
#[derive(Clone, Copy, PartialEq)]
pub enum Stands {
    /// On the sheet.
    Open,
    /// In the list.
    Listed,
    /// In the archive.
    Archived,
    /// Removed on this day.
    Removed(NaiveDate),
}

/// All of them.
pub fn all(page: Page) -> Vec<KeptBike> {
    let Some(store) = page.store.get_untracked() else { return Vec::new() };
    let mut all = Vec::new();
    let mut keys = store.keys(keys::BIKE);
    keys.extend(store.keys(removed::START));
    for full in keys {
        let (day, own) =
            removed::read(&full).map_or((None, full.as_str()), |it| (Some(it.0), it.1));
        let Some(key) = keys::bike_in(own) else { continue };
        let text = store.read(&full).unwrap_or_default();
        let Ok(bike) = record::read::<Bike>(&text) else { continue };
        let facts = &bike.kept.entries;
        let stands = match day {
            Some(day) => Stands::Removed(day),
            None if page.key() == key => Stands::Open,
            None if facts::given(facts, facts::ARCHIVED.id()) => Stands::Archived,
            None => Stands::Listed,
        };
        let name = facts::BIKE_NAME.known(facts);
        let name = name.unwrap_or_else(|| page_words::YOUR_BIKE.to_owned());
        all.push(KeptBike { key: key.to_owned(), name, stands });
    }
    all
}

/// Writes what becomes of a bike's facts under its own key or another; whether it is kept.
#[inline(never)]
fn change(page: Page, from: &str, to: &str, how: &mut dyn FnMut(&mut Entries)) -> bool {
    let Some(store) = page.store.get_untracked().filter(|_| kept::flush(page)) else {
        return false;
    };
    let mut bike: Bike = records::load(page, store, &keys::of(keys::BIKE, from));
    how(&mut bike.entries);
    told(page, records::write(page, store, &keys::of(keys::BIKE, to), &bike))
}

/// Says whether it was done. Whether the sheet is kept, its own next write says.
fn told(page: Page, done: Result<(), StoreError>) -> bool {
    let done = kept::told(page, done);
    if done {
        page.changed();
    }
    done
}

/// Another one of its facts and fasteners; its season begins blank.
pub fn duplicate(page: Page, it: &KeptBike) {
    let name: String = words::copy_of(&it.name).chars().take(LONGEST).collect();
    change(page, &it.key, &browser::new_key(), &mut |facts| {
        facts.at(facts::BIKE_NAME.id()).text.clone_from(&name);
        facts.insert(facts::BIKE_KEY.id(), new_bike_key());
    });
}

/// Puts it in the archive. Another one is laid on the sheet where it stood there.
pub fn archive(page: Page, it: &KeptBike) {
    let today = day_written(page.today.get_untracked());
    let done = change(page, &it.key, &it.key, &mut |facts| {
        facts.at(facts::ARCHIVED.id()).text.clone_from(&today);
    });
    if done && it.stands == Stands::Open {
        lay_another(page);
    }
    if done {
        let key = it.key.clone();
        page.can_undo_by(words::archived(&it.name), move || {
            bring_back(
                page,
                &KeptBike { key: key.clone(), name: String::new(), stands: Stands::Archived },
            );
        });
    }
}

/// Takes the bike off the sheet and lays one of the list there, or the example.
pub fn lay_another(page: Page) {
    let next = all(page).into_iter().find(|it| it.stands == Stands::Listed);
    kept::close(page, next.map(|it| it.key));
}

/// Puts one that was archived or removed in the list again.
pub fn bring_back(page: Page, it: &KeptBike) {
    let key = match it.stands {
        Stands::Removed(day) => put(page, &it.key, &removed::on(day), ""),
        _ => Some(it.key.clone()),
    };
    if let Some(key) = key {
        change(page, &key, &key, &mut |facts| drop(facts.remove(&facts::ARCHIVED.id())));
    }
}

/// Puts its records aside. They can be put back at once, and from the archive for some time.
pub fn remove(page: Page, it: &KeptBike) {
    let aside = removed::on(page.today.get_untracked());
    if let Some(key) = put(page, &it.key, "", &aside) {
        page.can_undo_by(page_words::removed(&it.name), move || {
            put(page, &key, &aside, "");
        });
    }
}

/// Puts a bike's records under keys with another start; the bike's key there. Where one stands there, as a backup may have brought
/// it back, it gets another key.
pub fn put(page: Page, bike: &str, from: &str, to: &str) -> Option<String> {
    let store = page.store.get_untracked()?;
    let mut new = bike.to_owned();
    if store.read(&format!("{to}{}", keys::of(keys::BIKE, bike))).is_some() {
        new = browser::new_key();
    }
    let mut all = Vec::new();
    for key in store.keys(from) {
        let own = key.strip_prefix(from).filter(|it| keys::is_of(it, bike));
        if let (Some(own), Some(text)) = (own, store.read(&key)) {
            let own = replaced(own, bike, &new);
            all.push((format!("{to}{own}"), Some(text)));
            all.push((key, None));
        }
    }
    let done = kept::swap(page, store, &all);
    if done {
        page.changed();
    }
    done.then_some(new)
}

/// Forgets what was removed too long ago.
pub fn sweep(page: Page) {
    let Some(store) = page.store.get_untracked() else { return };
    for key in store.keys(removed::START) {
        let removed = removed::read(&key).map(|it| it.0);
        if removed.is_some_and(|it| removed::until(it) < page.today.get_untracked()) {
            store.remove(&key);
        }
    }
}
