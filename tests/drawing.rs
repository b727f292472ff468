//! The pictures of the torque line: to scale, legible, and the order of tightening as published.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use torpor::drawing::{self, AdapterDrawing, Label, TEXT_SIZE};
use torpor::torque::pattern::order;
use torpor::units::UnitSet;
use uom::si::{
    angle::degree,
    f64::{Angle, Length},
    length::millimeter,
};

fn drawn(wrench: f64, adapter: f64, angle: f64) -> AdapterDrawing {
    let [wrench, adapter] = [wrench, adapter].map(|it| Some(Length::new::<millimeter>(it)));
    drawing::adapter(wrench, adapter, Some(Angle::new::<degree>(angle)), UnitSet::Metric)
}

/// Lengths, angles and layouts, usual ones and odd ones.
fn each(mut check: impl FnMut(f64, f64, f64, AdapterDrawing)) {
    for wrench in [90.0, 150.0, 285.0, 540.0, 900.0] {
        for adapter in [6.0, 25.0, 40.0, 87.5, 120.0, 300.0, 900.0] {
            for angle in (-180..=180)
                .step_by(15)
                .map(f64::from)
                .chain([0.5, -1.0, 10.0, 92.5, 109.0, 111.0, 179.0])
            {
                check(wrench, adapter, angle, drawn(wrench, adapter, angle));
            }
        }
    }
}

/// What is drawn while something is not known yet.
fn sketches() -> Vec<AdapterDrawing> {
    let length = |it: f64| Length::new::<millimeter>(it);
    let mut all = Vec::new();
    for wrench in [None, Some(length(285.0))] {
        for adapter in [None, Some(length(40.0)), Some(length(0.0))] {
            for angle in [None, Some(0.0), Some(45.0), Some(90.0), Some(180.0), Some(-90.0)] {
                let angle = angle.map(Angle::new::<degree>);
                let straight = adapter == Some(length(0.0));
                let whole = wrench.is_some() && adapter.is_some() && (straight || angle.is_some());
                if !whole {
                    all.push(drawing::adapter(wrench, adapter, angle, UnitSet::Us));
                }
            }
        }
    }
    all
}

fn way(from: [f64; 2], to: [f64; 2]) -> [f64; 2] {
    [to[0] - from[0], to[1] - from[1]]
}

#[test]
fn wrench_and_adapter_are_to_scale_and_at_their_angle() {
    each(|wrench, adapter, angle, it| {
        let case = format!("{wrench} mm, {adapter} mm, {angle}°");
        assert!(it.to_scale, "{case}");
        let [handle, link] = [way(it.hand, it.drive), way(it.drive, it.fastener)];
        let [long, short] = [handle, link].map(|it| it[0].hypot(it[1]));
        assert!((short / long / (adapter / wrench) - 1.0).abs() < 1e-9, "{case}");
        // Counted from the handle led on, up on the page for more than 0°.
        let turned = (-link[1]).atan2(-link[0]).to_degrees();
        let off = (turned - angle).rem_euclid(360.0);
        assert!(off.min(360.0 - off) < 1e-6, "{case}: drawn at {turned}°");
        // The lever is what lies along the handle.
        let lever = (it.hand[0] - it.fastener[0]) / long * wrench;
        assert!(
            (lever - wrench - adapter * angle.to_radians().cos()).abs()
                < 1e-9 * wrench.max(adapter),
            "{case}"
        );
    });
}

/// Lengths at the very limits that the blanks take.
#[test]
fn odd_lengths_draw_no_nonsense() {
    for (wrench, adapter) in [(3000.0, 0.1), (1.0, 1000.0), (0.1, 0.1), (15.3, 300.0)] {
        for angle in [0.0, 60.0, 180.0] {
            let it = drawn(wrench, adapter, angle);
            legible(&it, &format!("{wrench} mm, {adapter} mm, {angle}°"));
        }
    }
    let none = |it: f64| Some(Length::new::<millimeter>(it));
    for (wrench, adapter) in [(0.0, 40.0), (-1.0, 40.0), (f64::NAN, 40.0), (285.0, f64::INFINITY)] {
        let it = drawing::adapter(none(wrench), none(adapter), None, UnitSet::Metric);
        assert!(!it.to_scale);
        legible(&it, "a sketch");
    }
}

