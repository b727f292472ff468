//! Numbers as digits: rounded once, with a real minus sign for people, plain for programs.

/// With so many decimals and a real minus sign; never "−0".
pub fn fixed(value: f64, places: usize) -> String {
    let text = plain(value, places);
    match text.strip_prefix('-') {
        Some(digits) => format!("−{digits}"),
        None => text,
    }
}

/// With so many decimals, as programs read it. The standard library's own printing of floats, right to any length, costs
/// the page 7 kB; up to 2^53 units of the last place this rounds to the same digits, but for ties that no double is.
pub fn plain(value: f64, places: usize) -> String {
    let scale = (0..places).fold(1.0, |power, _| power * 10.0);
    let units = (value.abs() * scale).round() as u64;
    let digits = format!("{units:0>width$}", width = places + 1);
    let (whole, part) = digits.split_at(digits.len() - places);
    let sign = if value < 0.0 && units > 0 { "-" } else { "" };
    let point = if places > 0 { "." } else { "" };
    format!("{sign}{whole}{point}{part}")
}

/// At most six significant digits, without trailing zeros: an entry's number as it was most likely typed.
///
/// ```
/// assert_eq!(torpor::digits::shortest(25.0), "25");
/// assert_eq!(torpor::digits::shortest(3.785411784), "3.78541");
/// ```
pub fn shortest(value: f64) -> String {
    if value == 0.0 || !value.is_finite() {
        return "0".to_owned();
    }
    trimmed(fixed(value, places_for(value, 6)))
}

/// Fifteen significant digits, as programs read it.
pub fn exact(value: f64) -> String {
    trimmed(plain(value, places_for(value, 15)))
}

/// Decimal places that show so many significant digits of a value, no more than twelve.
fn places_for(value: f64, digits: i32) -> usize {
    let mut whole = 1;
    let mut size = value.abs();
    while size >= 10.0 {
        size /= 10.0;
        whole += 1;
    }
    while size < 1.0 && whole > digits - 12 {
        size *= 10.0;
        whole -= 1;
    }
    (digits - whole).max(0).min(12) as usize
}

/// Without zeros behind the last decimal that says something.
fn trimmed(text: String) -> String {
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}
