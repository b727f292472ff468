//! What a choice's codes and keys stand for. Those of oil and fuel are in `fluids`.

use super::{Choice, Chosen};
use crate::battery::{AcidScale, Chemistry};
use crate::brake::{Clutch, Fluid};
use crate::coolant::{Cooling, Glycol};
use crate::oil::{Job, OtherOil};
use crate::season::places;
use crate::tire::{TiresAre, Wheel};
use crate::torque::{FrictionClass, PropertyClass};
use crate::units::UnitSet;
use crate::words::choices as label;

/// A choice's answers with the value each stands for; codes and keys are frozen for ever.
macro_rules! choices {
    ($($list:ident: $type:ty { $($code:literal $key:literal $label:ident => $value:expr,)+ })+) => {
        $(
            pub(super) static $list: &[Choice] = &[$(Choice { code: $code, key: $key, label: label::$label }),+];
            impl Chosen for $type {
                fn of_code(code: u8) -> Option<Self> {
                    match code { $($code => Some($value),)+ _ => None }
                }
            }
        )+
    };
}
pub(super) use choices;

choices! {
    COOLINGS: Cooling {
        1 "liquid" LIQUID => Cooling::Liquid,
        2 "air" AIR_OR_OIL => Cooling::Air,
    }
    GLYCOLS: Glycol {
        1 "ethylene" ETHYLENE => Glycol::Ethylene,
        2 "propylene" PROPYLENE => Glycol::Propylene,
    }
    TIRES_COLD_OR_WARM: TiresAre {
        1 "cold" COLD => TiresAre::Cold,
        2 "warm" STILL_WARM => TiresAre::Warm,
    }
    WHEELS: Wheel {
        1 "front" FRONT => Wheel::Front,
        2 "rear" REAR => Wheel::Rear,
    }
    FLUIDS: Fluid {
        1 "dot3" DOT_3 => Fluid::Dot3,
        2 "dot4" DOT_4 => Fluid::Dot4,
        3 "dot5" DOT_5 => Fluid::Dot5,
        4 "dot51" DOT_5_1 => Fluid::Dot51,
        5 "mineral" MINERAL_OIL => Fluid::Mineral,
    }
    CLUTCH_FLUIDS: Clutch {
        1 "dot3" DOT_3 => Clutch::Hydraulic(Fluid::Dot3),
        2 "dot4" DOT_4 => Clutch::Hydraulic(Fluid::Dot4),
        3 "dot5" DOT_5 => Clutch::Hydraulic(Fluid::Dot5),
        4 "dot51" DOT_5_1 => Clutch::Hydraulic(Fluid::Dot51),
        5 "mineral" MINERAL_OIL => Clutch::Hydraulic(Fluid::Mineral),
        6 "cable" CABLE => Clutch::Cable,
    }
    OTHER_OILS_THERE: OtherOil {
        1 "final_drive" FINAL_DRIVE => OtherOil::FinalDrive,
        2 "gearbox" GEARBOX => OtherOil::Gearbox,
        3 "primary" PRIMARY => OtherOil::Primary,
        4 "fork" FORK => OtherOil::Fork,
        5 "two_stroke" TWO_STROKE => OtherOil::TwoStroke,
        6 "none" NO_OTHER_OIL => OtherOil::None,
    }
}

/// How the engine gets its fuel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FuelSupply {
    /// Fuel is displaced along line and rail.
    Injection,
    /// Fuel mixes in the bowls.
    Carburetor,
}

/// Where the bike stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// A steady temperature.
    Heated,
    /// A shed or garage that follows the weather.
    Unheated,
    /// Under a cover.
    Outdoors,
}

/// How an offset adapter sits on the wrench.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Adapter {
    /// Socket straight on the drive.
    None,
    /// 0°.
    InLine,
    /// 90°.
    RightAngle,
    /// 180°.
    PointingBack,
    /// As measured.
    OtherAngle,
}

