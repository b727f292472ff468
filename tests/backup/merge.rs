//! What a restore writes, record by record.

use super::samples::*;
use torpor::facts;
use torpor::garage::{Bike, Entries, Garage, Season};
use torpor::storage::backup::{self, Found};
use torpor::storage::record;
use torpor::storage::restore::{self, Choice, Part, Stands, Write, parts};
use torpor::units;
use torpor::words::backup as words;

fn found(key: &str, text: Option<String>) -> Vec<Found> {
    backup::found(&[(key.to_owned(), text.unwrap())])
}

fn writes(part: &Part, choice: Choice) -> Vec<Write> {
    let mut all = Vec::new();
    part.clone().write(choice, &mut all);
    all
}

fn only(here: &[Found], file: &[Found]) -> Part {
    assert_eq!(file.len(), 1);
    restore::part(here, &file[0], NOW)
}

/// Before it everything of these tests was typed.
const NOW: u64 = 1_800_000_000_000;

#[test]
fn into_an_empty_browser_everything_is_new_and_comes_as_it_was() {
    let mut kept = Vec::new();
    for it in backup::read(&sample_text()).records {
        let part = restore::part(&[], &it, NOW);
        assert_eq!(part.stands, Stands::New);
        let usual = part.usual;
        part.write(usual, &mut kept);
    }
    let kept: Kept = kept.into_iter().map(|(key, text)| (key, text.unwrap())).collect();
    assert_eq!(again(&kept), again(&sample()));
    let names: Vec<String> =
        backup::read(&sample_text()).records.into_iter().map(|it| it.name).collect();
    assert_eq!(
        names,
        [
            "Rowan",
            "Rowan: season",
            "Garage, shelf and wrenches",
            "Rowan: logbook",
            "Rowan: what the page noted"
        ]
    );
}

#[test]
fn over_itself_nothing_is_written() {
    let all = backup::found(&sample());
    for it in backup::read(&sample_text()).records {
        let part = restore::part(&all, &it, NOW);
        assert_eq!(part.stands, Stands::Same, "{}", it.name);
        assert!(writes(&part, Choice::Take).is_empty() && writes(&part, Choice::Merge).is_empty());
    }
}

/// Label, here, in the file: of what differs.
fn told(part: &Part) -> Vec<[&str; 3]> {
    let rows = part.rows.iter().filter(|it| it.here != it.there);
    rows.map(|it| [it.label.as_str(), it.here.as_str(), it.there.as_str()]).collect()
}

#[test]
fn of_facts_in_both_the_one_typed_last() {
    let with = |tank: (&str, u64), more: Entries| {
        let mut bike = bike();
        bike.entries.insert(facts::TANK_VOLUME.id(), fact(tank.0, units::LITER.code, tank.1));
        bike.entries.extend(more);
        bike
    };
    let own =
        with(("16", 9), [(facts::LINE_VOLUME.id(), fact("80", units::MILLILITER.code, 1))].into());
    let theirs =
        with(("17", 8), [(facts::BETWEEN_MARKS.id(), fact("0.3", units::LITER.code, 1))].into());
    let (here, file) =
        (found("bike.a1", record::written(&own, 5)), found("bike.a1", record::written(&theirs, 2)));
    let part = only(&here, &file);
    assert_eq!((part.stands, part.usual), (Stands::Differs, Choice::Merge));
    assert_eq!(
        told(&part),
        [
            ["Tank volume", "16 L", "17 L"],
            ["Line and rail", "80 mL", ""],
            ["Between the marks", "", "0.3 L"]
        ]
    );
    let all = writes(&part, Choice::Merge);
    let both = record::read::<Bike>(all[0].1.as_ref().unwrap()).unwrap();
    assert_eq!(both.revision, 6);
    let text = |id| both.kept.entries[&id].text.as_str();
    assert_eq!(text(facts::TANK_VOLUME.id()), "16");
    assert_eq!(text(facts::LINE_VOLUME.id()), "80");
    assert_eq!(text(facts::BETWEEN_MARKS.id()), "0.3");
    assert_eq!(writes(&part, Choice::Take), [("bike.a1".to_owned(), record::written(&theirs, 6))]);
    assert!(writes(&part, Choice::Leave).is_empty());
}

