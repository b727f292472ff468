//! The steps of both sides: their order, which bike has which, what waits for what, ticks and what is left out.
//!
//! The order and its reasons are common practice, no source: what one step does to the next is said beside each check.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use chrono::NaiveDate;
use proptest::prelude::*;
use torpor::entry::Entry;
use torpor::facts::{self, Id, LAY_UP_STEPS, WAKE_UP_STEPS};
use torpor::garage::Kept;
use torpor::plan::{self, Side, Step};
use torpor::storage::link::{self, Parcel};

fn step(side: Side, key: &str) -> &'static Step {
    side.step(key).unwrap_or_else(|| panic!("no step {key}"))
}

fn place(side: Side, key: &str) -> usize {
    side.steps().iter().position(|it| it.choice.key == key).unwrap()
}

fn bike(facts: &[(Id, &str)]) -> Kept {
    let mut kept = Kept::default();
    for (id, text) in facts {
        kept.put(*id, Entry::new(*text, 0));
    }
    kept
}

fn tick(kept: &mut Kept, step: &Step, done: bool) {
    let (id, text) = step.ticked(kept, done);
    kept.put(id, Entry::new(text, 0));
}

fn leave_out(kept: &mut Kept, step: &Step, reason: &str) {
    let (id, text) = step.leaving_out(kept, reason);
    kept.put(id, Entry::new(text, 0));
}

/// A number that is missing between two looks like a step that was lost. Counted by hand: of 18 steps a belt drive with
/// injection has neither the fifth nor the eighth.
#[test]
fn numbers_have_no_holes() {
    let belt = bike(&[(facts::FINAL_DRIVE.id(), "belt"), (facts::FUEL_SUPPLY.id(), "injection")]);
    let number = |key| step(Side::LayUp, key).number(&belt);
    assert_eq!(["last-run", "oil", "other-oils", "close", "cover"].map(number), [4, 5, 6, 7, 16]);
    assert_eq!(Side::LayUp.count(&belt), 16);
    assert_eq!(step(Side::LayUp, "cover").number(&bike(&[])), 18);
    assert_eq!(Side::WakeUp.count(&belt), 14, "no chain of 15");
    // What is left out stays in sight under its number.
    let mut without = bike(&[]);
    leave_out(&mut without, step(Side::LayUp, "coolant"), "new");
    assert_eq!(step(Side::LayUp, "fuel").number(&without), 3);
}

/// Every manual, and common practice: a plug that is tightened after the run has leaked by then. Torques come after the oil.
#[test]
fn the_plug_is_tight_before_oil_goes_in() {
    assert!(place(Side::LayUp, "oil") < place(Side::LayUp, "torques"));
    let [how] = step(Side::LayUp, "oil").said.how else { panic!() };
    assert!(how.contains("before any oil goes in") && how.contains("New washer"), "{how}");
    let list = step(Side::LayUp, "torques").said.title;
    assert!(how.contains(list), "says where the figure is");
    // On paper, too.
    let paper = plan::paper(&Kept::default(), &[], torpor::units::UnitSet::Metric);
    assert!(paper.cautions.contains(&[step(Side::LayUp, "oil").said.title, *how]));
}

/// Numbers and keys stand in records and links for ever: none is changed or taken away, only added.
#[test]
fn numbers_and_keys_are_frozen() {
    let named = |all: &[facts::Choice]| -> Vec<(u8, &str)> {
        all.iter().map(|it| (it.code, it.key)).collect()
    };
    let lay_up = [
        "wash",
        "coolant",
        "fuel",
        "last-run",
        "chain",
        "oil",
        "other-oils",
        "tap-and-bowls",
        "close",
        "tires",
        "torques",
        "brakes",
        "controls",
        "corrosion",
        "battery",
        "weight",
        "where",
        "cover",
    ];
    let wake_up = [
        "uncover",
        "open",
        "fuel",
        "levels",
        "battery",
        "stands",
        "tires",
        "fasteners",
        "chain",
        "papers",
        "before-moving",
        "first-start",
        "first-ride",
        "look-again",
        "due",
    ];
    assert_eq!(named(LAY_UP_STEPS), (1u8..).zip(lay_up).collect::<Vec<_>>());
    assert_eq!(named(WAKE_UP_STEPS), (1u8..).zip(wake_up).collect::<Vec<_>>());
    // A link carries them as binary digits of a whole number.
    assert!(LAY_UP_STEPS.len() <= 32 && WAKE_UP_STEPS.len() <= 32);
    for side in Side::ALL {
        for it in side.steps() {
            assert!(!it.said.title.is_empty() && !it.said.reason.is_empty());
            assert_eq!(it.choice.label, it.said.title, "number and words belong together");
            assert!(it.sum.is_some() || !it.said.how.is_empty(), "{} says nothing", it.choice.key);
            for how in it.said.how {
                assert!(how.ends_with('.'), "{how}");
            }
        }
    }
}

