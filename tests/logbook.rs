//! The logbook: entries and their leaves, what is found, what is due, oil used up, a season's life.
//!
//! Sources: days and months by the civil calendar (python-dateutil's documented rule for a month's missing day: its last;
//! from memory); distances and volumes worked by hand beside each check; the mile of NIST Handbook 44.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::NaiveDate;
use proptest::prelude::*;
use torpor::entry::Entry;
use torpor::facts::{self, Facts, Id};
use torpor::garage::{Entries, Kept};
use torpor::logbook::{LEAF, Logbook, Search, due, lines, years};
use torpor::plan::{self, Life, Line, Side};
use torpor::show::Figure;
use torpor::units::{self, UnitSet};

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

fn entry(texts: &[(Id, &str)]) -> Entries {
    texts.iter().map(|(id, text)| (*id, Entry::new(*text, 0))).collect()
}

fn done(on: &str, line: &str, odometer: &str) -> Entries {
    let texts = [
        (facts::LOG_DAY.id(), on),
        (facts::LOG_LINE.id(), line),
        (facts::LOG_ODOMETER.id(), odometer),
    ];
    entry(&texts.into_iter().filter(|it| !it.1.is_empty()).collect::<Vec<_>>())
}

fn book(entries: &[Entries]) -> Logbook {
    let mut book = Logbook::default();
    for own in entries {
        book.add(own.clone());
    }
    book
}

fn bike(facts: &[(Id, &str)]) -> Kept {
    let mut kept = Kept::default();
    for (id, text) in facts {
        kept.put(*id, Entry::new(*text, units::KILOMETER.code));
    }
    kept
}

fn texts(book: &Logbook) -> Vec<String> {
    book.rows().iter().map(|it| it.line()).collect()
}

#[test]
fn entries_stand_by_their_day_whatever_their_order_of_writing() {
    let book = book(&[
        done("2026-11-14", "Oil", ""),
        done("", "No day", ""),
        done("Mar 28 2025", "Chain", ""),
        done("2026-11-14", "Battery", ""),
        done("2027-04-01", "Brakes", ""),
    ]);
    assert_eq!(texts(&book), ["Chain", "Oil", "Battery", "Brakes", "No day"]);
    assert_eq!(years(&book), ["2027", "2026", "2025"]);
    assert_eq!(lines(&book), ["No day", "Brakes", "Battery", "Oil", "Chain"]);
}

#[test]
fn words_line_and_year_are_found() {
    let mut noted = done("2026-11-14", "Oil", "12000 km");
    noted.insert(facts::LOG_NOTE.id(), Entry::new("Filter HX-12, green washer", 0));
    let book = book(&[noted, done("2025-11-02", "Oil", ""), done("2026-04-01", "Brakes", "")]);
    let found = |words: &str, line: Option<&str>, year: Option<&str>| -> Vec<String> {
        let search = Search {
            words: words.to_owned(),
            line: line.map(str::to_owned),
            year: year.map(str::to_owned),
        };
        let found = search.found(&book);
        found.iter().map(|it| it.entry(facts::LOG_DAY.id()).text).collect()
    };
    assert_eq!(found("", None, None), ["2026-11-14", "2026-04-01", "2025-11-02"]);
    assert_eq!(found("GREEN hx", None, None), ["2026-11-14"]);
    assert_eq!(found("12000", None, None), ["2026-11-14"]);
    assert_eq!(found("", Some("Oil"), None), ["2026-11-14", "2025-11-02"]);
    assert_eq!(found("", Some("Oil"), Some("2025")), ["2025-11-02"]);
    assert_eq!(found("clutch", None, None), Vec::<String>::new());
}

#[test]
fn a_leaf_is_written_for_each_change_and_no_other() {
    let mut book = Logbook::default();
    let keys: Vec<usize> =
        (0..2 * LEAF + 1).map(|at| book.add(done("2026-01-01", &format!("{at}"), ""))).collect();
    let changed = |book: &mut Logbook| -> Vec<usize> {
        book.take_changed().into_iter().map(|it| it.0).collect()
    };
    assert_eq!(changed(&mut book), [0, 1, 2]);
    assert!(book.is_kept());
    assert_eq!([book.leaf(0).len(), book.leaf(1).len(), book.leaf(2).len()], [LEAF, LEAF, 1]);

    book.amend(keys[LEAF], done("2020-01-01", "changed", ""));
    assert_eq!(changed(&mut book), [1]);
    let row = book.remove(keys[2]).unwrap();
    assert_eq!(changed(&mut book), [0]);
    assert_eq!(book.leaf(0).len(), LEAF - 1);
    book.put_back(row);
    assert_eq!(book.leaf(0).len(), LEAF);

    // Read again it is the same book, and goes on behind its last leaf.
    let mut again = Logbook::of((0..3).map(|leaf| book.leaf(leaf)).collect());
    assert_eq!(texts(&again), texts(&book));
    assert!(again.is_kept());
    again.add(done("2026-01-02", "one more", ""));
    assert_eq!(changed(&mut again), [2]);
}

