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

/// Fuel.
pub const FUEL: Said = Said {
    title: "Fill up and stabilize",
    reason: "before the last run, so that treated fuel reaches the engine",
    quick: "Fuel and stabilizer",
    quick_reason: "how much fuel to add, and how much stabilizer goes in before it",
};
/// Last run.
pub const LAST_RUN: Said = Said {
    title: "Last run",
    reason: "draws treated fuel through and warms the oil for the drain",
    quick: "Last run",
    quick_reason: "how far to ride until treated fuel is through",
};
/// Oil.
pub const OIL: Said = Said {
    title: "Oil",
    reason: "while it is warm: drained oil takes the season's acids and water with it",
    quick: "Oil fill",
    quick_reason: "first pour, top-up, filter allowance and bottles",
};
/// Torques.
pub const TORQUES: Said = Said {
    title: "Torques",
    reason: "on a cold bike, with the wrench and the adapter in hand",
    quick: "Torque wrench setting",
    quick_reason: "from the manual's figure to the mark, through an adapter or straight",
};
/// Battery.
pub const BATTERY: Said = Said {
    title: "Battery",
    reason: "after the last start; what it will hold in spring, and when to look",
    quick: "Battery in storage",
    quick_reason: "charge on the ride date, and the day to recharge by",
};

/// Coolant.
pub const COOLANT: Said = Said {
    title: "Coolant",
    reason: "read cold; a refill needs the last run to mix it and bleed the circuit",
    quick: "Coolant",
    quick_reason: "where it freezes, and what to drain and refill for another strength",
};
/// Final drive and the like.
pub const OTHER_OILS: Said = Said {
    title: "Other oils",
    reason: "final drive, gearbox and fork drain better while warm from the run",
    quick: "Other oils",
    quick_reason: "fill, plug torque and age",
};
/// Tires.
pub const TIRES: Said = Said {
    title: "Tires",
    reason: "on a cold bike: a warm tire reads too high",
    quick: "Tires",
    quick_reason: "what to set here for a colder or warmer ride, and how old they are",
};
/// Brake and clutch fluid.
pub const BRAKES: Said = Said {
    title: "Brake and clutch fluid",
    reason: "old fluid holds water, which rusts the calipers while it stands",
    quick: "Brake and clutch fluid",
    quick_reason: "when it is due, and what mixes with it",
};
