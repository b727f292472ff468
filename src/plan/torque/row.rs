//! A fastener's row in the torque list: what to set on which wrench, and no more. Two hundred of them follow one letter.

use super::serve::serve;
use super::{Asked, pass_on};
use crate::facts::Lack;
use crate::plan::Held;
use crate::show::{self, Figure};
use crate::torque::{Verdict, turned};
use crate::units::{Measure, UnitSet};
use crate::words::{labels, notes};

/// A row.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// What the figure is.
    pub label: &'static str,
    /// What to set, how far to turn, or what is lacking.
    pub figure: Figure,
    /// The wrench, where there is a choice.
    pub with: String,
    /// What needs care.
    pub care: &'static str,
}

/// What the list says of a fastener.
pub fn row(asked: &Asked, drawer: &[Held], set: UnitSet) -> Row {
    let served = serve(asked, drawer);
    let Some((held, fit)) = drawer.get(served.at).zip(served.fits.get(served.at)) else {
        return bare(Figure::Lacks(Vec::new()));
    };
    let several = drawer.len() > 1;
    let with = if several { held.name.clone() } else { String::new() };
    match fit {
        Ok(fit) => {
            let unit = held.marked_in.or_else(|| Measure::Torque.usual(set));
            let marked = held.wrench.as_ref().is_ok_and(|it| it.graduation().is_some());
            let care = match fit.verdict {
                Some(Verdict::Partly) => notes::PARTLY_INSIDE,
                Some(Verdict::Outside) => notes::OUTSIDE_RANGE,
                None if fit.far => notes::MARKS_TOO_COARSE,
                _ if fit.caution.is_some() => notes::LOW_ON_THE_SCALE,
                _ => "",
            };
            let label = if marked { labels::SET_TO } else { labels::EXACT_SETTING };
            Row { label, figure: show::setting_figure(fit.set, unit, marked), with, care }
        }
        Err(lacks) => match &asked.turn {
            // A part that is turned by an angle has no torque, and needs none.
            Ok(Some(turn)) if lacks.iter().all(pass_on) => Row {
                label: labels::TURN,
                figure: show::figure_of(turned(turn.value, turn.bounds), set),
                with: notes::FROM_THE_SEAT.to_owned(),
                care: "",
            },
            _ if lacks.iter().any(|it| matches!(it, Lack::Missing(_))) => {
                bare(Figure::Lacks(lacks.clone()))
            }
            _ => {
                let words = if several && !served.chosen {
                    notes::NO_WRENCH
                } else {
                    notes::NOT_THIS_WRENCH
                };
                bare(Figure::Words(words.to_owned()))
            }
        },
    }
}

/// Without a setting.
fn bare(figure: Figure) -> Row {
    Row { label: labels::SET_TO, figure, with: String::new(), care: "" }
}
