//! A fastener's row in the torque list: what to set on which wrench, and no more. Two hundred of them follow one letter.

use super::serve::serve;
use super::steps::steps;
use super::{Asked, Fitted, mark, no_wrench, off_scale, pass_on};
use crate::digits;
use crate::entry::text::joined;
use crate::plan::Held;
use crate::show::{self, Figure};
use crate::torque::{Verdict, turned};
use crate::units::{Measure, UnitSet};
use crate::words::{choices, labels, notes};
use uom::si::angle::degree;
use uom::si::f64::Length;

/// A row.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// What the figure is.
    pub label: &'static str,
    /// What to set, how far to turn, or what is lacking.
    pub figure: Figure,
    /// What has to be on the wrench for it, and which wrench where there is a choice.
    pub with: String,
    /// What comes one after another.
    pub then: String,
    /// What needs care.
    pub care: &'static str,
}

/// What the list says of a fastener.
pub fn row(asked: &Asked, drawer: &[Held], set: UnitSet) -> Row {
    let served = serve(asked, drawer);
    let Some((held, fit)) = drawer.get(served.at).zip(served.fits.get(served.at)) else {
        return bare(Figure::Lacks(Vec::new()));
    };
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
            let figure = show::setting_figure(fit.set, unit, marked);
            let with = with(asked, held, drawer.len() > 1, set);
            Row { label, figure, with, then: then(asked, held, set), care }
        }
        Err(lacks) => match &asked.turn {
            // A part that is turned by an angle has no torque, and needs none.
            Ok(Some(turn)) if lacks.iter().all(pass_on) => Row {
                label: labels::TURN,
                figure: show::figure_of(turned(turn.value, turn.bounds), set),
                with: notes::FROM_THE_SEAT.to_owned(),
                then: String::new(),
                care: "",
            },
            _ if off_scale(fit, held).is_some() => {
                bare(Figure::Words(no_wrench(&served, drawer).to_owned()))
            }
            _ => bare(Figure::Lacks(lacks.to_vec())),
        },
    }
}

/// Without a setting.
fn bare(figure: Figure) -> Row {
    Row { label: labels::SET_TO, figure, with: String::new(), then: String::new(), care: "" }
}

/// What makes the setting right: adapter, drag, several bolts, the wrench where there is a choice.
fn with(asked: &Asked, held: &Held, several: bool, set: UnitSet) -> String {
    let mut with = Vec::new();
    // Without the hand: it is the wrench's, and would change every row of the list with each letter of its length.
    with.extend(through(asked, None, set));
    if let Ok(Some(drag)) = asked.drag {
        with.push(notes::drag_on_top(&show::rounded(Measure::Torque, drag, set)));
    }
    if let Ok(Some(bolts)) = asked.bolts {
        with.push(notes::in_order(&bolts.to_string()));
    }
    if let (Ok(Some(turn)), Ok(_)) = (&asked.turn, &asked.figure) {
        let degrees = show::figure_of(turned(turn.value, turn.bounds), set);
        if let Figure::Number { text, unit, .. } = degrees {
            with.push(joined(&[text.as_str(), unit], ""));
        }
        with.push(notes::OR_TORQUE.to_owned());
    }
    if several {
        with.push(notes::with_wrench(&held.name));
    }
    joined(&with, " · ")
}

/// The adapter that a setting is reckoned for, and where the `hand` is.
pub(super) fn through(asked: &Asked, hand: Option<Length>, set: UnitSet) -> Option<String> {
    let length = |it: Length| show::rounded(Measure::Span, it, set);
    match asked.adapter.as_ref().ok()? {
        Fitted::None => None,
        Fitted::Square(_) => Some(notes::THROUGH_SQUARE.to_owned()),
        Fitted::At(adapter, angle) => {
            let angle = angle.as_ref().ok()?.get::<degree>();
            let how = match angle {
                0.0 => choices::IN_LINE.to_owned(),
                180.0 => choices::POINTING_BACK.to_owned(),
                other => notes::at_angle(&format!("{}°", digits::brief(other, 4))),
            };
            let hand = hand.map(length);
            let adapter = length(*adapter.as_ref().ok()?);
            Some(notes::through(&adapter, &how, &hand.unwrap_or_default()))
        }
    }
}

/// Its stages, each with what to set.
fn then(asked: &Asked, held: &Held, set: UnitSet) -> String {
    if !matches!(asked.stages, Ok(Some(_))) {
        return String::new();
    }
    let adapter = asked.adapter.clone().and_then(|it| it.on(&held.length));
    let steps = steps(asked, held, &mark(asked, held, &adapter), set);
    let settings: Vec<String> = steps.iter().map(|it| it.1.figure_words()).collect();
    notes::one_after_another(&settings)
}
