//! Stabilizer by its label, in the measures at hand.

use super::level::{Filled, filled};
use crate::entry::{self, Dose, Entry};
use crate::facts::{self, Facts, Measures, Told, both};
use crate::fuel::{self, FuelError, Label};
use crate::show::{self, Shown};
use crate::units::{self, Measure, UnitSet};
use crate::words::{fuel as words, labels};
use crate::working::{Answer, Quantity};
use uom::si::f64::{Ratio, Volume};

/// Stabilizer to add, one dose.
pub fn stabilizer(from: &dyn Facts, set: UnitSet) -> Told<Answer<Volume>> {
    let treated = both(typed(from), facts::ALREADY_TREATED.maybe(from));
    let (filled, (dose, treated)) = both(filled(from, set), treated)?;
    by(&filled, dose, treated, 1.0)
}

/// The highest dose, the same in other measures, and whose measures the label's are.
pub fn details(
    from: &dyn Facts,
    set: UnitSet,
    answers: &mut Vec<Shown>,
    warnings: &mut Vec<String>,
) {
    let Ok(single) = stabilizer(from, set) else { return };
    if facts::HIGHEST_DOSE.maybe(from) != Ok(None) {
        let treated = both(typed(from), facts::ALREADY_TREATED.maybe(from));
        let told = both(both(filled(from, set), treated), facts::HIGHEST_DOSE.of(from));
        let told = told.and_then(|((filled, (dose, treated)), most)| {
            by(&filled, dose, treated, f64::from(most))
        });
        answers.push(Shown::quantity(labels::AT_HIGHEST_DOSE, told, set));
    }
    let dose = single.value;
    let ounce = match typed(from) {
        Ok(it) if it.unit == Some(&units::IMP_FL_OZ) => &units::IMP_FL_OZ,
        _ => &units::US_FL_OZ,
    };
    let [ml, ounces] =
        [&units::MILLILITER, ounce].map(|unit| show::rounded_in(Measure::Dose, dose, Some(unit)));
    let spoons = words::spoons(fuel::spoons(dose));
    answers.push(Shown::words(labels::MEASURED_AS, words::measured_as(&ml, &ounces, &spoons)));
    if asks_measures(from) && facts::LABEL_MEASURES.maybe(from) == Ok(None) {
        let treated = facts::ALREADY_TREATED.maybe(from);
        let amount = |measures| {
            let (filled, treated) = both(filled(from, set), treated.clone()).ok()?;
            let dose = by(&filled, read_as(from, measures)?, treated, 1.0).ok()?;
            Some(show::rounded(Measure::Dose, dose.value, set))
        };
        if let Some((us, imperial)) = amount(Measures::Us).zip(amount(Measures::Imperial)) {
            warnings.push(words::which_measures(&us, &imperial));
        }
    }
}

/// Whether the label has ounces or gallons of no country.
pub fn asks_measures(from: &dyn Facts) -> bool {
    matches!(facts::STABILIZER_LABEL.maybe(from), Ok(Some(it)) if it.ambiguous)
}

/// The label's dose, in the measures that were chosen where it leaves them open.
fn typed(from: &dyn Facts) -> Told<Dose> {
    let dose = facts::STABILIZER_LABEL.of(from)?;
    let measures = if dose.ambiguous { facts::LABEL_MEASURES.maybe(from)? } else { None };
    Ok(measures.and_then(|it| read_as(from, it)).unwrap_or(dose))
}

fn read_as(from: &dyn Facts, measures: Measures) -> Option<Dose> {
    let gallon = match measures {
        Measures::Us => &units::US_GAL,
        Measures::Imperial => &units::IMP_GAL,
    };
    let entry = from.entry(facts::STABILIZER_LABEL.id());
    entry::dose(&Entry { unit: gallon.code, ..entry }).ok().flatten()
}

fn by(filled: &Filled, dose: Dose, treated: Option<Ratio>, multiple: f64) -> Told<Answer<Volume>> {
    let [dose, treats] = [dose.stabilizer, dose.fuel].map(Volume::of_base);
    let label = Label::dose_per_fuel(dose, treats)
        .map_err(|why| facts::STABILIZER_LABEL.not_together(why))?;
    let treated = treated.unwrap_or(Ratio::of_base(0.0));
    fuel::stabilizer_about(filled.level, filled.inside, treated, label, multiple).map_err(|why| {
        match why {
            FuelError::Treated => facts::ALREADY_TREATED.not_together(why),
            _ => facts::FUEL_IN_TANK.not_together(why),
        }
    })
}
