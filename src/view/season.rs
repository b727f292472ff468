//! The sentence that sets the season, and the season line under it.

use super::answer::figure;
use super::entry_field::{Dress, blank};
use super::live::{nothing, paragraph, part, text};
use super::page::{Desk, Page};
use crate::drawing::{self, Label, SeasonLine};
use crate::facts::{self, Facts, Id};
use crate::plan;
use crate::show::{self, Figure};
use crate::words::{labels, page as words, season_line};
use leptos::prelude::*;

const SCOPE: &str = "season";

/// "Parked ____ in ____, rides ____: 134 days."
pub fn sentence(page: Page, desk: &Desk) -> AnyView {
    let [days, ride, dates, refused] = std::array::from_fn(|_| desk.clone());
    let days = part(move || {
        let shown = plan::season(&days, page.set.get());
        match shown.figure {
            Figure::Number { .. } => {
                [figure(&shown), words::DAYS.into_any()].collect_view().into_any()
            }
            _ => "…".into_any(),
        }
    });
    let open_end = text(move || {
        if ride.entry(facts::RIDE_DATE.id()).is_blank() {
            words::TWELVE_MONTHS.to_owned()
        } else {
            String::new()
        }
    });
    // The dates as read, so that a typed one is seen to be understood; and why one is not taken.
    let read = text(move || {
        let season = plan::season_of(&dates);
        season.map_or_else(
            |_| String::new(),
            |it| format!("{}{}{}", show::long_day(it.park()), words::TO, show::long_day(it.end())),
        )
    });
    let refused = part(move || {
        let lacks = plan::season_of(&refused).err().unwrap_or_default();
        let why = lacks.iter().filter_map(facts::Lack::refusal);
        why.map(|it| paragraph("care", it.to_string())).collect_view().into_any()
    });
    let blank = |id: Id| blank(page, desk, None, id, SCOPE, Dress::Inline);
    view! {
        <section class="season" aria-label=season_line::SENTENCE>
            <p class="sentence">
                {words::PARKED} {blank(facts::PARK_DATE.id())} {words::IN} {blank(facts::WHERE_IT_STANDS.id())}
                {words::RIDES} {blank(facts::RIDE_DATE.id())} ": "
                <span class="aloud" id="season-days">{labels::DAYS_STORED}</span>
                <output aria-live="off" aria-labelledby="season-days">{days}</output>
                {open_end} {words::COLDEST} {blank(facts::COLDEST_NIGHT.id())} "."
            </p>
            <p class="why">{read}</p>
            {refused}
        </section>
    }
    .into_any()
}

/// The season from park date to ride date, drawn twice: once for a wide page, once for a narrow one.
pub fn season_line(page: Page, desk: &Desk) -> AnyView {
    let desk = desk.clone();
    let drawn = part(move || match plan::course(&desk) {
        Ok(course) => {
            let set = page.set.get();
            let both =
                [true, false].map(|wide| picture(drawing::season_line(&course, wide, set), wide));
            both.collect_view().into_any()
        }
        Err(_) => paragraph("why", season_line::NOT_YET.to_owned()),
    });
    view! { <figure class="line-of-season" aria-label=season_line::NAME>{drawn}</figure> }
        .into_any()
}

fn picture(it: SeasonLine, wide: bool) -> AnyView {
    let [width, height] = it.size;
    let [left, right, base] = it.axis;
    let top = it.acts.iter().map(|it| it.y + 6.0);
    let marks = it.marks.iter().zip(top).flat_map(|([x, y], top)| {
        [path("act", format!("M{x:.1} {top:.1}V{base:.1}")), dot(*x, *y)]
    });
    let months = it.months.iter().map(|x| path("month", format!("M{x:.1} {base:.1}v8")));
    let mut parts = vec![
        path("band", it.band),
        path("typical", it.typical),
        path("below", format!("M{left:.1} {:.1}H{right:.1}", it.threshold)),
        path("cold", it.temperature),
        path("axis", format!("M{left:.1} {base:.1}H{right:.1}")),
    ];
    parts.extend(months.chain(marks));
    parts.extend([label("care", it.below), label("cold", it.cold)]);
    parts.extend(it.quiet.into_iter().map(|it| label("", it)));
    parts.extend(it.ends.into_iter().chain(it.acts).map(|it| label("key", it)));
    let class = if wide { "wide" } else { "narrow" };
    view! { <svg class=class viewBox=format!("0 0 {width:.0} {height:.0}") role="img" aria-label=it.told>{parts}</svg> }.into_any()
}

fn path(class: &'static str, d: String) -> AnyView {
    view! { <path class=class d=d /> }.into_any()
}

fn dot(x: f64, y: f64) -> AnyView {
    view! { <circle class="act" cx=format!("{x:.1}") cy=format!("{y:.1}") r="5" /> }.into_any()
}

fn label(class: &'static str, it: Label) -> AnyView {
    if it.text.is_empty() {
        return nothing();
    }
    view! { <text class=class x=format!("{:.1}", it.x) y=format!("{:.1}", it.y) text-anchor=it.anchor>{it.text}</text> }.into_any()
}