/// Whether a nut locks itself, and what the manual's figure holds of its drag.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SelfLocking {
    /// It turns freely until it seats.
    No,
    /// The manual's figure is what the wrench shows, drag and all.
    DragInside,
    /// The manual says that its figure is without drag.
    DragOnTop,
}

/// What is on a thread when it is tightened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dressing {
    /// Clean and dry.
    Dry,
    /// Engine oil.
    Oil,
    /// Grease or paste.
    Grease,
    /// Thread-lock.
    ThreadLock,
}

/// Something that a fastener wants besides its torque.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mind {
    /// Engine and header cold.
    ColdOnly,
    /// Turns the other way.
    LeftHand,
    /// On to the next slot, never back.
    CotterPin,
    /// Each time.
    NewWasher,
    /// Each time, bolt or nut.
    NewBolt,
    /// Loosened, then tightened.
    LoosenFirst,
}

/// What a bolt is screwed into.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ThreadsInto {
    /// A steel nut or a steel thread.
    Steel,
    /// Aluminum or magnesium, whose thread gives way before the bolt.
    LightMetal,
    /// Anything, with a gasket, a crush washer or an O-ring that decides.
    Gasket,
}

/// A station's normals.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Climate(pub &'static places::Place);

/// Where the battery is over the season, and what is on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BatteryKept {
    /// Connected: the bike draws on it.
    InBike,
    /// In the bike, negative lead off.
    LeadOff,
    /// Taken out, in a place of its own.
    Elsewhere,
    /// On a maintainer all the time.
    Maintainer,
}

/// What turns the rear wheel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FinalDrive {
    /// Cleaned and lubricated, its slack set.
    Chain,
    /// Looked at.
    Belt,
    /// With an oil of its own.
    Shaft,
}

