//! What a row becomes: entries as if typed, or all that is wrong with it.

use super::*;
use torpor::entry::Refusal;

#[test]
fn as_in_the_page() {
    let text = "Fastener,Torque,Adapter,Adapter length,Stages,Bolts,On the thread,Mind,Self-locking,Prevailing torque,Note\r\n\
        Axle nut,25 (22–26),in line,40 mm,,,,,,,\r\n\
        Head nut,30,none,,15 N·m then 30 N·m,8,Thread-lock,\"New washer, loosen, then tighten\",no,,page 4\r\n\
        Sprocket nut,90 N·m,RIGHT ANGLE,45,,,dry,cotter pin;COLD ONLY,yes,5,\r\n";
    let rows = sheet(text).rows;
    assert_eq!(told(&rows[0]), "Axle nut · 25 N·m, from 22 to 26 · in line 40 mm");
    assert_eq!(
        told(&rows[1]),
        "Head nut · 30 N·m · Adapter: none · Self-locking nut: no · Stages: 15 N·m then 30 N·m · Bolts: 8 · \
         On the thread: thread-lock · new washer, loosen, then tighten · page 4"
    );
    let second = rows[1].read.as_ref().unwrap();
    assert_eq!(entry(second, facts::MIND.id()), Some(("new_washer loosen_first", 0)));
    assert_eq!(entry(second, facts::THREAD_DRESSING.id()), Some(("thread_lock", 0)));
    assert_eq!(entry(second, facts::BOLTS.id()), Some(("8", 0)));
    let third = rows[2].read.as_ref().unwrap();
    assert_eq!(entry(third, facts::ADAPTER.id()), Some(("right_angle", 0)));
    assert_eq!(entry(third, facts::MIND.id()), Some(("cotter_pin cold_only", 0)));
    // "yes" adds nothing to the figure: drag is added only where the manual says so.
    assert_eq!(entry(third, facts::SELF_LOCKING.id()), Some(("drag_inside", 0)));
    let drag = third.get(&facts::PREVAILING_TORQUE.id()).cloned();
    assert_eq!(drag, typed("5", &units::NEWTON_METER));
}

/// Every choice by its key and by its label, in capitals too.
#[test]
fn choices_by_key_and_label() {
    for about in facts::TABLE.iter().filter(|it| it.home == facts::Home::Fastener) {
        let (facts::Kind::Choice(choices) | facts::Kind::Several(choices)) = about.kind else {
            continue;
        };
        for choice in choices {
            for text in [choice.key, choice.label] {
                for text in [text.to_owned(), text.to_uppercase(), text.replace('-', " ")] {
                    let only = only(&format!("{};Torque\n\"{text}\";25\n", about.label));
                    assert_eq!(entry(&only, about.id), Some((choice.key, 0)), "{text}");
                }
            }
        }
    }
    let lock = only("Torque;Thread lock\n25;yes\n");
    assert_eq!(entry(&lock, facts::THREAD_DRESSING.id()), Some(("thread_lock", 0)));
    let oiled = sheet("Torque;Lubricant\n25;yes\n");
    assert!(matches!(errors(&oiled.rows[0])[0].why, Refusal::NotAChoice { .. }));
    let wrong = sheet("Torque;Mind\n25;new washer, handsome\n");
    let [error] = errors(&wrong.rows[0]) else { panic!() };
    assert!(error.to_string().contains("“handsome” is not known"), "{error}");
}

