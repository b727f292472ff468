//! What two tabs made of one bike, merged against what both began with: nothing that either typed goes unseen.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use proptest::prelude::*;
use torpor::entry::Entry;
use torpor::facts::{self, Facts, Id};
use torpor::garage::{Entries, Kept, NOWHERE, Twice, places};

fn entry(text: &str, edited: u64) -> Entry {
    Entry { text: text.into(), unit: 0, edited }
}

fn put(kept: &mut Kept, id: Id, text: &str, edited: u64) {
    kept.put(id, entry(text, edited));
}

fn base() -> Kept {
    let mut kept = Kept::default();
    put(&mut kept, facts::TANK_VOLUME.id(), "15", 1);
    put(&mut kept, facts::FUEL_IN_TANK.id(), "4", 2);
    put(&mut kept, facts::LAY_UP_DONE.id(), "wash chain", 3);
    put(&mut kept, facts::OWN_LAY_UP.id(), "Camera off; Grease the stand", 4);
    kept.bike.fasteners = ["Axle nut", "Drain plug", "Header nut"].map(nut).into();
    kept
}

fn nut(name: &str) -> Entries {
    let edited = name.bytes().fold(7, |sum, it| sum * 31 % 9973 + u64::from(it));
    [
        (facts::FASTENER_NAME.id(), entry(name, edited)),
        (facts::TORQUE.id(), entry("20", edited + 20_000)),
    ]
    .into()
}

fn with_torque(name: &str, torque: &str) -> Entries {
    let mut own = nut(name);
    own.insert(facts::TORQUE.id(), entry(torque, 99));
    own
}

fn text(kept: &Kept, id: Id) -> String {
    kept.entry(id).text
}

#[test]
fn each_fact_is_taken_from_the_tab_that_changed_it() {
    let (mut mine, mut theirs) = (base(), base());
    put(&mut mine, facts::TANK_VOLUME.id(), "16", 20);
    put(&mut theirs, facts::FUEL_IN_TANK.id(), "", 5);
    let (merged, twice) = Kept::merged(&base(), &mine, &theirs);
    assert_eq!(text(&merged, facts::TANK_VOLUME.id()), "16");
    assert_eq!(text(&merged, facts::FUEL_IN_TANK.id()), "", "emptied is a change");
    assert_eq!(twice, []);
}

/// However the clocks stand.
#[test]
fn only_a_fact_that_both_changed_is_asked() {
    for edited in [0, 5, 500] {
        let (mut mine, mut theirs) = (base(), base());
        put(&mut mine, facts::TANK_VOLUME.id(), "16", 100);
        put(&mut mine, facts::FUEL_IN_TANK.id(), "5", 100);
        put(&mut theirs, facts::TANK_VOLUME.id(), "17", edited);
        put(&mut theirs, facts::FUEL_IN_TANK.id(), "5", edited);
        let (merged, twice) = Kept::merged(&base(), &mine, &theirs);
        assert_eq!(text(&merged, facts::TANK_VOLUME.id()), "16", "mine until it is answered");
        let theirs = entry("17", edited);
        assert_eq!(twice, [Twice { id: facts::TANK_VOLUME.id(), item: None, theirs }]);
    }
}

#[test]
fn of_ticks_and_titles_each_is_taken() {
    let (mut mine, mut theirs) = (base(), base());
    put(&mut mine, facts::LAY_UP_DONE.id(), "wash chain cover", 20);
    put(&mut theirs, facts::LAY_UP_DONE.id(), "chain battery", 21);
    put(&mut mine, facts::OWN_LAY_UP.id(), "Camera off; Grease the stand; Lock", 20);
    put(&mut theirs, facts::OWN_LAY_UP.id(), "Bag on; Grease the stand", 21);
    let (merged, twice) = Kept::merged(&base(), &mine, &theirs);
    assert_eq!(text(&merged, facts::LAY_UP_DONE.id()), "chain battery cover");
    assert_eq!(text(&merged, facts::OWN_LAY_UP.id()), "Bag on; Grease the stand; Lock");
    assert_eq!(twice, []);
}

#[test]
fn fasteners_that_are_changed_added_moved_and_taken_out() {
    let (mut mine, mut theirs) = (base(), base());
    // Moved, one changed, one added; there one changed, one taken out, one added, and one that both added.
    mine.bike.fasteners = vec![
        nut("Header nut"),
        with_torque("Axle nut", "90"),
        nut("Drain plug"),
        nut("Bolt"),
        nut("Lever pivot"),
    ];
    theirs.bike.fasteners =
        vec![nut("Axle nut"), with_torque("Header nut", "25"), nut("Pinch bolt"), nut("Bolt")];
    let (merged, twice) = Kept::merged(&base(), &mine, &theirs);
    let want = [
        with_torque("Header nut", "25"),
        with_torque("Axle nut", "90"),
        nut("Bolt"),
        nut("Lever pivot"),
        nut("Pinch bolt"),
    ];
    assert_eq!(merged.bike.fasteners, want);
    assert_eq!(twice, []);
}

