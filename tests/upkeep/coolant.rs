//! Where coolant freezes, and what to exchange.

use super::*;
use proptest::prelude::*;
use torpor::coolant::{self, CoolantError, Glycol, Job, Refill, Short};
use torpor::facts;
use torpor::words::{labels, upkeep as notes};
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

/// Liters in it and out of it; percent in it, lowest and highest, wanted, in the bottle.
fn job(
    [circuit, drains]: [f64; 2],
    [present, low, high]: [f64; 3],
    wanted: f64,
    bottle: f64,
) -> Job {
    Job {
        circuit: liters(circuit),
        drains: liters(drains),
        present: percent(present),
        bounds: [percent(low), percent(high)],
        wanted: percent(wanted),
        bottle: percent(bottle),
    }
}

fn refill(volumes: [f64; 2], present: f64, wanted: f64, bottle: f64) -> Refill {
    coolant::refill(&job(volumes, [present; 3], wanted, bottle)).unwrap()
}

/// Liters of either way: straight, from the bottle, water.
fn amounts(of: &Refill) -> (Option<f64>, Option<[f64; 2]>) {
    let liters: Vec<f64> = of.ways.iter().map(|it| it.value.base() * 1000.0).collect();
    match liters[..] {
        [] => (None, None),
        [straight] => (Some(straight), None),
        [bottle, water] => (None, Some([bottle, water])),
        [straight, bottle, water] => (Some(straight), Some([bottle, water])),
        _ => panic!("{of:?}"),
    }
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
        if volume < 10.0 {
            let share = percent(volume);
            let refused = coolant::freezes_at(glycol(&row[0]), share, [share; 2]);
            assert_eq!(refused.unwrap_err(), CoolantError::UnderTen, "no inhibited row there");
            continue;
        }
        let warm = freezes(glycol(&row[0]), volume)[2];
        assert!(number(&row[4]) <= warm + 0.2, "{volume} % freezes at {}, told {warm}", &row[4]);
        seen += 1;
    }
    assert!(seen > 25, "{seen}");
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
        assert_eq!(refused, CoolantError::Impossible);
    }
}

/// Source: coolant_inhibited.csv: a tester that reads the freezing point of a row has that row in it. Linear between the
/// rows, the share is within half a percent; the scale ends where the table does.
#[test]
fn a_freezing_point_is_a_concentration() {
    for row in rows("coolant_inhibited.csv") {
        let share = glycol(&row[0]).share(celsius(number(&row[2]))).unwrap();
        close(share.base() * 100.0, number(&row[1]), 0.5, &row[2]);
    }
    assert_eq!(Glycol::Ethylene.share(celsius(-1.0)).unwrap_err(), CoolantError::UnderTen);
    assert_eq!(Glycol::Ethylene.share(celsius(-53.0)).unwrap_err(), CoolantError::OverSixty);
    close(Glycol::Ethylene.share(celsius(-52.0)).unwrap().base(), 0.6, 1e-9, "the last row");
    // −37.1 °C is −34.8 °F; in propylene the same reading is more.
    let mut kept = typed(&FULL);
    kept.put(facts::CONCENTRATION.id(), Entry::new("-34.8 °F", 0));
    kept.put(facts::WANTED_CONCENTRATION.id(), Entry::new("55 %", 0));
    kept.put(facts::COOLANT_BOTTLE.id(), Entry::new("100 %", 0));
    let read = panel(Line::Coolant, &kept);
    assert_eq!(figure(&read, labels::FREEZES_AT), "−37 °C");
    // By hand from 50 %: 2.5 · 5 / 50.
    assert_eq!(figure(&read, labels::DRAIN_AND_REFILL), "0.25 L");
    kept.put(facts::GLYCOL.id(), Entry::default());
    assert_eq!(lacks(answer(&panel(Line::Coolant, &kept), labels::DRAIN_AND_REFILL)), [101]);
    for (text, words) in [("-55 °C", "at most 60 %"), ("-2 °C", "at least 10 %")] {
        let mut kept = typed(&FULL);
        kept.put(facts::CONCENTRATION.id(), Entry::new(text, 0));
        let why = panel(Line::Coolant, &kept).refusal(facts::CONCENTRATION.id()).unwrap();
        assert!(why.contains(words), "{why}");
    }
}

