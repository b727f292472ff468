//! The table of facts. A number stays with its fact for ever; a retired one is never used again.

use super::choices::*;
use super::fluids::*;
use super::general::{GeneralTorque, general};
use super::intervals::{Interval, intervals};
use super::read::{
    Capacity, Level, Recharge, Rough, Strength, TypedThread, capacity, choice, count, day, dose,
    grade, level, one, recharge, rough, several, sizes, stages, strength,
};
use super::read::{temperatures, text, thread};
use super::steps::{LAY_UP_STEPS, WAKE_UP_STEPS};
use super::{About, Fact, Home, Id, Kind, Limit};
use crate::battery::{AcidScale, Chemistry};
use crate::brake::{Clutch, Fluid};
use crate::coolant::{Cooling, Glycol};
use crate::entry::{Dose, Stage};
use crate::oil::{Grade, Jaso, Job, OtherOil};
use crate::season::Temperatures;
use crate::tire::{Gauge, TiresAre, Wheel};
use crate::torque::{FrictionClass, PropertyClass};
use crate::units::{self, Measure, Unit, UnitSet};
use crate::words::facts as words;
use chrono::NaiveDate;
use uom::si::f64::{
    Angle, Area, ElectricCurrent, ElectricPotential, Length, MassDensity, Ratio,
    TemperatureInterval, ThermodynamicTemperature, Time, Torque, Volume,
};

