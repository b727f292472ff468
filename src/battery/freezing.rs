//! How much cold the acid still bears: the less charge, the more water in it.

use super::{Edges, FAST, Forecast, Parameters, Roughly, SLOW, TYPICAL, curve};
use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, term};
use chrono::NaiveDate;
use uom::si::{
    f64::{Ratio, TemperatureInterval, ThermodynamicTemperature},
    ratio::ratio,
    temperature_interval::kelvin,
    thermodynamic_temperature::degree_celsius,
};

/// Freezing point of the acid.
pub static FREEZING_POINT: Law = Law {
    formula: "Tf = Tf(SG); SG = SG(s)",
    gives: Measure::Temperature,
    source: source::FREEZING,
    holds: "lead-acid. A hydrometer reading is better than a charge; AGM and gel SG are inferred from their voltage",
};

/// Margin to freezing on the worst night.
pub static FREEZE_MARGIN: Law = Law {
    formula: "margin = min over the nights of (Tn − Tf)",
    gives: Measure::TemperatureStep,
    source: source::FREEZING,
    holds: "the battery as cold as the night. The coldest night is taken to fall on the coldest days of the season, other \
        nights as much warmer as their days are. Act under 5 K (9 °F); at 0 and below it freezes",
};

/// Specific gravity at 26.7 °C and freezing point in °C.
/// Source: the manuals named in [`FREEZING_POINT`]; 1.050 from a vehicle maker's off-season page; 1.100 drawn between.
pub(crate) const FREEZES_AT: &[(f64, f64)] = &[
    (1.000, 0.0),
    (1.050, -2.8),
    (1.100, -7.2),
    (1.120, -9.4),
    (1.150, -15.0),
    (1.200, -26.7),
    (1.225, -37.2),
    (1.250, -52.2),
    (1.265, -59.4),
    (1.280, -67.8),
];

/// Specific gravity of a flat battery: a draw keeps thinning the acid after "0 %". Assumed.
const FLAT: f64 = 1.050;

/// The margin to freezing over a season.
#[derive(Debug, Clone, PartialEq)]
pub struct FreezeMargin {
    /// Least margin; bounds by the fast and the slow edge.
    pub margin: Answer<TemperatureInterval>,
    /// Night of the least margin, on the fast edge.
    pub night: NaiveDate,
    /// First night with less than 5 K of margin on the fast edge: to act before it.
    pub near: Option<NaiveDate>,
    /// First night without any margin on the fast edge: from then on it may freeze.
    pub may_freeze: Option<NaiveDate>,
    /// First night without any margin on the slow edge: from then on it does.
    pub freezes: Option<NaiveDate>,
}

impl FreezeMargin {
    /// The day to act by: the earliest of the three, however sure the later ones are.
    pub fn act_by(&self) -> Option<NaiveDate> {
        self.near.or(self.may_freeze).or(self.freezes)
    }
}

/// Less margin than this is too little, K. Common practice, no source.
pub const NEAR: f64 = 5.0;

/// Freezing point of acid of a corrected specific gravity, as read on a hydrometer.
pub fn acid_freezes_at(gravity: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(curve::at(FREEZES_AT, gravity))
}

impl Parameters {
    /// Freezing point at a charge; none for LiFePO4, which does not freeze where bikes stand.
    pub fn freezes_at(&self, charge: Ratio) -> Option<Answer<ThermodynamicTemperature>> {
        let celsius = self.freezes_at_celsius(charge.get::<ratio>())?;
        let gravity = self.gravity_at(charge.get::<ratio>())?;
        let terms = vec![
            term("s", "charge", Measure::Share, charge),
            term("SG", "specific gravity", Measure::Gravity, Ratio::new::<ratio>(gravity)),
        ];
        let value = ThermodynamicTemperature::new::<degree_celsius>(celsius);
        Some(Answer::exact(value, &FREEZING_POINT, terms))
    }

    /// Freezing point at a charge, °C.
    pub(crate) fn freezes_at_celsius(&self, charge: f64) -> Option<f64> {
        Some(curve::at(FREEZES_AT, self.gravity_at(charge)?))
    }

    /// Specific gravity at a charge, at 26.7 °C.
    fn gravity_at(&self, charge: f64) -> Option<f64> {
        let table = self.gravity?;
        Some(if charge <= 0.0 { FLAT } else { curve::at(table, charge) })
    }
}

