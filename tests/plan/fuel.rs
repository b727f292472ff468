//! The fuel line and the last run: labels, levels, age, water, tap and bowls.

use super::*;
use torpor::words::fuel as words;

fn tank(more: &[(Id, &str)]) -> Kept {
    let mut kept = typed(&[
        (facts::TANK_VOLUME.id(), "16 L"),
        (facts::FUEL_IN_TANK.id(), "4 L"),
        (facts::STABILIZER_LABEL.id(), "1:400"),
    ]);
    for (id, text) in more {
        kept.put(*id, Entry::new(*text, 0));
    }
    kept
}

/// A newcomer has a dose after three entries; by hand 95 % of 16 L by 400 are 38 mL, 7.7 teaspoons.
#[test]
fn three_entries_are_enough() {
    let panel = plan::fuel(&tank(&[]), UnitSet::Metric);
    assert_eq!(figure(&panel.head), "38 mL");
    assert_eq!(panel.blanks[..3], [Id(10), Id(11), Id(13)]);
    assert_eq!(
        words_of(&panel, labels::MEASURED_AS),
        "38\u{a0}mL · 1.28\u{a0}US fl oz · 2 tbsp + 1¾ tsp"
    );
    assert!(panel.warnings.is_empty());
    assert!(panel.answer(labels::AT_HIGHEST_DOSE).is_none());
    let double = plan::fuel(&tank(&[(facts::HIGHEST_DOSE.id(), "2")]), UnitSet::Metric);
    assert_eq!(figure(answer(&double, labels::AT_HIGHEST_DOSE)), "76 mL");
}

/// By hand: 15.2 L by 320 are 47.5 mL, by 400 (160 · 2.5 imperial ounces) 38.
#[test]
fn a_label_without_a_country_is_asked_about() {
    let label = (facts::STABILIZER_LABEL.id(), "1 fl oz per 2.5 gal");
    let panel = plan::fuel(&tank(&[label]), UnitSet::Metric);
    assert!(panel.blanks.contains(&facts::LABEL_MEASURES.id()));
    assert_eq!(panel.warnings, [words::which_measures("48\u{a0}mL", "38\u{a0}mL")]);
    for (measures, dose) in [("us", "48 mL"), ("imperial", "38 mL")] {
        let chosen = tank(&[label, (facts::LABEL_MEASURES.id(), measures)]);
        let panel = plan::fuel(&chosen, UnitSet::Metric);
        assert_eq!(figure(&panel.head), dose, "{measures}");
        assert!(panel.warnings.is_empty());
        let said = words_of(&panel, labels::MEASURED_AS);
        assert_eq!(said.contains("imp fl oz"), measures == "imperial", "{said}");
    }
    for clear in ["1:320", "30 mL per 10 L", "1 US fl oz per 2.5 US gal"] {
        let panel = plan::fuel(&tank(&[(facts::STABILIZER_LABEL.id(), clear)]), UnitSet::Metric);
        assert!(!panel.blanks.contains(&facts::LABEL_MEASURES.id()), "{clear}");
    }
}

/// By hand: 15.2 L at 30 mL for 2.5 gallons: 48.19 mL by US ones, 40.12 by imperial; at an ounce for 10 L: 44.95 and 43.19.
#[test]
fn a_metric_side_tells_no_country() {
    for (label, us, imperial) in [
        ("30 mL per 2.5 gal", "48\u{a0}mL", "40\u{a0}mL"),
        ("1 fl oz per 10 L", "45\u{a0}mL", "43\u{a0}mL"),
    ] {
        let label = (facts::STABILIZER_LABEL.id(), label);
        let panel = plan::fuel(&tank(&[label]), UnitSet::Metric);
        assert_eq!(panel.warnings, [words::which_measures(us, imperial)]);
        for (measures, dose) in [("us", us), ("imperial", imperial)] {
            let chosen = tank(&[label, (facts::LABEL_MEASURES.id(), measures)]);
            let panel = plan::fuel(&chosen, UnitSet::Metric);
            assert_eq!(figure(&panel.head), dose.replace('\u{a0}', " "), "{label:?} {measures}");
        }
    }
    // An ounce for 128 is 1:128 anywhere: nothing to warn of.
    let same = (facts::STABILIZER_LABEL.id(), "1 oz per 128 oz");
    assert!(plan::fuel(&tank(&[same]), UnitSet::Metric).warnings.is_empty());
}

