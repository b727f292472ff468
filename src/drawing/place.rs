//! Places for texts: none on another, none on a line, none outside of the picture.

use super::Label;

/// Size of the texts in the pictures of the torque line, in the picture's own units; the style sheet has the same.
pub const TEXT_SIZE: f64 = 13.0;
/// Widest that a letter is, on average over a text.
const LETTER: f64 = 0.63 * TEXT_SIZE;
/// From line to line of a text.
pub(super) const LINE: f64 = 16.0;
/// Kept free at the edges.
pub(super) const EDGE: f64 = 4.0;

/// Left, top, right and bottom.
pub(super) type Area = [f64; 4];

/// A place to try: where the text starts, has its middle or ends; the middle of its height.
pub(super) type Spot = (f64, f64, &'static str);

/// What a picture holds already.
pub(super) struct Places {
    width: f64,
    shapes: Vec<Area>,
    texts: Vec<Area>,
}

impl Places {
    pub(super) fn new(width: f64) -> Self {
        Self { width, shapes: Vec::new(), texts: Vec::new() }
    }

    /// Keeps texts off a shape about a point.
    #[inline(never)]
    pub(super) fn keep(&mut self, [x, y]: [f64; 2], half: [f64; 2]) {
        self.shapes.push([x - half[0], y - half[1], x + half[0], y + half[1]]);
    }

    /// Keeps texts off a line of some thickness.
    pub(super) fn keep_line(&mut self, from: [f64; 2], to: [f64; 2], half: f64) {
        let way = [to[0] - from[0], to[1] - from[1]];
        let long = (way[0] * way[0] + way[1] * way[1]).sqrt();
        let steps = (long / 4.0).ceil().max(1.0);
        // The corners of a square reach farther across a slanting line than its sides across a level one.
        let slant = if long > 0.0 { (way[0].abs() + way[1].abs()) / long } else { 1.0 };
        let half = half / slant;
        for at in 0..=steps as usize {
            let share = at as f64 / steps;
            self.keep([from[0] + way[0] * share, from[1] + way[1] * share], [half; 2]);
        }
    }

    /// Sets lines of a text in the first of the spots that is free, and puts them to the labels; whether one was.
    #[inline(never)]
    pub(super) fn put(&mut self, labels: &mut Vec<Label>, lines: &[&str], spots: &[Spot]) -> bool {
        let free = spots.iter().find(|it| self.is_free(self.area(lines, it)));
        if let Some(free) = free {
            self.set(labels, lines, *free);
        }
        free.is_some()
    }

    /// Sets lines of a text, whatever stands there, and puts them to the labels.
    #[inline(never)]
    pub(super) fn set(&mut self, labels: &mut Vec<Label>, lines: &[&str], spot: Spot) {
        let area = self.area(lines, &spot);
        self.texts.push(area);
        let x = match spot.2 {
            "start" => area[0],
            "end" => area[2],
            _ => (area[0] + area[2]) / 2.0,
        };
        let label = |(at, text): (usize, &&str)| Label {
            x,
            y: area[1] + LINE * (at + 1) as f64 - 4.0,
            anchor: spot.2,
            text: (*text).to_owned(),
        };
        labels.extend(lines.iter().enumerate().map(label));
    }

    /// What a text covers there; one set by its middle is moved into the picture.
    fn area(&self, lines: &[&str], (x, y, anchor): &Spot) -> Area {
        let letters = lines.iter().map(|it| it.chars().count()).max().unwrap_or(0);
        let width = letters as f64 * LETTER;
        let left = match *anchor {
            "start" => *x,
            "end" => x - width,
            _ => (x - width / 2.0).min(self.width - EDGE - width).max(EDGE),
        };
        let half = LINE * lines.len() as f64 / 2.0;
        [left, y - half, left + width, y + half]
    }

    fn is_free(&self, area: Area) -> bool {
        let apart = |it: &Area, slack: f64| {
            it[2] <= area[0]
                || it[0] >= area[2]
                || it[3] <= area[1] + slack
                || it[1] >= area[3] - slack
        };
        // A line of text has air above and below its letters: lines may come that near, other texts not.
        area[0] >= EDGE
            && area[2] <= self.width - EDGE
            && self.shapes.iter().all(|it| apart(it, 2.0))
            && self.texts.iter().all(|it| apart(it, 0.0))
    }

    /// The parts of an upright line that cross no text.
    pub(super) fn upright(&self, x: f64, ends: [f64; 2]) -> Vec<[f64; 2]> {
        let mut parts = vec![[ends[0].min(ends[1]), ends[0].max(ends[1])]];
        for text in self.texts.iter().filter(|it| it[0] - 3.0 < x && x < it[2] + 3.0) {
            let split = |[from, to]: [f64; 2]| [[from, to.min(text[1])], [from.max(text[3]), to]];
            parts =
                parts.into_iter().flat_map(split).filter(|[from, to]| from + 6.0 < *to).collect();
        }
        parts
    }

    /// Highest and lowest of all that stands there.
    pub(super) fn reach(&self) -> [f64; 2] {
        let all = self.shapes.iter().chain(&self.texts);
        all.fold([0.0_f64; 2], |[top, bottom], it| [top.min(it[1]), bottom.max(it[3])])
    }
}
