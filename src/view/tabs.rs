//! What waits to be written, and what other tabs made of the same records: questions about facts that were changed twice, and what
//! has to be said of a store that was emptied or belongs to a newer page.

use super::browser;
use super::element::{El, button, el, paragraph};
use super::kept;
use super::live::{Live, Typed};
use super::page::Page;
use super::records;
use crate::entry::{Entry, text::joined};
use crate::facts::{self, About, Facts, Home};
use crate::garage::{Entries, Kept, Twice};
use crate::storage::browser::Store;
use crate::storage::keys;
use crate::words::page as words;
use leptos::prelude::*;
use std::time::Duration;

/// A fact that was changed here and in another tab.
#[derive(Clone)]
struct Asked {
    about: &'static About,
    /// What it is called; a fastener's or a wrench's with the name of that.
    label: String,
    signal: Typed,
    /// What may be had in its place.
    theirs: Entry,
    /// Whether that was typed here, and the other tab's stands.
    mine: bool,
}

/// Handles to what this tab knows of others.
#[derive(Clone, Copy)]
pub struct Tabs {
    /// What was typed last is still to be written.
    pub unsaved: Live<Option<TimeoutHandle>>,
    /// The last but one state that both the store and this tab had: from there on another tab told its changes where its
    /// writing crossed this one's.
    pub before: Live<Kept>,
    /// The logbook's leaves that were written last, each with what stood on it before.
    pub leaves: Live<Vec<(usize, Vec<Entries>)>>,
    /// The store was emptied under the page, which has written nothing since.
    pub gone: Live<bool>,
    /// A newer page has written.
    pub newer: Live<bool>,
    /// A turn to write is waited for.
    pub waits: Live<bool>,
    /// Turns when the focus leaves something.
    pub left: Live<u64>,
    /// Turns when the sheet got figures that nobody typed into it: what is laid out once is laid out again.
    pub laid: Live<u64>,
    /// What comes on the sheet now is another tab's.
    merging: Live<bool>,
    asked: Live<Vec<Asked>>,
    /// What was typed in this tab, of this bike; it is asked about once it gives way.
    typed: Live<Vec<Asked>>,
}

impl Tabs {
    /// Nothing yet.
    pub fn new() -> Self {
        Self {
            unsaved: Live::new(None),
            before: Live::new(Kept::default()),
            leaves: Live::new(Vec::new()),
            gone: Live::new(false),
            newer: Live::new(false),
            waits: Live::new(false),
            left: Live::new(0),
            laid: Live::new(0),
            merging: Live::new(false),
            asked: Live::new(Vec::new()),
            typed: Live::new(Vec::new()),
        }
    }

    /// Another bike is laid on the sheet.
    pub fn begin(self, page: Page) {
        page.undo.set(Vec::new());
        self.before.set(page.beyond.get_untracked());
        self.leaves.set(Vec::new());
        self.asked.set(Vec::new());
        self.typed.set(Vec::new());
        self.gone.set(false);
    }

    /// Whether what comes on the sheet now is another tab's; follows the focus.
    pub fn is_merging(self) -> bool {
        self.left.track();
        self.merging.get_untracked()
    }

    /// Asks which of two is to stand of a fact `of` something: what `signal` holds from now on, or `theirs`. What was typed here, as
    /// `mine`, is asked about once it gives way.
    pub fn ask(
        self,
        about: &'static About,
        of: &dyn Facts,
        signal: Typed,
        theirs: Entry,
        mine: bool,
    ) {
        let name = untrack(|| match about.home {
            Home::Fastener => facts::FASTENER_NAME.known(of),
            Home::Wrench => facts::WRENCH_NAME.known(of),
            _ => None,
        });
        let name = name.map_or_else(String::new, |it| it + ": ");
        let label = joined(&[&name, about.label], "");
        put(
            if mine { self.typed } else { self.asked },
            Asked { about, label, signal, theirs, mine },
        );
    }
}

/// Puts one in the place of what there was of the same fact.
#[inline(never)]
fn put(into: Live<Vec<Asked>>, new: Asked) {
    into.update(|all| {
        all.retain(|it| !it.signal.same(&new.signal));
        all.push(new);
    });
}

