//! Labels of answers.

macro_rules! labels {
    ($($name:ident: $label:literal;)*) => { $(#[doc = $label] pub const $name: &str = $label;)* };
}
labels! {
    DAYS_STORED: "Days stored";
    STABILIZER_TO_ADD: "Stabilizer to add";
    FUEL_TO_ADD: "Fuel to add";
    AT_HIGHEST_DOSE: "At the highest dose";
    MEASURED_AS: "Measured as";
    FUEL_LEFT: "In the tank, reckoned";
    MOST_FILL: "Fill to at most";
    FUEL_AGE: "Days old on the ride date";
    WATER_BREATHED: "Water breathed in";
    WATER_HELD: "Water the fuel holds";
    WATER_SHED: "Water it sheds on cooling";
    WHY_FULL: "What a full tank does";
    TAP_AND_BOWLS: "Tap and bowls";
    RUN_THROUGH: "Run treated fuel through";
    FUEL_TO_DRAW: "Old fuel to draw";
    OIL_NEEDED: "Oil needed";
    FIRST_POUR: "First pour";
    TOP_UP: "Top up after the run";
    BOTTLES_TO_BUY: "Bottles to buy";
    LEFT_OVER: "Left over";
    FILTER_ALLOWANCE: "Filter allowance";
    FEWEST_BOTTLES: "Fewest bottles instead";
    ADD_BY_LEVEL: "Add, by the level";
    TAKE_OUT: "Take out, by the level";
    LEVEL_CHECK: "How to look";
    USED_OIL: "Used oil to catch";
    HEAT_GROWTH: "Stands higher when read";
    CRANKS_TO: "Grade cranks down to";
    PUMPS_TO: "Grade pumps down to";
    CLUTCH: "Oil for the clutch";
    SET_TO: "Set the wrench to";
    EXACT_SETTING: "Exact setting";
    FASTENER_GETS: "Fastener gets";
    ROUNDING: "Rounding to a mark";
    WITH_DRAG: "Torque with drag";
    TURN: "Turn instead";
    TURN_ON: "Turn on by";
    STAGES: "Stages";
    BY_TABLE: "From the general table";
    TORQUE_LIST: "Torque list";
    SCALE: "Scale";
    IT_GOT: "It got";
    HAND_OFF_METRIC: "Hand 50 mm nearer the drive";
    HAND_OFF_US: "Hand 2 in nearer the drive";
    ANGLE_OFF: "Adapter turned 5° farther";
    CHARGE_ON_RIDE_DATE: "Charge on ride date";
    VOLTAGE_ON_RIDE_DATE: "Resting voltage on ride date";
    LOOK_BY: "Look at the meter by";
    RECHARGE_BY: "Recharge by";
    FREEZE_MARGIN: "Freeze margin";
    TORQUE_ESTIMATED: "Torque, estimated";
    PRELOAD: "Preload";
    SHARE_OF_PROOF: "Share of proof load";
    EQUIVALENT_K: "Equivalent K";
    PRELOAD_SCATTER: "Preload scatter";
    OIL_ON_DRY: "Preload rise with oil on a dry thread";
}
