//! The lines of the sheet as wholes: from what was typed to the words and figures that are shown.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod estimate;
mod fuel;
mod oil;

use chrono::NaiveDate;
use std::cell::RefCell;
use std::collections::BTreeSet;
use torpor::entry::Entry;
use torpor::facts::{self, Facts, Id, Lack};
use torpor::garage::{Kept, example};
use torpor::plan::address::{self, Address, QuickSum};
use torpor::plan::{self, Line, Panel, Side};
use torpor::show::{Figure, Shown};
use torpor::units::{self, Unit, UnitSet};
use torpor::words::{labels, notes};

const SETS: [UnitSet; 2] = [UnitSet::Metric, UnitSet::Us];

/// Entries without a unit of their own: each text says its unit, or its fact has none.
fn typed(list: &[(Id, &str)]) -> Kept {
    let mut kept = Kept::default();
    for (id, text) in list {
        kept.put(*id, Entry::new(*text, 0));
    }
    kept
}

/// The figure of an answer in words.
fn words_of(panel: &Panel, label: &str) -> String {
    answer(panel, label).figure_words()
}

#[track_caller]
fn answer<'a>(panel: &'a Panel, label: &str) -> &'a Shown {
    panel.answer(label).unwrap_or_else(|| panic!("no answer “{label}”"))
}

/// The unrounded number of an answer in the base unit of its dimension, whatever unit it is shown in.
#[track_caller]
fn base(shown: &Shown) -> f64 {
    let Figure::Number { data, unit, .. } = &shown.figure else { panic!("{shown:?}") };
    let unit: Option<&Unit> = match shown.label {
        // Shown alike, a step of temperature is no temperature.
        labels::FREEZE_MARGIN if *unit == "°F" => Some(&units::FAHRENHEIT_STEP),
        _ => units::ALL.iter().copied().find(|it| it.symbol == *unit),
    };
    unit.map_or(data.parse().unwrap(), |it| it.to_base(data.parse().unwrap()))
}

#[track_caller]
fn figure(shown: &Shown) -> String {
    match &shown.figure {
        Figure::Number { text, unit, .. } => format!("{text} {unit}").trim_end().to_owned(),
        Figure::Day { text, .. } => text.clone(),
        other => panic!("{}: {other:?}", shown.label),
    }
}

#[track_caller]
fn range(shown: &Shown) -> [String; 2] {
    let Figure::Number { range: Some(range), .. } = &shown.figure else { panic!("{shown:?}") };
    range.clone()
}

#[track_caller]
fn close(got: f64, expected: f64, tolerance: f64, what: &str) {
    assert!((got - expected).abs() <= tolerance, "{what}: {got}, expected {expected}");
}

fn lacks(shown: &Shown) -> Vec<u16> {
    assert!(shown.lacks().iter().all(|it| matches!(it, Lack::Missing(_))), "{shown:?}");
    shown.lacks().iter().map(|it| it.id().0).collect()
}

/// Everything that a line lacks is said at once, by fact.
#[test]
fn a_blank_bike_lacks_all_at_once() {
    let blank = Kept::default();
    for set in SETS {
        let of = |line: Line, label: &str| lacks(answer(&panel_of(line, &blank, set), label));
        assert_eq!(of(Line::Fuel, labels::STABILIZER_TO_ADD), [10, 11, 13]);
        assert_eq!(of(Line::Fuel, labels::FUEL_TO_ADD), [10, 11]);
        assert_eq!(of(Line::LastRun, labels::RUN_THROUGH), [15, 16, 18]);
        assert_eq!(of(Line::LastRun, labels::FUEL_TO_DRAW), [15, 16, 18]);
        assert_eq!(of(Line::Oil, labels::OIL_NEEDED), [30]);
        assert_eq!(of(Line::Oil, labels::FIRST_POUR), [30]);
        assert_eq!(of(Line::Oil, labels::TOP_UP), [30]);
        assert_eq!(of(Line::Oil, labels::BOTTLES_TO_BUY), [30, 40, 41]);
        assert_eq!(of(Line::Oil, labels::LEFT_OVER), [30, 40, 41]);
        assert_eq!(of(Line::Oil, labels::FILTER_ALLOWANCE), [31, 32]);
        assert_eq!(of(Line::Torques, labels::EXACT_SETTING), [71, 72]);
        assert_eq!(of(Line::Torques, labels::FASTENER_GETS), [71, 72]);
        assert_eq!(of(Line::Torques, labels::SET_TO), [71, 72, 84]);
        assert_eq!(of(Line::Battery, labels::CHARGE_ON_RIDE_DATE), [50, 51, 60, 63]);
        assert_eq!(of(Line::Battery, labels::UNDER_FROM), [50, 51, 60, 63]);
        assert_eq!(of(Line::Battery, labels::FREEZE_MARGIN), [50, 51, 60, 63, 64]);
        assert_eq!(of(Line::Coolant, labels::FREEZES_AT), [100, 101, 102]);
        assert_eq!(of(Line::Coolant, labels::DRAIN_AND_REFILL), [102, 103, 104]);
        assert_eq!(of(Line::OtherOils, labels::OTHER_OILS), [128]);
        assert_eq!(of(Line::Tires, labels::FRONT_SET_AT), [107, 111, 110, 109]);
        assert_eq!(of(Line::Tires, labels::REAR_AGE), [113, 61]);
        assert_eq!(of(Line::Brakes, labels::CHANGE_BY), [122, 124]);
        assert_eq!(lacks(&plan::season(&blank, set)), [60]);
        for line in Line::ALL {
            let panel = panel_of(line, &blank, set);
            assert!(panel.warnings.is_empty(), "{line:?} warns of nothing known");
            assert!(!panel.head.lacks().is_empty() && !panel.cautions.is_empty(), "{line:?}");
            assert!(panel.all().all(|it| it.working.is_none() && it.spoken().is_none()));
        }
    }
}

