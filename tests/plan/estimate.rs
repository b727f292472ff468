//! The panel for a fastener without a figure in the manual: from what was typed to what is shown.

use super::*;
use torpor::words::cautions;

fn bolt(thread: &str, class: &str, friction: &str, into: &str) -> Kept {
    typed(&[
        (facts::THREAD.id(), thread),
        (facts::PROPERTY_CLASS.id(), class),
        (facts::FRICTION_CLASS.id(), friction),
        (facts::THREADS_INTO.id(), into),
    ])
}

/// As it stands on the page: number, unit, range.
#[track_caller]
fn figure(shown: &Shown) -> String {
    match &shown.figure {
        Figure::Number { text, unit, range: Some([low, high]), .. } => {
            format!("{text} {unit} ({low} to {high})")
        }
        Figure::Number { text, unit, .. } => format!("{text} {unit}").trim_end().to_owned(),
        Figure::Words(text) => text.clone(),
        other => panic!("{}: {other:?}", shown.label),
    }
}

/// Source: M10×1.25 8.8 at 0.14 as VDI 2230 prints it: 30.8 kN, 57 N·m at the most; 5/6 of it 47.2 N·m. By hand: proof load
/// 61.2 mm² · 580 N/mm² = 35.5 kN; for each newton 1.839 mm at 0.14, 3.010 at 0.24: 47.2 / 3.010 = 15.7 kN, 44 %; in the
/// middle, 52.0 N·m at 0.19, 2.424 mm: 21.4 kN, 60 %, K 0.24. With oil, 0.08, 1.136 mm: 62 % more.
#[test]
fn a_bolt_in_a_steel_nut() {
    let kept = bolt("m10x1,25", "8.8", "as_delivered", "steel");
    let panel = plan::estimate(&kept, UnitSet::Metric);
    for (label, expected) in [
        (labels::TORQUE_ESTIMATED, "48–56 N·m"),
        (labels::PRELOAD, "21.4 kN (15.7 to 30.8)"),
        (labels::SHARE_OF_PROOF, "60 % (44 to 87)"),
        (labels::EQUIVALENT_K, "0.24 (0.18 to 0.30)"),
        (labels::PRELOAD_SCATTER, "23–28 %"),
        (labels::OIL_ON_DRY, "62 %"),
    ] {
        assert_eq!(figure(answer(&panel, label)).replace("  ", " "), expected, "{label}");
        assert!(answer(&panel, label).working.is_some(), "{label}");
    }
    assert_eq!(panel.all().count(), 6);
    assert_eq!(panel.head.label, labels::TORQUE_ESTIMATED);
    assert_eq!(panel.head.spoken().unwrap(), "Torque, estimated 48–56 N·m");
    assert_eq!(panel.note, format!("{} · {}", notes::ESTIMATE, notes::WITHIN_PROOF));
    let [warning] = panel.warnings.as_slice() else { panic!("{:?}", panel.warnings) };
    assert!(warning.contains("(0.24)") && warning.contains("only 44\u{a0}%"), "{warning}");
    let working = panel.head.working.as_ref().unwrap();
    assert!(
        working.written().substituted.contains("61.1986\u{a0}mm² · 580\u{a0}N/mm²"),
        "{working:?}"
    );

    // 48 N·m is 35.4 lbf·ft, 56 is 41.3; 21.4 kN is 4,820 lbf.
    let panel = plan::estimate(&kept, UnitSet::Us);
    assert_eq!(figure(&panel.head), "35–41 lbf·ft");
    let preload = figure(answer(&panel, labels::PRELOAD));
    let number: f64 = preload.split(' ').next().unwrap().parse().unwrap();
    assert!(preload.contains(" lbf (") && (number - 4820.0).abs() < 5.0, "{preload}");
    let working = panel.head.working.as_ref().unwrap();
    assert!(
        working.written().substituted.contains("61.1986\u{a0}mm² · 580\u{a0}N/mm²"),
        "{working:?}"
    );
}

/// A range alone, rounded inward, wherever it lies. Source: M6 8.8 at 0.08 by hand: proof load 11.67 kN, 90 % at the most;
/// for each newton 0.159 + 0.08 · (3.089 + 3.87) = 0.716 mm: 6.27 to 7.52 N·m, 4.62 to 5.55 lbf·ft. M5 4.6 at 0.04: 3.191 kN
/// and 0.127 + 0.04 · (2.587 + 3.095) = 0.355 mm: 0.849 to 1.018 N·m.
#[test]
fn small_bolts_have_decimals() {
    let head = |kept: &Kept, set| figure(&plan::estimate(kept, set).head);
    let m6 = bolt("M6", "8.8", "grease_or_oil", "steel");
    assert_eq!(head(&m6, UnitSet::Metric), "6.3–7.5 N·m");
    assert_eq!(head(&m6, UnitSet::Us), "4.7–5.5 lbf·ft");
    let m5 = bolt("M5", "4.6", "solid_lubricant", "steel");
    assert_eq!(head(&m5, UnitSet::Metric), "0.85–1.01 N·m");
    for kept in [m5, m6] {
        let panel = plan::estimate(&kept, UnitSet::Metric);
        assert_eq!(figure(answer(&panel, labels::OIL_ON_DRY)), notes::LUBRICATED_ALREADY);
    }
}

