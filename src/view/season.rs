//! The sentence that sets the season, and the season line under it.

use super::answer::figure;
use super::element::{El, el, paragraph, span, svg};
use super::entry_field::{Dress, blank};
use super::page::{Desk, Page};
use super::picture::{label, path, picture, place};
use crate::drawing::{self, SeasonLine};
use crate::facts::{self, Facts, Id};
use crate::plan;
use crate::show::{self, Figure};
use crate::words::{labels, page as words, season_line};
use leptos::prelude::*;

const DAYS: &str = "season-days";

/// "Parked ____ in ____, rides ____: 134 days."
pub fn sentence(page: Page, desk: &Desk) -> El {
    let [days, ride, dates] = std::array::from_fn(|_| desk.clone());
    let days = move || {
        let shown = plan::season(&days, page.set.get());
        match shown.figure {
            Figure::Number { .. } => {
                figure(&shown).into_iter().chain([span("", words::DAYS)]).collect()
            }
            _ => vec![span("", "…")],
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
    let read = move || {
        let asked = [&facts::PARK_DATE.about, &facts::RIDE_DATE.about, &facts::COLDEST_NIGHT.about];
        let own = asked.iter().filter_map(|it| {
            let why = facts::refusal(it, &dates.entry(it.id))?;
            Some(paragraph("care", &format!("{}: {why}", it.label)))
        });
        let own: Vec<El> = own.collect();
        match plan::season_of(&dates) {
            Ok(it) => {
                let dates = format!(
                    "{}{}{}",
                    show::long_day(it.park()),
                    words::TO,
                    show::long_day(it.end())
                );
                [paragraph("why", &dates)].into_iter().chain(own).collect()
            }
            Err(lacks) if own.is_empty() => lacks
                .iter()
                .filter_map(facts::Lack::refusal)
                .map(|it| paragraph("care", &it.to_string()))
                .collect(),
            Err(_) => own,
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
        .text(": ")
        .child(span("aloud", labels::DAYS_STORED).set("id", DAYS))
        .child(el("output").set("aria-live", "off").set("aria-labelledby", DAYS).part(days))
        .live_text(open_end)
        .text(words::COLDEST)
        .child(blank(facts::COLDEST_NIGHT.id()))
        .text(".");
    el("section")
        .class("season")
        .set("aria-label", season_line::SENTENCE)
        .child(sentence)
        .child(el("div").part(read))
}

/// The season from park date to ride date, drawn twice: once for a wide page, once for a narrow one.
pub fn season_line(page: Page, desk: &Desk) -> El {
    let desk = desk.clone();
    el("figure").class("line-of-season").set("aria-label", season_line::NAME).part(move || {
        match plan::course(&desk) {
            Ok(course) => {
                let set = page.set.get();
                [true, false]
                    .map(|wide| drawn(&drawing::season_line(&course, wide, set), wide))
                    .into()
            }
            Err(_) => vec![paragraph("why", season_line::NOT_YET)],
        }
    })
}

fn drawn(it: &SeasonLine, wide: bool) -> El {
    let [width, height] = it.size;
    let [left, right, base] = it.axis;
    let marks = it.marks.iter().map(|[x, y]| {
        svg("circle").class("act").set("cx", &place(*x)).set("cy", &place(*y)).set("r", "5")
    });
    let stems = it.stems.iter().map(|[x, top, bottom]| {
        path("act", &format!("M{} {}V{}", place(*x), place(*top), place(*bottom)))
    });
    let months =
        it.months.iter().map(|x| path("month", &format!("M{} {}v8", place(*x), place(base))));
    picture(if wide { "wide" } else { "narrow" }, [0.0, 0.0, width, height], &it.told)
        .child(path("band", &it.band))
        .child(path("typical", &it.typical))
        .child(path("below", &format!("M{} {}H{}", place(left), place(it.threshold), place(right))))
        .child(path("cold", &it.temperature))
        .child(path("axis", &format!("M{} {}H{}", place(left), place(base), place(right))))
        .children(months.chain(stems).chain(marks))
        .child(label("care", &it.below))
        .child(label("cold", &it.cold))
        .children(it.quiet.iter().map(|it| label("", it)))
        .children(it.ends.iter().chain(&it.acts).map(|it| label("key", it)))
}
