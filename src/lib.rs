//! Torpor turns a motorcycle's service figures into what to set, pour, dose and do when it is laid up for the season.
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic))]

pub mod units;
pub mod working;

pub mod season;

pub mod battery;
pub mod fuel;
pub mod oil;
pub mod torque;