choices! {
    FINAL_DRIVES: FinalDrive {
        1 "chain" CHAIN => FinalDrive::Chain,
        2 "belt" BELT => FinalDrive::Belt,
        3 "shaft" SHAFT => FinalDrive::Shaft,
    }
    SELF_LOCKINGS: SelfLocking {
        1 "no" NOT_SELF_LOCKING => SelfLocking::No,
        2 "drag_inside" DRAG_INSIDE => SelfLocking::DragInside,
        3 "drag_on_top" DRAG_ON_TOP => SelfLocking::DragOnTop,
    }
    DRESSINGS: Dressing {
        1 "dry" DRY => Dressing::Dry,
        2 "oil" OILED => Dressing::Oil,
        3 "grease" GREASED => Dressing::Grease,
        4 "thread_lock" THREAD_LOCK => Dressing::ThreadLock,
    }
    MINDS: Mind {
        1 "cold_only" COLD_ONLY => Mind::ColdOnly,
        2 "left_hand" LEFT_HAND => Mind::LeftHand,
        3 "cotter_pin" COTTER_PIN => Mind::CotterPin,
        4 "new_washer" NEW_WASHER => Mind::NewWasher,
        5 "new_bolt" NEW_BOLT => Mind::NewBolt,
        6 "loosen_first" LOOSEN_FIRST => Mind::LoosenFirst,
    }
    FUEL_SUPPLIES: FuelSupply {
        1 "injection" INJECTION => FuelSupply::Injection,
        2 "carburetor" CARBURETOR => FuelSupply::Carburetor,
    }
    JOBS: Job {
        1 "drain_only" DRAIN_ONLY => Job::DrainOnly,
        2 "with_filter" WITH_FILTER => Job::WithFilter,
        3 "after_overhaul" AFTER_OVERHAUL => Job::AfterOverhaul,
    }
    CHEMISTRIES: Chemistry {
        1 "flooded_antimony" FLOODED_ANTIMONY => Chemistry::FloodedAntimony,
        2 "agm" AGM => Chemistry::Agm,
        3 "gel" GEL => Chemistry::Gel,
        4 "flooded_calcium" FLOODED_CALCIUM => Chemistry::FloodedCalcium,
        5 "lifepo4" LIFEPO4 => Chemistry::LiFePO4,
    }
    PLACES: Place {
        1 "heated" HEATED => Place::Heated,
        2 "unheated" UNHEATED => Place::Unheated,
        3 "outdoors" OUTDOORS => Place::Outdoors,
    }
    UNIT_SETS: UnitSet {
        1 "metric" METRIC => UnitSet::Metric,
        2 "us" US => UnitSet::Us,
    }
    ADAPTERS: Adapter {
        1 "none" NO_ADAPTER => Adapter::None,
        2 "in_line" IN_LINE => Adapter::InLine,
        3 "right_angle" RIGHT_ANGLE => Adapter::RightAngle,
        4 "pointing_back" POINTING_BACK => Adapter::PointingBack,
        5 "other_angle" OTHER_ANGLE => Adapter::OtherAngle,
    }
    PROPERTY_CLASSES: PropertyClass {
        1 "4.6" P4_6 => PropertyClass::P4_6,
        2 "4.8" P4_8 => PropertyClass::P4_8,
        3 "5.6" P5_6 => PropertyClass::P5_6,
        4 "5.8" P5_8 => PropertyClass::P5_8,
        5 "6.8" P6_8 => PropertyClass::P6_8,
        6 "8.8" P8_8 => PropertyClass::P8_8,
        7 "9.8" P9_8 => PropertyClass::P9_8,
        8 "10.9" P10_9 => PropertyClass::P10_9,
        9 "12.9" P12_9 => PropertyClass::P12_9,
        10 "a2_70" A2_70 => PropertyClass::A2_70,
        11 "a4_80" A4_80 => PropertyClass::A4_80,
    }
    FRICTION_CLASSES: FrictionClass {
        1 "solid_lubricant" SOLID_LUBRICANT => FrictionClass::A,
        2 "grease_or_oil" GREASE_OR_OIL => FrictionClass::B,
        3 "as_delivered" AS_DELIVERED => FrictionClass::C,
        4 "galvanized_dry" GALVANIZED_DRY => FrictionClass::D,
    }
    THREADS_INTO_WHAT: ThreadsInto {
        1 "steel" STEEL => ThreadsInto::Steel,
        2 "light_metal" LIGHT_METAL => ThreadsInto::LightMetal,
        3 "gasket" GASKET => ThreadsInto::Gasket,
    }
    CLIMATES: Climate {
        1 "acadia_me" ACADIA => Climate(&places::PLACES[0]),
        2 "bettles_ak" BETTLES => Climate(&places::PLACES[1]),
        3 "buffalo_ny" BUFFALO => Climate(&places::PLACES[2]),
        4 "kabetogama_mn" KABETOGAMA => Climate(&places::PLACES[3]),
        5 "medora_nd" MEDORA => Climate(&places::PLACES[4]),
        6 "montreal_qc" MONTREAL => Climate(&places::PLACES[5]),
        7 "ottawa_on" OTTAWA => Climate(&places::PLACES[6]),
        8 "west_glacier_mt" WEST_GLACIER => Climate(&places::PLACES[7]),
        9 "winnipeg_mb" WINNIPEG => Climate(&places::PLACES[8]),
    }
    BATTERIES_KEPT: BatteryKept {
        1 "in_bike" IN_BIKE => BatteryKept::InBike,
        2 "lead_off" LEAD_OFF => BatteryKept::LeadOff,
        3 "elsewhere" ELSEWHERE => BatteryKept::Elsewhere,
        4 "maintainer" MAINTAINER => BatteryKept::Maintainer,
    }
    ACID_SCALES: AcidScale {
        1 "1265" TO_1265 => AcidScale::To1265,
        2 "1280" TO_1280 => AcidScale::To1280,
    }
}
