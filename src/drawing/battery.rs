//! A battery with its charge on a day: sure up to the low end of the band, doubtful up to the high one.

use super::season_day::{day_in, season_day};
use super::{Label, path};
use crate::battery::{FAST, SLOW, TYPICAL};
use crate::digits;
use crate::plan::Course;
use crate::units::UnitSet;
use crate::words::season_line as words;

/// A battery with its charge.
#[derive(Debug, Clone, PartialEq)]
pub struct BatteryDrawing {
    /// Outline of the case and its two posts, as an SVG path.
    pub case: String,
    /// Left, top, width and height of the charge that it surely has.
    pub sure: [f64; 4],
    /// The same of what it may have besides.
    pub doubtful: [f64; 4],
    /// Height of the typical charge; none where only a range is known.
    pub typical: Option<f64>,
    /// Height of the threshold.
    pub threshold: f64,
    /// Left and right end of lines across it.
    pub across: [f64; 2],
    /// Texts of the band's ends and of the threshold, in this order.
    pub labels: [Label; 3],
    /// All of it in one sentence.
    pub told: String,
}

/// Width and height of the picture.
pub const BATTERY_SIZE: [f64; 2] = [320.0, 190.0];
/// Left, top, right and bottom of the case.
const CASE: [f64; 4] = [10.0, 30.0, 150.0, 184.0];
/// Height of full and of empty inside.
const CHARGE: [f64; 2] = [40.0, 176.0];
/// From the case to what is in it.
const WALL: f64 = 8.0;
/// Least from one text to the next.
const LINE: f64 = 17.0;

/// Draws the battery on a day of the season; beyond the season on its last day.
pub fn battery(course: &Course, day: usize, set: UnitSet) -> BatteryDrawing {
    let (_, charge) = day_in(course, day);
    let [full, empty] = CHARGE;
    let height = |charge: f64| empty + (full - empty) * charge.max(0.0).min(1.0);
    let [left, top, right, bottom] = CASE;
    let (inner, wide) = (left + WALL, right - left - 2.0 * WALL);
    let [low, high, threshold] = [charge[FAST], charge[SLOW], course.threshold];
    let post = |x: f64| [[x, top], [x, top - 14.0], [x + 24.0, top - 14.0], [x + 24.0, top]];
    let ends = [[left, bottom], [left, top], [right, top], [right, bottom]];
    let outline = [&ends[..2], &post(left + 18.0), &post(right - 42.0), &ends[2..]].concat();
    let percent = |it: f64| format!("{} %", digits::fixed(it * 100.0, 0));
    let texts = [
        (height(low), words::at_least(&percent(low))),
        (height(high), words::at_most(&percent(high))),
        (height(threshold), words::recharge_below(&percent(threshold))),
    ];
    let places = apart(texts.each_ref().map(|it| it.0));
    let mut place = places.into_iter();
    let labels = texts.map(|(at, text)| {
        let y = place.next().unwrap_or(at) + 5.0;
        Label { x: right + 12.0, y, anchor: "start", text }
    });
    BatteryDrawing {
        case: path(&outline) + "Z",
        sure: [inner, height(low), wide, empty - height(low)],
        doubtful: [inner, height(high), wide, height(low) - height(high)],
        typical: course.typical_known.then(|| height(charge[TYPICAL])),
        threshold: height(threshold),
        across: [left, right],
        labels,
        told: season_day(course, day, true, set).told,
    }
}

/// Heights for texts, each as near to its own as the others let it; all within the picture.
fn apart(wanted: [f64; 3]) -> [f64; 3] {
    // The high end never stands under the low one.
    let [low, high, threshold] = wanted;
    let order = match (threshold < high, threshold < low) {
        (true, _) => [2, 1, 0],
        (false, true) => [1, 2, 0],
        (false, false) => [1, 0, 2],
    };
    let mut places = wanted;
    let mut least = LINE / 2.0;
    for at in order {
        places[at] = places[at].max(least);
        least = places[at] + LINE;
    }
    let mut most = BATTERY_SIZE[1] - LINE / 2.0;
    for at in order.into_iter().rev() {
        places[at] = places[at].min(most);
        most = places[at] - LINE;
    }
    places
}
