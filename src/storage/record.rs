//! Records as the browser's store holds them: one record a key, with the schema it was written under, a revision that
//! grows by one with every write, and a checksum over both.
//!
//! ```text
//! record = schema in digits, a point, base64url of (revision and kept in postcard, CRC-32, little end first)
//! ```
//! postcard is a tenth of what JSON costs the page. It does not describe itself, so the shape of what is kept never
//! changes under a schema: another shape gets another number before the point.

use super::{base64url, checksum::crc32};
use serde::{Serialize, de::DeserializeOwned};
use std::fmt;

/// The schema that this page writes.
pub const SCHEMA: u32 = 1;

/// Prefix of every key of ours: other pages of the same host share the store.
pub const PREFIX: &str = "torpor.";

/// What is kept under a key, and how often it was written.
#[derive(Debug, Clone, PartialEq)]
pub struct Record<T> {
    /// Grows by one with every write.
    pub revision: u64,
    /// What is kept.
    pub kept: T,
}

/// Why a stored text is not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unreadable {
    /// Written by a newer page: not to be written over.
    Newer(u32),
    /// Not a record, or not whole.
    Damaged,
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Newer(schema) => write!(
                f,
                "was written by a newer Torpor (form {schema}, this page knows {SCHEMA}) and is left as it is: reload the page"
            ),
            Self::Damaged => f.write_str("is damaged; it is set aside unchanged"),
        }
    }
}

impl std::error::Error for Unreadable {}

/// Reads a record.
///
/// # Errors
/// [`Unreadable`]; nothing of a record is taken unless all of it is whole.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<Record<T>, Unreadable> {
    let (schema, body) = text.split_once('.').ok_or(Unreadable::Damaged)?;
    match schema.parse() {
        Ok(SCHEMA) => {}
        Ok(newer) if newer > SCHEMA => return Err(Unreadable::Newer(newer)),
        _ => return Err(Unreadable::Damaged),
    }
    let bytes = base64url::decoded(body).ok_or(Unreadable::Damaged)?;
    let (bytes, sum) = bytes.split_last_chunk::<4>().ok_or(Unreadable::Damaged)?;
    if crc32(bytes) != u32::from_le_bytes(*sum) {
        return Err(Unreadable::Damaged);
    }
    // Another sort's record may read as a shorter one of this sort: then something is left behind it.
    match postcard::take_from_bytes(bytes) {
        Ok(((revision, kept), [])) => Ok(Record { revision, kept }),
        _ => Err(Unreadable::Damaged),
    }
}

/// How often a record was written, as far as its text tells.
pub fn revision(text: &str) -> Option<u64> {
    let bytes = base64url::decoded(text.split_once('.')?.1)?;
    postcard::take_from_bytes(&bytes).ok().map(|it| it.0)
}

/// Writes a record. `None` only where serde refuses, which it does for none of ours.
pub fn written<T: Serialize>(kept: &T, revision: u64) -> Option<String> {
    let mut bytes = postcard::to_allocvec(&(revision, kept)).ok()?;
    let sum = crc32(&bytes);
    bytes.extend_from_slice(&sum.to_le_bytes());
    Some(format!("{SCHEMA}.{}", base64url::encoded(&bytes)))
}
