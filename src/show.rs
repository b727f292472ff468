//! From answers to the words and figures of the page: rounding (once, here), units of the chosen set, and the working
//! with the numbers put into its formula. Pure text: the view only lays it out.

mod day;
mod formula;
mod places;

use crate::entry::text::joined;
use places::places;

pub use day::{long as long_day, plain as plain_day, short as short_day};

use crate::digits;
use crate::entry::day_written;
use crate::facts::{self, Lack, Lacks, Told};
use crate::units::{Measure, Unit, UnitSet};
use crate::working::{Amount, Answer, Law, Parts, Quantity, Term};
use chrono::NaiveDate;
use uom::si::f64::TemperatureInterval;

/// One answer as it stands on the page.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// Its label.
    pub label: &'static str,
    /// What is known of it.
    pub figure: Figure,
    /// How it came about; none for what is lacking.
    pub working: Option<Box<Worked>>,
}

/// The figure of an answer.
#[derive(Debug, Clone, PartialEq)]
pub enum Figure {
    /// A number with its unit.
    Number {
        /// Rounded.
        text: String,
        /// Symbol of its unit; empty for a count.
        unit: &'static str,
        /// Not rounded, in the same unit, for programs.
        data: String,
        /// Lowest and highest, rounded.
        range: Option<[String; 2]>,
    },
    /// A day.
    Day {
        /// "Sat, Jan 9".
        text: String,
        /// Year-month-day.
        data: String,
    },
    /// A statement: "not before the ride date".
    Words(String),
    /// Facts that it lacks.
    Lacks(Vec<Lack>),
}

/// How an answer came about. Written out only where somebody looks: a letter typed changes many answers.
#[derive(Debug, Clone, PartialEq)]
pub struct Worked {
    law: &'static Law,
    terms: Vec<Term>,
    result: String,
    set: UnitSet,
    /// The unit of the answer, where it is not that of the set: amounts of its sort stand in it too.
    unit: Option<&'static Unit>,
}

/// A working as printed beside its answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Working {
    /// Formula with its symbols.
    pub formula: &'static str,
    /// The same with numbers in their place, and the result.
    pub substituted: String,
    /// Each symbol, what it is, what stood for it.
    pub legend: Vec<(&'static str, &'static str, String)>,
    /// Document.
    pub source: &'static str,
    /// Where the relation holds.
    pub holds: &'static str,
}

impl Shown {
    /// A quantity under `label`, in the usual unit of `set`.
    pub fn quantity(label: &'static str, told: Told<Answer<impl Quantity>>, set: UnitSet) -> Self {
        Self::quantity_in(label, told, set, None)
    }

    /// A quantity in a unit of its own: a mark is shown in the wrench's unit, whatever the set.
    pub fn quantity_in(
        label: &'static str,
        told: Told<Answer<impl Quantity>>,
        set: UnitSet,
        unit: Option<&'static Unit>,
    ) -> Self {
        // Of one type from here on: the rest is compiled once, not for every quantity.
        let told = told.map(|it| {
            let Parts { value, bounds, law, terms } = it.parts();
            let bounds = bounds.map(|it| it.map(Quantity::base));
            Answer::of(Parts { value: value.base(), bounds, law, terms })
        });
        Self::in_base(label, told, set, unit)
    }

    /// A quantity that is no one number: its range alone; a torque with two digits, rounded inward.
    pub fn span(label: &'static str, told: Told<Answer<impl Quantity>>, set: UnitSet) -> Self {
        let ends = told.as_ref().ok().and_then(|it| {
            let unit = it.law.gives.usual(set)?;
            Some((it.law.gives, it.bounds?.map(|it| unit.of_base(it.base()))))
        });
        let mut shown = Self::quantity(label, told, set);
        if let (Some((measure, ends)), Figure::Number { text, range, .. }) =
            (ends, &mut shown.figure)
        {
            *text = match (measure, &range) {
                (Measure::Torque, _) | (_, None) => inward(ends),
                (_, Some([low, high])) => format!("{low}–{high}"),
            };
            *range = None;
        }
        shown
    }

