//! The oil line: bottles of several sizes, its level, its heat, its label.

use super::*;
use torpor::words::oil as words;

fn change(more: &[(Id, &str)]) -> Kept {
    let mut kept = typed(&[
        (facts::OIL_CHANGE.id(), "with_filter"),
        (facts::FILL_WITH_FILTER.id(), "3100 mL"),
        (facts::BETWEEN_MARKS.id(), "300 mL"),
        (facts::BOTTLE_SIZE.id(), "1 L"),
        (facts::OIL_ON_SHELF.id(), "0 L"),
    ]);
    for (id, text) in more {
        kept.put(*id, Entry::new(*text, 0));
    }
    kept
}

/// By hand: 3.1 L of half liters, liters and four liters: 3 + 1 leave 0.4 L, one of four leaves 0.9.
#[test]
fn several_bottle_sizes_are_combined() {
    for text in ["1 L; 0.5 L; 4 L", "1, 0.5 and 4 L", "1 L or 500 mL or 4 L", "1 L\n0,5 L\n4 L;"] {
        let panel = plan::oil(&change(&[(facts::BOTTLE_SIZE.id(), text)]), UnitSet::Metric);
        assert_eq!(words_of(&panel, labels::BOTTLES_TO_BUY), "3 × 1\u{a0}L + 1 × 0.5\u{a0}L");
        assert_eq!(figure(answer(&panel, labels::LEFT_OVER)), "0.40 L");
        let fewest = words_of(&panel, labels::FEWEST_BOTTLES);
        assert_eq!(fewest, "1 × 4\u{a0}L, 0.90\u{a0}L left over");
        assert!(panel.note.ends_with("buy 3 × 1\u{a0}L + 1 × 0.5\u{a0}L, 0.40\u{a0}L left over"));
    }
    // One size is as it was, however it is written: saved entries keep their meaning.
    for text in ["1 L", "1000 mL", "1 L (1.06 US qt, 0.88 imp qt)"] {
        let panel = plan::oil(&change(&[(facts::BOTTLE_SIZE.id(), text)]), UnitSet::Metric);
        assert_eq!(figure(answer(&panel, labels::BOTTLES_TO_BUY)), "4", "{text}");
        assert!(panel.answer(labels::FEWEST_BOTTLES).is_none());
    }
    for (text, accepted) in [
        ("1–4 L", "is a range: one number is wanted here"),
        ("0; 4 L", "has to be more than 0 L and at most 250 L"),
        ("1 L; 4 V", "is not a unit for this"),
        ("one; 4 L", "is not a number"),
        ("1/4", "write each size with its unit"),
        ("1/4 L", "write each size with its unit"),
        ("1 and 5 US qt", "write each size with its unit"),
    ] {
        let panel = plan::oil(&change(&[(facts::BOTTLE_SIZE.id(), text)]), UnitSet::Metric);
        let why = panel.refusal(facts::BOTTLE_SIZE.id()).unwrap();
        assert!(why.contains(accepted), "{text}: {why}");
    }
    // A number alone is of the blank, never of the one beside it.
    let mut quarts = change(&[]);
    quarts.put(facts::BOTTLE_SIZE.id(), Entry::new("1; 1 gal", units::US_QT.code));
    let refused = plan::oil(&quarts, UnitSet::Us).refusal(facts::BOTTLE_SIZE.id()).unwrap();
    assert_eq!(refused, words::SIZE_AND_UNIT);
    quarts.put(facts::BOTTLE_SIZE.id(), Entry::new("1; 5 qt", units::US_QT.code));
    assert!(plan::oil(&quarts, UnitSet::Us).refusal(facts::BOTTLE_SIZE.id()).is_none());
    let enough = [(facts::BOTTLE_SIZE.id(), "1 L; 4 L"), (facts::OIL_ON_SHELF.id(), "4 L")];
    let panel = plan::oil(&change(&enough), UnitSet::Us);
    assert_eq!(words_of(&panel, labels::BOTTLES_TO_BUY), "none");
}

/// A number alone among sizes has the unit of the blank, and how they were read is said.
#[test]
fn sizes_are_read_back() {
    let about = facts::about(facts::BOTTLE_SIZE.id()).unwrap();
    let echo = |text: &str, unit: &Unit| facts::echo(about, &Entry::new(text, unit.code));
    assert_eq!(echo("1 and 5 US qt", &units::US_QT).as_deref(), Some("read as 1 US qt, 5 US qt"));
    assert_eq!(echo("1; 4", &units::US_QT).as_deref(), Some("read as 1 US qt, 4 US qt"));
    assert_eq!(echo("1", &units::LITER), None);
    assert_eq!(echo("0.5", &units::LITER), None);
    assert_eq!(facts::as_read(about, &Entry::new("1; 4", units::LITER.code)), "1; 4 L");
}

