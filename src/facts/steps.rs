//! Steps of either side by number and key: which are done stands in one entry for each side. Numbers and keys are frozen.

use super::Choice;
use crate::words::steps::{self as words, Said};

const fn step(code: u8, key: &'static str, said: &Said) -> Choice {
    Choice { code, key, label: said.title }
}

/// Steps of the lay-up side, in the order of their numbers; a new one comes last. The order of the work is the plan's.
pub static LAY_UP_STEPS: &[Choice] = &[
    step(1, "wash", &words::WASH),
    step(2, "coolant", &words::COOLANT),
    step(3, "fuel", &words::FUEL),
    step(4, "last-run", &words::LAST_RUN),
    step(5, "chain", &words::CHAIN),
    step(6, "oil", &words::OIL),
    step(7, "other-oils", &words::OTHER_OILS),
    step(8, "tap-and-bowls", &words::TAP_AND_BOWLS),
    step(9, "close", &words::CLOSE),
    step(10, "tires", &words::TIRES),
    step(11, "torques", &words::TORQUES),
    step(12, "brakes", &words::BRAKES),
    step(13, "controls", &words::CONTROLS),
    step(14, "corrosion", &words::CORROSION),
    step(15, "battery", &words::BATTERY),
    step(16, "weight", &words::WEIGHT),
    step(17, "where", &words::WHERE),
    step(18, "cover", &words::COVER),
];

/// Steps of the wake-up side, in the order of their numbers; a new one comes last.
pub static WAKE_UP_STEPS: &[Choice] = &[
    step(1, "uncover", &words::UNCOVER),
    step(2, "open", &words::OPEN),
    step(3, "fuel", &words::FUEL_AGAIN),
    step(4, "levels", &words::LEVELS),
    step(5, "battery", &words::BATTERY_AGAIN),
    step(6, "stands", &words::STANDS),
    step(7, "tires", &words::TIRES_AGAIN),
    step(8, "fasteners", &words::FASTENERS),
    step(9, "chain", &words::CHAIN_AGAIN),
    step(10, "papers", &words::PAPERS),
    step(11, "before-moving", &words::BEFORE_MOVING),
    step(12, "first-start", &words::FIRST_START),
    step(13, "first-ride", &words::FIRST_RIDE),
    step(14, "look-again", &words::LOOK_AGAIN),
    step(15, "due", &words::DUE),
];