impl Page {
    /// Takes in what another tab wrote before it had seen what this one wrote under the same key. It may stand nowhere else: this
    /// one's may have taken its place in the store, and its writer be gone.
    pub fn take_crossed(self, store: Store, key: &str, text: &str) {
        let (mine, own) = (self.kept(), self.key());
        // From there on both told their changes.
        let (mut base, before) = (self.beyond.get_untracked(), self.tabs.before.get_untracked());
        if key == keys::GARAGE {
            base.garage = before.garage;
        } else if key == keys::of(keys::SEASON, &own) {
            base.season = before.season;
        } else {
            base.bike = before.bike;
        }
        let read = |of: &str| (of == key).then(|| text.to_owned());
        let theirs = records::told_of(self, store, &own, &read, &base);
        let (merged, twice) = Kept::merged(&base, &mine, &theirs);
        self.beyond.set(base);
        self.take_merged(merged, twice);
    }

    /// Lays on the sheet what was merged with another tab's, and asks of each fact that both changed.
    pub fn take_merged(self, merged: Kept, twice: Vec<Twice>) {
        let merging = self.tabs.merging;
        merging.set_untracked(true);
        let mut typed = self.tabs.typed.get_untracked();
        typed.retain(|it| it.signal.get_untracked().same(&it.theirs));
        self.lay_again(merged);
        self.tabs.laid.update(|it| *it += 1);
        // What follows the sheet runs before.
        browser::after(Duration::ZERO, move || merging.set_untracked(false));
        for it in twice {
            let Some(about) = facts::about(it.id) else { continue };
            let items = if it.of_wrench() { self.wrenches } else { self.fasteners };
            let sheet = match it.item {
                None => Some(self.sheet()),
                Some(at) => untrack(|| items.with(|all| all.get(at).map(|it| it.sheet.clone()))),
            };
            if let Some(sheet) = sheet
                && let Some(signal) = sheet.signal(it.id)
            {
                self.tabs.ask(about, &sheet, signal, it.theirs, false);
            }
        }
        // What was typed here does not give way without a word, in either tab.
        for it in typed {
            let now = it.signal.get_untracked();
            // A season that was put away is not lost.
            let over = now.is_blank() && it.about.home == Home::Season;
            if !now.same(&it.theirs) && !over {
                put(self.tabs.asked, it);
            }
        }
    }
}

/// The questions that are open.
pub fn asked(page: Page) -> El {
    let rows = move || {
        let all = page.tabs.asked.get();
        all.into_iter().filter_map(|it| question(page, it)).collect()
    };
    el("div").set("role", "status").part(rows)
}

fn question(page: Page, it: Asked) -> Option<El> {
    let Asked { about, label, signal, theirs, mine } = it;
    let stands = signal.get();
    let typed = |it: &Asked| it.signal.same(&signal) && it.theirs.same(&theirs);
    // Both say the same now, or what was typed here last is something else.
    if stands.same(&theirs) || mine && !page.tabs.typed.get_untracked().iter().any(typed) {
        return None;
    }
    let [of_keep, of_take] = [(); 2].map(|()| signal.clone());
    let gone = move |signal: &Typed| {
        page.tabs.asked.update(|all| all.retain(|it| !it.signal.same(signal)));
    };
    let named = words::keep_mine(&facts::as_read(about, &stands));
    let keep = button("quiet", &named, move || gone(&of_keep));
    let named = words::take(&facts::as_read(about, &theirs), mine);
    let take = button("quiet", &named, move || {
        of_take.set(Entry { edited: browser::now(), ..theirs.clone() });
        page.changed();
        page.tabs.laid.update(|it| *it += 1);
        gone(&of_take);
    });
    let said = words::changed_twice(&label, mine);
    Some(paragraph("notice care", &said).child(keep).text(" ").child(take))
}

/// What has to be said of the store.
pub fn said(page: Page) -> Vec<El> {
    let mut all = Vec::new();
    if page.tabs.newer.get() {
        let reload = button("quiet", words::RELOAD, browser::reload);
        all.push(paragraph("notice care", words::NEWER).text(" ").child(reload));
    }
    if page.tabs.gone.get() {
        let again = button("quiet", words::KEEP_IT, move || kept::keep_again(page));
        all.push(paragraph("notice care", words::EMPTIED).text(" ").child(again));
    }
    all
}
