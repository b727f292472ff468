//! Choices about oil and fuel.

use super::choices::choices;
use super::{Choice, Chosen};
use crate::oil::Jaso;
use crate::words::choices as label;

/// Where the oil's level is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LevelRead {
    /// A window.
    Glass,
    /// A stick that only rests on its thread.
    StickRested,
    /// A stick that is screwed in.
    StickScrewed,
    /// Window or stick of a separate tank: a dry sump.
    OilTank,
}

/// How the bike stands while it is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stand {
    /// Held upright.
    Upright,
    /// On its center stand.
    Center,
    /// On its side stand.
    Side,
}

/// Whose ounces and gallons a label means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measures {
    /// American.
    Us,
    /// British.
    Imperial,
}

/// What is in the gasoline.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FuelType {
    /// A tenth of ethanol.
    E10,
    /// No ethanol.
    E0,
}

/// What shuts the fuel off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tap {
    /// Turned by hand.
    Manual,
    /// Opens by the engine's suction.
    Vacuum,
    /// A pump.
    None,
}

/// What becomes of the carburetor bowls over the season.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bowls {
    /// Drained.
    Drained,
    /// Left full of treated fuel.
    Full,
}

choices! {
    LABEL_MEASURES_OF: Measures {
        1 "us" US => Measures::Us,
        2 "imperial" IMPERIAL => Measures::Imperial,
    }
    FUEL_TYPES: FuelType {
        1 "e10" E10 => FuelType::E10,
        2 "e0" E0 => FuelType::E0,
    }
    TAPS: Tap {
        1 "manual" TAP_MANUAL => Tap::Manual,
        2 "vacuum" TAP_VACUUM => Tap::Vacuum,
        3 "none" TAP_NONE => Tap::None,
    }
    BOWLS_IN_STORAGE: Bowls {
        1 "drained" BOWLS_DRAINED => Bowls::Drained,
        2 "full" BOWLS_FULL => Bowls::Full,
    }
    LEVEL_READS_AT: LevelRead {
        1 "glass" GLASS => LevelRead::Glass,
        2 "stick_rested" STICK_RESTED => LevelRead::StickRested,
        3 "stick_screwed" STICK_SCREWED => LevelRead::StickScrewed,
        4 "oil_tank" OIL_TANK => LevelRead::OilTank,
    }
    STANDS: Stand {
        1 "upright" UPRIGHT => Stand::Upright,
        2 "center_stand" CENTER_STAND => Stand::Center,
        3 "side_stand" SIDE_STAND => Stand::Side,
    }
    YES_OR_NO: bool {
        1 "yes" YES => true,
        2 "no" NO => false,
    }
    WARM_OR_COLD: Warm {
        1 "warm" WARM => Warm(true),
        2 "cold" COLD => Warm(false),
    }
    JASO_CLASSES: Jaso {
        1 "ma" MA => Jaso::Ma,
        2 "ma1" MA1 => Jaso::Ma1,
        3 "ma2" MA2 => Jaso::Ma2,
        4 "mb" MB => Jaso::Mb,
        5 "none" NONE_PRINTED => Jaso::None,
    }
}

/// Whether the engine has run before the level is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Warm(pub bool);
