//! Records as the browser's store holds them: a frozen form, and plain words for what cannot be read.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use torpor::entry::Entry;
use torpor::facts::Id;
use torpor::garage::{Bike, Garage, Season};
use torpor::storage::record::{self, PREFIX, Record, SCHEMA, Unreadable};

/// Frozen form: one record of each sort, as a store out there may hold it.
const BIKE: &str = r#"{"schema":1,"revision":7,"kept":{"entries":{"1":{"t":"Alder 640","e":1795000000000},"10":{"t":"16,5","u":16,"e":1795000000001}},"scratch":{"71":{"t":"25 (22–26)","u":1,"e":0}},"fasteners":[{"70":{"t":"Header nut","e":0},"71":{"t":"22-26","u":1,"e":2}},{}],"others":[[9,{"5":{"t":"x","u":200,"e":0}}]]}}"#;
const SEASON: &str =
    r#"{"schema":1,"revision":0,"kept":{"entries":{"60":{"t":"Nov 14 2026","e":3}}}}"#;
const GARAGE: &str = r#"{"schema":1,"revision":1,"kept":{"entries":{"65":{"t":"us","e":0}},"wrenches":[{"84":{"t":"1","u":1,"e":0}}]}}"#;

fn bike() -> Bike {
    let entry = |text: &str, unit, edited| Entry { text: text.into(), unit, edited };
    Bike {
        entries: [
            (Id(1), entry("Alder 640", 0, 1_795_000_000_000)),
            (Id(10), entry("16,5", 16, 1_795_000_000_001)),
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

/// Frozen form.
#[test]
fn records_are_frozen() {
    assert_eq!(record::written(&bike(), 7).unwrap(), BIKE);
    let read: Record<Bike> = record::read(BIKE).unwrap();
    assert_eq!(read, Record { schema: 1, revision: 7, kept: bike() });

    let season: Record<Season> = record::read(SEASON).unwrap();
    assert_eq!(season.kept.entries[&Id(60)].text, "Nov 14 2026");
    assert_eq!(record::written(&season.kept, season.revision).unwrap(), SEASON);

    let garage: Record<Garage> = record::read(GARAGE).unwrap();
    assert_eq!(garage.kept.wrenches[0][&Id(84)].unit, 1);
    assert_eq!(record::written(&garage.kept, garage.revision).unwrap(), GARAGE);
    assert_eq!((SCHEMA, PREFIX), (1, "torpor."));
}

/// The text and its unit are the truth: what is stored is what was typed, letter for letter.
#[test]
fn as_typed() {
    let read: Record<Bike> = record::read(BIKE).unwrap();
    assert_eq!(read.kept.entries[&Id(10)].text, "16,5", "never rewritten as 16.5");
    assert_eq!(read.kept.fasteners[0][&Id(71)].text, "22-26");
}

/// A fact, a group or a field that this page does not know is no reason to lose the rest; facts and groups are kept.
#[test]
fn what_is_not_known_survives() {
    let text = r#"{"schema":1,"revision":3,"from":"a newer page","kept":{"entries":{"10":{"t":"16","u":16,"e":0,"why":"x"},"60000":{"t":"7","u":201,"e":5}},"colors":["red"]}}"#;
    let read: Record<Bike> = record::read(text).unwrap();
    assert_eq!(read.kept.entries[&Id(10)].text, "16");
    let again: Record<Bike> =
        record::read(&record::written(&read.kept, read.revision + 1).unwrap()).unwrap();
    assert_eq!(again.kept.entries[&Id(60_000)], Entry { text: "7".into(), unit: 201, edited: 5 });
    assert_eq!(again.revision, 4);
    // Parts that are not there are blank.
    let empty: Record<Bike> = record::read(r#"{"schema":1,"revision":0,"kept":{}}"#).unwrap();
    assert_eq!(empty.kept, Bike::default());
    let short: Record<Bike> =
        record::read(r#"{"schema":1,"revision":0,"kept":{"entries":{"10":{"t":"16"}}}}"#).unwrap();
    assert_eq!(short.kept.entries[&Id(10)], Entry::new("16", 0));
}

/// A newer page's record is left alone, whatever it looks like inside.
#[test]
fn a_newer_schema_is_said() {
    for text in [
        r#"{"schema":2,"revision":7,"kept":{}}"#,
        r#"{"schema":2}"#,
        r#"{"kept":"all different","schema":2,"revision":"seven"}"#,
    ] {
        let why = record::read::<Bike>(text).unwrap_err();
        assert_eq!(why, Unreadable::Newer(2));
        assert_eq!(
            why.to_string(),
            "was written by a newer Torpor (form 2, this page knows 1): reload the page"
        );
    }
}

/// What is damaged is said, and why, in words that end as the sentence does.
#[test]
fn damage_is_said() {
    for text in [
        "",
        " ",
        "null",
        "[]",
        "16",
        "{",
        "{}",
        r#"{"schema":1}"#,
        r#"{"schema":"1","revision":0,"kept":{}}"#,
        r#"{"schema":-1,"revision":0,"kept":{}}"#,
        r#"{"schema":1,"revision":-1,"kept":{}}"#,
        r#"{"schema":1,"revision":0,"kept":7}"#,
        r#"{"schema":1,"revision":0,"kept":{"entries":{"ten":{"t":"16"}}}}"#,
        r#"{"schema":1,"revision":0,"kept":{"entries":{"70000":{"t":"16"}}}}"#,
        r#"{"schema":1,"revision":0,"kept":{"entries":{"10":{"t":"16","u":256}}}}"#,
        r#"{"schema":1,"revision":0,"kept":{"entries":{"10":{"u":16}}}}"#,
        r#"{"schema":1,"revision":0,"kept":{}} and more"#,
        "<html>",
        "\u{feff}{}",
    ] {
        let why = record::read::<Bike>(text).unwrap_err();
        assert!(matches!(why, Unreadable::Damaged(_)), "{text}: {why:?}");
        let words = why.to_string();
        assert!(words.starts_with("is damaged ("), "{words}");
        assert!(words.ends_with("): it is set aside unchanged"), "{words}");
    }
    let deep = format!(r#"{{"schema":1,"revision":0,"kept":{}"#, "[".repeat(200_000));
    assert!(matches!(record::read::<Bike>(&deep), Err(Unreadable::Damaged(_))));
}

/// A record cut off anywhere is damaged, never half a bike.
#[test]
fn cut_off_at_every_letter() {
    for (end, _) in BIKE.char_indices() {
        let why = record::read::<Bike>(&BIKE[..end]).unwrap_err();
        assert!(matches!(why, Unreadable::Damaged(_)), "cut at {end}: {why:?}");
    }
}
