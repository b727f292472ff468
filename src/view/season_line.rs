//! The season line: the season in a picture, any day of it read by pointing, tapping or the arrow keys, and the battery on
//! that day.

use super::browser;
use super::element::{El, button, el, paragraph, svg};
use super::live::Derived;
use super::page::{Desk, Page};
use super::picture::{label, path, picture, place};
use super::torque_drawing::figure;
use crate::calendar;
use crate::drawing::{self, BatteryDrawing, SeasonLine};
use crate::plan::{self, Course};
use crate::storage::link;
use crate::units::UnitSet;
use crate::words::{dates, season_line as words};
use leptos::prelude::untrack;
use std::sync::Arc;

/// The line whose facts the picture wants.
const BATTERY: &str = "#layup/battery";

/// The season from park date to ride date.
pub fn season_line(page: Page, desk: &Desk) -> El {
    let desk = desk.clone();
    let course = Derived::new(move |_| plan::course(&desk).ok().map(Arc::new));
    el("figure").class("line-of-season").set("aria-label", words::NAME).part(move || {
        match course.get() {
            Some(course) => laid_out(page, &course),
            None => {
                let there = el("a").set("href", BATTERY).text(words::NOT_YET);
                vec![el("p").class("why").child(there)]
            }
        }
    })
}

/// The picture for a page as wide as this one, with what holds on the day that is looked at.
fn laid_out(page: Page, course: &Arc<Course>) -> Vec<El> {
    let set = page.set.get();
    let last = course.last_day();
    let mut all = vec![pointed(page, course, !page.narrow.get(), set)];
    let [told, aloud] = [(); 2].map(|()| {
        let course = course.clone();
        move || match day_looked_at(page, &course) {
            Some(day) => drawing::season_day(&course, day, true, set).told,
            None => words::POINT.to_owned(),
        }
    });
    let here = course.clone();
    let slider = el("input")
        .set("type", "range")
        .set("min", "0")
        .set("max", &last.to_string())
        .set("aria-label", words::DAY_OF_SEASON)
        .live("aria-valuetext", aloud)
        .live_value(move || day_looked_at(page, &here).unwrap_or_default().to_string())
        .take("input", move |day| page.day.set(day.parse().ok()));
    all.push(slider);
    all.push(el("p").class("said").live_text(told));
    all.push(paragraph("why", &drawing::acts_told(course)));
    all.push(paragraph("hint", words::LEGEND));
    all.push(el("p").child(button("quiet", dates::SAVE, move || save_calendar(page))));
    all
}

/// The season's days as a file, each with the bike's link.
fn save_calendar(page: Page) {
    let text = untrack(|| {
        let parcel = page.parcel();
        let link = link::written(&parcel, false).unwrap_or_default();
        let link = format!("{}{link}", browser::address());
        calendar::written(&plan::dates(&parcel.kept), &page.key(), &link, browser::now())
    });
    browser::save(dates::FILE_NAME, "text/calendar;charset=utf-8", &text);
}

/// The day that was pointed at; else today, where it is one of the season.
fn day_looked_at(page: Page, course: &Course) -> Option<usize> {
    page.day.get().or_else(|| course.day_of(page.today.get()))
}

/// The picture, with a mark on the day that is looked at.
fn pointed(page: Page, course: &Arc<Course>, wide: bool, set: UnitSet) -> El {
    let line = drawing::season_line(course, wide, set);
    let width = line.size[0];
    let marked = course.clone();
    let mark = move || {
        let day = day_looked_at(page, &marked);
        day.map_or_else(String::new, |it| drawing::season_day(&marked, it, wide, set).mark)
    };
    let drawn = drawn(&line, wide).child(path("day", "").live("d", mark));
    let (course, picture) = (course.clone(), drawn.element());
    let point = move |event| {
        if let Some(share) = browser::share_across(&picture, &event) {
            page.day.set(Some(drawing::season_day_at(&course, wide, share * width)));
        }
    };
    drawn.on("pointerdown", point.clone()).on("pointermove", point)
}

pub(super) fn drawn(it: &SeasonLine, wide: bool) -> El {
    let [width, height] = it.size;
    let [left, right, base] = it.axis;
    let marks = it.marks.iter().map(|[x, y]| {
        svg("circle").class("act").set("cx", &place(*x)).set("cy", &place(*y)).set("r", "5")
    });
    let stems = it.stems.iter().map(|[x, top, bottom]| {
        path("act", &format!("M{} {}V{}", place(*x), place(*top), place(*bottom)))
    });
    let ticks = it.months.iter().chain(it.fuel.iter().map(|it| &it.0));
    let ticks = ticks.map(|x| path("month", &format!("M{} {}v8", place(*x), place(base))));
    let across = |height: f64| format!("M{} {}H{}", place(left), place(height), place(right));
    picture(if wide { "wide" } else { "narrow" }, [0.0, 0.0, width, height], &it.told)
        .child(path("band", &it.band))
        .child(path("typical", &it.typical))
        .child(path("below", &across(it.threshold)))
        .child(path("cold", &it.temperature))
        .child(path("frost", &it.frost))
        .child(path("axis", &across(base)))
        .children(ticks.chain(stems).chain(marks))
        .child(label("care", &it.below))
        .child(label("cold", &it.cold))
        .children(it.quiet.iter().map(|it| label("", it)))
        .children(it.ends.iter().chain(&it.acts).map(|it| label("key", it)))
        .maybe(it.fuel.as_ref().map(|it| label("care", &it.1)))
}

/// The battery on the day that is looked at, or on the ride date; none where its facts are lacking.
pub fn battery(page: Page, desk: &Desk, set: UnitSet) -> Option<El> {
    let course = plan::course(desk).ok()?;
    let day = day_looked_at(page, &course).unwrap_or(course.last_day());
    let BatteryDrawing { size, case, sure, doubtful, typical, threshold, across, labels, told } =
        drawing::battery(&course, day, set);
    let part = |class: &str, it: [f64; 4]| {
        let [x, y, width, height] = it.map(place);
        path(class, &format!("M{x} {y}h{width}v{height}h-{width}z"))
    };
    let line = |class: &str, height: f64| {
        let [left, right] = across.map(place);
        path(class, &format!("M{left} {}H{right}", place(height)))
    };
    let drawn = picture("battery", [0.0, 0.0, size[0], size[1]], &told)
        .child(path("tool", &case))
        .child(part("sure", sure))
        .child(part("doubtful", doubtful))
        .maybe(typical.map(|it| line("pull", it)))
        .child(line("below", threshold))
        .children(labels.iter().map(|it| label("", it)));
    Some(figure(drawn, &told))
}
