//! What an engine uses up between two readings of the odometer.

use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, Quantity, term};
use uom::si::f64::{Area, Length, Volume};

/// Oil that went in and did not come out again, for the distance ridden.
pub const OIL_USE: Law = Law {
    formula: "u = (P + T − D) / S",
    gives: Measure::OilUse,
    source: source::OIL_USE,
    holds: "filled to the same mark each time, read the same way; all that drained was measured, the filter emptied too",
};

/// Oil used up for a distance: `poured` at a change and `topped_up` since, less what was `drained` at the end (nothing where
/// it was filled to the same mark again), over the distance `ridden`. `None` where nothing was ridden.
///
/// ```
/// use torpor::{oil, working::Quantity};
/// use uom::si::f64::{Length, Volume};
/// let [poured, topped_up, drained] = [3.0e-3, 0.5e-3, 2.9e-3].map(Volume::of_base);
/// let used = oil::consumption(poured, topped_up, drained, Length::of_base(4.0e6)).unwrap();
/// assert!((used.value.base() - 0.15e-9).abs() < 1e-18); // 0.6 L on 4,000 km: 0.15 L per 1,000 km
/// ```
pub fn consumption(
    poured: Volume,
    topped_up: Volume,
    drained: Volume,
    ridden: Length,
) -> Option<Answer<Area>> {
    if ridden.base() <= 0.0 {
        return None;
    }
    let used = poured.base() + topped_up.base() - drained.base();
    let terms = vec![
        term("P", "poured in at the change", Measure::Oil, poured),
        term("T", "topped up since", Measure::Oil, topped_up),
        term("D", "drained", Measure::Oil, drained),
        term("S", "ridden", Measure::Distance, ridden),
    ];
    Some(Answer::exact(Area::of_base(used / ridden.base()), &OIL_USE, terms))
}
