//! The sentence that sets the season.

use super::answer::figure;
use super::element::{El, el, span};
use super::entry_field::{Dress, blank};
use super::leaf::Leaves;
use super::page::{Desk, Page};
use crate::facts::{self, Facts, Id};
use crate::plan;
use crate::show::{self, Figure};
use crate::words::{labels, page as words, season_line};

const DAYS: &str = "season-days";

/// "Parked ____ in ____, rides ____: 134 days."
pub fn sentence(page: Page, desk: &Desk) -> El {
    let [days, ride, dates] = std::array::from_fn(|_| desk.clone());
    let days = move |leaves: &Leaves| {
        let shown = plan::season(&days, page.set.get());
        if let Figure::Number { .. } = shown.figure {
            figure(leaves, &shown);
            leaves.next("span", "").text(words::DAYS);
        }
    };
    let open_end = move || {
        // Until a ride date is known; without a park date there is nothing to look at yet.
        match plan::season_of(&ride) {
            Ok(season) if season.ride().is_none() => words::TWELVE_MONTHS.to_owned(),
            _ => String::new(),
        }
    };
    // The dates as read, so that a typed one is seen to be understood; or why one is not taken.
    let read = move |leaves: &Leaves| {
        let asked = [&facts::PARK_DATE.about, &facts::RIDE_DATE.about, &facts::COLDEST_NIGHT.about];
        let own = asked.iter().filter_map(|it| {
            let why = facts::refusal(it, &dates.entry(it.id))?.to_string();
            Some((it.label, why))
        });
        let night = || plan::night_refused(&dates, page.set.get());
        let mut own: Vec<(&str, String)> = own.collect();
        if !own.iter().any(|it| it.0 == facts::COLDEST_NIGHT.about.label) {
            own.extend(night().map(|why| (facts::COLDEST_NIGHT.about.label, why)));
        }
        let season = plan::season_of(&dates);
        if let Ok(it) = &season {
            let [park, end] = [it.park(), it.end()].map(show::long_day);
            let stored = plan::stored(*it);
            let dates = format!("{park}{}{end}{}{stored}", words::TO, season_line::BETWEEN);
            leaves.next("p", "why").text(&dates);
        }
        for (label, why) in &own {
            leaves.next("p", "care").text(&format!("{label}: {why}"));
        }
        if let (Err(lacks), true) = (season, own.is_empty()) {
            for it in lacks.iter().filter_map(facts::Lack::refusal) {
                leaves.next("p", "care").text(&it.to_string());
            }
        }
    };
    let blank = |id: Id| blank(page, desk, None, id, "season", Dress::Inline);
    let sentence = el("p")
        .class("sentence")
        .text(words::PARKED)
        .child(blank(facts::PARK_DATE.id()))
        .text(words::IN)
        .child(blank(facts::WHERE_IT_STANDS.id()))
        .text(words::RIDES)
        .child(blank(facts::RIDE_DATE.id()))
        .child(span("aloud", labels::DAYS_STORED).set("id", DAYS))
        .child(el("output").set("aria-live", "off").set("aria-labelledby", DAYS).leaves(days))
        .live_text(open_end)
        .text(words::COLDEST)
        .child(blank(facts::COLDEST_NIGHT.id()))
        .text(".");
    el("section")
        .class("season")
        .set("aria-label", season_line::SENTENCE)
        .child(sentence)
        .child(el("div").leaves(read))
}
