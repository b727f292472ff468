//! The page's head: units, the link, the bikes that are kept here.

use super::element::{El, button, el, paragraph, span, while_so};
use super::entry_field::{Dress, blank};
use super::live::Live;
use super::page::{Desk, Owner, Page};
use super::{browser, kept, link};
use crate::facts;
use crate::units::UnitSet;
use crate::words::{choices, page as words};

#[derive(Debug, Clone, Copy, PartialEq)]
enum Drawer {
    Shut,
    Link,
    Garage,
}

/// Name and buttons in the page's head, and the drawer that one of them opens.
pub fn top(page: Page) -> El {
    let open = Live::new(Drawer::Shut);
    let drawer = move |drawer: Drawer, name: &str| {
        button("quiet", name, move || {
            open.update(|it| *it = if *it == drawer { Drawer::Shut } else { drawer })
        })
        .live("aria-expanded", move || (open.get() == drawer).to_string())
    };
    let units = move || {
        let now = if page.set.get() == UnitSet::Metric { choices::METRIC } else { choices::US };
        format!("{}{now}", words::UNITS_ARE)
    };
    let other = move || {
        page.choose_units(if page.set.get_untracked() == UnitSet::Metric { "us" } else { "metric" })
    };
    let inside = move || match open.get() {
        Drawer::Link => vec![link::make(page)],
        Drawer::Garage => vec![bikes(page)],
        Drawer::Shut => Vec::new(),
    };
    let tools = el("nav")
        .class("tools")
        .set("aria-label", words::TOOLS)
        .child(button("quiet", "", other).live_text(units))
        .child(drawer(Drawer::Link, words::LINK))
        .child(drawer(Drawer::Garage, words::GARAGE));
    el("header")
        .class("top")
        .child(el("a").class("mark").set("href", "#layup").text(words::NAME))
        .child(tools)
        .child(el("div").class("under").part(inside))
}

/// The bikes that are kept in this browser, and the name of the one on the sheet.
fn bikes(page: Page) -> El {
    let own = move || page.owner.get() != Owner::Example;
    let name = move || {
        vec![blank(page, &Desk::of_bike(page), None, facts::BIKE_NAME.id(), "garage", Dress::Whole)]
    };
    let rows = move || {
        page.owner.track();
        let bikes = page.store.get_untracked().map(kept::bikes).unwrap_or_default();
        if bikes.is_empty() {
            return vec![el("li").class("why").text(words::NO_BIKES)];
        }
        bikes.into_iter().map(|(key, name)| bike(page, key, &name)).collect()
    };
    let row = el("p")
        .class("row")
        .child(button("do", words::NEW_BIKE, move || page.start_own()))
        .child(button("quiet", words::SHOW_EXAMPLE, move || page.lay_example()));
    el("div")
        .class("drawer")
        .child(while_so("div", own, name))
        .child(paragraph("cap", words::BIKES_HERE))
        .child(el("ul").part(rows))
        .child(row)
}

fn bike(page: Page, key: String, name: &str) -> El {
    let open = button("quiet", words::OPEN, move || {
        if let Some(store) = page.store.get_untracked() {
            kept::open(page, store, &key);
            browser::go("layup");
        }
    });
    el("li").text(name).text(" ").child(open.child(span("aloud", &format!(" {name}"))))
}
