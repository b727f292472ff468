//! Bottles to buy, and what is left in them.

use super::{NEEDED, OilError, positive};
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Quantity, Term, term},
};
use uom::si::{f64::Volume, volume::milliliter};

/// Bottles to buy.
pub const BOTTLES: Law = Law {
    formula: "n = max(0, ceil((V − S) / B))",
    gives: Measure::Number,
    source: source::BOTTLES,
    holds: "all bottles are of one size",
};

/// What is left of the oil on the shelf and of the bottles bought.
pub const LEFT_OVER: Law = Law {
    formula: "R = max(0, S + n · B − V)",
    gives: Measure::Oil,
    source: source::ARITHMETIC,
    holds: "the engine takes what the manual says",
};

/// What to buy for an oil change, and what is left afterwards.
#[derive(Debug, Clone, PartialEq)]
pub struct Bottles {
    /// Bottles to buy, a whole number.
    pub to_buy: Answer<f64>,
    /// Oil left over.
    pub left_over: Answer<Volume>,
}

/// Bottles of size `bottle` to buy for `needed` oil with `on_shelf` in open bottles.
///
/// Half a milliliter is forgiven all in all and in each bottle: four quarts need four bottles of a quart, also where the
/// bottle says 946 mL.
///
/// # Errors
/// [`OilError::Needed`], [`OilError::Bottle`], [`OilError::Shelf`].
pub fn bottles(needed: Volume, bottle: Volume, on_shelf: Volume) -> Result<Bottles, OilError> {
    if !positive(needed) {
        return Err(OilError::Needed);
    }
    if !positive(bottle) {
        return Err(OilError::Bottle);
    }
    if !(positive(on_shelf) || on_shelf.base() == 0.0) {
        return Err(OilError::Shelf);
    }
    let forgiven = Volume::new::<milliliter>(0.5);
    let short = needed - on_shelf - forgiven;
    // Adding 0 turns a negative zero, which would print as -0, into a plain one.
    let count = (short.base() / (bottle + forgiven).base() - 1e-9).ceil().max(0.0) + 0.0;
    let left = (on_shelf + bottle * count - needed).base().max(0.0);
    let mut terms = vec![
        term("V", NEEDED, Measure::Oil, needed),
        term("S", "oil on the shelf", Measure::Oil, on_shelf),
        term("B", "bottle size", Measure::Oil, bottle),
    ];
    let to_buy = Answer::exact(count, &BOTTLES, terms.clone());
    terms.push(Term { symbol: "n", name: "bottles to buy", amount: Amount::Number(count) });
    Ok(Bottles { to_buy, left_over: Answer::exact(Volume::of_base(left), &LEFT_OVER, terms) })
}
