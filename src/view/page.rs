//! State of the page: the live sheet, whose bike it is, what has to be said.

use super::book::Book;
use super::browser;
pub use super::desk::Desk;
use super::live::{Derived, Live, Typed};
use super::look::Aside;
use super::rows::Items;
use super::table::Pasted;
use super::tabs::Tabs;
use super::undo::Undo;
use crate::entry::Entry;
use crate::facts::{self, Facts, Home, Id};
use crate::garage::{self, Entries, Garage, Kept};
use crate::plan::{self, Held, Panel, Step, address};
use crate::storage::browser::Store;
use crate::storage::link::Parcel;
use crate::units::UnitSet;
use chrono::NaiveDate;
use leptos::prelude::*;
use std::ops::Deref;
use std::sync::Arc;

/// One signal for each fact, so that a line runs again only for the facts it asks.
#[derive(Clone)]
pub struct Sheet(Arc<Vec<(Id, Typed)>>);

impl Sheet {
    /// A blank sheet of the facts that `home` picks.
    pub fn blank(home: impl Fn(Home) -> bool) -> Self {
        let facts = facts::TABLE.iter().filter(|it| home(it.home));
        // In the table's order, so that a fact is found by halves.
        Self(Arc::new(facts.map(|it| (it.id, Typed::default())).collect()))
    }

    /// The signal of a fact.
    pub fn signal(&self, id: Id) -> Option<Typed> {
        let at = self.0.binary_search_by_key(&id, |it| it.0).ok()?;
        Some(self.0[at].1.clone())
    }

