//! Resting voltage and charge, either way.

use super::{Chemistry, Parameters, Roughly, curve};
use crate::digits::fixed;
use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, term};
use std::fmt;
use uom::si::{
    electric_potential::volt,
    f64::{ElectricPotential, Ratio, ThermodynamicTemperature, Time},
    ratio::ratio,
    thermodynamic_temperature::degree_celsius,
    time::hour,
};

/// Resting voltage from the charge.
pub static RESTING_VOLTAGE: Law = Law {
    formula: "V = V(s) + ΔV(T)",
    gives: Measure::Voltage,
    source: source::RESTING_VOLTAGES,
    holds: "12 V battery with every cell sound, off the charger and the road for a night. Bounds hold a meter and spread of \
        ±0.05 V (LiFePO4 ±0.06 V)",
};

/// Charge from a resting voltage.
pub static CHARGE_FROM_VOLTAGE: Law = Law {
    formula: "V(s) = V − ΔV(T)",
    gives: Measure::Share,
    source: source::RESTING_VOLTAGES,
    holds: RESTING_VOLTAGE.holds,
};

/// Charge to recharge below, from the manual's voltage.
pub static THRESHOLD_FROM_VOLTAGE: Law = Law {
    formula: "V(s) = V",
    gives: Measure::Share,
    source: source::MANUAL_VOLTAGE,
    holds: RESTING_VOLTAGE.holds,
};

/// Charge to recharge below, as the owner typed it.
pub static THRESHOLD_TYPED: Law =
    Law { formula: "s", gives: Measure::Share, source: source::OWNER, holds: "this battery" };

/// Charge to recharge below where the manual gives none: lead-acid.
pub static THRESHOLD_LEAD_ACID: Law = Law {
    formula: "s = 75 %",
    gives: Measure::Share,
    source: source::LEAD_ACID_THRESHOLD,
    holds: "lead-acid; the manual’s own voltage comes first",
};

/// Charge to recharge below where the manual gives none: LiFePO4.
pub static THRESHOLD_LIFEPO4: Law = Law {
    formula: "s = 40 %",
    gives: Measure::Share,
    source: source::LITHIUM_THRESHOLD,
    holds: "LiFePO4; the manual’s own voltage comes first",
};

/// What theory gives of the published cold shift: about −0.05 V where −0.134 V is published, at −17.8 °C.
const SHIFT_BY_THEORY: f64 = 0.05 / 0.134;
/// LiFePO4 between these voltages may hold anything from 30 to 90 %: 0.22 V spans 60 % of the charge.
const PLATEAU: [f64; 2] = [13.05, 13.30];
/// Charges that the plateau stretches over.
const PLATEAU_CHARGE: [f64; 2] = [0.30, 0.90];
/// At or above this a charger is at work, V: lowest published float voltage (flooded, 25 °C).
const CHARGER_LEAD_ACID: f64 = 13.2;
/// Likewise for LiFePO4: published voltage of maintenance chargers, an installation manual, section 6.4.
const CHARGER_LIFEPO4: f64 = 14.2;
/// Above a full battery's table voltage by more than this a reading is surface charge, V: 12.9 V of an AGM is believed.
/// Source: the same notice, and the meter's own ±0.05 V (common practice, no source).
const SURFACE: f64 = 0.15;
/// Charge that a reading above the table's full voltage still leaves possible.
/// Source: US Army PS Magazine, TB 43-PS-665, April 2008, p. 14: 12.9 V (AGM) is 95 to 100 %.
pub(crate) const ABOVE_FULL: f64 = 0.95;

/// How much of the surface charge a rest has taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rest {
    /// The reading says nothing.
    TooShort,
    /// It may read too high.
    Short,
    /// It reads the charge.
    Enough,
}

/// Judges the time since the last ride or charge: 3 h at least, 8 h for all of it. Common practice, no source.
pub fn rested(time: Time) -> Rest {
    match time.get::<hour>() {
        it if it >= 8.0 => Rest::Enough,
        it if it >= 3.0 => Rest::Short,
        _ => Rest::TooShort,
    }
}