#[test]
fn fasteners_are_one_by_their_name_and_figures_of_two_are_never_mixed() {
    let unnamed = |torque: &str| -> Entries {
        [(facts::TORQUE.id(), fact(torque, units::NEWTON_METER.code, 1))].into()
    };
    let newer = |name: &str, torque: &str| {
        let mut it = fastener(name, torque);
        it.insert(facts::TORQUE.id(), fact(torque, units::NEWTON_METER.code, 9));
        it
    };
    let of = |fasteners: Vec<Entries>, scratch: Entries| Bike { fasteners, scratch, ..bike() };
    let own = of(
        vec![fastener("Caliper bolt", "25"), fastener("Caliper bolt", "30"), unnamed("8")],
        unnamed("5"),
    );
    let theirs = of(
        vec![
            fastener("Caliper bolt", "30"),
            newer("Caliper bolt", "26"),
            unnamed("9"),
            fastener("Axle nut", "88"),
        ],
        unnamed("6"),
    );
    let part = only(
        &found("bike.a1", record::written(&own, 1)),
        &found("bike.a1", record::written(&theirs, 1)),
    );
    let both = merged(&part);
    assert_eq!(both.scratch, unnamed("5"));
    assert_eq!(
        both.fasteners,
        [
            fastener("Caliper bolt", "25"),
            fastener("Caliper bolt", "30"),
            unnamed("8"),
            // Another has that name: it may be either, or neither.
            newer("Caliper bolt", "26"),
            unnamed("9"),
            fastener("Axle nut", "88"),
            unnamed("6"),
        ]
    );
}

fn merged(part: &Part) -> Bike {
    record::read(writes(part, Choice::Merge)[0].1.as_ref().unwrap()).unwrap().kept
}

fn bikes(here: &Bike, file: &Bike) -> Part {
    let of = |it: &Bike| found("bike.a1", record::written(it, 1));
    only(&of(here), &of(file))
}

fn with_fasteners(fasteners: Vec<Entries>) -> Bike {
    Bike { fasteners, ..bike() }
}

/// Of two of a name the first was removed here and the second corrected: what the file has is neither's.
#[test]
fn of_two_of_a_name_none_takes_the_others_torque() {
    let here = with_fasteners(vec![fastener("Caliper bolt", "110")]);
    let file =
        with_fasteners(vec![fastener("Caliper bolt", "25"), fastener("Caliper bolt", "100")]);
    let part = bikes(&here, &file);
    assert!(part.rows.iter().all(|it| it.here != "110 N·m" || it.there.is_empty()), "{part:?}");
    let torques: Vec<_> =
        merged(&part).fasteners.iter().map(|it| it[&facts::TORQUE.id()].text.clone()).collect();
    assert_eq!(torques, ["110", "25", "100"]);
    // Typed at another time it is the same one all the same.
    let mut again = fastener("Caliper bolt", "100 N·m");
    again.insert(facts::TORQUE.id(), fact("100 N·m", units::NEWTON_METER.code, 9));
    let here = with_fasteners(vec![again, fastener("Caliper bolt", "25")]);
    assert_eq!(merged(&bikes(&here, &file)).fasteners.len(), 2);
}

/// A clock that was ahead decides nothing.
#[test]
fn what_was_typed_in_the_future_is_not_the_last() {
    let tank = |text: &str, edited: u64| {
        let mut it = bike();
        it.entries.insert(facts::TANK_VOLUME.id(), fact(text, units::LITER.code, edited));
        it
    };
    let text = |part: &Part| merged(part).entries[&facts::TANK_VOLUME.id()].text.clone();
    assert_eq!(text(&bikes(&tank("16", 9), &tank("17", NOW + 1))), "16");
    assert_eq!(text(&bikes(&tank("16", 9), &tank("17", NOW))), "17");
    assert_eq!(text(&bikes(&tank("16", NOW + 1), &tank("17", 9))), "16");
}

