//! The link: its frozen form, what leaves and what does not, and what it does with anything hostile.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod compare;
mod frozen;
mod hostile;
#[path = "../hostile_inputs/mod.rs"]
mod hostile_inputs;
mod round;

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use chrono::NaiveDate;
use torpor::entry::Entry;
use torpor::facts::{self, Id};
use torpor::garage::{Entries, Kept, example};
use torpor::storage::link::{self, LinkError, Parcel};
use torpor::units::UnitSet;

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

fn autumn() -> NaiveDate {
    day(2026, 11, 25)
}

fn parcel(kept: Kept) -> Parcel {
    Parcel { made: autumn(), kept }
}

/// The link, which is not too long.
#[track_caller]
fn written(parcel: &Parcel, with_names: bool) -> String {
    link::written(parcel, with_names).unwrap()
}

/// A fragment around bytes, made by other hands: checksum by the `crc32fast` crate, text by the `base64` crate.
fn around(wire: &[u8]) -> String {
    let mut bytes = wire.to_vec();
    bytes.extend_from_slice(&crc32fast::hash(wire).to_le_bytes());
    format!("#1.{}", URL_SAFE_NO_PAD.encode(bytes))
}

/// The bytes inside a fragment, by the same other hands; its checksum has to fit.
fn bytes_of(fragment: &str) -> Vec<u8> {
    let mut bytes = URL_SAFE_NO_PAD.decode(fragment.strip_prefix("#1.").unwrap()).unwrap();
    let sum = bytes.split_off(bytes.len() - 4);
    assert_eq!(crc32fast::hash(&bytes).to_le_bytes(), sum.as_slice());
    bytes
}

/// A wire written by hand, as the form is described: no code of the library's own.
#[derive(Default, Clone)]
struct Wire(Vec<u8>);

impl Wire {
    /// LEB128.
    fn whole(mut self, mut number: u64) -> Self {
        loop {
            let low = (number % 128) as u8;
            number /= 128;
            self.0.push(if number > 0 { low + 128 } else { low });
            if number == 0 {
                return self;
            }
        }
    }
    /// Zigzag: 0, −1, 1, −2 … become 0, 1, 2, 3 ….
    fn signed(self, number: i64) -> Self {
        self.whole(if number < 0 { (-(number + 1)) as u64 * 2 + 1 } else { number as u64 * 2 })
    }
    /// The day that golden links are made on: 2,520 days after 2020-01-01.
    fn made() -> Self {
        Self::default().signed(2520)
    }
    fn head(self, step: u64, tag: u64) -> Self {
        self.whole(step * 8 + tag)
    }
    fn text(self, text: &str) -> Self {
        let mut it = self.whole(text.len() as u64 * 2);
        it.0.extend_from_slice(text.as_bytes());
        it
    }
    /// A text of so many characters, four bits each: "0123456789 -–.()" are 0 to f.
    fn packed(self, count: u64, fours: &[u8]) -> Self {
        let mut it = self.whole(count * 2 + 1);
        it.0.extend_from_slice(fours);
        it
    }
    fn fragment(&self) -> String {
        around(&self.0)
    }
}

fn entries(list: &[(Id, &str, u8)]) -> Entries {
    list.iter().map(|(id, text, unit)| (*id, Entry::new(*text, *unit))).collect()
}

/// An invented bike with a dozen torques, its season, shelf and wrench, as its owner would have filled it in.
fn dozen() -> Kept {
    let mut kept = example(autumn(), UnitSet::Metric);
    let (fastener, torque, n_m) =
        (facts::FASTENER_NAME.id(), facts::TORQUE.id(), torpor::units::NEWTON_METER.code);
    kept.bike.scratch = Entries::new();
    for (name, figure, adapter) in [
        ("Rear axle nut", "100", ""),
        ("Front axle nut", "65", ""),
        ("Axle pinch bolt", "22–26", ""),
        ("Drain plug", "25", ""),
        ("Oil filter", "17.5", "right_angle"),
        ("Spark plug", "12 (11–14)", ""),
        ("Header nut", "25 (22–26)", "in_line"),
        ("Caliper bolt", "30", ""),
        ("Triple clamp bolt", "18–22", ""),
        ("Steering stem nut", "105", "pointing_back"),
        ("Handlebar clamp bolt", "22", ""),
        ("Swingarm pivot nut", "85–95", ""),
    ] {
        let mut row = entries(&[(fastener, name, 0), (torque, figure, n_m)]);
        row.insert(
            facts::ADAPTER.id(),
            Entry::new(if adapter.is_empty() { "none" } else { adapter }, 0),
        );
        if matches!(adapter, "in_line" | "pointing_back") {
            row.insert(
                facts::ADAPTER_LENGTH.id(),
                Entry::new("40", torpor::units::MILLIMETER.code),
            );
        }
        kept.bike.fasteners.push(row);
    }
    kept
}