#[test]
fn lowest_and_highest() {
    for (text, torque_text, unit, told_as) in [
        ("Torque;Min;Max\n25;22;26", "25 (22–26)", &units::NEWTON_METER, "25 N·m, from 22 to 26"),
        ("Torque;Min;Max\n;22;26", "22–26", &units::NEWTON_METER, "24 N·m, from 22 to 26"),
        ("Min (ft-lb);Max (ft-lb)\n16;19", "16–19", &units::LBF_FT, "17.5 lbf·ft, from 16 to 19"),
        (
            "Max;Torque;Min;Unit\n2,6;2,5;2,2;kgf·m",
            "2,5 (2,2–2,6)",
            &units::KGF_M,
            "2.5 kgf·m, from 2.2 to 2.6",
        ),
        (
            "Torque;Min;Max\n25 N·m;22 N·m;26 N·m",
            "25 N·m (22 N·m–26 N·m)",
            &units::NEWTON_METER,
            "25 N·m, from 22 to 26",
        ),
        (
            "Torque;Min;Max\nabout 25;22;26",
            "about 25 (22–26)",
            &units::NEWTON_METER,
            "25 N·m, from 22 to 26",
        ),
        ("Torque;Min;Max\n25;;", "25", &units::NEWTON_METER, "25 N·m"),
        ("Torque;Min;Max\n22–26;-;–", "22–26", &units::NEWTON_METER, "24 N·m, from 22 to 26"),
    ] {
        let only = only(text);
        assert_eq!(torque(&only), typed(torque_text, unit), "{text}");
        assert_eq!(told_all(text), [told_as], "{text}");
    }
    // Ends in another unit than the figure: 16 and 19 lbf·ft are 21.69 and 25.76 N·m (NIST SP 811 B.8: 1.355 818).
    let mixed = "Torque (N·m);Min (ft-lb);Max (ft-lb)\n25;16;19";
    assert_eq!(torque(&only(mixed)).unwrap().text, "25 N·m (16 lbf·ft–19 lbf·ft)");
    assert_eq!(told_all(mixed), ["25 N·m, from 21.6931 to 25.7605"]);
    for (text, column, words) in [
        ("Torque;Min;Max\n25;26;22", "Min", "lowest is more than the highest"),
        ("Torque;Min;Max\n;26;22", "Min", "lowest is more than the highest"),
        ("Torque;Min;Max\n30;22;26", "Torque", "outside"),
        ("Torque;Min;Max\n25;22;", "Min", "one end"),
        ("Torque;Min;Max\n25;;26", "Max", "one end"),
        ("Torque;Min;Max\n25 (22–26);22;26", "Torque", "a range stands here"),
        ("Torque;Min;Max\n25;20–22;26", "Min", "one number is wanted"),
        ("Torque;Min;Max\n25;x;26", "Min", "not a number"),
        ("Torque;Min;Max\n25;0;26", "Min", "more than 0"),
        ("Torque;Min (ft-lb);Max (N·m)\n25;16;26", "Torque", "cannot be put together"),
    ] {
        let sheet = sheet(text);
        let [error] = errors(&sheet.rows[0]) else { panic!("{text}: {sheet:?}") };
        assert_eq!(error.column, column, "{text}: {error}");
        assert!(error.to_string().contains(words), "{text}: {error}");
    }
}

/// The same figure in several units, as manuals print it: the first counts, the others have to be the same.
#[test]
fn a_column_for_each_unit() {
    let text = "Part;N·m;kgf·m;ft-lb\nAxle nut;24;2.4;18\nHeader nut;;;9\nBleed screw;7;;\n";
    let rows = sheet(text).rows;
    let told: Vec<String> = rows.iter().map(told).collect();
    assert_eq!(told, ["Axle nut · 24 N·m", "Header nut · 9 lbf·ft", "Bleed screw · 7 N·m"]);
    let first = rows[0].read.as_ref().unwrap();
    assert_eq!(torque(first), typed("24 N·m (2.4 kgf·m, 18 lbf·ft)", &units::NEWTON_METER));
    let wrong = sheet("Part;N·m;ft-lb\nAxle nut;24;24\n");
    assert!(matches!(errors(&wrong.rows[0])[0].why, Refusal::NotTheSame { .. }));
    // Beside a range the others are kept in the note.
    let ranged = only("Part;N·m;ft-lb;Min;Max\nAxle nut;24;18;22;26\n");
    assert_eq!(torque(&ranged), typed("24 (22–26)", &units::NEWTON_METER));
    assert_eq!(entry(&ranged, facts::FASTENER_NOTE.id()), Some(("ft-lb: 18", 0)));
}

#[test]
fn what_is_wrong_is_named_and_stops_nothing() {
    let text = "Part;Torque;Adapter;Bolts\n\
        a;25;;\n\
        b;abc;crowfeet;1\n\
        c;1,000;;\n\
        ;;;\n\
        d;;;\n\
        e;5000;;\n\
        f;25;;4\n";
    let rows = sheet(text).rows;
    assert_eq!(rows.len(), 6);
    assert!(rows[0].read.is_ok() && rows[5].read.is_ok());
    let [torque, adapter, bolts] = errors(&rows[1]) else { panic!("{:?}", rows[1]) };
    assert_eq!(
        torque.to_string(),
        "Torque, “abc”: “abc” is not a number: write for example 25 or 25 N·m"
    );
    assert_eq!((adapter.column.as_str(), adapter.cell.as_str()), ("Adapter", "crowfeet"));
    assert!(matches!(adapter.why, Refusal::NotAChoice { .. }));
    assert!(matches!(bolts.why, Refusal::OutOfLimits { .. }));
    assert!(matches!(errors(&rows[2])[0].why, Refusal::OneOrThousand { .. }));
    assert_eq!(
        told(&rows[3]),
        "“d”: no torque, no thread and no turn in this row: one of them is needed"
    );
    assert!(matches!(errors(&rows[4])[0].why, Refusal::OutOfLimits { .. }));
    assert_eq!(rows[1].cells, ["b", "abc", "crowfeet", "1"]);
    assert_eq!(rows[5].line, 8);
}

/// A turn instead of a torque is enough, and so is a thread where the page knows it.
#[test]
fn without_a_torque() {
    assert_eq!(
        told_all("Part;Torque;Turn\nPlug;;1/2–2/3\n")[0],
        "Plug · Turn instead: 0.583333 turn, from 0.5 to 0.666667"
    );
    let threaded = sheet("Part;Torque;Thread\nBolt;;M8\n");
    assert_eq!(threaded.rows[0].read.is_ok(), facts::about(THREAD).is_some());
}

