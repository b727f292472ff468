//! Units of measure that an entry may be typed in and an answer shown in, each defined exactly.
//!
//! A [`Unit`] has a `code` that is frozen for ever: entries, records and links carry it. A [`Measure`] says what sort
//! of amount a fact or an answer is, and with it which units are offered and which one a fresh blank starts with.
//!
//! uom's own pound-force, psi and US gallon are rounded; the factors here are the exact definitions.
//! Source: NIST SP 811 Appendix B.8, NIST Handbook 44 Appendix C, UK Weights and Measures Act 1985 Schedule 1.

use std::fmt;

/// Pound-force inch, newton meters: 0.45359237 kg × 9.80665 m/s² × 0.0254 m.
const LBF_INCH: f64 = 0.1129848290276167;
/// International inch, meters.
const INCH: f64 = 0.0254;
/// US liquid gallon, cubic meters: 231 in³.
const US_GALLON: f64 = 3.785411784e-3;
/// Imperial gallon, cubic meters.
const IMPERIAL_GALLON: f64 = 4.54609e-3;
/// International mile, meters.
const MILE: f64 = 1609.344;
/// Pound-force, newtons: 0.45359237 kg × 9.80665 m/s².
const LBF: f64 = 4.4482216152605;

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
    /// Spellings that mean this unit, in the form [`fold`] gives. Its symbol is always one.
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