/// Source: the project's workshop rules: 3,550 mL with 300 between the marks: 3,400 first, not 3,018; a third of a quart.
#[test]
fn oil_is_poured_to_mid_marks() {
    let kept = typed(&[
        (facts::OIL_CHANGE.id(), "with_filter"),
        (facts::FILL_WITH_FILTER.id(), "3550 mL"),
        (facts::FILL_WITHOUT_FILTER.id(), "3300 mL"),
        (facts::BETWEEN_MARKS.id(), "300 mL"),
        (facts::BOTTLE_SIZE.id(), "1 L"),
        (facts::OIL_ON_SHELF.id(), "900 mL"),
    ]);
    for set in SETS {
        let panel = plan::oil(&kept, set);
        for (label, expected) in [
            (labels::OIL_NEEDED, 3550e-6),
            (labels::FIRST_POUR, 3400e-6),
            (labels::TOP_UP, 150e-6),
            (labels::BOTTLES_TO_BUY, 3.0),
            (labels::LEFT_OVER, 350e-6),
            (labels::FILTER_ALLOWANCE, 250e-6),
        ] {
            close(base(answer(&panel, label)), expected, 1e-12, label);
        }
        assert!(panel.warnings.is_empty());
    }
    let panel = plan::oil(&kept, UnitSet::Metric);
    let pour = answer(&panel, labels::FIRST_POUR);
    assert_eq!(figure(pour), "3.40 L");
    let substituted = &pour.working.as_ref().unwrap().written().substituted;
    assert_eq!(substituted, "3.55\u{a0}L − 0.3\u{a0}L / 2 = 3.40\u{a0}L");
    assert_eq!(
        panel.note,
        "first pour 3.40\u{a0}L, run, settle, read the level, then up to 0.15\u{a0}L more, never over the mark · 3 bottles to buy, 0.35\u{a0}L left over"
    );
    // 3,550 mL is 3.7513 US quarts of 946.352946 mL (NIST Handbook 44 Appendix C).
    assert_eq!(figure(&plan::oil(&kept, UnitSet::Us).head), "3.75 US qt");

    let mut unknown = kept;
    unknown.put(facts::BETWEEN_MARKS.id(), Entry::default());
    let panel = plan::oil(&unknown, UnitSet::Metric);
    close(base(answer(&panel, labels::FIRST_POUR)), 0.85 * 3550e-6, 1e-9, "85 %, common practice");
    assert_eq!(panel.warnings, [notes::MARKS_UNKNOWN]);
}

/// Nothing stands in for a fill that is not known, and no fill that is not asked for gets in the way.
#[test]
fn oil_asks_for_the_fill_of_the_job() {
    for (job, fill) in [
        ("drain_only", facts::FILL_WITHOUT_FILTER.id()),
        ("with_filter", facts::FILL_WITH_FILTER.id()),
        ("after_overhaul", facts::FILL_AFTER_OVERHAUL.id()),
    ] {
        let mut kept = typed(&[(facts::OIL_CHANGE.id(), job)]);
        let panel = plan::oil(&kept, UnitSet::Metric);
        assert_eq!(lacks(&panel.head), [fill.0], "{job}");
        assert!(panel.blanks.contains(&fill), "what is lacking has a blank");
        kept.put(fill, Entry::new("3 L", 0));
        close(base(&plan::oil(&kept, UnitSet::Metric).head), 3e-3, 1e-12, job);
    }
    // A fill after overhaul that makes no sense is no matter where nothing was overhauled: it has no blank there.
    let kept = typed(&[
        (facts::OIL_CHANGE.id(), "with_filter"),
        (facts::FILL_WITH_FILTER.id(), "3 L"),
        (facts::FILL_AFTER_OVERHAUL.id(), "2 L"),
    ]);
    close(base(&plan::oil(&kept, UnitSet::Metric).head), 3e-3, 1e-12, "with filter");
}

/// A line with the wrench in hand.
fn panel_of(line: Line, from: &dyn Facts, set: UnitSet) -> Panel {
    let drawer: Vec<_> = (line == Line::Torques).then(|| plan::held(from, 0)).into_iter().collect();
    line.panel(from, &drawer, set)
}

/// The open fastener with the wrenches of its garage.
fn torque(kept: &Kept, set: UnitSet) -> Panel {
    plan::torque(kept, &plan::drawer(&kept.garage), set)
}

fn header_nut() -> Kept {
    typed(&[
        (facts::TORQUE.id(), "25 (22–26) N·m"),
        (facts::ADAPTER.id(), "in_line"),
        (facts::ADAPTER_LENGTH.id(), "40 mm"),
        (facts::WRENCH_LENGTH.id(), "285 mm"),
        (facts::LOWEST_MARK.id(), "5 N·m"),
        (facts::HIGHEST_MARK.id(), "60 N·m"),
        (facts::GRADUATION.id(), "1 N·m"),
    ])
}

