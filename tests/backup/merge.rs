//! What a restore writes, record by record.

use super::samples::*;
use torpor::facts;
use torpor::garage::{Bike, Entries, Garage, Season};
use torpor::storage::backup::{self, Found};
use torpor::storage::record;
use torpor::storage::restore::{Choice, Part, Stands, Write, part};
use torpor::units;

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
    part(here, &file[0])
}

#[test]
fn into_an_empty_browser_everything_is_new_and_comes_as_it_was() {
    let mut kept = Vec::new();
    for it in backup::read(&sample_text()).records {
        let part = part(&[], &it);
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
        let part = part(&all, &it);
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
    let both =
        record::read::<Bike>(writes(&part, Choice::Merge)[0].1.as_ref().unwrap()).unwrap().kept;
    assert_eq!(both.scratch, unnamed("5"));
    assert_eq!(
        both.fasteners,
        [
            newer("Caliper bolt", "26"),
            fastener("Caliper bolt", "30"),
            unnamed("8"),
            unnamed("9"),
            fastener("Axle nut", "88"),
            unnamed("6"),
        ]
    );
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
    let merged = |here: &[Found], file: &[Found]| {
        let all = writes(&only(here, file), Choice::Merge);
        record::read::<Bike>(all[0].1.as_ref().unwrap()).unwrap().kept.entries
    };
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
