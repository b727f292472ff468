//! What is done with a bike from a link: kept as a new one, written over the owner's own, or only looked at.

use super::bikes::{self, Stands};
use super::element::{El, button, paragraph};
use super::page::{Desk, Owner, Page};
use super::{browser, kept, records};
use crate::entry::{Entry, LONGEST, day_written};
use crate::facts::{self, Facts, Id};
use crate::garage::Kept;
use crate::logbook::Logbook;
use crate::show;
use crate::storage::compare::taken_over;
use crate::words::page as words;
use std::sync::Arc;

const KEY: Id = facts::BIKE_KEY.id();

/// What stood on the sheet before a bike is only looked at: the owner's own may be kept nowhere else.
pub struct Aside {
    /// The bike.
    pub kept: Kept,
    /// What the store had when it was told last.
    beyond: Kept,
    /// Whose it is.
    pub owner: Owner,
    /// What of its logbook is kept nowhere yet.
    pub book: Option<Arc<Logbook>>,
    /// Whether all of it is kept.
    pub safe: bool,
}

impl PartialEq for Aside {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
}

/// A bike from a link, and the owner's that it is held against.
pub struct Given {
    /// From the link.
    pub new: Kept,
    /// The owner's, where there is one.
    pub mine: Option<Mine>,
}

/// A bike of the owner's that one in a link is held against.
pub struct Mine {
    /// All of it.
    pub kept: Kept,
    /// Whether it has the number that the link has.
    pub same: bool,
    /// Its key, where another one is on the sheet.
    other: Option<String>,
}

impl Mine {
    /// Its name.
    pub fn name(&self) -> String {
        facts::BIKE_NAME.known(&self.kept).unwrap_or_else(|| words::YOUR_BIKE.to_owned())
    }
}

/// A number for a bike that has none yet.
pub fn new_bike_key() -> Entry {
    let text = browser::new_small_number().to_string();
    Entry { text, unit: 0, edited: browser::now() }
}

/// Opens another part of the page; where the browser allows, no step of the history has the address that was there.
pub fn go(page: Page, fragment: &str) {
    browser::replace_fragment(fragment.strip_prefix('#').unwrap_or(fragment));
    page.read_address();
    browser::scroll_to_top();
}

/// Away from a link, of which nothing stays in the address.
pub fn leave(page: Page) {
    go(page, "layup");
}

impl Page {
    /// The owner's own bike, on the sheet or set aside.
    pub fn own_bike(self) -> Option<Kept> {
        match self.owner.get_untracked() {
            Owner::Own(_) => Some(self.kept()),
            Owner::Looked(aside) if aside.owner != Owner::Example => Some(aside.kept.clone()),
            _ => None,
        }
    }
}

/// The owner's bike that has the number in the link; where none has, the one on the sheet.
pub fn mine(page: Page, there: &Kept) -> Option<Mine> {
    let number = there.entry(KEY).text;
    let is_it = |it: &Kept| !number.is_empty() && it.entry(KEY).text == number;
    let own = page.own_bike().map(|kept| Mine { same: is_it(&kept), kept, other: None });
    if own.as_ref().is_some_and(|it| it.same) {
        return own;
    }
    for it in bikes::all(page) {
        if let (Stands::Listed, Some(store)) = (it.stands, page.store.get_untracked()) {
            let kept = records::stored(page, store, &it.key, &Kept::default());
            if is_it(&kept) {
                return Some(Mine { kept, same: true, other: Some(it.key) });
            }
        }
    }
    own
}

/// Keeps a bike from a link beside the others. Where the one on the sheet could not be kept, it is only looked at.
pub fn keep_as_new(page: Page, given: &Given) {
    if !kept::flush(page) {
        return only_look(page, given);
    }
    let mut new = given.new.clone();
    // Two bikes of one number could not be told apart.
    if !facts::given(&new, KEY) || mine(page, &new).is_some_and(|it| it.same) {
        new.put(KEY, new_bike_key());
    }
    mark(page, &mut new);
    // Two of one name could not be told apart, either.
    let name = &mut new.bike.entries.at(facts::BIKE_NAME.id()).text;
    if bikes::all(page).iter().any(|it| it.name == *name) {
        *name = words::from_a_link(name).chars().take(LONGEST).collect();
    }
    let before = set_aside(page);
    kept::take_in(page, new);
    // Where nothing is kept, what was on the sheet is nowhere else.
    if page.store.get_untracked().is_none() {
        page.can_undo_by(words::SHARED_BIKE.to_owned(), move || put_back(page, &before));
    }
}

