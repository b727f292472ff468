//! A link beside the bike that is kept here: what differs, what is refused, and what comes of taking it over.

use super::*;
use torpor::garage::Bike;
use torpor::storage::compare::{Row, compared, taken_over};
use torpor::storage::link::made;

fn n_m() -> u8 {
    torpor::units::NEWTON_METER.code
}

fn fastener(name: &str, torque: &str) -> Entries {
    let mut all = entries(&[(facts::TORQUE.id(), torque, n_m())]);
    if !name.is_empty() {
        all.insert(facts::FASTENER_NAME.id(), Entry::new(name, 0));
    }
    all
}

fn bike(facts: &[(Id, &str, u8)], fasteners: &[Entries]) -> Kept {
    let mut kept = Kept::default();
    for (id, entry) in entries(facts) {
        kept.put(id, entry);
    }
    kept.bike.fasteners = fasteners.to_vec();
    kept
}

#[track_caller]
fn row<'a>(rows: &'a [Row], label: &str) -> &'a Row {
    let mut found = rows.iter().filter(|it| it.label == label);
    let row = found.next().unwrap_or_else(|| panic!("no {label} in {rows:#?}"));
    assert!(found.next().is_none(), "{label} is there twice");
    row
}

#[track_caller]
fn says(rows: &[Row], label: &str, here: &str, there: &str) {
    let row = row(rows, label);
    assert_eq!((row.here.as_str(), row.there.as_str()), (here, there), "{label}");
}

/// A bike sent and read again differs in nothing, however its owner wrote it.
#[test]
fn a_bikes_own_link_differs_in_nothing() {
    let mut own = dozen();
    own.put(facts::PARK_DATE.id(), Entry::new("14 November 2026", 0));
    own.put(facts::GENERAL_TORQUES.id(), Entry::new("M6 10 N·m\nM8 20–25 N·m", n_m()));
    own.put(facts::LAY_UP_DONE.id(), Entry::new("wash fuel coolant", 0));
    own.put(facts::TANK_VOLUME.id(), Entry::new(" 16.0 ", torpor::units::LITER.code));
    own.bike.fasteners.push(fastener("Behind the sticker", "9 N·m"));
    let sent = link::read(&written(&parcel(own.clone()), true)).unwrap();
    let rows = compared(&own, &sent.kept);
    assert!(rows.len() > 60);
    for row in &rows {
        assert_eq!(row.here, row.there, "{}", row.label);
        assert_eq!(row.refused, None, "{}", row.label);
    }
    let taken = taken_over(&own, &sent.kept, 7);
    assert!(compared(&taken, &sent.kept).iter().all(|it| it.here == it.there));
    assert_eq!(taken.bike.fasteners.len(), own.bike.fasteners.len());
}

/// By hand: each side as a person reads it.
#[test]
fn what_differs_is_said_as_it_is_read() {
    let liter = torpor::units::LITER.code;
    let here = bike(
        &[
            (facts::TANK_VOLUME.id(), "16", liter),
            (facts::FUEL_SUPPLY.id(), "injection", 0),
            (facts::WHERE_THINGS_LIE.id(), "keys on the hook", 0),
            (facts::STABILIZER_LABEL.id(), "1:320", liter),
            (facts::BIKE_KEY.id(), "17", 0),
        ],
        &[],
    );
    let there = bike(
        &[
            (facts::TANK_VOLUME.id(), "16.5", liter),
            (facts::FUEL_SUPPLY.id(), "injection", 0),
            (facts::PARK_DATE.id(), "2026-11-14", 0),
            (facts::STABILIZER_LABEL.id(), "1:400", liter),
            (facts::BIKE_KEY.id(), "18", 0),
        ],
        &[],
    );
    let rows = compared(&here, &there);
    says(&rows, "Tank volume", "16 L", "16.5 L");
    says(&rows, "Fuel supply", "injection", "injection");
    says(&rows, "Where things lie", "keys on the hook", "");
    says(&rows, "Park date", "", "Sat, Nov 14 2026");
    assert!(row(&rows, "Stabilizer label").garage);
    assert_eq!(rows.len(), 5, "the bike’s number is the page’s own");

    let taken = taken_over(&here, &there, 9);
    let text = |id: Id| torpor::facts::Facts::entry(&taken, id).text;
    assert_eq!(text(facts::TANK_VOLUME.id()), "16.5");
    assert_eq!(text(facts::PARK_DATE.id()), "2026-11-14");
    assert_eq!(
        text(facts::WHERE_THINGS_LIE.id()),
        "keys on the hook",
        "the link does not carry it"
    );
    assert_eq!(text(facts::STABILIZER_LABEL.id()), "1:320", "the shelf is all bikes'");
    assert_eq!(text(facts::BIKE_KEY.id()), "18", "from now on they are the same bike");
    assert_eq!(taken.bike.entries[&facts::TANK_VOLUME.id()].edited, 9);
}

