//! The table of facts: its frozen numbers, keys and homes, its words, and how a lack is said.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::collections::BTreeSet;
use torpor::entry::Entry;
use torpor::facts::{self, Fact, Home, Id, Kind, Lack, Lacks, TABLE, Told, all3, both};
use torpor::garage::Entries;

/// Frozen form: number, key and home of each fact. Records and links carry the numbers, backups the keys; a line here is
/// never changed or taken away, only added.
const FROZEN: &[(u16, &str, Home)] = &[
    (1, "bike_name", Home::Bike),
    (10, "tank_volume", Home::Bike),
    (11, "fuel_in_tank", Home::Season),
    (12, "fill_to", Home::Season),
    (13, "stabilizer_label", Home::Garage),
    (14, "already_treated", Home::Season),
    (15, "fuel_supply", Home::Bike),
    (16, "line_volume", Home::Bike),
    (17, "bowls_volume", Home::Bike),
    (18, "consumption", Home::Bike),
    (19, "general_torques", Home::Bike),
    (20, "highest_dose", Home::Garage),
    (21, "label_measures", Home::Garage),
    (22, "fill_temperature", Home::Season),
    (23, "warmest_fuel", Home::Season),
    (24, "since_full", Home::Season),
    (25, "fuel_bought", Home::Season),
    (26, "fuel_type", Home::Bike),
    (27, "fuel_tap", Home::Bike),
    (28, "bowls", Home::Season),
    (30, "oil_change", Home::Season),
    (31, "fill_with_filter", Home::Bike),
    (32, "fill_without_filter", Home::Bike),
    (33, "fill_after_overhaul", Home::Bike),
    (34, "between_marks", Home::Bike),
    (35, "level_read_at", Home::Bike),
    (36, "level_stand", Home::Bike),
    (37, "level_engine", Home::Bike),
    (38, "level_minutes", Home::Bike),
    (39, "check_temperature", Home::Bike),
    (40, "bottle_size", Home::Garage),
    (41, "oil_on_shelf", Home::Garage),
    (42, "oil_density", Home::Garage),
    (43, "pour_temperature", Home::Season),
    (44, "oil_grade", Home::Garage),
    (45, "jaso_class", Home::Garage),
    (46, "wet_clutch", Home::Bike),
    (47, "level_reads", Home::Season),
    (48, "coldest_start", Home::Season),
    (50, "chemistry", Home::Bike),
    (51, "capacity", Home::Bike),
    (52, "charge_when_parked", Home::Season),
    (53, "resting_voltage", Home::Season),
    (54, "key_off_draw", Home::Bike),
    (55, "charge_below", Home::Bike),
    (56, "charger_current", Home::Garage),
    (57, "specific_gravity", Home::Season),
    (58, "read_at", Home::Season),
    (59, "acid_scale", Home::Bike),
    (60, "park_date", Home::Season),
    (61, "ride_date", Home::Season),
    (62, "where_it_stands", Home::Garage),
    (63, "monthly_means", Home::Garage),
    (64, "coldest_night", Home::Garage),
    (65, "unit_set", Home::Garage),
    (66, "climate", Home::Garage),
    (67, "warmer_by", Home::Garage),
    (68, "day_and_night", Home::Garage),
    (69, "battery_kept", Home::Season),
    (70, "fastener_name", Home::Fastener),
    (71, "torque", Home::Fastener),
    (72, "adapter", Home::Fastener),
    (73, "adapter_length", Home::Fastener),
    (74, "adapter_angle", Home::Fastener),
    (75, "self_locking", Home::Fastener),
    (76, "prevailing_torque", Home::Fastener),
    (77, "thread", Home::Fastener),
    (78, "fastener_note", Home::Fastener),
    (79, "stages", Home::Fastener),
    (80, "wrench_name", Home::Wrench),
    (81, "wrench_length", Home::Wrench),
    (82, "lowest_mark", Home::Wrench),
    (83, "highest_mark", Home::Wrench),
    (84, "graduation", Home::Wrench),
    (85, "accuracy", Home::Wrench),
    (86, "wrench_key", Home::Wrench),
    (90, "bolts", Home::Fastener),
    (91, "thread_dressing", Home::Fastener),
    (92, "mind", Home::Fastener),
    (93, "turn", Home::Fastener),
    (94, "taken_wrench", Home::Fastener),
    (95, "was_set_to", Home::Fastener),
    (96, "property_class", Home::Fastener),
    (97, "friction_class", Home::Fastener),
    (98, "threads_into", Home::Fastener),
    (100, "cooling", Home::Bike),
    (101, "glycol", Home::Bike),
    (102, "concentration", Home::Season),
    (103, "wanted_concentration", Home::Bike),
    (104, "coolant_circuit", Home::Bike),
    (105, "coolant_drains", Home::Bike),
    (106, "coolant_bottle", Home::Garage),
    (107, "front_pressure", Home::Bike),
    (108, "rear_pressure", Home::Bike),
    (109, "tires_are", Home::Season),
    (110, "set_temperature", Home::Season),
    (111, "ride_temperature", Home::Season),
    (112, "front_date_code", Home::Bike),
    (113, "rear_date_code", Home::Bike),
    (114, "front_reads", Home::Season),
    (115, "rear_reads", Home::Season),
    (116, "tire_reference", Home::Bike),
    (117, "altitude", Home::Garage),
    (118, "front_maximum", Home::Bike),
    (119, "rear_maximum", Home::Bike),
    (120, "new_tires", Home::Season),
    (122, "brake_fluid", Home::Bike),
    (123, "clutch_fluid", Home::Bike),
    (124, "brake_fluid_changed", Home::Bike),
    (125, "clutch_fluid_changed", Home::Bike),
    (126, "fluid_on_shelf", Home::Garage),
    (128, "other_oils", Home::Bike),
    (129, "final_drive_oil", Home::Bike),
    (130, "gearbox_oil", Home::Bike),
    (131, "primary_oil", Home::Bike),
    (132, "fork_oil", Home::Bike),
    (133, "two_stroke_oil", Home::Bike),
    (134, "final_drive_plug", Home::Bike),
    (135, "gearbox_plug", Home::Bike),
    (136, "primary_plug", Home::Bike),
    (137, "fork_plug", Home::Bike),
    (138, "final_drive_oil_changed", Home::Bike),
    (139, "gearbox_oil_changed", Home::Bike),
    (140, "primary_oil_changed", Home::Bike),
    (141, "fork_oil_changed", Home::Bike),
    (142, "two_stroke_oil_changed", Home::Bike),
    (144, "kept_at", Home::Season),
    (145, "kept_coldest", Home::Season),
    (146, "meter_reads", Home::Season),
    (147, "meter_read_on", Home::Season),
    (148, "earlier_reading", Home::Season),
    (149, "earlier_read_on", Home::Season),
    (150, "rested", Home::Season),
    (151, "final_drive", Home::Bike),
    (152, "lay_up_done", Home::Season),
    (153, "lay_up_left_out", Home::Season),
    (154, "wake_up_done", Home::Season),
    (155, "wake_up_left_out", Home::Season),
    (156, "where_things_lie", Home::Season),
    (157, "papers_due", Home::Bike),
    (158, "odometer", Home::Bike),
    (159, "intervals", Home::Bike),
    (160, "own_lay_up", Home::Bike),
    (161, "own_wake_up", Home::Bike),
    (162, "own_lay_up_done", Home::Season),
    (163, "own_wake_up_done", Home::Season),
    (164, "archived", Home::Bike),
    (170, "log_day", Home::Log),
    (171, "log_line", Home::Log),
    (172, "log_odometer", Home::Log),
    (173, "log_figures", Home::Log),
    (174, "log_note", Home::Log),
    (175, "oil_poured", Home::Log),
    (176, "oil_drained", Home::Log),
    (177, "log_step", Home::Log),
    (178, "season_mark", Home::Season),
    (179, "bike_key", Home::Bike),
];

