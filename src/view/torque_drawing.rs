//! Pictures of the torque line: wrench and adapter, and the order of tightening.

use super::element::{El, el, paragraph};
use super::picture::{SAYS, picture};
use crate::drawing::{AdapterDrawing, PatternDrawing};
use crate::words::{drawings as words, page};

/// Wrench and adapter, and how the angle counts.
pub fn adapter(it: &AdapterDrawing) -> El {
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
    let picture = picture("assembled", it.frame).set(SAYS, &it.told).holding(&|drawn| {
        for (class, d) in paths {
            if !d.is_empty() {
                drawn.path(class, d);
            }
        }
        for (class, all) in texts {
            drawn.labels(class, all);
        }
    });
    figure(picture).child(caption(words::ANGLE_COUNTS))
}

/// The order of tightening.
pub fn pattern(it: &PatternDrawing) -> El {
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
        .child(paragraph("hint", &format!("{}{}.", page::SOURCE, it.source)))
}

/// A picture whose caption is still to be added.
pub fn figure(picture: El) -> El {
    el("figure").class("drawing").child(picture)
}

fn caption(text: &str) -> El {
    el("figcaption").class("hint").text(text)
}
