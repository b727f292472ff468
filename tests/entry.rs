//! Reading what a person types: amounts, ranges, doses, days, temperatures, and the words of every refusal.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::NaiveDate;
use proptest::prelude::*;
use torpor::entry::{self, Entry, LONGEST, Read, Refusal};
use torpor::facts::{self, About, Fact, Facts, Id, Lack};
use torpor::storage::{link::LinkError, record::Unreadable};
use torpor::units::{self, Dimension, Unit, UnitSet};

fn typed(text: &str, unit: &Unit) -> Entry {
    Entry::new(text, unit.code)
}

/// What `text` is in a blank that shows `unit`.
#[track_caller]
fn read(text: &str, unit: &Unit) -> Read {
    match entry::quantity(&typed(text, unit), &[unit.dimension]) {
        Ok(Some(read)) => read,
        other => panic!("{text}: {other:?}"),
    }
}

#[track_caller]
fn refused(text: &str, unit: &Unit) -> String {
    match entry::quantity(&typed(text, unit), &[unit.dimension]) {
        Err(why) => why.to_string(),
        other => panic!("{text}: {other:?}"),
    }
}

#[track_caller]
fn close(got: f64, expected: f64, what: &str) {
    assert!((got - expected).abs() <= 1e-9 * expected.abs(), "{what}: {got}, expected {expected}");
}

/// What stands at a fact when it is refused.
#[track_caller]
fn at_fact(about: &About, text: &str, unit: u8) -> String {
    facts::refusal(about, &Entry::new(text, unit)).expect(text).to_string()
}

/// Source: NIST SP 811 Appendix B.8 and NIST Handbook 44 Appendix C for the factors, each product by hand.
#[test]
fn one_number_with_or_without_its_unit() {
    const LBF_FT: f64 = 1.3558179483314004;
    const US_GAL: f64 = 3.785411784e-3;
    use units::*;
    for (text, blank, expected, shown) in [
        ("25", &NEWTON_METER, 25.0, "N·m"),
        ("25", &LBF_FT_UNIT, 25.0 * LBF_FT, "lbf·ft"),
        ("17 ft-lb", &NEWTON_METER, 17.0 * LBF_FT, "lbf·ft"),
        ("17 ft. lbs.", &NEWTON_METER, 17.0 * LBF_FT, "lbf·ft"),
        ("17ft·lb", &NEWTON_METER, 17.0 * LBF_FT, "lbf·ft"),
        ("204 in lbs", &NEWTON_METER, 17.0 * LBF_FT, "lbf·in"),
        ("2,3 kgf·m", &NEWTON_METER, 22.555295, "kgf·m"),
        ("2.3 m-kg", &NEWTON_METER, 22.555295, "kgf·m"),
        ("23 Nm", &LBF_FT_UNIT, 23.0, "N·m"),
        ("1.234,5 N·m", &NEWTON_METER, 1234.5, "N·m"),
        ("1,234.5 N·m", &NEWTON_METER, 1234.5, "N·m"),
        ("1,234,567.5", &NEWTON_METER, 1_234_567.5, "N·m"),
        ("1.234.567", &NEWTON_METER, 1_234_567.0, "N·m"),
        ("1 234,5", &NEWTON_METER, 1234.5, "N·m"),
        ("1'000", &NEWTON_METER, 1000.0, "N·m"),
        ("0,125", &NEWTON_METER, 0.125, "N·m"),
        (".5", &NEWTON_METER, 0.5, "N·m"),
        (",5", &NEWTON_METER, 0.5, "N·m"),
        ("+25", &NEWTON_METER, 25.0, "N·m"),
        ("25.", &NEWTON_METER, 25.0, "N·m"),
        ("  25\u{a0}N·m  ", &NEWTON_METER, 25.0, "N·m"),
        ("1 000 mL", &LITER, 1e-3, "mL"),
        ("1\u{a0}000\u{a0}mL", &LITER, 1e-3, "mL"),
        ("1\u{202f}000 mL", &LITER, 1e-3, "mL"),
        ("15 l", &US_GAL_UNIT, 15e-3, "L"),
        ("½ gal", &LITER, US_GAL / 2.0, "US gal"),
        ("1½ qt", &LITER, US_GAL * 1.5 / 4.0, "US qt"),
        ("3 1/2 qt", &LITER, US_GAL * 3.5 / 4.0, "US qt"),
        ("1/2 gal", &LITER, US_GAL / 2.0, "US gal"),
        ("⅔ imp pt", &LITER, 4.54609e-3 / 12.0, "imp pt"),
        ("950 cc", &LITER, 950e-6, "mL"),
        ("11 1/4\"", &MILLIMETER, 11.25 * 0.0254, "in"),
        ("49 mpg", &LITERS_PER_100_KM, US_GAL / 1609.344 / 49.0, "mpg (US)"),
        ("20 km/l", &LITERS_PER_100_KM, 5e-8, "km/L"),
    ] {
        let read = read(text, blank);
        close(read.value, expected, text);
        assert_eq!(read.unit.map(|it| it.symbol), Some(shown), "{text}");
        assert_eq!((read.bounds, read.about), (None, false), "{text}");
    }
}
use units::{LBF_FT as LBF_FT_UNIT, US_GAL as US_GAL_UNIT};

/// Source: definition of the scales: 0 °C = 273.15 K = 32 °F, and −40 is the same on both.
#[test]
fn minus_signs_of_every_sort() {
    for text in ["-8", "−8", "–8", "- 8", "−8 °C", "-8 C", "17.6 °F", "-8,0"] {
        close(read(text, &units::CELSIUS).value, 265.15, text);
    }
    close(read("−40", &units::FAHRENHEIT).value, 233.15, "−40 °F");
    close(read("0", &units::CELSIUS).value, 273.15, "0 °C");
}