/// Frozen form: fact, code and key of each choice.
const FROZEN_CHOICES: &[(u16, &[(u8, &str)])] = &[
    (15, &[(1, "injection"), (2, "carburetor")]),
    (21, &[(1, "us"), (2, "imperial")]),
    (26, &[(1, "e10"), (2, "e0")]),
    (27, &[(1, "manual"), (2, "vacuum"), (3, "none")]),
    (28, &[(1, "drained"), (2, "full")]),
    (30, &[(1, "drain_only"), (2, "with_filter"), (3, "after_overhaul")]),
    (35, &[(1, "glass"), (2, "stick_rested"), (3, "stick_screwed"), (4, "oil_tank")]),
    (36, &[(1, "upright"), (2, "center_stand"), (3, "side_stand")]),
    (37, &[(1, "warm"), (2, "cold")]),
    (45, &[(1, "ma"), (2, "ma1"), (3, "ma2"), (4, "mb"), (5, "none")]),
    (46, &[(1, "yes"), (2, "no")]),
    (
        50,
        &[(1, "flooded_antimony"), (2, "agm"), (3, "gel"), (4, "flooded_calcium"), (5, "lifepo4")],
    ),
    (59, &[(1, "1265"), (2, "1280")]),
    (62, &[(1, "heated"), (2, "unheated"), (3, "outdoors")]),
    (65, &[(1, "metric"), (2, "us")]),
    (
        66,
        &[
            (1, "acadia_me"),
            (2, "bettles_ak"),
            (3, "buffalo_ny"),
            (4, "kabetogama_mn"),
            (5, "medora_nd"),
            (6, "montreal_qc"),
            (7, "ottawa_on"),
            (8, "west_glacier_mt"),
            (9, "winnipeg_mb"),
        ],
    ),
    (69, &[(1, "in_bike"), (2, "lead_off"), (3, "elsewhere"), (4, "maintainer")]),
    (
        72,
        &[
            (1, "none"),
            (2, "in_line"),
            (3, "right_angle"),
            (4, "pointing_back"),
            (5, "other_angle"),
        ],
    ),
    (75, &[(1, "no"), (2, "drag_inside"), (3, "drag_on_top")]),
    (91, &[(1, "dry"), (2, "oil"), (3, "grease"), (4, "thread_lock")]),
    (
        92,
        &[
            (1, "cold_only"),
            (2, "left_hand"),
            (3, "cotter_pin"),
            (4, "new_washer"),
            (5, "new_bolt"),
            (6, "loosen_first"),
        ],
    ),
    (
        96,
        &[
            (1, "4.6"),
            (2, "4.8"),
            (3, "5.6"),
            (4, "5.8"),
            (5, "6.8"),
            (6, "8.8"),
            (7, "9.8"),
            (8, "10.9"),
            (9, "12.9"),
            (10, "a2_70"),
            (11, "a4_80"),
        ],
    ),
    (
        97,
        &[(1, "solid_lubricant"), (2, "grease_or_oil"), (3, "as_delivered"), (4, "galvanized_dry")],
    ),
    (98, &[(1, "steel"), (2, "light_metal"), (3, "gasket")]),
    (100, &[(1, "liquid"), (2, "air")]),
    (101, &[(1, "ethylene"), (2, "propylene")]),
    (109, &[(1, "cold"), (2, "warm")]),
    (120, &[(1, "front"), (2, "rear")]),
    (122, &[(1, "dot3"), (2, "dot4"), (3, "dot5"), (4, "dot51"), (5, "mineral")]),
    (123, &[(1, "dot3"), (2, "dot4"), (3, "dot5"), (4, "dot51"), (5, "mineral"), (6, "cable")]),
    (126, &[(1, "dot3"), (2, "dot4"), (3, "dot5"), (4, "dot51"), (5, "mineral")]),
    (
        128,
        &[
            (1, "final_drive"),
            (2, "gearbox"),
            (3, "primary"),
            (4, "fork"),
            (5, "two_stroke"),
            (6, "none"),
        ],
    ),
    (151, &[(1, "chain"), (2, "belt"), (3, "shaft")]),
    (
        152,
        &[
            (1, "wash"),
            (2, "coolant"),
            (3, "fuel"),
            (4, "last-run"),
            (5, "chain"),
            (6, "oil"),
            (7, "other-oils"),
            (8, "tap-and-bowls"),
            (9, "close"),
            (10, "tires"),
            (11, "torques"),
            (12, "brakes"),
            (13, "controls"),
            (14, "corrosion"),
            (15, "battery"),
            (16, "weight"),
            (17, "where"),
            (18, "cover"),
        ],
    ),
    (
        154,
        &[
            (1, "uncover"),
            (2, "open"),
            (3, "fuel"),
            (4, "levels"),
            (5, "battery"),
            (6, "stands"),
            (7, "tires"),
            (8, "fasteners"),
            (9, "chain"),
            (10, "papers"),
            (11, "before-moving"),
            (12, "first-start"),
            (13, "first-ride"),
            (14, "look-again"),
            (15, "due"),
        ],
    ),
];

