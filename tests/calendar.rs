//! The calendar file against an independent reader from the registry (the `icalendar` crate) and against RFC 5545.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::NaiveDate;
use icalendar::{Calendar, Component, DatePerhapsTime};
use proptest::prelude::*;
use std::collections::BTreeSet;
use torpor::calendar::{Event, call_off, saved, written};
use torpor::entry::Entry;
use torpor::facts;
use torpor::garage::{Kept, example};
use torpor::plan;
use torpor::units::UnitSet;

const LINK: &str = "https://example.org/torpor/#1.c2Vhc29u";

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

fn read(text: &str) -> Vec<icalendar::Event> {
    let calendar: Calendar = text.parse().expect("an independent reader takes it");
    calendar.components.iter().filter_map(|it| it.as_event().cloned()).collect()
}

fn season() -> Kept {
    let mut kept = example(day(2026, 10, 1), UnitSet::Metric);
    kept.put(facts::PAPERS_DUE.id(), Entry::new("2027-03-01", 0));
    kept
}

/// Nov 14 to Mar 28: four monthly looks (Dec 14, Jan 14, Feb 14, Mar 14), three weeks before the ride is Mar 7; by the
/// calendar.
#[test]
fn the_season_stands_in_it() {
    let events = read(&written(&plan::dates(&season()), "k1", LINK, 1_792_000_000_000));
    let on = |title: &str| -> Vec<NaiveDate> {
        let named = events.iter().filter(|it| it.get_summary().unwrap().contains(title));
        named
            .map(|it| match it.get_start().unwrap() {
                DatePerhapsTime::Date(day) => day,
                other => panic!("not an all-day event: {other:?}"),
            })
            .collect()
    };
    assert_eq!(on("Put it away"), [day(2026, 11, 14)]);
    assert_eq!(on("First ride"), [day(2027, 3, 28)]);
    assert_eq!(on("Wake it up"), [day(2027, 3, 7)]);
    assert_eq!(on("Papers due"), [day(2027, 3, 1)]);
    let monthly = [day(2026, 12, 14), day(2027, 1, 14), day(2027, 2, 14), day(2027, 3, 14)];
    assert_eq!(on("Look at the bike"), monthly);
    let course = plan::course(&season()).unwrap();
    assert!(!course.recharges.is_empty());
    assert_eq!(on("Charge the battery to full"), course.recharges);
    for it in &events {
        assert!(it.get_description().unwrap().ends_with(LINK), "the link is in each");
        assert_eq!(it.get_url(), Some(LINK));
        assert!(it.get_summary().unwrap().starts_with("Alder 640: "));
        // The end of an all-day event is the day after (RFC 5545 §3.6.1).
        let (Some(DatePerhapsTime::Date(start)), Some(DatePerhapsTime::Date(end))) =
            (it.get_start(), it.get_end())
        else {
            panic!("all day")
        };
        assert_eq!((end - start).num_days(), 1);
    }
}

/// A second file names each event as the first did, with a higher sequence, so that it takes its place.
#[test]
fn a_second_file_updates() {
    let told = |now: u64, ride: &str| {
        let mut kept = season();
        kept.put(facts::RIDE_DATE.id(), Entry::new(ride, 0));
        read(&written(&plan::dates(&kept), "k1", LINK, now))
    };
    let uids = |all: &[icalendar::Event]| -> BTreeSet<String> {
        all.iter().map(|it| it.get_uid().unwrap().to_owned()).collect()
    };
    let (first, second) =
        (told(1_792_000_000_000, "2027-03-28"), told(1_792_086_400_000, "2027-03-30"));
    assert_eq!(uids(&first).len(), first.len(), "no two are called the same");
    let [ride_then, ride_now] = [&first, &second].map(|all| {
        all.iter().find(|it| it.get_summary().unwrap().contains("First ride")).unwrap().clone()
    });
    assert_eq!(ride_then.get_uid(), ride_now.get_uid());
    assert!(ride_now.get_sequence() > ride_then.get_sequence());
    assert_ne!(ride_then.get_start(), ride_now.get_start());
    // Another bike's and another season's are others.
    let other = read(&written(&plan::dates(&season()), "k2", LINK, 0));
    assert!(uids(&first).is_disjoint(&uids(&other)));
}

/// An event that the next file has not is called off under its own identifier (RFC 5545 §3.8.1.11), once.
#[test]
fn what_is_no_more_is_called_off() {
    let first = plan::dates(&season());
    let mut kept = season();
    kept.put(facts::RIDE_DATE.id(), Entry::new("2027-02-01", 0));
    let mut second = plan::dates(&kept);
    call_off(&mut second, saved(&first));
    let called_off = |events: &[Event]| -> Vec<String> {
        let read = read(&written(events, "k1", LINK, 1_792_086_400_000));
        let off = read.into_iter().filter(|it| it.property_value("STATUS") == Some("CANCELLED"));
        off.map(|it| it.get_uid().unwrap().to_owned()).collect()
    };
    let off = called_off(&second);
    // Two monthly looks less: Feb 14 and Mar 14.
    for month in ["20261114-month-3-k1@torpor.invalid", "20261114-month-4-k1@torpor.invalid"] {
        assert!(off.contains(&month.to_owned()), "{off:?}");
    }
    assert!(off.iter().all(|it| !it.contains("park") && !it.contains("ride")), "{off:?}");
    let mut third = plan::dates(&kept);
    call_off(&mut third, saved(&second));
    assert_eq!(called_off(&third), Vec::<String>::new());
    // The next season leaves this one's days where they are.
    let mut next = season();
    next.put(facts::PARK_DATE.id(), Entry::new("2027-11-14", 0));
    next.put(facts::RIDE_DATE.id(), Entry::new("2028-03-28", 0));
    let mut fourth = plan::dates(&next);
    call_off(&mut fourth, saved(&third));
    assert_eq!(called_off(&fourth), Vec::<String>::new());
}

/// RFC 5545 §3.1: lines of 75 octets at most, ended by CR LF; §3.3.5: 1,792,000,000 s after 1970 is Oct 14 2026, 17:46:40
/// UTC (`date -u -d @1792000000`).
#[test]
fn lines_and_stamp() {
    let text = written(
        &plan::dates(&season()),
        "k1",
        &format!("{LINK}{}", "x".repeat(600)),
        1_792_000_000_000,
    );
    assert!(text.contains("DTSTAMP:20261014T174640Z\r\n"), "{text}");
    for line in text.split_terminator("\r\n") {
        assert!(line.len() <= 75 && !line.contains(['\r', '\n']), "{line}");
    }
    assert!(text.ends_with("END:VCALENDAR\r\n"));
    assert!(plan::dates(&Kept::default()).is_empty());
}

proptest! {
    /// Whatever a bike is called, the reader gets it back.
    #[test]
    fn any_text_comes_back(title in "[^\\p{Cc}]{0,120}", says in "([^\\p{Cc}]|\n){0,200}") {
        let event = Event { key: "x".into(), day: day(2027, 2, 28), title: title.clone(), says: says.clone(), called_off: false };
        let text = written(&[event], "k", LINK, 0);
        let read = read(&text);
        prop_assert_eq!(read.len(), 1);
        prop_assert_eq!(read[0].get_summary().unwrap_or(""), title);
        let says = if says.is_empty() { LINK.to_owned() } else { format!("{says}\n{LINK}") };
        prop_assert_eq!(read[0].get_description().unwrap_or(""), says);
        prop_assert!(matches!(
            read[0].get_start(),
            Some(DatePerhapsTime::Date(it)) if it == day(2027, 2, 28)
        ));
    }
}
