//! Entries by fact.

use crate::entry::Entry;
use crate::facts::{Facts, Id};
use serde::{Deserialize, Serialize};
use std::ops::Index;

/// Entries by fact, in the facts' order. Facts that this page does not know are kept and passed on.
///
/// A sorted list: a bike has a hundred of them at the most, and the standard library's map costs 5 kB on the wire.
/// Written, it is what the map was.
///
/// ```
/// use torpor::{entry::Entry, facts::{Facts, Id}, garage::Entries};
/// let mut entries = Entries::from([(Id(40), Entry::new("1 L", 0))]);
/// assert_eq!(entries.insert(Id(10), Entry::new("15 L", 0)), None);
/// assert_eq!(entries.keys().collect::<Vec<_>>(), [&Id(10), &Id(40)]);
/// assert!(entries.entry(Id(11)).is_blank());
/// ```
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(from = "Vec<(Id, Entry)>")]
pub struct Entries(Vec<(Id, Entry)>);

impl Entries {
    /// None.
    pub const fn new() -> Self {
        Self(Vec::new())
    }

    fn place(&self, id: Id) -> Result<usize, usize> {
        self.0.binary_search_by_key(&id, |it| it.0)
    }

    /// The entry of a fact.
    pub fn get(&self, id: &Id) -> Option<&Entry> {
        self.place(*id).ok().map(|at| &self.0[at].1)
    }

    /// The entry of a fact, to be changed; a blank one is put there where there is none.
    pub fn at(&mut self, id: Id) -> &mut Entry {
        let at = self.place(id).unwrap_or_else(|at| {
            self.0.insert(at, (id, Entry::default()));
            at
        });
        &mut self.0[at].1
    }

    /// Puts an entry in; the one that was there.
    pub fn insert(&mut self, id: Id, entry: Entry) -> Option<Entry> {
        let known = self.place(id).is_ok();
        let before = std::mem::replace(self.at(id), entry);
        known.then_some(before)
    }

    /// Takes an entry out.
    pub fn remove(&mut self, id: &Id) -> Option<Entry> {
        self.place(*id).ok().map(|at| self.0.remove(at).1)
    }

    /// Keeps those of which `keep` holds.
    pub fn retain(&mut self, mut keep: impl FnMut(&Id, &Entry) -> bool) {
        self.0.retain(|(id, entry)| keep(id, entry));
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Facts with their entries.
    pub fn iter(&self) -> impl Iterator<Item = (&Id, &Entry)> {
        self.0.iter().map(|(id, entry)| (id, entry))
    }

    /// Facts.
    pub fn keys(&self) -> impl Iterator<Item = &Id> {
        self.0.iter().map(|it| &it.0)
    }

    /// Entries.
    pub fn values(&self) -> impl Iterator<Item = &Entry> {
        self.0.iter().map(|it| &it.1)
    }

    /// Puts all of these in.
    pub fn extend(&mut self, other: impl IntoIterator<Item = (Id, Entry)>) {
        for (id, entry) in other {
            self.insert(id, entry);
        }
    }
}

impl Facts for Entries {
    fn entry(&self, id: Id) -> Entry {
        self.get(&id).cloned().unwrap_or_default()
    }
}

impl Index<&Id> for Entries {
    type Output = Entry;

    /// Panics where there is none; for tests and examples.
    fn index(&self, id: &Id) -> &Entry {
        &self.0[self.place(*id).unwrap_or(usize::MAX)].1
    }
}

impl FromIterator<(Id, Entry)> for Entries {
    fn from_iter<I: IntoIterator<Item = (Id, Entry)>>(all: I) -> Self {
        let mut entries = Self::new();
        entries.extend(all);
        entries
    }
}

impl From<Vec<(Id, Entry)>> for Entries {
    fn from(all: Vec<(Id, Entry)>) -> Self {
        all.into_iter().collect()
    }
}

impl<const N: usize> From<[(Id, Entry); N]> for Entries {
    fn from(all: [(Id, Entry); N]) -> Self {
        all.into_iter().collect()
    }
}

impl IntoIterator for Entries {
    type Item = (Id, Entry);
    type IntoIter = std::vec::IntoIter<(Id, Entry)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}