#[test]
fn what_is_unknown_of_an_entry_is_kept() {
    let mut own = done("2026-11-14", "Oil", "");
    own.insert(Id(9999), Entry::new("of a newer page", 0));
    let book = book(std::slice::from_ref(&own));
    assert_eq!(book.leaf(0), [own]);
}

#[test]
fn due_by_the_calendar_and_by_the_odometer() {
    let from = bike(&[
        (
            facts::INTERVALS.id(),
            "Oil: 6000 km or 12 months; Brake fluid: 2 years\nAir filter: 20000 km; Papers: 1 month; Valves: 24000 km",
        ),
        (facts::ODOMETER.id(), "18500"),
    ]);
    let book = book(&[
        done("2024-05-01", "Oil", "5000 km"),
        done("2025-11-14", "oil ", "12000 km"),
        done("2024-12-05", "Brake fluid", ""),
        done("2026-01-31", "Papers", ""),
        done("2024-02-29", "Valves", "10000 mi"),
    ]);
    let found = due(&book, day(2026, 11, 30), &from);
    let told: Vec<_> = found
        .iter()
        .map(|it| {
            let distance = it.left.distance.map(|it| it.get::<uom::si::length::kilometer>());
            (it.line.as_str(), it.last, it.left.days, distance, it.is_past())
        })
        .collect();
    // 12 months from Nov 14 2025: Nov 14 2026, 16 days before Nov 30. 12,000 + 6,000 − 18,500 = −500 km.
    assert_eq!(
        told[0],
        ("Oil", Some(day(2025, 11, 14)), Some((day(2026, 11, 14), -16)), Some(-500.0), true)
    );
    // Dec 5 2026 is 5 days on; no distance is asked.
    assert_eq!(
        told[1],
        ("Brake fluid", Some(day(2024, 12, 5)), Some((day(2026, 12, 5), 5)), None, false)
    );
    assert_eq!(told[2], ("Air filter", None, None, None, false));
    // A month from Jan 31 is Feb 28; from there to Nov 30: 31 + 30 + 31 + 30 + 31 + 31 + 30 + 31 + 30 = 275 days.
    assert_eq!(told[3].2, Some((day(2026, 2, 28), -275)));
    // 10,000 mi are 16,093.44 km; 16,093.44 + 24,000 − 18,500 = 21,593.44 km.
    assert!((told[4].3.unwrap() - 21_593.44).abs() < 1e-9);

    // An entry of a day still to come is a slip, and one without a reading tells no distance.
    let slip = self::book(&[
        done("2025-11-14", "Oil", ""),
        done("2062-11-14", "Oil", "18000 km"),
        done("2026-11-01", "Air filter", "20000 km"),
    ]);
    let words = plan::due(&slip, &from, day(2026, 11, 30), UnitSet::Metric);
    assert!(
        words[0].0
            && words[0]
                .1
                .ends_with("by distance not known: needs today’s odometer and the one of that day"),
        "{}",
        words[0].1
    );
    // 18,500 now, 20,000 then.
    assert_eq!(
        words[2],
        (true, "Air filter: the odometer reads less than it did then: check both".to_owned())
    );

    let words = plan::due(&book, &from, day(2026, 11, 30), UnitSet::Metric);
    assert_eq!(
        words[0],
        (true, "Oil: 16 days past, since Sat, Nov 14 2026, 500\u{a0}km past".to_owned())
    );
    assert_eq!(words[2], (false, "Air filter: not in the logbook yet".to_owned()));
}

