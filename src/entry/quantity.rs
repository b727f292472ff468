//! A number or a range with an optional unit: "25", "17 ft-lb", "22–26 N·m", "25 (22–26)", "1 ± 0.5 mA", "about 1"; and
//! the same again in other units in brackets, as manuals print it: "24 N·m (2.4 kgf·m, 18 lbf·ft)".

use super::{
    Entry, LONGEST,
    number::{Leading, leading},
    refusal::{Refusal, quoted},
    text::{self, cut, digit, from, past, replaced, without_end},
};
use crate::digits;
use crate::units::{self, Dimension, Spelled, Unit};

/// A quantity as read, in the base unit of its dimension.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Read {
    /// The number, or the middle of the range.
    pub value: f64,
    /// Lowest and highest, where a range was typed.
    pub bounds: Option<[f64; 2]>,
    /// "about 1": known only roughly.
    pub about: bool,
    /// The unit it was read in; `None` for a bare number where none is offered.
    pub unit: Option<&'static Unit>,
    /// The unit that the same spelling might have meant across the ocean.
    pub might_mean: Option<&'static Unit>,
}

/// Reads `entry` as one of the `dimensions`; `Ok(None)` for a blank, which is not known.
///
/// # Errors
/// What is not a number, what has no unit of these dimensions behind it, and what can be read two ways.
///
/// ```
/// use torpor::{entry::{self, Entry}, units::{self, Dimension}};
/// let typed = Entry::new("2,3 kgf·m", units::NEWTON_METER.code);
/// let read = entry::quantity(&typed, &[Dimension::Torque]).unwrap().unwrap();
/// assert!((read.value - 2.3 * 9.80665).abs() < 1e-12);
/// ```
pub fn quantity(entry: &Entry, dimensions: &[Dimension]) -> Result<Option<Read>, Refusal> {
    if entry.is_blank() {
        return Ok(None);
    }
    if entry.text.chars().count() > LONGEST {
        return Err(Refusal::TooLong);
    }
    let reader = Reader { whole: &entry.text, beside: entry.unit(), dimensions };
    let read = reader.read()?;
    let torque = read.unit.is_some_and(|it| it.dimension == Dimension::Torque);
    if torque && slashed(&entry.text) { Err(Refusal::Slash) } else { Ok(Some(read)) }
}

/// Whether a slash stands between two whole numbers, but for the fraction behind a whole one in "17 1/2".
pub(crate) fn slashed(text: &str) -> bool {
    let digits = |text: &str| text.chars().take_while(char::is_ascii_digit).count();
    text.char_indices().filter(|(_, it)| *it == '/').any(|(at, _)| {
        let (before, behind) = (cut(text, at).0.trim_end(), from(text, at + 1).trim_start());
        let over = without_end(before, digit);
        let whole = without_end(over, |it| it == ' ');
        let mixed = whole.len() < over.len() && whole.ends_with(digit);
        over.len() < before.len() && digits(behind) > 0 && !mixed
    })
}

struct Reader<'a> {
    whole: &'a str,
    /// The unit that the blank shows.
    beside: Option<&'static Unit>,
    dimensions: &'a [Dimension],
}

const ABOUT: [&str; 7] = ["about ", "approx. ", "approx ", "around ", "ca. ", "~", "≈"];