/// What this browser did, a link does not undo: the archive, the season's first tick.
#[test]
fn what_the_page_made_stays() {
    let season = facts::SEASON_MARK.id();
    let here = bike(&[(season, "2026-11-14", 0)], &[]);
    let there = bike(&[(season, "2025-10-01", 0), (facts::ARCHIVED.id(), "2026-01-01", 0)], &[]);
    let taken = taken_over(&here, &there, 1);
    assert_eq!(taken, here);
    assert_eq!(compared(&here, &there), []);
}

/// Fasteners are the same by name, wherever they stand, where nothing else has that name; those without one by their figures alone.
#[test]
fn fasteners_by_name_then_by_figures() {
    let here = bike(
        &[(facts::BIKE_KEY.id(), "18", 0)],
        &[
            fastener("Axle nut", "100"),
            fastener("Behind the sticker", "9"),
            fastener("Drain plug", "25"),
            fastener("Drain plug", "26"),
        ],
    );
    let mut sent = bike(
        &[(facts::BIKE_KEY.id(), "18", 0)],
        &[
            fastener("Drain plug", "25"),
            fastener("", "10"),
            fastener("Axle nut", "98"),
            fastener("Drain plug", "27"),
            fastener("Header nut", "12"),
            fastener("", "9 N·m"),
        ],
    );
    let rows = compared(&here, &sent);
    says(&rows, "Axle nut: Torque at the fastener", "100 N·m", "98 N·m");
    says(&rows, "Behind the sticker: Torque at the fastener", "9 N·m", "9 N·m");
    says(&rows, "Fastener 5: Torque at the fastener", "", "10 N·m");
    says(&rows, "Header nut: Torque at the fastener", "", "12 N·m");
    let plugs: Vec<_> = rows
        .iter()
        .filter(|it| it.label == "Drain plug: Torque at the fastener")
        .map(|it| (it.here.as_str(), it.there.as_str()))
        .collect();
    assert_eq!(plugs, [("25 N·m", "25 N·m"), ("26 N·m", ""), ("", "27 N·m")]);

    let taken = taken_over(&here, &sent, 1).bike.fasteners;
    let told: Vec<_> = taken
        .iter()
        .map(|it| {
            let text = |id: Id| it.get(&id).map_or("", |it| it.text.as_str());
            (text(facts::FASTENER_NAME.id()), text(facts::TORQUE.id()))
        })
        .collect();
    let expected = [
        ("Axle nut", "98"),
        ("Behind the sticker", "9 N·m"),
        ("Drain plug", "25"),
        ("Drain plug", "26"),
        ("", "10"),
        ("Drain plug", "27"),
        ("Header nut", "12"),
    ];
    assert_eq!(told, expected, "names that did not travel stay, and so does the order");

    // Of another bike, or of one that may be another, a nameless fastener is never one that has a name here.
    sent.put(facts::BIKE_KEY.id(), Entry::new("19", 0));
    let rows = compared(&here, &sent);
    says(&rows, "Behind the sticker: Torque at the fastener", "9 N·m", "");
    let taken = taken_over(&here, &sent, 1).bike.fasteners;
    assert_eq!(taken[1], here.bike.fasteners[1]);
    assert_eq!(taken.len(), 8);
}

