//! On the charger: how long, at what voltage; and what the cold leaves for the starter.

use super::{Chemistry, FAST, Forecast, Parameters, SLOW, TYPICAL, curve};
use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, term};
use std::fmt;
use uom::si::{
    electric_charge::ampere_hour,
    electric_current::ampere,
    electric_potential::volt,
    f64::{
        ElectricCharge, ElectricCurrent, ElectricPotential, Ratio, ThermodynamicTemperature, Time,
    },
    ratio::ratio,
    thermodynamic_temperature::degree_celsius,
    time::hour,
};

/// Charging time, lead-acid.
pub static CHARGING_LEAD_ACID: Law = Law {
    formula: "t = (0.80 − s) · C / (0.95 · I) + 0.20 · C / (0.80 · min(I, C / 20 h))",
    gives: Measure::Time,
    source: source::LEAD_ACID_CHARGING,
    holds: "sound lead-acid battery above its freezing point; ±40 %. Current no more than a tenth of the capacity",
};

/// Charging time, LiFePO4.
pub static CHARGING_LIFEPO4: Law = Law {
    formula: "t = (0.95 − s) · C / (0.99 · I) + 0.05 · C / (0.495 · I)",
    gives: Measure::Time,
    source: source::LITHIUM_CHARGING,
    holds: "LiFePO4 at 0 °C or above; ±40 %. Current no more than the capacity in an hour (common practice, no source)",
};

/// How far a charging time may be off. Common practice, no source.
const CHARGING_SPREAD: f64 = 0.40;
/// LiFePO4 is not charged below this, °C. Source: 12.8 V pack specification, charging 0 to 50 °C.
pub(crate) const LITHIUM_CHARGES_FROM: f64 = 0.0;

/// Voltage of the charger, lead-acid.
pub static CHARGE_VOLTAGE: Law = Law {
    formula: "V = V25 + 6 · n · (25 °C − T)",
    gives: Measure::Voltage,
    source: source::CHARGE_VOLTAGE,
    holds: "12 V lead-acid battery; its label’s own voltage comes first. n is 3 to 5 mV for each cell and degree",
};

/// Voltage of a maintainer, lead-acid.
pub static FLOAT_VOLTAGE: Law = Law {
    formula: CHARGE_VOLTAGE.formula,
    gives: Measure::Voltage,
    source: source::FLOAT_VOLTAGE,
    holds: CHARGE_VOLTAGE.holds,
};

/// Voltage of the charger, LiFePO4.
pub static CHARGE_VOLTAGE_LIFEPO4: Law = Law {
    formula: "V = V25",
    gives: Measure::Voltage,
    source: source::LITHIUM_VOLTAGE,
    holds: "four cells at 0 °C or above, with a charger made for them; it needs no maintainer",
};

/// What the cold leaves for the starter.
pub static COLD_CRANKING: Law = Law {
    formula: "share = share(T)",
    gives: Measure::Share,
    source: source::COLD_CRANKING,
    holds: "a full, sound lead-acid battery against itself at 26.7 °C (80 °F). It is the power that the cold takes, not the \
        charge",
};

/// Change of the charging voltage, V for each cell and K below 25 °C: least and most published.
const COMPENSATION: [f64; 2] = [0.003, 0.005];
/// Cells of a 12 V lead-acid battery.
const CELLS: f64 = 6.0;
/// Temperature in °C and what is left of the starting power.
/// Source: US Army TM 5-4210-230-14&P-1, truck service manual, battery section, table 3.
const CRANKING: &[(f64, f64)] = &[(-28.8, 0.20), (-17.8, 0.40), (0.0, 0.65), (26.7, 1.00)];

/// A room that a battery is brought into to be charged. Common practice, no source.
pub fn indoors() -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(20.0)
}

/// Why no charging time is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ChargingError {
    /// LiFePO4 below 0 °C.
    TooCold,
    /// The acid is frozen.
    Frozen,
    /// A capacity or a current of nothing or less.
    NotPositive(&'static str),
}

