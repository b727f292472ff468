//! Water that a tank breathes in over a season, against what its fuel holds: so that nobody fills it for a wrong reason.

use super::{FuelError, positive_or_none};
use crate::maths::exp;
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Quantity, Term, term},
};
use uom::si::{
    f64::{Mass, Ratio, ThermodynamicTemperature, Volume},
    ratio::percent,
    thermodynamic_temperature::degree_celsius,
    volume::liter,
};

/// Water breathed in.
pub const WATER_BREATHED: Law = Law {
    formula: "w = N · H · (1 − n / d) · ρ",
    gives: Measure::Water,
    source: source::HUMID_AIR,
    holds: "a damp day of 10 °C and 80 %, a night of 0 °C, every night; at most: a day of 15 °C and 95 %, all the air changed every night",
};

/// Water that E10 holds.
pub const HELD_BY_E10: Law = Law {
    formula: "h = s · F",
    gives: Measure::Water,
    source: source::WATER_IN_E10,
    holds: "from a frosty night to a mild day; beyond it water and alcohol separate and sink",
};

/// Water that gasoline without ethanol holds.
pub const HELD_BY_E0: Law = Law {
    formula: "h = s · F",
    gives: Measure::Water,
    source: source::WATER_IN_E0,
    holds: "at 0 °C",
};

/// Water that gasoline without ethanol sheds on cooling.
pub const SHED: Law = Law {
    formula: "w = F · (s − c)",
    gives: Measure::Water,
    source: source::WATER_IN_E0,
    holds: "fuel that took up all it could at 20 °C, cooled to 0 °C",
};

/// A day and the night after it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// By day.
    pub day: ThermodynamicTemperature,
    /// By day, over water as weather reports have it.
    pub humidity: Ratio,
    /// By night, colder.
    pub night: ThermodynamicTemperature,
}

impl Air {
    /// So many degrees Celsius by day, percent, degrees Celsius by night.
    pub fn new(day: f64, humidity: f64, night: f64) -> Self {
        let celsius = ThermodynamicTemperature::new::<degree_celsius>;
        Self { day: celsius(day), humidity: Ratio::new::<percent>(humidity), night: celsius(night) }
    }

    /// Vapor by day, kg/m³.
    fn vapor(&self) -> f64 {
        density(over(WATER, self.day), self.day) * self.humidity.base()
    }

    /// Vapor that the night leaves in the air, kg/m³: over ice where it freezes.
    fn vapor_left(&self) -> f64 {
        let freezes = self.night.get::<degree_celsius>() < 0.0;
        density(over(if freezes { ICE } else { WATER }, self.night), self.night)
    }
}

/// An ordinary damp day, and a worst one: an open shed near the sea.
pub const DAYS: [[f64; 3]; 2] = [[10.0, 80.0, 0.0], [15.0, 95.0, 0.0]];

/// Constants of the vapor pressure over water and over ice.
const WATER: [f64; 2] = [17.62, 243.12];
const ICE: [f64; 2] = [22.46, 272.62];

/// Saturation pressure, pascals.
fn over([times, plus]: [f64; 2], at: ThermodynamicTemperature) -> f64 {
    let celsius = at.get::<degree_celsius>();
    611.2 * exp(times * celsius / (plus + celsius))
}

fn density(pressure: f64, at: ThermodynamicTemperature) -> f64 {
    pressure / (461.52 * at.base())
}

/// Water that `space` over the fuel takes in through its vent in so many `nights`: by breathing as the air in it cools on
/// a `usual` day, at most all of what a `worst` one's air holds more than its night, changed every night.
///
/// # Errors
/// [`FuelError::Space`].
pub fn breathed(
    space: Volume,
    nights: f64,
    usual: Air,
    worst: Air,
) -> Result<Answer<Mass>, FuelError> {
    if !(positive_or_none(space) && nights.is_finite() && nights >= 0.0) {
        return Err(FuelError::Space);
    }
    let Air { day, night, .. } = usual;
    let vapor = usual.vapor();
    let all = nights * space.base();
    let breathed = all * (1.0 - night.base() / day.base()).max(0.0) * vapor;
    let most = all * (worst.vapor() - worst.vapor_left()).max(0.0);
    let of = |symbol, name, number, unit| Term { symbol, name, amount: Amount::Of(number, unit) };
    let terms = vec![
        Term { symbol: "N", name: "nights", amount: Amount::Number(nights) },
        term("H", "air over the fuel", Measure::Tank, space),
        of("n", "night", night.base(), "K"),
        of("d", "day", day.base(), "K"),
        of("ρ", "water in the day’s air", vapor * 1e3, "g/m³"),
    ];
    let bounds = [breathed, if most > breathed { most } else { breathed }].map(Mass::of_base);
    Ok(Answer::within(bounds[0], bounds, &WATER_BREATHED, terms))
}

/// Water that so much E10 holds before it separates, 3 to 5 grams a liter: the lower end stands, as nights are cold.
///
/// # Errors
/// [`FuelError::Inside`].
pub fn held_by_e10(fuel: Volume) -> Result<Answer<Mass>, FuelError> {
    let held = |grams: f64| Mass::of_base(fuel.get::<liter>() * grams * 1e-3);
    let terms = held_terms(fuel, 3.0)?;
    Ok(Answer::within(held(3.0), [held(3.0), held(5.0)], &HELD_BY_E10, terms))
}

/// Water that so much gasoline without ethanol holds at 0 °C.
///
/// # Errors
/// [`FuelError::Inside`].
pub fn held_by_e0(fuel: Volume) -> Result<Answer<Mass>, FuelError> {
    let grams = dissolved(0.0);
    let terms = held_terms(fuel, grams)?;
    Ok(Answer::exact(Mass::of_base(fuel.get::<liter>() * grams * 1e-3), &HELD_BY_E0, terms))
}

fn held_terms(fuel: Volume, grams: f64) -> Result<Vec<Term>, FuelError> {
    if !positive_or_none(fuel) {
        return Err(FuelError::Inside);
    }
    let held = Term { symbol: "s", name: "water in a liter", amount: Amount::Of(grams, "g/L") };
    Ok(vec![held, term("F", "fuel in the tank", Measure::Tank, fuel)])
}

/// Water that gasoline without ethanol, saturated at one temperature, sheds when it is cooled to another; degrees Celsius.
///
/// # Errors
/// [`FuelError::Inside`].
pub fn shed(fuel: Volume, from: f64, to: f64) -> Result<Answer<Mass>, FuelError> {
    let [warm, cold] = [from, to].map(dissolved);
    let mut terms = held_terms(fuel, warm)?;
    let name = "water in a liter of cold fuel";
    terms.push(Term { symbol: "c", name, amount: Amount::Of(cold, "g/L") });
    let shed = fuel.get::<liter>() * (warm - cold).max(0.0) * 1e-3;
    Ok(Answer::exact(Mass::of_base(shed), &SHED, terms))
}

/// Grams of water in a liter (0.745 kg) of gasoline without ethanol that holds all it can.
pub fn dissolved(celsius: f64) -> f64 {
    // Hydrogen to carbon 0.155 by mass (CH1.85) and 100 g/mol: from memory.
    let ten = -(4200.0 * 0.155 + 1050.0) * (1.0 / (celsius + 273.15) - 0.0016) + 2.0;
    let mol_percent = exp(ten * std::f64::consts::LN_10);
    mol_percent / 100.0 * 18.015 / 100.0 * 745.0
}
