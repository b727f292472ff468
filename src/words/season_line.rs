//! Words in the season line, and the sentence that stands for it.

use crate::entry::text::joined;

/// The season line's name.
pub const NAME: &str = "Season line";
/// The sentence's name.
pub const SENTENCE: &str = "Season";
/// At the left end.
pub const PARKED: &str = "parked";
/// At the right end.
pub const RIDES: &str = "rides";
/// At the right end, where no ride date is set.
pub const UNTIL: &str = "looked at until";
/// A day to act.
pub const LOOK: &str = "look at the meter";
/// A day to act.
pub const CHARGE: &str = "charge by";
/// A day to act.
pub const CHARGE_ON: &str = "charge on";
/// On a day to charge.
pub const CHARGE_FULL: &str = "charge it to full";
/// On the first day below the threshold.
pub const CHARGE_NOW: &str = "charge it or bring it to a maintainer";
/// The same for LiFePO4.
pub const CHARGE_IT: &str = "charge it";
/// On either where LiFePO4 is too cold for it.
pub const CHARGE_INDOORS: &str = "charge it indoors, warmed through";
/// On either where it is frozen.
pub const CHARGE_THAWED: &str = "charge it, but not before it has thawed";
/// Beside figures that hold only with the charges before them.
pub const IF_CHARGED: &str = "if charged as planned";
/// On the day from which fuel is too old.
pub const FUEL_OLD: &str = "fuel a year old";
/// Between the values of a day.
pub const BETWEEN: &str = " · ";
/// On a night without any margin.
pub const MAY_FREEZE: &str = "may freeze in a cold snap";
/// At the threshold.
pub const BELOW: &str = "recharge below here";
/// The slider under the picture.
pub const DAY_OF_SEASON: &str = "Day of the season";
/// Before a day was pointed at.
pub const POINT: &str = "Tap the picture, or drag the knob, to read what holds on a day.";
/// Under the picture.
pub const LEGEND: &str = "Green: the battery’s charge, most likely and at worst; dashed: charge it before it falls below; blue: how cold it is.";
/// Instead of the picture.
pub const NOT_YET: &str = "Fill in the battery to see its season here.";

/// At the coldest mean.
pub fn mean(degrees: &str) -> String {
    format!("coldest mean {degrees}")
}

/// The picture in a sentence.
pub fn told(
    nights: usize,
    [low, high]: [&str; 2],
    planned: bool,
    end: &str,
    coldest: &str,
) -> String {
    let planned = if planned { format!(" {IF_CHARGED}") } else { String::new() };
    format!(
        "{nights} days; the battery holds {low} to {high}\u{a0}% on {end}{planned}; the coldest mean temperature is {coldest}."
    )
}

/// A day to act, behind the sentence.
pub fn told_act(what: &str, day: &str) -> String {
    format!(" Then: {what} {day}.")
}

/// Time stored, in weeks and days and in months and days.
pub fn stored(weeks: [i64; 2], months: [i64; 2]) -> String {
    let many = |count: i64, one: &str| match count {
        1 => format!("1 {one}"),
        _ => format!("{count} {one}s"),
    };
    let pair =
        |[whole, days]: [i64; 2], one: &str| format!("{} {}", many(whole, one), many(days, "day"));
    format!("{} · {}", pair(weeks, "week"), pair(months, "month"))
}

/// The margin of a night.
pub fn from_freezing(step: &str) -> String {
    format!("{step} from freezing in a cold snap")
}

/// The least margin, behind the sentence.
pub fn told_margin(margin: &str) -> String {
    format!(" At worst: {margin}.")
}

/// Beside the low end of the charge.
pub fn at_least(charge: &str) -> String {
    format!("at least {charge}")
}

/// Beside its high end.
pub fn at_most(charge: &str) -> String {
    format!("at most {charge}")
}

/// Beside the threshold.
pub fn recharge_below(charge: &str) -> String {
    format!("recharge below {charge}")
}

/// The values of a day: its name, which of the season it is, charge from low to high, volts at rest, temperature.
pub fn day(
    name: &str,
    [day, last]: [usize; 2],
    [low, high]: [&str; 2],
    typical: Option<&str>,
    [volts, to]: [&str; 2],
    degrees: &str,
    planned: bool,
) -> String {
    let planned = if planned { joined(&[IF_CHARGED, ": "], "") } else { String::new() };
    let likely = typical.map_or(String::new(), |it| format!(", most likely {it}\u{a0}%"));
    format!(
        "{name}, day {day} of {last} · {planned}charge {low}–{high}\u{a0}%{likely} · rests at {volts} to {to} · {degrees}"
    )
}
