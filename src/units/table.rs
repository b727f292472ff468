//! The table of units, each defined exactly.

use super::{
    Dimension,
    Scale::{Over, Shifted, Times},
    Unit,
};

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

macro_rules! units {
    ($($(#[$doc:meta])* $name:ident = $code:literal, $symbol:literal, $dimension:ident, $scale:expr, [$($spelling:literal),*];)*) => {
        $($(#[$doc])* pub static $name: Unit = Unit {
            code: $code, symbol: $symbol, dimension: Dimension::$dimension, scale: $scale, spellings: &[$($spelling),*],
        };)*
        /// Every unit, in the order of their codes.
        pub static ALL: &[&Unit] = &[$(&$name),*];
    };
}
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

    /// Liters for 1,000 kilometers: what an engine uses up of oil.
    LITERS_PER_1000_KM = 92, "L/1000 km", Consumption, Times(1e-9), ["l/1000km", "liter/1000km"];
    /// US quarts for 1,000 miles.
    US_QT_PER_1000_MI = 93, "US qt/1000 mi", Consumption, Times(US_GALLON / 4.0 / (1000.0 * MILE)), ["usqt/1000mi", "qt/1000mi"];

    /// Hour.
    HOUR = 96, "h", Time, Times(3600.0), ["h", "hr", "hrs", "hour", "hours"];

    /// Kilonewton.
    KILONEWTON = 104, "kN", Force, Times(1e3), ["kn", "kilonewton", "kilonewtons"];
    /// Newton.
    NEWTON = 105, "N", Force, Times(1.0), ["n", "newton", "newtons"];
    /// Pound-force.
    POUND_FORCE = 106, "lbf", Force, Times(LBF), ["lbf", "lb", "lbs", "poundforce"];

    /// Year of the calendar's mean length, 365.2425 days.
    YEAR = 110, "years", Time, Times(31_556_952.0), ["y", "yr", "year", "years"];

    /// Kilogram for a cubic meter.
    KG_PER_M3 = 112, "kg/m³", Density, Times(1.0), ["kg/m3", "kgm3"];
    /// Kilogram for a liter: 0.86 on an oil's data sheet.
    KG_PER_LITER = 113, "kg/L", Density, Times(1e3), ["kg/l", "g/ml", "g/cm3", "g/cc", "kg/dm3"];

    /// Gram.
    GRAM = 114, "g", Mass, Times(1e-3), ["g", "gram", "grams"];

    /// Specific gravity.
    SPECIFIC_GRAVITY = 120, "SG", Gravity, Times(1.0), ["sg", "kg/l", "g/cm3", "g/ml"];
}