/// Common practice, no source: labels are mostly 1:200 to 1:1300.
#[test]
fn a_rich_label_is_doubted() {
    let with = |label| plan::fuel(&tank(&[(facts::STABILIZER_LABEL.id(), label)]), UnitSet::Metric);
    assert_eq!(with("1:5").warnings, [words::RICH_LABEL]);
    assert!(with("1:60").warnings.is_empty());
}

/// The blank's words: blank is 95 %; typed it is the same.
#[test]
fn the_usual_level_typed_is_the_usual_level() {
    for typed in ["95 %", "15.2 L", ""] {
        let panel = plan::fuel(&tank(&[(facts::FILL_TO.id(), typed)]), UnitSet::Metric);
        assert!(panel.warnings.is_empty(), "{typed}: {:?}", panel.warnings);
    }
    let panel = plan::fuel(&tank(&[(facts::FILL_TO.id(), "96 %")]), UnitSet::Metric);
    assert_eq!(panel.warnings, [notes::NO_ROOM_TO_GROW]);
}

/// A full tank takes no dose: where there is none to pour, nobody is told to pour it.
#[test]
fn nothing_is_poured_where_there_is_no_dose() {
    let brim = [(facts::FUEL_IN_TANK.id(), "16 L"), (facts::FILL_TO.id(), "100 %")];
    let with = |more: (Id, &str)| {
        let mut all = brim.to_vec();
        all.push(more);
        plan::fuel(&tank(&all), UnitSet::Metric)
    };
    let panel = with((facts::STABILIZER_LABEL.id(), ""));
    assert_eq!(panel.warnings, [notes::NO_ROOM_TO_GROW]);
    assert!(panel.note.is_empty());
    let panel = with((facts::ALREADY_TREATED.id(), "100 %"));
    assert_eq!(panel.warnings, [notes::NO_ROOM_TO_GROW]);
    assert_eq!(panel.note, words::ALL_TREATED);
    let panel = with((facts::ALREADY_TREATED.id(), "50 %"));
    assert_eq!(panel.warnings, [notes::NO_ROOM_TO_GROW, notes::FULL_CANNOT_MIX]);
    assert_eq!(panel.note, notes::FULL_ALREADY);
}

/// Source: fuel_headspace.csv: 15 L filled to the brim at 0 °C grow 556 mL at 30 °C (745 kg/m³); the lightest gasoline
/// grows more. By hand for 720 kg/m³ with the constants of table 54B, worked out apart from this program: 586.13 mL run out,
/// and 14.436 L are the most.
#[test]
fn a_level_that_grows_over_the_neck_is_refused() {
    let with = |fill: &str, warmest: &str| {
        let kept = tank(&[
            (facts::TANK_VOLUME.id(), "15 L"),
            (facts::FILL_TO.id(), fill),
            (facts::FILL_TEMPERATURE.id(), "0 °C"),
            (facts::WARMEST_FUEL.id(), warmest),
        ]);
        plan::fuel(&kept, UnitSet::Metric)
    };
    let refused = with("100 %", "30 °C");
    let why = refused.refusal(facts::FILL_TO.id()).unwrap();
    assert!(why.ends_with("would run out: fill to at most 14.4\u{a0}L"), "{why}");
    assert!(why.contains("up to 586\u{a0}mL would"), "{why}");
    assert!(!refused.head.lacks().is_empty(), "no dose for a level that runs over");
    // What it says is taken.
    let taken = with("14.4 L", "30 °C");
    assert!(taken.head.lacks().is_empty() && taken.warnings.is_empty(), "{:?}", taken.warnings);
    assert_eq!(figure(answer(&taken, labels::MOST_FILL)), "14.4 L");
    // It only cools: brim-full is taken, without a word about room.
    let cooled = with("100 %", "-5 °C");
    assert!(cooled.head.lacks().is_empty() && cooled.warnings.is_empty());
    // Sun on the tank: 95 % would run over, and is lowered openly.
    let sun = with("", "60 °C");
    assert_eq!(sun.warnings.len(), 1);
    assert!(sun.warnings[0].starts_with("The usual 95 % would run over"), "{:?}", sun.warnings);
    assert!(sun.refusal(facts::FILL_TO.id()).is_none());
    // Over the tank is over the tank, whatever the weather.
    let why = with("16 L", "30 °C").refusal(facts::FILL_TO.id()).unwrap();
    assert_eq!(why, "volume to fill to has to be at most the tank volume");
    // What is in already cannot be refused: it has to come out.
    let kept = tank(&[
        (facts::FUEL_IN_TANK.id(), "16 L"),
        (facts::FILL_TEMPERATURE.id(), "0 °C"),
        (facts::WARMEST_FUEL.id(), "30 °C"),
    ]);
    let panel = plan::fuel(&kept, UnitSet::Metric);
    assert!(panel.warnings[0].starts_with("The tank is so full"), "{:?}", panel.warnings);
    // One temperature alone is not guessed the other for.
    let panel = plan::fuel(&tank(&[(facts::WARMEST_FUEL.id(), "30 °C")]), UnitSet::Metric);
    assert_eq!(lacks(&panel.head), [22]);
}