/// Source: the project's workshop rules: 22–26 N·m, aim 25, 285 + 40 mm, ±4 %: set 21 (22.99–24.91), not 22.
#[test]
fn the_mark_keeps_the_fastener_inside() {
    for set in SETS {
        let panel = torque(&header_nut(), set);
        assert_eq!(panel.head.label, labels::SET_TO);
        assert_eq!(figure(&panel.head), "21 N·m", "in the wrench’s own unit under either set");
        close(base(answer(&panel, labels::EXACT_SETTING)), 25.0 * 285.0 / 325.0, 1e-9, "exact");
        close(base(answer(&panel, labels::FASTENER_GETS)), 21.0 * 325.0 / 285.0, 1e-9, "gets");
        assert!(panel.warnings.is_empty(), "{:?}", panel.warnings);
        assert!(panel.note.contains(notes::INSIDE), "{}", panel.note);
    }
    let panel = torque(&header_nut(), UnitSet::Metric);
    assert_eq!(figure(answer(&panel, labels::EXACT_SETTING)), "21.92 N·m");
    assert_eq!(range(answer(&panel, labels::FASTENER_GETS)), ["22.99", "24.91"]);
    assert_eq!(
        panel.note,
        "only with the 40\u{a0}mm adapter in line, hand at 285\u{a0}mm · exact setting 21.92\u{a0}N·m · inside the manual’s range · wrench ±4\u{a0}% by ISO 6789 · 22\u{a0}N·m is nearer, but could pass 26.00\u{a0}N·m"
    );
    let substituted = |label| {
        let working = answer(&panel, label).working.clone().unwrap();
        working.written().substituted
    };
    assert_eq!(
        substituted(labels::EXACT_SETTING),
        "25\u{a0}N·m · 285\u{a0}mm / (285\u{a0}mm + 40\u{a0}mm · cos 0°) = 21.92\u{a0}N·m"
    );
    assert_eq!(substituted(labels::SET_TO), "21 · 1\u{a0}N·m = 21.00\u{a0}N·m");
    assert_eq!(
        substituted(labels::FASTENER_GETS),
        "21\u{a0}N·m · (1 ± 4\u{a0}%) · (285\u{a0}mm + 40\u{a0}mm · cos 0°) / 285\u{a0}mm = 23.95\u{a0}N·m"
    );
    // The wrench is marked in N·m, so what is set on it stays in N·m, working and all; 285 mm are 11.2205 in.
    let panel = torque(&header_nut(), UnitSet::Us);
    assert_eq!(figure(answer(&panel, labels::EXACT_SETTING)), "21.92 N·m");
    assert_eq!(
        answer(&panel, labels::EXACT_SETTING).working.as_ref().unwrap().written().substituted,
        "25\u{a0}N·m · 11.2205\u{a0}in / (11.2205\u{a0}in + 1.5748\u{a0}in · cos 0°) = 21.92\u{a0}N·m"
    );
}

/// By hand: 18 N·m through 280 + 40 mm is 15.75 on the wrench. Set to 16 the fastener gets 16 · 320 / 280 · 1.04 = 19.02 at
/// most, over 19; set to 15 it gets 16.46 to 17.83. From 17.6 to 24 it is the other way: 16 gives 17.55 at least, 17 18.65.
#[test]
fn a_mark_that_is_not_the_nearest_says_why() {
    let with = |figure: &str, graduation: &str| {
        let mut kept = header_nut();
        kept.put(facts::TORQUE.id(), Entry::new(figure, 0));
        kept.put(facts::WRENCH_LENGTH.id(), Entry::new("280 mm", 0));
        kept.put(facts::GRADUATION.id(), Entry::new(graduation, 0));
        torque(&kept, UnitSet::Metric)
    };
    let lower = with("18 (16–19) N·m", "1 N·m");
    assert_eq!(figure(&lower.head), "15 N·m");
    let why = "16\u{a0}N·m is nearer, but could pass 19.00\u{a0}N·m";
    assert!(lower.note.contains(why), "{}", lower.note);
    let higher = with("18 (17.6–24) N·m", "1 N·m");
    assert_eq!(figure(&higher.head), "17 N·m");
    let why = "16\u{a0}N·m is nearer, but could fall short of 17.60\u{a0}N·m";
    assert!(higher.note.contains(why), "{}", higher.note);
    for (figure, graduation) in
        [("18 (16–21) N·m", "1 N·m"), ("18 N·m", "1 N·m"), ("18 (16–19) N·m", "")]
    {
        let panel = with(figure, graduation);
        assert!(!panel.note.contains("is nearer"), "{figure}: {}", panel.note);
    }
}

/// Which blanks an adapter asks for, and what it does to the answer.
#[test]
fn adapters_ask_for_what_they_need() {
    let with = |adapter: &str, more: &[(Id, &str)]| {
        let mut kept = typed(&[(facts::TORQUE.id(), "40 N·m"), (facts::ADAPTER.id(), adapter)]);
        for (id, text) in more {
            kept.put(*id, Entry::new(*text, 0));
        }
        torque(&kept, UnitSet::Metric)
    };
    let lengths = [(facts::WRENCH_LENGTH.id(), "350 mm"), (facts::ADAPTER_LENGTH.id(), "45 mm")];
    let [length, angle, wrench] =
        [facts::ADAPTER_LENGTH.id(), facts::ADAPTER_ANGLE.id(), facts::WRENCH_LENGTH.id()];
    let asks = |panel: &Panel| [length, angle, wrench].map(|it| panel.blanks.contains(&it));

    let none = with("none", &[]);
    assert_eq!(asks(&none), [false; 3]);
    assert_eq!(none.head.label, labels::EXACT_SETTING, "without a graduation there is no mark");
    assert_eq!(figure(&none.head), "40.00 N·m");
    assert_eq!(lacks(answer(&none, labels::SET_TO)), [84]);

    let square = with("right_angle", &[]);
    assert_eq!(asks(&square), [true, false, true]);
    assert_eq!(figure(&square.head), "40.00 N·m", "at 90° the lengths change nothing");
    assert_eq!(figure(&with("right_angle", &lengths).head), "40.00 N·m");

    let in_line = with("in_line", &[]);
    assert_eq!(asks(&in_line), [true, false, true]);
    assert_eq!(lacks(&in_line.head), [81, 73]);
    // By hand: 40 · 350 / 395 and 40 · 350 / 305.
    assert_eq!(figure(&with("in_line", &lengths).head), "35.44 N·m");
    assert_eq!(figure(&with("pointing_back", &lengths).head), "45.90 N·m");

    let other = with("other_angle", &[]);
    assert_eq!(asks(&other), [true; 3]);
    assert_eq!(lacks(&other.head), [81, 73, 74]);
    let mut all = lengths.to_vec();
    all.push((angle, "60°"));
    // By hand: cos 60° = 1/2: 40 · 350 / 372.5.
    assert_eq!(figure(&with("other_angle", &all).head), "37.58 N·m");
    // One that is refused hides none that is missing.
    let refused = with("other_angle", &[(wrench, "12 V")]);
    let ids: Vec<u16> = refused.head.lacks().iter().map(|it| it.id().0).collect();
    assert_eq!(ids, [81, 73, 74]);
}

