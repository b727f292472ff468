//! Links that someone bent, broke or made to do harm: refused in words, or read as plain text; never a panic.

use super::hostile_inputs::{Dice, SEEDS};
use super::*;
use torpor::storage::compare;

fn read(fragment: &str) -> Result<Parcel, LinkError> {
    link::read(fragment)
}

/// A blank page, words, other pages' anchors, and what is far too long.
#[test]
fn what_is_no_link_at_all() {
    for text in [
        "",
        "#",
        "#1",
        "1.",
        "#1.",
        "#.",
        "#a.sCcsCRYA",
        "#-1.sCcsCRYA",
        "#1.sCc sCRYA",
        "#1.sCcsCRYA=",
        "#1.sCcs+RY/",
        "#1.ß",
        "#1.漢字漢字",
        "#layup/oil",
        "javascript:alert(1)",
        "#1.\0\0\0\0\0\0",
        "#1.A",
        "#1.AAA",
        "#1.AAAAA",
    ] {
        assert_eq!(read(text), Err(LinkError::CutOff), "{text}");
    }
    let huge = format!("#1.{}", "A".repeat(10_000_000));
    assert_eq!(read(&huge), Err(LinkError::TooLong));
    assert_eq!(read(&"#".repeat(link::LONGEST + 1)), Err(LinkError::TooLong));
    assert_eq!(read(&"#".repeat(link::LONGEST)), Err(LinkError::CutOff));
}

/// A form that this page does not know is a newer page's, however it looks inside.
#[test]
fn a_newer_form_is_said() {
    for text in ["#2.sCcsCRYA", "2.", "#10.<script>", "#999999999999999999999999.x"] {
        assert_eq!(read(text), Err(LinkError::Newer), "{text}");
        assert!(link::claims(text));
    }
    for text in ["#layup/oil", "#oil", "", "#1", "#a.b", "#.x"] {
        assert!(!link::claims(text), "{text}");
    }
}

/// A link cut off anywhere, by a message program for example, is refused whole.
#[test]
fn cut_off_at_every_byte() {
    let whole = written(&parcel(dozen()), true);
    for end in 0..whole.len() {
        assert!(read(&whole[..end]).is_err(), "cut at {end}");
        assert!(whole.get(end + 2..).is_none_or(|it| read(it).is_err()), "from {end}");
    }
    assert_eq!(read(&whole), read(&whole[1..]), "with its # or without");
    assert!(read(&whole).is_ok());
    assert!(read(&format!(" {whole}\n")).is_ok(), "spaces around it do no harm");
}

/// Source: a CRC-32 finds every single wrong bit, in a link's letters as in its bytes (Koopman, CRC selection tables).
#[test]
fn every_single_bit_counts() {
    let whole = written(&parcel(example(autumn(), UnitSet::Metric)), true);
    for at in 0..whole.len() {
        for bit in 0..7 {
            let mut bytes = whole.clone().into_bytes();
            bytes[at] ^= 1 << bit;
            let bent = String::from_utf8(bytes).unwrap();
            let got = read(&bent);
            // Bare or with its "#": the same link. A space in its place is trimmed like any other.
            assert!(got.is_err(), "letter {at}, bit {bit}: {bent}");
        }
    }
    let bytes = bytes_of(&whole);
    let sum = crc32fast::hash(&bytes).to_le_bytes();
    let all = [bytes.as_slice(), &sum].concat();
    for at in 0..all.len() {
        for bit in 0..8 {
            let mut bent = all.clone();
            bent[at] ^= 1 << bit;
            let bent = format!("#1.{}", URL_SAFE_NO_PAD.encode(bent));
            assert_eq!(read(&bent), Err(LinkError::Checksum), "byte {at}, bit {bit}");
        }
    }
}

/// The last letter has bits to spare. The `base64` crate refuses them set, and so does the reader: one link, one text.
#[test]
fn spare_bits_are_none() {
    let mut met = 0;
    for length in 0..6 {
        let mut kept = Kept::default();
        kept.put(facts::BIKE_NAME.id(), Entry::new("x".repeat(length + 1), 0));
        let whole = written(&parcel(kept), true);
        let (front, last) = whole.split_at(whole.len() - 1);
        for letter in "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_".chars() {
            let bent = format!("{front}{letter}");
            let other_hands = URL_SAFE_NO_PAD.decode(bent.trim_start_matches("#1."));
            assert_eq!(read(&bent).is_ok(), last == letter.to_string(), "{bent}");
            if other_hands.is_err() {
                met += 1;
                assert_eq!(read(&bent), Err(LinkError::CutOff), "{bent}");
            }
        }
    }
    assert!(met > 0);
}

