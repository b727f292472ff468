//! What each answer of a choice is called.

macro_rules! labels {
    ($($name:ident: $label:literal;)*) => { $(#[doc = $label] pub const $name: &str = $label;)* };
}
labels! {
    INJECTION: "injection";
    CARBURETOR: "carburetor";
    DRAIN_ONLY: "drain only";
    WITH_FILTER: "with filter";
    AFTER_OVERHAUL: "after overhaul";
    FLOODED_ANTIMONY: "conventional, filler caps";
    AGM: "sealed, “MF” or AGM";
    GEL: "gel";
    FLOODED_CALCIUM: "sealed flooded, car type";
    LIFEPO4: "LiFePO4";
    HEATED: "heated";
    UNHEATED: "unheated";
    OUTDOORS: "outdoors";
    METRIC: "metric";
    US: "US";
    NO_ADAPTER: "none";
    IN_LINE: "in line";
    RIGHT_ANGLE: "right angle";
    POINTING_BACK: "pointing back";
    OTHER_ANGLE: "other angle";
    NOT_SELF_LOCKING: "no";
    DRAG_INSIDE: "yes, figure as it stands";
    DRAG_ON_TOP: "yes, manual says “without drag”";
    DRY: "dry";
    OILED: "oil";
    GREASED: "grease";
    THREAD_LOCK: "thread-lock";
    THREAD_DRY: "thread dry";
    THREAD_OILED: "thread oiled";
    THREAD_GREASED: "thread greased";
    MIND_LEFT_HAND: "left-hand thread: tightens counterclockwise, with a wrench that clicks that way";
    MIND_COTTER_PIN: "cotter pin: on to the next slot, never back";
    MIND_THREAD_LOCK: "thread-lock, on a clean thread, fresh each time";
    COLD_ONLY: "cold only";
    LEFT_HAND: "left-hand thread";
    COTTER_PIN: "cotter pin";
    NEW_WASHER: "new washer";
    NEW_BOLT: "new bolt or nut";
    LOOSEN_FIRST: "loosen, then tighten";
    P4_6: "4.6";
    P4_8: "4.8";
    P5_6: "5.6";
    P5_8: "5.8";
    P6_8: "6.8";
    P8_8: "8.8";
    P9_8: "9.8";
    P10_9: "10.9";
    P12_9: "12.9";
    A2_70: "A2-70, stainless";
    A4_80: "A4-80, stainless";
    SOLID_LUBRICANT: "solid lubricant, paste or wax (0.04–0.10)";
    GREASE_OR_OIL: "grease or oil (0.08–0.16)";
    AS_DELIVERED: "as delivered, lightly oiled; zinc plated (0.14–0.24)";
    GALVANIZED_DRY: "hot-dip galvanized, dry; stainless, oiled (0.20–0.35)";
    STEEL: "a steel nut or steel thread";
    LIGHT_METAL: "aluminum or magnesium, gasket or not";
    GASKET: "steel, with a gasket or crush washer";
}
