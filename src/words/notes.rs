//! Small sentences beside answers, and warnings that follow from figures.

use crate::brake::{Fluid, Mixing};
use crate::coolant::Short;
use crate::tire::Reading;

/// Beside the stabilizer.
pub fn then_fuel_on_top(fuel: &str) -> String {
    format!("in first, then {fuel} of fuel on top")
}
/// The tank needs no fuel.
pub const FULL_ALREADY: &str = "in; no fuel to add";
/// More in the tank than it is to be filled to.
pub fn overfull(by: &str) -> String {
    format!(
        "The tank is fuller than that by {by}: take it out, or see that the fuel stands below the filler neck."
    )
}
/// A level with no room above it.
pub const NO_ROOM_TO_GROW: &str = "That full, fuel has no room to grow when it warms: no higher than the bottom of the filler neck, and not with sun on the tank.";
/// Over a year.
pub const TOO_LONG_TO_TREAT: &str = "Over twelve months: drain the tank and fog the cylinders rather than treat the fuel (common practice, no source).";
/// Stabilizer without fuel on top.
pub const FULL_CANNOT_MIX: &str = "No fuel goes on top of it to mix it in: pour it in before the ride, and ride the last run on it.";
/// Beside the last run, injection.
pub const RIDE_NEVER_IDLE: &str =
    "on the road, engine warm; idling treats nothing and dilutes the oil";
/// Beside the last run, carburetor.
pub const RIDE_THEN_BOWLS: &str = "on the road; tap off and bowls drained only after the oil is level, as that run fills them again";

/// Beside the oil.
pub fn first_pour(pour: &str, top_up: Option<&str>) -> String {
    match top_up {
        Some(top_up) => format!(
            "first pour {pour}, run, settle, read the level, then up to {top_up} more, never over the mark"
        ),
        None => format!("first pour {pour}, then up to the level before the engine runs"),
    }
}
/// Instead of a top-up where the volume between the marks is not known.
pub const BY_THE_LEVEL: &str = "by the level alone";
/// Beside the oil.
pub fn bottles(count: f64, figure: &str, left: &str) -> String {
    let bottles = if count == 1.0 { "bottle" } else { "bottles" };
    format!("{figure} {bottles} to buy, {left} left over")
}
/// Between the marks is not known.
pub const MARKS_UNKNOWN: &str = "Between the marks is not known: after the first pour bring the level to the glass or stick before you start the engine.";

/// Beside the mark.
pub fn exact_setting(setting: &str) -> String {
    format!("exact setting {setting}")
}
/// Beside the mark.
pub fn accuracy(accuracy: &str, assumed: bool) -> String {
    let from = if assumed { " by ISO 6789" } else { "" };
    format!("wrench ±{accuracy}{from}")
}
/// Verdict.
pub const INSIDE: &str = "inside the manual's range";
/// Verdict.
pub const PARTLY: &str = "Only partly inside the manual's range: with this wrench's accuracy the fastener may end outside of it.";
/// Verdict.
pub const OUTSIDE: &str = "Outside the manual's range: no mark of this wrench gets there. Take another wrench or adapter.";

/// No range is given, and the mark is far from the figure.
pub fn far_mark(off: &str, over: bool) -> String {
    let side = if over { "over" } else { "under" };
    format!(
        "No mark is near enough: the fastener gets {off} {side} the manual's figure. Take a wrench with finer marks."
    )
}
/// Instead of a mark.
pub const NOT_THIS_WRENCH: &str = "not with this wrench";
/// Beside it.
pub fn not_with_this_wrench(setting: &str, why: &str) -> String {
    format!("exact setting {setting}; {why}")
}
/// Lengths that no wrench with an adapter has.
pub const ODD_LENGTHS: &str = "These lengths are unusual: are wrench and adapter swapped, or is one in another unit? A wrong length is a wrong torque.";

/// Beside a wrench.
pub const PARTLY_INSIDE: &str = "only partly inside the manual's range";
/// Beside a wrench.
pub const OUTSIDE_RANGE: &str = "outside the manual's range";
/// Beside a wrench.
pub const MARKS_TOO_COARSE: &str = "marks too coarse for this figure";
/// Beside a wrench.
pub const LOW_ON_THE_SCALE: &str = "under 20 % of the wrench's highest mark";
/// Instead of a mark, where there are several wrenches.
pub const NO_WRENCH: &str = "not with any of these wrenches";
/// Beside the mark.
pub fn with_wrench(name: &str) -> String {
    format!("with “{name}”")
}
/// Beside what a fastener got.
pub fn got_with(name: &str) -> String {
    format!("reckoned with “{name}”: take the wrench that it was done with, above")
}
/// A setting that the wrench cannot have had.
pub const SET_OFF_SCALE: &str =
    "This wrench cannot be set so: was it another one, or another unit?";