/// Each row says which of the two merging leaves there, and where two differ the owner is asked.
#[test]
fn which_one_stays_is_said_before_and_how_many_after() {
    let with = |tank: &str, edited: u64, more: Option<(facts::Id, &str)>| {
        let mut it = bike();
        it.entries.insert(facts::TANK_VOLUME.id(), fact(tank, units::LITER.code, edited));
        it.entries.extend(more.map(|(id, text)| (id, fact(text, units::LITER.code, 1))));
        it
    };
    let row =
        |part: &Part, label: &str| part.rows.iter().find(|it| it.label == label).unwrap().clone();
    let part = bikes(
        &with("9", 8, Some((facts::LINE_VOLUME.id(), "0.1"))),
        &with("4.5", 7, Some((facts::BETWEEN_MARKS.id(), "0.3"))),
    );
    assert_eq!(row(&part, "Tank volume").taken, Some(false));
    assert_eq!(row(&part, "Between the marks").taken, Some(true));
    assert!(part.asks());
    assert_eq!(part.counts(Choice::Merge), [1, 1]);
    assert_eq!(part.counts(Choice::Take), [2, 0]);
    assert_eq!(part.counts(Choice::Leave), [0, 2]);
    assert_eq!(
        row(&bikes(&with("9", 8, None), &with("4.5", 9, None)), "Tank volume").taken,
        Some(true)
    );
    // Nothing to choose where each only has more.
    let more =
        bikes(&bike(), &with("15", 1_700_000_000_000, Some((facts::BETWEEN_MARKS.id(), "0.3"))));
    assert_eq!((more.stands, more.asks()), (Stands::Differs, false));
    // All of a new one is taken, and can be looked at.
    let new = restore::part(&[], &found("bike.a1", record::written(&bike(), 1))[0], NOW);
    assert!(new.rows.iter().any(|it| it.there == "88 N·m" && it.label.starts_with("Axle nut")));
    assert_eq!(new.counts(Choice::Leave), [new.rows.len(), 0]);
}

/// What could not be read in the file is no reason to lose what is here.
#[test]
fn take_empties_nothing_that_was_unreadable_there() {
    let text = sample_text().replacen(
        r#""torque": { "text": "88", "unit": "N·m""#,
        r#""torque": { "text": "88", "unit": "furlong""#,
        1,
    );
    let file = backup::read(&text);
    assert_eq!(file.wrong.len(), 1, "{:?}", file.wrong);
    assert!(file.wrong[0].starts_with("Rowan, Axle nut: torque: "), "{:?}", file.wrong);
    let mut here = bike();
    here.fasteners[1].insert(facts::TORQUE.id(), fact("65", units::NEWTON_METER.code, 3));
    here.entries.insert(facts::BETWEEN_MARKS.id(), fact("0.3", units::LITER.code, 3));
    let part = restore::part(&found("bike.a1", record::written(&here, 1)), &file.records[0], NOW);
    let row = part.rows.iter().find(|it| it.label == "Axle nut: Torque at the fastener").unwrap();
    assert_eq!((row.here.as_str(), row.there.as_str()), ("65 N·m", words::UNREAD));
    assert_eq!((part.counts(Choice::Take), part.counts(Choice::Leave)), ([0, 0], [0, 0]));
    let all = writes(&part, Choice::Take);
    let taken = record::read::<Bike>(all[0].1.as_ref().unwrap()).unwrap().kept;
    assert_eq!(taken.fasteners[1], here.fasteners[1]);
    assert_eq!(taken.fasteners.len(), 2);
    assert_eq!(taken.entries.get(&facts::BETWEEN_MARKS.id()), None, "what only stands here goes");
}

