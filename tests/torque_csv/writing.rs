//! What is written: read by other hands, and read back.

use super::*;
use proptest::prelude::*;
use torpor::facts::{Facts, Home, Kind};

/// As other hands read it: the `csv` crate, strictly, every row as wide as the first.
fn by_other_hands(text: &str) -> Vec<Vec<String>> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
    reader.records().map(|it| it.unwrap().iter().map(str::to_owned).collect()).collect()
}

fn fastener(facts: &[(Id, &str, u8)]) -> Entries {
    facts.iter().map(|(id, text, unit)| (*id, Entry::new(*text, *unit))).collect()
}

#[test]
fn a_table_by_hand() {
    let fasteners = [
        fastener(&[
            (facts::FASTENER_NAME.id(), "Axle nut", 0),
            (facts::TORQUE.id(), "25 (22–26)", units::NEWTON_METER.code),
            (facts::ADAPTER.id(), "in_line", 0),
            (facts::ADAPTER_LENGTH.id(), "1,6", units::INCHES.code),
            (facts::ADAPTER_ANGLE.id(), "-90", units::DEGREE.code),
        ]),
        fastener(&[
            (facts::FASTENER_NAME.id(), "=HYPERLINK(\"x\")", 0),
            (facts::TORQUE.id(), "17 ft-lb", units::NEWTON_METER.code),
            (facts::MIND.id(), "new_washer cold_only", 0),
            (facts::FASTENER_NOTE.id(), "a \"b\", c", 0),
            (facts::TAKEN_WRENCH.id(), "3", 0),
            (Id(60_000), "of a newer page", 0),
        ]),
    ];
    assert_eq!(
        torque_csv::written(&fasteners),
        "Fastener,Torque at the fastener,Adapter,\"Adapter length, drive to fastener\",Adapter angle,Note,Mind\r\n\
         Axle nut,25 (22–26) N·m,in line,\"1,6 in\", -90 °,,\r\n\
         \" =HYPERLINK(\"\"x\"\")\",17 ft-lb,,,,\"a \"\"b\"\", c\",\"new washer, cold only\"\r\n"
    );
    assert_eq!(torque_csv::written(&[]), "\r\n");
}

/// Source: OWASP Application Security Verification Standard, 1.2.10: = + - @ at the start of a cell make a formula.
#[test]
fn nothing_runs_in_a_spreadsheet() {
    for (name, cell) in [
        ("=1+1", " =1+1"),
        ("+1+1", " +1+1"),
        ("-1+1", " -1+1"),
        ("@SUM(A1)", " @SUM(A1)"),
        ("\t=1", " =1"),
        ("\u{200b}=1", " =1"),
        ("-25", "-25"),
        ("+2.5", "+2.5"),
        ("Bolt=1", "Bolt=1"),
    ] {
        let one = fastener(&[
            (facts::FASTENER_NAME.id(), name, 0),
            (facts::TORQUE.id(), "25", units::NEWTON_METER.code),
        ]);
        let text = torque_csv::written(&[one]);
        assert_eq!(by_other_hands(&text)[1][0], cell, "{name}");
        let back = only(&text);
        assert_eq!(entry(&back, facts::FASTENER_NAME.id()), Some((cell.trim(), 0)));
    }
}

/// What each fact reads to; an entry may have its unit written out, its value is the same.
fn values(entries: &Entries) -> Vec<String> {
    vec![
        format!("{:?}", facts::FASTENER_NAME.maybe(entries)),
        format!("{:?}", facts::TORQUE.maybe(entries)),
        format!("{:?}", facts::ADAPTER.maybe(entries)),
        format!("{:?}", facts::ADAPTER_LENGTH.maybe(entries)),
        format!("{:?}", facts::ADAPTER_ANGLE.maybe(entries)),
        format!("{:?}", facts::SELF_LOCKING.maybe(entries)),
        format!("{:?}", facts::PREVAILING_TORQUE.maybe(entries)),
        format!("{:?}", facts::FASTENER_NOTE.maybe(entries)),
        format!("{:?}", facts::STAGES.maybe(entries)),
        format!("{:?}", facts::BOLTS.maybe(entries)),
        format!("{:?}", facts::THREAD_DRESSING.maybe(entries)),
        format!("{:?}", facts::MIND.maybe(entries)),
        format!("{:?}", facts::TURN.maybe(entries)),
        format!("{:?}", facts::WAS_SET_TO.maybe(entries)),
        // Facts that came to the table later, as they are shown.
        facts::TABLE
            .iter()
            .filter(|it| it.home == Home::Fastener && it.id != facts::TAKEN_WRENCH.id())
            .map(|it| facts::as_read(it, &entries.entry(it.id)))
            .collect(),
    ]
}

