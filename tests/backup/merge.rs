//! What a restore writes, record by record.

use super::samples::*;
use torpor::facts;
use torpor::garage::{Bike, Entries, Garage, Season};
use torpor::storage::backup::{self, Found};
use torpor::storage::record;
use torpor::storage::restore::{Choice, Part, Stands, Write, parts};
use torpor::units;

fn found(key: &str, text: Option<String>) -> Vec<Found> {
    backup::found(&[(key.to_owned(), text.unwrap())])
}

fn writes(part: &Part, choice: Choice) -> Vec<Write> {
    let mut all = Vec::new();
    part.write(choice, &mut all);
    all
}

fn only(here: &[Found], file: &[Found]) -> Part {
    let mut all = parts(here, file);
    assert_eq!(all.len(), 1);
    all.remove(0)
}

#[test]
fn into_an_empty_browser_everything_is_new_and_comes_as_it_was() {
    let file = backup::found(&sample());
    let parts = parts(&[], &file);
    assert!(parts.iter().all(|it| it.stands == Stands::New));
    let written: Vec<_> = parts.iter().flat_map(|it| writes(it, it.usual)).collect();
    let wanted: Vec<_> = sample().into_iter().map(|(key, text)| (key, Some(text))).collect();
    assert_eq!(written, wanted);
    let names: Vec<&str> =
        parts.iter().filter(|it| it.is_told()).map(|it| it.name.as_str()).collect();
    assert_eq!(names, ["Rowan", "Rowan: season", "Garage, shelf and wrenches", "Rowan: logbook"]);
}

#[test]
fn over_itself_nothing_is_written() {
    let all = backup::found(&sample());
    for part in parts(&all, &all) {
        assert_eq!(part.stands, Stands::Same, "{}", part.name);
        assert!(writes(&part, Choice::Take).is_empty() && writes(&part, Choice::Merge).is_empty());
    }
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
        part.differs,
        [
            "Tank volume: 16 L here, 17 L in the file",
            "Line and rail: 80 mL here, — in the file",
            "Between the marks: — here, 0.3 L in the file",
        ]
        .map(|it| it.to_owned())
    );
    let all = writes(&part, Choice::Merge);
    let both = record::read::<Bike>(all[0].1.as_ref().unwrap()).unwrap();
    assert_eq!(both.revision, 6);
    let text = |id| both.kept.entries[&id].text.as_str();
    assert_eq!(text(facts::TANK_VOLUME.id()), "16");
    assert_eq!(text(facts::LINE_VOLUME.id()), "80");
    assert_eq!(text(facts::BETWEEN_MARKS.id()), "0.3");
    assert_eq!(writes(&part, Choice::Take), [("bike.a1".to_owned(), record::written(&theirs, 2))]);
    assert!(writes(&part, Choice::Leave).is_empty());
    // When it was typed alone makes no difference that is told.
    let again =
        with(("16", 99), [(facts::LINE_VOLUME.id(), fact("80", units::MILLILITER.code, 1))].into());
    assert_eq!(only(&here, &found("bike.a1", record::written(&again, 1))).stands, Stands::Same);
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
        (
            "log.a1.0".into(),
            record::written(&leaf(&["Chain", "Oil", "Battery", "Battery"]), 1).unwrap(),
        ),
    ]);
    let part = only(&here, &file);
    assert_eq!(part.differs, ["Entries: 3 here, 2 more in the file"]);
    let all = writes(&part, Choice::Merge);
    assert_eq!(all.len(), 1);
    assert_eq!(all[0].0, "log.a1.1");
    let kept = record::read::<Vec<Entries>>(all[0].1.as_ref().unwrap()).unwrap();
    assert_eq!((kept.revision, kept.kept), (2, leaf(&["Chain", "Tires", "Battery"])));
    let keys: Vec<_> =
        writes(&part, Choice::Take).into_iter().map(|it| (it.0, it.1.is_some())).collect();
    assert_eq!(
        keys,
        [
            ("log.a1.1".to_owned(), false),
            ("log.a1.2".to_owned(), true),
            ("log.a1.0".to_owned(), true)
        ]
    );
    // A leaf holds so many, and the next ones get another.
    let full: Vec<Entries> = (0..64).map(|it| entry("2026-11-15", &format!("Ride {it}"))).collect();
    let part = only(&here, &found("log.a1.0", record::written(&full, 1)));
    let counts: Vec<usize> = writes(&part, Choice::Merge)
        .iter()
        .map(|it| record::read::<Vec<Entries>>(it.1.as_ref().unwrap()).unwrap().kept.len())
        .collect();
    assert_eq!(counts, [64, 1]);
}

#[test]
fn another_winter_is_not_mixed_into_this_one() {
    let one = |season: &Season| found("season.a1", record::written(season, 1));
    let this = season("Nov 14 2026", "2026-11-10");
    let last = season("Nov 1 2025", "2025-10-30");
    assert_eq!(only(&one(&this), &one(&last)).usual, Choice::Leave);
    // The same winter merges, and so does one that has not begun.
    assert_eq!(only(&one(&this), &one(&season("Nov 15 2026", "2026-11-10"))).usual, Choice::Merge);
    assert_eq!(only(&one(&Season::default()), &one(&last)).usual, Choice::Merge);
    // Unless it was put away here.
    let mut here = one(&Season::default());
    here.extend(found("past.a1.0", record::written(&last, 1)));
    assert_eq!(only(&here, &one(&last)).usual, Choice::Leave);
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
    // A bike that stands here is not among the removed ones.
    let part = only(&file, &found("removed.2026-11-20.bike.a1", bike_text()));
    assert_eq!(part.stands, Stands::Left);
    assert!(writes(&part, Choice::Take).is_empty());
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
    assert_eq!(part.differs, ["Wrenches: 1 here, 2 in the file"]);
    let both = record::read::<Garage>(writes(&part, Choice::Merge)[0].1.as_ref().unwrap()).unwrap();
    assert_eq!(both.kept.wrenches, [wrench("Long", "20"), wrench("Short", "5")]);
}
