//! What the page asks of the browser: today, language, address, timers.

use super::boxed::Does;
use crate::units::UnitSet;
use chrono::NaiveDate;
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};

/// Today on the owner's calendar.
pub fn today() -> NaiveDate {
    let now = js_sys::Date::new_0();
    let day =
        NaiveDate::from_ymd_opt(now.get_full_year() as i32, now.get_month() + 1, now.get_date());
    day.unwrap_or_default()
}

/// Milliseconds since 1970.
pub fn now() -> u64 {
    js_sys::Date::now() as u64
}

/// Letters that no other tab or browser draws.
pub fn new_key() -> String {
    let random = (js_sys::Math::random() * 1e9) as u64;
    format!("{:x}{random:x}", now())
}

/// A number that no other tab or browser draws.
pub fn new_number() -> u32 {
    1 + (js_sys::Math::random() * 4e9) as u32
}

/// A number that tells the few bikes of one person apart; small, as it travels in links.
pub fn new_small_number() -> u32 {
    1 + (js_sys::Math::random() * 8191.0) as u32
}

/// The unit set that goes with the browser's language: US where that is American.
pub fn usual_units() -> UnitSet {
    let language = window().navigator().language().unwrap_or_default();
    if matches!(language.as_str(), "en-US" | "es-US" | "en-LR") {
        UnitSet::Us
    } else {
        UnitSet::Metric
    }
}

/// The part of the address from `#` on.
pub fn fragment() -> String {
    window().location().hash().unwrap_or_default()
}

/// The address without its fragment.
pub fn address() -> String {
    let whole = window().location().href().unwrap_or_default();
    whole.split('#').next().unwrap_or_default().to_owned()
}

/// Opens another part of the page, as a link would.
pub fn go(fragment: &str) {
    // Refused only where the address is no address; ours are.
    let _ = window().location().set_hash(fragment);
}

/// Puts another fragment in the address without a step in the history.
pub fn replace_fragment(fragment: &str) {
    if let Ok(history) = window().history() {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&format!("#{fragment}")));
    }
}

/// Whether the owner was further down on the page before it was loaded anew: boot.js keeps the place.
pub fn was_further_down() -> bool {
    let place = window().history().and_then(|it| it.state());
    place.is_ok_and(|it| it.as_f64().is_some_and(|it| it > 0.0))
}

