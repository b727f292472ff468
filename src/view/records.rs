//! Records of the store, read and written: each with its revision, a damaged one set aside, a newer page's left alone.

use super::browser;
use super::page::{Page, Saving};
use crate::garage::Kept;
use crate::storage::browser::{Store, StoreError};
use crate::storage::keys;
use crate::storage::record::{self, Unreadable};
use crate::words::page as words;
use serde::{Serialize, de::DeserializeOwned};

/// A record, or a blank one. A damaged one is set aside under a name of its own before anything is written over it; where
/// a newer page has written, this one writes nothing any more.
pub fn load<T: DeserializeOwned + Default + Clone>(page: Page, store: Store, key: &str) -> T {
    theirs(page, store, key, store.read(key), &T::default())
}

/// A record as another tab may have written it in `text`; where there is none, or none that can be read, what this page began with.
fn theirs<T: DeserializeOwned + Clone>(
    page: Page,
    store: Store,
    key: &str,
    text: Option<String>,
    base: &T,
) -> T {
    let Some(text) = text else { return base.clone() };
    match record::read(&text) {
        Ok(record) => record.kept,
        Err(why) => {
            // Nothing that stands there is set aside for what was only told.
            if store.read(key) == Some(text) {
                unreadable(page, store, key, why);
            }
            base.clone()
        }
    }
}

/// A bike as it is kept; as in `base` where it is not.
pub fn stored(page: Page, store: Store, key: &str, base: &Kept) -> Kept {
    told_of(page, store, key, &|key| store.read(key), base)
}

/// A bike as the texts are that `read` has under its keys; as in `base` where it has none.
pub fn told_of(
    page: Page,
    store: Store,
    key: &str,
    read: &dyn Fn(&str) -> Option<String>,
    base: &Kept,
) -> Kept {
    let [bike, season] = [keys::BIKE, keys::SEASON].map(|it| keys::of(it, key));
    Kept {
        bike: theirs(page, store, &bike, read(&bike), &base.bike),
        season: theirs(page, store, &season, read(&season), &base.season),
        garage: theirs(page, store, keys::GARAGE, read(keys::GARAGE), &base.garage),
    }
}

/// Writes a record with the next revision; never over one that this page cannot read.
pub fn write<T: Serialize + DeserializeOwned + PartialEq>(
    page: Page,
    store: Store,
    key: &str,
    kept: &T,
) -> Result<(), StoreError> {
    let revision = match store.read(key).map(|it| record::read::<T>(&it)) {
        None => 1,
        // Nothing new: another tab is not to be told of it.
        Some(Ok(before)) if before.kept == *kept => return Ok(()),
        Some(Ok(before)) => before.revision.saturating_add(1),
        Some(Err(why)) => {
            unreadable(page, store, key, why);
            1
        }
    };
    match (page.store.get_untracked(), record::written(kept, revision)) {
        (Some(store), Some(text)) => store.write(key, &text),
        _ => Err(StoreError::Blocked),
    }
}

/// Sets a damaged record aside under a name of its own; where a newer page has written, this one writes nothing any more.
fn unreadable(page: Page, store: Store, key: &str, why: Unreadable) {
    page.notices.update(|it| it.push(format!("{}{why}", words::SET_ASIDE)));
    let aside = format!("{}.{}.{key}", keys::DAMAGED, browser::now());
    let moved = match (why, store.read(key)) {
        (Unreadable::Damaged, Some(text)) => store.write(&aside, &text).is_ok(),
        _ => false,
    };
    if moved {
        store.remove(key);
    } else {
        page.tabs.newer.set(why != Unreadable::Damaged);
        page.store.set(None);
        page.saving.set(Saving::Blocked);
    }
}