/// A number up to `most` as somebody types it, or a range, with a unit of its own or without.
fn number(
    units: &'static [&'static Unit],
    most: u32,
    range: bool,
) -> impl Strategy<Value = String> {
    let figure = (2..most, 0u32..16).prop_map(move |(whole, form)| match form {
        8..10 => format!("{whole}.{form}"),
        10 => format!("{whole},5"),
        11 => format!("{whole} 1/2"),
        12 => format!("about {whole}"),
        13 if range => format!("{}-{}", whole - 1, whole + 1),
        14 if range => format!("{whole} ({}–{})", whole - 1, whole + 1),
        15 if range => format!("{whole} ± 1"),
        _ => whole.to_string(),
    });
    let spelling = prop::option::of(prop::sample::select(units));
    (figure, spelling).prop_map(|(figure, unit)| match unit {
        Some(unit) => format!("{figure} {}", unit.symbol),
        None => figure,
    })
}

fn words() -> impl Strategy<Value = String> {
    "[ a-zA-Z0-9,;\"'=+@/()·ß漢-]{0,24}"
}

/// An entry of a fact that the fact takes.
fn taken(about: &'static facts::About) -> BoxedStrategy<Entry> {
    const TORQUES: &[&Unit] = &[&units::NEWTON_METER, &units::LBF_FT, &units::KGF_M];
    const LENGTHS: &[&Unit] = &[&units::MILLIMETER, &units::INCHES];
    const ANGLES: &[&Unit] = &[&units::DEGREE];
    let keys = |choices: &'static [facts::Choice]| -> Vec<&'static str> {
        choices.iter().map(|it| it.key).collect()
    };
    let drawn: BoxedStrategy<Entry> = match &about.kind {
        Kind::Quantity { limits, range } => {
            let (units, most) = match limits[0].unit.dimension {
                units::Dimension::Torque => (TORQUES, 50),
                units::Dimension::Length => (LENGTHS, 39),
                _ => (ANGLES, 180),
            };
            (number(units, most, *range), prop::sample::select(units))
                .prop_map(|(text, unit)| Entry::new(text, unit.code))
                .boxed()
        }
        Kind::Choice(choices) => {
            prop::sample::select(keys(choices)).prop_map(|it| Entry::new(it, 0)).boxed()
        }
        Kind::Several(choices) => prop::sample::subsequence(keys(choices), 1..=choices.len())
            .prop_map(|all| Entry::new(all.join(" "), 0))
            .boxed(),
        Kind::Count { least, .. } => {
            let least = *least;
            (0u32..20).prop_map(move |it| Entry::new((least + it).to_string(), 0)).boxed()
        }
        Kind::Stages => {
            prop::sample::select(vec!["70 % then 100 %", "20 N·m, 45 N·m", "30 N·m + 90°"])
                .prop_map(|it| Entry::new(it, 0))
                .boxed()
        }
        _ if about.id == THREAD => prop::sample::select(vec!["M8", "M10 × 1.25", "3/8-24 UNF"])
            .prop_map(|it| Entry::new(it, 0))
            .boxed(),
        _ => words().prop_map(|it| Entry::new(it, 0)).boxed(),
    };
    drawn.prop_filter("refused", move |it| facts::refusal(about, it).is_none()).boxed()
}

fn fasteners() -> impl Strategy<Value = Vec<Entries>> {
    let facts: Vec<&'static facts::About> =
        facts::TABLE.iter().copied().filter(|it| it.home == Home::Fastener).collect();
    let one: Vec<_> = facts
        .into_iter()
        .map(|about| {
            let some = prop::option::weighted(0.4, taken(about));
            some.prop_map(move |it| it.map(|it| (about.id, it)))
        })
        .collect();
    let one = one.prop_map(|all| all.into_iter().flatten().collect::<Entries>());
    prop::collection::vec(one, 0..6)
}

/// Dashes say nothing in a table.
fn says_something(text: &str) -> bool {
    text.chars().any(|it| !it.is_whitespace() && !"-–—−".contains(it))
}

