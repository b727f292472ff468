//! Closed forms of the loss, and what has to be true of any battery.

use super::*;
use proptest::prelude::*;
use torpor::battery::{FAST, SLOW, TYPICAL};
use torpor::season::TemperatureError;
use uom::si::{f64::TemperatureInterval, temperature_interval::kelvin};

/// Source: the solution of ds/dt = −k·s − p at constant temperature, s(N) = (s0 + p/k)·e^(−kN) − p/k.
#[test]
fn constant_temperature_has_a_closed_form() {
    let it = narrow(Chemistry::Agm);
    for (temperature, [slow, typical, fast]) in
        [(5.0, [2.3, 2.0, 1.8]), (25.0, [1.8, 2.0, 2.3]), (35.0, [1.8, 2.0, 2.3])]
    {
        let days = 100.0;
        let p = 0.001 * 24.0 / 10.0;
        let end = after(&known(it, 10.0, 0.9, 1.0), 100, &constant(temperature));
        for (edge, q) in [(SLOW, slow), (TYPICAL, typical), (FAST, fast)] {
            let k25 = -(1.0 - it.lost[edge]).ln() / 30.0;
            let k = k25 * f64::powf(q, (temperature - 25.0) / 10.0);
            let closed = (0.9 + p / k) * (-k * days).exp() - p / k;
            assert!(
                (end[edge] - closed).abs() < 1e-12,
                "{temperature} °C: {} for {closed}",
                end[edge]
            );
        }
    }
}

/// Source: without a draw, s(N) = s0·e^(−k25·E), E the sum of Q^((Ti − 25)/10) ("equivalent days at 25 °C").
#[test]
fn varying_temperature_without_draw_has_a_closed_form() {
    let means = [-10.0, -8.0, -2.0, 6.0, 13.0, 18.0, 21.0, 19.0, 14.0, 7.0, 0.0, -7.0];
    let place = Temperatures::monthly(means.map(celsius)).unwrap();
    let it = narrow(Chemistry::FloodedAntimony);
    let end = after(&known(it, 12.0, 1.0, 0.0), 300, &place);
    let nights = season_of(day(2025, 11, 1), 300).nights();
    let degrees: Vec<f64> = nights.map(|it| place.on(it).get::<degree_celsius>()).collect();
    for (edge, q) in [(SLOW, 2.3), (TYPICAL, 2.0), (FAST, 1.8)] {
        let k25 = -(1.0 - it.lost[edge]).ln() / 30.0;
        let equivalent: f64 = degrees.iter().map(|t| f64::powf(q, (t - 25.0) / 10.0)).sum();
        assert!((end[edge] - (-k25 * equivalent).exp()).abs() < 1e-12);
    }
}

/// Source: no loss and no draw; a draw alone, I·24 h/C a day.
#[test]
fn limits_of_the_loss() {
    let lossless = Parameters { lost: [0.0; 3], ..narrow(Chemistry::Agm) };
    assert_eq!(after(&known(lossless, 10.0, 0.8, 0.0), 200, &constant(20.0)), [0.8; 3]);
    for it in after(&known(lossless, 10.0, 1.0, 1.0), 100, &constant(20.0)) {
        assert!((it - (1.0 - 0.24)).abs() < 1e-12);
    }
    let flat = after(&known(narrow(Chemistry::Agm), 10.0, 0.0, 1.0), 10, &constant(20.0));
    assert_eq!(flat, [0.0; 3]);
}

fn chemistries() -> impl Strategy<Value = Chemistry> {
    prop::sample::select(vec![
        Chemistry::FloodedAntimony,
        Chemistry::FloodedCalcium,
        Chemistry::Agm,
        Chemistry::Gel,
        Chemistry::LiFePO4,
    ])
}

