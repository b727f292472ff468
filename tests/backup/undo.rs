//! What takes a restore back: record by record, and within one fact by fact where something was changed since.

use super::samples::*;
use chrono::NaiveDate;
use torpor::facts;
use torpor::garage::{Bike, Entries, Season};
use torpor::storage::backup::{self, Found};
use torpor::storage::record;
use torpor::storage::restore::{self, Choice, Part, Write, part, renew};
use torpor::units;

/// A store, and what a restore wrote there.
fn restored(here: &Kept, file: &Kept) -> (Kept, Vec<Part>) {
    let (now, mut writes, mut changes) = (backup::found(here), Vec::new(), Vec::new());
    for it in backup::found(file) {
        changes.extend(part(&now, &it, u64::MAX).write(Choice::Take, &mut writes));
    }
    (written(here, writes), changes)
}

fn written(here: &Kept, writes: Vec<Write>) -> Kept {
    let mut all = here.clone();
    all.retain(|it| writes.iter().all(|new| new.0 != it.0));
    all.extend(writes.into_iter().filter_map(|(key, text)| Some((key, text?))));
    all.sort();
    all
}

/// What stands there once it was taken back, and what stayed.
fn back(here: &Kept, changes: &[Part]) -> (Kept, Vec<String>) {
    let (now, mut writes) = (backup::found(here), Vec::new());
    let stays = restore::back(changes, &now, &mut writes);
    (written(here, writes), stays)
}

fn held(kept: &Kept, key: &str) -> Bike {
    let all = backup::found(kept);
    all.into_iter().find(|it| it.key == key).unwrap().held
}

fn with_tank(text: &str) -> Bike {
    let mut bike = bike();
    bike.entries.insert(facts::TANK_VOLUME.id(), fact(text, units::LITER.code, 9));
    bike
}

fn of_bike(bike: &Bike, revision: u64) -> Kept {
    vec![("bike.a1".into(), record::written(bike, revision).unwrap())]
}

/// Of two logbook leaves, in the order in which a store happens to give them.
fn leaves(first: &[Entries], second: &[Entries]) -> Kept {
    [("log.a1.1", second), ("log.a1.0", first)]
        .map(|(key, all)| (key.into(), record::written(&all.to_vec(), 4).unwrap()))
        .into()
}

#[test]
fn the_way_back_is_a_later_write() {
    let (here, file) = (of_bike(&with_tank("17"), 5), of_bike(&with_tank("15"), 1));
    let (now, changes) = restored(&here, &file);
    let (undone, stays) = back(&now, &changes);
    assert_eq!(held(&undone, "bike.a1"), with_tank("17"));
    assert!(stays.is_empty());
    // Other tabs take what does not count higher for a write that crossed theirs.
    let counts = [&here, &now, &undone].map(|it| record::revision(&it[0].1));
    assert_eq!(counts, [Some(5), Some(6), Some(7)]);
}

#[test]
fn what_was_changed_since_stays_and_the_rest_goes_back() {
    let (here, file) = (of_bike(&with_tank("17"), 5), of_bike(&with_tank("15"), 1));
    let (_, changes) = restored(&here, &file);
    let mut since = with_tank("15");
    since.entries.insert(facts::LINE_VOLUME.id(), fact("80", units::MILLILITER.code, 10));
    since.fasteners.push(fastener("Drain plug", "30"));
    let (undone, stays) = back(&of_bike(&since, 8), &changes);
    since.entries.insert(facts::TANK_VOLUME.id(), fact("17", units::LITER.code, 9));
    assert_eq!(held(&undone, "bike.a1"), since);
    assert_eq!(record::revision(&undone[0].1), Some(9));
    assert!(stays.is_empty());
    // The very fact that was restored, too.
    let (undone, stays) = back(&of_bike(&with_tank("16"), 7), &changes);
    assert_eq!((held(&undone, "bike.a1"), stays.len()), (with_tank("16"), 1));
}

/// One bolt of the file stood where another had stood here, and was corrected.
#[test]
fn the_way_back_brings_no_torque_to_another_bolt() {
    let with = |fasteners: &[Entries]| Bike { fasteners: fasteners.to_vec(), ..bike() };
    let axle = fastener("Rear axle", "108");
    let mut plug = fastener("Oil drain plug", "24");
    let (here, file) = (with(std::slice::from_ref(&axle)), with(std::slice::from_ref(&plug)));
    let (_, changes) = restored(&of_bike(&here, 5), &of_bike(&file, 1));
    plug.insert(facts::TORQUE.id(), fact("25", units::NEWTON_METER.code, 9));
    let (undone, _) = back(&of_bike(&with(std::slice::from_ref(&plug)), 7), &changes);
    assert_eq!(held(&undone, "bike.a1").fasteners, [plug, axle]);
}

