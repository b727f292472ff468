//! Small sentences beside answers, and warnings that follow from figures.

use crate::entry::text::joined;

/// Beside the stabilizer.
pub fn then_fuel_on_top(fuel: &str) -> String {
    joined(&["in first, then ", fuel, " of fuel on top"], "")
}
/// The tank needs no fuel.
pub const FULL_ALREADY: &str = "in; no fuel to add";
/// More in the tank than it is to be filled to.
pub fn overfull(by: &str) -> String {
    joined(
        &[
            "The tank is fuller than that by ",
            by,
            ": take it out, or see that the fuel stands below the filler neck.",
        ],
        "",
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
pub const RIDE_THEN_BOWLS: &str =
    "on the road; bowls drained only after the oil is level, as that run fills them again";

/// Beside the oil.
pub fn first_pour(pour: &str, top_up: Option<&str>, dry_sump: bool) -> String {
    let read = if dry_sump { "read the level hot" } else { "settle, read the level" };
    match top_up {
        Some(top_up) => joined(
            &[
                "first pour ",
                pour,
                ", run, ",
                read,
                ", then up to ",
                top_up,
                " more, never over the mark",
            ],
            "",
        ),
        None => joined(&["first pour ", pour, ", then up to the level before the engine runs"], ""),
    }
}
/// Instead of a top-up where the volume between the marks is not known.
pub const BY_THE_LEVEL: &str = "by the level alone";
/// Beside the oil.
pub fn bottles(count: u32, left: &str) -> String {
    let bottles = if count == 1 { " bottle to buy" } else { " bottles to buy" };
    super::oil::with_left(&(count.to_string() + bottles), left)
}
/// Between the marks is not known.
pub const MARKS_UNKNOWN: &str = "Between the marks is not known: after the first pour bring the level to the glass or stick before you start the engine.";

/// Beside an exact setting, while the wrench's marks are not known.
pub const NEAREST_MARK: &str =
    "set the wrench as near to it as its scale allows; Graduation gives the mark";
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
pub const INSIDE: &str = "inside the manual’s range";
/// Why a mark that is nearer is not the one to set.
pub fn passed_over(mark: &str, limit: &str, over: bool) -> String {
    let passes = if over { "pass" } else { "fall short of" };
    format!("{mark} is nearer, but could {passes} {limit}")
}
/// Verdict.
pub const PARTLY: &str = "Only partly inside the manual’s range: with this wrench’s accuracy the fastener may end outside of it.";
/// Verdict.
pub const OUTSIDE: &str = "Outside the manual’s range: no mark of this wrench gets there. Take another wrench or adapter.";

/// No range is given, and the mark is far from the figure.
pub fn far_mark(off: &str, over: bool) -> String {
    let side = if over { "over" } else { "under" };
    format!(
        "No mark is near enough: the fastener gets {off} {side} the manual’s figure. Take a wrench with finer marks."
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
pub const PARTLY_INSIDE: &str = "only partly inside the manual’s range";
/// Beside a wrench.
pub const OUTSIDE_RANGE: &str = "outside the manual’s range";
/// Beside a wrench.
pub const MARKS_TOO_COARSE: &str = "marks too coarse for this figure";
/// Beside a wrench.
pub const LOW_ON_THE_SCALE: &str = "under 20 % of the wrench’s highest mark";
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
    format!("Stages: {}", joined(settings, ", then "))
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
    format!("Stage {number} of {count}: turn on, without the wrench’s click")
}
/// Beside what it got.
pub fn off_figure(by: &str, over: bool) -> String {
    format!("{by} {} the manual’s figure", if over { "over" } else { "under" })
}
/// Warning.
pub const GOT_LESS: &str = "Too loose, or it may be: set the wrench right and tighten on until it clicks, without loosening first. What is in thread-lock, or is tightened by an angle, starts anew with what the manual says is new.";
/// Warning.
pub const GOT_MORE: &str = "Too tight, or it may be: loosen it, look at bolt and thread, put in a new bolt, nut or washer where it may have stretched or was for one use, and tighten again with the wrench set right.";
/// Warning.
pub const GOT_EITHER: &str = "It may be outside the manual’s range on either side: loosen it, put in a new bolt, nut or washer where the old one was for one use, and tighten again with the wrench set right.";
/// Beside the mark.
pub const BY_TABLE: &str = "figure from the manual’s general table for this thread";
/// Instead of the estimate.
pub const TABLE_HAS_IT: &str =
    "the general table has this thread: it is taken above, and no estimate is needed";
/// The same, where the fastener has a figure of its own.
pub const OWN_COMES_FIRST: &str =
    "the general table has this thread; the fastener’s own figure above comes first";
/// Refusal: a general table with two figures for one thread.
pub fn twice(thread: &str) -> String {
    format!("{thread} stands twice, with two figures: keep the right one")
}
/// Beside the estimate, always.
pub const ESTIMATE: &str = "an estimate for a steel bolt in a steel nut, never a specification; the manual’s own table for this thread comes first";
/// Beside the estimate, what its range means.
pub const WITHIN_PROOF: &str = "even at the least friction the bolt stays within its proof load";
/// Warning: what the torque leaves where friction is the most.
pub fn at_most_friction(mu: &str, share: &str) -> String {
    format!(
        "Where friction is the most of that choice ({mu}), the same torque may leave only {share} of the proof load. Do not go above the range for it: that would overload the bolt where friction is the least."
    )
}
/// Warning.
pub const GASKET_DECIDES: &str = "A gasket, crush washer or O-ring decides, not the bolt: it wants far less than this, often a part of a turn. The figure above is for bare steel and may crush the gasket or break the part; use the manual’s.";
/// Instead of an estimate.
pub const NO_ESTIMATE: &str = "none for such a thread";
/// Warning. M10×1.25 8.8 computes 36–59 N·m, where makers' general tables for their bikes say 25–34.
pub const SOFT_THREAD: &str = "In aluminum or magnesium the thread gives way before the bolt, so a sum for the bolt asks for far too much: no figure is given. Take the manual’s, or its general table for this thread.";
/// Instead of a rise.
pub const LUBRICATED_ALREADY: &str = "lubricated already";

/// Beside the charge.
pub fn look_by(day: &str, volts: &str, again: Option<&str>) -> String {
    let next = again.map_or(String::new(), |it| format!(", else look again by {it}"));
    format!("look at the meter by {day}: charge if it rests under {volts}{next}")
}
/// Beside the charge, where days to charge are named.
pub const WITHOUT_CHARGING: &str = "figures without charging";
/// Beside the charge, at the fast end of the band.
pub fn charge_on(days: &str, more: usize) -> String {
    let more = if more > 0 { format!("; and {more} more") } else { String::new() };
    format!("if it loses as fast as it may, charge on {days}{more}")
}
/// Beside the charge.
pub const BEFORE_FIRST_START: &str = "charge it before the first start";
/// Beside the charge.
pub const WHILE_PLUGGED_IN: &str = "as long as the maintainer has its supply";
/// Instead of a day.
pub const LOOK_AT_ITS_LIGHT: &str = "every few weeks: that the maintainer’s light says charged";
/// Instead of a day.
pub const KEPT_FULL: &str = "kept full";
/// Beside the charge: what was counted without being known.
pub fn counted_wide([charge, draw]: [bool; 2]) -> Option<String> {
    let what = match (charge, draw) {
        (true, true) => "charge when parked 75–100 %, key-off draw 0.5–3 mA",
        (true, false) => "charge when parked 75–100 %",
        (false, true) => "key-off draw 0.5–3 mA",
        (false, false) => return None,
    };
    Some(format!("not known, so counted wide (common practice, no source): {what}"))
}
/// Beside the charge.
pub const AS_FORETOLD: &str = "the meter reads as foretold";
/// Warning.
pub fn under_the_band(maintained: bool) -> String {
    let why = match maintained {
        true => "the maintainer lost its supply, is faulty or a clamp is off, or the battery",
        false => "it draws more than was thought, was not full when parked, or",
    };
    format!(
        "The meter reads under what was foretold: {why} has aged. Charge it, let it rest a night and have it tested if it falls again."
    )
}
/// Warning.
pub const OVER_THE_BAND: &str = "The meter reads over what was foretold: it was charged since, had not rested, or draws less than was thought.";
/// Warning.
pub const READING_FREEZES: &str = "At the charge that the meter reads it freezes in a cold snap, or nearly: bring it indoors now, let it thaw, then charge it.";
/// Warning.
pub fn under_the_line(volts: &str) -> String {
    format!("The meter reads under {volts}: charge it now.")
}
/// Offer.
pub fn keep_draw(text: &str, unit: &str) -> String {
    format!("Keep {text} {unit} as the key-off draw")
}
/// Refusal.
pub const READ_IN_SEASON: &str = "has to be a day between park date and ride date";
/// Refusal.
pub const NOT_RESTED: &str =
    "has to be 3 h or more, better a night: before that the meter reads surface charge";
/// Warning.
pub const SHORT_REST: &str =
    "Rested under 8 h: some surface charge may be left, so the charge may be less than it reads.";
/// Warning.
pub const SURFACE_CHARGE: &str = "That is more than a full battery rests at: surface charge of the last ride or charge, so it is not counted. Let it stand a night and read again.";
/// Warning.
pub const HYDROMETER_COUNTS: &str = "The charge is given more than once: the hydrometer counts.";
/// Warning.
pub const CHARGE_INDOORS: &str = "It is below 0 °C (32 °F) there on a day to charge: bring it indoors to charge, and let it warm through first.";
/// Instead of a time.
pub const THAW_FIRST: &str = "not before it has thawed";
/// Warning.
pub const CURRENT_IS_HIGH: &str = "The charger’s current is over a tenth of the capacity: too much for this battery unless its label allows it. Take a smaller one. The charging time holds up to a tenth only.";
/// Warning for LiFePO4.
pub const LITHIUM_CURRENT_IS_HIGH: &str = "The charger’s current is over the capacity (Wh / 12.8 V) in an hour: too much for this battery unless its label allows it. Take a smaller one.";
/// Warning: what would spare the charging.
pub fn lead_off_helps(count: usize, lithium: bool) -> String {
    let then = match count {
        0 => "no charge is needed".to_owned(),
        1 => "one charge is enough".to_owned(),
        count => format!("{count} charges are enough"),
    };
    let or = if lithium { "" } else { " Or leave it on a maintainer." };
    format!("The key-off draw is too much for the season: with the negative lead off {then}.{or}")
}
/// What is left where charging is not enough; LiFePO4 needs no maintainer, and bears none in frost.
fn instead(lithium: bool) -> &'static str {
    if lithium { "take a lower one" } else { "leave it on a maintainer" }
}
/// Warning.
pub fn often(lithium: bool) -> String {
    format!("That threshold asks for a charge more than every two weeks: {}.", instead(lithium))
}
/// Warning.
pub const LITHIUM_MAINTAINED: &str = "It gets below 0 °C (32 °F) there, and LiFePO4 is not charged in that: take it off the maintainer, which it does not need, or bring it indoors.";
/// Warning.
pub const PUT_ON_FROZEN: &str = "At the charge when parked it is frozen, or nearly: let it thaw indoors first, charge it in full, then the maintainer. A bulged case is scrap.";
/// Warning.
pub const PUT_ON_LOW: &str =
    "Under the threshold when parked: a full charge first, then the maintainer.";
/// The words of a law as a sentence.
pub fn sentence(words: String) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|it| it.to_ascii_uppercase());
    first.into_iter().chain(letters).chain(['.']).collect()
}
/// Beside the charge.
pub const IN_TWELVE_MONTHS: &str = "in twelve months: no ride date is set";
/// Warning.
pub fn no_charge_holds(lithium: bool) -> String {
    format!("No charge holds above that threshold for long: {}.", instead(lithium))
}
/// Refusal.
pub const DEAD_CELL: &str = "a 12 V battery that rests under 11.3 V has a dead cell, or it is a 6 V one: do not charge it, have it tested";
/// Warning.
pub const DRAINED_FLAT: &str = "Drained flat by the draw, or a dead cell; it may be frozen: bring it indoors. A bulged case is scrap.";
/// Refusal.
pub const LITHIUM_DEAD: &str = "LiFePO4 that rests under 10 V has ruined cells, or its protector is open: do not charge it, have it tested";
/// Refusal.
pub fn colder_than(mean: &str) -> String {
    format!("has to be colder than the coldest mean of the season, {mean}: is the minus missing?")
}
/// Warning: a night that is refused counts for nothing.
pub fn night_refused(which: &str, why: &str) -> String {
    format!("{which} is not counted until it is mended: {why}")
}
/// Beside the charge.
pub const NO_CHARGE_NEEDED: &str = "no charge needed before the ride date";
/// Instead of a day.
pub const NO_LOOK: &str = "no need: it is ridden before that";
/// Instead of a day.
pub const CHARGED_BEFORE: &str = "none: it has to be charged before that";
/// Instead of a day.
pub const NOT_BELOW: &str = "not before the ride date";
/// Instead of a margin.
pub const DOES_NOT_FREEZE: &str = "not a matter for this chemistry or season";
/// Warning.
pub fn freezes(day: &str) -> String {
    format!("It freezes on a night as cold as that: charge it or bring it indoors by {day}.")
}
/// Warning.
pub fn may_freeze(day: &str) -> String {
    format!(
        "It may freeze on a night as cold as that if it loses charge as fast as it may: charge it or bring it indoors by {day}."
    )
}
/// Warning.
pub fn near_freezing(step: &str, day: &str) -> String {
    format!(
        "Less than {step} from freezing on a night as cold as that, from {day} on, if it loses charge as fast as it may."
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
pub const CHARGE_WANTED: &str = "a lead battery’s label gives Ah: write for example 10 Ah";
