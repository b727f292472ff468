//! The backup file: everything, there and back; of a damaged one what is whole; merged record by record.
//! An independent reader: serde_json for JSON (RFC 8259).
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod damage;
mod merge;
mod samples;
mod undo;

use chrono::NaiveDate;
use proptest::prelude::*;
use samples::*;
use serde_json::Value;
use torpor::entry::Entry;
use torpor::facts::{self, Id};
use torpor::garage::{Bike, Entries, Garage, Season};
use torpor::storage::backup::{self, Shape};
use torpor::storage::record;
use torpor::words::backup as words;

/// A file as one out there may be, made by another program of the frozen records in `tests/record.rs`, values by hand.
const FORM_1: &str = include_str!("../reference/backup/form-1.json");

fn frozen() -> Vec<(String, String)> {
    const BIKE: &str = "1.BwMBCUFsZGVyIDY0MACAvNnynjQKBDE2LDUQgbzZ8p404NQDATfJBQFHDDI1ICgyMuKAkzI2KQEAAgJGCkhlYWRlciBudXQAAEcFMjItMjYBAgABCQEFAXjIAHRPSX8";
    const SEASON: &str = "1.AAE8C05vdiAxNCAyMDI2AAPu8KQZ";
    const GARAGE: &str = "1.____________AQFBAnVzAAACAVQBMQEAAA1Cli4";
    const LEAF: &str = "1.BAICqgEKMjAyNi0xMS0xNAAAqwEDT2lsAAkBqwEFQ2hhaW4AANw3sOY";
    [
        ("bike.a1", BIKE),
        ("season.a1", SEASON),
        ("garage", GARAGE),
        ("removed.2026-11-20.season.b2", SEASON),
        ("log.a1.2", LEAF),
        ("calendar.a1", "1.AAAA"),
    ]
    .map(|(key, text)| (key.to_owned(), text.to_owned()))
    .into()
}

#[test]
fn form_1_is_opened_for_ever() {
    let file = backup::read(FORM_1);
    assert_eq!(file.wrong, Vec::<String>::new());
    assert_eq!(again(&stored(&file)), again(&frozen()));
}

#[test]
fn form_1_is_written_as_another_program_writes_it() {
    let day = NaiveDate::from_ymd_opt(2026, 11, 30).unwrap();
    let text = backup::written(&backup::found(&frozen()), day);
    let mut ours: Value = serde_json::from_str(&text).unwrap();
    let mut other: Value = serde_json::from_str(FORM_1).unwrap();
    for it in [&mut ours, &mut other] {
        assert!(it.as_object_mut().unwrap().remove("about").unwrap().is_string());
    }
    // Noughts behind the point aside, number by number and text by text.
    assert_eq!(plain(&ours), plain(&other));
}

fn plain(it: &Value) -> Value {
    match it {
        Value::Number(it) => {
            it.as_f64().filter(|it| *it < 1e18).map_or(it.to_string().into(), Value::from)
        }
        Value::Array(all) => all.iter().map(plain).collect(),
        Value::Object(all) => all.iter().map(|(name, it)| (name.clone(), plain(it))).collect(),
        other => other.clone(),
    }
}

#[test]
fn people_can_read_it() {
    let text = sample_text();
    for line in [
        r#""torpor_backup": 1,"#,
        r#""tank_volume": { "text": "15", "unit": "L", "value_L": 15, "edited": 1700000000000, "id": 10 }"#,
        r#"{ "text": "33 mpg", "unit": "L/100 km", "value_mpg_(US)": 33, "id": 18 }"#,
        r#""adapter": { "text": "in_line", "id": 72 }"#,
    ] {
        assert!(text.contains(line), "{line} in\n{text}");
    }
}

