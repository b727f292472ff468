//! Shapes as SVG paths.

use super::place;
use crate::digits;

pub(super) type Point = [f64; 2];

/// A point as it stands in a path.
pub(super) fn at([x, y]: Point) -> String {
    format!("{} {}", digits::plain(x, 1), digits::plain(y, 1))
}

/// `from` and `by` times `way`.
pub(super) fn along(from: Point, way: Point, by: f64) -> Point {
    [from[0] + way[0] * by, from[1] + way[1] * by]
}

pub(super) fn line(from: Point, to: Point) -> String {
    format!("M{}L{}", at(from), at(to))
}

/// Part of a circle, less than a turn's half or just that.
pub(super) fn arc(from: Point, to: Point, radius: f64, clockwise: bool) -> String {
    let radius = digits::plain(radius, 1);
    format!("M{}A{radius} {radius} 0 0 {} {}", at(from), u8::from(clockwise), at(to))
}

/// A link with round ends about two points, which are not the same.
pub(super) fn capsule(from: Point, to: Point, half: f64) -> String {
    let way = [to[0] - from[0], to[1] - from[1]];
    let length = (way[0] * way[0] + way[1] * way[1]).sqrt();
    let across = [-way[1] / length, way[0] / length];
    let side = |point, by| along(point, across, by * half);
    let back = arc(side(from, 1.0), side(from, -1.0), half, true);
    let front = arc(side(to, -1.0), side(to, 1.0), half, true).replacen('M', "L", 1);
    format!("{back}{front}Z")
}

pub(super) fn circle(center: Point, radius: f64) -> String {
    let [left, right] = [-1.0, 1.0].map(|it| along(center, [radius, 0.0], it));
    let back = arc(right, left, radius, true).replacen('M', "L", 1);
    format!("{}{back}Z", arc(left, right, radius, true))
}

/// A hexagon about a point, one corner to the right.
pub(super) fn hexagon(center: Point, radius: f64) -> String {
    let high = 0.75_f64.sqrt();
    let corners = [[1.0, 0.0], [0.5, high], [-0.5, high], [-1.0, 0.0], [-0.5, -high], [0.5, -high]];
    super::path(&corners.map(|it| along(center, it, radius))) + "Z"
}

/// A square about a point.
pub(super) fn square(center: Point, half: f64) -> String {
    let corners = [[1.0, 1.0], [-1.0, 1.0], [-1.0, -1.0], [1.0, -1.0]];
    super::path(&corners.map(|it| along(center, it, half))) + "Z"
}

/// The parts of an upright line that cross no text.
pub(super) fn upright(places: &place::Places, x: f64, ends: [f64; 2]) -> String {
    places.upright(x, ends).iter().map(|[top, bottom]| line([x, *top], [x, *bottom])).collect()
}