/// Source: NIST Handbook 44 Appendix C: US gallon 231 in³; UK Weights and Measures Act 1985: gallon 4.54609 L.
#[test]
fn gallons_are_american_unless_the_blank_is_british() {
    let american = read("0.8 gal", &units::LITER);
    close(american.value, 0.8 * 3.785411784e-3, "0.8 gal");
    assert_eq!(american.might_mean, Some(&units::IMP_GAL));
    let british = read("0.8 gal", &units::IMP_GAL);
    close(british.value, 0.8 * 4.54609e-3, "0.8 gal, British blank");
    assert_eq!(british.might_mean, Some(&units::US_GAL));
    assert_eq!(read("0.8 US gal", &units::IMP_GAL).might_mean, None);

    let about = &facts::TANK_VOLUME.about;
    let echoed = |text, unit: &Unit| facts::echo(about, &typed(text, unit));
    assert_eq!(
        echoed("0.8 gal", &units::LITER).as_deref(),
        Some("read as 0.8 US gal; if you mean the other one, write imp gal")
    );
    assert_eq!(
        echoed("0.8 gal", &units::IMP_GAL).as_deref(),
        Some("read as 0.8 imp gal; if you mean the other one, write US gal")
    );
    assert_eq!(echoed("15", &units::LITER), None);
    assert_eq!(echoed("15.5", &units::LITER), None);
    assert_eq!(echoed("15,5", &units::LITER).as_deref(), Some("read as 15.5 L"));
    assert_eq!(echoed("", &units::LITER), None);
}

/// Source: by hand from the text: its two ends, and the number before the bracket or the middle as the value.
#[test]
fn ranges_in_every_written_form() {
    use units::{LBF_FT, MILLIAMPERE, NEWTON_METER};
    for (text, value, low, high) in [
        ("22–26", 24.0, 22.0, 26.0),
        ("22-26", 24.0, 22.0, 26.0),
        ("22—26 N·m", 24.0, 22.0, 26.0),
        ("22-26 N·m", 24.0, 22.0, 26.0),
        ("22 - 26 Nm", 24.0, 22.0, 26.0),
        ("22 N·m to 26 N·m", 24.0, 22.0, 26.0),
        ("22 to 26", 24.0, 22.0, 26.0),
        ("22..26", 24.0, 22.0, 26.0),
        ("22…26 N·m", 24.0, 22.0, 26.0),
        ("26–22", 24.0, 22.0, 26.0),
        ("25 (22–26) N·m", 25.0, 22.0, 26.0),
        ("25 (22–26)", 25.0, 22.0, 26.0),
        ("25 (22–26 N·m)", 25.0, 22.0, 26.0),
        ("25 (22 to 26)", 25.0, 22.0, 26.0),
        ("25 N·m (22–26)", 25.0, 22.0, 26.0),
        ("25 N·m (22–26 N·m)", 25.0, 22.0, 26.0),
        ("25 N·m (22–26) N·m", 25.0, 22.0, 26.0),
        ("24 ± 2", 24.0, 22.0, 26.0),
        ("24 ± 2 N·m", 24.0, 22.0, 26.0),
        ("24 N·m ±2", 24.0, 22.0, 26.0),
        ("24 +/- 2", 24.0, 22.0, 26.0),
        ("2.2–2.6 daN", 0.0, 0.0, 0.0),
    ] {
        if value == 0.0 {
            assert_eq!(
                refused(text, &NEWTON_METER),
                "“daN” is not a unit for this: write N·m, dN·m, cN·m, lbf·ft, lbf·in, ozf·in, kgf·m, kgf·cm or daN·m"
            );
            continue;
        }
        let read = read(text, &NEWTON_METER);
        close(read.value, value, text);
        let [got_low, got_high] = read.bounds.expect(text);
        close(got_low, low, text);
        close(got_high, high, text);
    }
    // Both ends in the unit behind the second, and two units in one range.
    let feet = read("16-19 ft-lb", &NEWTON_METER);
    close(feet.bounds.unwrap()[0], 16.0 * 1.3558179483314004, "16 ft-lb");
    close(feet.bounds.unwrap()[1], 19.0 * 1.3558179483314004, "19 ft-lb");
    assert_eq!(feet.unit, Some(&LBF_FT));
    let mixed = read("18 ft-lb – 26 N·m", &NEWTON_METER);
    close(mixed.bounds.unwrap()[0], 18.0 * 1.3558179483314004, "18 ft-lb");
    close(mixed.bounds.unwrap()[1], 26.0, "26 N·m");
    let both = read("25 N·m (16–19 ft-lb)", &NEWTON_METER);
    close(both.value, 25.0, "25 N·m");
    close(both.bounds.unwrap()[1], 19.0 * 1.3558179483314004, "19 ft-lb");
    // A unit may have brackets of its own.
    let mpg = 3.785411784e-3 / 1609.344;
    let [sparing, thirsty] = read("45–50 mpg (US)", &units::LITERS_PER_100_KM).bounds.unwrap();
    close(sparing, mpg / 50.0, "50 mpg");
    close(thirsty, mpg / 45.0, "45 mpg");
    // A decimal point may start the second number.
    for text in ["0.5–1.5 mA", ".5-1.5", "0,5–1,5 mA", "0.5 mA to 1.5 mA"] {
        let draw = read(text, &MILLIAMPERE);
        close(draw.value, 1e-3, text);
        close(draw.bounds.unwrap()[0], 0.5e-3, text);
        close(draw.bounds.unwrap()[1], 1.5e-3, text);
    }
    let small = read("0.2–.5 mA", &MILLIAMPERE);
    close(small.bounds.unwrap()[1], 0.5e-3, "0.2–.5 mA");
    close(read("1 ± .5 mA", &MILLIAMPERE).bounds.unwrap()[0], 0.5e-3, "1 ± .5 mA");
    close(read("0.2...5 mA", &MILLIAMPERE).bounds.unwrap()[1], 5e-3, "0.2...5 mA");
    // An aim outside of its range was meant otherwise.
    assert_eq!(
        refused("27 (22–26)", &NEWTON_METER),
        "“27 (22–26)” is not a number: write for example 25 or 25 N·m"
    );
}

