//! Coolant: where it freezes, and what to exchange.

use super::Panel;
use crate::coolant::{self, CoolantError, Cooling, Premix, READY_MIXED, WEAK};
use crate::facts::{self, Facts, Rough, Told, all3, both};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::{Answer, Quantity};
use uom::si::f64::{Ratio, ThermodynamicTemperature, Volume};

/// The coolant line's calculator.
pub fn coolant(from: &dyn Facts, set: UnitSet) -> Panel {
    let cooling = facts::COOLING.of(from);
    if cooling == Ok(Cooling::Air) {
        return Panel {
            note: notes::AIR_COOLED.to_owned(),
            blanks: vec![facts::COOLING.id()],
            ..Panel::of(Shown::words(labels::FREEZES_AT, notes::NO_COOLANT))
        };
    }
    let now = facts::CONCENTRATION.of(from);
    let freezes = both(cooling.map(drop), freezes(from, &now)).map(|(_, freezes)| freezes);
    let night = facts::COLDEST_NIGHT.of(from);
    let known = match &freezes {
        Ok(Some(freezes)) => Ok(freezes.clone()),
        Ok(None) => Err(Vec::new()),
        Err(lacks) => Err(lacks.clone()),
    };
    let margin = both(known, night).map(|(freezes, night)| coolant::margin(&freezes, night));
    let mut note = Vec::new();
    let mut warnings = Vec::new();
    if let Ok(margin) = &margin {
        let by = |it| show::rounded(Measure::TemperatureStep, it, set);
        let [least, most] = margin.bounds.unwrap_or([margin.value; 2]);
        note.push(notes::night_margin(&by(margin.value)));
        if most.base() <= 0.0 {
            warnings.push(notes::COOLANT_FREEZES.to_owned());
        } else if least.base() <= 0.0 {
            warnings.push(notes::COOLANT_MAY_FREEZE.to_owned());
        }
    }
    if matches!(freezes, Ok(None)) {
        warnings.push(notes::TOO_MUCH_GLYCOL.to_owned());
    }
    let wanted = facts::WANTED_CONCENTRATION.maybe(from).ok().flatten();
    if now.as_ref().map(|it| it.value).ok().into_iter().chain(wanted).any(|it| it.base() < WEAK) {
        warnings.push(notes::WEAK_INHIBITOR.to_owned());
    }
    let gathered = gathered(from);
    let exchanged = gathered.clone().and_then(|(volumes, now, bounds, shares)| {
        where_it_gets_there(coolant::exchange(volumes, now, bounds, shares))
    });
    let mixed = gathered.and_then(|(volumes, now, bounds, shares)| {
        where_it_gets_there(coolant::premix(volumes, now, bounds, shares))
    });
    if exchanged.is_ok() || mixed.is_ok() {
        if facts::COOLANT_BOTTLE.maybe(from) == Ok(None) {
            note.push(notes::READY_MIXED.to_owned());
        }
        if facts::COOLANT_DRAINS.maybe(from) == Ok(None) {
            note.push(notes::DRAINS_UNKNOWN.to_owned());
        }
    }
    let exchanged = match exchanged {
        Ok(None) => Shown::words(labels::DRAIN_AND_REFILL, CoolantError::NotWithBottle.to_string()),
        Ok(Some(it)) => Shown::quantity(labels::DRAIN_AND_REFILL, Ok(it), set),
        Err(lacks) => Shown::lacking(labels::DRAIN_AND_REFILL, lacks),
    };
    let [bottle, water] = match mixed {
        Ok(Some(Premix { bottle, water })) => {
            [(labels::FROM_THE_BOTTLE, bottle), (labels::WATER, water)]
                .map(|(label, it)| Shown::quantity(label, Ok(it), set))
        }
        Ok(None) => [labels::FROM_THE_BOTTLE, labels::WATER]
            .map(|it| Shown::words(it, notes::NOT_ALL_OF_IT)),
        Err(lacks) => {
            [labels::FROM_THE_BOTTLE, labels::WATER].map(|it| Shown::lacking(it, lacks.clone()))
        }
    };
    let then = both(facts::GLYCOL.of(from), facts::WANTED_CONCENTRATION.of(from)).and_then(
        |(glycol, wanted)| {
            coolant::freezes_at(glycol, wanted, [wanted; 2])
                .map_err(|why| facts::WANTED_CONCENTRATION.not_together(why))
        },
    );
    let margin = if matches!(freezes, Ok(None)) {
        Shown::words(labels::FREEZE_MARGIN, notes::PAST_SIXTY)
    } else {
        Shown::quantity(labels::FREEZE_MARGIN, margin, set)
    };
    let head = match freezes {
        Ok(None) => Shown::words(labels::FREEZES_AT, notes::PAST_SIXTY),
        Ok(Some(it)) => Shown::quantity(labels::FREEZES_AT, Ok(it), set),
        Err(lacks) => Shown::lacking(labels::FREEZES_AT, lacks),
    };
    Panel {
        note: note.join(" · "),
        blanks: vec![
            facts::COOLING.id(),
            facts::GLYCOL.id(),
            facts::CONCENTRATION.id(),
            facts::WANTED_CONCENTRATION.id(),
            facts::COOLANT_CIRCUIT.id(),
        ],
        more: vec![facts::COOLANT_DRAINS.id(), facts::COOLANT_BOTTLE.id()],
        stated: vec![facts::COLDEST_NIGHT.id()],
        answers: vec![
            margin,
            exchanged,
            bottle,
            water,
            Shown::quantity(labels::THEN_FREEZES_AT, then, set),
        ],
        warnings,
        cautions: cautions::COOLANT,
        ..Panel::of(head)
    }
}

