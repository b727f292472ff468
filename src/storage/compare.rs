//! A bike in a link or a record of a backup file beside what is kept here: what differs, and what comes of taking it over.

use super::link::as_sent;
use crate::entry::{Entry, text::joined};
use crate::facts::{self, Facts, Id};
use crate::garage::{Bike, Entries, Kept};
use crate::words::{backup, fasteners, page as words};

/// Made by the page: nobody typed them, and they say nothing to a person.
const OF_THE_PAGE: [Id; 7] = [
    facts::FROM_LINK.id(),
    facts::BIKE_KEY.id(),
    facts::WRENCH_KEY.id(),
    facts::TAKEN_WRENCH.id(),
    facts::SEASON_MARK.id(),
    facts::ARCHIVED.id(),
    facts::UNIT_SET.id(),
];

/// A fact of a link beside what is kept here.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Its label; of a fastener or a wrench with the name of that before it.
    pub label: String,
    /// As it is read here; empty where nothing is known.
    pub here: String,
    /// As it is read in the link.
    pub there: String,
    /// Why the link's is not taken, where it is not.
    pub refused: Option<String>,
    /// Whether it is the garage's, which all bikes share.
    pub garage: bool,
}

/// What is done with facts of a bike here and those that a link has for them, under the name of what they are of.
trait Act {
    fn act(&mut self, of: &str, here: &mut Entries, there: &Entries);
}
impl<F: FnMut(&str, &mut Entries, &Entries)> Act for F {
    fn act(&mut self, of: &str, here: &mut Entries, there: &Entries) {
        self(of, here, there);
    }
}

/// Goes through a bike. A fastener that is only there comes behind those that are here, blank at first. One that stands there
/// as it does here is no other's; `by_place`: those without a name are told by their places.
fn walk(
    here: &mut Bike,
    there: &Bike,
    called: fn(usize) -> String,
    by_place: bool,
    act: &mut dyn Act,
) {
    let nothing = &Entries::new();
    // Before the number is taken over.
    let number = facts::BIKE_KEY.id();
    let one = facts::given(&there.entries, number)
        && here.entries.entry(number).text == there.entries.entry(number).text;
    let place_of = |same: bool| (by_place && same).then_some(one);
    act.act("", &mut here.entries, &there.entries);
    let own = &mut here.fasteners;
    // What is there for each of them.
    let like = |own: &Entries| there.fasteners.iter().find(|it| *it == own);
    let mut found: Vec<Option<&Entries>> = own.iter().map(like).collect();
    for (place, it) in there.fasteners.iter().enumerate() {
        if own.contains(it) {
            continue;
        }
        let is_it =
            |at: &usize| found[*at].is_none() && is_same(&own[*at], it, place_of(*at == place));
        match (0..own.len()).find(is_it) {
            Some(at) => found[at] = Some(it),
            None => found.push(Some(it)),
        }
        while own.len() < found.len() {
            own.push(Entries::new());
        }
    }
    // Figures of two fasteners are never mixed.
    let mut open = &there.scratch;
    let blank = here.scratch.values().all(Entry::is_blank) || here.scratch == *open;
    if !blank && !open.is_empty() && !is_same(&here.scratch, open, place_of(true)) {
        found.push(Some(open));
        own.push(Entries::new());
        open = nothing;
    }
    for (at, own) in own.iter_mut().enumerate() {
        let it = found[at].unwrap_or(nothing);
        let of = name(own).or_else(|| name(it)).unwrap_or_else(|| called(at + 1));
        act.act(&of, own, it);
    }
    act.act("", &mut here.scratch, open);
}

/// Whether a fastener of a link is the one here: by its name; without one at the same place, where `place` says whether both are
/// surely of `one` bike, as names stay at home. Another bike's is only ever a nameless one here. A usual name always travels.
fn is_same(own: &Entries, new: &Entries, place: Option<bool>) -> bool {
    let (own, new) = (name(own), name(new));
    match (new, place) {
        (Some(new), _) => own.is_some_and(|it| it == new),
        (None, None) => false,
        (None, Some(one)) => own.is_none_or(|it| one && fasteners::code(&it).is_none()),
    }
}

/// Fact by fact what is kept `here` and what a link says; wrenches are told apart by the numbers that the page gave them.
pub fn compared(here: &Kept, there: &Kept) -> Vec<Row> {
    let mut all = Vec::new();
    let [own, new] = [here, there].map(|it| &it.season.entries);
    rows(&mut all, "", false, [own, new]);
    bikes(&mut all, &here.bike, &there.bike, words::fastener, true);
    rows(&mut all, "", true, [&here.garage.entries, &there.garage.entries]);
    let nothing = &Entries::new();
    for (at, it) in there.garage.wrenches.iter().enumerate() {
        let number = facts::WRENCH_KEY.id();
        let same = |own: &&Entries| {
            facts::given(*own, number) && own.entry(number).text == it.entry(number).text
        };
        let own = here.garage.wrenches.iter().find(same).or_else(|| here.garage.wrenches.get(at));
        rows(&mut all, &words::wrench(at + 1), true, [own.unwrap_or(nothing), it]);
    }
    all
}

