//! The battery as parked: capacity, charge and key-off draw, each as roughly as it is known.

use super::voltage::ABOVE_FULL;
use super::{Edges, Parameters};
use std::fmt;
use uom::si::{
    electric_charge::ampere_hour,
    electric_current::{ampere, milliampere},
    electric_potential::volt,
    f64::{ElectricCharge, ElectricCurrent, ElectricPotential, Energy, Ratio},
    ratio::ratio,
};

/// A thing known roughly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Roughly<T> {
    /// Lowest that it may be.
    pub low: T,
    /// Most likely.
    pub typical: T,
    /// Highest that it may be.
    pub high: T,
}

impl<T: Copy> Roughly<T> {
    /// A thing known exactly: measured, or given in a worked example.
    pub fn exactly(it: T) -> Self {
        Self { low: it, typical: it, high: it }
    }
}

/// Least real capacity of a used battery, as a share of the label. Common practice, no source.
const LEAST_OF_LABEL: f64 = 0.70;
/// Points by which a typed charge may be off. Common practice, no source.
const CHARGE_POINTS: f64 = 0.05;
/// Shares of "about so many mA" that it may really be: about 1 mA is 0.5 to 1.5 mA. Common practice, no source.
const DRAW: [f64; 2] = [0.5, 1.5];
/// Draw of a motorcycle that nobody measured, mA: clock and memories of the engine's computer.
/// Source: common practice, no source; makers' limits are 1 to 1.5 mA.
const UNMEASURED_DRAW: [f64; 3] = [0.5, 1.0, 3.0];
/// Charge of a battery that was parked as it came from the road. Common practice, no source.
const AS_RIDDEN: [f64; 3] = [0.75, 0.90, 1.0];
/// Nominal voltage of four LiFePO4 cells, V. Open: stated on 12.8 V pack specifications.
const LITHIUM_NOMINAL: f64 = 12.8;
/// Draw above which something is wrong with the bike, or with the decimal point, A. Source: repair-trade pages.
const DOUBTFUL_DRAW: f64 = 0.050;

/// Real capacity of a battery with this on its label: 70 to 100 %, taken as the label until it is known better.
pub fn labelled(label: ElectricCharge) -> Roughly<ElectricCharge> {
    Roughly { low: label * LEAST_OF_LABEL, typical: label, high: label }
}

/// Charge that a LiFePO4 battery of so much energy holds, at 12.8 V nominal. Its label's "Ah" is often that of the lead
/// battery that it replaces, so watt hours are asked for.
///
/// ```
/// use torpor::battery::lithium;
/// use uom::si::{electric_charge::ampere_hour, energy::watt_hour, f64::Energy};
/// assert_eq!(lithium(Energy::new::<watt_hour>(51.2)).get::<ampere_hour>(), 4.0);
/// ```
pub fn lithium(label: Energy) -> ElectricCharge {
    label / ElectricPotential::new::<volt>(LITHIUM_NOMINAL)
}

/// A charge as typed: good to ±5 points, between empty and full.
pub fn charged_about(charge: Ratio) -> Roughly<Ratio> {
    let typical = charge.get::<ratio>();
    let [low, high] = [typical - CHARGE_POINTS, typical + CHARGE_POINTS]
        .map(|it| Ratio::new::<ratio>(it.max(0.0).min(1.0)));
    Roughly { low, typical: charge, high }
}

/// A key-off draw that is known about: half to one and a half times that.
pub fn drawing_about(draw: ElectricCurrent) -> Roughly<ElectricCurrent> {
    Roughly { low: draw * DRAW[0], typical: draw, high: draw * DRAW[1] }
}

/// A key-off draw that nobody measured: 0.5 to 3 mA, most likely 1 mA.
pub fn draw_not_measured() -> Roughly<ElectricCurrent> {
    let [low, typical, high] = UNMEASURED_DRAW.map(ElectricCurrent::new::<milliampere>);
    Roughly { low, typical, high }
}

/// The charge of a battery that was neither charged nor measured before it was parked: 75 to 100 %, most likely 90 %.
pub fn charged_by_riding() -> Roughly<Ratio> {
    let [low, typical, high] = AS_RIDDEN.map(Ratio::new::<ratio>);
    Roughly { low, typical, high }
}