    /// A mark, as it stands on a scale that is marked in `unit`: 21, not 21.00.
    pub fn mark(
        label: &'static str,
        told: Told<Answer<impl Quantity>>,
        set: UnitSet,
        unit: Option<&'static Unit>,
    ) -> Self {
        let mut shown = Self::quantity_in(label, told, set, unit);
        as_marked(&mut shown.figure);
        shown
    }

    /// A quantity that must not be passed: rounded down.
    pub fn at_most(label: &'static str, told: Told<Answer<impl Quantity>>, set: UnitSet) -> Self {
        let down = told.as_ref().ok().map(|it| {
            let (measure, unit) = (it.law.gives, it.law.gives.usual(set));
            let value = unit.map_or(it.value.base(), |unit| unit.of_base(it.value.base()));
            digits::down(value, places(measure, unit, value))
        });
        let mut shown = Self::quantity(label, told, set);
        if let (Some(down), Figure::Number { text, .. }) = (down, &mut shown.figure) {
            *text = down;
        }
        shown
    }

    /// A number without unit: a count, a factor.
    pub fn count(label: &'static str, told: Told<Answer<f64>>, set: UnitSet) -> Self {
        Self::in_base(label, told, set, None)
    }

    #[inline(never)]
    fn in_base(
        label: &'static str,
        told: Told<Answer<f64>>,
        set: UnitSet,
        unit: Option<&'static Unit>,
    ) -> Self {
        let answer = match told {
            Ok(answer) => answer.parts(),
            Err(lacks) => return Self::lacking(label, lacks),
        };
        let measure = answer.law.gives;
        let figure = number_figure(
            measure,
            unit.or_else(|| measure.usual(set)),
            answer.value,
            answer.bounds,
        );
        let working = Worked { unit, ..Worked::of(answer.law, answer.terms, &figure, set) };
        Self { label, figure, working: Some(Box::new(working)) }
    }

    /// A day; `never` are the words for an answer without one.
    pub fn day(
        label: &'static str,
        told: Told<Option<Answer<NaiveDate>>>,
        never: &'static str,
        set: UnitSet,
    ) -> Self {
        match told {
            Ok(Some(answer)) => {
                let answer = answer.parts();
                let figure =
                    Figure::Day { text: short_day(answer.value), data: day_written(answer.value) };
                let working = Worked::of(answer.law, answer.terms, &figure, set);
                Self { label, figure, working: Some(Box::new(working)) }
            }
            Ok(None) => Self::words(label, never),
            Err(lacks) => Self::lacking(label, lacks),
        }
    }

    /// The same, with its year: a day outside of the season.
    pub fn date(
        label: &'static str,
        told: Told<Option<Answer<NaiveDate>>>,
        never: &'static str,
        set: UnitSet,
    ) -> Self {
        let long = told.as_ref().ok().and_then(|it| Some(long_day(it.as_ref()?.value)));
        let mut shown = Self::day(label, told, never, set);
        if let (Some(long), Figure::Day { text, .. }) = (long, &mut shown.figure) {
            if let Some(working) = &mut shown.working {
                working.result.clone_from(&long);
            }
            *text = long;
        }
        shown
    }

    /// A statement.
    pub fn words(label: &'static str, words: impl Into<String>) -> Self {
        Self { label, figure: Figure::Words(words.into()), working: None }
    }

    /// An answer that cannot be given yet.
    pub fn lacking(label: &'static str, lacks: Lacks) -> Self {
        Self { label, figure: Figure::Lacks(lacks.each_once()), working: None }
    }

    /// Its number with its unit, where it has one.
    pub fn figure_text(&self) -> Option<String> {
        match &self.figure {
            Figure::Number { text, unit, .. } => Some(format!("{text}\u{a0}{unit}")),
            _ => None,
        }
    }

