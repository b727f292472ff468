//! Words in the season line, and the sentence that stands for it.

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
/// At the threshold.
pub const BELOW: &str = "recharge below here";
/// Instead of the picture.
pub const NOT_YET: &str = "The season line is drawn as soon as the battery line has its facts.";

/// At the coldest mean.
pub fn mean(degrees: &str) -> String {
    format!("coldest mean {degrees}")
}

/// The picture in a sentence.
pub fn told(nights: usize, [low, high]: [&str; 2], end: &str, coldest: &str) -> String {
    format!(
        "{nights} days; the battery holds {low} to {high} % on {end}; the coldest mean temperature is {coldest}."
    )
}

/// A day to act, behind the sentence.
pub fn told_act(what: &str, day: &str) -> String {
    format!(" Then: {what} {day}.")
}