proptest! {
    /// The `csv` crate finds the cells that stand in the facts.
    #[test]
    fn other_hands_read_it(all in fasteners()) {
        let rows = by_other_hands(&torque_csv::written(&all));
        let held: Vec<&facts::About> = facts::TABLE.iter().copied()
            .filter(|it| it.home == Home::Fastener && it.id != facts::TAKEN_WRENCH.id())
            .filter(|about| all.iter().any(|it| !it.entry(about.id).is_blank()))
            .collect();
        // Without columns every row is blank, and other hands skip those.
        if held.is_empty() {
            return Ok(());
        }
        let labels: Vec<&str> = held.iter().map(|it| it.label).collect();
        prop_assert_eq!(&rows[0], &labels);
        let mut rows = rows[1..].iter();
        for fastener in &all {
            let cells: Vec<String> =
                held.iter().map(|it| facts::as_read(it, &fastener.entry(it.id))).collect();
            if held.len() == 1 && cells[0].is_empty() {
                continue;
            }
            let row = rows.next().unwrap();
            for (cell, expected) in row.iter().zip(&cells) {
                prop_assert_eq!(cell.trim(), expected.trim());
                let first = cell.chars().next().unwrap_or(' ');
                let number = cell[cell.chars().next().map_or(0, char::len_utf8)..].parse::<f64>().is_ok();
                prop_assert!(!"=+-@".contains(first) || number, "{}", cell);
            }
        }
        prop_assert!(rows.next().is_none());
    }

    /// Reading what was written gives the same fasteners: every fact reads to the same value.
    #[test]
    fn it_comes_back(all in fasteners(), usual in prop::sample::select(vec![&units::NEWTON_METER, &units::LBF_FT])) {
        let whole: Vec<Entries> = all.into_iter()
            .filter(|it| [facts::TORQUE.id(), THREAD, facts::TURN.id()].iter().any(|id| {
                facts::about(*id).is_some() && says_something(&it.entry(*id).text)
            }))
            .map(|it| it.into_iter().filter(|(id, it)| {
                *id != facts::TAKEN_WRENCH.id() && says_something(&it.text)
            }).collect())
            .collect();
        if whole.is_empty() {
            return Ok(());
        }
        let text = torque_csv::written(&whole);
        let sheet = torque_csv::read(&text, usual).unwrap();
        prop_assert!(sheet.header);
        prop_assert_eq!(sheet.rows.len(), whole.len(), "{}", text);
        for (row, fastener) in sheet.rows.iter().zip(&whole) {
            let back = row.read.as_ref().map_err(|why| TestCaseError::fail(format!("{why:?}\n{text}")))?;
            prop_assert_eq!(values(back), values(fastener), "{}", text);
        }
        // What was read is written the same again, but for the units' own spelling.
        let back: Vec<Entries> = sheet.rows.iter().map(|it| it.read.clone().unwrap()).collect();
        prop_assert_eq!(torque_csv::written(&back), text);
    }

    /// What the `csv` crate writes is read cell by cell, with any separator and line end.
    #[test]
    fn written_by_other_hands(
        rows in prop::collection::vec(prop::collection::vec("[ a-z0-9,;\"\t\r\n·ß漢=-]{0,8}", 3), 1..8),
        separator in prop::sample::select(vec![b',', b';', b'\t']),
        crlf in any::<bool>(),
        always in any::<bool>(),
    ) {
        let style = if always { csv::QuoteStyle::Always } else { csv::QuoteStyle::Necessary };
        let end = if crlf { csv::Terminator::CRLF } else { csv::Terminator::Any(b'\n') };
        let mut writer = csv::WriterBuilder::new()
            .delimiter(separator).terminator(end).quote_style(style).from_writer(Vec::new());
        writer.write_record(["Fastener", "Torque (N·m)", "Note"]).unwrap();
        for row in &rows {
            writer.write_record(row).unwrap();
        }
        let text = String::from_utf8(writer.into_inner().unwrap()).unwrap();
        let clean = |it: &String| it.trim().replace(['\t', '\r', '\n'], " ");
        let expected: Vec<Vec<String>> = rows.iter().map(|it| it.iter().map(clean).collect())
            .filter(|it: &Vec<String>| it.iter().any(|it| !it.is_empty()))
            .collect();
        match torque_csv::read(&text, &units::NEWTON_METER) {
            Ok(sheet) => {
                prop_assert!(sheet.header);
                let cells: Vec<Vec<String>> = sheet.rows.iter().map(|it| it.cells.clone()).collect();
                prop_assert_eq!(cells, expected, "{}", text);
            }
            Err(why) => prop_assert!(why == NotATable::Empty && expected.is_empty()),
        }
    }
}
