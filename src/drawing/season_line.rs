//! The season line: charge, temperature and the days to act, from park date to ride date.

use super::{Label, path};
use crate::battery::{FAST, SLOW, TYPICAL};
use crate::digits;
use crate::plan::Course;
use crate::show;
use crate::units::{CELSIUS, FAHRENHEIT, Unit, UnitSet};
use crate::words::{MONTHS, season_line as words};
use chrono::{Datelike, NaiveDate};

/// The season from park date to ride date: charge band, threshold, temperature, days to act.
#[derive(Debug, Clone, PartialEq)]
pub struct SeasonLine {
    /// Width and height of the picture.
    pub size: [f64; 2],
    /// Outline of the charge band, as an SVG path.
    pub band: String,
    /// Typical charge.
    pub typical: String,
    /// Mean temperature.
    pub temperature: String,
    /// Height of the threshold.
    pub threshold: f64,
    /// Left and right end of the time axis, and its height.
    pub axis: [f64; 3],
    /// Firsts of months along the axis.
    pub months: Vec<f64>,
    /// Days to act: place along the axis and height of their mark.
    pub marks: Vec<[f64; 2]>,
    /// Quiet texts: months, scale.
    pub quiet: Vec<Label>,
    /// Texts that matter: park and ride date.
    pub ends: Vec<Label>,
    /// Texts of the days to act.
    pub acts: Vec<Label>,
    /// Text of the threshold.
    pub below: Label,
    /// Text of the temperature.
    pub cold: Label,
    /// All of it in one sentence.
    pub told: String,
}

/// How the picture is laid out: redrawn, not shrunk, for a narrow page.
struct Layout {
    size: [f64; 2],
    /// Left and right end of the axis.
    span: [f64; 2],
    /// Height of full and of empty.
    charge: [f64; 2],
    /// Highest and lowest line of the temperature.
    temperature: [f64; 2],
    /// Lines of the texts above the band.
    acts: [f64; 2],
    month_letters: usize,
    steps: usize,
}

const WIDE: Layout = Layout {
    size: [900.0, 220.0],
    span: [4.0, 896.0],
    charge: [44.0, 140.0],
    temperature: [152.0, 180.0],
    acts: [16.0, 34.0],
    month_letters: 3,
    steps: 120,
};
const NARROW: Layout = Layout {
    size: [360.0, 250.0],
    span: [6.0, 354.0],
    charge: [52.0, 158.0],
    temperature: [172.0, 204.0],
    acts: [16.0, 36.0],
    month_letters: 1,
    steps: 60,
};

