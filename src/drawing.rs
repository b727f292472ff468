//! Geometry of the pictures: what is drawn where, without a word of how a browser draws it.

mod adapter;
mod battery;
mod pattern;
mod place;
mod season_day;
mod season_line;
mod shape;

pub use adapter::{AdapterDrawing, adapter};
pub use battery::{BATTERY_SIZE, BatteryDrawing, battery};
pub use pattern::{BOLTS_DRAWN, PatternDrawing, pattern};
pub use place::TEXT_SIZE;
pub use season_day::{SeasonDay, season_day, season_day_at};
pub use season_line::{STRIP_SIZE, SeasonLine, acts_told, season_line, season_size, season_strip};

use crate::digits;

/// A text with its place; `anchor` is where the text lies about `x`.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// From the left.
    pub x: f64,
    /// From the top.
    pub y: f64,
    /// "start", "middle" or "end".
    pub anchor: &'static str,
    /// The text.
    pub text: String,
}

/// Straight from point to point, as an SVG path.
fn path(points: &[[f64; 2]]) -> String {
    let mut path = String::new();
    for (at, [x, y]) in points.iter().enumerate() {
        let letter = if at == 0 { 'M' } else { 'L' };
        path.push(letter);
        path.push_str(&digits::plain(*x, 1));
        path.push(' ');
        path.push_str(&digits::plain(*y, 1));
    }
    path
}

/// A circle about a point, as a part of an SVG path.
pub fn dot([x, y]: [f64; 2], r: f64) -> String {
    let [left, y, r, across] = [x - r, y, r, 2.0 * r].map(|it| digits::plain(it, 1));
    format!("M{left} {y}a{r} {r} 0 1 0 {across} 0a{r} {r} 0 1 0 -{across} 0")
}

/// Farthest that a line which was made lean runs above or below what it was: less than an eye tells apart.
const HAIR: f64 = 0.2;

/// A line from left to right with only those of its points that keep it within a hair of all others: the four hundred days
/// of a season are some thirty corners. Where it goes straight up, both ends stay.
fn lean(points: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let mut kept: Vec<[f64; 2]> = points.first().copied().into_iter().collect();
    // The last one kept, and between which slopes the way on from it may lie.
    let Some(mut from) = kept.first().copied() else { return kept };
    let any = [f64::NEG_INFINITY, f64::INFINITY];
    let mut steep = any;
    for ends in points.windows(2) {
        let [before, [x, y]] = [ends[0], ends[1]];
        let up = x <= before[0];
        let slope = (y - from[1]) / (x - from[0]);
        if (up || slope < steep[0] || slope > steep[1]) && from != before {
            kept.push(before);
            (from, steep) = (before, any);
        }
        if up {
            kept.push([x, y]);
            (from, steep) = ([x, y], any);
        } else {
            let run = 1.0 / (x - from[0]);
            let [slope, slack] = [(y - from[1]) * run, HAIR * run];
            steep = [steep[0].max(slope - slack), steep[1].min(slope + slack)];
        }
    }
    if let Some(last) = points.last().filter(|it| **it != from) {
        kept.push(*last);
    }
    kept
}
