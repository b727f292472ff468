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
    COLD_ONLY: "cold only";
    LEFT_HAND: "left-hand thread";
    COTTER_PIN: "cotter pin";
    NEW_WASHER: "new washer";
    NEW_BOLT: "new bolt or nut";
    LOOSEN_FIRST: "loosen, then tighten";
}
