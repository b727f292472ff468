//! One fastener: what to set on which wrench, and what it gets.

mod asked;
mod reverse;
mod row;
mod serve;
mod steps;

pub(super) use asked::from_table;
pub use asked::{Asked, Fitted};
pub use reverse::reverse;
pub use row::{Row, row};
pub use serve::{Offer, wrenches_needed};

use super::{Held, OnWrench, Panel, Pictured};
use crate::entry::text::joined;
use crate::entry::{Refusal, Stage};
use crate::facts::{self, Adapter, Facts, Id, Lack, Lacks, SelfLocking, Told, both};
use crate::show::{self, Shown};
use crate::torque::{
    self, AccuracyFrom, Figure, Fit, OffsetAdapter, TorqueError, Verdict, Wrench, turned,
};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::{Answer, Parts, Quantity};
use serve::{Served, offers, serve};
use uom::si::angle::degree;
use uom::si::f64::{Angle, Length, Ratio, Torque};
use uom::si::length::{inch, millimeter};
use uom::si::torque::newton_meter;

/// The torque calculator of one fastener, with the wrench of the drawer that its owner takes or that serves best.
pub fn torque(from: &dyn Facts, drawer: &[Held], set: UnitSet) -> Panel {
    let asked = Asked::of(from);
    let served = serve(&asked, drawer);
    let Some((held, fit)) = drawer.get(served.at).zip(served.fits.get(served.at)) else {
        return Panel::of(Shown::lacking(labels::SET_TO, Lacks::none()));
    };
    let adapter = asked.adapter.clone().and_then(|it| it.on(&held.length));
    let exact = both(asked.figure.clone(), adapter.clone())
        .map(|(figure, adapter)| setting(&figure, adapter.as_ref()));
    let mark = mark(&asked, held, &adapter);
    let gets = both(fit.clone(), both(adapter.clone(), held.wrench.clone())).map(
        |(fit, (adapter, wrench))| {
            let gets = wrench.fastener_gets(fit.set, adapter.as_ref());
            // Nobody says how far off it is there.
            let known = band_is_known(&wrench, &fit);
            if known { gets } else { Answer::of(Parts { bounds: None, ..gets.parts() }) }
        },
    );
    let off_scale = off_scale(fit, held);

    let steps = steps::steps(&asked, held, &mark, set);
    let mut answers = Vec::new();
    // What is set, in the unit of the wrench's scale; what is reached, in that of the manual's figure.
    let exact = Shown::quantity_in(labels::EXACT_SETTING, exact, set, held.marked_in);
    let gets = Shown::quantity_in(labels::FASTENER_GETS, gets, set, asked.unit);
    let mark = Shown::mark(labels::SET_TO, mark, set, held.marked_in);
    let setting = exact.figure_text();
    // Without a graduation there is no mark, but the exact setting is an answer already.
    let marked = held.wrench.as_ref().map_or(true, |it| it.graduation().is_some());
    let exact_known = exact.lacks().is_empty();
    let turns_alone = fit.as_ref().is_err_and(|it| it.iter().all(pass_on));
    let turn = asked.turn.as_ref().ok().and_then(Option::as_ref);
    let turn = turn.map(|it| Shown::quantity(labels::TURN, Ok(turned(it.value, it.bounds)), set));
    let head = if off_scale.is_some() {
        // No number stands large that this wrench cannot be set to.
        answers.push(exact);
        Shown::words(labels::SET_TO, no_wrench(&served, drawer))
    } else if let (Some(turn), true) = (&turn, turns_alone) {
        turn.clone()
    } else if mark.lacks().is_empty() || (marked && !exact_known) {
        answers.extend([exact, gets]);
        mark
    } else if exact_known || !marked {
        answers.extend([gets, mark]);
        exact
    } else {
        answers.extend([exact, gets]);
        mark
    };
    if let (Ok(figure), Ok(fit), true) = (&asked.figure, fit, marked) {
        answers.push(Shown::quantity(labels::ROUNDING, Ok(figure.missed_by(fit.gets)), set));
    }
    if let (Ok(manual), Ok(Some(drag))) = (&asked.manual, &asked.drag) {
        answers.push(Shown::quantity(labels::WITH_DRAG, Ok(manual.drag_on_top(*drag)), set));
    }
    // Two heads of one kind would say the same twice.
    answers.extend(turn.filter(|it| it.label != head.label));

    let mut note = notes_of(&asked, held, fit, setting, off_scale, drawer, set);
    note.extend(passed_over(&asked, held, &adapter, set));
    let mut warnings = warnings_of(&asked, fit, set);
    if matches!(asked.turn, Ok(Some(_))) {
        warnings.push(notes::CRUSHED_ALREADY.to_owned());
    }
    if let Some(why) = off_scale.filter(|_| served.chosen || drawer.len() < 2) {
        warnings.push(why.to_string());
    }
    warnings.extend(odd_lengths(from, held));
    note.retain(|it| !it.is_empty());
    Panel {
        note: joined(&note, " · "),
        blanks: blanks(from, drawer),
        more: more(from),
        answers,
        steps,
        asides: asides(&adapter, set),
        offers: offers(&served, drawer, set),
        pictured: pictured(&asked, held),
        warnings,
        cautions: cautions::TORQUE,
        ..Panel::of(head)
    }
}

