//! Bytes of the link's wire: whole numbers, values, items.

use crate::entry::{self, Decimal};
use chrono::{NaiveDate, TimeDelta};
use std::ops::RangeInclusive;

/// A value as it travels.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Value {
    /// Number and unit.
    Number(Decimal, u8),
    /// Text without a unit.
    Text(String),
    /// Code of a choice, or of a usual fastener's name.
    Choice(u8),
    /// Day.
    Day(NaiveDate),
    /// Text, and the unit that its bare numbers mean.
    Written(u8, String),
}

/// Exponents that a number may have: one read from text has no more places than fit beside its digits.
pub(super) const PLACES: RangeInclusive<i8> = -18..=18;

/// What texts of digits are made of, four bits each.
const PACKED: [char; 16] =
    ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', ' ', '-', '–', '.', '(', ')'];

/// Days count from here.
const EPOCH: Option<NaiveDate> = NaiveDate::from_ymd_opt(2020, 1, 1);

#[derive(Default)]
pub(super) struct Writer {
    pub bytes: Vec<u8>,
}

impl Writer {
    pub fn whole(&mut self, mut value: u64) {
        while value > 0x7f {
            self.bytes.push(value as u8 | 0x80);
            value >>= 7;
        }
        self.bytes.push(value as u8);
    }

    fn signed(&mut self, value: i64) {
        self.whole(((value << 1) ^ (value >> 63)) as u64);
    }

    pub fn day(&mut self, day: NaiveDate) {
        self.signed(EPOCH.map_or(0, |it| day.signed_duration_since(it).num_days()));
    }

    fn text(&mut self, text: &str) {
        let place = |it| PACKED.iter().position(|one| *one == it).map(|at| at as u8);
        match text.chars().map(place).collect::<Option<Vec<u8>>>() {
            Some(packed) => {
                self.whole(packed.len() as u64 * 2 + 1);
                let pair = |it: &[u8]| it.iter().fold(0, |pair, it| pair << 4 | it);
                self.bytes.extend(packed.chunks(2).map(|it| pair(it) << (8 - 4 * it.len())));
            }
            None => {
                self.whole(text.len() as u64 * 2);
                self.bytes.extend_from_slice(text.as_bytes());
            }
        }
    }

    pub fn item(&mut self, step: u16, value: &Value) {
        let tag = match value {
            Value::Number(Decimal { exponent: e @ -2..=0, .. }, _) => u64::from(e.unsigned_abs()),
            Value::Number(..) => 3,
            Value::Text(_) => 4,
            Value::Choice(_) => 5,
            Value::Day(_) => 6,
            Value::Written(..) => 7,
        };
        self.whole(u64::from(step) * 8 + tag);
        match value {
            Value::Number(decimal, unit) => {
                self.signed(decimal.mantissa);
                if tag == 3 {
                    self.signed(i64::from(decimal.exponent));
                }
                self.whole(u64::from(*unit));
            }
            Value::Text(text) => self.text(text),
            Value::Choice(code) => self.whole(u64::from(*code)),
            Value::Day(day) => self.day(*day),
            Value::Written(unit, text) => {
                self.whole(u64::from(*unit));
                self.text(text);
            }
        }
    }
}

pub(super) struct Reader<'a> {
    rest: &'a [u8],
}

impl<'a> Reader<'a> {
    pub fn new(rest: &'a [u8]) -> Self {
        Self { rest }
    }

    pub fn is_done(&self) -> bool {
        self.rest.is_empty()
    }

    fn byte(&mut self) -> Option<u8> {
        let (first, rest) = self.rest.split_first()?;
        self.rest = rest;
        Some(*first)
    }

    pub fn whole(&mut self) -> Option<u64> {
        let mut value = 0u64;
        for shift in (0..64).step_by(7) {
            let byte = self.byte()?;
            value |= u64::from(byte & 0x7f).checked_shl(shift)?;
            if byte & 0x80 == 0 {
                return Some(value);
            }
        }
        None
    }

    fn signed(&mut self) -> Option<i64> {
        let value = self.whole()?;
        Some((value >> 1) as i64 ^ -((value & 1) as i64))
    }

    fn small(&mut self) -> Option<u8> {
        self.whole()?.try_into().ok()
    }

    pub fn day(&mut self) -> Option<NaiveDate> {
        // Beyond any calendar that a season lies in; also keeps the addition from overflowing.
        let days = self.signed().filter(|it| it.unsigned_abs() < 100_000)?;
        EPOCH?.checked_add_signed(TimeDelta::try_days(days)?)
    }

    fn text(&mut self) -> Option<String> {
        let head = self.whole()?;
        let (count, packed) = (usize::try_from(head / 2).ok()?, head % 2 == 1);
        let length = if packed { count.div_ceil(2) } else { count };
        let (bytes, rest) = self.rest.split_at_checked(length)?;
        self.rest = rest;
        let text = if packed {
            let mut fours = bytes.iter().flat_map(|it| [it >> 4, it & 15]);
            let text = fours.by_ref().take(count).map(|it| PACKED[usize::from(it)]).collect();
            // One text for the same digits: what is spare says nothing.
            fours.all(|it| it == 0).then_some(text)?
        } else {
            std::str::from_utf8(bytes).ok()?.to_owned()
        };
        (text.chars().count() <= entry::LONGEST).then_some(text)
    }

    /// How far the fact's number is from the one before, and its value.
    pub fn item(&mut self) -> Option<(u16, Value)> {
        let head = self.whole()?;
        let step = u16::try_from(head / 8).ok()?;
        let value = match head % 8 {
            tag @ 0..=3 => {
                let mantissa = self.signed()?;
                let exponent = if tag == 3 { self.signed()? } else { -(tag as i64) };
                let exponent = i8::try_from(exponent).ok().filter(|it| PLACES.contains(it))?;
                Value::Number(Decimal { mantissa, exponent }, self.small()?)
            }
            4 => Value::Text(self.text()?),
            5 => Value::Choice(self.small()?),
            6 => Value::Day(self.day()?),
            _ => Value::Written(self.small()?, self.text()?),
        };
        Some((step, value))
    }
}
