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
    let age = season.as_ref().map(|it| storage::age(from, it));
    let too_old = matches!(&age, Some(Ok(it)) if it.too_old);
    let pours = matches!(&stabilizer, Ok(it) if it.value.base() > 0.0) && !too_old;
    let mut note = Vec::new();
    match (&to_add, &stabilizer) {
        _ if too_old => {}
        (Ok(fuel), Ok(_)) if fuel.value.base() > 0.0 => {
            note.push(notes::then_fuel_on_top(&show::rounded(Measure::Tank, fuel.value, set)));
        }
        (Ok(_), Ok(_)) => {
            note.push((if pours { notes::FULL_ALREADY } else { words::ALL_TREATED }).to_owned());
        }
        _ => {}
    }
    // The worst first.
    let mut warnings = Vec::new();
    let mut answers = Vec::new();
    if too_old {
        warnings.push(notes::TOO_LONG_TO_TREAT.to_owned());
    } else {
        answers.push(Shown::quantity(labels::FUEL_TO_ADD, to_add, set));
    }
    if let Ok(filled) = &filled {
        level::warnings(from, filled, set, &mut warnings);
    }
    if let Some(Ok(age)) = &age {
        age.warnings(dose::wholly_treated(from), stabilizer.is_ok(), &mut warnings);
    }
    if let Ok(single) = &stabilizer
        && !too_old
    {
        dose::details(&filled, single.value, from, set, &mut answers, &mut warnings);
    }
    if let Some(reckoned) = reckoned {
        answers.push(Shown::quantity(labels::FUEL_LEFT, reckoned, set));
    } else if facts::given(from, facts::SINCE_FULL.id()) {
        warnings.push(words::TANK_COUNTS.to_owned());
    }
    if let Ok(filled) = &filled {
        if let Some(most) = &filled.most {
            answers.push(Shown::at_most(labels::MOST_FILL, Ok(most.clone()), set));
        }
        if pours && filled.to_add.value.base() == 0.0 {
            warnings.push(notes::FULL_CANNOT_MIX.to_owned());
        }
        if let Some(age) = age {
            if season.as_ref().is_some_and(|it| it.ride().is_none()) {
                note.push(notes::IN_TWELVE_MONTHS.to_owned());
            }
            answers.push(Shown::count(labels::FUEL_AGE, age.map(|it| it.days), set));
        }
        storage::water(from, filled, season.as_ref(), set, &mut answers);
    }
    let head = if too_old {
        Shown::words(labels::STABILIZER_TO_ADD, words::DRAIN_INSTEAD)
    } else {
        Shown::quantity(labels::STABILIZER_TO_ADD, stabilizer, set)
    };
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
    Panel {
        note: note.join(" · "),
        blanks,
        more,
        answers,
        warnings,
        cautions: cautions::FUEL,
        ..Panel::of(head)
    }
}