/// A bike's records stand together, the bike first; what is of a bike that is nowhere is left out.
#[test]
fn parts_stand_with_their_bike_and_orphans_are_left() {
    let bike = || record::written(&bike(), 1).unwrap();
    let season = || record::written(&season("Nov 14 2026", ""), 1).unwrap();
    let file = backup::found(&[
        ("season.b".into(), season()),
        ("season.a".into(), season()),
        ("garage".into(), record::written(&Garage::default(), 1).unwrap()),
        ("bike.a".into(), bike()),
        ("season.c".into(), season()),
        ("log.a.0".into(), record::written(&vec![entry("2026-11-14", "Oil")], 1).unwrap()),
        ("bike.b".into(), bike()),
        ("removed.2026-11-20.past.a.0".into(), season()),
    ]);
    let here = found("bike.c", Some(bike()));
    let all = parts(&here, &file, NOW);
    let keys: Vec<_> = all.iter().map(|it| it.file.key.as_str()).collect();
    assert_eq!(
        keys,
        [
            "bike.b",
            "season.b",
            "bike.a",
            "log.a",
            "season.a",
            "garage",
            "season.c",
            "removed.2026-11-20.past.a.0"
        ]
    );
    let orphans =
        all.iter().filter(|it| it.stands == Stands::Orphan).map(|it| it.file.key.as_str());
    assert_eq!(orphans.collect::<Vec<_>>(), ["removed.2026-11-20.past.a.0"], "bike.c is here");
    for it in &all {
        assert_eq!(writes(it, Choice::Take).is_empty(), it.stands == Stands::Orphan);
    }
}

#[test]
fn logbooks_are_united_without_twins_whatever_their_leaves() {
    let leaf = |all: &[&str]| all.iter().map(|it| entry("2026-11-14", it)).collect::<Vec<_>>();
    let here = backup::found(&[
        ("log.a1.0".into(), record::written(&leaf(&["Oil", "Fuel"]), 4).unwrap()),
        ("log.a1.1".into(), record::written(&leaf(&["Chain"]), 1).unwrap()),
    ]);
    let file = backup::found(&[
        ("log.a1.2".into(), record::written(&leaf(&["Tires"]), 1).unwrap()),
        ("log.a1.0".into(), record::written(&leaf(&["Chain", "Oil", "Battery"]), 1).unwrap()),
    ]);
    let part = only(&here, &file);
    assert_eq!(told(&part), [["Entries, 2 of them new", "3", "4"]]);
    let leaves = |writes: Vec<Write>| -> Vec<(String, Option<Vec<Entries>>)> {
        let read = |text: String| record::read::<Vec<Entries>>(&text).unwrap().kept;
        writes.into_iter().map(|(key, text)| (key, text.map(read))).collect()
    };
    let both = leaves(writes(&part, Choice::Merge));
    let all: Vec<Entries> = both.into_iter().flat_map(|it| it.1.unwrap()).collect();
    assert_eq!(all.len(), 5);
    for it in leaf(&["Oil", "Fuel", "Chain", "Tires", "Battery"]) {
        assert!(all.contains(&it));
    }
    let theirs = leaves(writes(&part, Choice::Take));
    assert_eq!(
        theirs,
        [
            ("log.a1.2".to_owned(), Some(leaf(&["Tires"]))),
            ("log.a1.0".to_owned(), Some(leaf(&["Chain", "Oil", "Battery"]))),
            ("log.a1.1".to_owned(), None)
        ]
    );
}

#[test]
fn an_entry_that_is_damaged_in_the_file_is_the_one_here() {
    let with = |line: &str, odometer: Option<&str>| {
        let mut all = entry("2026-10-01", line);
        let odometer = odometer.map(|it| fact(it, units::KILOMETER.code, 7));
        all.insert(facts::LOG_ODOMETER.id(), odometer.unwrap_or_default());
        all
    };
    let log = |all: &[Entries]| found("log.a1.0", record::written(&all.to_vec(), 1));
    let others = |it: &Found| it.held.others.iter().map(|it| it.1.clone()).collect::<Vec<_>>();
    let here = [with("Oil changed", Some("1200")), with("Chain", Some("1300"))];
    let file = [with("Oil changed", None), with("Cable", None)];
    let part = || only(&log(&here), &log(&file));
    let taken = part().write(Choice::Take, &mut Vec::new()).unwrap();
    assert_eq!(others(&taken.file), [here[0].clone(), file[1].clone()]);
    let both = part().write(Choice::Merge, &mut Vec::new()).unwrap();
    assert_eq!(others(&both.file), [here[0].clone(), here[1].clone(), file[1].clone()]);
}