/// Folds a spelling to the form that [`Unit::spellings`] hold: lower case, without spaces, dots and hyphens.
fn fold(spelling: &str) -> String {
    let dropped = |it: &char| !it.is_whitespace() && !"·⋅•.*-–−_×'’\u{a0}\u{202f}".contains(*it);
    let folded: String =
        spelling.chars().filter(dropped).map(|it| it.to_ascii_lowercase()).collect();
    folded
        .replace("litre", "liter")
        .replace("metre", "meter")
        .replace('²', "2")
        .replace('³', "3")
        .replace('º', "°")
}

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident = $code:literal, $symbol:literal, $dimension:ident, $scale:expr, [$($spelling:literal),*];)*) => {
        $($(#[$doc])* pub static $name: Unit = Unit {
            code: $code, symbol: $symbol, dimension: Dimension::$dimension, scale: $scale, spellings: &[$($spelling),*],
        };)*
        /// Every unit, in the order of their codes.
        pub static ALL: &[&Unit] = &[$(&$name),*];
    };
}
use Scale::{Over, Shifted, Times};
units! {
    /// Newton meter.
    NEWTON_METER = 1, "N·m", Torque, Times(1.0), ["nm", "newtonmeter", "newtonmeters"];
    /// Decinewton meter.
    DECINEWTON_METER = 2, "dN·m", Torque, Times(0.1), ["dnm"];
    /// Centinewton meter.
    CENTINEWTON_METER = 3, "cN·m", Torque, Times(0.01), ["cnm"];
    /// Pound-force foot.
    LBF_FT = 4, "lbf·ft", Torque, Times(1.3558179483314004),
        ["ftlb", "ftlbs", "ftlbf", "lbft", "lbfft", "lbsft", "footpound", "footpounds", "poundfoot", "poundfeet", "poundsfeet", "ftpound", "ftpounds"];
    /// Pound-force inch.
    LBF_IN = 5, "lbf·in", Torque, Times(LBF_INCH),
        ["inlb", "inlbs", "inlbf", "lbin", "lbfin", "lbsin", "inchpound", "inchpounds", "poundinch", "poundinches", "inchlbs", "inchlb"];
    /// Ounce-force inch.
    OZF_IN = 6, "ozf·in", Torque, Times(LBF_INCH / 16.0), ["ozin", "inoz", "inozf", "ozfin", "inchounce", "inchounces", "ounceinch", "ounceinches"];
    /// Kilogram-force meter; "kg-m" and "m-kg" in old manuals mean this.
    KGF_M = 7, "kgf·m", Torque, Times(9.80665), ["kgm", "mkg", "kgfm", "mkgf", "kpm", "mkp", "kilogrammeter", "kilogrammeters"];
    /// Kilogram-force centimeter.
    KGF_CM = 8, "kgf·cm", Torque, Times(0.0980665), ["kgcm", "cmkg", "kgfcm", "cmkgf", "kpcm"];
    /// Decanewton meter, of old French and Italian manuals.
    DECANEWTON_METER = 9, "daN·m", Torque, Times(10.0), ["danm", "mdan", "decanewtonmeter", "decanewtonmeters"];

    /// Liter.
    LITER = 16, "L", Volume, Times(1e-3), ["l", "lt", "ltr", "liter", "liters", "dm3", "ℓ"];
    /// Milliliter.
    MILLILITER = 17, "mL", Volume, Times(1e-6), ["ml", "cc", "ccm", "cm3", "milliliter", "milliliters"];
    /// US liquid gallon.
    US_GAL = 18, "US gal", Volume, Times(US_GALLON), ["usgal", "usgallon", "usgallons", "galus", "gal(us)", "gallonus", "gallonsus"];
    /// US liquid quart.
    US_QT = 19, "US qt", Volume, Times(US_GALLON / 4.0), ["usqt", "usquart", "usquarts", "qtus", "qt(us)", "usqts"];
    /// US liquid pint.
    US_PT = 20, "US pt", Volume, Times(US_GALLON / 8.0), ["uspt", "uspint", "uspints", "ptus", "pt(us)", "uspts"];
    /// US fluid ounce.
    US_FL_OZ = 21, "US fl oz", Volume, Times(US_GALLON / 128.0), ["usfloz", "flozus", "floz(us)", "usoz", "usfluidounce", "usfluidounces"];
    /// US tablespoon.
    US_TBSP = 22, "US tbsp", Volume, Times(US_GALLON / 256.0), ["tbsp", "tbspus", "tbsp(us)", "ustbsp", "tablespoon", "tablespoons"];
    /// US teaspoon.
    US_TSP = 23, "US tsp", Volume, Times(US_GALLON / 768.0), ["tsp", "tspus", "tsp(us)", "ustsp", "teaspoon", "teaspoons"];
    /// Imperial gallon.
    IMP_GAL = 24, "imp gal", Volume, Times(IMPERIAL_GALLON), ["impgal", "ukgal", "galimp", "gal(imp)", "imperialgallon", "imperialgallons", "impgallon", "impgallons"];
    /// Imperial quart.
    IMP_QT = 25, "imp qt", Volume, Times(IMPERIAL_GALLON / 4.0), ["impqt", "ukqt", "qtimp", "qt(imp)", "imperialquart", "imperialquarts", "impquart", "impquarts"];
    /// Imperial pint.
    IMP_PT = 26, "imp pt", Volume, Times(IMPERIAL_GALLON / 8.0), ["imppt", "ukpt", "ptimp", "pt(imp)", "imperialpint", "imperialpints", "imppint", "imppints"];
    /// Imperial fluid ounce.
    IMP_FL_OZ = 27, "imp fl oz", Volume, Times(IMPERIAL_GALLON / 160.0), ["impfloz", "ukfloz", "flozimp", "floz(imp)", "impoz", "imperialfluidounce", "imperialfluidounces"];

    /// Kilopascal, gauge.
    KILOPASCAL = 32, "kPa", GaugePressure, Times(1e3), ["kpa"];
    /// Bar, gauge.
    BAR = 33, "bar", GaugePressure, Times(1e5), ["bar", "bars"];
    /// Pound-force per square inch, gauge.
    PSI = 34, "psi", GaugePressure, Times(6894.757293168361), ["psi", "lbs/in2", "lb/in2", "lbf/in2"];
    /// Kilogram-force per square centimeter, gauge; "kg/cm²" in old manuals.
    KGF_CM2 = 35, "kgf/cm²", GaugePressure, Times(98066.5), ["kg/cm2", "kgf/cm2", "kgcm2", "at"];

    /// Millimeter.
    MILLIMETER = 40, "mm", Length, Times(1e-3), ["mm", "millimeter", "millimeters"];
    /// Inch.
    INCHES = 41, "in", Length, Times(INCH), ["in", "inch", "inches", "\"", "″", "”"];
    /// Foot.
    FOOT = 42, "ft", Length, Times(12.0 * INCH), ["ft", "foot", "feet", "′"];
    /// Centimeter.
    CENTIMETER = 43, "cm", Length, Times(1e-2), ["cm", "centimeter", "centimeters"];
    /// Kilometer.
    KILOMETER = 44, "km", Length, Times(1e3), ["km", "kilometer", "kilometers"];
    /// International mile.
    MILES = 45, "mi", Length, Times(MILE), ["mi", "mile", "miles"];
    /// Meter.
    METER = 46, "m", Length, Times(1.0), ["m", "meter", "meters"];

    /// Degree of arc.
    DEGREE = 56, "°", Angle, Times(std::f64::consts::PI / 180.0), ["°", "deg", "degree", "degrees"];
    /// Percent.
    PERCENT = 57, "%", Ratio, Times(1e-2), ["%", "percent", "pct"];
    /// Whole turn.
    TURN = 58, "turn", Angle, Times(std::f64::consts::TAU), ["turn", "turns", "rev", "revolution", "revolutions"];

    /// Degree Celsius, as read.
    CELSIUS = 64, "°C", Temperature, Shifted { shift: 273.15, factor: 1.0 }, ["°c", "c", "degc", "celsius"];
    /// Degree Fahrenheit, as read.
    FAHRENHEIT = 65, "°F", Temperature, Shifted { shift: 459.67, factor: 5.0 / 9.0 }, ["°f", "f", "degf", "fahrenheit"];
    /// Step of one kelvin.
    KELVIN_STEP = 66, "K", TemperatureStep, Times(1.0), ["k", "kelvin", "°c", "c"];
    /// Step of one degree Fahrenheit.
    FAHRENHEIT_STEP = 67, "Δ°F", TemperatureStep, Times(5.0 / 9.0), ["Δ°f", "°f", "f"];

    /// Volt.
    VOLT = 72, "V", Voltage, Times(1.0), ["v", "volt", "volts"];
    /// Ampere.
    AMPERE = 73, "A", Current, Times(1.0), ["a", "amp", "amps", "ampere", "amperes"];
    /// Milliampere.
    MILLIAMPERE = 74, "mA", Current, Times(1e-3), ["ma", "milliamp", "milliamps"];
    /// Coulomb.
    COULOMB = 75, "C", Charge, Times(1.0), ["c", "coulomb", "coulombs"];
    /// Ampere hour.
    AMPERE_HOUR = 76, "Ah", Charge, Times(3600.0), ["ah", "amphour", "amphours", "amperehour"];
    /// Milliampere hour.
    MILLIAMPERE_HOUR = 77, "mAh", Charge, Times(3.6), ["mah"];
    /// Watt hour.
    WATT_HOUR = 78, "Wh", Energy, Times(3600.0), ["wh", "watthour", "watthours"];

    /// Liters for 100 kilometers.
    LITERS_PER_100_KM = 88, "L/100 km", Consumption, Times(1e-8), ["l/100km", "l/100", "liter/100km"];
    /// Miles to the US gallon.
    US_MPG = 89, "mpg (US)", Consumption, Over(US_GALLON / MILE), ["mpg(us)", "mpgus", "usmpg"];
    /// Miles to the imperial gallon.
    IMP_MPG = 90, "mpg (imp)", Consumption, Over(IMPERIAL_GALLON / MILE), ["mpg(imp)", "mpgimp", "mpg(uk)", "mpguk", "impmpg", "ukmpg"];
    /// Kilometers to the liter.
    KM_PER_LITER = 91, "km/L", Consumption, Over(1e-6), ["km/l", "kml", "kmpl"];

    /// Hour.
    HOUR = 96, "h", Time, Times(3600.0), ["h", "hr", "hrs", "hour", "hours"];

    /// Kilonewton.
    KILONEWTON = 104, "kN", Force, Times(1e3), ["kn", "kilonewton", "kilonewtons"];
    /// Newton.
    NEWTON = 105, "N", Force, Times(1.0), ["n", "newton", "newtons"];
    /// Pound-force.
    POUND_FORCE = 106, "lbf", Force, Times(LBF), ["lbf", "lb", "lbs", "poundforce"];
}

