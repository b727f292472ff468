//! Pictures of the torque line: wrench and adapter, and the order of tightening.

use super::element::{El, el, paragraph, svg};
use super::leaf::Leaves;
use super::live::Derived;
use super::page::Page;
use super::picture::{SAYS, picture, place};
use crate::drawing::{self, AdapterDrawing};
use crate::entry::text::joined;
use crate::plan::{OnWrench, Pictured};
use crate::words::{drawings as words, page as page_words};

/// Wrench and adapter, and how the angle counts.
pub fn adapter(page: Page, pictured: Derived<Pictured>) -> El {
    let picture = svg("svg").class("assembled").set("role", "img");
    let [frame, says] = ["viewBox", SAYS].map(|it| picture.attribute(it));
    let leaves = Leaves::of(&picture);
    let draw = move || {
        let Some(OnWrench { wrench, adapter, angle }) = pictured.get().adapter else { return };
        let drawn = drawing::adapter(wrench, adapter, angle, page.set.get());
        frame.say(&joined(&drawn.frame.map(place), " "));
        says.say(&drawn.told);
        adapter_drawn(&leaves, &drawn);
    };
    figure(picture).child(caption(words::ANGLE_COUNTS)).follow(draw)
}

fn adapter_drawn(leaves: &Leaves, it: &AdapterDrawing) {
    let paths = [
        ("dim", &it.dimensions),
        ("ext", &it.extension),
        ("arc", &it.arc),
        ("tool", &it.wrench),
        ("link", &it.adapter),
        ("tool", &it.hexagon),
        ("full", &it.square),
        ("tool", &it.fingers),
        ("pull", &it.pull),
    ];
    let texts = [("", &it.names), ("key", &it.figures), ("care", &it.cares)];
    for (class, d) in paths {
        if !d.is_empty() {
            leaves.path(class, d);
        }
    }
    for (class, all) in texts {
        leaves.labels(class, all);
    }
    leaves.end();
}

/// The order of tightening; nothing for so few or many bolts that there is none.
pub fn pattern(bolts: usize) -> El {
    let Some(it) = drawing::pattern(bolts) else { return el("div") };
    // The first bolt stands out, so that the eye finds where to begin.
    let class = |at: usize| if at == 0 { "link" } else { "tool" };
    let picture = picture("bolts", it.frame).set(SAYS, &it.told).holding(&|drawn| {
        drawn.path("dim", &it.circle);
        drawn.path("joins", &it.joins);
        for (at, head) in it.heads.iter().enumerate() {
            drawn.path(class(at), head);
        }
        drawn.labels("key", &it.numbers);
    });
    figure(picture)
        .child(caption(words::PATTERN_CAPTION))
        .child(paragraph("hint", &format!("{}{}.", page_words::SOURCE, it.source)))
}

/// A picture whose caption is still to be added.
pub fn figure(picture: El) -> El {
    el("figure").class("drawing").child(picture)
}

fn caption(text: &str) -> El {
    el("figcaption").class("hint").text(text)
}