/// Source: coolant_mix.csv, to a milliliter.
#[test]
fn exchanges_of_the_table() {
    let table = rows("coolant_mix.csv");
    assert_eq!(table.len(), 5);
    for row in table {
        let volume = number(&row[0]);
        let [present, wanted, bottle] = [1, 2, 3].map(|it| number(&row[it]));
        let got = refill([volume; 2], present, wanted, bottle);
        assert_eq!(got.short, None);
        match amounts(&got).0 {
            Some(amount) => close(amount, number(&row[4]), 0.00051, &row[0]),
            None => assert_eq!(number(&row[4]), 0.0, "nothing to do"),
        }
        assert!(got.ways.iter().all(|it| it.bounds.is_none()), "all of it is known");
    }
}

/// By hand: the whole circuit drained is mixed to what is wanted: 2.5 L at 40 % from concentrate are 1 L and 1.5 L.
#[test]
fn a_drained_circuit_takes_the_wanted_mixture() {
    let mixed = |volumes| amounts(&refill(volumes, 20.0, 40.0, 100.0)).1.unwrap();
    let [bottle, water] = mixed([2.5, 2.5]);
    close(bottle, 1.0, 1e-9, "bottle");
    close(water, 1.5, 1e-9, "water");
    // By hand: 1.5 L of 2.5 run out at 20 %: (0.4 · 2.5 − 0.2 · 1) / 1 = 0.8 L and 0.7 L.
    let [bottle, water] = mixed([2.5, 1.5]);
    close(bottle, 0.8, 1e-9, "bottle");
    close(water, 0.7, 1e-9, "water");
}

/// By hand: of 2.5 L at 30 % only 1 L runs out; ready-mixed it gets to 0.6 · 30 + 0.4 · 50 = 38 %, a second time to
/// 0.6 · 38 + 20 = 42.8 %; water to 18 %.
#[test]
fn only_what_runs_out_can_be_exchanged() {
    let wanting = |wanted| refill([2.5, 1.0], 30.0, wanted, 50.0);
    for (wanted, short) in [
        (38.0, None),
        (42.0, Some(Short::Twice)),
        (45.0, Some(Short::PartStays)),
        (50.0, Some(Short::WeakBottle)),
        (55.0, Some(Short::WeakBottle)),
    ] {
        let got = wanting(wanted);
        assert_eq!(got.short, short, "{wanted}");
        close(got.gets.base(), 0.38, 1e-9, "the best that this bottle does");
        close(amounts(&got).0.unwrap(), 1.0, 1e-9, "all that runs out");
        assert_eq!(amounts(&got).1, None, "with no water");
    }
    let less = wanting(25.0);
    assert_eq!(amounts(&less).0, None, "less needs water");
    // By hand: (0.25 · 2.5 − 0.3 · 1.5) / 0.5.
    close(amounts(&less).1.unwrap()[0], 0.35, 1e-9, "bottle");
    // Under a third nothing is offered that was not asked for: water alone would leave 18 %, twice 10.8 %.
    for (wanted, short) in [(15.0, Short::Twice), (10.0, Short::PartStays)] {
        let got = wanting(wanted);
        assert_eq!((got.short, amounts(&got)), (Some(short), (None, None)));
    }
    for same in [refill([2.5, 1.0], 30.0, 30.0, 50.0), refill([2.5; 2], 55.0, 55.0, 50.0)] {
        assert_eq!((amounts(&same), same.short), ((None, None), None), "nothing to do");
    }
    // A bottle weaker than what is in the bike makes it no stronger: it is left alone.
    let weak = refill([2.5; 2], 45.0, 50.0, 40.0);
    assert_eq!((weak.short, amounts(&weak)), (Some(Short::WeakBottle), (None, None)));
    for (volumes, why) in [
        ([0.0; 2], CoolantError::Impossible),
        ([f64::NAN; 2], CoolantError::Impossible),
        ([2.0, 0.0], CoolantError::Impossible),
        ([2.0, 2.1], CoolantError::Drains),
    ] {
        let got = coolant::refill(&job(volumes, [30.0; 3], 40.0, 50.0));
        assert_eq!(got.unwrap_err(), why);
    }
}

