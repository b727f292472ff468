//! One calculator alone, with nothing saved and nothing set up.

use super::line::{Told, head, panel, unfolded};
use super::page::{Desk, Page};
use crate::entry::Entry;
use crate::facts;
use crate::plan::{Line, address::QuickSum};
use crate::words::{lines, page as words};
use leptos::prelude::*;

/// The calculator that a quick sum opens.
pub fn page(page: Page, sum: QuickSum) -> AnyView {
    let QuickSum::Of(line) = sum else {
        return view! { <h1>{name(sum)}</h1> <p>{words::NOT_YET}</p> }.into_any();
    };
    let desk = Desk::quick();
    if line == Line::Torques {
        // Who comes for a quick sum of a torque mostly has an adapter in hand; it shows, and one tap changes it.
        desk.signal(facts::ADAPTER.id()).set(Entry::new("in_line", 0));
    }
    let told = Told::new(line, &desk, page);
    let said = line.words();
    let scope = format!("quick-{}", line.key());
    view! {
        <section class="quick line open" aria-labelledby="quick-title">
            <p class="kind">{words::QUICK_SUM}</p>
            <h1 id="quick-title">{said.quick}</h1>
            <p class="why">{format!("{}. {}", said.quick_reason, words::NOTHING_SAVED)}</p>
            <div class="fold">{head(page, &desk, told, &scope, unfolded())}</div>
            {panel(page, &desk, told, &scope)}
        </section>
        <p><a href="#layup">{words::SHEET}</a></p>
    }
    .into_any()
}

/// Links to the quick sums.
pub fn offer() -> AnyView {
    let live = QuickSum::ALL.into_iter().filter(|it| matches!(it, QuickSum::Of(_)));
    let links = live
        .map(|it| view! { <li><a href=format!("#{}", it.key())>{name(it)}</a></li> }.into_any());
    view! {
        <nav class="offer" aria-label=words::QUICK_SUMS>
            <span class="cap">{words::QUICK_SUMS}</span>
            <ul>{links.collect_view()}</ul>
        </nav>
    }
    .into_any()
}

fn name(sum: QuickSum) -> &'static str {
    match sum {
        QuickSum::Of(line) => line.words().quick,
        QuickSum::Coolant => lines::COOLANT_QUICK,
        QuickSum::Tires => lines::TIRES_QUICK,
    }
}
