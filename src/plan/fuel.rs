//! Fill up and stabilize.

mod dose;
mod level;
mod storage;

use super::Panel;
use crate::facts::{self, Facts};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, fuel as words, labels, notes};
use crate::working::Quantity;

/// The fuel line's calculator.
pub fn fuel(from: &dyn Facts, set: UnitSet) -> Panel {
    let reckoned = level::reckoned(from);
    let filled = level::filled(from, &reckoned, set);
    let to_add = filled.clone().map(|it| it.to_add);
    let stabilizer = dose::stabilizer(&filled, from, 1.0);
    let season = super::season_of(from).ok();
    let age = season.as_ref().map(|it| storage::age(from, it, stabilizer.is_ok()));
    let too_old = age.as_ref().is_some_and(|it| it.too_old);
    let pours = matches!(&stabilizer, Ok(it) if it.value.base() > 0.0);
    let mut note = String::new();
    let mut warnings = Vec::new();
    let mut answers = Vec::new();
    // The worst first.
    let care = age.as_ref().and_then(|it| it.care);
    warnings.extend(care.filter(|_| too_old).map(str::to_owned));
    if let Ok(filled) = &filled {
        level::warnings(from, filled, set, &mut warnings);
    }
    warnings.extend(care.filter(|_| !too_old).map(str::to_owned));
    let head = if too_old {
        Shown::words(labels::STABILIZER_TO_ADD, words::DRAIN_INSTEAD)
    } else {
        if let (Ok(fuel), Ok(single)) = (&to_add, &stabilizer) {
            let full = fuel.value.base() == 0.0;
            note = match (full, pours) {
                (false, _) => {
                    notes::then_fuel_on_top(&show::rounded(Measure::Tank, fuel.value, set))
                }
                (true, true) => notes::FULL_ALREADY.to_owned(),
                (true, false) => words::ALL_TREATED.to_owned(),
            };
            dose::details(&filled, single.value, from, set, &mut answers, &mut warnings);
            if full && pours {
                warnings.push(notes::FULL_CANNOT_MIX.to_owned());
            }
        }
        answers.push(Shown::quantity(labels::FUEL_TO_ADD, to_add, set));
        Shown::quantity(labels::STABILIZER_TO_ADD, stabilizer, set)
    };
    if let Some(reckoned) = reckoned {
        answers.push(Shown::quantity(labels::FUEL_LEFT, reckoned, set));
    } else if facts::given(from, facts::SINCE_FULL.id()) {
        warnings.push(words::TANK_COUNTS.to_owned());
    }
    if let Ok(filled) = &filled {
        if let Some((most, _)) = &filled.most {
            answers.push(Shown::at_most(labels::MOST_FILL, Ok(most.clone()), set));
        }
        if let (Some(season), Some(age)) = (&season, age) {
            if season.ride().is_none() {
                note.push_str(if note.is_empty() { "" } else { " · " });
                note.push_str(notes::IN_TWELVE_MONTHS);
            }
            answers.push(Shown::count(labels::FUEL_AGE, age.days, set));
        }
        storage::water(from, filled, season.as_ref(), set, &mut answers);
    }
    let mut blanks =
        vec![facts::TANK_VOLUME.id(), facts::FUEL_IN_TANK.id(), facts::STABILIZER_LABEL.id()];
    if dose::asks_measures(from) {
        blanks.push(facts::LABEL_MEASURES.id());
    }
    blanks.extend([facts::FILL_TO.id(), facts::ALREADY_TREATED.id()]);
    let mut more = vec![facts::SINCE_FULL.id()];
    if facts::given(from, facts::SINCE_FULL.id()) {
        more.push(facts::CONSUMPTION.id());
    }
    more.extend([
        facts::HIGHEST_DOSE.id(),
        facts::WARMEST_FUEL.id(),
        facts::FILL_TEMPERATURE.id(),
        facts::FUEL_BOUGHT.id(),
        facts::FUEL_TYPE.id(),
    ]);
    Panel { note, blanks, more, answers, warnings, cautions: cautions::FUEL, ..Panel::of(head) }
}
