//! Numbers in figures, rounded to what is meaningful.

use crate::units::{self, Measure, Unit};

/// Decimal places that are meaningful for a value of `measure` in `unit`.
pub fn places(measure: Measure, unit: Option<&Unit>, value: f64) -> usize {
    let size = value.abs();
    // More than four digits of a torque say nothing on a wrench.
    let four_digits = if size < 99.995 { 2 } else { usize::from(size < 999.95) };
    match measure {
        Measure::Torque => four_digits,
        Measure::Tank => match unit {
            Some(it) if *it == units::LITER => 1,
            _ => 2,
        },
        Measure::Oil | Measure::Dose => match unit {
            Some(it) if *it == units::MILLILITER => usize::from(size < 10.0),
            Some(it) if *it == units::US_FL_OZ || *it == units::IMP_FL_OZ => {
                1 + usize::from(size < 9.995)
            }
            _ => 2,
        },
        Measure::Voltage | Measure::Pressure => 2,
        Measure::Draw | Measure::ChargingCurrent | Measure::Charge | Measure::Consumption => 1,
        Measure::Span => usize::from(unit.is_some_and(|it| *it == units::INCHES)) * 2,
        Measure::Angle
        | Measure::Share
        | Measure::Distance
        | Measure::Temperature
        | Measure::Energy => 0,
        Measure::Time | Measure::TemperatureStep => 0,
        Measure::Number | Measure::Days => 0,
    }
}

/// With so many decimals and a real minus sign; never "−0".
pub fn fixed(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    match text.strip_prefix('-') {
        Some(digits) if digits.chars().all(|it| matches!(it, '0' | '.')) => digits.to_owned(),
        Some(digits) => format!("−{digits}"),
        None => text,
    }
}

/// At most six significant digits, without trailing zeros: an entry's number as it was most likely typed.
///
/// ```
/// assert_eq!(torpor::show::number::shortest(25.0), "25");
/// assert_eq!(torpor::show::number::shortest(3.785411784), "3.78541");
/// ```
pub fn shortest(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0".to_owned();
    }
    let magnitude = value.abs().log10().floor();
    let places = (5.0 - magnitude).max(0.0).min(9.0) as usize;
    let text = fixed(value, places);
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// Not rounded but to twelve decimals, as programs read it.
pub fn exact(value: f64) -> String {
    let text = format!("{value:.12}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
