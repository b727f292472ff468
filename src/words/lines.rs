//! What each line of the sheet says in its head, and why it stands where it stands.

/// A line's words.
#[derive(Debug, PartialEq)]
pub struct Said {
    /// What is done.
    pub title: &'static str,
    /// Why now.
    pub reason: &'static str,
    /// The calculator's name where it stands alone.
    pub quick: &'static str,
    /// What it is for, where it stands alone.
    pub quick_reason: &'static str,
}

/// Line 1.
pub const FUEL: Said = Said {
    title: "Fill up and stabilize",
    reason: "before the last run, so that treated fuel reaches the engine",
    quick: "Fuel and stabilizer",
    quick_reason: "how much fuel to add, and how much stabilizer goes in before it",
};
/// Line 2.
pub const LAST_RUN: Said = Said {
    title: "Last run",
    reason: "draws treated fuel through and warms the oil for the drain",
    quick: "Last run",
    quick_reason: "how far to ride until treated fuel is through",
};
/// Line 3.
pub const OIL: Said = Said {
    title: "Oil",
    reason: "while it is warm: drained oil takes the season's acids and water with it",
    quick: "Oil fill",
    quick_reason: "first pour, top-up, filter allowance and bottles",
};
/// Line 4.
pub const TORQUES: Said = Said {
    title: "Torques",
    reason: "on a cold bike, with the wrench and the adapter in hand",
    quick: "Torque wrench setting",
    quick_reason: "from the manual's figure to the mark, through an adapter or straight",
};
/// Line 5.
pub const BATTERY: Said = Said {
    title: "Battery",
    reason: "after the last start; what it will hold in spring, and when to look",
    quick: "Battery in storage",
    quick_reason: "charge on the ride date, and the day to recharge by",
};

/// Quick sum.
pub const COOLANT_QUICK: &str = "Coolant";
/// Quick sum.
pub const TIRES_QUICK: &str = "Tires";