/// A battery as parked. Invariant: each edge has capacity, a charge from 0 to 1 and a draw of 0 or more.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Battery {
    pub(crate) parameters: Parameters,
    /// Ah by edge.
    pub(crate) capacity: Edges,
    /// Share of the capacity by edge.
    pub(crate) charge: Edges,
    /// A by edge.
    pub(crate) draw: Edges,
    /// Whether a maintainer holds it full.
    pub(crate) maintained: bool,
}

/// Why a battery was refused.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BatteryError {
    /// Capacity of nothing or less.
    NoCapacity,
    /// Charge below empty or above full.
    ChargeOutOfRange,
    /// A key-off draw that charges.
    NegativeDraw,
}

impl fmt::Display for BatteryError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoCapacity => "capacity has to be more than 0 Ah, lowest figure first",
            Self::ChargeOutOfRange => "charge has to be between 0 and 100 %, lowest figure first",
            Self::NegativeDraw => "key-off draw has to be 0 mA or more, lowest figure first",
        })
    }
}

impl std::error::Error for BatteryError {}

impl Battery {
    /// A battery from what is known about it: [`labelled`], [`charged_about`] or
    /// [`Parameters::charge_from_voltage`], [`drawing_about`].
    ///
    /// # Errors
    /// A capacity that is not above 0, a charge outside 0 to 100 %, a draw below 0, or ends in the wrong order.
    pub fn new(
        parameters: Parameters,
        capacity: Roughly<ElectricCharge>,
        charge: Roughly<Ratio>,
        draw: Roughly<ElectricCurrent>,
    ) -> Result<Self, BatteryError> {
        let rising = |[low, typical, high]: [f64; 3]| low <= typical && typical <= high;
        let capacity = [capacity.low, capacity.typical, capacity.high];
        let capacity = capacity.map(|it| it.get::<ampere_hour>());
        if !(rising(capacity) && capacity[0] > 0.0 && capacity[2].is_finite()) {
            return Err(BatteryError::NoCapacity);
        }
        let charge = [charge.low, charge.typical, charge.high].map(|it| it.get::<ratio>());
        if !(rising(charge) && charge[0] >= 0.0 && charge[2] <= 1.0) {
            return Err(BatteryError::ChargeOutOfRange);
        }
        let draw = [draw.low, draw.typical, draw.high].map(|it| it.get::<ampere>());
        if !(rising(draw) && draw[0] >= 0.0 && draw[2].is_finite()) {
            return Err(BatteryError::NegativeDraw);
        }
        // The slow edge has the largest and fullest battery with the least draw; the fast edge the reverse.
        let turned = |[low, typical, high]: [f64; 3]| [high, typical, low];
        let (capacity, charge) = (turned(capacity), turned(charge));
        Ok(Self { parameters, capacity, charge, draw, maintained: false })
    }

    /// The same battery on a maintainer: full, and neither itself nor the bike takes anything from it.
    pub fn on_a_maintainer(self) -> Self {
        let parameters = Parameters { lost: [0.0; 3], ..self.parameters };
        let charge = [1.0, 1.0, ABOVE_FULL];
        Self { parameters, charge, draw: [0.0; 3], maintained: true, ..self }
    }

    /// The same battery with its negative lead off.
    pub fn with_lead_off(self) -> Self {
        Self { draw: [0.0; 3], ..self }
    }

    /// The same battery with another charge.
    pub fn charged(self, charge: Roughly<Ratio>) -> Self {
        let share = |it: Ratio| it.get::<ratio>().max(0.0).min(1.0);
        Self { charge: [charge.high, charge.typical, charge.low].map(share), ..self }
    }

    /// Whether a maintainer holds it full.
    pub fn is_maintained(&self) -> bool {
        self.maintained
    }

    /// What its chemistry is known to do.
    pub fn parameters(&self) -> &Parameters {
        &self.parameters
    }

    /// Whether the draw is so large (over 50 mA) that the bike has a fault or the figure a misplaced point.
    pub fn draw_is_doubtful(&self) -> bool {
        self.draw[super::TYPICAL] > DOUBTFUL_DRAW
    }

    /// What it really holds, by edge.
    pub(crate) fn holds(&self, edge: usize) -> ElectricCharge {
        ElectricCharge::new::<ampere_hour>(self.capacity[edge])
    }

    /// Share of the capacity that the key-off draw takes in a day, by edge.
    pub(crate) fn drawn_in_a_day(&self) -> Edges {
        std::array::from_fn(|edge| self.draw[edge] * 24.0 / self.capacity[edge])
    }
}
