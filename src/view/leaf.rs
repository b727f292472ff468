//! What may change with every letter: leaves that are told one after another, of which only what differs from before is
//! written on the page. To make elements anew costs several times as much, most of it in laying them out.

use super::element::{Attribute, El, Words, inside};
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
    attributes: Vec<Attribute>,
    words: Option<Words>,
}

impl Leaves {
    /// The leaves of an element that holds nothing else; none as yet.
    pub fn of(around: &El) -> Self {
        Self(around.same(), RefCell::default())
    }

    /// Goes on to the next one.
    pub fn next(&self, tag: &'static str, class: &str) -> &Self {
        let mut grown = self.1.borrow_mut();
        let at = grown.told;
        grown.told += 1;
        let before = grown.all.get(at);
        if before.is_none_or(|it| it.tag != tag) {
            let element = inside(&self.0, tag);
            match before {
                Some(it) => it.element.give_way_to(&element),
                None => drop(self.0.same().child(element.same())),
            }
            let leaf = Leaf { tag, element, attributes: Vec::new(), words: None };
            match grown.all.get_mut(at) {
                Some(it) => *it = leaf,
                None => grown.all.push(leaf),
            }
        }
        drop(grown);
        self.set("class", class)
    }

    /// Sets an attribute of it.
    pub fn set(&self, name: &'static str, value: &str) -> &Self {
        self.change(&|leaf| {
            if !leaf.attributes.iter().any(|it| it.is(name)) {
                leaf.attributes.push(leaf.element.attribute(name));
            }
            leaf.attributes.iter().filter(|it| it.is(name)).for_each(|it| it.say(value));
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
        let mut grown = self.1.borrow_mut();
        let at = grown.told.wrapping_sub(1);
        if let Some(leaf) = grown.all.get_mut(at) {
            how(leaf);
        }
        self
    }

    /// Those that were told are all there are; the next one is the first.
    pub fn end(&self) {
        let mut grown = self.1.borrow_mut();
        let told = std::mem::take(&mut grown.told);
        while grown.all.len() > told {
            if let Some(gone) = grown.all.pop() {
                gone.element.element().remove();
            }
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