    /// The figure in words: a statement, or what it needs.
    pub fn figure_words(&self) -> String {
        match &self.figure {
            Figure::Words(words) => words.clone(),
            Figure::Lacks(lacks) => needs(lacks),
            _ => self.figure_text().unwrap_or_default(),
        }
    }

    /// What it lacks.
    pub fn lacks(&self) -> &[Lack] {
        match &self.figure {
            Figure::Lacks(lacks) => lacks,
            _ => &[],
        }
    }

    /// The answer in one sentence, for a screen reader: "Exact setting 21.92 N·m".
    pub fn spoken(&self) -> Option<String> {
        match &self.figure {
            Figure::Number { text, unit, range: None, .. } => {
                Some(format!("{} {text} {unit}", self.label))
            }
            Figure::Number { text, unit, range: Some([low, high]), .. } => {
                Some(format!("{} {text} {unit}, from {low} to {high}", self.label))
            }
            Figure::Day { text, .. } | Figure::Words(text) => {
                Some(format!("{} {text}", self.label))
            }
            Figure::Lacks(_) => None,
        }
    }
}

fn number_figure(
    measure: Measure,
    unit: Option<&'static Unit>,
    base: f64,
    bounds: Option<[f64; 2]>,
) -> Figure {
    let of = |base: f64| unit.map_or(base, |it| it.of_base(base));
    let value = of(base);
    let places = places(measure, unit, value);
    let range = bounds.map(|ends| {
        let mut ends = ends.map(of);
        // A unit such as miles to the gallon turns the order round.
        if ends[0] > ends[1] {
            ends.swap(0, 1);
        }
        ends.map(|it| digits::fixed(it, places))
    });
    Figure::Number {
        text: digits::fixed(value, places),
        unit: unit.map_or("", |it| it.shown()),
        data: digits::exact(value),
        range: range.filter(|[low, high]| low != high),
    }
}

/// What to set, as on a wrench's scale where it is a mark: "21 N·m".
pub fn setting(set_to: impl Quantity, unit: Option<&'static Unit>, marked: bool) -> String {
    match setting_figure(set_to, unit, marked) {
        Figure::Number { text, unit, .. } => format!("{text}\u{a0}{unit}"),
        _ => String::new(),
    }
}

/// The same as the figure of an answer.
pub fn setting_figure(set_to: impl Quantity, unit: Option<&'static Unit>, marked: bool) -> Figure {
    let mut figure = number_figure(Measure::Torque, unit, set_to.base(), None);
    if marked {
        as_marked(&mut figure);
    }
    figure
}

/// A mark has the digits that stand on the scale: 21, not 21.00.
fn as_marked(figure: &mut Figure) {
    if let Figure::Number { text, data, .. } = figure {
        text.clone_from(data);
    }
}

/// The figure of an answer alone.
pub fn figure_of(answer: Answer<impl Quantity>, set: UnitSet) -> Figure {
    let measure = answer.law.gives;
    let bounds = answer.bounds.map(|it| it.map(Quantity::base));
    number_figure(measure, measure.usual(set), answer.value.base(), bounds)
}

/// "needs Tank volume, Fuel in the tank"; a refused fact says why beside its blank.
pub fn needs<'a>(lacks: impl IntoIterator<Item = &'a Lack>) -> String {
    let labels: Vec<&str> =
        lacks.into_iter().filter_map(|it| facts::about(it.id())).map(|it| it.label).collect();
    format!("{}{}", crate::words::page::NEEDS, joined(&labels, ", "))
}

/// "49–58": two digits of the lower end, neither end wider than it is.
fn inward([low, high]: [f64; 2]) -> String {
    let places = if low < 1.0 { 2 } else { usize::from(low < 10.0) };
    let scale = [1.0, 10.0, 100.0][places];
    // Slack for what was rounded on the way.
    let low = (low * scale - 1e-6).ceil() / scale;
    let high = (high * scale + 1e-6).floor() / scale;
    format!("{}–{}", digits::fixed(low, places), digits::fixed(high, places))
}

