//! What an oil's label promises: SAE J300 in the cold, JASO T903 for a clutch that runs in the oil.

use super::OilError;
use crate::source;
use crate::{
    units::Measure,
    working::{Amount, Answer, Law, Term},
};
use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};

/// Coldest start that a winter grade is made for.
pub const CRANKS_TO: Law = Law {
    formula: "C = n − 35 °C",
    gives: Measure::Temperature,
    source: source::SAE_J300,
    holds: "fresh oil of the printed grade; how the engine starts depends on battery and fuel too",
};

/// Coldest oil that the pump is promised to draw.
pub const PUMPS_TO: Law = Law {
    formula: "P = n − 40 °C",
    gives: Measure::Temperature,
    source: source::SAE_J300,
    holds: "fresh oil of the printed grade; colder than that it may not reach the bearings",
};

/// Numbers before the W, and hot grades. Source: SAE J300, January 2015.
const WINTER: [u8; 6] = [0, 5, 10, 15, 20, 25];
const HOT: [u8; 8] = [8, 12, 16, 20, 30, 40, 50, 60];

/// How far under the number before the W the limits lie, kelvins. Source: SAE J300, January 2015.
const CRANKS_BELOW: f64 = 35.0;
const PUMPS_BELOW: f64 = 40.0;

/// The lightest hot grade that is taken without a W: lighter ones are sold behind one (common practice, no source).
const ALONE_FROM: u8 = 20;

/// Colder than this, °C, an oil without a W is warned of. Common practice, no source.
const ALONE_TO: f64 = 0.0;

/// An SAE grade as printed: "10W-40", "SAE 30", "5W".
///
/// ```
/// use torpor::oil::Grade;
/// let grade = Grade::read("SAE 10w-40").ok();
/// assert_eq!(grade.map(|it| (it.winter, it.hot)), Some((Some(10), Some(40))));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Grade {
    /// Before the W: 0, 5, 10, 15, 20 or 25. A single grade without W has none.
    pub winter: Option<u8>,
    /// Hot: 8, 12, 16, 20, 30, 40, 50 or 60; without a winter grade 20 or more.
    pub hot: Option<u8>,
}

impl Grade {
    /// Reads a grade: capitals and spaces do not matter, nor "SAE" before it, nor whether a hyphen, a slash or nothing
    /// stands behind the W.
    ///
    /// # Errors
    /// [`OilError::Grade`] for anything that SAE J300 has no grade for, such as a gear oil's 75W-90.
    pub fn read(text: &str) -> Result<Self, OilError> {
        let text = text.trim().to_ascii_uppercase();
        // One sign at most: "10W--40" is a slip.
        let behind = |text: &str| {
            let text = text.trim_start();
            text.strip_prefix(['-', '–', '−', '/']).unwrap_or(text).trim().to_owned()
        };
        let text = text.strip_prefix("SAE").map_or_else(|| text.clone(), behind);
        let one_of = |all: &[u8], text: &str| {
            all.iter().copied().find(|it| it.to_string() == text).ok_or(OilError::Grade)
        };
        let Some((winter, hot)) = text.split_once('W') else {
            let hot = one_of(&HOT, &text)?;
            return if hot < ALONE_FROM {
                Err(OilError::Grade)
            } else {
                Ok(Self { winter: None, hot: Some(hot) })
            };
        };
        let winter = Some(one_of(&WINTER, winter.trim_end())?);
        let hot = if hot.is_empty() { None } else { Some(one_of(&HOT, &behind(hot))?) };
        Ok(Self { winter, hot })
    }

    /// What the grade does not promise for a `start` this cold.
    pub fn too_cold(&self, start: ThermodynamicTemperature) -> Option<TooCold> {
        // A reading loses its last digit on the way through kelvin; the limits themselves are promised.
        let start = start.get::<degree_celsius>() + 1e-9;
        let (cranks, pumps) = match self.winter {
            None => (ALONE_TO, ALONE_TO),
            Some(number) => (f64::from(number) - CRANKS_BELOW, f64::from(number) - PUMPS_BELOW),
        };
        if start < pumps {
            Some(TooCold::ToPump)
        } else {
            (start < cranks).then_some(TooCold::ToCrank)
        }
    }

    /// Coldest temperatures at which it is promised to let the engine crank and to be pumped; `None` for a single grade
    /// without W, which promises nothing in the cold.
    pub fn cold_limits(&self) -> Option<[Answer<ThermodynamicTemperature>; 2]> {
        let number = f64::from(self.winter?);
        let limit = |below, law| {
            let name = "number before the W";
            let terms = vec![Term { symbol: "n", name, amount: Amount::Number(number) }];
            Answer::exact(
                ThermodynamicTemperature::new::<degree_celsius>(number - below),
                law,
                terms,
            )
        };
        Some([limit(CRANKS_BELOW, &CRANKS_TO), limit(PUMPS_BELOW, &PUMPS_TO)])
    }
}

/// What a grade does not promise for a cold start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TooCold {
    /// Oil at the bearings.
    ToPump,
    /// A brisk starter.
    ToCrank,
}

/// The JASO T903 class on a bottle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Jaso {
    /// For wet clutches.
    Ma,
    /// The same, lower friction.
    Ma1,
    /// The same, higher friction.
    Ma2,
    /// Low friction: scooters and others whose clutch is dry.
    Mb,
    /// None is printed.
    None,
}

impl Jaso {
    /// Whether it is made for a clutch that runs in the oil; `None` where the bottle says nothing. The class decides: the
    /// editions of the standard differ in their numbers.
    pub fn suits_wet_clutch(self) -> Option<bool> {
        match self {
            Jaso::Ma | Jaso::Ma1 | Jaso::Ma2 => Some(true),
            Jaso::Mb => Some(false),
            Jaso::None => None,
        }
    }
}