#[test]
fn what_is_no_interval_is_refused_with_what_would_be() {
    for text in [
        "Oil 6000 km",
        "Oil:",
        ": 6000 km",
        "Oil: soon",
        "Oil: 6000",
        "Oil: 0 km",
        "Oil: 0 months",
        "Oil: 300 mm",
        "Oil: 12 months or 1 year",
        "Oil: 5000–6000 km",
        "Oil: 6.000 km",
    ] {
        let told = facts::INTERVALS.of(&bike(&[(facts::INTERVALS.id(), text)]));
        assert!(told.is_err(), "{text}");
    }
    for text in
        ["Oil: every 6000 km or 2 years", "Oil: 6000 km, 12 months", "Oil: 6000 km and 12 months"]
    {
        let told = facts::INTERVALS.of(&bike(&[(facts::INTERVALS.id(), text)])).unwrap();
        assert!(told[0].months.is_some() && told[0].distance.is_some(), "{text}");
    }
    // A point that parts thousands is asked about: no odometer shows meters.
    let odometer = facts::refusal(&facts::ODOMETER.about, &Entry::new("18.500 km", 0)).unwrap();
    assert!(odometer.to_string().contains("18500"), "{odometer}");
    assert_eq!(
        facts::refusal(&facts::ODOMETER.about, &Entry::new("18500.5", units::KILOMETER.code)),
        None
    );
    let about = &facts::INTERVALS.about;
    let why = facts::refusal(about, &Entry::new("Oil 6000 km", 0)).unwrap().to_string();
    assert!(why.contains("Oil 6000 km") && why.contains("Oil: 6000 km or 12 months"), "{why}");
}

/// Poured less drained over the distance, by hand; nothing where half of it is lacking.
#[test]
fn oil_used_up() {
    let oil = |on: &str, line: &str, odometer: &str, poured: &str, drained: &str| {
        let mut own = done(on, line, odometer);
        for (id, text) in [(facts::OIL_POURED.id(), poured), (facts::OIL_DRAINED.id(), drained)] {
            if !text.is_empty() {
                own.insert(id, Entry::new(text, 0));
            }
        }
        own
    };
    let used = |entries: &[Entries], set: UnitSet| -> Vec<(&'static str, f64)> {
        let panel = plan::log(&book(entries), &Kept::default(), day(2026, 11, 30), set);
        let number = |figure: &Figure| match figure {
            Figure::Number { data, .. } => data.parse().unwrap(),
            other => panic!("{other:?}"),
        };
        panel.answers.iter().map(|it| (it.label, number(&it.figure))).collect()
    };
    let near = |got: f64, want: f64| {
        assert!((got - want).abs() < 1e-9 * want.abs(), "{got} for {want}");
    };
    let all = [
        oil("2025-04-01", "Oil", "10000 km", "3 L", "2.6 L"),
        oil("2025-07-01", "Top-up", "11500 km", "300 mL", ""),
        // Without a reading it is counted by its day.
        oil("2025-08-01", "Top-up", "", "0.2 L", ""),
        oil("2026-04-01", "Oil", "14000 km", "3 L", "2.8 L"),
        oil("2026-06-01", "Top-up", "15000 km", "0.15 L", ""),
        oil("2026-07-01", "Top-up", "16000 km", "0.1 L", ""),
    ];
    // (3 + 0.3 + 0.2 − 2.8) L on 4,000 km; then (0.15 + 0.1) L on 2,000 km.
    let metric = used(&all, UnitSet::Metric);
    let labels: Vec<&str> = metric.iter().map(|it| it.0).collect();
    assert_eq!(labels, ["Oil used, change to change", "Oil used since, by top-ups"]);
    near(metric[0].1, 0.175);
    near(metric[1].1, 0.125);
    // 0.175 L are 0.175 / 0.946352946 US qt, 1,000 km are 621.371192 mi: × 1.609344.
    near(used(&all, UnitSet::Us)[0].1, 0.175 / 0.946352946 * 1.609344);
    assert_eq!(used(&all[..1], UnitSet::Metric), []);
    assert_eq!(used(&all[..2], UnitSet::Metric).len(), 1);

    // A change whose old oil was not measured ends no span, and is no top-up; the next one begins at it.
    let unmeasured = [
        oil("2024-04-01", "Oil", "10000 km", "3 L", "3 L"),
        oil("2025-04-01", "Oil", "16000 km", "3.1 L", ""),
        oil("2026-04-01", "Oil", "22000 km", "3.1 L", "3 L"),
    ];
    assert_eq!(used(&unmeasured[..2], UnitSet::Metric), []);
    near(used(&unmeasured, UnitSet::Metric)[0].1, 0.1 / 6.0);

    // Old oil and new written down apart are one change; a top-up before any change begins nothing.
    let apart = [
        oil("2024-01-01", "Top-up", "9000 km", "0.4 L", ""),
        oil("2024-04-01", "Drained", "10000 km", "", "2.9 L"),
        oil("2024-04-02", "Filled", "10000 km", "3 L", ""),
        oil("2026-04-01", "Oil", "20000 km", "3 L", "2.8 L"),
    ];
    near(used(&apart, UnitSet::Metric)[0].1, 0.02);
    let [first, .., last] = &apart;
    assert_eq!(used(&[first.clone(), last.clone()], UnitSet::Metric), []);

    // On a few kilometers what is misread is all there is.
    let short = [
        oil("2026-04-01", "Oil", "10000 km", "3 L", "2 L"),
        oil("2026-04-03", "Oil", "10003 km", "3 L", "2 L"),
    ];
    assert_eq!(used(&short, UnitSet::Metric), []);

    // More came out than went in: said, not hidden.
    let odd = [
        oil("2025-04-01", "Oil", "10000 km", "2 L", ""),
        oil("2026-04-01", "Oil", "14000 km", "3 L", "2.8 L"),
    ];
    let panel = plan::log(&book(&odd), &Kept::default(), day(2026, 11, 30), UnitSet::Metric);
    assert_eq!(panel.warnings.len(), 1);
}