/// Source: the project's workshop rules: 70 mL line, 200 mL bowls, 5 % left: 669 mL, 13 km at 5 L/100 km, but at least
/// 15 to 20 km.
#[test]
fn a_carburetor_is_ridden_through() {
    let mut kept = typed(&[
        (facts::FUEL_SUPPLY.id(), "carburetor"),
        (facts::LINE_VOLUME.id(), "70 mL"),
        (facts::BOWLS_VOLUME.id(), "200 mL"),
        (facts::CONSUMPTION.id(), "5 L/100 km"),
    ]);
    for set in SETS {
        let panel = plan::last_run(&kept, set);
        close(base(answer(&panel, labels::FUEL_TO_DRAW)), 669e-6, 0.5e-6, "to draw");
        close(base(&panel.head), 20e3, 1e-6, "at least");
        assert_eq!(panel.note, notes::RIDE_THEN_BOWLS);
        assert!(panel.blanks.contains(&facts::BOWLS_VOLUME.id()));
    }
    let panel = plan::last_run(&kept, UnitSet::Metric);
    assert_eq!(figure(answer(&panel, labels::FUEL_TO_DRAW)), "669 mL");
    assert_eq!(range(&panel.head), ["15", "20"]);
    assert_eq!(
        answer(&panel, labels::FUEL_TO_DRAW).working.as_ref().unwrap().written().substituted,
        "70\u{a0}mL + 200\u{a0}mL · ln(1 / 5\u{a0}%) = 669\u{a0}mL"
    );
    // Miles to the gallon are a distance for a volume: divided by them it would be no distance.
    let american = plan::last_run(&kept, UnitSet::Us);
    let substituted = &american.head.working.as_ref().unwrap().written().substituted;
    assert_eq!(
        substituted,
        "max(12.4274\u{a0}mi, 22.6265\u{a0}US fl oz / (1 / 47.0429\u{a0}mpg (US))) = 12\u{a0}mi"
    );
    // 2 L/100 km: 669 mL are 33 km, more than practice asks.
    kept.put(facts::CONSUMPTION.id(), Entry::new("2 L/100 km", 0));
    close(base(&plan::last_run(&kept, UnitSet::Us).head), 33.46e3, 10.0, "as the sum asks");
    // Injection has no bowls and asks for none.
    kept.put(facts::FUEL_SUPPLY.id(), Entry::new("injection", 0));
    let panel = plan::last_run(&kept, UnitSet::Metric);
    assert!(!panel.blanks.contains(&facts::BOWLS_VOLUME.id()));
    assert_eq!(figure(answer(&panel, labels::FUEL_TO_DRAW)), "70 mL");
}

/// Source: tests/reference/fluids/stabilizer.csv, rows S01 and S11, each with its own source.
#[test]
fn stabilizer_by_the_reference() {
    let path = format!("{}/tests/reference/fluids/stabilizer.csv", env!("CARGO_MANIFEST_DIR"));
    let rows: Vec<_> =
        csv::Reader::from_path(path).unwrap().records().map(Result::unwrap).collect();
    let mut seen = 0;
    for row in rows.iter().filter(|row| matches!(&row[0], "S01" | "S11")) {
        let kept = typed(&[
            (facts::STABILIZER_LABEL.id(), &row[1]),
            (facts::TANK_VOLUME.id(), &format!("{} L", &row[5])),
            (facts::FUEL_IN_TANK.id(), &format!("{} L", &row[3])),
            (facts::FILL_TO.id(), "100 %"),
        ]);
        for set in SETS {
            let panel = plan::fuel(&kept, set);
            let added: f64 = row[4].parse().unwrap();
            let dose: f64 = row[9].parse().unwrap();
            close(base(answer(&panel, labels::FUEL_TO_ADD)), added * 1e-3, 1e-9, &row[0]);
            close(base(&panel.head), dose * 1e-6, 0.0501e-6, &row[0]);
            let cannot_mix = panel.warnings.iter().any(|it| it == notes::FULL_CANNOT_MIX);
            assert_eq!(cannot_mix, added == 0.0, "full, so it cannot mix");
            // These rows fill to the brim.
            assert!(panel.warnings.iter().any(|it| it == notes::NO_ROOM_TO_GROW));
        }
        seen += 1;
    }
    assert_eq!(seen, 2);
}

