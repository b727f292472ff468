//! What a calculation lacks, and how results that lack something are joined: all that any of them lacks is said.

use super::Id;
use crate::entry::Refusal;
use std::fmt::Display;
use std::ops::Deref;
use std::sync::Arc;

/// A fact that a calculation lacks.
#[derive(Debug, Clone, PartialEq)]
pub enum Lack {
    /// Not known.
    Missing(Id),
    /// Typed, but not to be used as it is.
    Refused(Id, Refusal),
}

impl Lack {
    /// Why it is refused; `None` where it is only missing.
    pub fn refusal(&self) -> Option<&Refusal> {
        match self {
            Lack::Missing(_) => None,
            Lack::Refused(_, why) => Some(why),
        }
    }

    /// The fact it is about.
    pub fn id(&self) -> Id {
        match self {
            Lack::Missing(id) | Lack::Refused(id, _) => *id,
        }
    }
}

/// All that a result lacks, in the order asked. A shared handle: results are passed on and copied in many places, and each
/// would carry the code that copies and drops a list.
#[derive(Debug, Clone, PartialEq)]
pub struct Lacks(Arc<Vec<Lack>>);

impl Lacks {
    /// No lack of its own: what is lacking is told by another result.
    pub fn none() -> Self {
        Self(Arc::default())
    }

    /// One fact that is not known.
    #[inline(never)]
    pub fn missing(id: Id) -> Self {
        Self(Arc::new(vec![Lack::Missing(id)]))
    }

    /// One fact that cannot be used as it is.
    #[inline(never)]
    pub fn refused(id: Id, why: Refusal) -> Self {
        Self(Arc::new(vec![Lack::Refused(id, why)]))
    }

    /// One fact that does not go together with others, in the words of the law that found it.
    #[inline(never)]
    pub fn together(id: Id, words: &dyn Display) -> Self {
        Self::refused(id, Refusal::Together(words.to_string()))
    }

    /// These, then the others.
    #[inline(never)]
    pub fn and(self, others: Self) -> Self {
        Self(Arc::new([self.0.as_slice(), others.0.as_slice()].concat()))
    }

    /// Each fact once, as the page says them.
    #[inline(never)]
    pub fn each_once(&self) -> Vec<Lack> {
        let mut once: Vec<Lack> = Vec::new();
        for it in self.iter() {
            if !once.iter().any(|said| said.id() == it.id()) {
                once.push(it.clone());
            }
        }
        once
    }
}

impl Deref for Lacks {
    type Target = [Lack];

    fn deref(&self) -> &[Lack] {
        &self.0
    }
}

/// A result, or all the facts it lacks: not the first alone.
pub type Told<T> = Result<T, Lacks>;

/// Both, or all that either lacks.
pub fn both<A, B>(a: Told<A>, b: Told<B>) -> Told<(A, B)> {
    match (a, b) {
        (Ok(a), Ok(b)) => Ok((a, b)),
        (Err(a), Err(b)) => Err(a.and(b)),
        (Err(lacks), Ok(_)) | (Ok(_), Err(lacks)) => Err(lacks),
    }
}

/// All three, or all that any lacks.
pub fn all3<A, B, C>(a: Told<A>, b: Told<B>, c: Told<C>) -> Told<(A, B, C)> {
    both(both(a, b), c).map(|((a, b), c)| (a, b, c))
}