#[test]
fn lay_up_comes_in_the_order_of_the_work() {
    for (first, then, _why) in [
        ("wash", "last-run", "the run dries what the cloth does not reach"),
        ("coolant", "last-run", "a refill is mixed and bled by the run"),
        ("fuel", "last-run", "treated fuel has to reach the engine"),
        ("last-run", "chain", "warm grease flows"),
        ("last-run", "oil", "warm oil drains and takes the dirt along"),
        ("oil", "tap-and-bowls", "the short run for the level would fill the bowls again"),
        ("oil", "close", "every run wants an open pipe"),
        ("last-run", "torques", "torques want a cold bike"),
        ("last-run", "battery", "the last start takes from it"),
        ("close", "cover", "cold and dry, at the end"),
    ] {
        assert!(place(Side::LayUp, first) < place(Side::LayUp, then), "{first} before {then}");
    }
}

/// The engine does not run before what was closed is open and fuel, levels and battery were seen to; the bike does not move
/// before brakes, tires, fasteners and chain were.
#[test]
fn first_start_and_first_ride_wait() {
    let mut kept = Kept::default();
    let [start, ride] = ["first-start", "first-ride"].map(|it| step(Side::WakeUp, it));
    let waits = |step: &Step, kept: &Kept| -> Vec<&str> {
        let titled = |title: &String| {
            let mut all = Side::WakeUp.steps().iter();
            all.find(|it| it.said.title == title).map_or("own", |it| it.choice.key)
        };
        step.waits_for(kept).iter().map(titled).collect()
    };
    assert_eq!(waits(start, &kept), ["open", "fuel", "levels", "battery", "before-moving"]);
    // All that comes before it.
    let before = place(Side::WakeUp, "first-ride");
    let all: Vec<&str> = Side::WakeUp.steps().iter().take(before).map(|it| it.choice.key).collect();
    assert_eq!(waits(ride, &kept), all);
    for it in ["open", "fuel", "levels", "before-moving"] {
        tick(&mut kept, step(Side::WakeUp, it), true);
    }
    // Left out with a reason, it is seen to.
    leave_out(&mut kept, step(Side::WakeUp, "battery"), "kick start only");
    assert_eq!(waits(start, &kept), [""; 0]);
    // Not asked, it is not waited for.
    assert!(waits(ride, &kept).contains(&"chain"));
    kept.put(facts::FINAL_DRIVE.id(), Entry::new("shaft", 0));
    assert!(!waits(ride, &kept).contains(&"chain"));
    tick(&mut kept, step(Side::WakeUp, "open"), false);
    assert_eq!(waits(start, &kept), ["open"]);
    // What its owner added to the wake-up comes before the engine runs.
    kept.put(facts::OWN_WAKE_UP.id(), Entry::new("Rag out of the airbox", 0));
    assert_eq!(waits(start, &kept), ["open", "own"]);
    kept.put(facts::OWN_WAKE_UP_DONE.id(), Entry::new("Rag out of the airbox", 0));
    // A start that was ticked before does not stand for what was unticked since.
    tick(&mut kept, start, true);
    assert!(waits(ride, &kept).contains(&"open"));
}

