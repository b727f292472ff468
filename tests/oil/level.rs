//! Level, heat, used oil.

use super::*;
use torpor::expansion::Table;
use uom::si::{
    f64::{MassDensity, ThermodynamicTemperature},
    mass_density::kilogram_per_cubic_meter,
    thermodynamic_temperature::{degree_celsius, degree_fahrenheit},
};

fn celsius(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(number)
}

fn density(number: f64) -> MassDensity {
    MassDensity::new::<kilogram_per_cubic_meter>(number)
}

/// Source: vcf.csv, computed apart from this program from the constants of API MPMS 11.1-1980 / ASTM D1250-80 (opened in
/// two independent places); its rows outside of the 1980 table have no factor here. No printed row of 54D could be read
/// anywhere, so for oil nothing printed is compared: the formula is that of 54B, whose like is checked below.
#[test]
fn factors_to_15_degrees() {
    let rows = rows("vcf.csv");
    assert_eq!(rows.len(), 65);
    let mut outside = 0;
    for row in rows {
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        let table = if &row[1] == "54D" { Table::LubricatingOil } else { Table::Gasoline };
        let factor = table.factor(density(number(4)), celsius(number(5)));
        let what = format!("{} at {} kg/m³, {} °C", &row[1], &row[4], &row[5]);
        if &row[10] == "1" {
            let factor = factor.unwrap_or_else(|| panic!("{what}"));
            assert!((factor - number(7)).abs() < 6e-7, "{what}: {factor}");
            assert!((1000.0 / factor - number(9)).abs() < 6e-3, "{what}");
        } else {
            assert_eq!(factor, None, "{what}");
            outside += 1;
        }
    }
    assert!(outside > 0);
}

/// Source: vcf_published.csv, table 6B as printed: gasoline of 63 °API, 60 to 75 °F. 6B is 54B in Fahrenheit; the density
/// at 60 °F is 0.6 kg/m³ under that at 15 °C, which changes nothing in the fifth decimal.
#[test]
fn a_printed_factor_of_gasoline() {
    let row = rows("vcf_published.csv").into_iter().find(|row| row[0].starts_with("6B")).unwrap();
    let at = |fahrenheit| {
        let at = ThermodynamicTemperature::new::<degree_fahrenheit>(fahrenheit);
        Table::Gasoline.factor(density(row[5].parse().unwrap()), at).unwrap()
    };
    let printed: f64 = row[8].parse().unwrap();
    assert!((at(75.0) / at(60.0) - printed).abs() < 6e-5);
}

/// Source: the ranges of API MPMS 11.1-1980; never one table's constants for the other's liquid.
#[test]
fn beyond_the_table_there_is_no_factor() {
    for (table, kg, at, known) in [
        (Table::LubricatingOil, 860.0, -18.0, true),
        (Table::LubricatingOil, 860.0, -18.5, false),
        (Table::LubricatingOil, 860.0, 149.0, true),
        (Table::LubricatingOil, 860.0, 150.0, false),
        (Table::LubricatingOil, 745.0, 15.0, false),
        (Table::Gasoline, 745.0, 90.0, true),
        (Table::Gasoline, 745.0, 91.0, false),
        (Table::Gasoline, 771.0, 15.0, false),
        (Table::Gasoline, 860.0, 15.0, false),
    ] {
        assert_eq!(table.factor(density(kg), celsius(at)).is_some(), known, "{kg} at {at}");
    }
    let cold = oil::heat_growth(ml(3000.0), celsius(20.0), celsius(-20.0), None);
    assert_eq!(cold.err(), Some(oil::OilError::OutsideTable));
}

/// Source: oil_fill.csv, computed with 54D at 870 kg/m³: 3.1 L poured at 20 °C stand 143 mL higher at 80 °C. Of an oil whose
/// density is not known 860 kg/m³ are taken, between 840 and 900.
#[test]
fn the_same_oil_stands_higher_when_hot() {
    let mut seen = 0;
    for row in rows("oil_fill.csv").into_iter().filter(|row| row[18].is_empty()) {
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        let grown = |density| {
            let [poured, read] = [number(14), number(15)].map(celsius);
            oil::heat_growth(ml(number(7)), poured, read, density).unwrap()
        };
        let known = grown(Some(density(870.0)));
        formula::is_whole(&known);
        close(known.value, number(17), 0.501, &row[0]);
        assert_eq!(known.bounds, None);
        let rough = grown(None);
        assert_eq!(rough.value, grown(Some(density(860.0))).value);
        let [least, most] = rough.bounds.unwrap();
        assert!(least < known.value && known.value < most, "{}", &row[0]);
        seen += 1;
    }
    assert_eq!(seen, 8);
    // Read colder than poured it stands lower, by as much as it grew the other way: 143 of 3243 mL.
    let [hot, cold] = [80.0, 20.0].map(celsius);
    let shrunk = oil::heat_growth(ml(3243.0), hot, cold, None).unwrap();
    formula::is_whole(&shrunk);
    assert_eq!(shrunk.law, &oil::COLD_SHRINKING);
    let [least, most] = shrunk.bounds.unwrap().map(|it| it.get::<milliliter>());
    assert!(0.0 < least && least < 143.0 && 143.0 < most, "{least} to {most}");
}

