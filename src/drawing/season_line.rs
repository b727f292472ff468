//! The season line: charge, temperature and the days to act, from park date to ride date.

use super::season_day::Frame;
use super::{Label, lean, path};
use crate::battery::freezing::NEAR;
use crate::battery::{FAST, SLOW, TYPICAL};
use crate::digits;
use crate::entry::text::{cut, joined};
use crate::plan::Course;
use crate::show;
use crate::units::{Measure, UnitSet};
use crate::words::{MONTHS, season_line as words};
use chrono::{Datelike, Months, NaiveDate};

/// The season from park date to ride date: charge band, threshold, temperature, days to act.
#[derive(Debug, Clone, PartialEq)]
pub struct SeasonLine {
    /// Width and height of the picture.
    pub size: [f64; 2],
    /// Outline of the charge band, as an SVG path; it rises to full on each day to charge.
    pub band: String,
    /// Typical charge; empty where only a range is known.
    pub typical: String,
    /// Mean temperature.
    pub temperature: String,
    /// The part of it where less than 5 K is left to freezing; empty where there is none.
    pub frost: String,
    /// Height of the threshold.
    pub threshold: f64,
    /// Left and right end of the time axis, and its height.
    pub axis: [f64; 3],
    /// Firsts of months along the axis.
    pub months: Vec<f64>,
    /// Days to act, the ones to charge on among them: place along the axis and height of their mark.
    pub marks: Vec<[f64; 2]>,
    /// From the texts of the days to act down to the axis, round the threshold's text: place, top, bottom.
    pub stems: Vec<[f64; 3]>,
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
    /// The day from which fuel is too old, with its text.
    pub fuel: Option<(f64, Label)>,
    /// All of it in one sentence.
    pub told: String,
}

/// How the picture is laid out: redrawn, not shrunk, for a narrow page.
pub(super) struct Layout {
    size: [f64; 2],
    /// Left and right end of the axis.
    pub span: [f64; 2],
    /// Height of full and of empty.
    pub charge: [f64; 2],
    /// Highest and lowest line of the temperature.
    pub temperature: [f64; 2],
    /// Lines of the texts above the band.
    acts: [f64; 2],
    month_letters: usize,
    /// Size of its texts; the style sheet has the same.
    text: f64,
}

impl Layout {
    pub(super) fn new(wide: bool) -> &'static Self {
        if wide { &WIDE } else { &NARROW }
    }
}

static WIDE: Layout = Layout {
    size: [900.0, 226.0],
    span: [4.0, 896.0],
    charge: [44.0, 140.0],
    temperature: [162.0, 184.0],
    acts: [16.0, 34.0],
    month_letters: 3,
    text: 12.0,
};
static NARROW: Layout = Layout {
    size: [360.0, 256.0],
    span: [6.0, 354.0],
    charge: [52.0, 158.0],
    temperature: [182.0, 210.0],
    acts: [16.0, 36.0],
    month_letters: 1,
    text: 14.0,
};
/// Width and height of the strip on paper.
pub const STRIP_SIZE: [f64; 2] = [900.0, 140.0];
/// Low, for paper, where both dates stand large above it.
static STRIP: Layout = Layout {
    size: STRIP_SIZE,
    charge: [36.0, 84.0],
    temperature: [104.0, 116.0],
    acts: [12.0, 27.0],
    ..WIDE
};

/// Widest that a letter is, on average over a text, as a share of its size.
const LETTER: f64 = 0.56;

/// Width and height of the picture.
pub fn season_size(wide: bool) -> [f64; 2] {
    Layout::new(wide).size
}

/// Draws the season line, wide or narrow.
pub fn season_line(course: &Course, wide: bool, set: UnitSet) -> SeasonLine {
    laid_out(course, &Frame::new(course, wide), set)
}

/// Draws it as a low strip, without its ends' dates, for paper.
pub fn season_strip(course: &Course, set: UnitSet) -> SeasonLine {
    laid_out(course, &Frame::on(course, &STRIP), set)
}

