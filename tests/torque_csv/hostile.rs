//! Texts that no spreadsheet writes, a million of them in a release build: refused in words, or read row by row; never
//! a panic, never over a limit.

use super::hostile_inputs::{Dice, SEEDS};
use super::*;
use std::time::{Duration, Instant};
use torpor::entry;

/// What is bent: each way that a table may look, as short as may be. A build for tests takes 50 µs for a row.
const SAMPLES: &[&str] = &[
    "Part;Nm\na;2,5\n",
    "Min,Max\r\n2,3",
    "x\t25\ty",
    "\"a\"\"b\",\"25\nx\"\n",
    "Torque\n2 (1–3)",
    "Nm;ft-lb\n24;18",
    "Nm;unit\n9;nm",
    "\u{feff}Turn;Mind\n9°;x",
    "sep=;\nPage;Nm\n1;2",
    "x;2 nm",
];

const PIECES: &[&str] = &[
    "\"", "\"\"", "\"\"\"", ",", ";", "\t", "\n", "\r", "\r\n", "\u{feff}", "25", "22–26", "(",
    ")", "Nm", "ft-lb", "M8", "1/4-20", "Torque", "min", "max", "unit", "note", "part", "2,5", "=",
    "-", "–", "yes", "sep=", "°", "½", "漢", "😀", "\u{202e}", "\0", "\u{fffe}", "\u{301}",
    "loosen", " ",
];

fn text(dice: &mut Dice, text: &mut String) {
    text.clear();
    match dice.below(8) {
        0 | 1 => {
            let mut bytes = dice.one_of(SAMPLES).as_bytes().to_vec();
            dice.bend(&mut bytes);
            text.push_str(&String::from_utf8_lossy(&bytes));
        }
        2..=4 => {
            for _ in 0..=dice.below(4) {
                text.push_str(dice.one_of(PIECES));
            }
        }
        _ => {
            let bytes: Vec<u8> = (0..dice.below(8)).map(|_| dice.roll() as u8).collect();
            text.push_str(&String::from_utf8_lossy(&bytes));
        }
    }
}

#[track_caller]
fn holds(sheet: &Sheet) {
    assert!((1..=torque_csv::MOST_ROWS).contains(&sheet.rows.len()));
    for row in &sheet.rows {
        match &row.read {
            Ok(entries) => {
                assert!(!entries.is_empty());
                for (id, entry) in entries.iter() {
                    assert!(facts::refusal(facts::about(*id).unwrap(), entry).is_none());
                    assert!(entry.text.chars().count() <= entry::LONGEST);
                }
            }
            Err(errors) => assert!(!errors.is_empty()),
        }
    }
}

/// How many each of two threads reads. A build for tests takes 40 µs for the shortest table there is: a million of them
/// would hold up every other test.
const ROUNDS: usize = if cfg!(debug_assertions) { 100_000 } else { 500_000 };

#[test]
fn hostile_tables() {
    let halves = SEEDS.map(|seed| {
        std::thread::spawn(move || {
            let mut dice = Dice::of(seed);
            let (mut tables, mut rows, mut fasteners) = (0u32, 0u32, 0u32);
            let mut made = String::new();
            for _ in 0..ROUNDS {
                text(&mut dice, &mut made);
                let Ok(sheet) = torque_csv::read(&made, &units::NEWTON_METER) else { continue };
                tables += 1;
                rows += sheet.rows.len() as u32;
                fasteners += sheet.rows.iter().filter(|it| it.read.is_ok()).count() as u32;
                if dice.below(64) == 0 {
                    holds(&sheet);
                    assert!(sheet.rows.iter().all(|it| !told(it).trim().is_empty()), "{made:?}");
                    let kept: Vec<Entries> =
                        sheet.rows.iter().filter_map(|it| it.read.clone().ok()).collect();
                    let _ = torque_csv::read(&torque_csv::written(&kept), &units::LBF_FT);
                }
            }
            (tables, rows, fasteners)
        })
    });
    let [one, other] = halves.map(|it| it.join().unwrap());
    let all = (one.0 + other.0, one.1 + other.1, one.2 + other.2);
    println!("{all:?} tables, rows and fasteners");
    let part = |it: u32| it as usize * 100 / (2 * ROUNDS);
    assert!(part(all.0) > 50 && part(all.2) > 4, "the bending has to get inside: {all:?}");
}

/// The most that is looked at, of what trips readers: done in no time that anybody would notice.
#[test]
fn as_long_as_may_be() {
    let pieces = [
        "\"",
        "\"a\"\"",
        "\n\"",
        ";\"",
        "\"\n;",
        ",",
        "a;\n",
        "1 (",
        "Torque;",
        "Torque;min\n",
        "loosen,",
        "x;25\n",
    ];
    for piece in pieces {
        for header in ["", "Part;Torque;Mind\n"] {
            let count = (torque_csv::LONGEST - header.len()) / piece.len();
            let text = format!("{header}{}", piece.repeat(count));
            let start = Instant::now();
            if let Ok(sheet) = torque_csv::read(&text, &units::NEWTON_METER) {
                holds(&sheet);
                for row in &sheet.rows {
                    assert!(told(row).chars().count() < 4000, "{piece:?}");
                }
            }
            let took = start.elapsed();
            assert!(took < Duration::from_secs(5), "{piece:?} after {header:?} took {took:?}");
        }
    }
}