/// Source: tests/reference/battery/climate.csv, Canadian Climate Normals 1971–2000, and the project's workshop rules: AGM
/// 10 Ah, about 1 mA, 134 days: typical 66 %, band at least 49–84 %.
#[test]
fn the_band_holds_what_the_owner_does_not_know() {
    let path = format!("{}/tests/reference/battery/climate.csv", env!("CARGO_MANIFEST_DIR"));
    let means: Vec<String> = csv::Reader::from_path(path)
        .unwrap()
        .records()
        .map(Result::unwrap)
        .filter(|row| row[0].starts_with("Montreal"))
        .map(|row| row[3].to_owned())
        .collect();
    assert_eq!(means.len(), 12);
    let mut kept = typed(&[
        (facts::CHEMISTRY.id(), "agm"),
        (facts::CAPACITY.id(), "10 Ah"),
        (facts::CHARGE_WHEN_PARKED.id(), "100 %"),
        (facts::KEY_OFF_DRAW.id(), "about 1 mA"),
        (facts::PARK_DATE.id(), "2025-11-01"),
        (facts::RIDE_DATE.id(), "2026-03-15"),
        (facts::COLDEST_NIGHT.id(), "-30 °C"),
    ]);
    kept.put(facts::MONTHLY_MEANS.id(), Entry::new(means.join(" "), units::CELSIUS.code));
    assert_eq!(figure(&plan::season(&kept, UnitSet::Metric)), "134");
    for set in SETS {
        let panel = plan::battery(&kept, set);
        close(base(&panel.head), 0.66, 0.015, "typical");
        let [low, high] = range(&panel.head).map(|it| it.parse::<f64>().unwrap());
        assert!(low <= 49.0 && high >= 84.0, "{low}–{high}");
        assert!(panel.note.starts_with("look at the meter by "), "{}", panel.note);
    }
    let course = plan::course(&kept).unwrap();
    assert_eq!((course.charge.len(), course.celsius.len()), (135, 134), "days, and nights between");
    let coldest = course.celsius.iter().copied().fold(f64::INFINITY, f64::min);
    close(coldest, -10.2, 1e-9, "the middle of January is its mean");
}

/// The same bike typed on either side of the ocean, and shown under either set: the amounts are one.
#[test]
fn a_set_changes_words_never_amounts() {
    let day = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
    for typed_in in SETS {
        let kept = example(day, typed_in);
        for line in Line::ALL {
            let (metric, american) =
                (panel_of(line, &kept, UnitSet::Metric), panel_of(line, &kept, UnitSet::Us));
            assert_eq!(metric.blanks, american.blanks);
            assert_eq!(metric.warnings.len(), american.warnings.len());
            for (one, other) in metric.all().zip(american.all()) {
                assert_eq!(one.label, other.label);
                assert!(one.lacks().is_empty(), "the example lacks nothing: {one:?}");
                match (&one.figure, &other.figure) {
                    (Figure::Number { .. }, Figure::Number { .. }) => {
                        close(base(other), base(one), 1e-9 * base(one).abs(), one.label);
                    }
                    (one, other) => assert_eq!(one, other),
                }
            }
        }
    }
}

/// Nothing to pour is an answer; a fact that is missing is a lack.
#[test]
fn zero_is_an_answer() {
    let mut kept = typed(&[
        (facts::TANK_VOLUME.id(), "16 L"),
        (facts::FUEL_IN_TANK.id(), "16 L"),
        (facts::FILL_TO.id(), "100 %"),
        (facts::ALREADY_TREATED.id(), "100 %"),
        (facts::STABILIZER_LABEL.id(), "1:320"),
    ]);
    let panel = plan::fuel(&kept, UnitSet::Metric);
    assert_eq!(figure(&panel.head), "0.0 mL");
    assert_eq!(figure(answer(&panel, labels::FUEL_TO_ADD)), "0.0 L");
    assert_eq!(panel.warnings, [notes::NO_ROOM_TO_GROW], "nothing to pour in");
    kept.put(facts::FUEL_IN_TANK.id(), Entry::new("0", units::LITER.code));
    assert_eq!(figure(answer(&plan::fuel(&kept, UnitSet::Metric), labels::FUEL_TO_ADD)), "16.0 L");
    kept.put(facts::FUEL_IN_TANK.id(), Entry::default());
    assert_eq!(lacks(&plan::fuel(&kept, UnitSet::Metric).head), [11]);
    // No oil on the shelf, and enough of it: zero bottles.
    let mut kept = typed(&[
        (facts::OIL_CHANGE.id(), "drain_only"),
        (facts::FILL_WITHOUT_FILTER.id(), "3 L"),
        (facts::BOTTLE_SIZE.id(), "1 L"),
        (facts::OIL_ON_SHELF.id(), "0 L"),
    ]);
    let bottles =
        |kept: &Kept| figure(answer(&plan::oil(kept, UnitSet::Metric), labels::BOTTLES_TO_BUY));
    assert_eq!(bottles(&kept), "3");
    kept.put(facts::OIL_ON_SHELF.id(), Entry::new("3 L", 0));
    assert_eq!(bottles(&kept), "0");
    // Key-off draw 0: the lead is off.
    let mut kept = example(NaiveDate::from_ymd_opt(2026, 11, 25).unwrap(), UnitSet::Metric);
    kept.put(facts::KEY_OFF_DRAW.id(), Entry::new("0", units::MILLIAMPERE.code));
    assert!(plan::battery(&kept, UnitSet::Metric).head.lacks().is_empty());
}