/// What a bolt is tightened with never comes from another one: not by place, not by a name that two have.
#[test]
fn no_torque_comes_to_another_fastener() {
    let one = [(facts::BIKE_KEY.id(), "18", 0)];
    let here = bike(
        &one,
        &[
            fastener("Left clamp scratch", "12"),
            fastener("Rear carrier upper", "44"),
            fastener("Rear carrier lower", "90"),
            fastener("", "10"),
        ],
    );
    // The same bike, its first one removed there, sent without names.
    let sent = bike(&one, &[fastener("", "44"), fastener("", "90"), fastener("", "25")]);
    // Another bike's.
    let other = bike(&[], &[fastener("", "25")]);
    // Two of a name, of which one was removed and the other corrected.
    let named =
        bike(&[], &[fastener("Rear carrier upper", "25"), fastener("Rear carrier upper", "9")]);
    for there in [&sent, &other, &named] {
        let taken = taken_over(&here, there, 1).bike.fasteners;
        assert_eq!(taken[..4].len(), 4);
        for (own, was) in taken.iter().zip(&here.bike.fasteners) {
            assert_eq!(own[&facts::TORQUE.id()].text, was[&facts::TORQUE.id()].text);
        }
        for row in compared(&here, there) {
            assert!(
                row.here.is_empty() || row.there.is_empty() || row.here == row.there,
                "{row:?}"
            );
        }
    }
    assert_eq!(taken_over(&here, &sent, 1).bike.fasteners.len(), 5, "25 N·m is a new one");
}

/// One amount in one unit is no difference, however it is spelled; a range or another unit is.
#[test]
fn another_spelling_is_no_difference() {
    let with = |torque: &str| bike(&[], &[fastener("Axle nut", torque)]);
    let differs = |one: &str, other: &str| {
        let rows = compared(&with(one), &with(other));
        let row = row(&rows, "Axle nut: Torque at the fastener").clone();
        row.here != row.there
    };
    assert!(!differs("18 lbf·ft", "18 ft-lb"));
    assert!(!differs("25", "25,0 Nm"));
    assert!(differs("18 ft-lb", "18"));
    assert!(differs("25 (22–26)", "25"));
    assert!(differs("about 25", "25"));
}

/// Two open fasteners of different names are never mixed into one.
#[test]
fn open_fasteners_are_not_mixed() {
    let open = |name: &str, torque: &str| Kept {
        bike: Bike {
            entries: Entries::from([(facts::BIKE_KEY.id(), Entry::new("18", 0))]),
            scratch: fastener(name, torque),
            ..Bike::default()
        },
        ..Kept::default()
    };
    let other = taken_over(&open("Axle nut", "100"), &open("Header nut", "12"), 1).bike;
    assert_eq!(other.scratch, fastener("Axle nut", "100"));
    let texts = |it: &Entries| it.values().map(|it| it.text.clone()).collect::<Vec<_>>();
    assert_eq!(other.fasteners.iter().map(texts).collect::<Vec<_>>(), [["Header nut", "12"]]);
    let rows = compared(&open("Axle nut", "100"), &open("Header nut", "12"));
    says(&rows, "Header nut: Torque at the fastener", "", "12 N·m");
    says(&rows, "Torque at the fastener", "100 N·m", "");
    let same = taken_over(&open("Axle nut", "100"), &open("Axle nut", "98"), 1).bike;
    assert_eq!(same.scratch[&facts::TORQUE.id()].text, "98");
    assert_eq!(same.fasteners, []);
    // A usual name always travels: a fastener without one is not it.
    let nameless = taken_over(&open("Axle nut", "100"), &open("", "12"), 1).bike;
    assert_eq!(nameless.scratch, fastener("Axle nut", "100"));
    assert_eq!(nameless.fasteners.len(), 1);
    let own_words = taken_over(&open("The left one", "100"), &open("", "12"), 1).bike;
    assert_eq!(own_words.scratch, fastener("The left one", "100"));
    assert_eq!(own_words.fasteners.len(), 1);
    let agrees = taken_over(&open("The left one", "100"), &open("", "100 N·m"), 1).bike;
    assert_eq!(agrees.fasteners, []);
    assert_eq!(taken_over(&open("Axle nut", "100"), &Kept::default(), 1), open("Axle nut", "100"));
}