/// Frozen form: codes of usual fastener names in a link.
const FROZEN_NAMES: &[(u8, &str)] = &[
    (1, "Axle nut"),
    (2, "Axle pinch bolt"),
    (3, "Drain plug"),
    (4, "Oil filter"),
    (5, "Spark plug"),
    (6, "Header nut"),
    (7, "Caliper bolt"),
    (8, "Brake disc bolt"),
    (9, "Sprocket nut"),
    (10, "Countershaft nut"),
    (11, "Triple clamp bolt"),
    (12, "Fork drain bolt"),
    (13, "Steering stem nut"),
    (14, "Swingarm pivot nut"),
    (15, "Shock bolt"),
    (16, "Handlebar clamp bolt"),
    (17, "Engine mount bolt"),
    (18, "Footpeg bolt"),
    (19, "Cylinder head nut"),
    (20, "Valve cover bolt"),
    (21, "Clutch cover bolt"),
    (22, "Banjo bolt"),
    (23, "Rear axle nut"),
    (24, "Front axle nut"),
];

/// Frozen form.
#[test]
fn numbers_keys_and_homes_are_frozen() {
    let now: Vec<_> = TABLE.iter().map(|it| (it.id.0, it.key, it.home)).collect();
    for frozen in FROZEN {
        assert!(now.contains(frozen), "{frozen:?} was changed or taken away");
    }
    assert_eq!(now, FROZEN, "a new fact has to be added to the frozen list");
}