#[test]
fn another_winter_is_not_mixed_into_this_one() {
    let one = |season: &Season| found("season.a1", record::written(season, 1));
    let this = season("Nov 14 2026", "2026-11-10");
    let last = season("Nov 1 2025", "2025-10-30");
    assert_eq!(only(&one(&this), &one(&last)).usual, Choice::Leave);
    assert_eq!(only(&one(&this), &one(&season("Nov 15 2026", "2026-11-10"))).usual, Choice::Merge);
    // One that has not begun here may be the next one.
    assert_eq!(only(&one(&Season::default()), &one(&last)).usual, Choice::Leave);
    // Two of a place are two winters: neither takes the other's facts.
    let here = found("past.a1.0", record::written(&this, 1));
    let file = found("past.a1.0", record::written(&last, 1));
    assert_eq!(only(&here, &file).usual, Choice::Leave);
    assert_eq!(only(&here, &here).stands, Stands::Same);
}

#[test]
fn what_cannot_be_read_here_or_stands_here_is_never_written_over() {
    let bike_text = || record::written(&bike(), 1);
    let file = found("bike.a1", bike_text());
    for here in ["1.AAAA", "2.AAAA", ""] {
        let part = only(&backup::found(&[("bike.a1".into(), here.into())]), &file);
        assert_eq!(part.stands, Stands::Left, "{here}");
        assert!([Choice::Merge, Choice::Take].iter().all(|it| writes(&part, *it).is_empty()));
    }
    let part =
        only(&found("calendar.a1", Some("x".into())), &found("calendar.a1", Some("y".into())));
    assert!(writes(&part, Choice::Take).is_empty());
    // A leaf that cannot be read keeps the whole book from being written.
    let leaf = vec![entry("2026-11-14", "Oil")];
    let file = found("log.a1.0", record::written(&leaf, 1));
    let own = ("log.a1.1".to_owned(), record::written(&leaf, 1).unwrap());
    let bad = ("log.a1.0".to_owned(), "2.AAAA".to_owned());
    for here in [[own.clone(), bad.clone()], [bad, own]] {
        let part = only(&backup::found(&here), &file);
        assert_eq!(part.stands, Stands::Left);
        assert!(writes(&part, Choice::Take).is_empty());
    }
}

#[test]
fn an_archived_bike_in_the_file_archives_none_here() {
    let mut archived = bike();
    archived.entries.insert(facts::ARCHIVED.id(), fact("2026-11-01", 0, 0));
    let (here, file) = (
        found("bike.a1", record::written(&bike(), 1)),
        found("bike.a1", record::written(&archived, 1)),
    );
    let merged = |here: &[Found], file: &[Found]| merged(&only(here, file)).entries;
    assert_eq!(merged(&here, &file).get(&facts::ARCHIVED.id()), None);
    assert!(merged(&file, &here).get(&facts::ARCHIVED.id()).is_some());
}

#[test]
fn wrenches_are_united() {
    let wrench = |name: &str, low: &str| -> Entries {
        [(facts::WRENCH_NAME.id(), fact(name, 0, 1)), (facts::LOWEST_MARK.id(), fact(low, 1, 1))]
            .into()
    };
    let garage = |wrenches| record::written(&Garage { wrenches, ..Garage::default() }, 1);
    let part = only(
        &found("garage", garage(vec![wrench("Long", "20")])),
        &found("garage", garage(vec![wrench("Short", "5"), wrench("Long", "20")])),
    );
    assert_eq!(told(&part), [["Short: Wrench", "", "Short"], ["Short: Lowest mark", "", "5 N·m"]]);
    let both = record::read::<Garage>(writes(&part, Choice::Merge)[0].1.as_ref().unwrap()).unwrap();
    assert_eq!(both.kept.wrenches, [wrench("Long", "20"), wrench("Short", "5")]);
}
