//! Keeping: what is typed goes to the store soon after, and at once when the page goes out of sight.

use super::browser;
use super::follow::follow;
use super::page::{Owner, Page, Saving};
use crate::facts;
use crate::garage::{Garage, Kept};
use crate::storage::browser::{Store, StoreError};
use crate::storage::record::{self, Unreadable};
use crate::words::page as words;
use leptos::prelude::*;
use serde::{Serialize, de::DeserializeOwned};
use std::cell::Cell;
use std::time::Duration;

const GARAGE: &str = "garage";
const OPEN: &str = "open";
/// Long enough that a word is typed, short enough that nothing is lost.
const SOON: Duration = Duration::from_millis(400);

/// Where a bike's record is kept.
pub fn bike_key(key: &str) -> String {
    format!("bike.{key}")
}
fn season_key(key: &str) -> String {
    format!("season.{key}")
}

/// Lays the bike that was open last on the page's sheet, or the example, and keeps it from then on.
pub fn keep(page: Page) {
    super::bikes::sweep(page);
    match page.store.get_untracked().and_then(|store| store.read(OPEN).map(|key| (store, key))) {
        Some((store, key)) => open(page, store, &key),
        None => {
            if let Some(store) = page.store.get_untracked() {
                let garage: Garage = load(page, store, GARAGE);
                page.lay(Kept { garage, ..Kept::default() }, Owner::Example);
            }
            page.lay_example();
        }
    }
    let before = Cell::new(page.changes.get_untracked());
    follow(Box::new(move || {
        let now = page.changes.get();
        let own = page.owner.get_untracked() != Owner::Example;
        if before.replace(now) != now && own {
            if let Some(handle) = page.unsaved.get_untracked() {
                handle.clear();
            }
            let later = move || {
                page.unsaved.set(None);
                save(page);
            };
            page.unsaved.set(set_timeout_with_handle(later, SOON).ok());
        }
    }));
    browser::on_hide(move || flush(page));
}

/// Writes at once what is still to be written.
pub fn flush(page: Page) {
    if let Some(handle) = page.unsaved.get_untracked() {
        handle.clear();
        page.unsaved.set(None);
        save(page);
    }
}

/// Lays a kept bike on the sheet.
pub fn open(page: Page, store: Store, key: &str) {
    flush(page);
    let kept = Kept {
        bike: load(page, store, &bike_key(key)),
        season: load(page, store, &season_key(key)),
        garage: load(page, store, GARAGE),
    };
    page.lay(kept, Owner::Own(key.to_owned()));
    let _ = store.write(OPEN, key);
}

/// The garage as it is kept.
pub fn garage(store: Store) -> Garage {
    store.read(GARAGE).and_then(|it| record::read(&it).ok()).map(|it| it.kept).unwrap_or_default()
}

/// Takes the bike off the sheet and lays another one there, or the example.
pub fn close(page: Page, next: Option<String>) {
    match (page.store.get_untracked(), next) {
        (Some(store), Some(key)) => open(page, store, &key),
        (store, _) => {
            store.iter().for_each(|it| it.remove(OPEN));
            page.lay_example();
        }
    }
}

/// Writes a bike that is not on the sheet, as a link brings it, and opens it.
pub fn take_in(page: Page, kept: Kept) {
    flush(page);
    let mut garage = page.own_garage();
    garage.welcome(kept.garage);
    let mut bike = kept.bike;
    bike.entries.remove(&facts::ARCHIVED.id());
    page.lay(Kept { garage, bike, ..kept }, Owner::Own(browser::new_key()));
    save(page);
}

/// A record, or a blank one. A damaged one is set aside under a name of its own before anything is written over it; where
/// a newer page has written, this one writes nothing any more.
pub fn load<T: DeserializeOwned + Default>(page: Page, store: Store, key: &str) -> T {
    let Some(text) = store.read(key) else { return T::default() };
    match record::read(&text) {
        Ok(record) => record.kept,
        Err(why) => {
            unreadable(page, store, key, why);
            T::default()
        }
    }
}

fn save(page: Page) {
    let Owner::Own(key) = page.owner.get_untracked() else { return };
    let Some(store) = page.store.get_untracked() else { return };
    let kept = page.kept();
    let written = write(page, store, &bike_key(&key), &kept.bike)
        .and_then(|()| write(page, store, &season_key(&key), &kept.season))
        .and_then(|()| write(page, store, GARAGE, &kept.garage))
        .and_then(|()| store.write(OPEN, &key));
    told(page, written);
}

/// Says whether something is kept; whether it is.
pub fn told(page: Page, written: Result<(), StoreError>) -> bool {
    let done = written.is_ok();
    page.saving.set(match written {
        Ok(()) => Saving::Kept,
        Err(StoreError::Blocked(_)) => Saving::Blocked,
        Err(StoreError::Full) => Saving::Failed(words::STORE_FULL.to_owned()),
        Err(StoreError::Other(why)) => Saving::Failed(why),
    });
    done
}

/// Writes a record with the next revision; never over one that this page cannot read.
pub fn write<T: Serialize + DeserializeOwned>(
    page: Page,
    store: Store,
    key: &str,
    kept: &T,
) -> Result<(), StoreError> {
    let revision = match store.read(key).map(|it| record::read::<T>(&it)) {
        None => 1,
        Some(Ok(before)) => before.revision.saturating_add(1),
        Some(Err(why)) => {
            unreadable(page, store, key, why);
            1
        }
    };
    match (page.store.get_untracked(), record::written(kept, revision)) {
        (Some(store), Some(text)) => store.write(key, &text),
        _ => Err(StoreError::Blocked(String::new())),
    }
}

/// Sets a damaged record aside under a name of its own; where a newer page has written, this one writes nothing any more.
fn unreadable(page: Page, store: Store, key: &str, why: Unreadable) {
    page.notices.update(|it| it.push(format!("{}{why}", words::SET_ASIDE)));
    let aside = format!("damaged.{}.{key}", browser::now());
    let moved = match (why, store.read(key)) {
        (Unreadable::Damaged, Some(text)) => store.write(&aside, &text).is_ok(),
        _ => false,
    };
    if moved {
        store.remove(key);
    } else {
        page.store.set(None);
        page.saving.set(Saving::Blocked);
    }
}
