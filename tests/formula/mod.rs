//! The record of an answer has to be whole: each symbol of the formula stands among the terms, so that the page can put
//! the numbers in their place.

use torpor::working::Answer;

const FUNCTIONS: [&str; 8] = ["cos", "sin", "tan", "ln", "exp", "min", "max", "ceil"];

/// Fails where a symbol on the right has no term, or the left side is not a single symbol.
#[track_caller]
pub fn is_whole<T>(answer: &Answer<T>) {
    let formula = answer.law.formula;
    let (left, right) = formula.split_once(" = ").expect("a formula has two sides");
    assert!(left.chars().all(char::is_alphanumeric), "left side of {formula}");
    for symbol in right.split(|it: char| !it.is_alphanumeric()) {
        let named = symbol.starts_with(char::is_alphabetic) && !FUNCTIONS.contains(&symbol);
        let stands = answer.terms.iter().any(|it| it.symbol == symbol);
        assert!(!named || stands, "{symbol} of {formula} has no term");
    }
    assert!(!answer.law.source.is_empty() && !answer.law.holds.is_empty(), "record of {formula}");
}
