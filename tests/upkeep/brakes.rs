//! Brake and clutch fluid.

use super::*;
use proptest::prelude::*;
use torpor::brake::{self, Fluid, Late, Mixing};
use torpor::facts;
use torpor::words::{labels, upkeep as notes};

const ALL: [Fluid; 5] = [Fluid::Dot3, Fluid::Dot4, Fluid::Dot5, Fluid::Dot51, Fluid::Mineral];

/// Source: brake_fluid.csv, FMVSS 116 (49 CFR 571.116) S5.1; DOT 5.1 is 260/180, not 270/190 as old copies print.
#[test]
fn grades_boil_as_their_standard_asks() {
    let mut seen = 0;
    for row in rows("brake_fluid.csv") {
        let fluid = match &row[0] {
            "DOT 3" => Fluid::Dot3,
            "DOT 4" => Fluid::Dot4,
            "DOT 5" => Fluid::Dot5,
            "DOT 5.1" => Fluid::Dot51,
            // Classes of ISO 4925 are not offered; their numbers are from memory.
            _ => continue,
        };
        assert_eq!(fluid.boils(), Some([number(&row[2]), number(&row[3])]), "{}", &row[0]);
        assert_eq!(fluid.is_glycol(), &row[5] == "1", "{}", &row[0]);
        let years = brake::change_by(fluid, day(2025, 1, 1)).map(|it| it.value);
        assert_eq!(years, (&row[7] == "2").then(|| day(2027, 1, 1)), "{}", &row[0]);
        seen += 1;
    }
    assert_eq!(seen, 4);
    assert_eq!(Fluid::Mineral.boils(), None);
}

/// Source: METHOD of the reference values: DOT 5 is silicone and mixes with none; DOT 5.1 is glycol. Mineral oil with none.
#[test]
fn silicone_and_mineral_oil_mix_with_nothing() {
    for one in ALL {
        let mineral = one == Fluid::Mineral;
        assert_eq!(one.with(one), if mineral { Mixing::OnlyTheNamed } else { Mixing::Same });
        for alone in [Fluid::Dot5, Fluid::Mineral] {
            if one != alone {
                assert_eq!(alone.with(one), Mixing::Never);
                assert_eq!(one.with(alone), Mixing::Never);
            }
        }
    }
    assert_eq!(Fluid::Dot4.with(Fluid::Dot51), Mixing::Mixes);
    assert_eq!(Fluid::Dot4.with(Fluid::Dot3), Mixing::BoilsSooner);
}

proptest! {
    #[test]
    fn due_is_two_years_after_and_never_earlier_for_a_later_change(days in 0i64..40_000, more in 1i64..1000) {
        let changed = day(1990, 1, 1) + chrono::Duration::days(days);
        let due = |it| brake::change_by(Fluid::Dot4, it).unwrap().value;
        let length = (due(changed) - changed).num_days();
        prop_assert!((729..=731).contains(&length));
        prop_assert!(due(changed + chrono::Duration::days(more)) >= due(changed));
        prop_assert!(brake::change_by(Fluid::Dot5, changed).is_none());
    }
}

/// Source: the calendar; two years are common practice.
#[test]
fn the_line_as_a_whole() {
    let mut kept = typed(&[
        (facts::BRAKE_FLUID.id(), "dot4"),
        (facts::BRAKE_FLUID_CHANGED.id(), "2025-03-28"),
        (facts::CLUTCH_FLUID.id(), "mineral"),
        (facts::CLUTCH_FLUID_CHANGED.id(), "2024-03-28"),
        (facts::RIDE_DATE.id(), "2027-03-28"),
        (facts::FLUID_ON_SHELF.id(), "dot51"),
    ]);
    let due = panel(Line::Brakes, &kept);
    assert_eq!(figure(&due, labels::CHANGE_BY), "2027-03-28");
    assert_eq!(due.head.figure_text(), None);
    assert_eq!(due.head.spoken().as_deref(), Some("Change brake fluid by Sun, Mar 28 2027"));
    assert_eq!(figure(&due, labels::FLUID_AGE), "2.0 years");
    assert!(
        due.answer(labels::BOILS_WET).is_none(),
        "old fluid has more water in it than the test’s"
    );
    assert_eq!(figure(&due, labels::CLUTCH_CHANGE_BY), notes::BY_THE_MANUAL, "no rule is known");
    assert_eq!(figure(&due, labels::CLUTCH_FLUID_AGE), "3.0 years");
    assert_eq!(figure(&due, labels::SHELF_IN_BRAKE), notes::mixing(Mixing::Mixes));
    assert_eq!(figure(&due, labels::SHELF_IN_CLUTCH), notes::mixing(Mixing::Never));
    let brake = facts::BRAKE_FLUID.about.label;
    assert_eq!(due.warnings[0], notes::fluid_due(brake, Late::ByThen).unwrap());
    assert_eq!(due.warnings[1..], [notes::WRONG_FLUID]);
    kept.put(facts::BRAKE_FLUID_CHANGED.id(), Entry::new("2025-03-29", 0));
    kept.put(facts::CLUTCH_FLUID.id(), Entry::new("cable", 0));
    let cable = panel(Line::Brakes, &kept);
    assert!(cable.warnings.is_empty());
    assert_eq!(figure(&cable, labels::BOILS_WET), "155 °C");
    assert!(cable.answer(labels::CLUTCH_CHANGE_BY).is_none());
    assert!(!cable.blanks.contains(&facts::CLUTCH_FLUID_CHANGED.id()));
    kept.put(facts::BRAKE_FLUID_CHANGED.id(), Entry::new("2028-01-01", 0));
    let why = panel(Line::Brakes, &kept).refusal(facts::BRAKE_FLUID_CHANGED.id());
    assert_eq!(why.as_deref(), Some(notes::CHANGED_LATER));
    assert_eq!(
        lacks(&panel(Line::Brakes, &kept).head),
        [124],
        "a day that cannot be gives no other"
    );
    assert_eq!(lacks(&panel(Line::Brakes, &Kept::default()).head), [122, 124]);
}

