//! Label and hint of every fact.

/// What stands at a blank.
pub struct Said {
    /// The label.
    pub label: &'static str,
    /// One plain hint, in a person's words.
    pub hint: &'static str,
}

macro_rules! said {
    ($($name:ident: $label:literal, $hint:literal;)*) => {
        $(#[doc = $label] pub const $name: Said = Said { label: $label, hint: $hint };)*
    };
}
said! {
    BIKE_NAME: "Bike", "What you call it";
    TANK_VOLUME: "Tank volume", "From the manual: full, reserve included";
    FUEL_IN_TANK: "Fuel in the tank", "Now, before you fill up: an amount or a share such as 25 %; 0 if it is empty";
    FILL_TO: "Fill to", "Share of the tank or an amount; never above the bottom of the filler neck. Blank: 95 %, common practice, no source";
    STABILIZER_LABEL: "Stabilizer label", "As printed on the container: 30 mL per 10 L, 1 fl oz per 2.5 gal, or 1:320";
    ALREADY_TREATED: "Already treated", "How much of the fuel now in the tank already has its stabilizer. Blank: none of it";
    FUEL_SUPPLY: "Fuel supply", "How the engine gets its fuel";
    LINE_VOLUME: "Line and rail", "What lies between tank and injector or bowl; if the manual is silent, 50–100 mL is a fair guess, no source";
    BOWLS_VOLUME: "Bowls, all together", "What all carburetor bowls hold; drain one into a can and measure: engine cold, ignition off, no flame, vapor burns";
    CONSUMPTION: "Fuel consumption", "What the bike uses on a country road";
    GENERAL_TORQUES: "Manual's general table", "For bolts without a figure of their own, by thread: M6 10 N·m; M8 22 N·m; M10×1.25 30–36 N·m. Kept with the bike";
    HIGHEST_DOSE: "Highest dose on the label", "How many times the usual dose it allows, for long storage: 2 for double";
    LABEL_MEASURES: "Label's measures", "Whose ounces and gallons: the country it was sold in";
    FILL_TEMPERATURE: "Fuel when filled", "Its temperature: that of the station's tank or of the can, on a cold day often 10 °C (50 °F)";
    WARMEST_FUEL: "Warmest fuel", "The warmest it may get before you ride; sun on the tank counts";
    SINCE_FULL: "Ridden since it was full", "Instead of the fuel in the tank, which is then reckoned from it";
    FUEL_BOUGHT: "Fuel bought", "The day the fuel now in the tank was bought. Blank: the park date";
    FUEL_TYPE: "Fuel", "As the pump says; for E5 no figure was found: leave it blank";
    FUEL_TAP: "Fuel tap", "What shuts the fuel off below the tank";
    BOWLS: "Bowls in storage", "Drained with the tap off, or full of treated fuel with none drained";
    OIL_CHANGE: "Oil change", "What you do this time";
    FILL_WITH_FILTER: "Fill with filter", "From the manual: oil and filter changed";
    FILL_WITHOUT_FILTER: "Fill without filter", "From the manual: oil drained, filter left in";
    FILL_AFTER_OVERHAUL: "Fill after overhaul", "From the manual: engine dry";
    BETWEEN_MARKS: "Between the marks", "Volume from the low mark to the full mark; blank if not known";
    BOTTLE_SIZE: "Bottle size", "The bottles you buy: 1 L; or all sizes there are: 1 L; 4 L";
    OIL_ON_SHELF: "Oil on the shelf", "Of the same oil, open or not; 0 if none";
    LEVEL_READ_AT: "Level is read", "From the manual: where you look";
    LEVEL_STAND: "Bike stands", "While the level is read, from the manual";
    LEVEL_ENGINE: "Engine for the level", "Warm or cold, from the manual";
    LEVEL_MINUTES: "Minutes after stopping", "From stopping to reading, from the manual";
    CHECK_TEMPERATURE: "Oil when the level is read", "Its temperature; after a run about 80 °C (180 °F), common practice, no source";
    OIL_DENSITY: "Oil density", "At 15 °C (60 °F), from the oil's data sheet. Blank: 840 to 900 kg/m³";
    POUR_TEMPERATURE: "Oil when poured", "That of the room the bottles stood in";
    OIL_GRADE: "Oil grade", "As printed on the bottle: 10W-40";
    JASO_CLASS: "JASO class", "In a small box on the bottle's back: MA, MA1, MA2 or MB";
    WET_CLUTCH: "Wet clutch", "Does the clutch run in the engine's oil? On most motorcycles yes, on most scooters no";
    LEVEL_READS: "Level reads", "0 % at the low mark, 100 % at the full mark; −20 % below, 120 % above";
    COLDEST_START: "Coldest start", "The coldest morning on which you start it with this oil";
    CHEMISTRY: "Chemistry", "What is printed on the battery";
    CAPACITY: "Capacity", "From the label, what stands before Ah: 8; for LiFePO4 the Wh";
    CHARGE_WHEN_PARKED: "Charge when parked", "Best after a full charge and a night's rest: then 100 %. Blank: as it came from the road, 75–100 % is counted";
    RESTING_VOLTAGE: "Resting voltage", "Instead of the charge: after a night's rest, where it stands, on the park date; right after a run it reads too high";
    KEY_OFF_DRAW: "Key-off draw", "Measured in series at the negative lead, bike asleep; about 1 mA means 0.5–1.5. Blank: 0.5–3 mA is counted";
    CHARGE_BELOW: "Charge below", "From the bike's manual, volts at rest. Blank: what is usual for the chemistry";
    CHARGER_CURRENT: "Charger current", "From the charger's label";
    SPECIFIC_GRAVITY: "Hydrometer reads", "Instead of the charge, as read, for example 1.255; the lowest cell counts. It is corrected for the temperature";
    READ_AT: "Battery's temperature", "When you read it. Blank: the day's mean where it stands";
    ACID_SCALE: "Scale of the acid", "From the battery's maker. Blank: 1.265 full, the usual one";
    RESTED: "At rest for", "Since the last ride or charge, before you read the voltage. Blank: a night";
    BATTERY_KEPT: "Battery is kept", "Over the season. Blank: in the bike, connected";
    KEPT_AT: "Temperature there", "Where the battery is kept: one temperature, or twelve means from January to December";
    KEPT_COLDEST: "Coldest night there", "Where the battery is kept. Blank in a steady place: its temperature";
    METER_READS: "Meter reads", "Resting voltage at the meter check or in spring, not charged since it was parked or read before";
    METER_READ_ON: "Read on", "Day of that reading. Blank: the ride date";
    EARLIER_READING: "Earlier reading", "The first of two, for example after a charge. Blank: the resting voltage when parked";
    EARLIER_READ_ON: "Earlier reading on", "Day of it. Blank: the park date";
    CLIMATE: "Climate", "The nearest to yours: monthly normals of a weather station. Your own monthly means count before it";
    WARMER_BY: "Warmer than outdoors by", "An unheated shed or garage, mean of the winter: 0–6 °C is common practice, no source. Blank: nothing is added";
    DAY_AND_NIGHT: "Day to night", "How much warmer the day gets than the night, where it stands. Blank: a climate's own outdoors, else none";
    PARK_DATE: "Park date", "The day it is put away";
    RIDE_DATE: "Ride date", "The first ride in spring. Blank: twelve months are looked at, ages on the park date";
    WHERE_IT_STANDS: "Where it stands", "The place for the season";
    MONTHLY_MEANS: "Monthly means", "One temperature for a steady place, or twelve means from January to December with spaces between; or choose a climate";
    COLDEST_NIGHT: "Coldest night", "The coldest night to expect where it stands; freezing is judged on it. Blank with a climate: 15–20 °C under its mean night";
    UNIT_SET: "Units", "For answers and new blanks; what is typed keeps its unit";
    FASTENER_NAME: "Fastener", "A name if you want to keep it: axle nut, header nut";
    TORQUE: "Torque at the fastener", "From the manual: 25 N·m, 22–26 N·m, or both: 25 (22–26)";
    ADAPTER: "Adapter", "Crowfoot or offset adapter, and how it sits on the wrench";
    ADAPTER_LENGTH: "Adapter length, drive to fastener", "Center of the square drive to center of the fastener";
    ADAPTER_ANGLE: "Adapter angle", "0° in line with the wrench, 90° square to it, 180° pointing back to the hand";
    SELF_LOCKING: "Self-locking nut", "Nylon ring or crimped thread. Drag is added only where the manual says that its figure is without it";
    PREVAILING_TORQUE: "Prevailing torque", "What turns the nut on the thread before it seats, measured with a small wrench";
    FASTENER_NOTE: "Note", "Manual page, size of socket, where the washer lies";
    STAGES: "Stages", "Passes as the manual has them: 70 % then 100 %, 20 N·m then 45 N·m, or 30 N·m then 90°. Blank: one pass";
    BOLTS: "Bolts", "How many are tightened together, on a circle; blank for one";
    THREAD_DRESSING: "On the thread", "As the manual has it: oil on a thread that belongs dry stretches the bolt far more";
    MIND: "Mind", "What else the manual asks for";
    TURN: "Turn instead", "For a spark plug or a filter, as printed on its box, counted from where it seats: 1/2–2/3 turn, 270°";
    TAKEN_WRENCH: "Wrench taken", "Blank: the one that serves best";
    WAS_SET_TO: "Was set to", "What the wrench stood at when it clicked";
    WRENCH_KEY: "Wrench number", "Made by the page";
    THREAD: "Thread", "Diameter, and pitch where it is fine: M10, M10×1.25";
    WRENCH_NAME: "Wrench", "What you call it";
    WRENCH_LENGTH: "Wrench length, hand to square drive", "Middle of the grip to center of the square drive";
    LOWEST_MARK: "Lowest mark", "Lowest mark on the wrench";
    HIGHEST_MARK: "Highest mark", "Highest mark on the wrench";
    GRADUATION: "Graduation", "From one mark to the next, in the wrench's own unit";
    ACCURACY: "Accuracy", "From its certificate. Blank: ISO 6789, ±4 %, ±6 % up to a highest mark of 10 N·m";
    PROPERTY_CLASS: "Property class", "Stamped on the bolt's head; where nothing is stamped, nothing can be reckoned";
    FRICTION_CLASS: "Friction", "What is on the threads and under the head, with its coefficient; in doubt the more slippery one";
    THREADS_INTO: "Screwed into", "What its thread goes into";
    COOLING: "Cooling", "Without a radiator for coolant there is none to look after";
    GLYCOL: "Glycol", "On the bottle or in the manual; ethylene is the usual one";
    CONCENTRATION: "Concentration", "Glycol in what is in the bike, by volume, or the freezing point that a tester reads, −37 °C; read cold, with a tester made for that glycol: an ethylene scale misreads propylene";
    WANTED_CONCENTRATION: "Wanted concentration", "As the manual has it, mostly 50 %; never over 60 %";
    COOLANT_CIRCUIT: "Coolant circuit", "From the manual, reserve tank left out: 2.9 L with 0.4 L in reserve are 2.5 L";
    COOLANT_DRAINS: "Runs out at the drain", "What you caught the last time; the rest stays in the engine. Blank: all of the circuit";
    COOLANT_BOTTLE: "Glycol in the bottle", "100 % for concentrate. Blank: ready-mixed, 50 %";
    FRONT_PRESSURE: "Cold pressure, front", "From the manual or the sticker; cold is the day's air, not ridden for three hours";
    REAR_PRESSURE: "Cold pressure, rear", "From the manual or the sticker, for the load you ride with";
    TIRES_ARE: "Tires are", "Cold: not ridden for three hours, no sun on them";
    SET_TEMPERATURE: "Air where you set them", "Where the bike has stood for some hours, such as the garage";
    RIDE_TEMPERATURE: "Air on the first ride", "Outdoors, as you expect it: 5 °C, or a range such as 0–10 °C";
    FRONT_DATE_CODE: "Date code, front", "Last four digits of the DOT number on the sidewall, week then year: 3623 is week 36 of 2023";
    REAR_DATE_CODE: "Date code, rear", "On one side of the tire only; look at both";
    FRONT_READS: "Reads now, front", "What your gauge says where the bike stands";
    REAR_READS: "Reads now, rear", "What your gauge says where the bike stands";
    TIRE_REFERENCE: "Manual's reference", "Only where the manual prints one, such as 20 °C. Blank: its figures are for the day's air";
    ALTITUDE: "Altitude", "Where you set and ride, up to 5,000 m. Blank: sea level";
    FRONT_MAXIMUM: "Sidewall maximum, front", "Printed on the tire; only if you raise the pressure for storage";
    REAR_MAXIMUM: "Sidewall maximum, rear", "Printed on the tire; only if you raise the pressure for storage";
    NEW_TIRES: "New tires", "Those that are not run in yet";
    BRAKE_FLUID: "Brake fluid", "On the reservoir's cap and in the manual";
    CLUTCH_FLUID: "Clutch fluid", "On its reservoir's cap; a cable has none";
    BRAKE_FLUID_CHANGED: "Brake fluid changed", "The day of the last change, or its month: May 2025; the earlier one where front and rear differ";
    CLUTCH_FLUID_CHANGED: "Clutch fluid changed", "The day of the last change";
    FLUID_ON_SHELF: "Fluid on the shelf", "What you would top up with, from a sealed bottle";
    OTHER_OILS: "Other oils", "Those with an oil of their own, besides the engine's";
    FINAL_DRIVE_OIL: "Final drive oil", "From the manual: a shaft drive's fill";
    GEARBOX_OIL: "Gearbox oil", "From the manual: a gearbox that does not share the engine's oil";
    PRIMARY_OIL: "Primary oil", "From the manual: a primary chain case of its own";
    FORK_OIL: "Fork oil, each leg", "From the manual, for a change; the level or air gap decides in the end";
    TWO_STROKE_OIL: "Two-stroke oil tank", "What the oil tank holds";
    FINAL_DRIVE_PLUG: "Final drive plug", "Torque of its drain plug";
    GEARBOX_PLUG: "Gearbox plug", "Torque of its drain plug";
    PRIMARY_PLUG: "Primary plug", "Torque of its drain plug";
    FORK_PLUG: "Fork plug", "Torque of its drain bolt, where it has one";
    FINAL_DRIVE_OIL_CHANGED: "Final drive oil changed", "The day of the last change";
    GEARBOX_OIL_CHANGED: "Gearbox oil changed", "The day of the last change";
    PRIMARY_OIL_CHANGED: "Primary oil changed", "The day of the last change";
    FORK_OIL_CHANGED: "Fork oil changed", "The day of the last change";
    TWO_STROKE_OIL_CHANGED: "Two-stroke oil filled", "The day the oil in the tank is from";
    FINAL_DRIVE: "Final drive", "What turns the rear wheel";
    LAY_UP_DONE: "Lay-up, done", "Steps that are ticked";
    LAY_UP_LEFT_OUT: "Lay-up, left out", "Steps that are left out, each with its reason";
    WAKE_UP_DONE: "Wake-up, done", "Steps that are ticked";
    WAKE_UP_LEFT_OUT: "Wake-up, left out", "Steps that are left out, each with its reason";
    WHERE_THINGS_LIE: "Where things lie", "Keys on the hook, seat bolts in the blue tin, battery in the hall";
    PAPERS_DUE: "Papers due", "The first of them: inspection, insurance or registration";
    OWN_LAY_UP: "Lay-up, steps of your own", "With ; between";
    OWN_WAKE_UP: "Wake-up, steps of your own", "With ; between";
    OWN_LAY_UP_DONE: "Lay-up, own steps done", "Steps that are ticked";
    OWN_WAKE_UP_DONE: "Wake-up, own steps done", "Steps that are ticked";
    ARCHIVED: "Archived", "The day it left the list of bikes";
}
