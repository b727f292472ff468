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

fn words_of(panel: &Panel, label: &str) -> String {
    answer(panel, label).figure_words()
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

/// Source: fuel_headspace.csv: 15 L filled to the brim at 0 °C grow 556 mL at 30 °C (745 kg/m³); the lightest gasoline
/// grows more, so up to 14.4 L are taken.
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
    let over: f64 =
        why.split("up to ").nth(1).unwrap().split('\u{a0}').next().unwrap().parse().unwrap();
    assert!((556.0..620.0).contains(&over), "{over} mL");
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
    let long = with(&[(facts::RIDE_DATE.id(), "2027-11-16")]);
    assert_eq!(long.warnings, [notes::TOO_LONG_TO_TREAT]);
    let refused = with(&[(facts::FUEL_BOUGHT.id(), "2027-04-01")]);
    let why = refused.refusal(facts::FUEL_BOUGHT.id()).unwrap();
    assert_eq!(why, "fuel has to be bought on the ride date or before");
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
