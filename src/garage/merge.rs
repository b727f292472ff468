//! What two pages made of the same bike: merged fact by fact, against what both began with.

use super::{Bike, Entries, Garage, Kept, Season, home};
use crate::entry::Entry;
use crate::entry::text::joined;
use crate::facts::{self, Facts, Home, Id, Kind};

/// A fact that both changed, each to something else.
#[derive(Debug, Clone, PartialEq)]
pub struct Twice {
    /// The fact.
    pub id: Id,
    /// Of which fastener or wrench it is, by its place in what was merged; `None` where it is the bike's, the season's, the
    /// garage's, or the open fastener's.
    pub item: Option<usize>,
    /// As the other page has it; what was merged has it as mine.
    pub theirs: Entry,
}

impl Kept {
    /// What two pages made of the same bike, `base`: what one of them left as it was, as the other has it. What both changed is as
    /// mine, and told.
    pub fn merged(base: &Self, mine: &Self, theirs: &Self) -> (Self, Vec<Twice>) {
        let mut all = Vec::new();
        let mut facts = |of: fn(&Kept) -> &Entries| {
            Entries::merged(of(base), of(mine), of(theirs), None, &mut all)
        };
        let [bike, scratch] = [facts(|it| &it.bike.entries), facts(|it| &it.bike.scratch)];
        let [season, garage] = [facts(|it| &it.season.entries), facts(|it| &it.garage.entries)];
        let mut list =
            |of: fn(&Kept) -> &Vec<Entries>| merged_list(of(base), of(mine), of(theirs), &mut all);
        let fasteners = list(|it| &it.bike.fasteners);
        let wrenches = list(|it| &it.garage.wrenches);
        let others = if mine.bike.others == base.bike.others { theirs } else { mine };
        let others = others.bike.others.clone();
        let merged = Self {
            bike: Bike { entries: bike, scratch, fasteners, others },
            season: Season { entries: season },
            garage: Garage { entries: garage, wrenches },
        };
        (merged, all)
    }
}

impl Entries {
    /// Fact by fact what two made of `base`: what one of them left as it was, as the other has it. Of facts that are lists, such as
    /// ticks, each part is taken so. What else both changed stays as mine, and is added to `twice`, as of this `item`.
    ///
    /// ```
    /// use torpor::{entry::Entry, facts::{Facts, Id}, garage::Entries};
    /// let with = |text: &str, other: &str| Entries::from([(Id(10), Entry::new(text, 0)), (Id(11), Entry::new(other, 0))]);
    /// let mut twice = Vec::new();
    /// let merged = Entries::merged(&with("15", "4"), &with("16", "4"), &with("15", "5"), None, &mut twice);
    /// assert_eq!((merged, twice.len()), (with("16", "5"), 0));
    /// let merged = Entries::merged(&with("15", "4"), &with("16", "4"), &with("17", "5"), None, &mut twice);
    /// assert_eq!((merged, &twice[0].theirs.text[..]), (with("16", "5"), "17"));
    /// ```
    pub fn merged(
        base: &Self,
        mine: &Self,
        theirs: &Self,
        item: Option<usize>,
        twice: &mut Vec<Twice>,
    ) -> Self {
        let same = |one: &Entry, other: &Entry| one.text == other.text && one.unit == other.unit;
        let mut merged = theirs.clone();
        for (id, was) in mine.iter().map(|it| (*it.0, base.entry(*it.0))) {
            let [now, other] = [mine, theirs].map(|it| it.entry(id));
            if same(&now, &was) || same(&now, &other) {
                continue;
            }
            let entry = if same(&other, &was) {
                now
            } else if let Some(between) = between(id) {
                Entry { text: parts([&was, &now, &other], between), ..now }
            } else {
                if !(now.is_blank() && other.is_blank()) {
                    twice.push(Twice { id, item, theirs: other });
                }
                now
            };
            merged.insert(id, entry);
        }
        // What this page let go: an entry that was emptied by hand is still there, and blank.
        for (id, was) in base.iter() {
            if mine.get(id).is_none() && same(&theirs.entry(*id), was) {
                merged.remove(id);
            }
        }
        merged.retain(|_, it| *it != Entry::default());
        merged
    }
}

