//! What is in the tank, and how full it may be.

use super::*;
use torpor::fuel::{FuelError, Warming};
use uom::si::{
    f64::{Length, ThermodynamicTemperature},
    thermodynamic_temperature::degree_celsius,
};

fn warming(filled: f64, warmest: f64) -> Warming {
    let [filled, warmest] = [filled, warmest].map(ThermodynamicTemperature::new::<degree_celsius>);
    Warming { filled, warmest }
}

fn area(number: f64) -> Area {
    per_100_km(number, number)[0]
}

/// Source: fuel_headspace.csv, computed apart from this program with table 54B at 745 kg/m³. Bounds are for 720 and 770:
/// 745 lies in their middle, but for the bend of the formula, a two hundredth of what it grows.
#[test]
fn fuel_grows_into_the_room_that_is_left() {
    let rows = rows("fuel_headspace.csv");
    assert_eq!(rows.len(), 6);
    for row in rows {
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        let tank = l(number(0));
        let what = format!("{} L, {} to {} °C", &row[0], &row[1], &row[2]);
        let any = warming(number(1), number(2));
        let grown = number(4);
        let most = fuel::most_fill(tank, &any).unwrap();
        formula::is_whole(&most);
        let [safest, loosest] = most.bounds.unwrap_or([most.value; 2]);
        assert_eq!(most.value, safest, "{what}");
        close(((safest + loosest) / 2.0).get::<liter>(), number(5), 5e-6 * grown + 5.1e-4, &what);
        let over = fuel::runs_out(tank, tank, &any).unwrap();
        formula::is_whole(&over);
        let [least, highest] = over.bounds.unwrap();
        assert_eq!(over.value, highest, "{what}");
        close(((least + highest) / 2.0).get::<milliliter>(), grown, 5e-3 * grown + 0.51, &what);
    }
}

/// By hand: 95 % typed is the usual level, to its last digit; a share of the tank is that share.
#[test]
fn the_usual_level_leaves_room() {
    let tank = l(16.0);
    close(fuel::usual_level(tank).get::<liter>(), 15.2, 1e-12, "usual");
    let typed = fuel::share_of(tank, Ratio::new::<uom::si::ratio::ratio>(95.0 * 1e-2));
    assert!(!fuel::no_room(tank, typed) && !fuel::no_room(tank, l(15.2)));
    assert!(fuel::no_room(tank, l(15.21)));
}

/// By hand, 1:1000, all that was inside treated, filled to 10 L: inside 8 to 14 L (11 L) asks for 2, 0 and 0 mL at one dose;
/// at two doses for 12, 10 (at the level itself) and 14 mL: the lowest is no end of the range.
#[test]
fn bounds_of_a_dose_hold_its_kink() {
    let label = Label::dose_per_fuel(ml(1.0), l(1.0)).unwrap();
    let bounds = Some([l(8.0), l(14.0)]);
    let dose = |times| {
        fuel::stabilizer_about(l(10.0), (l(11.0), bounds), pct(100.0), label, times).unwrap()
    };
    for (times, expected) in [(1.0, [0.0, 0.0, 2.0]), (2.0, [10.0, 11.0, 14.0])] {
        let dose = dose(times);
        let [low, high] = dose.bounds.unwrap();
        for (got, expected) in [low, dose.value, high].into_iter().zip(expected) {
            close(got.get::<milliliter>(), expected, 1e-9, "dose");
        }
    }
}

/// Source: the project's workshop rules: filled at 10 °C with warmest 5 °C it shrinks, and may be full.
#[test]
fn fuel_that_only_cools_may_fill_the_tank() {
    let cooling = warming(10.0, 5.0);
    let most = fuel::most_fill(l(15.0), &cooling).unwrap();
    formula::is_whole(&most);
    assert_eq!((most.value, most.law), (l(15.0), &fuel::FILLED_WARM));
    close(fuel::runs_out(l(15.0), l(15.0), &cooling).unwrap().value.value, 0.0, 0.0, "nothing");
    for (filled, warmest) in [(-19.0, 20.0), (10.0, 91.0)] {
        let beyond = warming(filled, warmest);
        assert_eq!(fuel::most_fill(l(15.0), &beyond).err(), Some(FuelError::OutsideTable));
    }
}