/// Script in a name is a name. The page shows texts as texts and nothing else.
#[test]
fn script_stays_text() {
    for script in [
        "<script>alert(1)</script>",
        "<img src=x onerror=alert(1)>",
        "javascript:alert(1)",
        "\"><svg onload=alert(1)>",
        "{{constructor.constructor('alert(1)')()}}",
        "'; DROP TABLE bikes; --",
    ] {
        let mut kept = Kept::default();
        kept.put(facts::BIKE_NAME.id(), Entry::new(script, 0));
        let read = read(&written(&parcel(kept), true)).unwrap();
        assert_eq!(read.kept.bike.entries[&facts::BIKE_NAME.id()].text, script);
        let rows = compare::compared(&Kept::default(), &read.kept);
        assert!(rows.iter().any(|it| it.label == "Bike" && it.there == script), "{script}");
    }
}

/// Source: Unicode Standard Annex 9, its explicit directional characters, and general categories Cc and Cf.
#[test]
fn hidden_characters_are_refused() {
    for hidden in [
        '\0',
        '\t',
        '\n',
        '\r',
        '\u{1b}',
        '\u{7f}',
        '\u{85}',
        '\u{ad}',
        '\u{61c}',
        '\u{200b}',
        '\u{200e}',
        '\u{200f}',
        '\u{202a}',
        '\u{202b}',
        '\u{202c}',
        '\u{202d}',
        '\u{202e}',
        '\u{2028}',
        '\u{2029}',
        '\u{2060}',
        '\u{2066}',
        '\u{2067}',
        '\u{2068}',
        '\u{2069}',
        '\u{feff}',
        '\u{fff9}',
        '\u{e0041}',
    ] {
        let text = format!("Al{hidden}der");
        for wire in [
            Wire::made().whole(0).whole(1).head(1, 4).text(&text),
            Wire::made().whole(0).whole(1).head(10, 7).whole(16).text(&text),
            Wire::made().whole(0).whole(1).head(300, 4).text(&text),
            Wire::made().whole(1).whole(1).head(80, 4).text(&text),
            Wire::made().whole(2).whole(1).head(70, 4).text(&text),
            Wire::made().whole(3).whole(1).head(70, 4).text(&text),
            Wire::made().whole(9).whole(1).head(70, 4).text(&text),
        ] {
            assert_eq!(read(&wire.fragment()), Err(LinkError::HiddenCharacters), "{hidden:?}");
        }
    }
    // Letters of any script, and signs joined into one, are no harm.
    for name in ["Ärger", "漢字", "עברית", "👩\u{200d}🔧", "½·°−"] {
        let wire = Wire::made().whole(0).whole(1).head(1, 4).text(name);
        assert!(read(&wire.fragment()).is_ok(), "{name}");
    }
}

/// Counts, lengths and numbers that no bike has, under a checksum that fits.
#[test]
fn absurd_counts_and_numbers() {
    let most = u64::MAX;
    let ok = |wire: Wire| read(&wire.fragment());
    let facts = || Wire::made().whole(0);
    let no_end = Wire(vec![0xff; 64]);
    let invalid_text = {
        let mut wire = facts().whole(1).head(1, 4).whole(2);
        wire.0.extend([0xc3, 0x28]);
        wire
    };
    for (what, wire) in [
        ("nothing", Wire::default()),
        ("a number without end", no_end),
        ("a day without end", Wire::default().whole(most)),
        ("the least day there is", Wire::default().signed(i64::MIN)),
        ("a day beyond any calendar", Wire::default().signed(i64::MAX)),
        ("a group without count", facts()),
        ("more items than there are", facts().whole(3).head(1, 5).whole(1)),
        ("items without number", facts().whole(most)),
        ("401 items", facts().whole(401)),
        ("a fact’s number over 65,535", facts().whole(1).head(65_536, 5).whole(1)),
        ("two steps to over 65,535", facts().whole(2).head(65_535, 5).whole(1).head(1, 5).whole(1)),
        ("a text longer than all", facts().whole(1).head(1, 4).whole(most)),
        ("a text of 401", facts().whole(1).head(1, 4).text(&"x".repeat(401))),
        ("digits longer than all", facts().whole(1).head(1, 4).packed(9, &[0x11; 4])),
        ("401 digits", facts().whole(1).head(1, 4).packed(401, &[0x10; 201])),
        ("spare bits behind the last digit", facts().whole(1).head(1, 4).packed(1, &[0x12])),
        ("no text", invalid_text),
        ("a unit over 255", facts().whole(1).head(10, 0).signed(1).whole(256)),
        ("a choice over 255", facts().whole(1).head(15, 5).whole(256)),
        ("too many places", facts().whole(1).head(10, 3).signed(1).signed(-19).whole(16)),
        ("too many noughts", facts().whole(1).head(10, 3).signed(1).signed(127).whole(16)),
        (
            "an exponent without end",
            facts().whole(1).head(10, 3).signed(1).signed(i64::MIN).whole(16),
        ),
        ("a day of the least number", facts().whole(1).head(60, 6).signed(i64::MIN)),
        ("a day of the greatest", facts().whole(1).head(60, 6).signed(i64::MAX)),
    ] {
        assert_eq!(ok(wire), Err(LinkError::NotABike), "{what}");
    }
    let groups = |count: usize| (0..count).fold(Wire::made(), |wire, _| wire.whole(2).whole(0));
    assert_eq!(ok(groups(400)).map(|it| it.kept.bike.fasteners.len()), Ok(400));
    assert_eq!(ok(groups(401)), Err(LinkError::NotABike));
    // The least and the greatest number are numbers still.
    for (mantissa, text) in [(i64::MIN, "-9223372036854775808"), (i64::MAX, "9223372036854775807")]
    {
        let read = ok(facts().whole(1).head(10, 0).signed(mantissa).whole(16)).unwrap();
        assert_eq!(read.kept.bike.entries[&facts::TANK_VOLUME.id()].text, text);
        assert!(
            torpor::facts::refusal(
                &facts::TANK_VOLUME.about,
                &read.kept.bike.entries[&facts::TANK_VOLUME.id()]
            )
            .is_some()
        );
    }
}

