//! The browser's store.
