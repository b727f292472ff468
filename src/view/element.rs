//! Elements of the page, built by plain calls, and parts of them that follow signals.
//!
//! Leptos brings memos, triggers and owners; elements are made here. Its typed templates compile every element,
//! attribute and closure anew: they made 53 kB of the page's first wasm on the wire, where these calls make 27 (brotli,
//! measured). Every closure is boxed at once, so that what stands behind it is compiled once.

use super::boxed::{Does, Gives, Takes};
use super::browser::holds_focus;
use super::follow::follow;
use super::held::hold;
use super::live::Derived;
use leptos::prelude::*;
use leptos::reactive::owner::Owner;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue, closure::Closure};
use web_sys::{Element, Event, Node, Text};

/// An element, with whatever it has been given so far. Effects and listeners live as long as the owner they were made
/// under.
pub struct El(Element);

/// An HTML element.
pub fn el(tag: &str) -> El {
    made(document().create_element(tag))
}

/// An SVG element.
pub fn svg(tag: &str) -> El {
    made(document().create_element_ns(Some("http://www.w3.org/2000/svg"), tag))
}

fn made(element: Result<Element, JsValue>) -> El {
    match element {
        Ok(element) => El(element),
        // Only for a name that is no name, and ours are.
        Err(_) => wasm_bindgen::throw_str("no such element"),
    }
}

impl El {
    /// The element itself.
    pub fn element(&self) -> Element {
        self.0.clone()
    }

    /// Sets an attribute.
    pub fn set(self, name: &str, value: &str) -> Self {
        // Refused only for a name that is no name.
        let _ = self.0.set_attribute(name, value);
        self
    }

    /// Sets the class.
    pub fn class(self, class: &str) -> Self {
        self.set("class", class)
    }

    /// Adds a text.
    pub fn text(self, text: &str) -> Self {
        self.append(&document().create_text_node(text));
        self
    }

    /// Adds an element.
    pub fn child(self, child: El) -> Self {
        self.append(&child.0);
        self
    }

    /// Adds an element where there is one.
    pub fn maybe(self, child: Option<El>) -> Self {
        match child {
            Some(child) => self.child(child),
            None => self,
        }
    }

    /// Adds elements.
    pub fn children(self, children: impl IntoIterator<Item = El>) -> Self {
        children.into_iter().fold(self, El::child)
    }

    fn append(&self, node: &Node) {
        // Refused only where a node would hold itself.
        let _ = self.0.append_child(node);
    }

    /// Adds a text that whoever holds it may change.
    pub fn words(self) -> (Self, Words) {
        let node = document().create_text_node("");
        self.append(&node);
        (self, Words(Where::Text(node), RefCell::default()))
    }

    /// The same element once more.
    pub fn same(&self) -> Self {
        El(self.0.clone())
    }

    /// Does something now and whenever a signal that it read changes, as long as its owner lives.
    pub fn follow(self, act: impl Fn() + 'static) -> Self {
        follow(Box::new(act));
        self
    }

    /// Adds a text that follows signals.
    pub fn live_text(self, text: impl Fn() -> String + 'static) -> Self {
        self.text_of(Box::new(text))
    }

    fn text_of(self, text: Box<dyn Gives<String>>) -> Self {
        let (this, words) = self.words();
        follow(Box::new(move || words.say(&text.give())));
        this
    }

    /// Sets an attribute that follows signals.
    pub fn live(self, name: &'static str, value: impl Fn() -> String + 'static) -> Self {
        self.attribute_of(name, Box::new(value))
    }

    fn attribute_of(self, name: &'static str, value: Box<dyn Gives<String>>) -> Self {
        let attribute = self.attribute(name);
        follow(Box::new(move || attribute.say(&value.give())));
        self
    }

    /// An attribute that whoever holds it may change; none as long as it is empty.
    pub fn attribute(&self, name: &'static str) -> Words {
        Words(Where::Attribute(self.element(), name), RefCell::default())
    }