/// Source: the calendar; two years are common practice. A month alone is its first day.
#[test]
fn late_on_whichever_date_is_known() {
    let with = |changed: &str, dates: &[(Id, &str)]| {
        let mut kept = typed(dates);
        kept.put(facts::BRAKE_FLUID.id(), Entry::new("dot4", 0));
        kept.put(facts::BRAKE_FLUID_CHANGED.id(), Entry::new(changed, 0));
        panel(Line::Brakes, &kept)
    };
    let (park, ride) = (facts::PARK_DATE.id(), facts::RIDE_DATE.id());
    let said = |late| notes::fluid_due(facts::BRAKE_FLUID.about.label, late).into_iter();
    for (changed, dates, late) in [
        ("2025-01-10", &[(park, "2026-11-14"), (ride, "2027-03-28")][..], Late::ByThen),
        ("2024-11-14", &[(park, "2026-11-14"), (ride, "2027-03-28")], Late::Overdue),
        ("2019-05-01", &[(park, "2026-11-14")], Late::Overdue),
        ("2019-05-01", &[(ride, "2027-03-28")], Late::Overdue),
        ("2025-01-10", &[(ride, "2027-03-28")], Late::ByThen),
        ("2025-01-10", &[(park, "2026-11-14")], Late::No),
        ("2019-05-01", &[], Late::No),
    ] {
        let got = with(changed, dates);
        assert_eq!(got.warnings, said(late).collect::<Vec<_>>(), "{changed} {dates:?}");
        let needs = got.answer(labels::FLUID_AGE).map(lacks).unwrap();
        assert_eq!(needs == [61], dates.is_empty(), "its age says that a date is needed");
    }
    let month = with("May 2025", &[(park, "2026-11-14")]);
    assert_eq!(figure(&month, labels::CHANGE_BY), "2027-05-01");
    let about = &facts::BRAKE_FLUID_CHANGED.about;
    let echo = facts::echo(about, &Entry::new("May 2025", 0)).unwrap();
    assert_eq!(echo, "read as Thu, May 1 2025");
    for id in [park, ride] {
        let refused = facts::refusal(facts::about(id).unwrap(), &Entry::new("May 2025", 0));
        assert!(refused.is_some(), "the season’s own dates are days");
    }
}

/// Source: METHOD of the reference values: no interval is known for silicone; its test is not one with water in it.
#[test]
fn silicone_and_mineral_oil_are_not_asked_for_a_day() {
    for fluid in ["dot5", "mineral"] {
        let kept = typed(&[
            (facts::BRAKE_FLUID.id(), fluid),
            (facts::FLUID_ON_SHELF.id(), fluid),
            (facts::RIDE_DATE.id(), "2027-03-28"),
        ]);
        let got = panel(Line::Brakes, &kept);
        assert_eq!(got.head.figure_words(), notes::BY_THE_MANUAL);
        assert!(got.answer(labels::BOILS_WET).is_none());
        let same = if fluid == "dot5" { Mixing::Same } else { Mixing::OnlyTheNamed };
        assert_eq!(figure(&got, labels::SHELF_IN_BRAKE), notes::mixing(same));
        assert_eq!(got.note.contains("100 °C"), fluid == "dot5", "{}", got.note);
    }
}
