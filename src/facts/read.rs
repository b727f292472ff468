//! Readers: from an entry to what a fact is, within the limits that its kind sets.

use super::{About, Choice, Home, Kind, Limit, doubt};
use crate::digits;
use crate::entry::text::joined;
use crate::entry::{self, Entry, LONGEST, Read, Refusal};
use crate::oil::Grade;
use crate::season::Temperatures;
use crate::torque::{Thread, ThreadError};
use crate::units::{self, Dimension, Measure, Unit};
use crate::words::page as words;
use crate::working::Quantity;
use chrono::NaiveDate;
use uom::si::f64::{
    ElectricCharge, ElectricPotential, Energy, Ratio, ThermodynamicTemperature, Volume,
};
use uom::si::thermodynamic_temperature::degree_celsius;

/// A quantity known exactly or within bounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rough<Q> {
    /// The number, or the middle of the range.
    pub value: Q,
    /// Lowest and highest, where a range was typed.
    pub bounds: Option<[Q; 2]>,
    /// "about" stood before it.
    pub about: bool,
    /// The unit it was typed in.
    pub unit: Option<&'static Unit>,
}

/// How full a tank: a share of it or an amount.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Level {
    /// Share of the tank.
    Share(Ratio),
    /// Amount of fuel.
    Amount(Volume),
}

/// What a battery holds: lead-acid labels print a charge, LiFePO4 ones an energy.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Capacity {
    /// Ampere hours.
    Charge(ElectricCharge),
    /// Watt hours.
    Energy(Energy),
}

/// When to charge: under a resting voltage or under a state of charge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Recharge {
    /// Resting voltage.
    Voltage(ElectricPotential),
    /// State of charge.
    Share(Ratio),
}

/// How strong a coolant is, as it was typed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strength {
    /// What was typed, then the lower and the upper end of it, in the base unit.
    pub ends: [f64; 3],
    /// Whether that is the freezing point that a tester reads, kelvins; else it is glycol by volume, a ratio.
    pub freezes: bool,
}

/// A thread as typed. One that is not metric, or not known, is kept as it is; it is refused only where a sum needs it.
#[derive(Debug, Clone, PartialEq)]
pub struct TypedThread {
    /// As typed.
    pub text: String,
    /// As read.
    pub thread: Result<Thread, ThreadError>,
}

impl TypedThread {
    /// Whether both are one thread, however each is spelled: for finding one in a manual's general table.
    pub fn same(&self, other: &Self) -> bool {
        match (self.thread, other.thread) {
            (Ok(one), Ok(other)) => one == other,
            (Err(_), Err(_)) => self.text.eq_ignore_ascii_case(&other.text),
            _ => false,
        }
    }
}

/// A type whose values are the answers of a choice.
pub trait Chosen: Sized {
    /// The value of a choice's code.
    fn of_code(code: u8) -> Option<Self>;
}

/// Of a list of steps the numbers are all that is asked.
impl Chosen for u8 {
    fn of_code(code: u8) -> Option<Self> {
        Some(code)
    }
}

type Told<T> = Result<Option<T>, Refusal>;

/// Reads an entry as its kind says and forgets the value.
pub(super) fn check(about: &About, entry: &Entry) -> Result<(), Refusal> {
    match &about.kind {
        Kind::Quantity { .. } => quantity(about, entry).map(drop),
        Kind::Sizes(_) => sizes_read(about, entry).map(drop),
        Kind::Choice(_) => code(about, entry).map(drop),
        Kind::Day => day(about, entry).map(drop),
        Kind::Dose => dose(about, entry).map(drop),
        Kind::Temperatures => temperatures(about, entry).map(drop),
        Kind::Grade => grade(about, entry).map(drop),
        Kind::Text => text(about, entry).map(drop),
        Kind::Several(choices) => several_codes(choices, entry).map(drop),
        Kind::Count { .. } => count(about, entry).map(drop),
        Kind::Stages => stages(about, entry).map(drop),
        Kind::ThreadTorques => super::general::general(about, entry).map(drop),
        Kind::Intervals => super::intervals::intervals(about, entry).map(drop),
    }
}