/// Source: NIST Handbook 44 Appendix C: 1 lbf·ft = 1.355818 N·m, 1 kgf·m = 9.80665 N·m, 1 US qt = 0.9463529 L; printed pairs
/// by hand, rounded as manuals round them.
#[test]
fn the_same_again_in_brackets() {
    use units::{CELSIUS, LBF_FT, LITER, LITERS_PER_100_KM, NEWTON_METER};
    for (text, blank, value, bounds) in [
        ("25 N·m (18 ft-lb)", &NEWTON_METER, 25.0, None),
        ("25 N·m (18 ft-lb)", &LBF_FT, 25.0, None),
        ("34 lbf·ft (46 N·m)", &NEWTON_METER, 34.0 * 1.3558179483314004, None),
        ("22–26 N·m (16–19 lbf·ft)", &NEWTON_METER, 24.0, Some([22.0, 26.0])),
        ("22 to 26 N·m (16 to 19 lbf·ft)", &NEWTON_METER, 24.0, Some([22.0, 26.0])),
        ("24 N·m (2.4 kgf·m, 18 lbf·ft)", &NEWTON_METER, 24.0, None),
        ("24 N·m (2,4 kgf·m; 18 lbf·ft)", &NEWTON_METER, 24.0, None),
        ("25 (22–26) N·m (18 (16–19) lbf·ft)", &NEWTON_METER, 25.0, Some([22.0, 26.0])),
        // 7.38 lbf·ft, printed without its decimals; the other way round 9.49 N·m.
        ("10 N·m (7 lbf·ft)", &NEWTON_METER, 10.0, None),
        ("7 lbf·ft (10 N·m)", &NEWTON_METER, 7.0 * 1.3558179483314004, None),
        ("12 N·m (106 in-lb)", &NEWTON_METER, 12.0, None),
        ("3.1 L (3.3 US qt)", &LITER, 3.1e-3, None),
        ("-24 °C (-11 °F)", &CELSIUS, 249.15, None),
        ("4.8 L/100 km (49 mpg (US))", &LITERS_PER_100_KM, 4.8e-8, None),
    ] {
        let read = read(text, blank);
        close(read.value, value, text);
        assert_eq!(read.bounds.is_some(), bounds.is_some(), "{text}");
        for (got, end) in read.bounds.into_iter().flatten().zip(bounds.into_iter().flatten()) {
            close(got, end, text);
        }
    }
    assert_eq!(read("34 lbf·ft (46 N·m)", &NEWTON_METER).unit, Some(&LBF_FT));
    for (text, blank, words) in [
        ("30 N·m (18 ft-lb)", &NEWTON_METER, "“18 ft-lb” is 24.4 N·m, which is not 30 N·m"),
        ("25 N·m (18 in-lb)", &NEWTON_METER, "“18 in-lb” is 2.03 N·m, which is not 25 N·m"),
        // 3 % of 100 N·m is 3: 71 lbf·ft is 96.3, 72 is 97.6.
        ("100 N·m (71 lbf·ft)", &NEWTON_METER, "“71 lbf·ft” is 96.3 N·m, which is not 100 N·m"),
        (
            "22–26 N·m (16–22 lbf·ft)",
            &NEWTON_METER,
            "“16–22 lbf·ft” is 21.7–29.8 N·m, which is not 22–26 N·m",
        ),
        ("22–26 N·m (18 lbf·ft)", &NEWTON_METER, "“18 lbf·ft” is 24.4 N·m, which is not 22–26 N·m"),
        (
            "24 N·m (2.4 kgf·m, 28 lbf·ft)",
            &NEWTON_METER,
            "“28 lbf·ft” is 38 N·m, which is not 24 N·m",
        ),
        // Near in kelvins is not near.
        ("-24 °C (-14 °F)", &CELSIUS, "“-14 °F” is −25.6 °C, which is not −24 °C"),
    ] {
        assert_eq!(refused(text, blank), format!("{words}: write the right one of them alone"));
    }
    close(read("100 N·m (72 lbf·ft)", &NEWTON_METER).value, 100.0, "within 3 %");
    // No unit, the same unit, no number, a bracket that does not close: as before.
    for text in ["25 N·m (18)", "25 (25)", "25 N·m (24 N·m)", "25 N·m (18 ft-lb", "25 N·m (tight)"]
    {
        assert!(!refused(text, &NEWTON_METER).contains("which is not"), "{text}");
    }
    let torque = &facts::TORQUE.about;
    let typed = typed("25 N·m (18 ft-lb)", &LBF_FT);
    assert_eq!(facts::echo(torque, &typed).as_deref(), Some("read as 25 N·m"));
    assert_eq!(facts::as_read(torque, &typed), "25 N·m (18 ft-lb)");
}

/// Source: what the words say.
#[test]
fn about_is_kept() {
    for text in ["about 1", "About 1 mA", "~1", "≈ 1", "ca. 1", "approx. 1", "around 1 mA"] {
        let read = read(text, &units::MILLIAMPERE);
        close(read.value, 1e-3, text);
        assert!(read.about && read.bounds.is_none(), "{text}");
    }
    let echoed = facts::echo(&facts::KEY_OFF_DRAW.about, &typed("~1", &units::MILLIAMPERE));
    assert_eq!(echoed.as_deref(), Some("read as about 1 mA"));
}

