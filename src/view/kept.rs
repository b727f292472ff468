//! Keeping: what is typed goes to the store soon after, and at once when the page goes out of sight.

use super::browser;
use super::follow::follow;
use super::page::{Owner, Page, Saving};
use super::records::{load, stored, write};
use crate::facts;
use crate::garage::{Entries, Garage, Kept};
use crate::storage::backup::PLACES;
use crate::storage::browser::{Store, StoreError};
use crate::storage::record::{self, PREFIX};
use crate::storage::restore::Write;
use crate::storage::{keys, removed};
use crate::words::page as words;
use leptos::prelude::*;
use serde::de::DeserializeOwned;
use std::cell::Cell;
use std::time::Duration;

/// Long enough that a word is typed, short enough that nothing is lost.
const SOON: Duration = Duration::from_millis(400);
/// After this time what could not be written is tried again.
const AGAIN: Duration = Duration::from_secs(5);

/// Lays the bike that was open last on the page's sheet, or the example, and keeps it from then on.
pub fn keep(page: Page) {
    super::bikes::sweep(page);
    match page
        .store
        .get_untracked()
        .and_then(|store| store.read(keys::OPEN).map(|key| (store, key)))
    {
        Some((store, key)) => open(page, store, &key),
        None => {
            if let Some(store) = page.store.get_untracked() {
                let garage: Garage = load(page, store, keys::GARAGE);
                page.lay(Kept { garage, ..Kept::default() }, Owner::Example);
            }
            page.lay_example();
        }
    }
    let before = Cell::new(page.changes.get_untracked());
    follow(Box::new(move || {
        let now = page.changes.get();
        let own = !page.is_example_untracked();
        if before.replace(now) != now && own {
            later(page, SOON);
        }
    }));
    browser::on_hide(move || {
        flush(page);
    });
    browser::on_leave(move || page.tabs.left.update(|it| *it += 1));
    browser::on_storage(move |key, text| heard(page, key, text));
    // Said as soon as the sheet stands.
    browser::after(Duration::ZERO, move || {
        if let Some(store) = page.store.get_untracked() {
            told(page, store.write(keys::PROBE, "1"));
            store.remove(keys::PROBE);
        }
    });
}

/// Writes a little later, when no other tab writes.
pub fn later(page: Page, soon: Duration) {
    if let Some(handle) = page.tabs.unsaved.get_untracked() {
        handle.clear();
    }
    let waits = page.tabs.waits;
    let write = move || {
        waits.set_untracked(false);
        flush(page);
    };
    // The turn that is waited for takes all that there is then.
    let later = move || {
        if !waits.get_untracked() {
            waits.set_untracked(true);
            browser::in_turn(Box::new(write));
        }
    };
    page.tabs.unsaved.set(set_timeout_with_handle(later, soon).ok());
}

/// Another tab wrote: what it changed is taken here, and what is changed here is merged with it.
fn heard(page: Page, key: Option<String>, text: Option<String>) {
    let Some(store) = page.store.get_untracked() else { return };
    let Some(key) = key else {
        // All is gone. What was kept is known.
        return page.changed();
    };
    let Some(key) = key.strip_prefix(PREFIX) else { return };
    let own = untrack(|| page.key());
    let (bike, log) = (keys::of(keys::BIKE, &own), keys::several(keys::LOG, &own));
    let crossed = text.as_ref().is_some_and(|it| store.crossed(key, it));
    // What is gone of the bike on the sheet is known, to be written again.
    if text.is_some() || !keys::is_of(key, &own) {
        store.heard(key);
    }
    if let Some(leaf) = key.strip_prefix(&log).and_then(|it| it.parse::<usize>().ok()) {
        if crossed {
            let mut written = page.tabs.leaves.get_untracked();
            written.retain(|it| it.0 == leaf);
            let theirs = text.and_then(|it| record::read::<Vec<Entries>>(&it).ok());
            if let (Some((_, before)), Some(record)) = (written.first(), theirs) {
                let (mut theirs, now) = (record.kept, page.logbook().leaf(leaf));
                theirs.retain(|it| !before.contains(it) && !now.contains(it));
                page.take_into_book(leaf, theirs);
            }
            page.unwritten(written);
            page.changed();
        } else if text.is_some() {
            page.follow_leaf(leaf, load(page, store, key));
        }
    } else if key.starts_with(keys::PAST) {
        page.book.turn();
    } else if key == keys::GARAGE || key == bike || key == keys::of(keys::SEASON, &own) {
        if let (true, Some(text), Owner::Own(_)) = (crossed, text, page.owner.get_untracked()) {
            page.take_crossed(store, key, &text);
        }
        // Not at once: its other records are still on their way.
        page.changed();
    }
}

