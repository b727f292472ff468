//! Frozen form: links that were given out are read for ever, and the same bike gives the same link for ever. Where a
//! test here fails, the form was changed: give the new one another number before the point, and keep reading this one.

use super::*;

/// Nothing but the day.
const BLANK: &str = "#1.sCcsCRYA";
/// The invented bike of 2026-11-25, metric, without its name, as it is now: with its fluids and tires.
const EXAMPLE_NOW: &str = "#1.sCcAKFAgEAgIEBcQHDMwIG1MIHBlciAxMCBMFQEIoAEREWBYZQIJPhAJOhARBhAwAhAIABBNAggUTAjIATkXSg5hYm91dCAxNponDq\
    YpDQIPQD-2q1oKahOhiiGiChWpo6swCC9ApQIBDQEIWjkIZDkJMBAQyAE5CTIhCTohDQEIGEAIDEAMCRUiDAkYIk0CDQYO7iAgEAAhCh\
    BO7iABBIgFugQoCAoBCHgBCAIBAwS1BAYPARUlriLCbw0CCFAoyRGEEg";
/// The invented bike as it was before it had them.
const EXAMPLE: &str = "#1.sCcAFVAgEAgIEBcQHDMwIG1MIHBlciAxMCBMFQEIoAEREWBYZQIJPhAJOhARBhAwAhAIABBNAggUTAjIATkXSg5hYm91dCAxNponDq\
    YpDQIPQD-2q1oKahOhiiGiChWpo6swCC9AAQSIBboEKAgKAQh4AQgCAQMEtQQGDwEVJa4iwm8NAghQKLH-rHs";
/// A bike with a dozen torques.
const DOZEN: &str = "#1.sCcAFVAgEAgIEBcQHDMwIG1MIHBlciAxMCBMFQEIoAEREWBYZQIJPhAJOhARBhAwAhAIABBNAggUTAjIATkXSg5hYm91dCAxNponDq\
    YpDQIPQD-2q1oKahOhiiGiChWpo6swCC9AAQSIBboEKAgKAQh4AQgCAQIDtQQXCMgBAQ0BAgO1BBgIggEBDQECA7UEAg8BCyLCYA0BAgO\
    1BAMIMgENAQIDtQQECd4CAQ0DAgO1BAUPARUSrhHBTw0BAgS1BAYPARUlriLCbw0CCFAoAgO1BAcIPAENAQIDtQQLDwELGMIgDQECBLUE\
    DQjSAQENBAhQKAIDtQQQCCwBDQECA7UEDg8BC4XJUA0B5--UeQ";

/// What [`EXAMPLE`] holds, by number, as typed, with the code of its unit.
const EXAMPLE_FACTS: &[(u16, &str, u8)] = &[
    (10, "16", 16),
    (11, "4", 16),
    (13, "30 mL per 10 L", 16),
    (15, "injection", 0),
    (16, "80", 17),
    (18, "4.8", 88),
    (30, "with_filter", 0),
    (31, "3.1", 16),
    (32, "2.9", 16),
    (34, "0.3", 16),
    (40, "1", 16),
    (41, "0", 16),
    (50, "agm", 0),
    (51, "10", 76),
    (52, "100", 57),
    (54, "about 1", 74),
    (60, "2026-11-14", 0),
    (61, "2027-03-28", 0),
    (62, "unheated", 0),
    (63, "-6 -5 0 6 13 18 21 20 15 9 3 -3", 64),
    (64, "-24", 64),
];
const EXAMPLE_WRENCH: &[(u16, &str, u8)] =
    &[(81, "285", 40), (82, "5", 1), (83, "60", 1), (84, "1", 1)];
const EXAMPLE_FASTENER: &[(u16, &str, u8)] =
    &[(70, "Header nut", 0), (71, "25 (22–26)", 1), (72, "in_line", 0), (73, "40", 40)];
const DOZEN_FASTENERS: &[&[(u16, &str, u8)]] = &[
    &[(70, "Rear axle nut", 0), (71, "100", 1), (72, "none", 0)],
    &[(70, "Front axle nut", 0), (71, "65", 1), (72, "none", 0)],
    &[(70, "Axle pinch bolt", 0), (71, "22–26", 1), (72, "none", 0)],
    &[(70, "Drain plug", 0), (71, "25", 1), (72, "none", 0)],
    &[(70, "Oil filter", 0), (71, "17.5", 1), (72, "right_angle", 0)],
    &[(70, "Spark plug", 0), (71, "12 (11–14)", 1), (72, "none", 0)],
    &[(70, "Header nut", 0), (71, "25 (22–26)", 1), (72, "in_line", 0), (73, "40", 40)],
    &[(70, "Caliper bolt", 0), (71, "30", 1), (72, "none", 0)],
    &[(70, "Triple clamp bolt", 0), (71, "18–22", 1), (72, "none", 0)],
    &[(70, "Steering stem nut", 0), (71, "105", 1), (72, "pointing_back", 0), (73, "40", 40)],
    &[(70, "Handlebar clamp bolt", 0), (71, "22", 1), (72, "none", 0)],
    &[(70, "Swingarm pivot nut", 0), (71, "85–95", 1), (72, "none", 0)],
];

fn group(list: &[(u16, &str, u8)]) -> Entries {
    list.iter().map(|(id, text, unit)| (Id(*id), Entry::new(*text, *unit))).collect()
}

