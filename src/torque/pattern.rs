//! In which order the bolts on a circle are tightened where the manual gives none.

use crate::source;
use crate::{units::Measure, working::Law};

/// The order of the bolts on a circle.
pub const BOLT_CIRCLE: Law = Law {
    formula: "opposite pairs, each as far as can be from those that are tight",
    gives: Measure::Number,
    source: source::BOLT_CIRCLE,
    holds: "bolts spread evenly on one circle, and a manual that gives no order: its own order comes first",
};

/// Positions around the circle, counted from 0 in one direction, in the order of tightening.
///
/// An even count goes by opposite pairs. The next pair is the one farthest from every pair that is tight; among equals,
/// the one farthest from the pair before. An odd count goes to the bolt next to the opposite one each time: a star.
///
/// ```
/// use torpor::torque::pattern::order;
/// assert_eq!(order(4), [0, 2, 1, 3]);
/// assert_eq!(order(5), [0, 2, 4, 1, 3]);
/// assert_eq!(order(6), [0, 3, 1, 4, 2, 5]);
/// ```
pub fn order(count: usize) -> Vec<usize> {
    let half = count / 2;
    if count % 2 == 1 {
        // A step that shares no divisor with the count comes by every bolt once.
        return (0..count).map(|at| at * half.max(1) % count).collect();
    }
    let mut pairs: Vec<usize> = Vec::new();
    while pairs.len() < half {
        let mut best = (0, 0, 0);
        for pair in (0..half).filter(|it| !pairs.contains(it)) {
            let away = |from: &usize| {
                let steps = pair.abs_diff(*from);
                steps.min(half - steps)
            };
            let nearest = pairs.iter().map(away).min().unwrap_or(half);
            let before = pairs.last().map_or(half, away);
            if (nearest, before) > (best.0, best.1) {
                best = (nearest, before, pair);
            }
        }
        pairs.push(best.2);
    }
    pairs.into_iter().flat_map(|pair| [pair, pair + half]).collect()
}