/// By hand for 30–60 %, 48 % wanted, ready-mixed: from 30 % 2.5 · 18 / 20 = 2.25 L, from 60 % 3 L of 2.5, which no drain
/// gives: no amount is right for all of it. All of it drained and mixed is: 2.5 · 48 / 50 = 2.4 L, whatever was in it.
#[test]
fn no_amount_lies_outside_of_its_range() {
    let got = coolant::refill(&job([2.5; 2], [45.0, 30.0, 60.0], 48.0, 50.0)).unwrap();
    let [bottle, _] = &got.ways[..] else { panic!("{got:?}") };
    close(bottle.value.base() * 1000.0, 2.4, 1e-9, "mixed");
    assert_eq!(bottle.bounds, None);
    let mut kept = typed(&FULL);
    kept.put(facts::CONCENTRATION.id(), Entry::new("30–60 %", 0));
    kept.put(facts::WANTED_CONCENTRATION.id(), Entry::new("48 %", 0));
    let all = panel(Line::Coolant, &kept);
    assert!(all.answer(labels::REFILL_READY_MIXED).is_none());
    assert_eq!(figure(&all, labels::READY_MIXED_AND_WATER), "2.40 L");
    assert!(
        all.note.starts_with(
            "Drain all, and mix: ready-mixed 50 % 2.40 L, with distilled water 0.10 L"
        )
    );
    kept.put(facts::COOLANT_BOTTLE.id(), Entry::new("50 %", 0));
    let typed = panel(Line::Coolant, &kept);
    assert_eq!(figure(&typed, labels::FROM_THE_BOTTLE), "2.40 L", "the same, by the bottle’s name");
    kept.put(facts::COOLANT_BOTTLE.id(), Entry::default());
    // Where a part stays in the engine there is none at all.
    kept.put(facts::COOLANT_DRAINS.id(), Entry::new("2 L", 0));
    let part = panel(Line::Coolant, &kept);
    assert_eq!(figure(&part, labels::REFILL_READY_MIXED), notes::TOO_ROUGH);
    assert!(part.answer(labels::READY_MIXED_AND_WATER).is_none());
}

