//! The order of tightening: bolts on a circle, each with its number.

use super::place::TEXT_SIZE;
use super::shape::{Point, circle, hexagon};
use super::{Label, path};
use crate::torque::{cosine, pattern};
use crate::words::drawings as words;
use std::f64::consts::{FRAC_PI_2, TAU};

/// Fewest and most bolts that are drawn.
pub const BOLTS_DRAWN: [usize; 2] = [2, 24];

/// Width and height of the picture: small enough for any page, so that there is one layout.
const SIZE: f64 = 264.0;

/// Bolts on a circle, numbered in the order of tightening.
#[derive(Debug, Clone, PartialEq)]
pub struct PatternDrawing {
    /// Left, top, width and height of the picture.
    pub frame: [f64; 4],
    /// The circle on which the bolts stand, as an SVG path.
    pub circle: String,
    /// From bolt to bolt in the order of tightening.
    pub joins: String,
    /// Middles of the bolts, in the order of tightening.
    pub bolts: Vec<[f64; 2]>,
    /// Heads of the bolts, in the same order.
    pub heads: Vec<String>,
    /// Their numbers.
    pub numbers: Vec<Label>,
    /// All of it in one sentence.
    pub told: String,
    /// Where the order comes from.
    pub source: &'static str,
}

/// Draws the order of tightening; nothing where there are fewer or more bolts than [`BOLTS_DRAWN`].
pub fn pattern(count: usize) -> Option<PatternDrawing> {
    let [fewest, most] = BOLTS_DRAWN;
    if count < fewest || count > most {
        return None;
    }
    let order = pattern::order(count);
    let middle = SIZE / 2.0;
    // A head as wide as two digits ask for, in whose place two neighbors do not touch.
    let head = 13.0;
    let ring = middle - head - 3.0;
    let bolt = |place: &usize| -> Point {
        let turn = TAU * *place as f64 / count as f64;
        [middle + ring * cosine(turn - FRAC_PI_2), middle - ring * cosine(turn)]
    };
    let bolts: Vec<Point> = order.iter().map(bolt).collect();
    let number = |(at, [x, y]): (usize, &Point)| Label {
        x: *x,
        y: y + TEXT_SIZE * 0.36,
        anchor: "middle",
        text: (at + 1).to_string(),
    };
    Some(PatternDrawing {
        frame: [0.0, 0.0, SIZE, SIZE],
        circle: circle([middle; 2], ring),
        joins: path(&bolts),
        heads: bolts.iter().map(|it| hexagon(*it, head)).collect(),
        numbers: bolts.iter().enumerate().map(number).collect(),
        told: words::pattern(&order),
        source: pattern::BOLT_CIRCLE.source,
        bolts,
    })
}