fn bikes(
    all: &mut Vec<Row>,
    here: &Bike,
    there: &Bike,
    called: fn(usize) -> String,
    by_place: bool,
) {
    let mut act = |of: &str, here: &mut Entries, there: &Entries| {
        rows(all, of, false, [here, there]);
    };
    walk(&mut here.clone(), there, called, by_place, &mut act);
}

/// Fact by fact a record that is kept here and one of a file; wrenches stand as fasteners, entries of a logbook are counted.
pub(super) fn records(here: &Bike, there: &Bike, called: fn(usize) -> String) -> Vec<Row> {
    let mut all = Vec::new();
    bikes(&mut all, here, there, called, false);
    let both = [here, there].map(|it| it.others.len().to_string());
    let new = added(here, there);
    let label = backup::entries(new.len());
    if here.others != there.others {
        let [here, there] = both;
        all.push(Row { label, here, there, refused: None, garage: false });
    }
    all
}

/// Entries of a logbook that are only there.
fn added(here: &Bike, there: &Bike) -> Vec<(u64, Entries)> {
    let mut all = there.others.clone();
    all.retain(|it| here.others.iter().all(|own| own.1 != it.1));
    all
}

/// Both of two records; of a fact given in both, the one typed last. Whether a bike is archived stays as it is here.
pub(super) fn both(here: &mut Bike, there: &Bike) {
    const ARCHIVED: Id = facts::ARCHIVED.id();
    let mut act = |_: &str, own: &mut Entries, new: &Entries| {
        let archived = own.get(&ARCHIVED).cloned();
        for (id, entry) in new.iter() {
            let was = own.entry(*id);
            if was.is_blank() || (!entry.is_blank() && entry.edited > was.edited) {
                own.insert(*id, entry.clone());
            }
        }
        own.remove(&ARCHIVED);
        own.extend(archived.map(|it| (ARCHIVED, it)));
    };
    walk(here, there, words::fastener, false, &mut act);
    here.others.extend(added(here, there));
}

fn rows(all: &mut Vec<Row>, of: &str, garage: bool, [here, there]: [&Entries; 2]) {
    for about in facts::TABLE.iter().filter(|it| !OF_THE_PAGE.contains(&it.id)) {
        let [own, new] = [here, there].map(|it| it.entry(about.id));
        if own.is_blank() && new.is_blank() {
            continue;
        }
        let said = |it: &Entry| match it.is_blank() {
            true => String::new(),
            // Both as a link has them, so that a line's end or a day's spelling is no difference.
            false => facts::as_read(about, &as_sent(about.id, it)),
        };
        let colon = if of.is_empty() { "" } else { ": " };
        let label = joined(&[of, colon, about.label], "");
        let refused = facts::refusal(about, &new).map(|it| it.to_string());
        all.push(Row { label, here: said(&own), there: said(&new), refused, garage });
    }
}

fn name(fastener: &Entries) -> Option<String> {
    facts::FASTENER_NAME.known(fastener).or_else(|| facts::WRENCH_NAME.known(fastener))
}

/// What is kept `here` with what a link says over it, typed `now` (milliseconds since 1970): what the link does not carry, or what
/// no blank takes, stays, and so does the garage, but for its blanks.
pub fn taken_over(here: &Kept, there: &Kept, now: u64) -> Kept {
    let mut kept = here.clone();
    over(&mut kept.season.entries, &there.season.entries, now);
    let mut act = |_: &str, own: &mut Entries, new: &Entries| over(own, new, now);
    walk(&mut kept.bike, &there.bike, words::fastener, true, &mut act);
    if !there.bike.others.is_empty() {
        kept.bike.others.clone_from(&there.bike.others);
    }
    kept.garage.welcome(there.garage.clone());
    kept
}

fn over(own: &mut Entries, new: &Entries, now: u64) {
    /// They say what this browser did.
    const STAY: [Id; 3] = [facts::SEASON_MARK.id(), facts::ARCHIVED.id(), facts::FROM_LINK.id()];
    for (id, entry) in new.iter() {
        let refused = facts::about(*id).is_some_and(|it| facts::refusal(it, entry).is_some());
        if !refused && !entry.is_blank() && !STAY.contains(id) {
            own.insert(*id, Entry { edited: now, ..entry.clone() });
        }
    }
}