proptest! {
    #[test]
    fn more_glycol_freezes_later_up_to_sixty(share in 10.0..59.0, more in 0.1..1.0) {
        for glycol in [Glycol::Ethylene, Glycol::Propylene] {
            let [cold, value, warm] = freezes(glycol, share);
            prop_assert!(freezes(glycol, share + more)[1] < value);
            prop_assert!(cold < value && value <= warm && warm <= 1e-9);
        }
        prop_assert!(freezes(Glycol::Ethylene, share)[1] <= freezes(Glycol::Propylene, share)[1] + 1e-9);
    }

    #[test]
    fn a_range_holds_all_that_lie_in_it(low in 10.0..50.0, wide in 0.0..10.0, at in 0.0..1.0) {
        let ends = [percent(low), percent(low + wide)];
        let of = |it| coolant::freezes_at(Glycol::Propylene, percent(it), ends).unwrap();
        let [cold, warm] = of(low + wide * at).bounds.unwrap();
        prop_assert_eq!(of(low).bounds, Some([cold, warm]));
        let value = of(low + wide * at).value;
        prop_assert!(cold <= value && value <= warm);
    }

    /// Inverse: the circuit that was exchanged has what was wanted, or what was said instead.
    #[test]
    fn the_exchange_gives_what_was_wanted(
        circuit in 0.5..6.0, drains in 0.3..1.0, present in 0.0..60.0, bottle in 30.0..100.0, wanted in 1.0..60.0,
    ) {
        let out: f64 = circuit * drains;
        let got = refill([circuit, out], present, wanted, bottle);
        let gets = got.gets.base() * 100.0;
        prop_assert!(got.short.is_some() || (gets - wanted).abs() < 1e-9);
        let (straight, premix) = amounts(&got);
        if let Some(amount) = straight {
            let after = (present * (circuit - amount) + bottle * amount) / circuit;
            prop_assert!((after - gets).abs() < 1e-6, "{} for {}", after, gets);
            prop_assert!(amount <= out * (1.0 + 1e-9));
        }
        if let Some([own, water]) = premix {
            prop_assert!((own + water - out).abs() < 1e-6);
            let after = (present * (circuit - out) + bottle * own) / circuit;
            prop_assert!((after - gets).abs() < 1e-6, "premix {} for {}", after, gets);
        }
    }

    /// Every amount lies within its bounds, and is right for every concentration within them.
    #[test]
    fn bounds_hold_the_amount(
        circuit in 0.5..6.0, drains in 0.3..1.0, low in 0.0..50.0, wide in 0.1..20.0, at in 0.0..1.0,
        bottle in 30.0..100.0, wanted in 1.0..60.0,
    ) {
        let volumes = [circuit, circuit * drains];
        let of = |present| {
            coolant::refill(&job(volumes, [present, low, low + wide], wanted, bottle)).unwrap()
        };
        let got = of(low + wide * at);
        for it in &got.ways {
            let [least, most] = it.bounds.unwrap_or([it.value; 2]);
            prop_assert!(least <= it.value && it.value <= most, "{:?}", it);
        }
    }

    #[test]
    fn a_stronger_want_takes_more(present in 5.0..40.0, wanted in 41.0..70.0, more in 0.5..9.0) {
        let of = |wanted| amounts(&refill([2.0; 2], present, wanted, 100.0)).0.unwrap();
        prop_assert!(of(wanted + more) > of(wanted));
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
    assert_eq!(figure(&now, labels::REFILL_READY_MIXED), "2.50 L", "ready-mixed: all of it");
    assert!(
        now.note.starts_with("Drain, and refill with ready-mixed 50 %, undiluted 2.50 L"),
        "neat concentrate would freeze sooner: {}",
        now.note
    );
    assert!(now.blanks.contains(&facts::COOLANT_BOTTLE.id()), "asked in the open");
    assert_eq!(figure(&now, labels::THEN_FREEZES_AT), "−37 °C");
    kept.put(facts::COOLANT_BOTTLE.id(), Entry::new("100 %", 0));
    let concentrate = panel(Line::Coolant, &kept);
    assert_eq!(figure(&concentrate, labels::DRAIN_AND_REFILL), "0.63 L");
    assert!(concentrate.note.starts_with("Drain, and refill undiluted 0.63 L"), "first what to do");
    assert!(concentrate.note.ends_with(notes::DRAINS_UNKNOWN), "then what was assumed");
    assert_eq!(figure(&concentrate, labels::OR_FROM_THE_BOTTLE), "1.25 L");
    assert_eq!(figure(&concentrate, labels::WATER), "1.25 L");
    let worked = answer(&concentrate, labels::DRAIN_AND_REFILL).working.as_ref().unwrap().written();
    assert_eq!(
        worked.substituted,
        "2.5\u{a0}L · (50\u{a0}% − 33\u{a0}%) / (100\u{a0}% − 33\u{a0}%) = 0.63\u{a0}L"
    );
    kept.put(facts::COOLANT_BOTTLE.id(), Entry::default());
    kept.put(facts::COOLANT_DRAINS.id(), Entry::new("1.5 L", 0));
    let part = panel(Line::Coolant, &kept);
    // By hand: 0.4 · 33 + 0.6 · 50 = 43.2 %.
    assert_eq!(figure(&part, labels::REFILL_READY_MIXED), "1.50 L", "the best that it can do");
    assert!(
        part.warnings.contains(&notes::out_of_reach(Short::WeakBottle, Some("43\u{a0}%".into())))
    );
    assert!(part.refusal(facts::WANTED_CONCENTRATION.id()).is_none());
    // Of a third or less nothing is offered: water alone would leave 13 %.
    kept.put(facts::WANTED_CONCENTRATION.id(), Entry::new("10 %", 0));
    let less = panel(Line::Coolant, &kept);
    assert!(less.warnings.contains(&notes::out_of_reach(Short::Twice, None)));
    assert!(less.answer(labels::REFILL_READY_MIXED).is_none());
    // 45 % is there after the second: 0.4 · 43.2 + 30 = 47.3 %.
    kept.put(facts::WANTED_CONCENTRATION.id(), Entry::new("45 %", 0));
    let twice = notes::out_of_reach(Short::Twice, Some("43\u{a0}%".into()));
    assert!(panel(Line::Coolant, &kept).warnings.contains(&twice));
}

/// By the table's rows at 20 % and 50 %: −9.0 and −37.1 °C; the night is typed.
#[test]
fn what_is_wanted_is_judged_too() {
    let with = |now: &str, wanted: &str, night: &str| {
        let mut kept = typed(&FULL);
        kept.put(facts::CONCENTRATION.id(), Entry::new(now, 0));
        kept.put(facts::WANTED_CONCENTRATION.id(), Entry::new(wanted, 0));
        kept.put(facts::COLDEST_NIGHT.id(), Entry::new(night, 0));
        kept
    };
    let weaker = panel(Line::Coolant, &with("50 %", "20 %", "-25 °C"));
    let warned = notes::then_freezes(true, "−9\u{a0}°C", "16\u{a0}K", true);
    assert!(weaker.warnings.contains(&warned), "{:?}", weaker.warnings);
    assert!(weaker.note.starts_with(notes::WEAKER), "{}", weaker.note);
    let us = Line::Coolant.panel(&with("50 %", "20 %", "-25 °C"), &[], UnitSet::Us);
    let steps = us.warnings.iter().find(|it| it.contains("As wanted")).unwrap();
    assert!(steps.contains("29\u{a0}°F too little"), "{steps}");
    // 3 K either way: at −36 °C half and half is not safe yet.
    let near = panel(Line::Coolant, &with("33 %", "50 %", "-36 °C"));
    assert!(near.warnings.contains(&notes::then_freezes(true, "−37\u{a0}°C", "1\u{a0}K", false)));
    let same = panel(Line::Coolant, &with("50 %", "50 %", "-36 °C"));
    assert!(same.note.starts_with(notes::NOTHING_TO_DO), "{}", same.note);
    assert!(same.answer(labels::REFILL_READY_MIXED).is_none());
    assert_eq!(same.warnings, [notes::COOLANT_MAY_FREEZE], "said once");
    // The low end of a range counts for the inhibitor.
    let rough = panel(Line::Coolant, &with("30–40 %", "50 %", "-5 °C"));
    assert!(rough.warnings.iter().any(|it| it == notes::WEAK_INHIBITOR));
}

/// Source: climate.csv, Winnipeg: January −17.8 °C, its mean night −22.8 °C, a cold snap of 15 to 20 K (common practice, no
/// source): −38 to −43 °C, −40.3 °C in the middle. Propylene at 40 % freezes at −21.5 °C by coolant_inhibited.csv, give or take
/// 3 K: 19 K too little, at least 13.5 K. A night that cannot be one counts as a blank.
#[test]
fn a_night_is_counted_as_the_batterys_is() {
    let with = |night: &'static str| {
        typed(&[
            (facts::COOLING.id(), "liquid"),
            (facts::GLYCOL.id(), "propylene"),
            (facts::CONCENTRATION.id(), "40 %"),
            (facts::PARK_DATE.id(), "2026-11-01"),
            (facts::RIDE_DATE.id(), "2027-04-15"),
            (facts::WHERE_IT_STANDS.id(), "unheated"),
            (facts::CLIMATE.id(), "winnipeg_mb"),
            (facts::COLDEST_NIGHT.id(), night),
        ])
    };
    let blank = panel(Line::Coolant, &with(""));
    let margin = &answer(&blank, labels::FREEZE_MARGIN).figure;
    let Figure::Number { data, range: Some(range), .. } = margin else { panic!("{margin:?}") };
    close(number(data), -18.8, 0.1, "margin");
    // −43 + 21.5 − 3 and −38 + 21.5 + 3.
    for (got, by_hand) in range.iter().zip([-24.5, -13.5]) {
        close(number(&got.replace('−', "-")), by_hand, 0.6, "bounds");
    }
    assert_eq!(blank.warnings[0], notes::COOLANT_FREEZES);
    assert!(blank.note.ends_with("of margin on the coldest night, counted from Winnipeg MB"));
    assert_eq!(figure(&blank, labels::COLDEST_NIGHT), "−40 °C");
    let refused = panel(Line::Coolant, &with("5 °F"));
    assert_eq!((&refused.answers, &refused.note), (&blank.answers, &blank.note));
    assert_eq!(refused.warnings[0], notes::COOLANT_FREEZES);
    assert!(refused.warnings.iter().any(|it| it.ends_with("is the minus missing?")));
    // One that can be is taken as it is: −25 °C is 3.5 K too cold.
    let typed = panel(Line::Coolant, &with("-25 °C"));
    assert!(typed.answer(labels::COLDEST_NIGHT).is_none());
    assert!(typed.note.ends_with("of margin on the coldest night"));
    // Kept elsewhere, the battery's place is not the coolant's.
    let mut away = with("");
    away.put(facts::BATTERY_KEPT.id(), Entry::new("elsewhere", 0));
    away.put(facts::KEPT_AT.id(), Entry::new("18 °C", 0));
    assert_eq!(panel(Line::Coolant, &away).answers, blank.answers);
}

/// What the head needs is asked before what only the margin wants, and the sheet's own blank is not asked twice.
#[test]
fn the_heads_blanks_come_first() {
    let blank = panel(Line::Coolant, &Kept::default());
    let asked: Vec<Id> = blank.asked(|_| false).collect();
    let head: Vec<Id> = blank.head.lacks().iter().map(|it| it.id()).collect();
    assert_eq!(asked[..3], head);
    assert_eq!(asked.last(), Some(&facts::COLDEST_NIGHT.id()), "lacking");
    let full = panel(Line::Coolant, &typed(&FULL));
    assert_eq!(full.asked(|_| false).collect::<Vec<_>>(), full.blanks);
    assert_eq!(full.asked(|_| true).last(), Some(facts::COLDEST_NIGHT.id()));
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
    for text in ["0 %", "5–15 %"] {
        let mut kept = typed(&FULL);
        kept.put(facts::CONCENTRATION.id(), Entry::new(text, 0));
        let water = panel(Line::Coolant, &kept);
        assert_eq!(water.head.figure_words(), notes::UNDER_TEN);
        assert_eq!(water.warnings.first().map(String::as_str), Some(notes::HARDLY_ANY_GLYCOL));
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
