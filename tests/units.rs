//! Units against their definitions and printed conversions.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use proptest::prelude::*;
use torpor::units::{self, Dimension, Spelled, Unit};
use uom::si::{f64::Area, length::meter, volume::cubic_meter};

const DIMENSIONS: [Dimension; 13] = [
    Dimension::Torque,
    Dimension::Volume,
    Dimension::Length,
    Dimension::Angle,
    Dimension::Ratio,
    Dimension::Temperature,
    Dimension::TemperatureStep,
    Dimension::Voltage,
    Dimension::Current,
    Dimension::Charge,
    Dimension::Energy,
    Dimension::GaugePressure,
    Dimension::Consumption,
];

fn rows(name: &str) -> Vec<csv::StringRecord> {
    let path = format!("{}/tests/reference/torque/{name}", env!("CARGO_MANIFEST_DIR"));
    let mut reader = csv::Reader::from_path(path).unwrap();
    reader.records().map(Result::unwrap).collect()
}

/// The unit that a spelling clearly means in one dimension.
fn clear(spelling: &str, dimension: Dimension) -> Option<&'static Unit> {
    match units::spelled(spelling, dimension, None) {
        Some(Spelled::Clear(unit)) => Some(unit),
        _ => None,
    }
}

/// Both units of a conversion, in the first dimension that has both.
fn pair(from: &str, to: &str) -> [&'static Unit; 2] {
    let both = |it| clear(from, it).zip(clear(to, it));
    let (from, to) =
        DIMENSIONS.into_iter().find_map(both).unwrap_or_else(|| panic!("{from} > {to}"));
    [from, to]
}

#[track_caller]
fn close(got: f64, expected: f64, tolerance: f64, what: &str) {
    let off = (got - expected).abs() / expected.abs().max(f64::MIN_POSITIVE);
    assert!(off <= tolerance, "{what}: {got}, expected {expected}");
}

/// Source: units.csv, factors from the definitions (NIST SP 811 Appendix B.8, Handbook 44 Appendix C, Weights and
/// Measures Act 1985), checked there with another library.
#[test]
fn factors_are_the_definitions() {
    let rows = rows("units.csv");
    assert_eq!(rows.len(), 33);
    for row in rows {
        let [quantity, symbol, base, factor] = [&row[0], &row[2], &row[3], &row[4]];
        let dimension = match quantity {
            "torque" => Dimension::Torque,
            "volume" => Dimension::Volume,
            "pressure" => Dimension::GaugePressure,
            "length" => Dimension::Length,
            "charge" => Dimension::Charge,
            "temperature difference" => Dimension::TemperatureStep,
            other => panic!("{other}"),
        };
        let [unit, base] =
            [symbol, base].map(|it| clear(it, dimension).unwrap_or_else(|| panic!("{it}")));
        let factor: f64 = factor.parse().unwrap();
        close(unit.to_base(1.0), factor * base.to_base(1.0), 1e-12, symbol);
    }
}

/// Source: unit_checks.csv: exact fractions, and conversions as US Army manuals print them.
#[test]
fn conversions_are_exact_and_round_to_what_is_printed() {
    let rows = rows("unit_checks.csv");
    assert_eq!(rows.len(), 50);
    for row in rows {
        let [from, to] = pair(&row[2], &row[3]);
        let got = to.of_base(from.to_base(row[1].parse().unwrap()));
        let exact: f64 = row[4].parse().unwrap();
        let what = format!("{} {} in {}", &row[1], &row[2], &row[3]);
        // A reading is compared from absolute zero: 0 °C has no relative error of its own.
        let zero = if from.dimension == Dimension::Temperature { 459.67 } else { 0.0 };
        close(got + zero, exact + zero, 1e-12, &what);
        if let Ok(printed) = row[5].parse::<f64>() {
            let places = 10f64.powi(row[6].parse().unwrap());
            let rounds = ((got * places).round() / places - printed).abs() < 1e-9;
            let passes = !row[7].contains("do not use as a pass value");
            assert_eq!(rounds, passes, "{what} printed as {printed}");
        }
    }
}

/// Source: definitions: lb = 0.45359237 kg, g = 9.80665 m/s², ft = 0.3048 m, gallon = 231 in³. uom's own factors are
/// rounded, so they must not be what is used.
#[test]
fn pound_foot_and_gallon_are_exact() {
    close(units::LBF_FT.to_base(1.0), 1.3558179483314004, 1e-15, "lbf·ft");
    close(units::POUND_FORCE.to_base(1.0), 0.45359237 * 9.80665, 1e-15, "lbf");
    close(units::US_GAL.to_base(1.0), 231.0 * 0.0254f64.powi(3), 1e-15, "US gal");
    let rounded = uom::si::f64::Torque::new::<uom::si::torque::pound_force_foot>(1.0).value;
    assert!((rounded / units::LBF_FT.to_base(1.0) - 1.0).abs() > 1e-9);
}

