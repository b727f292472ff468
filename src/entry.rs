//! What a person types: the text as typed, the unit a bare number meant when it was typed, and the readers that turn
//! both into amounts or into a [`Refusal`] that says what would be accepted.

mod day;
mod dose;
mod number;
mod quantity;
mod refusal;
mod stages;
mod temperatures;
pub(crate) mod text;

pub use day::{day, written as day_written};
pub use dose::{Dose, dose};
pub(crate) use number::leading;
pub use number::{Decimal, plain_count, plain_decimal};
pub(crate) use quantity::slashed;
pub use quantity::{Read, quantity};
pub use refusal::Refusal;
pub(crate) use refusal::quoted;
pub use stages::{Stage, stages};
pub use temperatures::temperatures;
pub(crate) use text::replaced;

use crate::units::{self, Unit};
use serde::{Deserialize, Serialize};

/// The longest text that one entry takes, characters. Longer ones come from damage or malice, not from a manual.
pub const LONGEST: usize = 400;

/// Unit codes that say of an unknown fact's text what sort of value it came as, so that it is passed on unchanged.
pub mod form {
    /// No unit: a text, or a number without one.
    pub const NONE: u8 = 0;
    /// The text is the number of a choice.
    pub const CHOICE: u8 = 250;
    /// The text is a day, year-month-day.
    pub const DAY: u8 = 251;
}

/// Text as typed and the unit that a bare number meant when it was typed. This pair is the truth that is saved; it is
/// never read again under another unit set.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// As typed.
    pub text: String,
    /// Code of the unit that a bare number means; [`form::NONE`] where there is none.
    pub unit: u8,
    /// When it was last typed, milliseconds since 1970; 0 where not known. For telling apart two tabs' edits.
    pub edited: u64,
}

impl Entry {
    /// An entry that was not typed by hand: the example's, or one read from a link.
    pub fn new(text: impl Into<String>, unit: u8) -> Self {
        Self { text: text.into(), unit, edited: 0 }
    }

    /// Whether the same was typed, whenever it was.
    pub fn same(&self, other: &Self) -> bool {
        self.text == other.text && self.unit == other.unit
    }

    /// Not known. A blank is never a zero.
    pub fn is_blank(&self) -> bool {
        self.text.chars().all(char::is_whitespace)
    }

    /// The unit that a bare number means, where this page knows its code.
    pub fn unit(&self) -> Option<&'static Unit> {
        units::by_code(self.unit)
    }
}