/// By hand: 200 km at 4–6 L/100 km leave 16 − 10 = 6 L, 4 to 8; 15.2 − 6 = 9.2 go in, 7.2 to 11.2.
#[test]
fn the_tank_is_reckoned_where_it_was_not_read() {
    let mut kept = tank(&[(facts::FUEL_IN_TANK.id(), ""), (facts::SINCE_FULL.id(), "200 km")]);
    let panel = plan::fuel(&kept, UnitSet::Metric);
    assert_eq!(lacks(&panel.head), [18]);
    assert!(panel.more.contains(&facts::CONSUMPTION.id()));
    kept.put(facts::CONSUMPTION.id(), Entry::new("4–6 L/100 km", 0));
    let panel = plan::fuel(&kept, UnitSet::Metric);
    assert_eq!(figure(&panel.head), "38 mL");
    assert_eq!(figure(answer(&panel, labels::FUEL_LEFT)), "6.0 L");
    assert_eq!(range(answer(&panel, labels::FUEL_LEFT)), ["4.0", "8.0"]);
    assert_eq!(range(answer(&panel, labels::FUEL_TO_ADD)), ["7.2", "11.2"]);
    kept.put(facts::SINCE_FULL.id(), Entry::new("500 km", 0));
    let why = plan::fuel(&kept, UnitSet::Metric).refusal(facts::SINCE_FULL.id()).unwrap();
    assert_eq!(why, "distance since the last fill has to be one that a tank lasts");
    // What was read counts.
    kept.put(facts::FUEL_IN_TANK.id(), Entry::new("4 L", 0));
    let panel = plan::fuel(&kept, UnitSet::Metric);
    assert_eq!(figure(answer(&panel, labels::FUEL_TO_ADD)), "11.2 L");
    assert!(panel.answer(labels::FUEL_LEFT).is_none());
    assert_eq!(panel.warnings, [words::TANK_COUNTS]);
}