fn places() -> impl Strategy<Value = Temperatures> {
    (prop::array::uniform12(-30.0..40.0f64), 0.0..10.0f64).prop_map(|(means, swing)| {
        let swinging = |it: Temperatures| -> Result<_, TemperatureError> {
            it.swinging(TemperatureInterval::new::<kelvin>(swing))
        };
        Temperatures::monthly(means.map(celsius)).and_then(swinging).unwrap()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    /// Charge never rises, stays between 0 and 1, and the edges keep their order; 0 days change nothing.
    #[test]
    fn edges_fall_in_order(
        chemistry in chemistries(), place in places(), days in 0u64..400,
        charge in 0.0..=1.0f64, draw in 0.0..30.0f64, capacity in 2.0..30.0f64,
    ) {
        let battery = known(chemistry.parameters(), capacity, charge, draw);
        let forecast = Forecast::new(&battery, &season_of(day(2025, 11, 1), days), &place);
        prop_assert_eq!(forecast.days()[0], [charge; 3]);
        prop_assert_eq!(forecast.days().len() as u64, days + 1);
        for pair in forecast.days().windows(2) {
            for (before, after) in pair[0].iter().zip(pair[1]) {
                prop_assert!(*before >= after && (0.0..=1.0).contains(&after));
            }
            prop_assert!(pair[1][SLOW] >= pair[1][TYPICAL] - 1e-12);
            prop_assert!(pair[1][TYPICAL] >= pair[1][FAST] - 1e-12);
        }
    }

    /// The band holds the typical edge, whatever is known roughly, and answers agree with the days.
    #[test]
    fn bounds_hold_the_value(
        chemistry in chemistries(), place in places(), days in 0u64..400, charge in 0.0..=1.0f64,
        draw in 0.0..5.0f64, capacity in 2.0..30.0f64, read_at in -20.0..40.0f64, line in 0.1..1.0f64,
    ) {
        let battery = Battery::new(
            chemistry.parameters(),
            torpor::battery::labelled(amp_hours(capacity)),
            torpor::battery::charged_about(share(charge)),
            torpor::battery::drawing_about(milliamps(draw)),
        ).unwrap();
        let season = season_of(day(2025, 11, 1), days);
        let forecast = Forecast::new(&battery, &season, &place);
        let it = forecast.charge_on_ride_date();
        let [low, high] = it.bounds.unwrap();
        prop_assert!(low <= it.value && it.value <= high);
        let it = forecast.resting_voltage_on_ride_date(celsius(read_at));
        let [low, high] = it.bounds.unwrap();
        prop_assert!(low < it.value && it.value < high);
        if let Some(below) = forecast.first_day_below(share(line)) {
            let [from, to] = below.act_by.bounds.unwrap();
            prop_assert!(season.park() <= from && from == below.act_by.value && from <= to && to <= season.end());
            let index = (from - season.park()).num_days() as usize;
            prop_assert!(forecast.days()[index][FAST] < line);
            prop_assert!(index == 0 || forecast.days()[index - 1][FAST] >= line);
        }
    }

    /// Twice the capacity with twice the draw is the same battery twice.
    #[test]
    fn two_batteries_side_by_side(chemistry in chemistries(), place in places(), draw in 0.0..5.0f64) {
        let [one, two] = [1.0, 2.0].map(|it| after(&known(chemistry.parameters(), 8.0 * it, 1.0, draw * it), 200, &place));
        for (one, two) in one.iter().zip(two) {
            prop_assert!((one - two).abs() < 1e-12);
        }
    }

    /// 30 days at 25 °C without a draw lose the stated share exactly.
    #[test]
    fn stated_loss_comes_out(chemistry in chemistries(), charge in 0.1..=1.0f64) {
        let parameters = chemistry.parameters();
        for (end, lost) in after(&known(parameters, 8.0, charge, 0.0), 30, &constant(25.0)).iter().zip(parameters.lost) {
            prop_assert!((end - charge * (1.0 - lost)).abs() < 1e-12);
        }
    }

    /// A warmer place leaves no more charge.
    #[test]
    fn warmth_costs_charge(chemistry in chemistries(), cold in -30.0..40.0f64, warmer in 0.1..20.0f64) {
        let battery = known(chemistry.parameters(), 8.0, 1.0, 0.5);
        let [cold, warm] = [cold, cold + warmer].map(|it| after(&battery, 150, &constant(it)));
        for (cold, warm) in cold.iter().zip(warm) {
            prop_assert!(warm <= cold + 1e-12);
        }
    }

    /// The band widens with time until something is flat: until half is lost on the fast edge, to be on the safe side
    /// of the point where decaying edges draw together again.
    #[test]
    fn band_widens(chemistry in chemistries(), place in places()) {
        let battery = known(chemistry.parameters(), 10.0, 1.0, 1.0);
        let forecast = Forecast::new(&battery, &season_of(day(2025, 11, 1), 300), &place);
        for pair in forecast.days().windows(2).take_while(|it| it[1][FAST] > 0.5) {
            prop_assert!(pair[1][SLOW] - pair[1][FAST] >= pair[0][SLOW] - pair[0][FAST] - 1e-12);
        }
    }

    /// Less charge freezes sooner and reads lower; a voltage turned into charge contains what it came from.
    #[test]
    fn charge_orders_freezing_and_voltage(chemistry in chemistries(), low in 0.0..1.0f64, more in 0.01..1.0f64, at in -17.8..40.0f64) {
        let parameters = chemistry.parameters();
        let high = (low + more).min(1.0);
        let volt_at = |charge: f64| parameters.resting_voltage(Roughly::exactly(share(charge)), celsius(at)).value;
        prop_assert!(volt_at(low) <= volt_at(high));
        if let (Some(low), Some(high)) = (parameters.freezes_at(share(low)), parameters.freezes_at(share(high))) {
            prop_assert!(low.value >= high.value);
        }
        let read = parameters.charge_from_voltage(volt_at(low), celsius(at)).unwrap().roughly();
        prop_assert!(read.low.get::<ratio>() <= low + 1e-9 && low <= read.high.get::<ratio>() + 1e-9);
        if chemistry.is_lead_acid() {
            prop_assert!((read.typical.get::<ratio>() - low).abs() < 1e-9);
        }
    }
}