#[test]
fn by_hand_is_taken() {
    let text = r#"{"records": [
        {"lists": [{"facts": {"tank_volume": {"text": 15.5, "unit": "L"}, "consumption": {"text": 5, "unit": "L/100 km"}, "bike_name": {"text": "Rowan"},
         "future": {"text": "x", "id": 998}}}], "record": "bike.a1"}
    ], "torpor_backup": 1}"#;
    let file = backup::read(text);
    assert_eq!(file.wrong, Vec::<String>::new());
    let own = &file.records[0].held.entries;
    assert_eq!(own[&facts::TANK_VOLUME.id()], Entry::new("15.5", torpor::units::LITER.code));
    assert_eq!(own[&facts::CONSUMPTION.id()].text, "5");
    assert_eq!(own[&facts::BIKE_NAME.id()].text, "Rowan");
    assert_eq!(own[&Id(998)].text, "x");
}

/// A fact of a bike's, as somebody may have written it, and what is said of it.
fn by_hand(fact: &str) -> (Entry, Vec<String>) {
    let text = format!(
        r#"{{"torpor_backup": 1, "records": [{{"record": "bike.a1", "name": "Rowan", "lists": [{{"fastener": {{
        "fastener_name": {{"text": "Axle nut"}}, {fact}}}}}]}}]}}"#
    );
    let file = backup::read(&text);
    let own = &file.records[0].held.fasteners[0];
    (own.get(&facts::TORQUE.id()).cloned().unwrap_or_default(), file.wrong)
}

