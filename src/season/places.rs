//! Climate of some places, for a bike that stands outdoors or in an unheated shed there.
//!
//! Source: NOAA NCEI U.S. Climate Normals 1991–2020 (Buffalo: the weather service's page), Environment Canada's Canadian
//! Climate Normals 1971–2000; station by station in tests/reference/battery/climate.csv.

use crate::source;
use crate::units::Measure;
use crate::working::{Answer, Law, term};
use uom::si::{
    f64::{TemperatureInterval, ThermodynamicTemperature},
    temperature_interval::kelvin,
    thermodynamic_temperature::degree_celsius,
};

/// Coldest night to expect where nobody has named one.
pub static COLDEST_NIGHT: Law = Law {
    formula: "Tn = T − h − x",
    gives: Measure::Temperature,
    source: source::COLDEST_NIGHT,
    holds: "outdoors at the station; h is its mean day over its mean night in the coldest month, x 15 to 20 K. Colder nights \
        happen: name your own. A shed’s floor follows a cold snap, so nothing is added for a roof",
};

/// A cold snap under the mean night of the coldest month, K: least and most. Common practice, no source.
const COLD_SNAP: [f64; 2] = [15.0, 20.0];

/// A place with its monthly normals.
#[derive(Debug, PartialEq)]
pub struct Place {
    /// Town and state or province.
    pub name: &'static str,
    /// Mean temperature of the months, °C, January first.
    pub means: [f64; 12],
    /// Mean daily minimum of the coldest month, °C. The coldest night of a winter lies 15 to 20 K below it (common
    /// practice, no source).
    pub coldest_minimum: f64,
}

impl Place {
    /// Half of the difference between day and night in the coldest month.
    pub fn swing(&self) -> TemperatureInterval {
        let coldest = self.means.iter().copied().fold(f64::INFINITY, f64::min);
        TemperatureInterval::new::<kelvin>((coldest - self.coldest_minimum).max(0.0))
    }

    /// Coldest night to expect in a season whose coldest day has this mean.
    pub fn coldest_night(
        &self,
        coldest_day: ThermodynamicTemperature,
    ) -> Answer<ThermodynamicTemperature> {
        let celsius = ThermodynamicTemperature::new::<degree_celsius>;
        let half = self.swing();
        let night = coldest_day.get::<degree_celsius>() - half.get::<kelvin>();
        let [warm, cold] = COLD_SNAP.map(|it| night - it);
        let snap = TemperatureInterval::new::<kelvin>((COLD_SNAP[0] + COLD_SNAP[1]) / 2.0);
        let terms = vec![
            term("T", "coldest day’s mean", Measure::Temperature, coldest_day),
            term("h", "half of day and night", Measure::TemperatureStep, half),
            term("x", "a cold snap", Measure::TemperatureStep, snap),
        ];
        let ends = [cold, warm].map(celsius);
        Answer::within(celsius((warm + cold) / 2.0), ends, &COLDEST_NIGHT, terms)
    }
}

/// All places, by name.
pub static PLACES: [Place; 9] = [
    Place {
        name: "Acadia ME",
        means: [-4.6, -3.2, 0.7, 6.7, 12.6, 17.7, 20.9, 20.6, 16.6, 10.3, 4.6, -1.1],
        coldest_minimum: -9.4,
    },
    Place {
        name: "Bettles AK",
        means: [-23.7, -19.7, -15.7, -4.1, 7.2, 14.8, 15.4, 11.5, 5.1, -5.9, -17.6, -21.1],
        coldest_minimum: -28.3,
    },
    Place {
        name: "Buffalo NY",
        means: [-3.6, -3.1, 1.2, 7.6, 14.4, 19.4, 22.0, 21.3, 17.4, 11.0, 5.0, -0.3],
        coldest_minimum: -7.2,
    },
    Place {
        name: "Kabetogama MN",
        means: [-15.6, -13.4, -5.4, 2.4, 10.1, 15.8, 18.2, 17.0, 12.3, 5.0, -3.5, -11.3],
        coldest_minimum: -22.1,
    },
    Place {
        name: "Medora ND",
        means: [-9.2, -6.8, -0.5, 5.8, 12.0, 17.4, 21.6, 20.7, 14.8, 6.6, -1.0, -7.2],
        coldest_minimum: -15.9,
    },
    Place {
        name: "Montreal QC",
        means: [-10.2, -8.4, -2.3, 5.7, 13.4, 18.2, 20.9, 19.6, 14.6, 8.1, 1.6, -6.3],
        coldest_minimum: -14.7,
    },
    Place {
        name: "Ottawa ON",
        means: [-10.8, -8.7, -2.5, 5.7, 13.4, 18.3, 20.9, 19.5, 14.3, 7.8, 1.0, -7.1],
        coldest_minimum: -15.3,
    },
    Place {
        name: "West Glacier MT",
        means: [-4.1, -3.1, 1.0, 5.6, 10.9, 14.3, 18.3, 17.6, 12.4, 5.7, -0.2, -4.2],
        coldest_minimum: -7.1,
    },
    Place {
        name: "Winnipeg MB",
        means: [-17.8, -13.6, -6.1, 4.0, 12.0, 17.0, 19.5, 18.5, 12.3, 5.3, -5.3, -14.4],
        coldest_minimum: -22.8,
    },
];
