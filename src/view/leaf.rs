//! What may change with every letter: leaves that are told one after another, of which only what differs from before is
//! written on the page. To make elements anew costs several times as much, most of it in laying them out.

use super::element::{El, Words, el, svg};
use super::follow::follow;
use std::cell::RefCell;

/// Elements without elements inside; those of one name all have the same attributes.
pub struct Leaves(El, RefCell<Grown>);

#[derive(Default)]
struct Grown {
    all: Vec<Leaf>,
    /// How many were told since the first.
    told: usize,
}

struct Leaf {
    tag: &'static str,
    element: El,
    attributes: Vec<(&'static str, Words)>,
    words: Option<Words>,
}

impl Leaves {
    /// The leaves of an element that holds nothing else; none as yet.
    pub fn of(around: &El) -> Self {
        Self(around.same(), RefCell::default())
    }

    /// Goes on to the next one: where it has another name than before, it and those behind it are made anew.
    pub fn next(&self, tag: &'static str, class: &str) -> &Self {
        let mut grown = self.1.borrow_mut();
        let at = grown.told;
        if grown.all.get(at).is_none_or(|it| it.tag != tag) {
            grown.cut(at);
            let element = if matches!(tag, "path" | "text") { svg(tag) } else { el(tag) };
            self.0.same().child(element.same());
            grown.all.push(Leaf { tag, element, attributes: Vec::new(), words: None });
        }
        grown.told = at + 1;
        drop(grown);
        self.set("class", class)
    }

    /// Sets an attribute of it.
    pub fn set(&self, name: &'static str, value: &str) -> &Self {
        self.change(&|leaf| match leaf.attributes.iter().find(|it| it.0 == name) {
            Some((_, it)) => it.say(value),
            None => {
                let it = leaf.element.attribute(name);
                it.say(value);
                leaf.attributes.push((name, it));
            }
        })
    }

    /// Sets its text.
    pub fn text(&self, text: &str) -> &Self {
        self.change(&|leaf| {
            let element = &leaf.element;
            leaf.words.get_or_insert_with(|| element.same().words().1).say(text);
        })
    }

    fn change(&self, how: &dyn Fn(&mut Leaf)) -> &Self {
        if let Some(leaf) = self.1.borrow_mut().last() {
            how(leaf);
        }
        self
    }

    /// Those that were told are all there are; the next one is the first.
    pub fn end(&self) {
        let mut grown = self.1.borrow_mut();
        let told = std::mem::take(&mut grown.told);
        grown.cut(told);
    }
}

impl Grown {
    /// The last one told.
    fn last(&mut self) -> Option<&mut Leaf> {
        self.all.get_mut(self.told.wrapping_sub(1))
    }

    /// Takes away all from a place on.
    fn cut(&mut self, from: usize) {
        while self.all.len() > from
            && let Some(gone) = self.all.pop()
        {
            gone.element.element().remove();
        }
    }
}

impl El {
    /// Holds leaves that stay as they are.
    pub fn holding(self, tell: &dyn Fn(&Leaves)) -> Self {
        tell(&Leaves::of(&self));
        self
    }

    /// Holds leaves that follow signals.
    pub fn leaves(self, tell: impl Fn(&Leaves) + 'static) -> Self {
        self.leaves_of(Box::new(tell))
    }

    fn leaves_of(self, tell: Box<dyn Tells>) -> Self {
        let leaves = Leaves::of(&self);
        follow(Box::new(move || {
            tell.tell(&leaves);
            leaves.end();
        }));
        self
    }
}

/// Tells leaves.
trait Tells {
    fn tell(&self, leaves: &Leaves);
}

impl<F: Fn(&Leaves)> Tells for F {
    fn tell(&self, leaves: &Leaves) {
        self(leaves);
    }
}
