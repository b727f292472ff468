//! Source: tests/reference/battery/worked.csv, cases computed by an independent program (Python standard library) of the
//! same model with the narrow parameters. Tolerances: charge 1e-4, volts 0.002, margin 0.05 K, hours 0.02, days exact.

use super::*;
use torpor::battery::{ChargingError, FAST, charging_time};
use uom::si::{
    electric_current::ampere,
    f64::{TemperatureInterval, Time},
    temperature_interval::kelvin,
    time::hour,
};

fn chemistry(it: &str) -> Chemistry {
    match it {
        "flooded_sb" => Chemistry::FloodedAntimony,
        "flooded_ca" => Chemistry::FloodedCalcium,
        "agm" => Chemistry::Agm,
        "gel" => Chemistry::Gel,
        "lfp" => Chemistry::LiFePO4,
        _ => panic!("{it}"),
    }
}

fn temperatures(profile: &str, swing: f64) -> Temperatures {
    let (kind, values) = profile.split_once(':').unwrap();
    let means = values.split('|').map(|it| celsius(it.parse().unwrap()));
    let means: Vec<_> = means.collect();
    let course = match kind {
        "const" => Temperatures::constant(means[0]),
        "monthly" => Temperatures::monthly(means.try_into().unwrap()),
        _ => panic!("{kind}"),
    };
    course.unwrap().swinging(TemperatureInterval::new::<kelvin>(swing)).unwrap()
}

/// Keeps the worst deviation of a column and refuses one over the tolerance.
struct Worst(&'static str, f64, f64);

impl Worst {
    fn check(&mut self, case: &str, value: f64, expected: f64) {
        let off = (value - expected).abs();
        assert!(off <= self.2, "case {case}, {}: {value} for {expected}", self.0);
        self.1 = self.1.max(off);
    }
}

#[test]
fn every_case_agrees() {
    let mut charge = Worst("charge", 0.0, 1e-4);
    let mut voltage = Worst("voltage", 0.0, 0.002);
    let mut margin = Worst("margin", 0.0, 0.05);
    let mut hours = Worst("hours", 0.0, 0.02);
    let rows = rows("worked.csv");
    assert_eq!(rows.len(), 9);
    for row in rows {
        let text = |column: &str| row[column].as_str();
        let number = |column: &str| text(column).parse::<f64>().unwrap();
        let index = |column: &str| text(column).parse::<i64>().ok();
        let case = text("case");
        let parameters = narrow(chemistry(text("chem")));
        let battery =
            known(parameters, number("capacity_Ah"), number("s0_frac"), number("drain_mA"));
        let park: NaiveDate = text("park_date").parse().unwrap();
        let season = season_of(park, number("days") as u64);
        let swing = number("diurnal_half_range_C");
        let place = temperatures(text("temp_profile"), swing);
        let forecast = Forecast::new(&battery, &season, &place);
        let read_at = celsius(number("read_temp_C"));
        let threshold = share(number("threshold_frac"));

        let end = *forecast.days().last().unwrap();
        for (edge, name) in ["opt", "typ", "pess"].iter().enumerate() {
            charge.check(case, end[edge], number(&format!("s_end_{name}_frac")));
            let v = parameters.resting_voltage(Roughly::exactly(share(end[edge])), read_at);
            voltage.check(case, v.value.get::<volt>(), number(&format!("v_end_{name}_V")));
        }
        let answer = forecast.charge_on_ride_date();
        charge.check(case, answer.value.get::<ratio>(), number("s_end_typ_frac"));
        let v = forecast.resting_voltage_on_ride_date(read_at).value;
        voltage.check(case, v.get::<volt>(), number("v_end_typ_V"));

        let below = forecast.first_day_below(threshold);
        let by_edge = below.as_ref().map(|it| it.by_edge).unwrap_or_default();
        for (edge, name) in ["opt", "typ", "pess"].iter().enumerate() {
            let index_of = by_edge[edge].map(|it| (it - park).num_days());
            assert_eq!(index_of, index(&format!("below_day_{name}")), "case {case}, {name}");
        }
        let act_by = below.map(|it| it.act_by.value);
        assert_eq!(act_by, text("below_date_pess").parse().ok(), "case {case}");
        let flat =
            forecast.days()[..forecast.days().len() - 1].iter().position(|it| it[FAST] <= 0.0);
        assert_eq!(flat.map(|it| it as i64), index("flat_day_pess"), "case {case}");

        let plan = forecast.recharge_days(threshold).parts().value;
        let days: Vec<_> = plan.days.iter().map(|it| (*it - park).num_days().to_string()).collect();
        assert_eq!(days.join(";"), text("recharge_days_pess"), "case {case}");
        assert_eq!(plan.feasible, text("plan_feasible") == "1", "case {case}");

        // The reference takes the swing below each day's mean as that night's cold.
        let coldest = season.nights().map(|it| place.on(it).get::<degree_celsius>() - swing);
        let coldest = coldest.reduce(f64::min).unwrap_or_default();
        let freeze = forecast.freeze_margin(Roughly::exactly(celsius(coldest)));
        assert_eq!(freeze.is_some(), !text("min_freeze_margin_typ_C").is_empty(), "case {case}");
        if let Some(freeze) = freeze {
            let typical = freeze.margin.value.get::<kelvin>();
            margin.check(case, typical, number("min_freeze_margin_typ_C"));
            let fast = freeze.margin.bounds.unwrap()[0].get::<kelvin>();
            margin.check(case, fast, number("min_freeze_margin_pess_C"));
            let night = (freeze.night - park).num_days();
            assert_eq!(Some(night), index("min_freeze_margin_pess_day"), "case {case}");
        }

        let time = charging_time(
            &parameters,
            share(end[1]),
            amp_hours(number("capacity_Ah")),
            ElectricCurrent::new::<ampere>(number("charger_A")),
            read_at,
        );
        match text("charge_note") {
            "" => {
                let time: Time = time.unwrap().value;
                hours.check(case, time.get::<hour>(), number("charge_from_typ_h"));
            }
            _ => assert_eq!(time.unwrap_err(), ChargingError::TooCold, "case {case}"),
        }
    }
    for Worst(what, worst, allowed) in [charge, voltage, margin, hours] {
        println!("{what}: worst {worst:.2e}, allowed {allowed}");
    }
}