/// Frozen form.
#[test]
fn choices_are_frozen() {
    let now: Vec<(u16, Vec<(u8, &str)>)> = TABLE
        .iter()
        .filter_map(|it| match it.kind {
            Kind::Choice(all) | Kind::Several(all) => {
                Some((it.id.0, all.iter().map(|it| (it.code, it.key)).collect()))
            }
            _ => None,
        })
        .collect();
    let frozen: Vec<_> = FROZEN_CHOICES.iter().map(|(id, all)| (*id, all.to_vec())).collect();
    assert_eq!(now, frozen);
}

/// Frozen form.
#[test]
fn usual_fastener_names_are_frozen() {
    use torpor::words::fasteners;
    let now: Vec<_> =
        (0..=u8::MAX).filter_map(|it| fasteners::name(it).map(|name| (it, name))).collect();
    assert_eq!(now, FROZEN_NAMES);
    for (code, name) in FROZEN_NAMES {
        assert_eq!(fasteners::code(name), Some(*code));
    }
    assert_eq!(fasteners::all().count(), FROZEN_NAMES.len());
}

/// The lookup is a binary search, so the numbers ascend; keys name one fact each.
#[test]
fn numbers_ascend_and_keys_are_unique() {
    assert!(TABLE.is_sorted_by(|one, next| one.id < next.id));
    let keys: BTreeSet<_> = TABLE.iter().map(|it| it.key).collect();
    assert_eq!(keys.len(), TABLE.len());
    let labels: BTreeSet<_> = TABLE.iter().map(|it| it.label).collect();
    assert_eq!(labels.len(), TABLE.len(), "two facts with one label cannot be told apart");
    for about in TABLE {
        assert!(facts::about(about.id).is_some_and(|it| std::ptr::eq(it, *about)), "{}", about.key);
    }
    for unknown in [0, 2, 9, 29, 99, u16::MAX] {
        assert!(facts::about(Id(unknown)).is_none());
    }
}

/// Every fact is said in words, and every choice too.
#[test]
fn words_are_not_empty() {
    for about in TABLE {
        assert!(!about.label.trim().is_empty(), "label of {}", about.key);
        assert!(!about.hint.trim().is_empty(), "hint of {}", about.key);
        assert!(
            !about.hint.ends_with('.'),
            "a hint is no sentence with a full stop: {}",
            about.key
        );
        if let Kind::Choice(all) = about.kind {
            assert!(all.len() > 1 && all.iter().all(|it| !it.label.is_empty()), "{}", about.key);
            let codes: BTreeSet<_> = all.iter().map(|it| it.code).collect();
            assert_eq!(codes.len(), all.len(), "{}", about.key);
            assert!(all.iter().all(|it| it.code > 0), "0 is kept free in {}", about.key);
        }
    }
}

/// Limits are in order and in a unit of their measure, and one dimension has one limit.
#[test]
fn limits_make_sense() {
    for about in TABLE {
        let Kind::Quantity { limits, .. } = &about.kind else { continue };
        assert!(!limits.is_empty(), "{}", about.key);
        let mut dimensions = Vec::new();
        for limit in *limits {
            assert!(limit.low < limit.high, "{}", about.key);
            assert_eq!(limit.measure.dimension(), Some(limit.unit.dimension), "{}", about.key);
            assert!(!dimensions.contains(&limit.unit.dimension), "{}", about.key);
            dimensions.push(limit.unit.dimension);
        }
        for set in [torpor::units::UnitSet::Metric, torpor::units::UnitSet::Us] {
            let offered = about.offered(set);
            assert!(offered.iter().all(|it| dimensions.contains(&it.dimension)), "{}", about.key);
        }
    }
}