/// What stands on the sheet, or stood there before a bike was only looked at.
pub fn set_aside(page: Page) -> Arc<Aside> {
    let safe = kept::flush(page);
    match page.owner.get_untracked() {
        Owner::Looked(aside) => aside,
        owner => Arc::new(Aside {
            kept: page.kept(),
            beyond: page.beyond.get_untracked(),
            owner,
            book: page.book.unkept(),
            safe,
        }),
    }
}

fn put_back(page: Page, aside: &Aside) {
    page.lay(aside.kept.clone(), aside.owner.clone());
    page.beyond.set(aside.beyond.clone());
    page.book.put_back(aside.book.clone());
}

/// Lays a bike from a link on the sheet; nothing of it is written.
pub fn only_look(page: Page, given: &Given) {
    let aside = set_aside(page);
    let mut new = given.new.clone();
    let units = facts::UNIT_SET.id();
    new.put(units, page.sheet().entry(units));
    mark(page, &mut new);
    page.lay(new, Owner::Looked(aside));
}

fn back(page: Page) {
    if let Owner::Looked(aside) = page.owner.get_untracked() {
        put_back(page, &aside);
    }
}

/// Remembers that figures came from a link and are still to be held against the manual.
fn mark(page: Page, new: &mut Kept) {
    let (text, edited) = (day_written(page.today.get_untracked()), browser::now());
    new.put(facts::FROM_LINK.id(), Entry { text, unit: 0, edited });
}

/// What is said of figures that came from a link, until their owner says that they are right.
pub fn unchecked(from: &dyn Facts) -> Option<String> {
    facts::FROM_LINK.known(from).map(|day| words::from_link(&show::plain_day(day)))
}

/// The line over a bike that is only looked at, or whose figures came from a link.
pub fn line(page: Page) -> Vec<El> {
    if !matches!(page.owner.get(), Owner::Looked(_)) {
        let checked = move || {
            page.typed(&Desk::of_bike(page), facts::FROM_LINK.id(), String::new());
        };
        let said = unchecked(&page.sheet());
        let line = |said: String| {
            paragraph("notice row", &said).child(button("quiet", words::CHECKED, checked))
        };
        return said.map(line).into_iter().collect();
    }
    let back_to = if page.own_bike().is_some() { words::BACK_TO_MINE } else { words::LEAVE_IT };
    let keep = button("do", words::KEEP_AS_NEW, move || {
        keep_as_new(page, &Given { new: page.kept(), mine: None });
    });
    let back = button("quiet", back_to, move || back(page));
    vec![paragraph("notice row", words::LOOKED_AT).child(keep).child(back)]
}

/// Writes what a link says over the owner's bike. As it was, it goes to the archive first; where that cannot be kept, which is
/// said, nothing is done.
pub fn replace(page: Page, given: &Given) {
    let Given { new, mine: Some(mine) } = given else { return };
    back(page);
    if let (Some(key), Some(store)) = (&mine.other, page.store.get_untracked()) {
        kept::open(page, store, key);
        if page.key() != *key {
            return;
        }
    }
    kept::save(page);
    let was = page.kept();
    if !copied(page, &was, &mine.name()) {
        return;
    }
    let mut new = taken_over(&was, new, browser::now());
    mark(page, &mut new);
    put_over(page, new);
    let now = page.kept();
    page.can_undo_by(words::replaced(&mine.name()), move || {
        // What was typed since stays, in another tab, too.
        kept::save(page);
        put_over(page, Kept::merged(&now, &page.kept(), &was).0);
    });
}

/// Puts a copy of a bike in the archive; false where that failed. Where nothing is kept at all there is none to make.
fn copied(page: Page, was: &Kept, name: &str) -> bool {
    let Some(store) = page.store.get_untracked() else { return true };
    let mut copy = was.clone();
    let facts = &mut copy.bike.entries;
    facts.remove(&KEY);
    facts.at(facts::BIKE_NAME.id()).text = words::before_link(name).chars().take(LONGEST).collect();
    facts.at(facts::ARCHIVED.id()).text = day_written(page.today.get_untracked());
    kept::told(page, kept::write_all(page, store, &browser::new_key(), &copy))
}

/// Lays another state of the bike on the sheet and writes it.
fn put_over(page: Page, kept: Kept) {
    page.lay_again(kept.clone());
    if page.own_place().is_some() {
        kept::save_as(page, kept);
    } else {
        page.beyond.set(kept);
    }
}
