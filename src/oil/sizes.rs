//! Bottles of one size or of several: what to buy so that least is left over, and so that fewest bottles are bought.

use super::{NEEDED, OilError, positive};
use crate::source;
use crate::{
    units::{self, Measure},
    working::{Answer, Law, Quantity, term},
};
use uom::si::{f64::Volume, volume::milliliter};

/// Bottles to buy of one size.
pub const BOTTLES: Law = Law {
    formula: "n = max(0, ceil((V − S − e) / B))",
    gives: Measure::Number,
    source: source::BOTTLES,
    holds: "all bottles are of one size",
};

/// What is left of the oil on the shelf and of the bottles bought.
pub const LEFT_OF_SIZES: Law = Law {
    formula: "R = max(0, S + N − V)",
    gives: Measure::Oil,
    source: source::BOTTLES,
    holds: "the engine takes what the manual says",
};

/// The most sizes that are compared.
pub const MOST_SIZES: usize = 8;

/// The most oil that is bought for one change, mL.
const MOST_OIL: f64 = 100e3;

/// What may be short all in all, mL: bottles and manuals print whole milliliters.
const FORGIVEN: f64 = 0.5;

/// What a bottle holds that says so much: that of a US quart says 946 mL.
fn meant(size: Volume) -> Volume {
    let quart = Volume::of_base(units::US_QT.to_base(1.0));
    if (size - quart).get::<milliliter>().abs() < FORGIVEN { quart } else { size }
}

/// Bottles to buy.
#[derive(Debug, Clone, PartialEq)]
pub struct Purchase {
    /// How many of each size, in the order of the sizes.
    pub counts: Vec<u32>,
    /// How many, where all are of one size.
    pub to_buy: Option<Answer<f64>>,
    /// Oil left over.
    pub left_over: Answer<Volume>,
}

impl Purchase {
    /// All bottles together.
    pub fn bottles(&self) -> u32 {
        self.counts.iter().sum()
    }
}

/// A sum of bottles within half a milliliter.
#[derive(Clone, Copy)]
struct Sum {
    /// Exactly, mL.
    ml: f64,
    bottles: u32,
    /// The last of them, and the sum before it.
    last: u8,
    before: usize,
}

/// What to buy of bottles of these `sizes` for `needed` oil with `on_shelf` in open bottles: the combination with least
/// left over (of two such the one with fewer bottles), and the one with fewest bottles (of two such the one with less
/// left over). Half a milliliter is forgiven, all in all, and 946 mL are a US quart.
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
    // Smaller ones would not move a sum.
    if sizes.is_empty() || !sizes.iter().all(|it| ml(*it) >= 1.0 && it.base().is_finite()) {
        return Err(OilError::Bottle);
    }
    if sizes.len() > MOST_SIZES {
        return Err(OilError::Sizes);
    }
    if !(positive(on_shelf) || on_shelf.base() == 0.0) {
        return Err(OilError::Shelf);
    }
    let sizes: Vec<Volume> = sizes.iter().copied().map(meant).collect();
    let short = ml(needed - on_shelf) - FORGIVEN - 1e-6;
    let half = |ml: f64| (2.0 * ml).round() as usize;
    // Fewest bottles for each half milliliter under what is short.
    let mut sums: Vec<Option<Sum>> = vec![None; if short > 0.0 { half(short) + 1 } else { 0 }];
    let mut ends: [Option<Sum>; 2] = [None; 2];
    for before in 0..sums.len() {
        let (sum, bottles) = match sums[before] {
            Some(it) => (it.ml, it.bottles),
            None if before == 0 => (0.0, 0),
            None => continue,
        };
        for (size, volume) in sizes.iter().enumerate() {
            let ml = sum + ml(*volume);
            let it = Sum { ml, bottles: bottles + 1, last: size as u8, before };
            if ml < short {
                let slot = &mut sums[half(ml)];
                if slot.is_none_or(|other| it.bottles < other.bottles) {
                    *slot = Some(it);
                }
                continue;
            }
            let [least_left, least_bottles] = &mut ends;
            let left_first = |it: Sum| (half(it.ml), it.bottles as usize);
            if least_left.is_none_or(|other| left_first(it) < left_first(other)) {
                *least_left = Some(it);
            }
            let bottles_first = |it: Sum| (it.bottles as usize, half(it.ml));
            if least_bottles.is_none_or(|other| bottles_first(it) < bottles_first(other)) {
                *least_bottles = Some(it);
            }
        }
    }
    let purchase = |mut end: Option<Sum>| {
        let mut counts = vec![0; sizes.len()];
        while let Some(it) = end {
            counts[usize::from(it.last)] += 1;
            end = sums[it.before];
        }
        let bought = counts
            .iter()
            .zip(&sizes)
            .fold(Volume::of_base(0.0), |sum, (count, size)| sum + *size * f64::from(*count));
        let left = (on_shelf + bought - needed).base().max(0.0);
        let shelf = term("S", "oil on the shelf", Measure::Oil, on_shelf);
        let need = term("V", NEEDED, Measure::Oil, needed);
        let forgiven = Volume::new::<milliliter>(FORGIVEN);
        let to_buy = match (counts.as_slice(), sizes.as_slice()) {
            ([count], [size]) => {
                let terms = vec![
                    need.clone(),
                    shelf.clone(),
                    term("e", "forgiven", Measure::Oil, forgiven),
                    term("B", "bottle size", Measure::Oil, *size),
                ];
                Some(Answer::exact(f64::from(*count), &BOTTLES, terms))
            }
            _ => None,
        };
        let terms = vec![shelf, term("N", "oil in new bottles", Measure::Oil, bought), need];
        let left_over = Answer::exact(Volume::of_base(left), &LEFT_OF_SIZES, terms);
        Purchase { counts, to_buy, left_over }
    };
    Ok(ends.map(purchase))
}
