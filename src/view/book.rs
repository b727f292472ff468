//! The logbook of the bike on the sheet, as the page holds it: loaded when it is first looked at or written in, changed by
//! ticks and by hand, kept leaf by leaf.

use super::boxed::Changes;
use super::kept;
use super::live::Live;
use super::page::Page;
use crate::garage::Entries;
use crate::logbook::{Logbook, Row};
use crate::words::logbook as words;
use std::sync::Arc;

/// The logbook. Nobody follows all of it: ten thousand entries are not to be looked at for one letter.
#[derive(Clone, Copy)]
pub struct Book {
    /// `None` until it is loaded.
    all: Live<Option<Arc<Logbook>>>,
    /// Turns when entries come or go.
    pub turns: Live<u64>,
    /// Turns when another bike's book takes its place.
    pub laid: Live<u64>,
    /// Turns when an entry is changed.
    edits: Live<u64>,
    /// The entry of the step that was opened again last.
    pub opened: Live<Option<Row>>,
}

impl Book {
    /// One that is still to be loaded.
    pub fn new() -> Self {
        Self {
            all: Live::new(None),
            turns: Live::new(0),
            laid: Live::new(0),
            edits: Live::new(0),
            opened: Live::new(None),
        }
    }

    /// Forgets it: another bike is on the sheet, or another tab has written. Its entries are laid out `anew`, but where the
    /// blank book of the example gives way.
    pub fn shut(self, anew: bool) {
        if anew {
            self.laid.update(|it| *it += 1);
        }
        self.all.set_untracked(None);
        self.opened.set_untracked(None);
        self.turn();
    }

    /// Follows whatever changes in it.
    pub fn follow(self) {
        self.turns.track();
        self.edits.track();
    }

    /// Says that entries came or went.
    pub fn turn(self) {
        self.turns.update(|it| *it += 1);
    }

    fn change(self, page: Page, mut change: Box<dyn Changes<Logbook>>) {
        let mut now = page.logbook();
        // Nobody else holds it while it is changed, so that it is not copied.
        self.all.set_untracked(None);
        change.change(Arc::make_mut(&mut now));
        self.all.set_untracked(Some(now));
    }

    /// What of it is kept nowhere yet, to be put back when its bike is on the sheet again.
    pub fn unkept(self) -> Option<Arc<Logbook>> {
        self.all.get_untracked().filter(|it| !it.is_kept())
    }

    /// Puts it back.
    pub fn put_back(self, book: Option<Arc<Logbook>>) {
        self.all.set_untracked(book);
        self.turn();
    }

    /// Whether nothing of it is still to be written.
    pub fn is_kept(self) -> bool {
        self.all.with_untracked(|it| it.as_ref().is_none_or(|it| it.is_kept()))
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

    /// Leaves that are still to be written, each with what stood on it before; nothing where the book was never opened.
    pub fn take_changed_leaves(self) -> Vec<(usize, Vec<Entries>)> {
        let mut leaves = Vec::new();
        if !self.book.is_kept() {
            let mut now = self.logbook();
            self.book.all.set_untracked(None);
            leaves = Arc::make_mut(&mut now).take_changed();
            self.book.all.set_untracked(Some(now));
        }
        leaves
    }

    /// Takes entries that another tab wrote on a leaf.
    pub fn take_into_book(self, leaf: usize, theirs: Vec<Entries>) {
        self.book.change(self, Box::new(move |it: &mut Logbook| it.take_in(leaf, theirs.clone())));
        self.book.turn();
    }

    /// Takes a leaf as another tab has written it, where the book is open and has nothing to be written.
    pub fn follow_leaf(self, leaf: usize, theirs: Vec<Entries>) {
        if self.book.all.with_untracked(Option::is_some) && self.book.is_kept() {
            let follow = move |it: &mut Logbook| it.follow_leaf(leaf, theirs.clone());
            self.book.change(self, Box::new(follow));
            self.book.turn();
        }
    }

    /// Says of leaves that they could not be written.
    pub fn unwritten(self, leaves: Vec<(usize, Vec<Entries>)>) {
        self.book.change(self, Box::new(move |it: &mut Logbook| it.unwritten(leaves.clone())));
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
            self.book.edits.update(|it| *it += 1);
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
            let said = words::struck_out(&row.line());
            self.can_undo_by(said, move || self.put_in_book(row.clone()));
        }
    }

    /// Puts one that was taken out back.
    pub fn put_in_book(self, row: Row) {
        self.write_in_book(move |it| it.put_back(row.clone()));
    }
}
