//! What a fastener got from a setting that was made already: for the moment after a mistake.

use super::Asked;
use super::serve::serve;
use crate::entry::text::joined;
use crate::facts::{self, Facts, Lacks, all3, both};
use crate::plan::{Held, Panel};
use crate::show::{self, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{cautions, labels, notes};
use crate::working::Quantity;
use uom::si::f64::Ratio;

/// The calculator of what was done already.
pub fn reverse(from: &dyn Facts, drawer: &[Held], set: UnitSet) -> Panel {
    let asked = Asked::of(from);
    let served = serve(&asked, drawer);
    let Some(held) = drawer.get(served.at) else {
        return Panel::of(Shown::lacking(labels::IT_GOT, Lacks::none()));
    };
    let adapter = asked.adapter.clone().and_then(|it| it.on(&held.length));
    let got = all3(facts::WAS_SET_TO.of(from), adapter, held.wrench.clone())
        .map(|(set_to, adapter, wrench)| wrench.fastener_gets(set_to, adapter.as_ref()));
    let mut note = Vec::new();
    let mut warnings = Vec::new();
    if drawer.len() > 1 {
        note.push(notes::got_with(&held.name));
    }
    if let (Ok(set_to), Ok(wrench)) = (facts::WAS_SET_TO.of(from), &held.wrench) {
        warnings.extend(wrench.off_scale(set_to).map(|_| notes::SET_OFF_SCALE.to_owned()));
        warnings.extend(wrench.caution(set_to).map(|it| it.to_string()));
    }
    if let Ok((figure, got)) = both(asked.figure.clone(), got.clone()) {
        let off: Ratio = figure.missed_by(got.value).value;
        let by = show::rounded(Measure::Share, Ratio::of_base(off.base().abs()), set);
        note.push(notes::off_figure(&by, off.base() > 0.0));
        match figure.missed(&got) {
            [false, false] if figure.range().is_some() => note.push(notes::INSIDE.to_owned()),
            [false, false] => {}
            [true, false] => warnings.push(notes::GOT_LESS.to_owned()),
            [false, true] => warnings.push(notes::GOT_MORE.to_owned()),
            [true, true] => warnings.push(notes::GOT_EITHER.to_owned()),
        }
    }
    Panel {
        note: joined(&note, " · "),
        blanks: vec![facts::WAS_SET_TO.id()],
        warnings,
        cautions: cautions::AFTER_A_MISTAKE,
        ..Panel::of(Shown::quantity_in(labels::IT_GOT, got, set, asked.unit))
    }
}