    /// Sets every fact as `from` has it.
    pub fn take(&self, from: &dyn Facts) {
        for (id, signal) in self.0.iter() {
            let entry = from.entry(*id);
            if !signal.is(&entry) {
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

/// Whose bike stands on the sheet.
#[derive(Clone, PartialEq)]
pub enum Owner {
    /// The invented one.
    Example,
    /// One that is kept, or will be with its first entry, under this key.
    Own(String),
    /// One from a link that is only looked at, in memory alone; what stood on the sheet before.
    Looked(Arc<Aside>),
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

/// The page's state, of which there is one for as long as the page is open. It is copied into every closure: a list of all
/// its handles there instead of this one would be code wherever a closure is made.
#[derive(Clone, Copy)]
pub struct Page(&'static State);

impl Deref for Page {
    type Target = State;

    fn deref(&self) -> &State {
        self.0
    }
}

/// Handles to all that the page follows.
pub struct State {
    sheet: Live<Sheet>,
    /// What the store holds beyond the sheet's facts: facts and groups of a newer page, further wrenches.
    pub beyond: Live<Kept>,
    /// Kept fasteners.
    pub fasteners: Items,
    /// The wrench drawer; never empty.
    pub wrenches: Items,
    /// The wrenches as they are read, once for all fasteners.
    pub drawer: Derived<Arc<Vec<Held>>>,
    /// The battery line's answers and its season day by day, worked out once for the line and for the season line.
    pub battery: Derived<Panel>,
    /// Turns with every change of what is kept. Whoever wants to know of any change looks here, not at each fact.
    pub changes: Live<u64>,
    /// Whose bike.
    pub owner: Live<Owner>,
    /// Units of answers and fresh blanks.
    pub set: Derived<UnitSet>,
    /// What the address opens.
    pub address: Live<address::Address>,
    /// Steps that are unfolded.
    pub open: Live<Vec<&'static Step>>,
    /// How many rows of the torque list are unfolded.
    pub open_rows: Live<usize>,
    /// The wrench that was just added, to be filled in.
    pub opened: Live<Option<usize>>,
    /// The store, where there is one.
    pub store: Live<Option<Store>>,
    /// Whether what is typed is kept.
    pub saving: Live<Saving>,
    /// What has to be said.
    pub notices: Live<Vec<String>>,
    /// Changes of lists that can be taken back, the last one last.
    pub undo: Live<Vec<Undo>>,
    /// Whether all of the page is laid out: the first answer does not wait for it.
    pub whole: Live<bool>,
    /// For screen readers: the changed line's answer, once.
    pub spoken: Live<String>,
    /// Today.
    pub today: Live<NaiveDate>,
    /// Whether the page is narrow: pictures are laid out anew for it.
    pub narrow: Live<bool>,
    /// The day of the season that is looked at, counted from the park date.
    pub day: Live<Option<usize>>,
    /// Whether the owner's bike has just begun, in place of the example.
    pub began: Live<bool>,
    /// The table that is being brought in.
    pub pasted: Pasted,
    /// The logbook of the bike.
    pub book: Book,
    /// The day of the last backup file.
    pub backup: Live<Option<NaiveDate>>,
    /// What waits to be written, and what other tabs wrote.
    pub tabs: Tabs,
}

impl Page {
    /// State of a page that was just opened: the bike that was open last, or the example.
    pub fn open() -> Self {
        // A wrench's facts are in the drawer.
        let sheet = Sheet::blank(|home| !matches!(home, Home::Wrench | Home::Log));
        let wrenches = Items::new(Home::Wrench);
        wrenches.lay([&Entries::new()]);
        let drawer = Derived::new(move |_| {
            let held = wrenches.with(|all| {
                all.iter().enumerate().map(|(place, it)| plan::held(it, place)).collect()
            });
            Arc::new(held)
        });
        let units = sheet.clone();
        let store = Store::open().ok();
        let set = Derived::new(move |_| match facts::UNIT_SET.maybe(&units) {
            Ok(Some(set)) => set,
            _ => browser::usual_units(),
        });
        let facts = sheet.clone();
        let battery = Derived::new(move |_| plan::battery_in_season(&facts, set.get()));
        let page = Self(Box::leak(Box::new(State {
            sheet: Live::new(sheet),
            beyond: Live::new(Kept::default()),
            fasteners: Items::new(Home::Fastener),
            wrenches,
            drawer,
            battery,
            changes: Live::new(0),
            owner: Live::new(Owner::Example),
            set,
            address: Live::new(address::read(&browser::fragment())),
            open: Live::new(Vec::new()),
            open_rows: Live::new(0),
            opened: Live::new(None),
            saving: Live::new(if store.is_some() { Saving::Kept } else { Saving::Blocked }),
            store: Live::new(store),
            notices: Live::new(Vec::new()),
            undo: Live::new(Vec::new()),
            whole: Live::new(false),
            spoken: Live::new(String::new()),
            today: Live::new(browser::today()),
            narrow: Live::new(browser::is_narrow()),
            day: Live::new(None),
            began: Live::new(false),
            pasted: Pasted::new(),
            book: Book::new(),
            backup: Live::new(super::backup::last(store)),
            tabs: Tabs::new(),
        })));
        page.read_address();
        page
    }

    /// Whether the invented bike stands on the sheet.
    #[inline(never)]
    pub fn is_example_untracked(self) -> bool {
        self.owner.with_untracked(|it| *it == Owner::Example)
    }

    /// The same; follows it.
    #[inline(never)]
    pub fn is_example(self) -> bool {
        self.owner.with(|it| *it == Owner::Example)
    }

    /// Where the owner's bike on the sheet is kept: its key and the store. `None` for another bike, and without a store.
    #[inline(never)]
    pub fn own_place(self) -> Option<(String, Store)> {
        match (self.owner.get_untracked(), self.store.get_untracked()) {
            (Owner::Own(key), Some(store)) => Some((key, store)),
            _ => None,
        }
    }

    /// The live sheet.
    #[inline(never)]
    pub fn sheet(self) -> Sheet {
        self.sheet.get_untracked()
    }

    /// Takes the address as the browser has it, and unfolds the line it names.
    pub fn read_address(self) {
        let address = address::read(&browser::fragment());
        if let address::Address::Sheet(_, Some(step), _) = address {
            self.open.update(|it| {
                if !it.contains(&step) {
                    it.push(step);
                }
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
        self.book.shut(!self.is_example_untracked());
        self.owner.set(owner);
        self.sheet().take(&kept);
        self.fasteners.lay(&kept.bike.fasteners);
        self.lay_wrenches(&kept.garage);
        self.beyond.set(kept);
        self.tabs.begin(self);
        self.changed();
    }

    /// Lays another state of the same bike on the sheet.
    pub fn lay_again(self, kept: Kept) {
        self.sheet().take(&kept);
        self.fasteners.lay_over(&kept.bike.fasteners);
        self.lay_wrenches(&kept.garage);
        self.changed();
    }

    /// Lays the garage's wrenches in the drawer, or one of which nothing is known yet.
    fn lay_wrenches(self, garage: &Garage) {
        let nothing = [Entries::new()];
        let wrenches = if garage.wrenches.is_empty() { &nothing[..] } else { &garage.wrenches };
        self.wrenches.lay_over(wrenches);
    }

    /// Says that something that is kept has changed.
    pub fn changed(self) {
        self.changes.update(|it| *it += 1);
    }

    /// Lays the invented bike on the sheet, under the units in use; not where the owner's could not be kept.
    pub fn lay_example(self) {
        if !super::kept::flush(self) {
            return;
        }
        let units = self.sheet().entry(facts::UNIT_SET.id());
        let mut kept = garage::example(self.today.get_untracked(), self.set.get_untracked());
        kept.put(facts::UNIT_SET.id(), units);
        self.lay(kept, Owner::Example);
    }

    /// The owner's garage: as it is kept, or as it stands on the sheet where nothing can be kept.
    pub fn own_garage(self) -> Garage {
        match self.store.get_untracked() {
            Some(store) => super::kept::garage(store),
            None => self.own_bike().map(|it| it.garage).unwrap_or_default(),
        }
    }

    /// Starts a blank bike of the owner's own. The garage, if one is kept, stays: it is the owner's already.
    /// Where what is on the sheet could not be kept, it stays there, as is said.
    pub fn start_own(self) {
        if !super::kept::flush(self) {
            return;
        }
        let garage = self.own_garage();
        let units = self.sheet().entry(facts::UNIT_SET.id());
        let mut kept = Kept { garage: garage.clone(), ..Kept::default() };
        kept.put(facts::UNIT_SET.id(), units);
        kept.put(facts::BIKE_KEY.id(), super::look::new_bike_key());
        super::kept::lay_new(self, kept, garage);
        self.began.set(true);
    }

    /// Takes what was typed into a blank.
    pub fn typed(self, desk: &Desk, id: Id, text: String) {
        let Some(about) = facts::about(id) else { return };
        let set = self.set.get_untracked();
        let before = desk.signal(id).get_untracked();
        // The unit that the blank showed is what a bare number means, for ever.
        let unit = about.unit_for(&before, set).map_or(before.unit, |it| it.code);
        self.put(desk, id, text, unit);
    }

    /// Takes an entry with the unit that it has.
    pub fn put(self, desk: &Desk, id: Id, text: String, unit: u8) {
        let signal = desk.signal(id);
        if !desk.quick && self.is_example_untracked() {
            self.start_own();
        }
        signal.set(Entry { text, unit, edited: browser::now() });
        if !desk.quick {
            self.changed();
        }
    }

    /// Changes the unit that a blank's bare number means.
    pub fn change_unit(self, desk: &Desk, id: Id, unit: u8) {
        let signal = desk.signal(id);
        signal.set(Entry { unit, edited: browser::now(), ..signal.get_untracked() });
        if !desk.quick {
            self.changed();
        }
    }

    /// Chooses the units of answers and fresh blanks.
    pub fn choose_units(self, key: &str) {
        if let Some(signal) = self.sheet().signal(facts::UNIT_SET.id()) {
            signal.set(Entry { text: key.to_owned(), unit: 0, edited: browser::now() });
            self.changed();
        }
        if self.is_example_untracked() {
            self.lay_example();
        }
    }

    /// Moves the open fastener to the kept ones and leaves its blanks empty.
    pub fn keep_fastener(self) {
        if self.is_example_untracked() {
            return;
        }
        let own = self.open_fastener();
        let keys = self.fasteners.add([&own]);
        self.lay_open_fastener(&Entries::new());
        self.can_take_back(keys, own);
    }

    /// What is known of the open fastener.
    pub fn open_fastener(self) -> Entries {
        let mut own = untrack(|| self.sheet().entries());
        own.retain(|id, _| garage::home(*id) == Home::Fastener);
        own
    }

    /// Lays another one, or none, in its place.
    pub fn lay_open_fastener(self, own: &Entries) {
        for (id, signal) in self.sheet().0.iter() {
            if garage::home(*id) == Home::Fastener {
                signal.set(own.get(id).cloned().unwrap_or_default());
            }
        }
    }

    /// What tells this bike from others kept here.
    pub fn key(self) -> String {
        match self.owner.get() {
            Owner::Own(key) => key,
            Owner::Example => "example".to_owned(),
            Owner::Looked(_) => "looked".to_owned(),
        }
    }

    /// Everything that the sheet holds now. Follow [`Page::changes`] to know when to ask again.
    pub fn kept(self) -> Kept {
        untrack(|| self.gathered())
    }

    fn gathered(self) -> Kept {
        let mut kept = self.beyond.get_untracked();
        let sheet = self.sheet();
        // What was emptied must not come back from what was loaded.
        for (id, signal) in sheet.0.iter() {
            kept.put(*id, signal.get());
        }
        kept.bike.fasteners = self.fasteners.entries();
        kept.garage.wrenches = self.wrenches.entries();
        kept.drop_blanks();
        kept
    }

    /// What a link made now carries: of the wrenches only those that its answers need.
    pub fn parcel(self) -> Parcel {
        self.changes.track();
        let mut kept = self.kept();
        let needed = plan::wrenches_needed(&kept);
        let mut place = 0;
        kept.garage.wrenches.retain(|_| {
            place += 1;
            needed.contains(&(place - 1))
        });
        Parcel { made: self.today.get(), kept }
    }

    /// Says something to a screen reader.
    pub fn say(self, words: &str) {
        self.spoken.set(words.to_owned());
    }
}
