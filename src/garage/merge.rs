//! What two pages made of the same bike: merged fact by fact, against what both began with.
//! Which fastener is which, `places` tells by some entries in common, too, and by place where neither has a name, as it has the list
//! that each came from; `walk` in `storage/compare.rs`, which does not know what both sides had before, may take neither for a proof.

use super::{Bike, Entries, Garage, Kept, Season, home};
use crate::entry::Entry;
use crate::facts::{self, Home, Id, Kind};

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
    /// mine, and told. A newer page's groups are taken whole, and not told: here they only come with a link, all at once.
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
    /// ticks, each part is taken so. What else both changed stays as mine, and is added to `twice`, as of this `item`; where the two have
    /// other names and both changed something, that is all that theirs has otherwise.
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
        if mine != base && theirs != base && name(mine) != name(theirs) {
            // Two fasteners: figures of one are not joined to the other's name unasked.
            for (id, other) in theirs.iter() {
                let known = |it: &Self| other.same(it.get(id).unwrap_or(&BLANK));
                if !other.is_blank() && !known(mine) && !known(base) {
                    twice.push(Twice { id: *id, item, theirs: other.clone() });
                }
            }
            return mine.clone();
        }
        let mut merged = theirs.clone();
        for (id, now) in mine.iter() {
            let [was, other] = [base, theirs].map(|it| it.get(id).unwrap_or(&BLANK));
            if now.same(was) || now.same(other) {
                continue;
            }
            let mut entry = now.clone();
            if !other.same(was) {
                if let Some(sign) = between(*id) {
                    entry.text = parts([was, now, other], sign);
                } else if !(now.is_blank() && other.is_blank()) {
                    twice.push(Twice { id: *id, item, theirs: other.clone() });
                }
            }
            merged.insert(*id, entry);
        }
        // What this page let go: an entry that was emptied by hand is still there, and blank.
        merged.retain(|id, it| {
            let gone = mine.get(id).is_none() && base.get(id).is_some_and(|was| it.same(was));
            !gone && *it != BLANK
        });
        merged
    }
}

static BLANK: Entry = Entry { text: String::new(), unit: 0, edited: 0 };

/// What stands between the parts of a fact that is a list.
fn between(id: Id) -> Option<char> {
    let several = facts::about(id).is_some_and(|it| matches!(it.kind, Kind::Several(_)));
    const TITLES: [Id; 6] = [
        facts::LAY_UP_LEFT_OUT.id(),
        facts::WAKE_UP_LEFT_OUT.id(),
        facts::OWN_LAY_UP.id(),
        facts::OWN_WAKE_UP.id(),
        facts::OWN_LAY_UP_DONE.id(),
        facts::OWN_WAKE_UP_DONE.id(),
    ];
    if several { Some(' ') } else { TITLES.contains(&id).then_some(';') }
}

/// Theirs without the parts that I took out, and with those that I added.
fn parts([was, now, other]: [&Entry; 3], sign: char) -> String {
    let mut all = String::new();
    for text in [other, now] {
        for part in text.text.split(sign).map(str::trim) {
            let has = |text: &str| text.split(sign).any(|it| it.trim() == part);
            let stays = has(&now.text) && has(&other.text) || !has(&was.text);
            if stays && !part.is_empty() && !has(&all) {
                if !all.is_empty() {
                    all.push(sign);
                }
                if sign == ';' && !all.is_empty() {
                    all.push(' ');
                }
                all.push_str(part);
            }
        }
    }
    all
}

/// In no place.
pub const NOWHERE: usize = usize::MAX;

/// What a fastener or a wrench is called.
pub fn name(of: &Entries) -> Option<String> {
    facts::FASTENER_NAME.known(of).or_else(|| facts::WRENCH_NAME.known(of))
}

/// For each of `all` the place in `before` of what it was there: the same, else one of its name, else the one that has most entries
/// in common with it, else, where neither has a name, what stands in its place; [`NOWHERE`] for a new one. A place alone would bring
/// the torque of one bolt to another.
pub fn places(all: &[Entries], before: &[Entries]) -> Vec<usize> {
    let mut places = vec![NOWHERE; all.len()];
    for pass in 0..4 {
        for (at, it) in all.iter().enumerate() {
            if places[at] != NOWHERE {
                continue;
            }
            let mut most = 0;
            for (place, other) in before.iter().enumerate() {
                if places.contains(&place) {
                    continue;
                }
                // By the time at which it was typed an entry is known.
                let common = || {
                    it.iter().filter(|(id, it)| it.edited > 0 && other.get(id) == Some(it)).count()
                };
                let names = || [it, other].map(name);
                let fits = match pass {
                    0 => usize::from(it == other),
                    1 => match names() {
                        [Some(own), Some(other)] if own == other => 1 + common(),
                        _ => 0,
                    },
                    2 => common(),
                    _ => usize::from(place == at && names() == [None, None]),
                };
                if fits > most {
                    places[at] = place;
                    most = fits;
                }
            }
        }
    }
    places
}

/// Fasteners or wrenches, each merged with what it was; those that both added all stand there, and one that was taken out in one page
/// stays where the other changed it. What one page named otherwise and the other changed stands there twice, as each has it: a torque
/// is never joined to another name.
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
    let mut left = their_places;
    let mut merged: Vec<Entries> = Vec::new();
    for (it, was) in mine.iter().zip(my_places) {
        // One that both added is there once.
        let at = (0..theirs.len())
            .find(|at| if was == NOWHERE { theirs[*at] == *it } else { left[*at] == was });
        let mut other = None;
        let own = match (at.map(|at| &theirs[at]), base.get(was)) {
            (Some(new), Some(base)) if it == base => new.clone(),
            (Some(new), Some(base)) if new == base || name(it) == name(new) => {
                Entries::merged(base, it, new, Some(merged.len()), twice)
            }
            (None, Some(base)) if base == it => continue,
            (new, _) => {
                other = new.filter(|new| *new != it);
                it.clone()
            }
        };
        if let Some(at) = at {
            left[at] = TAKEN;
        }
        merged.push(own);
        merged.extend(other.cloned());
    }
    for (at, it) in theirs.iter().enumerate() {
        if left[at] != TAKEN && base.get(left[at]) != Some(it) {
            merged.push(it.clone());
        }
    }
    merged
}

/// Merged already.
const TAKEN: usize = NOWHERE - 1;

impl Twice {
    /// Whether it is of a wrench of the drawer; else, where it has a place, of a fastener.
    pub fn of_wrench(&self) -> bool {
        home(self.id) == Home::Wrench
    }
}
