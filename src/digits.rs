//! Numbers as digits: rounded once, with a real minus sign for people, plain for programs.

/// With so many decimals and a real minus sign; never "−0".
pub fn fixed(value: f64, places: usize) -> String {
    let text = plain(value, places);
    match text.strip_prefix('-') {
        Some(digits) => format!("−{digits}"),
        None => text,
    }
}

/// With so many decimals, never more than the value.
pub fn down(value: f64, places: usize) -> String {
    let scale = (0..places).fold(1.0, |scale, _| scale * 10.0);
    // Slack for what was rounded on the way.
    fixed((value * scale + 1e-6).floor() / scale, places)
}

/// With so many decimals, as programs read it: "NaN" and "Infinity" as JavaScript has them. The standard library's own
/// printing of floats, right to any length, costs the page 7 kB. This gives the same digits up to 2^53 units of the last
/// place, seventeen digits and zeros beyond; it differs where the product below lies half way: there it rounds up.
pub fn plain(value: f64, places: usize) -> String {
    let size = value.abs();
    if !size.is_finite() {
        let text = if value.is_nan() { "NaN" } else { "Infinity" };
        return format!("{}{text}", if value < 0.0 { "-" } else { "" });
    }
    // Powers of ten are exact up to 10^22.
    let (mut scale, mut zeros) = (1.0, 0);
    for _ in 0..places {
        if scale < 1e22 && size * scale < 1e16 {
            scale *= 10.0;
        } else {
            zeros += 1;
        }
    }
    let mut units = (size * scale).round();
    let below_zero = value < 0.0 && units > 0.0;
    while units >= 1e18 {
        units /= 10.0;
        zeros += 1;
    }
    // From the last digit to the first. A picture has a thousand of these numbers: no format! for each.
    let mut text = String::with_capacity(24);
    let (mut rest, mut written) = (units as u64, 0);
    while written <= places || rest > 0 || zeros > 0 {
        if written == places && places > 0 {
            text.insert(0, '.');
        }
        let digit = if zeros > 0 { 0 } else { rest % 10 };
        text.insert(0, char::from(b'0' + digit as u8));
        if zeros > 0 {
            zeros -= 1;
        } else {
            rest /= 10;
        }
        written += 1;
    }
    if below_zero {
        text.insert(0, '-');
    }
    text
}

/// At most six significant digits, without trailing zeros: an entry's number as it was most likely typed.
///
/// ```
/// assert_eq!(torpor::digits::shortest(25.0), "25");
/// assert_eq!(torpor::digits::shortest(3.785411784), "3.78541");
/// ```
pub fn shortest(value: f64) -> String {
    brief(value, 6)
}

/// At most so many significant digits and twelve decimals, all of the whole ones, without trailing zeros.
pub fn brief(value: f64, digits: i32) -> String {
    trimmed(fixed(value, places_for(value, digits)))
}

/// Fifteen significant digits, no more than twelve behind the point, as programs read it.
pub fn exact(value: f64) -> String {
    trimmed(plain(value, places_for(value, 15)))
}

/// Decimal places that show so many significant digits of a value, no more than twelve.
fn places_for(value: f64, digits: i32) -> usize {
    let mut whole = 1;
    let mut size = value.abs();
    // Not for the infinite, which no division ends.
    while (10.0..=f64::MAX).contains(&size) {
        size /= 10.0;
        whole += 1;
    }
    while size > 0.0 && size < 1.0 && whole > digits - 12 {
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
