//! Records as the browser's store holds them: JSON, one record a key, with the schema it was written under and a
//! revision that grows by one with every write.

use serde::{Deserialize, Serialize, de::DeserializeOwned};
use std::fmt;

/// The schema that this page writes.
pub const SCHEMA: u32 = 1;

/// Prefix of every key of ours: other pages of the same host share the store.
pub const PREFIX: &str = "torpor.";

/// A record with its envelope.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Record<T> {
    /// Schema it was written under.
    pub schema: u32,
    /// Grows by one with every write.
    pub revision: u64,
    /// What is kept.
    pub kept: T,
}

/// Why a stored text is not taken.
#[derive(Debug, Clone, PartialEq)]
pub enum Unreadable {
    /// Written by a newer page: not to be written over.
    Newer(u32),
    /// Not a record.
    Damaged(String),
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Newer(schema) => {
                write!(
                    f,
                    "was written by a newer Torpor (form {schema}, this page knows {SCHEMA}): reload the page"
                )
            }
            Self::Damaged(why) => write!(f, "is damaged ({why}): it is set aside unchanged"),
        }
    }
}

/// Reads a record.
///
/// # Errors
/// [`Unreadable`], with the store's text left as it is.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<Record<T>, Unreadable> {
    #[derive(Deserialize)]
    struct Envelope {
        schema: u32,
    }
    let damaged = |why: serde_json::Error| Unreadable::Damaged(why.to_string());
    let Envelope { schema } = serde_json::from_str(text).map_err(damaged)?;
    if schema > SCHEMA {
        return Err(Unreadable::Newer(schema));
    }
    serde_json::from_str(text).map_err(damaged)
}

/// Writes a record. `None` only where serde refuses, which it does for none of ours.
pub fn written<T: Serialize>(kept: &T, revision: u64) -> Option<String> {
    serde_json::to_string(&Record { schema: SCHEMA, revision, kept }).ok()
}
