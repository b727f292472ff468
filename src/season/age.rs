//! How old a fluid or a tire is on a day of the season. There is no clock here: the day is one that was typed.

use crate::source;
use crate::units::Measure;
use crate::working::{Amount, Answer, Law, Quantity, Term};
use chrono::NaiveDate;
use uom::si::f64::Time;

/// Age of a fluid.
pub const AGE: Law = Law {
    formula: "a = D − C",
    gives: Measure::Age,
    source: source::CALENDAR,
    holds: "counted to the ride date, or to the park date where there is none; years of 365.2425 days",
};

/// From one day to another; negative where it is the other way round.
pub fn between(from: NaiveDate, to: NaiveDate) -> Time {
    Time::of_base((to - from).num_days() as f64 * 86_400.0)
}

/// Age, on a day, of what was changed on another; none where it was changed later.
pub fn age(changed: NaiveDate, on: NaiveDate) -> Option<Answer<Time>> {
    let day = |symbol, name, day| Term { symbol, name, amount: Amount::Date(day) };
    let terms = vec![day("D", "day it is counted to", on), day("C", "last change", changed)];
    (changed <= on).then(|| Answer::exact(between(changed, on), &AGE, terms))
}
