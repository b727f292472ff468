//! What the bottle's label promises, against the coldest start and the clutch.

use crate::facts::{self, Facts, Id};
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::{labels, oil as words};

/// Blanks about the label that few need.
pub const MORE: [Id; 4] = [
    facts::OIL_GRADE.id(),
    facts::COLDEST_START.id(),
    facts::JASO_CLASS.id(),
    facts::WET_CLUTCH.id(),
];

/// Grade and class, as far as they were given.
pub fn label(from: &dyn Facts, set: UnitSet, answers: &mut Vec<Shown>, warnings: &mut Vec<String>) {
    match facts::OIL_GRADE.maybe(from) {
        Ok(None) => {}
        Ok(Some(grade)) => match grade.cold_limits() {
            None => answers.push(Shown::words(labels::CRANKS_TO, words::NO_WINTER_GRADE)),
            Some([cranks, pumps]) => {
                match facts::COLDEST_START.maybe(from) {
                    Ok(Some(start)) if start < pumps.value => {
                        warnings.push(words::TOO_COLD_TO_PUMP.to_owned());
                    }
                    Ok(Some(start)) if start < cranks.value => {
                        warnings.push(words::TOO_COLD_TO_CRANK.to_owned());
                    }
                    _ => {}
                }
                answers.push(Shown::quantity(labels::CRANKS_TO, Ok(cranks), set));
                answers.push(Shown::quantity(labels::PUMPS_TO, Ok(pumps), set));
            }
        },
        Err(lacks) => answers.push(Shown::lacking(labels::CRANKS_TO, lacks)),
    }
    let class = facts::JASO_CLASS.maybe(from).ok().flatten();
    let wet = facts::WET_CLUTCH.maybe(from).ok().flatten();
    let said = match (class, wet) {
        (None, _) => return,
        (Some(_), Some(false)) => words::DRY_CLUTCH,
        (Some(class), wet) => {
            let (said, care) = match class.suits_wet_clutch() {
                Some(true) => (words::FOR_WET_CLUTCH, None),
                Some(false) => (words::NOT_FOR_WET_CLUTCH, Some(words::MB_SLIPS)),
                None => (words::CLASS_UNKNOWN, Some(words::NO_CLASS)),
            };
            warnings.extend(care.filter(|_| wet == Some(true)).map(str::to_owned));
            said
        }
    };
    answers.push(Shown::words(labels::CLUTCH, said));
}
