//! Charge from a hydrometer, for a battery with filler caps.

use super::{Chemistry, Parameters, Roughly, curve};
use crate::digits::fixed;
use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, term};
use std::fmt;
use uom::si::{
    f64::{Ratio, ThermodynamicTemperature},
    ratio::ratio,
    thermodynamic_temperature::degree_celsius,
};

/// A hydrometer's reading at 26.7 °C.
pub static CORRECTED: Law = Law {
    formula: "SG = R + b · (T − 26.7 °C)",
    gives: Measure::Gravity,
    source: source::HYDROMETER,
    holds: "hydrometer marked for 26.7 °C (80 °F); b is 0.004 for 10 °F (5.6 K), 0.003 by another rule. Bounds hold both, and a \
        reading good to ±0.005",
};

/// Charge from a hydrometer.
pub static CHARGE_FROM_GRAVITY: Law = Law {
    formula: "SG(s) = R + b · (T − 26.7 °C)",
    gives: Measure::Share,
    source: source::GRAVITY_SCALES,
    holds: "acid mixed, plates covered, every cell about the same; not just after water was added",
};

/// Full charge by the scale of the battery's maker.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AcidScale {
    /// 1.265 full, 1.120 empty.
    To1265,
    /// 1.280 full, 1.130 empty.
    To1280,
}

/// Temperature that a hydrometer is marked for, °C.
const MARKED_FOR: f64 = 26.7;
/// Correction for each K: most and least published, 0.004 and 0.003 for 10 °F.
const FOR_EACH_KELVIN: [f64; 2] = [0.0036 / 5.0, 0.0027 / 5.0];
/// How far a reading may be off. Common practice, no source.
const READING: f64 = 0.005;
/// A full battery may read this much above its scale. Common practice, no source.
const OVER_FULL: f64 = 0.015;
/// Source: US Army construction-roller manual filed as TM 5-1185, tables II-III; half charged: TM 10-6140-200-14, table 1-1.
const SCALE_1280: &[(f64, f64)] =
    &[(0.0, 1.130), (0.25, 1.190), (0.50, 1.220), (0.75, 1.250), (1.0, 1.280)];

/// Why a hydrometer's reading was refused.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum GravityError {
    /// Sealed, or no acid at all.
    NoAcidToRead,
    /// Corrected, it is stronger than a full battery's acid, or water.
    OutOfScale {
        /// Of a full battery.
        full: f64,
    },
}

impl fmt::Display for GravityError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoAcidToRead => f.write_str(
                "a hydrometer needs filler caps: take the resting voltage of this battery",
            ),
            Self::OutOfScale { full } => write!(
                f,
                "specific gravity has to be between 1.000 and {} once corrected: another scale, or a slip",
                fixed(full + OVER_FULL, 3)
            ),
        }
    }
}

impl std::error::Error for GravityError {}

/// A reading corrected to 26.7 °C, for the acid's temperature.
pub fn corrected(reading: Ratio, temperature: ThermodynamicTemperature) -> Answer<Ratio> {
    let (read, above) = (reading.get::<ratio>(), temperature.get::<degree_celsius>() - MARKED_FOR);
    let [one, other] = FOR_EACH_KELVIN.map(|it| read + it * above);
    let ends = [one.min(other) - READING, one.max(other) + READING].map(Ratio::new::<ratio>);
    Answer::within(Ratio::new::<ratio>(one), ends, &CORRECTED, terms(reading, temperature))
}

fn terms(reading: Ratio, temperature: ThermodynamicTemperature) -> Vec<crate::working::Term> {
    let b = crate::working::Amount::Number(FOR_EACH_KELVIN[0]);
    vec![
        term("R", "reading", Measure::Gravity, reading),
        term("T", "temperature of the acid", Measure::Temperature, temperature),
        crate::working::Term { symbol: "b", name: "for each K", amount: b },
    ]
}

impl Chemistry {
    /// Whether a hydrometer reaches its acid.
    pub fn has_filler_caps(self) -> bool {
        self == Self::FloodedAntimony
    }
}

impl Parameters {
    /// The same with the acid of another scale.
    pub fn on_scale(self, scale: AcidScale) -> Self {
        match scale {
            AcidScale::To1265 => self,
            AcidScale::To1280 => Self { gravity: self.gravity.map(|_| SCALE_1280), ..self },
        }
    }

    /// Charge from a hydrometer's reading at a temperature of the acid. Bounds hold the reading and both rules of
    /// correction; on a bent scale the straight line between its ends, too.
    ///
    /// # Errors
    /// A battery without filler caps, and a reading that no battery of this scale has.
    pub fn charge_from_gravity(
        &self,
        reading: Ratio,
        temperature: ThermodynamicTemperature,
    ) -> Result<Answer<Ratio>, GravityError> {
        let table = self.gravity.filter(|_| self.chemistry.has_filler_caps());
        let table = table.ok_or(GravityError::NoAcidToRead)?;
        let [empty, full] = [0.0, 1.0].map(|it| curve::at(table, it));
        let corrected = corrected(reading, temperature);
        let gravity = corrected.value.get::<ratio>();
        if !(1.0..=full + OVER_FULL).contains(&gravity) {
            return Err(GravityError::OutOfScale { full });
        }
        let [low, high] = corrected.bounds.unwrap_or([corrected.value; 2]);
        let line = |it: f64| ((it - empty) / (full - empty)).max(0.0).min(1.0);
        let of = |it: Ratio| (curve::inverse(table, it.get::<ratio>()), line(it.get::<ratio>()));
        let (low, high) = (of(low), of(high));
        let charge = curve::inverse(table, gravity);
        let ends = [low.0.min(low.1), high.0.max(high.1)].map(Ratio::new::<ratio>);
        let terms = terms(reading, temperature);
        Ok(Answer::within(Ratio::new::<ratio>(charge), ends, &CHARGE_FROM_GRAVITY, terms))
    }
}

/// As the forecast takes it.
pub fn roughly(answer: &Answer<Ratio>) -> Roughly<Ratio> {
    let [low, high] = answer.bounds.unwrap_or([answer.value; 2]);
    Roughly { low, typical: answer.value, high }
}
