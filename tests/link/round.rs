//! What leaves, what comes back, and what this page does not know and passes on.

use super::*;
use proptest::prelude::*;
use torpor::entry::form;
use torpor::garage::Bike;

#[track_caller]
fn there_and_back(kept: Kept) -> Kept {
    let sent = written(&parcel(kept), true);
    link::read(&sent).unwrap_or_else(|why| panic!("{why}: {sent}")).kept
}

/// Source: RFC 4648 as the `base64` crate has it; the checksum as the `crc32fast` crate has it.
#[test]
fn text_and_checksum_are_the_usual_ones() {
    for kept in [Kept::default(), example(autumn(), UnitSet::Us), dozen()] {
        let sent = written(&parcel(kept), true);
        let bytes = bytes_of(&sent);
        assert_eq!(around(&bytes), sent);
    }
    // All lengths, so that each way of ending is met.
    for length in 0..40 {
        let name = "x".repeat(length);
        let mut kept = Kept::default();
        kept.put(facts::BIKE_NAME.id(), Entry::new(name.as_str(), 0));
        let sent = written(&parcel(kept.clone()), true);
        assert_eq!(around(&bytes_of(&sent)), sent);
        assert_eq!(link::read(&sent).unwrap().kept.bike.entries.len(), usize::from(length > 0));
    }
}

/// A newer page's facts, groups and choices come through a page that does not know them.
#[test]
fn what_is_not_known_is_passed_on() {
    let wire = Wire::made()
        .whole(0)
        .whole(9)
        .head(2, 4) // 2: words
        .text("a note")
        .head(1, 5) // 3: a choice
        .whole(17)
        .head(1, 6) // 4: a day
        .signed(2509)
        .head(1, 1) // 5: a number
        .signed(-125)
        .whole(99)
        .head(10, 5) // 15, fuel supply: a choice that this page does not know
        .whole(9)
        .head(35, 5) // 50, chemistry
        .whole(255)
        .head(12, 5) // 62, where it stands
        .whole(40)
        .head(238, 7) // 300: words in a unit
        .whole(120)
        .text("3 or 4")
        .head(65235, 3) // 65535
        .signed(7)
        .signed(3)
        .whole(1)
        .whole(2)
        .whole(2)
        .head(70, 5) // a fastener's usual name that this page does not know
        .whole(99)
        .head(1, 0)
        .signed(25)
        .whole(1)
        .whole(4) // groups of unknown kinds, in their order
        .whole(1)
        .head(9, 5)
        .whole(3)
        .whole(77777)
        .whole(1)
        .head(10, 0)
        .signed(1)
        .whole(0);
    let read = link::read(&wire.fragment()).unwrap();
    assert_eq!(read.kept.bike.entries[&Id(15)], Entry::new("9", form::CHOICE));
    assert_eq!(read.kept.bike.others.len(), 2);
    assert_eq!(read.kept.bike.fasteners[0][&facts::TORQUE.id()].text, "25");
    let back = link::read(&written(&read, true)).unwrap();
    assert_eq!(back, read);
    let names_kept_back = written(&read, false);
    let again = link::read(&names_kept_back).unwrap();
    assert_eq!(again.kept.bike.fasteners, read.kept.bike.fasteners);
    // What can be said the same way is said the same way, byte for byte.
    let plain = Wire::made().whole(0).whole(2).head(3, 5).whole(17).head(12, 5).whole(9);
    let plain = plain.whole(2).whole(1).head(70, 5).whole(99).fragment();
    assert_eq!(written(&link::read(&plain).unwrap(), false), plain);
}

/// Names leave only when chosen; a usual name of a fastener is no secret and travels as its code.
#[test]
fn names_leave_only_when_chosen() {
    let mut kept = example(autumn(), UnitSet::Metric);
    kept.put(facts::WRENCH_NAME.id(), Entry::new("Grandfather’s", 0));
    kept.bike.fasteners = vec![
        entries(&[(facts::FASTENER_NAME.id(), "Header nut", 0)]),
        entries(&[(facts::FASTENER_NAME.id(), "Behind the sticker", 0)]),
    ];
    let found =
        |sent: &str, word: &str| bytes_of(sent).windows(word.len()).any(|it| it == word.as_bytes());
    let (bare, named) =
        (written(&parcel(kept.clone()), false), written(&parcel(kept.clone()), true));
    for word in ["Alder 640", "Grandfather’s", "Behind the sticker"] {
        assert!(!found(&bare, word), "{word}");
        assert!(found(&named, word), "{word}");
    }
    assert!(!found(&named, "Header nut"));
    let name = |sent: &str, at: usize| {
        let read = link::read(sent).unwrap();
        read.kept.bike.fasteners[at].get(&facts::FASTENER_NAME.id()).map(|it| it.text.clone())
    };
    assert_eq!(name(&bare, 0).as_deref(), Some("Header nut"));
    assert_eq!(name(&bare, 1), None);
    assert_eq!(name(&named, 1).as_deref(), Some("Behind the sticker"));
    // A day travels as a day and comes back as every reader takes it.
    kept.put(facts::PARK_DATE.id(), Entry::new("2026-11-14", 0));
    kept.put(facts::RIDE_DATE.id(), Entry::new("2027-03-28", 0));
    kept.put(facts::BRAKE_FLUID_CHANGED.id(), Entry::new("2025-10-04", 0));
    kept.put(facts::FORK_OIL_CHANGED.id(), Entry::new("2025-10-04", 0));
    assert_eq!(link::read(&named).unwrap().kept, kept);
}