/// An amount in the usual unit of `set`, with its symbol.
pub fn amount(amount: Amount, set: UnitSet) -> String {
    match amount {
        Amount::Quantity(measure, base) => match measure.usual(set) {
            Some(unit) => with_unit(&digits::shortest(unit.of_base(base)), unit),
            None => digits::shortest(base),
        },
        Amount::Number(number) => digits::shortest(number),
        Amount::Of(number, unit) => format!("{}\u{a0}{unit}", digits::shortest(number)),
        Amount::Days(days) => format!("{days} d"),
        Amount::Day(day) => short_day(day),
        Amount::Date(day) => long_day(day),
    }
}

/// An amount as it stands in a formula: one in miles to the gallon turned round, so that what is shown is what was done.
fn in_formula(it: Amount, set: UnitSet) -> String {
    let shown = amount(it, set);
    match it {
        Amount::Quantity(measure, _) if measure.usual(set).is_some_and(Unit::is_inverse) => {
            format!("(1 / {shown})")
        }
        _ => shown,
    }
}

/// A quantity rounded as an answer is, with its unit: for notes beside an answer.
pub fn rounded(measure: Measure, quantity: impl Quantity, set: UnitSet) -> String {
    rounded_in(measure, quantity, measure.usual(set))
}

/// A step of temperature in a sentence.
pub fn step(it: TemperatureInterval, set: UnitSet) -> String {
    rounded(Measure::TemperatureStep, it, set)
}

/// The same, rounded down: what is accepted at most has to be accepted.
pub fn rounded_down(measure: Measure, quantity: impl Quantity, set: UnitSet) -> String {
    let Some(unit) = measure.usual(set) else { return digits::shortest(quantity.base()) };
    let value = unit.of_base(quantity.base());
    with_unit(&digits::down(value, places(measure, Some(unit), value)), unit)
}

/// The same in a unit of its own.
pub fn rounded_in(
    measure: Measure,
    quantity: impl Quantity,
    unit: Option<&'static Unit>,
) -> String {
    let Some(unit) = unit else { return digits::shortest(quantity.base()) };
    let value = unit.of_base(quantity.base());
    with_unit(&digits::fixed(value, places(measure, Some(unit), value)), unit)
}

/// "25 N·m", but "90°" and "66 %".
fn with_unit(number: &str, unit: &Unit) -> String {
    let space = if unit.shown() == "°" { "" } else { "\u{a0}" };
    format!("{number}{space}{}", unit.shown())
}

impl Worked {
    fn of(law: &'static Law, terms: Vec<Term>, figure: &Figure, set: UnitSet) -> Self {
        let result = match figure {
            Figure::Number { text, unit, .. } => {
                format!("{text}\u{a0}{unit}").trim_end().to_owned()
            }
            Figure::Day { text, .. } | Figure::Words(text) => text.clone(),
            Figure::Lacks(_) => String::new(),
        };
        Self { law, terms, result, set, unit: None }
    }

    /// The document that the law stands in.
    pub fn source(&self) -> &'static str {
        self.law.source
    }

    /// The formula, the numbers in it, what each of them is.
    pub fn written(&self) -> Working {
        let Self { law, terms, result, set, unit } = self;
        let in_unit = |it: Amount| match (it, unit) {
            (Amount::Quantity(measure, base), Some(unit)) if measure == law.gives => {
                with_unit(&digits::shortest(unit.of_base(base)), unit)
            }
            _ => in_formula(it, *set),
        };
        let legend = terms.iter().map(|it| (it.symbol, it.name, amount(it.amount, *set))).collect();
        let put_in: Vec<_> = terms.iter().map(|it| (it.symbol, in_unit(it.amount))).collect();
        let substituted = formula::with_numbers(law.formula, &put_in, result);
        Working { formula: law.formula, substituted, legend, source: law.source, holds: law.holds }
    }
}
