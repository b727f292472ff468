//! What pictures are made of.

use super::element::{El, svg};
use super::leaf::Leaves;
use crate::digits;
use crate::drawing::Label;
use crate::entry::text::joined;

/// A picture, still without what it says in words; `frame` is left, top, width and height.
pub fn picture(class: &str, frame: [f64; 4]) -> El {
    svg("svg").class(class).set("viewBox", &joined(&frame.map(place), " ")).set("role", "img")
}

/// What a picture says in words.
pub const SAYS: &str = "aria-label";

impl Leaves {
    /// A line or an outline.
    pub fn path(&self, class: &str, d: &str) {
        self.next("path", class).set("d", d);
    }

    /// Texts, each at its place.
    pub fn labels(&self, class: &str, all: &[Label]) {
        for it in all {
            self.next("text", class).set("x", &place(it.x)).set("y", &place(it.y));
            self.set("text-anchor", it.anchor).text(&it.text);
        }
    }
}

/// A place as it stands in an attribute.
pub fn place(it: f64) -> String {
    digits::plain(it, 1)
}
