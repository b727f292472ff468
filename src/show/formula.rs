//! Putting numbers in the place of a formula's symbols.

use crate::entry::text;

/// The right side of `formula` with each symbol of `amounts` replaced by its amount, and the result behind it.
///
/// A symbol is a run of letters and digits that starts with a letter; words such as "cos" are no symbols and stay.
pub(super) fn with_numbers(
    formula: &str,
    amounts: &[(&'static str, String)],
    result: &str,
) -> String {
    let right = formula.split_once('=').map_or(formula, |(_, right)| right.trim());
    let mut out = String::new();
    let mut rest = right;
    while let Some(first) = rest.chars().next() {
        // Greek letters and accents are outside of ASCII, as are the signs; of those only letters start a symbol.
        fn letter(it: char) -> bool {
            it.is_ascii_alphabetic() || matches!(it, 'Α'..='ω')
        }
        let end = if letter(first) {
            text::place(rest, |it| !letter(it) && !it.is_ascii_digit() && it != '_')
        } else {
            text::place(rest, letter)
        };
        let (token, behind) = text::cut(rest, end.unwrap_or(rest.len()));
        // "25 °C" in a formula is a temperature, not a capacity.
        let degrees = out.ends_with('°');
        match amounts.iter().find(|(symbol, _)| *symbol == token && !degrees) {
            Some((_, amount)) => out.push_str(amount),
            None => out.push_str(token),
        }
        rest = behind;
    }
    format!("{out} = {result}")
}
