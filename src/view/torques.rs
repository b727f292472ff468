//! The torque line: the list, the calculator of a fastener, the wrench drawer.

use super::element::{El, button, el, span, while_so};
use super::line::{self, Told, fold_button};
use super::live::{Derived, Live};
use super::page::{Desk, Page};
use super::{browser, drawer, table, torque_list};
use crate::facts;
use crate::plan::{self, Offer, Panel};
use crate::words::page as words;

/// The answers of the line: those of the open fastener, or how many there are in the list while it is blank.
pub fn told(page: Page) -> Told {
    Told::of(&Desk::of_bike(page), page, move |desk, drawer, set| {
        plan::torque_line(desk, drawer, page.fasteners.with(<[_]>::len), set)
    })
}

/// All that stands in the unfolded line.
pub fn inside(page: Page, desk: &Desk, told: Told, scope: &str) -> Vec<El> {
    let can_keep = move || {
        !page.is_example()
            && told.panel.with(|it| it.head.lacks().is_empty() && !it.all().all(is_words))
    };
    let keep = move || {
        vec![button("do", words::KEEP_FASTENER, move || {
            page.keep_fastener();
            browser::show(torque_list::TITLE);
        })]
    };
    let some = move || page.fasteners.with(|it| !it.is_empty());
    let title = || vec![el("h4").class("cap").text(words::NEW_FASTENER)];
    let mut all = vec![torque_list::list(page), while_so("div", some, title)];
    all.extend(fastener(page, desk, told, scope));
    all.push(while_so("p", can_keep, keep));
    all.push(table::table(page));
    all.push(drawer::drawer(page));
    all
}

fn is_words(shown: &crate::show::Shown) -> bool {
    matches!(shown.figure, crate::show::Figure::Words(_) | crate::show::Figure::Lacks(_))
}

/// The calculator of one fastener, and what belongs to it alone.
pub fn fastener(page: Page, desk: &Desk, told: Told, scope: &str) -> Vec<El> {
    vec![
        line::panel(page, desk, told, scope),
        aside(page, desk, scope, "estimate", words::NO_FIGURE, |from, _, set| {
            plan::estimate(from, set)
        }),
        aside(page, desk, scope, "got", words::WAS_SET_WRONG, plan::reverse),
    ]
}

/// A calculator of its own behind a button: worked out only while it is open.
fn aside(
    page: Page,
    desk: &Desk,
    scope: &str,
    key: &str,
    title: &'static str,
    panel: fn(&dyn facts::Facts, &[plan::Held], crate::units::UnitSet) -> Panel,
) -> El {
    let open = Live::new(false);
    let scope = format!("{scope}-{key}");
    let id = format!("{scope}-title");
    let turn = move || open.update(|it| *it = !*it);
    let fold = fold_button(&id, move || open.get(), turn).class("more").text(title);
    let desk = desk.clone();
    let inside = move || {
        let told = Told::of(&desk, page, move |desk, drawer, set| panel(desk, drawer, set));
        let head = line::head(page, &desk, told, &scope, None);
        vec![el("div").class("fold").child(head), line::panel(page, &desk, told, &scope)]
    };
    el("section").class("aside").set("aria-labelledby", &id).child(fold).child(while_so(
        "div",
        move || open.get(),
        inside,
    ))
}

/// The wrenches that could serve, to take one by hand; nothing where there is no choice.
pub fn offers(page: Page, desk: &Desk, told: Told, scope: &str) -> Vec<El> {
    let panel = told.panel;
    let any = move || panel.with(|it| !it.offers.is_empty());
    let (desk, scope) = (desk.clone(), scope.to_owned());
    let inside = move || {
        let chosen = {
            let desk = desk.clone();
            move || !desk.signal(facts::TAKEN_WRENCH.id()).get().is_blank()
        };
        let [by_hand, best] = std::array::from_fn(|_| chosen.clone());
        let offers = Derived::new(move |_| panel.with(|it| it.offers.clone()));
        let (row, row_scope) = (desk.clone(), scope.clone());
        let wrenches = move || {
            let by_hand = by_hand();
            offers.with(|all| {
                all.iter().map(|it| offer(page, &row, &row_scope, it, by_hand)).collect()
            })
        };
        let name = format!("{scope}-wrench");
        let desk = desk.clone();
        let take = move || page.take_wrench(&desk, None);
        let id = format!("{name}-best");
        let best = el("div")
            .child(
                el("input")
                    .set("type", "radio")
                    .set("id", &id)
                    .set("name", &name)
                    .live_so("checked", move || !best())
                    .on("change", move |_| take()),
            )
            .child(el("label").set("for", &id).text(words::BEST_WRENCH));
        vec![
            el("fieldset")
                .class("offers")
                .child(el("legend").class("cap").text(words::WRENCH_TAKEN))
                .child(best)
                .child(el("div").part(wrenches)),
        ]
    };
    vec![while_so("div", any, inside)]
}

fn offer(page: Page, desk: &Desk, scope: &str, offer: &Offer, by_hand: bool) -> El {
    let place = offer.place;
    let id = format!("{scope}-wrench-{place}");
    let desk = desk.clone();
    let input = el("input")
        .set("type", "radio")
        .set("id", &id)
        .set("name", &format!("{scope}-wrench"))
        .live_so("checked", {
            let checked = by_hand && offer.taken;
            move || checked
        })
        .on("change", move |_| page.take_wrench(&desk, Some(place)));
    let class = if offer.taken { "taken" } else { "" };
    el("div").class(class).child(input).child(
        el("label")
            .set("for", &id)
            .text(&offer.name)
            .child(span("why", &format!(" {}", offer.says))),
    )
}
