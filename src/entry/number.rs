//! One number at the start of a text: comma or point, spaces between thousands, a Unicode minus, a fraction.

use super::{
    Entry,
    refusal::{Refusal, quoted},
    text::{count, cut, digit, from, past, place, without_end},
};

/// A decimal number kept exactly: mantissa × 10^exponent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Decimal {
    /// All digits, with their sign.
    pub mantissa: i64,
    /// Power of ten; never above zero for a number read from text.
    pub exponent: i8,
}

impl Decimal {
    /// The number as it is usually written: "15", "-0.25".
    ///
    /// ```
    /// use torpor::entry::Decimal;
    /// assert_eq!(Decimal { mantissa: -25, exponent: -2 }.written(), "-0.25");
    /// ```
    pub fn written(self) -> String {
        let digits = self.mantissa.unsigned_abs().to_string();
        let sign = if self.mantissa < 0 { "-" } else { "" };
        let places = usize::from(self.exponent.unsigned_abs());
        if self.exponent >= 0 {
            return format!("{sign}{digits}{}", "0".repeat(places));
        }
        let digits = format!("{digits:0>width$}", width = places + 1);
        let (whole, part) = cut(&digits, digits.len() - places);
        format!("{sign}{whole}.{part}")
    }
}

/// The decimal that a text is, where it is written plainly, exactly as [`Decimal::written`] writes it.
pub fn plain_decimal(text: &str) -> Option<Decimal> {
    let (sign, digits) = text.strip_prefix('-').map_or((1, text), |rest| (-1, rest));
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let mantissa: i64 = format!("{whole}{part}").parse().ok()?;
    let decimal = Decimal { mantissa: sign * mantissa, exponent: -i8::try_from(part.len()).ok()? };
    (decimal.written() == text).then_some(decimal)
}

/// The whole number that an entry is, where it is written plainly: a count, a key.
pub fn plain_count(entry: &Entry) -> Option<u32> {
    let text = entry.text.trim();
    let plain = !text.is_empty() && text.bytes().all(|it| it.is_ascii_digit());
    plain.then(|| text.parse().ok()).flatten()
}

/// A number and what stands behind it.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Leading<'a> {
    pub value: f64,
    /// The number written plainly; `None` for a fraction.
    pub plain: Option<String>,
    pub rest: &'a str,
}

const VULGAR: [(char, f64); 5] =
    [('½', 0.5), ('¼', 0.25), ('¾', 0.75), ('⅓', 1.0 / 3.0), ('⅔', 2.0 / 3.0)];

/// What may stand between thousands.
fn space(it: char) -> bool {
    matches!(it, ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}' | '\'')
}

fn minus(it: char) -> bool {
    matches!(it, '-' | '\u{2212}' | '\u{2013}')
}

fn point(it: char) -> bool {
    it == '.'
}

fn comma(it: char) -> bool {
    it == ','
}

fn separator(it: char) -> bool {
    point(it) || comma(it)
}

/// Reads the number that `text` starts with; `None` where it starts with none.
///
/// One kind of separator is the decimal one; of two kinds the last is. "1,000" is refused, as it can be either.
pub(crate) fn leading(text: &str) -> Result<Option<Leading<'_>>, Refusal> {
    let text = text.trim_start();
    let unsigned = text.strip_prefix(minus);
    let negative = unsigned.is_some();
    let unsigned = unsigned.map_or_else(|| text.strip_prefix('+').unwrap_or(text), str::trim_start);
    let (body, rest) = cut(unsigned, body_length(unsigned));
    // A separator at the end belongs to the sentence, or to decimals that are still to be typed.
    let body = without_end(body, separator);
    let signed = |value: f64| if negative { -value } else { value };
    let whole = if body.is_empty() { None } else { Some(plain(body)?) };

    if let Some((fraction, rest)) = fraction(rest, whole.is_some()) {
        let value = whole.as_deref().map_or(0.0, value_of) + fraction;
        return Ok(Some(Leading { value: signed(value), plain: None, rest }));
    }
    let Some(whole) = whole else { return Ok(None) };
    if let Some((over, rest)) = rest.strip_prefix('/').and_then(whole_number) {
        return Ok(Some(Leading { value: signed(value_of(&whole) / over), plain: None, rest }));
    }
    let value = signed(value_of(&whole));
    let plain = if negative { format!("-{whole}") } else { whole };
    Ok(Some(Leading { value, plain: Some(plain), rest }))
}

