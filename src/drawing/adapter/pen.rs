//! Dimensions and texts about wrench and adapter.

use super::super::Label;
use super::super::place::{EDGE, LINE, Places, Spot};
use super::super::shape::{Point, along, arc, line, upright};
use super::scene::{HAND, Layout, PAST, PULL, Scene};
use crate::entry::text::joined;
use crate::torque::cosine;
use crate::words::drawings as words;
use std::f64::consts::FRAC_PI_2;

/// A length along the handle.
pub(super) struct Row {
    pub(super) ends: [f64; 2],
    pub(super) figure: Option<String>,
    pub(super) words: &'static [&'static str],
}

/// Sets dimensions and texts.
pub(super) struct Pen {
    pub(super) places: Places,
    /// How far down the rows have come, away from the adapter.
    next: f64,
    pub(super) extension: String,
    pub(super) arc: String,
    pub(super) dimensions: String,
    pub(super) figures: Vec<Label>,
    pub(super) names: Vec<Label>,
}

impl Pen {
    pub(super) fn new(layout: &Layout, scene: &Scene) -> Self {
        let mut places = Places::new(layout.width);
        places.keep_line(scene.drive, [scene.hand[0] + scene.grip, 0.0], 9.0);
        places.keep(scene.drive, [scene.link + 3.0; 2]);
        places.keep(scene.hand, [scene.grip.min(22.0), HAND]);
        places.keep_line(scene.hand, [scene.hand[0], PULL], 6.0);
        places.keep_line(scene.drive, scene.fastener, scene.link + 3.0);
        // Under the hand lies the arrow.
        let next = if scene.side > 0.0 { PULL } else { HAND + 5.0 };
        Self {
            places,
            next,
            extension: String::new(),
            arc: String::new(),
            dimensions: String::new(),
            figures: Vec::new(),
            names: Vec::new(),
        }
    }

    /// A dimension along the handle; gives the height of its line.
    pub(super) fn row(&mut self, scene: &Scene, row: &Row) -> f64 {
        let middle = (row.ends[0] + row.ends[1]) / 2.0;
        let [figure, words] = [f64::from(u8::from(row.figure.is_some())), row.words.len() as f64];
        // The figure stands above its line, the words below, on either side of the handle.
        let [above, below] = [figure * 12.0 + 8.0, words * LINE + 2.0];
        let [near, far] = if scene.side > 0.0 { [above, below] } else { [below, above] };
        let y = scene.side * (self.next + near);
        self.next += near + far + 3.0;
        if let Some(figure) = &row.figure {
            let above = (middle, y - 1.0 - LINE / 2.0, "middle");
            self.places.set(&mut self.figures, &[figure], above);
        }
        let under = y + 2.0 + words * LINE / 2.0;
        self.places.set(&mut self.names, row.words, (middle, under, "middle"));
        self.line([row.ends[0], y], [row.ends[1], y]);
        for x in row.ends {
            self.line([x, y - 4.0], [x, y + 4.0]);
        }
        y
    }

    /// Set under all that stands so far.
    pub(super) fn care(&mut self, words: &[&str]) -> Vec<Label> {
        let half = LINE * words.len() as f64 / 2.0;
        let [_, bottom] = self.places.reach();
        let mut cares = Vec::new();
        self.places.set(&mut cares, words, (EDGE, bottom + 4.0 + half, "start"));
        cares
    }

    /// A line of a dimension.
    #[inline(never)]
    fn line(&mut self, from: Point, to: Point) {
        self.dimensions.push_str(&line(from, to));
    }

    /// One that texts keep off.
    #[inline(never)]
    fn line_kept(&mut self, from: Point, to: Point) {
        self.line(from, to);
        self.places.keep_line(from, to, 2.0);
    }