/// Where it freezes; none past 60 %, where nothing is told.
fn freezes(
    from: &dyn Facts,
    now: &Told<Rough<Ratio>>,
) -> Told<Option<Answer<ThermodynamicTemperature>>> {
    let (glycol, now) = both(facts::GLYCOL.of(from), now.clone())?;
    let bounds = now.bounds.unwrap_or([now.value; 2]);
    match coolant::freezes_at(glycol, now.value, bounds) {
        Ok(answer) => Ok(Some(answer)),
        Err(CoolantError::OverSixty) => Ok(None),
        Err(why) => Err(facts::CONCENTRATION.not_together(why)),
    }
}

/// Circuit and what runs out of it, concentration now with its bounds, the wanted one and the bottle's.
type Gathered = ([Volume; 2], Ratio, [Ratio; 2], [Ratio; 2]);

fn gathered(from: &dyn Facts) -> Told<Gathered> {
    let ((now, wanted, circuit), (drains, bottle)) = both(
        all3(
            facts::CONCENTRATION.of(from),
            facts::WANTED_CONCENTRATION.of(from),
            facts::COOLANT_CIRCUIT.of(from),
        ),
        both(facts::COOLANT_DRAINS.maybe(from), facts::COOLANT_BOTTLE.maybe(from)),
    )?;
    let bottle = bottle.unwrap_or(Ratio::of_base(READY_MIXED));
    let bounds = now.bounds.unwrap_or([now.value; 2]);
    Ok(([circuit, drains.unwrap_or(circuit)], now.value, bounds, [wanted, bottle]))
}

fn refused(why: CoolantError) -> Vec<facts::Lack> {
    match why {
        CoolantError::Circuit => facts::COOLANT_CIRCUIT.not_together(why),
        CoolantError::Drains => facts::COOLANT_DRAINS.not_together(why),
        CoolantError::Bottle => facts::COOLANT_BOTTLE.not_together(why),
        CoolantError::Concentration => facts::CONCENTRATION.not_together(why),
        _ => facts::WANTED_CONCENTRATION.not_together(why),
    }
}

/// None where the bottle does not get there so.
fn where_it_gets_there<T>(told: Result<T, CoolantError>) -> Told<Option<T>> {
    match told {
        Ok(answer) => Ok(Some(answer)),
        Err(CoolantError::NotWithBottle) => Ok(None),
        Err(why) => Err(refused(why)),
    }
}
