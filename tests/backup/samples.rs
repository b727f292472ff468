//! Bikes for the tests of the backup file.

use chrono::NaiveDate;
use torpor::entry::Entry;
use torpor::facts;
use torpor::garage::{Bike, Entries, Garage, Season};
use torpor::storage::backup::{self, File, Found};
use torpor::storage::record;
use torpor::units;

pub type Kept = Vec<(String, String)>;

pub fn fact(text: &str, unit: u8, edited: u64) -> Entry {
    Entry { text: text.into(), unit, edited }
}

pub fn bike() -> Bike {
    Bike {
        entries: [
            (facts::BIKE_NAME.id(), fact("Rowan", 0, 5)),
            (facts::TANK_VOLUME.id(), fact("15", units::LITER.code, 1_700_000_000_000)),
            (facts::CONSUMPTION.id(), fact("33 mpg", units::LITERS_PER_100_KM.code, 0)),
        ]
        .into(),
        scratch: [(facts::ADAPTER.id(), fact("in_line", 0, 0))].into(),
        fasteners: vec![fastener("Header nut", "25"), fastener("Axle nut", "88")],
        others: Vec::new(),
    }
}

pub fn fastener(name: &str, torque: &str) -> Entries {
    [
        (facts::FASTENER_NAME.id(), fact(name, 0, 1)),
        (facts::TORQUE.id(), fact(torque, units::NEWTON_METER.code, 1)),
    ]
    .into()
}

pub fn entry(day: &str, line: &str) -> Entries {
    [(facts::LOG_DAY.id(), fact(day, 0, 0)), (facts::LOG_LINE.id(), fact(line, 0, 0))].into()
}

pub fn season(park: &str, mark: &str) -> Season {
    Season {
        entries: [
            (facts::PARK_DATE.id(), fact(park, 0, 7)),
            (facts::SEASON_MARK.id(), fact(mark, 0, 7)),
        ]
        .into(),
    }
}

pub fn sample() -> Kept {
    let garage = Garage {
        entries: [(facts::OIL_ON_SHELF.id(), fact("1", units::US_QT.code, 3))].into(),
        wrenches: vec![[(facts::WRENCH_NAME.id(), fact("Long", 0, 2))].into()],
    };
    vec![
        ("bike.a1".into(), record::written(&bike(), 3).unwrap()),
        ("season.a1".into(), record::written(&season("Nov 14 2026", "2026-11-10"), 2).unwrap()),
        ("garage".into(), record::written(&garage, 9).unwrap()),
        ("log.a1.0".into(), record::written(&vec![entry("2026-11-14", "Oil")], 1).unwrap()),
        ("calendar.a1".into(), "1.AAAA".into()),
    ]
}

pub fn sample_text() -> String {
    let day = NaiveDate::from_ymd_opt(2026, 11, 30).unwrap();
    backup::written(&backup::found(&sample()), day)
}

pub fn stored(file: &File) -> Kept {
    texts(&file.records)
}

/// What the store would have of records.
pub fn texts(all: &[Found]) -> Kept {
    let mut into = Vec::new();
    all.iter().for_each(|it| it.stored(&mut into));
    into.into_iter().map(|(key, text)| (key, text.unwrap())).collect()
}

/// Records as they come out of the store once what came out of a file stands there: how often they were written is told anew.
pub fn again(kept: &Kept) -> Vec<Found> {
    let mut all = backup::found(kept);
    for it in &mut all {
        it.revision = 1;
        it.name = String::new();
    }
    all
}

/// What a file may not bring, written down again, so that a change of the list in the source is seen. Source: Unicode’s general
/// category Cc but for tab and line feed, and the embeddings, overrides and isolates of UAX #9, from memory.
pub fn hides(it: char) -> bool {
    !matches!(it, '\n' | '\t')
        && (it.is_control() || matches!(u32::from(it), 0x202a..=0x202e | 0x2066..=0x2069))
}
