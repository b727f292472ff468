//! Stabilizer by its label, in the measures at hand.

use super::level::Filled;
use crate::entry::{self, Dose, Entry};
use crate::facts::{self, Facts, Measures, Told, all3};
use crate::fuel::{self, FuelError, Label};
use crate::show::{self, Shown};
use crate::units::{self, Measure, Unit, UnitSet};
use crate::words::{fuel as words, labels};
use crate::working::{Answer, Quantity};
use uom::si::f64::{Ratio, Volume};

/// Stabilizer to add, so many doses of it.
pub fn stabilizer(filled: &Told<Filled>, from: &dyn Facts, multiple: f64) -> Told<Answer<Volume>> {
    by(filled, typed(from), from, multiple)
}

/// The highest dose, a `single` one in other measures, and whose measures the label's are.
pub fn details(
    filled: &Told<Filled>,
    single: Volume,
    from: &dyn Facts,
    set: UnitSet,
    answers: &mut Vec<Shown>,
    warnings: &mut Vec<String>,
) {
    match facts::HIGHEST_DOSE.maybe(from) {
        Ok(None) => {}
        Ok(Some(most)) => {
            let told = stabilizer(filled, from, f64::from(most));
            answers.push(Shown::quantity(labels::AT_HIGHEST_DOSE, told, set));
        }
        Err(lacks) => answers.push(Shown::lacking(labels::AT_HIGHEST_DOSE, lacks)),
    }
    let dose = typed(from);
    let ounce = match &dose {
        Ok(it) if it.unit == Some(&units::IMP_FL_OZ) => &units::IMP_FL_OZ,
        _ => &units::US_FL_OZ,
    };
    let [ml, ounces] = [&units::MILLILITER, ounce]
        .map(|unit: &'static Unit| show::rounded_in(Measure::Dose, single, Some(unit)));
    let spoons = words::spoons(fuel::spoons(single));
    answers.push(Shown::words(labels::MEASURED_AS, words::measured_as(&ml, &ounces, &spoons)));
    // Who reckons in US units buys by US labels; the question stands beside the label all the same.
    let asked = asks_measures(from) && set != UnitSet::Us;
    if asked && !facts::given(from, facts::LABEL_MEASURES.id()) {
        let [us, imperial] = [Measures::Us, Measures::Imperial].map(|it| {
            let dose = by(filled, read_as(from, it), from, 1.0);
            dose.map_or_else(|_| String::new(), |it| show::rounded(Measure::Dose, it.value, set))
        });
        if us != imperial {
            warnings.push(words::which_measures(&us, &imperial));
        }
    }
    if dose.is_ok_and(|it| fuel::is_rich(it.stabilizer, it.fuel)) {
        warnings.push(words::RICH_LABEL.to_owned());
    }
}

/// Whether the label has ounces or gallons of no country.
pub fn asks_measures(from: &dyn Facts) -> bool {
    matches!(facts::STABILIZER_LABEL.known(from), Some(it) if it.ambiguous)
}

/// The label's dose, in the measures that were chosen where it leaves them open.
fn typed(from: &dyn Facts) -> Told<Dose> {
    let dose = facts::STABILIZER_LABEL.of(from)?;
    if !dose.ambiguous {
        return Ok(dose);
    }
    match facts::LABEL_MEASURES.maybe(from) {
        Ok(Some(measures)) => read_as(from, measures),
        _ => Ok(dose),
    }
}

fn read_as(from: &dyn Facts, measures: Measures) -> Told<Dose> {
    let gallon = match measures {
        Measures::Us => &units::US_GAL,
        Measures::Imperial => &units::IMP_GAL,
    };
    let label = &facts::STABILIZER_LABEL;
    let entry = Entry { unit: gallon.code, ..from.entry(label.id()) };
    let read = entry::dose(&entry).map_err(|why| label.refused(why))?;
    read.map_or_else(|| label.of(from), Ok)
}

fn by(
    filled: &Told<Filled>,
    dose: Told<Dose>,
    from: &dyn Facts,
    multiple: f64,
) -> Told<Answer<Volume>> {
    let filled = filled.as_ref().map(|it| (it.level, it.inside)).map_err(Clone::clone);
    let ((level, inside), dose, treated) = all3(filled, dose, facts::ALREADY_TREATED.maybe(from))?;
    let [dose, treats] = [dose.stabilizer, dose.fuel].map(Volume::of_base);
    let label = Label::dose_per_fuel(dose, treats)
        .map_err(|why| facts::STABILIZER_LABEL.not_together(why))?;
    let treated = treated.unwrap_or(Ratio::of_base(0.0));
    fuel::stabilizer_about(level, inside, treated, label, multiple).map_err(|why| match why {
        FuelError::Treated => facts::ALREADY_TREATED.not_together(why),
        _ => facts::FUEL_IN_TANK.not_together(why),
    })
}
