//! Slips at the bench that must not pass unseen: what a mechanic who tried the page was misled by. Figures by statics or
//! from the sources named; bikes and wrenches are invented.

use super::*;
use torpor::entry::Refusal;
use torpor::units;

const NONE: (Id, &str) = (facts::ADAPTER.id(), "none");

/// One wrench of the owner's, 10 to 60 N·m in steps of 1, 285 mm long.
fn kept(fastener: &[(Id, &str)]) -> Kept {
    let mut kept = Kept::default();
    kept.garage.wrenches = vec![entries(&[
        (facts::WRENCH_LENGTH.id(), "285 mm"),
        (facts::LOWEST_MARK.id(), "10 N·m"),
        (facts::HIGHEST_MARK.id(), "60 N·m"),
        (facts::GRADUATION.id(), "1 N·m"),
    ])];
    kept.bike.scratch = entries(fastener);
    kept
}

fn reverse(kept: &Kept) -> Panel {
    plan::reverse(kept, &plan::drawer(&kept.garage), UnitSet::Metric)
}

fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// A slash in a manual is a range, stages or two units, never a fraction of a newton meter.
#[test]
fn two_torques_with_a_slash_are_no_fraction() {
    for text in ["22/26", "15/20 Nm", "22-26/30", "1/2", "90/110 N·m"] {
        let kept = kept(&[(facts::TORQUE.id(), text), NONE]);
        assert_eq!(
            facts::TORQUE.maybe(&kept).unwrap_err()[0].refusal(),
            Some(&Refusal::Slash),
            "{text}"
        );
        assert!(matches!(row(&kept).figure, Figure::Lacks(_)), "{text}");
    }
    for text in ["17 1/2 ft-lb", "25 N·m", "22–26"] {
        assert!(facts::TORQUE.maybe(&kept(&[(facts::TORQUE.id(), text)])).is_ok(), "{text}");
    }
    // Lengths and turns have their fractions.
    assert!(facts::ADAPTER_LENGTH.maybe(&kept(&[(facts::ADAPTER_LENGTH.id(), "1/2 in")])).is_ok());
    assert!(facts::TURN.maybe(&kept(&[(facts::TURN.id(), "1/2–2/3 turn")])).is_ok());
}

/// Statics: through 40 mm in line 25 N·m is 21.92 at the wrench; without the adapter 21 would be too little.
#[test]
fn a_row_says_what_its_setting_is_right_with() {
    let through = [
        (facts::TORQUE.id(), "25 (22–26) N·m"),
        (facts::ADAPTER.id(), "in_line"),
        (facts::ADAPTER_LENGTH.id(), "40 mm"),
    ];
    let kept = kept(&through);
    assert_eq!(plain(&row(&kept).with), "only with the 40 mm adapter in line");
    assert!(plain(&panel(&kept).note).contains("only with the 40 mm adapter in line"));
    let dragged = [
        (facts::TORQUE.id(), "30 N·m"),
        NONE,
        (facts::SELF_LOCKING.id(), "drag_on_top"),
        (facts::PREVAILING_TORQUE.id(), "10 N·m"),
    ];
    assert_eq!(plain(&row(&self::kept(&dragged)).with), "drag of 10.00 N·m on top");
}

/// The first pass of 50 % of 33 N·m is 16.5: halfway between two marks the lower one, 16.
#[test]
fn a_row_says_its_stages_and_a_turn_behind_the_click() {
    let head = [
        (facts::TORQUE.id(), "33 N·m"),
        NONE,
        (facts::STAGES.id(), "50 % then 100 %"),
        (facts::BOLTS.id(), "6"),
    ];
    let head = row(&kept(&head));
    assert_eq!(plain(&head.then), "Stages: 16 N·m, then 33 N·m");
    assert_eq!(head.with, "6 bolts, in their order");
    let stretch = [(facts::TORQUE.id(), "24 N·m"), NONE, (facts::STAGES.id(), "24 N·m then 90°")];
    let stretch = kept(&stretch);
    assert_eq!(plain(&row(&stretch).then), "Stages: 24 N·m, then 90 °");
    assert!(panel(&stretch).warnings.contains(&notes::THEN_TURN.to_owned()));
}

