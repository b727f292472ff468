//! How many decimals of a figure say something.

use crate::units::{self, Measure, Unit};

/// Decimal places that are meaningful for a value of `measure` in `unit`.
pub fn places(measure: Measure, unit: Option<&Unit>, value: f64) -> usize {
    let size = value.abs();
    // More than four digits of a torque say nothing on a wrench.
    let four_digits = if size < 99.995 { 2 } else { usize::from(size < 999.95) };
    match measure {
        Measure::Torque => four_digits,
        Measure::OilUse => 2,
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
        Measure::Voltage => 2,
        Measure::Pressure => match unit {
            Some(it) if *it == units::KILOPASCAL => 0,
            Some(it) if *it == units::PSI => 1,
            _ => 2,
        },
        Measure::Age => 1,
        Measure::Draw | Measure::ChargingCurrent | Measure::Charge | Measure::Consumption => 1,
        Measure::Span => usize::from(unit.is_some_and(|it| *it == units::INCHES)) * 2,
        Measure::Turn => 2,
        Measure::Gravity => 3,
        Measure::Angle
        | Measure::Share
        | Measure::Distance
        | Measure::Altitude
        | Measure::Temperature
        | Measure::Energy => 0,
        Measure::Time => usize::from(size < 9.95),
        Measure::TemperatureStep => 0,
        Measure::Force => usize::from(unit.is_some_and(|it| *it == units::KILONEWTON)),
        Measure::Factor => 2,
        // Under a gram the second digit is what tells one tank from another.
        Measure::Water => usize::from(size < 10.0) + usize::from(size < 1.0),
        Measure::Number | Measure::Days | Measure::Density => 0,
    }
}
