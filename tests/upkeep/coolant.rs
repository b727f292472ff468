//! Where coolant freezes, and what to exchange.

use super::*;
use proptest::prelude::*;
use torpor::coolant::{self, CoolantError, Glycol};
use torpor::facts;
use torpor::words::{labels, notes};
use uom::si::f64::Volume;

fn glycol(name: &str) -> Glycol {
    if name == "ethylene glycol" { Glycol::Ethylene } else { Glycol::Propylene }
}

/// Freezing point with its cold and warm end, °C.
fn freezes(glycol: Glycol, share: f64) -> [f64; 3] {
    let share = percent(share);
    let answer = coolant::freezes_at(glycol, share, [share; 2]).unwrap();
    let [low, high] = answer.bounds.unwrap();
    [low, answer.value, high].map(|it| it.base() - 273.15)
}

fn liters(it: f64) -> Volume {
    Volume::of_base(it / 1000.0)
}

/// Source: coolant.csv, inhibited rows (CoolProp 8.0.0, to 0.1 K), and coolant_inhibited.csv between them: linear from
/// row to row they are within 0.3 K.
#[test]
fn inhibited_glycols_freeze_as_computed() {
    let mut seen = 0;
    for row in rows("coolant.csv").iter().filter(|it| it[1].contains("inhibited")) {
        close(freezes(glycol(&row[0]), number(&row[2]))[1], number(&row[4]), 0.051, &row[2]);
        seen += 1;
    }
    assert_eq!(seen, 6);
    let between = rows("coolant_inhibited.csv");
    assert_eq!(between.len(), 42);
    for row in between {
        close(freezes(glycol(&row[0]), number(&row[1]))[1], number(&row[2]), 0.3, &row[1]);
    }
}

/// Source: coolant.csv: Lange's Handbook, an engine maker's manual and pure glycol. None freezes warmer than the warm
/// end that is told, by the right basis: mass % is not volume %.
#[test]
fn no_published_row_freezes_before_the_warm_end() {
    let mut seen = 0;
    for row in rows("coolant.csv") {
        if row[1].contains("inhibited") {
            continue;
        }
        let density = if glycol(&row[0]) == Glycol::Ethylene { 1113.0 } else { 1036.0 };
        let volume = row[2].parse().unwrap_or_else(|_| {
            let mass = number(&row[3]) / 100.0;
            let [own, water] = [mass / density, (1.0 - mass) / 998.2];
            100.0 * own / (own + water)
        });
        if volume > 60.0 {
            let share = percent(volume);
            let refused = coolant::freezes_at(glycol(&row[0]), share, [share; 2]);
            assert_eq!(refused.unwrap_err(), CoolantError::OverSixty, "{volume}");
            continue;
        }
        let warm = freezes(glycol(&row[0]), volume)[2];
        assert!(number(&row[4]) <= warm + 0.2, "{volume} % freezes at {}, told {warm}", &row[4]);
        seen += 1;
    }
    assert!(seen > 30, "{seen}");
}

/// Source: METHOD of the reference values: pure-glycol arithmetic says −39.8 °C for half and half, 2.7 K too brave.
#[test]
fn a_bottle_is_not_pure_glycol() {
    let half = freezes(Glycol::Ethylene, 50.0);
    close(half[1], -37.1, 0.05, "half");
    assert!(half[1] - -39.8 > 2.5);
    // As mass % it would be 52.7 %, and 40 mass % is not 40 volume %.
    assert!(freezes(Glycol::Ethylene, 52.7)[1] < half[1]);
}

/// Source: coolant.csv: 85 % freezes at −30 °C, pure glycol at −13: nothing is read on past the last row.
#[test]
fn nothing_is_told_past_sixty() {
    for share in [60.5, 70.0, 85.0, 100.0] {
        let share = percent(share);
        let refused = coolant::freezes_at(Glycol::Ethylene, share, [share; 2]).unwrap_err();
        assert_eq!(refused, CoolantError::OverSixty);
    }
    let range = coolant::freezes_at(Glycol::Ethylene, percent(58.0), [55.0, 61.0].map(percent));
    assert_eq!(range.unwrap_err(), CoolantError::OverSixty);
    for wrong in [[-1.0; 3], [101.0; 3], [50.0, 60.0, 55.0], [f64::NAN; 3]] {
        let [share, low, high] = wrong.map(percent);
        let refused = coolant::freezes_at(Glycol::Propylene, share, [low, high]).unwrap_err();
        assert_eq!(refused, CoolantError::Concentration);
    }
}

/// Source: coolant_mix.csv, to a milliliter.
#[test]
fn exchanges_of_the_table() {
    let table = rows("coolant_mix.csv");
    assert_eq!(table.len(), 5);
    for row in table {
        let volume = liters(number(&row[0]));
        let [present, wanted, bottle] = [1, 2, 3].map(|it| percent(number(&row[it])));
        let got = coolant::exchange([volume; 2], present, [present; 2], [wanted, bottle]).unwrap();
        close(got.value.base() * 1000.0, number(&row[4]), 0.00051, &row[0]);
        assert_eq!(got.bounds, None, "all of it is known");
    }
}

