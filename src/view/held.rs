//! What is held as long as its owner lives: what follows, what listens.
//!
//! Leptos has a place for such things, too. It holds those that may not go to another thread together with the name of the
//! thread that they are of, and to ask for that name brings all of a thread with an allocator of its own; the page has but one.

use leptos::prelude::on_cleanup;
use std::any::Any;
use std::cell::RefCell;
use std::rc::Rc;

/// Where something is held. A place is given away again, in another turn.
#[derive(Clone, Copy)]
pub struct At {
    place: usize,
    turn: u32,
}

struct Held {
    /// By place: how often it was given away, and to what.
    all: Vec<(u32, Option<Rc<dyn Any>>)>,
    free: Vec<usize>,
}

thread_local! {
    static HELD: RefCell<Held> = const { RefCell::new(Held { all: Vec::new(), free: Vec::new() }) };
}

/// Holds something as long as its owner lives.
pub fn hold(it: Rc<dyn Any>) -> At {
    let at = HELD.with_borrow_mut(|held| held.put(it));
    on_cleanup(move || {
        // Let go only once the list is: what goes may hold others.
        let gone = HELD.with_borrow_mut(|held| held.take(at));
        drop(gone);
    });
    at
}

/// What is held there; nothing where it is gone.
pub fn held(at: At) -> Option<Rc<dyn Any>> {
    HELD.with_borrow(|held| {
        let (turn, it) = held.all.get(at.place)?;
        it.clone().filter(|_| *turn == at.turn)
    })
}

impl Held {
    fn put(&mut self, it: Rc<dyn Any>) -> At {
        let place = self.free.pop().unwrap_or(self.all.len());
        match self.all.get_mut(place) {
            Some((turn, there)) => {
                *turn += 1;
                *there = Some(it);
                At { place, turn: *turn }
            }
            None => {
                self.all.push((0, Some(it)));
                At { place, turn: 0 }
            }
        }
    }

    fn take(&mut self, at: At) -> Option<Rc<dyn Any>> {
        let gone = self.all.get_mut(at.place)?.1.take();
        self.free.push(at.place);
        gone
    }
}