/// A blank is not known; a zero is known.
#[test]
fn blank_is_not_zero() {
    for text in ["", " ", "\u{a0}\t"] {
        assert_eq!(entry::quantity(&typed(text, &units::LITER), &[Dimension::Volume]), Ok(None));
        assert_eq!(entry::day(&Entry::new(text, 0)), Ok(None));
        assert_eq!(entry::dose(&Entry::new(text, 0)), Ok(None));
        assert_eq!(entry::temperatures(&Entry::new(text, 0)), Ok(None));
    }
    for text in ["0", "0 L", "0.0", "−0"] {
        assert_eq!(read(text, &units::LITER).value, 0.0, "{text}");
    }
    let shelf = |text: &str| {
        let kept =
            torpor::garage::Entries::from([(facts::OIL_ON_SHELF.id(), typed(text, &units::LITER))]);
        facts::OIL_ON_SHELF.maybe(&kept).unwrap().map(|it| it.value)
    };
    assert_eq!(shelf("0"), Some(0.0));
    assert_eq!(shelf(" "), None);
}

/// Source: two separators that can be read two ways; digits and signs that make no number.
#[test]
fn what_is_no_number_is_refused() {
    use units::{LITER, NEWTON_METER};
    assert_eq!(refused("1,000 mL", &LITER), "“1,000” can be read two ways: write 1000 or 1.000");
    for text in ["twelve", "N·m", "-", ".", "(22–26)", "about", "25 (22–26", "25 (22)", "½½", "--8"]
    {
        assert!(
            entry::quantity(&typed(text, &NEWTON_METER), &[Dimension::Torque]).is_err(),
            "{text}"
        );
    }
    for text in ["1.2.3", "1,23,456", "1.23,4.5", "1,2.3,4"] {
        let shown: String = text.chars().filter(|it| *it != ' ').collect();
        assert_eq!(
            refused(text, &NEWTON_METER),
            format!("“{shown}” is not a number: write for example 1234.5")
        );
    }
    let digits = "9".repeat(390);
    assert!(
        refused(&digits, &NEWTON_METER)
            .ends_with("is not a number: write for example 25 or 25 N·m")
    );
}

/// Source: the printed doses, NIST and UK Act for the gallons: 2.5 US gal = 320 US fl oz, 2.5 imp gal = 400 imp fl oz.
#[test]
fn doses_as_containers_print_them() {
    let dose = |text: &str, unit: u8| entry::dose(&Entry::new(text, unit)).unwrap().expect(text);
    for (text, ratio) in [
        ("30 mL per 10 L", 1000.0 / 3.0),
        ("30ml/10l", 1000.0 / 3.0),
        ("30 mL for 10 L", 1000.0 / 3.0),
        ("10 mL → 4 L", 400.0),
        ("25 cc to 10 liters", 400.0),
        ("1:320", 320.0),
        ("1 : 320", 320.0),
        ("2:500", 250.0),
        ("1 fl oz per 2.5 gal", 320.0),
        ("1 oz to 2.5 gal", 320.0),
        ("1 oz to 2.5 imp gal", 400.0),
        ("1 imp fl oz per 2.5 gal", 400.0),
        ("1 US fl oz per 2.5 gal", 320.0),
        ("½ fl oz per 1 1/4 gal", 320.0),
        ("2,5 mL per 1 L", 400.0),
    ] {
        let read = dose(text, 0);
        close(read.fuel / read.stabilizer, ratio, text);
    }
    let both_british = dose("1 oz per 2.5 gal", units::IMP_GAL.code);
    close(both_british.fuel / both_british.stabilizer, 400.0, "British blank");
    assert!(dose("1 fl oz per 2.5 gal", 0).ambiguous);
    assert!(!dose("30 mL per 10 L", 0).ambiguous);
    // A metric unit on one side tells no country; the other side is read as the blank's, and asked about.
    for (text, unit, of) in
        [("30 mL per 2.5 gal", &units::US_GAL, 2.5), ("30 mL per 2.5 gal", &units::IMP_GAL, 2.5)]
    {
        let read = dose(text, unit.code);
        assert!(read.ambiguous && (read.fuel - unit.to_base(of)).abs() < 1e-12, "{text}");
    }
    for (ounce, gallon) in
        [(&units::US_FL_OZ, &units::US_GAL), (&units::IMP_FL_OZ, &units::IMP_GAL)]
    {
        let read = dose("1 fl oz per 10 L", gallon.code);
        assert!(read.ambiguous && read.unit == Some(ounce));
        // A clear one settles the other, whatever the blank's.
        let read = dose(&format!("1 fl oz per 2.5 {gallon}"), units::IMP_GAL.code);
        assert!(!read.ambiguous && read.unit == Some(ounce));
        let read = dose(&format!("1 {ounce} per 2.5 gal"), units::IMP_GAL.code);
        assert!(!read.ambiguous && read.fuel_unit == Some(gallon));
    }
    let british = dose("1 oz to 2.5 imp gal", 0);
    assert_eq!(british.unit, Some(&units::IMP_FL_OZ));
    assert_eq!(british.fuel_unit, Some(&units::IMP_GAL));
    assert_eq!(dose("1:320", 0).unit, None);

    let echoed = |text| facts::echo(&facts::STABILIZER_LABEL.about, &Entry::new(text, 0)).unwrap();
    assert_eq!(echoed("1:320"), "read as 1 to 320");
    assert_eq!(echoed("30 mL per 10 L"), "read as 30 mL per 10 L, 1 to 333.3");
    assert_eq!(
        echoed("1 fl oz per 2.5 gal"),
        "read as 1 US fl oz per 2.5 US gal, 1 to 320; US or British: see Label’s measures"
    );
    for text in [
        "30",
        "30 mL",
        "30 mL per",
        "per 10 L",
        "30 mL per 10 N·m",
        "10 L per 30 mL",
        "0:320",
        "-1:320",
        "1:1",
        "1 mL:320",
        "30 per 10",
    ] {
        assert_eq!(
            entry::dose(&Entry::new(text, 0)).unwrap_err().to_string(),
            format!(
                "“{text}” is not a dose: write for example 30 mL per 10 L, 1 fl oz per 2.5 gal, or 1:320"
            )
        );
    }
}

