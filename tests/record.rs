//! Records as the browser's store holds them: a frozen form, and plain words for what cannot be read.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use proptest::prelude::*;
use serde::{Serialize, de::DeserializeOwned};
use std::fmt::Debug;
use torpor::entry::Entry;
use torpor::facts::Id;
use torpor::garage::{Bike, Entries, Garage, Season};
use torpor::storage::record::{self, PREFIX, Record, SCHEMA, Unreadable};

/// Frozen form: one record of each sort, as a store out there may hold it.
const BIKE: &str = "1.BwMBCUFsZGVyIDY0MACAvNnynjQKBDE2LDUQgbzZ8p404NQDATfJBQFHDDI1ICgyMuKAkzI2KQEAAgJGCkhlYWRlciBudXQAAEcFMjItMjYBAgABCQEFAXjIAHRPSX8";
const SEASON: &str = "1.AAE8C05vdiAxNCAyMDI2AAPu8KQZ";
const GARAGE: &str = "1.____________AQFBAnVzAAACAVQBMQEAAA1Cli4";

const DAMAGED: &str = "is damaged; it is set aside unchanged";

fn entry(text: &str, unit: u8, edited: u64) -> Entry {
    Entry { text: text.into(), unit, edited }
}

fn bike() -> Bike {
    Bike {
        entries: [
            (Id(1), entry("Alder 640", 0, 1_795_000_000_000)),
            (Id(10), entry("16,5", 16, 1_795_000_000_001)),
            // Neither fact nor unit is known to this page.
            (Id(60_000), entry("7", 201, 5)),
        ]
        .into(),
        scratch: [(Id(71), entry("25 (22–26)", 1, 0))].into(),
        fasteners: vec![
            [(Id(70), entry("Header nut", 0, 0)), (Id(71), entry("22-26", 1, 2))].into(),
            [].into(),
        ],
        others: vec![(9, [(Id(5), entry("x", 200, 0))].into())],
    }
}

fn season() -> Season {
    Season { entries: [(Id(60), entry("Nov 14 2026", 0, 3))].into() }
}

fn garage() -> Garage {
    Garage {
        entries: [(Id(65), entry("us", 0, 0))].into(),
        wrenches: vec![[(Id(84), entry("1", 1, 0))].into(), [].into()],
    }
}

/// A record around bytes, made by other hands: checksum by the `crc32fast` crate, text by the `base64` crate.
fn around(wire: &[u8]) -> String {
    let mut bytes = wire.to_vec();
    bytes.extend_from_slice(&crc32fast::hash(wire).to_le_bytes());
    format!("1.{}", URL_SAFE_NO_PAD.encode(bytes))
}

/// The bytes inside a record, by the same other hands; its checksum has to fit.
fn bytes_of(text: &str) -> Vec<u8> {
    let mut bytes = URL_SAFE_NO_PAD.decode(text.strip_prefix("1.").unwrap()).unwrap();
    let sum = bytes.split_off(bytes.len() - 4);
    assert_eq!(crc32fast::hash(&bytes).to_le_bytes(), sum.as_slice());
    bytes
}

/// Reads bytes by hand. Source: postcard's specification of its wire: unsigned numbers wider than a byte are varints of
/// seven bits each, the least first; a byte is itself; text, list and map begin with their count as a varint; a struct
/// or tuple is its fields in their order, without names.
struct Hand(Vec<u8>);

impl Hand {
    fn byte(&mut self) -> u8 {
        self.0.remove(0)
    }
    fn number(&mut self) -> u64 {
        let mut number = 0;
        for place in 0.. {
            let byte = u64::from(self.byte());
            number += (byte % 128) << (7 * place);
            if byte < 128 {
                break;
            }
        }
        number
    }
    fn text(&mut self) -> String {
        let length = self.number() as usize;
        String::from_utf8(self.0.drain(..length).collect()).unwrap()
    }
    fn entries(&mut self) -> Entries {
        let count = self.number();
        let mut one = || {
            let id = Id(self.number().try_into().unwrap());
            (id, Entry { text: self.text(), unit: self.byte(), edited: self.number() })
        };
        (0..count).map(|_| one()).collect()
    }
    fn lists(&mut self) -> Vec<Entries> {
        let count = self.number();
        (0..count).map(|_| self.entries()).collect()
    }
}

