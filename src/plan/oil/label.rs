//! What the bottle's label promises, against the coldest start and the clutch.

use crate::facts::{self, Facts, Id};
use crate::oil::TooCold;
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

/// Grade and class, as far as they were given; what harms in any weather first.
pub fn label(from: &dyn Facts, set: UnitSet, answers: &mut Vec<Shown>, warnings: &mut Vec<String>) {
    let wet = facts::WET_CLUTCH.known(from);
    if let Ok(Some(class)) = facts::JASO_CLASS.maybe(from) {
        let (said, care) = match class.suits_wet_clutch() {
            _ if wet == Some(false) => (words::DRY_CLUTCH, None),
            Some(true) => (words::FOR_WET_CLUTCH, None),
            Some(false) => (words::NOT_FOR_WET_CLUTCH, Some(words::MB_SLIPS)),
            None => (words::CLASS_UNKNOWN, Some(words::NO_CLASS)),
        };
        warnings.extend(care.filter(|_| wet == Some(true)).map(str::to_owned));
        answers.push(Shown::words(labels::CLUTCH, said));
    }
    match facts::OIL_GRADE.maybe(from) {
        Ok(None) => {}
        Ok(Some(grade)) => {
            let start = facts::COLDEST_START.known(from);
            let care = start.and_then(|it| grade.too_cold(it)).map(|it| match it {
                TooCold::ToPump => words::TOO_COLD_TO_PUMP,
                TooCold::ToCrank => words::TOO_COLD_TO_CRANK,
            });
            warnings.extend(care.map(str::to_owned));
            match grade.cold_limits() {
                None => answers.push(Shown::words(labels::CRANKS_TO, words::NO_WINTER_GRADE)),
                Some([cranks, pumps]) => {
                    answers.push(Shown::quantity(labels::CRANKS_TO, Ok(cranks), set));
                    answers.push(Shown::quantity(labels::PUMPS_TO, Ok(pumps), set));
                }
            }
        }
        Err(lacks) => answers.push(Shown::lacking(labels::CRANKS_TO, lacks)),
    }
}
