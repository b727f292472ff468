//! Pictures of the torque line: wrench and adapter, and the order of tightening.

use super::element::{El, el, paragraph};
use super::picture::{label, path, picture};
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
    let picture = picture("assembled", it.frame, &it.told)
        .children(paths.iter().filter(|(_, d)| !d.is_empty()).map(|(class, d)| path(class, d)))
        .children(texts.iter().flat_map(|(class, all)| all.iter().map(|it| label(class, it))));
    figure(picture, words::ANGLE_COUNTS)
}

/// The order of tightening.
pub fn pattern(it: &PatternDrawing) -> El {
    // The first bolt stands out, so that the eye finds where to begin.
    let class = |at: usize| if at == 0 { "link" } else { "tool" };
    let picture = picture("bolts", it.frame, &it.told)
        .child(path("dim", &it.circle))
        .child(path("joins", &it.joins))
        .children(it.heads.iter().enumerate().map(|(at, it)| path(class(at), it)))
        .children(it.numbers.iter().map(|it| label("key", it)));
    figure(picture, words::PATTERN_CAPTION)
        .child(paragraph("hint", &format!("{}{}.", page::SOURCE, it.source)))
}

/// A picture with its caption.
pub fn figure(picture: El, caption: &str) -> El {
    el("figure").class("drawing").child(picture).child(el("figcaption").class("hint").text(caption))
}