/// Aluminum: no number at all, whatever else is known, and nothing that is lacking either.
#[test]
fn soft_threads_get_no_number() {
    let whole = bolt("M10×1.25", "8.8", "as_delivered", "light_metal");
    let alone = typed(&[(facts::THREADS_INTO.id(), "light_metal")]);
    let refused = bolt("3/8-16 UNC", "a2_70", "", "light_metal");
    for kept in [whole, alone, refused] {
        for set in SETS {
            let panel = plan::estimate(&kept, set);
            assert_eq!(figure(&panel.head), notes::NO_ESTIMATE);
            assert_eq!(panel.all().count(), 1);
            assert_eq!(panel.warnings, [notes::SOFT_THREAD]);
            assert_eq!(panel.note, notes::ESTIMATE);
            let asked = [facts::GENERAL_TORQUES.id(), facts::THREAD.id(), facts::THREADS_INTO.id()];
            assert_eq!(panel.blanks, asked);
            let shown = format!("{panel:?}");
            assert!(!shown.contains("Number"), "{shown}");
            assert!(!notes::SOFT_THREAD.contains(|it: char| it.is_ascii_digit()));
        }
    }
}

/// A gasket: the figure for steel, and before all else that the gasket decides.
#[test]
fn a_gasket_decides() {
    let steel = plan::estimate(&bolt("M8", "8.8", "as_delivered", "steel"), UnitSet::Metric);
    let gasket = plan::estimate(&bolt("M8", "8.8", "as_delivered", "gasket"), UnitSet::Metric);
    assert_eq!(gasket.head, steel.head);
    assert_eq!(gasket.warnings[0], notes::GASKET_DECIDES);
    assert_eq!(gasket.warnings[1..], steel.warnings);
    // Said before there is a figure, too.
    let early = plan::estimate(&typed(&[(facts::THREADS_INTO.id(), "gasket")]), UnitSet::Metric);
    assert_eq!(early.warnings, [notes::GASKET_DECIDES]);
}

/// Everything that is lacking is said at once; what is refused says why; the note never goes.
#[test]
fn what_is_lacking_or_refused() {
    let lacking = |panel: &Panel| {
        let head = &panel.head;
        assert!(head.lacks().iter().all(|it| matches!(it, Lack::Missing(_))), "{head:?}");
        head.lacks().iter().map(|it| it.id().0).collect::<Vec<_>>()
    };
    for set in SETS {
        let blank = plan::estimate(&Kept::default(), set);
        assert_eq!(lacking(&blank), [98, 77, 96, 97]);
        // The manual's own table is asked first.
        assert_eq!(blank.blanks.iter().map(|it| it.0).collect::<Vec<_>>(), [19, 77, 98, 96, 97]);
        assert!(blank.warnings.is_empty());
        assert!(blank.all().all(|it| it.working.is_none() && it.spoken().is_none()));
        assert_eq!(blank.all().count(), 6);
        assert_eq!(lacking(&plan::estimate(&bolt("M10", "8.8", "", "steel"), set)), [97]);
        assert_eq!(lacking(&plan::estimate(&bolt("M10", "8.8", "as_delivered", ""), set)), [98]);
        for (kept, id, words) in [
            (
                bolt("M10×2", "8.8", "as_delivered", "steel"),
                facts::THREAD.id(),
                "M10 is known with pitch 1.5, 1.25 or 1: write for example M10×1.25",
            ),
            (
                bolt("3/8-16 UNC", "8.8", "as_delivered", "steel"),
                facts::THREAD.id(),
                "has to be a metric thread: write for example M10, or M10×1.25 where it is fine",
            ),
            (
                bolt("M20", "a2_70", "as_delivered", "steel"),
                facts::PROPERTY_CLASS.id(),
                "has to be a class of this size: 9.8 goes up to M16, A2-70 and A4-80 up to M18",
            ),
        ] {
            let panel = plan::estimate(&kept, set);
            assert_eq!(panel.refusal(id).as_deref(), Some(words));
            assert_eq!(panel.note, notes::ESTIMATE);
        }
    }
}

/// An estimate is never shown as a specification, and the manual comes first.
#[test]
fn it_says_what_it_is() {
    assert!(
        notes::ESTIMATE.contains("steel nut") && notes::ESTIMATE.contains("never a specification")
    );
    let blank = plan::estimate(&Kept::default(), UnitSet::Metric);
    assert_eq!(blank.cautions, cautions::ESTIMATE);
    assert!(cautions::ESTIMATE[0].contains("general table"));
    assert!(cautions::ESTIMATE[1].contains("axles, brakes, steering"));
}

/// A thread that is not metric is kept as typed; only the estimate refuses it. Spellings of one thread are the same.
#[test]
fn threads_are_kept_as_typed() {
    let read = |text: &str| facts::THREAD.of(&typed(&[(facts::THREAD.id(), text)])).unwrap();
    let inch = read(" 3/8-16 UNC ");
    assert_eq!(inch.text, "3/8-16 UNC");
    assert!(inch.thread.is_err());
    for (one, other, same) in [
        ("M10", "M10×1.5", true),
        ("m10x1,25", "10 × 1.25 mm", true),
        ("M10", "M10×1.25", false),
        ("M8", "M10", false),
        ("3/8-16 UNC", "3/8-16 unc", true),
        ("3/8-16 UNC", "3/8-24 UNF", false),
        ("M10", "3/8-16 UNC", false),
    ] {
        assert_eq!(read(one).same(&read(other)), same, "{one} and {other}");
        assert_eq!(read(other).same(&read(one)), same, "{other} and {one}");
    }
}