/// Spellings that the US and Britain use for different amounts, with what each takes them for.
static SHARED_SPELLINGS: &[(&[&str], &Unit, &Unit)] = &[
    (&["gal", "gals", "gallon", "gallons"], &US_GAL, &IMP_GAL),
    (&["qt", "qts", "quart", "quarts"], &US_QT, &IMP_QT),
    (&["pt", "pts", "pint", "pints"], &US_PT, &IMP_PT),
    (&["floz", "oz", "fluidounce", "fluidounces", "ounce", "ounces"], &US_FL_OZ, &IMP_FL_OZ),
    (&["mpg"], &US_MPG, &IMP_MPG),
];

/// The unit with this code.
pub fn by_code(code: u8) -> Option<&'static Unit> {
    ALL.iter().copied().find(|it| it.code == code)
}

/// A spelling read as a unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Spelled {
    /// One meaning.
    Clear(&'static Unit),
    /// The US and Britain differ by a fifth; `taken` is what it was read as, `other` what it might have meant.
    Shared {
        /// What it is read as.
        taken: &'static Unit,
        /// What it might have meant.
        other: &'static Unit,
    },
}

impl Spelled {
    /// The unit it is read as.
    pub fn unit(self) -> &'static Unit {
        match self {
            Spelled::Clear(unit) | Spelled::Shared { taken: unit, .. } => unit,
        }
    }
}

