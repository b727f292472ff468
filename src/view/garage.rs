//! The page's head: units, the link, the bikes that are kept here.

use super::bikes::{self, KeptBike, Stands};
use super::element::{El, button, el, paragraph, span, while_so};
use super::entry_field::{Dress, blank};
use super::line::fold_button;
use super::live::Live;
use super::page::{Desk, Page};
use super::{backup, browser, kept, link};
use crate::facts::{self, Id};
use crate::show;
use crate::storage::removed;
use crate::units::UnitSet;
use crate::words::{backup as backup_words, choices, garage as bikes_words, page as words};
use std::rc::Rc;

#[derive(Debug, Clone, Copy, PartialEq)]
enum Drawer {
    Shut,
    Link,
    Backup,
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
        Drawer::Backup => vec![backup::drawer(page)],
        Drawer::Garage => vec![bikes(page)],
        Drawer::Shut => Vec::new(),
    };
    let tools = el("nav")
        .class("tools")
        .set("aria-label", words::TOOLS)
        .child(button("quiet", "", other).live_text(units))
        .child(drawer(Drawer::Link, words::LINK))
        .child(drawer(Drawer::Backup, backup_words::BACKUP))
        .child(drawer(Drawer::Garage, words::GARAGE));
    el("header")
        .class("top")
        .child(el("a").class("mark").set("href", "#layup").text(words::NAME))
        .child(tools)
        .child(el("div").class("under").part(inside))
}

/// The bikes that are kept in this browser, and the name of the one on the sheet.
fn bikes(page: Page) -> El {
    let own = move || !page.is_example();
    // What adds and removes steps stands here too: a slip that took one away is mended where nothing goes.
    const OF_THE_BIKE: [Id; 4] = [
        facts::BIKE_NAME.id(),
        facts::COOLING.id(),
        facts::FUEL_SUPPLY.id(),
        facts::FINAL_DRIVE.id(),
    ];
    let name = move || {
        let desk = Desk::of_bike(page);
        OF_THE_BIKE.map(|it| blank(page, &desk, None, it, "garage", Dress::Whole)).into()
    };
    let cap = paragraph("cap", words::BIKES_HERE).set("tabindex", "-1");
    let [here, top] = [(); 2].map(|()| cap.same());
    let listed = move || {
        let mut rows = rows(page, false, &here);
        if rows.is_empty() {
            rows.push(el("li").class("why").text(words::NO_BIKES));
        }
        rows
    };
    let shown = Live::new(false);
    let any = move || {
        page.saving.track();
        bikes::all(page).iter().any(|it| is_away(&it.stands))
    };
    let archive = move || {
        let turn = move || shown.update(|it| *it = !*it);
        let fold = fold_button("archived-title", move || shown.get(), turn).class("more");
        let top = top.same();
        let away = move || if shown.get() { rows(page, true, &top) } else { Vec::new() };
        vec![fold.text(bikes_words::ARCHIVED), el("ul").part(away)]
    };
    let row = el("p")
        .class("row")
        .child(button("do", words::NEW_BIKE, move || page.start_own()))
        .child(button("quiet", words::SHOW_EXAMPLE, move || page.lay_example()));
    el("div")
        .class("drawer")
        .child(while_so("div", own, name))
        .child(cap)
        .child(el("ul").part(listed))
        .child(row)
        .child(while_so("div", any, archive))
}

/// Whether it is out of the list.
fn is_away(stands: &Stands) -> bool {
    matches!(stands, Stands::Archived | Stands::Removed(_))
}

/// Those in the list, or those that are not.
fn rows(page: Page, away: bool, top: &El) -> Vec<El> {
    page.saving.track();
    let all = bikes::all(page).into_iter().filter(|it| is_away(&it.stands) == away);
    all.map(|it| bike(page, it, top)).collect()
}

/// What can be done to a bike.
type Act = fn(Page, &KeptBike);

/// A bike with what can be done to it there.
fn bike(page: Page, it: KeptBike, top: &El) -> El {
    let mut row = el("li").class("row").child(span("", &it.name));
    let does: &[(&str, Act)] = match it.stands {
        Stands::Open => {
            row = row.set("aria-current", "true").child(span("why", bikes_words::OPEN_NOW));
            &[(bikes_words::DUPLICATE, bikes::duplicate), (bikes_words::ARCHIVE, bikes::archive)]
        }
        Stands::Listed => &[
            (words::OPEN, open),
            (bikes_words::DUPLICATE, bikes::duplicate),
            (bikes_words::ARCHIVE, bikes::archive),
        ],
        Stands::Archived => {
            &[(bikes_words::BRING_BACK, bikes::bring_back), (words::REMOVE, bikes::remove)]
        }
        Stands::Removed(day) => {
            let until = show::plain_day(removed::until(day));
            row = row.child(span("why", &bikes_words::removed_until(&until)));
            &[(bikes_words::BRING_BACK, bikes::bring_back)]
        }
    };
    let it = Rc::new(it);
    for (what, does) in does {
        let (of, top) = (it.clone(), top.same());
        let act = button("quiet", what, move || {
            // The row goes, or another stands there.
            browser::focus_soon(&top);
            does(page, &of);
        });
        row = row.child(act.child(span("aloud", " ").text(&it.name)));
    }
    row
}

fn open(page: Page, it: &KeptBike) {
    kept::close(page, Some(it.key.clone()));
    browser::go("layup");
}
