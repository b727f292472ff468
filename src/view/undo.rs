//! Changes of a list that can be taken back.

use super::page::Page;
use super::rows::{Item, Items};
use crate::entry::Entry;
use crate::facts;
use crate::garage::Entries;
use crate::words::page as words;
use leptos::prelude::*;
use std::sync::Arc;

/// A change of a list that can be taken back.
#[derive(Clone)]
pub struct Undo {
    /// Words.
    pub said: String,
    taken: Taken,
}

/// What has to be done to take it back.
#[derive(Clone)]
enum Taken {
    /// Something was taken out.
    Out(Items, usize, Item),
    /// The open fastener was kept.
    Kept(usize, Entries),
    /// The rows of a table were taken in; the text that it was.
    Table(Vec<usize>, Vec<Entries>, String),
    /// Anything else, with what takes it back.
    Other(Arc<dyn Fn() + Send + Sync>),
}

impl Page {
    /// Adds the fasteners of a table; they can be taken back, and then `text`, the table, is there again.
    pub fn add_fasteners(self, new: &[Entries], text: String) {
        if self.is_example_untracked() {
            self.start_own();
        }
        let keys = self.fasteners.add(new);
        self.can_undo(words::added(keys.len()), Taken::Table(keys, new.to_vec(), text));
    }

    /// Says that the open fastener was kept under the first of `keys`, and lets it be taken back.
    pub fn can_take_back(self, keys: Vec<usize>, own: Entries) {
        let name = facts::FASTENER_NAME.maybe(&own).ok().flatten();
        let Some(key) = keys.first() else { return };
        let place = untrack(|| self.fasteners.place(*key)).unwrap_or_default();
        let name = name.unwrap_or_else(|| words::fastener(place + 1));
        self.can_undo(words::kept(&name), Taken::Kept(*key, own));
    }

    /// Removes one of several; it can be taken back.
    pub fn remove(self, items: Items, key: usize, name: &str) {
        if let Some((at, item)) = items.remove(key) {
            if untrack(|| self.wrenches.with(<[Item]>::is_empty)) {
                self.wrenches.lay([&Entries::new()]);
            }
            self.can_undo(words::removed(name), Taken::Out(items, at, item));
        }
    }

    fn can_undo(self, said: String, taken: Taken) {
        self.undo.update(|it| it.push(Undo { said, taken }));
        self.changed();
    }

    /// Says what was done, and lets it be taken back by `back`.
    pub fn can_undo_by(self, said: String, back: impl Fn() + Send + Sync + 'static) {
        self.can_undo(said, Taken::Other(Arc::new(back)));
    }

    /// Takes a fastener out by its place's name; it can be put back.
    fn take_out(self, key: usize) {
        if let Some(place) = untrack(|| self.fasteners.place(key)) {
            self.remove(self.fasteners, key, &words::fastener(place + 1));
        }
    }

    /// Takes the last change of a list back.
    pub fn take_back(self) {
        let last = self.undo.try_update(Vec::pop).flatten();
        match last.map(|it| it.taken) {
            Some(Taken::Out(items, at, item)) => {
                // The one that stood in for the last of them goes.
                if untrack(|| items.entries()).is_empty() {
                    items.lay([]);
                }
                items.put_back(at, item);
            }
            Some(Taken::Kept(key, own)) => {
                // Back to its blanks, unless the next one stands there or it has been changed since.
                let same =
                    untrack(|| self.fasteners.item_of(key).is_some_and(|it| it.entries() == own));
                if same && self.open_fastener().values().all(Entry::is_blank) {
                    self.lay_open_fastener(&own);
                    let _ = self.fasteners.remove(key);
                } else {
                    self.take_out(key);
                }
            }
            Some(Taken::Table(keys, added, text)) => {
                self.pasted.put_back(self, text);
                for (key, added) in keys.into_iter().zip(added) {
                    let same = untrack(|| {
                        self.fasteners.item_of(key).is_some_and(|it| it.entries() == added)
                    });
                    // What its owner has made of it since is not in the table.
                    if same {
                        let _ = self.fasteners.remove(key);
                    } else {
                        self.take_out(key);
                    }
                }
            }
            Some(Taken::Other(back)) => back(),
            None => {}
        }
        self.changed();
    }
}
