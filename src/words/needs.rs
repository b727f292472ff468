//! Words of the needs list.

/// Its name.
pub const NEEDS: &str = "Needs list";
/// When nothing is known to be needed.
pub const NOTHING: &str = "Nothing yet: fill in the lines above.";
/// What stands behind it.
pub const HINT: &str = "For the steps that are still open, less what is on the shelf.";
/// Engine oil.
pub const OIL: &str = "Engine oil";
/// Oil filter.
pub const FILTER: &str = "Oil filter, and its seal";
/// Crush washer.
pub const WASHER: &str = "Washer for the oil’s drain plug";
/// Stabilizer.
pub const STABILIZER: &str = "Fuel stabilizer";
/// Fuel.
pub const FUEL: &str = "Fuel";
/// Coolant.
pub const COOLANT: &str = "Coolant, from the bottle";
/// Coolant, where nobody knows how strong the bottle is.
pub const READY_MIXED: &str = "Coolant, ready-mixed, 50 %";
/// Where a ready mix is too weak.
pub const CONCENTRATE: &str =
    "Coolant concentrate: ready-mixed is too weak for what is wanted; its strength says how much";
/// Distilled water.
pub const WATER: &str = "Distilled water";
/// Brake fluid.
pub const BRAKE_FLUID: &str = "Brake fluid, a sealed bottle";
/// Clutch fluid.
pub const CLUTCH_FLUID: &str = "Clutch fluid, a sealed bottle";
/// For a fastener.
pub const NEW_WASHER: &str = "New washer";
/// For a fastener.
pub const NEW_BOLT: &str = "New bolt or nut";

/// A thing with its amount, or for whom it is.
pub fn of(what: &str, amount: &str) -> String {
    format!("{what}: {amount}")
}

/// So many bottles, each of that size.
pub fn bottles(count: &str, size: &str) -> String {
    format!("{count} × {size}")
}