/// Beside a turn.
pub const FROM_THE_SEAT: &str = "from where it seats, finger-tight first";
/// Warning beside a turn.
pub const CRUSHED_ALREADY: &str = "A gasket that is crushed already wants far less of a turn than a new one: its box prints both.";
/// Instead of a number, beside a torque.
pub const OR_TORQUE: &str = "the torque or the turn, not one after the other";
/// Beside a setting: what has to sit on the wrench for it.
pub fn through(adapter: &str, how: &str, hand: &str) -> String {
    let mut words = format!("only with the {adapter} adapter {how}");
    if !hand.is_empty() {
        words.push_str(", hand at ");
        words.push_str(hand);
    }
    words
}
/// The same for an adapter whose length does not matter.
pub const THROUGH_SQUARE: &str = "with the adapter at a right angle";
/// How an adapter stands.
pub fn at_angle(angle: &str) -> String {
    format!("at {angle}")
}
/// Beside a setting.
pub fn drag_on_top(drag: &str) -> String {
    format!("drag of {drag} on top")
}
/// Beside a setting: what comes one after another.
pub fn one_after_another(settings: &[String]) -> String {
    format!("Stages: {}", settings.join(", then "))
}
/// Beside a setting.
pub fn in_order(bolts: &str) -> String {
    format!("{bolts} bolts, in their order")
}
/// Warning.
pub const THEN_TURN: &str =
    "The click is not the end: then it is turned on by an angle, as its stages say.";
/// Warning. Source: US Army TM 5-3805-298-23-2 WP 0176, over 41 N·m (30 lbf·ft) a first pass of 70 % around the pattern.
pub const FIRST_PASS: &str = "Several bolts over 41 N·m without stages: where the manual says nothing, a first pass at 70 % around the pattern, then the figure.";
/// Warning.
pub const MORE_DRAG_THAN_TORQUE: &str = "More drag than torque: is one of the two in another unit?";
/// Warning.
pub const OVER_ANY_BOLT: &str = "More than the strongest bolt of this thread bears: is the figure in another unit, or its decimal point lost?";
/// Beside the mark.
pub const HIGHEST_UNKNOWN: &str = "highest mark not known";
/// In the torque line's head.
pub fn listed(count: usize) -> String {
    if count == 1 { "1 fastener".to_owned() } else { format!("{count} fasteners") }
}
/// Beside it.
pub const LIST_INSIDE: &str = "what to set for each stands inside";
/// Of a wrench.
pub const NOTHING_KNOWN: &str = "marks and length not known yet";
/// Of a wrench.
pub fn from_to(lowest: &str, highest: &str) -> String {
    format!("{lowest} to {highest}")
}
/// Of a wrench.
pub fn up_to(highest: &str) -> String {
    format!("up to {highest}")
}
/// Of a wrench.
pub fn from_on(lowest: &str) -> String {
    format!("from {lowest}")
}
/// Of a wrench.
pub fn marks_of(graduation: &str) -> String {
    format!("marks of {graduation}")
}
/// Of a wrench.
pub fn plus_minus(accuracy: &str) -> String {
    format!("±{accuracy}")
}
/// A pass.
pub fn stage(number: usize, count: usize, share: &str, torque: &str) -> String {
    format!("Stage {number} of {count}: {share}, {torque} at the fastener")
}
/// A pass.
pub fn stage_turn(number: usize, count: usize) -> String {
    format!("Stage {number} of {count}: turn on, without the wrench's click")
}
/// Beside what it got.
pub fn off_figure(by: &str, over: bool) -> String {
    format!("{by} {} the manual's figure", if over { "over" } else { "under" })
}
/// Warning.
pub const GOT_LESS: &str = "Too loose, or it may be: set the wrench right and tighten on until it clicks, without loosening first. What is in thread-lock, or is tightened by an angle, starts anew with what the manual says is new.";
/// Warning.
pub const GOT_MORE: &str = "Too tight, or it may be: loosen it, look at bolt and thread, put in a new bolt, nut or washer where it may have stretched or was for one use, and tighten again with the wrench set right.";
/// Warning.
pub const GOT_EITHER: &str = "It may be outside the manual's range on either side: loosen it, put in a new bolt, nut or washer where the old one was for one use, and tighten again with the wrench set right.";
/// Beside the mark.
pub const BY_TABLE: &str = "figure from the manual's general table for this thread";
/// Instead of the estimate.
pub const TABLE_HAS_IT: &str =
    "the general table has this thread: it is taken above, and no estimate is needed";
