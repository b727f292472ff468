//! One fastener: what to set, and what it gets.

use super::Panel;
use crate::facts::{self, Adapter, Facts, Rough, Told, all3, both};
use crate::show::{self, Shown};
use crate::torque::{self, AccuracyFrom, Figure, OffsetAdapter, TorqueError, Verdict, Wrench};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::{Answer, Quantity};
use uom::si::angle::degree;
use uom::si::f64::{Angle, Ratio, Torque};

/// The torque calculator of one fastener.
pub fn torque(from: &dyn Facts, set: UnitSet) -> Panel {
    let figure = figure(from);
    let adapter = adapter(from);
    let exact = both(figure.clone(), adapter.clone())
        .map(|(figure, adapter)| setting(&figure, adapter.as_ref()));
    let wrench = wrench(from);
    let graduation = facts::GRADUATION.maybe(from);
    // A mark is shown in the unit that the wrench is marked in.
    let marked_in = graduation.clone().ok().flatten().and_then(|it| it.unit);

    let mut warnings = Vec::new();
    let given = all3(figure.clone(), adapter.clone(), wrench.clone());
    let mark =
        both(given, facts::GRADUATION.of(from)).and_then(|((figure, adapter, wrench), _)| {
            wrench.mark(adapter.as_ref(), &figure).map_err(|why| match why {
                TorqueError::BelowMarks => facts::LOWEST_MARK.not_together(why),
                TorqueError::AboveMarks => facts::HIGHEST_MARK.not_together(why),
                _ => facts::GRADUATION.not_together(why),
            })
        });
    let off_scale = off_scale(&exact, &wrench);
    let set_to = match (&mark, &exact) {
        (Ok(mark), _) => Ok(mark.value),
        (Err(_), Ok(exact)) => Ok(exact.value),
        (Err(_), Err(lacks)) => Err(lacks.clone()),
    };
    let gets = all3(set_to.clone(), adapter, wrench.clone())
        .map(|(set_to, adapter, wrench)| wrench.fastener_gets(set_to, adapter.as_ref()));
    if let (Ok(wrench), Ok(set_to)) = (&wrench, &set_to) {
        warnings.extend(wrench.caution(*set_to).map(|it| it.to_string()));
    }
    warnings.extend(off_scale.clone());
    warnings.extend(odd_lengths(from));

    let mut note: Vec<String> =
        facts::FASTENER_NAME.maybe(from).ok().flatten().into_iter().collect();
    if let (Ok(_), Ok(exact)) = (&mark, &exact) {
        note.push(notes::exact_setting(&show::rounded(Measure::Torque, exact.value, set)));
    }
    if let (Ok(figure), Ok(gets), None) = (&figure, &gets, &off_scale) {
        match figure.verdict(gets) {
            Some(Verdict::Inside) => note.push(notes::INSIDE.to_owned()),
            Some(Verdict::Partly) => warnings.push(notes::PARTLY.to_owned()),
            Some(Verdict::Outside) => warnings.push(notes::OUTSIDE.to_owned()),
            // Without a range the wrench's own accuracy is the measure of how far off a mark may be.
            None => {
                let off = gets.value.base() / figure.aim().base() - 1.0;
                let accuracy = wrench.as_ref().map_or(0.0, |it| it.accuracy().0.base());
                if off.abs() > accuracy + 1e-9 {
                    let off = show::rounded(Measure::Share, Ratio::of_base(off.abs()), set);
                    warnings.push(notes::far_mark(&off, gets.value > figure.aim()));
                }
            }
        }
    }
    if let Ok(wrench) = &wrench {
        let (accuracy, from) = wrench.accuracy();
        let accuracy = show::rounded(Measure::Share, accuracy, set);
        note.push(notes::accuracy(&accuracy, from != AccuracyFrom::Stated));
    }

    let exact = Shown::quantity(labels::EXACT_SETTING, exact, set);
    let gets = Shown::quantity(labels::FASTENER_GETS, gets, set);
    // Without a graduation there is no mark, but the exact setting is an answer already.
    let no_graduation = matches!(graduation, Ok(None));
    let exact_known = exact.lacks().is_empty();
    let mark_shown = Shown::mark(labels::SET_TO, mark, set, marked_in);
    let (head, answers) = if let (Some(why), Some(setting)) = (&off_scale, exact.figure_text()) {
        // No number stands large that this wrench cannot be set to.
        note.insert(0, notes::not_with_this_wrench(&setting, why));
        (Shown::words(labels::SET_TO, notes::NOT_THIS_WRENCH), vec![exact, gets])
    } else if mark_shown.lacks().is_empty() || (!no_graduation && !exact_known) {
        (mark_shown, vec![exact, gets])
    } else if exact_known || no_graduation {
        (exact, vec![gets, mark_shown])
    } else {
        (mark_shown, vec![exact, gets])
    };
    let mut blanks = vec![facts::TORQUE.id(), facts::ADAPTER.id()];
    match facts::ADAPTER.maybe(from) {
        Ok(Some(Adapter::InLine | Adapter::PointingBack | Adapter::RightAngle)) => {
            blanks.extend([facts::ADAPTER_LENGTH.id(), facts::WRENCH_LENGTH.id()]);
        }
        Ok(Some(Adapter::OtherAngle)) => {
            blanks.extend([
                facts::ADAPTER_LENGTH.id(),
                facts::ADAPTER_ANGLE.id(),
                facts::WRENCH_LENGTH.id(),
            ]);
        }
        _ => {}
    }
    blanks.extend([
        facts::GRADUATION.id(),
        facts::LOWEST_MARK.id(),
        facts::HIGHEST_MARK.id(),
        facts::ACCURACY.id(),
        facts::FASTENER_NAME.id(),
    ]);
    Panel {
        head,
        note: note.join(" · "),
        blanks,
        stated: vec![],
        answers,
        warnings,
        cautions: cautions::TORQUE,
    }
}