/// Common practice, no source: half an hour, 50 °C.
#[test]
fn a_cold_engine_is_cold() {
    for (minutes, at, warm) in [
        (None, None, false),
        (Some(29), None, true),
        (Some(30), None, false),
        (None, Some(51.0), true),
        (Some(120), Some(20.0), false),
    ] {
        assert_eq!(oil::still_warm(minutes, at.map(celsius)), warm, "{minutes:?} {at:?}");
    }
}

/// By hand: 300 mL between the marks, a level at a quarter: 225 mL lack to the full mark; at 120 % 60 mL are too much.
#[test]
fn a_level_says_what_to_add_or_take_out() {
    let pct = Ratio::new::<percent>;
    let level = |read: f64, bounds: Option<[f64; 2]>| {
        oil::by_level(pct(read), bounds.map(|it| it.map(pct)), ml(300.0))
    };
    for (read, expected, law) in [
        (-50.0, 450.0, &oil::ADD_BY_LEVEL),
        (0.0, 300.0, &oil::ADD_BY_LEVEL),
        (25.0, 225.0, &oil::ADD_BY_LEVEL),
        (100.0, 0.0, &oil::ADD_BY_LEVEL),
        (120.0, 60.0, &oil::TAKE_OUT),
        (250.0, 450.0, &oil::TAKE_OUT),
    ] {
        let answer = level(read, None).unwrap();
        formula::is_whole(&answer);
        close(answer.value, expected, 1e-9, "level");
        assert_eq!((answer.law, answer.bounds), (law, None), "{read}");
        assert!(answer.value.value.is_sign_positive());
    }
    // Of a range the end that asks for least: it is read again.
    for (read, low, high, expected, law) in [
        (50.0, 40.0, 60.0, 120.0, &oil::ADD_BY_LEVEL),
        (95.0, 85.0, 105.0, 0.0, &oil::ADD_BY_LEVEL),
        (-10.0, -20.0, 0.0, 300.0, &oil::ADD_BY_LEVEL),
        (120.0, 110.0, 130.0, 30.0, &oil::TAKE_OUT),
        // It may be right, too: what it reads counts.
        (110.0, 90.0, 130.0, 30.0, &oil::TAKE_OUT),
    ] {
        let answer = level(read, Some([low, high])).unwrap();
        formula::is_whole(&answer);
        close(answer.value, expected, 1e-9, "a range");
        assert_eq!((answer.law, answer.bounds), (law, None), "{read}");
    }
    assert!(oil::under_low(pct(-1.0), None) && !oil::under_low(pct(0.0), None));
    assert!(oil::under_low(pct(5.0), Some([pct(-5.0), pct(15.0)])));
    assert!(oil::over_full(pct(101.0)) && !oil::over_full(pct(100.0)));
    for (got, words) in [
        (level(-201.0, None).err(), "level has to be between −200 % and 300 %"),
        (level(301.0, None).err(), "level has to be between −200 % and 300 %"),
        (level(f64::NAN, None).err(), "level has to be between −200 % and 300 %"),
        (
            oil::by_level(pct(50.0), None, ml(0.0)).err(),
            "volume between the marks has to be more than 0",
        ),
    ] {
        assert_eq!(got.map(|it| it.to_string()).as_deref(), Some(words));
    }
}

/// By hand: what was poured in comes out; 300 mL less where the old level was at the low mark.
#[test]
fn used_oil_is_what_the_engine_took() {
    let used = oil::used_oil(ml(3100.0), Some(ml(300.0)));
    formula::is_whole(&used);
    close(used.value, 3100.0, 1e-9, "used");
    close(used.bounds.unwrap()[0], 2800.0, 1e-9, "least");
    assert_eq!(oil::used_oil(ml(3100.0), None).bounds, None);
}

proptest! {
    /// Warmer is more, back and forth is nothing, and 15 °C is the volume itself.
    #[test]
    fn heat_grows_and_cold_shrinks(kg in 800.0..1164.0, from in -18.0..149.0, to in -18.0..149.0) {
        let grown = |from, to| {
            let oil = oil::heat_growth(ml(1000.0), celsius(from), celsius(to), Some(density(kg)));
            let oil = oil.unwrap();
            let grown = oil.value.get::<milliliter>();
            assert!(grown >= 0.0, "never a negative height");
            if oil.law == &oil::COLD_SHRINKING { -grown } else { grown }
        };
        let there = grown(from, to);
        prop_assert_eq!(there > 0.0, to > from);
        let back = (1000.0 + there) * (1.0 + grown(to, from) / 1000.0) - 1000.0;
        prop_assert!(back.abs() < 1e-9);
        prop_assert!(grown(from, from).abs() < 1e-9);
        let at_15 = Table::LubricatingOil.factor(density(kg), celsius(15.0)).unwrap();
        prop_assert!((at_15 - 1.0).abs() < 1e-12);
    }

    /// What a level lacks, poured in, is the full mark.
    #[test]
    fn the_full_mark_is_reached(read in -2.0..3.0, between in 50.0..1000.0) {
        let answer = oil::by_level(Ratio::new::<uom::si::ratio::ratio>(read), None, ml(between));
        let answer = answer.unwrap();
        let sign = if answer.law == &oil::TAKE_OUT { -1.0 } else { 1.0 };
        let reached = read * between + sign * answer.value.get::<milliliter>();
        prop_assert!((reached - between).abs() < 1e-9);
    }
}