#[test]
fn a_tick_writes_the_figures_as_they_stand() {
    let mut from = bike(&[(facts::ODOMETER.id(), "12345")]);
    from.put(facts::TANK_VOLUME.id(), Entry::new("15", units::LITER.code));
    from.put(facts::FUEL_IN_TANK.id(), Entry::new("5", units::LITER.code));
    from.put(facts::STABILIZER_LABEL.id(), Entry::new("30 mL per 10 L", 0));
    from.put(facts::PARK_DATE.id(), Entry::new("2026-11-14", 0));
    let step = Side::LayUp.step("fuel").unwrap();
    let figures = plan::figures(Line::Fuel, &from, UnitSet::Metric);
    // Filled to 95 %: 14.25 L at 30 mL for 10 L are 42.75 mL.
    assert!(figures.starts_with("Stabilizer to add 43 mL; "), "{figures}");
    let tag = step.tag(&from, day(2027, 1, 2));
    assert_eq!(tag, "2027-01-02/layup/fuel", "without a mark, of today");
    from.put(facts::SEASON_MARK.id(), Entry::new("2026-11-14", 0));
    let tag = step.tag(&from, day(2027, 1, 2));
    assert_eq!(tag, "2026-11-14/layup/fuel");
    let own = Logbook::of_tick(&tag, step.said.title, day(2026, 11, 14), &figures, &from);
    assert_eq!(own[&facts::LOG_DAY.id()].text, "2026-11-14");
    assert_eq!(
        facts::LOG_ODOMETER.known(&own).unwrap().get::<uom::si::length::kilometer>().round(),
        12345.0
    );
    let mut book = book(&[done("2020-01-01", "Oil", "")]);
    let key = book.add(own);
    assert_eq!(book.ticked(&tag).unwrap().key, key);
    assert_eq!(book.ticked("2025-11-14/layup/fuel"), None);
}

#[test]
fn a_season_is_planned_parked_and_out() {
    let mut kept =
        bike(&[(facts::PARK_DATE.id(), "2026-11-14"), (facts::RIDE_DATE.id(), "2027-03-28")]);
    assert_eq!(Life::of(&kept), Life::Planned);
    for (side, key, life) in [
        (Side::LayUp, "wash", Life::Parked),
        (Side::WakeUp, "open", Life::Parked),
        (Side::WakeUp, "first-ride", Life::Out),
    ] {
        let (id, text) = side.step(key).unwrap().ticked(&kept, true);
        kept.put(id, Entry::new(text, 0));
        assert_eq!(Life::of(&kept), life, "{key}");
    }
    assert_eq!(
        plan::past(&kept.season.entries),
        "Sat, Nov 14 2026 to Sun, Mar 28 2027: 1 step of the lay-up done, 2 steps of the wake-up"
    );
}

proptest! {
    /// However it is changed, every entry is in the book once, in the order of its days, and on its leaf.
    #[test]
    fn nothing_is_lost(days in prop::collection::vec((1990i32..2190, 1u32..13, 1u32..29), 1..200), out in 0usize..200) {
        let mut book = Logbook::default();
        for (year, month, on) in &days {
            book.add(done(&format!("{year:04}-{month:02}-{on:02}"), "Oil", ""));
        }
        let sorted = book.rows().windows(2).all(|it| it[0].day <= it[1].day);
        prop_assert!(sorted);
        let leaves = book.rows().iter().map(|it| it.leaf).max().unwrap() + 1;
        let again = Logbook::of((0..leaves).map(|it| book.leaf(it)).collect());
        prop_assert_eq!(again.rows().len(), days.len());
        let key = out % days.len();
        let row = book.remove(key).unwrap();
        prop_assert_eq!(book.rows().len(), days.len() - 1);
        book.put_back(row);
        prop_assert!(book.row(key).is_some());
        prop_assert!(book.rows().windows(2).all(|it| it[0].day <= it[1].day));
    }
}
