//! No figure in the manual: the torque that a steel bolt in a steel nut may get, and what it does there.

use super::Panel;
use super::torque::from_table;
use crate::digits;
use crate::entry::text::joined;
use crate::facts::{self, Facts, Lacks, ThreadsInto, Told, all3, both};
use crate::show::{self, Shown};
use crate::torque::{self, Joint};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};

/// The estimate's calculator, for one fastener.
///
/// The manual's own general table comes first: where it has the thread there is no estimate.
pub fn estimate(from: &dyn Facts, set: UnitSet) -> Panel {
    let table = [facts::GENERAL_TORQUES.id(), facts::THREAD.id()];
    if let Ok(Some(found)) = from_table(from) {
        let figure = show::rounded(Measure::Torque, found.value, set);
        let own = facts::TORQUE.known(from).is_some();
        let note = if own { notes::OWN_COMES_FIRST } else { notes::TABLE_HAS_IT };
        return Panel {
            note: note.to_owned(),
            blanks: table.to_vec(),
            cautions: cautions::ESTIMATE,
            ..Panel::of(Shown::words(labels::BY_TABLE, figure))
        };
    }
    let into = facts::THREADS_INTO.of(from);
    if into == Ok(ThreadsInto::LightMetal) {
        return Panel {
            note: notes::ESTIMATE.to_owned(),
            blanks: [&table[..], &[facts::THREADS_INTO.id()]].concat(),
            warnings: vec![notes::SOFT_THREAD.to_owned()],
            cautions: cautions::ESTIMATE,
            ..Panel::of(Shown::words(labels::TORQUE_ESTIMATED, notes::NO_ESTIMATE))
        };
    }
    let joint = both(into.clone(), joint(from)).map(|(_, joint)| joint);
    let oiled = joint.as_ref().map(Joint::oiled).map_err(Clone::clone);
    let oiled = match oiled {
        Ok(None) => Shown::words(labels::OIL_ON_DRY, notes::LUBRICATED_ALREADY),
        Ok(Some(rise)) => Shown::quantity(labels::OIL_ON_DRY, Ok(rise), set),
        Err(lacks) => Shown::lacking(labels::OIL_ON_DRY, lacks),
    };

    let mut note = notes::ESTIMATE.to_owned();
    let mut warnings = Vec::new();
    if into == Ok(ThreadsInto::Gasket) {
        warnings.push(notes::GASKET_DECIDES.to_owned());
    }
    if let (Ok(joint), Ok(friction)) = (&joint, facts::FRICTION_CLASS.of(from)) {
        note = joined(&[note.as_str(), notes::WITHIN_PROOF], " · ");
        let [_, most] = friction.range();
        if let Some([least_share, _]) = joint.share_of_proof().bounds {
            let share = show::rounded(Measure::Share, least_share, set);
            warnings.push(notes::at_most_friction(&digits::fixed(most, 2), &share));
        }
    }
    // An answer of the joint, or what it lacks.
    let of = |label, answer: &dyn Fn(&Joint) -> Shown| match &joint {
        Ok(joint) => answer(joint),
        Err(lacks) => Shown::lacking(label, lacks.clone()),
    };
    Panel {
        note,
        blanks: vec![
            facts::GENERAL_TORQUES.id(),
            facts::THREAD.id(),
            facts::THREADS_INTO.id(),
            facts::PROPERTY_CLASS.id(),
            facts::FRICTION_CLASS.id(),
        ],
        answers: vec![
            of(labels::PRELOAD, &|it| Shown::quantity(labels::PRELOAD, Ok(it.preload()), set)),
            of(labels::SHARE_OF_PROOF, &|it| {
                Shown::quantity(labels::SHARE_OF_PROOF, Ok(it.share_of_proof()), set)
            }),
            of(labels::EQUIVALENT_K, &|it| {
                Shown::count(labels::EQUIVALENT_K, it.equivalent_k().ok_or_else(Lacks::none), set)
            }),
            of(labels::PRELOAD_SCATTER, &|_| {
                Shown::span(labels::PRELOAD_SCATTER, Ok(torque::scatter()), set)
            }),
            oiled,
        ],
        warnings,
        cautions: cautions::ESTIMATE,
        ..Panel::of(of(labels::TORQUE_ESTIMATED, &|it| {
            Shown::span(labels::TORQUE_ESTIMATED, Ok(it.torque()), set)
        }))
    }
}

fn joint(from: &dyn Facts) -> Told<Joint> {
    let thread = facts::THREAD
        .of(from)
        .and_then(|it| it.thread.map_err(|why| facts::THREAD.not_together(why)));
    let (thread, class, friction) =
        all3(thread, facts::PROPERTY_CLASS.of(from), facts::FRICTION_CLASS.of(from))?;
    Joint::new(thread, class, friction).map_err(|why| facts::PROPERTY_CLASS.not_together(why))
}
