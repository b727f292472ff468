//! Oil used up, as the logbook tells it: between two changes, and since the last by what was topped up.

use crate::facts;
use crate::logbook::{Logbook, Row};
use crate::oil;
use crate::words::steps;
use crate::working::{Answer, Quantity};
use chrono::NaiveDate;
use uom::si::f64::{Area, Length, Volume};

/// Shortest ride that tells anything, meters: on less, what is misread of the level is more than what was used (common
/// practice, no source).
const SHORTEST: f64 = 500e3;

/// What went in and out on one day or at one reading.
#[derive(Clone, Copy, Default)]
struct Fill {
    day: Option<NaiveDate>,
    /// Odometer, meters.
    at: Option<f64>,
    poured: f64,
    drained: Option<f64>,
    /// All of it was changed, whether or not what came out was measured.
    change: bool,
}

impl Fill {
    fn of(row: &Row) -> Option<Self> {
        let poured = facts::OIL_POURED.known(row).map(Quantity::base);
        let drained = facts::OIL_DRAINED.known(row).map(Quantity::base);
        poured.or(drained)?;
        let change = drained.is_some() || row.line().trim() == steps::OIL.title;
        let at = facts::LOG_ODOMETER.known(row).map(Quantity::base);
        Some(Self { day: row.day, at, poured: poured.unwrap_or_default(), drained, change })
    }

    /// Whether both belong to one work at the bike.
    fn goes_with(&self, other: &Self) -> bool {
        let same_place = self.at.is_some() && self.at == other.at;
        let same_day = self.day.is_some() && self.day == other.day;
        (self.change || other.change) && (same_place || same_day)
    }

    fn take(&mut self, other: Self) {
        self.at = self.at.or(other.at);
        self.poured += other.poured;
        self.drained = match (self.drained, other.drained) {
            (Some(one), Some(other)) => Some(one + other),
            (one, other) => one.or(other),
        };
        self.change |= other.change;
    }
}

/// From the change before the last one until the last, and since the last by what was topped up. `None` where a reading or a
/// volume is lacking that it takes: half of it would be a wrong figure.
pub(super) fn oil_used(book: &Logbook) -> [Option<Answer<Area>>; 2] {
    let mut fills: Vec<Fill> = Vec::new();
    // By their days: a top-up needs no reading to be counted.
    for fill in book.rows().iter().filter_map(Fill::of) {
        match fills.last_mut().filter(|it| it.goes_with(&fill)) {
            Some(last) => last.take(fill),
            None => fills.push(fill),
        }
    }
    let mut changes = (0..fills.len()).rev().filter(|at| fills[*at].change);
    let (last, before) = (changes.next(), changes.next());
    let between = last.zip(before).and_then(|(last, first)| {
        let (poured, drained) = (fills[first].poured, fills[last].drained?);
        if poured > 0.0 { used(&fills[first..last], fills[last].at, poured, drained) } else { None }
    });
    let since = last.and_then(|first| {
        // Filled to the same mark each time, what was poured is what was used.
        let end = fills.iter().rposition(|it| it.at.is_some()).filter(|it| *it > first)?;
        used(&fills[first..=end], fills[end].at, 0.0, 0.0)
    });
    [between, since]
}

/// What was used from the first of the fills until the odometer read `until`.
fn used(fills: &[Fill], until: Option<f64>, poured: f64, drained: f64) -> Option<Answer<Area>> {
    let (first, topped_up) = fills.split_first()?;
    let ridden = until? - first.at?;
    let topped_up = topped_up.iter().map(|it| it.poured).sum();
    let [poured, topped_up, drained] = [poured, topped_up, drained].map(Volume::of_base);
    if ridden < SHORTEST {
        return None;
    }
    oil::consumption(poured, topped_up, drained, Length::of_base(ridden))
}
