//! State of the page: the live sheet, whose bike it is, what has to be said.

use super::browser;
use crate::entry::Entry;
use crate::facts::{self, Facts, Home, Id};
use crate::garage::{self, Entries, Garage, Kept};
use crate::plan::{Line, address};
use crate::storage::browser::Store;
use crate::storage::link::Parcel;
use crate::units::UnitSet;
use crate::words::page as words;
use chrono::NaiveDate;
use leptos::prelude::*;
use std::collections::BTreeSet;
use std::sync::Arc;

/// One signal for each fact, so that a line runs again only for the facts it asks.
#[derive(Clone)]
pub struct Sheet(Arc<Vec<(Id, ArcRwSignal<Entry>)>>);

impl Sheet {
    /// A blank sheet of the facts that `home` picks.
    pub fn blank(home: impl Fn(Home) -> bool) -> Self {
        let facts = facts::TABLE.iter().filter(|it| home(it.home));
        // In the table's order, so that a fact is found by halves.
        Self(Arc::new(facts.map(|it| (it.id, ArcRwSignal::new(Entry::default()))).collect()))
    }

    /// The signal of a fact.
    pub fn signal(&self, id: Id) -> Option<ArcRwSignal<Entry>> {
        let at = self.0.binary_search_by_key(&id, |it| it.0).ok()?;
        Some(self.0[at].1.clone())
    }

    /// Sets every fact as `from` has it.
    pub fn take(&self, from: &dyn Facts) {
        for (id, signal) in self.0.iter() {
            let entry = from.entry(*id);
            if signal.with_untracked(|it| *it != entry) {
                signal.set(entry);
            }
        }
    }

    /// Everything that was ever typed.
    pub fn entries(&self) -> Entries {
        let mut entries = Entries::new();
        for (id, signal) in self.0.iter() {
            let entry = signal.get();
            if entry != Entry::default() {
                entries.insert(*id, entry);
            }
        }
        entries
    }
}

impl Facts for Sheet {
    fn entry(&self, id: Id) -> Entry {
        self.signal(id).map(|it| it.get()).unwrap_or_default()
    }
}

/// What entries and lines work on: the bike's sheet, one fastener before it, or the blank sheet of a quick sum.
#[derive(Clone)]
pub struct Desk {
    sheet: Sheet,
    /// A kept fastener's own facts.
    fastener: Option<Sheet>,
    /// Nothing of a quick sum is kept.
    pub quick: bool,
}

impl Desk {
    /// The bike's.
    pub fn of_bike(page: Page) -> Self {
        Self { sheet: page.sheet(), fastener: None, quick: false }
    }

    /// One kept fastener of the bike.
    pub fn of_fastener(page: Page, fastener: Sheet) -> Self {
        Self { sheet: page.sheet(), fastener: Some(fastener), quick: false }
    }

    /// A blank one of its own.
    pub fn quick() -> Self {
        Self { sheet: Sheet::blank(|_| true), fastener: None, quick: true }
    }

    /// The signal of a fact.
    pub fn signal(&self, id: Id) -> ArcRwSignal<Entry> {
        let own = self.fastener.as_ref().and_then(|it| it.signal(id));
        own.or_else(|| self.sheet.signal(id)).unwrap_or_else(|| ArcRwSignal::new(Entry::default()))
    }
}

impl Fastener {
    /// All that is known of it.
    fn entries(&self) -> Entries {
        let mut entries = self.beyond.clone();
        entries.extend(self.sheet.entries());
        entries
    }
}

impl Facts for Desk {
    fn entry(&self, id: Id) -> Entry {
        self.signal(id).get()
    }
}

/// Whose bike stands on the sheet.
#[derive(Debug, Clone, PartialEq)]
pub enum Owner {
    /// The invented one.
    Example,
    /// One that is kept, or will be with its first entry, under this key.
    Own(String),
}

/// Whether what is typed is kept.
#[derive(Debug, Clone, PartialEq)]
pub enum Saving {
    /// Yes.
    Kept,
    /// The browser keeps nothing here.
    Blocked,
    /// The last change was not.
    Failed(String),
}

/// A kept fastener on the live sheet.
#[derive(Clone)]
pub struct Fastener {
    /// Stays with it while others come and go.
    pub key: usize,
    /// Its facts.
    pub sheet: Sheet,
    /// Those of a newer page, kept and passed on.
    beyond: Entries,
}