/// The torque line: the open fastener's calculator, and while that is blank how many there are in the list.
pub fn torque_line(from: &dyn Facts, drawer: &[Held], listed: usize, set: UnitSet) -> Panel {
    let panel = torque(from, drawer, set);
    let blank =
        listed > 0 && facts::TORQUE.maybe(from) == Ok(None) && !panel.head.lacks().is_empty();
    if !blank {
        return panel;
    }
    let head = Shown::words(labels::TORQUE_LIST, notes::listed(listed));
    // What it needs is asked below; saying so would only stand in the way of the list.
    let Panel { blanks, more, cautions, .. } = panel;
    Panel { note: notes::LIST_INSIDE.to_owned(), blanks, more, cautions, ..Panel::of(head) }
}

/// Whether a lack leaves a part that is turned by an angle untouched: it has no torque, so no adapter matters.
fn pass_on(lack: &Lack) -> bool {
    let unasked = [
        facts::TORQUE.id(),
        facts::ADAPTER.id(),
        facts::ADAPTER_LENGTH.id(),
        facts::WRENCH_LENGTH.id(),
    ];
    matches!(lack, Lack::Missing(id) if unasked.contains(id))
}

fn setting(figure: &Figure, adapter: Option<&OffsetAdapter>) -> Answer<Torque> {
    adapter.map_or_else(|| torque::direct(figure.aim()), |it| it.setting(figure.aim()))
}

fn mark(asked: &Asked, held: &Held, adapter: &Told<Option<OffsetAdapter>>) -> Told<Answer<Torque>> {
    let given = both(asked.figure.clone(), both(adapter.clone(), held.wrench.clone()));
    let graduation = match &held.wrench {
        Ok(it) if it.graduation().is_none() => Err(Lacks::missing(facts::GRADUATION.id())),
        _ => Ok(()),
    };
    let ((figure, (adapter, wrench)), ()) = both(given, graduation)?;
    wrench.mark(adapter.as_ref(), &figure).map_err(|why| match why {
        TorqueError::BelowMarks => facts::LOWEST_MARK.not_together(why),
        TorqueError::AboveMarks => facts::HIGHEST_MARK.not_together(why),
        _ => facts::GRADUATION.not_together(why),
    })
}

/// Why the wrench cannot be set so, where its scale ends.
fn off_scale<'a>(fit: &'a Told<Fit>, held: &Held) -> Option<&'a Refusal> {
    held.wrench.as_ref().ok()?;
    let marks = [facts::LOWEST_MARK.id(), facts::HIGHEST_MARK.id()];
    let lacks = fit.as_ref().err()?;
    let only_marks = lacks.iter().all(|it| marks.contains(&it.id()));
    let together = |it: &&Refusal| matches!(it, Refusal::Together(_));
    lacks.iter().find_map(Lack::refusal).filter(together).filter(|_| only_marks)
}

/// That no wrench, or not the one that is taken, can be set so.
fn no_wrench(served: &Served, drawer: &[Held]) -> &'static str {
    if drawer.len() > 1 && !served.chosen { notes::NO_WRENCH } else { notes::NOT_THIS_WRENCH }
}

