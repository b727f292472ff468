//! A bike from a link before anything of it is kept: what it says, beside what is kept here.

use super::element::{El, button, el, paragraph, span, while_so};
use super::line::fold_button;
use super::live::Live;
use super::look::{self, Mine};
use super::page::Page;
use crate::garage::Kept;
use crate::show;
use crate::storage::link::{self, Row};
use crate::words::page as words;
use std::rc::Rc;

/// What a link carries, and what can be done with it.
pub fn preview(page: Page, fragment: &str) -> Vec<El> {
    let title = el("h1").set("id", "shared-title").text(words::SHARED_BIKE);
    let leave = button("quiet", words::LEAVE_IT, move || look::leave(page));
    let parcel = match link::read(fragment) {
        Ok(parcel) => parcel,
        Err(why) => {
            let why = paragraph("care", &why.to_string()).set("role", "alert");
            return vec![title, why, el("p").child(leave)];
        }
    };
    let made = format!("{}{}. {}", words::MADE_ON, show::long_day(parcel.made), words::SHARED_HINT);
    let mine = look::mine(page, &parcel.kept).map(Rc::new);
    let nothing = Kept::default();
    let here = mine.as_ref().map_or(&nothing, |it| &it.kept);
    let rows = link::compared(here, &parcel.kept);
    let new = Rc::new(parcel.kept);

    let act = |class: &str, name: &str, does: fn(Page, Kept)| {
        let new = new.clone();
        button(class, name, move || {
            does(page, (*new).clone());
            // Another's figures do not stay in the address.
            look::leave(page);
        })
    };
    let mut row = el("p").class("row").child(act("do", words::KEEP_AS_NEW, look::keep_as_new));
    let mut section = el("section")
        .class("shared")
        .set("aria-labelledby", "shared-title")
        .child(title)
        .child(paragraph("why", &made));
    if let Some(mine) = &mine {
        section = section.child(compared_with(mine));
        let (mine, new) = (mine.clone(), new.clone());
        row = row.child(button("do", words::REPLACE, move || {
            look::replace(page, &mine, &new);
            look::leave(page);
        }));
    }
    row = row.child(act("quiet", words::ONLY_LOOK, look::only_look)).child(leave);
    section = section.child(row);
    if mine.is_some() {
        let kept = page.store.get_untracked().is_some();
        let copy = if kept { words::REPLACE_COPY } else { words::REPLACE_NO_COPY };
        section = section.child(paragraph("hint", words::REPLACE_HINT).text(copy));
    }
    if !new.bike.fasteners.is_empty() {
        let count = new.bike.fasteners.len().to_string();
        section = section.child(el("dl").child(fact(words::KEPT_FASTENERS, &count)));
    }
    vec![section.children(laid_out(rows, mine.is_some()))]
}

fn compared_with(mine: &Mine) -> El {
    let same = if mine.same { words::COMPARED_SAME } else { words::COMPARED_OTHER };
    paragraph("", &words::compared(&mine.name())).text(same)
}

const SAME: usize = 4;

/// Where a fact is shown, by the place of its heading; behind them what is the same, and what is not shown.
fn part_of(row: &Row, compared: bool) -> usize {
    match (row.here.is_empty(), row.there.is_empty()) {
        // Nothing of the garage goes.
        (_, true) if row.garage => SAME + 1,
        _ if row.here == row.there => SAME,
        _ if row.garage && compared => 3,
        (true, _) => 1,
        (_, true) => 2,
        _ => 0,
    }
}

fn list(rows: &[Row], part: usize, compared: bool) -> Vec<El> {
    let mut list = Vec::new();
    for row in rows {
        if part_of(row, compared) == part {
            list.push(both(row));
        }
    }
    list
}

/// What differs, what only one of them has, what the garage has; what is the same is counted and may be unfolded.
fn laid_out(rows: Vec<Row>, compared: bool) -> Vec<El> {
    const CAPS: [&str; SAME] =
        [words::DIFFERENT, words::ONLY_IN_THE_LINK, words::ONLY_HERE, words::OF_THE_GARAGE];
    let mut all = Vec::new();
    for (part, cap) in CAPS.iter().enumerate() {
        let list = list(&rows, part, compared);
        if !list.is_empty() {
            if compared {
                all.push(el("h2").text(cap));
            }
            all.push(el("dl").children(list));
        }
    }
    if compared && all.is_empty() {
        all.push(paragraph("", words::NO_DIFFERENCE));
    }
    let same = list(&rows, SAME, compared).len();
    if same > 0 {
        let open = Live::new(false);
        let turn = move || open.update(|it| *it = !*it);
        let fold = fold_button("same-title", move || open.get(), turn).class("more");
        all.push(el("p").child(fold.text(&words::same(same))));
        let inside = move || vec![el("dl").children(list(&rows, SAME, compared))];
        all.push(while_so("div", move || open.get(), inside));
    }
    all
}

/// A fact on both sides, or on one.
fn both(row: &Row) -> El {
    let only = if row.there.is_empty() { &row.here } else { &row.there };
    let made = if row.here.is_empty() || row.there.is_empty() || row.here == row.there {
        fact(&row.label, only)
    } else {
        let side = |of: &str, text: &str| el("dd").child(span("why", of)).text(text);
        el("div")
            .child(el("dt").text(&row.label))
            .child(side(words::HERE, &row.here))
            .child(side(words::IN_THE_LINK, &row.there))
    };
    match &row.refused {
        Some(why) => made.child(el("dd").class("care").text(&words::refused(why))),
        None => made,
    }
}

fn fact(label: &str, text: &str) -> El {
    el("div").child(el("dt").text(label)).child(el("dd").text(text))
}
