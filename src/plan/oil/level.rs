//! The level after the run, and what heat does to it.

use crate::facts::{self, Facts, Id, LevelRead, Told, Warm, all3, both};
use crate::oil::{self, OilError};
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::{labels, oil as words};
use uom::si::f64::Volume;

/// Blanks about the level that few need.
pub const MORE: [Id; 7] = [
    facts::LEVEL_READ_AT.id(),
    facts::LEVEL_ENGINE.id(),
    facts::LEVEL_STAND.id(),
    facts::LEVEL_MINUTES.id(),
    facts::CHECK_TEMPERATURE.id(),
    facts::POUR_TEMPERATURE.id(),
    facts::OIL_DENSITY.id(),
];

/// What to add or take out, and how to look.
pub fn level(from: &dyn Facts, set: UnitSet, answers: &mut Vec<Shown>, warnings: &mut Vec<String>) {
    if facts::given(from, facts::LEVEL_READS.id()) {
        let reads = facts::LEVEL_READS.of(from);
        // What harms is told whatever else is known.
        let mut label = labels::ADD_BY_LEVEL;
        if let Ok(it) = &reads {
            if oil::over_full(it.value) {
                label = labels::TAKE_OUT;
                warnings.push(words::OVER_THE_MARK.to_owned());
            } else if oil::under_low(it.value, it.bounds) {
                warnings.push(words::UNDER_THE_MARK.to_owned());
            }
        }
        let told = both(reads, facts::BETWEEN_MARKS.of(from)).and_then(|(reads, between)| {
            oil::by_level(reads.value, reads.bounds, between).map_err(|why| match why {
                OilError::Between => facts::BETWEEN_MARKS.not_together(why),
                _ => facts::LEVEL_READS.not_together(why),
            })
        });
        answers.push(Shown::quantity(label, told, set));
    }
    // What of these cannot be read is said beside its own blank.
    let at = facts::LEVEL_READ_AT.known(from);
    let warm = facts::LEVEL_ENGINE.known(from).map(|Warm(it)| it);
    let stand = facts::LEVEL_STAND.known(from);
    let minutes = facts::LEVEL_MINUTES.known(from);
    let temperature = facts::CHECK_TEMPERATURE.known(from);
    let how = words::how_to_look(at, warm, stand, minutes);
    if !how.is_empty() {
        answers.push(Shown::words(labels::LEVEL_CHECK, how));
    }
    if warm == Some(false) {
        if at == Some(LevelRead::OilTank) {
            warnings.push(words::DRY_SUMP_COLD.to_owned());
        }
        if oil::still_warm(minutes, temperature) {
            warnings.push(words::NOT_COLD.to_owned());
        }
    }
}

/// Whether the oil is in a tank of its own.
pub fn dry_sump(from: &dyn Facts) -> bool {
    facts::LEVEL_READ_AT.known(from) == Some(LevelRead::OilTank)
}

/// How much higher or lower the same oil stands when it is read warmer or colder than it was poured.
pub fn heat(fill: Told<Volume>, from: &dyn Facts, set: UnitSet) -> Option<Shown> {
    if !facts::given(from, facts::CHECK_TEMPERATURE.id()) {
        return None;
    }
    let read = both(facts::CHECK_TEMPERATURE.of(from), facts::POUR_TEMPERATURE.of(from));
    let told = all3(fill, read, facts::OIL_DENSITY.maybe(from));
    let told = told.and_then(|(fill, (read, poured), density)| {
        oil::heat_growth(fill, poured, read, density)
            .map_err(|why| facts::CHECK_TEMPERATURE.not_together(why))
    });
    let lower = told.as_ref().is_ok_and(|it| it.law == &oil::COLD_SHRINKING);
    let label = if lower { labels::COLD_SHRINKING } else { labels::HEAT_GROWTH };
    Some(Shown::quantity(label, told, set))
}