/// Nobody can know which of two is right: neither is taken, and both are asked for.
#[test]
fn a_text_and_a_value_that_differ_are_named_and_not_taken() {
    let said = |why: &str| vec![words::wrong_fact("Rowan", "Axle nut: torque", why)];
    for (fact, why) in [
        (r#""torque": {"text": "250", "unit": "N·m", "value_N·m": 25}"#, words::TWO_VALUES),
        (r#""torque": {"text": "18", "value_N·m": 24.4}"#, words::TWO_VALUES),
        (r#""torque": {"text": "18", "unit": "lbf·ft", "value_N·m": 24.4}"#, words::TWO_VALUES),
        (r#""torque": {"text": "abc", "unit": "N·m", "value_N·m": 25}"#, words::TWO_VALUES),
        (r#""torque": {"text": "25", "unit": "N·m", "value_N·m": "many"}"#, words::TWO_VALUES),
        (r#""torque": {"text": "25", "unit": "L", "value_N·m": 25}"#, words::TWO_VALUES),
        (r#""torque": {"text": ["25"]}"#, words::NO_FACT),
        (r#""torque": {"text": "25"}, "torque": {"text": "26"}"#, words::TWICE),
    ] {
        assert_eq!(by_hand(fact), (Entry::default(), said(why)), "{fact}");
    }
    let (entry, wrong) = by_hand(r#""torque": {"text": "25", "unit": "furlong", "value_N·m": 25}"#);
    assert_eq!(entry, Entry::default());
    let start = "Rowan, Axle nut: torque: “furlong” is not a unit for this: write N·m, ";
    assert!(wrong.len() == 1 && wrong[0].starts_with(start), "{wrong:?}");
    let n_m = torpor::units::NEWTON_METER.code;
    let lbf_ft = torpor::units::LBF_FT.code;
    for (fact, entry) in [
        (r#""torque": {"text": "26", "unit": "N·m", "value_N·m": 26}"#, Entry::new("26", n_m)),
        (r#""torque": {"text": "26", "unit": "N·m", "value_N·m": 26.00}"#, Entry::new("26", n_m)),
        (r#""torque": {"text": "26", "unit": "N·m"}"#, Entry::new("26", n_m)),
        (r#""torque": {"text": "18", "unit": "ft-lb"}"#, Entry::new("18", lbf_ft)),
        (
            r#""torque": {"text": "18 ft-lb", "unit": "N·m", "value_lbf·ft": 18}"#,
            Entry::new("18 ft-lb", n_m),
        ),
        (
            r#""torque": {"text": "25 (22–26)", "unit": "N·m", "value_N·m": 25}"#,
            Entry::new("25 (22–26)", n_m),
        ),
        // A text is never lost because its blank refuses it; the preview says that it does.
        (r#""torque": {"text": "abc", "unit": "N·m"}"#, Entry::new("abc", n_m)),
    ] {
        assert_eq!(by_hand(fact), (entry, vec![]), "{fact}");
    }
    for fact in [r#"{"text": "abc"}"#, r#"{"text": "15", "unit": "N·m"}"#] {
        let text = format!(
            r#"{{"torpor_backup": 1, "records": [{{"record": "bike.a1", "lists": [{{"facts": {{"tank_volume": {fact}}}}}]}}]}}"#
        );
        let part = torpor::storage::restore::part(&[], &backup::read(&text).records[0], 1);
        assert!(part.rows[0].refused.is_some(), "{fact}");
    }
}

/// A second list of facts adds to the first; one of another name is no fastener.
#[test]
fn lists_that_come_twice_or_are_misspelt_are_not_lost_in_silence() {
    let text = r#"{"torpor_backup": 1, "records": [{"record": "bike.a1", "name": "Rowan", "lists": [
        {"facts": {"tank_volume": {"text": "15"}, "bike_name": {"text": "Rowan"}}}, {"facts": {"consumption": {"text": "5"}, "tank_volume": {"text": "16"}}},
        {"fact": {"line_volume": {"text": "80"}}}, {"fastener": {"torque": {"text": "25"}}}]}]}"#;
    let file = backup::read(text);
    let held = &file.records[0].held;
    assert_eq!(held.entries[&facts::CONSUMPTION.id()].text, "5");
    assert_eq!(held.entries[&facts::BIKE_NAME.id()].text, "Rowan");
    assert_eq!(held.entries[&facts::TANK_VOLUME.id()], Entry::default());
    assert_eq!(held.fasteners.len(), 1);
    assert_eq!(
        file.wrong,
        [
            words::wrong_fact("Rowan", "facts: tank_volume", words::TWICE),
            words::wrong_fact("Rowan", "fact", words::NO_LIST)
        ]
    );
}

/// What the page takes when it is typed comes back as it was; what turns a text round is said.
#[test]
fn a_name_comes_back_as_it_was_typed() {
    for (text, wrong) in [("Ro\u{ad}wan \u{200b}2\u{feff} \u{e0041}", 0), ("Ro\u{202e}wan", 1)] {
        let bike = Bike {
            entries: [(facts::BIKE_NAME.id(), Entry::new(text, 0))].into(),
            ..Bike::default()
        };
        let kept = vec![("bike.a1".to_owned(), record::written(&bike, 1).unwrap())];
        let file = backup::read(&backup::written(&backup::found(&kept), NaiveDate::MIN));
        assert_eq!(file.wrong.len(), wrong);
        let plain = text.replace('\u{202e}', "");
        assert_eq!(file.records[0].held.entries[&facts::BIKE_NAME.id()].text, plain);
    }
}

/// In a file of UTF-8 one odd byte is one odd letter.
#[test]
fn one_bad_byte_bends_no_other_record() {
    let text = sample_text();
    let at = text.find("Header nut").unwrap();
    let mut bytes = text.clone().into_bytes();
    bytes[at] = 0xff;
    let file = backup::read(&torpor::storage::text::of_backup(&bytes));
    let mut all = backup::read(&text).records;
    all[0].held.fasteners[0].at(facts::FASTENER_NAME.id()).text = "ÿeader nut".into();
    assert_eq!((file.records, file.wrong), (all, vec![]));
    assert_eq!(file.made, NaiveDate::from_ymd_opt(2026, 11, 30));
}

/// Whatever a fact is, its unit is spelled so that it is found again, and what is meant goes beside it as JSON.
#[test]
fn every_unit_comes_back() {
    let codes = (0..=255u8).map(|code| (Id(u16::from(code) + 300), Entry::new("1", code)));
    let mut own: Entries = codes.collect();
    for about in facts::TABLE {
        for set in [torpor::units::UnitSet::Metric, torpor::units::UnitSet::Us] {
            let unit = about.unit_for(&Entry::default(), set).map_or(0, |it| it.code);
            own.insert(about.id, Entry::new("3", unit));
            round(&vec![(
                "season.x".into(),
                record::written(&Season { entries: own.clone() }, 1).unwrap(),
            )]);
        }
    }
}

#[track_caller]
fn round(kept: &Kept) {
    let text = backup::written(&backup::found(kept), NaiveDate::MIN);
    serde_json::from_str::<Value>(&text).unwrap();
    let file = backup::read(&text);
    assert_eq!(file.wrong, Vec::<String>::new());
    assert_eq!(again(&stored(&file)), again(kept));
}

/// Any text without what hides, line's ends and tabs among them.
fn texts() -> impl Strategy<Value = String> {
    prop_oneof![
        "[0-9]{1,3}([.,][0-9]{1,2})? ?(L|gal|N·m|ft-lb|°C|%)?",
        any::<String>().prop_map(|it| it.chars().filter(|it| !hides(*it)).collect()),
        Just("a\nb\t\"\\{\"record\": \"bike.x\"}".to_owned()),
    ]
}

fn entries() -> impl Strategy<Value = Entries> {
    let id = prop_oneof![1..200u16, 1..=u16::MAX].prop_map(Id);
    let entry = (texts(), any::<u8>(), prop_oneof![Just(0), any::<u64>()]);
    let entry = entry.prop_map(|(text, unit, edited)| Entry { text, unit, edited });
    prop::collection::vec((id, entry), 0..6).prop_map(|it| it.into_iter().collect())
}

prop_compose! {
    fn bikes()(
        entries in entries(), scratch in entries(), fasteners in prop::collection::vec(entries(), 0..4),
        others in prop::collection::vec((5..=u64::MAX, entries()), 0..3),
    ) -> Bike {
        Bike { entries, scratch, fasteners, others }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_kept_comes_back(
        bike in bikes(), season in entries(), garage in entries(), wrenches in prop::collection::vec(entries(), 0..3),
        leaf in prop::collection::vec(entries(), 1..5), revision in any::<u64>(), text in texts(),
    ) {
        let garage = Garage { entries: garage, wrenches };
        let season = Season { entries: season };
        round(&vec![
            ("bike.9f-_A".into(), record::written(&bike, revision).unwrap()),
            ("removed.2026-02-28.bike.x".into(), record::written(&bike, 1).unwrap()),
            ("season.9f".into(), record::written(&season, revision).unwrap()),
            ("past.9f.0".into(), record::written(&season, 0).unwrap()),
            ("garage".into(), record::written(&garage, revision).unwrap()),
            ("log.9f.17".into(), record::written(&leaf, revision).unwrap()),
            ("log.9f.3".into(), record::written(&leaf, 1).unwrap()),
            ("calendar.9f".into(), text.clone()),
            ("damaged.1700000000000.bike.q".into(), text),
        ]);
    }
}

#[test]
fn only_keys_of_ours() {
    for key in [
        "",
        "backup",
        "probe",
        "bike",
        "bike.",
        "bike.a.b",
        "bike.a b",
        "bike.a/b",
        "season.a.b",
        "garage.x",
        "open",
        "bench.a.layup",
        "log.",
        "torpor.bike.a",
        "other.bike.a",
        "removed.bike.a",
        "removed.2026-13-01.bike.a",
        "removed.2026-11-01.open",
        "removed.2026-11-01.removed.2026-11-01.backup",
        "bike.é",
        "__proto__",
        "BIKE.a",
        " bike.a",
    ] {
        assert_eq!(Shape::of(key), None, "{key}");
    }
    assert_eq!(Shape::of(&format!("bike.{}", "a".repeat(300))), None);
    for key in
        ["bike.a1", "season.a1", "garage", "log.a1", "log.a1.0", "past.a1.4095", "calendar.a"]
    {
        assert!(Shape::of(key).is_some(), "{key}");
    }
}
