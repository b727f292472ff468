//! Units of measure that an entry may be typed in and an answer shown in, each defined exactly.
//!
//! A [`Unit`] has a `code` that is frozen for ever: entries, records and links carry it. A [`Measure`] says what sort
//! of amount a fact or an answer is, and with it which units are offered and which one a fresh blank starts with.
//!
//! uom's own pound-force, psi and US gallon are rounded; the factors here are the exact definitions.
//! Source: NIST SP 811 Appendix B.8, NIST Handbook 44 Appendix C, UK Weights and Measures Act 1985 Schedule 1.

mod spelling;

pub use spelling::{Spelled, spelled};

use std::fmt;

mod table;

pub use table::*;

/// What a unit measures; two units convert into each other when they share it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Dimension {
    /// Base: newton meter.
    Torque,
    /// Base: cubic meter.
    Volume,
    /// Base: meter.
    Length,
    /// Base: radian.
    Angle,
    /// Base: 1.
    Ratio,
    /// A reading on a thermometer. Base: kelvin.
    Temperature,
    /// A step between two readings; never converted as a reading. Base: kelvin.
    TemperatureStep,
    /// Base: volt.
    Voltage,
    /// Base: ampere.
    Current,
    /// Base: coulomb.
    Charge,
    /// Base: joule.
    Energy,
    /// Difference to the air around. Base: pascal.
    GaugePressure,
    /// Fuel for a distance. Base: square meter (volume over length).
    Consumption,
    /// Base: second.
    Time,
    /// Base: newton.
    Force,
    /// Base: kilogram for a cubic meter.
    Density,
    /// Base: kilogram.
    Mass,
    /// Density of battery acid over water's. Base: 1.
    Gravity,
}

/// How a number in a unit becomes the base unit of its dimension.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Scale {
    /// base = number × factor
    Times(f64),
    /// base = (number + shift) × factor
    Shifted { shift: f64, factor: f64 },
    /// base = factor / number
    Over(f64),
}

/// One unit as offered on the page.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// Frozen for ever; never used again for another unit.
    pub code: u8,
    /// As printed beside a figure.
    pub symbol: &'static str,
    /// What it measures.
    pub dimension: Dimension,
    scale: Scale,
    /// Spellings that mean this unit, in the form `spelling::fold` gives. Its symbol is always one.
    spellings: &'static [&'static str],
}

impl Unit {
    /// Every folded spelling that means it, besides its symbol.
    pub fn spellings(&self) -> &'static [&'static str] {
        self.spellings
    }

    /// A number of this unit in the base unit of its dimension.
    ///
    /// ```
    /// use torpor::units;
    /// assert_eq!(units::LBF_FT.to_base(1.0), 1.3558179483314004);
    /// ```
    pub fn to_base(&self, number: f64) -> f64 {
        match self.scale {
            Scale::Times(factor) => number * factor,
            Scale::Shifted { shift, factor } => (number + shift) * factor,
            Scale::Over(factor) => factor / number,
        }
    }

    /// Its symbol as people write it. A step of temperature has one of its own in the table and in files, where it must not be
    /// taken for a temperature; beside a label it needs none.
    pub fn shown(&self) -> &'static str {
        self.symbol.strip_prefix('Δ').unwrap_or(self.symbol)
    }

    /// Whether more of it is less of what it measures, as with miles to the gallon.
    pub fn is_inverse(&self) -> bool {
        matches!(self.scale, Scale::Over(_))
    }

    /// The number of this unit that an amount in the base unit is. Inverse of [`Unit::to_base`].
    pub fn of_base(&self, base: f64) -> f64 {
        match self.scale {
            Scale::Times(factor) => base / factor,
            Scale::Shifted { shift, factor } => base / factor - shift,
            Scale::Over(factor) => factor / base,
        }
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.symbol)
    }
}

/// The unit with this code.
pub fn by_code(code: u8) -> Option<&'static Unit> {
    ALL.iter().copied().find(|it| it.code == code)
}

/// Which units answers and fresh blanks use. What is already typed never follows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum UnitSet {
    /// N·m, L, mm, km, °C.
    #[default]
    Metric,
    /// lbf·ft, US gal, in, mi, °F.
    Us,
}

/// What sort of amount a fact or an answer is: its dimension and the units it is usually written in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// Tightening torque.
    Torque,
    /// Length of a wrench or an adapter.
    Span,
    /// Angle of an adapter.
    Angle,
    /// How far a fastener is turned.
    Turn,
    /// A share of something.
    Share,
    /// Fuel in a tank.
    Tank,
    /// Oil in an engine or a bottle.
    Oil,
    /// Stabilizer, and other small amounts.
    Dose,
    /// Distance ridden.
    Distance,
    /// Fuel for a distance.
    Consumption,
    /// Engine oil for a distance.
    OilUse,
    /// A temperature as read.
    Temperature,
    /// A difference of temperatures.
    TemperatureStep,
    /// Voltage of a battery.
    Voltage,
    /// Key-off draw.
    Draw,
    /// Charger's current.
    ChargingCurrent,
    /// Capacity of a lead-acid battery.
    Charge,
    /// Capacity of a LiFePO4 battery.
    Energy,
    /// Tire pressure, gauge.
    Pressure,
    /// Time on the charger.
    Time,
    /// Preload of a bolt.
    Force,
    /// Density of an oil.
    Density,
    /// Water in fuel.
    Water,
    /// Of battery acid.
    Gravity,
    /// A pure number: a count.
    Number,
    /// A pure number near one: a factor, a coefficient.
    Factor,
    /// A number of days.
    Days,
    /// How old something is.
    Age,
    /// Height over the sea.
    Altitude,
}

