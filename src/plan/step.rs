//! The steps of either side, in the order of the work: which calculator each opens, which bike has it, what has to be done
//! before it; and which of them are done or left out.

use super::{Line, OwnSteps};
use crate::coolant::Cooling;
use crate::entry::text::{cut, joined, replaced};
use crate::entry::{Entry, LONGEST, day_written};
use crate::facts::{self, Choice, Facts, FinalDrive, FuelSupply, Id, LAY_UP_STEPS, WAKE_UP_STEPS};
use crate::words::steps::{self as words, Said};
use chrono::{Days, NaiveDate};

/// Which half of the season a step belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Putting it away.
    LayUp,
    /// Bringing it back.
    WakeUp,
}

/// Which bikes have a step. One whose fact is not known yet has it: nothing is left out by silence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Asked {
    Always,
    /// Unless it is cooled by air.
    Coolant,
    /// Unless it has injection.
    Carburetor,
    /// Unless it has a belt or a shaft.
    Chain,
    /// Unless the lay-up step of this number was left out: what was lifted comes down again.
    Undoes(u8),
}

/// A step of the sheet.
#[derive(Debug)]
pub struct Step {
    /// Its side.
    pub side: Side,
    /// Number and key.
    pub choice: &'static Choice,
    /// Its words.
    pub said: &'static Said,
    /// Its calculator.
    pub sum: Option<Line>,
    /// What it asks, before its calculator where it has one.
    pub blanks: &'static [Id],
    /// Whether what the intervals make due belongs to it.
    pub lists_due: bool,
    /// Whether its tick says that something was looked at or set: nothing was changed that an interval counts from.
    pub looks: bool,
    /// Which of the lines that say how is a caution.
    pub care: Option<usize>,
    asked: Asked,
    /// Numbers of the steps of its side that come before it for safety's sake.
    after: &'static [u8],
}

impl PartialEq for Step {
    fn eq(&self, other: &Self) -> bool {
        self.side == other.side && self.choice.code == other.choice.code
    }
}

/// Numbers and keys of a side's steps.
const fn choices(side: Side) -> &'static [Choice] {
    match side {
        Side::LayUp => LAY_UP_STEPS,
        Side::WakeUp => WAKE_UP_STEPS,
    }
}

const fn step(side: Side, code: u8, said: &'static Said) -> Step {
    // Numbers count the places.
    let choice = &choices(side)[code as usize - 1];
    Step {
        side,
        choice,
        said,
        sum: None,
        blanks: &[],
        lists_due: false,
        looks: false,
        care: None,
        asked: Asked::Always,
        after: &[],
    }
}

const fn down(code: u8, said: &'static Said) -> Step {
    step(Side::LayUp, code, said)
}

const fn up(code: u8, said: &'static Said) -> Step {
    step(Side::WakeUp, code, said)
}

impl Step {
    const fn sum(self, line: Line) -> Self {
        Self { sum: Some(line), ..self }
    }

    const fn asked(self, asked: Asked) -> Self {
        Self { asked, ..self }
    }

    const fn blanks(self, blanks: &'static [Id]) -> Self {
        Self { blanks, ..self }
    }

    const fn looking(self) -> Self {
        Self { looks: true, ..self }
    }

    const fn listing_due(self) -> Self {
        Self { lists_due: true, ..self }
    }

    const fn care(self, care: usize) -> Self {
        Self { care: Some(care), ..self }
    }

    const fn after(self, after: &'static [u8]) -> Self {
        Self { after, ..self }
    }
}