/// A blank is missing where it is asked for, and none where it may be.
#[test]
fn a_blank_is_a_lack_of_its_own_fact() {
    fn blank<T: std::fmt::Debug>(fact: &Fact<T>) {
        for from in [Entries::new(), Entries::from([(fact.id(), Entry::new(" \u{a0}", 0))])] {
            assert_eq!(fact.of(&from).unwrap_err().to_vec(), [Lack::Missing(fact.id())]);
            assert!(fact.maybe(&from).unwrap().is_none());
        }
    }
    macro_rules! each {
        ($($name:ident)*) => {{
            $(blank(&facts::$name);)*
            [$(stringify!($name)),*]
        }};
    }
    let named = each! {
        BIKE_NAME TANK_VOLUME FUEL_IN_TANK FILL_TO STABILIZER_LABEL ALREADY_TREATED FUEL_SUPPLY LINE_VOLUME
        BOWLS_VOLUME CONSUMPTION GENERAL_TORQUES
        HIGHEST_DOSE LABEL_MEASURES FILL_TEMPERATURE WARMEST_FUEL SINCE_FULL FUEL_BOUGHT FUEL_TYPE FUEL_TAP BOWLS OIL_CHANGE FILL_WITH_FILTER FILL_WITHOUT_FILTER FILL_AFTER_OVERHAUL BETWEEN_MARKS
        LEVEL_READ_AT LEVEL_STAND LEVEL_ENGINE LEVEL_MINUTES CHECK_TEMPERATURE
        BOTTLE_SIZE OIL_ON_SHELF OIL_DENSITY POUR_TEMPERATURE OIL_GRADE JASO_CLASS WET_CLUTCH LEVEL_READS COLDEST_START
        CHEMISTRY CAPACITY CHARGE_WHEN_PARKED RESTING_VOLTAGE KEY_OFF_DRAW CHARGE_BELOW
        CHARGER_CURRENT SPECIFIC_GRAVITY READ_AT ACID_SCALE PARK_DATE RIDE_DATE WHERE_IT_STANDS MONTHLY_MEANS COLDEST_NIGHT UNIT_SET CLIMATE WARMER_BY DAY_AND_NIGHT BATTERY_KEPT FASTENER_NAME TORQUE
        ADAPTER ADAPTER_LENGTH ADAPTER_ANGLE SELF_LOCKING PREVAILING_TORQUE THREAD FASTENER_NOTE STAGES
        WRENCH_NAME WRENCH_LENGTH LOWEST_MARK HIGHEST_MARK GRADUATION ACCURACY WRENCH_KEY
        BOLTS THREAD_DRESSING MIND TURN TAKEN_WRENCH WAS_SET_TO
        PROPERTY_CLASS FRICTION_CLASS THREADS_INTO
        COOLING GLYCOL CONCENTRATION WANTED_CONCENTRATION COOLANT_CIRCUIT COOLANT_DRAINS COOLANT_BOTTLE FRONT_PRESSURE REAR_PRESSURE TIRES_ARE SET_TEMPERATURE RIDE_TEMPERATURE FRONT_DATE_CODE REAR_DATE_CODE FRONT_READS REAR_READS TIRE_REFERENCE ALTITUDE FRONT_MAXIMUM REAR_MAXIMUM NEW_TIRES BRAKE_FLUID CLUTCH_FLUID BRAKE_FLUID_CHANGED CLUTCH_FLUID_CHANGED FLUID_ON_SHELF OTHER_OILS FINAL_DRIVE_OIL GEARBOX_OIL PRIMARY_OIL FORK_OIL TWO_STROKE_OIL FINAL_DRIVE_PLUG GEARBOX_PLUG PRIMARY_PLUG FORK_PLUG FINAL_DRIVE_OIL_CHANGED GEARBOX_OIL_CHANGED PRIMARY_OIL_CHANGED FORK_OIL_CHANGED TWO_STROKE_OIL_CHANGED
        KEPT_AT KEPT_COLDEST METER_READS METER_READ_ON EARLIER_READING EARLIER_READ_ON RESTED
        FINAL_DRIVE LAY_UP_DONE LAY_UP_LEFT_OUT WAKE_UP_DONE WAKE_UP_LEFT_OUT WHERE_THINGS_LIE PAPERS_DUE
        ODOMETER INTERVALS
        OWN_LAY_UP OWN_WAKE_UP OWN_LAY_UP_DONE OWN_WAKE_UP_DONE ARCHIVED
        LOG_DAY LOG_LINE LOG_ODOMETER LOG_FIGURES LOG_NOTE OIL_POURED OIL_DRAINED LOG_STEP SEASON_MARK BIKE_KEY
    };
    // None is left out, and each static is the row that its name says.
    let keys: Vec<String> = named.iter().map(|it| it.to_lowercase()).collect();
    let table: Vec<&str> = TABLE.iter().map(|it| it.key).collect();
    assert_eq!(keys, table);
}