impl fmt::Display for ChargingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooCold => {
                f.write_str("LiFePO4 has to be at 0 °C (32 °F) or above to be charged; bring it indoors")
            }
            Self::Frozen => f.write_str(
                "acid of this charge is frozen at this temperature; it has to thaw indoors first, and a bulged case is scrap",
            ),
            Self::NotPositive(what) => write!(f, "{what} has to be more than 0"),
        }
    }
}

impl std::error::Error for ChargingError {}

impl Parameters {
    /// Voltage to charge at, with the battery at a temperature.
    pub fn charge_voltage(&self, at: ThermodynamicTemperature) -> Answer<ElectricPotential> {
        match self.chemistry {
            Chemistry::LiFePO4 => {
                let ends = [14.2, 14.6].map(ElectricPotential::new::<volt>);
                let value = (ends[0] + ends[1]) / 2.0;
                let terms = vec![term("V25", "usual voltage", Measure::Voltage, value)];
                Answer::within(value, ends, &CHARGE_VOLTAGE_LIFEPO4, terms)
            }
            // Full from 14.1 V on (2.35 V a cell), never over 14.4.
            Chemistry::Agm | Chemistry::Gel => compensated([14.1, 14.4], at, &CHARGE_VOLTAGE),
            _ => compensated([14.4, 14.8], at, &CHARGE_VOLTAGE),
        }
    }

    /// Voltage to leave it on; none for LiFePO4, which needs no maintainer.
    pub fn float_voltage(&self, at: ThermodynamicTemperature) -> Option<Answer<ElectricPotential>> {
        match self.chemistry {
            Chemistry::LiFePO4 => None,
            Chemistry::Agm | Chemistry::Gel => Some(compensated([13.5, 13.8], at, &FLOAT_VOLTAGE)),
            _ => Some(compensated([13.2, 13.2], at, &FLOAT_VOLTAGE)),
        }
    }

    /// Whether it may be charged at a charge and a temperature of the battery.
    ///
    /// # Errors
    /// LiFePO4 below 0 °C, and frozen acid.
    pub fn charges_at(
        &self,
        charge: Ratio,
        at: ThermodynamicTemperature,
    ) -> Result<(), ChargingError> {
        let celsius = at.get::<degree_celsius>();
        if !self.chemistry.is_lead_acid() && celsius < LITHIUM_CHARGES_FROM {
            return Err(ChargingError::TooCold);
        }
        let freezes = self.freezes_at_celsius(charge.get::<ratio>());
        if freezes.is_some_and(|it| celsius <= it) { Err(ChargingError::Frozen) } else { Ok(()) }
    }

    /// Whether the law of the charging time holds for a current at all: not for LiFePO4 over its capacity in an hour.
    pub fn has_charging_time(&self, capacity: ElectricCharge, current: ElectricCurrent) -> bool {
        self.chemistry.is_lead_acid() || !lithium_current_is_high(capacity, current)
    }

    /// What is left of the starting power in the cold; none for LiFePO4, for which no table was found.
    pub fn cold_cranking(&self, at: ThermodynamicTemperature) -> Option<Answer<Ratio>> {
        self.chemistry.is_lead_acid().then(|| {
            let share = curve::at(CRANKING, at.get::<degree_celsius>());
            let terms = vec![term("T", "temperature of the battery", Measure::Temperature, at)];
            Answer::exact(Ratio::new::<ratio>(share), &COLD_CRANKING, terms)
        })
    }
}

/// A voltage at 25 °C, lowest and highest, at another temperature.
fn compensated(
    at_25: [f64; 2],
    at: ThermodynamicTemperature,
    law: &'static Law,
) -> Answer<ElectricPotential> {
    let below = 25.0 - at.get::<degree_celsius>();
    let [least, most] = COMPENSATION.map(|it| it * CELLS * below);
    let (middle, n) = ((at_25[0] + at_25[1]) / 2.0, (COMPENSATION[0] + COMPENSATION[1]) / 2.0);
    let volts = ElectricPotential::new::<volt>;
    let ends = [at_25[0] + least.min(most), at_25[1] + least.max(most)].map(volts);
    let terms = vec![
        term("V25", "usual voltage at 25 °C (77 °F)", Measure::Voltage, volts(middle)),
        term("n", "for each cell and degree", Measure::Voltage, volts(n)),
        term("T", "temperature of the battery", Measure::Temperature, at),
    ];
    Answer::within(volts(middle + n * CELLS * below), ends, law, terms)
}