/// Beside the head: name, wrench, exact setting, verdict, accuracy, what else is wanted.
fn notes_of(
    asked: &Asked,
    held: &Held,
    fit: &Told<Fit>,
    setting: Option<String>,
    off_scale: Option<&Refusal>,
    drawer: &[Held],
    set: UnitSet,
) -> Vec<String> {
    let mut note = Vec::new();
    if let (Some(why), Some(setting)) = (off_scale, &setting) {
        note.push(notes::not_with_this_wrench(setting, &why.to_string()));
    }
    note.extend(asked.name.clone());
    if asked.by_table {
        note.push(notes::BY_TABLE.to_owned());
    }
    if drawer.len() > 1 && off_scale.is_none() && fit.is_ok() {
        note.push(notes::with_wrench(&held.name));
    }
    let hand = held.length.as_ref().ok().copied().flatten();
    note.extend(fit.as_ref().ok().and_then(|_| row::through(asked, hand, set)));
    if let (Ok(wrench), Ok(_), Some(setting)) = (&held.wrench, fit, setting) {
        note.push(match wrench.graduation() {
            Some(_) => notes::exact_setting(&setting),
            None => notes::NEAREST_MARK.to_owned(),
        });
    }
    // Low on its scale a wrench need not keep the accuracy that this is reckoned with.
    if let Ok(Fit { verdict: Some(Verdict::Inside), caution: None, .. }) = fit {
        note.push(notes::INSIDE.to_owned());
    }
    if let (Ok(wrench), Ok(fit)) = (&held.wrench, fit)
        && band_is_known(wrench, fit)
    {
        let (accuracy, from) = wrench.accuracy_at(fit.set);
        let accuracy = show::rounded(Measure::Share, accuracy, set);
        note.push(notes::accuracy(&accuracy, from != AccuracyFrom::Stated));
        if from == AccuracyFrom::IsoHighestUnknown {
            note.push(notes::HIGHEST_UNKNOWN.to_owned());
        }
    }
    note.push(joined(&asked.mind, ", "));
    note
}

/// Whether it is known how far off the wrench may be there: by its own paper, or where the standard asks for it.
fn band_is_known(wrench: &Wrench, fit: &Fit) -> bool {
    fit.caution.is_none() || wrench.accuracy_at(fit.set).1 == AccuracyFrom::Stated
}

/// Why the mark to set is not the nearest, where it is not.
fn passed_over(
    asked: &Asked,
    held: &Held,
    adapter: &Told<Option<OffsetAdapter>>,
    set: UnitSet,
) -> Option<String> {
    let (wrench, figure) = (held.wrench.as_ref().ok()?, asked.figure.as_ref().ok()?);
    let (mark, limit, over) = wrench.passed_over(adapter.as_ref().ok()?.as_ref(), figure)?;
    let usual = || Measure::Torque.usual(set);
    let mark = show::setting(mark, held.marked_in.or_else(usual), true);
    let limit = show::rounded_in(Measure::Torque, limit, asked.unit.or_else(usual));
    Some(notes::passed_over(&mark, &limit, over))
}

fn warnings_of(asked: &Asked, fit: &Told<Fit>, set: UnitSet) -> Vec<String> {
    let mut warnings = Vec::new();
    if let (Ok(manual), Ok(Some(drag))) = (&asked.manual, &asked.drag)
        && *drag > manual.aim()
    {
        warnings.push(notes::MORE_DRAG_THAN_TORQUE.to_owned());
    }
    if let (Some(thread), Ok(manual)) = (asked.thread, &asked.manual)
        && torque::over_any_bolt(thread, manual.aim())
    {
        warnings.push(notes::OVER_ANY_BOLT.to_owned());
    }
    let Ok(fit) = fit else { return warnings };
    let stages = asked.stages.as_ref().ok().and_then(Option::as_deref).unwrap_or_default();
    if stages.iter().any(|it| matches!(it, Stage::Turn(_))) {
        warnings.push(notes::THEN_TURN.to_owned());
    }
    let heavy = asked.figure.as_ref().is_ok_and(|it| it.aim() > Torque::new::<newton_meter>(41.0));
    if stages.is_empty() && heavy && matches!(asked.bolts, Ok(Some(_))) {
        warnings.push(notes::FIRST_PASS.to_owned());
    }
    warnings.extend(fit.caution.map(|it| it.to_string()));
    match fit.verdict {
        Some(Verdict::Partly) => warnings.push(notes::PARTLY.to_owned()),
        Some(Verdict::Outside) => warnings.push(notes::OUTSIDE.to_owned()),
        Some(Verdict::Inside) => {}
        // Without a range the wrench's own accuracy is the measure of how far off a mark may be.
        None if fit.far => warnings.extend(asked.figure.as_ref().ok().map(|figure| {
            let off = figure.missed_by(fit.gets).value.base();
            let by = show::rounded(Measure::Share, Ratio::of_base(off.abs()), set);
            notes::far_mark(&by, off > 0.0)
        })),
        None => {}
    }
    warnings
}