/// Takes what other tabs did while nobody told this one.
pub fn look_again(page: Page) {
    if page.store.get_untracked().is_some() {
        page.changed();
    }
}

/// Writes at once what is still to be written, and what could not be written before; whether nothing of the owner's waits, so that
/// another bike may be laid on the sheet.
pub fn flush(page: Page) -> bool {
    let failed = matches!(page.saving.get_untracked(), Saving::Failed(_));
    let waits = page.tabs.unsaved.get_untracked();
    if waits.is_some() || failed {
        if let Some(handle) = waits {
            handle.clear();
        }
        page.tabs.unsaved.set(None);
        // What a swap could not put back; not the bike on the sheet, which somebody may have wanted gone.
        let own = page.own_place().map(|it| keys::of(keys::BIKE, &it.0));
        let back = match page.store.get_untracked() {
            Some(it) if failed && own.as_ref().is_none_or(|own| it.read(own).is_some()) => {
                it.bring_back()
            }
            _ => Ok(()),
        };
        if back.is_ok() && own.is_some() {
            save(page);
        } else if failed && !told(page, back) {
            later(page, AGAIN);
        }
    }
    match page.owner.get_untracked() {
        Owner::Example => true,
        Owner::Looked(aside) => aside.safe,
        Owner::Own(_) => {
            page.store.get_untracked().is_none() || page.saving.get_untracked() == Saving::Kept
        }
    }
}

/// Lays a kept bike on the sheet.
pub fn open(page: Page, store: Store, key: &str) {
    // What could not be kept stays on the sheet, where it can be seen and taken as a link.
    if flush(page) {
        page.lay(stored(page, store, key, &Kept::default()), Owner::Own(key.to_owned()));
        let _ = store.write(keys::OPEN, key);
        browser::tell("torpor-open");
    }
}

/// The garage as it is kept.
pub fn garage(store: Store) -> Garage {
    store
        .read(keys::GARAGE)
        .and_then(|it| record::read(&it).ok())
        .map(|it| it.kept)
        .unwrap_or_default()
}

/// Takes the bike off the sheet and lays another one there, or the example.
pub fn close(page: Page, next: Option<String>) {
    match (page.store.get_untracked(), next) {
        (Some(store), Some(key)) => open(page, store, &key),
        (store, _) => {
            store.iter().for_each(|it| it.remove(keys::OPEN));
            page.lay_example();
        }
    }
}

/// Lays a bike that is kept nowhere yet, in the garage as it is kept.
pub fn lay_new(page: Page, kept: Kept, garage: Garage) {
    page.lay(kept, Owner::Own(browser::new_key()));
    page.beyond.update(move |it| it.garage = garage);
}

/// Writes a bike that is not on the sheet, as a link brings it, and opens it.
pub fn take_in(page: Page, kept: Kept) {
    let there = page.own_garage();
    let mut garage = there.clone();
    garage.welcome(kept.garage);
    let mut bike = kept.bike;
    bike.entries.remove(&facts::ARCHIVED.id());
    lay_new(page, Kept { garage, bike, ..kept }, there);
    save(page);
}

/// Writes the sheet, merged with what other tabs wrote since.
pub fn save(page: Page) {
    save_as(page, page.kept());
}

/// The same of what the sheet is to hold: of a newer page's facts, too, which stand on none.
pub fn save_as(page: Page, mut kept: Kept) {
    let Some((key, store)) = page.own_place() else { return };
    let base = page.beyond.get_untracked();
    let bike = keys::of(keys::BIKE, &key);
    if store.read(&bike).is_none() && store.knew(&bike) {
        // Nobody who took it away is to find it there again, unless it is still worked on.
        if kept == base && page.book.is_kept() {
            return page.tabs.gone.set(true);
        }
        if !bring_back(page, store, &key) {
            return;
        }
    }
    let theirs = stored(page, store, &key, &base);
    if page.store.get_untracked().is_none() {
        // A newer page's: nothing is taken of it, and nothing written.
        return;
    }
    if theirs != base {
        let (merged, twice) = Kept::merged(&base, &kept, &theirs);
        if merged != kept || !twice.is_empty() {
            page.take_merged(merged.clone(), twice);
        }
        kept = merged;
    }
    // From each record that was written the next change is told, though the one behind it does not fit.
    if kept != base {
        page.tabs.before.set(base.clone());
    }
    let mut now = base;
    let written = write(page, store, &bike, &kept.bike)
        .and_then(|()| {
            now.bike = kept.bike;
            write(page, store, &keys::of(keys::SEASON, &key), &kept.season)
        })
        .and_then(|()| {
            now.season = kept.season;
            write(page, store, keys::GARAGE, &kept.garage)
        })
        .and_then(|()| {
            now.garage = kept.garage;
            save_book(page, store, &key)
        })
        .and_then(|()| store.write(keys::OPEN, &key));
    page.beyond.set(now);
    if told(page, written) {
        browser::tell("torpor-kept");
    } else if page.saving.get_untracked() != Saving::Blocked {
        later(page, AGAIN);
    }
}