/// The set is the reader's own, and when something was typed stays at home; all wrenches of the parcel go along.
#[test]
fn what_stays_at_home() {
    let mut kept = Kept::default();
    kept.put(facts::UNIT_SET.id(), Entry::new("us", 0));
    kept.put(facts::TANK_VOLUME.id(), Entry { edited: 1_795_000_000_000, ..Entry::new("15", 16) });
    kept.put(facts::FUEL_IN_TANK.id(), Entry::new("  ", 16));
    kept.garage.wrenches = vec![
        entries(&[(facts::HIGHEST_MARK.id(), "60", 1)]),
        entries(&[(facts::HIGHEST_MARK.id(), "200", 1)]),
    ];
    let back = there_and_back(kept);
    assert!(back.garage.entries.is_empty() && back.season.entries.is_empty());
    assert_eq!(back.bike.entries, entries(&[(facts::TANK_VOLUME.id(), "15", 16)]));
    let marks = ["60", "200"].map(|it| entries(&[(facts::HIGHEST_MARK.id(), it, 1)]));
    assert_eq!(back.garage.wrenches, marks);
}

/// Whatever is typed, the link that this page writes can be read by this page.
#[test]
fn no_entry_makes_a_link_unreadable() {
    for (id, text) in [
        // More places than the wire's numbers take: it goes as text.
        (facts::TANK_VOLUME.id(), "0.0000000000000000000000000000001"),
        (facts::TANK_VOLUME.id(), "9223372036854775807"),
        (facts::TANK_VOLUME.id(), "92233720368547758079"),
        (facts::TANK_VOLUME.id(), "-0"),
        (facts::TANK_VOLUME.id(), "007"),
        (facts::PARK_DATE.id(), "9999-99-99"),
        (facts::CHEMISTRY.id(), "???"),
        (Id(900), "0.000000000000000000000000000001"),
    ] {
        let mut kept = Kept::default();
        kept.put(id, Entry::new(text, 16));
        let back = there_and_back(kept.clone());
        assert_eq!(facts::Facts::entry(&back, id).text, text);
    }
    // Twelve temperatures out of a spreadsheet come with tabs and line ends.
    let mut kept = Kept::default();
    kept.put(facts::MONTHLY_MEANS.id(), Entry::new("1\t2\r\n3", 64));
    kept.put(facts::BIKE_NAME.id(), Entry::new("Al\u{202e}der\u{feff}", 0));
    let back = there_and_back(kept);
    let text = |id| facts::Facts::entry(&back, id).text;
    assert_eq!(text(facts::MONTHLY_MEANS.id()), "1 2  3");
    assert_eq!(text(facts::BIKE_NAME.id()), "Alder");
    // Longer than any entry is taken: it stays at home, the rest goes.
    let mut kept = Kept::default();
    kept.put(facts::BIKE_NAME.id(), Entry::new("x".repeat(torpor::entry::LONGEST + 1), 0));
    kept.put(facts::TANK_VOLUME.id(), Entry::new("15", 16));
    let back = there_and_back(kept);
    assert_eq!(back.bike.entries, entries(&[(facts::TANK_VOLUME.id(), "15", 16)]));
}

