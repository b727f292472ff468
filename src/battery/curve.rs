//! A published table read by straight lines between its points.

/// Points (x, y) with x rising.
pub(crate) type Points = [(f64, f64)];

/// y at x; the first or last y outside the table, 0 for an empty one.
pub(crate) fn at(points: &Points, x: f64) -> f64 {
    between(points.iter().copied(), x)
}

/// x at y for a table whose y rises too; the first or last x outside of it.
pub(crate) fn inverse(points: &Points, y: f64) -> f64 {
    between(points.iter().map(|(x, y)| (*y, *x)), y)
}

fn between(points: impl Iterator<Item = (f64, f64)>, x: f64) -> f64 {
    let mut before: Option<(f64, f64)> = None;
    for (x1, y1) in points {
        if x <= x1 {
            return before.map_or(y1, |(x0, y0)| y0 + (y1 - y0) * (x - x0) / (x1 - x0));
        }
        before = Some((x1, y1));
    }
    before.map_or(0.0, |it| it.1)
}