/// A number within its limits, with the dimension it was typed in.
pub(super) fn quantity(about: &About, entry: &Entry) -> Told<(Read, Dimension)> {
    let (limits, range) = match &about.kind {
        Kind::Quantity { limits, range } => (limits, *range),
        Kind::Sizes(limits) => (limits, false),
        _ => return Ok(None),
    };
    let dimensions: Vec<Dimension> = limits.iter().map(|it| it.unit.dimension).collect();
    known_unit(about, entry)?;
    let measured = |measure| limits.iter().any(|it| it.measure == measure);
    if measured(Measure::Distance) {
        doubt::thousands(&entry.text)?;
    }
    if measured(Measure::Tank) && measured(Measure::Share) {
        doubt::half(entry.text.trim())?;
    }
    // A number without a unit of its own means the usual unit of the fact.
    let bare = Entry {
        unit: about.unit_for(entry, Default::default()).map_or(0, |it| it.code),
        ..entry.clone()
    };
    let Some(read) = entry::quantity(&bare, &dimensions)? else { return Ok(None) };
    if read.bounds.is_some() && !range {
        return Err(Refusal::OneNumberWanted { text: entry.text.trim().to_owned() });
    }
    let dimension = read.unit.map_or(dimensions[0], |it| it.dimension);
    let Some(limit) = limits.iter().find(|it| it.unit.dimension == dimension) else {
        return Ok(None);
    };
    let [low, high] = read.bounds.unwrap_or([read.value; 2]);
    if limit.holds(low) && limit.holds(high) {
        return Ok(Some((read, dimension)));
    }
    let mut accepted = limit.accepted(read.unit.unwrap_or(limit.unit));
    // 36 where bar is meant: a gauge's other scale.
    let psi = |base| {
        read.unit == Some(&units::BAR) && limit.holds(units::PSI.to_base(units::BAR.of_base(base)))
    };
    if psi(high) {
        accepted.push_str(words::PSI);
    }
    Err(Refusal::OutOfLimits { accepted })
}

/// Refuses a unit of a newer page: what a bare number meant is not known here, and must not be guessed.
fn known_unit(about: &About, entry: &Entry) -> Result<(), Refusal> {
    let ours = entry.unit().is_some_and(|it| about.takes(it.dimension));
    if entry.unit == entry::form::NONE || ours {
        return Ok(());
    }
    let symbols: Vec<&str> =
        about.offered(Default::default()).iter().map(|it| it.shown()).collect();
    Err(Refusal::UnknownUnit {
        spelling: format!("unit {}", entry.unit),
        offered: joined(&symbols, ", "),
    })
}

/// A limit in another unit than its own, without decimals that say nothing.
fn rounded(limit: f64) -> String {
    let places = if limit.abs() < 10.0 { 2 } else { usize::from(limit.abs() < 100.0) };
    let text = digits::fixed(limit, places);
    entry::text::without_noughts(&text).to_owned()
}

impl Limit {
    fn holds(&self, base: f64) -> bool {
        // Half a billionth of slack: 26.4172 gal typed for 100 L is not to fail on its last digit.
        let slack = 1e-9 * (self.unit.to_base(self.high) - self.unit.to_base(self.low)).abs();
        let (low, high) = (self.unit.to_base(self.low), self.unit.to_base(self.high));
        base <= high + slack && if self.low_taken { base >= low - slack } else { base > low }
    }

    /// What is accepted, in words, in the unit that was typed.
    fn accepted(&self, unit: &Unit) -> String {
        let [low, high] =
            [self.low, self.high].map(|it| rounded(unit.of_base(self.unit.to_base(it))));
        let symbol = unit.shown();
        if unit.is_inverse() {
            // Fewest miles to the gallon are most liters for a distance; there is no most of them.
            return format!("at least {high} {symbol}");
        }
        if self.low_taken {
            format!("between {low} {symbol} and {high} {symbol}")
        } else {
            format!("more than {low} {symbol} and at most {high} {symbol}")
        }
    }
}

pub(super) fn one<Q: Quantity>(about: &About, entry: &Entry) -> Told<Q> {
    Ok(quantity(about, entry)?.map(|(read, _)| Q::of_base(read.value)))
}

/// What stands between several sizes. A comma needs its space: "1,5" is one number.
const BETWEEN_SIZES: [&str; 5] = [";", ", ", " and ", " or ", "\n"];