/// What a resting voltage says about the charge.
#[derive(Debug, Clone, PartialEq)]
pub enum ChargeRead {
    /// Lead-acid: a charge with its bounds.
    Number(Answer<Ratio>),
    /// LiFePO4: only the range that it lies in; its voltage hardly changes over most of it.
    Range {
        /// Least charge.
        low: Ratio,
        /// Most charge.
        high: Ratio,
        /// Where it comes from.
        law: &'static Law,
    },
}

impl ChargeRead {
    /// As the forecast takes it; the middle of a range stands for its typical edge, without being claimed.
    pub fn roughly(&self) -> Roughly<Ratio> {
        match self {
            Self::Number(answer) => {
                let [low, high] = answer.bounds.unwrap_or([answer.value; 2]);
                Roughly { low, typical: answer.value, high }
            }
            Self::Range { low, high, .. } => {
                Roughly { low: *low, typical: (*low + *high) / 2.0, high: *high }
            }
        }
    }
}

/// Why a voltage was refused.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum VoltageError {
    /// Nobody reads a resting voltage as high as a charger's.
    Charging {
        /// Voltage to stay under, V.
        below: f64,
    },
    /// Below nothing, or not a number.
    NotAVoltage,
    /// A voltage to charge below that no resting battery of this chemistry has.
    NotAThreshold {
        /// Voltage of an empty battery, V.
        empty: f64,
        /// Voltage of a full battery, V.
        full: f64,
    },
}

impl fmt::Display for VoltageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Charging { below } => write!(
                f,
                "resting voltage has to be under {} V; take the charger off, let it stand overnight and read again",
                fixed(*below, 1)
            ),
            Self::NotAVoltage => f.write_str("resting voltage has to be 0 V or more"),
            Self::NotAThreshold { empty, full } => {
                write!(
                    f,
                    "voltage to charge below has to be between {} and {} V",
                    fixed(*empty, 2),
                    fixed(*full, 2)
                )
            }
        }
    }
}

impl std::error::Error for VoltageError {}

impl Parameters {
    /// Resting voltage at a charge and a temperature of the battery.
    pub fn resting_voltage(
        &self,
        charge: Roughly<Ratio>,
        temperature: ThermodynamicTemperature,
    ) -> Answer<ElectricPotential> {
        let celsius = temperature.get::<degree_celsius>();
        let at = |charge: Ratio| curve::at(self.resting, charge.get::<ratio>());
        let [shift_low, shift_high] = self.shift_bounds(celsius);
        let shift = curve::at(self.shift, celsius);
        let value = at(charge.typical) + shift;
        let low = at(charge.low) + shift_low - self.spread;
        let high = at(charge.high) + shift_high + self.spread;
        let terms = vec![
            term("s", "charge", Measure::Share, charge.typical),
            term("T", "temperature of the battery", Measure::Temperature, temperature),
            term("V(s)", "voltage at 26.7 °C", Measure::Voltage, volts(at(charge.typical))),
            term("ΔV(T)", "shift by temperature", Measure::Voltage, volts(shift)),
        ];
        Answer::within(volts(value), [low, high].map(volts), &RESTING_VOLTAGE, terms)
    }

