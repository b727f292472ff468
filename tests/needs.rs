//! The needs list of the invented bike, its sums worked by hand.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::NaiveDate;
use torpor::entry::Entry;
use torpor::facts;
use torpor::garage::{Entries, Kept, example};
use torpor::plan::{Side, needs};
use torpor::units::UnitSet;

fn bike() -> Kept {
    example(NaiveDate::from_ymd_opt(2026, 10, 1).unwrap(), UnitSet::Metric)
}

fn list(kept: &Kept) -> Vec<String> {
    needs(kept, UnitSet::Metric).iter().map(|it| it.replace('\u{a0}', " ")).collect()
}

#[test]
fn what_the_open_steps_want() {
    let mut kept = bike();
    // 95 % of 16 L are 15.2 L, and 4 L are in: 11.2 L with 45.6 mL of stabilizer in them (30 mL to 10 L). 3.1 L of oil from
    // bottles of 1 L are four. Coolant from 45 to 50 %: drain and refill 0.22 L undiluted of 2.4 L (2.4 · 5 / 55). Brake fluid of
    // Oct 4 2025 is due after two years, in Oct 2027: not before the ride.
    let expected = [
        "Coolant, from the bottle: 0.22 L",
        "Fuel: 11.2 L",
        "Fuel stabilizer: 46 mL",
        "Engine oil: 4 × 1 L",
        "Oil filter, and its seal",
        "Washer for the oil’s drain plug",
    ];
    assert_eq!(list(&kept), expected);
    // While nobody says how strong the bottle is, the list says what it has to be: 2.4 · 5 / 5 L of a ready mix.
    let mut unknown = bike();
    unknown.put(facts::COOLANT_BOTTLE.id(), Entry::default());
    assert_eq!(list(&unknown)[0], "Coolant, ready-mixed, 50 %: 2.40 L");
    // 48 % from 45 % by a ready mix: 2.4 · 3 / 5 L of it.
    unknown.put(facts::WANTED_CONCENTRATION.id(), Entry::new("48 %", 0));
    assert_eq!(list(&unknown)[0], "Coolant, ready-mixed, 50 %: 1.44 L");
    // Over 50 % no ready mix gets there.
    unknown.put(facts::WANTED_CONCENTRATION.id(), Entry::new("55 %", 0));
    assert!(list(&unknown)[0].starts_with("Coolant concentrate: "), "{:?}", list(&unknown));
    // What stands on the shelf is not bought again; 1.5 L there leave 1.6 L, two bottles.
    kept.put(facts::OIL_ON_SHELF.id(), Entry::new("1.5 L", 0));
    assert!(list(&kept).contains(&"Engine oil: 2 × 1 L".to_owned()));
    kept.put(facts::OIL_ON_SHELF.id(), Entry::new("4 L", 0));
    assert!(!list(&kept).iter().any(|it| it.starts_with("Engine oil")));
    // Fluid that is due before the ride.
    kept.put(facts::BRAKE_FLUID_CHANGED.id(), Entry::new("2024-10-04", 0));
    assert!(list(&kept).contains(&"Brake fluid, a sealed bottle".to_owned()));
    // What fasteners want anew.
    kept.bike.fasteners = vec![Entries::from([
        (facts::FASTENER_NAME.id(), Entry::new("Drain plug", 0)),
        (facts::MIND.id(), Entry::new("new_washer left_hand", 0)),
    ])];
    assert!(list(&kept).contains(&"New washer: Drain plug".to_owned()));
}

#[test]
fn what_is_done_or_left_out_wants_nothing() {
    let mut kept = bike();
    let step = |key| Side::LayUp.step(key).unwrap();
    let (id, text) = step("oil").ticked(&kept, true);
    kept.put(id, Entry::new(text, 0));
    let (id, text) = step("fuel").leaving_out(&kept, "tank off");
    kept.put(id, Entry::new(text, 0));
    assert_eq!(list(&kept), ["Coolant, from the bottle: 0.22 L"]);
    assert!(list(&Kept::default()).is_empty());
}