/// Source: the calendar.
#[test]
fn days_in_every_written_form() {
    let day = |text: &str| entry::day(&Entry::new(text, 0));
    let november = NaiveDate::from_ymd_opt(2026, 11, 14);
    for text in [
        "2026-11-14",
        "2026/11/14",
        "2026 11 14",
        "2026-Nov-14",
        "Nov 14 2026",
        "Nov 14, 2026",
        "November 14, 2026",
        "14 Nov 2026",
        "14 November 2026",
        "14. November 2026",
        "14.11.2026",
        "11/14/2026",
        "14/11/2026",
        "14-11-2026",
        "Nov. 14th, 2026",
        "Sat, Nov 14 2026",
        "sat 14 nov 2026",
        " 2026-11-14 ",
    ] {
        assert_eq!(day(text), Ok(november), "{text}");
    }
    assert_eq!(day("Feb 29 2028"), Ok(NaiveDate::from_ymd_opt(2028, 2, 29)));
    assert_eq!(day("04/04/2026"), Ok(NaiveDate::from_ymd_opt(2026, 4, 4)));
    for text in [
        "Feb 29 2026",
        "2026-02-29",
        "2100-02-29",
        "31.4.2026",
        "Nov 14",
        "14.11.26",
        "2026",
        "tomorrow",
        "0206-11-14",
        "2026-13-01",
        "2026-00-10",
        "2026-11-00",
        "Nov 14 2026 10:00",
        "Ma 14 2026",
        "2026-11-14-1",
        "٣٣/١١/٢٠٢٦",
    ] {
        assert_eq!(
            day(text).unwrap_err().to_string(),
            format!("“{text}” is not a day: write for example 2026-11-14 or Nov 14 2026")
        );
    }
    assert_eq!(
        day("03/04/2026").unwrap_err().to_string(),
        "“03/04/2026” can be read two ways: write 2026-04-03 or 2026-03-04"
    );
    assert_eq!(entry::day_written(november.unwrap()), "2026-11-14");
}

/// Source: the texts themselves; 32 °F = 0 °C and 212 °F = 100 °C by definition.
#[test]
fn one_temperature_or_twelve() {
    let read =
        |text: &str, unit: u8| entry::temperatures(&Entry::new(text, unit)).unwrap().unwrap();
    let expected = [-10.2, -8.4, -2.3, 5.7, 13.4, 18.2, 20.9, 19.6, 14.6, 8.1, 1.6, -6.3];
    for text in [
        "-10,2 -8,4 -2,3 5,7 13,4 18,2 20,9 19,6 14,6 8,1 1,6 -6,3",
        "−10.2 −8.4 −2.3 5.7 13.4 18.2 20.9 19.6 14.6 8.1 1.6 −6.3",
        "-10.2, -8.4, -2.3, 5.7, 13.4, 18.2, 20.9, 19.6, 14.6, 8.1, 1.6, -6.3",
        "-10,2; -8,4; -2,3; 5,7; 13,4; 18,2; 20,9; 19,6; 14,6; 8,1; 1,6; -6,3",
        "-10.2\t-8.4\t-2.3\t5.7\t13.4\t18.2\n20.9\t19.6\t14.6\t8.1\t1.6\t-6.3",
        "-10.2 -8.4 -2.3 5.7 13.4 18.2 20.9 19.6 14.6 8.1 1.6 -6.3 °C",
        "-10.2° -8.4° -2.3° 5.7° 13.4° 18.2° 20.9° 19.6° 14.6° 8.1° 1.6° -6.3°",
        "-10.2°C -8.4°C -2.3°C 5.7°C 13.4°C 18.2°C 20.9°C 19.6°C 14.6°C 8.1°C 1.6°C -6.3°C",
    ] {
        let got = read(text, units::CELSIUS.code);
        assert_eq!(got.len(), 12, "{text}");
        for (got, expected) in got.iter().zip(expected) {
            assert!((got - expected).abs() < 1e-9, "{text}: {got}");
        }
    }
    for (text, unit, celsius) in [
        ("15", &units::CELSIUS, 15.0),
        ("59", &units::FAHRENHEIT, 15.0),
        ("15 °C", &units::CELSIUS, 15.0),
        // A unit in the text wins over the blank's button.
        ("59 °F", &units::CELSIUS, 15.0),
        ("59F", &units::CELSIUS, 15.0),
        ("15 C", &units::FAHRENHEIT, 15.0),
    ] {
        let got = read(text, unit.code);
        assert!(got.len() == 1 && (got[0] - celsius).abs() < 1e-9, "{text}: {got:?}");
    }
    let all = read("14 18 28 42 56 65 70 67 58 47 35 21 °F", units::CELSIUS.code);
    assert!((all[0] + 10.0).abs() < 1e-9 && (all[3] - 50.0 / 9.0).abs() < 1e-9, "{all:?}");
    assert!(entry::temperatures(&Entry::new("14 °F 18 °C", 0)).is_err());
}

/// Fahrenheit typed under Fahrenheit stays what it is when the page's units change; reading takes no set at all.
#[test]
fn an_entry_keeps_its_meaning_under_either_set() {
    let about = &facts::TANK_VOLUME.about;
    let entry = typed("15", &units::LITER);
    for set in [UnitSet::Metric, UnitSet::Us] {
        assert_eq!(about.unit_for(&entry, set), Some(&units::LITER));
    }
    // Only a blank follows the set.
    let blank = Entry::default();
    assert_eq!(about.unit_for(&blank, UnitSet::Metric), Some(&units::LITER));
    assert_eq!(about.unit_for(&blank, UnitSet::Us), Some(&units::US_GAL));
    let of = |unit: &Unit| {
        let kept = torpor::garage::Entries::from([(facts::TANK_VOLUME.id(), typed("15", unit))]);
        facts::TANK_VOLUME.of(&kept).unwrap().value
    };
    close(of(&units::LITER), 15e-3, "15 L");
    close(of(&units::US_GAL), 15.0 * 3.785411784e-3, "15 US gal");
    // A reader is a function of the fact and the entry alone: a set cannot reach it.
    let _: fn(&About, &Entry) -> Option<Refusal> = facts::refusal;
}

