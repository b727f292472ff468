//! Stabilizer by its label.

use super::{FuelError, final_volume, positive, positive_or_none};
use crate::source;
use crate::{
    units::{self, Measure},
    working::{Amount, Answer, Law, Quantity, Term, term},
};
use uom::si::f64::{Ratio, Volume};

/// Stabilizer to add.
pub const STABILIZER: Law = Law {
    formula: "S = max(0, (m · F − t · I) / n)",
    gives: Measure::Dose,
    source: source::STABILIZER_RATIO,
    holds: "fresh fuel: it restores no stale fuel; in before the last fuel, which mixes it (common practice, no source)",
};

/// What a stabilizer's label says: so much for so much fuel.
///
/// Invariant: above zero, and less dose than fuel.
///
/// ```
/// use torpor::{fuel::Label, units, working::Quantity};
/// use uom::si::f64::Volume;
/// # fn main() -> Result<(), torpor::fuel::FuelError> {
/// let [ounce, gallons] = [units::US_FL_OZ.to_base(1.0), units::US_GAL.to_base(2.5)];
/// let label = Label::dose_per_fuel(Volume::of_base(ounce), Volume::of_base(gallons))?;
/// assert!((1.0 / label.ratio().base() - 320.0).abs() < 1e-9);
/// # Ok(()) }
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Label {
    ratio: Ratio,
}

impl Label {
    /// `dose` for `fuel`, as in "25 mL for 10 L". Ounces and gallons have to be of one country: 1 oz for 2.5 gal is
    /// 1:320 in the US and 1:400 in Britain.
    ///
    /// # Errors
    /// [`FuelError::Label`], [`FuelError::LabelOrder`].
    pub fn dose_per_fuel(dose: Volume, fuel: Volume) -> Result<Self, FuelError> {
        if !positive(dose) || !positive(fuel) {
            return Err(FuelError::Label);
        }
        (dose < fuel).then_some(Self { ratio: dose / fuel }).ok_or(FuelError::LabelOrder)
    }

    /// Dose for each unit of fuel.
    pub fn ratio(&self) -> Ratio {
        self.ratio
    }
}

/// Whether so much `dose` for so much `fuel` is richer than 1:50. Labels are mostly 1:200 to 1:1300 (common practice, no
/// source).
pub fn is_rich(dose: f64, fuel: f64) -> bool {
    dose * 50.0 > fuel
}

/// Stabilizer to add so that all of the `last` volume in the tank has `multiple` doses (1 as on the label), when
/// the share `treated` of what is `inside` before filling already has one dose. Never under zero.
///
/// # Errors
/// [`FuelError::FillTo`], [`FuelError::Inside`], [`FuelError::InsideOverFinal`], [`FuelError::Treated`],
/// [`FuelError::Multiple`].
pub fn stabilizer(
    last: Volume,
    inside: Volume,
    treated: Ratio,
    label: Label,
    multiple: f64,
) -> Result<Answer<Volume>, FuelError> {
    if !positive(last) {
        return Err(FuelError::FillTo);
    }
    if !positive_or_none(inside) {
        return Err(FuelError::Inside);
    }
    if inside > last {
        return Err(FuelError::InsideOverFinal);
    }
    if !(0.0..=1.0).contains(&treated.base()) {
        return Err(FuelError::Treated);
    }
    if !(multiple.is_finite() && multiple > 0.0) {
        return Err(FuelError::Multiple);
    }
    let dose = needed(last, inside, treated, label, multiple);
    let terms = vec![
        Term {
            symbol: "n",
            name: "fuel for one part of stabilizer, from its label",
            amount: Amount::Number(1.0 / label.ratio.base()),
        },
        Term { symbol: "m", name: "doses, 1 as on the label", amount: Amount::Number(multiple) },
        term("F", "fuel in the tank when filled", Measure::Tank, last),
        term("t", "share of the fuel before that is treated", Measure::Share, treated),
        term("I", "fuel in the tank before", Measure::Tank, inside),
    ];
    Ok(Answer::exact(dose, &STABILIZER, terms))
}

fn needed(last: Volume, inside: Volume, treated: Ratio, label: Label, multiple: f64) -> Volume {
    let untreated = last * multiple - inside * treated;
    Volume::of_base((untreated * label.ratio).base().max(0.0))
}

/// [`stabilizer`] for a tank that is filled to `level` and whose contents `inside` before it are known within bounds.
///
/// # Errors
/// As of [`stabilizer`].
pub fn stabilizer_about(
    level: Volume,
    (inside, bounds): (Volume, Option<[Volume; 2]>),
    treated: Ratio,
    label: Label,
    multiple: f64,
) -> Result<Answer<Volume>, FuelError> {
    let last = final_volume(inside, level);
    let mut answer = stabilizer(last, inside, treated, label, multiple)?;
    answer.bounds = bounds.map(|[least, most]| {
        // Up to the level the dose falls with what is treated already, above it it rises: it is least at the level.
        let least_at = if level < least {
            least
        } else if level > most {
            most
        } else {
            level
        };
        let [one, other, lowest] = [least, most, least_at]
            .map(|it| needed(final_volume(it, level), it, treated, label, multiple));
        let highest = if one < other { other } else { one };
        [if lowest < highest { lowest } else { highest }, highest]
    });
    Ok(answer)
}

/// A dose in kitchen measures: whole US tablespoons, and quarters of a US teaspoon, the nearest.
pub fn spoons(dose: Volume) -> (u32, u32) {
    let quarters = (units::US_TSP.of_base(dose.base()) * 4.0).round().max(0.0).min(1e6) as u32;
    (quarters / 12, quarters % 12)
}