    /// The dimension along the adapter.
    pub(super) fn adapter_dimension(&mut self, scene: &Scene, length: Option<String>) {
        let (across, off) = scene.across();
        let shift = |by: f64| {
            let by = scene.toward(across, by);
            [by[0] - scene.drive[0], by[1]]
        };
        let [start, end, over] = [scene.link + 4.0, off, off + 4.0].map(shift);
        let [from, to] = [scene.drive, scene.fastener].map(|it| along(it, end, 1.0));
        self.line_kept(from, to);
        for point in [scene.drive, scene.fastener] {
            self.line_kept(along(point, start, 1.0), along(point, over, 1.0));
        }

        let figure = length.map(|it| words::adapter(&it));
        let lines: Vec<&str> = match &figure {
            Some(figure) => vec![figure],
            None => words::ADAPTER_LENGTH.to_vec(),
        };
        let middle = [(from[0] + to[0]) / 2.0, (from[1] + to[1]) / 2.0];
        let half = LINE * lines.len() as f64 / 2.0;
        let away = shift(1.0);
        let anchor = leaning(away[0]);
        let mut spots: Vec<Spot> = Vec::new();
        // Beside its line, beyond its far end, above it.
        for by in [5.0, 9.0, 15.0, 24.0] {
            for share in [0.5, 0.75, 1.0] {
                let way = [to[0] - from[0], to[1] - from[1]];
                let [x, y] = along(along(from, way, share), away, by);
                spots.push((x, y + away[1] * half, anchor));
            }
        }
        for by in [0.0, 10.0, 20.0, 40.0, 60.0] {
            let [x, y] = along(to, away, 12.0);
            let y = y - scene.side * (half + by);
            spots.extend(["start", "end", "middle"].map(|it| (x, y, it)));
        }
        self.put_surely(figure.is_some(), &lines, &spots, scene.side, middle[0]);
    }

    /// Sets a text that may not be left out, a figure or words: in a free spot, else beyond all that stands on the adapter's
    /// side.
    #[inline(never)]
    fn put_surely(&mut self, figure: bool, lines: &[&str], spots: &[Spot], side: f64, x: f64) {
        let labels = if figure { &mut self.figures } else { &mut self.names };
        if self.places.put(labels, lines, spots) {
            return;
        }
        let [top, bottom] = self.places.reach();
        let half = LINE * lines.len() as f64 / 2.0;
        let y = if side > 0.0 { top - half } else { bottom + half };
        self.places.set(labels, lines, (x, y, "middle"));
    }

    /// The led-on line of the handle, and the angle from it.
    pub(super) fn angle(&mut self, scene: &Scene, degrees: Option<&str>) {
        let [ahead, off] = scene.way;
        let over = scene.link + 4.0;
        // A link that lies on the line, or nearly, hides it: then it comes out behind the fastener.
        let hidden = ahead > 0.0 && off * (scene.reach + over) < over + 4.0;
        let out = if hidden { scene.ahead + over + 28.0 } else { scene.arc + 13.0 };
        let end = scene.toward([1.0, 0.0], out);
        let start = scene.toward([1.0, 0.0], if hidden { scene.ahead + over } else { over });
        self.extension = line(start, end);
        self.places.keep_line(start, end, 2.0);
        let lines = degrees.map_or(words::ADAPTER_ANGLE.to_vec(), |it| vec![it]);
        let half = LINE * lines.len() as f64 / 2.0;
        let mut spots: Vec<Spot> = Vec::new();
        if scene.turn == 0.0 {
            spots.push((end[0] - 4.0, 0.0, "end"));
        } else {
            let from = scene.toward([1.0, 0.0], scene.arc);
            let to = scene.toward(scene.way, scene.arc);
            self.arc = arc(from, to, scene.arc, scene.side > 0.0);
            // In the angle where it is wide enough, low where the adapter's dimension passes.
            let at = if scene.turn > PAST { 0.35 } else { (scene.turn / 2.0).min(0.8) };
            let at = [cosine(at), cosine(at - FRAC_PI_2)];
            let [x, y] = scene.toward(at, scene.arc + 8.0);
            spots.push((x, y - scene.side * (half - LINE / 2.0), "end"));
            // Up to where the adapter points, where it is too short to.
            let far = scene.reach + scene.link + 4.0;
            if far < scene.arc {
                let axis = [far, scene.arc + 4.0].map(|it| scene.toward(scene.way, it));
                self.extension.push_str(&line(axis[0], axis[1]));
                self.places.keep_line(axis[0], axis[1], 2.0);
            }
            for step in 0..=24 {
                let at = scene.turn * f64::from(step) / 24.0;
                let point = scene.toward([cosine(at), cosine(at - FRAC_PI_2)], scene.arc);
                self.places.keep(point, [2.0; 2]);
            }
        }
        // Else under the line that it counts from.
        for far in [over + 2.0, out, out + 20.0, out + 40.0, out + 60.0] {
            let [x, _] = scene.toward([1.0, 0.0], far);
            spots.extend([4.0, 12.0, 24.0].map(|it| (x, scene.side * (half + it), "end")));
        }
        spots.push((scene.fastener[0] - over, 0.0, "end"));
        self.put_surely(degrees.is_some(), &lines, &spots, scene.side, end[0]);
        if scene.turn > 0.0 {
            self.name(&[words::ZERO], end[0] - 4.0, 0.0, "end");
        }
    }