/// By hand: the whole circuit drained is mixed to what is wanted: 2.5 L at 40 % from concentrate are 1 L and 1.5 L.
#[test]
fn a_drained_circuit_takes_the_wanted_mixture() {
    let shares = [percent(40.0), percent(100.0)];
    let premix =
        coolant::premix([liters(2.5); 2], percent(20.0), [percent(20.0); 2], shares).unwrap();
    close(premix.bottle.value.base() * 1000.0, 1.0, 1e-9, "bottle");
    close(premix.water.value.base() * 1000.0, 1.5, 1e-9, "water");
    // By hand: 1.5 L of 2.5 run out at 20 %: (0.4 · 2.5 − 0.2 · 1) / 1 = 0.8 L and 0.7 L.
    let volumes = [liters(2.5), liters(1.5)];
    let premix = coolant::premix(volumes, percent(20.0), [percent(20.0); 2], shares).unwrap();
    close(premix.bottle.value.base() * 1000.0, 0.8, 1e-9, "bottle");
    close(premix.water.value.base() * 1000.0, 0.7, 1e-9, "water");
}

/// By hand: of 2.5 L at 30 % only 1 L runs out; ready-mixed it gets to 0.6 · 30 + 0.4 · 50 = 38 %, water to 18 %.
#[test]
fn only_what_runs_out_can_be_exchanged() {
    let volumes = [liters(2.5), liters(1.0)];
    let try_for = |wanted| {
        let shares = [percent(wanted), percent(50.0)];
        coolant::exchange(volumes, percent(30.0), [percent(30.0); 2], shares)
    };
    let why = try_for(45.0).unwrap_err();
    assert!(why.to_string().contains("from 18 % to 38 %"), "{why}");
    close(try_for(38.0).unwrap().value.base() * 1000.0, 1.0, 1e-9, "all that runs out");
    assert_eq!(try_for(25.0).unwrap_err(), CoolantError::NotWithBottle, "less needs water");
    assert_eq!(try_for(30.0).unwrap().value.base(), 0.0);
    let full = [liters(2.5); 2];
    let strong = percent(55.0);
    let nothing = coolant::exchange(full, strong, [strong; 2], [strong, percent(50.0)]).unwrap();
    assert_eq!(nothing.value.base(), 0.0, "what is there already needs nothing");
    for (volumes, why) in [
        ([liters(0.0); 2], CoolantError::Circuit),
        ([liters(f64::NAN); 2], CoolantError::Circuit),
        ([liters(2.0), liters(0.0)], CoolantError::Drains),
        ([liters(2.0), liters(2.1)], CoolantError::Drains),
    ] {
        let shares = [percent(40.0), percent(50.0)];
        let got = coolant::exchange(volumes, percent(30.0), [percent(30.0); 2], shares);
        assert_eq!(got.unwrap_err(), why);
    }
}

proptest! {
    #[test]
    fn more_glycol_freezes_later_up_to_sixty(share in 0.0..59.0, more in 0.1..1.0) {
        for glycol in [Glycol::Ethylene, Glycol::Propylene] {
            let [cold, value, warm] = freezes(glycol, share);
            prop_assert!(freezes(glycol, share + more)[1] < value);
            prop_assert!(cold < value && value <= warm && warm <= 1e-9);
        }
        prop_assert!(freezes(Glycol::Ethylene, share)[1] <= freezes(Glycol::Propylene, share)[1] + 1e-9);
    }

    #[test]
    fn a_range_holds_all_that_lie_in_it(low in 0.0..50.0, wide in 0.0..10.0, at in 0.0..1.0) {
        let ends = [percent(low), percent(low + wide)];
        let of = |it| coolant::freezes_at(Glycol::Propylene, percent(it), ends).unwrap();
        let [cold, warm] = of(low + wide * at).bounds.unwrap();
        prop_assert_eq!(of(low).bounds, Some([cold, warm]));
        let value = of(low + wide * at).value;
        prop_assert!(cold <= value && value <= warm);
    }

    /// Inverse: the circuit that was exchanged has what was wanted.
    #[test]
    fn the_exchange_gives_what_was_wanted(
        circuit in 0.5..6.0, drains in 0.3..1.0, present in 0.0..60.0, bottle in 30.0..100.0, at in 0.0..1.0,
    ) {
        let volumes = [liters(circuit), liters(circuit * drains)];
        let best = present + (bottle - present) * drains;
        let wanted = present + (best - present) * at;
        let shares = [percent(wanted), percent(bottle)];
        let now = percent(present);
        let got = coolant::exchange(volumes, now, [now; 2], shares).unwrap().value.base() * 1000.0;
        let after = (present * (circuit - got) + bottle * got) / circuit;
        prop_assert!((after - wanted).abs() < 1e-6, "{} for {}", after, wanted);
        prop_assert!(got <= circuit * drains * (1.0 + 1e-9));
        if let Ok(premix) = coolant::premix(volumes, now, [now; 2], shares) {
            let [own, water]: [f64; 2] = [premix.bottle, premix.water].map(|it| it.value.base() * 1000.0);
            let out: f64 = circuit * drains;
            prop_assert!((own + water - out).abs() < 1e-6);
            let after = (present * (circuit - out) + bottle * own) / circuit;
            prop_assert!((after - wanted).abs() < 1e-6, "premix {} for {}", after, wanted);
        }
    }

    #[test]
    fn a_stronger_want_takes_more(present in 5.0..40.0, wanted in 41.0..70.0, more in 0.5..9.0) {
        let of = |wanted| {
            let shares = [percent(wanted), percent(100.0)];
            coolant::exchange([liters(2.0); 2], percent(present), [percent(present); 2], shares)
        };
        prop_assert!(of(wanted + more).unwrap().value > of(wanted).unwrap().value);
    }
}