#[test]
fn a_fastener_that_one_changed_and_the_other_took_out_stays() {
    let (mut mine, mut theirs) = (base(), base());
    mine.bike.fasteners[1] = with_torque("Drain plug", "30");
    theirs.bike.fasteners.remove(1);
    let stays = |one: &Kept, other: &Kept| {
        let (merged, _) = Kept::merged(&base(), one, other);
        merged.bike.fasteners.contains(&with_torque("Drain plug", "30"))
    };
    assert!(stays(&mine, &theirs) && stays(&theirs, &mine));
}

#[test]
fn a_fact_of_one_fastener_is_asked_of_that_one() {
    let (mut mine, mut theirs) = (base(), base());
    mine.bike.fasteners = vec![nut("Header nut"), with_torque("Axle nut", "90")];
    theirs.bike.fasteners[0] = with_torque("Axle nut", "95");
    let (merged, twice) = Kept::merged(&base(), &mine, &theirs);
    assert_eq!((twice[0].id, twice[0].item), (facts::TORQUE.id(), Some(1)));
    assert_eq!(twice[0].theirs.text, "95");
    assert_eq!(merged.bike.fasteners[1], with_torque("Axle nut", "90"));
}

#[test]
fn what_it_was_is_found_by_what_it_has_in_common() {
    let before = [nut("Axle nut"), nut("Drain plug"), nut("Header nut")];
    let now = [with_torque("Header nut", "25"), nut("Axle nut"), nut("Lever pivot and stay")];
    assert_eq!(places(&now, &before), [2, 0, NOWHERE]);
}

/// A drain plug stood where the axle had stood, and took the torque that was typed for the axle.
#[test]
fn a_bolt_that_another_took_the_place_of_keeps_its_torque() {
    let (mut was, mut mine, mut theirs) = (Kept::default(), Kept::default(), Kept::default());
    was.bike.fasteners = vec![nut("Rear axle")];
    mine.bike.fasteners = vec![with_torque("Rear axle", "110")];
    theirs.bike.fasteners = vec![nut("Oil drain plug")];
    let want = [with_torque("Rear axle", "110"), nut("Oil drain plug")];
    let (merged, twice) = Kept::merged(&was, &mine, &theirs);
    assert_eq!((merged.bike.fasteners, twice), (want.to_vec(), vec![]));
    // Though both came out of one table, with one time on all they say.
    for kept in [&mut was, &mut mine, &mut theirs] {
        kept.bike.fasteners[0].insert(facts::ADAPTER.id(), entry("none", 6));
    }
    let want = [mine.bike.fasteners[0].clone(), theirs.bike.fasteners[0].clone()];
    let (merged, twice) = Kept::merged(&was, &mine, &theirs);
    assert_eq!((merged.bike.fasteners, twice), (want.to_vec(), vec![]));
}

#[test]
fn wrenches_keep_their_figures_as_bolts_do() {
    let wrench = |name: &str, length: &str, edited| {
        let name = (facts::WRENCH_NAME.id(), entry(name, edited));
        Entries::from([name, (facts::WRENCH_LENGTH.id(), entry(length, edited + 100))])
    };
    let with = |wrench: &Entries| {
        let mut kept = Kept::default();
        kept.garage.wrenches = vec![wrench.clone()];
        kept
    };
    let [was, mut mine, theirs] = [("Long", 400, 1), ("Long", 400, 1), ("Short", 200, 2)]
        .map(|(name, length, edited)| wrench(name, &length.to_string(), edited));
    mine.insert(facts::WRENCH_LENGTH.id(), entry("410", 9));
    let (merged, _) = Kept::merged(&with(&was), &with(&mine), &with(&theirs));
    assert_eq!(merged.garage.wrenches, [mine, theirs]);
    // One that nobody named is the one that stands in its place, and is asked.
    let [was, mine, theirs] = [("400", 1), ("410", 2), ("420", 3)]
        .map(|(text, edited)| Entries::from([(facts::WRENCH_LENGTH.id(), entry(text, edited))]));
    let (merged, twice) = Kept::merged(&with(&was), &with(&mine), &with(&theirs));
    assert_eq!((merged.garage.wrenches, &twice[0].theirs.text[..]), (vec![mine], "420"));
}

