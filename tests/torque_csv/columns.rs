//! How columns are known: by name, by what stands in them, or not at all.

use super::*;
use torpor::facts::Home;
use torpor::units::ALL;

fn ids(text: &str) -> Vec<Option<Id>> {
    sheet(text).columns.into_iter().map(|it| it.1).collect()
}

#[test]
fn names_in_any_order_and_case() {
    let [name, torque, note] =
        [facts::FASTENER_NAME.id(), facts::TORQUE.id(), facts::FASTENER_NOTE.id()].map(Some);
    for (header, expected) in [
        ("Fastener;Torque;Note", [name, torque, note]),
        ("NOTE;fastener;TORQUE", [note, name, torque]),
        ("tightening torque;part;remarks", [torque, name, note]),
        ("Nm;item;page", [torque, name, note]),
        ("  Bolt ;\"Figure\";  N·m  ", [name, torque, torque]),
        ("bolt/nut;lowest;highest", [None, torque, torque]),
        ("part;Min. (Nm);Max. (Nm)", [name, torque, torque]),
        ("part;from;to", [name, torque, torque]),
        ("Unit;Torque;Component", [torque, torque, name]),
        ("TORQUE AT THE FASTENER;fastener_name;fastener note", [torque, name, note]),
    ] {
        let row = format!("{header}\n1 N·m;1 N·m;1 N·m\n");
        let found = ids(&row);
        // The second of two columns for one thing is not taken for it.
        let expected = if header.contains("Figure") { [name, torque, None] } else { expected };
        assert_eq!(found, expected, "{header}");
        assert!(sheet(&row).header);
    }
    for (header, id) in [
        ("Adapter", facts::ADAPTER.id()),
        ("adapter length", facts::ADAPTER_LENGTH.id()),
        ("Adapter length, mm", facts::ADAPTER_LENGTH.id()),
        ("Adapter length, drive to fastener (in)", facts::ADAPTER_LENGTH.id()),
        ("Adapter angle [°]", facts::ADAPTER_ANGLE.id()),
        ("stages", facts::STAGES.id()),
        ("Bolts", facts::BOLTS.id()),
        ("count", facts::BOLTS.id()),
        ("Quantity", facts::BOLTS.id()),
        ("Qty.", facts::BOLTS.id()),
        ("Dressing", facts::THREAD_DRESSING.id()),
        ("Thread-lock", facts::THREAD_DRESSING.id()),
        ("lubricant", facts::THREAD_DRESSING.id()),
        ("On the thread", facts::THREAD_DRESSING.id()),
        ("Mind", facts::MIND.id()),
        ("Remarks/flags", facts::MIND.id()),
        ("Turn", facts::TURN.id()),
        ("Self-locking", facts::SELF_LOCKING.id()),
        ("self locking nut", facts::SELF_LOCKING.id()),
        ("Prevailing torque (N·m)", facts::PREVAILING_TORQUE.id()),
        ("Page", facts::FASTENER_NOTE.id()),
        ("Was set to", facts::WAS_SET_TO.id()),
    ] {
        assert_eq!(ids(&format!("{header};Torque\n;25\n"))[0], Some(id), "{header}");
    }
    for header in
        ["Price", "Torque (parsec)", "Wrench taken", "No.", "#", "漢", "", "Wrench", "Bike"]
    {
        assert_eq!(ids(&format!("Fastener;Torque;{header}\nx;25;\n"))[2], None, "{header}");
    }
}

/// Every fact of a fastener is known by its label and by its key, but the wrench taken, whose number means something in
/// one garage only; one that the page's table lacks is not offered.
#[test]
fn labels_and_keys() {
    let ours = facts::TABLE.iter().filter(|it| it.home == Home::Fastener);
    for about in ours.filter(|it| it.id != facts::TAKEN_WRENCH.id()) {
        for header in [about.label, about.key] {
            let found = ids(&format!("{};x;Torque min\n;25\n", header.replace(',', " ")));
            assert_eq!(found[0], Some(about.id), "{header}");
        }
    }
    for header in ["Thread", "size", "Thread size"] {
        let found = ids(&format!("Fastener;Torque;{header}\nx;25;M8\n"))[2];
        assert_eq!(found, facts::about(THREAD).map(|it| it.id), "{header}");
    }
}

