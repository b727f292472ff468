//! What runs again when something that it looked at has changed.
//!
//! Leptos runs each effect as a task of an executor for futures, which the page uses for nothing else. Here whatever has
//! to run again waits in one list, and all of it runs in the browser's next pause.

use super::boxed::Gives;
use super::held::{At, held, hold};
use leptos::prelude::*;
use leptos::reactive::graph::{AnySource, AnySubscriber, ReactiveNode, Subscriber, WithObserver};
use leptos::reactive::owner::Owner;
use std::cell::RefCell;
use std::rc::Rc;
use std::sync::{Arc, RwLock, Weak};

thread_local! {
    static WAITING: RefCell<Vec<At>> = const { RefCell::new(Vec::new()) };
}

struct Follower {
    act: Box<dyn Gives<()>>,
    /// Of all that is made in a run; gone with the next.
    owner: Owner,
    heard: Arc<Heard>,
}

/// What a follower is told.
#[derive(Default)]
struct Heard(RwLock<Told>);

#[derive(Default)]
struct Told {
    at: Option<At>,
    /// One of the sources has changed; otherwise they have to be asked.
    changed: bool,
    waiting: bool,
    sources: Vec<AnySource>,
}

/// Runs now, and again when something that it looked at has changed, as long as its owner lives.
pub fn follow(act: Box<dyn Gives<()>>) {
    let heard = Arc::<Heard>::default();
    let follower = Rc::new(Follower { act, owner: Owner::new(), heard: heard.clone() });
    let at = hold(follower.clone());
    heard.told(|it| it.at = Some(at));
    follower.run();
}

impl Follower {
    fn named(&self) -> AnySubscriber {
        let heard: Weak<Heard> = Arc::downgrade(&self.heard);
        AnySubscriber(Arc::as_ptr(&self.heard) as usize, heard)
    }

    fn run(&self) {
        let me = self.named();
        // A source may have told while it was asked.
        self.heard.told(|it| it.changed = false);
        me.clear_sources(&me);
        self.owner.with_cleanup(|| me.with_observer(|| self.act.give()));
    }

    fn run_where_changed(&self) {
        self.heard.told(|it| it.waiting = false);
        // A source that is worked out meanwhile is not to tell who asks.
        if self.named().with_observer(|| self.heard.update_if_necessary()) {
            self.run();
        }
    }
}

/// Whoever is gone is told no more: sources would hold it as long as they live.
impl Drop for Follower {
    fn drop(&mut self) {
        let me = self.named();
        me.clear_sources(&me);
    }
}

fn run_waiting() {
    for at in WAITING.take() {
        // It may be gone by now.
        if let Some(follower) = held(at).and_then(|it| it.downcast::<Follower>().ok()) {
            follower.run_where_changed();
        }
    }
}

impl Heard {
    fn told<T: Default>(&self, tell: impl FnOnce(&mut Told) -> T) -> T {
        self.0.write().map(|mut it| tell(&mut it)).unwrap_or_default()
    }
}

impl ReactiveNode for Heard {
    fn mark_dirty(&self) {
        self.told(|it| it.changed = true);
        self.mark_check();
    }

    fn mark_check(&self) {
        let waits = self.told(|it| {
            let waited = std::mem::replace(&mut it.waiting, true);
            it.at.filter(|_| !waited)
        });
        let Some(at) = waits else { return };
        let first = WAITING.with_borrow_mut(|all| {
            all.push(at);
            all.len() == 1
        });
        if first {
            queue_microtask(run_waiting);
        }
    }

    fn mark_subscribers_check(&self) {}

    fn update_if_necessary(&self) -> bool {
        let (changed, sources) = self.told(|it| {
            let changed = std::mem::take(&mut it.changed);
            (changed, if changed { Vec::new() } else { it.sources.clone() })
        });
        changed || sources.iter().any(AnySource::update_if_necessary)
    }
}

impl Subscriber for Heard {
    fn add_source(&self, source: AnySource) {
        // It may be there already; that costs less than to look for it.
        self.told(|it| it.sources.push(source));
    }

    fn clear_sources(&self, me: &AnySubscriber) {
        for source in self.told(|it| std::mem::take(&mut it.sources)) {
            leptos::reactive::graph::Source::remove_subscriber(&source, me);
        }
    }
}
