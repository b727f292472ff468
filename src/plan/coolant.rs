//! Coolant: where it freezes, and what to exchange.

use super::Panel;
use super::night::{self, Night};
use crate::battery::Roughly;
use crate::coolant::{self, CoolantError, Cooling, Glycol, Job, READY_MIXED, Refill, WEAK};
use crate::entry::text::joined;
use crate::facts::{self, Facts, Strength, Told, all3, both};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, upkeep as notes};
use crate::working::{Answer, Quantity};
use uom::si::f64::{Ratio, TemperatureInterval, ThermodynamicTemperature};

/// The coolant line's calculator.
pub fn coolant(from: &dyn Facts, set: UnitSet) -> Panel {
    let cooling = facts::COOLING.of(from);
    if cooling == Ok(Cooling::Air) {
        return Panel {
            note: notes::AIR_COOLED.to_owned(),
            blanks: vec![facts::COOLING.id()],
            ..Panel::of(Shown::words(labels::FREEZES_AT, notes::NO_COOLANT))
        };
    }
    let glycol = facts::GLYCOL.of(from);
    let night = night::of_bike(from, set);
    let now = present(from, &glycol);
    // Where nothing is told of a share, that is no lack: it is answered in words.
    let freezes = all3(cooling.map(drop), glycol.clone(), now.clone())
        .map(|((), glycol, (now, bounds))| coolant::freezes_at(glycol, now, bounds));
    let mut note = Vec::new();
    let mut warnings = Vec::new();
    let (head, shown) = match freezes {
        Ok(Err(why)) => {
            let (words, warning) = not_told(why);
            warnings.push(warning.to_owned());
            let words = |label| Shown::words(label, words);
            (words(labels::FREEZES_AT), words(labels::FREEZE_MARGIN))
        }
        Ok(Ok(freezes)) => {
            let margin = match &night {
                Ok(night) => {
                    let margin = margin(&freezes, night);
                    let counted = night.counted.as_ref().map(|it| it.1);
                    note.push(notes::night_margin(&show::step(margin.value, set), counted));
                    let [least, most] = margin.bounds.unwrap_or([margin.value; 2]);
                    if most.base() <= 0.0 {
                        warnings.push(notes::COOLANT_FREEZES.to_owned());
                    } else if least.base() <= 0.0 {
                        warnings.push(notes::COOLANT_MAY_FREEZE.to_owned());
                    }
                    Ok(margin)
                }
                Err(lacks) => Err(lacks.clone()),
            };
            let margin = Shown::quantity(labels::FREEZE_MARGIN, margin, set);
            (Shown::quantity(labels::FREEZES_AT, Ok(freezes), set), margin)
        }
        Err(lacks) => {
            let all = match &night {
                Err(more) => lacks.clone().and(more.clone()),
                Ok(_) => lacks.clone(),
            };
            let margin = Shown::lacking(labels::FREEZE_MARGIN, all);
            (Shown::lacking(labels::FREEZES_AT, lacks), margin)
        }
    };
    let mut answers = vec![shown];
    let wanted = facts::WANTED_CONCENTRATION.of(from);
    let mut gets = wanted.clone();
    let mut reached = true;
    match job(from, now.clone(), wanted).and_then(|job| refilled(&job).map(|it| (job, it))) {
        Ok((job, refill)) => {
            gets = Ok(refill.gets);
            reached = refill.short.is_none();
            let said = said(from);
            ways(&job, refill, said, set, &mut note, &mut warnings, &mut answers);
            // Its assumptions come last.
            if answers.len() > 1 {
                note.extend(assumed(from));
            }
        }
        Err(lacks) => answers.push(Shown::lacking(labels::DRAIN_AND_REFILL, lacks)),
    }
    let now = now.ok();
    // One that stays as it is was judged above.
    let stays = now.map(|it| it.0) == gets.as_ref().ok().copied();
    let least = now.map(|(_, [least, _])| least);
    let weak = least.into_iter().chain(gets.as_ref().ok().copied()).any(|it| it.base() < WEAK);
    let then = both(glycol, gets).and_then(|(glycol, gets)| {
        coolant::freezes_at(glycol, gets, [gets; 2])
            .map_err(|why| facts::WANTED_CONCENTRATION.not_together(why))
    });
    if let (Ok(then), Ok(night), false) = (&then, &night, stays) {
        let margin = margin(then, night);
        if margin.bounds.is_some_and(|[least, _]| least.base() <= 0.0) {
            let at = show::rounded(Measure::Temperature, then.value, set);
            let by = TemperatureInterval::of_base(margin.value.base().abs());
            let short = margin.value.base() < 0.0;
            warnings.push(notes::then_freezes(reached, &at, &show::step(by, set), short));
        }
    }
    answers.push(Shown::quantity(labels::THEN_FREEZES_AT, then, set));
    if let Ok(night) = night {
        answers.extend(night.shown(set));
        warnings.extend(night.refused);
    }
    if weak {
        warnings.push(notes::WEAK_INHIBITOR.to_owned());
    }
    Panel {
        note: joined(&note, " · "),
        blanks: vec![
            facts::COOLING.id(),
            facts::GLYCOL.id(),
            facts::CONCENTRATION.id(),
            facts::WANTED_CONCENTRATION.id(),
            facts::COOLANT_CIRCUIT.id(),
            facts::COOLANT_BOTTLE.id(),
        ],
        more: vec![facts::COOLANT_DRAINS.id()],
        stated: vec![facts::COLDEST_NIGHT.id()],
        answers,
        warnings,
        cautions: cautions::COOLANT,
        ..Panel::of(head)
    }
}

