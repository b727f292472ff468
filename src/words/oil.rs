//! Sentences of the oil line: its level, its bottles, its label.

use crate::entry::text::joined;
use crate::facts::{LevelRead, Stand};

/// "2 × 1 L + 1 × 4 L"; of no bottle at all, that.
pub fn purchase(bottles: &[(u32, String)]) -> String {
    let mut words = String::new();
    for (count, size) in bottles.iter().filter(|it| it.0 > 0) {
        if !words.is_empty() {
            words.push_str(" + ");
        }
        words.push_str(&count.to_string());
        words.push_str(" × ");
        words.push_str(size);
    }
    if words.is_empty() { "none".to_owned() } else { words }
}
/// Behind a purchase.
pub fn with_left(purchase: &str, left: &str) -> String {
    joined(&[purchase, ", ", left, " left over"], "")
}
/// Beside the oil needed.
pub fn to_buy(purchase: &str, left: &str) -> String {
    joined(&["buy ", &with_left(purchase, left)], "")
}

/// Refusal.
pub const SIZE_AND_UNIT: &str = "write each size with its unit, without a slash: 1 L; 0.5 L";

/// How the level is read: "in the glass, engine warm, upright, 3 minutes after stopping".
pub fn how_to_look(
    at: Option<LevelRead>,
    warm: Option<bool>,
    stand: Option<Stand>,
    minutes: Option<u32>,
) -> String {
    let at = at.map(|it| match it {
        LevelRead::Glass => "in the glass",
        LevelRead::StickRested => "on the wiped stick, rested on its thread, not screwed in",
        LevelRead::StickScrewed => "on the wiped stick, screwed in",
        LevelRead::OilTank => "at the oil tank",
    });
    let warm = warm.map(|it| if it { "engine warm" } else { "engine cold" });
    let stand = stand.map(|it| match it {
        Stand::Upright => "bike upright and level",
        Stand::Center => "on the center stand",
        Stand::Side => "on the side stand",
    });
    let minutes = minutes.map(|it| match it {
        0 => "right after stopping".to_owned(),
        1 => "1 minute after stopping".to_owned(),
        it => it.to_string() + " minutes after stopping",
    });
    let mut words = String::new();
    for part in [at, warm, stand, minutes.as_deref()].into_iter().flatten() {
        if !words.is_empty() {
            words.push_str(", ");
        }
        words.push_str(part);
    }
    words
}
/// Warning.
pub const DRY_SUMP_COLD: &str = "A dry sump’s oil drains from the tank into the engine as it stands: cold it reads too low, and topping it up overfills. Read it hot, soon after stopping, unless the manual says otherwise.";
/// Warning.
pub const OVER_THE_MARK: &str =
    "Above the full mark: oil foams and is blown into the air intake. Take it out before you ride.";
/// Warning.
pub const UNDER_THE_MARK: &str = "Below the low mark: do not start or run the engine. Pour to the low mark first, then read again.";
/// Warning.
pub const NOT_COLD: &str = "Engine cold, yet read soon after stopping or with warm oil: the manual says which of them it is.";
/// Beside the oil needed.
pub const TWO_DRAINS: &str = "drain oil tank and engine, two places";

/// Instead of a limit.
pub const NO_WINTER_GRADE: &str = "no W on the label: no promise for the cold";
/// Warning.
pub const TOO_COLD_TO_PUMP: &str = "Colder than this grade is promised to pump: the engine could run without oil. Move the bike to a warmer place for some hours (never a flame or heater near fuel, never by idling), or fill a grade with a lower number before the W that the manual allows.";
/// Warning.
pub const TOO_COLD_TO_CRANK: &str = "Colder than this grade is promised to let the engine crank: expect a slow starter, or fill a grade with a lower number before the W that the manual allows.";

/// Of an oil.
pub const FOR_WET_CLUTCH: &str = "made for a wet clutch";
/// Of an oil.
pub const NOT_FOR_WET_CLUTCH: &str = "not for a wet clutch";
/// Of an oil.
pub const CLASS_UNKNOWN: &str = "the bottle does not say";
/// Of an oil.
pub const DRY_CLUTCH: &str = "no matter: the clutch runs dry";
/// Warning.
pub const MB_SLIPS: &str = "JASO MB is for clutches that run dry: in a wet one it may slip. Take MA, MA1 or MA2, whichever the manual asks for.";
/// Warning.
pub const NO_CLASS: &str = "Without a JASO class an oil may hold friction modifiers that make a wet clutch slip: look for MA, MA1 or MA2, or for what the manual names.";
