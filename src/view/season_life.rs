//! The season's life on the page: how far it is, the step to the next one, those that are over.

use super::element::{El, button, el, paragraph, while_so};
use super::page::{Desk, Page};
use super::{browser, past};
use crate::garage::{Kept, Season};
use crate::plan::{self, Life, Side};
use crate::words::{backup as backup_words, logbook as words};

/// How far the season is, and once it is over the step to the next.
pub fn life(page: Page, desk: &Desk) -> El {
    let [desk, parked] = [(); 2].map(|()| desk.clone());
    let life = super::live::Derived::new(move |_| Life::of(&desk));
    let said = move || {
        match life.get() {
            Life::Planned => words::PLANNED,
            Life::Parked if plan::backup_due(&parked, page.backup.get(), page.today.get()) => {
                backup_words::DUE
            }
            Life::Parked => words::PARKED,
            Life::Out => words::OUT,
        }
        .to_owned()
    };
    el("div").class("life").child(el("p").class("why").live_text(said)).child(next(page, true))
}

/// The step to the next season: over the sheet once this one is over, else, `over` being false, out of the way.
pub fn next(page: Page, over: bool) -> El {
    let here = move || {
        let desk = Desk::of_bike(page);
        let life = Life::of(&desk);
        let is_over = life == Life::Out || plan::is_long_over(&desk, page.today.get());
        !page.is_example() && (life != Life::Planned || is_over) && is_over == over
    };
    while_so("div", here, move || {
        let class = if over { "do" } else { "quiet" };
        let next = button(class, words::NEXT_SEASON, move || begin_next(page));
        vec![next, paragraph("hint", words::NEXT_HINT)]
    })
}

/// Puts the season away and lays a blank one.
fn begin_next(page: Page) {
    let Kept { season, .. } = page.kept();
    if let Some(place) = past::put_season_away(page, &season) {
        page.lay_again(Kept { season: Season::default(), ..page.kept() });
        let back = move || past::bring_season_back(page, place, &season);
        page.can_undo_by(words::NEXT_BEGUN.to_owned(), back);
        browser::go(Side::LayUp.key());
    }
}

/// Seasons of this bike that are over, the last first.
pub fn past_seasons(page: Page) -> El {
    let all = move || {
        page.book.turns.track();
        past::past_seasons(page)
    };
    let rows = move || {
        let row = |(place, it): &(usize, Season)| {
            let (place, season) = (*place, it.clone());
            let back = move || past::bring_season_back(page, place, &season);
            let back = button("quiet", words::BRING_BACK, back);
            el("li").text(&plan::past(&it.entries)).text(" ").child(back)
        };
        all().iter().rev().map(row).collect()
    };
    let list =
        move || vec![paragraph("cap", words::PAST_SEASONS), el("ul").class("how").part(rows)];
    while_so("div", move || !all().is_empty(), list)
}