#[test]
fn stages_that_are_not_understood_set_nothing() {
    for text in ["20, 50", "15, 33", "30 then 90", "20 N·m then 60 N·m"] {
        let kept = kept(&[(facts::TORQUE.id(), "50 N·m"), NONE, (facts::STAGES.id(), text)]);
        assert_eq!(
            panel(&kept).head.lacks().first().map(|it| it.id()),
            Some(facts::STAGES.id()),
            "{text}"
        );
        let Figure::Lacks(lacks) = row(&kept).figure else { panic!("{text}") };
        assert_eq!(lacks[0].id(), facts::STAGES.id());
    }
}

/// Source: US Army TM 5-3805-298-23-2 WP 0176: over 41 N·m (30 lbf·ft) a first pass of 70 %.
#[test]
fn several_bolts_without_stages_are_given_a_first_pass() {
    let first_pass = |torque, bolts: &[(Id, &str)]| {
        let fastener = [&[(facts::TORQUE.id(), torque), NONE], bolts].concat();
        panel(&kept(&fastener)).warnings.contains(&notes::FIRST_PASS.to_owned())
    };
    let four = [(facts::BOLTS.id(), "4")];
    assert!(first_pass("45 N·m", &four));
    assert!(!first_pass("40 N·m", &four) && !first_pass("45 N·m", &[]));
}

/// What cannot be read is not laid on the wrench.
#[test]
fn a_row_blames_the_wrench_only_for_its_marks() {
    for text in ["tight", "1,000"] {
        let kept = kept(&[(facts::TORQUE.id(), text), NONE]);
        let Figure::Lacks(lacks) = row(&kept).figure else { panic!("{text}") };
        assert_eq!(lacks[0].id(), facts::TORQUE.id());
        let turned = [(facts::TORQUE.id(), text), NONE, (facts::TURN.id(), "1/2 turn")];
        assert_ne!(panel(&self::kept(&turned)).head.label, labels::TURN);
    }
    let high = kept(&[(facts::TORQUE.id(), "110 N·m"), NONE]);
    assert_eq!(row(&high).figure, Figure::Words(notes::NOT_THIS_WRENCH.to_owned()));
    // And no answer asks for a mark that is there.
    assert!(panel(&high).answers.iter().all(|it| it.label != labels::FASTENER_GETS));
}

/// Statics: 60 through 40 mm in line at 285 mm gives 68.42, where 25 was wanted.
#[test]
fn what_it_got_is_told_without_a_range_too() {
    let got = |torque, set_to| {
        let adapter = [(facts::ADAPTER.id(), "in_line"), (facts::ADAPTER_LENGTH.id(), "40 mm")];
        let fastener =
            [&[(facts::TORQUE.id(), torque), (facts::WAS_SET_TO.id(), set_to)], &adapter[..]]
                .concat();
        reverse(&kept(&fastener)).warnings
    };
    assert_eq!(got("25 N·m", "60 N·m"), [notes::GOT_MORE]);
    assert_eq!(got("25 N·m", "12 N·m"), [notes::GOT_LESS]);
    // 22 · 325 / 285 = 25.09, of which ±4 % holds 25.
    assert!(got("25 N·m", "22 N·m").is_empty());
    assert_eq!(got("25 (22–26) N·m", "15 N·m"), [notes::GOT_LESS]);
    assert_eq!(got("25 (24.5–25.5) N·m", "22 N·m"), [notes::GOT_EITHER]);
    // No mark of a wrench from 10 to 60.
    assert!(got("25 N·m", "250 N·m").contains(&notes::SET_OFF_SCALE.to_owned()));
}