    /// Sets the text of an entry, which follows signals. Set only where it differs, so that a cursor stays where it is.
    pub fn live_value(self, value: impl Fn() -> String + 'static) -> Self {
        self.entry_of(Box::new(value))
    }

    fn entry_of(self, value: Box<dyn Gives<String>>) -> Self {
        let element = self.element();
        follow(Box::new(move || {
            let text = value.give();
            if value_of(&element) != text {
                set_value(&element, &text);
            }
        }));
        self
    }

    /// Sets the text of an entry that is typed in, which follows signals, and takes what is typed. While `other` holds, what comes is
    /// another tab's: under the owner's keys it waits until they leave, of which `other` tells. `take` is told whether they typed
    /// over what waits.
    pub fn live_typed(
        self,
        text: impl Fn() -> String + 'static,
        other: impl Fn() -> bool + 'static,
        take: impl FnMut(String, bool) + 'static,
    ) -> Self {
        self.typed_in(Box::new(text), Box::new(other), Box::new(take))
    }

    fn typed_in(
        self,
        text: Box<dyn Gives<String>>,
        other: Box<dyn Gives<bool>>,
        mut take: Box<dyn FnMut(String, bool)>,
    ) -> Self {
        let waits = Rc::new(Cell::new(false));
        let typed = waits.clone();
        let [seen, taken] = [(); 2].map(|()| self.element());
        follow(Box::new(move || {
            let text = text.give();
            let differs = value_of(&seen) != text;
            waits.set(differs && (other.give() || waits.get()) && holds_focus(&seen));
            if differs && !waits.get() {
                set_value(&seen, &text);
            }
        }));
        self.on("input", move |_| take(value_of(&taken), typed.replace(false)))
    }

    /// Sets a property that holds or does not, such as "checked"; follows signals.
    pub fn live_so(self, property: &'static str, so: impl Fn() -> bool + 'static) -> Self {
        self.property_of(property, Box::new(so))
    }

    fn property_of(self, property: &'static str, so: Box<dyn Gives<bool>>) -> Self {
        let element = self.element();
        follow(Box::new(move || {
            let _ = js_sys::Reflect::set(&element, &property.into(), &so.give().into());
        }));
        self
    }

    /// Makes all that is inside follow signals: laid out anew when they change.
    pub fn part(self, inside: impl Fn() -> Vec<El> + 'static) -> Self {
        self.inside_of(Box::new(inside))
    }

    fn inside_of(self, inside: Box<dyn Gives<Vec<El>>>) -> Self {
        let element = self.element();
        follow(Box::new(move || {
            let inside = inside.give();
            element.set_text_content(None);
            for child in inside {
                let _ = element.append_child(&child.0);
            }
        }));
        self
    }

    /// One child for each key; those that stay are not touched, so that nobody's typing is interrupted.
    pub fn each(
        self,
        keys: impl Fn() -> Vec<usize> + 'static,
        child: impl Fn(usize) -> El + 'static,
    ) -> Self {
        self.each_of(Box::new(keys), Box::new(child))
    }

    fn each_of(self, keys: Box<dyn Gives<Vec<usize>>>, child: Box<dyn Fn(usize) -> El>) -> Self {
        let element = self.element();
        let here = Owner::current().unwrap_or_default();
        let rows = RefCell::new(Vec::<Row>::new());
        follow(Box::new(move || {
            let keys = keys.give();
            let mut rows = rows.borrow_mut();
            rows.retain(|row| keys.contains(&row.key) || row.remove());
            // Rows before `at` are in place already, so `at` is never past the end.
            for (at, key) in keys.into_iter().enumerate() {
                let row = match rows.iter().position(|it| it.key == key) {
                    Some(found) => rows.remove(found),
                    None => {
                        // Under the list's owner, not under this effect's: rows outlive the effect's next run.
                        let owner = here.child();
                        let element = owner.with(|| untrack(|| child(key))).0;
                        Row { key, element, owner }
                    }
                };
                let there = element.children().item(at as u32);
                if there.as_ref() != Some(&row.element) {
                    let _ = element.insert_before(&row.element, there.as_deref());
                }
                rows.insert(at, row);
            }
        }));
        self
    }

