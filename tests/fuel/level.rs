//! What is in the tank, and how full it may be.

use super::*;
use torpor::fuel::{FuelError, Warming};
use uom::si::{
    f64::{Length, MassDensity, ThermodynamicTemperature},
    mass_density::kilogram_per_cubic_meter,
    thermodynamic_temperature::degree_celsius,
};

fn warming(filled: f64, warmest: f64, density: Option<f64>) -> Warming {
    let [filled, warmest] = [filled, warmest].map(ThermodynamicTemperature::new::<degree_celsius>);
    let density = density.map(MassDensity::new::<kilogram_per_cubic_meter>);
    Warming { filled, warmest, density }
}

fn area(number: f64) -> Area {
    per_100_km(number, number)[0]
}

/// Source: fuel_headspace.csv, computed apart from this program with table 54B at 745 kg/m³.
#[test]
fn fuel_grows_into_the_room_that_is_left() {
    let rows = rows("fuel_headspace.csv");
    assert_eq!(rows.len(), 6);
    for row in rows {
        let number = |column: usize| row[column].parse::<f64>().unwrap();
        let tank = l(number(0));
        let what = format!("{} L, {} to {} °C", &row[0], &row[1], &row[2]);
        let known = warming(number(1), number(2), Some(745.0));
        let most = fuel::most_fill(tank, &known).unwrap();
        formula::is_whole(&most);
        close(most.value.get::<liter>(), number(5), 5.1e-4, &what);
        let over = fuel::runs_out(tank, tank, &known).unwrap();
        formula::is_whole(&over);
        close(over.value.get::<milliliter>(), number(4), 0.51, &what);
        close((over.value / tank).get::<percent>(), number(3), 5.1e-4, &what);
        assert_eq!(over.bounds, None);
        // Of an unknown gasoline the lightest counts, and the typical one lies between.
        let any = warming(number(1), number(2), None);
        let [safest, loosest] = {
            let most = fuel::most_fill(tank, &any).unwrap();
            let bounds = most.bounds.unwrap_or([most.value; 2]);
            assert_eq!(most.value, bounds[0], "{what}");
            bounds
        };
        assert!(safest <= most.value && most.value <= loosest, "{what}");
        let out = fuel::runs_out(tank, tank, &any).unwrap();
        assert_eq!(out.value, out.bounds.unwrap()[1], "{what}");
        assert!(out.value >= over.value);
    }
}

/// Source: the project's workshop rules: filled at 10 °C with warmest 5 °C it shrinks, and may be full.
#[test]
fn fuel_that_only_cools_may_fill_the_tank() {
    let cooling = warming(10.0, 5.0, None);
    let most = fuel::most_fill(l(15.0), &cooling).unwrap();
    formula::is_whole(&most);
    assert_eq!((most.value, most.law), (l(15.0), &fuel::FILLED_WARM));
    close(fuel::runs_out(l(15.0), l(15.0), &cooling).unwrap().value.value, 0.0, 0.0, "nothing");
    for (filled, warmest) in [(-19.0, 20.0), (10.0, 91.0)] {
        let beyond = warming(filled, warmest, None);
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
    let label = Label::one_to(400.0).unwrap();
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
            fuel::runs_out(l(15.0), l(-1.0), &warming(0.0, 1.0, None)).err(),
            "fuel in the tank has to be 0 or more",
        ),
        (
            fuel::most_fill(l(15.0), &warming(-30.0, 1.0, None)).err(),
            "the table ends there: −18 to 90 °C (0 to 194 °F)",
        ),
        (
            fuel::most_fill(l(0.0), &warming(0.0, 1.0, None)).err(),
            "tank volume has to be more than 0",
        ),
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
    fn the_most_is_the_most(
        tank in 3.0..40.0, filled in -18.0..59.0, step in 0.1..30.0, kg in 720.0..770.0,
    ) {
        let warming = warming(filled, filled + step, Some(kg));
        let most = fuel::most_fill(l(tank), &warming).unwrap().value;
        prop_assert!(most < l(tank));
        let out = |level| fuel::runs_out(l(tank), level, &warming).unwrap().value;
        prop_assert!(out(most) < ml(1e-6));
        prop_assert!(out(most + ml(1.0)) > ml(1.0));
        // What is safe for any gasoline is safe for this one.
        let any = Warming { density: None, ..warming };
        prop_assert!(fuel::most_fill(l(tank), &any).unwrap().value <= most + ml(1e-6));
    }

    /// Warmer lets fill less; farther leaves less.
    #[test]
    fn more_heat_and_more_distance_take_room(tank in 3.0..40.0, filled in -18.0..40.0, a in 0.0..20.0, b in 0.1..20.0) {
        let most = |warmest| fuel::most_fill(l(tank), &warming(filled, warmest, None)).unwrap().value;
        prop_assert!(most(filled + a + b) < most(filled + a) + ml(1e-9));
        let left = |km| fuel::fuel_left(l(tank), Length::new::<kilometer>(km), area(5.0), None).unwrap().value;
        prop_assert!(left(a + b) < left(a));
    }
}
