//! Small sentences and warnings of coolant, tires, brake fluid and the oils besides the engine's.

use crate::brake::{Fluid, Late, Mixing};
use crate::coolant::Short;
use crate::tire::Reading;

/// Beside the coolant line of a bike without any.
pub const AIR_COOLED: &str = "nothing to do; an oil cooler’s oil is the engine’s";
/// Instead of a freezing point.
pub const NO_COOLANT: &str = "no coolant";
/// Instead of a freezing point.
pub const PAST_SIXTY: &str = "no figure past 60 %";
/// Instead of a freezing point.
pub const UNDER_TEN: &str = "no figure under 10 %";
/// Warning.
pub const HARDLY_ANY_GLYCOL: &str =
    "Hardly any glycol: it freezes much like water. Make it stronger before frost.";
/// Beside the freezing point, instead of what to do.
pub const NOTHING_TO_DO: &str = "nothing to do: it is as wanted";
/// Before what to do.
pub const WEAKER: &str = "asked for weaker coolant than there is";
/// Instead of an amount.
pub const TOO_ROUGH: &str = "not the same for all of that range: read it closer";
/// Warning: one drain does not get there.
pub fn out_of_reach(why: Short, gets: Option<String>) -> String {
    let why = match why {
        Short::WeakBottle => "the bottle is too weak, take concentrate",
        Short::Twice => "a part stays in the engine, drain twice with a ride between",
        Short::PartStays => "a part stays in the engine, even drained twice",
    };
    let best = gets.map_or(String::new(), |it| format!(" At best one drain leaves about {it}."));
    format!("As wanted is out of reach: {why}.{best}")
}
/// Warning: how it freezes after the refill.
pub fn then_freezes(as_wanted: bool, at: &str, by: &str, short: bool) -> String {
    let then = if as_wanted { "As wanted" } else { "At best" };
    let why = if short { "too little" } else { "is not enough, as testers differ" };
    format!("{then} it freezes at {at}: {by} {why} on the coldest night.")
}
/// Beside the freezing point; a night that was not typed is that of a station.
pub fn night_margin(margin: &str, counted: Option<&str>) -> String {
    let from = counted.map_or(String::new(), |it| format!(", counted from {it}"));
    format!("{margin} of margin on the coldest night{from}")
}
/// Warning.
pub const COOLANT_FREEZES: &str =
    "It freezes on a night as cold as that, and ice breaks the engine: make it stronger before.";
/// Warning.
pub const COOLANT_MAY_FREEZE: &str = "It may freeze on a night as cold as that, as bottles and testers differ: make it stronger, or keep it warmer.";
/// Warning.
pub const TOO_MUCH_GLYCOL: &str = "Over 60 % or near it: more glycol freezes sooner again and cools worse. Exchange a part for distilled water.";
/// Warning.
pub const WEAK_INHIBITOR: &str = "Under about a third of glycol the inhibitor is weak, and metal corrodes (common practice, no source).";
/// Beside the exchange.
pub const READY_MIXED: &str = "bottle counted as ready-mixed, 50 %";
/// Beside the exchange.
pub const DRAINS_UNKNOWN: &str = "all of the circuit counted as running out";

/// Beside the other oils.
pub const BY_MANUALS_INTERVAL: &str = "changed at the manual’s interval";
/// An oil with its plug.
pub fn plug(oil: &str, torque: &str) -> String {
    format!("{oil}, plug {torque}")
}
/// An oil with its age.
pub fn aged(oil: &str, age: &str) -> String {
    format!("{oil}, {age} old by then")
}
/// An oil of which each of two legs gets so much.
pub fn each_leg(oil: &str) -> String {
    format!("{oil}, each leg")
}
/// An oil whose age cannot be told.
pub fn ageless(oil: &str) -> String {
    format!("{oil}, {NEEDS_A_DAY}")
}
/// Refusal.
pub const NONE_AND_OTHERS: &str = "none of these, or the oils: not both";
/// Refusal.
pub const CHANGED_LATER: &str =
    "has to be on or before the ride date, or the park date where there is none";