impl Forecast {
    /// Time to charge to full on a day, from the charge that the band gives it then; at a temperature of the battery.
    ///
    /// # Errors
    /// As [`charging_time`].
    pub fn charging_time(
        &self,
        day: chrono::NaiveDate,
        current: ElectricCurrent,
        temperature: ThermodynamicTemperature,
    ) -> Result<Answer<Time>, ChargingError> {
        let index = usize::try_from((day - self.season.park()).num_days()).unwrap_or(0);
        let charge = self.days.get(index).copied().unwrap_or(self.battery.charge);
        let parameters = &self.battery.parameters;
        let time = |edge: usize| {
            let capacity = ElectricCharge::new::<ampere_hour>(self.battery.capacity[edge]);
            let charge = Ratio::new::<ratio>(charge[edge]);
            charging_time(parameters, charge, capacity, current, temperature)
        };
        let typical = time(TYPICAL)?;
        // The emptiest battery may be the smallest one: all ends are looked at.
        let ends = [time(SLOW)?, time(FAST)?].map(|it| it.bounds.unwrap_or([it.value; 2]));
        let own = typical.bounds.unwrap_or([typical.value; 2]);
        let low = ends.iter().fold(own[0], |least, it| least.min(it[0]));
        let high = ends.iter().fold(own[1], |most, it| most.max(it[1]));
        Ok(typical.bounded(Some([low, high])))
    }
}

/// Time to charge from `charge` to full with so much current, good to ±40 %.
///
/// # Errors
/// LiFePO4 below 0 °C, frozen acid, and a capacity or current that is not above 0.
pub fn charging_time(
    parameters: &Parameters,
    charge: Ratio,
    capacity: ElectricCharge,
    current: ElectricCurrent,
    temperature: ThermodynamicTemperature,
) -> Result<Answer<Time>, ChargingError> {
    let s = charge.get::<ratio>().max(0.0).min(1.0);
    let lithium = parameters.chemistry == Chemistry::LiFePO4;
    parameters.charges_at(Ratio::new::<ratio>(s), temperature)?;
    let (c, i) = (capacity.get::<ampere_hour>(), current.get::<ampere>());
    for (what, it) in [("capacity", c), ("charger current", i)] {
        (it > 0.0).then_some(()).ok_or(ChargingError::NotPositive(what))?;
    }
    let (hours, law) = if lithium {
        let slow = (1.0 - s).min(0.05) * c / (0.495 * i);
        ((0.95 - s).max(0.0) * c / (0.99 * i) + slow, &CHARGING_LIFEPO4)
    } else {
        let slow = (1.0 - s).min(0.20) * c / (0.80 * i.min(c / 20.0));
        ((0.80 - s).max(0.0) * c / (0.95 * i) + slow, &CHARGING_LEAD_ACID)
    };
    let terms = vec![
        term("s", "charge", Measure::Share, charge),
        term("C", "capacity", Measure::Charge, capacity),
        term("I", "charger current", Measure::ChargingCurrent, current),
    ];
    let ends = [1.0 - CHARGING_SPREAD, 1.0 + CHARGING_SPREAD];
    let bounds = ends.map(|it| Time::new::<hour>(hours * it));
    Ok(Answer::within(Time::new::<hour>(hours), bounds, law, terms))
}

/// Whether a charger's current is over a tenth of the capacity, which lead-acid batteries should be spared.
/// Source: a riders' association's storage note, 10 % of the Ah rating; the label's own limit comes first.
pub fn current_is_high(capacity: ElectricCharge, current: ElectricCurrent) -> bool {
    current.get::<ampere>() > capacity.get::<ampere_hour>() / 10.0
}

/// Whether a charger's current is over a LiFePO4 battery's capacity in an hour. Common practice, no source; the label's own limit
/// comes first.
pub fn lithium_current_is_high(capacity: ElectricCharge, current: ElectricCurrent) -> bool {
    current.get::<ampere>() > capacity.get::<ampere_hour>()
}
