//! Sentences of the fuel line and of the last run: levels, doses, age, water, tap.

use crate::entry::text::joined;
use crate::facts::{Bowls, Tap};

/// Kitchen measures: "3 tbsp + 1 ¼ tsp".
pub fn spoons((tablespoons, quarters): (u32, u32)) -> String {
    let mut words = String::new();
    if tablespoons > 0 {
        words.push_str(&tablespoons.to_string());
        words.push_str(" tbsp");
    }
    if quarters > 0 || tablespoons == 0 {
        if tablespoons > 0 {
            words.push_str(" + ");
        }
        let (whole, part) = (quarters / 4, quarters % 4);
        if whole > 0 || part == 0 {
            words.push_str(&whole.to_string());
        }
        words.push_str(["", "¼", "½", "¾"][part as usize]);
        words.push_str(" tsp");
    }
    words
}
/// A dose in several measures.
pub fn measured_as(first: &str, second: &str, spoons: &str) -> String {
    joined(&[first, " · ", second, " · ", spoons], "")
}
/// Refusal: a bare fraction of what may be a share or an amount.
pub const HALF_OF_WHAT: &str =
    "a fraction of the tank or of the unit? Write 50 % for half of the tank, or 0.5 with the unit";
/// Warning: ounces or gallons of no country.
pub fn which_measures(us: &str, imperial: &str) -> String {
    joined(
        &[
            "Ounces and gallons are not of one size: by US measures it is ",
            us,
            ", by British ones ",
            imperial,
            ". Say whose the label’s are.",
        ],
        "",
    )
}

/// Warning.
pub const RICH_LABEL: &str =
    "Labels mostly say 1:200 to 1:1300 (common practice, no source): read this one again.";
/// Beside a dose of nothing.
pub const ALL_TREATED: &str = "all of it is treated already";
/// Instead of a dose.
pub const DRAIN_INSTEAD: &str = "none: drain the tank";
/// Warning.
pub const TANK_COUNTS: &str = "The fuel in the tank counts, not the distance since it was full.";

/// Refusal: a level that grows over the neck.
pub fn would_run_out(over: &str, most: &str) -> String {
    joined(
        &[
            "fuel would grow over the neck as it warms, and up to ",
            over,
            " would run out: fill to at most ",
            most,
        ],
        "",
    )
}
/// Warning: the same of what is in the tank already.
pub fn will_run_out(over: &str, most: &str) -> String {
    joined(
        &[
            "The tank is so full that up to ",
            over,
            " would run out as the fuel warms: take it down to ",
            most,
            " or less, outdoors and with a cold engine.",
        ],
        "",
    )
}
/// Warning: the usual level is too much.
pub fn filled_lower(most: &str) -> String {
    joined(&["The usual 95 % would run over as it warms: it is filled to ", most, " instead."], "")
}
/// Warning: the table of growth has no ethanol.
pub const GROWTH_OF_E10: &str = "That level is for gasoline without ethanol; how far E10 is off was not found: leave a little more room.";

/// Warning.
pub const UNTREATED: &str = "Untreated fuel keeps one to three months in a tank (common practice, no source), and this stands longer: treat it while it is fresh, or drain it.";
/// Warning.
pub const STALE: &str = "The fuel in the tank is over a month old before it is treated: stabilizer cannot mend it. Ride it up or drain it, and treat fresh fuel.";

/// What filling is good for.
pub const WHY_FULL: &str = "less air over the fuel: less evaporates, and steel under fuel does not rust. It does not keep water out; drain a little from bowl or tank in spring";

/// Beside the last run, bowls left full.
pub const RIDE_LEAVE_FULL: &str =
    "on the road, until treated fuel fills the bowls; none of them is drained";
/// What to do with tap and bowls.
pub fn tap_and_bowls(tap: Option<Tap>, bowls: Option<Bowls>) -> String {
    let tap = match tap {
        Some(Tap::Manual) => "tap off",
        Some(Tap::Vacuum) => "tap on ON, never on PRI: it shuts as the engine stops",
        Some(Tap::None) => "ignition off, so that the pump is still",
        None => "fuel shut off",
    };
    let bowls = match bowls {
        Some(Bowls::Full) => {
            ", bowls left full of treated fuel, all of them; up to twelve months, then drain"
        }
        Some(Bowls::Drained) => ", then every bowl drained into a can, engine cold",
        None => {
            ", then every bowl drained, or all of them left full of treated fuel: never some of each"
        }
    };
    joined(&["after the oil’s level is right: ", tap, bowls], "")
}
