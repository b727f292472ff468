//! Torpor turns a motorcycle's service figures into what to set, pour, dose and do when it is laid up for the season.
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic))]

pub mod digits;
pub mod entry;
mod maths;
pub mod source;
pub mod units;
pub mod words;
pub mod working;

pub mod facts;
pub mod garage;
pub mod logbook;
pub mod season;

pub mod battery;
pub mod brake;
pub mod coolant;
pub mod expansion;
pub mod fuel;
pub mod oil;
pub mod tire;
pub mod torque;

pub mod calendar;
pub mod drawing;
pub mod plan;
pub mod qr;
pub mod show;

pub mod storage;

#[cfg(feature = "page")]
pub mod view;