fn laid_out(course: &Course, frame: &Frame<'_>, set: UnitSet) -> SeasonLine {
    let layout = frame.layout;
    let [left, right] = layout.span;
    let [full, empty] = layout.charge;
    let x = |day: f64| frame.x(day);
    let height = |charge: f64| frame.height(charge);

    let charged: Vec<usize> = course.recharges.iter().map(|it| frame.index(*it)).collect();
    // On a day to charge the line goes straight up to full.
    let edge = |edge: usize| -> Vec<[f64; 2]> {
        let mut points = Vec::with_capacity(course.charge.len() + charged.len());
        let mut charges = charged.iter().peekable();
        for (day, charge) in course.charge.iter().enumerate() {
            points.push([x(day as f64), height(charge[edge])]);
            if charges.next_if_eq(&&day).is_some() {
                points.push([x(day as f64), full]);
            }
        }
        lean(&points)
    };
    let mut band = edge(SLOW);
    band.extend(edge(FAST).into_iter().rev());
    let band = path(&band) + "Z";
    let typical = if course.typical_known { edge(TYPICAL) } else { Vec::new() };
    let typical = path(&typical);

    let warm = |night: usize| [x(night as f64 + 0.5), frame.warm(course.celsius[night])];
    let temperature: Vec<[f64; 2]> = (0..course.celsius.len()).map(warm).collect();
    let frost = frost(course, &temperature);
    let temperature = path(&lean(&temperature));
    let coldest_at = frame.coldest_at();
    let degrees = show::rounded(Measure::Temperature, frame.coldest(), set);

    let first_charge = course.recharges.first().copied().map(|it| (it, words::CHARGE_ON));
    let charge = first_charge.or(course.charge_by.map(|it| (it, words::CHARGE)));
    let look = course.look.map(|it| (it, words::LOOK));
    let mut acts: Vec<(NaiveDate, &str)> = look.into_iter().chain(charge).collect();
    // A meter check after the first charge would check nothing.
    if let [(look, _), (charge, _)] = acts.as_slice()
        && charge < look
    {
        acts.remove(0);
    }
    let at = |day: NaiveDate| x(frame.index(day) as f64);
    let mut marks: Vec<[f64; 2]> =
        acts.iter().map(|(day, _)| [at(*day), frame.typical(frame.index(*day))]).collect();
    let others = charged.iter().skip(1);
    marks.extend(others.map(|day| [x(*day as f64), frame.typical(*day)]));
    let label = |x: f64, y: f64, text: String| Label { x, y, anchor: anchor(x, layout), text };
    // A stem runs from its text down to the axis. Texts that lean right stand the earlier above the later, others the
    // later above the earlier: so no stem crosses the other's text.
    let leans_right = |day: NaiveDate| at(day) < layout.size[0] / 2.0;
    let all_right = acts.iter().all(|(day, _)| leans_right(*day));
    let act_labels: Vec<Label> = acts
        .iter()
        .enumerate()
        .map(|(index, (day, what))| Label {
            x: at(*day) + if leans_right(*day) { -6.0 } else { 6.0 },
            y: layout.acts[usize::from((index == 0) != all_right)],
            anchor: if leans_right(*day) { "start" } else { "end" },
            text: format!("{what} {}", month_day(*day)),
        })
        .collect();
    let tops: Vec<[f64; 2]> =
        acts.iter().zip(&act_labels).map(|((day, _), it)| [at(*day), it.y + 6.0]).collect();
    let wide_text = words::BELOW.len() as f64 * LETTER * layout.text;
    let below = Label {
        x: free_place(&tops, wide_text, layout.span),
        y: height(course.threshold) + 15.0,
        anchor: "start",
        text: words::BELOW.to_owned(),
    };
    let stems = tops.iter().zip(&act_labels).flat_map(|([x, top], own)| {
        let texts = act_labels.iter().filter(|it| *it != own).chain([&below]);
        stem([*x, *top, empty], texts, layout.text)
    });
    let stems = stems.collect();
    let fuel = course.fuel_old.map(|day| {
        let x = at(day);
        let anchor = if leans_right(day) { "start" } else { "end" };
        (x, Label { x, y: empty - 6.0, anchor, text: words::FUEL_OLD.to_owned() })
    });
    let axis_text = layout.temperature[1] + 24.0;

    let firsts = firsts(course.park, course.end);
    let quiet = firsts.iter().map(|day| Label {
        x: at(*day) + 4.0,
        y: empty + 14.0,
        anchor: "start",
        text: cut(MONTHS[day.month0() as usize], layout.month_letters).0.to_owned(),
    });
    let end_text = axis_text + 14.0;
    let mut ends = vec![
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
    ends.retain(|it| it.y < layout.size[1]);
    SeasonLine {
        size: layout.size,
        band,
        typical,
        temperature,
        frost,
        threshold: height(course.threshold),
        axis: [left, right, empty],
        months: firsts.iter().map(|it| at(*it)).collect(),
        marks,
        stems,
        quiet: quiet.collect(),
        ends,
        acts: act_labels,
        below,
        fuel,
        cold: label(x(coldest_at as f64), axis_text - 4.0, words::mean(&degrees)),
        told: told(course, &degrees, set),
    }
}

/// The days to act, in their order, in words.
pub fn acts_told(course: &Course) -> String {
    // Each is put where it belongs: a sort is compiled anew for whatever it sorts.
    let mut acts: Vec<(NaiveDate, &str)> = Vec::new();
    let mut act = |day: NaiveDate, what| {
        let at = acts.iter().position(|it| it.0 > day).unwrap_or(acts.len());
        acts.insert(at, (day, what));
    };
    for day in &course.recharges {
        act(*day, words::CHARGE_ON);
    }
    for (day, what) in [
        (course.look, words::LOOK),
        (course.charge_by, words::CHARGE),
        (course.fuel_old, words::FUEL_OLD),
    ] {
        if let Some(day) = day {
            act(day, what);
        }
    }
    let told: Vec<String> =
        acts.iter().map(|(day, what)| format!("{what} {}", show::short_day(*day))).collect();
    joined(&told, words::BETWEEN)
}

/// The firsts of months from a day on, before another.
fn firsts(from: NaiveDate, to: NaiveDate) -> Vec<NaiveDate> {
    let mut firsts = Vec::new();
    let mut next = from.with_day(1);
    while let Some(first) = next.filter(|it| *it < to) {
        if first >= from {
            firsts.push(first);
        }
        next = first.checked_add_months(Months::new(1));
    }
    firsts
}

/// The runs of nights with too little margin, along the line of the temperature.
fn frost(course: &Course, line: &[[f64; 2]]) -> String {
    let near = |night: usize| course.margin.get(night).is_some_and(|it| *it < NEAR);
    let mut runs = String::new();
    let mut run = Vec::new();
    for (night, point) in line.iter().enumerate() {
        if near(night) {
            run.push(*point);
        }
        if run.is_empty() || near(night + 1) {
            continue;
        }
        runs.push_str(&path(&lean(&run)));
        // A single night is a dot, which needs a line of no length.
        if run.len() == 1 {
            runs.push_str("h0");
        }
        run.clear();
    }
    runs
}

/// Where a text is crossed by no stem: at the left end, else behind the first stem that leaves room for it.
fn free_place(stems: &[[f64; 2]], wide: f64, [left, right]: [f64; 2]) -> f64 {
    let free = |from: &f64| {
        let to = from + wide;
        to <= right && stems.iter().all(|[x, _]| *x < from - 3.0 || *x > to + 3.0)
    };
    let behind = stems.iter().map(|[x, _]| x + 6.0);
    std::iter::once(left + 4.0).chain(behind).find(free).unwrap_or(left + 4.0)
}

/// The parts of a stem that cross no text.
fn stem<'a>(
    [x, top, base]: [f64; 3],
    texts: impl Iterator<Item = &'a Label>,
    size: f64,
) -> Vec<[f64; 3]> {
    let mut parts = vec![[x, top, base]];
    for text in texts {
        let wide = text.text.len() as f64 * LETTER * size;
        let left = if text.anchor == "end" { text.x - wide } else { text.x };
        if x < left - 3.0 || x > left + wide + 3.0 {
            continue;
        }
        let [above, under] = [text.y - size, text.y + 4.0];
        let mut cut = Vec::new();
        for [_, from, to] in parts {
            cut.extend([[x, from, to.min(above)], [x, from.max(under), to]]);
        }
        cut.retain(|[_, from, to]| from < to);
        parts = cut;
    }
    parts
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
    format!("{} {}", cut(MONTHS[day.month0() as usize], 3).0, day.day())
}

fn told(course: &Course, coldest: &str, set: UnitSet) -> String {
    let last = course.charge.last().copied().unwrap_or([0.0; 3]);
    let percent = |it: f64| digits::fixed(it * 100.0, 0);
    let mut told = words::told(
        course.celsius.len(),
        [&percent(last[FAST]), &percent(last[SLOW])],
        !course.recharges.is_empty(),
        &show::long_day(course.end),
        coldest,
    );
    if let Some(day) = course.look {
        told.push_str(&words::told_act(words::LOOK, &show::long_day(day)));
    }
    let charges: Vec<String> = course.recharges.iter().map(|it| show::long_day(*it)).collect();
    if !charges.is_empty() {
        told.push_str(&words::told_act(words::CHARGE_ON, &joined(&charges, "; ")));
    }
    if let Some(day) = course.charge_by {
        told.push_str(&words::told_act(words::CHARGE, &show::long_day(day)));
    }
    if let Some(least) = course.margin.iter().copied().reduce(f64::min) {
        told.push_str(&words::told_margin(&super::season_day::margin(least, set)));
    }
    if let Some(day) = course.fuel_old {
        told.push_str(&words::told_act(words::FUEL_OLD, &show::long_day(day)));
    }
    told
}
