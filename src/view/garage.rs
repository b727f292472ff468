//! Tools in the page's head: units, the link, the bikes that are kept here.

use super::entry_field::{Dress, EntryField};
use super::page::{Desk, Owner, Page};
use super::{browser, kept, link};
use crate::facts;
use crate::units::UnitSet;
use crate::words::{choices, page as words};
use leptos::prelude::*;

#[derive(Debug, Clone, Copy, PartialEq)]
enum Drawer {
    Link,
    Garage,
}

/// Buttons in the page's head, and the drawer that one of them opens.
#[component]
pub fn Tools() -> impl IntoView {
    let page = expect_context::<Page>();
    let open = RwSignal::new(None::<Drawer>);
    let button = move |drawer: Drawer, name: &'static str| {
        let turn = move |_| open.update(|it| *it = (*it != Some(drawer)).then_some(drawer));
        view! {
            <button type="button" class="quiet" aria-expanded=move || (open.get() == Some(drawer)).to_string() on:click=turn>{name}</button>
        }
    };
    let units = move || match page.set.get() {
        UnitSet::Metric => (choices::METRIC, "us"),
        UnitSet::Us => (choices::US, "metric"),
    };
    view! {
        <nav class="tools" aria-label=words::GARAGE>
            <button type="button" class="quiet" on:click=move |_| page.choose_units(units().1)>{words::UNITS_ARE} {move || units().0}</button>
            {button(Drawer::Link, words::LINK)}
            {button(Drawer::Garage, words::GARAGE)}
        </nav>
        {move || match open.get() {
            Some(Drawer::Link) => view! { <link::Make /> }.into_any(),
            Some(Drawer::Garage) => view! { <Bikes /> }.into_any(),
            None => ().into_any(),
        }}
    }
}

/// The bikes that are kept in this browser, and the name of the one on the sheet.
#[component]
fn Bikes() -> impl IntoView {
    let page = expect_context::<Page>();
    let own = Memo::new(move |_| page.owner.get() != Owner::Example);
    provide_context(Desk::of_bike(page));
    let bikes = move || {
        page.owner.track();
        page.store.get_value().map(kept::bikes).unwrap_or_default()
    };
    let rows = move || {
        bikes().into_iter().map(|(key, bike)| {
            let name = facts::BIKE_NAME.maybe(&bike.entries).ok().flatten().unwrap_or_else(|| words::YOUR_BIKE.to_owned());
            let open = move |_| {
                if let Some(store) = page.store.get_value() {
                    kept::open(page, store, &key);
                    browser::go("layup");
                }
            };
            view! { <li>{name.clone()} " " <button type="button" class="quiet" on:click=open>{words::OPEN} <span class="aloud">" " {name}</span></button></li> }
        })
        .collect_view()
    };
    let none = move || bikes().is_empty().then(|| view! { <p class="why">{words::NO_BIKES}</p> });
    view! {
        <div class="drawer">
            {move || own.get().then(|| view! { <EntryField id=facts::BIKE_NAME.id() scope="garage" dress=Dress::Whole /> })}
            <p class="cap">{words::BIKES_HERE}</p>
            <ul>{rows}</ul>
            {none}
            <p class="row">
                <button type="button" class="do" on:click=move |_| page.start_own()>{words::NEW_BIKE}</button>
                <button type="button" class="quiet" on:click=move |_| page.lay_example()>{words::SHOW_EXAMPLE}</button>
            </p>
        </div>
    }
}