/// A cell is mended where it stands: the row is read again, and the text has it, with every other line in its place.
#[test]
fn a_row_is_mended() {
    let text =
        "Part;Torque (ft-lb);Note\nAxle nut;seventy;\"left;\nside\"\n\nPeg bolt;tight;\nClamp;9;\n";
    let mut sheet = sheet(text);
    assert_eq!(sheet.to_mend(&sheet.rows[0]), [1]);
    let mended = sheet.mend(text, 0, 1, "70");
    assert_eq!(told(&sheet.rows[0]), "Axle nut · 70 lbf·ft · left; side");
    assert_eq!(
        mended,
        "Part;Torque (ft-lb);Note\nAxle nut;70;\"left; side\"\n\n\nPeg bolt;tight;\nClamp;9;\n"
    );
    assert_eq!(self::sheet(&mended).rows, sheet.rows);
    // Half mended, it is still in the text; what is whole is not.
    let half = sheet.mend(&mended, 1, 1, "16 somethings");
    assert!(sheet.rows[1].read.is_err());
    let (rest, left) = sheet.rest(&half);
    assert_eq!(left, "Part;Torque (ft-lb);Note\nPeg bolt;16 somethings;\n");
    assert_eq!((rest.rows.len(), rest.rows[0].line), (1, 2));
    let mut rest = rest;
    let text = rest.mend(&left, 0, 1, "16");
    assert_eq!(told(&rest.rows[0]), "Peg bolt · 16 lbf·ft");
    assert_eq!(rest.rest(&text).1, "");
}

/// Where a row as a whole is not taken, any of its cells may mend it: a torque that is missing, a cell too many.
#[test]
fn every_cell_of_a_row_that_is_not_taken_can_be_mended() {
    let text = "Part,Torque\nAxle nut,\nHeader nut,2,5\n";
    let mut sheet = sheet(text);
    let to_mend: Vec<_> = sheet.rows.iter().map(|it| sheet.to_mend(it)).collect();
    assert_eq!(to_mend, [vec![0, 1], vec![0, 1, 2]]);
    let text = sheet.mend(text, 0, 1, "60");
    let text = sheet.mend(&text, 1, 1, "2,5");
    let text = sheet.mend(&text, 1, 2, "");
    assert_eq!(text, "Part,Torque\nAxle nut,60\nHeader nut,\"2,5\",\n");
    assert!(sheet.rows.iter().all(|it| it.read.is_ok()), "{sheet:?}");
    assert_eq!(sheet.rest(&text).1, "");
}

/// What is left of a table without names keeps the columns that were guessed from all of it.
#[test]
fn the_rest_of_a_table_keeps_its_columns() {
    let text = "Axle;M10;25\nClamp;M6;10\nPeg;M8;tight\n";
    let sheet = sheet(text);
    assert!(!sheet.header && sheet.rows[2].read.is_err());
    let (rest, left) = sheet.rest(text);
    assert_eq!(left, "Peg;M8;tight\n");
    assert_eq!((rest.columns.clone(), rest.rows[0].line), (sheet.columns.clone(), 1));
    assert!(rest.rows[0].read.is_err());
}

/// A row that stands above the names of the columns, or below other ones, is none of this table's to mend.
#[test]
fn a_row_outside_of_the_table_is_not_mended() {
    let sheet = sheet("My list\nPart;Torque\nClamp;9\nTorque;Thread;Note\n7;M6;\n");
    for row in sheet.rows.iter().filter(|it| it.read.is_err()) {
        assert!(sheet.to_mend(row).is_empty(), "{row:?}");
    }
}

#[test]
fn too_much_in_a_row() {
    let long = "x".repeat(401);
    for text in [
        format!("Part;Torque\n{long};25\n"),
        format!("Part;Torque;Note\na;25;{long}\n"),
        format!("Part;Torque;Other\na;25;{}\n", &long[..398]),
        format!("Part;Torque\na;{}\n", "1".repeat(401)),
    ] {
        let sheet = sheet(&text);
        let [error] = errors(&sheet.rows[0]) else { panic!("{sheet:?}") };
        assert_eq!(error.why, Refusal::TooLong);
        assert!(error.to_string().chars().count() < 140, "{error}");
    }
    assert!(sheet(&format!("Part;Torque\n{};25\n", &long[..400])).rows[0].read.is_ok());
    // More cells than names: which of them is the torque is not known.
    let wide = sheet("Part,Torque\nAxle nut, long,25\nHeader nut,2,5\nPlug,30\nPlug,30,,\n");
    assert!(told(&wide.rows[0]).contains("more cells"), "{}", told(&wide.rows[0]));
    assert!(wide.rows[1].read.is_err());
    assert!(wide.rows[2].read.is_ok() && wide.rows[3].read.is_ok());
}