/// Common practice, no source: treated 12 to 24 months, untreated 1 to 3; stale fuel is not mended.
#[test]
fn fuel_is_held_against_the_season() {
    let with = |more: &[(Id, &str)]| {
        let mut kept =
            tank(&[(facts::PARK_DATE.id(), "2026-11-14"), (facts::RIDE_DATE.id(), "2027-03-28")]);
        for (id, text) in more {
            kept.put(*id, Entry::new(*text, 0));
        }
        plan::fuel(&kept, UnitSet::Metric)
    };
    let treated = with(&[]);
    assert_eq!(figure(answer(&treated, labels::FUEL_AGE)), "134");
    assert!(treated.warnings.is_empty());
    assert_eq!(with(&[(facts::STABILIZER_LABEL.id(), "")]).warnings, [words::UNTREATED]);
    assert_eq!(with(&[(facts::FUEL_BOUGHT.id(), "2026-09-01")]).warnings, [words::STALE]);
    // Fuel that has its stabilizer is neither untreated nor stale.
    let treated = (facts::ALREADY_TREATED.id(), "100 %");
    assert!(with(&[treated, (facts::STABILIZER_LABEL.id(), "")]).warnings.is_empty());
    assert!(with(&[treated, (facts::FUEL_BOUGHT.id(), "2026-09-01")]).warnings.is_empty());
    let half = (facts::ALREADY_TREATED.id(), "50 %");
    let stale = with(&[half, (facts::FUEL_BOUGHT.id(), "2026-09-01")]);
    assert_eq!(stale.warnings, [words::STALE]);
    // Over twelve months it is drained: said first, and nothing is poured.
    let brim = [(facts::FUEL_IN_TANK.id(), "16 L"), (facts::FILL_TO.id(), "100 %")];
    for more in [&[][..], &[treated], &[(facts::STABILIZER_LABEL.id(), "1:5")], &brim] {
        let mut all = vec![(facts::RIDE_DATE.id(), "2027-11-16")];
        all.extend(more);
        let long = with(&all);
        assert_eq!(long.warnings[0], notes::TOO_LONG_TO_TREAT, "{more:?}");
        assert_eq!(long.head.figure_words(), words::DRAIN_INSTEAD);
        assert!(long.note.is_empty() && long.answer(labels::MEASURED_AS).is_none());
        assert!(!long.warnings.iter().any(|it| it == notes::FULL_CANNOT_MIX));
    }
    let refused = with(&[(facts::FUEL_BOUGHT.id(), "2027-04-01")]);
    let why = refused.refusal(facts::FUEL_BOUGHT.id()).unwrap();
    assert_eq!(why, "fuel has to be bought on the ride date or before");
}

/// Without a ride date twelve months are looked at, and that is said; they are no age to drain a tank for.
#[test]
fn a_blank_ride_date_is_said() {
    let with = |bought: &str| {
        let kept = tank(&[
            (facts::PARK_DATE.id(), "2026-11-14"),
            (facts::FUEL_BOUGHT.id(), bought),
            (facts::ALREADY_TREATED.id(), "100 %"),
        ]);
        plan::fuel(&kept, UnitSet::Metric)
    };
    let panel = with("2026-11-01");
    assert!(panel.note.ends_with(notes::IN_TWELVE_MONTHS), "{}", panel.note);
    assert_eq!(figure(answer(&panel, labels::FUEL_AGE)), "378");
    assert!(panel.warnings.is_empty(), "{:?}", panel.warnings);
    // What is over a year old when it is parked is, whatever the ride date.
    assert_eq!(with("2025-11-01").warnings, [notes::TOO_LONG_TO_TREAT]);
}

/// Source: condensation.csv and e0_water_shed.csv: a filled tank breathes in hundredths of a gram, E10 holds tens of
/// grams, and gasoline without ethanol sheds more of its own than it breathes in.
#[test]
fn water_is_told_truthfully() {
    let with = |fuel: &str| {
        let kept = tank(&[
            (facts::FUEL_TYPE.id(), fuel),
            (facts::PARK_DATE.id(), "2026-11-14"),
            (facts::RIDE_DATE.id(), "2027-03-28"),
        ]);
        plan::fuel(&kept, UnitSet::Metric)
    };
    let e10 = with("e10");
    // 0.8 L of air, 134 nights, 0.265 mg a night and liter; at most 7.308 mg.
    assert_eq!(figure(answer(&e10, labels::WATER_BREATHED)), "0.03 g");
    assert_eq!(range(answer(&e10, labels::WATER_BREATHED)), ["0.03", "0.78"]);
    assert_eq!(range(answer(&e10, labels::WATER_HELD)), ["46", "76"]);
    assert!(e10.answer(labels::WATER_SHED).is_none());
    assert!(words_of(&e10, labels::WHY_FULL).contains("does not keep water out"));
    let e0 = with("e0");
    let [breathed, shed] =
        [labels::WATER_BREATHED, labels::WATER_SHED].map(|it| base(answer(&e0, it)));
    assert!(shed > breathed);
    assert!(with("").answer(labels::WATER_BREATHED).is_none(), "only where the fuel is named");
}

