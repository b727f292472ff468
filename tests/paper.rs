//! What stands on paper, of the invented bike and of one of which nothing is known.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::NaiveDate;
use torpor::entry::Entry;
use torpor::facts::{self, Id};
use torpor::garage::{Entries, Kept, example};
use torpor::plan::{Line, Paper, Side, Task, paper};
use torpor::show::Figure;
use torpor::units::UnitSet;
use torpor::words::{cautions, labels};

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

fn bike() -> Kept {
    example(day(2026, 10, 1), UnitSet::Metric)
}

fn metric(kept: &Kept) -> Paper {
    paper(kept, &[], UnitSet::Metric)
}

fn task<'a>(paper: &'a Paper, side: Side, key: &str) -> &'a Task {
    let title = side.step(key).unwrap().said.title;
    paper.sides[usize::from(side == Side::WakeUp)].iter().find(|it| it.title == title).unwrap()
}

fn text(figure: &Figure) -> String {
    match figure {
        Figure::Number { text, unit, .. } => format!("{text} {unit}"),
        Figure::Day { text, .. } | Figure::Words(text) => text.clone(),
        Figure::Lacks(_) => "?".to_owned(),
    }
}

fn figures(task: &Task) -> Vec<(&str, String)> {
    task.figures.iter().map(|(label, it)| (label.as_str(), text(it))).collect()
}

fn put(kept: &mut Kept, (id, text): (Id, String)) {
    kept.put(id, Entry::new(text, 0));
}

fn fastener(facts: &[(Id, &str)]) -> Entries {
    facts.iter().map(|(id, text)| (*id, Entry::new(*text, 0))).collect()
}

#[test]
fn the_head_says_when_and_where() {
    let paper = metric(&bike());
    assert_eq!(paper.name.as_deref(), Some("Alder 640"));
    let said: Vec<_> = paper.season.iter().map(|it| (it.label, it.says.as_deref())).collect();
    // From Nov 14 to Mar 28: 16 + 31 + 31 + 28 + 28 nights.
    let expected = [
        (facts::PARK_DATE.about.label, Some("Sat, Nov 14 2026")),
        (facts::RIDE_DATE.about.label, Some("Sun, Mar 28 2027")),
        (labels::DAYS_STORED, Some("134")),
        (facts::WHERE_IT_STANDS.about.label, Some("unheated")),
        (facts::COLDEST_NIGHT.about.label, Some("-24 °C")),
    ];
    assert_eq!(said.len(), expected.len());
    for ((label, says), (own, wanted)) in said.into_iter().zip(expected) {
        assert_eq!((label, says.map(str::trim_end)), (own, wanted));
    }
    // A minus that was left out: it is a rule to write on, and no night to rely on.
    let mut refused = bike();
    put(&mut refused, (facts::COLDEST_NIGHT.id(), "24 °C".to_owned()));
    assert_eq!(metric(&refused).season.last().unwrap().says, None);
}

/// Every step that the bike has, in the order of the work, under the number it has on the page.
#[test]
fn the_steps_are_those_of_the_sheet() {
    let kept = bike();
    let paper = metric(&kept);
    for (at, side) in Side::ALL.into_iter().enumerate() {
        let asked = side.steps().iter().filter(|it| it.is_asked(&kept));
        let expected: Vec<_> = asked.map(|it| (it.number(&kept), it.said.title)).collect();
        let own: Vec<_> = paper.sides[at].iter().map(|it| (it.number, it.title.as_str())).collect();
        assert_eq!(own, expected);
        // None is missing between two.
        assert!(own.iter().map(|it| it.0).eq(1..=own.len()), "{own:?}");
    }
}

/// By hand, from what the invented manual says: 30 mL to 10 L of the 15.2 L that are 95 % of 16; 3.1 L with a filter; half a
/// liter in each leg; the fluid of Oct 4 2025 two years later.
#[test]
fn numbers_stand_where_there_are_some() {
    let paper = metric(&bike());
    let one = |key| figures(task(&paper, Side::LayUp, key)).remove(0);
    assert_eq!(one("fuel"), (labels::STABILIZER_TO_ADD, "46 mL".to_owned()));
    assert_eq!(one("oil"), (labels::OIL_NEEDED, "3.10 L".to_owned()));
    assert_eq!(one("brakes"), (labels::CHANGE_BY, "Mon, Oct 4 2027".to_owned()));
    assert_eq!(one("other-oils").1, "0.50 L");
    assert!(figures(task(&paper, Side::LayUp, "wash")).is_empty());
    // Both tires, on both sides.
    for (side, key) in [(Side::LayUp, "tires"), (Side::WakeUp, "tires")] {
        let labels: Vec<_> = figures(task(&paper, side, key)).into_iter().map(|it| it.0).collect();
        assert_eq!(labels, [labels::FRONT_SET_AT, labels::REAR_SET_AT]);
    }
    // Those of the spring are the invented manual's, for the air of that morning.
    let again = figures(task(&paper, Side::WakeUp, "tires"));
    assert_eq!(again.into_iter().map(|it| it.1).collect::<Vec<_>>(), ["2.50 bar", "2.90 bar"]);
    // In spring the meter is read: what it should show, and a rule for what it does.
    let measured = task(&paper, Side::WakeUp, "battery");
    assert_eq!(measured.figures[0].0, labels::VOLTAGE_ON_RIDE_DATE);
    assert!(
        measured
            .fields
            .iter()
            .any(|it| it.label == facts::METER_READS.about.label && it.says.is_none())
    );
}

