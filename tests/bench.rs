//! The bench view's stops: which there are, where it begins, where it comes back to.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use torpor::entry::Entry;
use torpor::facts::{self, Id};
use torpor::garage::Kept;
use torpor::plan::address::{Address, read};
use torpor::plan::{Side, Stop, stop_at, stops};

fn bike(facts: &[(Id, &str)]) -> Kept {
    let mut kept = Kept::default();
    for (id, text) in facts {
        kept.put(*id, Entry::new(*text, 0));
    }
    kept
}

fn stop(side: Side, key: &str, place: usize) -> Stop {
    Stop { side, at: side.steps().iter().position(|it| it.choice.key == key).unwrap(), place }
}

fn key(stop: Stop) -> &'static str {
    stop.step().unwrap().choice.key
}

#[test]
fn each_step_is_a_stop_and_each_fastener_one_of_its_own() {
    // Counted by hand on the sheet: 18 steps of the lay-up side, of which a belt drive with injection has no chain and no bowls.
    let all = stops(Side::LayUp, &bike(&[]), 0);
    assert_eq!(all.len(), 18);
    let belt = bike(&[(facts::FINAL_DRIVE.id(), "belt"), (facts::FUEL_SUPPLY.id(), "injection")]);
    assert_eq!(stops(Side::LayUp, &belt, 0).len(), 16);
    let all = stops(Side::LayUp, &bike(&[]), 3);
    assert_eq!(all.len(), 20);
    let torques: Vec<_> = all.iter().filter(|it| key(**it) == "torques").collect();
    assert_eq!(torques.iter().map(|it| it.place).collect::<Vec<_>>(), [1, 2, 3]);
    let first = all.iter().position(|it| it.place == 1).unwrap();
    assert_eq!(key(all[first - 1]), "tires");
    assert_eq!(key(all[first + 3]), "brakes");
}

#[test]
fn it_begins_at_the_first_step_that_is_open() {
    let kept = bike(&[
        (facts::LAY_UP_DONE.id(), "wash fuel"),
        (facts::LAY_UP_LEFT_OUT.id(), "coolant: new last month"),
    ]);
    let all = stops(Side::LayUp, &kept, 0);
    assert_eq!(key(all[stop_at(&all, None, &kept)]), "last-run");
    // Where it is wanted counts before that, done or not.
    let wanted = stop(Side::LayUp, "wash", 0);
    assert_eq!(key(all[stop_at(&all, Some(wanted), &kept)]), "wash");
}

#[test]
fn what_is_no_more_is_not_wanted() {
    let kept = bike(&[(facts::FINAL_DRIVE.id(), "belt"), (facts::LAY_UP_DONE.id(), "wash")]);
    let all = stops(Side::LayUp, &kept, 2);
    let chain = stop(Side::LayUp, "chain", 0);
    assert_eq!(key(all[stop_at(&all, Some(chain), &kept)]), "coolant");
    // A fastener that was removed.
    let ninth = stop(Side::LayUp, "torques", 9);
    assert_eq!(key(all[stop_at(&all, Some(ninth), &kept)]), "coolant");
    let all_done: Vec<&str> = Side::WakeUp.steps().iter().map(|it| it.choice.key).collect();
    let done = bike(&[(facts::WAKE_UP_DONE.id(), &all_done.join(" "))]);
    let all = stops(Side::WakeUp, &done, 0);
    assert_eq!(stop_at(&all, None, &done), 0);
    assert_eq!(stop_at(&[], Some(chain), &kept), 0);
}

/// The owner's own steps come last, and count among those that are open.
#[test]
fn own_steps_are_stops_too() {
    let mut kept = bike(&[(facts::OWN_WAKE_UP.id(), "Camera on; Charge the intercom")]);
    let all = stops(Side::WakeUp, &kept, 0);
    assert_eq!(all.len(), Side::WakeUp.steps().len() + 2);
    let own = |place| Stop { side: Side::WakeUp, at: 15, place };
    assert_eq!(all[15..], [own(1), own(2)]);
    assert_eq!(own(2).address(), "bench/wakeup/own/2");
    assert_eq!(read("bench/wakeup/own/2"), Address::Bench(Some(Side::WakeUp), Some(own(2))));
    let all_done: Vec<&str> = Side::WakeUp.steps().iter().map(|it| it.choice.key).collect();
    kept.put(facts::WAKE_UP_DONE.id(), Entry::new(all_done.join(" "), 0));
    assert_eq!(stop_at(&all, None, &kept), 15);
    kept.put(facts::OWN_WAKE_UP_DONE.id(), Entry::new("Camera on", 0));
    assert_eq!(stop_at(&all, None, &kept), 16);
    assert_eq!(stop_at(&all, Some(own(1)), &kept), 15);
    // On the sheet they have no address of their own.
    assert_eq!(read("wakeup/own/2"), Address::Unknown("wakeup/own/2".into()));
    assert_eq!(read("bench/wakeup/own"), Address::Unknown("bench/wakeup/own".into()));
}

#[test]
fn an_address_opens_what_it_was_made_for() {
    for side in Side::ALL {
        for it in stops(side, &bike(&[]), 2) {
            assert_eq!(read(&it.address()), Address::Bench(Some(side), Some(it)));
        }
        assert_eq!(read(&format!("#bench/{}", side.key())), Address::Bench(Some(side), None));
    }
    for wrong in [
        "bench/",
        "bench/oil",
        "bench/layup/nothing",
        "bench/layup/oil/x",
        "bench/layup/oil/1/2",
        "bench/layup/oil/0",
    ] {
        assert_eq!(read(wrong), Address::Unknown(wrong.to_owned()), "{wrong}");
    }
}
