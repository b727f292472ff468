//! The battery over the season: charge, resting voltage, days to act.
//!
//! A 12 V battery that nobody touches loses charge to itself, faster when warm, and to whatever the bike draws with the
//! key off. Almost nothing about it is known exactly, so every forecast runs along three edges at once: the slowest
//! loss that published figures allow, the typical one and the fastest. What is shown is the band between them.
//!
//! | part | subject |
//! |---|---|
//! | [`parameters`] | what is published for each chemistry, and how wide the band is for it |
//! | [`state`] | the battery as parked: capacity, charge, key-off draw |
//! | [`voltage`] | resting voltage and charge, either way |
//! | [`forecast`] | day by day, and the answers for the season |
//! | [`freezing`] | how much cold the acid still bears |
//! | [`gravity`] | charge from a hydrometer |
//! | [`recharge`] | days to charge on, evenly spread |
//! | [`charging`] | how long that takes and at what voltage; the starter in the cold |
//! | [`readings`] | the draw that two readings imply, a reading against the band |
//!
//! ```
//! use chrono::NaiveDate;
//! use torpor::battery::{self, Battery, Chemistry, Forecast};
//! use torpor::season::{Season, Temperatures};
//! use uom::si::{electric_charge::ampere_hour, electric_current::milliampere, f64::*, ratio::percent};
//! use uom::si::thermodynamic_temperature::degree_celsius;
//!
//! let battery = Battery::new(
//!     Chemistry::Agm.parameters(),
//!     battery::labelled(ElectricCharge::new::<ampere_hour>(10.0)),
//!     battery::charged_about(Ratio::new::<percent>(100.0)),
//!     battery::drawing_about(ElectricCurrent::new::<milliampere>(1.0)),
//! )?;
//! let day = |year, month, day| NaiveDate::from_ymd_opt(year, month, day).ok_or("no such day");
//! let season = Season::new(day(2025, 11, 1)?, Some(day(2026, 3, 15)?))?;
//! let shed = Temperatures::constant(ThermodynamicTemperature::new::<degree_celsius>(5.0))?;
//! let charge = Forecast::new(&battery, &season, &shed).charge_on_ride_date();
//! assert_eq!(charge.value.get::<percent>().round(), 65.0);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod charging;
pub mod forecast;
pub mod freezing;
pub mod gravity;
pub mod parameters;
pub mod readings;
pub mod recharge;
pub mod state;
pub mod voltage;

mod curve;
mod decay;

pub use charging::{ChargingError, charging_time};
pub(crate) use forecast::as_band;
pub use forecast::{FirstDayBelow, Forecast};
pub use freezing::FreezeMargin;
pub use gravity::AcidScale;
pub use parameters::{Chemistry, Parameters};
pub use readings::{Reading, ReadingError, Verdict, implied_draw};
pub use recharge::{RechargePlan, Remedy};
pub use state::{
    Battery, BatteryError, Roughly, charged_about, charged_by_riding, draw_not_measured,
    drawing_about, labelled, lithium,
};
pub use voltage::{ChargeRead, VoltageError};

/// One number for each edge of the band: [`SLOW`], [`TYPICAL`], [`FAST`].
pub type Edges = [f64; 3];
/// Index of the edge that keeps most charge.
pub const SLOW: usize = 0;
/// Index of the typical edge.
pub const TYPICAL: usize = 1;
/// Index of the edge that loses most charge: the one to act by.
pub const FAST: usize = 2;