impl Measure {
    /// Its dimension; `None` for counts and days.
    pub fn dimension(self) -> Option<Dimension> {
        self.offered(UnitSet::Metric).first().map(|it| it.dimension)
    }

    /// The units that its blank's button goes through, the usual one first.
    pub fn offered(self, set: UnitSet) -> &'static [&'static Unit] {
        use UnitSet::{Metric, Us};
        match (self, set) {
            (Measure::Torque, Metric) => const { &[&NEWTON_METER, &KGF_M, &LBF_FT, &LBF_IN] },
            (Measure::Torque, Us) => const { &[&LBF_FT, &LBF_IN, &NEWTON_METER, &KGF_M] },
            (Measure::Span, Metric) => const { &[&MILLIMETER, &INCHES] },
            (Measure::Span, Us) => const { &[&INCHES, &MILLIMETER] },
            (Measure::Angle, _) => const { &[&DEGREE] },
            (Measure::Turn, _) => const { &[&TURN, &DEGREE] },
            (Measure::Share, _) => const { &[&PERCENT] },
            (Measure::Tank, Metric) => const { &[&LITER, &US_GAL, &IMP_GAL] },
            (Measure::Tank, Us) => const { &[&US_GAL, &LITER, &IMP_GAL] },
            (Measure::Oil, Metric) => const { &[&LITER, &MILLILITER, &US_QT, &IMP_QT] },
            (Measure::Oil, Us) => const { &[&US_QT, &US_FL_OZ, &LITER, &MILLILITER] },
            (Measure::Dose, Metric) => const { &[&MILLILITER, &US_FL_OZ, &IMP_FL_OZ] },
            (Measure::Dose, Us) => const { &[&US_FL_OZ, &MILLILITER, &IMP_FL_OZ] },
            (Measure::Distance, Metric) => const { &[&KILOMETER, &MILES] },
            (Measure::Distance, Us) => const { &[&MILES, &KILOMETER] },
            (Measure::Consumption, Metric) => {
                const { &[&LITERS_PER_100_KM, &KM_PER_LITER, &US_MPG, &IMP_MPG] }
            }
            (Measure::Consumption, Us) => const { &[&US_MPG, &LITERS_PER_100_KM, &IMP_MPG] },
            (Measure::OilUse, Metric) => const { &[&LITERS_PER_1000_KM] },
            (Measure::OilUse, Us) => const { &[&US_QT_PER_1000_MI] },
            (Measure::Temperature, Metric) => const { &[&CELSIUS, &FAHRENHEIT] },
            (Measure::Temperature, Us) => const { &[&FAHRENHEIT, &CELSIUS] },
            (Measure::TemperatureStep, Metric) => const { &[&KELVIN_STEP] },
            (Measure::TemperatureStep, Us) => const { &[&FAHRENHEIT_STEP] },
            (Measure::Time, _) => const { &[&HOUR] },
            (Measure::Voltage, _) => const { &[&VOLT] },
            (Measure::Draw, _) => const { &[&MILLIAMPERE, &AMPERE] },
            (Measure::ChargingCurrent, _) => const { &[&AMPERE, &MILLIAMPERE] },
            (Measure::Charge, _) => const { &[&AMPERE_HOUR] },
            (Measure::Energy, _) => const { &[&WATT_HOUR] },
            (Measure::Pressure, Metric) => const { &[&BAR, &KILOPASCAL, &PSI] },
            (Measure::Pressure, Us) => const { &[&PSI, &BAR, &KILOPASCAL] },
            (Measure::Force, Metric) => const { &[&KILONEWTON, &NEWTON] },
            (Measure::Gravity, _) => const { &[&SPECIFIC_GRAVITY] },
            (Measure::Force, Us) => const { &[&POUND_FORCE] },
            (Measure::Density, _) => const { &[&KG_PER_M3, &KG_PER_LITER] },
            (Measure::Water, _) => const { &[&GRAM] },
            (Measure::Age, _) => const { &[&YEAR] },
            (Measure::Altitude, Metric) => const { &[&METER, &FOOT] },
            (Measure::Altitude, Us) => const { &[&FOOT, &METER] },
            (Measure::Number | Measure::Factor | Measure::Days, _) => const { &[] },
        }
    }

    /// The unit that a fresh blank and an answer use under `set`.
    pub fn usual(self, set: UnitSet) -> Option<&'static Unit> {
        self.offered(set).first().copied()
    }
}
