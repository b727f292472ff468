//! Numbers that people read in two ways, and that are asked about instead of guessed.

use crate::entry::text::{self, joined};
use crate::entry::{self, Refusal};
use crate::words::fuel as words;

/// "18.500 km" is eighteen thousand where a point parts them, and no odometer shows meters: it is asked which.
pub(super) fn thousands(text: &str) -> Result<(), Refusal> {
    let number = text.trim();
    let Some((whole, rest)) = number.split_once('.') else { return Ok(()) };
    let end = text::place(rest, |it| !it.is_ascii_digit()).unwrap_or(rest.len());
    let whole_too = !whole.is_empty() && whole.chars().all(|it| it.is_ascii_digit());
    if end != 3 || !whole_too {
        return Ok(());
    }
    let digits = text::cut(rest, end).0;
    Err(Refusal::OneOrThousand {
        text: entry::quoted(number),
        thousand: joined(&[whole, digits], ""),
        decimal: joined(&[whole, ".", digits, "0"], ""),
    })
}

/// "1/2" on a gauge is half of the tank, and the blank's unit would make half a gallon of it.
pub(super) fn half(text: &str) -> Result<(), Refusal> {
    let bare = text.ends_with(|it: char| it.is_ascii_digit());
    if matches!(text, "½" | "¼" | "¾") || (bare && entry::slashed(text)) {
        return Err(Refusal::Together(words::HALF_OF_WHAT.to_owned()));
    }
    Ok(())
}
