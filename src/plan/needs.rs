//! What is to be bought for the lay-up: the amounts of the steps that are still open, and what fasteners want anew.

use super::{Line, Panel, Side};
use crate::coolant::READY_MIXED;
use crate::entry::day_written;
use crate::facts::{self, Facts, Mind};
use crate::garage::{Kept, Subject};
use crate::oil::Job;
use crate::plan::judged_on;
use crate::show::Figure;
use crate::units::UnitSet;
use crate::words::{labels, needs as words};
use crate::working::Quantity;

/// One thing a line, in the order of the work.
pub fn needs(kept: &Kept, set: UnitSet) -> Vec<String> {
    let mut needs = Vec::new();
    for step in Side::LayUp.steps() {
        let open = step.is_asked(kept) && !step.is_done(kept) && step.left_out(kept).is_none();
        match step.sum.filter(|_| open) {
            Some(line @ (Line::Oil | Line::Fuel | Line::Coolant | Line::Brakes)) => {
                let panel = line.panel(kept, &[], set);
                match line {
                    Line::Oil => oil(kept, &panel, &mut needs),
                    Line::Brakes => brakes(kept, &panel, &mut needs),
                    _ => amounts(kept, &panel, &mut needs),
                }
            }
            Some(Line::Torques) => fasteners(kept, &mut needs),
            _ => {}
        }
    }
    needs
}

/// The figure of an answer, where it has one that is not nothing.
fn figure(panel: &Panel, label: &str) -> Option<String> {
    let shown = panel.all().find(|it| it.label == label)?;
    match &shown.figure {
        Figure::Number { data, .. } if data == "0" => None,
        Figure::Number { .. } => shown.figure_text(),
        _ => None,
    }
}

/// What is poured in: of two ways to refill coolant the first.
fn amounts(kept: &Kept, panel: &Panel, needs: &mut Vec<String>) {
    // A ready mix that is too weak for what is wanted is not to be bought; how much of another depends on how strong that is.
    let wanted = facts::WANTED_CONCENTRATION.known(kept);
    let weak = wanted.is_some_and(|it| it.base() > READY_MIXED);
    let mut add = |label: &str, what: &str| -> bool {
        let found = figure(panel, label);
        let any = found.is_some();
        needs.extend(found.map(|it| match what {
            words::READY_MIXED if weak => words::CONCENTRATE.to_owned(),
            _ => words::of(what, &it),
        }));
        any
    };
    add(labels::FUEL_TO_ADD, words::FUEL);
    add(labels::STABILIZER_TO_ADD, words::STABILIZER);
    let straight = add(labels::DRAIN_AND_REFILL, words::COOLANT)
        || add(labels::REFILL_READY_MIXED, words::READY_MIXED);
    if !straight
        && (add(labels::FROM_THE_BOTTLE, words::COOLANT)
            || add(labels::READY_MIXED_AND_WATER, words::READY_MIXED))
    {
        add(labels::WATER, words::WATER);
    }
}

fn oil(kept: &Kept, panel: &Panel, needs: &mut Vec<String>) {
    let bottles = panel.all().find(|it| it.label == labels::BOTTLES_TO_BUY);
    let bought = bottles.and_then(|it| match &it.figure {
        Figure::Number { text, .. } if text != "0" => {
            let size = facts::BOTTLE_SIZE.id();
            let about = facts::about(size)?;
            Some(words::bottles(text, &facts::as_read(about, &kept.entry(size))))
        }
        Figure::Words(words) => Some(words.clone()),
        _ => None,
    });
    needs.extend(bought.map(|it| words::of(words::OIL, &it)));
    match facts::OIL_CHANGE.known(kept) {
        Some(Job::WithFilter) => needs.extend([words::FILTER, words::WASHER].map(str::to_owned)),
        Some(Job::DrainOnly) => needs.push(words::WASHER.to_owned()),
        _ => {}
    }
}

/// Fluids whose day comes before the ride.
fn brakes(kept: &Kept, panel: &Panel, needs: &mut Vec<String>) {
    let Ok(on) = judged_on(kept) else { return };
    let on = day_written(on);
    for (label, what) in
        [(labels::CHANGE_BY, words::BRAKE_FLUID), (labels::CLUTCH_CHANGE_BY, words::CLUTCH_FLUID)]
    {
        let by = panel.all().find(|it| it.label == label).map(|it| &it.figure);
        // Year first: days in writing stand in their order.
        if matches!(by, Some(Figure::Day { data, .. }) if *data <= on) {
            needs.push(what.to_owned());
        }
    }
}

fn fasteners(kept: &Kept, needs: &mut Vec<String>) {
    for own in &kept.bike.fasteners {
        let from = Subject { own, rest: kept };
        let name = facts::FASTENER_NAME.known(&from).unwrap_or_default();
        for mind in facts::MIND.known(&from).unwrap_or_default() {
            match mind {
                Mind::NewWasher => needs.push(words::of(words::NEW_WASHER, &name)),
                Mind::NewBolt => needs.push(words::of(words::NEW_BOLT, &name)),
                _ => {}
            }
        }
    }
}