#[test]
fn what_may_hurt_is_said_at_its_step() {
    for kept in [bike(), Kept::default()] {
        let paper = metric(&kept);
        for task in &paper.sides[0] {
            let step = Side::LayUp.steps().iter().find(|it| it.said.title == task.title).unwrap();
            if let Some(line) = step.sum.filter(|it| *it != Line::Torques) {
                let first = line.panel(&kept, &[], UnitSet::Metric).cautions.first();
                assert_eq!(task.cares.last().map(String::as_str), first.copied(), "{}", task.title);
            }
        }
        let says = |side, key, part: &str| {
            let cares = &task(&paper, side, key).cares;
            assert!(cares.iter().any(|it| it.contains(part)), "{key}: {cares:?}");
        };
        says(Side::LayUp, "chain", "takes fingers off");
        says(Side::LayUp, "weight", "secured from tipping");
        says(Side::WakeUp, "first-start", "carbon monoxide");
        says(Side::WakeUp, "before-moving", "Pump the brake");
        says(Side::WakeUp, "first-ride", "walking pace");
    }
    // A bike that drains its bowls is told of flames.
    let mut kept = bike();
    kept.put(facts::FUEL_SUPPLY.id(), Entry::new("carburetor", 0));
    let paper = metric(&kept);
    for (side, key) in [(Side::LayUp, "tap-and-bowls"), (Side::WakeUp, "fuel")] {
        assert_eq!(task(&paper, side, key).cares[0], cautions::VAPOR, "{key}");
    }
    assert_eq!(task(&paper, Side::LayUp, "oil").cares[0], cautions::OIL[0]);
}

#[test]
fn ticked_and_left_out() {
    let mut kept = bike();
    let step = |key| Side::LayUp.step(key).unwrap();
    let oil = step("oil").ticked(&kept, true);
    put(&mut kept, oil);
    let fuel = step("fuel").leaving_out(&kept, "tank off");
    put(&mut kept, fuel);
    let paper = metric(&kept);
    assert!(task(&paper, Side::LayUp, "oil").done);
    let out = task(&paper, Side::LayUp, "fuel");
    assert!(out.left_out && out.figures.is_empty() && out.cares.is_empty());
    assert_eq!(out.says, "Left out: tank off");
    assert!(!task(&paper, Side::LayUp, "wash").done && !task(&paper, Side::LayUp, "wash").left_out);
    assert!(!paper.needs.iter().any(|it| it.starts_with("Fuel")));
}

/// By hand: the fourteenth of each month until Mar 28, and three weeks before it. Both dates stand at the head instead.
#[test]
fn the_days_between() {
    let paper = metric(&bike());
    let between: Vec<_> = paper.between.iter().map(|it| it.1.as_slice()).collect();
    let months = [day(2026, 12, 14), day(2027, 1, 14), day(2027, 2, 14), day(2027, 3, 14)];
    assert!(between.contains(&&months[..]), "{between:?}");
    assert_eq!(between.last(), Some(&&[day(2027, 3, 7)][..]));
    let all: Vec<NaiveDate> = between.concat();
    assert!(!all.contains(&day(2026, 11, 14)) && !all.contains(&day(2027, 3, 28)));
}

