//! What the part of the address behind `#` opens.

use super::bench::OWN;
use super::{Line, Side, Step, Stop};
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
    /// The sheet, on a side of its own or the one that the day wants, with a step open, and one of its subjects (counted
    /// from 1).
    Sheet(Option<Side>, Option<&'static Step>, Option<usize>),
    /// One calculator alone.
    Quick(QuickSum),
    /// One step at a time, large: on a side or the one that the day wants, at a stop or where it was.
    Bench(Option<Side>, Option<Stop>),
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
/// use torpor::plan::{Side, address::{Address, read}};
/// let torques = Side::LayUp.step("torques");
/// assert_eq!(read("#layup/torques/3"), Address::Sheet(Some(Side::LayUp), torques, Some(3)));
/// assert_eq!(read("#bench"), Address::Bench(None, None));
/// ```
pub fn read(fragment: &str) -> Address {
    let body = fragment.strip_prefix('#').unwrap_or(fragment);
    if body.is_empty() {
        return Address::Sheet(None, None, None);
    }
    if link::claims(body) {
        return Address::Link(body.to_owned());
    }
    if let Some(sum) = QuickSum::ALL.into_iter().find(|it| it.key() == body) {
        return Address::Quick(sum);
    }
    let unknown = || Address::Unknown(body.chars().take(60).collect());
    let mut parts = body.split('/');
    let mut head = parts.next();
    let bench = head == Some("bench");
    if bench {
        head = parts.next();
        if head.is_none() {
            return Address::Bench(None, None);
        }
    }
    let Some(side) = Side::ALL.into_iter().find(|it| head == Some(it.key())) else {
        return unknown();
    };
    let key = match parts.next() {
        None if bench => return Address::Bench(Some(side), None),
        None => return Address::Sheet(Some(side), None, None),
        Some(key) => key,
    };
    let subject = match parts.next().map(str::parse) {
        None => None,
        Some(Ok(number @ 1..)) => Some(number),
        Some(_) => return unknown(),
    };
    let steps = side.steps();
    let at = steps.iter().position(|it| it.choice.key == key);
    let own = bench && key == OWN && subject.is_some();
    match (at.or(own.then_some(steps.len())), parts.next()) {
        (Some(at), None) if bench => {
            let place = subject.unwrap_or_default();
            Address::Bench(Some(side), Some(Stop { side, at, place }))
        }
        (Some(at), None) => Address::Sheet(Some(side), steps.get(at), subject),
        _ => unknown(),
    }
}
