//! Parts of the page that follow signals, each as one type.
//!
//! Leptos compiles an element, an attribute and an effect anew for every type of closure it is given. Given the same
//! few types everywhere, it compiles them once: this file is worth a third of the page's bytes.

use leptos::prelude::*;

/// Text that follows signals.
pub fn text(text: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Signal::derive(text)
}

/// A yes or no that follows signals.
pub fn flag(flag: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    Signal::derive(flag)
}

/// Text that is computed again only when it differs.
pub fn steady_text(text: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Memo::new(move |_| text()).into()
}

/// A yes or no that is passed on only when it turns.
pub fn steady_flag(flag: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    Memo::new(move |_| flag()).into()
}

/// A part of the page that is laid out anew when its signals change.
pub type Part = Box<dyn FnMut() -> AnyView + Send>;

/// Lays a part out anew when its signals change.
pub fn part(view: impl FnMut() -> AnyView + Send + 'static) -> Part {
    Box::new(view)
}

/// A part that stands only while `flag` holds.
pub fn while_so(flag: Signal<bool>, view: impl Fn() -> AnyView + Send + 'static) -> Part {
    part(move || if flag.get() { view() } else { nothing() })
}

/// No part at all.
pub fn nothing() -> AnyView {
    ().into_any()
}

/// What a button does.
pub fn act(mut act: impl FnMut() + 'static) -> Box<dyn FnMut(web_sys::MouseEvent)> {
    Box::new(move |_| act())
}

/// What an entry does with its new text.
pub fn typed(mut typed: impl FnMut(String) + 'static) -> Box<dyn FnMut(web_sys::Event)> {
    Box::new(move |event| typed(event_target_value(&event)))
}

/// What a tick box does.
pub fn ticked(mut ticked: impl FnMut(bool) + 'static) -> Box<dyn FnMut(web_sys::Event)> {
    Box::new(move |event| ticked(event_target_checked(&event)))
}

/// A paragraph of text.
pub fn paragraph(class: &'static str, text: String) -> AnyView {
    view! { <p class=class>{text}</p> }.into_any()
}

/// A button that reads as text or, with class "do", as something lasting.
pub fn button(class: &'static str, name: &'static str, does: impl FnMut() + 'static) -> AnyView {
    view! { <button type="button" class=class on:click=act(does)>{name}</button> }.into_any()
}

/// One child for each key; those that stay are not touched.
pub fn each(
    keys: Signal<Vec<usize>>,
    child: impl Fn(usize) -> AnyView + Send + Sync + 'static,
) -> AnyView {
    let child: std::sync::Arc<dyn Fn(usize) -> AnyView + Send + Sync> = std::sync::Arc::new(child);
    view! { <For each=move || keys.get() key=|key| *key children=move |key| child(key) /> }
        .into_any()
}
