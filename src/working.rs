//! Answers with their record: the relation they come from, its source, where it holds, and the numbers put into it.

use crate::units::Measure;
use chrono::NaiveDate;
use std::ops::{Deref, DerefMut};

/// A relation as printed. One `const` for each calculation, beside the function that computes it.
#[derive(Debug, PartialEq)]
pub struct Law {
    /// Symbols as in [`Term::symbol`], so that the numbers can be put in their place.
    pub formula: &'static str,
    /// What the result is, and so the units it is shown in.
    pub gives: Measure,
    /// Document and section, or "common practice, no source".
    pub source: &'static str,
    /// Conditions under which the relation is right.
    pub holds: &'static str,
}

/// Something that a working can show.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    /// A quantity, in the base unit of its measure's dimension.
    Quantity(Measure, f64),
    /// A pure number.
    Number(f64),
    /// A number in a unit of its own, whatever the set: millimeters of a thread, stress of a bolt.
    Of(f64, &'static str),
    /// A whole number of days.
    Days(i64),
    /// A day of the season.
    Day(NaiveDate),
    /// A day of any year, shown with it.
    Date(NaiveDate),
}

/// One symbol of a formula and what stood for it.
#[derive(Debug, Clone, PartialEq)]
pub struct Term {
    /// As in [`Law::formula`].
    pub symbol: &'static str,
    /// What it stood for, in plain words.
    pub name: &'static str,
    /// What was put in.
    pub amount: Amount,
}

/// A computed value with its bounds and its record.
///
/// ```
/// use torpor::{units::Measure, working::{Answer, Law}};
/// const DOUBLED: Law = Law { formula: "b = 2 · a", gives: Measure::Number, source: "arithmetic", holds: "always" };
/// let answer = Answer::exact(4.0, &DOUBLED, vec![]);
/// assert_eq!(answer.bounds, None);
/// ```
///
/// In a box: an answer goes through many hands, and a small handle is cheap to pass on.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer<T>(Box<Parts<T>>);

/// What an answer is made of.
#[derive(Debug, Clone, PartialEq)]
pub struct Parts<T> {
    /// Best value.
    pub value: T,
    /// Lowest and highest, where anything in it is known only roughly.
    pub bounds: Option<[T; 2]>,
    /// Where it comes from.
    pub law: &'static Law,
    /// What was put in.
    pub terms: Vec<Term>,
}

impl<T> Answer<T> {
    /// An answer whose terms are all known.
    pub fn exact(value: T, law: &'static Law, terms: Vec<Term>) -> Self {
        Self::of(Parts { value, bounds: None, law, terms })
    }

    /// An answer known within `bounds`, lowest first.
    pub fn within(value: T, bounds: [T; 2], law: &'static Law, terms: Vec<Term>) -> Self {
        Self::of(Parts { value, bounds: Some(bounds), law, terms })
    }

    /// An answer of these parts.
    pub fn of(parts: Parts<T>) -> Self {
        Self(Box::new(parts))
    }

    /// Its parts.
    pub fn parts(self) -> Parts<T> {
        *self.0
    }

    /// The same with other bounds, or none.
    pub fn bounded(mut self, bounds: Option<[T; 2]>) -> Self {
        self.0.bounds = bounds;
        self
    }
}

impl<T> Deref for Answer<T> {
    type Target = Parts<T>;

    fn deref(&self) -> &Parts<T> {
        &self.0
    }
}

impl<T> DerefMut for Answer<T> {
    fn deref_mut(&mut self) -> &mut Parts<T> {
        &mut self.0
    }
}

/// A quantity that can stand in a working: all of uom's that Torpor uses.
pub trait Quantity: Copy {
    /// Its amount in the base unit of [`crate::units::Dimension`].
    fn base(self) -> f64;
    /// The quantity of so many base units.
    fn of_base(base: f64) -> Self;
}

macro_rules! quantities {
    ($($quantity:ident of $unit:path;)*) => {
        $(impl Quantity for uom::si::f64::$quantity {
            fn base(self) -> f64 { self.get::<$unit>() }
            fn of_base(base: f64) -> Self { Self::new::<$unit>(base) }
        })*
    };
}
quantities! {
    Torque of uom::si::torque::newton_meter;
    Volume of uom::si::volume::cubic_meter;
    Length of uom::si::length::meter;
    Angle of uom::si::angle::radian;
    Ratio of uom::si::ratio::ratio;
    ThermodynamicTemperature of uom::si::thermodynamic_temperature::kelvin;
    TemperatureInterval of uom::si::temperature_interval::kelvin;
    Time of uom::si::time::second;
    ElectricPotential of uom::si::electric_potential::volt;
    ElectricCurrent of uom::si::electric_current::ampere;
    ElectricCharge of uom::si::electric_charge::coulomb;
    Energy of uom::si::energy::joule;
    Area of uom::si::area::square_meter;
    Force of uom::si::force::newton;
    MassDensity of uom::si::mass_density::kilogram_per_cubic_meter;
    Mass of uom::si::mass::kilogram;
}

/// Writes a term: symbol, plain words, measure, quantity.
pub fn term(
    symbol: &'static str,
    name: &'static str,
    measure: Measure,
    quantity: impl Quantity,
) -> Term {
    Term { symbol, name, amount: Amount::Quantity(measure, quantity.base()) }
}