/// Coolant's strength is read cold, and the last run mixes what was refilled; fuel comes before the last run too, which
/// draws treated fuel through and warms chain and oils; the level run would fill drained bowls again; pipes are closed after
/// every run; tires and torques want a cold bike; the battery comes after the last start.
static LAY_UP: &[Step] = &[
    down(1, &words::WASH),
    down(2, &words::COOLANT).sum(Line::Coolant).looking().asked(Asked::Coolant),
    down(3, &words::FUEL).sum(Line::Fuel),
    down(4, &words::LAST_RUN).sum(Line::LastRun).blanks(&[facts::ODOMETER.id()]),
    down(5, &words::CHAIN).asked(Asked::Chain).care(0).blanks(&[facts::FINAL_DRIVE.id()]),
    down(6, &words::OIL).sum(Line::Oil),
    down(7, &words::OTHER_OILS).sum(Line::OtherOils).looking(),
    down(8, &words::TAP_AND_BOWLS).asked(Asked::Carburetor).care(0),
    down(9, &words::CLOSE),
    down(10, &words::TIRES).sum(Line::Tires).looking(),
    down(11, &words::TORQUES).sum(Line::Torques),
    down(12, &words::BRAKES).sum(Line::Brakes).looking(),
    down(13, &words::CONTROLS).care(0),
    down(14, &words::CORROSION).care(0),
    down(15, &words::BATTERY).sum(Line::Battery),
    down(16, &words::WEIGHT).care(0),
    down(17, &words::WHERE).blanks(&[facts::WHERE_THINGS_LIE.id(), facts::PAPERS_DUE.id()]),
    down(18, &words::COVER),
];

/// Whatever was closed is opened before the key is touched, and an open pipe is looked into all the same: mice like it better.
/// Tires and brakes come before it leaves its stands. The engine runs only with fuel, levels, battery and throttle seen to, and
/// the bike is ridden only once all else is.
static WAKE_UP: &[Step] = &[
    up(1, &words::UNCOVER),
    up(2, &words::OPEN).care(0),
    up(3, &words::FUEL_AGAIN).care(0),
    up(4, &words::LEVELS),
    up(5, &words::BATTERY_AGAIN).sum(Line::Battery).blanks(&[
        facts::METER_READS.id(),
        facts::METER_READ_ON.id(),
        facts::WHERE_THINGS_LIE.id(),
    ]),
    up(7, &words::TIRES_AGAIN).care(0).sum(Line::TiresAgain),
    up(8, &words::FASTENERS).care(1),
    up(9, &words::CHAIN_AGAIN).asked(Asked::Chain),
    up(11, &words::BEFORE_MOVING).care(0),
    up(6, &words::STANDS).care(0).asked(Asked::Undoes(16)),
    up(10, &words::PAPERS).blanks(&[facts::PAPERS_DUE.id(), facts::WHERE_THINGS_LIE.id()]),
    up(15, &words::DUE).listing_due().blanks(&[facts::ODOMETER.id(), facts::INTERVALS.id()]),
    up(12, &words::FIRST_START).care(0).after(&[2, 3, 4, 5, 11]),
    up(13, &words::FIRST_RIDE).care(0).after(&[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15]),
    up(14, &words::LOOK_AGAIN).after(&[13]),
];

/// The longest part of a step's key that its tag has, letters.
const LONGEST_KEY: usize = 300;

/// A park date so long after the season began is another winter's.
const ANOTHER_WINTER: Days = Days::new(270);

/// What holds a season's ticks and what was left out of it.
const TICKS: [Id; 6] = [
    facts::LAY_UP_DONE.id(),
    facts::WAKE_UP_DONE.id(),
    facts::LAY_UP_LEFT_OUT.id(),
    facts::WAKE_UP_LEFT_OUT.id(),
    facts::OWN_LAY_UP_DONE.id(),
    facts::OWN_WAKE_UP_DONE.id(),
];

/// What the season is known by; none before its first tick, nor where the dates were moved on to another winter: what was
/// ticked then holds no more.
pub(super) fn mark(from: &dyn Facts) -> Option<NaiveDate> {
    let mark = facts::SEASON_MARK.known(from)?;
    let park = facts::PARK_DATE.known(from);
    let next =
        park.zip(mark.checked_add_days(ANOTHER_WINTER)).is_some_and(|(park, end)| park > end);
    (!next).then_some(mark)
}

/// Whether ticks stand that were made in another winter.
pub fn is_stale(from: &dyn Facts) -> bool {
    facts::given(from, facts::SEASON_MARK.id()) && mark(from).is_none()
}

