//! How long fuel keeps, the water it meets, kitchen measures.

use super::*;
use chrono::NaiveDate;
use torpor::expansion::Table;
use torpor::fuel::Air;
use uom::si::{
    f64::{MassDensity, ThermodynamicTemperature},
    mass::{gram, milligram},
    mass_density::kilogram_per_cubic_meter,
    thermodynamic_temperature::degree_celsius,
};

/// Source: fuel_storage.csv: treated 12 to 24 months by label claims, untreated 1 to 3, common practice, no source.
#[test]
fn fuel_keeps_as_long_as_is_said() {
    for (what, treated) in
        [("stabilized petrol", true), ("untreated petrol left in a motorcycle tank", false)]
    {
        let rows = rows("fuel_storage.csv");
        let row = rows.iter().find(|row| &row[0] == what).unwrap();
        let least = row[1].parse::<f64>().unwrap() * 30.5;
        assert!(fuel::keeps(0.0, treated) && fuel::keeps(least, treated), "{what}");
        assert!(!fuel::keeps(least + 1.0, treated), "{what}");
    }
    // Twelve months are over on no day of a leap year.
    assert!(fuel::keeps(366.0, true));
}

/// By the calendar: November 14 to March 28 are 134 days.
#[test]
fn age_is_counted_in_days() {
    let day = |year, month, day| NaiveDate::from_ymd_opt(year, month, day).unwrap();
    let age = fuel::age(day(2026, 11, 14), day(2027, 3, 28)).unwrap();
    formula::is_whole(&age);
    assert_eq!(age.value, 134.0);
    assert_eq!(fuel::age(day(2026, 11, 14), day(2026, 11, 14)).unwrap().value, 0.0);
    let refused = fuel::age(day(2026, 11, 15), day(2026, 11, 14)).unwrap_err().to_string();
    assert_eq!(refused, "fuel has to be bought on the ride date or before");
}

/// Source: condensation.csv, computed apart from this program (Magnus of WMO-No. 8; its saturation agrees with PsychroLib
/// 2.5.0 to 0.3 %). Humidity over water, a freezing night over ice.
#[test]
fn a_tank_breathes_in_little_water() {
    let rows = rows("condensation.csv");
    assert_eq!(rows.len(), 8);
    for row in rows {
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        let air = Air::new(number(2), number(3), number(4));
        let what = format!("{} {} L {} °C", &row[0], &row[1], &row[2]);
        let one = fuel::breathed(l(number(1)), 1.0, air, air).unwrap();
        formula::is_whole(&one);
        close(one.value.get::<milligram>(), number(12), 6e-4, &what);
        let season = fuel::breathed(l(number(1)), number(5), air, air).unwrap();
        close(season.value.get::<gram>(), number(14), 6e-4, &what);
        let most = season.bounds.unwrap()[1].get::<gram>();
        // Where the night takes nothing out of the air, breathing is the most.
        close(most, number(13).max(number(14)), 6e-4, &what);
    }
    let air = Air::new(10.0, 80.0, 0.0);
    for (space, nights) in [(-1.0, 1.0), (1.0, -1.0), (1.0, f64::NAN)] {
        let refused = fuel::breathed(l(space), nights, air, air).unwrap_err().to_string();
        assert_eq!(refused, "air over the fuel and nights have to be 0 or more");
    }
}

