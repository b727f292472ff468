//! The last run: treated fuel through, oil warm.

use super::Panel;
use crate::facts::{self, Bowls, Facts, FuelSupply, Rough, Told, all3, both};
use crate::fuel::{self, FuelError, RunThrough, Supply};
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::{cautions, fuel as words, labels, notes};
use uom::si::f64::Volume;

/// The last run's calculator.
pub fn last_run(from: &dyn Facts, set: UnitSet) -> Panel {
    let carburetor = matches!(facts::FUEL_SUPPLY.known(from), Some(FuelSupply::Carburetor));
    let told = run_through(from);
    let (drawn, distance) = match told {
        Ok(RunThrough { drawn, distance }) => (Ok(drawn), Ok(distance)),
        Err(lacks) => (Err(lacks.clone()), Err(lacks)),
    };
    let mut answers = vec![Shown::quantity(labels::FUEL_TO_DRAW, drawn, set)];
    let mut more = Vec::new();
    let mut cautions = if carburetor { cautions::LAST_RUN_BOWLS } else { cautions::LAST_RUN };
    let mut note = if carburetor { notes::RIDE_THEN_BOWLS } else { notes::RIDE_NEVER_IDLE };
    if carburetor {
        let tap = facts::FUEL_TAP.known(from);
        let bowls = facts::BOWLS.known(from);
        if bowls == Some(Bowls::Full) {
            note = words::RIDE_LEAVE_FULL;
            cautions = cautions::LAST_RUN;
        }
        answers.push(Shown::words(labels::TAP_AND_BOWLS, words::tap_and_bowls(tap, bowls)));
        more.extend([facts::FUEL_TAP.id(), facts::BOWLS.id()]);
    }
    let mut blanks = vec![facts::FUEL_SUPPLY.id(), facts::LINE_VOLUME.id()];
    if carburetor {
        blanks.push(facts::BOWLS_VOLUME.id());
    }
    blanks.push(facts::CONSUMPTION.id());
    Panel {
        note: note.to_owned(),
        blanks,
        more,
        answers,
        cautions,
        ..Panel::of(Shown::quantity(labels::RUN_THROUGH, distance, set))
    }
}

fn run_through(from: &dyn Facts) -> Told<RunThrough> {
    let supply = facts::FUEL_SUPPLY.of(from);
    let bowls = match supply {
        Ok(FuelSupply::Carburetor) => facts::BOWLS_VOLUME.of(from).map(Some),
        _ => Ok(None),
    };
    let ((supply, line, consumption), bowls) =
        both(all3(supply, facts::LINE_VOLUME.of(from), facts::CONSUMPTION.of(from)), bowls)?;
    // The most that may lie between tank and engine: too far a ride does no harm, too short a one leaves old fuel.
    let most = |it: Rough<Volume>| it.bounds.map_or(it.value, |[_, high]| high);
    let supply = match (supply, bowls) {
        (FuelSupply::Carburetor, Some(bowls)) => {
            Supply::Carburetor { line: most(line), bowls: most(bowls) }
        }
        _ => Supply::Injection { line: most(line) },
    };
    let consumption = consumption.bounds.unwrap_or([consumption.value; 2]);
    fuel::run_through(supply, consumption).map_err(|why| match why {
        FuelError::Line => facts::LINE_VOLUME.not_together(why),
        FuelError::Bowls => facts::BOWLS_VOLUME.not_together(why),
        _ => facts::CONSUMPTION.not_together(why),
    })
}
