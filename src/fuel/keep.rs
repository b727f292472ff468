//! How long fuel keeps.

use super::FuelError;
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Term},
};
use chrono::NaiveDate;

/// Age of the fuel when it is ridden on.
pub const FUEL_AGE: Law = Law {
    formula: "a = R − B",
    gives: Measure::Days,
    source: source::FUEL_KEEPS,
    holds: "guidance, no law: heat, air and a vented tank shorten it",
};

/// Whether fuel keeps for a time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Keeps {
    /// As far as anybody says.
    Well,
    /// Some say so.
    Perhaps,
    /// Nobody says so.
    No,
}

/// Months that fuel keeps: the least that is said, and the most. Treated: label claims; untreated: both common practice,
/// no source.
const TREATED: [f64; 2] = [12.0, 24.0];
const UNTREATED: [f64; 2] = [1.0, 3.0];

/// Days of a month, so that twelve of them are a leap year.
const MONTH: f64 = 30.5;

/// Age in days on the day of the `ride` of fuel `bought` on that day.
///
/// # Errors
/// [`FuelError::BoughtAfterRide`].
pub fn age(bought: NaiveDate, ride: NaiveDate) -> Result<Answer<f64>, FuelError> {
    let days = (ride - bought).num_days();
    if days < 0 {
        return Err(FuelError::BoughtAfterRide);
    }
    let day = |symbol, name, day| Term { symbol, name, amount: Amount::Day(day) };
    let terms = vec![day("R", "ride date", ride), day("B", "the day it was bought", bought)];
    Ok(Answer::exact(days as f64, &FUEL_AGE, terms))
}

/// Whether fuel keeps for so many `days`.
pub fn keeps(days: f64, treated: bool) -> Keeps {
    let [least, most] = if treated { TREATED } else { UNTREATED }.map(|months| months * MONTH);
    if days <= least {
        Keeps::Well
    } else if days <= most {
        Keeps::Perhaps
    } else {
        Keeps::No
    }
}