/// The same, where the fastener has a figure of its own.
pub const OWN_COMES_FIRST: &str =
    "the general table has this thread; the fastener's own figure above comes first";
/// Refusal: a general table with two figures for one thread.
pub fn twice(thread: &str) -> String {
    format!("{thread} stands twice, with two figures: keep the right one")
}
/// Beside the estimate, always.
pub const ESTIMATE: &str = "an estimate for a steel bolt in a steel nut, never a specification; the manual's own table for this thread comes first";
/// Beside the estimate, what its range means.
pub const WITHIN_PROOF: &str = "even at the least friction the bolt stays within its proof load";
/// Warning: what the torque leaves where friction is the most.
pub fn at_most_friction(mu: &str, share: &str) -> String {
    format!(
        "Where friction is the most of that choice ({mu}), the same torque may leave only {share} of the proof load. Do not go above the range for it: that would overload the bolt where friction is the least."
    )
}
/// Warning.
pub const GASKET_DECIDES: &str = "A gasket, crush washer or O-ring decides, not the bolt: it wants far less than this, often a part of a turn. The figure above is for bare steel and may crush the gasket or break the part; use the manual's.";
/// Instead of an estimate.
pub const NO_ESTIMATE: &str = "none for such a thread";
/// Warning. M10×1.25 8.8 computes 36–59 N·m, where makers' general tables for their bikes say 25–34.
pub const SOFT_THREAD: &str = "In aluminum or magnesium the thread gives way before the bolt, so a sum for the bolt asks for far too much: no figure is given. Take the manual's, or its general table for this thread.";
/// Instead of a rise.
pub const LUBRICATED_ALREADY: &str = "lubricated already";

/// Beside the charge.
pub fn look_by(day: &str, volts: &str) -> String {
    format!("look at the meter by {day}: charge if it rests under {volts}")
}
/// Beside the charge, at the fast end of the band.
pub fn charge_by(days: &str, more: bool) -> String {
    format!(
        "if it loses as fast as it may, charge by {days}{}",
        if more { "; and so on" } else { "" }
    )
}
/// Beside the charge.
pub const IN_TWELVE_MONTHS: &str = "in twelve months: no ride date is set";
/// Warning.
pub const NO_CHARGE_HOLDS: &str = "No charge holds above that threshold for long: leave it on a maintainer, or take the negative lead off.";
/// Refusal.
pub const DEAD_CELL: &str = "a 12 V battery that rests under 11.3 V has a dead cell, or it is a 6 V one: do not charge it, have it tested";
/// Refusal.
pub fn colder_than(mean: &str) -> String {
    format!("has to be colder than the coldest mean of the season, {mean}: is the minus missing?")
}
/// Beside the charge.
pub const NO_CHARGE_NEEDED: &str = "no charge needed before the ride date";
/// Instead of a day.
pub const NO_LOOK: &str = "no need: it is ridden before that";
/// Instead of a day.
pub const NOT_BELOW: &str = "not before the ride date";
/// Instead of a margin.
pub const DOES_NOT_FREEZE: &str = "not a matter for this chemistry or season";
/// Warning.
pub fn freezes(day: &str) -> String {
    format!(
        "It freezes on a night as cold as that, from {day} on: charge it or bring it indoors before."
    )
}
/// Warning.
pub fn may_freeze(day: &str) -> String {
    format!(
        "It may freeze on a night as cold as that if it loses charge as fast as it may: charge it or bring it indoors by {day}."
    )
}
/// Warning.
pub fn near_freezing(day: &str) -> String {
    format!(
        "Less than 5 K from freezing on a night as cold as that, from {day} on, if it loses charge as fast as it may."
    )
}
/// Warning.
pub const DOUBTFUL_DRAW: &str = "More than 50 mA with the key off is a fault or a bike not yet asleep: measure again after some minutes, unit and point checked.";
/// Warning.
pub const VOLTAGE_COUNTS: &str =
    "Both charge and resting voltage are given: the measured voltage counts.";
/// Refusal.
pub const ENERGY_WANTED: &str = "the Ah on a LiFePO4 label is often that of the lead battery it replaces: write the Wh, for example 51 Wh";
/// Refusal.
pub const CHARGE_WANTED: &str = "a lead battery's label gives Ah: write for example 10 Ah";

