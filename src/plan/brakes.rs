//! Brake and clutch fluid: when it is due, how old it is, what mixes with it.

use super::{Panel, season::judged_on};
use crate::brake::{self, Clutch, Fluid, Late, Mixing};
use crate::facts::{self, Fact, Facts, Lacks, Told, both};
use crate::season::age;
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::{cautions, labels, upkeep as notes};
use chrono::NaiveDate;

/// The calculator of brake and clutch fluid.
pub fn brakes(from: &dyn Facts, set: UnitSet) -> Panel {
    let brake = facts::BRAKE_FLUID.of(from);
    let clutch = facts::CLUTCH_FLUID.maybe(from).map(|it| match it {
        Some(Clutch::Hydraulic(fluid)) => Some(fluid),
        _ => None,
    });
    let mut blanks =
        vec![facts::BRAKE_FLUID.id(), facts::BRAKE_FLUID_CHANGED.id(), facts::CLUTCH_FLUID.id()];
    let mut warnings = Vec::new();
    let ([head, age], late) = FRONT_AND_REAR.judged(from, brake.clone(), set, &mut warnings);
    let mut answers = vec![age];
    match clutch.clone() {
        Ok(Some(fluid)) => {
            blanks.push(facts::CLUTCH_FLUID_CHANGED.id());
            answers.extend(CLUTCH.judged(from, Ok(fluid), set, &mut warnings).0);
        }
        Ok(None) => {}
        Err(lacks) => answers.push(Shown::lacking(labels::CLUTCH_CHANGE_BY, lacks)),
    }
    // Fluid past its day has more water in it than the test's.
    if late == Late::No {
        let wet = brake.as_ref().ok().and_then(|it| it.wet_boiling());
        answers.extend(wet.map(|it| Shown::quantity(labels::BOILS_WET, Ok(it), set)));
    }
    let shelf = facts::FLUID_ON_SHELF.maybe(from);
    let mut never = false;
    for (label, fluid) in [
        (labels::SHELF_IN_BRAKE, brake.as_ref().ok().copied()),
        (labels::SHELF_IN_CLUTCH, clutch.ok().flatten()),
    ] {
        if let (Ok(Some(shelf)), Some(fluid)) = (&shelf, fluid) {
            let mixing = fluid.with(*shelf);
            never |= mixing == Mixing::Never;
            answers.push(Shown::words(label, notes::mixing(mixing)));
        }
    }
    match shelf {
        Err(lacks) => answers.push(Shown::lacking(labels::SHELF_IN_BRAKE, lacks)),
        Ok(_) => warnings.extend(never.then(|| notes::WRONG_FLUID.to_owned())),
    }
    Panel {
        note: brake.map_or("", notes::never_with).to_owned(),
        blanks,
        more: vec![facts::FLUID_ON_SHELF.id()],
        stated: vec![facts::RIDE_DATE.id()],
        answers,
        warnings,
        cautions: cautions::BRAKES,
        ..Panel::of(head)
    }
}

/// One circuit with its facts and the labels of its answers.
struct Circuit {
    which: &'static str,
    changed: &'static Fact<NaiveDate>,
    by: &'static str,
    age: &'static str,
}

static FRONT_AND_REAR: Circuit = Circuit {
    which: facts::BRAKE_FLUID.about.label,
    changed: &facts::BRAKE_FLUID_CHANGED,
    by: labels::CHANGE_BY,
    age: labels::FLUID_AGE,
};
static CLUTCH: Circuit = Circuit {
    which: facts::CLUTCH_FLUID.about.label,
    changed: &facts::CLUTCH_FLUID_CHANGED,
    by: labels::CLUTCH_CHANGE_BY,
    age: labels::CLUTCH_FLUID_AGE,
};

impl Circuit {
    /// When its fluid is due and how old it is, against the calendar; and how late that is.
    fn judged(
        &self,
        from: &dyn Facts,
        fluid: Told<Fluid>,
        set: UnitSet,
        warnings: &mut Vec<String>,
    ) -> ([Shown; 2], Late) {
        let on = judged_on(from);
        let mut changed = self.changed.of(from);
        if matches!((&changed, &on), (Ok(changed), Ok(on)) if changed > on) {
            changed = Err(self.changed.not_together(notes::CHANGED_LATER));
        }
        let by = match fluid {
            // No day is asked for where no interval is known.
            Ok(fluid) if !fluid.is_glycol() => Ok(None),
            fluid => both(fluid, changed.clone()).map(|(fluid, it)| brake::change_by(fluid, it)),
        };
        let late = match (&by, &on) {
            (Ok(Some(by)), Ok(on)) => brake::late(by.value, *on, facts::PARK_DATE.known(from)),
            _ => Late::No,
        };
        warnings.extend(notes::fluid_due(self.which, late));
        let age = both(changed, on)
            .and_then(|(changed, on)| age::age(changed, on).ok_or_else(Lacks::none));
        let by = Shown::date(self.by, by, notes::BY_THE_MANUAL, set);
        ([by, Shown::quantity(self.age, age, set)], late)
    }
}
