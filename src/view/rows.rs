//! Things of which a bike or a garage has several: fasteners, wrenches. Added, moved, removed, taken back.

use super::live::{Live, Typed};
use super::page::Sheet;
use crate::facts::{self, Facts, Home, Id};
use crate::garage::{self, Entries};
use leptos::prelude::*;

/// One of them on the live sheet.
#[derive(Clone)]
pub struct Item {
    /// Stays with it while others come and go.
    pub key: usize,
    /// Its facts.
    pub sheet: Sheet,
    /// Those of a newer page, kept and passed on.
    beyond: Entries,
}

impl Item {
    /// All that is known of it.
    pub fn entries(&self) -> Entries {
        let mut entries = self.beyond.clone();
        entries.extend(self.sheet.entries());
        entries
    }
}

/// All of them, in their order.
#[derive(Clone, Copy)]
pub struct Items {
    all: Live<Vec<Item>>,
    next: Live<usize>,
    home: Home,
}

impl Items {
    /// None yet of those whose facts live in `home`.
    pub fn new(home: Home) -> Self {
        Self { all: Live::new(Vec::new()), next: Live::new(0), home }
    }

    /// Those with these facts in place of all there were.
    pub fn lay<'a>(self, all: impl IntoIterator<Item = &'a Entries>) {
        self.all.set(all.into_iter().map(|it| self.item(it)).collect());
    }

    /// The same, each laid over what it was: what is just being typed at one must not go to another. Blank ones stay.
    pub fn lay_over(self, all: &[Entries]) {
        self.all.update(|items| {
            let before: Vec<Entries> = items.iter().map(Item::entries).collect();
            let places = garage::places(all, &before);
            let mut now = Vec::new();
            for (entries, place) in all.iter().zip(&places) {
                let item = items.get(*place).cloned();
                let mut item = item.unwrap_or_else(|| self.item(entries));
                item.sheet.take(entries);
                item.beyond = beyond(entries);
                now.push(item);
            }
            for (at, item) in items.iter().enumerate() {
                if before[at].is_empty() && !places.contains(&at) {
                    now.push(item.clone());
                }
            }
            *items = now;
        });
    }

    fn item(self, entries: &Entries) -> Item {
        let sheet = Sheet::blank(|home| home == self.home);
        sheet.take(entries);
        let key = self.next.get_untracked();
        self.next.set(key + 1);
        Item { key, sheet, beyond: beyond(entries) }
    }

    /// Adds some behind the others; their keys.
    pub fn add<'a>(self, new: impl IntoIterator<Item = &'a Entries>) -> Vec<usize> {
        let new: Vec<Item> = new.into_iter().map(|it| self.item(it)).collect();
        let keys = new.iter().map(|it| it.key).collect();
        self.all.update(|all| all.extend(new));
        keys
    }

    /// Looks at all of them; tracks that they are there, not what is known of them.
    pub fn with<T>(self, look: impl Fn(&[Item]) -> T) -> T {
        self.all.with(|all| look(all))
    }

    /// Keys in their order.
    pub fn keys(self) -> Vec<usize> {
        self.with(|all| all.iter().map(|it| it.key).collect())
    }

    /// The place of one of them.
    pub fn place(self, key: usize) -> Option<usize> {
        self.with(|all| all.iter().position(|it| it.key == key))
    }

    /// One of them.
    pub fn item_of(self, key: usize) -> Option<Item> {
        self.with(|all| all.iter().find(|it| it.key == key).cloned())
    }

    /// The facts of one of them.
    pub fn sheet(self, key: usize) -> Option<Sheet> {
        untrack(|| self.item_of(key)).map(|it| it.sheet)
    }

    /// Takes one out, with its place.
    pub fn remove(self, key: usize) -> Option<(usize, Item)> {
        let at = untrack(|| self.place(key))?;
        Some((at, self.all.try_update(|all| all.remove(at))?))
    }

    /// Puts one back where it was.
    pub fn put_back(self, at: usize, item: Item) {
        self.all.update(|all| all.insert(at.min(all.len()), item));
    }

    /// Moves one toward the head of the list or toward its end.
    pub fn shift(self, key: usize, down: bool) {
        let Some(at) = untrack(|| self.place(key)) else { return };
        let to = if down { Some(at + 1) } else { at.checked_sub(1) };
        let count = untrack(|| self.with(<[Item]>::len));
        if let Some(to) = to.filter(|to| *to < count) {
            self.all.update(|all| all.swap(at, to));
        }
    }

    /// Everything that is known of them, but for those of which nothing is.
    pub fn entries(self) -> Vec<Entries> {
        self.with(|all| all.iter().map(Item::entries).filter(|it| !it.is_empty()).collect())
    }

    /// The fact of the first of them.
    pub fn first(self, id: Id) -> Option<Typed> {
        self.with(|all| all.first()?.sheet.signal(id))
    }
}

/// What this page does not know of it.
fn beyond(entries: &Entries) -> Entries {
    let mut beyond = entries.clone();
    beyond.retain(|id, _| facts::about(*id).is_none());
    beyond
}

impl Facts for Item {
    fn entry(&self, id: Id) -> crate::entry::Entry {
        self.sheet.entry(id)
    }
}