/// Reads a spelling of a unit of `dimension`. A bare "gal", "qt", "pt", "oz" or "mpg" is taken as British where
/// `beside`, the unit that the blank shows, is British; else as American.
///
/// ```
/// use torpor::units::{self, Dimension, Spelled};
/// assert_eq!(units::spelled("ft-lbs", Dimension::Torque, None), Some(Spelled::Clear(&units::LBF_FT)));
/// let taken = units::spelled("gal", Dimension::Volume, None).map(Spelled::unit);
/// assert_eq!(taken, Some(&units::US_GAL));
/// ```
pub fn spelled(spelling: &str, dimension: Dimension, beside: Option<&Unit>) -> Option<Spelled> {
    let folded = fold(spelling);
    let ours = |it: &&Unit| it.dimension == dimension;
    if let Some((_, us, imp)) =
        SHARED_SPELLINGS.iter().find(|(all, us, _)| ours(us) && all.contains(&folded.as_str()))
    {
        let british = beside.is_some_and(|it| SHARED_SPELLINGS.iter().any(|(.., imp)| *imp == it));
        let (taken, other) = if british { (*imp, *us) } else { (*us, *imp) };
        return Some(Spelled::Shared { taken, other });
    }
    let known = |it: &&Unit| it.spellings.contains(&folded.as_str()) || fold(it.symbol) == folded;
    ALL.iter().copied().filter(ours).find(known).map(Spelled::Clear)
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
    /// A pure number: a count.
    Number,
    /// A pure number near one: a factor, a coefficient.
    Factor,
    /// A number of days.
    Days,
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
            (Measure::Force, Us) => const { &[&POUND_FORCE] },
            (Measure::Number | Measure::Factor | Measure::Days, _) => const { &[] },
        }
    }

    /// The unit that a fresh blank and an answer use under `set`.
    pub fn usual(self, set: UnitSet) -> Option<&'static Unit> {
        self.offered(set).first().copied()
    }
}
