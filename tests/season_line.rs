//! The season line: what its pictures hold, and what a day of it says.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::{Days, NaiveDate};
use proptest::prelude::*;
use torpor::battery::{FAST, TYPICAL};
use torpor::drawing::{SeasonLine, season_day, season_day_at, season_line};
use torpor::entry::Entry;
use torpor::facts::{self, Id};
use torpor::garage::{Kept, example};
use torpor::plan::{Course, course};
use torpor::units::UnitSet;

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

fn kept(changed: &[(Id, &str)]) -> Kept {
    let mut kept = example(day(2026, 11, 25), UnitSet::Metric);
    for (id, text) in changed {
        kept.put(*id, Entry::new(*text, 0));
    }
    kept
}

/// A place warm enough that the battery has to be charged.
const WARM: (Id, &str) = (facts::MONTHLY_MEANS.id(), "18 °C");

fn warm(ride: &str) -> Course {
    course(&kept(&[WARM, (facts::COLDEST_NIGHT.id(), "10 °C"), (facts::RIDE_DATE.id(), ride)]))
        .unwrap()
}

/// Points of a path of straight lines.
fn points(path: &str) -> Vec<[f64; 2]> {
    let numbers = path.replace(['M', 'L', 'Z'], " ");
    let numbers: Vec<f64> = numbers.split_whitespace().map(|it| it.parse().unwrap()).collect();
    numbers.chunks(2).map(|it| [it[0], it[1]]).collect()
}

/// The charge falls from day to day, and stands at full on each day to charge: a saw's teeth.
#[test]
fn charges_are_teeth() {
    let course = warm("Oct 1 2027");
    assert!(course.recharges.len() >= 2 && course.charge_by.is_none(), "{:?}", course.recharges);
    for charged in &course.recharges {
        let at = (*charged - course.park).num_days() as usize;
        assert!(course.charge[at][FAST] >= course.threshold, "still above on {charged}");
        assert!(course.charge[at + 1][TYPICAL] > 0.98 && course.charge[at][TYPICAL] < 0.95);
    }
    for wide in [true, false] {
        let it = season_line(&course, wide, UnitSet::Metric);
        let typical = points(&it.typical);
        let rises: Vec<f64> =
            typical.windows(2).filter(|it| it[1][1] < it[0][1] - 1.0).map(|it| it[0][0]).collect();
        assert_eq!(rises.len(), course.recharges.len(), "a tooth for each charge");
        for (rise, charged) in rises.iter().zip(&course.recharges) {
            let x = season_day(
                &course,
                (*charged - course.park).num_days() as usize,
                wide,
                UnitSet::Metric,
            )
            .x;
            assert!((rise - x).abs() < 0.1, "straight up on {charged}");
        }
        // A mark for each, and the first has its text.
        assert!(it.marks.len() >= course.recharges.len());
        assert!(it.acts.iter().any(|it| it.text.starts_with("charge on ")), "{:?}", it.acts);
        for charged in &course.recharges {
            assert!(it.told.contains(&torpor::show::long_day(*charged)), "{}", it.told);
        }
    }
}

/// How far a point is above or below the line through `line`, at its nearest where that goes straight up.
fn off(line: &[[f64; 2]], [x, y]: [f64; 2]) -> f64 {
    let over = |it: &&[[f64; 2]]| it[0][0] - 0.06 <= x && x <= it[1][0] + 0.06;
    let off = |it: &[[f64; 2]]| {
        let [[x0, y0], [x1, y1]] = [it[0], it[1]];
        if x1 - x0 < 0.15 {
            let [top, bottom] = [y0.min(y1), y0.max(y1)];
            return (top - y).max(y - bottom).max(0.0);
        }
        (y0 + (y1 - y0) * (x - x0) / (x1 - x0) - y).abs()
    };
    line.windows(2).filter(over).map(off).fold(f64::INFINITY, f64::min)
}

/// Plain logic: what is drawn with few points goes through every day's charge and temperature to a third of a pixel: a hair
/// of 0.2, and places rounded to a tenth.
#[test]
fn a_line_of_few_points_is_the_same_line() {
    let cold = course(&kept(&[(facts::RIDE_DATE.id(), "Dec 6 2027")])).unwrap();
    for course in [warm("Oct 1 2027"), warm("Dec 6 2027"), cold] {
        for wide in [true, false] {
            let it = season_line(&course, wide, UnitSet::Metric);
            let [charge, temperature] = [&it.typical, &it.temperature].map(|it| points(it));
            assert!(charge.len() + temperature.len() < course.charge.len() / 3, "{}", it.typical);
            let day = |day: usize| season_day(&course, day, wide, UnitSet::Metric);
            for night in 0..course.last_day() {
                let [now, next] = [day(night), day(night + 1)];
                assert!(off(&charge, [now.x, now.heights[0]]) < 0.33, "{night}: {}", it.typical);
                let noon = [(now.x + next.x) / 2.0, now.heights[1]];
                assert!(off(&temperature, noon) < 0.33, "{night}: {}", it.temperature);
            }
        }
    }
}