/// Every torque unit, in every spelling that an entry takes, in brackets of both sorts and without.
#[test]
fn units_in_names() {
    let torques = ALL.iter().filter(|it| it.dimension == units::Dimension::Torque);
    for unit in torques {
        for spelling in unit.spellings().iter().chain([&unit.symbol]) {
            for name in [
                format!("Torque ({spelling})"),
                format!("Torque [{spelling}]"),
                format!("torque, {spelling}"),
                format!("Tightening torque in {spelling}"),
                (*spelling).to_owned(),
            ] {
                let only = only(&format!("Part;{name}\nAxle nut;10\n"));
                assert_eq!(torque(&only), typed("10", unit), "{name}");
            }
        }
    }
    for (name, unit) in [
        ("Adapter length (mm)", &units::MILLIMETER),
        ("Adapter length (in)", &units::INCHES),
        ("Adapter length, cm", &units::CENTIMETER),
    ] {
        let only = only(&format!("Part;Torque;{name}\nAxle nut;10;4\n"));
        let length = only.get(&facts::ADAPTER_LENGTH.id()).cloned();
        assert_eq!(length, typed("4", unit), "{name}");
    }
    for (name, unit) in
        [("Turn", &units::TURN), ("Turn (°)", &units::DEGREE), ("Turn, deg", &units::DEGREE)]
    {
        let only = only(&format!("Part;{name}\nPlug;5\n"));
        assert_eq!(only.get(&facts::TURN.id()).cloned(), typed("5", unit), "{name}");
    }
}

/// A cell's own unit, then the unit column's, then the name's, then the page's.
#[test]
fn whose_unit_counts() {
    let text = "Part;Torque (ft-lb);Unit\n\
        a;10 kgf·m;in-lb\n\
        b;10;in-lb\n\
        c;10;\n";
    let rows = sheet(text).rows;
    let torques: Vec<_> = rows.iter().map(|it| torque(it.read.as_ref().unwrap())).collect();
    // The cell's own stands in its text; what a bare number would mean is said beside it, as in a blank.
    assert_eq!(torques[0], typed("10 kgf·m", &units::LBF_IN));
    assert_eq!(torques[1], typed("10", &units::LBF_IN));
    assert_eq!(torques[2], typed("10", &units::LBF_FT));
    let told: Vec<String> = rows.iter().map(told).collect();
    assert_eq!(told, ["a · 10 kgf·m", "b · 10 lbf·in", "c · 10 lbf·ft"]);
    for usual in [&units::NEWTON_METER, &units::LBF_FT, &units::KGF_M] {
        let sheet = torque_csv::read("Part;Torque\na;10\n", usual).unwrap();
        assert_eq!(torque(sheet.rows[0].read.as_ref().unwrap()), typed("10", usual));
    }
    // Lengths follow the set that the torque unit is of.
    for (usual, unit) in
        [(&units::NEWTON_METER, &units::MILLIMETER), (&units::LBF_FT, &units::INCHES)]
    {
        let sheet = torque_csv::read("Part;Torque;Adapter length\na;10;2\n", usual).unwrap();
        let entries = sheet.rows[0].read.as_ref().unwrap();
        assert_eq!(entries.get(&facts::ADAPTER_LENGTH.id()).cloned(), typed("2", unit));
    }
    let wrong = sheet("Part;Torque;Unit\na;10;parsec\n");
    let [error] = errors(&wrong.rows[0]) else { panic!("{wrong:?}") };
    assert_eq!((error.column.as_str(), error.cell.as_str()), ("Unit", "parsec"));
    assert!(error.to_string().contains("lbf·ft"), "{error}");
}