/// Source: the project's workshop rules: bowls drained and tap off, or full and treated with none drained.
#[test]
fn tap_and_bowls_are_one_or_the_other() {
    let with = |more: &[(Id, &str)]| {
        let mut kept = typed(&[(facts::FUEL_SUPPLY.id(), "carburetor")]);
        for (id, text) in more {
            kept.put(*id, Entry::new(*text, 0));
        }
        plan::last_run(&kept, UnitSet::Metric)
    };
    let open = words_of(&with(&[]), labels::TAP_AND_BOWLS);
    assert!(open.contains("never some of each"), "{open}");
    let drained = [(facts::BOWLS.id(), "drained"), (facts::FUEL_TAP.id(), "manual")];
    let said = words_of(&with(&drained), labels::TAP_AND_BOWLS);
    assert!(said.contains("tap off, then every bowl drained"), "{said}");
    let full = with(&[(facts::BOWLS.id(), "full"), (facts::FUEL_TAP.id(), "vacuum")]);
    let said = words_of(&full, labels::TAP_AND_BOWLS);
    assert!(said.contains("never on PRI") && said.contains("left full"), "{said}");
    assert_eq!(full.note, words::RIDE_LEAVE_FULL);
    assert_eq!(full.more, [facts::FUEL_TAP.id(), facts::BOWLS.id()]);
    let injection = with(&[(facts::FUEL_SUPPLY.id(), "injection")]);
    assert!(injection.answer(labels::TAP_AND_BOWLS).is_none() && injection.more.is_empty());
}

/// Source: the project's workshop rules: no heater, charger or lamp near while fuel is drained; and only a tap that can be
/// turned is turned off.
#[test]
fn bowls_are_drained_with_care() {
    let with = |supply: &str, bowls: &str, tap: &str| {
        let kept = typed(&[
            (facts::FUEL_SUPPLY.id(), supply),
            (facts::BOWLS.id(), bowls),
            (facts::FUEL_TAP.id(), tap),
        ]);
        plan::last_run(&kept, UnitSet::Metric)
    };
    for tap in ["manual", "vacuum", "none", ""] {
        for (bowls, care) in [("drained", true), ("", true), ("full", false)] {
            let panel = with("carburetor", bowls, tap);
            let said = panel.cautions.join(" ");
            for word in [
                "engine cold",
                "ignition off",
                "tap off where it can be turned",
                "into a can",
                "heater, charger or lamp",
                "vapor",
            ] {
                assert_eq!(said.contains(word), care, "{word}, {bowls}");
            }
            assert!(said.contains("carbon monoxide") && !panel.note.contains("tap off"));
        }
    }
    assert!(!with("injection", "", "").cautions.join(" ").contains("Bowls"));
    let hint = facts::about(facts::BOWLS_VOLUME.id()).unwrap().hint;
    assert!(hint.contains("engine cold") && hint.contains("vapor burns"), "{hint}");
}

/// A gauge's "1/2" is half of the tank, the blank's unit makes half a liter of it: 14.7 L too little or too much is poured.
#[test]
fn a_bare_fraction_of_the_tank_is_asked_about() {
    for text in ["1/2", " 3/4 ", "½", "¼"] {
        let panel = plan::fuel(&tank(&[(facts::FUEL_IN_TANK.id(), text)]), UnitSet::Metric);
        let why = panel.head.lacks().first().and_then(|it| it.refusal().map(|it| it.to_string()));
        assert_eq!(why.as_deref(), Some(words::HALF_OF_WHAT), "{text}");
    }
    for text in ["1/2 L", "1 1/2", "50 %", "0.5", "½ L", "1 ½"] {
        let panel = plan::fuel(&tank(&[(facts::FUEL_IN_TANK.id(), text)]), UnitSet::Metric);
        assert!(panel.head.lacks().is_empty(), "{text}");
    }
}

/// Who reckons in US units is not warned of ounces that are not theirs; whose they are can still be said.
#[test]
fn us_units_take_a_label_of_no_country_as_theirs() {
    let label = (facts::STABILIZER_LABEL.id(), "1 fl oz per 2.5 gal");
    let panel = plan::fuel(&tank(&[label]), UnitSet::Us);
    assert!(panel.warnings.is_empty(), "{:?}", panel.warnings);
    assert!(panel.blanks.contains(&facts::LABEL_MEASURES.id()));
    // 47.5 mL by hand, as above.
    assert_eq!(figure(&panel.head), "1.61 US fl oz");
}