/// What does not go together is said at the fact that can mend it, in the words of the law that found it.
#[test]
fn refusals_land_on_their_fact() {
    let bike = |changed: &[(Id, &str)]| {
        let mut kept = example(NaiveDate::from_ymd_opt(2026, 11, 25).unwrap(), UnitSet::Metric);
        for (id, text) in changed {
            kept.put(*id, Entry::new(*text, 0));
        }
        kept
    };
    use facts::*;
    type Case<'a> = (Line, &'a [(Id, &'a str)], Id, &'a str);
    let cases: &[Case<'_>] = &[
        (
            Line::Fuel,
            &[(FUEL_IN_TANK.id(), "17 L")],
            FUEL_IN_TANK.id(),
            "fuel in the tank has to be at most the tank volume",
        ),
        (
            Line::Fuel,
            &[(FILL_TO.id(), "17 L")],
            FILL_TO.id(),
            "volume to fill to has to be at most the tank volume",
        ),
        (
            Line::Oil,
            &[(FILL_WITH_FILTER.id(), "2.8 L")],
            FILL_WITH_FILTER.id(),
            "fill with filter has to be at least the fill without filter",
        ),
        (
            Line::Oil,
            &[(BETWEEN_MARKS.id(), "3.5 L")],
            BETWEEN_MARKS.id(),
            "volume between the marks has to be at most the oil needed",
        ),
        (
            Line::Oil,
            &[(OIL_CHANGE.id(), "after_overhaul"), (FILL_AFTER_OVERHAUL.id(), "3 L")],
            FILL_AFTER_OVERHAUL.id(),
            "fill after overhaul has to be at least the fill with filter",
        ),
        (
            Line::Torques,
            &[(TORQUE.id(), "25–25 N·m")],
            TORQUE.id(),
            "lowest torque has to be less than the highest torque",
        ),
        (
            Line::Torques,
            &[(ADAPTER.id(), "pointing_back"), (ADAPTER_LENGTH.id(), "285 mm")],
            ADAPTER_LENGTH.id(),
            "an adapter pointing back has to end between the square drive and the hand",
        ),
        (
            Line::Torques,
            &[(LOWEST_MARK.id(), "60 N·m")],
            HIGHEST_MARK.id(),
            "highest mark has to be more than the lowest mark",
        ),
        (
            Line::Torques,
            &[(GRADUATION.id(), "70 N·m")],
            GRADUATION.id(),
            "graduation has to put a mark between the lowest and the highest mark",
        ),
        (
            Line::Battery,
            &[(RIDE_DATE.id(), "2026-11-13")],
            RIDE_DATE.id(),
            "ride date has to be the park date or a later day",
        ),
        (
            Line::Battery,
            &[(RIDE_DATE.id(), "2029-11-15")],
            RIDE_DATE.id(),
            "ride date has to be within three years of the park date",
        ),
        (Line::Battery, &[(CHEMISTRY.id(), "lifepo4")], CAPACITY.id(), notes::ENERGY_WANTED),
        (Line::Battery, &[(CAPACITY.id(), "51 Wh")], CAPACITY.id(), notes::CHARGE_WANTED),
        // Read alone and refused alone: the reader's own words.
        (
            Line::Fuel,
            &[(TANK_VOLUME.id(), "12 V")],
            TANK_VOLUME.id(),
            "“V” is not a unit for this: write L, mL, US gal, US qt, US pt, US fl oz, US tbsp, US tsp, imp gal, imp qt, imp pt or imp fl oz",
        ),
        (
            Line::LastRun,
            &[(LINE_VOLUME.id(), "0 mL")],
            LINE_VOLUME.id(),
            "has to be more than 0 mL and at most 2000 mL",
        ),
    ];
    for (line, changed, id, words) in cases {
        for set in SETS {
            let panel = panel_of(*line, &bike(changed), set);
            assert_eq!(panel.refusal(*id).as_deref(), Some(*words), "{line:?} {changed:?}");
            for about in TABLE.iter().filter(|it| it.id != *id) {
                assert_eq!(panel.refusal(about.id), None, "{line:?} {changed:?}: {}", about.label);
            }
        }
    }
    let panel = plan::battery(&bike(&[(CHARGE_BELOW.id(), "9 V")]), UnitSet::Metric);
    let words = panel.refusal(CHARGE_BELOW.id()).unwrap();
    assert!(words.starts_with("voltage to charge below has to be between "), "{words}");
    let panel = plan::battery(&bike(&[(RESTING_VOLTAGE.id(), "15.5 V")]), UnitSet::Metric);
    let words = panel.refusal(RESTING_VOLTAGE.id()).unwrap();
    assert!(words.starts_with("resting voltage has to be under "), "{words}");
}

/// Facts, and which of them were asked for.
struct Recorder<'a> {
    from: &'a Kept,
    asked: RefCell<BTreeSet<Id>>,
}

impl Facts for Recorder<'_> {
    fn entry(&self, id: Id) -> Entry {
        self.asked.borrow_mut().insert(id);
        self.from.entry(id)
    }
}

fn asked(line: Line, from: &Kept) -> BTreeSet<Id> {
    let recorder = Recorder { from, asked: RefCell::default() };
    let _ = panel_of(line, &recorder, UnitSet::Metric);
    recorder.asked.into_inner()
}

