//! A million entries that no person types, through the reader of every fact: refused in words or read, never a panic.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use torpor::entry::{Entry, LONGEST};
use torpor::facts::{self, TABLE};

/// Numbers after numbers out of one seed: xorshift64* (Vigna, "An experimental exploration of Marsaglia's xorshift
/// generators, scrambled"); the same on every run, so that a failure comes again.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 16
    }
    fn below(&mut self, end: usize) -> usize {
        (self.roll() % end as u64) as usize
    }
    fn one_of<'a>(&mut self, all: &[&'a str]) -> &'a str {
        all[self.below(all.len())]
    }
}

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
];

#[test]
fn a_million_hostile_entries() {
    let halves = [0x9E37_79B9_7F4A_7C15, 0xD1B5_4A32_D192_ED03].map(|seed| {
        std::thread::spawn(move || {
            let mut dice = Dice(seed);
            let mut refused = vec![0u32; TABLE.len()];
            let mut text = String::new();
            for round in 0..500_000 {
                text.clear();
                for _ in 0..=dice.below(3) {
                    text.push_str(dice.one_of(PIECES));
                }
                let which = round % TABLE.len();
                let about = TABLE[which];
                let unit = if dice.below(4) > 0 { 0 } else { dice.roll() as u8 };
                let entry = Entry::new(text.as_str(), unit);
                if let Some(why) = facts::refusal(about, &entry) {
                    refused[which] += 1;
                    if round % 64 == 0 {
                        assert!(!why.to_string().trim().is_empty());
                    }
                }
                if round % 64 == 0 {
                    let _ = (facts::echo(about, &entry), facts::as_read(about, &entry));
                }
            }
            refused
        })
    });
    let [one, other] = halves.map(|it| it.join().unwrap());
    for ((about, one), other) in TABLE.iter().zip(one).zip(other) {
        let share = f64::from(one + other) / (1e6 / TABLE.len() as f64);
        let text = about.kind == facts::Kind::Text;
        assert!(text || share > 0.3, "{} refused {share} only", about.key);
        assert!(share < 0.999, "{} refused all", about.key);
    }
}

/// Very long entries are refused as such by every fact, before anything else is done with them.
#[test]
fn what_is_too_long() {
    for about in TABLE {
        for piece in ["9", "½", " 1", "1,", "-", "(", "漢", "1 mL per "] {
            let entry = Entry::new(piece.repeat(LONGEST + 1), 0);
            let why = facts::refusal(about, &entry).expect(about.key).to_string();
            assert!(why.len() < 400, "{}: {why}", about.key);
        }
        let huge = Entry::new("1".repeat(10_000_000), 0);
        let why = facts::refusal(about, &huge).expect(about.key).to_string();
        assert!(why.len() < 400, "{}: {why}", about.key);
    }
}