/// The open fastener stands behind those that are kept. By hand: 25 N·m without an adapter is 25 on a wrench with every whole
/// mark, and a figure of the general table says so.
#[test]
fn the_torque_list() {
    let mut kept = bike();
    kept.put(facts::GENERAL_TORQUES.id(), Entry::new("M8 25 N·m", 0));
    kept.bike.fasteners = vec![
        fastener(&[
            (facts::FASTENER_NAME.id(), "Drain plug"),
            (facts::TORQUE.id(), "25 N·m"),
            (facts::ADAPTER.id(), "none"),
            (facts::MIND.id(), "new_washer"),
            (facts::FASTENER_NOTE.id(), "page 12"),
        ]),
        fastener(&[(facts::THREAD.id(), "M8"), (facts::ADAPTER.id(), "none")]),
    ];
    let paper = metric(&kept);
    assert_eq!(paper.torques.len(), 3);
    let plug = &paper.torques[0];
    assert_eq!((plug.name.as_str(), plug.mind.as_str()), ("Drain plug", "new washer, page 12"));
    assert_eq!(plug.manual, "25 N·m");
    assert_eq!(text(&plug.row.as_ref().unwrap().figure), "25 N·m");
    let table = &paper.torques[1];
    assert!(table.manual.starts_with("25") && table.mind.starts_with("M8, "), "{table:?}");
    assert!(table.mind.contains("general table"));
    assert_eq!(paper.torques[2].name, "Header nut");
    assert!(task(&paper, Side::LayUp, "torques").says.starts_with("3 fasteners"));
    // What the calculator warns of stands beside it.
    kept.bike.fasteners[0].insert(facts::TORQUE.id(), Entry::new("250 N·m", 0));
    assert!(!metric(&kept).torques[0].cares.is_empty());
}

#[test]
fn sources_of_what_is_answered() {
    let paper = metric(&bike());
    let of = |line: Line| {
        let own = paper.sources.iter().filter(|it| it[0] == line.words().quick);
        own.map(|it| it[1]).collect::<Vec<_>>()
    };
    assert!(of(Line::Torques).iter().any(|it| it.contains("TM 9-254")));
    assert!(of(Line::Coolant).iter().any(|it| it.contains("ASHRAE")));
    assert!(of(Line::Battery).iter().any(|it| it.contains("TM 9-6140-200-14")));
    for (at, one) in paper.sources.iter().enumerate() {
        assert!(!paper.sources[at + 1..].contains(one), "twice: {one:?}");
        // Those of a calculator stand together.
        let before = at.checked_sub(1).map(|it| paper.sources[it][0]);
        assert!(before == Some(one[0]) || !paper.sources[..at].iter().any(|it| it[0] == one[0]));
    }
}

/// Nothing is known: rules to write on, none twice, and nothing made up.
#[test]
fn a_blank_bike_is_a_form() {
    for set in [UnitSet::Metric, UnitSet::Us] {
        let paper = paper(&Kept::default(), &[], set);
        assert!(paper.name.is_none() && paper.needs.is_empty() && paper.between.is_empty());
        assert!(paper.season.iter().all(|it| it.says.is_none()));
        assert_eq!(paper.torques.len(), 12);
        assert!(paper.torques.iter().all(|it| it.row.is_none() && it.name.is_empty()));
        assert!(paper.sources.is_empty(), "{:?}", paper.sources);
        for task in paper.sides.iter().flatten() {
            assert!(task.figures.iter().all(|it| text(&it.1) == "?"), "{task:?}");
            assert!(task.fields.iter().all(|it| it.says.is_none()));
        }
        let fuel = task(&paper, Side::LayUp, "fuel");
        let tank =
            fuel.fields.iter().find(|it| it.label == facts::TANK_VOLUME.about.label).unwrap();
        assert_eq!(tank.unit, if set == UnitSet::Metric { "L" } else { "US gal" });
        let again = &task(&paper, Side::WakeUp, "papers").fields;
        assert!(again.is_empty(), "asked in autumn already: {again:?}");
    }
}

/// Every caution of a step that has figures is on paper: the first beside the step, all others on the next page.
#[test]
fn no_caution_is_left_out() {
    let kept = example(NaiveDate::from_ymd_opt(2026, 10, 1).unwrap(), UnitSet::Metric);
    let paper = paper(&kept, &[], UnitSet::Metric);
    for step in Side::LayUp.steps().iter().filter(|it| it.is_asked(&kept)) {
        let Some(line) = step.sum.filter(|it| *it != Line::Torques) else { continue };
        for caution in line.panel(&kept, &[], UnitSet::Metric).cautions {
            let beside = paper.sides[0].iter().any(|it| it.cares.iter().any(|it| it == caution));
            let behind = paper.cautions.contains(&[step.said.title, caution]);
            assert!(beside || behind, "{}: {caution}", step.said.title);
        }
    }
    let frozen = |it: &[&str; 2]| it[1].contains("frozen");
    assert!(paper.cautions.iter().any(frozen), "{:?}", paper.cautions);
}

/// What is due stands where it is looked at, what is past as a caution; not where the step is left out.
#[test]
fn what_is_due_is_printed() {
    let kept = bike();
    let due = [(true, "Valves: 3 days past".to_owned()), (false, "Chain: in 9 days".to_owned())];
    let paper = paper(&kept, &due, UnitSet::Metric);
    let step = task(&paper, Side::WakeUp, "due");
    assert!(step.cares.contains(&due[0].1), "{:?}", step.cares);
    assert!(step.says.ends_with(&due[1].1) && !step.says.contains("Valves"), "{}", step.says);
}
