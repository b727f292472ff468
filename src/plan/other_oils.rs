//! The oils besides the engine's: fill, plug's torque and age of each.

use super::{Panel, season::judged_on};
use crate::entry::text::joined;
use crate::facts::{self, Fact, Facts, Rough};
use crate::oil::{self, OtherOil};
use crate::season::age;
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, choices, labels, upkeep as notes};
use chrono::NaiveDate;
use uom::si::f64::{Torque, Volume};

/// One of them with its facts.
struct Kind {
    oil: OtherOil,
    name: &'static str,
    fill: &'static Fact<Volume>,
    plug: Option<&'static Fact<Rough<Torque>>>,
    changed: &'static Fact<NaiveDate>,
}

const fn kind(
    oil: OtherOil,
    name: &'static str,
    fill: &'static Fact<Volume>,
    plug: Option<&'static Fact<Rough<Torque>>>,
    changed: &'static Fact<NaiveDate>,
) -> Kind {
    Kind { oil, name, fill, plug, changed }
}

use facts::{
    FINAL_DRIVE_OIL, FINAL_DRIVE_OIL_CHANGED, FINAL_DRIVE_PLUG, FORK_OIL, FORK_OIL_CHANGED,
    FORK_PLUG, GEARBOX_OIL, GEARBOX_OIL_CHANGED, GEARBOX_PLUG, PRIMARY_OIL, PRIMARY_OIL_CHANGED,
    PRIMARY_PLUG, TWO_STROKE_OIL, TWO_STROKE_OIL_CHANGED,
};

static KINDS: [Kind; 5] = [
    kind(
        OtherOil::FinalDrive,
        choices::FINAL_DRIVE,
        &FINAL_DRIVE_OIL,
        Some(&FINAL_DRIVE_PLUG),
        &FINAL_DRIVE_OIL_CHANGED,
    ),
    kind(
        OtherOil::Gearbox,
        choices::GEARBOX,
        &GEARBOX_OIL,
        Some(&GEARBOX_PLUG),
        &GEARBOX_OIL_CHANGED,
    ),
    kind(
        OtherOil::Primary,
        choices::PRIMARY,
        &PRIMARY_OIL,
        Some(&PRIMARY_PLUG),
        &PRIMARY_OIL_CHANGED,
    ),
    kind(OtherOil::Fork, choices::FORK, &FORK_OIL, Some(&FORK_PLUG), &FORK_OIL_CHANGED),
    kind(OtherOil::TwoStroke, choices::TWO_STROKE, &TWO_STROKE_OIL, None, &TWO_STROKE_OIL_CHANGED),
];

/// The calculator of the other oils.
pub fn other_oils(from: &dyn Facts, set: UnitSet) -> Panel {
    let mut blanks = vec![facts::OTHER_OILS.id()];
    let there = facts::OTHER_OILS.of(from).and_then(|there| {
        if there.contains(&OtherOil::None) && there.len() > 1 {
            return Err(facts::OTHER_OILS.not_together(notes::NONE_AND_OTHERS));
        }
        Ok(there)
    });
    let there = match there {
        Ok(there) => there,
        Err(lacks) => {
            let head = Shown::lacking(labels::OTHER_OILS, lacks);
            return Panel { blanks, cautions: cautions::OTHER_OILS, ..Panel::of(head) };
        }
    };
    let on = judged_on(from);
    let (mut names, mut steps, mut more, mut asides) =
        (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for it in KINDS.iter().filter(|it| there.contains(&it.oil)) {
        names.push(it.name);
        blanks.extend([it.fill.id(), it.changed.id()]);
        let mut what = it.name.to_owned();
        if it.oil == OtherOil::Fork {
            what = notes::each_leg(&what);
        }
        if let Some(plug) = it.plug {
            more.push(plug.id());
            // As typed: of a range no middle is to be set.
            if let Ok(Some(_)) = plug.maybe(from) {
                let torque = facts::as_read(&plug.about, &from.entry(plug.id()));
                what = notes::plug(&what, &torque);
            }
        }
        if let Ok(Some(changed)) = it.changed.maybe(from) {
            match on.as_ref().map(|on| age::age(changed, *on)) {
                Ok(Some(age)) => {
                    what = notes::aged(&what, &show::rounded(Measure::Age, age.value, set));
                }
                Ok(None) => {
                    let late = it.changed.not_together(notes::CHANGED_LATER);
                    asides.push(Shown::lacking(it.name, late));
                }
                Err(_) => what = notes::ageless(&what),
            }
        }
        let fill = it.fill.of(from).map(oil::other_fill);
        steps.push((what, Shown::quantity(labels::OIL_NEEDED, fill, set)));
    }
    let (head, note) = if names.is_empty() {
        (choices::NO_OTHER_OIL.to_owned(), String::new())
    } else {
        (joined(&names, ", "), notes::BY_MANUALS_INTERVAL.to_owned())
    };
    Panel {
        note,
        blanks,
        more,
        stated: vec![facts::RIDE_DATE.id()],
        steps,
        asides,
        cautions: if names.is_empty() { &[] } else { cautions::OTHER_OILS },
        ..Panel::of(Shown::words(labels::OTHER_OILS, head))
    }
}