fn margin(
    freezes: &Answer<ThermodynamicTemperature>,
    night: &Night,
) -> Answer<TemperatureInterval> {
    let Roughly { low, typical, high } = night.roughly;
    coolant::margin(freezes, typical, [low, high])
}

/// Instead of a freezing point, and the warning with it.
fn not_told(why: CoolantError) -> (&'static str, &'static str) {
    match why {
        CoolantError::UnderTen => (notes::UNDER_TEN, notes::HARDLY_ANY_GLYCOL),
        _ => (notes::PAST_SIXTY, notes::TOO_MUCH_GLYCOL),
    }
}

/// Glycol in what is in the bike, and within which bounds.
fn present(from: &dyn Facts, glycol: &Told<Glycol>) -> Told<(Ratio, [Ratio; 2])> {
    let Strength { mut ends, freezes } = facts::CONCENTRATION.of(from)?;
    if freezes {
        let glycol = glycol.clone()?;
        for end in &mut ends {
            let share = glycol.share(ThermodynamicTemperature::of_base(*end));
            *end = share.map_err(|why| facts::CONCENTRATION.not_together(why))?.base();
        }
        // What freezes sooner is the weaker one.
        ends.swap(1, 2);
    }
    let [value, low, high] = ends.map(Ratio::of_base);
    Ok((value, [low, high]))
}

fn job(from: &dyn Facts, now: Told<(Ratio, [Ratio; 2])>, wanted: Told<Ratio>) -> Told<Job> {
    let (((present, bounds), wanted, circuit), (drains, bottle)) = both(
        all3(now, wanted, facts::COOLANT_CIRCUIT.of(from)),
        both(facts::COOLANT_DRAINS.maybe(from), facts::COOLANT_BOTTLE.maybe(from)),
    )?;
    let (drains, bottle) =
        (drains.unwrap_or(circuit), bottle.unwrap_or(Ratio::of_base(READY_MIXED)));
    Ok(Job { circuit, drains, present, bounds, wanted, bottle })
}

fn refilled(job: &Job) -> Told<Refill> {
    coolant::refill(job).map_err(|why| match why {
        CoolantError::Drains => facts::COOLANT_DRAINS.not_together(why),
        _ => facts::WANTED_CONCENTRATION.not_together(why),
    })
}

/// What was taken for what is not known.
fn assumed(from: &dyn Facts) -> impl Iterator<Item = String> {
    let blank = |id| !facts::given(from, id);
    let bottle = blank(facts::COOLANT_BOTTLE.id()).then_some(notes::READY_MIXED);
    let drains = blank(facts::COOLANT_DRAINS.id()).then_some(notes::DRAINS_UNKNOWN);
    bottle.into_iter().chain(drains).map(str::to_owned)
}

/// What either way is called. While the bottle's strength is not typed its name says what it is taken for: concentrate poured
/// in by these amounts freezes sooner and cools worse.
fn said(from: &dyn Facts) -> [&'static str; 3] {
    if facts::given(from, facts::COOLANT_BOTTLE.id()) {
        [labels::DRAIN_AND_REFILL, labels::FROM_THE_BOTTLE, labels::OR_FROM_THE_BOTTLE]
    } else {
        let or = labels::OR_READY_MIXED_AND_WATER;
        [labels::REFILL_READY_MIXED, labels::READY_MIXED_AND_WATER, or]
    }
}

/// Either way of the refill as an answer; in the note, first of all, what to do.
fn ways(
    job: &Job,
    refill: Refill,
    [straight, mixed, or_mixed]: [&'static str; 3],
    set: UnitSet,
    note: &mut Vec<String>,
    warnings: &mut Vec<String>,
    answers: &mut Vec<Shown>,
) {
    let Refill { ways, gets, short } = refill;
    let mut first = |it: String| note.insert(0, it);
    if let Some(short) = short {
        // Where there is no way, nothing is offered.
        let gets = (!ways.is_empty()).then(|| show::rounded(Measure::Share, gets, set));
        warnings.push(notes::out_of_reach(short, gets));
    } else if job.wanted == job.present {
        first(notes::NOTHING_TO_DO.to_owned());
    } else if ways.is_empty() {
        answers.push(Shown::words(straight, notes::TOO_ROUGH));
    }
    let labels: &[&'static str] = match ways.len() {
        2 => &[mixed, labels::WATER],
        _ => &[straight, or_mixed, labels::WATER],
    };
    // The first way is the one that is said: one answer, or two where water goes in.
    let said = 2 - ways.len() % 2;
    let all = ways.into_iter().zip(labels).map(|(it, label)| Shown::quantity(label, Ok(it), set));
    let before = answers.len();
    answers.extend(all);
    let to_do: Vec<String> =
        answers.iter().skip(before).take(said).filter_map(Shown::spoken).collect();
    if !to_do.is_empty() {
        first(joined(&to_do, ", "));
    }
    if job.wanted < job.present {
        first(notes::WEAKER.to_owned());
    }
}