#[test]
fn a_torque_is_never_joined_to_a_name_that_the_other_tab_gave() {
    let mut renamed = nut("Drain plug");
    renamed.insert(facts::FASTENER_NAME.id(), entry("Rear axle", 50_000));
    let with = |one: &Entries| {
        let mut kept = base();
        kept.bike.fasteners[1] = one.clone();
        kept
    };
    let changed = with_torque("Drain plug", "24");
    for [mine, theirs] in [[&renamed, &changed], [&changed, &renamed]] {
        let (merged, twice) = Kept::merged(&base(), &with(mine), &with(theirs));
        let want = [&nut("Axle nut"), mine, theirs, &nut("Header nut")].map(Clone::clone);
        assert_eq!((merged.bike.fasteners, twice), (want.to_vec(), vec![]));
    }
    // One that had no name yet is none of another's figures either.
    let [mut was, mut named, mut changed] = [nut(""), nut("Rear axle"), with_torque("", "24")];
    for it in [&mut was, &mut changed] {
        it.remove(&facts::FASTENER_NAME.id());
    }
    named.insert(facts::TORQUE.id(), was[&facts::TORQUE.id()].clone());
    for [mine, theirs] in [[&named, &changed], [&changed, &named]] {
        let (merged, _) = Kept::merged(&with(&was), &with(mine), &with(theirs));
        assert_eq!(merged.bike.fasteners[1..3], [mine.clone(), theirs.clone()]);
    }
    // It keeps its place where the other tab changed nothing of it.
    let mut other = base();
    other.bike.fasteners[2] = with_torque("Header nut", "25");
    for [mine, theirs] in [[&with(&renamed), &other], [&other, &with(&renamed)]] {
        let (merged, twice) = Kept::merged(&base(), mine, theirs);
        let want = [nut("Axle nut"), renamed.clone(), with_torque("Header nut", "25")];
        assert_eq!((merged.bike.fasteners, twice), (want.to_vec(), vec![]));
    }
}

/// Each tab has its own in the blanks of one more fastener.
#[test]
fn an_open_fastener_takes_no_figure_of_another_unasked() {
    let open = |own: &Entries| {
        let mut kept = base();
        kept.bike.scratch = own.clone();
        kept
    };
    let mine = Entries::from([(facts::FASTENER_NAME.id(), entry("Rear axle", 30))]);
    let torque = Entries::from([(facts::TORQUE.id(), entry("24", 31))]);
    for theirs in [torque, with_torque("Oil drain plug", "24")] {
        for [one, other] in [[&mine, &theirs], [&theirs, &mine]] {
            let (merged, twice) = Kept::merged(&base(), &open(one), &open(other));
            assert_eq!(&merged.bike.scratch, one);
            let asked: Vec<Id> = twice.iter().map(|it| it.id).collect();
            assert_eq!(asked, other.keys().copied().collect::<Vec<_>>());
        }
        // One that the other tab has kept meanwhile leaves its name to what is still changed here.
        let (merged, twice) =
            Kept::merged(&open(&theirs), &open(&with_torque("Stay", "9")), &base());
        assert_eq!((merged.bike.scratch, twice), (with_torque("Stay", "9"), vec![]));
    }
}

const IDS: [Id; 3] =
    [facts::TANK_VOLUME.id(), facts::FUEL_IN_TANK.id(), facts::STABILIZER_LABEL.id()];

fn kept() -> impl Strategy<Value = Kept> {
    let texts = proptest::collection::vec((0..3usize, 0..4u8), 0..5);
    let nuts = proptest::collection::vec((0..5usize, 0..3u8), 0..5);
    (texts, nuts).prop_map(move |(texts, nuts)| {
        let mut kept = Kept::default();
        for (at, text) in texts {
            // Nothing is what was emptied by hand.
            let typed = if text == 0 { String::new() } else { text.to_string() };
            put(&mut kept, IDS[at], &typed, u64::from(text) + 1);
        }
        const NAMES: [&str; 5] = ["A", "Bo", "Cap", "Dowel", "Eye nut"];
        let mut nuts = nuts;
        let mut seen = Vec::new();
        nuts.retain(|it| {
            !seen.contains(&it.0) && {
                seen.push(it.0);
                true
            }
        });
        kept.bike.fasteners = nuts
            .into_iter()
            .map(|(name, torque)| with_torque(NAMES[name], &torque.to_string()))
            .collect();
        kept
    })
}

proptest! {
    /// Whoever changed nothing takes all of the other's, what only one changed or emptied is so, and what only one has is nobody's
    /// loss.
    #[test]
    fn nobody_loses(base in kept(), mine in kept(), theirs in kept()) {
        prop_assert_eq!(Kept::merged(&base, &base, &theirs), (theirs.clone(), vec![]));
        let (merged, twice) = Kept::merged(&base, &mine, &theirs);
        for id in IDS {
            let [was, now, other] = [&base, &mine, &theirs].map(|it| text(it, id));
            // What was never typed on my page, or let go there, is not what its owner emptied.
            let typed = mine.entry(id) != Entry::default();
            let want = if typed && now != was || !typed && other == was { &now } else { &other };
            prop_assert_eq!(&text(&merged, id), want);
            let asked = twice.iter().any(|it| it.id == id && it.item.is_none());
            prop_assert_eq!(asked, typed && now != was && other != was && now != other);
        }
        for own in mine.bike.fasteners.iter().chain(&theirs.bike.fasteners) {
            let name = own.get(&facts::FASTENER_NAME.id()).unwrap();
            // Under a name of its own; another name may have been given to it.
            if !base.bike.fasteners.iter().any(|it| it.values().any(|it| it == name)) {
                let there = merged.bike.fasteners.iter().any(|it| it.values().any(|it| it == name));
                let asked = twice.iter().any(|it| it.theirs == *name);
                prop_assert!(there || asked, "{name:?}");
            }
        }
    }
}
