//! Oil: fill for the job, first pour and top-up, bottles.

use super::Panel;
use crate::digits;
use crate::facts::{self, Fact, Facts, Told, all3, both};
use crate::oil::{self, Bottles, Fills, Job, OilError};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::Answer;
use uom::si::f64::Volume;

/// The oil line's calculator.
pub fn oil(from: &dyn Facts, set: UnitSet) -> Panel {
    let needed = needed(from);
    let fill = needed.clone().map(|it| it.value);
    let between = facts::BETWEEN_MARKS.maybe(from);
    let pour = both(fill.clone(), between.clone()).and_then(|(fill, between)| {
        oil::first_pour(fill, between).map_err(|why| facts::BETWEEN_MARKS.not_together(why))
    });
    let top_up = both(fill.clone(), pour.clone()).and_then(|(fill, pour)| {
        oil::top_up(fill, pour.value).map_err(|why| facts::BETWEEN_MARKS.not_together(why))
    });
    let bottles = bottles(fill, from);
    let (to_buy, left_over) = match bottles {
        Ok(Bottles { to_buy, left_over }) => (Ok(to_buy), Ok(left_over)),
        Err(lacks) => (Err(lacks.clone()), Err(lacks)),
    };
    let mut note = Vec::new();
    let marks_known = matches!(between, Ok(Some(_)));
    if let (Ok(pour), Ok(top_up)) = (&pour, &top_up) {
        let top_up = marks_known.then(|| show::rounded(Measure::Oil, top_up.value, set));
        note.push(notes::first_pour(
            &show::rounded(Measure::Oil, pour.value, set),
            top_up.as_deref(),
        ));
    }
    if let (Ok(to_buy), Ok(left)) = (&to_buy, &left_over) {
        let left = show::rounded(Measure::Oil, left.value, set);
        note.push(notes::bottles(to_buy.value, &digits::fixed(to_buy.value, 0), &left));
    }
    let mut warnings = Vec::new();
    if matches!((&pour, between), (Ok(_), Ok(None))) {
        warnings.push(notes::MARKS_UNKNOWN.to_owned());
    }
    let mut answers = vec![
        Shown::quantity(labels::FIRST_POUR, pour, set),
        // A sum without the marks is a guess: poured on top of a level that was brought up, it would overfill.
        if top_up.is_ok() && !marks_known {
            Shown::words(labels::TOP_UP, notes::BY_THE_LEVEL)
        } else {
            Shown::quantity(labels::TOP_UP, top_up, set)
        },
        Shown::count(labels::BOTTLES_TO_BUY, to_buy, set),
        Shown::quantity(labels::LEFT_OVER, left_over, set),
    ];
    answers.push(Shown::quantity(labels::FILTER_ALLOWANCE, allowance(from), set));
    let job = facts::OIL_CHANGE.maybe(from);
    let mut blanks =
        vec![facts::OIL_CHANGE.id(), facts::FILL_WITH_FILTER.id(), facts::FILL_WITHOUT_FILTER.id()];
    if matches!(job, Ok(Some(Job::AfterOverhaul))) {
        blanks.push(facts::FILL_AFTER_OVERHAUL.id());
    }
    blanks.extend([facts::BETWEEN_MARKS.id(), facts::BOTTLE_SIZE.id(), facts::OIL_ON_SHELF.id()]);
    Panel {
        note: note.join(" · "),
        blanks,
        answers,
        warnings,
        cautions: cautions::OIL,
        ..Panel::of(Shown::quantity(labels::OIL_NEEDED, needed, set))
    }
}

fn fills(from: &dyn Facts) -> Told<Fills> {
    // It has a blank only after an overhaul: elsewhere it must not get in the way unseen.
    let overhaul = match facts::OIL_CHANGE.maybe(from) {
        Ok(Some(Job::AfterOverhaul)) => facts::FILL_AFTER_OVERHAUL.maybe(from),
        _ => Ok(None),
    };
    let (drain, filter, overhaul) = all3(
        facts::FILL_WITHOUT_FILTER.maybe(from),
        facts::FILL_WITH_FILTER.maybe(from),
        overhaul,
    )?;
    Fills::new(drain, filter, overhaul).map_err(|why| match why {
        OilError::OverhaulUnderFilter | OilError::OverhaulUnderDrain => {
            facts::FILL_AFTER_OVERHAUL.not_together(why)
        }
        _ => facts::FILL_WITH_FILTER.not_together(why),
    })
}

fn needed(from: &dyn Facts) -> Told<Answer<Volume>> {
    let (job, fills) = both(facts::OIL_CHANGE.of(from), fills(from))?;
    let asked: &Fact<Volume> = match job {
        Job::DrainOnly => &facts::FILL_WITHOUT_FILTER,
        Job::WithFilter => &facts::FILL_WITH_FILTER,
        Job::AfterOverhaul => &facts::FILL_AFTER_OVERHAUL,
    };
    asked.of(from).and_then(|_| fills.needed(job).ok_or_else(Vec::new))
}

fn allowance(from: &dyn Facts) -> Told<Answer<Volume>> {
    let (_, fills) = both(
        both(facts::FILL_WITH_FILTER.of(from), facts::FILL_WITHOUT_FILTER.of(from)),
        fills(from),
    )?;
    fills.allowance().ok_or_else(Vec::new)
}

fn bottles(fill: Told<Volume>, from: &dyn Facts) -> Told<Bottles> {
    let (fill, bottle, shelf) =
        all3(fill, facts::BOTTLE_SIZE.of(from), facts::OIL_ON_SHELF.of(from))?;
    oil::bottles(fill, bottle, shelf).map_err(|why| match why {
        OilError::Shelf => facts::OIL_ON_SHELF.not_together(why),
        _ => facts::BOTTLE_SIZE.not_together(why),
    })
}
