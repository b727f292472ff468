//! Tools in the page's head: units, the link, the bikes that are kept here.

use super::entry_field::{Dress, blank};
use super::live::{act, button, nothing, part, steady_flag, text, while_so};
use super::page::{Desk, Owner, Page};
use super::{browser, kept, link};
use crate::facts;
use crate::units::UnitSet;
use crate::words::{choices, page as words};
use leptos::prelude::*;

#[derive(Debug, Clone, Copy, PartialEq)]
enum Drawer {
    Shut,
    Link,
    Garage,
}

/// Buttons in the page's head, and the drawer that one of them opens.
pub fn tools(page: Page) -> AnyView {
    let open = RwSignal::new(Drawer::Shut);
    let drawer = move |drawer: Drawer, name: &'static str| {
        let turn =
            act(move || open.update(|it| *it = if *it == drawer { Drawer::Shut } else { drawer }));
        let expanded = text(move || (open.get() == drawer).to_string());
        view! { <button type="button" class="quiet" aria-expanded=expanded on:click=turn>{name}</button> }.into_any()
    };
    let other = move || if page.set.get_untracked() == UnitSet::Metric { "us" } else { "metric" };
    let units = text(move || {
        let now = if page.set.get() == UnitSet::Metric { choices::METRIC } else { choices::US };
        format!("{}{now}", words::UNITS_ARE)
    });
    let inside = part(move || match open.get() {
        Drawer::Link => link::make(page),
        Drawer::Garage => bikes(page),
        Drawer::Shut => nothing(),
    });
    view! {
        <nav class="tools" aria-label=words::TOOLS>
            <button type="button" class="quiet" on:click=act(move || page.choose_units(other()))>{units}</button>
            {drawer(Drawer::Link, words::LINK)}
            {drawer(Drawer::Garage, words::GARAGE)}
        </nav>
        {inside}
    }
    .into_any()
}

/// The bikes that are kept in this browser, and the name of the one on the sheet.
fn bikes(page: Page) -> AnyView {
    let own = steady_flag(move || page.owner.get() != Owner::Example);
    let name = while_so(own, move || {
        blank(page, &Desk::of_bike(page), None, facts::BIKE_NAME.id(), "garage", Dress::Whole)
    });
    let rows = part(move || {
        page.owner.track();
        let bikes = page.store.get_value().map(kept::bikes).unwrap_or_default();
        if bikes.is_empty() {
            return view! { <li class="why">{words::NO_BIKES}</li> }.into_any();
        }
        bikes.into_iter().map(|(key, name)| bike(page, key, name)).collect_view().into_any()
    });
    view! {
        <div class="drawer">
            {name}
            <p class="cap">{words::BIKES_HERE}</p>
            <ul>{rows}</ul>
            <p class="row">
                {button("do", words::NEW_BIKE, move || page.start_own())}
                {button("quiet", words::SHOW_EXAMPLE, move || page.lay_example())}
            </p>
        </div>
    }
    .into_any()
}

fn bike(page: Page, key: String, name: String) -> AnyView {
    let open = act(move || {
        if let Some(store) = page.store.get_value() {
            kept::open(page, store, &key);
            browser::go("layup");
        }
    });
    let aloud = name.clone();
    view! {
        <li>{name} " " <button type="button" class="quiet" on:click=open>{words::OPEN} <span class="aloud">{aloud}</span></button></li>
    }
    .into_any()
}