/// A line runs again only for its own facts: it asks for those that it has a blank for, and no others.
#[test]
fn a_line_asks_only_for_its_own_facts() {
    let day = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
    let mut bikes = vec![Kept::default(), example(day, UnitSet::Metric), example(day, UnitSet::Us)];
    for (id, text) in [
        (facts::FUEL_SUPPLY.id(), "carburetor"),
        (facts::OIL_CHANGE.id(), "after_overhaul"),
        (facts::OIL_CHANGE.id(), "drain_only"),
        (facts::ADAPTER.id(), "none"),
        (facts::ADAPTER.id(), "right_angle"),
        (facts::ADAPTER.id(), "pointing_back"),
        (facts::ADAPTER.id(), "other_angle"),
        (facts::RESTING_VOLTAGE.id(), "12.7 V"),
        (facts::CHEMISTRY.id(), "lifepo4"),
        (facts::LEVEL_READS.id(), "50 %"),
        (facts::CHECK_TEMPERATURE.id(), "80 °C"),
        (facts::OIL_GRADE.id(), "10W-40"),
        (facts::JASO_CLASS.id(), "mb"),
        (facts::BOTTLE_SIZE.id(), "1 L; 4 L"),
        (facts::STABILIZER_LABEL.id(), "1 oz per gal"),
        (facts::WARMEST_FUEL.id(), "30 °C"),
        (facts::HIGHEST_DOSE.id(), "2"),
        (facts::FUEL_TYPE.id(), "e10"),
        (facts::COOLING.id(), "air"),
        (facts::TIRES_ARE.id(), "warm"),
        (facts::FRONT_READS.id(), "2.4 bar"),
        (facts::CLUTCH_FLUID.id(), "dot4"),
        (facts::OTHER_OILS.id(), "final_drive gearbox primary fork two_stroke"),
        (facts::OTHER_OILS.id(), "none"),
    ] {
        let mut bike = example(day, UnitSet::Metric);
        bike.put(id, Entry::new(text, 0));
        bikes.push(bike);
    }
    for bike in &bikes {
        let mut by_line: Vec<BTreeSet<Id>> = Vec::new();
        for line in Line::ALL {
            let panel = panel_of(line, bike, UnitSet::Metric);
            let own: BTreeSet<Id> =
                panel.blanks.iter().chain(&panel.stated).chain(&panel.more).copied().collect();
            let asked = asked(line, bike);
            // How long it stands decides whether fuel is treated at all; the dates are asked in the sheet's sentence.
            let drawer = [
                facts::WRENCH_LENGTH.id(),
                facts::WRENCH_NAME.id(),
                facts::WRENCH_KEY.id(),
                facts::TAKEN_WRENCH.id(),
            ];
            let dates = [
                facts::PARK_DATE.id(),
                facts::RIDE_DATE.id(),
                facts::COLDEST_NIGHT.id(),
                facts::WHERE_IT_STANDS.id(),
                facts::MONTHLY_MEANS.id(),
                facts::CLIMATE.id(),
                facts::WARMER_BY.id(),
                facts::DAY_AND_NIGHT.id(),
            ];
            let asked: BTreeSet<Id> = match line {
                // The season's dates, and its coldest night with what that is counted from, belong to more than one line.
                Line::Fuel | Line::Coolant | Line::OtherOils | Line::Tires | Line::Brakes => {
                    asked.into_iter().filter(|it| !dates.contains(it)).collect()
                }
                // Asked in the drawer, or made by the page.
                Line::Torques => asked.into_iter().filter(|it| !drawer.contains(it)).collect(),
                _ => asked,
            };
            let strange: Vec<_> = asked.difference(&own).collect();
            assert!(strange.is_empty(), "{line:?} asks for {strange:?}, for which it has no blank");
            by_line.push(asked);
        }
        for (at, one) in by_line.iter().enumerate() {
            for other in &by_line[at + 1..] {
                let both: Vec<_> = one.intersection(other).collect();
                assert!(both.is_empty(), "two lines run again for {both:?}");
            }
        }
    }
    let ids = |line| asked(line, &bikes[1]).into_iter().map(|it| it.0).collect::<Vec<_>>();
    assert_eq!(ids(Line::Oil), [30, 31, 32, 34, 35, 36, 37, 38, 39, 40, 41, 44, 45, 46, 47]);
    assert_eq!(ids(Line::Fuel), [10, 11, 12, 13, 14, 20, 23, 24, 25, 26, 60, 61]);
    assert_eq!(ids(Line::LastRun), [15, 16, 18]);
    assert_eq!(
        ids(Line::Torques),
        [70, 71, 72, 73, 75, 77, 79, 80, 81, 82, 83, 84, 85, 86, 90, 91, 92, 93, 94]
    );
    assert_eq!(
        ids(Line::Battery),
        [50, 51, 52, 53, 54, 55, 56, 60, 61, 62, 63, 64, 67, 68, 69, 146, 148]
    );
}

/// By hand: 25 N·m through 285 + 40 mm is 21.92 on the wrench. No number stands large that it cannot be set to.
#[test]
fn a_wrench_that_cannot_serve_says_so() {
    for (mark, other, why) in [
        (
            facts::HIGHEST_MARK.id(),
            facts::LOWEST_MARK.id(),
            "setting has to be at or below the highest mark: take a larger wrench",
        ),
        (
            facts::LOWEST_MARK.id(),
            facts::HIGHEST_MARK.id(),
            "setting has to be at or above the lowest mark: take a smaller wrench",
        ),
    ] {
        let at = if mark == facts::HIGHEST_MARK.id() { "20 N·m" } else { "23 N·m" };
        let kept = typed(&[
            (facts::TORQUE.id(), "25 N·m"),
            (facts::ADAPTER.id(), "in_line"),
            (facts::WRENCH_LENGTH.id(), "285 mm"),
            (facts::ADAPTER_LENGTH.id(), "40 mm"),
            (facts::GRADUATION.id(), "1 N·m"),
            (mark, at),
            (other, ""),
        ]);
        let panel = torque(&kept, UnitSet::Metric);
        assert_eq!(panel.head.figure, Figure::Words(notes::NOT_THIS_WRENCH.to_owned()));
        assert!(panel.warnings.iter().any(|it| it == why), "{:?}", panel.warnings);
        assert!(
            panel.note.starts_with(&format!("exact setting 21.92\u{a0}N·m; {why}")),
            "{}",
            panel.note
        );
    }
}

/// Common practice and arithmetic: 13 N·m on a scale of fives is 15, 15 % over; lengths that are swapped are doubted.
#[test]
fn far_marks_and_odd_lengths_are_doubted() {
    let kept = typed(&[
        (facts::TORQUE.id(), "13 N·m"),
        (facts::ADAPTER.id(), "none"),
        (facts::GRADUATION.id(), "5 N·m"),
    ]);
    let panel = torque(&kept, UnitSet::Metric);
    assert_eq!(figure(&panel.head), "15 N·m");
    assert_eq!(panel.warnings, [notes::far_mark("15\u{a0}%", true)]);
    let kept = typed(&[
        (facts::TORQUE.id(), "25 N·m"),
        (facts::ADAPTER.id(), "in_line"),
        (facts::WRENCH_LENGTH.id(), "40 mm"),
        (facts::ADAPTER_LENGTH.id(), "300 mm"),
    ]);
    assert_eq!(torque(&kept, UnitSet::Metric).warnings, [notes::ODD_LENGTHS]);
}