    /// Listens to an event.
    pub fn on(self, event: &str, does: impl FnMut(Event) + 'static) -> Self {
        listen(&self.0, event, Box::new(does));
        self
    }

    /// Does something when it is pressed.
    pub fn press(self, does: impl FnMut() + 'static) -> Self {
        self.pressed(Box::new(does))
    }

    /// The same, of what is in a box.
    pub fn pressed(self, mut does: Box<dyn Does>) -> Self {
        self.on("click", move |_| does.does())
    }

    /// Takes the text that an entry has after an event.
    pub fn take(self, event: &str, take: impl FnMut(String) + 'static) -> Self {
        self.taken(event, Box::new(take))
    }

    /// The text that an entry or a list of choices has now.
    pub fn value(&self) -> String {
        value_of(&self.0)
    }

    fn taken(self, event: &str, mut take: Box<dyn Takes<String>>) -> Self {
        let element = self.element();
        self.on(event, move |_| take.take(value_of(&element)))
    }
}

/// A text on the page or an attribute, and what it says now: asking the page itself is slow.
pub struct Words(Where, RefCell<String>);

enum Where {
    Text(Text),
    Attribute(Element, &'static str),
}

impl Words {
    /// Sets it, where it differs.
    pub fn say(&self, text: &str) {
        let mut said = self.1.borrow_mut();
        if *said != text {
            match &self.0 {
                Where::Text(node) => node.set_data(text),
                // Refused only for a name that is no name.
                Where::Attribute(element, name) => drop(element.set_attribute(name, text)),
            }
            text.clone_into(&mut said);
        }
    }
}

struct Row {
    key: usize,
    element: Element,
    owner: Owner,
}

impl Row {
    /// Takes it off the page, with all that it listens to; false, as nothing of it stays.
    fn remove(&self) -> bool {
        // What is being typed in it is told on its way out, so its listeners go last.
        self.element.remove();
        self.owner.cleanup();
        false
    }
}

fn value_of(element: &Element) -> String {
    js_sys::Reflect::get(element, &"value".into())
        .ok()
        .and_then(|it| it.as_string())
        .unwrap_or_default()
}

fn set_value(element: &Element, text: &str) {
    let _ = js_sys::Reflect::set(element, &"value".into(), &text.into());
}

/// Listens as long as its owner lives.
fn listen(element: &Element, event: &str, mut does: Box<dyn Takes<Event>>) {
    let does = Closure::<dyn FnMut(Event)>::new(move |event| does.take(event));
    let _ = element.add_event_listener_with_callback(event, does.as_ref().unchecked_ref());
    hold(Rc::new(does));
}

/// A paragraph.
pub fn paragraph(class: &str, text: &str) -> El {
    el("p").class(class).text(text)
}

/// A text of its own.
pub fn span(class: &str, text: &str) -> El {
    el("span").class(class).text(text)
}

/// A button that reads as text or, with class "do", as something lasting.
pub fn button(class: &str, name: &str, does: impl FnMut() + 'static) -> El {
    pressed(class, name, Box::new(does))
}

fn pressed(class: &str, name: &str, does: Box<dyn Does>) -> El {
    el("button").set("type", "button").class(class).text(name).pressed(does)
}

/// A part that stands only while `so` holds; laid out anew only when it turns.
pub fn while_so(
    tag: &str,
    so: impl Fn() -> bool + Send + Sync + 'static,
    inside: impl Fn() -> Vec<El> + 'static,
) -> El {
    while_derived(tag, Derived::new(move |_| so()), Box::new(inside))
}

fn while_derived(tag: &str, so: Derived<bool>, inside: Box<dyn Gives<Vec<El>>>) -> El {
    el(tag).part(move || if so.get() { inside.give() } else { Vec::new() })
}