#[test]
fn straight_socket_has_no_adapter() {
    let it = drawn(285.0, 0.0, 90.0);
    assert_eq!(it.drive, it.fastener);
    assert!(it.to_scale && it.adapter.is_empty() && it.arc.is_empty() && it.extension.is_empty());
}

/// What a text covers: 0.6 em a letter, 1.2 em high.
fn area(it: &Label) -> [f64; 4] {
    let wide = it.text.chars().count() as f64 * 0.6 * TEXT_SIZE;
    let left = match it.anchor {
        "start" => it.x,
        "middle" => it.x - wide / 2.0,
        "end" => it.x - wide,
        other => panic!("{other}"),
    };
    [left, it.y - 0.95 * TEXT_SIZE, left + wide, it.y + 0.25 * TEXT_SIZE]
}

fn none_overlaps(labels: &[&Label], frame: [f64; 4], case: &str) {
    let [left, top, wide, high] = frame;
    for (at, one) in labels.iter().enumerate() {
        let a = area(one);
        assert!(
            a[0] >= left && a[1] >= top && a[2] <= left + wide && a[3] <= top + high,
            "{case}: {one:?} stands out of {frame:?}"
        );
        for other in &labels[..at] {
            let b = area(other);
            let over = [a[2].min(b[2]) - a[0].max(b[0]), a[3].min(b[3]) - a[1].max(b[1])];
            assert!(over[0] <= 0.01 || over[1] <= 0.01, "{case}: {one:?} on {other:?}");
        }
    }
}

/// Points that a path goes to.
fn points(path: &str) -> Vec<[f64; 2]> {
    let mut found: Vec<[f64; 2]> = Vec::new();
    let starts = path.match_indices(|it: char| it.is_ascii_uppercase());
    for (at, letter) in starts {
        let rest = &path[at + 1..];
        let rest = &rest[..rest.find(|it: char| it.is_ascii_uppercase()).unwrap_or(rest.len())];
        let numbers: Vec<f64> = rest.split_whitespace().map(|it| it.parse().unwrap()).collect();
        match (letter, &numbers[..]) {
            ("M" | "L", [x, y]) | ("A", [_, _, _, _, _, x, y]) => found.push([*x, *y]),
            ("H", [x]) => found.push([*x, found.last().unwrap()[1]]),
            ("Z", []) => {}
            other => panic!("{other:?} in {path}"),
        }
    }
    found
}

fn legible(it: &AdapterDrawing, case: &str) {
    let labels: Vec<&Label> = it.figures.iter().chain(&it.names).chain(&it.cares).collect();
    none_overlaps(&labels, it.frame, case);
    let [left, top, wide, high] = it.frame;
    for path in [
        &it.wrench,
        &it.fingers,
        &it.adapter,
        &it.hexagon,
        &it.square,
        &it.extension,
        &it.arc,
        &it.pull,
        &it.dimensions,
    ] {
        for [x, y] in points(path) {
            assert!(
                x >= left && x <= left + wide && y >= top && y <= top + high,
                "{case}: {x} {y} of {path} is out of {:?}",
                it.frame
            );
        }
    }
}

#[test]
fn texts_stand_in_the_picture_and_not_on_each_other() {
    each(|wrench, adapter, angle, it| {
        let case = format!("{wrench} mm, {adapter} mm, {angle}°");
        legible(&it, &case);
        // What matters always has a place.
        let figures: Vec<&str> = it.figures.iter().map(|it| it.text.as_str()).collect();
        let angle_shown = format!("{angle}°").replace('-', "−");
        for text in [format!("{wrench}\u{a0}mm"), format!("adapter {adapter}\u{a0}mm"), angle_shown]
        {
            assert!(figures.contains(&text.as_str()), "{case}: {text} is not in {figures:?}");
        }
        let lever = wrench + adapter * angle.to_radians().cos();
        assert_eq!(figures.len(), 3 + usize::from(lever > 1e-9), "{case}: {figures:?}");
        assert_eq!(it.cares.is_empty(), lever > 1e-9, "{case}");
        assert!(it.told.starts_with("Drawn to scale: "));
    });
    let all = sketches();
    assert!(all.len() > 15);
    for it in &all {
        let words: Vec<&str> = it.names.iter().map(|it| it.text.as_str()).collect();
        legible(it, &format!("{words:?} {:?}", it.figures));
        assert!(
            it.told.starts_with("Sketch, not to scale: ")
                && words.contains(&"sketch, not to scale")
        );
        let none = it.drive == it.fastener;
        assert!(
            none || it.figures.iter().any(|it| it.text.ends_with('°')) || words.contains(&"angle")
        );
        assert!(
            none || it.figures.iter().any(|it| it.text.starts_with("adapter"))
                || words.contains(&"adapter length,")
        );
    }
}