/// Another view begins at its head.
pub fn scroll_to_top() {
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Calls `act` whenever the fragment changes: a link pasted into the open page reloads nothing.
pub fn on_hash_change(act: impl Fn() + 'static) {
    listen(&window(), "hashchange", Box::new(act));
}

/// Whether the page is too narrow for two columns, as in the style sheet.
pub fn is_narrow() -> bool {
    window().match_media("(max-width: 44rem)").ok().flatten().is_some_and(|it| it.matches())
}

/// Calls `act` when the window gets another size.
pub fn on_resize(act: impl Fn() + 'static) {
    listen(&window(), "resize", Box::new(act));
}

/// Calls `act` when another tab has written, with the record's key and its text: without a key where it has emptied the store,
/// without a text where the record is gone.
pub fn on_storage(act: impl Fn(Option<String>, Option<String>) + 'static) {
    let told = Closure::<dyn Fn(web_sys::Event)>::new(move |event: web_sys::Event| {
        let [key, text] = ["key", "newValue"]
            .map(|it| js_sys::Reflect::get(&event, &it.into()).ok().and_then(|it| it.as_string()));
        act(key, text);
    });
    let _ = window().add_event_listener_with_callback("storage", told.as_ref().unchecked_ref());
    // Listens as long as the page lives.
    told.forget();
}

/// Does something after a while.
pub fn after(pause: std::time::Duration, act: impl FnMut() + 'static) {
    boxed_after(pause, Box::new(act));
}

fn boxed_after(pause: std::time::Duration, mut act: Box<dyn Does>) {
    set_timeout(move || act.does(), pause);
}

/// Does something once what stands has been seen: behind the next frame, or after a second, as a page out of sight has no frames.
pub fn after_frame(act: impl FnOnce() + 'static) {
    let once = Rc::new(Cell::new(Some(act)));
    let late = once.clone();
    let soon = move || once.take().into_iter().for_each(|act| act());
    request_animation_frame(move || set_timeout(soon, std::time::Duration::ZERO));
    let late = move || late.take().into_iter().for_each(|act| act());
    set_timeout(late, std::time::Duration::from_secs(1));
}

/// A tab that sleeps while it has its turn keeps the others waiting no longer than this.
const LONGEST_TURN: std::time::Duration = std::time::Duration::from_secs(2);

/// Milliseconds after which other tabs read what was written: each has a copy of the store, which follows a moment later.
const SEEN_BY_ALL: i32 = 100;

/// Calls `act` when no other tab of ours is at it (Web Locks); at once where the browser knows no turns, and out of sight, where
/// nothing is typed and timers sleep.
pub fn in_turn(mut act: Box<dyn Does>) {
    let turns = js_sys::Reflect::get(&window().navigator(), &"locks".into()).unwrap_or_default();
    let ask = js_sys::Reflect::get(&turns, &"request".into()).unwrap_or_default();
    let ask = ask.dyn_ref::<js_sys::Function>();
    let Some(ask) = ask.filter(|_| !document().hidden()) else { return act.does() };
    let once = Rc::new(Cell::new(Some(act)));
    let late = once.clone();
    let mine = Closure::once_into_js(move || {
        once.take().into_iter().for_each(|mut act| act.does());
        js_sys::Promise::new(&mut |done, _| {
            let pause = SEEN_BY_ALL;
            let _ = window().set_timeout_with_callback_and_timeout_and_arguments_0(&done, pause);
        })
    });
    let _ = ask.call2(&turns, &"torpor.store".into(), &mine);
    after(LONGEST_TURN, move || late.take().into_iter().for_each(|mut act| act.does()));
}

/// Tells boot.js something.
pub fn tell(what: &str) {
    if let Ok(event) = web_sys::Event::new(what) {
        let _ = document().dispatch_event(&event);
    }
}

/// Loads the page anew, with the newest build that there is: boot.js knows how.
pub fn reload() {
    if let Some(button) = document().get_element_by_id("newer-reload") {
        call(&button, "click");
    }
}

/// Calls `act` when the focus leaves something.
pub fn on_leave(act: impl Fn() + 'static) {
    listen(&document(), "focusout", Box::new(act));
}

/// Calls `act` when the page comes into sight again.
pub fn on_show(act: impl Fn() + 'static) {
    on_visibility(web_sys::VisibilityState::Visible, Box::new(act));
}

/// Calls `act` when the page goes out of sight; that may be the last thing it ever does.
pub fn on_hide(act: impl Fn() + Clone + 'static) {
    let hidden = act.clone();
    on_visibility(web_sys::VisibilityState::Hidden, Box::new(hidden));
    listen(&window(), "pagehide", Box::new(act));
}

/// Calls `before` when the page is about to be printed, and `after` it was.
pub fn on_print(before: impl Fn() + 'static, after: impl Fn() + 'static) {
    listen(&window(), "beforeprint", Box::new(before));
    listen(&window(), "afterprint", Box::new(after));
}

/// Opens the browser's window for printing.
pub fn print() {
    // Refused only where the page may open no windows at all.
    let _ = window().print();
}

fn on_visibility(state: web_sys::VisibilityState, act: Box<dyn Fn()>) {
    let turned = move || {
        if document().visibility_state() == state {
            act();
        }
    };
    listen(&document(), "visibilitychange", Box::new(turned));
}

fn listen(target: &web_sys::EventTarget, event: &str, act: Box<dyn Fn()>) {
    let act = Closure::wrap(act);
    if target.add_event_listener_with_callback(event, act.as_ref().unchecked_ref()).is_ok() {
        // Listens as long as the page lives.
        act.forget();
    }
}

/// How far across an element a pointer is, from 0 at its left to 1.
pub fn share_across(element: &web_sys::Element, event: &web_sys::Event) -> Option<f64> {
    let at = f64::from(event.dyn_ref::<web_sys::MouseEvent>()?.client_x());
    let frame = element.get_bounding_client_rect();
    Some((at - frame.left()) / frame.width())
}

/// Selects a field that holds `text` and copies it; where the page may not, the owner still can.
pub fn copy(field: &web_sys::Element, text: &str) {
    select(field);
    // Missing where the page is not served securely.
    let clipboard = js_sys::Reflect::get(&window().navigator(), &"clipboard".into());
    if clipboard.is_ok_and(|it| it.is_object()) {
        let _ = window().navigator().clipboard().write_text(text);
    }
}

/// Reads the file that was chosen in an input of that sort, and lets it be chosen again; `None` where it is longer than
/// `longest` bytes, or cannot be read.
pub fn read_file(
    input: &web_sys::Element,
    longest: usize,
    then: impl Fn(Option<Vec<u8>>) + 'static,
) {
    let Some(input) = input.dyn_ref::<web_sys::HtmlInputElement>() else { return };
    let Some(file) = input.files().and_then(|it| it.get(0)) else { return };
    if file.size() > longest as f64 {
        then(None);
    } else {
        let then = Rc::new(then);
        let other = then.clone();
        let read = Closure::once(move |bytes: JsValue| {
            then(Some(js_sys::Uint8Array::new(&bytes).to_vec()));
        });
        let failed = Closure::once(move |_: JsValue| other(None));
        let _ = file.array_buffer().then2(&read, &failed);
        // They live until the file is read.
        read.forget();
        failed.forget();
    }
    input.set_value("");
}

/// Hands the owner a file.
pub fn save(name: &str, kind: &str, text: &str) {
    let options = web_sys::BlobPropertyBag::new();
    options.set_type(kind);
    let parts = js_sys::Array::of1(&text.into());
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options);
    let address = blob.and_then(|it| web_sys::Url::create_object_url_with_blob(&it));
    if let Ok(address) = address {
        let link = super::element::el("a").set("href", &address).set("download", name).element();
        call(&link, "click");
        // The browser may still be asking where to put it.
        let forget = move || drop(web_sys::Url::revoke_object_url(&address));
        after(std::time::Duration::from_secs(60), forget);
    }
}