/// Writes the bike on the sheet again, which was removed outside of this page, and all else that went with it; whether it is there.
fn bring_back(page: Page, store: Store, key: &str) -> bool {
    let bike = keys::of(keys::BIKE, key);
    let mut aside = store.keys(removed::START).into_iter();
    let back = match aside.find(|it| it.ends_with(&bike)) {
        Some(it) => {
            let from = it.strip_suffix(&bike).unwrap_or_default();
            super::bikes::put(page, key, from, "").is_some()
        }
        None => told(page, store.bring_back()),
    };
    if back {
        page.tabs.gone.set(false);
        page.notices.update(|it| it.push(words::WRITTEN_AGAIN.to_owned()));
        if page.book.is_kept() {
            page.book.shut(true);
        }
    }
    back
}

/// Writes again what was removed outside of this page, as its owner wants.
pub fn keep_again(page: Page) {
    if let (Owner::Own(key), Some(store)) = (page.owner.get_untracked(), page.store.get_untracked())
        && bring_back(page, store, &key)
    {
        save(page);
    }
}

/// Writes a bike with its season and the garage.
pub fn write_all(page: Page, store: Store, key: &str, kept: &Kept) -> Result<(), StoreError> {
    write(page, store, &keys::of(keys::BIKE, key), &kept.bike)
        .and_then(|()| write(page, store, &keys::of(keys::SEASON, key), &kept.season))
        .and_then(|()| write(page, store, keys::GARAGE, &kept.garage))
}

/// Says whether something is kept; whether it is.
pub fn told(page: Page, written: Result<(), StoreError>) -> bool {
    let done = written.is_ok();
    let now = match written {
        Ok(()) => Saving::Kept,
        Err(StoreError::Blocked) => Saving::Blocked,
        Err(StoreError::Full) => Saving::Failed(words::STORE_FULL.to_owned()),
        Err(StoreError::Torn) => Saving::Failed(words::STORE_TORN.to_owned()),
        Err(StoreError::Other(why)) => Saving::Failed(why),
    };
    // What is said once is not said again with every try.
    if done || page.saving.get_untracked() != now {
        page.saving.set(now);
    }
    done
}

/// Puts texts under their keys, all or none; whether that is done, which is said. What could not even be put back is tried again.
pub fn swap(page: Page, store: Store, all: &[Write]) -> bool {
    let done = told(page, store.swap(all));
    if !done {
        later(page, AGAIN);
    }
    done
}

/// Writes the leaves of the logbook that have changed. What another tab wrote on one since is taken in.
fn save_book(page: Page, store: Store, bike: &str) -> Result<(), StoreError> {
    let mut changed = page.take_changed_leaves();
    if !changed.is_empty() {
        page.tabs.leaves.set(changed.clone());
    }
    while let Some((leaf, before)) = changed.pop() {
        let key = format!("{}{leaf}", keys::several(keys::LOG, bike));
        let mut now = page.logbook().leaf(leaf);
        let mut theirs: Vec<Entries> = load(page, store, &key);
        theirs.retain(|it| !before.contains(it) && !now.contains(it));
        if !theirs.is_empty() {
            now.extend(theirs.iter().cloned());
            page.take_into_book(leaf, theirs);
        }
        let written = match now.is_empty() {
            true => {
                store.remove(&key);
                Ok(())
            }
            false => write(page, store, &key, &now),
        };
        if let Err(why) = written {
            changed.push((leaf, before));
            page.unwritten(changed);
            return Err(why);
        }
    }
    Ok(())
}

/// The leaves of the logbook of the bike on the sheet, as they are kept.
pub fn leaves(page: Page) -> Vec<Vec<Entries>> {
    numbered(page, keys::LOG)
}

/// Records of the bike on the sheet that have a number, each in its place.
pub fn numbered<T: DeserializeOwned + Default + Clone>(page: Page, sort: &str) -> Vec<T> {
    let Some((key, store)) = page.own_place() else {
        return Vec::new();
    };
    let start = keys::several(sort, &key);
    let mut all = Vec::new();
    for key in store.keys(&start) {
        let place = key.strip_prefix(&start).and_then(|it| it.parse::<usize>().ok());
        if let Some(place) = place.filter(|it| *it < PLACES) {
            if all.len() <= place {
                all.resize(place + 1, T::default());
            }
            all[place] = load(page, store, &key);
        }
    }
    all
}
