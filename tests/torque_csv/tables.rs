//! How a text is cut into rows and cells.

use super::*;

/// RFC 4180, section 2, and the separators and line ends that spreadsheets write besides.
#[test]
fn separators_and_line_ends() {
    let rows = [
        ["Fastener", "Torque (N·m)", "Note"],
        ["Axle nut", "100", "page 12"],
        ["Header nut", "12.5", "twice"],
    ];
    for separator in [",", ";", "\t"] {
        for end in ["\r\n", "\n", "\r"] {
            for mark in ["", "\u{feff}"] {
                for last in ["", end] {
                    let lines: Vec<String> = rows.iter().map(|it| it.join(separator)).collect();
                    let text = format!("{mark}{}{last}", lines.join(end));
                    let told = told_all(&text);
                    assert_eq!(
                        told,
                        ["Axle nut · 100 N·m · page 12", "Header nut · 12.5 N·m · twice"],
                        "{text:?}"
                    );
                    let lines: Vec<usize> = sheet(&text).rows.iter().map(|it| it.line).collect();
                    assert_eq!(lines, [2, 3], "{text:?}");
                }
            }
        }
    }
}

/// Where semicolons stand between cells, commas stand in numbers, and in texts.
#[test]
fn semicolons_with_decimal_commas() {
    let text = "Part;Torque;Unit;Remarks\r\n\
        Bleed screw;2,5;kgf·m;clean, dry, new\r\n\
        Axle nut;10,25;;a, b\r\n";
    let sheet = sheet(text);
    let first = sheet.rows[0].read.as_ref().unwrap();
    assert_eq!(torque(first), typed("2,5", &units::KGF_M));
    assert_eq!(entry(first, facts::FASTENER_NOTE.id()), Some(("clean, dry, new", 0)));
    assert_eq!(told(&sheet.rows[1]), "Axle nut · 10.25 N·m · a, b");
    // Quoted, a decimal comma does no harm between commas either.
    assert_eq!(told_all("Part,Torque\nBleed screw,\"2,5\"\n"), ["Bleed screw · 2.5 N·m"]);
}

#[test]
fn quotes() {
    let text = "Fastener,Torque,Note\r\n\
        \"Nut, left\",25,\"the \"\"long\"\" one\"\r\n\
        \"Bolt\nof two lines\",26,\"first\r\nsecond\"\r\n\
        Plug, \"30\" ,\"\"\r\n\
        3/8\" plug,31,8\" long\r\n\
        \"Not closed,32,x\r\n";
    let sheet = sheet(text);
    let names: Vec<Option<&str>> = sheet
        .rows
        .iter()
        .map(|it| it.read.as_ref().unwrap().get(&facts::FASTENER_NAME.id()))
        .map(|it| it.map(|it| it.text.as_str()))
        .collect();
    assert_eq!(
        names,
        [
            Some("Nut, left"),
            Some("Bolt of two lines"),
            Some("Plug"),
            Some("3/8\" plug"),
            Some("\"Not closed")
        ]
    );
    assert_eq!(told(&sheet.rows[0]), "Nut, left · 25 N·m · the \"long\" one");
    assert_eq!(told(&sheet.rows[1]), "Bolt of two lines · 26 N·m · first  second");
    assert_eq!(told(&sheet.rows[2]), "Plug · 30 N·m");
    assert_eq!(told(&sheet.rows[3]), "3/8\" plug · 31 N·m · 8\" long");
    assert_eq!(told(&sheet.rows[4]), "\"Not closed · 32 N·m · x");
    let lines: Vec<usize> = sheet.rows.iter().map(|it| it.line).collect();
    assert_eq!(lines, [2, 3, 6, 7, 8], "a row begins where its first line does");
}

#[test]
fn blank_rows_are_none() {
    let text = "\n\n;;\n  \nFastener;Torque\n\n;\nAxle nut;100\n;;;;\n \t \n";
    let sheet = sheet(text);
    assert_eq!(sheet.rows.len(), 1);
    assert_eq!(sheet.rows[0].line, 8);
}