/// Instead of a pressure.
pub const LET_IT_STAND: &str = "let it stand";
/// Beside it.
pub const WARM_TIRE: &str =
    "three hours, out of the sun; a warm tire tells nothing, and never let air out of one";
/// In spring: where and when the figures are right.
pub fn set_on_the_morning(air: Option<&str>) -> String {
    let air = air.map_or(String::new(), |it| format!(" {it}"));
    format!("set cold, outdoors, in that morning’s{air} air")
}
/// Why the figure is not the manual's.
pub fn set_in(here: &str, there: &str) -> String {
    format!("set in {here} air for {there}")
}
/// Warning.
pub fn doubtful_pressure(which: &str) -> String {
    format!(
        "{which}: under 1.2 bar (17 psi) or over 3.5 bar (51 psi) is unusual: look at figure and unit."
    )
}
/// Warning: what a reading tells.
pub fn reading(which: &str, reading: Reading) -> Option<String> {
    let what = match reading {
        Reading::Usual => return None,
        Reading::Leaks => {
            "far too low: leak, valve or bead. Find it before you inflate, do not ride (common practice, no source)"
        }
        Reading::TooFull => "far too high: let air out, cold",
    };
    Some(format!("{which}: {what}."))
}
/// Warning.
pub const LET_DOWN_IN_SPRING: &str = "Pressure raised for storage is let down to the cold pressure before the first ride: write it on the key.";
/// Warning.
pub fn over_sidewall(which: &str) -> String {
    format!(
        "{which}: that is over the sidewall’s maximum. Set it outdoors, in the air you ride in."
    )
}
/// Instead of an age.
pub const BEFORE_MILLENNIUM: &str = "made before 2000, over 25 years";
/// Warning.
pub fn old_tire(which: &str, too_old: bool) -> String {
    let advice = if too_old {
        "over 10 years: replace it, however good it looks"
    } else {
        "over 6 years: several makers say replace; have it looked at before you ride"
    };
    format!("{which}: {advice} (advice, no law)")
}

/// Instead of a day.
pub const BY_THE_MANUAL: &str = "as the manual says: no usual interval is known";
/// Warning.
pub fn fluid_due(which: &str, late: Late) -> Option<String> {
    let when = match late {
        Late::No => return None,
        Late::ByThen => "two years old or more by then",
        Late::Overdue => "overdue",
    };
    Some(format!("{which}: {when}. Change it now, before it stands."))
}
/// Beside an age that cannot be told.
pub const NEEDS_A_DAY: &str = "its age needs a ride date or a park date";
/// Beside the day.
pub fn never_with(fluid: Fluid) -> &'static str {
    match fluid {
        Fluid::Dot5 => {
            "silicone: never mixed with DOT 3, 4 or 5.1, though the name is near; water does not mix in: it collects, boils at about 100 °C (212 °F) and rusts"
        }
        Fluid::Mineral => "mineral oil: never DOT fluid into it",
        _ => "never mineral oil, never DOT 5 silicone into it",
    }
}
/// What a fluid does in another.
pub const fn mixing(mixing: Mixing) -> &'static str {
    match mixing {
        Mixing::Same => "the same: yes",
        Mixing::OnlyTheNamed => {
            "only the one named on the cap or in the manual; never engine, fork or jack oil"
        }
        Mixing::Mixes => "mixes; the grade on the cap decides",
        Mixing::BoilsSooner => "mixes, but boils sooner than the cap asks: no",
        Mixing::Never => "never",
    }
}
/// Warning.
pub const WRONG_FLUID: &str = "The fluid on the shelf ruins seals or brakes of this bike. If some is in already: do not ride, do not pump; a mechanic flushes it and renews the seals.";
