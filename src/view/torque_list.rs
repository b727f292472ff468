//! The torque list: what to set for each fastener, one tap from its calculator.
//!
//! A letter typed at a wrench changes every row, and there may be two hundred of them. So a row has no effects of its own:
//! one effect reads what the fasteners ask, when one of them changes; another works out all rows when a wrench does, and
//! writes the texts that differ.

use super::element::{El, Words, button, el, span, while_so};
use super::line::{Told, fold_button};
use super::live::{Derived, Live};
use super::page::{Desk, Page};
use super::{browser, torques};
use crate::entry::text::joined;
use crate::facts::{self, Facts};
use crate::plan::{self, Asked, Line, Row, address::Address};
use crate::show::{self, Figure};
use crate::units::UnitSet;
use crate::words::page as words;
use leptos::prelude::*;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::sync::Arc;
use web_sys::Element;

/// So many rows are laid out only where they are in sight.
const LONG: usize = 30;

/// Where the list begins.
pub const TITLE: &str = "list-title";

/// The texts of a row that follow its fastener and the wrenches.
struct Texts {
    key: usize,
    asked: Derived<Arc<Asked>>,
    said: Derived<String>,
    name: Live<String>,
    label: Words,
    data: Element,
    number: Words,
    unit: Words,
    range: Words,
    plain: Words,
    figure_asked: Words,
    with: Words,
    then: Words,
    care: Words,
    /// What the fastener asks now.
    now_asked: RefCell<Option<Arc<Asked>>>,
    /// What stands there now.
    shown: RefCell<Option<Row>>,
}

/// All kept fasteners, where there are any.
pub fn list(page: Page) -> El {
    let some = move || page.fasteners.with(|it| !it.is_empty());
    while_so("div", some, move || vec![rows(page)])
}

fn rows(page: Page) -> El {
    let all: Rc<RefCell<Vec<Texts>>> = Rc::default();
    // Whichever of the list's effects runs first, new rows are read after they were made.
    let count = Live::new(0_usize);
    let made = all.clone();
    // Only the rows that the address can mean, not one that later takes that place.
    let first = Rc::new(Cell::new(true));
    let at_first = first.clone();
    let long = move || page.fasteners.with(|it| it.len() > LONG);
    let class = move || if long() { "rows fasteners long" } else { "rows fasteners" }.to_owned();
    let list = el("ol").live("class", class).each(
        move || page.fasteners.keys(),
        move |key| {
            count.update(|it| *it += 1);
            row(page, key, at_first.get(), &mut made.borrow_mut())
        },
    );
    let of_fasteners = all.clone();
    let list = list.follow(move || {
        count.track();
        let keys = page.fasteners.keys();
        let mut all = of_fasteners.borrow_mut();
        all.retain(|it| keys.contains(&it.key));
        let (drawer, set) = untrack(|| (page.drawer.get(), page.set.get()));
        for texts in all.iter() {
            let place = keys.iter().position(|it| *it == texts.key).unwrap_or(0);
            if texts.read(place) {
                texts.work_out(&drawer, set);
            }
        }
        first.set(all.is_empty());
    });
    let list = list.follow(move || {
        let (drawer, set) = (page.drawer.get(), page.set.get());
        for texts in all.borrow().iter() {
            texts.work_out(&drawer, set);
        }
    });
    el("section")
        .set("aria-labelledby", TITLE)
        .child(el("h4").class("cap").set("id", TITLE).text(words::KEPT_FASTENERS))
        .child(list)
}

impl Texts {
    /// Follows the fastener, whose place in the list is `place`; whether it asks something else than before.
    fn read(&self, place: usize) -> bool {
        let asked = self.asked.get();
        self.said.with(|it| self.figure_asked.say(it));
        let name = asked.name.clone().unwrap_or_else(|| words::fastener(place + 1));
        if self.name.with_untracked(|it| *it != name) {
            self.name.set(name);
        }
        let before = self.now_asked.replace(Some(asked.clone()));
        before.is_none_or(|it| !Arc::ptr_eq(&it, &asked))
    }

    /// Works the row out with these wrenches.
    fn work_out(&self, drawer: &[plan::Held], set: UnitSet) {
        let Some(asked) = self.now_asked.borrow().clone() else { return };
        let row = plan::row(&asked, drawer, set);
        let mut shown = self.shown.borrow_mut();
        if shown.as_ref() != Some(&row) {
            self.write(&row);
            *shown = Some(row);
        }
    }