/// What the last removal took, and how to say it.
#[derive(Clone)]
pub struct Undo {
    /// Words.
    pub said: String,
    at: usize,
    fastener: Fastener,
}

/// Handles to the page's state; small, so it is copied into every closure.
#[derive(Clone, Copy)]
pub struct Page {
    sheet: StoredValue<Sheet>,
    /// What the store holds beyond the sheet's facts: facts and groups of a newer page, further wrenches.
    pub beyond: StoredValue<Kept>,
    /// Kept fasteners.
    pub fasteners: RwSignal<Vec<Fastener>>,
    next_fastener: StoredValue<usize>,
    /// Whose bike.
    pub owner: RwSignal<Owner>,
    /// Units of answers and fresh blanks.
    pub set: Memo<UnitSet>,
    /// What the address opens.
    pub address: RwSignal<address::Address>,
    /// Lines that are unfolded.
    pub open: RwSignal<BTreeSet<Line>>,
    /// The store, where there is one.
    pub store: StoredValue<Option<Store>>,
    /// Whether what is typed is kept.
    pub saving: RwSignal<Saving>,
    /// What has to be said.
    pub notices: RwSignal<Vec<String>>,
    /// The last removal.
    pub undo: RwSignal<Option<Undo>>,
    /// For screen readers: the changed line's answer, once.
    pub spoken: RwSignal<String>,
    /// Today.
    pub today: RwSignal<NaiveDate>,
    /// Whether the owner's bike has just begun, in place of the example.
    pub began: RwSignal<bool>,
    /// What was typed last is still to be written.
    pub unsaved: StoredValue<Option<TimeoutHandle>>,
}

impl Page {
    /// State of a page that was just opened: the bike that was open last, or the example.
    pub fn open() -> Self {
        let sheet = Sheet::blank(|_| true);
        let units = sheet.clone();
        let store = Store::open();
        let set = Memo::new(move |_| match facts::UNIT_SET.maybe(&units) {
            Ok(Some(set)) => set,
            _ => browser::usual_units(),
        });
        let page = Self {
            sheet: StoredValue::new(sheet),
            beyond: StoredValue::new(Kept::default()),
            fasteners: RwSignal::new(Vec::new()),
            next_fastener: StoredValue::new(0),
            owner: RwSignal::new(Owner::Example),
            set,
            address: RwSignal::new(address::read(&browser::fragment())),
            open: RwSignal::new(BTreeSet::new()),
            saving: RwSignal::new(if store.is_ok() { Saving::Kept } else { Saving::Blocked }),
            store: StoredValue::new(store.ok()),
            notices: RwSignal::new(Vec::new()),
            undo: RwSignal::new(None),
            spoken: RwSignal::new(String::new()),
            today: RwSignal::new(browser::today()),
            began: RwSignal::new(false),
            unsaved: StoredValue::new(None),
        };
        page.read_address();
        page
    }

    /// The live sheet.
    pub fn sheet(self) -> Sheet {
        self.sheet.get_value()
    }

    /// Takes the address as the browser has it, and unfolds the line it names.
    pub fn read_address(self) {
        let address = address::read(&browser::fragment());
        if let address::Address::Sheet(Some(line), _) = address {
            self.open.update(|it| {
                it.insert(line);
            });
        }
        if self.address.with_untracked(|it| *it != address) {
            self.address.set(address);
        }
    }

    /// Lays a bike on the sheet.
    pub fn lay(self, kept: Kept, owner: Owner) {
        // What was typed last belongs to the bike that goes.
        super::kept::flush(self);
        self.began.set(false);
        self.owner.set(owner);
        self.sheet().take(&kept);
        self.fasteners.set(kept.bike.fasteners.iter().map(|it| self.fastener(it)).collect());
        self.beyond.set_value(kept);
        self.undo.set(None);
    }

    /// Lays the invented bike on the sheet, under the units in use.
    pub fn lay_example(self) {
        let units = self.sheet().entry(facts::UNIT_SET.id());
        let mut kept = garage::example(self.today.get_untracked(), self.set.get_untracked());
        kept.put(facts::UNIT_SET.id(), units);
        self.lay(kept, Owner::Example);
    }

