//! What waits to be written, and what other tabs made of the same records: questions about facts that were changed twice, and what
//! has to be said of a store that was emptied or belongs to a newer page.

use super::browser;
use super::element::{El, button, el, paragraph};
use super::kept;
use super::live::{Live, Typed};
use super::page::Page;
use super::records;
use crate::entry::{Entry, text::joined};
use crate::facts::{self, About};
use crate::garage::{Entries, Kept, Twice};
use crate::storage::browser::Store;
use crate::words::page as words;
use leptos::prelude::*;
use std::time::Duration;

/// A fact that was changed here and in another tab.
#[derive(Clone)]
struct Asked {
    about: &'static About,
    /// What it is called; a fastener's or a wrench's with whose it is.
    label: String,
    signal: Typed,
    theirs: Entry,
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
    /// What comes on the sheet now is another tab's.
    merging: Live<bool>,
    asked: Live<Vec<Asked>>,
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
            merging: Live::new(false),
            asked: Live::new(Vec::new()),
        }
    }

    /// Another bike is laid on the sheet.
    pub fn begin(self, page: Page) {
        page.undo.set(Vec::new());
        self.before.set(page.beyond.get_untracked());
        self.leaves.set(Vec::new());
        self.asked.set(Vec::new());
        self.gone.set(false);
    }

    /// Whether what comes on the sheet now is another tab's; follows the focus.
    pub fn is_merging(self) -> bool {
        self.left.track();
        self.merging.get_untracked()
    }

    /// Asks which of two is to stand: what `signal` holds from now on, or `theirs`. `label` is what it is called.
    pub fn ask(self, about: &'static About, label: String, signal: Typed, theirs: Entry) {
        let asked = Asked { about, label, signal, theirs };
        self.asked.update(|all| {
            all.retain(|it| !it.signal.same(&asked.signal));
            all.push(asked);
        });
    }
}

impl Page {
    /// Takes in what another tab wrote before it had seen what this one wrote under the same key. It may stand nowhere else: this
    /// one's may have taken its place in the store, and its writer be gone.
    pub fn take_crossed(self, store: Store, key: &str, text: &str) {
        let (mine, own) = (self.kept(), self.key());
        // From there on both told their changes.
        let (mut base, before) = (self.beyond.get_untracked(), self.tabs.before.get_untracked());
        if key == kept::GARAGE {
            base.garage = before.garage;
        } else if key == kept::season_key(&own) {
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
        self.lay_again(merged);
        // What follows the sheet runs before.
        browser::after(Duration::ZERO, move || merging.set_untracked(false));
        for it in twice {
            let Some(about) = facts::about(it.id) else { continue };
            let mut label = about.label.to_owned();
            let signal = match it.item {
                None => self.sheet().signal(it.id),
                Some(at) => {
                    let (items, name, nameless) = match it.of_wrench() {
                        true => (self.wrenches, &facts::WRENCH_NAME, words::wrench(at + 1)),
                        false => (self.fasteners, &facts::FASTENER_NAME, words::fastener(at + 1)),
                    };
                    let item = untrack(|| items.with(|all| all.get(at).cloned()));
                    item.and_then(|item| {
                        let of = untrack(|| name.known(&item)).unwrap_or(nameless);
                        label = joined(&[&of, ": ", about.label], "");
                        item.sheet.signal(it.id)
                    })
                }
            };
            if let Some(signal) = signal {
                self.tabs.ask(about, label, signal, it.theirs);
            }
        }
    }
}

/// The questions that are open.
pub fn asked(page: Page) -> El {
    let rows = move || {
        let all = page.tabs.asked.get();
        all.into_iter().map(|it| question(page, it)).collect()
    };
    el("div").set("role", "status").part(rows)
}

fn question(page: Page, it: Asked) -> El {
    let Asked { about, label, signal, theirs } = it;
    let [mine, of_keep, of_take] = [(); 3].map(|()| signal.clone());
    let gone = move |signal: &Typed| {
        page.tabs.asked.update(|all| all.retain(|it| !it.signal.same(signal)));
    };
    let keep = button("quiet", "", move || gone(&of_keep))
        .live_text(move || words::keep_mine(&facts::as_read(about, &mine.get())));
    let named = words::take_theirs(&facts::as_read(about, &theirs));
    let take = button("quiet", &named, move || {
        of_take.set(Entry { edited: browser::now(), ..theirs.clone() });
        page.changed();
        gone(&of_take);
    });
    paragraph("notice", &words::changed_twice(&label)).child(keep).text(" ").child(take)
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