/// Source: water_tolerance.csv: gasoline without ethanol by NACA RM E52D24, checked there with a refiner's 150 ppm; E10
/// by pages quoting published guidance, 0.3 to 0.5 % of the volume.
#[test]
fn what_fuel_holds_before_water_stands_under_it() {
    let mut seen = 0;
    for row in rows("water_tolerance.csv") {
        let [celsius, ppm, grams] = [1, 3, 4].map(|it| row[it].parse::<f64>());
        match (&row[0], celsius, ppm, grams) {
            ("E0", Ok(celsius), Ok(ppm), Ok(grams)) if !row[2].is_empty() => {
                close(fuel::dissolved(celsius) / 745.0 * 1e6, ppm, 0.5, &row[1]);
                // The table's liter has 0.745 kg at 15 °C and is of the fuel's own temperature; for −20 °C, where the
                // table of growth has ended, its factor is that of vcf.csv.
                let at = ThermodynamicTemperature::new::<degree_celsius>(celsius);
                let density = MassDensity::new::<kilogram_per_cubic_meter>(745.0);
                let factor = Table::Gasoline.factor(density, at).unwrap_or(1.041871);
                close(fuel::dissolved(celsius) * factor, grams, 1e-4, &row[1]);
                seen += 1;
            }
            ("E10", Ok(celsius), _, Ok(grams)) => {
                let held = fuel::held_by_e10(l(1.0)).unwrap();
                formula::is_whole(&held);
                let [least, most] = held.bounds.unwrap().map(|it| it.get::<gram>());
                assert!(least - 1e-9 <= grams && grams <= most + 1e-9, "at {celsius} °C");
                seen += 1;
            }
            _ => {}
        }
    }
    assert_eq!(seen, 8);
    let held = fuel::held_by_e0(l(10.0)).unwrap();
    formula::is_whole(&held);
    // 56 ppm of 7.45 kg.
    close(held.value.get::<gram>(), 0.419, 5e-4, "ten liters at 0 °C");
    assert!(fuel::held_by_e0(l(-1.0)).is_err() && fuel::held_by_e10(l(-1.0)).is_err());
}

/// Source: e0_water_shed.csv, by the same equation: ten liters that cool from 20 to 0 °C shed more than they breathe in.
#[test]
fn gasoline_without_ethanol_sheds_water_of_its_own() {
    let rows = rows("e0_water_shed.csv");
    assert_eq!(rows.len(), 3);
    for row in rows {
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        for (celsius, grams) in [(number(1), number(3)), (number(2), number(4))] {
            close(fuel::dissolved(celsius) * number(0), grams, 1.5e-3, &row[0]);
        }
        let shed = fuel::shed(l(number(0)), number(1), number(2)).unwrap();
        formula::is_whole(&shed);
        close(shed.value.get::<gram>(), number(5), 1.5e-3, &row[0]);
    }
    let air = Air::new(10.0, 80.0, 0.0);
    let breathed = fuel::breathed(l(10.0), 150.0, air, air).unwrap().value;
    assert!(fuel::shed(l(10.0), 20.0, 0.0).unwrap().value > breathed);
}

/// Source: 4.92892159375 mL a US teaspoon, three to the tablespoon (NIST Handbook 44 Appendix C).
#[test]
fn a_dose_in_spoons() {
    for (dose, spoons) in
        [(0.0, (0, 0)), (4.93, (0, 4)), (14.79, (1, 0)), (50.0, (3, 5)), (1.2, (0, 1))]
    {
        assert_eq!(fuel::spoons(ml(dose)), spoons, "{dose} mL");
    }
}

proptest! {
    /// More air, more nights, more water; warmer fuel holds more; shedding there and back is nothing.
    #[test]
    fn water_follows_air_and_warmth(space in 0.1..20.0, nights in 1.0..300.0, day in 1.0..30.0, warm in -20.0..20.0, step in 0.1..20.0) {
        let air = Air::new(day, 80.0, 0.0);
        let water = |space, nights| fuel::breathed(l(space), nights, air, air).unwrap().value;
        prop_assert!(water(space * 2.0, nights) > water(space, nights));
        prop_assert!(water(space, nights + 1.0) > water(space, nights));
        prop_assert!(water(0.0, nights).value == 0.0);
        prop_assert!(fuel::dissolved(warm + step) > fuel::dissolved(warm));
        prop_assert!(fuel::shed(l(space), warm, warm + step).unwrap().value.value == 0.0);
        let twice = fuel::shed(l(space), warm + step, warm).unwrap().value;
        let once = fuel::shed(l(2.0 * space), warm + step, warm).unwrap().value;
        prop_assert!((once.value - 2.0 * twice.value).abs() < 1e-12);
    }

    /// Spoons are within an eighth of a teaspoon of the dose.
    #[test]
    fn spoons_are_near(dose in 0.0..500.0) {
        let (tablespoons, quarters) = fuel::spoons(ml(dose));
        prop_assert!(quarters < 12);
        let back = (f64::from(tablespoons * 12 + quarters)) * 4.92892159375 / 4.0;
        prop_assert!((back - dose).abs() <= 4.92892159375 / 8.0 + 1e-9);
    }
}