/// By hand: half of 300 mL lack at half; of a range the least is advised; 20 % over the full mark are 60 mL too much.
#[test]
fn the_level_after_the_run_says_what_to_do() {
    let mut kept = change(&[]);
    let mut with = |level: &str| {
        kept.put(facts::LEVEL_READS.id(), Entry::new(level, 0));
        plan::oil(&kept, UnitSet::Metric)
    };
    for (level, label, oil, warned) in [
        ("50 %", labels::ADD_BY_LEVEL, "0.15 L", None),
        ("40–60 %", labels::ADD_BY_LEVEL, "0.12 L", None),
        ("0 %", labels::ADD_BY_LEVEL, "0.30 L", None),
        ("-20 %", labels::ADD_BY_LEVEL, "0.36 L", Some(words::UNDER_THE_MARK)),
        ("120 %", labels::TAKE_OUT, "0.06 L", Some(words::OVER_THE_MARK)),
        ("200 %", labels::TAKE_OUT, "0.30 L", Some(words::OVER_THE_MARK)),
    ] {
        let panel = with(level);
        assert_eq!(figure(answer(&panel, label)), oil, "{level}");
        assert!(panel.warnings.iter().map(String::as_str).eq(warned), "{level}");
        let other = if label == labels::TAKE_OUT { labels::ADD_BY_LEVEL } else { labels::TAKE_OUT };
        assert!(panel.answer(other).is_none());
    }
    for level in ["-201 %", "301 %"] {
        let refused = with(level).refusal(facts::LEVEL_READS.id()).unwrap();
        assert_eq!(refused, "has to be between −200 % and 300 %");
    }
    // What harms is told without the volume between the marks, and first.
    kept.put(facts::BETWEEN_MARKS.id(), Entry::default());
    for (level, label, warned) in [
        ("160 %", labels::TAKE_OUT, words::OVER_THE_MARK),
        ("-5 %", labels::ADD_BY_LEVEL, words::UNDER_THE_MARK),
    ] {
        kept.put(facts::LEVEL_READS.id(), Entry::new(level, 0));
        let panel = plan::oil(&kept, UnitSet::Metric);
        assert_eq!(lacks(answer(&panel, label)), [34]);
        assert_eq!(panel.warnings, [warned, notes::MARKS_UNKNOWN]);
        assert_eq!(panel.answer(labels::ADD_BY_LEVEL).is_none(), label == labels::TAKE_OUT);
    }
    let panel = plan::oil(&kept, UnitSet::Metric);
    close(base(answer(&panel, labels::USED_OIL)), 3100e-6, 1e-12, "used oil");
    kept.put(facts::OIL_CHANGE.id(), Entry::new("after_overhaul", 0));
    kept.put(facts::FILL_AFTER_OVERHAUL.id(), Entry::new("3.6 L", 0));
    let panel = plan::oil(&kept, UnitSet::Metric);
    assert!(
        panel.answer(labels::USED_OIL).is_none(),
        "an engine that was apart was drained before"
    );
}

/// The bike's own way of reading, in one sentence; a dry sump is read hot.
#[test]
fn how_to_look_is_said() {
    let kept = change(&[
        (facts::LEVEL_READ_AT.id(), "stick_rested"),
        (facts::LEVEL_ENGINE.id(), "warm"),
        (facts::LEVEL_STAND.id(), "center_stand"),
        (facts::LEVEL_MINUTES.id(), "3"),
    ]);
    let panel = plan::oil(&kept, UnitSet::Metric);
    assert_eq!(
        words_of(&panel, labels::LEVEL_CHECK),
        "on the wiped stick, rested on its thread, not screwed in, engine warm, on the center stand, 3 minutes after stopping"
    );
    let dry =
        change(&[(facts::LEVEL_READ_AT.id(), "oil_tank"), (facts::LEVEL_ENGINE.id(), "cold")]);
    let panel = plan::oil(&dry, UnitSet::Metric);
    assert_eq!(panel.warnings, [words::DRY_SUMP_COLD]);
    assert!(!panel.note.contains("settle") && panel.note.contains("read the level hot"));
    assert!(panel.note.contains("two places"), "{}", panel.note);
    assert!(!plan::oil(&kept, UnitSet::Metric).note.contains("two places"));
    // A cold engine has not just been stopped, nor warm oil.
    for (more, doubted) in [
        ((facts::LEVEL_MINUTES.id(), "5"), true),
        ((facts::LEVEL_MINUTES.id(), "90"), false),
        ((facts::CHECK_TEMPERATURE.id(), "80 °C"), true),
        ((facts::CHECK_TEMPERATURE.id(), "10 °C"), false),
    ] {
        let cold = change(&[(facts::LEVEL_ENGINE.id(), "cold"), more]);
        let panel = plan::oil(&cold, UnitSet::Metric);
        assert_eq!(panel.warnings.iter().any(|it| it == words::NOT_COLD), doubted, "{more:?}");
    }
    assert!(plan::oil(&change(&[]), UnitSet::Metric).answer(labels::LEVEL_CHECK).is_none());
}

