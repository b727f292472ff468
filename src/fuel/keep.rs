//! How long fuel keeps.

use super::FuelError;
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Term},
};
use chrono::{Days, NaiveDate};

/// Age of the fuel when it is ridden on.
pub const FUEL_AGE: Law = Law {
    formula: "a = R − B",
    gives: Measure::Days,
    source: source::FUEL_KEEPS,
    holds: "guidance, no law: heat, air and a vented tank shorten it",
};

/// Months that fuel keeps, the least that is said. Treated: label claims of 12 to 24; untreated 1 to 3: both common
/// practice, no source.
const TREATED: f64 = 12.0;
const UNTREATED: f64 = 1.0;

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

/// The last day on which treated fuel `bought` on that day keeps, as far as anybody says.
pub fn keeps_until(bought: NaiveDate) -> Option<NaiveDate> {
    bought.checked_add_days(Days::new((MONTH * TREATED) as u64))
}

/// Whether fuel keeps for so many `days`, as far as anybody says.
pub fn keeps(days: f64, treated: bool) -> bool {
    days <= MONTH * if treated { TREATED } else { UNTREATED }
}
