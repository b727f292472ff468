//! A published table read by straight lines between its points.

/// Points (x, y) with x rising.
pub(crate) type Points = [(f64, f64)];

/// y at x; the first or last y outside the table, 0 for an empty one.
pub(crate) fn at(points: &Points, x: f64) -> f64 {
    between(points, x, |it| it)
}

/// x at y for a table whose y rises too; the first or last x outside of it.
pub(crate) fn inverse(points: &Points, y: f64) -> f64 {
    between(points, y, |(x, y)| (y, x))
}

fn between(points: &Points, x: f64, turned: fn((f64, f64)) -> (f64, f64)) -> f64 {
    let mut before = None;
    for point in points.iter().copied().map(turned) {
        if x <= point.0 {
            return match before {
                None => point.1,
                Some((x0, y0)) => y0 + (point.1 - y0) * (x - x0) / (point.0 - x0),
            };
        }
        before = Some(point);
    }
    before.map_or(0.0, |it| it.1)
}