/// Source: oil_fill.csv, row O02 at 870 kg/m³: 143 mL.
#[test]
fn heat_is_shown_and_asks_for_both_temperatures() {
    let mut kept = change(&[(facts::CHECK_TEMPERATURE.id(), "80 °C")]);
    let panel = plan::oil(&kept, UnitSet::Metric);
    assert_eq!(lacks(answer(&panel, labels::HEAT_GROWTH)), [43], "20 °C is not guessed");
    kept.put(facts::POUR_TEMPERATURE.id(), Entry::new("68 °F", 0));
    let rough = plan::oil(&kept, UnitSet::Metric);
    let [low, high] = range(answer(&rough, labels::HEAT_GROWTH));
    assert!(low < high);
    kept.put(facts::OIL_DENSITY.id(), Entry::new("0.87 kg/L", 0));
    for set in SETS {
        let panel = plan::oil(&kept, set);
        close(base(answer(&panel, labels::HEAT_GROWTH)), 143e-6, 0.5e-6, "growth");
        close(base(answer(&panel, labels::FIRST_POUR)), 2950e-6, 1e-9, "the pour is not corrected");
    }
    kept.put(facts::CHECK_TEMPERATURE.id(), Entry::new("5 °C", 0));
    let panel = plan::oil(&kept, UnitSet::Metric);
    assert!(base(answer(&panel, labels::COLD_SHRINKING)) > 0.0);
    assert!(panel.answer(labels::HEAT_GROWTH).is_none(), "never higher by less than nothing");
    kept.put(facts::CHECK_TEMPERATURE.id(), Entry::new("-20 °C", 0));
    let why = plan::oil(&kept, UnitSet::Metric).refusal(facts::CHECK_TEMPERATURE.id()).unwrap();
    assert_eq!(why, "has to be between -18 °C and 149 °C".replace('-', "−"));
}

/// Source: SAE J300: 10W cranks down to −25 and pumps down to −30 °C.
#[test]
fn the_label_is_held_against_the_coldest_start() {
    let with = |grade: &str, start: &str| {
        let kept = change(&[(facts::OIL_GRADE.id(), grade), (facts::COLDEST_START.id(), start)]);
        plan::oil(&kept, UnitSet::Metric)
    };
    let panel = with("10W-40", "-25 °C");
    assert_eq!(figure(answer(&panel, labels::CRANKS_TO)), "−25 °C");
    assert_eq!(figure(answer(&panel, labels::PUMPS_TO)), "−30 °C");
    assert!(panel.warnings.is_empty(), "the limit itself is promised");
    let substituted = &answer(&panel, labels::CRANKS_TO).working.as_ref().unwrap().written();
    assert_eq!(substituted.substituted, "10 − 35 °C = −25\u{a0}°C");
    assert_eq!(with("10W-40", "-26 °C").warnings, [words::TOO_COLD_TO_CRANK]);
    assert_eq!(with("10W-40", "-31 °C").warnings, [words::TOO_COLD_TO_PUMP]);
    assert!(with("0W-40", "-31 °C").warnings.is_empty());
    assert_eq!(words_of(&with("SAE 30", ""), labels::CRANKS_TO), words::NO_WINTER_GRADE);
    assert!(with("SAE 30", "0 °C").warnings.is_empty());
    assert_eq!(with("SAE 30", "-1 °C").warnings, [words::TOO_COLD_TO_PUMP]);
    for never in ["never a flame or heater", "never by idling", "warmer place for some hours"] {
        assert!(words::TOO_COLD_TO_PUMP.contains(never));
    }
    // A slipping clutch comes before a slow starter.
    let kept = change(&[
        (facts::OIL_GRADE.id(), "10W-40"),
        (facts::COLDEST_START.id(), "-31 °C"),
        (facts::JASO_CLASS.id(), "mb"),
        (facts::WET_CLUTCH.id(), "yes"),
    ]);
    let warnings = plan::oil(&kept, UnitSet::Metric).warnings;
    assert_eq!(warnings, [words::MB_SLIPS, words::TOO_COLD_TO_PUMP]);
    let refused = with("75W-90", "").refusal(facts::OIL_GRADE.id()).unwrap();
    assert!(refused.starts_with("not an engine oil’s SAE grade"), "{refused}");
}

/// Source: JASO T903: MB is for clutches that run dry.
#[test]
fn the_class_is_held_against_the_clutch() {
    for (class, wet, said, warned) in [
        ("ma2", "yes", words::FOR_WET_CLUTCH, None),
        ("mb", "yes", words::NOT_FOR_WET_CLUTCH, Some(words::MB_SLIPS)),
        ("mb", "no", words::DRY_CLUTCH, None),
        ("mb", "", words::NOT_FOR_WET_CLUTCH, None),
        ("none", "yes", words::CLASS_UNKNOWN, Some(words::NO_CLASS)),
    ] {
        let kept = change(&[(facts::JASO_CLASS.id(), class), (facts::WET_CLUTCH.id(), wet)]);
        let panel = plan::oil(&kept, UnitSet::Metric);
        assert_eq!(words_of(&panel, labels::CLUTCH), said, "{class} {wet}");
        assert_eq!(panel.warnings.first().map(String::as_str), warned, "{class} {wet}");
    }
}