    fn write(&self, row: &Row) {
        let (mut number, mut unit, mut plain, mut data, mut range) =
            ("", "", "", "", String::new());
        let needs;
        match &row.figure {
            Figure::Number { text, unit: symbol, data: exact, range: ends } => {
                (number, unit, data) = (text, symbol, exact);
                if let Some([low, high]) = ends {
                    range = format!(" {low}{}{high}\u{a0}{symbol}", words::TO);
                }
            }
            Figure::Words(text) | Figure::Day { text, .. } => plain = text,
            Figure::Lacks(lacks) => {
                needs = show::needs(lacks);
                plain = &needs;
            }
        }
        self.label.say(row.label);
        let _ = self.data.set_attribute("value", data);
        self.number.say(number);
        self.unit.say(&if unit.is_empty() { String::new() } else { format!("\u{a0}{unit}") });
        self.range.say(&range);
        self.plain.say(plain);
        self.with.say(&row.with);
        self.then.say(&row.then);
        self.care.say(row.care);
    }
}

fn row(page: Page, key: usize, by_address: bool, all: &mut Vec<Texts>) -> El {
    let Some(sheet) = page.fasteners.sheet(key) else { return el("li") };
    let desk = Desk::of_item(page, sheet);
    let [asked, said] = std::array::from_fn(|_| desk.clone());
    let asked = Derived::new(move |_| Arc::new(Asked::of(&asked)));
    let said = Derived::new(move |_| {
        let entry = said.entry(facts::TORQUE.id());
        facts::as_read(&facts::TORQUE.about, &entry)
    });
    let name = Live::new(String::new());
    let number = page.fasteners.place(key).map(|it| it + 1);
    let meant = || match page.address.get_untracked() {
        Address::Sheet(_, Some(step), subject) => {
            step.sum == Some(Line::Torques) && subject == number
        }
        _ => false,
    };
    let open = Live::new(by_address && meant());
    let count = move |open: bool| {
        page.open_rows.update(|it| *it = if open { *it + 1 } else { it.saturating_sub(1) });
    };
    if open.get_untracked() {
        count(true);
    }
    on_cleanup(move || {
        if open.get_untracked() {
            count(false);
        }
    });
    let turn = move || {
        open.update(|it| *it = !*it);
        count(open.get_untracked());
    };
    let scope = format!("fastener-{key}");
    let title = format!("{scope}-title");
    let id = format!("{scope}-answer-0");
    let fold = fold_button(&title, move || open.get(), turn).live_text(move || name.get());
    let (cap, label) = el("span").class("cap").set("id", &id).words();
    let (data, number) = el("data").class("n").words();
    let data_element = data.element();
    let (unit_text, unit) = el("span").class("u").words();
    let (range_text, range) = el("small").class("range").words();
    let (plain_text, plain) = el("span").class("care").words();
    let output = el("output")
        .set("aria-live", "off")
        .set("aria-labelledby", &id)
        .children([data, unit_text, range_text, plain_text]);
    let (asks, figure_asked) = el("small").class("why").words();
    let (with_text, with) = el("small").class("why").words();
    let (then_text, then) = el("small").class("then").words();
    let (care_text, care) = el("small").class("care").words();
    let mind = move || asked.with(|it| joined(&it.mind, ", "));
    all.push(Texts {
        key,
        asked,
        said,
        name,
        label,
        data: data_element,
        number,
        unit,
        range,
        plain,
        figure_asked,
        with,
        then,
        care,
        now_asked: RefCell::default(),
        shown: RefCell::default(),
    });
    let what = el("div")
        .class("what")
        .child(el("h5").child(fold))
        .child(asks)
        .child(el("small").class("why mind").live_text(mind));
    let figure = el("div").class("fig").children([cap, output, then_text, with_text, care_text]);
    let inside = move || {
        // Worked out in full only while it is looked at.
        let told = Told::new(Line::Torques, &desk, page);
        let mut inside =
            vec![el("p").class("why").live_text(move || told.panel.with(|it| it.note.clone()))];
        inside.extend(torques::fastener(page, &desk, told, &scope));
        inside.push(tools(page, key, name));
        inside
    };
    let section = el("section")
        .set("aria-labelledby", &title)
        .child(el("div").class("fold").child(what).child(figure))
        .child(while_so("div", move || open.get(), inside));
    el("li")
        .live("class", move || if open.get() { "row-of open" } else { "row-of" }.to_owned())
        .child(section)
}

/// Moving and removing.
fn tools(page: Page, key: usize, name: Live<String>) -> El {
    let named = |it: El| it.child(span("aloud", " ").live_text(move || name.get()));
    let shift = |down: bool, label| {
        let pressed: Rc<RefCell<Option<El>>> = Rc::default();
        let here = pressed.clone();
        let button = button("quiet", label, move || {
            page.fasteners.shift(key, down);
            page.changed();
            // A row that is moved loses the owner's place in it.
            if let Some(it) = here.borrow().as_ref() {
                browser::focus_soon(it);
            }
        });
        let button = named(button);
        *pressed.borrow_mut() = Some(button.same());
        button
    };
    let remove = button("quiet", words::REMOVE, move || {
        page.remove(page.fasteners, key, &name.get_untracked());
    });
    el("p").class("row").children([
        shift(false, words::MOVE_UP),
        shift(true, words::MOVE_DOWN),
        named(remove),
    ])
}