const fn above(low: f64, high: f64, measure: Measure, unit: &'static Unit) -> Limit {
    Limit { measure, unit, low, low_taken: false, high }
}
const fn from(low: f64, high: f64, measure: Measure, unit: &'static Unit) -> Limit {
    Limit { measure, unit, low, low_taken: true, high }
}
/// A quantity: one number of one measure.
macro_rules! number {
    ($($limit:expr),+) => { Kind::Quantity { limits: const { &[$($limit),+] }, range: false } };
}
/// A quantity: one number or a range.
macro_rules! range {
    ($($limit:expr),+) => { Kind::Quantity { limits: const { &[$($limit),+] }, range: true } };
}
macro_rules! facts {
    ($($(#[$doc:meta])* $name:ident: $type:ty = $id:literal, $key:literal, $home:ident, $kind:expr, $read:expr;)*) => {
        $($(#[$doc])* pub static $name: Fact<$type> = Fact {
            about: About {
                id: Id($id), key: $key, label: words::$name.label, hint: words::$name.hint, home: Home::$home, kind: $kind,
            },
            read: $read,
        };)*
        /// All facts, by number.
        pub static TABLE: &[&About] = &[$(&$name.about),*];
    };
}
facts! {
    /// The owner's name for the bike. Leaves in a link only when chosen.
    BIKE_NAME: String = 1, "bike_name", Bike, Kind::Text, text;

    /// Full, reserve included.
    TANK_VOLUME: Volume = 10, "tank_volume", Bike, number![above(0.0, 100.0, Measure::Tank, &units::LITER)], one;
    /// Before filling up.
    FUEL_IN_TANK: Level = 11, "fuel_in_tank", Season,
        number![from(0.0, 100.0, Measure::Tank, &units::LITER), from(0.0, 100.0, Measure::Share, &units::PERCENT)], level;
    /// Share or amount.
    FILL_TO: Level = 12, "fill_to", Season,
        number![above(0.0, 100.0, Measure::Share, &units::PERCENT), above(0.0, 100.0, Measure::Tank, &units::LITER)], level;
    /// Dose of the container on the shelf.
    STABILIZER_LABEL: Dose = 13, "stabilizer_label", Garage, Kind::Dose, dose;
    /// Share of the fuel in the tank that already has its stabilizer.
    ALREADY_TREATED: Ratio = 14, "already_treated", Season, number![from(0.0, 100.0, Measure::Share, &units::PERCENT)], one;
    /// Injection or carburetor.
    FUEL_SUPPLY: FuelSupply = 15, "fuel_supply", Bike, Kind::Choice(FUEL_SUPPLIES), choice;
    /// Between tank and injector or bowl.
    LINE_VOLUME: Rough<Volume> = 16, "line_volume", Bike, range![above(0.0, 2000.0, Measure::Dose, &units::MILLILITER)], rough;
    /// All carburetor bowls together.
    BOWLS_VOLUME: Rough<Volume> = 17, "bowls_volume", Bike, range![above(0.0, 2000.0, Measure::Dose, &units::MILLILITER)], rough;
    /// On a country road.
    CONSUMPTION: Rough<Area> = 18, "consumption", Bike, range![above(0.0, 50.0, Measure::Consumption, &units::LITERS_PER_100_KM)], rough;

    /// The manual's general table of torques by thread.
    GENERAL_TORQUES: Vec<GeneralTorque> = 19, "general_torques", Bike, Kind::ThreadTorques, general;

    /// Of doses, as the label has it.
    HIGHEST_DOSE: u32 = 20, "highest_dose", Garage, Kind::Count { least: 1, most: 10 }, count;
    /// Whose ounces and gallons the label means.
    LABEL_MEASURES: Measures = 21, "label_measures", Garage, Kind::Choice(LABEL_MEASURES_OF), choice;
    /// Of the fuel that is filled in.
    FILL_TEMPERATURE: ThermodynamicTemperature = 22, "fill_temperature", Season, number![from(-18.0, 90.0, Measure::Temperature, &units::CELSIUS)], one;
    /// That the fuel may get until it is ridden.
    WARMEST_FUEL: ThermodynamicTemperature = 23, "warmest_fuel", Season, number![from(-18.0, 90.0, Measure::Temperature, &units::CELSIUS)], one;
    /// Since it was full.
    SINCE_FULL: Length = 24, "since_full", Season, number![from(0.0, 2000.0, Measure::Distance, &units::KILOMETER)], one;
    /// The fuel that is in the tank.
    FUEL_BOUGHT: NaiveDate = 25, "fuel_bought", Season, Kind::Day, day;
    /// With ethanol or without.
    FUEL_TYPE: FuelType = 26, "fuel_type", Bike, Kind::Choice(FUEL_TYPES), choice;
    /// Between tank and carburetors.
    FUEL_TAP: Tap = 27, "fuel_tap", Bike, Kind::Choice(TAPS), choice;
    /// Over the season.
    BOWLS: Bowls = 28, "bowls", Season, Kind::Choice(BOWLS_IN_STORAGE), choice;

    /// What is done this time.
    OIL_CHANGE: Job = 30, "oil_change", Season, Kind::Choice(JOBS), choice;
    /// Oil and filter changed.
    FILL_WITH_FILTER: Volume = 31, "fill_with_filter", Bike, number![above(0.0, 30.0, Measure::Oil, &units::LITER)], one;
    /// Filter left in.
    FILL_WITHOUT_FILTER: Volume = 32, "fill_without_filter", Bike, number![above(0.0, 30.0, Measure::Oil, &units::LITER)], one;
    /// Engine dry.
    FILL_AFTER_OVERHAUL: Volume = 33, "fill_after_overhaul", Bike, number![above(0.0, 30.0, Measure::Oil, &units::LITER)], one;
    /// Low mark to full mark.
    BETWEEN_MARKS: Volume = 34, "between_marks", Bike, number![above(0.0, 5.0, Measure::Oil, &units::LITER)], one;
    /// How it is read.
    LEVEL_READ_AT: LevelRead = 35, "level_read_at", Bike, Kind::Choice(LEVEL_READS_AT), choice;
    /// How it stands meanwhile.
    LEVEL_STAND: Stand = 36, "level_stand", Bike, Kind::Choice(STANDS), choice;
    /// After a run or before.
    LEVEL_ENGINE: Warm = 37, "level_engine", Bike, Kind::Choice(WARM_OR_COLD), choice;
    /// From stopping the engine to reading.
    LEVEL_MINUTES: u32 = 38, "level_minutes", Bike, Kind::Count { least: 0, most: 120 }, count;
    /// Oil's, when the level is read.
    CHECK_TEMPERATURE: ThermodynamicTemperature = 39, "check_temperature", Bike, number![from(-18.0, 149.0, Measure::Temperature, &units::CELSIUS)], one;
    /// The bottles that are bought, of one size or of several.
    BOTTLE_SIZE: Vec<Volume> = 40, "bottle_size", Garage, Kind::Sizes(const { &[above(0.0, 250.0, Measure::Oil, &units::LITER)] }), sizes;
    /// Of the same oil.
    OIL_ON_SHELF: Volume = 41, "oil_on_shelf", Garage, number![from(0.0, 250.0, Measure::Oil, &units::LITER)], one;
    /// At 15 °C.
    OIL_DENSITY: MassDensity = 42, "oil_density", Garage, number![from(800.0, 1164.0, Measure::Density, &units::KG_PER_M3)], one;
    /// Of the oil that is poured.
    POUR_TEMPERATURE: ThermodynamicTemperature = 43, "pour_temperature", Season, number![from(-18.0, 149.0, Measure::Temperature, &units::CELSIUS)], one;
    /// As printed.
    OIL_GRADE: Grade = 44, "oil_grade", Garage, Kind::Grade, grade;
    /// As printed.
    JASO_CLASS: Jaso = 45, "jaso_class", Garage, Kind::Choice(JASO_CLASSES), choice;
    /// Whether the clutch runs in the engine's oil.
    WET_CLUTCH: bool = 46, "wet_clutch", Bike, Kind::Choice(YES_OR_NO), choice;
    /// 0 % at the low mark, 100 % at the full one.
    LEVEL_READS: Rough<Ratio> = 47, "level_reads", Season, range![from(-200.0, 300.0, Measure::Share, &units::PERCENT)], rough;
    /// With this oil in.
    COLDEST_START: ThermodynamicTemperature = 48, "coldest_start", Season, number![from(-70.0, 50.0, Measure::Temperature, &units::CELSIUS)], one;

    /// Of the battery.
    CHEMISTRY: Chemistry = 50, "chemistry", Bike, Kind::Choice(CHEMISTRIES), choice;
    /// From its label.
    CAPACITY: Capacity = 51, "capacity", Bike,
        number![above(0.0, 200.0, Measure::Charge, &units::AMPERE_HOUR), above(0.0, 2500.0, Measure::Energy, &units::WATT_HOUR)], capacity;
    /// State of charge on the park date.
    CHARGE_WHEN_PARKED: Rough<Ratio> = 52, "charge_when_parked", Season, range![from(0.0, 100.0, Measure::Share, &units::PERCENT)], rough;
    /// At rest on the park date, instead of the charge.
    RESTING_VOLTAGE: Rough<ElectricPotential> = 53, "resting_voltage", Season, range![from(6.0, 16.0, Measure::Voltage, &units::VOLT)], rough;
    /// Bike asleep.
    KEY_OFF_DRAW: Rough<ElectricCurrent> = 54, "key_off_draw", Bike, range![from(0.0, 2000.0, Measure::Draw, &units::MILLIAMPERE)], rough;
    /// The manual's own threshold.
    CHARGE_BELOW: Recharge = 55, "charge_below", Bike,
        number![from(9.0, 14.0, Measure::Voltage, &units::VOLT), from(1.0, 99.0, Measure::Share, &units::PERCENT)], recharge;
    /// Of the charger.
    CHARGER_CURRENT: ElectricCurrent = 56, "charger_current", Garage, number![above(0.0, 50.0, Measure::ChargingCurrent, &units::AMPERE)], one;
    /// Hydrometer as read on the park date, instead of the charge.
    SPECIFIC_GRAVITY: Ratio = 57, "specific_gravity", Season, number![from(1.0, 1.4, Measure::Gravity, &units::SPECIFIC_GRAVITY)], one;
    /// Of the battery, or its acid, at either reading.
    READ_AT: ThermodynamicTemperature = 58, "read_at", Season, number![from(-40.0, 60.0, Measure::Temperature, &units::CELSIUS)], one;
    /// Of its maker.
    ACID_SCALE: AcidScale = 59, "acid_scale", Bike, Kind::Choice(ACID_SCALES), choice;

    /// Put away.
    PARK_DATE: NaiveDate = 60, "park_date", Season, Kind::Day, day;
    /// First ride.
    RIDE_DATE: NaiveDate = 61, "ride_date", Season, Kind::Day, day;
    /// Heated, unheated, outdoors.
    WHERE_IT_STANDS: Place = 62, "where_it_stands", Garage, Kind::Choice(PLACES), choice;
    /// One or twelve.
    MONTHLY_MEANS: Temperatures = 63, "monthly_means", Garage, Kind::Temperatures, temperatures;
    /// Where it stands.
    COLDEST_NIGHT: ThermodynamicTemperature = 64, "coldest_night", Garage, number![from(-70.0, 50.0, Measure::Temperature, &units::CELSIUS)], one;
    /// For answers and fresh blanks.
    UNIT_SET: UnitSet = 65, "unit_set", Garage, Kind::Choice(UNIT_SETS), choice;
    /// Monthly normals of a station.
    CLIMATE: Climate = 66, "climate", Garage, Kind::Choice(CLIMATES), choice;
    /// An unheated place against the air outside.
    WARMER_BY: TemperatureInterval = 67, "warmer_by", Garage, number![from(0.0, 25.0, Measure::TemperatureStep, &units::KELVIN_STEP)], one;
    /// Warmest of the day less coldest of the night.
    DAY_AND_NIGHT: TemperatureInterval = 68, "day_and_night", Garage, number![from(0.0, 40.0, Measure::TemperatureStep, &units::KELVIN_STEP)], one;
    /// Where the battery is over the season, and what is on it.
    BATTERY_KEPT: BatteryKept = 69, "battery_kept", Season, Kind::Choice(BATTERIES_KEPT), choice;

    /// The owner's name for it. Leaves in a link only when chosen.
    FASTENER_NAME: String = 70, "fastener_name", Fastener, Kind::Text, text;
    /// The manual's figure, a range, or both.
    TORQUE: Rough<Torque> = 71, "torque", Fastener, range![above(0.0, 2000.0, Measure::Torque, &units::NEWTON_METER)], rough;
    /// How the adapter sits on the wrench.
    ADAPTER: Adapter = 72, "adapter", Fastener, Kind::Choice(ADAPTERS), choice;
    /// Drive to fastener, center to center.
    ADAPTER_LENGTH: Length = 73, "adapter_length", Fastener, number![above(0.0, 1000.0, Measure::Span, &units::MILLIMETER)], one;
    /// From the wrench's own line.
    ADAPTER_ANGLE: Angle = 74, "adapter_angle", Fastener, number![from(-180.0, 180.0, Measure::Angle, &units::DEGREE)], one;
    /// Whether the nut locks itself, and what the manual's figure holds of its drag.
    SELF_LOCKING: SelfLocking = 75, "self_locking", Fastener, Kind::Choice(SELF_LOCKINGS), choice;
    /// Torque that turns a self-locking nut before it seats.
    PREVAILING_TORQUE: Torque = 76, "prevailing_torque", Fastener, number![above(0.0, 500.0, Measure::Torque, &units::NEWTON_METER)], one;
    /// Diameter and pitch.
    THREAD: TypedThread = 77, "thread", Fastener, Kind::Text, thread;
    /// Where the manual says it, and whatever else is to be known of it. Leaves in a link only when chosen.
    FASTENER_NOTE: String = 78, "fastener_note", Fastener, Kind::Text, text;
    /// Passes up to the figure.
    STAGES: Vec<Stage> = 79, "stages", Fastener, Kind::Stages, stages;

    /// The owner's name for it.
    WRENCH_NAME: String = 80, "wrench_name", Wrench, Kind::Text, text;
    /// Middle of the grip to square drive.
    WRENCH_LENGTH: Length = 81, "wrench_length", Wrench, number![above(0.0, 3000.0, Measure::Span, &units::MILLIMETER)], one;
    /// On its scale.
    LOWEST_MARK: Torque = 82, "lowest_mark", Wrench, number![from(0.0, 2000.0, Measure::Torque, &units::NEWTON_METER)], one;
    /// On its scale.
    HIGHEST_MARK: Torque = 83, "highest_mark", Wrench, number![above(0.0, 3000.0, Measure::Torque, &units::NEWTON_METER)], one;
    /// Mark to mark, in the wrench's own unit.
    GRADUATION: Rough<Torque> = 84, "graduation", Wrench, number![above(0.0, 100.0, Measure::Torque, &units::NEWTON_METER)], rough;
    /// Share of the setting.
    ACCURACY: Ratio = 85, "accuracy", Wrench, number![above(0.0, 20.0, Measure::Share, &units::PERCENT)], one;
    /// Tells it from the garage's others for as long as it is there. Made by the page, never asked.
    WRENCH_KEY: u32 = 86, "wrench_key", Wrench, Kind::Count { least: 1, most: u32::MAX }, count;

    /// Of the same sort, tightened together in an order.
    BOLTS: u32 = 90, "bolts", Fastener, Kind::Count { least: 2, most: 24 }, count;
    /// What the manual says of the thread.
    THREAD_DRESSING: Dressing = 91, "thread_dressing", Fastener, Kind::Choice(DRESSINGS), choice;
    /// What else it wants.
    MIND: Vec<Mind> = 92, "mind", Fastener, Kind::Several(MINDS), several;
    /// Instead of a torque, as printed on a spark plug's or a filter's box.
    TURN: Rough<Angle> = 93, "turn", Fastener, range![above(0.0, 10.0, Measure::Turn, &units::TURN)], rough;
    /// The wrench that the owner takes for it, by its key; blank: the one that serves best.
    TAKEN_WRENCH: u32 = 94, "taken_wrench", Fastener, Kind::Count { least: 1, most: u32::MAX }, count;
    /// What the wrench was set to when it was tightened, for the moment after a mistake.
    WAS_SET_TO: Torque = 95, "was_set_to", Fastener, number![above(0.0, 3000.0, Measure::Torque, &units::NEWTON_METER)], one;

    /// Stamped on its head.
    PROPERTY_CLASS: PropertyClass = 96, "property_class", Fastener, Kind::Choice(PROPERTY_CLASSES), choice;
    /// What is on threads and face.
    FRICTION_CLASS: FrictionClass = 97, "friction_class", Fastener, Kind::Choice(FRICTION_CLASSES), choice;
    /// What it is screwed into, or what lies between.
    THREADS_INTO: ThreadsInto = 98, "threads_into", Fastener, Kind::Choice(THREADS_INTO_WHAT), choice;

    /// Liquid or not.
    COOLING: Cooling = 100, "cooling", Bike, Kind::Choice(COOLINGS), choice;
    /// Of its coolant.
    GLYCOL: Glycol = 101, "glycol", Bike, Kind::Choice(GLYCOLS), choice;
    /// Glycol in what is in the bike, by volume.
    CONCENTRATION: Strength = 102, "concentration", Season,
        range![from(0.0, 100.0, Measure::Share, &units::PERCENT), from(-60.0, 0.0, Measure::Temperature, &units::CELSIUS)], strength;
    /// As the manual has it.
    WANTED_CONCENTRATION: Ratio = 103, "wanted_concentration", Bike, number![above(0.0, 60.0, Measure::Share, &units::PERCENT)], one;
    /// Without the reserve tank.
    COOLANT_CIRCUIT: Volume = 104, "coolant_circuit", Bike, number![above(0.0, 50.0, Measure::Oil, &units::LITER)], one;
    /// Part of the circuit that runs out.
    COOLANT_DRAINS: Volume = 105, "coolant_drains", Bike, number![above(0.0, 50.0, Measure::Oil, &units::LITER)], one;
    /// Glycol in the bottle, by volume; ready-mixed where blank.
    COOLANT_BOTTLE: Ratio = 106, "coolant_bottle", Garage, number![above(0.0, 100.0, Measure::Share, &units::PERCENT)], one;

    /// Cold, from the manual.
    FRONT_PRESSURE: Gauge = 107, "front_pressure", Bike, number![above(0.0, 10.0, Measure::Pressure, &units::BAR)], one;
    /// Cold, from the manual.
    REAR_PRESSURE: Gauge = 108, "rear_pressure", Bike, number![above(0.0, 10.0, Measure::Pressure, &units::BAR)], one;
    /// Cold or still warm.
    TIRES_ARE: TiresAre = 109, "tires_are", Season, Kind::Choice(TIRES_COLD_OR_WARM), choice;
    /// Of the air where they are set.
    SET_TEMPERATURE: ThermodynamicTemperature = 110, "set_temperature", Season, number![from(-60.0, 60.0, Measure::Temperature, &units::CELSIUS)], one;
    /// Of the air on the ride.
    RIDE_TEMPERATURE: Rough<ThermodynamicTemperature> = 111, "ride_temperature", Season, range![from(-60.0, 60.0, Measure::Temperature, &units::CELSIUS)], rough;
    /// On the sidewall.
    FRONT_DATE_CODE: String = 112, "front_date_code", Bike, Kind::Text, text;
    /// On the sidewall.
    REAR_DATE_CODE: String = 113, "rear_date_code", Bike, Kind::Text, text;
    /// On the gauge, where it stands.
    FRONT_READS: Gauge = 114, "front_reads", Season, number![from(0.0, 10.0, Measure::Pressure, &units::BAR)], one;
    /// On the gauge, where it stands.
    REAR_READS: Gauge = 115, "rear_reads", Season, number![from(0.0, 10.0, Measure::Pressure, &units::BAR)], one;
    /// That the manual's figures are for, where it prints one.
    TIRE_REFERENCE: ThermodynamicTemperature = 116, "tire_reference", Bike, number![from(0.0, 40.0, Measure::Temperature, &units::CELSIUS)], one;
    /// Where they are set.
    ALTITUDE: Length = 117, "altitude", Garage, number![from(0.0, 5000.0, Measure::Altitude, &units::METER)], one;
    /// On the sidewall.
    FRONT_MAXIMUM: Gauge = 118, "front_maximum", Bike, number![above(0.0, 10.0, Measure::Pressure, &units::BAR)], one;
    /// On the sidewall.
    REAR_MAXIMUM: Gauge = 119, "rear_maximum", Bike, number![above(0.0, 10.0, Measure::Pressure, &units::BAR)], one;
    /// Not run in yet.
    NEW_TIRES: Vec<Wheel> = 120, "new_tires", Season, Kind::Several(WHEELS), several;

    /// On the reservoir's cap.
    BRAKE_FLUID: Fluid = 122, "brake_fluid", Bike, Kind::Choice(FLUIDS), choice;
    /// On the reservoir's cap; none with a cable.
    CLUTCH_FLUID: Clutch = 123, "clutch_fluid", Bike, Kind::Choice(CLUTCH_FLUIDS), choice;
    /// Last time.
    BRAKE_FLUID_CHANGED: NaiveDate = 124, "brake_fluid_changed", Bike, Kind::Day, day;
    /// Last time.
    CLUTCH_FLUID_CHANGED: NaiveDate = 125, "clutch_fluid_changed", Bike, Kind::Day, day;
    /// To top up with.
    FLUID_ON_SHELF: Fluid = 126, "fluid_on_shelf", Garage, Kind::Choice(FLUIDS), choice;

    /// Besides the engine's.
    OTHER_OILS: Vec<OtherOil> = 128, "other_oils", Bike, Kind::Several(OTHER_OILS_THERE), several;
    /// Fill.
    FINAL_DRIVE_OIL: Volume = 129, "final_drive_oil", Bike, number![above(0.0, 20.0, Measure::Oil, &units::LITER)], one;
    /// Fill.
    GEARBOX_OIL: Volume = 130, "gearbox_oil", Bike, number![above(0.0, 20.0, Measure::Oil, &units::LITER)], one;
    /// Fill.
    PRIMARY_OIL: Volume = 131, "primary_oil", Bike, number![above(0.0, 20.0, Measure::Oil, &units::LITER)], one;
    /// Fill.
    FORK_OIL: Volume = 132, "fork_oil", Bike, number![above(0.0, 20.0, Measure::Oil, &units::LITER)], one;
    /// Fill.
    TWO_STROKE_OIL: Volume = 133, "two_stroke_oil", Bike, number![above(0.0, 20.0, Measure::Oil, &units::LITER)], one;
    /// Of its drain plug.
    FINAL_DRIVE_PLUG: Rough<Torque> = 134, "final_drive_plug", Bike, range![above(0.0, 500.0, Measure::Torque, &units::NEWTON_METER)], rough;
    /// Of its drain plug.
    GEARBOX_PLUG: Rough<Torque> = 135, "gearbox_plug", Bike, range![above(0.0, 500.0, Measure::Torque, &units::NEWTON_METER)], rough;
    /// Of its drain plug.
    PRIMARY_PLUG: Rough<Torque> = 136, "primary_plug", Bike, range![above(0.0, 500.0, Measure::Torque, &units::NEWTON_METER)], rough;
    /// Of its drain plug.
    FORK_PLUG: Rough<Torque> = 137, "fork_plug", Bike, range![above(0.0, 500.0, Measure::Torque, &units::NEWTON_METER)], rough;
    /// Last time.
    FINAL_DRIVE_OIL_CHANGED: NaiveDate = 138, "final_drive_oil_changed", Bike, Kind::Day, day;
    /// Last time.
    GEARBOX_OIL_CHANGED: NaiveDate = 139, "gearbox_oil_changed", Bike, Kind::Day, day;
    /// Last time.
    PRIMARY_OIL_CHANGED: NaiveDate = 140, "primary_oil_changed", Bike, Kind::Day, day;
    /// Last time.
    FORK_OIL_CHANGED: NaiveDate = 141, "fork_oil_changed", Bike, Kind::Day, day;
    /// Last time.
    TWO_STROKE_OIL_CHANGED: NaiveDate = 142, "two_stroke_oil_changed", Bike, Kind::Day, day;

    /// Where the battery is kept by itself.
    KEPT_AT: Temperatures = 144, "kept_at", Season, Kind::Temperatures, temperatures;
    /// There.
    KEPT_COLDEST: ThermodynamicTemperature = 145, "kept_coldest", Season, number![from(-70.0, 50.0, Measure::Temperature, &units::CELSIUS)], one;
    /// At the meter check or in spring.
    METER_READS: ElectricPotential = 146, "meter_reads", Season, number![from(6.0, 16.0, Measure::Voltage, &units::VOLT)], one;
    /// Day of it.
    METER_READ_ON: NaiveDate = 147, "meter_read_on", Season, Kind::Day, day;
    /// Before that, instead of the one when parked.
    EARLIER_READING: ElectricPotential = 148, "earlier_reading", Season, number![from(6.0, 16.0, Measure::Voltage, &units::VOLT)], one;
    /// Day of it.
    EARLIER_READ_ON: NaiveDate = 149, "earlier_read_on", Season, Kind::Day, day;
    /// Off road and charger before the resting voltage was read.
    RESTED: Time = 150, "rested", Season, number![from(0.0, 10_000.0, Measure::Time, &units::HOUR)], one;

    /// What turns the rear wheel.
    FINAL_DRIVE: FinalDrive = 151, "final_drive", Bike, Kind::Choice(FINAL_DRIVES), choice;
    /// Ticked steps.
    LAY_UP_DONE: Vec<u8> = 152, "lay_up_done", Season, Kind::Several(LAY_UP_STEPS), several;
    /// Steps without use this season.
    LAY_UP_LEFT_OUT: String = 153, "lay_up_left_out", Season, Kind::Text, text;
    /// Ticked steps.
    WAKE_UP_DONE: Vec<u8> = 154, "wake_up_done", Season, Kind::Several(WAKE_UP_STEPS), several;
    /// Steps without use this season.
    WAKE_UP_LEFT_OUT: String = 155, "wake_up_left_out", Season, Kind::Text, text;
    /// Keys, bolts, battery. Leaves in a link only when chosen.
    WHERE_THINGS_LIE: String = 156, "where_things_lie", Season, Kind::Text, text;
    /// The first of them.
    PAPERS_DUE: NaiveDate = 157, "papers_due", Bike, Kind::Day, day;
    /// As it reads now.
    ODOMETER: Length = 158, "odometer", Bike, number![from(0.0, 2_000_000.0, Measure::Distance, &units::KILOMETER)], one;
    /// By distance, by time, or both.
    INTERVALS: Vec<Interval> = 159, "intervals", Bike, Kind::Intervals, intervals;

    /// The owner's own lay-up steps: titles with ";" between. They leave in a link only when chosen.
    OWN_LAY_UP: String = 160, "own_lay_up", Bike, Kind::Text, text;
    /// The owner's own wake-up steps.
    OWN_WAKE_UP: String = 161, "own_wake_up", Bike, Kind::Text, text;
    /// Those of them that are ticked, by title.
    OWN_LAY_UP_DONE: String = 162, "own_lay_up_done", Season, Kind::Text, text;
    /// Those of them that are ticked, by title.
    OWN_WAKE_UP_DONE: String = 163, "own_wake_up_done", Season, Kind::Text, text;
    /// The day it left the list of bikes; blank while it is in it.
    ARCHIVED: NaiveDate = 164, "archived", Bike, Kind::Day, day;

    /// When it was done.
    LOG_DAY: NaiveDate = 170, "log_day", Log, Kind::Day, day;
    /// What was done: a step's title, or the owner's own words.
    LOG_LINE: String = 171, "log_line", Log, Kind::Text, text;
    /// As it read then.
    LOG_ODOMETER: Length = 172, "log_odometer", Log, number![from(0.0, 2_000_000.0, Measure::Distance, &units::KILOMETER)], one;
    /// Of the step, as they stood when it was ticked.
    LOG_FIGURES: String = 173, "log_figures", Log, Kind::Text, text;
    /// Whatever else is to be known.
    LOG_NOTE: String = 174, "log_note", Log, Kind::Text, text;
    /// Engine oil that went in, at a change or to top up.
    OIL_POURED: Volume = 175, "oil_poured", Log, number![above(0.0, 30.0, Measure::Oil, &units::LITER)], one;
    /// Engine oil that came out at a change.
    OIL_DRAINED: Volume = 176, "oil_drained", Log, number![above(0.0, 30.0, Measure::Oil, &units::LITER)], one;
    /// Which season's tick wrote it: "2026-11-14/layup/oil". Made by the page, never asked.
    LOG_STEP: String = 177, "log_step", Log, Kind::Text, text;
    /// The day of its first tick, or of its first calendar file: tells this season from any other, whatever becomes of its
    /// dates. Made by the page, never asked.
    SEASON_MARK: NaiveDate = 178, "season_mark", Season, Kind::Day, day;
    /// Tells this bike from others of its owner, in whichever browser they are kept: a link carries it. Made by the page, never
    /// asked.
    BIKE_KEY: u32 = 179, "bike_key", Bike, Kind::Count { least: 1, most: u32::MAX }, count;
}
