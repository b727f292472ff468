//! Published points: each has to lie where the model says it may.

use super::*;
use torpor::battery::{FAST, SLOW, freezing::acid_freezes_at};
use uom::si::thermodynamic_temperature::degree_fahrenheit;

/// Source: tests/reference/battery/freezing.csv, rows `published` by specific gravity, each with its manual. They agree
/// with each other, and so with the model's line through them, within 5 °F.
#[test]
fn acid_freezes_where_the_manuals_say() {
    let mut worst: f64 = 0.0;
    let mut seen = 0;
    for row in rows("freezing.csv") {
        let usable = row["use"] == "1" && row["kind"] == "published";
        let (true, Ok(gravity)) = (usable, row["specific_gravity_80F"].parse::<f64>()) else {
            continue;
        };
        let fahrenheit = acid_freezes_at(gravity).get::<degree_fahrenheit>();
        let off = (fahrenheit - row["freeze_F"].parse::<f64>().unwrap()).abs();
        assert!(off <= 5.0, "SG {gravity}: {fahrenheit} °F, {off} off {}", row["source"]);
        (worst, seen) = (worst.max(off), seen + 1);
    }
    assert_eq!(seen, 18);
    println!("freezing: worst {worst:.2} °F of 5");
}

/// Source: the same file, rows `computed` from the water activity of the acid, an independent way: within 2 °C up to 1.250.
#[test]
fn acid_freezes_where_thermodynamics_says() {
    let computed = rows("freezing.csv").into_iter().filter(|it| it["kind"] == "computed");
    let mut seen = 0;
    for row in computed {
        let gravity: f64 = row["specific_gravity_80F"].parse().unwrap();
        if gravity <= 1.250 {
            let it = acid_freezes_at(gravity).get::<degree_celsius>();
            let expected: f64 = row["freeze_C"].parse().unwrap();
            assert!((it - expected).abs() <= 2.0, "SG {gravity}: {it} for {expected}");
            seen += 1;
        }
    }
    assert_eq!(seen, 4);
}

/// Source: the same file, by charge: a battery tester's manual gives −26 °C half charged and −15 °C at 25 %.
#[test]
fn half_charged_battery_freezes() {
    let parameters = Chemistry::FloodedAntimony.parameters();
    for (charge, expected) in [(0.50, -26.0), (0.25, -15.0)] {
        let it = parameters.freezes_at(share(charge)).unwrap().value.get::<degree_celsius>();
        assert!((it - expected).abs() <= 2.0, "{charge}: {it} for {expected}");
    }
    assert_eq!(Chemistry::LiFePO4.parameters().freezes_at(share(0.1)), None);
}

/// Source: tests/reference/battery/ocv_soc.csv. Every table row lies within the band that an answer shows, save those that
/// contradict another table of the same chemistry, which are named here.
#[test]
fn resting_voltages_lie_in_the_band() {
    let mut outside = vec![];
    let mut worst: f64 = 0.0;
    for row in rows("ocv_soc.csv") {
        let number = |column: &str| row[column].parse::<f64>();
        let (Ok(charge), Ok(v)) = (number("soc_pct"), number("ocv_12V_V")) else { continue };
        let chemistry = match row["chemistry"].as_str() {
            "flooded" => Chemistry::FloodedAntimony,
            "gel" => Chemistry::Gel,
            // A motorcycle battery that is sealed is an AGM.
            "agm" | "sealed_unstated" => Chemistry::Agm,
            "lfp" => Chemistry::LiFePO4,
            it => panic!("{it}"),
        };
        let charge = Roughly::exactly(share(charge / 100.0));
        let at = celsius(number("temp_C").unwrap());
        let answer = chemistry.parameters().resting_voltage(charge, at);
        let [low, high] = answer.bounds.unwrap();
        if volts(v) < low || volts(v) > high {
            outside.push((
                row["chemistry"].clone(),
                row["soc_pct"].clone(),
                row["temp_C"].clone(),
                v,
            ));
        } else {
            worst = worst.max((answer.value.get::<volt>() - v).abs());
        }
    }
    println!("resting voltage: worst inside {worst:.4} V; outside {outside:?}");
    // The gel sheet has 12.4 V at 50 %, the AGM tables, which the model follows, 12.3 V. The motorcycle maker's bulletin calls
    // 12.7 V full, the other tables 12.8 V.
    let contradicted = [("gel", "50"), ("sealed_unstated", "100")];
    let named: Vec<_> = outside.iter().map(|it| (it.0.as_str(), it.1.as_str())).collect();
    assert_eq!(named, contradicted, "{outside:?}");
}

