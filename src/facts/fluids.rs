//! Choices about oil and fuel.

use super::table::choices;
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

choices! {
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
