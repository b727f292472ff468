//! The battery model against worked cases, published points, closed forms and what has to be true of any battery.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod answers;
mod keeping;
mod laws;
mod published;
mod worked;

use chrono::NaiveDate;
use torpor::battery::{Battery, Chemistry, Edges, Forecast, Parameters, Roughly};
use torpor::season::{Season, Temperatures};
use uom::si::{
    electric_charge::ampere_hour, electric_current::milliampere, electric_potential::volt, f64::*,
    ratio::ratio, thermodynamic_temperature::degree_celsius,
};

/// A reference file's rows, each by the name of its column.
fn rows(name: &str) -> Vec<std::collections::HashMap<String, String>> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/battery/");
    let mut reader = csv::Reader::from_path(format!("{folder}{name}")).unwrap();
    reader.deserialize().map(Result::unwrap).collect()
}

fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

fn celsius(it: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(it)
}

fn share(it: f64) -> Ratio {
    Ratio::new::<ratio>(it)
}

fn volts(it: f64) -> ElectricPotential {
    ElectricPotential::new::<volt>(it)
}

fn amp_hours(it: f64) -> ElectricCharge {
    ElectricCharge::new::<ampere_hour>(it)
}

fn milliamps(it: f64) -> ElectricCurrent {
    ElectricCurrent::new::<milliampere>(it)
}

fn constant(it: f64) -> Temperatures {
    Temperatures::constant(celsius(it)).unwrap()
}

/// Source: the self-discharge and Q10 of the reference model, narrower than the product's, for checking the model alone.
fn narrow(chemistry: Chemistry) -> Parameters {
    let (lost, q10) = match chemistry {
        Chemistry::FloodedAntimony => ([0.05, 0.12, 0.25], [1.8, 2.0, 2.3]),
        Chemistry::FloodedCalcium => ([0.015, 0.03, 0.06], [1.8, 2.0, 2.3]),
        Chemistry::Agm | Chemistry::Gel => ([0.01, 0.03, 0.05], [1.8, 2.0, 2.3]),
        Chemistry::LiFePO4 => ([0.005, 0.02, 0.04], [1.0, 1.5, 2.0]),
    };
    Parameters { lost, q10, ..chemistry.parameters() }
}

/// A battery of which all but its self-discharge is known exactly.
fn known(parameters: Parameters, capacity: f64, charge: f64, draw_ma: f64) -> Battery {
    Battery::new(
        parameters,
        Roughly::exactly(amp_hours(capacity)),
        Roughly::exactly(share(charge)),
        Roughly::exactly(milliamps(draw_ma)),
    )
    .unwrap()
}

fn season_of(park: NaiveDate, days: u64) -> Season {
    Season::new(park, Some(park + chrono::Days::new(days))).unwrap()
}

/// Charge by edge at the end of so many days.
fn after(battery: &Battery, days: u64, temperatures: &Temperatures) -> Edges {
    let forecast = Forecast::new(battery, &season_of(day(2025, 11, 1), days), temperatures);
    *forecast.days().last().unwrap()
}