#[test]
fn entries_of_a_logbook_come_back_each_for_itself_and_leaves_go_again() {
    let [wash, cover, chain, rest] =
        ["Wash and dry", "Cover", "Chain", "Rest"].map(|it| entry("2026-11-14", it));
    let here = leaves(&[wash.clone(), cover.clone()], std::slice::from_ref(&rest));
    let mut file = here.clone();
    file.remove(0);
    file[0].1 = record::written(&vec![wash.clone()], 1).unwrap();
    let (now, changes) = restored(&here, &file);
    assert_eq!(held(&now, "log.a1").others, [(0, wash.clone())]);
    // As it was restored.
    let (undone, _) = back(&now, &changes);
    let sorted = |kept: &Kept| {
        let mut all: Vec<_> = held(kept, "log.a1").others;
        all.sort_by_key(|it| (it.0, it.1[&facts::LOG_LINE.id()].text.clone()));
        all
    };
    assert_eq!(sorted(&undone), sorted(&here));
    // With one that was written since.
    let since =
        vec![("log.a1.0".into(), record::written(&vec![wash.clone(), chain.clone()], 6).unwrap())];
    let (undone, stays) = back(&since, &changes);
    assert_eq!(sorted(&undone), [(0, chain), (0, cover), (0, wash), (1, rest)]);
    assert!(stays.is_empty());
}

#[test]
fn what_was_new_goes_where_it_stands_as_it_came_whatever_the_order_of_its_leaves() {
    let [one, other] = ["Wash and dry", "Cover"].map(|it| vec![entry("2026-11-14", it)]);
    let mut file = leaves(&one, &other);
    file.extend(of_bike(&with_tank("15"), 3));
    let (mut now, changes) = restored(&Kept::new(), &file);
    for _ in 0..now.len() {
        now.rotate_left(1);
        assert_eq!(back(&now, &changes), (Kept::new(), Vec::new()));
    }
    now.retain(|it| !it.0.starts_with("bike."));
    now.extend(of_bike(&with_tank("17"), 5));
    now.sort();
    // One figure typed since keeps the bike with all of its parts: its logbook here.
    assert_eq!(back(&now, &changes), (now.clone(), vec![String::new(); 2]));
}

/// A bike that a restore brought goes whole or not at all.
#[test]
fn what_was_typed_since_keeps_its_bike() {
    let written = |held: &Season, count| record::written(held, count).unwrap();
    let dated = season("2026-11-14", "");
    let mut file = of_bike(&with_tank("15"), 3);
    file.push(("season.a1".into(), written(&dated, 2)));
    let (now, changes) = restored(&Kept::new(), &file);
    let with = |key: &str, text: String| {
        let mut all = now.clone();
        all.retain(|it| it.0 != key);
        all.push((key.into(), text));
        all.sort();
        all
    };
    let log = || record::written(&vec![entry("2026-11-14", "Cover")], 1).unwrap();
    for since in [
        with("season.a1", written(&season("2026-11-15", ""), 4)),
        with("bike.a1", record::written(&with_tank("17"), 5).unwrap()),
        with("log.a1.0", log()),
    ] {
        let (undone, stays) = back(&since, &changes);
        assert_eq!((undone, stays.len()), (since, 2));
    }
    // What the page keeps of any bike by itself is nothing typed, and another bike's is another's.
    for (key, text) in
        [("log.a1.0", record::written(&Vec::<Entries>::new(), 1).unwrap()), ("log.b2.0", log())]
    {
        let (undone, stays) = back(&with(key, text), &changes);
        assert_eq!(
            (undone.iter().map(|it| &it.0[..]).collect::<Vec<_>>(), stays.len()),
            (vec![key], 0)
        );
    }
    // Of a bike that was here before, each part goes for itself.
    let here = of_bike(&with_tank("16"), 3);
    let (mut now, changes) = restored(&here, &file);
    now[0].1 = record::written(&with_tank("17"), 9).unwrap();
    let (undone, stays) = back(&now, &changes);
    assert_eq!((undone.len(), stays.len(), held(&undone, "bike.a1")), (1, 1, with_tank("17")));
}

#[test]
fn a_removed_bike_is_restored_under_the_day_it_is_restored_on() {
    let today = NaiveDate::from_ymd_opt(2027, 3, 1).unwrap();
    let renewed = |here: &[Found], key: &str| {
        let mut file = Found { key: key.to_owned(), ..Found::default() };
        renew(here, &mut file, today);
        file.key
    };
    assert_eq!(renewed(&[], "removed.2026-11-20.log.a1"), "removed.2027-03-01.log.a1");
    assert_eq!(renewed(&[], "bike.a1"), "bike.a1");
    // One that is still there is that one.
    let there = Found { key: "removed.2027-02-20.bike.a1".to_owned(), ..Found::default() };
    assert_eq!(renewed(&[there], "removed.2027-02-20.bike.a1"), "removed.2027-02-20.bike.a1");
}