/// Source: by hand from the gallons (3.785411784 L, 4.54609 L) and the mile (1.609344 km): 100 × gallon / mile.
#[test]
fn miles_to_the_gallon_turn_over() {
    for (unit, liters) in [
        (&units::US_MPG, 378.5411784 / 1.609344),
        (&units::IMP_MPG, 454.609 / 1.609344),
        (&units::KM_PER_LITER, 100.0),
    ] {
        let got = units::LITERS_PER_100_KM.of_base(unit.to_base(1.0));
        close(got, liters, 1e-12, unit.symbol);
        // Twice the miles is half the fuel.
        close(unit.to_base(2.0) * 2.0, unit.to_base(1.0), 1e-12, unit.symbol);
    }
    let five: Area =
        uom::si::f64::Volume::new::<cubic_meter>(5e-3) / uom::si::f64::Length::new::<meter>(1e5);
    close(units::LITERS_PER_100_KM.to_base(5.0), five.value, 1e-12, "L/100 km");
}

/// Source: °F as a reading is (F − 32) × 5/9 °C, as a step 5/9 K (NIST SP 811 B.8).
#[test]
fn fahrenheit_reads_and_steps_differently() {
    let reading = clear("°F", Dimension::Temperature).unwrap();
    let step = clear("°F", Dimension::TemperatureStep).unwrap();
    close(reading.to_base(50.0), 283.15, 1e-12, "50 °F as read");
    close(step.to_base(50.0), 250.0 / 9.0, 1e-12, "a step of 50 °F");
    assert_eq!([reading, step], [&units::FAHRENHEIT, &units::FAHRENHEIT_STEP]);
}

/// A saved code means one unit for ever: this list may only grow.
#[test]
fn codes_are_frozen() {
    let frozen = [
        (1, "N·m"),
        (2, "dN·m"),
        (3, "cN·m"),
        (4, "lbf·ft"),
        (5, "lbf·in"),
        (6, "ozf·in"),
        (7, "kgf·m"),
        (8, "kgf·cm"),
        (9, "daN·m"),
        (16, "L"),
        (17, "mL"),
        (18, "US gal"),
        (19, "US qt"),
        (20, "US pt"),
        (21, "US fl oz"),
        (22, "US tbsp"),
        (23, "US tsp"),
        (24, "imp gal"),
        (25, "imp qt"),
        (26, "imp pt"),
        (27, "imp fl oz"),
        (32, "kPa"),
        (33, "bar"),
        (34, "psi"),
        (35, "kgf/cm²"),
        (40, "mm"),
        (41, "in"),
        (42, "ft"),
        (43, "cm"),
        (44, "km"),
        (45, "mi"),
        (46, "m"),
        (56, "°"),
        (57, "%"),
        (58, "turn"),
        (64, "°C"),
        (65, "°F"),
        (66, "K"),
        (67, "Δ°F"),
        (72, "V"),
        (73, "A"),
        (74, "mA"),
        (75, "C"),
        (76, "Ah"),
        (77, "mAh"),
        (78, "Wh"),
        (88, "L/100 km"),
        (89, "mpg (US)"),
        (90, "mpg (imp)"),
        (91, "km/L"),
        (92, "L/1000 km"),
        (93, "US qt/1000 mi"),
        (96, "h"),
        (104, "kN"),
        (105, "N"),
        (106, "lbf"),
        (110, "years"),
        (112, "kg/m³"),
        (113, "kg/L"),
        (114, "g"),
        (120, "SG"),
    ];
    let now: Vec<_> = units::ALL.iter().map(|it| (it.code, it.symbol)).collect();
    assert_eq!(now, frozen);
    for (code, symbol) in frozen {
        assert_eq!(units::by_code(code).map(|it| it.symbol), Some(symbol));
    }
    assert!(now.windows(2).all(|it| it[0].0 < it[1].0), "codes are unique and in order");
    assert_eq!(units::by_code(0), None);
}

