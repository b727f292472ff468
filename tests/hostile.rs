//! A million entries that no person types, through the reader of every fact: refused in words or read, never a panic.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod hostile_inputs;

use hostile_inputs::{Dice, SEEDS};
use torpor::entry::{Entry, LONGEST};
use torpor::facts::{self, About, Kind, TABLE};

/// What entries are made of, and what trips readers: signs of two and three bytes, half a range, half a fraction.
const PIECES: &[&str] = &[
    "0",
    "1",
    "25",
    "007",
    "1234",
    "22–26",
    "1,000",
    "1.5",
    "1,5",
    ".5",
    "½",
    "3 1/2",
    "/",
    "1/0",
    "9999999999999999",
    "-",
    "−",
    "–",
    "±",
    "+/-",
    "..",
    "…",
    "(",
    ")",
    "about ",
    "~",
    "≈",
    " ",
    "\u{a0}",
    "\u{202f}",
    "'",
    ",",
    ".",
    "°",
    "%",
    " N·m",
    " ft-lb",
    " L",
    " gal",
    " oz",
    " mpg",
    "°F",
    "°C",
    " V",
    " mA",
    "Wh",
    "to ",
    " per ",
    ":",
    "→",
    "auf",
    "2026-11-14",
    "Nov",
    "14",
    "2026",
    "Feb 29",
    "İ",
    "ß",
    "漢",
    "😀",
    "\u{202e}",
    "\0",
    "\n",
    "\t",
    "e9",
    "NaN",
    "inf",
    "agm",
    "in_line",
    "٣",
    "Ⅷ",
    "²",
    "\u{301}",
    "x",
    "″",
    " then ",
    "; ",
    "+",
    "70 %",
    "100 %",
    "90°",
    " turn",
    "1/2",
    "30 mL per 10 L",
    "24",
    "860",
    " kg/m³",
    " and ",
    "10W-40",
];

/// What several passes are made of.
const PASSES: &[&str] = &["70 %", "100 %", "20 N·m", "45 N·m", "90°", " then ", "; ", " + "];

/// What several sizes are made of.
const SIZES: &[&str] = &["1", "4 L", "0.5", " US qt", "; ", ", ", " and ", "\n"];

/// A piece of an entry; a fact whose entries are made of words of its own often gets one of them.
fn piece(dice: &mut Dice, about: &About) -> &'static str {
    match about.kind {
        Kind::Choice(choices) | Kind::Several(choices) if dice.below(5) == 0 => {
            choices[dice.below(choices.len())].key
        }
        Kind::Several(_) if dice.below(4) == 0 => " ",
        Kind::Stages if dice.below(2) == 0 => dice.one_of(PASSES),
        Kind::Sizes(_) if dice.below(2) == 0 => dice.one_of(SIZES),
        // A narrow one, which the pieces hardly hit.
        Kind::Quantity { limits, .. } if limits[0].low >= 100.0 && dice.below(4) == 0 => "860",
        _ => dice.one_of(PIECES),
    }
}

#[test]
fn a_million_hostile_entries() {
    let halves = SEEDS.map(|seed| {
        std::thread::spawn(move || {
            let mut dice = Dice::of(seed);
            let mut met = vec![Met::default(); TABLE.len()];
            let mut text = String::new();
            for round in 0..500_000 {
                let which = round % TABLE.len();
                let about = TABLE[which];
                text.clear();
                for _ in 0..=dice.below(3) {
                    text.push_str(piece(&mut dice, about));
                }
                let unit = if dice.below(4) > 0 { 0 } else { dice.roll() as u8 };
                let entry = Entry::new(text.as_str(), unit);
                // Not by the round: every fact is to be told now and then.
                let told = dice.below(64) == 0;
                match facts::refusal(about, &entry) {
                    Some(why) => {
                        met[which].refused += 1;
                        assert!(!told || !why.to_string().trim().is_empty());
                    }
                    None => met[which].taken += u32::from(!entry.is_blank()),
                }
                if told {
                    let _ = (facts::echo(about, &entry), facts::as_read(about, &entry));
                    met[which].told += 1;
                }
                met[which].several += u32::from(several(about, &entry));
            }
            met
        })
    });
    let [one, other] = halves.map(|it| it.join().unwrap());
    for (about, (one, other)) in TABLE.iter().zip(one.iter().zip(&other)) {
        let share = f64::from(one.refused + other.refused) / (1e6 / TABLE.len() as f64);
        let text = about.kind == Kind::Text;
        assert!(text || share > 0.3, "{} refused {share} only", about.key);
        let taken = one.taken + other.taken;
        assert!(taken > 20, "{} took {taken} only", about.key);
        assert!(one.told + other.told > 50, "{} was hardly told", about.key);
        let lists = matches!(about.kind, Kind::Stages | Kind::Several(_) | Kind::Sizes(_));
        let several = one.several + other.several;
        assert!(!lists || several > 8, "{} took {several} of more than one", about.key);
    }
}

/// What became of the entries of one fact.
#[derive(Clone, Default)]
struct Met {
    refused: u32,
    /// And not blank.
    taken: u32,
    told: u32,
    /// Two passes or more, two choices or more.
    several: u32,
}

fn several(about: &About, entry: &Entry) -> bool {
    let from = torpor::garage::Entries::from([(about.id, entry.clone())]);
    match about.kind {
        Kind::Stages => facts::STAGES.of(&from).is_ok_and(|it| it.len() > 1),
        Kind::Sizes(_) => facts::BOTTLE_SIZE.of(&from).is_ok_and(|it| it.len() > 1),
        // Taken, and with a space between two of its keys.
        Kind::Several(_) => {
            facts::refusal(about, entry).is_none() && entry.text.split_whitespace().nth(1).is_some()
        }
        _ => false,
    }
}

/// Very long entries are refused as such by every fact, before anything else is done with them.
#[test]
fn what_is_too_long() {
    for about in TABLE {
        for piece in ["9", "½", " 1", "1,", "-", "(", "漢", "1 mL per "] {
            let entry = Entry::new(piece.repeat(LONGEST + 1), 0);
            let why = facts::refusal(about, &entry).expect(about.key).to_string();
            assert!(why.chars().count() < 400, "{}: {why}", about.key);
        }
        let huge = Entry::new("1".repeat(10_000_000), 0);
        let why = facts::refusal(about, &huge).expect(about.key).to_string();
        assert!(why.chars().count() < 400, "{}: {why}", about.key);
    }
}