/// Fragments for each of two threads: a million in all, ten of them where the build is a fast one.
const EACH: usize = if cfg!(debug_assertions) { 500_000 } else { 5_000_000 };

/// A million bent fragments and more: a third with their letters bent, the rest bent inside under a checksum that fits.
#[test]
fn a_million_hostile_fragments() {
    let seeds: Vec<Vec<u8>> = [
        Wire::made(),
        Wire::made()
            .whole(0)
            .whole(2)
            .head(10, 1)
            .signed(155)
            .whole(16)
            .head(8, 7)
            .whole(88)
            .text("4–5"),
        Wire::made()
            .whole(0)
            .whole(2)
            .head(1, 4)
            .text("Ö")
            .head(59, 6)
            .signed(2509)
            .whole(1)
            .whole(1)
            .head(81, 0)
            .signed(285)
            .whole(40),
        Wire::made()
            .whole(2)
            .whole(2)
            .head(70, 5)
            .whole(6)
            .head(1, 3)
            .signed(25)
            .signed(-3)
            .whole(1)
            .whole(9)
            .whole(0),
        Wire::made()
            .whole(3)
            .whole(1)
            .head(72, 5)
            .whole(2)
            .whole(7)
            .whole(1)
            .head(300, 7)
            .whole(9)
            .text("x"),
    ]
    .map(|it| it.0)
    .to_vec();
    // Whole bikes, as their owners would send them.
    let whole = [example(autumn(), UnitSet::Us), dozen()].map(|it| written(&parcel(it), true));
    let seeds: Vec<Vec<u8>> =
        seeds.into_iter().chain(whole.iter().map(|it| bytes_of(it))).collect();
    let letters: Vec<String> = seeds.iter().map(|it| around(it)).collect();
    let halves = SEEDS.map(|seed| {
        let (seeds, letters) = (seeds.clone(), letters.clone());
        std::thread::spawn(move || {
            let mut dice = Dice::of(seed);
            let own = dozen();
            let mut taken = 0u32;
            for round in 0..EACH {
                let which = dice.below(seeds.len());
                let fragment = if round % 3 == 0 {
                    let mut bent = letters[which].clone().into_bytes();
                    dice.bend(&mut bent);
                    String::from_utf8_lossy(&bent).into_owned()
                } else {
                    let mut bent = seeds[which].clone();
                    dice.bend(&mut bent);
                    around(&bent)
                };
                if let Ok(parcel) = read(&fragment) {
                    taken += 1;
                    // What was taken can be listed, written again and read again.
                    if taken.is_multiple_of(64) {
                        let again = written(&parcel, true);
                        assert!(read(&again).is_ok(), "{fragment} came again as {again}");
                        let rows = compare::compared(&own, &parcel.kept);
                        assert!(rows.iter().all(|it| !it.here.is_empty() || !it.there.is_empty()));
                        let over = compare::taken_over(&own, &parcel.kept, 1);
                        assert!(over.bike.fasteners.len() >= own.bike.fasteners.len());
                    }
                }
            }
            taken
        })
    });
    let taken: u32 = halves.into_iter().map(|it| it.join().unwrap()).sum();
    println!("{taken} of {} were taken", 2 * EACH);
    assert!(taken > 10_000, "the bending has to get inside: {taken}");
}
