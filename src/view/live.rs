//! What the page follows: values that are set (`Live`) and values worked out from others (`Derived`), both small handles
//! that are copied into every closure, and the entries of a sheet (`Typed`).
//!
//! Leptos keeps who follows whom. Its signals and memos are compiled anew for each type that they hold, though; here the
//! value stands beside the one trigger or the one memo there is, and only whoever looks at it knows its type.

use crate::entry::Entry;
use crate::words::page::GONE;
use leptos::prelude::*;
use leptos::reactive::graph::{ReactiveNode, Subscriber, ToAnySubscriber};
use leptos::reactive::{computed::ArcMemo, owner::ArenaItem};
use std::any::Any;
use std::marker::PhantomData;
use std::sync::{Arc, RwLock};

type Value = dyn Any + Send + Sync;
type Stood = Arc<RwLock<Box<Value>>>;
type At = ArenaItem<Arc<Node>>;

/// From what a value of this type was before.
trait Anew<T>: Send + Sync {
    fn anew(&self, before: Option<&T>) -> T;
}
impl<T, F: Fn(Option<&T>) -> T + Send + Sync> Anew<T> for F {
    fn anew(&self, before: Option<&T>) -> T {
        self(before)
    }
}

/// The value, where it is not what it was before.
trait WorkOut: Send + Sync {
    fn differs(&self, before: &Value) -> Option<Box<Value>>;
}
impl<F: Fn(&Value) -> Option<Box<Value>> + Send + Sync> WorkOut for F {
    fn differs(&self, before: &Value) -> Option<Box<Value>> {
        self(before)
    }
}

trait Look {
    fn look(&mut self, at: &Value);
}
impl<F: FnMut(&Value)> Look for F {
    fn look(&mut self, at: &Value) {
        self(at);
    }
}

trait Change {
    fn change(&mut self, it: &mut Value);
}
impl<F: FnMut(&mut Value)> Change for F {
    fn change(&mut self, it: &mut Value) {
        self(it);
    }
}

struct Node {
    turns: Turns,
    value: Stood,
}

/// Whoever is gone is told no more: sources would hold it as long as they live.
impl Drop for Node {
    fn drop(&mut self) {
        if let Turns::WorkedOut(memo) = &self.turns {
            memo.clear_sources(&memo.to_any_subscriber());
        }
    }
}

/// What tells those who follow.
enum Turns {
    Set(ArcTrigger),
    WorkedOut(ArcMemo<()>),
}

/// A value that is set. It lives as long as the owner it was made under; setting it later does nothing.
pub struct Live<T>(At, PhantomData<fn() -> T>);

/// A value that is worked out anew when one of those it looked at has changed, and followed where it differs then.
pub struct Derived<T>(At, PhantomData<fn() -> T>);

impl<T> Clone for Live<T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for Live<T> {}
impl<T> Clone for Derived<T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for Derived<T> {}

impl<T: Send + Sync + 'static> Live<T> {
    /// A value to set.
    pub fn new(value: T) -> Self {
        Self(stands(Box::new(value)), PhantomData)
    }

    /// Follows it.
    pub fn track(self) {
        look(self.0, true, &mut |_: &Value| ());
    }

    /// Looks at it and follows it.
    pub fn with<U>(self, at: impl Fn(&T) -> U) -> U {
        seen(self.0, true, at)
    }

    /// Looks at it.
    pub fn with_untracked<U>(self, at: impl Fn(&T) -> U) -> U {
        seen(self.0, false, at)
    }

    /// Changes it; `None` where it is no more.
    pub fn try_update<U>(self, how: impl FnOnce(&mut T) -> U) -> Option<U> {
        let (mut how, mut done) = (Some(how), None);
        change(self.0, true, &mut |it: &mut Value| {
            if let (Some(it), Some(how)) = (it.downcast_mut(), how.take()) {
                done = Some(how(it));
            }
        });
        done
    }

    /// Changes it.
    pub fn update(self, how: impl FnOnce(&mut T)) {
        let _ = self.try_update(how);
    }

    /// Sets it. Whoever follows it is told, even if it was the same.
    pub fn set(self, value: T) {
        put(self.0, true, Box::new(value));
    }

    /// Sets it and tells nobody.
    pub fn set_untracked(self, value: T) {
        put(self.0, false, Box::new(value));
    }
}

impl<T: Clone + Send + Sync + 'static> Live<T> {
    /// The value; follows it.
    pub fn get(self) -> T {
        copied(self.0, true)
    }

    /// The value.
    pub fn get_untracked(self) -> T {
        copied(self.0, false)
    }
}