/// Limits: the table of facts. What no blank takes is said, and is never written over what is there.
#[test]
fn out_of_range_is_refused() {
    let liter = u64::from(torpor::units::LITER.code);
    let tank = |text: &str| Wire::made().whole(0).whole(1).head(10, 7).whole(liter).text(text);
    let here = bike(&[(facts::TANK_VOLUME.id(), "16", torpor::units::LITER.code)], &[]);
    // There is no way to say a number that is none, or is without end, but as a text; the greatest is 9 × 10³⁶.
    let number = |mantissa: i64, tens: i64| {
        Wire::made().whole(0).whole(1).head(10, 3).signed(mantissa).signed(tens).whole(liter)
    };
    let cases = [
        (number(9000, 0), "has to be"),
        (number(-1, 0), "has to be"),
        (number(0, 0), "has to be"),
        (number(i64::MAX, 18), "has to be"),
        (tank("1e999"), "e999"),
        (tank("NaN"), "NaN"),
        (tank("nan"), "nan"),
        (tank("inf"), "inf"),
        (tank("-inf"), "inf"),
        (tank("Infinity"), "Infinity"),
        (tank(&"9".repeat(400)), ""),
        (tank("15 V"), "V"),
    ];
    for (wire, why) in cases {
        let there = link::read(&wire.fragment()).unwrap().kept;
        let rows = compared(&here, &there);
        let row = row(&rows, "Tank volume");
        let refused = row.refused.as_deref().unwrap_or_else(|| panic!("{row:?} was taken"));
        assert!(refused.contains(why), "{row:?}");
        assert_eq!(taken_over(&here, &there, 1), here, "{row:?}");
    }
    let there = link::read(&number(9000, 0).fragment()).unwrap().kept;
    let rows = compared(&Kept::default(), &there);
    says(&rows, "Tank volume", "", "9000 L");
    let accepted = "has to be more than 0 L and at most 100 L";
    assert_eq!(row(&rows, "Tank volume").refused.as_deref(), Some(accepted));
}

/// ISO/IEC 18004: version 20-M takes 666 bytes. Sixty fasteners are more, whatever the address, and no link is made of them.
#[test]
fn a_link_never_is_longer_than_its_code() {
    let address = "a-page-of-its-own/";
    let whole = made(address, &parcel(dozen()), false).unwrap();
    assert!(whole.starts_with(address) && whole.len() <= 666, "{}", whole.len());
    let mut kept = Kept::default();
    let name = facts::BIKE_NAME.id();
    kept.put(name, Entry::new("x".repeat(400), 0));
    let length = made(address, &parcel(kept.clone()), true).unwrap().len();
    // The address may fill it to the last byte and no further.
    let longer = |by: usize| format!("{address}{}", "a".repeat(by));
    assert_eq!(made(&longer(666 - length), &parcel(kept.clone()), true).unwrap().len(), 666);
    assert_eq!(made(&longer(667 - length), &parcel(kept.clone()), true), None);
    assert!(
        made(&longer(667 - length), &parcel(kept), false).is_some(),
        "without its name it fits"
    );
    let mut sixty = dozen();
    let twelve = sixty.bike.fasteners.clone();
    for _ in 0..4 {
        sixty.bike.fasteners.extend(twelve.clone());
    }
    assert_eq!(sixty.bike.fasteners.len(), 60);
    assert_eq!(made("", &parcel(sixty), false), None);
}
