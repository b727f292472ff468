//! Keeping: what is typed goes to the store soon after, and at once when the page goes out of sight.

use super::browser;
use super::follow::follow;
use super::page::{Owner, Page, Saving};
use crate::calendar::Saved;
use crate::entry::Entry;
use crate::facts;
use crate::garage::{Entries, Garage, Kept, Season};
use crate::storage::browser::{Store, StoreError};
use crate::storage::record::{self, PREFIX, Unreadable};
use crate::words::page as words;
use leptos::prelude::*;
use serde::{Serialize, de::DeserializeOwned};
use std::cell::Cell;
use std::time::Duration;

const GARAGE: &str = "garage";
const OPEN: &str = "open";
/// Long enough that a word is typed, short enough that nothing is lost.
const SOON: Duration = Duration::from_millis(400);

/// More leaves or seasons than any bike fills.
const MOST_RECORDS: usize = 4096;

/// Where a bike's record is kept.
pub fn bike_key(key: &str) -> String {
    format!("bike.{key}")
}
/// Where its season is kept.
pub fn season_key(key: &str) -> String {
    format!("season.{key}")
}

/// Leaves of a bike's logbook, each under its number.
fn log_key(key: &str) -> String {
    format!("log.{key}.")
}
/// Seasons of a bike that are over, each under its number.
fn past_key(key: &str) -> String {
    format!("past.{key}.")
}

/// The days of the last calendar file of a bike.
fn calendar_key(key: &str) -> String {
    format!("calendar.{key}")
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
    browser::on_hide(move || {
        flush(page);
    });
    // Another tab wrote: what it changed is taken here, and what is changed here is merged with it.
    browser::on_storage(move |key| {
        let key = key.strip_prefix(PREFIX).unwrap_or_default();
        let own = untrack(|| page.key());
        if key.starts_with(&log_key(&own)) && page.book.is_kept() {
            page.book.shut(true);
        } else if key == GARAGE || key == bike_key(&own) || key == season_key(&own) {
            // Not at once: its other records are still on their way.
            page.changed();
        }
    });
}

/// Writes at once what is still to be written, and what could not be written before; whether all is kept, where anything is.
pub fn flush(page: Page) -> bool {
    let failed = |page: Page| matches!(page.saving.get_untracked(), Saving::Failed(_));
    let waits = page.unsaved.get_untracked();
    if waits.is_some() || failed(page) {
        if let Some(handle) = waits {
            handle.clear();
        }
        page.unsaved.set(None);
        save(page);
    }
    !failed(page)
}

/// Lays a kept bike on the sheet.
pub fn open(page: Page, store: Store, key: &str) {
    // What could not be kept stays on the sheet, where it can be seen and taken as a link.
    if flush(page) {
        page.lay(stored(page, store, key), Owner::Own(key.to_owned()));
        let _ = store.write(OPEN, key);
    }
}

/// A bike as it is kept.
pub fn stored(page: Page, store: Store, key: &str) -> Kept {
    Kept {
        bike: load(page, store, &bike_key(key)),
        season: load(page, store, &season_key(key)),
        garage: load(page, store, GARAGE),
    }
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
    let mut kept = page.kept();
    let base = page.beyond.get_untracked();
    if store.read(&bike_key(&key)).is_some() {
        let theirs = stored(page, store, &key);
        if theirs != base {
            let merged = Kept::merged(&base, &kept, &theirs);
            if merged != kept {
                page.lay_again(merged.clone());
            }
            kept = merged;
        }
    }
    let written = write_all(page, store, &key, &kept)
        .and_then(|()| save_book(page, store, &key))
        .and_then(|()| store.write(OPEN, &key));
    if told(page, written) {
        // From here on the next change is told from.
        page.beyond.set(kept);
    }
}

/// Writes a bike with its season and the garage.
pub fn write_all(page: Page, store: Store, key: &str, kept: &Kept) -> Result<(), StoreError> {
    write(page, store, &bike_key(key), &kept.bike)
        .and_then(|()| write(page, store, &season_key(key), &kept.season))
        .and_then(|()| write(page, store, GARAGE, &kept.garage))
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

/// Writes the leaves of the logbook that have changed. What another tab wrote on one since is taken in.
fn save_book(page: Page, store: Store, bike: &str) -> Result<(), StoreError> {
    let mut changed = page.take_changed_leaves();
    while let Some((leaf, before)) = changed.pop() {
        let key = format!("{}{leaf}", log_key(bike));
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
    numbered(page, log_key)
}

/// Records of the bike on the sheet that have a number, each in its place.
fn numbered<T: DeserializeOwned + Default + Clone>(page: Page, of: fn(&str) -> String) -> Vec<T> {
    let (Owner::Own(key), Some(store)) = (page.owner.get_untracked(), page.store.get_untracked())
    else {
        return Vec::new();
    };
    let start = of(&key);
    let mut all = Vec::new();
    for key in store.keys(&start) {
        let place = key.strip_prefix(&start).and_then(|it| it.parse::<usize>().ok());
        if let Some(place) = place.filter(|it| *it < MOST_RECORDS) {
            if all.len() <= place {
                all.resize(place + 1, T::default());
            }
            all[place] = load(page, store, &key);
        }
    }
    all
}

/// Seasons of the bike on the sheet that are over, each with its place.
pub fn past_seasons(page: Page) -> Vec<(usize, Season)> {
    let all: Vec<Season> = numbered(page, past_key);
    all.into_iter().enumerate().filter(|it| !it.1.entries.is_empty()).collect()
}

/// Puts a season away; its place. `None` where it could not be kept, which is said. Where nothing is kept at all it is only
/// put off the sheet.
pub fn put_season_away(page: Page, season: &Season) -> Option<usize> {
    let place = numbered::<Season>(page, past_key).len();
    if let (Owner::Own(key), Some(store)) = (page.owner.get_untracked(), page.store.get_untracked())
    {
        let written = write(page, store, &format!("{}{place}", past_key(&key)), season);
        return told(page, written).then_some(place);
    }
    Some(place)
}

/// Lays a season that is over, `back`, on the sheet again, and puts what was typed of the one there in its place.
pub fn bring_season_back(page: Page, place: usize, back: &Season) {
    let now = page.kept();
    page.lay_again(Kept { season: back.clone(), ..now.clone() });
    // Only once it is kept there it goes here.
    save(page);
    if let (Owner::Own(key), Some(store), Saving::Kept) =
        (page.owner.get_untracked(), page.store.get_untracked(), page.saving.get_untracked())
    {
        let record = format!("{}{place}", past_key(&key));
        if now.season.entries.values().all(Entry::is_blank) {
            store.remove(&record);
        } else {
            let written = write(page, store, &record, &now.season);
            told(page, written);
        }
    }
    page.book.turn();
}

/// What the last calendar file of the bike on the sheet had; nothing where there was none.
pub fn calendar(page: Page) -> Saved {
    page.store
        .get_untracked()
        .map(|store| load(page, store, &calendar_key(&page.key())))
        .unwrap_or_default()
}

/// Remembers what the calendar file has now. Where that fails an old event stays in the calendar, and no more.
pub fn remember_calendar(page: Page, saved: &Saved) {
    if let (Owner::Own(key), Some(store)) = (page.owner.get_untracked(), page.store.get_untracked())
    {
        let _ = write(page, store, &calendar_key(&key), saved);
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