impl Forecast {
    /// Least margin between the night's temperature and the freezing point, for a coldest night to expect where the
    /// battery stands; the fast edge has the coldest that it may be. None for LiFePO4, and where no night is stored.
    pub fn freeze_margin(
        &self,
        coldest_night: Roughly<ThermodynamicTemperature>,
    ) -> Option<FreezeMargin> {
        let margins = self.margins(&self.days, coldest_night)?;
        let mut least = [(f64::INFINITY, 0); 3];
        let (mut near, mut may_freeze, mut freezes) = (None, None, None);
        for (night, margins) in margins.iter().enumerate() {
            let first = |found: &mut Option<NaiveDate>, so: bool| {
                if so && found.is_none() {
                    *found = Some(self.season.day(night));
                }
            };
            first(&mut near, margins[FAST] < NEAR);
            first(&mut may_freeze, margins[FAST] <= 0.0);
            first(&mut freezes, margins[SLOW] <= 0.0);
            for (least, margin) in least.iter_mut().zip(margins) {
                if *margin < least.0 {
                    *least = (*margin, night);
                }
            }
        }
        let kelvins = |edge: usize| TemperatureInterval::new::<kelvin>(least[edge].0);
        let ends = [kelvins(FAST), kelvins(SLOW)];
        let mut terms = self.terms();
        terms.insert(0, term("Tn", "coldest night", Measure::Temperature, coldest_night.typical));
        let margin = Answer::within(kelvins(TYPICAL), ends, &FREEZE_MARGIN, terms);
        Some(FreezeMargin {
            margin,
            night: self.season.day(least[FAST].1),
            near,
            may_freeze,
            freezes,
        })
    }

    /// Least margin on the nights from a day on, K, at a charge that was read on it: of the fast edge. None where nothing
    /// freezes or no night is to come.
    pub fn margin_from(
        &self,
        day: NaiveDate,
        charge: Roughly<Ratio>,
        coldest_night: Roughly<ThermodynamicTemperature>,
    ) -> Option<f64> {
        let nights = usize::try_from((day - self.season.park()).num_days()).ok()?;
        let charge = [charge.high, charge.typical, charge.low].map(|it| it.get::<ratio>());
        let margins = self.margins(&vec![charge; self.days.len()], coldest_night)?;
        margins.iter().skip(nights).map(|it| it[FAST]).reduce(f64::min)
    }

    /// Whether a charge is near freezing, or frozen, on the first night. Never for LiFePO4.
    pub fn parked_frozen(
        &self,
        charge: Ratio,
        coldest_night: Roughly<ThermodynamicTemperature>,
    ) -> bool {
        let freezes = self.battery.parameters.freezes_at_celsius(charge.get::<ratio>());
        self.nears(Some(coldest_night))(0, freezes)
    }

    /// Whether acid that freezes at so many °C would be near freezing on a night, of the coldest that it may be. Never where
    /// no coldest night is known or nothing freezes.
    pub(crate) fn nears(
        &self,
        coldest_night: Option<Roughly<ThermodynamicTemperature>>,
    ) -> impl Fn(usize, Option<f64>) -> bool {
        let coldest_day = self.celsius.iter().copied().reduce(f64::min).unwrap_or_default();
        let colder = coldest_night.map(|it| coldest_day - it.low.get::<degree_celsius>());
        move |night, freezes| {
            let air = self.celsius.get(night).copied().zip(colder);
            air.zip(freezes).is_some_and(|((air, colder), at)| air - colder - at < NEAR)
        }
    }

    /// Margin of every night by edge, K, with so much charge at the start of each day. None for LiFePO4, and where no
    /// night is stored.
    pub fn margins(
        &self,
        days: &[Edges],
        coldest_night: Roughly<ThermodynamicTemperature>,
    ) -> Option<Vec<Edges>> {
        let parameters = &self.battery.parameters;
        parameters.gravity?;
        let coldest_day = self.celsius.iter().copied().reduce(f64::min)?;
        let Roughly { low, typical, high } = coldest_night;
        let colder = [high, typical, low].map(|it| coldest_day - it.get::<degree_celsius>());
        // The charge at the end of the night is the lower one, except on a day to charge.
        let nights = self.celsius.iter().zip(days.windows(2));
        let mut margins = Vec::with_capacity(self.celsius.len());
        for (celsius, around) in nights {
            let mut night = [0.0; 3];
            for (edge, (margin, colder)) in night.iter_mut().zip(colder).enumerate() {
                let least = around.iter().map(|it| it[edge]).fold(1.0, f64::min);
                *margin = celsius - colder - parameters.freezes_at_celsius(least)?;
            }
            margins.push(night);
        }
        Some(margins)
    }
}
