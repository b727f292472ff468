//! A bike in a link or a record of a backup file beside what is kept here: what differs, and what comes of taking it over.
//! Which fastener is which, `walk` tells by names that nothing else has or figures that all agree, never by place: unlike `places`
//! in `garage/merge.rs`, which holds a list against the one that it came from, it does not know what both sides had before.

use super::link::as_sent;
use crate::entry::{self, Entry, text::joined};
use crate::facts::{self, Facts, Id};
use crate::garage::{Bike, Entries, Kept, name};
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

/// Names and notes, which travel only where that is chosen.
const STAY_AT_HOME: [Id; 3] =
    [facts::FASTENER_NAME.id(), facts::FASTENER_NOTE.id(), facts::WRENCH_NAME.id()];

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
    /// Of a record of a file, whether merging takes the file's. None where it keeps both, and for a link.
    pub taken: Option<bool>,
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
/// as it does here is no other's; then come those of equal figures, then those whose name nothing else has. Never by place: a
/// torque would come to another bolt.
fn walk(here: &mut Bike, there: &Bike, called: fn(usize) -> String, act: &mut dyn Act) {
    let nothing = &Entries::new();
    // Before the number is taken over.
    let number = facts::BIKE_KEY.id();
    let one = facts::given(&there.entries, number)
        && here.entries.entry(number).text == there.entries.entry(number).text;
    act.act("", &mut here.entries, &there.entries);
    let (own, new) = (&mut here.fasteners, &there.fasteners);
    // What is there for each of them.
    let mut found: Vec<Option<&Entries>> = vec![None; own.len()];
    let mut left: Vec<&Entries> = new.iter().collect();
    for pass in 0..3 {
        left.retain(|it| {
            let fits = |at: &usize| match pass {
                _ if found[*at].is_some() => false,
                0 => own[*at] == **it,
                1 => agree(&own[*at], it, one),
                _ => is_same(&own[*at], it) && is_one(own, it) && is_one(new, it),
            };
            let at = (0..own.len()).find(fits);
            if let Some(at) = at {
                found[at] = Some(it);
            }
            at.is_none()
        });
    }
    // Figures of two fasteners are never mixed.
    let mut open = &there.scratch;
    let blank = here.scratch.values().all(Entry::is_blank) || open.is_empty();
    if !blank && !agree(&here.scratch, open, one) && !is_same(&here.scratch, open) {
        left.push(open);
        open = nothing;
    }
    for it in left {
        found.push(Some(it));
        own.push(Entries::new());
    }
    for (at, own) in own.iter_mut().enumerate() {
        let it = found[at].unwrap_or(nothing);
        let of = name(own).or_else(|| name(it)).unwrap_or_else(|| called(at + 1));
        act.act(&of, own, it);
    }
    act.act("", &mut here.scratch, open);
}

/// Whether two have one name.
fn is_same(own: &Entries, new: &Entries) -> bool {
    name(new).is_some_and(|it| name(own) == Some(it))
}

/// Whether one alone of a list has the name.
fn is_one(all: &[Entries], new: &Entries) -> bool {
    all.iter().filter(|it| is_same(it, new)).count() == 1
}

/// Whether all figures of two are the same, and so is the name where both have one. A name that stayed at home is known of `one`
/// bike alone, and is none of the usual ones, as those travel.
fn agree(own: &Entries, new: &Entries, one: bool) -> bool {
    let home = || match (name(own), name(new)) {
        (Some(own), None) => one && fasteners::code(&own).is_none(),
        (own, new) => own == new,
    };
    let same = |id: &Id| match facts::about(*id) {
        Some(about) => {
            let [own, new] = said(about, own, new);
            STAY_AT_HOME.contains(id) || own == new
        }
        None => own.entry(*id) == new.entry(*id),
    };
    home() && own.keys().chain(new.keys()).all(same)
}

/// How a fact is read on both sides; empty where it is not known. One amount in one unit is read as it is here, however it is spelled.
fn said(about: &facts::About, own: &Entries, new: &Entries) -> [String; 2] {
    let said = |it: &Entries| {
        let entry = it.entry(about.id);
        match entry.is_blank() {
            true => String::new(),
            // Both as a link has them, so that a line's end or a day's spelling is no difference.
            false => facts::as_read(about, &as_sent(about.id, &entry)),
        }
    };
    let means = |it: &str| facts::echo(about, &Entry::new(it, entry::form::NONE));
    let (own, mut new) = (said(own), said(new));
    if means(&own).is_some_and(|it| means(&new) == Some(it)) {
        new.clone_from(&own);
    }
    [own, new]
}

/// Fact by fact what is kept `here` and what a link says; wrenches are told apart by the numbers that the page gave them.
pub fn compared(here: &Kept, there: &Kept) -> Vec<Row> {
    let mut all = Vec::new();
    let [own, new] = [here, there].map(|it| &it.season.entries);
    rows(&mut all, "", false, None, [own, new]);
    bikes(&mut all, &here.bike, &there.bike, words::fastener, None);
    rows(&mut all, "", true, None, [&here.garage.entries, &there.garage.entries]);
    let nothing = &Entries::new();
    for (at, it) in there.garage.wrenches.iter().enumerate() {
        let number = facts::WRENCH_KEY.id();
        let same = |own: &&Entries| {
            facts::given(*own, number) && own.entry(number).text == it.entry(number).text
        };
        let own = here.garage.wrenches.iter().find(same).or_else(|| here.garage.wrenches.get(at));
        rows(&mut all, &words::wrench(at + 1), true, None, [own.unwrap_or(nothing), it]);
    }
    all
}