/// The facts of a list, each put where it lives.
fn kept(facts: &[(u16, &str, u8)], wrench: &[(u16, &str, u8)]) -> Kept {
    let mut kept = Kept::default();
    for (id, entry) in group(facts) {
        kept.put(id, entry);
    }
    if !wrench.is_empty() {
        kept.garage.wrenches.push(group(wrench));
    }
    kept
}

#[track_caller]
fn frozen(golden: &str, expected: &Kept) {
    let read = link::read(golden).unwrap();
    assert_eq!(read.made, autumn());
    assert_eq!(&read.kept, expected);
    assert_eq!(written(&read, false), golden);
    assert_eq!(written(&read, true), golden);
}

/// Frozen form.
#[test]
fn blank() {
    frozen(BLANK, &Kept::default());
    assert_eq!(written(&parcel(Kept::default()), true), BLANK);
    assert_eq!(Wire::made().fragment(), BLANK, "as the form is described, by hand");
}

/// Frozen form.
#[test]
fn the_example() {
    let mut expected = kept(EXAMPLE_FACTS, EXAMPLE_WRENCH);
    expected.bike.scratch = group(EXAMPLE_FASTENER);
    frozen(EXAMPLE, &expected);
    let made = parcel(example(autumn(), UnitSet::Metric));
    assert_eq!(written(&made, false), EXAMPLE_NOW);
    let read = link::read(EXAMPLE_NOW).unwrap();
    assert_eq!(written(&read, true), EXAMPLE_NOW);
}

/// Frozen form.
#[test]
fn a_dozen_torques() {
    let mut expected = kept(EXAMPLE_FACTS, EXAMPLE_WRENCH);
    expected.bike.fasteners = DOZEN_FASTENERS.iter().map(|it| group(it)).collect();
    frozen(DOZEN, &expected);
}

/// Source: the form as its module describes it, each byte by hand; every tag and every kind of group.
#[test]
fn every_tag_by_hand() {
    let wire = Wire::made()
        // Facts: 10 of them.
        .whole(0)
        .whole(10)
        .head(1, 4) // 1, text
        .text("Alder")
        .head(9, 0) // 10: 16 L
        .signed(16)
        .whole(16)
        .head(5, 5) // 15: injection
        .whole(1)
        .head(3, 1) // 18: 4.8 L/100 km
        .signed(48)
        .whole(88)
        .head(13, 2) // 31: 3.05 L
        .signed(305)
        .whole(16)
        .head(1, 3) // 32: 2.875 L
        .signed(2875)
        .signed(-3)
        .whole(16)
        .head(28, 6) // 60: 2026-11-14, 11 days before the link was made
        .signed(2509)
        .head(4, 0) // 64: −24 °C
        .signed(-24)
        .whole(64)
        .head(36, 7) // 100, not known to this page: unit 99
        .whole(99)
        .text("7 of them")
        .head(1, 4) // 101, not known either: every sign that is packed
        .packed(16, &[0x01, 0x23, 0x45, 0x67, 0x89, 0xab, 0xcd, 0xef])
        // A wrench.
        .whole(1)
        .whole(1)
        .head(81, 0)
        .signed(285)
        .whole(40)
        // A fastener, and an empty one.
        .whole(2)
        .whole(2)
        .head(70, 5)
        .whole(6)
        .head(1, 7)
        .whole(1)
        .packed(5, &[0x22, 0xc2, 0x60])
        .whole(2)
        .whole(0)
        // The open fastener.
        .whole(3)
        .whole(1)
        .head(72, 5)
        .whole(2)
        // A group of a newer page.
        .whole(200)
        .whole(1)
        .head(300, 0)
        .signed(5)
        .whole(0);
    let facts: &[(u16, &str, u8)] = &[
        (1, "Alder", 0),
        (10, "16", 16),
        (15, "injection", 0),
        (18, "4.8", 88),
        (31, "3.05", 16),
        (32, "2.875", 16),
        (60, "2026-11-14", 0),
        (64, "-24", 64),
        (100, "7 of them", 99),
        (101, "0123456789 -–.()", 0),
    ];
    let mut expected = kept(facts, &[(81, "285", 40)]);
    expected.bike.fasteners = vec![group(&[(70, "Header nut", 0), (71, "22–26", 1)]), group(&[])];
    expected.bike.scratch = group(&[(72, "in_line", 0)]);
    expected.bike.others = vec![(200, group(&[(300, "5", 0)]))];
    let read = link::read(&wire.fragment()).unwrap();
    assert_eq!(read, parcel(expected));
    assert_eq!(written(&read, true), wire.fragment());
}

/// Aim: with an address of 40 characters before it, 412 characters, the bytes of QR version 15-M; 666, version 20-M, at
/// most. Source: ISO/IEC 18004, capacity in byte mode.
#[test]
fn a_dozen_torques_fit_a_code_on_paper() {
    let now = written(&parcel(dozen()), false);
    // The same with the number that tells it from others, the longest that the page draws.
    let mut numbered = link::read(DOZEN).unwrap();
    numbered.kept.put(facts::BIKE_KEY.id(), Entry::new("8191", 0));
    let numbered = written(&numbered, false).len();
    println!("the fragment of a dozen torques with its number {numbered}");
    assert!(numbered + 40 <= 412);
    let [example, older, dozen] = [EXAMPLE_NOW, DOZEN, &now].map(|it| it.len() + 40);
    println!("example {example}, a dozen torques {older}, with fluids and tires {dozen}");
    assert!(example <= 412);
    assert!(older <= 412);
    assert!(dozen <= 666);
}