    /// Charge from a voltage read at rest, at a temperature of the battery. Bounds hold the meter, the spread between
    /// batteries and the doubt about the shift. A reading above a full battery's counts as 95 to 100 %.
    ///
    /// # Errors
    /// Below 0 V, and where a charger must be at work: 13.2 V (lead-acid) or 14.2 V (LiFePO4) and above.
    pub fn charge_from_voltage(
        &self,
        reading: ElectricPotential,
        temperature: ThermodynamicTemperature,
    ) -> Result<ChargeRead, VoltageError> {
        let (reading_v, celsius) = (reading.get::<volt>(), temperature.get::<degree_celsius>());
        let lithium = self.chemistry == Chemistry::LiFePO4;
        let below = if lithium { CHARGER_LIFEPO4 } else { CHARGER_LEAD_ACID };
        if reading_v >= below {
            return Err(VoltageError::Charging { below });
        }
        if reading_v.is_nan() || reading_v < 0.0 {
            return Err(VoltageError::NotAVoltage);
        }
        let [shift_low, shift_high] = self.shift_bounds(celsius);
        let ends = [reading_v - shift_high - self.spread, reading_v - shift_low + self.spread];
        let charge = |corrected: f64| curve::inverse(self.resting, corrected);
        let [low, high] = ends.map(charge);
        if lithium {
            let touches = ends[1] >= PLATEAU[0] && ends[0] <= PLATEAU[1];
            let low = if touches { low.min(PLATEAU_CHARGE[0]) } else { low };
            let high = if touches { high.max(PLATEAU_CHARGE[1]) } else { high };
            let [low, high] = [low, high].map(Ratio::new::<ratio>);
            return Ok(ChargeRead::Range { low, high, law: &CHARGE_FROM_VOLTAGE });
        }
        let shift = curve::at(self.shift, celsius);
        let value = charge(reading_v - shift);
        let terms = vec![
            term("V", "resting voltage", Measure::Voltage, reading),
            term("T", "temperature of the battery", Measure::Temperature, temperature),
            term("ΔV(T)", "shift by temperature", Measure::Voltage, volts(shift)),
        ];
        let bounds = [low.min(ABOVE_FULL), high].map(Ratio::new::<ratio>);
        let value = Ratio::new::<ratio>(value);
        Ok(ChargeRead::Number(Answer::within(value, bounds, &CHARGE_FROM_VOLTAGE, terms)))
    }

    /// Whether a reading is so far above a full battery's that it has not rested: surface charge.
    pub fn is_surface_charge(&self, reading: ElectricPotential) -> bool {
        let full = curve::at(self.resting, 1.0);
        self.chemistry.is_lead_acid() && reading.get::<volt>() > full + SURFACE
    }

    /// Charge to recharge below: from the manual's "charge below … V", else the chemistry's own.
    ///
    /// Where the manual's voltage is that of a full battery by the table (12.8 V on an AGM), every loss is below it: such
    /// a battery is meant to stay on a maintainer.
    ///
    /// # Errors
    /// A voltage that no battery of this chemistry has at rest.
    pub fn threshold(
        &self,
        manual: Option<ElectricPotential>,
    ) -> Result<Answer<Ratio>, VoltageError> {
        let Some(below) = manual else {
            let lead = self.chemistry.is_lead_acid();
            let law = if lead { &THRESHOLD_LEAD_ACID } else { &THRESHOLD_LIFEPO4 };
            return Ok(Answer::exact(Ratio::new::<ratio>(self.threshold), law, vec![]));
        };
        let [empty, full] = [0.0, 1.0].map(|it| curve::at(self.resting, it));
        let below_v = below.get::<volt>();
        if !(empty..=full).contains(&below_v) {
            return Err(VoltageError::NotAThreshold { empty, full });
        }
        let charge = |v: f64| Ratio::new::<ratio>(curve::inverse(self.resting, v));
        let bounds = [below_v - self.spread, below_v + self.spread].map(charge);
        let terms = vec![term("V", "charge below", Measure::Voltage, below)];
        Ok(Answer::within(charge(below_v), bounds, &THRESHOLD_FROM_VOLTAGE, terms))
    }

    /// What the meter shows at the charge to recharge below, at a temperature of the battery. By the higher of the two
    /// shifts: where that is wrong it is charged too early, which harms nothing.
    pub fn meter_line(
        &self,
        threshold: Ratio,
        temperature: ThermodynamicTemperature,
    ) -> ElectricPotential {
        let [_, shift] = self.shift_bounds(temperature.get::<degree_celsius>());
        volts(curve::at(self.resting, threshold.get::<ratio>()) + shift)
    }

    /// Lowest and highest shift of the resting voltage, V: as published and as theory has it.
    pub(crate) fn shift_bounds(&self, celsius: f64) -> [f64; 2] {
        let published = curve::at(self.shift, celsius);
        let theory = published * SHIFT_BY_THEORY;
        [published.min(theory), published.max(theory)]
    }
}

fn volts(it: f64) -> ElectricPotential {
    ElectricPotential::new::<volt>(it)
}
