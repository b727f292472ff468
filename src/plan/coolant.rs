//! Coolant: where it freezes, and what to exchange.

use super::Panel;
use crate::coolant::{self, CoolantError, Cooling, Glycol, Job, READY_MIXED, Refill, WEAK};
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
    let night = facts::COLDEST_NIGHT.of(from);
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
        freezes => {
            let freezes = freezes.and_then(|it| it.map_err(|_| Vec::new()));
            let margin = margin(&freezes, &night);
            if let Ok(margin) = &margin {
                note.push(notes::night_margin(&step(margin.value, set)));
                let [least, most] = margin.bounds.unwrap_or([margin.value; 2]);
                if most.base() <= 0.0 {
                    warnings.push(notes::COOLANT_FREEZES.to_owned());
                } else if least.base() <= 0.0 {
                    warnings.push(notes::COOLANT_MAY_FREEZE.to_owned());
                }
            }
            let margin = Shown::quantity(labels::FREEZE_MARGIN, margin, set);
            (Shown::quantity(labels::FREEZES_AT, freezes, set), margin)
        }
    };
    let mut answers = vec![shown];
    let wanted = facts::WANTED_CONCENTRATION.of(from);
    let job = job(from, now.clone(), wanted.clone());
    let told = job.clone().and_then(|job| {
        let refill = coolant::refill(&job);
        refill.map_err(|why| match why {
            CoolantError::Drains => facts::COOLANT_DRAINS.not_together(why),
            _ => facts::WANTED_CONCENTRATION.not_together(why),
        })
    });
    let gets = told.as_ref().map_or(wanted.clone(), |it| Ok(it.gets));
    match (told, job) {
        (Ok(refill), Ok(job)) => {
            ways(&job, refill, set, &mut note, &mut warnings, &mut answers);
            // Its assumptions come last.
            if answers.len() > 1 {
                note.extend(assumed(from));
            }
        }
        (Err(lacks), _) | (_, Err(lacks)) => {
            answers.push(Shown::lacking(labels::DRAIN_AND_REFILL, lacks));
        }
    }
    let reached = gets == wanted;
    let least = now.clone().map(|(_, [least, _])| least);
    let weak = [&least, &wanted, &gets].into_iter().flatten().any(|it| it.base() < WEAK);
    // One that stays as it is was judged above.
    let stays = matches!((&gets, &now), (Ok(gets), Ok((now, _))) if gets == now);
    let then = both(glycol, gets).and_then(|(glycol, gets)| {
        coolant::freezes_at(glycol, gets, [gets; 2])
            .map_err(|why| facts::WANTED_CONCENTRATION.not_together(why))
    });
    if let (Ok(then), Ok(margin)) = (&then, margin(&then, &night))
        && !stays
        && margin.bounds.is_some_and(|[least, _]| least.base() <= 0.0)
    {
        let at = show::rounded(Measure::Temperature, then.value, set);
        let short = margin.value.base() < 0.0;
        let by = TemperatureInterval::of_base(margin.value.base().abs());
        warnings.push(notes::then_freezes(reached, &at, &step(by, set), short));
    }
    answers.push(Shown::quantity(labels::THEN_FREEZES_AT, then, set));
    if weak {
        warnings.push(notes::WEAK_INHIBITOR.to_owned());
    }
    Panel {
        note: note.join(" · "),
        blanks: vec![
            facts::COOLING.id(),
            facts::GLYCOL.id(),
            facts::CONCENTRATION.id(),
            facts::WANTED_CONCENTRATION.id(),
            facts::COOLANT_CIRCUIT.id(),
        ],
        more: vec![facts::COOLANT_DRAINS.id(), facts::COOLANT_BOTTLE.id()],
        stated: vec![facts::COLDEST_NIGHT.id()],
        answers,
        warnings,
        cautions: cautions::COOLANT,
        ..Panel::of(head)
    }
}

/// What is left on the coldest night.
fn margin(
    freezes: &Told<Answer<ThermodynamicTemperature>>,
    night: &Told<ThermodynamicTemperature>,
) -> Told<Answer<TemperatureInterval>> {
    both(freezes.clone(), night.clone()).map(|(freezes, night)| coolant::margin(&freezes, night))
}

/// A step of temperature in a sentence, where its unit needs no sign that it is one.
fn step(it: TemperatureInterval, set: UnitSet) -> String {
    show::rounded(Measure::TemperatureStep, it, set).replace('Δ', "")
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
    match facts::CONCENTRATION.of(from)? {
        Strength::Share(it) => Ok((it.value, it.bounds.unwrap_or([it.value; 2]))),
        Strength::Freezes(it) => {
            let glycol = glycol.clone()?;
            let share = |it| glycol.share(it).map_err(|why| facts::CONCENTRATION.not_together(why));
            let [cold, warm] = it.bounds.unwrap_or([it.value; 2]);
            Ok((share(it.value)?, [share(warm)?, share(cold)?]))
        }
    }
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

/// What was taken for what is not known.
fn assumed(from: &dyn Facts) -> impl Iterator<Item = String> {
    let bottle = facts::COOLANT_BOTTLE.maybe(from) == Ok(None);
    let drains = facts::COOLANT_DRAINS.maybe(from) == Ok(None);
    let bottle = bottle.then_some(notes::READY_MIXED);
    let drains = drains.then_some(notes::DRAINS_UNKNOWN);
    bottle.into_iter().chain(drains).map(str::to_owned)
}

/// Either way of the refill as an answer; in the note, first of all, what to do.
fn ways(
    job: &Job,
    refill: Refill,
    set: UnitSet,
    note: &mut Vec<String>,
    warnings: &mut Vec<String>,
    answers: &mut Vec<Shown>,
) {
    let liters = |it| show::rounded(Measure::Oil, it, set);
    let mut first = |it: String| note.insert(0, it);
    let Refill { straight, premix, gets, short } = refill;
    if let Some(short) = short {
        // Where there is no way, nothing is offered.
        let way = straight.is_some() || premix.is_some();
        let gets = way.then(|| show::rounded(Measure::Share, gets, set));
        warnings.push(notes::out_of_reach(short, gets));
    }
    match (&straight, &premix) {
        (Some(it), _) => first(notes::drain_and_refill(&liters(it.value))),
        (_, Some([bottle, water])) => first(notes::drain_and_mix(
            &liters(job.drains),
            &liters(bottle.value),
            &liters(water.value),
        )),
        _ if job.wanted == job.present => first(notes::NOTHING_TO_DO.to_owned()),
        _ if short.is_some() => {}
        _ => answers.push(Shown::words(labels::DRAIN_AND_REFILL, notes::TOO_ROUGH)),
    }
    if job.wanted < job.present {
        first(notes::WEAKER.to_owned());
    }
    let mixed =
        if straight.is_some() { labels::OR_FROM_THE_BOTTLE } else { labels::FROM_THE_BOTTLE };
    let labels = [labels::DRAIN_AND_REFILL, mixed, labels::WATER];
    let amounts = straight.into_iter().map(|it| (labels[0], it));
    let mixture = premix.into_iter().flatten().zip([labels[1], labels[2]]);
    for (label, it) in amounts.chain(mixture.map(|(it, label)| (label, it))) {
        answers.push(Shown::quantity(label, Ok(it), set));
    }
}
