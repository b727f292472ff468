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

/// Hot grades: number, least and (not itself taken) most viscosity at 100 °C in mm²/s, least at 150 °C and high shear in
/// mPa·s. Source: SAE J300, January 2015. Grade 40 asks for 3.7 with 15W, 20W, 25W and alone.
const HOT: [(u8, f64, f64, f64); 8] = [
    (8, 4.0, 6.1, 1.7),
    (12, 5.0, 7.1, 2.0),
    (16, 6.1, 8.2, 2.3),
    (20, 6.9, 9.3, 2.6),
    (30, 9.3, 12.5, 2.9),
    (40, 12.5, 16.3, 3.5),
    (50, 16.3, 21.9, 3.7),
    (60, 21.9, 26.1, 3.7),
];

/// The hot grade of an oil with the winter grade `winter` (none: a single grade) by its viscosities at 100 °C (mm²/s)
/// and at 150 °C with high shear (mPa·s), as a data sheet prints them; the highest where two overlap.
pub fn hot_grade(winter: Option<u8>, at_100: f64, at_150: f64) -> Option<u8> {
    let heavy = winter.is_none_or(|it| it >= 15);
    let shear = |grade: u8, least: f64| if grade == 40 && heavy { 3.7 } else { least };
    let fits = |(grade, low, high, least): &&(u8, f64, f64, f64)| {
        at_100 >= *low && at_100 < *high && at_150 >= shear(*grade, *least)
    };
    HOT.iter().rev().find(fits).map(|it| it.0)
}

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
    /// Hot: 8, 12, 16, 20, 30, 40, 50 or 60.
    pub hot: Option<u8>,
}

impl Grade {
    /// Reads a grade: capitals, spaces, hyphen or slash do not matter, nor "SAE" before it.
    ///
    /// # Errors
    /// [`OilError::Grade`] for anything that SAE J300 has no grade for, such as a gear oil's 75W-90.
    pub fn read(text: &str) -> Result<Self, OilError> {
        let text = text.trim().to_ascii_uppercase();
        let text = text.strip_prefix("SAE").unwrap_or(&text);
        let dropped = |it: &char| !it.is_whitespace() && !"-–−/.".contains(*it);
        let text: String = text.chars().filter(dropped).collect();
        let number = |text: &str| text.parse::<u8>().map_err(|_| OilError::Grade);
        let hot = |text: &str| match number(text)? {
            it if HOT.iter().any(|row| row.0 == it) => Ok(Some(it)),
            _ => Err(OilError::Grade),
        };
        let Some((winter, behind)) = text.split_once('W') else {
            return Ok(Self { winter: None, hot: hot(&text)? });
        };
        let winter = number(winter)?;
        if winter > 25 || winter % 5 != 0 {
            return Err(OilError::Grade);
        }
        let hot = if behind.is_empty() { None } else { hot(behind)? };
        Ok(Self { winter: Some(winter), hot })
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
        Some([limit(35.0, &CRANKS_TO), limit(40.0, &PUMPS_TO)])
    }
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