impl<T: PartialEq + Send + Sync + 'static> Derived<T> {
    /// Works a value out, when it is first looked at, from those it looks at and from what it was before.
    pub fn new(work_out: impl Fn(Option<&T>) -> T + Send + Sync + 'static) -> Self {
        Self::boxed(Box::new(work_out))
    }

    fn boxed(work_out: Box<dyn Anew<T>>) -> Self {
        let work_out = move |before: &Value| {
            let before = seen_as::<T>(before);
            let now = work_out.anew(before);
            (before != Some(&now)).then(|| -> Box<Value> { Box::new(now) })
        };
        Self(worked_out(Box::new(work_out)), PhantomData)
    }

    /// Looks at it and follows it.
    pub fn with<U>(self, at: impl Fn(&T) -> U) -> U {
        seen(self.0, true, at)
    }

    /// Looks at it.
    pub fn with_untracked<U>(self, at: impl Fn(&T) -> U) -> U {
        seen(self.0, false, at)
    }

    /// Looks at it, unless it is no more.
    pub fn try_with_untracked<U>(self, at: impl Fn(&T) -> U) -> Option<U> {
        maybe_seen(self.0, false, at)
    }
}

impl<T: Clone + Send + Sync + 'static> Derived<T> {
    /// The value; follows it.
    pub fn get(self) -> T {
        copied(self.0, true)
    }

    /// The value.
    pub fn get_untracked(self) -> T {
        copied(self.0, false)
    }
}

// What follows here is compiled once for each type and each look …

#[inline(never)]
fn seen_as<T: 'static>(value: &Value) -> Option<&T> {
    value.downcast_ref()
}

fn maybe_seen<T: 'static, U>(node: At, follow: bool, at: impl Fn(&T) -> U) -> Option<U> {
    let mut seen = None;
    look(node, follow, &mut |it: &Value| seen = seen_as(it).map(&at));
    seen
}

fn seen<T: 'static, U>(node: At, follow: bool, at: impl Fn(&T) -> U) -> U {
    maybe_seen(node, follow, at).unwrap_or_else(|| gone())
}

#[inline(never)]
fn copied<T: Clone + 'static>(node: At, follow: bool) -> T {
    seen(node, follow, T::clone)
}

// … and all that follows once.

fn gone() -> ! {
    // The page would stand there half alive: it stops as after a panic.
    super::browser::say(GONE);
    std::process::abort()
}

#[inline(never)]
fn node(turns: Turns, value: Stood) -> At {
    ArenaItem::new(Arc::new(Node { turns, value }))
}

#[inline(never)]
fn stands(value: Box<Value>) -> At {
    node(Turns::Set(ArcTrigger::new()), Arc::new(RwLock::new(value)))
}

fn worked_out(work_out: Box<dyn WorkOut>) -> At {
    let nothing: Box<Value> = Box::new(());
    let value: Stood = Arc::new(RwLock::new(nothing));
    let stood = value.clone();
    let memo = ArcMemo::new_owning(move |_| {
        // Let go before it is put.
        let now = stood.read().ok().and_then(|before| work_out.differs(&**before));
        let differs = now.is_some();
        if let (Some(now), Ok(mut stood)) = (now, stood.write()) {
            *stood = now;
        }
        ((), differs)
    });
    node(Turns::WorkedOut(memo), value)
}

#[inline(never)]
fn look(node: At, follow: bool, at: &mut dyn Look) {
    let Some(node) = node.try_get_value() else { return };
    match &node.turns {
        Turns::Set(trigger) if follow => trigger.track(),
        Turns::Set(_) => {}
        Turns::WorkedOut(memo) => {
            if follow {
                memo.track();
            }
            memo.update_if_necessary();
        }
    }
    if let Ok(value) = node.value.read() {
        at.look(&**value);
    }
}

#[inline(never)]
fn change(node: At, tell: bool, how: &mut dyn Change) {
    let Some(node) = node.try_get_value() else { return };
    if let Ok(mut value) = node.value.write() {
        how.change(&mut **value);
    }
    if let (true, Turns::Set(trigger)) = (tell, &node.turns) {
        trigger.notify();
    }
}

#[inline(never)]
fn put(node: At, tell: bool, new: Box<Value>) {
    let Some(node) = node.try_get_value() else { return };
    let before = node.value.write().map(|mut it| std::mem::replace(&mut *it, new));
    drop(before);
    if let (true, Turns::Set(trigger)) = (tell, &node.turns) {
        trigger.notify();
    }
}

/// What was typed for a fact. It belongs to its sheet and lives as long.
#[derive(Clone, Default)]
pub struct Typed(Arc<(ArcTrigger, RwLock<Entry>)>);

impl Typed {
    /// The entry; follows it.
    pub fn get(&self) -> Entry {
        self.0.0.track();
        self.get_untracked()
    }

    /// The entry.
    #[inline(never)]
    pub fn get_untracked(&self) -> Entry {
        self.0.1.read().map(|it| it.clone()).unwrap_or_default()
    }

    /// Whether it is this one.
    pub fn is(&self, entry: &Entry) -> bool {
        self.0.1.read().is_ok_and(|it| *it == *entry)
    }

    /// Whether it is the same fact of the same sheet.
    pub fn same(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }

    /// Sets it. Whoever follows it is told, even if it was the same.
    #[inline(never)]
    pub fn set(&self, entry: Entry) {
        if let Ok(mut it) = self.0.1.write() {
            *it = entry;
        }
        self.0.0.notify();
    }
}