/// Whether a stem runs through a text of the days to act or of the threshold.
fn crossed(it: &SeasonLine, size: f64) -> bool {
    it.acts.iter().chain([&it.below]).any(|text| {
        let wide = text.text.len() as f64 * 0.56 * size;
        let left = if text.anchor == "end" { text.x - wide } else { text.x };
        it.stems.iter().any(|[x, top, bottom]| {
            *x > left && *x < left + wide && *top < text.y && *bottom > text.y - size
        })
    })
}

/// No stem of a day crosses a text, whatever the days; and what stands in the picture stays in it.
#[test]
fn no_stem_crosses_the_threshold_s_text() {
    for (place, charge) in [("18 °C", "100"), ("5 °C", "100"), ("25 °C", "80"), ("-5 °C", "90")]
    {
        for nights in (20..1000).step_by(23) {
            let ride = day(2026, 11, 14) + Days::new(nights);
            let ride = ride.to_string();
            let kept = kept(&[
                (facts::MONTHLY_MEANS.id(), place),
                (facts::CHARGE_WHEN_PARKED.id(), charge),
                (facts::RIDE_DATE.id(), &ride),
            ]);
            let course = course(&kept).unwrap();
            for (wide, size) in [(true, 12.0), (false, 14.0)] {
                let it = season_line(&course, wide, UnitSet::Metric);
                assert!(
                    !crossed(&it, size),
                    "{place} {charge} {ride} {:?} {:?}",
                    it.stems,
                    it.below
                );
                let all = it
                    .marks
                    .iter()
                    .copied()
                    .chain(points(&it.typical))
                    .chain(points(&it.temperature));
                for [x, y] in all {
                    assert!(x >= 0.0 && x <= it.size[0] && y >= 0.0 && y <= it.size[1], "{x} {y}");
                }
            }
        }
    }
}

/// Where little is left to freezing the temperature's line says so, and so does the day.
#[test]
fn frost_is_seen_and_told() {
    let cold = course(&kept(&[
        (facts::CHEMISTRY.id(), "flooded_antimony"),
        (facts::CHARGE_WHEN_PARKED.id(), "40 %"),
        (facts::CHARGE_BELOW.id(), "20 %"),
        (facts::COLDEST_NIGHT.id(), "-32 °C"),
    ]))
    .unwrap();
    let it = season_line(&cold, true, UnitSet::Metric);
    assert!(it.frost.starts_with('M') && it.told.contains("may freeze"), "{}", it.told);
    let worst = cold.margin.iter().copied().reduce(f64::min).unwrap();
    let night = cold.margin.iter().position(|it| *it == worst).unwrap();
    let told = season_day(&cold, night, true, UnitSet::Metric).told;
    assert!(told.contains("may freeze in a cold snap"), "{told}");
    // It is on the day it is parked, before it is charged; from then on the plan holds it off.
    assert!(night == 0 && cold.recharges[0] == cold.park, "{:?}", cold.recharges);
    assert!(cold.margin[1..].iter().all(|it| *it >= 5.0), "{:?}", cold.margin);
    // LiFePO4 has nothing that freezes.
    let lithium = [(facts::CHEMISTRY.id(), "lifepo4"), (facts::CAPACITY.id(), "51 Wh")];
    let lithium = course(&kept(&lithium)).unwrap();
    assert!(lithium.margin.is_empty() && season_line(&lithium, true, UnitSet::Us).frost.is_empty());
}

/// A day says its date, which of the season it is, charge, volts, temperature and what is to be done.
#[test]
fn a_day_is_told_in_words() {
    let course = warm("Oct 1 2027");
    let first = season_day(&course, 0, true, UnitSet::Metric);
    assert!(
        first.told.starts_with(
            "Sat, Nov 14, day 0 of 321 · charge 95–100\u{a0}%, most likely 100\u{a0}% · rests at 12.7"
        ),
        "{}",
        first.told
    );
    assert!(first.told.contains(" · 18\u{a0}°C"), "{}", first.told);
    let us = season_day(&course, 0, true, UnitSet::Us).told;
    assert!(us.contains("64\u{a0}°F") && us.contains("12.7"), "{us}");
    let charged = (course.recharges[0] - course.park).num_days() as usize;
    assert!(
        season_day(&course, charged, false, UnitSet::Metric).told.ends_with("charge it to full")
    );
    let look = (course.look.unwrap() - course.park).num_days() as usize;
    assert!(season_day(&course, look, false, UnitSet::Metric).told.ends_with("look at the meter"));
    // The last day, and whatever lies beyond it.
    let last = season_day(&course, 321, true, UnitSet::Metric);
    assert_eq!(last, season_day(&course, 9999, true, UnitSet::Metric));
    assert!(last.told.starts_with("Fri, Oct 1, day 321 of 321"), "{}", last.told);
    // Fuel a year old, by common practice: 366 days, as the fuel line judges it.
    let long = warm("Oct 1 2028");
    assert_eq!(long.fuel_old, Some(day(2027, 11, 15)));
    let fuel = season_day(&long, 366, true, UnitSet::Metric).told;
    assert!(fuel.ends_with("fuel a year old"), "{fuel}");
    assert!(season_line(&long, false, UnitSet::Metric).fuel.is_some());
    assert_eq!(course.fuel_old, None);
}

