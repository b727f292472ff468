//! Cautions, each beside its line. The bike's manual and local codes decide.

/// At the foot of every page.
pub const MANUAL_DECIDES: &str = "The bike’s manual and local codes decide; where in doubt, a licensed mechanic. An estimate is never a specification.";

/// Wherever fuel is open.
pub const VAPOR: &str = "Fuel vapor burns: outdoors or wide open doors, engine cold, no flame, no heater, charger or lamp near.";
/// Fuel line.
pub const FUEL: &[&str] = &[
    VAPOR,
    "Never above the bottom of the filler neck: fuel needs room to grow when it warms.",
    "Stabilizer keeps fresh fuel; it cannot mend stale fuel.",
];
const OUTDOORS: &str =
    "Ride outdoors. Never run an engine in a closed room: carbon monoxide kills.";
const HOT: &str = "Exhaust and oil are hot afterwards.";
/// Last run.
pub const LAST_RUN: &[&str] = &[OUTDOORS, HOT];
/// Last run, bowls drained.
pub const LAST_RUN_BOWLS: &[&str] = &[
    OUTDOORS,
    HOT,
    "Bowls are drained into a can, ignition off, tap off where it can be turned.",
    VAPOR,
];
/// Oil.
pub const OIL: &[&str] = &[
    "Hot oil burns the skin: gloves, and let it settle for some minutes. The bike stands secured and level.",
    "Overfilling harms: it foams and is blown into the air intake. The level on the glass or stick decides, not the sum.",
    "Run the engine outdoors for the level check. Used oil and filter go where local rules say.",
];
/// Torque.
pub const TORQUE: &[&str] = &[
    "Pull square to the handle, hand at mid-grip, slowly, until the first click. The manual’s figure holds for the thread as the manual describes it: do not oil a thread that it leaves dry.",
    "Cold engine and header, bike secured on its stand. No pipe over the handle.",
];
/// A setting that was wrong.
pub const AFTER_A_MISTAKE: &[&str] = &[
    "A bolt that was overtightened may have stretched or cracked, and its thread in aluminum may be torn: the manual’s limit decides, in doubt a new bolt and a licensed mechanic.",
];
/// Torque, estimated.
pub const ESTIMATE: &[&str] = &[
    "Look in the manual first: for its figure, then in its general table for this thread. This comes after both.",
    "Never for axles, brakes, steering, suspension, wheels or the inside of an engine: without the manual’s figure leave them to a mechanic who has it.",
    "It says how much the bolt may get, not what the joint wants: makers’ tables often ask for less. For whole bolts with a plain hexagon head; the drag of a self-locking nut is not in it.",
];
/// Battery.
pub const BATTERY: &[&str] = &[
    "Charging gives off hydrogen, acid burns: no flame or spark, eyes protected, air moving.",
    "A charging voltage holds for the temperature it is charged at, and never over what the battery’s label allows.",
    "Never charge a frozen battery; one with a bulged case is scrap. LiFePO4 is not charged below 0 °C (32 °F).",
    "Key-off draw: meter in series at the negative lead, 10 A range first; never turn the key or start through the meter, and wait until the bike sleeps.",
    "Negative lead off first, on last, and back in the manual’s order. With an electric seat, cap or keyless lock or an alarm, read the manual before you take it off.",
];
/// Coolant.
pub const COOLANT: &[&str] = &[
    "Never open the cap of a hot radiator: it scalds. Engine cold, cap turned slowly.",
    "Coolant is poisonous, and sweet to animals and children: catch it, wipe it up, lock it away; local rules say where it goes.",
    "Distilled water only. Do not mix kinds of inhibitor; the manual names the right one. Bleed the circuit, bring the reserve tank to the same strength, look at the level again.",
];
/// Other oils.
pub const OTHER_OILS: &[&str] = &[
    "Bike secured and level; oil and housing are hot after a run. The level plug or stick decides, not the sum.",
    "A fork’s cap is under spring and air pressure: front wheel lifted, air let out first. A two-stroke’s tank never runs empty.",
];
/// Tires.
pub const TIRES: &[&str] = &[
    "Lift the bike on a stand made for it, on firm level ground, and secure it from tipping.",
    "Never over the sidewall’s maximum. A tire that lost its air, cracked or bulged is not ridden. The manual’s figure decides.",
];
/// Brake and clutch fluid.
pub const BRAKES: &[&str] = &[
    "Brakes stop you: where in doubt leave them to a licensed mechanic. Pump the lever until it is firm before the bike moves.",
    "Never mix mineral oil and DOT fluid, nor DOT 5 silicone with any other: seals fail, and brakes with them.",
    "Fluid strips paint and hurts eyes: gloves, glasses, rags, water at hand. Only from a sealed bottle.",
];
