//! Small sentences beside answers, and warnings that follow from figures.

/// Beside the stabilizer.
pub fn then_fuel_on_top(fuel: &str) -> String {
    format!("in first, then {fuel} of fuel on top")
}
/// The tank needs no fuel.
pub const FULL_ALREADY: &str = "in; the tank is as full as you want it";
/// Stabilizer without fuel on top.
pub const FULL_CANNOT_MIX: &str = "No fuel goes on top of it to mix it in: pour it in before the ride, and ride the last run on it.";
/// Beside the last run, injection.
pub const RIDE_NEVER_IDLE: &str =
    "on the road, engine warm; idling treats nothing and dilutes the oil";
/// Beside the last run, carburetor.
pub const RIDE_THEN_BOWLS: &str =
    "on the road, then tap off and bowls drained; idling treats nothing";

/// Beside the oil.
pub fn first_pour(pour: &str) -> String {
    format!("first pour {pour}, run, settle, read the level, then the rest")
}
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

/// Beside the charge.
pub fn look_by(day: &str) -> String {
    format!("look at the meter by {day}")
}
/// Beside the charge.
pub fn charge_by(day: &str) -> String {
    format!("charge by {day}")
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
pub fn may_freeze(day: &str) -> String {
    format!(
        "It may freeze around {day} on the coldest night, at the fast end of the band: keep it charged or bring it indoors."
    )
}
/// Warning.
pub fn near_freezing(day: &str) -> String {
    format!(
        "Less than 5 K from freezing around {day} on the coldest night: keep it charged or bring it indoors."
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