/// Judged by a mechanic: a coldest night that is warmer than the winter's mean is a slip, most likely a lost minus; and
/// freezing is told from its first night on, not from its worst.
#[test]
fn freezing_is_told_in_time() {
    let mut kept = example(NaiveDate::from_ymd_opt(2026, 11, 25).unwrap(), UnitSet::Metric);
    kept.put(facts::COLDEST_NIGHT.id(), Entry::new("24", units::CELSIUS.code));
    let refusal = plan::battery(&kept, UnitSet::Metric).refusal(facts::COLDEST_NIGHT.id());
    assert!(refusal.is_some_and(|it| it.ends_with("is the minus missing?")));
    kept.put(facts::COLDEST_NIGHT.id(), Entry::new("-32", units::CELSIUS.code));
    kept.put(facts::CHEMISTRY.id(), Entry::new("flooded_antimony", 0));
    kept.put(facts::CHARGE_WHEN_PARKED.id(), Entry::new("50", units::PERCENT.code));
    kept.put(facts::KEY_OFF_DRAW.id(), Entry::new("0", units::MILLIAMPERE.code));
    let panel = plan::battery(&kept, UnitSet::Metric);
    // Half charged acid freezes at −26 °C (METHOD of the reference values): it does on such a night, on every edge.
    assert!(
        panel.warnings.iter().any(|it| it.starts_with("It freezes on a night as cold as that")),
        "{:?}",
        panel.warnings
    );
}

/// Every blank of every line is a fact of the table, once; and every line's words are there.
#[test]
fn blanks_and_words() {
    for line in Line::ALL {
        for from in [Kept::default(), example(NaiveDate::default(), UnitSet::Metric)] {
            let panel = panel_of(line, &from, UnitSet::Metric);
            let all: Vec<Id> =
                panel.blanks.iter().chain(&panel.stated).chain(&panel.more).copied().collect();
            let once: BTreeSet<Id> = all.iter().copied().collect();
            assert_eq!(all.len(), once.len(), "{line:?} asks twice");
            assert!(all.iter().all(|it| facts::about(*it).is_some()));
            let labels: BTreeSet<_> = panel.all().map(|it| it.label).collect();
            assert_eq!(labels.len(), panel.all().count(), "{line:?} answers twice");
        }
        let said = line.words();
        for words in [said.quick, said.quick_reason] {
            assert!(!words.is_empty() && !words.ends_with('.'), "{line:?}");
        }
    }
}

/// What the part of the address behind # opens, all of it, and what nobody would type.
#[test]
fn addresses() {
    use Address::{Quick, Sheet};
    use QuickSum::Of;
    use Side::{LayUp, WakeUp};
    for (text, expected) in [
        ("", Sheet(None, None, None)),
        ("#", Sheet(None, None, None)),
        ("#layup", Sheet(Some(LayUp), None, None)),
        ("layup", Sheet(Some(LayUp), None, None)),
        ("#wakeup", Sheet(Some(WakeUp), None, None)),
        ("#wakeup/open", Sheet(Some(WakeUp), WakeUp.step("open"), None)),
        ("#layup/fuel", Sheet(Some(LayUp), LayUp.step("fuel"), None)),
        ("#layup/last-run", Sheet(Some(LayUp), LayUp.step("last-run"), None)),
        ("#layup/oil", Sheet(Some(LayUp), LayUp.step("oil"), None)),
        ("#layup/torques", Sheet(Some(LayUp), LayUp.step("torques"), None)),
        ("#layup/battery", Sheet(Some(LayUp), LayUp.step("battery"), None)),
        ("#layup/torques/1", Sheet(Some(LayUp), LayUp.step("torques"), Some(1))),
        ("#layup/torques/12", Sheet(Some(LayUp), LayUp.step("torques"), Some(12))),
        ("#torque", Quick(Of(Line::Torques))),
        ("#oil", Quick(Of(Line::Oil))),
        ("#fuel", Quick(Of(Line::Fuel))),
        ("#battery", Quick(Of(Line::Battery))),
        ("#coolant", Quick(Of(Line::Coolant))),
        ("#tires", Quick(Of(Line::Tires))),
        ("#layup/other-oils", Sheet(Some(LayUp), LayUp.step("other-oils"), None)),
        ("#layup/brakes", Sheet(Some(LayUp), LayUp.step("brakes"), None)),
        ("#1.sCcsCRYA", Address::Link("1.sCcsCRYA".into())),
        ("1.sCcsCRYA", Address::Link("1.sCcsCRYA".into())),
        ("#2.x", Address::Link("2.x".into())),
        ("#1.", Address::Link("1.".into())),
    ] {
        assert_eq!(address::read(text), expected, "{text}");
    }
    for side in Side::ALL {
        for step in side.steps() {
            let address = format!("#{}/{}", side.key(), step.choice.key);
            assert_eq!(address::read(&address), Sheet(Some(side), Some(step), None));
        }
    }
    for sum in QuickSum::ALL {
        assert_eq!(address::read(&format!("#{}", sum.key())), Quick(sum));
    }
    for text in [
        "torques",
        "last-run",
        "OIL",
        "Layup",
        "layup/",
        "layup/nothing",
        "layup/oil/",
        "layup/torques/0",
        "layup/torques/-1",
        "layup/torques/x",
        "layup/torques/1/2",
        "layup/torques/99999999999999999999",
        "/layup",
        "##oil",
        "oil?x=1",
        "<script>",
        "..",
        ".1",
        "a.b",
        "layup/torques/１",
        "%6Fil",
        " oil",
    ] {
        let shown = text.strip_prefix('#').unwrap_or(text).to_owned();
        assert_eq!(address::read(text), Address::Unknown(shown), "{text}");
    }
    // A long one is shortened on a letter's end before it is shown.
    let long = "漢".repeat(1_000_000);
    assert_eq!(address::read(&long), Address::Unknown("漢".repeat(60)));
}
