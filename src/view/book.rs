//! The logbook of the bike on the sheet, as the page holds it: loaded when it is first looked at or written in, changed by
//! ticks and by hand, kept leaf by leaf.

use super::boxed::Changes;
use super::kept;
use super::live::Live;
use super::page::{Desk, Page};
use crate::garage::Entries;
use crate::logbook::{Logbook, Row};
use crate::plan::{self, Side, Step};
use crate::words::{logbook as words, page::removed};
use leptos::prelude::untrack;
use std::sync::Arc;

/// The logbook. Nobody follows all of it: ten thousand entries are not to be looked at for one letter.
#[derive(Clone, Copy)]
pub struct Book {
    /// `None` until it is loaded.
    all: Live<Option<Arc<Logbook>>>,
    /// Turns when entries come or go; [`Page::changes`] turns with whatever is typed.
    pub turns: Live<u64>,
}

impl Book {
    /// One that is still to be loaded.
    pub fn new() -> Self {
        Self { all: Live::new(None), turns: Live::new(0) }
    }

    /// Forgets it: another bike is on the sheet.
    pub fn shut(self) {
        self.all.set_untracked(None);
        self.turn();
    }

    fn turn(self) {
        self.turns.update(|it| *it += 1);
    }

    fn change(self, page: Page, mut change: Box<dyn Changes<Logbook>>) {
        let mut now = page.logbook();
        // Nobody else holds it while it is changed, so that it is not copied.
        self.all.set_untracked(None);
        change.change(Arc::make_mut(&mut now));
        self.all.set_untracked(Some(now));
    }

    /// Leaves that are still to be written, each with its entries; nothing where the book was never opened.
    pub fn changed(self) -> Vec<(usize, Vec<Entries>)> {
        let Some(mut now) = self.all.get_untracked() else { return Vec::new() };
        if now.is_kept() {
            return Vec::new();
        }
        self.all.set_untracked(None);
        let leaves = Arc::make_mut(&mut now).take_changed();
        let leaves = leaves.iter().map(|leaf| (*leaf, now.leaf(*leaf))).collect();
        self.all.set_untracked(Some(now));
        leaves
    }
}

impl Page {
    /// The logbook as it stands; loaded where it was not.
    pub fn logbook(self) -> Arc<Logbook> {
        self.book.all.get_untracked().unwrap_or_else(|| {
            let loaded = Arc::new(Logbook::of(kept::leaves(self)));
            self.book.all.set_untracked(Some(loaded.clone()));
            loaded
        })
    }

    /// Adds, takes out or puts back entries.
    pub fn write_in_book(self, change: impl FnMut(&mut Logbook) + 'static) {
        self.book.change(self, Box::new(change));
        self.book.turn();
        self.changed();
    }

    /// Says of leaves that they could not be written.
    pub fn unwritten(self, leaves: Vec<usize>) {
        let again = move |it: &mut Logbook| leaves.iter().for_each(|leaf| it.touch(*leaf));
        self.book.change(self, Box::new(again));
    }

    /// Writes an entry; its key.
    pub fn add_to_book(self, own: Entries) -> usize {
        let key = self.logbook().next_key();
        self.write_in_book(move |it| {
            it.add(own.clone());
        });
        key
    }

    /// Takes what was typed in an entry; the list stays as it stands.
    pub fn amend(self, key: usize, changed: Entries) {
        if !changed.is_empty() {
            let amend = move |it: &mut Logbook| it.amend(key, changed.clone());
            self.book.change(self, Box::new(amend));
            self.changed();
        }
    }

    /// Takes an entry out; what it was.
    pub fn take_out_of_book(self, key: usize) -> Option<Row> {
        let row = self.logbook().row(key).cloned();
        self.write_in_book(move |it| {
            it.remove(key);
        });
        row
    }

    /// Takes an entry out; it can be taken back.
    pub fn strike_out(self, key: usize) {
        if let Some(row) = self.take_out_of_book(key) {
            let said = removed(&row.line());
            self.can_undo_by(said, move || self.put_in_book(row.clone()));
        }
    }

    /// Puts one that was taken out back.
    pub fn put_in_book(self, row: Row) {
        self.write_in_book(move |it| it.put_back(row.clone()));
    }

    /// Ticks a step, or opens it again.
    pub fn tick(self, step: &'static Step, desk: &Desk) {
        let done = untrack(|| step.is_done(desk));
        self.set_tick(step, desk, !done);
        let figures = step
            .sum
            .filter(|_| !done)
            .map(|it| plan::figures(it, &self.kept(), self.set.get_untracked()));
        let back = move || self.set_tick(step, &Desk::of_bike(self), done);
        let key = step.choice.key;
        self.log_tick(step.side, key, step.said.title, !done, figures, Box::new(back));
    }

    /// Writes the entry of a tick, or takes it out again with the tick; `back` sets the tick as it was.
    pub fn log_tick(
        self,
        side: Side,
        key: &str,
        title: &str,
        done: bool,
        figures: Option<String>,
        back: Box<dyn Fn() + Send + Sync>,
    ) {
        let (kept, today) = (self.kept(), self.today.get_untracked());
        let tag = side.tag(key, &kept, today);
        if done {
            let figures = figures.unwrap_or_default();
            let key = self.add_to_book(Logbook::of_tick(&tag, title, today, &figures, &kept));
            self.can_undo_by(words::ticked(title), move || {
                back();
                self.take_out_of_book(key);
            });
        } else {
            let key = self.logbook().ticked(&tag).map(|it| it.key);
            let out = key.and_then(|it| self.take_out_of_book(it));
            self.can_undo_by(words::open_again(title), move || {
                back();
                if let Some(row) = &out {
                    self.put_in_book(row.clone());
                }
            });
        }
    }

    /// Sets a step's tick and no more.
    fn set_tick(self, step: &'static Step, desk: &Desk, done: bool) {
        let (id, text) = untrack(|| step.ticked(desk, done));
        self.typed(desk, id, text);
    }
}
