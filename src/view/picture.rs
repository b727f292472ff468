//! What pictures are made of.

use super::element::{El, svg};
use crate::digits;
use crate::drawing::Label;
use crate::entry::text::joined;

/// A picture with what it says in words; `frame` is left, top, width and height.
pub fn picture(class: &str, frame: [f64; 4], told: &str) -> El {
    svg("svg")
        .class(class)
        .set("viewBox", &joined(&frame.map(place), " "))
        .set("role", "img")
        .set("aria-label", told)
}

/// A line or an outline.
pub fn path(class: &str, d: &str) -> El {
    svg("path").class(class).set("d", d)
}

/// A text at its place.
pub fn label(class: &str, it: &Label) -> El {
    svg("text")
        .class(class)
        .set("x", &place(it.x))
        .set("y", &place(it.y))
        .set("text-anchor", it.anchor)
        .text(&it.text)
}

/// A place as it stands in an attribute.
pub fn place(it: f64) -> String {
    digits::plain(it, 1)
}
