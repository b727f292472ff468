//! How what is known leaves the page and comes back: records for the browser's store, the link's wire, and the one
//! thin file that touches the browser.

pub mod backup;
mod base64url;
mod cells;
mod checksum;
pub mod compare;
pub mod json;
pub mod keys;
pub mod link;
pub mod log_file;
pub mod record;
pub mod removed;
pub mod restore;
pub mod text;
pub mod torque_csv;

#[cfg(feature = "page")]
pub mod browser;