/// Some programs say in a first line which separator follows.
#[test]
fn a_line_that_names_the_separator() {
    for (text, line) in [
        ("sep=;\r\nFastener;Torque\r\nAxle nut;2,5", 3),
        ("\u{feff}sep=\t\nFastener\tTorque\nAxle nut\t2,5", 3),
        ("sep=,\rFastener,Torque\rAxle nut,2.5", 3),
    ] {
        assert_eq!(told_all(text), ["Axle nut · 2.5 N·m"], "{text:?}");
        assert_eq!(sheet(text).rows[0].line, line);
    }
}

/// One column: commas in it part nothing.
#[test]
fn a_single_column() {
    assert_eq!(told_all("Torque\n2,5\n3,5\n"), ["2.5 N·m", "3.5 N·m"]);
    assert_eq!(told_all("ft-lb\n17\n"), ["17 lbf·ft"]);
    let both = "24 N·m (2.4 kgf·m, 18 lbf·ft)";
    assert_eq!(told_all(&format!("Torque\n{both}\n{both}\n")), ["24 N·m", "24 N·m"]);
    assert_eq!(told_all("25 N·m\n22–26 N·m"), ["25 N·m", "24 N·m, from 22 to 26"]);
    let names = sheet("Fastener\nAxle nut, rear\nHeader nut, long\n");
    assert!(names.header);
    assert_eq!(names.columns, [("Fastener".to_owned(), Some(facts::FASTENER_NAME.id()))]);
    assert_eq!(names.rows[0].cells, ["Axle nut, rear"]);
}

#[test]
fn limits() {
    let read = |text: &str| torque_csv::read(text, &units::NEWTON_METER);
    for text in ["", " \n\r\n", "\u{feff}", ";;;\n;", "Fastener;Torque", "sep=;\n"] {
        assert_eq!(read(text), Err(NotATable::Empty), "{text:?}");
    }
    let rows = |count: usize| "Axle nut;25\n".repeat(count);
    for header in ["", "Fastener;Torque\n"] {
        let all = read(&format!("{header}{}", rows(400))).unwrap();
        assert_eq!(all.rows.len(), 400);
        assert!(all.rows.iter().all(|it| it.read.is_ok()));
        let more = read(&format!("{header}{}", rows(401)));
        assert_eq!(more, Err(NotATable::TooManyRows));
        let far_more = read(&format!("{header}{}", rows(20_000)));
        assert_eq!(far_more, Err(NotATable::TooManyRows));
    }
    let most = format!("{}{}", rows(1), " ".repeat(torque_csv::LONGEST - rows(1).len()));
    assert_eq!(most.len(), torque_csv::LONGEST);
    assert!(read(&most).is_ok());
    assert_eq!(read(&format!("{most} ")), Err(NotATable::TooLong));
    assert_eq!(read(&"x".repeat(10_000_000)), Err(NotATable::TooLong));
    assert!(read(&format!("Axle nut;25{}", ";x".repeat(62))).is_ok());
    assert_eq!(read(&format!("Axle nut;25{}", ";x".repeat(63))), Err(NotATable::TooWide));
    assert_eq!(read(&";".repeat(20_000)), Err(NotATable::Empty));
    let wide = format!("Part;Torque{0}\nAxle nut;25{0}\n", ";".repeat(5000));
    assert_eq!(told_all(&wide), ["Axle nut · 25 N·m"], "blank columns are none");
    for why in [NotATable::TooLong, NotATable::TooManyRows, NotATable::TooWide, NotATable::Empty] {
        assert!(why.to_string().ends_with('.'));
    }
}

/// Source: Unicode Standard Annex 9, its explicit directional characters, and general categories Cc and Cf.
#[test]
fn hidden_characters_are_taken_out() {
    for hidden in [
        '\0',
        '\u{1b}',
        '\u{7f}',
        '\u{ad}',
        '\u{61c}',
        '\u{200b}',
        '\u{200e}',
        '\u{202e}',
        '\u{2066}',
        '\u{2028}',
        '\u{feff}',
        '\u{e0041}',
    ] {
        let text = format!("Fast{hidden}ener;Tor{hidden}que\nAxle{hidden} nut;2{hidden}5\n");
        let sheet = sheet(&text);
        assert_eq!(sheet.columns[1], ("Torque".to_owned(), Some(facts::TORQUE.id())));
        assert_eq!(sheet.rows[0].cells, ["Axle nut", "25"], "{hidden:?}");
        assert_eq!(told(&sheet.rows[0]), "Axle nut · 25 N·m");
    }
}