#[track_caller]
fn frozen<T: Serialize + DeserializeOwned + PartialEq + Debug>(
    golden: &str,
    revision: u64,
    kept: T,
) {
    assert_eq!(record::written(&kept, revision).unwrap(), golden);
    assert_eq!(record::read(golden), Ok(Record { revision, kept }));
}

/// Frozen form.
#[test]
fn records_are_frozen() {
    frozen(BIKE, 7, bike());
    frozen(SEASON, 0, season());
    frozen(GARAGE, u64::MAX, garage());
    assert_eq!((SCHEMA, PREFIX), (1, "torpor."));
}

/// Source: the frozen texts read by hand as [`Hand`] says, under other hands' base64 and checksum.
#[test]
fn every_field_by_hand() {
    let mut hand = Hand(bytes_of(BIKE));
    assert_eq!(hand.number(), 7, "revision");
    let (entries, scratch, fasteners) = (hand.entries(), hand.entries(), hand.lists());
    let others = (0..hand.number()).map(|_| (hand.number(), hand.entries())).collect();
    assert_eq!(Bike { entries, scratch, fasteners, others }, bike());
    assert!(hand.0.is_empty());

    let mut hand = Hand(bytes_of(SEASON));
    assert_eq!(hand.number(), 0, "revision");
    assert_eq!(Season { entries: hand.entries() }, season());
    assert!(hand.0.is_empty());

    let mut hand = Hand(bytes_of(GARAGE));
    assert_eq!(hand.number(), u64::MAX, "revision");
    assert_eq!(Garage { entries: hand.entries(), wrenches: hand.lists() }, garage());
    assert!(hand.0.is_empty());
}

/// The text and its unit are the truth: what is stored is what was typed, letter for letter; and a fact, a unit or a
/// group that this page does not know is passed on.
#[test]
fn as_typed_and_what_is_not_known_survives() {
    let Record { revision, kept } = record::read::<Bike>(BIKE).unwrap();
    assert_eq!(kept.entries[&Id(10)].text, "16,5", "never rewritten as 16.5");
    assert_eq!(kept.fasteners[0][&Id(71)].text, "22-26");
    let again: Record<Bike> = record::read(&record::written(&kept, revision + 1).unwrap()).unwrap();
    assert_eq!(again.kept.entries[&Id(60_000)], entry("7", 201, 5));
    assert_eq!(again.kept.others[0].1[&Id(5)], entry("x", 200, 0));
    assert_eq!(again.revision, 8);
}

/// A newer page's record is left alone, whatever it looks like inside.
#[test]
fn a_newer_schema_is_said() {
    for text in ["2.", "2.AAAA", "2.{\"all\":\"different\"}", &BIKE.replacen('1', "2", 1)] {
        let why = record::read::<Bike>(text).unwrap_err();
        assert_eq!(why, Unreadable::Newer(2), "{text}");
        assert_eq!(
            why.to_string(),
            "was written by a newer Torpor (form 2, this page knows 1) and is left as it is: reload the page"
        );
    }
    assert_eq!(record::read::<Bike>("4294967295.x"), Err(Unreadable::Newer(u32::MAX)));
}

#[track_caller]
fn damaged<T: DeserializeOwned + PartialEq + Debug>(text: &str) {
    let why = record::read::<T>(text).unwrap_err();
    assert_eq!((why, why.to_string().as_str()), (Unreadable::Damaged, DAMAGED));
}

/// What is damaged is said, in words that end as the sentence does.
#[test]
fn damage_is_said() {
    for text in [
        "",
        " ",
        ".",
        "1",
        "1.",
        "1.A",
        "1.AAAA",
        "1.AAAAAA",
        "1.AAAAAAA",
        "0.AAAAAAA",
        "-1.AAAAAAA",
        "+1.AAAAAAA",
        "4294967296.",
        "x.AAAAAAA",
        "16",
        "null",
        "<html>",
        "\u{feff}1.AAAAAAA",
        "1.漢字漢字",
        r#"{"schema":1,"revision":7,"kept":{"entries":{}}}"#,
        r#"{"schema":1.5}"#,
        &format!(" {BIKE}"),
        &format!("{BIKE}\n"),
        &format!("{BIKE}="),
        &BIKE.replacen('1', "0", 1),
        &BIKE.replacen('.', ":", 1),
    ] {
        damaged::<Bike>(text);
    }
}