/// What stands between the parts of a fact that is a list.
fn between(id: Id) -> Option<&'static str> {
    let several = facts::about(id).is_some_and(|it| matches!(it.kind, Kind::Several(_)));
    const TITLES: [Id; 6] = [
        facts::LAY_UP_LEFT_OUT.id(),
        facts::WAKE_UP_LEFT_OUT.id(),
        facts::OWN_LAY_UP.id(),
        facts::OWN_WAKE_UP.id(),
        facts::OWN_LAY_UP_DONE.id(),
        facts::OWN_WAKE_UP_DONE.id(),
    ];
    if several { Some(" ") } else { TITLES.contains(&id).then_some("; ") }
}

/// Theirs without the parts that I took out, and with those that I added.
fn parts(three: [&Entry; 3], between: &'static str) -> String {
    let sign = if between == " " { ' ' } else { ';' };
    let [was, now, other] = three.map(|it| {
        it.text.split(sign).map(str::trim).filter(|it| !it.is_empty()).collect::<Vec<_>>()
    });
    let mut all = other;
    all.retain(|it| now.contains(it) || !was.contains(it));
    for part in now {
        if !was.contains(&part) && !all.contains(&part) {
            all.push(part);
        }
    }
    joined(&all, between)
}

/// For each of `all` the place in `before` of what it was there: the same, else one that has an entry in common, else what stands in
/// its place.
pub fn places(all: &[Entries], before: &[Entries]) -> Vec<Option<usize>> {
    let common = |one: &Entries, other: &Entries| {
        one.iter().any(|(id, it)| it.edited > 0 && other.get(id) == Some(it))
    };
    let mut places = vec![None; all.len()];
    for pass in 0..3 {
        for (at, it) in all.iter().enumerate() {
            if places[at].is_some() {
                continue;
            }
            places[at] = before.iter().enumerate().position(|(place, other)| {
                let fits = match pass {
                    0 => it == other,
                    1 => common(it, other),
                    _ => place == at,
                };
                fits && !places.contains(&Some(place))
            });
        }
    }
    places
}

/// Fasteners or wrenches, each merged with what it was; those that both added all stand there, and one that was taken out in one page
/// stays where the other changed it.
fn merged_list(
    base: &[Entries],
    mine: &[Entries],
    theirs: &[Entries],
    twice: &mut Vec<Twice>,
) -> Vec<Entries> {
    if mine == base {
        return theirs.to_vec();
    }
    let [my_places, their_places] = [mine, theirs].map(|it| places(it, base));
    let mut taken = Vec::new();
    let mut merged: Vec<Entries> = Vec::new();
    for (it, was) in mine.iter().zip(&my_places) {
        let theirs_at = match was {
            Some(_) => their_places.iter().position(|it| it == was),
            None => theirs.iter().position(|other| it == other),
        };
        let own = match (theirs_at, was) {
            (Some(at), Some(was)) => {
                let item = Some(merged.len());
                Entries::merged(&base[*was], it, &theirs[at], item, twice)
            }
            (None, Some(was)) if base[*was] == *it => continue,
            _ => it.clone(),
        };
        taken.extend(theirs_at);
        merged.push(own);
    }
    for (at, it) in theirs.iter().enumerate() {
        let left = their_places[at].is_some_and(|was| base[was] == *it);
        if !taken.contains(&at) && !left {
            merged.push(it.clone());
        }
    }
    merged
}

impl Twice {
    /// Whether it is of a wrench of the drawer; else, where it has a place, of a fastener.
    pub fn of_wrench(&self) -> bool {
        home(self.id) == Home::Wrench
    }
}
