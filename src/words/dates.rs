//! What the season's days are called in a calendar.

/// Park date.
pub const PARK: &str = "Put it away: lay-up sheet";
/// Meter check.
pub const LOOK: &str = "Look at the battery’s meter, bike at rest";
/// Recharge.
pub const CHARGE: &str = "Charge the battery to full, never frozen; LiFePO4 over 0 °C (32 °F)";
/// First day under the threshold.
pub const CHARGE_BY: &str =
    "Charge the battery, never while it is frozen, or bring it to a maintainer";
/// Every month.
pub const MONTHLY: &str = "Look at the bike: battery, tires, nests, drops on the floor";
/// Fuel too old.
pub const FUEL: &str = "Fuel is a year old: drain it rather than ride on it";
/// Papers.
pub const PAPERS: &str = "Papers due: inspection, insurance, registration";
/// Three weeks before the ride date.
pub const WAKE: &str = "Wake it up: wake-up sheet";
/// What an earlier file had and this one has not.
pub const CALLED_OFF: &str = "No longer needed";
/// Ride date.
pub const RIDE: &str = "First ride, short";
/// The button.
pub const SAVE: &str = "Calendar file";
/// What the file is called.
pub const FILE_NAME: &str = "season.ics";

/// A day's name with the bike's before it.
pub fn of_bike(bike: &str, what: &str) -> String {
    format!("{bike}: {what}")
}