/// Under a checksum that fits, the inside has to be whole, with nothing behind it: another sort's record is no bike.
#[test]
fn what_is_inside_is_whole() {
    let bytes = bytes_of(BIKE);
    for end in 0..bytes.len() {
        damaged::<Bike>(&around(&bytes[..end]));
    }
    damaged::<Bike>(&around(&[bytes.as_slice(), &[0]].concat()));
    damaged::<Season>(BIKE);
    damaged::<Bike>(SEASON);
    for wire in [
        // A list, a text and a number without end; a text that is none; an id over 65,535.
        [vec![0], vec![0xff; 9], vec![1]].concat(),
        [vec![0, 1, 1], vec![0xff; 9], vec![1]].concat(),
        vec![0xff; 64],
        vec![0, 1, 1, 2, 0xc3, 0x28, 0, 0, 0, 0, 0],
        vec![0, 1, 0xff, 0xff, 0x7f, 0, 0, 0, 0, 0, 0],
    ] {
        damaged::<Bike>(&around(&wire));
    }
    assert_eq!(record::read(&around(&[0; 5])), Ok(Record { revision: 0, kept: Bike::default() }));
}

/// A record cut off anywhere is damaged, never half a bike.
#[test]
fn cut_off_at_every_letter() {
    for end in 0..BIKE.len() {
        damaged::<Bike>(&BIKE[..end]);
    }
}

/// Source: a CRC-32 finds every single wrong bit (Koopman, CRC selection tables).
#[test]
fn every_single_bit_counts() {
    for at in 0..BIKE.len() {
        for bit in 0..7 {
            let mut bytes = BIKE.as_bytes().to_vec();
            bytes[at] ^= 1 << bit;
            let bent = String::from_utf8(bytes).unwrap();
            match record::read::<Bike>(&bent).unwrap_err() {
                Unreadable::Newer(schema) => {
                    assert_eq!(at, 0, "{bent}");
                    assert!([3, 5, 9].contains(&schema), "{bent}");
                }
                Unreadable::Damaged => {}
            }
        }
    }
    let bytes = bytes_of(BIKE);
    let all = [bytes.as_slice(), &crc32fast::hash(&bytes).to_le_bytes()].concat();
    for at in 0..all.len() {
        for bit in 0..8 {
            let mut bent = all.clone();
            bent[at] ^= 1 << bit;
            damaged::<Bike>(&format!("1.{}", URL_SAFE_NO_PAD.encode(bent)));
        }
    }
}

/// Ten megabytes of nothing, and of a count that no store holds.
#[test]
fn ten_megabytes() {
    let letters = "A".repeat(10_000_000);
    damaged::<Bike>(&letters);
    damaged::<Bike>(&format!("1.{letters}"));
    damaged::<Bike>(&format!("{letters}.1"));
    damaged::<Bike>(&format!("{}1.A", "1".repeat(10_000_000)));
    damaged::<Bike>(&around(&[vec![0xff; 7], vec![1; 7_500_000]].concat()));
}

fn list() -> impl Strategy<Value = Entries> {
    let entry = (any::<String>(), any::<u8>(), any::<u64>())
        .prop_map(|(text, unit, edited)| Entry { text, unit, edited });
    proptest::collection::btree_map(any::<u16>().prop_map(Id), entry, 0..6)
        .prop_map(|it| it.into_iter().collect())
}

fn lists() -> impl Strategy<Value = Vec<Entries>> {
    proptest::collection::vec(list(), 0..4)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_kept_comes_back(
        entries in list(),
        scratch in list(),
        lists in lists(),
        others in proptest::collection::vec((any::<u64>(), list()), 0..3),
        revision in any::<u64>(),
    ) {
        let garage = Garage { entries: scratch.clone(), wrenches: lists.clone() };
        let season = Season { entries: entries.clone() };
        let bike = Bike { entries, scratch, fasteners: lists, others };
        let text = record::written(&bike, revision).unwrap();
        prop_assert_eq!(&around(&bytes_of(&text)), &text);
        prop_assert_eq!(record::read(&text), Ok(Record { revision, kept: bike }));
        let text = record::written(&season, revision).unwrap();
        prop_assert_eq!(record::read(&text), Ok(Record { revision, kept: season }));
        let text = record::written(&garage, revision).unwrap();
        prop_assert_eq!(record::read(&text), Ok(Record { revision, kept: garage }));
    }
}
