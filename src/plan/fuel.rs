//! Fill up and stabilize.

mod dose;
mod level;
mod storage;

use super::Panel;
use crate::facts::{self, Facts};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::Quantity;

/// The fuel line's calculator.
pub fn fuel(from: &dyn Facts, set: UnitSet) -> Panel {
    let reckoned = level::reckoned(from);
    let filled = level::filled(from, &reckoned, set);
    let to_add = filled.clone().map(|it| it.to_add);
    let stabilizer = dose::stabilizer(&filled, from, 1.0);
    let note = match (&to_add, &stabilizer) {
        (Ok(fuel), Ok(_)) if fuel.value.base() > 0.0 => {
            notes::then_fuel_on_top(&show::rounded(Measure::Tank, fuel.value, set))
        }
        (Ok(_), Ok(_)) => notes::FULL_ALREADY.to_owned(),
        _ => String::new(),
    };
    let mut warnings = Vec::new();
    let season = super::season_of(from).ok();
    let mut answers = vec![Shown::quantity(labels::FUEL_TO_ADD, to_add, set)];
    if let Ok(single) = &stabilizer {
        dose::details(&filled, single.value, from, set, &mut answers, &mut warnings);
    }
    if let Some(reckoned) = reckoned {
        answers.push(Shown::quantity(labels::FUEL_LEFT, reckoned, set));
    }
    if let Ok(filled) = &filled {
        let (inside, _) = filled.inside;
        if let Some(most) = &filled.most {
            answers.push(Shown::at_most(labels::MOST_FILL, Ok(most.clone()), set));
        }
        level::warnings(from, filled, set, &mut warnings);
        if inside > filled.level {
            let over = show::rounded(Measure::Tank, inside - filled.level, set);
            warnings.push(notes::overfull(&over));
        } else if filled.most.is_none() && filled.level > filled.tank * level::USUAL_LEVEL {
            warnings.push(notes::NO_ROOM_TO_GROW.to_owned());
        }
        if filled.to_add.value.base() == 0.0 {
            warnings.push(notes::FULL_CANNOT_MIX.to_owned());
        }
        if let Some(season) = &season {
            storage::age(from, season, stabilizer.is_ok(), set, &mut answers, &mut warnings);
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
    Panel {
        note,
        blanks,
        more,
        answers,
        warnings,
        cautions: cautions::FUEL,
        ..Panel::of(Shown::quantity(labels::STABILIZER_TO_ADD, stabilizer, set))
    }
}