/// Ticks hold for the winter they were made in: dates that are moved on to the next one open every step again, so that a new
/// plug in the pipe is not taken for one that is out.
#[test]
fn ticks_of_another_winter_hold_no_more() {
    let mut kept =
        bike(&[(facts::PARK_DATE.id(), "2026-11-14"), (facts::SEASON_MARK.id(), "2026-11-12")]);
    let open = step(Side::WakeUp, "open");
    tick(&mut kept, open, true);
    assert!(open.is_done(&kept));
    // Weeks later or over New Year it is the same winter still.
    for park in ["2027-01-20", "2026-10-01"] {
        kept.put(facts::PARK_DATE.id(), Entry::new(park, 0));
        assert!(open.is_done(&kept), "{park}");
    }
    kept.put(facts::PARK_DATE.id(), Entry::new("2027-11-14", 0));
    assert!(!open.is_done(&kept) && plan::is_stale(&kept));
}

/// A tick holds from the moment it is made, however far ahead or back the park date is, and whatever stood before.
#[test]
fn a_tick_holds_for_any_park_date() {
    let day = |text: &str| text.parse::<NaiveDate>().unwrap();
    let close = step(Side::LayUp, "close");
    for today in ["2026-11-14", "2026-03-20"].map(day) {
        for days in (-2000..2000).step_by(5) {
            let park = (today + chrono::Duration::days(days)).to_string();
            for mark in ["", "2026-11-12", "2022-10-01"] {
                let mut kept = bike(&[
                    (facts::PARK_DATE.id(), &park),
                    (facts::SEASON_MARK.id(), mark),
                    (facts::LAY_UP_DONE.id(), "wash"),
                ]);
                let stale = plan::is_stale(&kept);
                for (id, text) in plan::begun(&kept, today) {
                    kept.put(id, Entry::new(text, 0));
                }
                tick(&mut kept, close, true);
                assert!(close.is_done(&kept), "{today} {park} {mark}");
                assert_eq!(step(Side::LayUp, "wash").is_done(&kept), !stale, "{park} {mark}");
                // The next one finds all as it is.
                assert_eq!(plan::begun(&kept, today), []);
                // And a slip that is put right opens no step of a season that was begun this year.
                if mark != "2022-10-01" || stale {
                    kept.put(facts::PARK_DATE.id(), Entry::new(today.to_string(), 0));
                    assert!(close.is_done(&kept), "{today} {park} {mark}");
                }
            }
        }
    }
}

/// What was closed or covered is opened and looked into in any case: an open pipe is the one that mice nest in. What was not
/// lifted need not come down.
#[test]
fn what_was_put_on_comes_off() {
    for (down, up, stays) in
        [("close", "open", true), ("cover", "uncover", true), ("weight", "stands", false)]
    {
        let mut kept = Kept::default();
        let (down, up) = (step(Side::LayUp, down), step(Side::WakeUp, up));
        assert!(up.is_asked(&kept), "when nobody says, it may be on");
        leave_out(&mut kept, down, "never done here");
        assert_eq!(up.is_asked(&kept), stays);
        leave_out(&mut kept, down, "");
        tick(&mut kept, down, true);
        assert!(up.is_asked(&kept));
    }
}

/// A reason for each step, as long as there is room for: all of them fit into a link.
#[test]
fn reasons_of_all_steps_travel() {
    let mut kept = bike(&[(facts::PARK_DATE.id(), "2026-11-14")]);
    for it in Side::LayUp.steps() {
        let reason = "never done on this bike, its owner says so each fall";
        let taken: String = reason.chars().take(it.room(&kept)).collect();
        leave_out(&mut kept, it, &taken);
    }
    let made = NaiveDate::from_ymd_opt(2026, 11, 14).unwrap();
    let link = link::written(&Parcel { made, kept: kept.clone() }, true).unwrap();
    let read = link::read(&link).unwrap().kept;
    for it in Side::LayUp.steps() {
        assert_eq!(it.left_out(&read), it.left_out(&kept));
    }
    assert!(step(Side::LayUp, "wash").left_out(&read).is_some());
    // A space behind the last word stays while it is typed.
    leave_out(&mut kept, step(Side::LayUp, "wash"), "no ");
    assert_eq!(step(Side::LayUp, "wash").reason(&kept), "no ");
    assert_eq!(step(Side::LayUp, "wash").left_out(&kept).as_deref(), Some("no"));
}