/// By hand: 100 km at 5 L/100 km are 5 L of 16; at 4 to 6, 4 to 6; one number is taken for 15 % off, 4.25 to 5.75.
#[test]
fn the_distance_since_it_was_full_tells_what_is_left() {
    let km = Length::new::<kilometer>;
    let left = |distance, consumption, bounds: Option<[f64; 2]>| {
        fuel::fuel_left(l(16.0), km(distance), area(consumption), bounds.map(|it| it.map(area)))
    };
    let known = left(100.0, 5.0, Some([4.0, 6.0])).unwrap();
    formula::is_whole(&known);
    close(known.value.get::<liter>(), 11.0, 1e-9, "left");
    let bounds = known.bounds.unwrap().map(|it| it.get::<liter>());
    close(bounds[0], 10.0, 1e-9, "least");
    close(bounds[1], 12.0, 1e-9, "most");
    let bounds = left(100.0, 5.0, None).unwrap().bounds.unwrap().map(|it| it.get::<liter>());
    close(bounds[0], 10.25, 1e-9, "least");
    close(bounds[1], 11.75, 1e-9, "most");
    // To the brim 16 − 11 go in, 4 to 6 at the ends; a dose on all of it is sure.
    let add = fuel::to_add_about(l(16.0), known.value, known.bounds, l(16.0)).unwrap();
    let bounds = add.bounds.unwrap().map(|it| it.get::<liter>());
    close(add.value.get::<liter>(), 5.0, 1e-9, "to add");
    close(bounds[0], 4.0, 1e-9, "least to add");
    close(bounds[1], 6.0, 1e-9, "most to add");
    let inside = (known.value, known.bounds);
    let label = Label::dose_per_fuel(ml(1.0), ml(400.0)).unwrap();
    let dose = |treated| fuel::stabilizer_about(l(16.0), inside, pct(treated), label, 1.0).unwrap();
    close(dose(0.0).value.get::<milliliter>(), 40.0, 1e-9, "on all of it");
    let bounds = dose(0.0).bounds.unwrap();
    assert_eq!(bounds[0], bounds[1]);
    // All of it treated: 5 L are not, 4 to 6 at the ends.
    let bounds = dose(100.0).bounds.unwrap().map(|it| it.get::<milliliter>());
    close(bounds[0], 10.0, 1e-9, "least");
    close(bounds[1], 15.0, 1e-9, "most");
    for (got, words) in [
        (left(-1.0, 5.0, None).err(), "distance since the last fill has to be 0 or more"),
        (
            left(400.0, 5.0, Some([4.5, 5.5])).err(),
            "distance since the last fill has to be one that a tank lasts",
        ),
        (left(1.0, 0.0, None).err(), "consumption has to be more than 0"),
        (
            left(1.0, 5.0, Some([6.0, 7.0])).err(),
            "lowest consumption has to be at most the highest",
        ),
        (
            fuel::runs_out(l(15.0), l(-1.0), &warming(0.0, 1.0)).err(),
            "fuel in the tank has to be 0 or more",
        ),
        (
            fuel::most_fill(l(15.0), &warming(-30.0, 1.0)).err(),
            "the table ends there: −18 to 90 °C (−0.4 to 194 °F)",
        ),
        (fuel::most_fill(l(0.0), &warming(0.0, 1.0)).err(), "tank volume has to be more than 0"),
    ] {
        assert_eq!(got.map(|it| it.to_string()).as_deref(), Some(words));
    }
    // Ridden nearly dry: some say it is empty.
    let dry = left(320.0, 5.0, Some([4.5, 5.5])).unwrap();
    assert_eq!(dry.bounds.unwrap()[0], l(0.0));
}

proptest! {
    /// Filled to the most, it is full at the warmest and never over; a milliliter more runs out.
    #[test]
    fn the_most_is_the_most(tank in 3.0..40.0, filled in -18.0..59.0, step in 0.1..30.0) {
        let warming = warming(filled, filled + step);
        let most = fuel::most_fill(l(tank), &warming).unwrap().value;
        prop_assert!(most < l(tank));
        let out = |level| fuel::runs_out(l(tank), level, &warming).unwrap().value;
        prop_assert!(out(most) < ml(1e-6));
        prop_assert!(out(most + ml(1.0)) > ml(1.0));
    }

    /// A dose lies within its bounds, and so does that of any level in between.
    #[test]
    fn a_dose_lies_within_its_bounds(
        level in 1.0..20.0, least in 0.0..20.0, span in 0.0..10.0, at in 0.0..1.0, treated in 0.0..100.0, times in 0.5..3.0,
    ) {
        let label = Label::dose_per_fuel(ml(1.0), ml(400.0)).unwrap();
        let bounds = Some([l(least), l(least + span)]);
        let inside = l(least + at * span);
        let dose = fuel::stabilizer_about(l(level), (inside, bounds), pct(treated), label, times);
        let dose = dose.unwrap();
        let [low, high] = dose.bounds.unwrap();
        prop_assert!(low <= dose.value + ml(1e-9) && dose.value <= high + ml(1e-9), "{dose:?}");
    }

    /// Warmer lets fill less; farther leaves less.
    #[test]
    fn more_heat_and_more_distance_take_room(tank in 3.0..40.0, filled in -18.0..40.0, a in 0.0..20.0, b in 0.1..20.0) {
        let most = |warmest| fuel::most_fill(l(tank), &warming(filled, warmest)).unwrap().value;
        prop_assert!(most(filled + a + b) < most(filled + a) + ml(1e-9));
        let left = |km| fuel::fuel_left(l(tank), Length::new::<kilometer>(km), area(5.0), None).unwrap().value;
        prop_assert!(left(a + b) < left(a));
    }
}
