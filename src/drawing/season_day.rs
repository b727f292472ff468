//! Any day of the season line: where its marker stands and what holds then, cheap enough for every move of a pointer.

use super::dot;
use super::season_line::Layout;
use crate::battery::{ChargingError, Edges, FAST, SLOW, TYPICAL, as_band};
use crate::digits;
use crate::plan::Course;
use crate::show;
use crate::units::{Measure, UnitSet};
use crate::words::season_line as words;
use chrono::{Days, NaiveDate};
use uom::si::{
    f64::{ElectricPotential, TemperatureInterval, ThermodynamicTemperature},
    temperature_interval::kelvin,
    thermodynamic_temperature::degree_celsius,
};

/// One day of the season line.
#[derive(Debug, Clone, PartialEq)]
pub struct SeasonDay {
    /// Days after the park date.
    pub day: usize,
    /// Along the axis.
    pub x: f64,
    /// Heights of the typical charge and of the temperature.
    pub heights: [f64; 2],
    /// A line across the picture with a dot at each height, as an SVG path.
    pub mark: String,
    /// What holds on it, in words.
    pub told: String,
}

/// The day whose place is nearest to `x`, in the picture's own units; the first or the last beyond the ends.
pub fn season_day_at(course: &Course, wide: bool, x: f64) -> usize {
    let frame = Frame::new(course, wide);
    let [left, right] = frame.layout.span;
    let day = ((x - left) / (right - left) * frame.nights).round();
    // Not a number is no place: the first day.
    let last = course.charge.len().saturating_sub(1);
    if day > 0.0 { (day as usize).min(last) } else { 0 }
}

/// The values of a day; beyond the season those of its last day.
pub fn season_day(course: &Course, day: usize, wide: bool, set: UnitSet) -> SeasonDay {
    let frame = Frame::new(course, wide);
    let last = course.charge.len().saturating_sub(1);
    let (day, charge) = day_in(course, day);
    let date = course.park.checked_add_days(Days::new(day as u64)).unwrap_or(course.end);
    let night = day.min(course.celsius.len().saturating_sub(1));
    let celsius = course.celsius.get(night).copied().unwrap_or_default();
    let temperature = ThermodynamicTemperature::new::<degree_celsius>(celsius);
    let percent = |edge: usize| digits::fixed(charge[edge] * 100.0, 0);
    let volts = course.parameters.resting_voltage(as_band(charge), temperature).bounds;
    let volts = volts
        .unwrap_or_default()
        .map(|it: ElectricPotential| show::rounded(Measure::Voltage, it, set));
    let mut told = words::day(
        &show::short_day(date),
        [day, last],
        [&percent(FAST), &percent(SLOW)],
        course.typical_known.then(|| percent(TYPICAL)).as_deref(),
        [&volts[0], &volts[1]],
        &show::rounded(Measure::Temperature, temperature, set),
        course.recharges.first().is_some_and(|it| *it < date),
    );
    if let Some(least) = course.margin.get(day) {
        told.push_str(words::BETWEEN);
        told.push_str(&margin(*least, set));
    }
    let lead = course.parameters.chemistry.is_lead_acid();
    let hindered = course.parameters.charges_at(as_band(charge).low, temperature).err();
    let charge_it = |usual| match hindered {
        Some(ChargingError::Frozen) => words::CHARGE_THAWED,
        Some(_) => words::CHARGE_INDOORS,
        None => usual,
    };
    let now = if lead { words::CHARGE_NOW } else { words::CHARGE_IT };
    let acts = [
        (course.look == Some(date), words::LOOK),
        (course.recharges.contains(&date), charge_it(words::CHARGE_FULL)),
        (course.charge_by == Some(date), charge_it(now)),
        (course.fuel_old == Some(date), words::FUEL_OLD),
    ];
    for (_, what) in acts.iter().filter(|it| it.0) {
        told.push_str(words::BETWEEN);
        told.push_str(what);
    }
    let (x, heights) = (frame.x(day as f64), [frame.typical(day), frame.warm(celsius)]);
    SeasonDay { day, x, heights, mark: mark(x, heights, frame.layout), told }
}

/// Radius of a dot.
const DOT: f64 = 4.0;

fn mark(x: f64, heights: [f64; 2], layout: &Layout) -> String {
    let place = |it: f64| digits::plain(it, 1);
    let [full, empty] = layout.charge;
    let [one, other] = heights.map(|height| dot([x, height], DOT));
    format!("M{} {}V{}{one}{other}", place(x), place(full), place(empty))
}

/// A day within the season, and its charge by edge.
pub(super) fn day_in(course: &Course, day: usize) -> (usize, Edges) {
    let day = day.min(course.charge.len().saturating_sub(1));
    (day, course.charge.get(day).copied().unwrap_or_default())
}

/// "24 K from freezing".
pub(super) fn margin(least: f64, set: UnitSet) -> String {
    if least <= 0.0 {
        return words::MAY_FREEZE.to_owned();
    }
    let step = TemperatureInterval::new::<kelvin>(least);
    words::from_freezing(&show::step(step, set))
}

/// What is where in the picture.
pub(super) struct Frame<'a> {
    course: &'a Course,
    pub layout: &'static Layout,
    /// Nights stored, one at least.
    pub nights: f64,
    /// Coldest mean of a day, °C.
    coldest: f64,
    /// Warmest less coldest, K, one at least.
    spread: f64,
}

impl<'a> Frame<'a> {
    pub fn new(course: &'a Course, wide: bool) -> Self {
        Self::on(course, Layout::new(wide))
    }

    pub fn on(course: &'a Course, layout: &'static Layout) -> Self {
        let fold = |least: fn(f64, f64) -> f64| course.celsius.iter().copied().reduce(least);
        let coldest = fold(f64::min).unwrap_or_default();
        let spread = (fold(f64::max).unwrap_or_default() - coldest).max(1.0);
        Self { course, layout, nights: course.celsius.len().max(1) as f64, coldest, spread }
    }

    /// Place of a day along the axis.
    pub fn x(&self, day: f64) -> f64 {
        let [left, right] = self.layout.span;
        left + (right - left) * day / self.nights
    }

    /// Height of a charge.
    pub fn height(&self, charge: f64) -> f64 {
        let [full, empty] = self.layout.charge;
        empty + (full - empty) * charge
    }

    /// Coldest mean of a day.
    pub fn coldest(&self) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(self.coldest)
    }

    /// The first day with it.
    pub fn coldest_at(&self) -> usize {
        self.course.celsius.iter().position(|it| *it == self.coldest).unwrap_or(0)
    }

    /// Height of a temperature, °C.
    pub fn warm(&self, celsius: f64) -> f64 {
        let [top, bottom] = self.layout.temperature;
        bottom + (top - bottom) * (celsius - self.coldest) / self.spread
    }

    /// Days from the park date, within the season.
    pub fn index(&self, day: NaiveDate) -> usize {
        let last = self.course.charge.len().saturating_sub(1);
        usize::try_from((day - self.course.park).num_days()).unwrap_or(0).min(last)
    }

    /// Height of the typical charge on a day.
    pub fn typical(&self, day: usize) -> f64 {
        let charge = self.course.charge.get(day).map_or(1.0, |it| it[TYPICAL]);
        self.height(charge)
    }
}
