//! The browser's own store. The one file of the library that touches a browser, besides the view.
//!
//! Whatever is asked of it may be refused at any time, not only when the page opens: site data can be blocked or removed
//! under an open page. So it is asked for anew each time, and what it was known to hold is remembered.

use super::record::{self, PREFIX};
use gloo_storage::{LocalStorage, Storage as _};
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use web_sys::Storage;

/// Why something was not kept.
#[derive(Debug, Clone, PartialEq)]
pub enum StoreError {
    /// The browser refuses all storage here.
    Blocked,
    /// No room left.
    Full,
    /// It took what was to be written, and holds something else.
    Torn,
    /// Anything else; the browser's own words.
    Other(String),
}

thread_local! {
    /// Every record of ours, as it was last read or written: what comes back when the store was emptied under the page.
    static KNOWN: RefCell<Vec<(String, String)>> = const { RefCell::new(Vec::new()) };
}

/// The store, known to work when it was opened.
#[derive(Debug, Clone, Copy)]
pub struct Store(());

impl Store {
    /// Opens the store by writing, reading and removing a record of its own.
    ///
    /// # Errors
    /// [`StoreError`], with nothing changed.
    pub fn open() -> Result<Self, StoreError> {
        let store = raw()?;
        let probe = format!("{PREFIX}probe");
        match store.set_item(&probe, "1").map_err(error) {
            // What is kept can be read all the same.
            Ok(()) | Err(StoreError::Full) => {}
            Err(why) => return Err(why),
        }
        store.remove_item(&probe).map_err(error)?;
        let store = Self(());
        for key in store.keys("") {
            store.heard(&key);
        }
        Ok(store)
    }

    /// The text under a key of ours, without its prefix.
    pub fn read(self, key: &str) -> Option<String> {
        raw().ok()?.get_item(&format!("{PREFIX}{key}")).ok().flatten()
    }

    /// Writes a text under a key of ours, reads it back and compares.
    ///
    /// # Errors
    /// [`StoreError`]; what stood there before still does.
    pub fn write(self, key: &str, text: &str) -> Result<(), StoreError> {
        let store = raw()?;
        let full = format!("{PREFIX}{key}");
        let before = self.read(key);
        for _ in 0..2 {
            store.set_item(&full, text).map_err(error)?;
            if self.read(key).as_deref() == Some(text) {
                know(key, Some(text.to_owned()));
                return Ok(());
            }
        }
        // Half a record is not left in the place of a whole one.
        let _ = match before {
            Some(before) => store.set_item(&full, &before),
            None => store.remove_item(&full),
        };
        Err(StoreError::Torn)
    }

    /// Removes what stands under a key of ours.
    pub fn remove(self, key: &str) {
        if let Ok(store) = raw() {
            // Refused only where reading was refused before.
            let _ = store.remove_item(&format!("{PREFIX}{key}"));
        }
        know(key, None);
    }

    /// Puts each text under its key, and takes away what stands under a key without one: all, or nothing. Where not all fits
    /// beside what goes, that makes room.
    ///
    /// # Errors
    /// [`StoreError`]; then all is as it was. What the store did not even take back is known, for [`Store::bring_back`].
    pub fn swap(self, all: &[(String, Option<String>)]) -> Result<(), StoreError> {
        let before: Vec<_> = all.iter().map(|it| (it.0.clone(), self.read(&it.0))).collect();
        let mut room = (0..all.len()).filter(|at| all[*at].1.is_none());
        let mut did = Vec::new();
        let mut done = Ok(());
        for (at, (key, text)) in all.iter().enumerate() {
            let Some(text) = text else { continue };
            done = self.write(key, text);
            while done.is_err()
                && let Some(out) = room.next()
            {
                // A store that writes nothing refuses to empty it, too, and nothing is gone.
                let full = format!("{PREFIX}{}", all[out].0);
                let emptied = raw().and_then(|store| {
                    store.set_item(&full, "").and_then(|()| store.remove_item(&full)).map_err(error)
                });
                if emptied.is_err() {
                    break;
                }
                did.push(out);
                done = self.write(key, text);
            }
            if done.is_err() {
                break;
            }
            did.push(at);
        }
        if let Err(why) = done {
            self.undo(&before, &did);
            return Err(why);
        }
        all.iter().filter(|it| it.1.is_none()).for_each(|it| self.remove(&it.0));
        Ok(())
    }

    /// Goes back the way that a swap came, so that there is as much room as there was. Once something is not taken back, nothing
    /// more is removed: it may be all that is left of it.
    fn undo(self, before: &[(String, Option<String>)], did: &[usize]) {
        let mut stuck = false;
        for at in did.iter().rev() {
            match &before[*at] {
                (key, None) if !stuck => self.remove(key),
                (key, Some(text)) if self.write(key, text).is_err() => {
                    stuck = true;
                    know(key, Some(text.clone()));
                }
                _ => {}
            }
        }
    }

    /// Our keys that start with `start`, without their prefix.
    pub fn keys(self, start: &str) -> Vec<String> {
        let Ok(store) = raw() else { return Vec::new() };
        let all = (0..store.length().unwrap_or(0)).filter_map(|at| store.key(at).ok().flatten());
        let ours = all.filter_map(|key| key.strip_prefix(PREFIX).map(str::to_owned));
        ours.filter(|key| key.starts_with(start)).collect()
    }

    /// Whether something was ever seen under a key, and not removed by this page.
    pub fn knew(self, key: &str) -> bool {
        KNOWN.with_borrow(|all| all.iter().any(|it| it.0 == key))
    }

    /// Remembers what another tab has written under a key, or that nothing is there any more.
    pub fn heard(self, key: &str) {
        know(key, self.read(key));
    }

    /// Whether another tab wrote this text under a key before it had seen what this one wrote there: the counts of both are
    /// the same then, or worse.
    pub fn crossed(self, key: &str, text: &str) -> bool {
        let theirs = record::revision(text);
        let ours = KNOWN.with_borrow(|all| {
            all.iter().find(|it| it.0 == key && it.1 != text).and_then(|it| record::revision(&it.1))
        });
        ours.is_some() && theirs <= ours
    }

    /// Writes again whatever of ours was there and is no more.
    ///
    /// # Errors
    /// [`StoreError`]; what was written again before stays.
    pub fn bring_back(self) -> Result<(), StoreError> {
        let all = KNOWN.take();
        let mut done = Ok(());
        for it in &all {
            if done.is_ok() && self.read(&it.0).is_none() {
                done = self.write(&it.0, &it.1);
            }
        }
        KNOWN.set(all);
        done
    }
}

fn know(key: &str, text: Option<String>) {
    KNOWN.with_borrow_mut(|all| {
        all.retain(|it| it.0 != key);
        all.extend(text.map(|text| (key.to_owned(), text)));
    });
}

fn raw() -> Result<Storage, StoreError> {
    let there = web_sys::window().and_then(|it| it.local_storage().ok().flatten());
    // gloo-storage panics where the store is blocked, so web-sys is asked first.
    there.map(|_| LocalStorage::raw()).ok_or(StoreError::Blocked)
}

fn error(thrown: wasm_bindgen::JsValue) -> StoreError {
    let name = name(&thrown);
    match name.as_str() {
        "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => StoreError::Full,
        "SecurityError" => StoreError::Blocked,
        _ => StoreError::Other(name),
    }
}

/// The name of a thrown error.
fn name(thrown: &wasm_bindgen::JsValue) -> String {
    thrown.dyn_ref::<js_sys::Error>().map(|it| String::from(it.name())).unwrap_or_default()
}
