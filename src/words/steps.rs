//! What each step of the sheet says: what is done, why it is done now, how.

use super::cautions::VAPOR;

/// A step's words.
#[derive(Debug, PartialEq)]
pub struct Said {
    /// What is done.
    pub title: &'static str,
    /// Why now.
    pub reason: &'static str,
    /// How, one sentence after another; of a step with a calculator, what its figures leave unsaid.
    pub how: &'static [&'static str],
}

macro_rules! steps {
    ($($name:ident: $title:literal, $reason:literal, [$($how:expr),*];)*) => {
        $(#[doc = $title] pub const $name: Said = Said { title: $title, reason: $reason, how: &[$($how),*] };)*
    };
}
steps! {
    WASH: "Wash and dry", "dirt and salt hold water against metal and paint all winter", [
        "Bike cold, mild soap, a soft hose: no strong jet at bearings, seals, switches or the radiator.",
        "Dry it; the last run dries what the cloth does not reach."
    ];
    COOLANT: "Coolant", "read cold; a refill needs the last run to mix it and bleed the circuit", [];
    FUEL: "Fill up and stabilize", "before the last run, so that treated fuel reaches the engine", [];
    LAST_RUN: "Last run", "draws treated fuel through and warms the oil for the drain", [];
    CHAIN: "Chain", "while it is warm from the run, engine off", [
        "Turn the wheel by hand, never with the engine: it takes fingers off.",
        "Clean it with what its maker allows, wipe it dry, lubricate it."
    ];
    OIL: "Oil", "while it is warm: drained oil takes the season’s acids and water with it", [
        "New washer, plug and filter tight (Torques), warm as it is, before any oil goes in."
    ];
    OTHER_OILS: "Other oils", "final drive and gearbox drain better while warm from the run", [];
    TAP_AND_BOWLS: "Fuel tap and bowls", "after the level run, which would fill the bowls again; engine and pipe cold", [
        VAPOR,
        "Tap off, where it is turned by hand.",
        "Bowls drained into a can, ignition off; or left full of treated fuel, with none drained."
    ];
    CLOSE: "Close exhaust and intake", "mice nest in both; after every run, pipe cold", [
        "A dry cloth or a plug in a bright color, and a tag on the key: it comes out before the first start."
    ];
    TIRES: "Tires", "on a cold bike: a warm tire reads too high", [];
    TORQUES: "Torques", "on a cold bike, with the wrench and the adapter in hand", [];
    BRAKES: "Brake and clutch fluid", "old fluid holds water, which rusts the calipers while it stands", [];
    CONTROLS: "Cables, levers, stand", "dry pivots rust and stick by spring", [
        "Oil or grease as the manual has it; none on discs, pads, grips, pegs or tires."
    ];
    CORROSION: "Guard against rust", "bare metal, clean and dry", [
        "A thin film on bare metal and fork tubes; none on brakes, tires, seat, rubber or the exhaust."
    ];
    BATTERY: "Battery", "after the last start; what it will hold in spring, and when to look", [];
    WEIGHT: "Weight off the tires", "a tire that stands in one place all winter goes flat there", [
        "On stands made for it, on firm ground, secured from tipping; else roll it a quarter turn each month."
    ];
    WHERE: "Where things lie", "keys, bolts, battery: in spring nobody remembers", [
        "Take pictures of what you took apart, and write down where the parts are."
    ];
    COVER: "Cover", "last, bike cold and dry", [
        "One that breathes; never over a hot exhaust."
    ];

    UNCOVER: "Cover away", "look under the bike before it is moved", [
        "Drops on the floor, nests, gnawed wires and hoses."
    ];
    OPEN: "Open exhaust and intake", "before the key is touched: what was put in comes out, what moved in too", [
        "Take out every plug and cloth. Look for nests in the pipe, the airbox and under the seat, whether or not something was put in."
    ];
    FUEL_AGAIN: "Fuel", "old fuel starts badly and gums up what it runs through", [
        VAPOR,
        "Tap on, where it is turned by hand; wait, and look for drops.",
        "Fuel that smells of varnish, or is over a year old, is drained, not burned. Look for water at the lowest point, in a bowl or a glass."
    ];
    LEVELS: "Levels", "oil, coolant, brake and clutch fluid at their marks before it runs", [
        "As the manual has it, bike level and cold where it says so. Something is missing: find out where it went."
    ];
    BATTERY_AGAIN: "Battery, measured", "what it reads tells whether it lost what was foretold, or more", [
        "At rest, before any charger; off its maintainer for a night. Then connect it in the manual’s order: negative lead last."
    ];
    STANDS: "Off the stands", "with a second pair of hands", [
        "Side stand out first; no weight on it before it is locked."
    ];
    TIRES_AGAIN: "Tires, set", "air is lost over winter, and storage pressure is no riding pressure", [
        "Cracks, bulges, flat spots: not ridden."
    ];
    FASTENERS: "Fasteners by mark and eye", "axles, brakes, handlebar, exhaust", [
        "Paint marks in line, nothing loose, nothing missing. Clicking a tight bolt proves nothing.",
        "Never turn back a bolt with thread-lock or a crush washer, nor one that is stretched when tightened."
    ];
    CHAIN_AGAIN: "Chain slack and alignment", "rust and winter make tight spots", [
        "Measured where it is tightest, as the manual has it; marks alike on both sides, axle nut as listed."
    ];
    PAPERS: "Papers", "inspection, insurance and registration, before the ride date", [
        "Look at their dates."
    ];
    BEFORE_MOVING: "Before it moves", "brakes first", [
        "Pump the brake until the lever is firm, front and rear; the wheels turn free when it is let go.",
        "Clutch frees, throttle snaps back by itself at every lock of the handlebar, lights and horn work."
    ];
    DUE: "Due by now", "what the manual’s intervals ask for, by the logbook", [
        "What is past is done before the ride, or planned with a day: brakes, tires and chain are not put off."
    ];
    FIRST_START: "First start", "outdoors, once its safety lines are done", [
        "Outdoors: carbon monoxide kills. No throttle until the oil light is out; stop where it stays on.",
        "Look for drops of fuel, oil and coolant; then ride, or switch off: it must not idle."
    ];
    FIRST_RIDE: "First ride, short", "once all of the above is done", [
        "Some minutes near home, brakes tried at walking pace first."
    ];
    LOOK_AGAIN: "Look again", "after the first ride", [
        "Leaks, oil level, chain slack; tire pressure on the next cold morning; lights of the dashboard out."
    ];
}

/// A step that waits for others.
pub fn waits_for(titles: &str) -> String {
    format!("Waits for: {titles}.")
}