/// What people and manuals write. A spelling of two units would read as the first of them and fail at the second.
#[test]
fn each_spelling_means_one_unit() {
    let written: [(&Unit, &[&str]); 28] = [
        (&units::NEWTON_METER, &["Nm", "N-m", "N m", "N·m", "N⋅m", "N.m", "newton metres"]),
        (&units::CENTINEWTON_METER, &["cNm", "cN-m"]),
        (
            &units::LBF_FT,
            &[
                "ft-lb",
                "ft-lbs",
                "ft lbs",
                "ft.lbs.",
                "lb-ft",
                "lbf·ft",
                "lbf-ft",
                "foot-pounds",
                "pound feet",
            ],
        ),
        (&units::LBF_IN, &["in-lb", "in-lbs", "in. lbs", "lb-in", "lbf·in", "inch pounds"]),
        (&units::OZF_IN, &["oz-in", "ozf·in", "in-oz"]),
        (&units::KGF_M, &["kg-m", "m-kg", "kgf·m", "kgf-m", "mkp"]),
        (&units::KGF_CM, &["kg-cm", "kgf·cm"]),
        (&units::LITER, &["L", "l", "liter", "litres", "ltr"]),
        (&units::MILLILITER, &["mL", "ml", "cc", "cm³", "millilitres"]),
        (&units::US_GAL, &["US gal", "gal (US)", "US gallons"]),
        (&units::US_QT, &["US qt", "qt (US)", "US quarts"]),
        (&units::US_PT, &["US pt", "pt (US)"]),
        (&units::US_FL_OZ, &["US fl oz", "fl oz (US)", "US fl. oz."]),
        (&units::IMP_GAL, &["imp gal", "gal (imp)", "UK gal", "imperial gallons"]),
        (&units::IMP_QT, &["imp qt", "qt (imp)", "imperial quarts"]),
        (&units::IMP_PT, &["imp pt", "pt (imp)"]),
        (&units::IMP_FL_OZ, &["imp fl oz", "fl oz (imp)"]),
        (&units::BAR, &["bar", "Bar"]),
        (&units::KGF_CM2, &["kg/cm²", "kgf/cm²", "kg/cm2"]),
        (&units::PSI, &["psi", "PSI", "lbs/in²"]),
        (&units::INCHES, &["in", "in.", "inch", "\"", "″"]),
        (&units::MILES, &["mi", "miles"]),
        (&units::AMPERE_HOUR, &["Ah", "A·h", "A h"]),
        (&units::LITERS_PER_100_KM, &["L/100 km", "l/100km"]),
        (&units::US_MPG, &["mpg (US)", "US mpg"]),
        (&units::KILONEWTON, &["kN", "kilonewtons"]),
        (&units::NEWTON, &["N", "newtons"]),
        (&units::POUND_FORCE, &["lbf", "lb", "lbs", "pound-force"]),
    ];
    for (unit, spellings) in written {
        for spelling in spellings {
            assert_eq!(clear(spelling, unit.dimension), Some(unit), "{spelling}");
        }
    }
    for unit in units::ALL {
        assert_eq!(clear(unit.symbol, unit.dimension), Some(*unit), "{unit}");
    }
    assert_eq!(units::spelled("furlong", Dimension::Length, None), None);
    assert_eq!(units::spelled("mm", Dimension::Torque, None), None);
}

/// Source: US gallon 3.785411784 L, imperial gallon 4.54609 L: a bare gallon is doubtful by a fifth, so both are told.
#[test]
fn shared_spellings_tell_both_readings() {
    for (spellings, us, imp) in [
        (["gal", "gallons"], &units::US_GAL, &units::IMP_GAL),
        (["qt", "quarts"], &units::US_QT, &units::IMP_QT),
        (["pt", "pints"], &units::US_PT, &units::IMP_PT),
        (["oz", "fl oz"], &units::US_FL_OZ, &units::IMP_FL_OZ),
        (["mpg", "MPG"], &units::US_MPG, &units::IMP_MPG),
    ] {
        for spelling in spellings {
            let read = |beside| units::spelled(spelling, us.dimension, beside);
            assert_eq!(read(None), Some(Spelled::Shared { taken: us, other: imp }), "{spelling}");
            assert_eq!(read(Some(us)), Some(Spelled::Shared { taken: us, other: imp }));
            assert_eq!(read(Some(imp)), Some(Spelled::Shared { taken: imp, other: us }));
            let british = units::spelled(spelling, us.dimension, Some(&units::IMP_PT));
            assert_eq!(british.map(Spelled::unit), Some(imp), "{spelling} beside a British unit");
        }
    }
}

proptest! {
    #[test]
    fn every_unit_comes_back(number in 1e-3..1e6) {
        for unit in units::ALL {
            let back = unit.of_base(unit.to_base(number));
            // Readings lose what their distance from absolute zero costs.
            let scale = if unit.dimension == Dimension::Temperature { number + 459.67 } else { number };
            prop_assert!((back - number).abs() <= 1e-12 * scale, "{number} {unit} came back as {back}");
        }
    }
}
