//! Fill up and stabilize.

use super::Panel;
use crate::facts::{self, Facts, Level, Told, all3, both};
use crate::fuel::{self, FuelError, Label};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::{Answer, Quantity};
use uom::si::f64::{Ratio, Volume};

/// How full where the owner does not say. Common practice, no source; the blank says so.
const USUAL_LEVEL: f64 = 0.95;

/// Fuel that stands longer is drained, not treated, days. Common practice, no source.
const LONGEST_TREATED: i64 = 366;

/// The fuel line's calculator.
pub fn fuel(from: &dyn Facts, set: UnitSet) -> Panel {
    let to_add = to_add(from);
    let stabilizer = stabilizer(from);
    let note = match (&to_add, &stabilizer) {
        (Ok(fuel), Ok(_)) if fuel.value.base() > 0.0 => {
            notes::then_fuel_on_top(&show::rounded(Measure::Tank, fuel.value, set))
        }
        (Ok(_), Ok(_)) => notes::FULL_ALREADY.to_owned(),
        _ => String::new(),
    };
    let mut warnings = Vec::new();
    if let (Ok(add), Ok((tank, inside, level))) = (&to_add, levels(from)) {
        if inside > level {
            warnings.push(notes::overfull(&show::rounded(Measure::Tank, inside - level, set)));
        } else if level > tank * USUAL_LEVEL {
            warnings.push(notes::NO_ROOM_TO_GROW.to_owned());
        }
        if add.value.base() == 0.0 {
            warnings.push(notes::FULL_CANNOT_MIX.to_owned());
        }
    }
    if super::season_of(from).is_ok_and(|it| it.days() > LONGEST_TREATED) {
        warnings.push(notes::TOO_LONG_TO_TREAT.to_owned());
    }
    Panel {
        note,
        blanks: vec![
            facts::TANK_VOLUME.id(),
            facts::FUEL_IN_TANK.id(),
            facts::STABILIZER_LABEL.id(),
            facts::FILL_TO.id(),
            facts::ALREADY_TREATED.id(),
        ],
        answers: vec![Shown::quantity(labels::FUEL_TO_ADD, to_add, set)],
        warnings,
        cautions: cautions::FUEL,
        ..Panel::of(Shown::quantity(labels::STABILIZER_TO_ADD, stabilizer, set))
    }
}

/// Tank, what is inside, and the level to fill to.
fn levels(from: &dyn Facts) -> Told<(Volume, Volume, Volume)> {
    let (tank, inside, level) = all3(
        facts::TANK_VOLUME.of(from),
        facts::FUEL_IN_TANK.of(from),
        facts::FILL_TO.maybe(from),
    )?;
    let of_tank = |level| match level {
        Level::Share(share) => tank * share,
        Level::Amount(amount) => amount,
    };
    let inside = of_tank(inside);
    let level = of_tank(level.unwrap_or(Level::Share(Ratio::of_base(USUAL_LEVEL))));
    Ok((tank, inside, level))
}

fn to_add(from: &dyn Facts) -> Told<Answer<Volume>> {
    let (tank, inside, level) = levels(from)?;
    fuel::to_add(tank, inside, level).map_err(|why| match why {
        FuelError::Tank => facts::TANK_VOLUME.not_together(why),
        FuelError::Inside | FuelError::InsideOverTank => facts::FUEL_IN_TANK.not_together(why),
        _ => facts::FILL_TO.not_together(why),
    })
}

fn stabilizer(from: &dyn Facts) -> Told<Answer<Volume>> {
    let filled = to_add(from).and_then(|_| levels(from));
    let ((_, inside, level), (dose, treated)) =
        both(filled, both(facts::STABILIZER_LABEL.of(from), facts::ALREADY_TREATED.maybe(from)))?;
    let [dose, treats] = [dose.stabilizer, dose.fuel].map(Volume::of_base);
    let label = Label::dose_per_fuel(dose, treats)
        .map_err(|why| facts::STABILIZER_LABEL.not_together(why))?;
    let last = fuel::final_volume(inside, level);
    let treated = treated.unwrap_or(Ratio::of_base(0.0));
    fuel::stabilizer(last, inside, treated, label, 1.0).map_err(|why| match why {
        FuelError::Treated => facts::ALREADY_TREATED.not_together(why),
        _ => facts::FUEL_IN_TANK.not_together(why),
    })
}
