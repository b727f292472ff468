//! What entries and lines work on.

use super::live::Typed;
use super::page::{Page, Sheet};
use crate::entry::Entry;
use crate::facts::{Facts, Id};
use crate::plan::{self, Held};
use std::sync::Arc;

/// What entries and lines work on: the bike's sheet, one fastener or wrench before it, or the blank sheet of a quick sum.
#[derive(Clone)]
pub struct Desk {
    page: Page,
    /// Facts that come before the bike's; of a quick sum, all there are.
    own: Option<Sheet>,
    /// Nothing of a quick sum is kept.
    pub quick: bool,
}

impl Desk {
    /// The bike's.
    pub fn of_bike(page: Page) -> Self {
        Self { page, own: None, quick: false }
    }

    /// One kept fastener of the bike, or one wrench of the drawer.
    pub fn of_item(page: Page, item: Sheet) -> Self {
        Self { page, own: Some(item), quick: false }
    }

    /// A blank one of its own.
    pub fn quick(page: Page) -> Self {
        Self { page, own: Some(Sheet::blank(|_| true)), quick: true }
    }

    /// The signal of a fact. A wrench's is that of the first one in the drawer, unless the desk is another's.
    pub fn signal(&self, id: Id) -> Typed {
        let own = self.own.as_ref().and_then(|it| it.signal(id));
        own.or_else(|| self.page.sheet().signal(id))
            .or_else(|| self.page.wrenches.first(id))
            .unwrap_or_default()
    }

    /// The wrenches at hand.
    pub fn drawer(&self) -> Arc<Vec<Held>> {
        if self.quick { Arc::new(vec![plan::held(self, 0)]) } else { self.page.drawer.get() }
    }
}

impl Facts for Desk {
    fn entry(&self, id: Id) -> Entry {
        self.signal(id).get()
    }
}