/// Draws the season line, wide or narrow.
pub fn season_line(course: &Course, wide: bool, set: UnitSet) -> SeasonLine {
    let layout = if wide { &WIDE } else { &NARROW };
    let nights = course.celsius.len().max(1) as f64;
    let [left, right] = layout.span;
    let x = |day: f64| left + (right - left) * day / nights;
    let [full, empty] = layout.charge;
    let height = |charge: f64| empty + (full - empty) * charge;

    let days: Vec<usize> = sampled(course.charge.len(), layout.steps);
    let edge = |edge: usize| days.iter().map(move |day| (*day, course.charge[*day][edge]));
    let point = |(day, charge): (usize, f64)| [x(day as f64), height(charge)];
    let band = path(edge(SLOW).map(point).chain(edge(FAST).rev().map(point))) + "Z";
    let typical = path(edge(TYPICAL).map(point));

    let [coldest, warmest] = ends(&course.celsius);
    let [top, bottom] = layout.temperature;
    let spread = (warmest - coldest).max(1.0);
    let nights_drawn = sampled(course.celsius.len(), layout.steps);
    let temperature = path(nights_drawn.iter().map(|night| {
        let share = (course.celsius[*night] - coldest) / spread;
        [x(*night as f64 + 0.5), bottom + (top - bottom) * share]
    }));
    let coldest_at = course.celsius.iter().position(|it| *it == coldest).unwrap_or(0);
    let unit: &Unit = if set == UnitSet::Metric { &CELSIUS } else { &FAHRENHEIT };
    let degrees = |celsius: f64| {
        format!("{} {}", digits::fixed(unit.of_base(CELSIUS.to_base(celsius)), 0), unit.symbol)
    };

    let day_of = |day: NaiveDate| (day - course.park).num_days() as f64;
    let acts: Vec<(NaiveDate, &str)> =
        [(course.look, words::LOOK), (course.charge_by, words::CHARGE)]
            .into_iter()
            .filter_map(|(day, what)| day.map(|day| (day, what)))
            .collect();
    let typical_on = |day: NaiveDate| {
        let at = (day_of(day).max(0.0) as usize).min(course.charge.len().saturating_sub(1));
        course.charge.get(at).map_or(full, |it| height(it[TYPICAL]))
    };
    let marks = acts.iter().map(|(day, _)| [x(day_of(*day)), typical_on(*day)]).collect();
    let label = |x: f64, y: f64, text: String| Label { x, y, anchor: anchor(x, layout), text };
    // A stem runs from its text down to the axis. Texts that lean right stand the earlier above the later, others the
    // later above the earlier: so no stem crosses the other's text.
    let leans_right = |day: NaiveDate| x(day_of(day)) < layout.size[0] / 2.0;
    let all_right = acts.iter().all(|(day, _)| leans_right(*day));
    let act_labels = acts.iter().enumerate().map(|(at, (day, what))| Label {
        x: x(day_of(*day)) + if leans_right(*day) { -6.0 } else { 6.0 },
        y: layout.acts[usize::from((at == 0) != all_right)],
        anchor: if leans_right(*day) { "start" } else { "end" },
        text: format!("{what} {}", month_day(*day)),
    });
    let axis_text = layout.temperature[1] + 24.0;

    let firsts: Vec<NaiveDate> =
        course.park.iter_days().take(course.celsius.len()).filter(|it| it.day() == 1).collect();
    let quiet = firsts.iter().map(|day| Label {
        x: x(day_of(*day)) + 4.0,
        y: empty + 14.0,
        anchor: "start",
        text: MONTHS[day.month0() as usize][..layout.month_letters].to_owned(),
    });
    let end_text = axis_text + 14.0;
    let ends_labels = vec![
        Label {
            x: left,
            y: end_text,
            anchor: "start",
            text: format!("{} {}", words::PARKED, month_day(course.park)),
        },
        Label {
            x: right,
            y: end_text,
            anchor: "end",
            text: format!(
                "{} {}",
                if course.rides { words::RIDES } else { words::UNTIL },
                month_day(course.end)
            ),
        },
    ];
    SeasonLine {
        size: layout.size,
        band,
        typical,
        temperature,
        threshold: height(course.threshold),
        axis: [left, right, empty],
        months: firsts.iter().map(|it| x(day_of(*it))).collect(),
        marks,
        quiet: quiet.collect(),
        ends: ends_labels,
        acts: act_labels.collect(),
        below: Label {
            x: left + 4.0,
            y: height(course.threshold) + 15.0,
            anchor: "start",
            text: words::BELOW.to_owned(),
        },
        cold: label(x(coldest_at as f64), axis_text - 4.0, words::mean(&degrees(coldest))),
        told: told(course, &degrees(coldest)),
    }
}

/// Every so many of `count` indices, the first and the last among them.
fn sampled(count: usize, steps: usize) -> Vec<usize> {
    let last = count.saturating_sub(1);
    let step = (last / steps).max(1);
    let mut picked: Vec<usize> = (0..last).step_by(step).collect();
    if count > 0 {
        picked.push(last);
    }
    picked
}

fn ends(values: &[f64]) -> [f64; 2] {
    values
        .iter()
        .fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], it| [low.min(*it), high.max(*it)])
}

/// Text near an end of the picture leans inward.
fn anchor(x: f64, layout: &Layout) -> &'static str {
    let share = x / layout.size[0];
    if share < 0.25 {
        "start"
    } else if share > 0.75 {
        "end"
    } else {
        "middle"
    }
}

fn month_day(day: NaiveDate) -> String {
    format!("{} {}", &MONTHS[day.month0() as usize][..3], day.day())
}

fn told(course: &Course, coldest: &str) -> String {
    let last = course.charge.last().copied().unwrap_or([0.0; 3]);
    let percent = |it: f64| digits::fixed(it * 100.0, 0);
    let mut told = words::told(
        course.celsius.len(),
        [&percent(last[FAST]), &percent(last[SLOW])],
        &show::long_day(course.end),
        coldest,
    );
    if let Some(day) = course.look {
        told.push_str(&words::told_act(words::LOOK, &show::long_day(day)));
    }
    if let Some(day) = course.charge_by {
        told.push_str(&words::told_act(words::CHARGE, &show::long_day(day)));
    }
    told
}