const FULL: [(Id, &str); 6] = [
    (facts::COOLING.id(), "liquid"),
    (facts::GLYCOL.id(), "ethylene"),
    (facts::CONCENTRATION.id(), "33 %"),
    (facts::WANTED_CONCENTRATION.id(), "50 %"),
    (facts::COOLANT_CIRCUIT.id(), "2.5 L"),
    (facts::COLDEST_NIGHT.id(), "-24 °C"),
];

/// Source: coolant_mix.csv row 1 for concentrate; freezing point from the table's rows at 30 and 35 %, by hand −18.2 °C.
#[test]
fn the_line_as_a_whole() {
    let mut kept = typed(&FULL);
    let now = panel(Line::Coolant, &kept);
    assert_eq!(figure(&now, labels::FREEZES_AT), "−18 °C");
    assert_eq!(now.warnings.first().map(String::as_str), Some(notes::COOLANT_FREEZES));
    assert!(now.warnings.iter().any(|it| it == notes::WEAK_INHIBITOR));
    assert!(now.note.contains(notes::DRAINS_UNKNOWN), "and that all of it is");
    assert!(now.note.contains(notes::READY_MIXED), "what is taken for the bottle is said");
    assert_eq!(figure(&now, labels::DRAIN_AND_REFILL), "2.50 L", "ready-mixed: all of it");
    assert_eq!(figure(&now, labels::THEN_FREEZES_AT), "−37 °C");
    kept.put(facts::COOLANT_BOTTLE.id(), Entry::new("100 %", 0));
    let concentrate = panel(Line::Coolant, &kept);
    assert_eq!(figure(&concentrate, labels::DRAIN_AND_REFILL), "0.63 L");
    assert_eq!(figure(&concentrate, labels::FROM_THE_BOTTLE), "1.25 L");
    assert_eq!(figure(&concentrate, labels::WATER), "1.25 L");
    let worked = answer(&concentrate, labels::DRAIN_AND_REFILL).working.as_ref().unwrap().written();
    assert_eq!(
        worked.substituted,
        "2.5\u{a0}L · (50\u{a0}% − 33\u{a0}%) / (100\u{a0}% − 33\u{a0}%) = 0.63\u{a0}L"
    );
    kept.put(facts::COOLANT_BOTTLE.id(), Entry::default());
    kept.put(facts::COOLANT_DRAINS.id(), Entry::new("1.5 L", 0));
    let part = panel(Line::Coolant, &kept);
    let why = part.refusal(facts::WANTED_CONCENTRATION.id()).unwrap();
    assert!(why.contains("from 14 % to 43 %"), "{why}");
}

/// A bike without coolant is asked nothing more; one over 60 % is told why there is no figure.
#[test]
fn no_coolant_and_too_much_of_it() {
    let air = panel(Line::Coolant, &typed(&[(facts::COOLING.id(), "air")]));
    assert_eq!(air.blanks, [facts::COOLING.id()]);
    assert!(air.more.is_empty() && air.stated.is_empty() && air.answers.is_empty());
    assert_eq!(air.head.figure_words(), notes::NO_COOLANT);
    for text in ["70 %", "55–65 %"] {
        let mut kept = typed(&FULL);
        kept.put(facts::CONCENTRATION.id(), Entry::new(text, 0));
        let strong = panel(Line::Coolant, &kept);
        assert_eq!(strong.head.figure_words(), notes::PAST_SIXTY);
        assert_eq!(strong.warnings.first().map(String::as_str), Some(notes::TOO_MUCH_GLYCOL));
    }
    let mut weak = typed(&FULL);
    weak.put(facts::CONCENTRATION.id(), Entry::new("50 %", 0));
    let warned =
        |it: &Kept| panel(Line::Coolant, it).warnings.iter().any(|it| it == notes::WEAK_INHIBITOR);
    assert!(!warned(&weak));
    weak.put(facts::WANTED_CONCENTRATION.id(), Entry::new("25 %", 0));
    assert!(warned(&weak), "one that is wanted weak, too");
    let blank = panel(Line::Coolant, &Kept::default());
    assert_eq!(lacks(&blank.head), [100, 101, 102]);
}