/// Puts the owner's keys at an element as soon as it stands on the page, unless they went on to something else meanwhile.
pub fn focus_soon(element: &super::element::El) {
    let element = element.element();
    let before = document().active_element();
    let focus = move || {
        let now = document().active_element();
        if now == before || now.is_none_or(|it| it.tag_name() == "BODY") {
            call(&element, "focus");
        }
    };
    after(std::time::Duration::ZERO, focus);
}

/// Brings what has this id into sight, once it stands there.
pub fn show(id: &str) {
    let id = id.to_owned();
    let scroll = move || {
        if let Some(it) = document().get_element_by_id(&id) {
            it.scroll_into_view();
        }
    };
    after(std::time::Duration::ZERO, scroll);
}

/// Whether the owner is at something inside of an element.
pub fn holds_focus(element: &web_sys::Element) -> bool {
    element.contains(document().active_element().as_deref())
}

/// Selects all that an entry holds.
pub fn select(entry: &web_sys::Element) {
    call(entry, "select");
}

/// Opens the browser's own calendar at an input, which is of type date from then on: a browser makes much of one, and most
/// are never opened.
pub fn show_picker(input: &web_sys::Element) {
    let _ = input.set_attribute("type", "date");
    // It opens at a box, which it has only now.
    let _ = input.get_bounding_client_rect();
    call(input, "showPicker");
}

/// Whether a key that was pressed is the one that ends an entry.
pub fn is_enter(event: &web_sys::Event) -> bool {
    let key = js_sys::Reflect::get(event, &"key".into());
    key.is_ok_and(|it| it == "Enter")
}

/// Calls a method that not every browser has.
fn call(element: &web_sys::Element, method: &str) {
    let method = js_sys::Reflect::get(element, &method.into());
    if let Ok(method) = method.and_then(|it| it.dyn_into::<js_sys::Function>()) {
        let _ = method.call0(element);
    }
}

/// Puts the page in the place of the shell that stood there while it loaded.
pub fn replace_shell(page: &web_sys::Element) {
    if let Some(shell) = document().get_element_by_id("shell") {
        shell.remove();
    }
    if let Some(body) = document().body() {
        let _ = body.append_child(page);
    }
}

/// Says in the console why the page stops. The trap that follows brings the rescue panel (`boot.js`), which needs none of
/// this; the built page is silent here, too (`xtask/src/hollow.rs`).
pub fn say(why: &str) {
    web_sys::console::error_1(&why.into());
}