/// Beside the coolant line of a bike without any.
pub const AIR_COOLED: &str = "nothing to do; an oil cooler's oil is the engine's";
/// Instead of a freezing point.
pub const NO_COOLANT: &str = "no coolant";
/// Instead of a freezing point.
pub const PAST_SIXTY: &str = "no figure past 60 %";
/// Instead of a freezing point.
pub const UNDER_TEN: &str = "no figure under 10 %";
/// Warning.
pub const HARDLY_ANY_GLYCOL: &str = "Under 10 % or near it: it freezes much like water, and ice breaks the engine. Make it stronger before frost.";
/// Beside the freezing point.
pub fn drain_and_refill(amount: &str) -> String {
    format!("drain {amount} and pour in as much undiluted from the bottle")
}
/// The same where water goes in too.
pub fn drain_and_mix(all: &str, bottle: &str, water: &str) -> String {
    format!("drain {all} and pour in {bottle} from the bottle with {water} of distilled water")
}
/// Instead of them.
pub const NOTHING_TO_DO: &str = "nothing to do: it is as wanted";
/// Before them.
pub const WEAKER: &str = "asked for weaker coolant than there is";
/// Instead of an amount.
pub const TOO_ROUGH: &str =
    "no amount is right for all of that range: read the concentration closer";
/// Warning: one drain does not get there.
pub fn out_of_reach(why: Short, gets: &str) -> String {
    let why = match why {
        Short::WeakBottle => "the bottle is too weak for it, take concentrate",
        Short::Twice => {
            "a part stays in the engine, drain twice: ride, then measure and reckon again"
        }
        Short::PartStays => {
            "a part stays in the engine, and even drained twice it does not get there"
        }
    };
    format!("As wanted is out of reach: {why}. At best one drain leaves about {gets}.")
}
/// Warning: how it freezes after the refill.
pub fn then_freezes(as_wanted: bool, at: &str, by: &str, short: bool) -> String {
    let then = if as_wanted { "As wanted" } else { "At best" };
    let why =
        if short { "too little" } else { "to spare, too little as bottles and testers differ" };
    format!("{then} it freezes at {at}: {by} {why} on the coldest night.")
}
/// Beside the freezing point.
pub fn night_margin(margin: &str) -> String {
    format!("{margin} of margin on the coldest night")
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
pub const BY_MANUALS_INTERVAL: &str = "changed at the manual's interval";
/// An oil with its plug.
pub fn plug(oil: &str, torque: &str) -> String {
    format!("{oil}, plug {torque}")
}
/// An oil with its age.
pub fn aged(oil: &str, age: &str) -> String {
    format!("{oil}, {age} old by then")
}
/// Refusal.
pub const CHANGED_LATER: &str =
    "has to be on or before the ride date, or the park date where there is none";

/// Instead of a pressure.
pub const LET_IT_STAND: &str = "let it stand";
/// Beside it.
pub const WARM_TIRE: &str =
    "three hours, out of the sun; a warm tire tells nothing, and never let air out of one";
/// Beside the front tire.
pub fn rear(pressure: &str) -> String {
    format!("rear {pressure}")
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
            "far under what is right: leak, valve or bead. Find it before you inflate, and do not ride (common practice, no source)"
        }
        Reading::TooFull => "far over what is right: let air out, with the tire cold",
    };
    Some(format!("{which}: {what}."))
}
/// Warning.
pub const LET_DOWN_IN_SPRING: &str = "Pressure raised for storage is let down to the cold pressure before the first ride: write it on the key.";
/// Warning.
pub fn over_sidewall(which: &str) -> String {
    format!(
        "{which}: that is over the sidewall's maximum. Set it outdoors, in the air you ride in."
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
pub const BRAKE_FLUID_DUE: &str =
    "Brake fluid will be two years old or more: change it now, before it stands.";
/// Warning.
pub const CLUTCH_FLUID_DUE: &str =
    "Clutch fluid will be two years old or more: change it now, before it stands.";
/// Beside the day.
pub fn never_with(fluid: Fluid) -> &'static str {
    match fluid {
        Fluid::Dot5 => "silicone: never mixed with DOT 3, 4 or 5.1, though the name is near",
        Fluid::Mineral => "mineral oil: never DOT fluid into it",
        _ => "never mineral oil, never DOT 5 silicone into it",
    }
}
/// What a fluid does in another.
pub const fn mixing(mixing: Mixing) -> &'static str {
    match mixing {
        Mixing::Same => "the same: yes",
        Mixing::Mixes => "mixes; the grade on the cap decides",
        Mixing::BoilsSooner => "mixes, but boils sooner than the cap asks: no",
        Mixing::Never => "never",
    }
}
/// Warning.
pub const WRONG_FLUID: &str = "The fluid on the shelf ruins seals or brakes of this bike. If some is in already: do not ride, do not pump; a mechanic flushes it and renews the seals.";