/// Source: tests/reference/battery/self_discharge.csv, rows with a temperature. Loss in 30 days from full.
#[test]
fn published_losses_lie_in_the_band() {
    let mut seen = 0;
    for row in rows("self_discharge.csv") {
        let published = ["point", "low", "high", "upper_bound"].contains(&row["basis"].as_str())
            || row["basis"].starts_with("derived");
        let number = |column: &str| row[column].parse::<f64>();
        let (true, Ok(lost)) = (published, number("pct_per_30d_of_full")) else { continue };
        let chemistry = match row["chemistry"].as_str() {
            "flooded_sb" => Chemistry::FloodedAntimony,
            "flooded_ca" => Chemistry::FloodedCalcium,
            "agm" => Chemistry::Agm,
            "lfp" => Chemistry::LiFePO4,
            it => panic!("{it}"),
        };
        // Where no temperature is printed, a room is meant: 25 °C.
        let at = number("temp_C").unwrap_or(25.0);
        let battery = known(chemistry.parameters(), 10.0, 1.0, 0.0);
        let left = after(&battery, 30, &constant(at));
        let [slow, fast] = [SLOW, FAST].map(|it| 100.0 * (1.0 - left[it]));
        // Half a point for rounding: an end of the band is a published point itself.
        let inside = slow - 0.5 <= lost && lost <= fast + 0.5;
        assert!(inside, "{chemistry:?} at {at} °C: {lost} % in {slow:.1} to {fast:.1} %");
        seen += 1;
    }
    assert!(seen >= 16, "{seen}");
}

/// Source: published storage times from full to flat at 40, 25 and 0 °C, antimony 100, 200, 550 days, calcium 300, 600, 950
/// days (as noted down by the project; the note does not name the document).
///
/// "Flat" is read in two ways, see `battery::parameters`: as what a ±0.05 V meter cannot tell from an empty battery, and as
/// the end of a straight line from full.
#[test]
fn days_to_flat_lie_in_the_band() {
    // The flooded table by hand: 0.05 V of the 0.17 V between 0 and 25 %.
    let flat = 0.25 * 0.05 / 0.17;
    for (chemistry, points) in [
        (Chemistry::FloodedAntimony, [(40.0, 100), (25.0, 200), (0.0, 550)]),
        (Chemistry::FloodedCalcium, [(40.0, 300), (25.0, 600), (0.0, 950)]),
    ] {
        for (at, days) in points {
            let battery = known(chemistry.parameters(), 10.0, 1.0, 0.0);
            let left = after(&battery, days, &constant(at));
            assert!(left[FAST] <= flat && left[SLOW] >= flat, "{chemistry:?} {at} °C: {left:?}");
            let in_30_days = after(&battery, 30, &constant(at)).map(|it| 1.0 - it);
            let line = 30.0 / days as f64;
            let inside = in_30_days[SLOW] <= line && line <= in_30_days[FAST];
            assert!(inside, "{chemistry:?} {at} °C: {line} in {in_30_days:?}");
        }
        // The narrow parameters do not hold them, which is why the product's are wider.
        let narrow = known(narrow(chemistry), 10.0, 1.0, 0.0);
        assert!(after(&narrow, points[2].1, &constant(0.0))[FAST] > flat);
    }
}