    /// A fastener of the live sheet with these facts.
    fn fastener(self, entries: &Entries) -> Fastener {
        let sheet = Sheet::blank(|home| home == Home::Fastener);
        sheet.take(entries);
        let key = self.next_fastener.get_value();
        self.next_fastener.set_value(key + 1);
        let mut beyond = entries.clone();
        beyond.retain(|id, _| facts::about(*id).is_none());
        Fastener { key, sheet, beyond }
    }

    /// The owner's garage: as it is kept, or as it stands on the sheet where nothing can be kept.
    pub fn own_garage(self) -> Garage {
        match self.store.get_value() {
            Some(store) => super::kept::garage(store),
            None if self.owner.get_untracked() == Owner::Example => Garage::default(),
            None => untrack(|| self.kept()).garage,
        }
    }

    /// Starts a blank bike of the owner's own. The garage, if one is kept, stays: it is the owner's already.
    pub fn start_own(self) {
        let garage = self.own_garage();
        let units = self.sheet().entry(facts::UNIT_SET.id());
        let mut kept = Kept { garage, ..Kept::default() };
        kept.put(facts::UNIT_SET.id(), units);
        self.lay(kept, Owner::Own(browser::new_key()));
        self.began.set(true);
    }

    /// Takes what was typed into a blank.
    pub fn typed(self, desk: &Desk, id: Id, text: String) {
        let Some(about) = facts::about(id) else { return };
        let signal = desk.signal(id);
        let set = self.set.get_untracked();
        let before = signal.get_untracked();
        // The unit that the blank showed is what a bare number means, for ever.
        let unit = about.unit_for(&before, set).map_or(before.unit, |it| it.code);
        if !desk.quick && self.owner.get_untracked() == Owner::Example {
            self.start_own();
        }
        signal.set(Entry { text, unit, edited: browser::now() });
    }

    /// Changes the unit that a blank's bare number means.
    pub fn change_unit(self, desk: &Desk, id: Id, unit: u8) {
        desk.signal(id).update(|it| {
            it.unit = unit;
            it.edited = browser::now();
        });
    }

    /// Chooses the units of answers and fresh blanks.
    pub fn choose_units(self, key: &str) {
        if let Some(signal) = self.sheet().signal(facts::UNIT_SET.id()) {
            signal.set(Entry { text: key.to_owned(), unit: 0, edited: browser::now() });
        }
        if self.owner.get_untracked() == Owner::Example {
            self.lay_example();
        }
    }

    /// Moves the open fastener to the kept ones and leaves its blanks empty.
    pub fn keep_fastener(self) {
        if self.owner.get_untracked() == Owner::Example {
            return;
        }
        let sheet = self.sheet();
        let mut own = sheet.entries();
        own.retain(|id, _| garage::home(*id) == Home::Fastener);
        let kept = self.fastener(&own);
        self.fasteners.update(|it| it.push(kept));
        for id in own.into_keys() {
            if let Some(signal) = sheet.signal(id) {
                signal.set(Entry::default());
            }
        }
    }

    /// Removes a kept fastener; it can be taken back.
    pub fn remove_fastener(self, key: usize, name: &str) {
        let Some(at) = self.fasteners.with_untracked(|it| it.iter().position(|it| it.key == key))
        else {
            return;
        };
        let fastener = self.fasteners.try_update(|it| it.remove(at));
        self.undo.set(fastener.map(|fastener| Undo { said: words::removed(name), at, fastener }));
    }

    /// Takes the last removal back.
    pub fn take_back(self) {
        if let Some(Undo { at, fastener, .. }) = self.undo.get_untracked() {
            self.fasteners.update(|it| it.insert(at.min(it.len()), fastener));
        }
        self.undo.set(None);
    }

    /// Everything that the sheet holds now; tracks all of it.
    pub fn kept(self) -> Kept {
        let mut kept = self.beyond.get_value();
        let sheet = self.sheet();
        // What was emptied must not come back from what was loaded.
        for (id, signal) in sheet.0.iter() {
            kept.put(*id, signal.get());
        }
        kept.bike.fasteners =
            self.fasteners.with(|all| all.iter().map(Fastener::entries).collect());
        kept.drop_blanks();
        kept
    }

    /// What a link made now carries.
    pub fn parcel(self) -> Parcel {
        Parcel { made: self.today.get(), kept: self.kept() }
    }

    /// Says something to a screen reader.
    pub fn say(self, words: &str) {
        self.spoken.set(words.to_owned());
    }
}