fn blanks(from: &dyn Facts, drawer: &[Held]) -> Vec<Id> {
    let mut blanks = vec![facts::TORQUE.id(), facts::ADAPTER.id()];
    let adapter = facts::ADAPTER.known(from);
    let none = matches!(adapter, None | Some(Adapter::None));
    if !none {
        blanks.push(facts::ADAPTER_LENGTH.id());
    }
    if adapter == Some(Adapter::OtherAngle) {
        blanks.push(facts::ADAPTER_ANGLE.id());
    }
    // Several wrenches are asked in their drawer.
    if drawer.len() < 2 {
        if !none {
            blanks.push(facts::WRENCH_LENGTH.id());
        }
        blanks.extend([
            facts::GRADUATION.id(),
            facts::LOWEST_MARK.id(),
            facts::HIGHEST_MARK.id(),
            facts::ACCURACY.id(),
        ]);
    }
    blanks.push(facts::FASTENER_NAME.id());
    blanks
}

fn more(from: &dyn Facts) -> Vec<Id> {
    let mut more = vec![
        facts::THREAD.id(),
        facts::STAGES.id(),
        facts::BOLTS.id(),
        facts::THREAD_DRESSING.id(),
        facts::MIND.id(),
        facts::SELF_LOCKING.id(),
    ];
    if matches!(facts::SELF_LOCKING.known(from), Some(SelfLocking::DragOnTop)) {
        more.push(facts::PREVAILING_TORQUE.id());
    }
    more.extend([facts::TURN.id(), facts::FASTENER_NOTE.id()]);
    more
}

/// What a hand that is not where it was measured changes, and an adapter at another angle.
fn asides(adapter: &Told<Option<OffsetAdapter>>, set: UnitSet) -> Vec<Shown> {
    let Ok(Some(adapter)) = adapter else { return Vec::new() };
    let (label, nearer) = match set {
        UnitSet::Metric => (labels::HAND_OFF_METRIC, Length::new::<millimeter>(-50.0)),
        UnitSet::Us => (labels::HAND_OFF_US, Length::new::<inch>(-2.0)),
    };
    let hand = adapter.grip_off(nearer).map(|it| Shown::quantity(label, Ok(it), set));
    let angle = adapter.angle_off(Angle::new::<degree>(5.0));
    hand.into_iter().chain([Shown::quantity(labels::ANGLE_OFF, Ok(angle), set)]).collect()
}

fn pictured(asked: &Asked, held: &Held) -> Pictured {
    let shape = asked.adapter.as_ref().ok().and_then(Fitted::shape);
    let on_wrench = |(adapter, angle)| OnWrench {
        wrench: held.length.as_ref().ok().copied().flatten(),
        adapter,
        angle,
    };
    Pictured {
        adapter: shape.map(on_wrench),
        bolts: asked.bolts.as_ref().ok().copied().flatten(),
        battery: false,
    }
}

/// A warning where lengths are swapped, or were most likely typed in another unit.
fn odd_lengths(from: &dyn Facts, held: &Held) -> Option<String> {
    if !matches!(facts::ADAPTER.known(from), Some(it) if it != Adapter::None) {
        return None;
    }
    let wrench = held.length.as_ref().ok().copied().flatten()?;
    let adapter = facts::ADAPTER_LENGTH.known(from)?;
    torque::unusual(wrench, adapter).then(|| notes::ODD_LENGTHS.to_owned())
}
