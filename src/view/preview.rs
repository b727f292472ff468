//! A bike from a link before anything of it is kept: what it says, beside what is kept here.

use super::element::{El, button, el, paragraph, span};
use super::look::{self, Given};
use super::page::Page;
use crate::garage::Kept;
use crate::show;
use crate::storage::compare::{Row, compared};
use crate::storage::link;
use crate::words::{backup, page as words};
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
    let given = Given { mine: look::mine(page, &parcel.kept), new: parcel.kept };
    let given = Rc::new(given);
    let act = |class: &str, name: &str, does: fn(Page, &Given)| {
        let given = given.clone();
        button(class, name, move || {
            does(page, &given);
            // Another's figures do not stay in the address.
            look::leave(page);
        })
    };
    let mut row = el("p").class("row").child(act("do", words::KEEP_AS_NEW, look::keep_as_new));
    let mut all = vec![title, paragraph("why", &made)];
    let mut said = Vec::new();
    let nothing = Kept::default();
    let mut here = &nothing;
    if let Some(mine) = &given.mine {
        row = row.child(act("do", words::REPLACE, look::replace));
        let same = if mine.same { words::COMPARED_SAME } else { words::COMPARED_OTHER };
        all.push(paragraph("", &words::compared(&mine.name())).text(same));
        let kept = page.store.get_untracked().is_some();
        let copy = if kept { words::REPLACE_COPY } else { words::REPLACE_NO_COPY };
        said.push(paragraph("hint", words::REPLACE_HINT).text(copy));
        here = &mine.kept;
    }
    row = row.child(act("quiet", words::ONLY_LOOK, look::only_look)).child(leave);
    let fasteners = given.new.bike.fasteners.len();
    if fasteners > 0 {
        let count = el("dd").text(&fasteners.to_string());
        let count = el("div").child(el("dt").text(words::KEPT_FASTENERS)).child(count);
        all.push(el("dl").child(count));
    }
    const OF_A_LINK: [&str; 3] = [words::ONLY_IN_THE_LINK, words::IN_THE_LINK, words::ONLY_HERE];
    laid_out(&mut all, &compared(here, &given.new), OF_A_LINK);
    // What can be done with it comes after what it is.
    all.extend(said);
    all.push(row);
    vec![el("section").class("shared").set("aria-labelledby", "shared-title").children(all)]
}

const SAME: usize = 4;

/// Where a fact is shown, by the place of its heading; behind them what is the same, and what is not shown.
fn part_of(row: &Row) -> usize {
    match (row.here.is_empty(), row.there.is_empty()) {
        // Nothing of the garage goes.
        (_, true) if row.garage => SAME + 1,
        _ if row.here == row.there => SAME,
        _ if row.garage => 3,
        (true, _) => 1,
        (_, true) => 2,
        _ => 0,
    }
}

/// What differs, what only one of them has, what the garage has; what is the same is counted and may be unfolded. `there`: the
/// words for what only the other has, over what it says, and for what it has not.
pub fn laid_out(all: &mut Vec<El>, rows: &[Row], there: [&str; 3]) {
    let caps = [words::DIFFERENT, there[0], there[2], words::OF_THE_GARAGE, ""];
    for (part, cap) in caps.iter().enumerate() {
        let mut list = Vec::new();
        for row in rows {
            if part_of(row) == part {
                list.push(both(row, there[1]));
            }
        }
        if list.is_empty() {
            continue;
        }
        let count = list.len();
        let list = el("dl").children(list);
        if part == SAME {
            let fold = el("summary").text(&words::same(count));
            all.push(el("details").child(fold).child(list));
        } else {
            all.push(el("h2").text(cap));
            all.push(list);
        }
    }
}

/// A fact on both sides, or on one.
fn both(row: &Row, there: &str) -> El {
    let mut made = el("div").child(el("dt").text(&row.label));
    let differ = part_of(row) != SAME;
    let two = differ && !row.here.is_empty() && !row.there.is_empty();
    for (of, text, stays) in [(words::HERE, &row.here, false), (there, &row.there, true)] {
        if two {
            let stays = if row.taken == Some(stays) { backup::STAYS } else { "" };
            let said = el("dd").child(span("why", of)).text(text);
            made = made.child(said.child(span("why", stays)));
        } else if !text.is_empty() && (differ || of == words::HERE) {
            made = made.child(el("dd").text(text));
        }
    }
    if let Some(why) = &row.refused {
        made = made.child(el("dd").class("care").text(&words::refused(why)));
    }
    made
}
