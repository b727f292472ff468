//! Why a text is not taken, in words that say what would be.

use std::fmt;

/// A text that could not be read. Its words stand beside the entry.
#[derive(Debug, Clone, PartialEq)]
pub enum Refusal {
    /// Not a number at all.
    NotANumber {
        /// As typed.
        text: String,
        /// What would be accepted.
        example: String,
    },
    /// A number with something behind it that is no unit of this entry.
    UnknownUnit {
        /// As typed.
        spelling: String,
        /// Symbols of the units that are offered.
        offered: String,
    },
    /// "1,000": one to three decimals, or a thousand.
    OneOrThousand {
        /// As typed.
        text: String,
        /// Written as a thousand.
        thousand: String,
        /// Written with a decimal point.
        decimal: String,
    },
    /// "30 N·m (18 ft-lb)": two amounts that are not the same.
    NotTheSame {
        /// What stands in brackets.
        text: String,
        /// The same in the unit of the first.
        other: String,
        /// The first.
        first: String,
    },
    /// Two numbers where one is wanted.
    OneNumberWanted {
        /// As typed.
        text: String,
    },
    /// Outside of what has a meaning.
    OutOfLimits {
        /// What would be accepted, as a sentence's end: "more than 0 L and at most 100 L".
        accepted: String,
    },
    /// None of the choices.
    NotAChoice {
        /// As stored.
        text: String,
        /// Those that there are.
        offered: String,
    },
    /// Not a day.
    NotADay {
        /// As typed.
        text: String,
    },
    /// Day and month can be read two ways.
    DayOrMonth {
        /// As typed.
        text: String,
        /// Both readings, written clearly.
        either: [String; 2],
    },
    /// Not a dose for an amount of fuel.
    NotADose {
        /// As typed.
        text: String,
    },
    /// Neither one temperature nor twelve.
    NotTemperatures {
        /// How many numbers there are.
        count: usize,
    },
    /// Not passes of a tightening.
    NotStages {
        /// As typed.
        text: String,
    },
    /// Not a thread with its torque.
    NotThreadTorque {
        /// As typed.
        text: String,
    },
    /// Not something with its interval.
    NotAnInterval {
        /// As typed.
        text: String,
    },
    /// A slash between two torques: a range, stages or two units, never a fraction.
    Slash,
    /// Passes that go down, or are more than any manual has.
    StageOrder,
    /// Longer than any entry is.
    TooLong,
    /// Readable alone, but not together with what else is known. The words are the law's own.
    Together(String),
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotANumber { text, example } => {
                write!(f, "“{text}” is not a number: write for example {example}")
            }
            Self::UnknownUnit { spelling, offered } => {
                write!(f, "“{spelling}” is not a unit for this: write {offered}")
            }
            Self::OneOrThousand { text, thousand, decimal } => {
                write!(f, "“{text}” can be read two ways: write {thousand} or {decimal}")
            }
            Self::NotTheSame { text, other, first } => write!(
                f,
                "“{text}” is {other}, which is not {first}: write the right one of them alone"
            ),
            Self::OneNumberWanted { text } => {
                write!(f, "“{text}” is a range: one number is wanted here")
            }
            Self::OutOfLimits { accepted } => write!(f, "has to be {accepted}"),
            Self::NotAChoice { text, offered } => {
                write!(f, "“{text}” is not known to this page: choose {offered}")
            }
            Self::NotADay { text } => {
                write!(f, "“{text}” is not a day: write for example 2026-11-14 or Nov 14 2026")
            }
            Self::DayOrMonth { text, either: [one, other] } => {
                write!(f, "“{text}” can be read two ways: write {one} or {other}")
            }
            Self::NotADose { text } => {
                write!(
                    f,
                    "“{text}” is not a dose: write for example 30 mL per 10 L, 1 fl oz per 2.5 gal, or 1:320"
                )
            }
            Self::NotTemperatures { count } => {
                write!(
                    f,
                    "{count} numbers: write one for a steady place, or twelve from January to December, spaces between"
                )
            }
            Self::NotStages { text } => write!(
                f,
                "“{text}” is not a stage: write for example 70 % then 100 %, 20 N·m then 45 N·m, or 30 N·m then 90°"
            ),
            Self::NotThreadTorque { text } => write!(
                f,
                "“{text}” is not a thread with its torque: write for example M8 22 N·m, a semicolon or a new line between them"
            ),
            Self::NotAnInterval { text } => write!(
                f,
                "“{text}” is not an interval: write for example Oil: 6000 km or 12 months, a semicolon between them"
            ),
            Self::Slash => f.write_str(
                "a slash can mean a range, stages or two units: write 22–26, or one of the two figures",
            ),
            Self::StageOrder => f.write_str(
                "stages have to go up, at most eight of them, shares up to 100 %, a turn in degrees only behind a torque",
            ),
            Self::TooLong => write!(f, "longer than {} characters: shorten it", super::LONGEST),
            Self::Together(words) => f.write_str(words),
        }
    }
}

/// A typed text short enough to be quoted in a message, cut at 40 characters.
pub(crate) fn quoted(text: &str) -> String {
    let text = text.trim();
    match text.char_indices().nth(40) {
        Some((end, _)) => format!("{}…", super::text::cut(text, end).0),
        None => text.to_owned(),
    }
}