/// What is to be typed, and for which facts, before a step is ticked `today`: ticks of another winter go, and the season is given
/// what it is known by. With a park date far ahead that is a later day than today, or the tick would be another winter's at once.
pub fn begun(from: &dyn Facts, today: NaiveDate) -> Vec<(Id, String)> {
    let mut typed = Vec::new();
    if is_stale(from) {
        typed.extend(TICKS.map(|it| (it, String::new())));
    }
    if mark(from).is_none() {
        let park = facts::PARK_DATE.known(from);
        let least = park.and_then(|it| it.checked_sub_days(ANOTHER_WINTER));
        typed.push((facts::SEASON_MARK.id(), day_written(today.max(least.unwrap_or(today)))));
    }
    typed
}

/// So many days before the ride date the sheet opens on its wake-up side.
pub(super) const WAKES_BEFORE: Days = Days::new(21);

impl Side {
    /// Name in the address.
    pub fn key(self) -> &'static str {
        match self {
            Side::LayUp => "layup",
            Side::WakeUp => "wakeup",
        }
    }

    /// Both, in their order.
    pub const ALL: [Side; 2] = [Side::LayUp, Side::WakeUp];

    /// All its steps, in the order of the work.
    pub fn steps(self) -> &'static [Step] {
        match self {
            Side::LayUp => LAY_UP,
            Side::WakeUp => WAKE_UP,
        }
    }

    /// The step with this key.
    pub fn step(self, key: &str) -> Option<&'static Step> {
        self.steps().iter().find(|it| it.choice.key == key)
    }

    /// So many of its steps this bike has.
    pub fn count(self, from: &dyn Facts) -> usize {
        self.steps().iter().filter(|it| it.is_asked(from)).count()
    }

    /// The side that the sheet opens on: from three weeks before the ride date the second. A ride date before the park date is
    /// refused, and turns nothing.
    pub fn on(today: NaiveDate, from: &dyn Facts) -> Self {
        let park = facts::PARK_DATE.known(from);
        let ride = facts::RIDE_DATE.known(from).filter(|it| park.is_none_or(|park| park <= *it));
        let wakes = ride.and_then(|it| it.checked_sub_days(WAKES_BEFORE));
        if wakes.is_some_and(|it| today >= it) { Side::WakeUp } else { Side::LayUp }
    }

    /// What tells this season's tick of a step from any other's: "2026-11-14/layup/oil".
    pub fn tag(self, step: &str, from: &dyn Facts, today: NaiveDate) -> String {
        let mark = day_written(mark(from).unwrap_or(today));
        // It has to fit in an entry, however long a step of the owner's own is called.
        let step = step.char_indices().nth(LONGEST_KEY).map_or(step, |(end, _)| cut(step, end).0);
        format!("{mark}/{}/{step}", self.key())
    }

    /// The entry that says which of its steps are done.
    fn done(self) -> Id {
        match self {
            Side::LayUp => facts::LAY_UP_DONE.id(),
            Side::WakeUp => facts::WAKE_UP_DONE.id(),
        }
    }

    /// The entry that says which of its steps are left out, and why.
    fn left_out(self) -> Id {
        match self {
            Side::LayUp => facts::LAY_UP_LEFT_OUT.id(),
            Side::WakeUp => facts::WAKE_UP_LEFT_OUT.id(),
        }
    }
}

impl Step {
    /// Whether this bike has it.
    pub fn is_asked(&self, from: &dyn Facts) -> bool {
        match self.asked {
            Asked::Always => true,
            Asked::Coolant => facts::COOLING.maybe(from) != Ok(Some(Cooling::Air)),
            Asked::Carburetor => facts::FUEL_SUPPLY.maybe(from) != Ok(Some(FuelSupply::Injection)),
            Asked::Chain => !matches!(
                facts::FINAL_DRIVE.maybe(from),
                Ok(Some(FinalDrive::Belt | FinalDrive::Shaft))
            ),
            Asked::Undoes(code) => {
                let undone = LAY_UP.iter().find(|it| it.choice.code == code);
                undone.is_none_or(|it| it.left_out(from).is_none())
            }
        }
    }