/// Source: the limits that the table of facts sets, each end typed.
#[test]
fn limits_at_their_ends() {
    let taken = |about: &About, text: &str, unit: &Unit| {
        facts::refusal(about, &typed(text, unit)).is_none()
    };
    for (about, unit, inside, outside) in [
        (&facts::TANK_VOLUME.about, &units::LITER, ["0.001", "100"], ["0", "100.1"]),
        (&facts::FUEL_IN_TANK.about, &units::LITER, ["0", "100"], ["-0.1", "100.1"]),
        (&facts::FILL_TO.about, &units::PERCENT, ["0.1", "100"], ["0", "100.5"]),
        (&facts::RESTING_VOLTAGE.about, &units::VOLT, ["6", "16"], ["5.99", "16.01"]),
        (&facts::COLDEST_NIGHT.about, &units::CELSIUS, ["-70", "50"], ["-70.1", "50.1"]),
        (&facts::COLDEST_NIGHT.about, &units::FAHRENHEIT, ["-94", "122"], ["-94.2", "122.2"]),
        (&facts::ADAPTER_ANGLE.about, &units::DEGREE, ["-180", "180"], ["-181", "181"]),
        (&facts::TORQUE.about, &units::NEWTON_METER, ["0.1–1", "1–2000"], ["0–5", "5–2001"]),
        (&facts::ACCURACY.about, &units::PERCENT, ["0.5", "20"], ["0", "20.1"]),
        (&facts::CHARGE_BELOW.about, &units::VOLT, ["9", "14"], ["8.9", "14.1"]),
        (&facts::CHARGE_BELOW.about, &units::PERCENT, ["1", "99"], ["0.9", "99.1"]),
    ] {
        for text in inside {
            assert!(taken(about, text, unit), "{text} into {}", about.label);
        }
        for text in outside {
            assert!(!taken(about, text, unit), "{text} into {}", about.label);
        }
    }
}

/// The words of each refusal, whole, and all of them: a new one has to be added here.
#[test]
fn every_refusal_in_its_words() {
    let n_m = units::NEWTON_METER.code;
    let torque = &facts::TORQUE.about;
    let seen = [
        (at_fact(torque, "tight", n_m), "“tight” is not a number: write for example 25 or 25 N·m"),
        (
            at_fact(torque, "12 V", n_m),
            "“V” is not a unit for this: write N·m, dN·m, cN·m, lbf·ft, lbf·in, ozf·in, kgf·m, kgf·cm or daN·m",
        ),
        (at_fact(torque, "1,000", n_m), "“1,000” can be read two ways: write 1000 or 1.000"),
        (
            at_fact(&facts::TANK_VOLUME.about, "14–16 L", units::LITER.code),
            "“14–16 L” is a range: one number is wanted here",
        ),
        (
            at_fact(&facts::TANK_VOLUME.about, "0", units::LITER.code),
            "has to be more than 0 L and at most 100 L",
        ),
        (
            at_fact(&facts::TANK_VOLUME.about, "0 gal", units::LITER.code),
            "has to be more than 0 US gal and at most 26.4 US gal",
        ),
        (
            at_fact(&facts::COLDEST_NIGHT.about, "-71", units::CELSIUS.code),
            "has to be between −70 °C and 50 °C",
        ),
        (
            at_fact(&facts::ADAPTER.about, "sideways", 0),
            "“sideways” is not known to this page: choose none, in line, right angle, pointing back, other angle",
        ),
        (
            at_fact(&facts::PARK_DATE.about, "soon", 0),
            "“soon” is not a day: write for example 2026-11-14 or Nov 14 2026",
        ),
        (
            at_fact(&facts::PARK_DATE.about, "3.4.2026", 0),
            "“3.4.2026” can be read two ways: write 2026-04-03 or 2026-03-04",
        ),
        (
            at_fact(&facts::STABILIZER_LABEL.about, "a capful", 0),
            "“a capful” is not a dose: write for example 30 mL per 10 L, 1 fl oz per 2.5 gal, or 1:320",
        ),
        (
            at_fact(&facts::MONTHLY_MEANS.about, "-6 -5 0", 0),
            "3 numbers: write one for a steady place, or twelve from January to December, spaces between",
        ),
        (
            at_fact(&facts::MONTHLY_MEANS.about, "cold", 0),
            "“cold” is not a number: write for example -8 -6 -1 6 13 18 21 19 14 7 0 -7",
        ),
        (
            at_fact(&facts::MONTHLY_MEANS.about, "61", 0),
            "temperature has to be between −60 and 60 °C (−76 and 140 °F)",
        ),
        (
            at_fact(&facts::BIKE_NAME.about, &"x".repeat(LONGEST + 1), 0),
            "longer than 400 characters: shorten it",
        ),
        (
            at_fact(&facts::STAGES.about, "twice", 0),
            "“twice” is not a stage: write for example 70 % then 100 %, 20 N·m then 45 N·m, or 30 N·m then 90°",
        ),
        (
            at_fact(&facts::STAGES.about, "100 % then 70 %", 0),
            "stages have to go up, at most eight of them, shares up to 100 %, a turn in degrees only behind a torque",
        ),
        (
            at_fact(&facts::GENERAL_TORQUES.about, "M6 10 N·m; M8 tight", 0),
            "“M8 tight” is not a thread with its torque: write for example M8 22 N·m, a semicolon or a new line between them",
        ),
        (at_fact(&facts::BOLTS.about, "1", 0), "has to be a whole number between 2 and 24"),
        (at_fact(&facts::BOLTS.about, "4.5", 0), "has to be a whole number between 2 and 24"),
        (
            at_fact(&facts::MIND.about, "cold_only upside_down", 0),
            "“upside_down” is not known to this page: choose cold only, left-hand thread, cotter pin, new washer, new bolt or nut, loosen, then tighten",
        ),
        // A unit of a newer page: its bare number is not guessed at.
        (
            at_fact(torque, "25", 99),
            "“unit 99” is not a unit for this: write N·m, kgf·m, lbf·ft, lbf·in",
        ),
        (
            at_fact(&facts::MONTHLY_MEANS.about, "15", 99),
            "“unit 99” is not a unit for this: write °C, °F",
        ),
        (
            at_fact(&facts::FILL_TO.about, "15 V", units::LITER.code),
            "“V” is not a unit for this: write L, mL, US gal, US qt, US pt, US fl oz, US tbsp, US tsp, imp gal, imp qt, imp pt, imp fl oz or %",
        ),
    ];
    for (got, expected) in seen {
        assert_eq!(got, expected);
    }
    assert_eq!(Refusal::Together("a because of b".into()).to_string(), "a because of b");
    // Long nonsense is quoted in part.
    let long = at_fact(torque, &"ab".repeat(30), n_m);
    assert_eq!(
        long,
        format!("“{}…” is not a number: write for example 25 or 25 N·m", "ab".repeat(20))
    );
    // Nothing is left out above: this match stops compiling when a refusal is added.
    let _ = |it: Refusal| match it {
        Refusal::NotANumber { .. }
        | Refusal::UnknownUnit { .. }
        | Refusal::OneOrThousand { .. } => {}
        Refusal::NotTheSame { .. }
        | Refusal::OneNumberWanted { .. }
        | Refusal::OutOfLimits { .. }
        | Refusal::NotAChoice { .. }
        | Refusal::NotAnInterval { .. } => {}
        Refusal::NotADay { .. } | Refusal::DayOrMonth { .. } | Refusal::NotADose { .. } => {}
        Refusal::NotTemperatures { .. } | Refusal::TooLong | Refusal::Together(_) => {}
        Refusal::NotStages { .. } | Refusal::StageOrder | Refusal::NotThreadTorque { .. } => {}
        Refusal::Slash => {}
    };
}

