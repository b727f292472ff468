//! Geometry of the pictures: what is drawn where, without a word of how a browser draws it.

mod adapter;
mod battery;
mod pattern;
mod place;
mod season_day;
mod season_line;
mod shape;

pub use adapter::{AdapterDrawing, adapter};
pub use battery::{BatteryDrawing, battery};
pub use pattern::{BOLTS_DRAWN, PatternDrawing, pattern};
pub use place::TEXT_SIZE;
pub use season_day::{SeasonDay, season_day, season_day_at};
pub use season_line::{SeasonLine, acts_told, season_line, season_strip};

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
fn path(points: impl Iterator<Item = [f64; 2]>) -> String {
    let mut path = String::new();
    for (at, [x, y]) in points.enumerate() {
        let letter = if at == 0 { 'M' } else { 'L' };
        path.push(letter);
        path.push_str(&digits::plain(x, 1));
        path.push(' ');
        path.push_str(&digits::plain(y, 1));
    }
    path
}