/// Several numbers, or one as [`one`] reads it. A number without a unit means the blank's own; beside one in another unit
/// it could be either, and "1/4" a fraction or two sizes: both are refused.
pub(super) fn sizes_read(about: &About, entry: &Entry) -> Told<Vec<Read>> {
    if entry.text.chars().count() > entry::LONGEST {
        return Err(Refusal::TooLong);
    }
    let either_way = || Refusal::Together(crate::words::oil::SIZE_AND_UNIT.to_owned());
    if entry::slashed(&entry.text) {
        return Err(either_way());
    }
    // One amount as manuals print it, the same again in brackets, has commas of its own.
    if let Ok(Some((one, _))) = quantity(about, entry) {
        return Ok(Some(vec![one]));
    }
    let mut text = entry.text.clone();
    for between in BETWEEN_SIZES {
        text = entry::replaced(&text, between, ";");
    }
    let mut read: Vec<Read> = Vec::new();
    let mut bare = false;
    for part in entry::text::parts(&text, |it| it == ';') {
        bare |= !part.contains(|it: char| it.is_ascii_alphabetic());
        read.extend(quantity(about, &Entry { text: part.to_owned(), ..*entry })?.map(|it| it.0));
    }
    let own = about.unit_for(entry, Default::default());
    if bare && read.iter().any(|it| it.unit != own) {
        return Err(either_way());
    }
    Ok((!read.is_empty()).then_some(read))
}

pub(super) fn sizes<Q: Quantity>(about: &About, entry: &Entry) -> Told<Vec<Q>> {
    let all = sizes_read(about, entry)?;
    Ok(all.map(|it| it.iter().map(|it| Q::of_base(it.value)).collect()))
}

pub(super) fn grade(about: &About, entry: &Entry) -> Told<Grade> {
    let read = |text: String| Grade::read(&text);
    let typed = text(about, entry)?.map(read).transpose();
    typed.map_err(|why| Refusal::Together(why.to_string()))
}

pub(super) fn rough<Q: Quantity>(about: &About, entry: &Entry) -> Told<Rough<Q>> {
    Ok(quantity(about, entry)?.map(|(read, _)| rough_of(read)))
}

pub(super) fn rough_of<Q: Quantity>(read: Read) -> Rough<Q> {
    Rough {
        value: Q::of_base(read.value),
        bounds: read.bounds.map(|it| it.map(Q::of_base)),
        about: read.about,
        unit: read.unit,
    }
}

pub(super) fn level(about: &About, entry: &Entry) -> Told<Level> {
    Ok(quantity(about, entry)?.map(|(read, dimension)| match dimension {
        Dimension::Ratio => Level::Share(Ratio::of_base(read.value)),
        _ => Level::Amount(Volume::of_base(read.value)),
    }))
}

pub(super) fn strength(about: &About, entry: &Entry) -> Told<Strength> {
    Ok(quantity(about, entry)?.map(|(read, dimension)| {
        let [low, high] = read.bounds.unwrap_or([read.value; 2]);
        Strength { ends: [read.value, low, high], freezes: dimension == Dimension::Temperature }
    }))
}

pub(super) fn capacity(about: &About, entry: &Entry) -> Told<Capacity> {
    Ok(quantity(about, entry)?.map(|(read, dimension)| match dimension {
        Dimension::Energy => Capacity::Energy(Energy::of_base(read.value)),
        _ => Capacity::Charge(ElectricCharge::of_base(read.value)),
    }))
}

pub(super) fn recharge(about: &About, entry: &Entry) -> Told<Recharge> {
    Ok(quantity(about, entry)?.map(|(read, dimension)| match dimension {
        Dimension::Ratio => Recharge::Share(Ratio::of_base(read.value)),
        _ => Recharge::Voltage(ElectricPotential::of_base(read.value)),
    }))
}

pub(super) fn choice<T: Chosen>(about: &About, entry: &Entry) -> Told<T> {
    Ok(code(about, entry)?.and_then(T::of_code))
}

/// The code of the choice that an entry names by its key, or by number where it came before this page knew the fact.
fn code(about: &About, entry: &Entry) -> Told<u8> {
    let Kind::Choice(choices) = about.kind else { return Ok(None) };
    if entry.is_blank() {
        return Ok(None);
    }
    match chosen(choices, entry) {
        Some(it) => Ok(Some(it.code)),
        None => {
            let offered: Vec<&str> = choices.iter().map(|it| it.label).collect();
            let text = entry.text.chars().take(40).collect();
            Err(Refusal::NotAChoice { text, offered: joined(&offered, ", ") })
        }
    }
}

/// The choice that an entry names.
pub(crate) fn chosen<'a>(choices: &'a [Choice], entry: &Entry) -> Option<&'a Choice> {
    let by_number =
        (entry.unit == entry::form::CHOICE).then(|| entry.text.parse::<u8>().ok()).flatten();
    choices.iter().find(|it| by_number.map_or(it.key == entry.text, |code| it.code == code))
}