/// What is more than a link's reader takes makes no link, and says so; one less is a link.
#[test]
fn no_link_is_too_long_to_be_read() {
    let fasteners = |count: usize| {
        let mut kept = Kept::default();
        kept.bike.fasteners = vec![entries(&[(facts::TORQUE.id(), "25", 1)]); count];
        link::written(&parcel(kept), true)
    };
    assert!(fasteners(400).is_some_and(|it| read_fasteners(&it) == 400));
    assert_eq!(fasteners(401), None);
    let facts = |count: u16| {
        let mut kept = Kept::default();
        kept.bike.entries = (0..count).map(|it| (Id(1000 + it), Entry::new("7", 0))).collect();
        link::written(&parcel(kept), true)
    };
    assert!(facts(400).is_some());
    assert_eq!(facts(401), None);
    let names = |count: usize| {
        let mut kept = Kept::default();
        let name = "x".repeat(torpor::entry::LONGEST);
        kept.bike.fasteners = vec![entries(&[(facts::FASTENER_NAME.id(), &name, 0)]); count];
        (link::written(&parcel(kept.clone()), true), link::written(&parcel(kept), false))
    };
    assert!(names(30).0.is_some_and(|it| it.len() <= link::LONGEST));
    let (with, without) = names(31);
    assert_eq!(with, None);
    assert!(without.is_some(), "the names were too much");
}

fn read_fasteners(fragment: &str) -> usize {
    link::read(fragment).unwrap().kept.bike.fasteners.len()
}

/// A text that this page does not know may be a name or a note: it leaves only with names. Numbers and codes go along.
#[test]
fn unknown_texts_leave_only_with_names() {
    let list: &[(Id, &str, u8)] = &[
        (Id(2), "a note", 0),
        (Id(3), "17", form::CHOICE),
        (Id(4), "2026-11-14", form::DAY),
        (Id(5), "7.5", 99),
        (Id(300), "behind the sticker", 120),
    ];
    let mut kept = Kept::default();
    kept.bike.entries = entries(list);
    kept.bike.others = vec![(9, entries(list))];
    let read = |names| link::read(&written(&parcel(kept.clone()), names)).unwrap().kept.bike;
    assert_eq!(read(true), kept.bike);
    let bare = read(false);
    assert_eq!(bare.entries, entries(&list[1..4]));
    assert_eq!(bare.others, [(9, entries(&list[1..4]))]);
}

/// Text without hidden characters and without spaces at its ends, which no entry keeps.
fn text() -> impl Strategy<Value = String> {
    let odd = prop_oneof![
        "[ -~]{0,60}",
        "-?[0-9]{1,20}([.,][0-9]{1,20})?",
        "[0-9]{4}-[0-9]{2}-[0-9]{2}",
        "[a-z_]{1,12}",
        "[-0-9 –.()]{1,60}",
        "[ -~äéß漢–½·°±]{0,60}"
    ];
    odd.prop_map(|it| it.trim().to_owned())
        .prop_filter("a blank stays at home", |it| !it.is_empty())
}

fn list(ids: Vec<u16>) -> impl Strategy<Value = Entries> {
    proptest::collection::btree_map(
        proptest::sample::select(ids).prop_map(Id),
        (text(), any::<u8>()).prop_map(|(text, unit)| Entry::new(text, unit)),
        1..12,
    )
    .prop_map(|it| it.into_iter().collect())
}

fn any_kept() -> impl Strategy<Value = Kept> {
    let home = |home| -> Vec<u16> {
        // These stay at home.
        let stay = [facts::UNIT_SET.id(), facts::FROM_LINK.id()];
        let of_it = |it: &&&facts::About| it.home == home && !stay.contains(&it.id);
        facts::TABLE.iter().filter(of_it).map(|it| it.id.0).collect()
    };
    use facts::Home::*;
    let mut bike = home(Bike);
    bike.extend([2, 29, 119, 300, 65535]);
    let fastener = || list(home(Fastener));
    (
        list(bike),
        list(home(Season)),
        list(home(Garage)),
        proptest::collection::vec(list(home(Wrench)), 1..4),
        proptest::collection::vec(fastener(), 0..4),
        fastener(),
        proptest::collection::vec((4u64.., list(vec![1, 2, 71, 400])), 0..3),
    )
        .prop_map(|(bike, season, garage, wrenches, fasteners, scratch, others)| {
            let mut kept = Kept::default();
            kept.bike.entries = bike;
            kept.season.entries = season;
            kept.garage.entries = garage;
            kept.garage.wrenches = wrenches;
            kept.bike.fasteners = fasteners;
            kept.bike.scratch = scratch;
            kept.bike.others = others;
            kept
        })
}