#[test]
fn the_bike_adds_and_removes_steps() {
    let asked =
        |facts: &[(Id, &str)], side: Side, key: &str| step(side, key).is_asked(&bike(facts));
    assert!(asked(&[], Side::LayUp, "coolant") && asked(&[], Side::LayUp, "tap-and-bowls"));
    assert!(!asked(&[(facts::COOLING.id(), "air")], Side::LayUp, "coolant"));
    assert!(!asked(&[(facts::FUEL_SUPPLY.id(), "injection")], Side::LayUp, "tap-and-bowls"));
    assert!(asked(&[(facts::FUEL_SUPPLY.id(), "carburetor")], Side::LayUp, "tap-and-bowls"));
    for side in Side::ALL {
        assert!(asked(&[(facts::FINAL_DRIVE.id(), "chain")], side, "chain"));
        for other in ["belt", "shaft"] {
            assert!(!asked(&[(facts::FINAL_DRIVE.id(), other)], side, "chain"));
        }
    }
}

/// Ticks and reasons go round with the bike; reasons are the owner's own words and leave only when chosen.
#[test]
fn ticks_travel_and_reasons_stay() {
    let day = NaiveDate::from_ymd_opt(2026, 11, 14).unwrap();
    let mut kept = bike(&[(facts::PARK_DATE.id(), "2026-11-14")]);
    tick(&mut kept, step(Side::LayUp, "close"), true);
    tick(&mut kept, step(Side::LayUp, "fuel"), true);
    leave_out(&mut kept, step(Side::LayUp, "wash"), "washed in October; by hand");
    kept.put(facts::WHERE_THINGS_LIE.id(), Entry::new("key on the hook", 0));
    let read = |with_names| {
        let text = link::written(&Parcel { made: day, kept: kept.clone() }, with_names).unwrap();
        link::read(&text).unwrap().kept
    };
    let bare = read(false);
    assert!(step(Side::LayUp, "close").is_done(&bare) && step(Side::LayUp, "fuel").is_done(&bare));
    assert!(!step(Side::LayUp, "oil").is_done(&bare));
    assert_eq!(step(Side::LayUp, "wash").left_out(&bare), None);
    assert!(facts::WHERE_THINGS_LIE.maybe(&bare).unwrap().is_none());
    let whole = read(true);
    assert_eq!(
        step(Side::LayUp, "wash").left_out(&whole).as_deref(),
        Some("washed in October, by hand")
    );
}

#[test]
fn the_side_follows_the_date() {
    let on = |day: (i32, u32, u32), ride: &str| {
        let day = NaiveDate::from_ymd_opt(day.0, day.1, day.2).unwrap();
        Side::on(day, &bike(&[(facts::RIDE_DATE.id(), ride)]))
    };
    // Three weeks before Mar 28 is Mar 7, by the calendar.
    assert_eq!(on((2027, 3, 6), "2027-03-28"), Side::LayUp);
    assert_eq!(on((2027, 3, 7), "2027-03-28"), Side::WakeUp);
    assert_eq!(on((2027, 5, 1), "2027-03-28"), Side::WakeUp);
    assert_eq!(on((2027, 5, 1), ""), Side::LayUp);
}

proptest! {
    /// Ticking and leaving out in any order: each step ends as it was last said, whatever the others are.
    #[test]
    fn each_step_is_its_own(acts in prop::collection::vec((0usize..2, 0usize..18, 0usize..4), 0..60)) {
        let mut kept = Kept::default();
        let mut last = std::collections::BTreeMap::new();
        for (side, at, act) in acts {
            let side = Side::ALL[side];
            let it = &side.steps()[at % side.steps().len()];
            let state = last.entry((side.key(), it.choice.key)).or_insert((false, false));
            match act {
                0 | 1 => {
                    tick(&mut kept, it, act == 1);
                    state.0 = act == 1;
                }
                _ => {
                    leave_out(&mut kept, it, if act == 2 { "no need: none; at all" } else { " " });
                    state.1 = act == 2;
                }
            }
        }
        for side in Side::ALL {
            for it in side.steps() {
                let (done, out) =
                    last.get(&(side.key(), it.choice.key)).copied().unwrap_or_default();
                prop_assert_eq!(it.is_done(&kept), done);
                prop_assert_eq!(it.left_out(&kept).is_some(), out);
            }
        }
    }
}
