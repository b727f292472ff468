//! The sentence that sets the season, and the season line under it.

use super::answer::figure;
use super::entry_field::{Dress, EntryField};
use super::page::{Desk, Page};
use crate::drawing::{self, Label, SeasonLine};
use crate::facts::{self, Facts, Id};
use crate::plan;
use crate::show::{self, Figure};
use crate::words::{labels, page as words, season_line};
use leptos::prelude::*;

const SCOPE: &str = "season";

/// "Parked ____ in ____, rides ____: 134 days."
#[component]
pub fn Sentence() -> impl IntoView {
    let page = expect_context::<Page>();
    let desk = expect_context::<Desk>();
    let told = {
        let desk = desk.clone();
        Memo::new(move |_| plan::season(&desk, page.set.get()))
    };
    let known = move || told.with(|it| matches!(it.figure, Figure::Number { .. }));
    let blank_ride = {
        let desk = desk.clone();
        Memo::new(move |_| desk.entry(facts::RIDE_DATE.id()).is_blank())
    };
    // The dates as read, so that a typed one is seen to be understood; and why one is not taken.
    let read = move || {
        plan::season_of(&desk).map(|it| {
            format!("{}{}{}", show::long_day(it.park()), words::TO, show::long_day(it.end()))
        })
    };
    let refused = move || {
        told.with(|it| {
            it.lacks()
                .iter()
                .filter_map(facts::Lack::refusal)
                .map(|it| it.to_string())
                .collect::<Vec<_>>()
        })
    };
    let blank = |id: Id| view! { <EntryField id scope=SCOPE dress=Dress::Inline /> };
    view! {
        <section class="season" aria-label=season_line::SENTENCE>
            <p class="sentence">
                {words::PARKED} {blank(facts::PARK_DATE.id())} {words::IN} {blank(facts::WHERE_IT_STANDS.id())}
                {words::RIDES} {blank(facts::RIDE_DATE.id())} ": "
                <span class="aloud" id="season-days">{labels::DAYS_STORED}</span>
                <output aria-live="off" aria-labelledby="season-days">
                    {move || if known() {
                        view! { {figure(told.get())} {words::DAYS} }.into_any()
                    } else {
                        "…".into_any()
                    }}
                </output>
                {move || blank_ride.get().then(|| format!(" ({})", words::TWELVE_MONTHS))}
                ". " {words::COLDEST} {blank(facts::COLDEST_NIGHT.id())} "."
            </p>
            <p class="why">{move || read().unwrap_or_default()}</p>
            {move || refused().into_iter().map(|it| view! { <p class="care">{it}</p> }).collect_view()}
        </section>
    }
}

/// The season from park date to ride date, drawn twice: once for a wide page, once for a narrow one.
#[component]
pub fn SeasonLineView() -> impl IntoView {
    let page = expect_context::<Page>();
    let desk = expect_context::<Desk>();
    let course = Memo::new(move |_| plan::course(&desk).ok());
    view! {
        <figure class="line-of-season" aria-label=season_line::NAME>
            {move || match course.get() {
                Some(course) => [true, false]
                    .map(|wide| picture(drawing::season_line(&course, wide, page.set.get()), wide))
                    .collect_view()
                    .into_any(),
                None => view! { <p class="why">{season_line::NOT_YET}</p> }.into_any(),
            }}
        </figure>
    }
}

fn picture(it: SeasonLine, wide: bool) -> impl IntoView {
    let [width, height] = it.size;
    let [left, right, base] = it.axis;
    let text = |class: &'static str| move |it: Label| view! { <text class=class x=it.x y=it.y text-anchor=it.anchor>{it.text}</text> };
    let top = it.acts.iter().map(|it| it.y + 6.0);
    let marks = it.marks.iter().zip(top).map(|([x, y], top)| {
        view! {
            <path class="act" d=format!("M{x:.1} {top:.1}V{base:.1}") />
            <circle class="act" cx=*x cy=*y r="5" />
        }
    });
    view! {
        <svg class=if wide { "wide" } else { "narrow" } viewBox=format!("0 0 {width} {height}") role="img" aria-label=it.told>
            <path class="band" d=it.band />
            <path class="typical" d=it.typical />
            <path class="below" d=format!("M{left} {:.1}H{right}", it.threshold) />
            <path class="cold" d=it.temperature />
            <path class="axis" d=format!("M{left} {base}H{right}") />
            {it.months.iter().map(|x| view! { <path class="tick" d=format!("M{x:.1} {base}v8") /> }).collect_view()}
            {marks.collect_view()}
            {text("care")(it.below)}
            {text("cold")(it.cold)}
            {it.quiet.into_iter().map(text("")).collect_view()}
            {it.ends.into_iter().map(text("key")).collect_view()}
            {it.acts.into_iter().map(text("key")).collect_view()}
        </svg>
    }
}
