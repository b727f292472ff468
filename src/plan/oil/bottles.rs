//! What to buy: of one size, or of several.

use crate::digits;
use crate::facts::{self, Facts, Lack, Told, all3};
use crate::oil::{self, Bottles, OilError, Purchase};
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
    let found = given.and_then(|(fill, sizes, shelf)| match sizes.as_slice() {
        [size] => one(fill, *size, shelf, set, answers, note),
        _ => several(fill, &sizes, shelf, set, answers, note),
    });
    if let Err(lacks) = found {
        answers.push(Shown::lacking(labels::BOTTLES_TO_BUY, lacks.clone()));
        answers.push(Shown::lacking(labels::LEFT_OVER, lacks));
    }
}

fn refused(why: OilError) -> Vec<Lack> {
    match why {
        OilError::Shelf => facts::OIL_ON_SHELF.not_together(why),
        _ => facts::BOTTLE_SIZE.not_together(why),
    }
}

fn one(
    fill: Volume,
    size: Volume,
    shelf: Volume,
    set: UnitSet,
    answers: &mut Vec<Shown>,
    note: &mut Vec<String>,
) -> Told<()> {
    let Bottles { to_buy, left_over } = oil::bottles(fill, size, shelf).map_err(refused)?;
    let left = show::rounded(Measure::Oil, left_over.value, set);
    note.push(notes::bottles(to_buy.value, &digits::fixed(to_buy.value, 0), &left));
    answers.push(Shown::count(labels::BOTTLES_TO_BUY, Ok(to_buy), set));
    answers.push(Shown::quantity(labels::LEFT_OVER, Ok(left_over), set));
    Ok(())
}

fn several(
    fill: Volume,
    sizes: &[Volume],
    shelf: Volume,
    set: UnitSet,
    answers: &mut Vec<Shown>,
    note: &mut Vec<String>,
) -> Told<()> {
    let [least_left, fewest] = oil::purchases(fill, sizes, shelf).map_err(refused)?;
    let unit = Measure::Oil.usual(set);
    let size = |it: Volume| {
        unit.map_or_else(String::new, |unit| {
            let number = digits::brief(unit.of_base(it.base()), 3);
            [number.as_str(), "\u{a0}", unit.symbol].concat()
        })
    };
    let said = |it: &Purchase| {
        let bottles: Vec<(u32, String)> =
            it.counts.iter().zip(sizes).map(|(count, it)| (*count, size(*it))).collect();
        words::purchase(&bottles)
    };
    let left = |it: &Purchase| show::rounded(Measure::Oil, it.left_over.value, set);
    note.push(words::to_buy(&said(&least_left), &left(&least_left)));
    answers.push(Shown::words(labels::BOTTLES_TO_BUY, said(&least_left)));
    if fewest.bottles() < least_left.bottles() {
        let fewest = words::with_left(&said(&fewest), &left(&fewest));
        answers.push(Shown::words(labels::FEWEST_BOTTLES, fewest));
    }
    answers.push(Shown::quantity(labels::LEFT_OVER, Ok(least_left.left_over), set));
    Ok(())
}