    /// Sets a name where there is room; whether there was.
    #[inline(never)]
    fn name(&mut self, lines: &[&str], x: f64, y: f64, anchor: &'static str) -> bool {
        self.places.put(&mut self.names, lines, &[(x, y, anchor)])
    }

    /// What is what, each in the first of its ways that has room.
    pub(super) fn names(&mut self, scene: &Scene) {
        let side = scene.side;
        let over = scene.link + 5.0;
        let fastener: &[&str] = &[words::FASTENER];
        let aside = over + LINE / 2.0;
        let [x, y] = along(scene.fastener, [-scene.way[0], -side * scene.way[1]], over);
        let y = y - side * scene.way[1] * LINE / 2.0;
        let named = scene.turn > 0.0 && self.name(fastener, x, y, leaning(-scene.way[0]));
        let [x, y] = scene.fastener;
        let _ = named
            || self.name(fastener, x, y + side * aside, "middle")
            || self.name(fastener, x, y - side * aside, "middle")
            || self.name(fastener, x - over, y, "end")
            || self.name(fastener, x + over, y, "start");

        let [x, high] = [scene.hand[0], HAND + 11.0];
        let [hand, halves]: [&[&str]; 2] = [&[words::HAND], &words::HAND_NARROW];
        let _ = self.name(hand, x, -high, "middle")
            || self.name(halves, x, -high - LINE / 2.0, "middle")
            || self.name(hand, x - 14.0, high, "end")
            || self.name(hand, x + 14.0, high, "start");

        let [x, low] = [scene.drive[0], side * (scene.link + 13.0)];
        let [drive, halves]: [&[&str]; 2] = [&[words::DRIVE], &words::DRIVE_NARROW];
        let lower = low + side * LINE / 2.0;
        let _ = self.name(drive, x, low, "middle")
            || self.name(drive, x + 5.0, low, "start")
            || self.name(drive, x - 5.0, low, "end")
            || self.name(halves, x + 5.0, lower, "start")
            || self.name(halves, x - 5.0, lower, "end")
            || self.name(drive, x + 5.0, -low, "start")
            || self.name(halves, x + 5.0, -lower, "start");

        let x = scene.hand[0];
        let long = joined(words::PULL_SQUARE, " ");
        let _ = self.name(&[&long], x - 10.0, 36.0, "end")
            || self.name(words::PULL_SQUARE, x - 10.0, 32.0, "end")
            || self.name(&[words::PULL], x - 10.0, 36.0, "end")
            || self.name(&[words::PULL], x + 7.0, 36.0, "start");
    }

    /// Lines from what is measured along the handle out to the dimensions.
    pub(super) fn lead_out(&mut self, scene: &Scene, rows: &[Row], rows_at: &[f64]) {
        let side = scene.side;
        let hand = side * (if side > 0.0 { PULL } else { HAND } + 3.0);
        let head = side * (scene.link + 6.0);
        for (row, y) in rows.iter().zip(rows_at) {
            let straight = (row.ends[0] - scene.drive[0]).abs() < 1.0;
            let left = if straight { head } else { scene.fastener[1] + head };
            for (x, from) in [(row.ends[0], left), (row.ends[1], hand)] {
                self.dimensions.push_str(&upright(&self.places, x, [from, *y]));
                self.places.keep([x, *y], [1.0, 5.0]);
            }
        }
    }

    /// Whether it is to scale, under all of it.
    pub(super) fn sign(&mut self, words: &str) {
        let [_, bottom] = self.places.reach();
        if !self.name(&[words], EDGE, bottom - LINE / 2.0, "start") {
            let under = (EDGE, bottom + 2.0 + LINE / 2.0, "start");
            self.places.set(&mut self.names, &[words], under);
        }
    }
}

/// Where a text lies that stands to this side of its point.
fn leaning(x: f64) -> &'static str {
    if x > 0.35 {
        "start"
    } else if x < -0.35 {
        "end"
    } else {
        "middle"
    }
}