/// The words of each fault of a link and of a record, whole, and all of them.
#[test]
fn every_fault_of_a_link_or_record_in_its_words() {
    for (fault, words) in [
        (
            LinkError::TooLong,
            "This link is far longer than a bike’s: a Torpor link has at most 16,384 characters",
        ),
        (
            LinkError::Newer,
            "This link was made by a newer Torpor: reload the page, then open the link again",
        ),
        (
            LinkError::CutOff,
            "This link is cut off or altered: copy the whole of it, from # to its end",
        ),
        (
            LinkError::Checksum,
            "This link was altered on its way: copy it again from where it was made",
        ),
        (LinkError::NotABike, "This link does not hold a bike: make it again with “Link”"),
        (
            LinkError::HiddenCharacters,
            "This link holds hidden characters in a text: make it again with plain text",
        ),
    ] {
        assert_eq!(fault.to_string(), words);
        match fault {
            LinkError::TooLong | LinkError::Newer | LinkError::CutOff => {}
            LinkError::Checksum | LinkError::NotABike | LinkError::HiddenCharacters => {}
        }
    }
    assert_eq!(
        Unreadable::Newer(7).to_string(),
        "was written by a newer Torpor (form 7, this page knows 1) and is left as it is: reload the page"
    );
    assert_eq!(Unreadable::Damaged.to_string(), "is damaged; it is set aside unchanged");
}

/// What is refused alone is refused through the fact too, and lands on it.
#[test]
fn a_refusal_is_a_lack_of_its_fact() {
    struct All(Entry);
    impl Facts for All {
        fn entry(&self, _: Id) -> Entry {
            self.0.clone()
        }
    }
    let fact: &Fact<_> = &facts::TORQUE;
    let from = All(typed("12 V", &units::NEWTON_METER));
    let lacks = fact.of(&from).map(drop).unwrap_err();
    assert!(
        matches!(&*lacks, [Lack::Refused(id, Refusal::UnknownUnit { .. })] if *id == fact.id())
    );
    assert_eq!(fact.maybe(&from).map(drop).unwrap_err(), lacks);
}

/// In a preview an entry is said whole: a bare number with the unit that it means, others as typed.
#[test]
fn said_whole() {
    for (about, text, unit, said) in [
        (&facts::TANK_VOLUME.about, "15", units::LITER.code, "15 L"),
        (&facts::TANK_VOLUME.about, "15", units::US_GAL.code, "15 US gal"),
        (&facts::TANK_VOLUME.about, "15", 0, "15 L"),
        (&facts::TANK_VOLUME.about, "4 gal", units::LITER.code, "4 gal"),
        (&facts::TORQUE.about, "25 (22–26)", units::NEWTON_METER.code, "25 (22–26) N·m"),
        (&facts::TORQUE.about, "25 N·m (22–26)", units::NEWTON_METER.code, "25 N·m (22–26)"),
        (&facts::CONSUMPTION.about, "49 mpg (US)", units::LITERS_PER_100_KM.code, "49 mpg (US)"),
        (&facts::KEY_OFF_DRAW.about, "about 1", units::MILLIAMPERE.code, "about 1 mA"),
        (&facts::FILL_TO.about, "½", units::US_GAL.code, "½ US gal"),
        (&facts::TORQUE.about, "tight", units::NEWTON_METER.code, "tight"),
        (&facts::ADAPTER.about, "in_line", 0, "in line"),
        (&facts::PARK_DATE.about, "14.11.2026", 0, "Sat, Nov 14 2026"),
        (&facts::PARK_DATE.about, "soon", 0, "soon"),
        (&facts::MONTHLY_MEANS.about, "15", units::FAHRENHEIT.code, "15 °F"),
        (&facts::BIKE_NAME.about, " Alder 640 ", 0, "Alder 640"),
    ] {
        assert_eq!(facts::as_read(about, &Entry::new(text, unit)), said);
    }
}

