//! The pictures of the torque line: to scale, legible, and the order of tightening as published.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use torpor::torque::pattern::order;

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
