//! Passes up to the figure, with what to set for each.

use super::Asked;
use super::serve::fit;
use crate::facts::{self, Told};
use crate::plan::Held;
use crate::show::{self, Shown};
use crate::torque::{Figure, Pass, passes};
use crate::units::{Measure, UnitSet};
use crate::words::{labels, notes};
use crate::working::Answer;
use uom::si::f64::Torque;

/// Each pass in words and what to set for it; none where there is only one.
pub fn steps(
    asked: &Asked,
    held: &Held,
    mark: &Told<Answer<Torque>>,
    set: UnitSet,
) -> Vec<(String, Shown)> {
    let stages = match &asked.stages {
        Ok(Some(stages)) => stages,
        Ok(None) | Err(_) => return Vec::new(),
    };
    // What the figure lacks is said at its head.
    let Ok(figure) = &asked.figure else { return Vec::new() };
    let Ok(all) = passes(figure, stages) else { return Vec::new() };
    let count = all.len();
    let step = |(at, pass): (usize, &Pass)| match pass {
        Pass::Turn(angle) => {
            let figure = show::figure_of(crate::torque::turned(*angle, None), set);
            let shown = Shown { label: labels::TURN_ON, figure, working: None };
            (notes::stage_turn(at + 1, count), shown)
        }
        Pass::Torque { torque, share, whole } => {
            let words = notes::stage(
                at + 1,
                count,
                &show::rounded(Measure::Share, *share, set),
                &show::rounded(Measure::Torque, *torque, set),
            );
            (
                words,
                if *whole {
                    whole_figure(mark, held, set)
                } else {
                    part(*torque, asked, held, set)
                },
            )
        }
    };
    all.iter().enumerate().map(step).collect()
}

fn whole_figure(mark: &Told<Answer<Torque>>, held: &Held, set: UnitSet) -> Shown {
    let unit = held.marked_in;
    let mut shown = Shown::mark(labels::SET_TO, mark.clone(), set, unit);
    // The head has its working.
    shown.working = None;
    shown
}

fn part(torque: Torque, asked: &Asked, held: &Held, set: UnitSet) -> Shown {
    let figure = Figure::exactly(torque).map_err(|why| facts::STAGES.not_together(why));
    match fit(&figure, asked, held) {
        Ok(fit) => {
            let unit = held.marked_in.or_else(|| Measure::Torque.usual(set));
            let marked = held.wrench.as_ref().is_ok_and(|it| it.graduation().is_some());
            let figure = show::setting_figure(fit.set, unit, marked);
            Shown { label: labels::SET_TO, figure, working: None }
        }
        // The pass is to be done all the same: with another wrench.
        Err(lacks) => match lacks.iter().find_map(facts::Lack::refusal) {
            Some(why) => Shown::words(labels::SET_TO, why.to_string()),
            None => Shown::lacking(labels::SET_TO, lacks),
        },
    }
}
