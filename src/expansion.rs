//! How much oil and gasoline grow when they warm: factors to the volume at 15 °C, API MPMS 11.1 (1980), ASTM D1250.

use crate::maths::exp;
use crate::working::Quantity;
use uom::si::{
    f64::{MassDensity, ThermodynamicTemperature},
    thermodynamic_temperature::degree_celsius,
};

/// What a table of the standard is for. Each has its own constants; one is never used for the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Table {
    /// 54D, lubricating oils: 800 to 1164 kg/m³, −18 to 149 °C.
    LubricatingOil,
    /// 54B, gasolines without ethanol up to 770 kg/m³: 653 to 770 kg/m³, −18 to 90 °C.
    Gasoline,
}

impl Table {
    /// Volume at 15 °C of one unit of volume at `temperature`, of a `density` at 15 °C; `None` outside of the table.
    ///
    /// ```
    /// use torpor::expansion::Table;
    /// use uom::si::f64::{MassDensity, ThermodynamicTemperature};
    /// use uom::si::{mass_density::kilogram_per_cubic_meter, thermodynamic_temperature::degree_celsius};
    /// let density = MassDensity::new::<kilogram_per_cubic_meter>(860.0);
    /// let warm = ThermodynamicTemperature::new::<degree_celsius>(80.0);
    /// let factor = Table::LubricatingOil.factor(density, warm);
    /// assert!(factor.is_some_and(|it| (it - 0.951942).abs() < 1e-6));
    /// ```
    pub fn factor(
        self,
        density: MassDensity,
        temperature: ThermodynamicTemperature,
    ) -> Option<f64> {
        let (zeroth, first, lightest, heaviest, warmest) = match self {
            Table::LubricatingOil => (0.0, 0.6278, 800.0, 1164.0, 149.0),
            Table::Gasoline => (346.4228, 0.4388, 653.0, 770.0, 90.0),
        };
        let (density, celsius) = (density.base(), temperature.get::<degree_celsius>());
        // A reading loses its last digit on the way through kelvin.
        let inside = density >= lightest
            && density <= heaviest
            && celsius >= -18.0 - 1e-9
            && celsius <= warmest + 1e-9;
        let grows = (zeroth / density + first) / density * (celsius - 15.0);
        inside.then(|| exp(-grows * (1.0 + 0.8 * grows)))
    }
}
