//! The sheet: whose bike it is, the season in a sentence, the season line, the steps of a side in the order of the work.

use super::element::{El, button, el, paragraph, span, while_so};
use super::line::{self, Told};
use super::live::Derived;
use super::live::Live;
use super::page::{Desk, Owner, Page};
use super::step::{self, Sum};
use super::{
    browser, link, logbook, needs, own_steps, quick_sum, season, season_life, season_line, torques,
};
use crate::facts;
use crate::plan::{Line, Side, address::QuickSum};
use crate::words::{bench as bench_words, page as words, paper};

/// The sheet on a side; without one on that which the day wants. When the page opens, whose bike it is and the season's
/// sentence stand first, and all below follows.
pub fn sheet(page: Page, side: Option<Side>) -> Vec<El> {
    let desk = Desk::of_bike(page);
    let [named, dated] = [(); 2].map(|()| desk.clone());
    let name = move || {
        let looked = matches!(page.owner.get(), Owner::Looked(_));
        let nameless = if looked { words::SHARED_BIKE } else { words::YOUR_BIKE };
        facts::BIKE_NAME.known(&named).unwrap_or_else(|| nameless.to_owned())
    };
    let example = move || page.is_example();
    let mark = while_so("span", example, || vec![span("example", words::EXAMPLE)]);
    let side = Derived::new(move |_| side.unwrap_or_else(|| Side::on(page.today.get(), &dated)));
    vec![
        while_so("div", example, move || vec![introduction(page)]),
        el("h1").live_text(name).text(" ").child(mark),
        season::sentence(page, &desk),
        while_so("div", move || page.whole.get(), move || below(page, &desk, side)),
    ]
}

/// What stands below the season's sentence.
fn below(page: Page, desk: &Desk, side: Derived<Side>) -> Vec<El> {
    let [asked, living] = [(); 2].map(|()| desk.clone());
    let numbers = move || {
        let steps = side.get().steps().iter().enumerate();
        steps.filter(|(_, it)| it.is_asked(&asked)).map(|(at, _)| key(side.get(), at)).collect()
    };
    let sides = move || {
        let mut all: Vec<El> = Side::ALL.map(|it| side_link(it, side.get() == it)).into();
        let bench = format!("#bench/{}", side.get().key());
        all.push(el("a").set("href", &bench).text(bench_words::BENCH));
        all.push(button("quiet", paper::PRINT, browser::print));
        all
    };
    let own = move || !page.is_example();
    vec![
        season_line::season_line(page),
        el("nav").class("side").set("aria-label", words::SIDES).part(sides),
        while_so("div", own, move || vec![season_life::life(page, &living)]),
        el("ol").class("sheet").each(numbers, move |key| step_at(page, key)),
        el("div").part(move || own_steps::own_steps(page, side.get())),
        while_so("div", move || side.get() == Side::LayUp, move || vec![needs::needs(page)]),
        logbook::logbook(page),
        season_life::next(page, false),
    ]
}

fn side_link(side: Side, here: bool) -> El {
    let name = match side {
        Side::LayUp => words::LAY_UP,
        Side::WakeUp => words::WAKE_UP,
    };
    let link = el("a").set("href", &format!("#{}", side.key())).text(name);
    let link = if here { link.set("aria-current", "page") } else { link };
    el("h2").child(link)
}

/// Steps of one side start here, so that one number says side and place.
const WAKE_UP_FROM: usize = 100;

fn key(side: Side, at: usize) -> usize {
    match side {
        Side::LayUp => at,
        Side::WakeUp => WAKE_UP_FROM + at,
    }
}

fn step_at(page: Page, key: usize) -> El {
    let side = if key < WAKE_UP_FROM { Side::LayUp } else { Side::WakeUp };
    let at = key % WAKE_UP_FROM;
    let Some(it) = side.steps().get(at) else { return el("li") };
    let sum = it.sum.map(|line| match line {
        Line::Torques => Sum { told: torques::told(page), inside: torques::inside },
        _ => Sum { told: Told::new(line, &Desk::of_bike(page), page), inside: plain },
    });
    step::step(page, it, sum)
}

/// The inside of a line that is a calculator and no more.
fn plain(page: Page, desk: &Desk, told: Told, scope: &str) -> Vec<El> {
    vec![line::panel(page, desk, told, scope)]
}

/// Above the example: the way back for an owner, and the way in for everybody else.
fn introduction(page: Page) -> El {
    let pasting = Live::new(false);
    let paste = button("quiet", words::PASTE_A_LINK, move || pasting.update(|it| *it = !*it))
        .live("aria-expanded", move || pasting.get().to_string());
    let start = button("do", words::START_YOUR_OWN, move || page.start_own());
    let back = el("p").text(words::HAD_A_BIKE).child(paste);
    let row = el("div").class("row").child(start).child(el("p").text(words::INVENTED));
    let mut sums = el("p").class("row").text(words::ONE_FIGURE);
    for line in [Line::Torques, Line::Fuel] {
        sums = sums.child(quick_sum::link(QuickSum::Of(line)));
    }
    let purpose = paragraph("purpose", words::PURPOSE);
    el("div").class("back").child(purpose).child(row).child(sums).child(back).child(while_so(
        "div",
        move || pasting.get(),
        move || link::paste(page),
    ))
}
