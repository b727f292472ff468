//! Which wrench of the drawer serves a fastener, and why another cannot.

use super::Asked;
use crate::facts::{self, Facts, Lack, Lacks, Told, both};
use crate::garage::{Kept, Subject};
use crate::plan::{Held, drawer};
use crate::show;
use crate::torque::{Figure, Fit, TorqueError, Verdict, best};
use crate::units::{Measure, UnitSet};
use crate::words::notes;

/// Every wrench tried, and the one that is taken.
pub struct Served {
    /// As in the drawer.
    pub fits: Vec<Told<Fit>>,
    /// Its place: the owner's choice, or the one that serves best.
    pub at: usize,
    /// The owner chose it.
    pub chosen: bool,
}

/// One wrench as it would serve.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// Place in the drawer.
    pub place: usize,
    /// What its owner calls it.
    pub name: String,
    /// What it would be set to, or why it cannot serve.
    pub says: String,
    /// The one that is taken.
    pub taken: bool,
}

/// Tries every wrench of the drawer.
pub fn serve(asked: &Asked, drawer: &[Held]) -> Served {
    let fits: Vec<Told<Fit>> = drawer.iter().map(|it| fit(&asked.figure, asked, it)).collect();
    let own = asked.taken.and_then(|key| drawer.iter().position(|it| it.key == Some(key)));
    // One of which nothing is known holds any setting, and is no choice beside one that is known.
    let known = |(fit, held): (&'_ Told<Fit>, &Held)| !held.blank && fit.is_ok();
    let any_known = fits.iter().zip(drawer).any(known);
    let tried = fits.iter().zip(drawer).map(|(fit, held)| match fit {
        Ok(fit) if !held.blank || !any_known => Some(fit),
        _ => None,
    });
    let best = best(tried);
    let first = drawer.iter().position(|it| !it.blank).unwrap_or(0);
    Served { at: own.or(best).unwrap_or(first), chosen: own.is_some(), fits }
}

/// One wrench set for a figure of the fastener's.
pub fn fit(figure: &Told<Figure>, asked: &Asked, held: &Held) -> Told<Fit> {
    let adapter = asked.adapter.clone().and_then(|it| it.on(&held.length));
    let (figure, adapter) = both(figure.clone(), adapter)?;
    let wrench = held.wrench.as_ref().map_err(Lacks::clone)?;
    Fit::of(&figure, wrench, adapter.as_ref()).map_err(|why| match why {
        TorqueError::AboveMarks => facts::HIGHEST_MARK.not_together(why),
        _ => facts::LOWEST_MARK.not_together(why),
    })
}

/// Every wrench with what it would do, where there is a choice.
pub fn offers(served: &Served, drawer: &[Held], set: UnitSet) -> Vec<Offer> {
    if drawer.len() < 2 {
        return Vec::new();
    }
    let offer = |(place, (held, fit)): (usize, (&Held, &Told<Fit>))| Offer {
        place,
        name: held.name.clone(),
        says: says(fit, held, set),
        taken: place == served.at,
    };
    drawer.iter().zip(&served.fits).enumerate().map(offer).collect()
}

fn says(fit: &Told<Fit>, held: &Held, set: UnitSet) -> String {
    match fit {
        Ok(fit) => {
            let unit = held.marked_in.or_else(|| Measure::Torque.usual(set));
            let marked = held.wrench.as_ref().is_ok_and(|it| it.graduation().is_some());
            let setting = show::setting(fit.set, unit, marked);
            let doubt = match (fit.caution, fit.verdict) {
                (Some(caution), _) => caution.to_string(),
                (None, Some(Verdict::Inside)) => notes::INSIDE.to_owned(),
                (None, Some(Verdict::Partly)) => notes::PARTLY_INSIDE.to_owned(),
                (None, Some(Verdict::Outside)) => notes::OUTSIDE_RANGE.to_owned(),
                (None, None) if fit.far => notes::MARKS_TOO_COARSE.to_owned(),
                (None, None) => String::new(),
            };
            if doubt.is_empty() { setting } else { format!("{setting}, {doubt}") }
        }
        Err(lacks) => match lacks.iter().find_map(Lack::refusal) {
            Some(why) => why.to_string(),
            None => show::needs(lacks.iter()),
        },
    }
}

/// Places of the wrenches that the answers of a bike need: those that its fasteners are set with.
pub fn wrenches_needed(kept: &Kept) -> Vec<usize> {
    let drawer = drawer(&kept.garage);
    let mut needed: Vec<usize> = Vec::new();
    let fasteners = kept.bike.fasteners.iter().chain([&kept.bike.scratch]);
    for own in fasteners.filter(|it| !it.is_empty()) {
        let subject = Subject { own: own as &dyn Facts, rest: kept };
        let at = serve(&Asked::of(&subject), &drawer).at;
        if !needed.contains(&at) {
            needed.push(at);
        }
    }
    needed
}