/// A number typed alone, as its reader has it: newton meters are the base unit.
fn number(text: &str) -> f64 {
    read(text, &units::NEWTON_METER).value
}

/// Source: the standard library's reader of floats, right to any length.
fn std_number(text: &str) -> f64 {
    text.parse().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 4096, ..ProptestConfig::default() })]

    /// Up to fifteen digits and twenty-two places: the very same double.
    #[test]
    fn numbers_as_the_standard_library_reads_them(
        digits in 0..1_000_000_000_000_000u64,
        places in 0..23usize,
        negative: bool,
        zeros in 0..4usize,
    ) {
        let digits = format!("{}{digits:0>width$}", "0".repeat(zeros), width = places + 1);
        let (whole, part) = digits.split_at(digits.len() - places);
        let text = format!("{}{whole}{}{part}", if negative { "-" } else { "" }, if places > 0 { "." } else { "" });
        prop_assert_eq!(number(&text), std_number(&text), "{}", text);
    }

    /// Beyond: one of the next few. Each power of ten past the twenty-second rounds once more.
    #[test]
    fn long_numbers_nearly(text in "[1-9][0-9]{0,21}(\\.[0-9]{1,30})?|0\\.0{0,20}[1-9][0-9]{0,30}") {
        let (ours, theirs) = (number(&text), std_number(&text));
        prop_assert!((ours - theirs).abs() <= 8.0 * f64::EPSILON * theirs, "{}: {:e}, {:e}", text, ours, theirs);
    }
}

/// Source: the standard library's reader; the longest that an entry takes.
#[test]
fn the_longest_numbers() {
    for text in
        ["9".repeat(300), format!("0.{}1", "0".repeat(300)), format!("0.{}", "1".repeat(398))]
    {
        let (ours, theirs) = (number(&text), std_number(&text));
        assert!((ours - theirs).abs() <= 1e-13 * theirs, "{text}: {ours:e}, {theirs:e}");
    }
    assert_eq!(number(&format!("0.{}1", "0".repeat(390))), 0.0);
}

/// By hand, as manuals write them; a turn of 90° is a quarter of 2π.
#[test]
fn stages_are_read() {
    use torpor::entry::{Stage, stages};
    use torpor::working::Quantity;
    let plain = |text: &str| -> Vec<(char, f64)> {
        let read = stages(&Entry::new(text, 0)).unwrap().unwrap();
        let plain = read.into_iter().map(|it| match it {
            Stage::Share(it) => ('s', it.base()),
            Stage::Torque(it) => ('t', it.base()),
            Stage::Turn(it) => ('a', it.base()),
        });
        plain.collect()
    };
    let quarter = std::f64::consts::FRAC_PI_2;
    for (text, expected) in [
        ("70 % then 100 %", vec![('s', 0.7), ('s', 1.0)]),
        ("50, 75, 100 %", vec![('s', 0.5), ('s', 0.75), ('s', 1.0)]),
        ("50%,100%", vec![('s', 0.5), ('s', 1.0)]),
        ("20 N·m, 45 N·m", vec![('t', 20.0), ('t', 45.0)]),
        ("2,5 kgf·m then 4 kgf·m", vec![('t', 2.5 * 9.80665), ('t', 4.0 * 9.80665)]),
        ("30 N·m then 90°", vec![('t', 30.0), ('a', quarter)]),
        ("30 N·m + 1/4 turn", vec![('t', 30.0), ('a', quarter)]),
        ("100 %; 90 deg → 90 deg", vec![('s', 1.0), ('a', quarter), ('a', quarter)]),
    ] {
        let got = plain(text);
        assert_eq!(got.len(), expected.len(), "{text}");
        for ((sort, got), (want, number)) in got.iter().zip(&expected) {
            assert_eq!(sort, want, "{text}");
            assert!((got - number).abs() < 1e-12, "{text}: {got}");
        }
    }
    assert_eq!(stages(&Entry::new("  ", 0)), Ok(None));
    for text in
        ["90° then 30 N·m", "45 N·m, 20 N·m", "120 %", "0 %", "then 5 bar", "1 2 3", "70–80 %"]
    {
        assert!(stages(&Entry::new(text, 0)).is_err(), "{text}");
    }
}

/// Spellings of old manuals; the factors are those of SP 811 and of the SI.
#[test]
fn old_manuals_spellings_are_read() {
    for (text, newton_meters) in [
        ("2.5 kg-m", 2.5 * 9.80665),
        ("2.5 m-kg", 2.5 * 9.80665),
        ("2.5 kg.m", 2.5 * 9.80665),
        ("2,5 mkp", 2.5 * 9.80665),
        ("2.5 Kgm", 2.5 * 9.80665),
        ("250 cm-kg", 2.5 * 9.80665),
        ("250 kg-cm", 2.5 * 9.80665),
        ("1.8 daN·m", 18.0),
        ("1,8 m.daN", 18.0),
        ("18 ft. lbs.", 18.0 * 1.3558179483314004),
        ("18 lb-ft", 18.0 * 1.3558179483314004),
        ("18 lbs.-ft.", 18.0 * 1.3558179483314004),
        ("216 in. lbs.", 216.0 * 0.1129848290276167),
        ("216 inch-pounds", 216.0 * 0.1129848290276167),
        ("40 oz-in", 40.0 * 0.1129848290276167 / 16.0),
        ("40 in-oz", 40.0 * 0.1129848290276167 / 16.0),
        ("24 N·m (2.4 kgf·m, 18 lbf·ft)", 24.0),
    ] {
        let read = entry::quantity(&Entry::new(text, 0), &[Dimension::Torque]).unwrap().unwrap();
        assert!((read.value / newton_meters - 1.0).abs() < 1e-12, "{text}: {}", read.value);
    }
}
