//! Records of every version that was ever released, as its page wrote them, opened for ever. `tests/reference/records/` has a folder
//! for each schema; what is in them was typed by hand into that page, and stands here as it was typed.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::fs;
use torpor::calendar::Saved;
use torpor::entry::Entry;
use torpor::facts::{self, Id};
use torpor::garage::{Bike, Entries, Garage, Season};
use torpor::plan::Side;
use torpor::plan::address::{self, Address};
use torpor::storage::record::{self, SCHEMA};

const FOLDER: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/records");

fn sample(schema: u32, name: &str) -> String {
    fs::read_to_string(format!("{FOLDER}/{schema}/{name}.txt")).unwrap()
}

/// Noon of Nov 14 2026 in London: 20,771 days and a half after the first of January 1970, of 86,400,000 ms each.
const TYPED: u64 = 20_771 * 86_400_000 + 43_200_000;

/// An entry typed then, with the code of the unit that a bare number meant.
fn typed(id: Id, text: &str, unit: u8) -> (Id, Entry) {
    (id, Entry { text: text.into(), unit, edited: TYPED })
}

const LITER: u8 = 16;
const MILLIMETER: u8 = 40;
const NEWTON_METER: u8 = 1;
const CELSIUS: u8 = 64;

#[test]
fn every_schema_has_its_samples() {
    for schema in 1..=SCHEMA {
        let names = fs::read_dir(format!("{FOLDER}/{schema}")).unwrap();
        let mut names: Vec<String> =
            names.map(|it| it.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        assert_eq!(
            names,
            [
                "bench.rowan.layup.txt",
                "bike.rowan.txt",
                "calendar.rowan.txt",
                "garage.txt",
                "log.rowan.0.txt",
                "open.txt",
                "past.rowan.0.txt",
                "season.rowan.txt",
            ],
            "schema {schema}"
        );
    }
}

#[test]
fn schema_1_bike_with_fasteners() {
    let record = record::read::<Bike>(&sample(1, "bike.rowan")).unwrap();
    assert!(record.revision >= 1);
    let fastener = |name: &str, torque: &str| {
        Entries::from([
            typed(facts::FASTENER_NAME.id(), name, 0),
            typed(facts::TORQUE.id(), torque, NEWTON_METER),
            typed(facts::ADAPTER.id(), "in_line", 0),
            typed(facts::ADAPTER_LENGTH.id(), "40", MILLIMETER),
        ])
    };
    let entries =
        [typed(facts::BIKE_NAME.id(), "Rowan", 0), typed(facts::TANK_VOLUME.id(), "16,0", LITER)];
    let fasteners = vec![fastener("Header nut", "25 (22–26)"), fastener("Axle nut", "88 N·m")];
    let bike = Bike { entries: entries.into(), fasteners, ..Bike::default() };
    assert_eq!(record.kept, bike);
}

#[test]
fn schema_1_garage_with_wrenches() {
    let wrench =
        |length: &str| Entries::from([typed(facts::WRENCH_LENGTH.id(), length, MILLIMETER)]);
    let entries = [
        // A dose says its units itself.
        typed(facts::STABILIZER_LABEL.id(), "30 mL per 10 L", 0),
        typed(facts::COLDEST_NIGHT.id(), "-12", CELSIUS),
    ];
    let garage = Garage { entries: entries.into(), wrenches: vec![wrench("285"), wrench("410")] };
    assert_eq!(record::read::<Garage>(&sample(1, "garage")).unwrap().kept, garage);
}

#[test]
fn schema_1_season_and_the_one_before_it() {
    let season = Season { entries: [typed(facts::PARK_DATE.id(), "Nov 20 2027", 0)].into() };
    assert_eq!(record::read::<Season>(&sample(1, "season.rowan")).unwrap().kept, season);
    let past = [
        typed(facts::FUEL_IN_TANK.id(), "1 gal", LITER),
        typed(facts::PARK_DATE.id(), "Nov 14 2026", 0),
        typed(facts::RIDE_DATE.id(), "2027-03-28", 0),
        typed(facts::LAY_UP_DONE.id(), "wash chain", 0),
        typed(facts::SEASON_MARK.id(), "2026-11-14", 0),
    ];
    let past = Season { entries: past.into() };
    assert_eq!(record::read::<Season>(&sample(1, "past.rowan.0")).unwrap().kept, past);
}

#[test]
fn schema_1_leaf_of_the_logbook() {
    let ticked = |line: &str, step: &str| {
        Entries::from([
            (facts::LOG_DAY.id(), Entry::new("2026-11-14", 0)),
            (facts::LOG_LINE.id(), Entry::new(line, 0)),
            (facts::LOG_STEP.id(), Entry::new(step, 0)),
        ])
    };
    let leaf = vec![
        ticked("Wash and dry", "2026-11-14/layup/wash"),
        ticked("Chain", "2026-11-14/layup/chain"),
    ];
    assert_eq!(record::read::<Vec<Entries>>(&sample(1, "log.rowan.0")).unwrap().kept, leaf);
}

/// Parked on Nov 14, a look every month, the wake-up three weeks before the ride.
#[test]
fn schema_1_days_of_the_calendar_file() {
    let days = [
        ("park", "2026-11-14"),
        ("month-1", "2026-12-14"),
        ("month-2", "2027-01-14"),
        ("month-3", "2027-02-14"),
        ("month-4", "2027-03-14"),
        ("wake", "2027-03-07"),
        ("ride", "2027-03-28"),
    ];
    let saved: Saved =
        days.iter().map(|it| (format!("20261114-{}", it.0), it.1.to_owned())).collect();
    assert_eq!(record::read::<Saved>(&sample(1, "calendar.rowan")).unwrap().kept, saved);
}

/// Two records are plain texts: which bike is open, and where the bench view was.
#[test]
fn schema_1_plain_texts() {
    let Address::Bench(side, Some(stop)) = address::read(&sample(1, "bench.rowan.layup")) else {
        panic!("no place on the bench");
    };
    assert_eq!((side, stop.step().unwrap().choice.key), (Some(Side::LayUp), "fuel"));
    assert!(sample(1, "open").chars().all(|it| it.is_ascii_hexdigit()));
}