/// Those that an entry names.
pub(super) fn several<T: Chosen>(about: &About, entry: &Entry) -> Told<Vec<T>> {
    let Kind::Several(choices) = about.kind else { return Ok(None) };
    let codes = several_codes(choices, entry)?;
    Ok(codes.map(|it| it.into_iter().filter_map(T::of_code).collect()))
}

/// Codes of those that an entry names by their keys.
fn several_codes(choices: &[Choice], entry: &Entry) -> Told<Vec<u8>> {
    let mut codes = Vec::new();
    for key in several_keys(choices, entry).split_whitespace() {
        let Some(it) = choices.iter().find(|it| it.key == key) else {
            let offered: Vec<&str> = choices.iter().map(|it| it.label).collect();
            let text = key.chars().take(40).collect();
            return Err(Refusal::NotAChoice { text, offered: joined(&offered, ", ") });
        };
        codes.push(it.code);
    }
    Ok((!codes.is_empty()).then_some(codes))
}

/// The keys that an entry names. A page that did not know the fact kept them as the number that a link carries: one
/// binary digit for each code, code 1 the last one. A digit of a newer page's stays a number, and is refused as one.
pub(crate) fn several_keys(choices: &[Choice], entry: &Entry) -> String {
    if entry.text.len() > LONGEST {
        return entry.text.clone();
    }
    let mut keys: Vec<String> = Vec::new();
    for word in entry.text.split_whitespace() {
        let Some(mut number) = entry::plain_count(&Entry::new(word, entry.unit)) else {
            keys.push(word.to_owned());
            continue;
        };
        for it in choices {
            let digit = 1 << (it.code - 1);
            if number & digit != 0 {
                keys.push(it.key.to_owned());
                number -= digit;
            }
        }
        if number != 0 {
            keys.push(number.to_string());
        }
    }
    joined(&keys, " ")
}

/// A whole number within its limits.
pub(super) fn count(about: &About, entry: &Entry) -> Told<u32> {
    let Kind::Count { least, most } = about.kind else { return Ok(None) };
    if entry.is_blank() {
        return Ok(None);
    }
    match entry::plain_count(entry) {
        Some(count) if (least..=most).contains(&count) => Ok(Some(count)),
        _ => Err(Refusal::OutOfLimits {
            accepted: format!("a whole number between {least} and {most}"),
        }),
    }
}

pub(super) fn stages(_: &About, entry: &Entry) -> Told<Vec<entry::Stage>> {
    entry::stages(entry)
}

/// A day. Of what is remembered with the bike, the last changes, a month alone is taken for its first day.
pub(super) fn day(about: &About, entry: &Entry) -> Told<NaiveDate> {
    let read = entry::day(entry);
    if read.is_err() && about.home == Home::Bike && entry.text.len() < entry::LONGEST {
        let first = Entry { text: format!("1 {}", entry.text), ..*entry };
        return entry::day(&first).or(read);
    }
    read
}

pub(super) fn dose(_: &About, entry: &Entry) -> Told<entry::Dose> {
    entry::dose(entry)
}

pub(super) fn text(_: &About, entry: &Entry) -> Told<String> {
    let text = entry.text.trim();
    if text.chars().count() > entry::LONGEST {
        return Err(Refusal::TooLong);
    }
    Ok((!text.is_empty()).then(|| text.to_owned()))
}

pub(super) fn thread(about: &About, entry: &Entry) -> Told<TypedThread> {
    Ok(text(about, entry)?.map(|text| TypedThread { thread: Thread::read(&text), text }))
}

pub(super) fn temperatures(about: &About, entry: &Entry) -> Told<Temperatures> {
    known_unit(about, entry)?;
    let unit = about.unit_for(entry, Default::default()).map_or(0, |it| it.code);
    let Some(read) = entry::temperatures(&Entry { unit, ..entry.clone() })? else {
        return Ok(None);
    };
    let celsius = ThermodynamicTemperature::new::<degree_celsius>;
    let place = match <[f64; 12]>::try_from(read.as_slice()) {
        Ok(twelve) => Temperatures::monthly(twelve.map(celsius)),
        Err(_) => Temperatures::constant(celsius(read.first().copied().unwrap_or_default())),
    };
    place.map(Some).map_err(|why| Refusal::Together(why.to_string()))
}
