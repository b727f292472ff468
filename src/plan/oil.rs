//! Oil: fill for the job, first pour and top-up, bottles, level, label.

mod bottles;
mod label;
mod level;

use super::Panel;
use crate::entry::text::joined;
use crate::facts::{self, Fact, Facts, Lacks, Told, all3, both};
use crate::oil::{self, Fills, Job, OilError};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes, oil as words};
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
    let mut note = Vec::new();
    let marks_known = matches!(between, Ok(Some(_)));
    let dry_sump = level::dry_sump(from);
    if let (Ok(pour), Ok(top_up)) = (&pour, &top_up) {
        let top_up = marks_known.then(|| show::rounded(Measure::Oil, top_up.value, set));
        note.push(notes::first_pour(
            &show::rounded(Measure::Oil, pour.value, set),
            top_up.as_deref(),
            dry_sump,
        ));
    }
    if dry_sump {
        note.push(words::TWO_DRAINS.to_owned());
    }
    let mut warnings = Vec::new();
    let pour_is_guess = matches!((&pour, &between), (Ok(_), Ok(None)));
    let mut answers = vec![
        Shown::quantity(labels::FIRST_POUR, pour, set),
        // A sum without the marks is a guess: poured on top of a level that was brought up, it would overfill.
        if top_up.is_ok() && !marks_known {
            Shown::words(labels::TOP_UP, notes::BY_THE_LEVEL)
        } else {
            Shown::quantity(labels::TOP_UP, top_up, set)
        },
    ];
    level::level(from, set, &mut answers, &mut warnings);
    if pour_is_guess {
        warnings.push(notes::MARKS_UNKNOWN.to_owned());
    }
    bottles::bottles(fill.clone(), from, set, &mut answers, &mut note);
    answers.push(Shown::quantity(labels::FILTER_ALLOWANCE, allowance(from), set));
    let job = facts::OIL_CHANGE.maybe(from);
    // An engine that was apart has been drained before.
    if let (Ok(fill), Ok(Some(Job::DrainOnly | Job::WithFilter))) = (&fill, &job) {
        let used = oil::used_oil(*fill, between.ok().flatten());
        answers.push(Shown::quantity(labels::USED_OIL, Ok(used), set));
    }
    answers.extend(level::heat(fill, from, set));
    label::label(from, set, &mut answers, &mut warnings);
    let mut blanks =
        vec![facts::OIL_CHANGE.id(), facts::FILL_WITH_FILTER.id(), facts::FILL_WITHOUT_FILTER.id()];
    if matches!(job, Ok(Some(Job::AfterOverhaul))) {
        blanks.push(facts::FILL_AFTER_OVERHAUL.id());
    }
    blanks.extend([facts::BETWEEN_MARKS.id(), facts::BOTTLE_SIZE.id(), facts::OIL_ON_SHELF.id()]);
    let mut more = vec![facts::LEVEL_READS.id()];
    more.extend(level::MORE);
    more.extend(label::MORE);
    Panel {
        note: joined(&note, " · "),
        blanks,
        more,
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
    asked.of(from).and_then(|_| fills.needed(job).ok_or_else(Lacks::none))
}

fn allowance(from: &dyn Facts) -> Told<Answer<Volume>> {
    let (_, fills) = both(
        both(facts::FILL_WITH_FILTER.of(from), facts::FILL_WITHOUT_FILTER.of(from)),
        fills(from),
    )?;
    fills.allowance().ok_or_else(Lacks::none)
}