/// The entry as the link says it: days and choices in the one way that they are stored.
fn settled(kept: &Kept) -> Kept {
    let mut kept = kept.clone();
    let settle = |entries: &mut Entries| {
        for id in entries.keys().copied().collect::<Vec<_>>() {
            let entry = entries.at(id);
            let day = torpor::entry::day(entry).ok().flatten();
            match facts::about(id).map(|it| &it.kind) {
                Some(facts::Kind::Day) => {
                    if let Some(day) = day {
                        *entry = Entry::new(torpor::entry::day_written(day), 0);
                    }
                }
                Some(facts::Kind::Choice(all)) => {
                    let typed = entry.clone();
                    let named = all.iter().find(|it| match typed.unit {
                        form::CHOICE => typed.text.parse() == Ok(it.code) || it.key == typed.text,
                        _ => it.key == typed.text,
                    });
                    if let Some(it) = named {
                        *entry = Entry::new(it.key, 0);
                    }
                }
                // Every binary digit of a number is one of those that are known.
                Some(facts::Kind::Several(all)) => {
                    // Numbers behind each other say together what each of them says.
                    let known =
                        |word: &str| word.parse().ok().filter(|it: &u64| *it < 1 << all.len());
                    let numbers: Option<Vec<u64>> =
                        entry.text.split_whitespace().map(known).collect();
                    let number = numbers.unwrap_or_default().iter().fold(0, |all, it| all | it);
                    if number > 0 {
                        let keys: Vec<_> = all
                            .iter()
                            .filter(|it| number >> (it.code - 1) & 1 == 1)
                            .map(|it| it.key)
                            .collect();
                        *entry = Entry::new(keys.join(" "), 0);
                    }
                }
                // A code stands for a usual name.
                Some(facts::Kind::Text)
                    if id == facts::FASTENER_NAME.id() && entry.unit == form::CHOICE =>
                {
                    let name = entry.text.parse().ok().and_then(torpor::words::fasteners::name);
                    if let Some(name) = name {
                        *entry = Entry::new(name, 0);
                    }
                }
                None if entry.unit == form::DAY => {
                    if let Some(day) = day {
                        entry.text = torpor::entry::day_written(day);
                    }
                }
                _ => {}
            }
        }
    };
    settle(&mut kept.bike.entries);
    settle(&mut kept.season.entries);
    settle(&mut kept.garage.entries);
    kept.garage.wrenches.iter_mut().for_each(settle);
    kept.bike.fasteners.iter_mut().for_each(settle);
    settle(&mut kept.bike.scratch);
    kept.bike.others.iter_mut().for_each(|(_, it)| settle(it));
    kept
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_kept_comes_back(kept in any_kept()) {
        let sent = link::written(&parcel(kept.clone()), true);
        prop_assume!(sent.is_some());
        let sent = sent.unwrap();
        let read = link::read(&sent).unwrap();
        prop_assert_eq!(&read.kept, &settled(&kept));
        // A second time nothing changes at all.
        prop_assert_eq!(&written(&read, true), &sent);
        // The checksum and the text are what other hands make of the same bytes.
        prop_assert_eq!(around(&bytes_of(&sent)), sent);
    }
}

/// By hand: what a fastener wants travels as one number, code 1 its last binary digit: 1 + 4 + 8 = 13 of 63.
#[test]
fn several_choices_travel_as_one_number() {
    let mut kept = Kept::default();
    let mind = facts::MIND.id();
    kept.put(mind, Entry::new("new_washer cold_only cotter_pin", 0));
    let read = link::read(&written(&parcel(kept.clone()), false)).unwrap();
    let keys = "cold_only cotter_pin new_washer";
    assert_eq!(read.kept.bike.scratch[&mind], Entry::new(keys, 0));
    let as_number = Kept {
        bike: Bike { scratch: [(mind, Entry::new("13", 0))].into(), ..Bike::default() },
        ..Kept::default()
    };
    assert_eq!(
        bytes_of(&written(&parcel(kept), false)),
        bytes_of(&written(&parcel(as_number), false))
    );
    // One of a newer page's travels as it is written, and comes back.
    let mut newer = Kept::default();
    newer.put(mind, Entry::new("cold_only warm_hands", 0));
    let read = link::read(&written(&parcel(newer.clone()), false)).unwrap();
    assert_eq!(read.kept, newer);
}

/// The manual's general table is typed in lines; a link has none, and reads the same.
#[test]
fn a_general_table_travels_whole() {
    let mut kept = Kept::default();
    let table = Entry::new("M6 10 N·m\nM8 20–25 N·m", 1);
    kept.bike.entries.insert(facts::GENERAL_TORQUES.id(), table);
    let read = there_and_back(kept.clone());
    assert_eq!(
        facts::GENERAL_TORQUES.maybe(&read.bike.entries),
        facts::GENERAL_TORQUES.maybe(&kept.bike.entries)
    );
    assert_eq!(facts::GENERAL_TORQUES.maybe(&read.bike.entries).unwrap().unwrap().len(), 2);
}
