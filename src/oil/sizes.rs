//! Bottles of several sizes: what to buy so that least is left over, and so that fewest bottles are bought.

use super::{NEEDED, OilError, positive};
use crate::source;
use crate::{
    units::Measure,
    working::{Answer, Law, Quantity, term},
};
use uom::si::{f64::Volume, volume::milliliter};

/// What is left of the oil on the shelf and of bottles of several sizes.
pub const LEFT_OF_SIZES: Law = Law {
    formula: "R = max(0, S + N − V)",
    gives: Measure::Oil,
    source: source::BOTTLE_SIZES,
    holds: "the engine takes what the manual says; all combinations were compared",
};

/// The most sizes that are compared.
pub const MOST_SIZES: usize = 8;

/// The most oil that is bought for one change.
const MOST_OIL: f64 = 100e3;

/// Bottles to buy, of several sizes.
#[derive(Debug, Clone, PartialEq)]
pub struct Purchase {
    /// How many of each size, in the order of the sizes.
    pub counts: Vec<u32>,
    /// Oil left over.
    pub left_over: Answer<Volume>,
}

impl Purchase {
    /// All bottles together.
    pub fn bottles(&self) -> u32 {
        self.counts.iter().sum()
    }
}

/// What to buy of bottles of these `sizes` for `needed` oil with `on_shelf` in open bottles: the combination with least
/// left over (of two such the one with fewer bottles), and the one with fewest bottles (of two such the one with less
/// left over). Half a milliliter is forgiven all in all and in each bottle, as with bottles of one size.
///
/// # Errors
/// [`OilError::Needed`], [`OilError::Bottle`], [`OilError::Sizes`], [`OilError::Shelf`].
pub fn purchases(
    needed: Volume,
    sizes: &[Volume],
    on_shelf: Volume,
) -> Result<[Purchase; 2], OilError> {
    let ml = |volume: Volume| volume.get::<milliliter>();
    if !positive(needed) || ml(needed) > MOST_OIL {
        return Err(OilError::Needed);
    }
    // Half milliliters: with the half that is forgiven in each, a bottle counts as a whole number of them.
    let weights: Vec<usize> = sizes.iter().map(|it| (2.0 * ml(*it)).round() as usize + 1).collect();
    if sizes.is_empty() || sizes.iter().any(|it| !positive(*it)) {
        return Err(OilError::Bottle);
    }
    if sizes.len() > MOST_SIZES {
        return Err(OilError::Sizes);
    }
    if !(positive(on_shelf) || on_shelf.base() == 0.0) {
        return Err(OilError::Shelf);
    }
    let short = (2.0 * ml(needed - on_shelf) - 1.0 - 1e-6).ceil().max(0.0) as usize;
    // Fewest bottles for each amount under what is short, with the size of the last of them.
    let mut fewest: Vec<Option<(u32, u8)>> = vec![None; short];
    let mut ends: [Option<(usize, u32, usize, usize)>; 2] = [None; 2];
    for amount in 0..short {
        let bottles = match fewest[amount] {
            Some((bottles, _)) => bottles,
            None if amount == 0 => 0,
            None => continue,
        } + 1;
        for (size, weight) in weights.iter().enumerate() {
            let sum = amount + weight;
            if let Some(slot) = fewest.get_mut(sum) {
                if slot.is_none_or(|(before, _)| bottles < before) {
                    *slot = Some((bottles, size as u8));
                }
                continue;
            }
            // What a sum is worth without the half milliliters that were forgiven.
            let bought = sum - bottles as usize;
            let found = (bought, bottles, amount, size);
            let [least_left, least_bottles] = &mut ends;
            if least_left.is_none_or(|it| (bought, bottles) < (it.0, it.1)) {
                *least_left = Some(found);
            }
            if least_bottles.is_none_or(|it| (bottles, bought) < (it.1, it.0)) {
                *least_bottles = Some(found);
            }
        }
    }
    let purchase = |end: Option<(usize, u32, usize, usize)>| {
        let mut counts = vec![0; sizes.len()];
        if let Some((_, _, mut amount, size)) = end {
            counts[size] += 1;
            while let Some(Some((_, size))) = fewest.get(amount).filter(|_| amount > 0) {
                counts[*size as usize] += 1;
                amount -= weights[*size as usize];
            }
        }
        let bought = counts
            .iter()
            .zip(sizes)
            .fold(Volume::of_base(0.0), |sum, (count, size)| sum + *size * f64::from(*count));
        let left = (on_shelf + bought - needed).base().max(0.0);
        let terms = vec![
            term("S", "oil on the shelf", Measure::Oil, on_shelf),
            term("N", "oil in new bottles", Measure::Oil, bought),
            term("V", NEEDED, Measure::Oil, needed),
        ];
        let left_over = Answer::exact(Volume::of_base(left), &LEFT_OF_SIZES, terms);
        Purchase { counts, left_over }
    };
    Ok(ends.map(purchase))
}