impl Reader<'_> {
    fn read(&self) -> Result<Read, Refusal> {
        self.twice().unwrap_or_else(|| self.once(self.whole))
    }

    /// An amount and the same again in brackets, in other units; the first one counts. `None` for anything else.
    fn twice(&self) -> Option<Result<Read, Refusal>> {
        let text = self.whole.trim().strip_suffix(')')?;
        let opens = text.char_indices().rev().filter(|(_, it)| *it == '(');
        let inner =
            opens.map(|(at, _)| (cut(text, at).0, from(text, at + 1))).find(|(_, inner)| {
                let whole = text::count(inner, '(') == text::count(inner, ')');
                whole && leading(inner).is_ok_and(|it| it.is_some())
            });
        let (first, inner) = inner?;
        let bare = Reader { beside: None, ..*self };
        let own_unit = |text: &str| bare.once(text).ok().and_then(|it| it.unit).is_some();
        let read = self.once(first).ok().filter(|_| own_unit(first))?;
        let unit = read.unit?;
        let mut others = Vec::new();
        let parted = replaced(&replaced(inner, ", ", "\n"), "; ", "\n");
        for text in parted.split('\n') {
            let other = self.once(text).ok().filter(|_| own_unit(text))?;
            let another = other.unit.filter(|it| it.dimension == unit.dimension && *it != unit)?;
            others.push((text, other, another));
        }
        // "25 N·m (16–19 ft-lb)" is an aim and its range.
        if let (None, [(_, Read { bounds: Some(_), .. }, _)]) = (read.bounds, others.as_slice()) {
            return None;
        }
        let other = others
            .iter()
            .find(|(text, other, another)| !same((&read, first, unit), (other, text, another)));
        Some(match other {
            None => Ok(read),
            Some((text, other, _)) => Err(Refusal::NotTheSame {
                text: quoted(text),
                other: amount(other, unit),
                first: amount(&read, unit),
            }),
        })
    }

    fn once(&self, text: &str) -> Result<Read, Refusal> {
        let text = text.trim();
        let about = ABOUT.iter().find_map(|it| strip_prefix_ignoring_case(text, it));
        let first = self.number(about.unwrap_or(text))?;
        let behind = first.rest.trim_start();

        let bracket =
            behind.split_once('(').filter(|(_, inner)| leading(inner).is_ok_and(|it| it.is_some()));
        if let Some((own, inner)) = bracket.filter(|(own, _)| split_range(own).1.is_none()) {
            let (range, unit) = inner.split_once(')').ok_or_else(|| self.not_a_number())?;
            let low = self.number(range)?;
            let high = self.number(range_end(low.rest).ok_or_else(|| self.not_a_number())?)?;
            let said = |it: &&str| !it.trim().is_empty();
            let ends = [unit, high.rest, own].into_iter().find(said).unwrap_or("");
            let first_unit = if said(&own) { own } else { ends };
            return self.spread(first.value, low.value, high.value, (first_unit, ends));
        }
        let (first_unit, end) = split_range(behind);
        let Some(end) = end else {
            let (value, spelled) = self.in_base(first.value, behind)?;
            return Ok(Read { about: about.is_some(), ..read(value, None, spelled) });
        };
        let second = self.number(end.text)?;
        let units = if first_unit.trim().is_empty() {
            (second.rest, second.rest)
        } else {
            (first_unit, second.rest)
        };
        let units = if units.1.trim().is_empty() { (units.0, units.0) } else { units };
        if end.plus_minus {
            let (low, high) = (first.value - second.value, first.value + second.value);
            return self.spread(first.value, low, high, units);
        }
        // The middle is taken in base units below: two ends may be typed in two units.
        let (low, spelled) = self.in_base(first.value, units.0)?;
        let (high, _) = self.in_base(second.value, units.1)?;
        Ok(read((low + high) / 2.0, Some([low.min(high), low.max(high)]), spelled))
    }

    fn spread(
        &self,
        value: f64,
        low: f64,
        high: f64,
        units: (&str, &str),
    ) -> Result<Read, Refusal> {
        let (value, spelled) = self.in_base(value, units.0)?;
        let (low, _) = self.in_base(low, units.1)?;
        let (high, _) = self.in_base(high, units.1)?;
        // An aim outside of its own range was meant otherwise.
        if value < low.min(high) || value > low.max(high) {
            return Err(self.not_a_number());
        }
        Ok(read(value, Some([low.min(high), low.max(high)]), spelled))
    }

    fn number<'a>(&self, text: &'a str) -> Result<Leading<'a>, Refusal> {
        leading(text)?.ok_or_else(|| self.not_a_number())
    }

    /// A number of the unit spelled behind it, in base units.
    fn in_base(&self, number: f64, spelling: &str) -> Result<(f64, Option<Spelled>), Refusal> {
        let spelling = spelling.trim();
        let spelled = if spelling.is_empty() {
            self.beside.filter(|it| self.dimensions.contains(&it.dimension)).map(Spelled::Clear)
        } else {
            let known =
                self.dimensions.iter().find_map(|it| units::spelled(spelling, *it, self.beside));
            Some(known.ok_or_else(|| self.unknown_unit(spelling))?)
        };
        let value = spelled.map_or(number, |it| it.unit().to_base(number));
        if value.is_finite() { Ok((value, spelled)) } else { Err(self.not_a_number()) }
    }

    fn symbols(&self) -> Vec<&'static str> {
        units::ALL
            .iter()
            .filter(|it| self.dimensions.contains(&it.dimension))
            .map(|it| it.shown())
            .collect()
    }

    fn not_a_number(&self) -> Refusal {
        let unit = self.beside.map(|it| it.shown()).or_else(|| self.symbols().first().copied());
        let example = unit.map_or("25".to_owned(), |unit| format!("25 or 25 {unit}"));
        Refusal::NotANumber { text: quoted(self.whole), example }
    }

    fn unknown_unit(&self, spelling: &str) -> Refusal {
        let symbols = self.symbols();
        let offered = match symbols.as_slice() {
            [] => "the number alone".to_owned(),
            [one] => (*one).to_owned(),
            [all @ .., last] => format!("{} or {last}", super::text::joined(all, ", ")),
        };
        Refusal::UnknownUnit { spelling: quoted(spelling), offered }
    }
}

