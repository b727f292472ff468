//! A screen that stays on while the bench view is looked at: the Screen Wake Lock API, where the browser has it. What it
//! refuses (a low battery, an old browser) is left at that: the screen goes dark as it always did.

use super::browser;
use super::follow::follow;
use super::live::Derived;
use js_sys::{Function, Promise, Reflect};
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};

/// Keeps the screen on while `wanted` holds and the page is in sight. Out of sight every lock ends: it is asked for again.
pub fn keep_awake(wanted: Derived<bool>) {
    let release = Closure::<dyn FnMut(JsValue)>::new(|lock| browser::call(&lock, "release"));
    // A refusal that nobody takes would stand in the console.
    let nothing = Closure::<dyn FnMut(JsValue)>::new(|_| ());
    let asked = RefCell::new(None::<Promise>);
    let turn = Rc::new(move |on: bool| {
        let now = if on && wanted.get_untracked() { request() } else { None };
        let _ = now.as_ref().map(|it| it.then2(&nothing, &nothing));
        // It may be given later than it is let go.
        let _ = asked.replace(now).map(|it| it.then2(&release, &nothing));
    });
    let [shown, hidden] = [(); 2].map(|()| turn.clone());
    browser::on_show(move || shown(true));
    browser::on_hide(move || hidden(false));
    follow(Box::new(move || turn(wanted.get())));
}

fn request() -> Option<Promise> {
    let navigator = window().navigator();
    let locks = Reflect::get(&navigator, &"wakeLock".into()).ok()?;
    let request: Function = Reflect::get(&locks, &"request".into()).ok()?.dyn_into().ok()?;
    request.call1(&locks, &"screen".into()).ok()?.dyn_into().ok()
}