fn bikes(
    all: &mut Vec<Row>,
    here: &Bike,
    there: &Bike,
    called: fn(usize) -> String,
    now: Option<u64>,
) {
    let mut act = |of: &str, here: &mut Entries, there: &Entries| {
        rows(all, of, false, now, [here, there]);
    };
    walk(&mut here.clone(), there, called, &mut act);
}

/// Fact by fact a record that is kept here and one of a file; wrenches stand as fasteners, entries of a logbook are counted.
pub(super) fn records(
    here: &Bike,
    there: &Bike,
    called: fn(usize) -> String,
    now: u64,
) -> Vec<Row> {
    let mut all = Vec::new();
    bikes(&mut all, here, there, called, Some(now));
    let both = [here, there].map(|it| it.others.len().to_string());
    let new = added(here, there);
    let label = backup::entries(new.len());
    if here.others != there.others {
        let [here, there] = both;
        all.push(Row { label, here, there, refused: None, garage: false, taken: None });
    }
    all
}

/// Entries of a logbook that are only there.
fn added(here: &Bike, there: &Bike) -> Vec<(u64, Entries)> {
    let mut all = there.others.clone();
    all.retain(|it| here.others.iter().all(|own| !is_entry(&it.1, &own.1)));
    all
}

/// Whether an entry of a file's logbook is one that is here, but for what could not be read of it.
fn is_entry(there: &Entries, here: &Entries) -> bool {
    let unread = Entry::default();
    there.iter().all(|(id, it)| here.get(id).is_some_and(|own| own == it || *it == unread))
        && here.len() == there.len()
        && (there == here || there.values().any(|it| *it != unread))
}

/// Whether merging takes what is there: of a fact given in both the one typed last, but for a clock that is ahead of `now`.
fn taken(own: &Entry, new: &Entry, now: u64) -> bool {
    let later = own.edited < new.edited && new.edited <= now;
    own.is_blank() || (!new.is_blank() && later)
}

/// Both of two records; of a fact given in both, the one typed last. Whether a bike is archived stays as it is here.
pub(super) fn both(here: &mut Bike, there: &Bike, now: u64) {
    const ARCHIVED: Id = facts::ARCHIVED.id();
    let mut act = |_: &str, own: &mut Entries, new: &Entries| {
        let archived = own.get(&ARCHIVED).cloned();
        for (id, entry) in new.iter() {
            if taken(&own.entry(*id), entry, now) {
                own.insert(*id, entry.clone());
            }
        }
        own.remove(&ARCHIVED);
        own.extend(archived.map(|it| (ARCHIVED, it)));
    };
    walk(here, there, words::fastener, &mut act);
    here.others.extend(added(here, there));
}

/// What a record of a file has, with what is here where the file's could not be read.
pub(super) fn completed(there: &mut Bike, here: &Bike) {
    let mut act = |_: &str, own: &mut Entries, new: &Entries| {
        for (id, entry) in new.iter() {
            if own.get(id) == Some(&Entry::default()) {
                own.insert(*id, entry.clone());
            }
        }
    };
    let count = there.fasteners.len();
    walk(there, here, words::fastener, &mut act);
    there.fasteners.truncate(count);
    for (_, own) in &mut there.others {
        if let Some((_, it)) = here.others.iter().find(|it| is_entry(own, &it.1)) {
            own.clone_from(it);
        }
    }
}

fn rows(
    all: &mut Vec<Row>,
    of: &str,
    garage: bool,
    now: Option<u64>,
    [here, there]: [&Entries; 2],
) {
    for about in facts::TABLE.iter().filter(|it| !OF_THE_PAGE.contains(&it.id)) {
        let [own, new] = [here, there].map(|it| it.entry(about.id));
        if own.is_blank() && new.is_blank() {
            continue;
        }
        let colon = if of.is_empty() { "" } else { ": " };
        let label = joined(&[of, colon, about.label], "");
        let refused = facts::refusal(about, &new).map(|it| it.to_string());
        let taken = now.map(|now| taken(&own, &new, now));
        let unread = now.is_some() && there.get(&about.id) == Some(&Entry::default());
        let [here, mut there] = said(about, here, there);
        if unread {
            backup::UNREAD.clone_into(&mut there);
        }
        all.push(Row { label, here, there, refused, garage, taken });
    }
}

/// What is kept `here` with what a link says over it, typed `now` (milliseconds since 1970): what the link does not carry, or what
/// no blank takes, stays, and so does the garage, but for its blanks.
pub fn taken_over(here: &Kept, there: &Kept, now: u64) -> Kept {
    let mut kept = here.clone();
    over(&mut kept.season.entries, &there.season.entries, now);
    let mut act = |_: &str, own: &mut Entries, new: &Entries| over(own, new, now);
    walk(&mut kept.bike, &there.bike, words::fastener, &mut act);
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