/// ISO 6789:2003: 6 % where the highest mark is 10 N·m or less. Of 6 N·m that is 5.64 to 6.36.
#[test]
fn a_small_setting_of_a_wrench_without_a_highest_mark_has_six_percent() {
    let mut kept = kept(&[(facts::TORQUE.id(), "6 (5.7–6.3) N·m"), NONE]);
    kept.garage.wrenches = vec![entries(&[(facts::GRADUATION.id(), "0.1 N·m")])];
    let panel = panel(&kept);
    let Figure::Number { range: Some(range), .. } =
        &panel.answer(labels::FASTENER_GETS).unwrap().figure
    else {
        panic!()
    };
    assert_eq!(*range, ["5.64".to_owned(), "6.36".to_owned()]);
    assert!(!panel.note.contains(notes::INSIDE));
}

/// 10 N·m on a wrench to 60 lies under a fifth of its highest mark, where no accuracy is promised (TM 1-1500-204-23-9).
#[test]
fn low_on_the_scale_nothing_is_said_to_be_inside() {
    let panel = panel(&kept(&[(facts::TORQUE.id(), "10 (9–11) N·m"), NONE]));
    assert!(!panel.note.contains(notes::INSIDE), "{}", panel.note);
    assert_eq!(panel.warnings.len(), 1);
}

/// ISO 898-1 12.9 and VDI 2230 at µ 0.20: an M6 bears about a fifth of 141 N·m, which is 104 lbf·ft.
#[test]
fn a_figure_in_another_unit_is_doubted() {
    let doubted = |torque, thread| {
        let fastener = [(facts::TORQUE.id(), torque), NONE, (facts::THREAD.id(), thread)];
        panel(&kept(&fastener)).warnings.contains(&notes::OVER_ANY_BOLT.to_owned())
    };
    assert!(doubted("104 ft-lb", "M6") && doubted("10 kgf·m", "M8"));
    assert!(!doubted("104 in-lb", "M6") && !doubted("10 kgf·m", "M16x1.5"));
    let drag = [
        (facts::TORQUE.id(), "10 N·m"),
        NONE,
        (facts::SELF_LOCKING.id(), "drag_on_top"),
        (facts::PREVAILING_TORQUE.id(), "30 N·m"),
    ];
    assert!(panel(&kept(&drag)).warnings.contains(&notes::MORE_DRAG_THAN_TORQUE.to_owned()));
}

/// A cotter pin's nut goes on to the next slot and never back; a left-hand thread clicks the other way.
#[test]
fn what_a_fastener_minds_says_what_to_do() {
    let mind = |key| {
        let kept = kept(&[(facts::TORQUE.id(), "45 N·m"), NONE, (facts::MIND.id(), key)]);
        panel(&kept).note
    };
    assert!(mind("cotter_pin").contains("never back"));
    assert!(mind("left_hand").contains("counterclockwise"));
}

#[test]
fn a_general_table_has_one_figure_for_a_thread() {
    let read =
        |text| facts::GENERAL_TORQUES.maybe(&entries(&[(facts::GENERAL_TORQUES.id(), text)]));
    assert!(read("M8 20–25; M8×1.25 18").is_err());
    assert!(read("M8 20–25; M8×1.25 20–25; M10 34").is_ok());
}

/// All answers stand in the unit of the wrench's scale.
#[test]
fn answers_are_held_against_the_scale() {
    let mut kept = kept(&[
        (facts::TORQUE.id(), "100 in-lb"),
        (facts::ADAPTER.id(), "in_line"),
        (facts::ADAPTER_LENGTH.id(), "2 in"),
    ]);
    kept.garage.wrenches =
        vec![entries(&[(facts::WRENCH_LENGTH.id(), "10 in"), (facts::GRADUATION.id(), "1 in-lb")])];
    let panel = plan::torque(&kept, &plan::drawer(&kept.garage), UnitSet::Us);
    for shown in panel.all().filter(|it| it.label != labels::ROUNDING) {
        let Figure::Number { unit, .. } = shown.figure else { panic!("{shown:?}") };
        assert_eq!(unit, units::LBF_IN.symbol, "{}", shown.label);
    }
}
