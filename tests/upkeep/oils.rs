//! The oils besides the engine's.

use super::*;
use torpor::facts;
use torpor::words::{choices, labels, upkeep as notes};

/// A bike without any is asked once and never again; what is not chosen is not asked.
#[test]
fn only_chosen_oils_are_asked() {
    let blank = panel(Line::OtherOils, &Kept::default());
    assert_eq!(blank.blanks, [facts::OTHER_OILS.id()]);
    assert_eq!(lacks(&blank.head), [128]);
    let none = panel(Line::OtherOils, &typed(&[(facts::OTHER_OILS.id(), "none")]));
    assert_eq!(none.blanks, [facts::OTHER_OILS.id()]);
    assert_eq!(none.head.figure_words(), choices::NO_OTHER_OIL);
    assert!(none.steps.is_empty() && none.more.is_empty() && none.warnings.is_empty());
    let two = panel(Line::OtherOils, &typed(&[(facts::OTHER_OILS.id(), "final_drive two_stroke")]));
    assert_eq!(
        two.blanks.iter().map(|it| it.0).collect::<Vec<_>>(),
        [128, 129, 138, 133, 142],
        "fill and day of both"
    );
    assert_eq!(two.more, [facts::FINAL_DRIVE_PLUG.id()], "a two-stroke’s tank has no plug");
    assert_eq!(two.head.figure_words(), "final drive, two-stroke tank");
}

/// Source: the calendar: 2025-03-28 to 2027-03-28 are 730 days, 2.0 years.
#[test]
fn each_has_its_fill_torque_and_age() {
    let mut kept = typed(&[
        (facts::OTHER_OILS.id(), "final_drive"),
        (facts::FINAL_DRIVE_OIL.id(), "200 mL"),
        (facts::FINAL_DRIVE_PLUG.id(), "23 N·m"),
        (facts::FINAL_DRIVE_OIL_CHANGED.id(), "2025-03-28"),
        (facts::RIDE_DATE.id(), "2027-03-28"),
    ]);
    let known = panel(Line::OtherOils, &kept);
    let (what, fill) = &known.steps[0];
    assert_eq!(what, "final drive, plug 23 N·m, 2.0\u{a0}years old by then");
    assert_eq!(fill.label, labels::OIL_NEEDED);
    assert_eq!(fill.figure_text().as_deref(), Some("0.20\u{a0}L"));
    kept.put(facts::FINAL_DRIVE_OIL_CHANGED.id(), Entry::new("2027-04-01", 0));
    let later = panel(Line::OtherOils, &kept);
    let why = later.refusal(facts::FINAL_DRIVE_OIL_CHANGED.id());
    assert_eq!(why.as_deref(), Some(notes::CHANGED_LATER));
}

/// A range stays one, a fork's fill is for each leg, an age needs a day; none of them together with some is refused.
#[test]
fn said_as_it_was_typed() {
    let mut kept = typed(&[
        (facts::OTHER_OILS.id(), "fork"),
        (facts::FORK_PLUG.id(), "20–30 N·m"),
        (facts::FORK_OIL_CHANGED.id(), "2025-03-28"),
    ]);
    let fork = panel(Line::OtherOils, &kept);
    let expected = format!("fork, each leg, plug 20–30 N·m, {}", notes::NEEDS_A_DAY);
    assert_eq!(fork.steps[0].0, expected);
    assert_eq!(fork.head.figure_words(), "fork");
    kept.put(facts::PARK_DATE.id(), Entry::new("2024-11-14", 0));
    let later = panel(Line::OtherOils, &kept);
    assert_eq!(later.asides[0].label, choices::FORK);
    kept.put(facts::OTHER_OILS.id(), Entry::new("fork none", 0));
    let both = panel(Line::OtherOils, &kept);
    assert_eq!(both.refusal(facts::OTHER_OILS.id()).as_deref(), Some(notes::NONE_AND_OTHERS));
    assert!(both.steps.is_empty());
}
