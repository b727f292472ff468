//! What each calculator says in its head where it stands alone.

/// A line's words.
#[derive(Debug, PartialEq)]
pub struct Said {
    /// Its name.
    pub quick: &'static str,
    /// What it is for.
    pub quick_reason: &'static str,
}

/// Fuel.
pub const FUEL: Said = Said {
    quick: "Fuel and stabilizer",
    quick_reason: "how much fuel to add, and how much stabilizer goes in before it",
};
/// Last run.
pub const LAST_RUN: Said =
    Said { quick: "Last run", quick_reason: "how far to ride until treated fuel is through" };
/// Oil.
pub const OIL: Said =
    Said { quick: "Oil fill", quick_reason: "first pour, top-up, filter allowance and bottles" };
/// Torques.
pub const TORQUES: Said = Said {
    quick: "Torque wrench setting",
    quick_reason: "from the manual’s figure to the mark, through an adapter or straight",
};
/// Battery.
pub const BATTERY: Said = Said {
    quick: "Battery in storage",
    quick_reason: "charge on the ride date, and the day to recharge by",
};

/// Coolant.
pub const COOLANT: Said = Said {
    quick: "Coolant",
    quick_reason: "where it freezes, and what to drain and refill for another strength",
};
/// Final drive and the like.
pub const OTHER_OILS: Said =
    Said { quick: "Other oils", quick_reason: "fill, plug torque and age" };
/// Tires.
pub const TIRES: Said = Said {
    quick: "Tires",
    quick_reason: "what to set here for a colder or warmer ride, and how old they are",
};
/// Brake and clutch fluid.
pub const BRAKES: Said = Said {
    quick: "Brake and clutch fluid",
    quick_reason: "when it is due, and what mixes with it",
};