    /// Its number on the sheet, on the bench and on paper: its place among those that this bike has, from 1.
    pub fn number(&self, from: &dyn Facts) -> usize {
        let before = self.side.steps().iter().take_while(|it| *it != self);
        before.filter(|it| it.is_asked(from)).count() + 1
    }

    /// Whether it is ticked.
    pub fn is_done(&self, from: &dyn Facts) -> bool {
        self.keys(from).split_whitespace().any(|it| it == self.choice.key)
    }

    /// What tells this season's tick of it from any other's.
    pub fn tag(&self, from: &dyn Facts, today: NaiveDate) -> String {
        self.side.tag(self.choice.key, from, today)
    }

    /// Keys of the steps of its side that are done.
    fn keys(&self, from: &dyn Facts) -> String {
        if is_stale(from) {
            return String::new();
        }
        facts::several_keys(choices(self.side), &from.entry(self.side.done()))
    }

    /// What is to be typed, and for which fact, so that it is ticked, or no longer.
    pub fn ticked(&self, from: &dyn Facts, done: bool) -> (Id, String) {
        let keys = self.keys(from);
        let mut keys: Vec<&str> =
            keys.split_whitespace().filter(|it| *it != self.choice.key).collect();
        if done {
            keys.push(self.choice.key);
        }
        (self.side.done(), joined(&keys, " "))
    }

    /// Why it is left out this season, where it is.
    pub fn left_out(&self, from: &dyn Facts) -> Option<String> {
        Some(self.reason(from).trim().to_owned()).filter(|it| !it.is_empty())
    }

    /// The reason as it is typed: with the space behind its last word.
    pub fn reason(&self, from: &dyn Facts) -> String {
        let entry = from.entry(self.side.left_out());
        let own = entry.text.split(';').find_map(|it| self.reason_in(it));
        own.map(|it| it.strip_prefix(' ').unwrap_or(it).to_owned()).unwrap_or_default()
    }

    fn reason_in<'a>(&self, part: &'a str) -> Option<&'a str> {
        let (key, reason) = part.split_once(':')?;
        (key.trim() == self.choice.key).then_some(reason)
    }

    /// What is to be typed, and for which fact, so that it is left out for that reason, or for none no longer.
    pub fn leaving_out(&self, from: &dyn Facts, reason: &str) -> (Id, String) {
        let mut parts = self.other_reasons(from);
        if !reason.trim().is_empty() {
            // A semicolon would end it.
            parts.push(format!("{}: {}", self.choice.key, replaced(reason, ";", ",")));
        }
        (self.side.left_out(), joined(&parts, "; "))
    }

    /// So many letters are left for its reason: all of a side share one entry, which a link has to take.
    pub fn room(&self, from: &dyn Facts) -> usize {
        let others = joined(&self.other_reasons(from), "; ").chars().count();
        LONGEST.saturating_sub(others + self.choice.key.len() + "; : ".len())
    }

    fn other_reasons(&self, from: &dyn Facts) -> Vec<String> {
        let entry: Entry = from.entry(self.side.left_out());
        let others = entry.text.split(';').map(str::trim);
        others
            .filter(|it| !it.is_empty() && self.reason_in(it).is_none())
            .map(str::to_owned)
            .collect()
    }

    /// What it waits for, by title: the steps before it that are asked and neither done nor left out, and before the engine
    /// runs the owner's own of that side.
    pub fn waits_for(&self, from: &dyn Facts) -> Vec<String> {
        let open = |it: &&Step| {
            self.after.contains(&it.choice.code)
                && it.is_asked(from)
                && !it.is_done(from)
                && it.left_out(from).is_none()
        };
        let mut titles: Vec<String> =
            self.side.steps().iter().filter(open).map(|it| it.said.title.to_owned()).collect();
        if self.side == Side::WakeUp && !self.after.is_empty() {
            let own = OwnSteps::of(self.side, from);
            titles.extend(own.titles.iter().filter(|it| !own.is_done(it)).cloned());
        }
        titles
    }
}