/// A season of no night still has its one day.
#[test]
fn the_same_day() {
    let course = course(&kept(&[(facts::RIDE_DATE.id(), "Nov 14 2026")])).unwrap();
    for wide in [true, false] {
        assert_eq!(season_day_at(&course, wide, 200.0), 0);
        let told = season_day(&course, 0, wide, UnitSet::Metric).told;
        assert!(told.starts_with("Sat, Nov 14, day 0 of 0"), "{told}");
        let line = season_line(&course, wide, UnitSet::Metric);
        assert!(!line.told.is_empty());
    }
}

proptest! {
    /// The day under a pointer is the day whose marker stands there; anything else is the nearest end.
    #[test]
    fn a_pointer_finds_its_day(nights in 1u64..1095, share in 0.0..=1.0f64, wide: bool) {
        let ride = (day(2026, 11, 14) + Days::new(nights)).to_string();
        let course = course(&kept(&[(facts::RIDE_DATE.id(), &ride)])).unwrap();
        let index = (share * nights as f64) as usize;
        let x = season_day(&course, index, wide, UnitSet::Metric).x;
        prop_assert_eq!(season_day_at(&course, wide, x), index);
        prop_assert_eq!(season_day_at(&course, wide, -50.0), 0);
        prop_assert_eq!(season_day_at(&course, wide, f64::NAN), 0);
        prop_assert_eq!(season_day_at(&course, wide, 1e9) as u64, nights);
    }
}

/// Plain logic: where charges are drawn, what is said of a later day holds only with them, and the panel's figures without.
#[test]
fn line_and_panel_say_which_they_mean() {
    let kept =
        kept(&[WARM, (facts::COLDEST_NIGHT.id(), "10 °C"), (facts::RIDE_DATE.id(), "Oct 1 2027")]);
    let course = course(&kept).unwrap();
    let told = |index: usize| season_day(&course, index, true, UnitSet::Metric).told;
    let first = course.day_of(course.recharges[0]).unwrap();
    assert!(!told(first).contains("if charged as planned"), "{}", told(first));
    assert!(told(first + 1).contains(" · if charged as planned: charge "), "{}", told(first + 1));
    let line = season_line(&course, true, UnitSet::Metric).told;
    assert!(line.contains("on Fri, Oct 1 2027 if charged as planned;"), "{line}");
    let panel = torpor::plan::battery(&kept, UnitSet::Metric);
    assert!(panel.note.contains("without charging"), "{}", panel.note);
    // Nothing to charge: one figure, and nothing to tell apart.
    let mut off = kept.clone();
    off.put(facts::BATTERY_KEPT.id(), Entry::new("maintainer", 0));
    let course = torpor::plan::course(&off).unwrap();
    assert!(!season_line(&course, true, UnitSet::Metric).told.contains("as planned"));
    assert!(!torpor::plan::battery(&off, UnitSet::Metric).note.contains("without charging"));
}

/// Source: an empty AGM's acid freezes at −7.2 °C (METHOD of the reference values: 1.100); LiFePO4 is charged from 0 °C on.
#[test]
fn no_day_says_charge_what_must_not_be_charged() {
    let day_0 = |changed: &[(Id, &str)]| {
        let mut all = vec![
            (facts::MONTHLY_MEANS.id(), "-20 °C"),
            (facts::PARK_DATE.id(), "2027-01-10"),
            (facts::CHARGE_WHEN_PARKED.id(), "5 %"),
        ];
        all.extend(changed);
        let course = course(&kept(&all)).unwrap();
        assert_eq!(course.recharges.first(), Some(&course.park));
        season_day(&course, 0, true, UnitSet::Metric).told
    };
    let frozen = day_0(&[]);
    assert!(
        frozen.ends_with("not before it has thawed") && !frozen.contains("to full"),
        "{frozen}"
    );
    let lithium = day_0(&[(facts::CHEMISTRY.id(), "lifepo4"), (facts::CAPACITY.id(), "51 Wh")]);
    assert!(lithium.contains("charge it indoors"), "{lithium}");
    // By hand: taken before the charge, the margin of that day is far under nothing.
    assert!(frozen.contains("may freeze in a cold snap"), "{frozen}");
}