fn figure(from: &dyn Facts) -> Told<Figure> {
    let Rough { value, bounds, .. } = facts::TORQUE.of(from)?;
    let figure = match bounds {
        Some([lowest, highest]) => Figure::between(lowest, highest, Some(value)),
        None => Figure::exactly(value),
    };
    figure.map_err(|why| facts::TORQUE.not_together(why))
}

/// The adapter with its lengths; `None` where it changes nothing: none, or square to the wrench with lengths unknown.
fn adapter(from: &dyn Facts) -> Told<Option<OffsetAdapter>> {
    let kind = facts::ADAPTER.of(from)?;
    let angle = match kind {
        Adapter::None => return Ok(None),
        Adapter::InLine => Ok(Angle::new::<degree>(0.0)),
        Adapter::RightAngle => Ok(Angle::new::<degree>(90.0)),
        Adapter::PointingBack => Ok(Angle::new::<degree>(180.0)),
        Adapter::OtherAngle => facts::ADAPTER_ANGLE.of(from),
    };
    if kind == Adapter::RightAngle {
        let lengths = both(facts::WRENCH_LENGTH.maybe(from), facts::ADAPTER_LENGTH.maybe(from))?;
        if matches!(lengths, (None, _) | (_, None)) {
            return Ok(None);
        }
    }
    let (wrench, adapter, angle) =
        all3(facts::WRENCH_LENGTH.of(from), facts::ADAPTER_LENGTH.of(from), angle)?;
    OffsetAdapter::new(wrench, adapter, angle).map(Some).map_err(|why| match why {
        TorqueError::WrenchLength => facts::WRENCH_LENGTH.not_together(why),
        TorqueError::AdapterAngle => facts::ADAPTER_ANGLE.not_together(why),
        _ => facts::ADAPTER_LENGTH.not_together(why),
    })
}

fn setting(figure: &Figure, adapter: Option<&OffsetAdapter>) -> Answer<Torque> {
    adapter.map_or_else(|| torque::direct(figure.aim()), |it| it.setting(figure.aim()))
}

fn wrench(from: &dyn Facts) -> Told<Wrench> {
    let marks = both(facts::LOWEST_MARK.maybe(from), facts::HIGHEST_MARK.maybe(from));
    let ((lowest, highest), graduation, accuracy) =
        all3(marks, facts::GRADUATION.maybe(from), facts::ACCURACY.maybe(from))?;
    Wrench::new(lowest, highest, graduation.map(|it| it.value), accuracy).map_err(|why| match why {
        TorqueError::LowestMark => facts::LOWEST_MARK.not_together(why),
        TorqueError::HighestMark | TorqueError::MarkOrder => facts::HIGHEST_MARK.not_together(why),
        TorqueError::Accuracy => facts::ACCURACY.not_together(why),
        _ => facts::GRADUATION.not_together(why),
    })
}

/// A warning where the exact setting is off the wrench's scale, whether or not its graduation is known.
fn off_scale(exact: &Told<Answer<Torque>>, wrench: &Told<Wrench>) -> Option<String> {
    let (Ok(exact), Ok(wrench)) = (exact, wrench) else { return None };
    wrench.off_scale(exact.value).map(|it| it.to_string())
}

/// A warning where lengths are swapped, or were most likely typed in another unit.
fn odd_lengths(from: &dyn Facts) -> Option<String> {
    if !matches!(facts::ADAPTER.maybe(from), Ok(Some(it)) if it != Adapter::None) {
        return None;
    }
    let [wrench, adapter] =
        [&facts::WRENCH_LENGTH, &facts::ADAPTER_LENGTH].map(|it| it.maybe(from).ok().flatten());
    let (wrench, adapter) = (wrench?.base(), adapter?.base());
    // No crowfoot is shorter than a centimeter, no torque wrench than ten, and none as long as half its wrench.
    (adapter > wrench / 2.0 || wrench < 0.1 || adapter < 0.01)
        .then(|| notes::ODD_LENGTHS.to_owned())
}