/// All that is lacking is said at once, in order, whichever side lacks it.
#[test]
fn all_lacks_are_collected() {
    let err = |id| Err::<u8, _>(Lacks::missing(Id(id)));
    fn lacking<T: std::fmt::Debug>(told: Told<T>) -> Vec<u16> {
        told.unwrap_err().iter().map(|it| it.id().0).collect()
    }
    assert_eq!(both(Ok(1), Ok(2)), Ok((1, 2)));
    assert_eq!(lacking(both(err(1), Ok(2))), [1]);
    assert_eq!(lacking(both(Ok(1), err(2))), [2]);
    assert_eq!(lacking(both(err(1), err(2))), [1, 2]);
    assert_eq!(all3(Ok(1), Ok(2), Ok(3)), Ok((1, 2, 3)));
    assert_eq!(lacking(all3(err(1), Ok(2), err(3))), [1, 3]);
    assert_eq!(lacking(all3(err(1), err(2), err(3))), [1, 2, 3]);
    let from = Entries::from([(facts::TORQUE.id(), Entry::new("12 V", 1))]);
    let lacks = both(facts::TORQUE.of(&from).map(drop), facts::TANK_VOLUME.of(&from)).unwrap_err();
    assert_eq!(lacks.iter().map(Lack::id).collect::<Vec<_>>(), [Id(71), Id(10)]);
    assert!(matches!(&*lacks, [Lack::Refused(..), Lack::Missing(_)]));
}

/// A choice is stored by its key, and by number where it came from a page that knew more.
#[test]
fn a_choice_by_key_or_by_number() {
    use torpor::{battery::Chemistry, entry::form};
    let chemistry = |text: &str, unit| {
        facts::CHEMISTRY.of(&Entries::from([(facts::CHEMISTRY.id(), Entry::new(text, unit))]))
    };
    assert_eq!(chemistry("agm", 0), Ok(Chemistry::Agm));
    assert_eq!(chemistry("2", form::CHOICE), Ok(Chemistry::Agm));
    assert!(chemistry("2", 0).is_err());
    assert!(chemistry("9", form::CHOICE).is_err());
    assert!(chemistry("AGM", 0).is_err(), "a key is stored, never typed");
}

/// A button turns the sign where one number below zero is taken; a list of twelve is typed on letters, which have a minus.
#[test]
fn who_takes_a_minus() {
    let signed: Vec<_> = TABLE.iter().filter(|it| it.signed()).map(|it| it.key).collect();
    let expected = [
        "fill_temperature",
        "warmest_fuel",
        "check_temperature",
        "pour_temperature",
        "level_reads",
        "coldest_start",
        "read_at",
        "coldest_night",
        "adapter_angle",
        "concentration",
        "set_temperature",
        "ride_temperature",
        "kept_coldest",
    ];
    assert_eq!(signed, expected);
}

/// What a blank says of a grade is what the line says of it.
#[test]
fn a_grade_is_refused_by_table_and_line_alike() {
    let about = facts::about(facts::OIL_GRADE.id()).unwrap();
    for text in ["10W-40", "SAE 30", "0-40", "5.0", "+30", "0-8", "10W/4-0", "75W-90", "8", ""] {
        let entry = Entry::new(text, 0);
        let from = torpor::garage::Entries::from([(about.id, entry.clone())]);
        let read = facts::OIL_GRADE.maybe(&from).err();
        let lack = read.as_ref().and_then(|it| it[0].refusal());
        assert_eq!(lack, facts::refusal(about, &entry).as_ref(), "{text}");
        assert_eq!(lack.is_none(), ["10W-40", "SAE 30", ""].contains(&text), "{text}");
    }
}
