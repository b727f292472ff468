//! What the part of the address behind `#` opens.

use super::Line;
use crate::storage::link;

/// One of the calculators that open with nothing saved and nothing set up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum QuickSum {
    /// A calculator that is a line of the sheet too.
    Of(Line),
}

/// What an address opens.
#[derive(Debug, Clone, PartialEq)]
pub enum Address {
    /// The sheet, with a line open, and one of its subjects (counted from 1).
    Sheet(Option<Line>, Option<usize>),
    /// One calculator alone.
    Quick(QuickSum),
    /// A shared bike.
    Link(String),
    /// Nothing that this page knows.
    Unknown(String),
}

impl QuickSum {
    /// All, as they are offered.
    pub const ALL: [QuickSum; 6] = [
        QuickSum::Of(Line::Torques),
        QuickSum::Of(Line::Oil),
        QuickSum::Of(Line::Fuel),
        QuickSum::Of(Line::Battery),
        QuickSum::Of(Line::Coolant),
        QuickSum::Of(Line::Tires),
    ];

    /// Its address, without `#`.
    pub fn key(self) -> &'static str {
        match self {
            QuickSum::Of(Line::Torques) => "torque",
            QuickSum::Of(line) => line.key(),
        }
    }
}

/// Reads the fragment of an address, with or without `#`.
///
/// ```
/// use torpor::plan::{Line, address::{Address, read}};
/// assert_eq!(read("#layup/torques/3"), Address::Sheet(Some(Line::Torques), Some(3)));
/// ```
pub fn read(fragment: &str) -> Address {
    let body = fragment.strip_prefix('#').unwrap_or(fragment);
    if body.is_empty() {
        return Address::Sheet(None, None);
    }
    if link::claims(body) {
        return Address::Link(body.to_owned());
    }
    if let Some(sum) = QuickSum::ALL.into_iter().find(|it| it.key() == body) {
        return Address::Quick(sum);
    }
    let unknown = || Address::Unknown(body.chars().take(60).collect());
    let mut parts = body.split('/');
    let line = match (parts.next(), parts.next()) {
        (Some("layup"), None) => return Address::Sheet(None, None),
        (Some("layup"), Some(key)) => Line::ALL.into_iter().find(|it| it.key() == key),
        _ => None,
    };
    match (line, parts.next(), parts.next()) {
        (Some(line), None, None) => Address::Sheet(Some(line), None),
        (Some(line), Some(subject), None) => match subject.parse() {
            Ok(number @ 1..) => Address::Sheet(Some(line), Some(number)),
            _ => unknown(),
        },
        _ => unknown(),
    }
}