/// The value of plain digits with at most one point. Up to 15 digits and 22 places it is the nearest double, as one
/// product or quotient of two exact numbers, beyond them one of the next few; digits past the nineteenth count as noughts. The
/// standard library's reader, right to any length, costs the page 11 kB.
fn value_of(plain: &str) -> f64 {
    let (mut mantissa, mut places, mut noughts, mut behind_point) = (0u64, 0, 0, false);
    for it in plain.bytes() {
        let digit = u64::from(it.saturating_sub(b'0'));
        match (it == b'.', mantissa < 1_000_000_000_000_000_000) {
            (true, _) => behind_point = true,
            (false, true) => {
                mantissa = mantissa * 10 + digit;
                places += u32::from(behind_point);
            }
            (false, false) => noughts += u32::from(!behind_point),
        }
    }
    let power = |of: u32| (0..of).fold(1.0, |power, _| power * 10.0);
    mantissa as f64 / power(places) * power(noughts)
}

/// How many bytes of digits and separators a number takes. A space counts only before a group of three digits.
fn body_length(text: &str) -> usize {
    let digit_at = |at: usize| from(text, at).starts_with(digit);
    let mut end = 0;
    while let Some(next) = from(text, end).chars().next() {
        let after = end + next.len_utf8();
        let taken = next.is_ascii_digit()
            || (separator(next) && (end > 0 || digit_at(after)))
            || (space(next) && end > 0 && digit_at(end - 1) && group_of_three(from(text, after)));
        if !taken {
            break;
        }
        end = after;
    }
    // "22..26" and "22.." are ranges, not numbers with two points.
    text.as_bytes()[..end].windows(2).position(|it| it == b"..").unwrap_or(end)
}

fn group_of_three(text: &str) -> bool {
    let digits = text.chars().take_while(char::is_ascii_digit).count();
    digits == 3 && !from(text, 3).starts_with('/')
}

/// The digits of `body` with a point where the decimals begin.
fn plain(body: &str) -> Result<String, Refusal> {
    let spaced = place(body, space).is_some();
    let body: String = body.chars().filter(|it| !space(*it)).collect();
    let (points, commas) = (count(&body, '.'), count(&body, ','));
    let not_a_number = || Refusal::NotANumber { text: quoted(&body), example: "1234.5".to_owned() };
    let decimal_at = match (points, commas) {
        (0, 0) => None,
        (1, 0) => place(&body, point),
        (0, 1) => {
            let at = place(&body, comma).unwrap_or(0);
            let (whole, part) = (cut(&body, at).0, from(&body, at + 1));
            if part.len() == 3
                && !spaced
                && (1..=3).contains(&whole.len())
                && !whole.starts_with('0')
            {
                return Err(Refusal::OneOrThousand {
                    text: body.clone(),
                    thousand: format!("{whole}{part}"),
                    decimal: format!("{whole}.{part}"),
                });
            }
            Some(at)
        }
        (_, 0) if grouped(&body, '.') => None,
        (0, _) if grouped(&body, ',') => None,
        (1, _) if last_of(&body) == Some('.') => place(&body, point),
        (_, 1) if last_of(&body) == Some(',') => place(&body, comma),
        _ => return Err(not_a_number()),
    };
    let (whole, part) =
        decimal_at.map_or((body.as_str(), ""), |at| (cut(&body, at).0, from(&body, at + 1)));
    if decimal_at.is_some() && place(whole, separator).is_some() {
        let kind = if place(whole, point).is_some() { '.' } else { ',' };
        if !grouped(whole, kind) {
            return Err(not_a_number());
        }
    }
    let whole: String = whole.chars().filter(char::is_ascii_digit).collect();
    let whole = if whole.is_empty() { "0".to_owned() } else { whole };
    Ok(if part.is_empty() { whole } else { format!("{whole}.{part}") })
}

/// The last separator of a text.
fn last_of(body: &str) -> Option<char> {
    body.chars().rev().find(|it| separator(*it))
}

/// Digits in groups of three behind the first, with `separator` between.
fn grouped(body: &str, separator: char) -> bool {
    let mut groups = body.split(separator);
    groups.next().is_some_and(|it| (1..=3).contains(&it.len())) && groups.all(|it| it.len() == 3)
}

/// " 1/2" behind a whole number, or "½".
fn fraction(text: &str, behind_whole: bool) -> Option<(f64, &str)> {
    let trimmed = past(text, space);
    for (sign, value) in VULGAR {
        if let Some(rest) = trimmed.strip_prefix(sign) {
            return Some((value, rest));
        }
    }
    if !behind_whole || trimmed.len() == text.len() {
        return None;
    }
    let (top, rest) = whole_number(trimmed)?;
    let (over, rest) = whole_number(rest.strip_prefix('/')?)?;
    Some((top / over, rest))
}

fn whole_number(text: &str) -> Option<(f64, &str)> {
    let end = place(text, |it| !digit(it)).unwrap_or(text.len());
    let (digits, rest) = cut(text, end);
    let value = value_of(digits);
    (value > 0.0).then_some((value, rest))
}