/// Whether two amounts are the same but for rounding: within 3 %, or half of the last digit that either is printed with.
fn same(one: (&Read, &str, &Unit), other: (&Read, &str, &Unit)) -> bool {
    // Half of the last digit, in base units.
    let half = |(read, text, unit): (&Read, &str, &Unit)| {
        let plain = leading(text).ok().flatten().and_then(|it| it.plain).unwrap_or_default();
        let places = plain.split_once('.').map_or(0, |(_, part)| part.len());
        let half = (0..places).fold(0.5, |half, _| half / 10.0);
        (unit.to_base(unit.of_base(read.value) + half) - read.value).abs()
    };
    // Zero on a scale of temperature is no nothing to take a share of.
    let share = if one.2.dimension == Dimension::Temperature { 0.0 } else { 0.03 };
    let halves = half(one).max(half(other));
    let near = |a: f64, b: f64| (a - b).abs() <= halves.max(share * a.abs()) * (1.0 + 1e-9);
    let ends = match (one.0.bounds, other.0.bounds) {
        (None, None) => true,
        (Some([low, high]), Some([other_low, other_high])) => {
            near(low, other_low) && near(high, other_high)
        }
        _ => false,
    };
    ends && near(one.0.value, other.0.value)
}

/// An amount to three digits: "24.4 N·m", "21.7–25.8 N·m".
fn amount(read: &Read, unit: &Unit) -> String {
    let of = |base: f64| digits::brief(unit.of_base(base), 3);
    match read.bounds {
        Some([low, high]) => format!("{}–{} {}", of(low), of(high), unit.shown()),
        None => format!("{} {}", of(read.value), unit.shown()),
    }
}

fn read(value: f64, bounds: Option<[f64; 2]>, spelled: Option<Spelled>) -> Read {
    let might_mean = match spelled {
        Some(Spelled::Shared { other, .. }) => Some(other),
        _ => None,
    };
    Read { value, bounds, about: false, unit: spelled.map(Spelled::unit), might_mean }
}

/// What stands behind the sign of a range.
struct RangeEnd<'a> {
    text: &'a str,
    plus_minus: bool,
}

/// Splits "N·m – 26 N·m" before its sign. A hyphen counts only before a number: "ft-lb" has one too.
fn split_range(text: &str) -> (&str, Option<RangeEnd<'_>>) {
    for (at, _) in text.char_indices() {
        let (own, rest) = cut(text, at);
        for sign in ["–", "—", "-", "…", "..", "±", "+/-", "to "] {
            let Some(behind) = rest.strip_prefix(sign) else { continue };
            let starts = past(behind.trim_start(), |it| matches!(it, '-' | '−' | '.'));
            let before = own.chars().next_back();
            let in_word = sign == "to " && before.is_some_and(|it| it.is_ascii_alphanumeric());
            if starts.starts_with(digit) && !in_word {
                let plus_minus = matches!(sign, "±" | "+/-");
                // "22...26" has a third point; that of "0.2–.5" is the number's own.
                let text_behind = if sign == ".." { past(behind, |it| it == '.') } else { behind };
                return (own, Some(RangeEnd { text: text_behind, plus_minus }));
            }
        }
    }
    (text, None)
}

fn range_end(text: &str) -> Option<&str> {
    split_range(text).1.map(|it| it.text)
}

fn strip_prefix_ignoring_case<'a>(text: &'a str, prefix: &str) -> Option<&'a str> {
    let (head, behind) = cut(text, prefix.len());
    head.eq_ignore_ascii_case(prefix).then(|| behind.trim_start())
}
