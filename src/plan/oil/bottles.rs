//! What to buy: of one size, or of several.

use crate::digits;
use crate::entry::text::joined;
use crate::facts::{self, Facts, Told, all3};
use crate::oil::{self, OilError, Purchase};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{labels, notes, oil as words};
use crate::working::Quantity;
use uom::si::f64::Volume;

/// Answers about bottles, and what stands of them beside the line's head.
pub fn bottles(
    fill: Told<Volume>,
    from: &dyn Facts,
    set: UnitSet,
    answers: &mut Vec<Shown>,
    note: &mut Vec<String>,
) {
    let given = all3(fill, facts::BOTTLE_SIZE.of(from), facts::OIL_ON_SHELF.of(from));
    let found = given.and_then(|(fill, sizes, shelf)| {
        let found = oil::purchases(fill, &sizes, shelf).map_err(|why| match why {
            OilError::Shelf => facts::OIL_ON_SHELF.not_together(why),
            _ => facts::BOTTLE_SIZE.not_together(why),
        });
        Ok((sizes, found?))
    });
    let (sizes, [least_left, fewest]) = match found {
        Ok(it) => it,
        Err(lacks) => {
            answers.push(Shown::lacking(labels::BOTTLES_TO_BUY, lacks.clone()));
            answers.push(Shown::lacking(labels::LEFT_OVER, lacks));
            return;
        }
    };
    let left = |it: &Purchase| show::rounded(Measure::Oil, it.left_over.value, set);
    let unit = Measure::Oil.usual(set);
    let size = |it: Volume| {
        unit.map_or_else(String::new, |unit| {
            let number = digits::brief(unit.of_base(it.base()), 3);
            joined(&[number.as_str(), "\u{a0}", unit.symbol], "")
        })
    };
    let said = |it: &Purchase| {
        let bottles: Vec<(u32, String)> =
            it.counts.iter().zip(&sizes).map(|(count, it)| (*count, size(*it))).collect();
        words::purchase(&bottles)
    };
    let least = left(&least_left);
    if let Some(to_buy) = least_left.to_buy {
        note.push(notes::bottles(to_buy.value as u32, &least));
        answers.push(Shown::count(labels::BOTTLES_TO_BUY, Ok(to_buy), set));
    } else {
        let bought = said(&least_left);
        note.push(words::to_buy(&bought, &least));
        answers.push(Shown::words(labels::BOTTLES_TO_BUY, bought));
        if fewest.bottles() < least_left.bottles() {
            let fewest = words::with_left(&said(&fewest), &left(&fewest));
            answers.push(Shown::words(labels::FEWEST_BOTTLES, fewest));
        }
    }
    answers.push(Shown::quantity(labels::LEFT_OVER, Ok(least_left.left_over), set));
}
