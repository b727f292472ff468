//! The browser's own store. The one file of the library that touches a browser, besides the view.
//!
//! gloo-storage panics where the store is blocked, so web-sys is asked first, with a real write.

use super::record::PREFIX;
use gloo_storage::{LocalStorage, Storage as _};
use wasm_bindgen::JsCast;

/// Why something was not kept.
#[derive(Debug, Clone, PartialEq)]
pub enum StoreError {
    /// The browser refuses all storage here; its own words.
    Blocked(String),
    /// No room left.
    Full,
    /// Anything else; the browser's own words.
    Other(String),
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
        let blocked = || StoreError::Blocked(String::new());
        let window = web_sys::window().ok_or_else(blocked)?;
        let store = window
            .local_storage()
            .map_err(|it| StoreError::Blocked(name(&it)))?
            .ok_or_else(blocked)?;
        let probe = format!("{PREFIX}probe");
        match store.set_item(&probe, "1").map_err(error) {
            // What is kept can be read all the same, and what cannot be written is said when it is.
            Ok(()) | Err(StoreError::Full) => {}
            Err(why) => return Err(why),
        }
        store.remove_item(&probe).map_err(error)?;
        Ok(Self(()))
    }

    /// The text under a key of ours, without its prefix.
    pub fn read(self, key: &str) -> Option<String> {
        LocalStorage::raw().get_item(&format!("{PREFIX}{key}")).ok().flatten()
    }

    /// Writes a text under a key of ours.
    ///
    /// # Errors
    /// [`StoreError`]; what stood there before still does.
    pub fn write(self, key: &str, text: &str) -> Result<(), StoreError> {
        LocalStorage::raw().set_item(&format!("{PREFIX}{key}"), text).map_err(error)
    }

    /// Removes what stands under a key of ours.
    pub fn remove(self, key: &str) {
        // Refused only where reading was refused before.
        let _ = LocalStorage::raw().remove_item(&format!("{PREFIX}{key}"));
    }

    /// Puts each text under its key, or takes away what stands there; what stood there before. What goes makes room first.
    ///
    /// # Errors
    /// [`StoreError`]; then all is as it was.
    pub fn swap(
        self,
        all: &[(String, Option<String>)],
    ) -> Result<Vec<(String, Option<String>)>, StoreError> {
        let before: Vec<_> = all.iter().map(|it| (it.0.clone(), self.read(&it.0))).collect();
        let put = |all: &[(String, Option<String>)]| {
            all.iter().filter(|it| it.1.is_none()).for_each(|it| self.remove(&it.0));
            all.iter().try_for_each(|it| it.1.iter().try_for_each(|text| self.write(&it.0, text)))
        };
        put(all).map(|()| before.clone()).inspect_err(|_| {
            // It fitted before.
            all.iter().for_each(|it| self.remove(&it.0));
            let _ = put(&before);
        })
    }

    /// Our keys that start with `start`, without their prefix.
    pub fn keys(self, start: &str) -> Vec<String> {
        let store = LocalStorage::raw();
        let all = (0..store.length().unwrap_or(0)).filter_map(|at| store.key(at).ok().flatten());
        let ours = all.filter_map(|key| key.strip_prefix(PREFIX).map(str::to_owned));
        ours.filter(|key| key.starts_with(start)).collect()
    }
}

fn error(thrown: wasm_bindgen::JsValue) -> StoreError {
    let name = name(&thrown);
    match name.as_str() {
        "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => StoreError::Full,
        "SecurityError" => StoreError::Blocked(name),
        _ => StoreError::Other(name),
    }
}

/// The name of a thrown error.
fn name(thrown: &wasm_bindgen::JsValue) -> String {
    thrown.dyn_ref::<js_sys::Error>().map(|it| String::from(it.name())).unwrap_or_default()
}
