//! The season line: the season in a picture, any day of it read by pointing, tapping or the arrow keys, and the battery on
//! that day.

use super::element::{El, el, paragraph, svg};
use super::leaf::Leaves;
use super::live::Derived;
use super::page::Page;
use super::picture::{SAYS, picture, place};
use super::torque_drawing::figure;
use super::{browser, calendar};
use crate::drawing::{self, BatteryDrawing, SeasonLine};
use crate::facts;
use crate::plan::{Course, Panel};
use crate::words::season_line as words;
use leptos::prelude::untrack;
use std::slice::from_ref;
use std::sync::Arc;

/// The line whose facts the picture wants.
const BATTERY: &str = "#layup/battery";

/// The season from park date to ride date.
pub fn season_line(page: Page) -> El {
    let known = Derived::new(move |_| page.battery.with(|it| it.course.is_some()));
    el("figure").class("line-of-season").set("aria-label", words::NAME).part(move || {
        if known.get() {
            return laid_out(page, !page.narrow.get());
        }
        let there = el("a").set("href", BATTERY).text(words::NOT_YET);
        let mut all = vec![el("p").class("why").child(there)];
        // Most days of the season hang on no battery.
        if facts::given(&page.sheet(), facts::PARK_DATE.id()) {
            all.push(calendar::save_button(page));
        }
        all
    })
}

/// The picture for a page as wide as this one, with what holds on the day that is looked at. All of it stays where it is and
/// follows the season.
fn laid_out(page: Page, wide: bool) -> Vec<El> {
    let [width, height] = drawing::season_size(wide);
    let class = if wide { "wide" } else { "narrow" };
    let picture = picture(class, [0.0, 0.0, width, height]);
    let (drawn, mark) = (svg("g"), svg("path").class("day"));
    let (leaves, marked) = (Leaves::of(&drawn), mark.attribute("d"));
    let says = picture.attribute(SAYS);
    let last = move || course(page).map_or(0, |it| it.last_day()).to_string();
    let day = move || day_looked_at(page, &*course(page)?);
    let slider = el("input")
        .set("type", "range")
        .set("min", "0")
        .live("max", last)
        .set("aria-label", words::DAY_OF_SEASON)
        .live_value(move || day().unwrap_or_default().to_string())
        .take("input", move |day| page.day.set(day.parse().ok()));
    let aloud = slider.attribute("aria-valuetext");
    let (told, said) = el("p").class("said").words();
    let (acts, listed) = el("p").class("why").words();
    let draw = move || {
        if let Some(course) = course(page) {
            let line = drawing::season_line(&course, wide, page.set.get());
            says.say(&line.told);
            season_drawn(&leaves, &line);
            listed.say(&drawing::acts_told(&course));
        }
    };
    let read = move || {
        let read = course(page).and_then(|course| {
            let day = day_looked_at(page, &course)?;
            Some(drawing::season_day(&course, day, wide, page.set.get()))
        });
        let (told, mark) =
            read.map_or((words::POINT.to_owned(), String::new()), |it| (it.told, it.mark));
        said.say(&told);
        aloud.say(&told);
        marked.say(&mark);
    };
    let shown = picture.element();
    let point = move |event| {
        let share = browser::share_across(&shown, &event);
        if let (Some(share), Some(course)) = (share, untrack(|| course(page))) {
            page.day.set(Some(drawing::season_day_at(&course, wide, share * width)));
        }
    };
    vec![
        picture
            .child(mark)
            .child(drawn)
            .follow(draw)
            .follow(read)
            .on("pointerdown", point.clone())
            .on("pointermove", point),
        slider,
        told,
        acts,
        paragraph("hint", words::LEGEND),
        calendar::save_button(page),
    ]
}

/// The season day by day, where its facts are known.
fn course(page: Page) -> Option<Arc<Course>> {
    page.battery.with(|it| it.course.clone())
}

/// The day that was pointed at; else today, where it is one of the season.
fn day_looked_at(page: Page, course: &Course) -> Option<usize> {
    page.day.get().or_else(|| course.day_of(page.today.get()))
}

/// Draws it: first what is always there, so that what comes and goes moves nothing else from its place.
pub(super) fn season_drawn(leaves: &Leaves, it: &SeasonLine) {
    let [left, right, base] = it.axis;
    let across = |height: f64| format!("M{} {}H{}", place(left), place(height), place(right));
    let [mut ticks, mut stems, mut marks] = [(); 3].map(|()| String::new());
    for x in it.months.iter().chain(it.fuel.iter().map(|it| &it.0)) {
        ticks.push_str(&format!("M{} {}v8", place(*x), place(base)));
    }
    for [x, top, bottom] in &it.stems {
        stems.push_str(&format!("M{} {}V{}", place(*x), place(*top), place(*bottom)));
    }
    for at in &it.marks {
        marks.push_str(&drawing::dot(*at, 5.0));
    }
    leaves.path("band", &it.band);
    leaves.path("typical", &it.typical);
    leaves.path("below", &across(it.threshold));
    leaves.path("cold", &it.temperature);
    leaves.path("frost", &it.frost);
    leaves.path("axis", &across(base));
    leaves.path("month", &ticks);
    leaves.path("act", &stems);
    leaves.path("dots", &marks);
    leaves.labels("care", from_ref(&it.below));
    leaves.labels("cold", from_ref(&it.cold));
    leaves.labels("key", &it.ends);
    leaves.labels("", &it.quiet);
    leaves.labels("key", &it.acts);
    if let Some((_, label)) = &it.fuel {
        leaves.labels("care", from_ref(label));
    }
    leaves.end();
}

/// The battery on the day that is looked at, or on the ride date.
pub fn battery(page: Page, panel: Derived<Panel>) -> El {
    let [width, height] = drawing::BATTERY_SIZE;
    let picture = picture("battery", [0.0, 0.0, width, height]);
    let (says, leaves) = (picture.attribute(SAYS), Leaves::of(&picture));
    let (caption, said) = el("figcaption").class("hint").words();
    let draw = move || {
        panel.with(|it| {
            let Some(course) = &it.course else { return };
            let day = day_looked_at(page, course).unwrap_or(course.last_day());
            let drawn = drawing::battery(course, day, page.set.get());
            says.say(&drawn.told);
            said.say(&drawn.told);
            battery_drawn(&leaves, &drawn);
        });
    };
    figure(picture).child(caption).follow(draw)
}

fn battery_drawn(leaves: &Leaves, it: &BatteryDrawing) {
    let part = |class: &str, it: [f64; 4]| {
        let [x, y, width, height] = it.map(place);
        leaves.path(class, &format!("M{x} {y}h{width}v{height}h-{width}z"));
    };
    let [left, right] = it.across.map(place);
    let line = |class: &str, height: f64| {
        leaves.path(class, &format!("M{left} {}H{right}", place(height)))
    };
    leaves.path("tool", &it.case);
    part("sure", it.sure);
    part("doubtful", it.doubtful);
    line("below", it.threshold);
    if let Some(typical) = it.typical {
        line("pull", typical);
    }
    leaves.labels("", &it.labels);
    leaves.end();
}