/// What is not known is not lost.
#[test]
fn unknown_columns_go_into_the_note() {
    let text = "Part,Supplier,Torque,Page,Note,Price\n\
        Axle nut,Alder & Sons,25,112,grease it,3.50\n\
        Header nut,,12,,,\n";
    let sheet = sheet(text);
    assert_eq!(sheet.columns[1], ("Supplier".to_owned(), None));
    let note = |at: usize| {
        let entries: &Entries = sheet.rows[at].read.as_ref().unwrap();
        entries.get(&facts::FASTENER_NOTE.id()).map(|it| it.text.clone())
    };
    let all = "Supplier: Alder & Sons; Page: 112; grease it; Price: 3.50";
    assert_eq!(note(0).as_deref(), Some(all));
    assert_eq!(note(1), None);
}

/// Above the names there is often a title; pages printed one after another repeat the names.
#[test]
fn titles_and_repeated_names() {
    let text = "Alder 640, torques;;\n\nFastener;Torque (ft-lb);Note\nAxle nut;70;\nFastener;Torque (ft-lb);Note\nHeader nut;9;\n";
    let first = sheet(text);
    assert!(first.header);
    let told: Vec<String> = first.rows.iter().map(told).collect();
    assert_eq!(told[1..], ["Axle nut · 70 lbf·ft", "Header nut · 9 lbf·ft"]);
    assert!(told[0].contains("above the names"), "{}", told[0]);
    // Other names below mean other units, perhaps: nothing below them is read by the first.
    let text = "Fastener;Torque (ft-lb)\nAxle nut;70\nFastener;Torque (in-lb)\nBleed screw;70\n";
    let rows = sheet(text).rows;
    assert_eq!(rows.len(), 3);
    assert!(rows[0].read.is_ok() && rows[1].read.is_err() && rows[2].read.is_err());
}

/// Without names: a torque where only one column can be it, a thread, a name; the rest goes into the note.
#[test]
fn without_names() {
    let text = "Axle nut\t100\tgrease\nHeader nut\t12 (10–14)\tcold\nBleed screw\t-\t\n";
    let first = sheet(text);
    assert!(!first.header);
    let [name, torque, note] =
        [facts::FASTENER_NAME.id(), facts::TORQUE.id(), facts::FASTENER_NOTE.id()].map(Some);
    let found: Vec<_> = first.columns.iter().map(|it| it.1).collect();
    assert_eq!(found, [name, torque, note]);
    assert_eq!(first.columns[0].0, "Column 1");
    assert_eq!(told(&first.rows[1]), "Header nut · 12 N·m, from 10 to 14 · cold");
    assert!(first.rows[2].read.is_err());
    assert_eq!(told_all("25 N·m,Axle nut"), ["Axle nut · 25 N·m"]);
    // Rows that are numbered.
    assert_eq!(ids("1;Axle nut;100\n2;Header nut;12\n3;Bleed screw;7\n"), [note, name, torque]);
    // A unit tells which.
    assert_eq!(ids("7;Axle nut;100 N·m\n7;Header nut;12 N·m\n"), [note, name, torque]);
    // A thread is no torque, known or not.
    let thread = facts::about(THREAD).map_or(note, |it| Some(it.id));
    for size in ["M8", "m10x1.25", "1/4-20", "3/8-24 UNF"] {
        let text = format!("Axle nut;{size};100\nHeader nut;{size};12\n");
        assert_eq!(ids(&text), [name, thread, torque], "{size}");
    }
}

/// Two columns of numbers, and none says which is the torque: better none than the wrong one.
#[test]
fn nothing_unsafe_is_guessed() {
    for text in [
        "Axle nut,100,4\nHeader nut,12,2\n",
        "Axle nut,25,22,26\n",
        "Axle nut,2,5\nHeader nut,1,2\n",
    ] {
        let sheet = sheet(text);
        assert!(sheet.columns.iter().all(|it| it.1 != Some(facts::TORQUE.id())), "{text}");
        for row in &sheet.rows {
            assert!(told(row).contains("names the columns"), "{}", told(row));
        }
    }
    // "2,5" without quotes among texts: neither 2 nor 2.5.
    let sheet = sheet("Axle nut,2,5\nHeader nut,10,oil\nBleed screw,12,dry\n");
    assert!(told(&sheet.rows[0]).contains("decimal comma"), "{}", told(&sheet.rows[0]));
    assert_eq!(told(&sheet.rows[1]), "Header nut · 10 N·m · oil");
}