/// The page says 13 px where the places are counted with 13.
#[test]
fn texts_are_as_large_on_the_page_as_they_are_counted() {
    let sheet =
        std::fs::read_to_string(format!("{}/style/sheet.css", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let rule = sheet.split(".drawing text {").nth(1).unwrap();
    assert!(rule.trim_start().starts_with(&format!("font: {TEXT_SIZE}px ")));
}

#[test]
fn bolts_stand_in_order_on_their_circle_with_legible_numbers() {
    for count in 2..=24 {
        let it = drawing::pattern(count).unwrap();
        none_overlaps(&it.numbers.iter().collect::<Vec<_>>(), it.frame, &format!("{count} bolts"));
        let center = [it.frame[2] / 2.0, it.frame[3] / 2.0];
        for (bolt, place) in it.bolts.iter().zip(order(count)) {
            let [x, y] = way(center, *bolt);
            let turned = x.atan2(-y).to_degrees().rem_euclid(360.0);
            let due = 360.0 * place as f64 / count as f64;
            assert!((turned - due).abs() < 1e-6 || (turned - due - 360.0).abs() < 1e-6);
        }
        for (at, head) in it.heads.iter().enumerate() {
            for other in &it.bolts[..at] {
                let [x, y] = way(*other, it.bolts[at]);
                assert!(x.hypot(y) > 2.0 * 13.0, "{count} bolts: heads touch");
            }
            for [x, y] in points(head) {
                assert!(x >= 0.0 && y >= 0.0 && x <= it.frame[2] && y <= it.frame[3]);
            }
        }
    }
    for count in [0, 1, 25] {
        assert_eq!(drawing::pattern(count), None);
    }
}

/// Source: tightening_order.csv, each row with its own.
#[test]
fn tightening_order_is_the_published() {
    let path =
        format!("{}/tests/reference/torque/tightening_order.csv", env!("CARGO_MANIFEST_DIR"));
    let rows: Vec<_> =
        csv::Reader::from_path(path).unwrap().into_records().map(Result::unwrap).collect();
    assert_eq!(rows.len(), 7);
    for row in rows {
        let bolts: usize = row[1].parse().unwrap();
        let printed: Vec<usize> =
            row[2].split(' ').map(|it| it.parse::<usize>().unwrap() - 1).collect();
        assert_eq!(order(bolts)[..printed.len()], printed, "{}", &row[0]);
    }
}

/// Source: US Army TB 9-3950-253-13&P WP 0061 (O7): its whole figure keeps to the rule that ours keeps to.
#[test]
fn the_army_s_figure_goes_by_opposite_pairs() {
    let clockwise = [1, 5, 12, 3, 9, 7, 2, 6, 11, 4, 10, 8];
    let place = |number: usize| clockwise.iter().position(|it| *it == number).unwrap();
    for pair in 0..6 {
        assert_eq!(place(2 * pair + 1).abs_diff(place(2 * pair + 2)), 6);
    }
    assert_eq!((1..=6).map(place).collect::<Vec<_>>(), order(12)[..6]);
}

#[test]
fn every_bolt_is_tightened_once_and_pairs_are_opposite() {
    for count in 0..=60 {
        let order = order(count);
        let mut sorted = order.clone();
        sorted.sort_unstable();
        assert_eq!(sorted, (0..count).collect::<Vec<_>>(), "{count} bolts");
        if count % 2 == 0 {
            for pair in order.chunks(2) {
                assert_eq!(pair[0].abs_diff(pair[1]), count / 2, "{count} bolts: {order:?}");
            }
        }
        // Never one beside the one before, where there is another way.
        if count >= 5 {
            for two in order.windows(2) {
                let steps = two[0].abs_diff(two[1]);
                assert!(steps.min(count - steps) > 1, "{count} bolts: {order:?}");
            }
        }
    }
}
