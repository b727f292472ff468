//! What is published for each chemistry, and how wide the band is for it.
//!
//! # How wide, and why
//! Bands are ranges of published points, not confidence intervals. Slow and typical self-discharge are chosen from data
//! sheets and service manuals (tests/reference/battery/self_discharge.csv). The fast side is wide enough that these
//! published points lie inside too:
//! - conventional with filler caps: 8 to 40 % a month (an avionics shop's note), 0.0019 SG a day at 26.7 °C (abstract of a
//!   paper on starter batteries), from full to flat in 100, 200 and 550 days at 40, 25 and 0 °C;
//! - sealed flooded: 2 to 10 % a month (the same note), full to flat in 300, 600 and 950 days at 40, 25 and 0 °C.
//!
//! The days to flat also give the low end of Q: from 25 to 0 °C the time grows by 550/200, so Q = (550/200)^(1/2.5) = 1.50,
//! and by 950/600, so Q = 1.20. AGM and gel, for which no cold points were found, take the 1.20.
//!
//! # What "flat" means here
//! A loss in proportion to what is left never ends, so "flat" needs a reading. It is taken as the charge that a meter good
//! to ±0.05 V cannot tell from none, 7.4 % by the flooded table (0.05 V of the 0.17 V between 0 and 25 %): whoever measured
//! those days had a meter, too. Read the other way, as a straight line from full to nothing, the same points lie
//! inside as well.

/// What the battery is made as. Asked in the owner's words, because the label seldom says it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Chemistry {
    /// Conventional with filler caps: lead-antimony plates in liquid acid.
    FloodedAntimony,
    /// Sealed flooded, car type: lead-calcium plates in liquid acid.
    FloodedCalcium,
    /// Absorbed glass mat; "MF" on a motorcycle battery means this.
    Agm,
    /// Acid set to a gel.
    Gel,
    /// Lithium iron phosphate, four cells.
    LiFePO4,
}

impl Chemistry {
    /// The parameters that the page uses.
    pub fn parameters(self) -> Parameters {
        match self {
            Self::FloodedAntimony => FLOODED_ANTIMONY,
            Self::FloodedCalcium => FLOODED_CALCIUM,
            Self::Agm => AGM,
            Self::Gel => Parameters { chemistry: Self::Gel, ..AGM },
            Self::LiFePO4 => LIFEPO4,
        }
    }

    /// Whether it has acid that can freeze.
    pub fn is_lead_acid(self) -> bool {
        self != Self::LiFePO4
    }
}

/// All that the model takes from outside. Tests of the model pass narrow ones, the page [`Chemistry::parameters`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parameters {
    /// What they are for.
    pub chemistry: Chemistry,
    /// Share lost to itself in 30 days at 25 °C from full: slow, typical, fast. Each at least 0 and under 1.
    pub lost: [f64; 3],
    /// Factor on the rate of loss for 10 K more: lowest, typical, highest. Each above 0.
    pub q10: [f64; 3],
    /// Charge (0 to 1) and resting voltage in volts, both rising.
    pub resting: &'static [(f64, f64)],
    /// Temperature in °C and volts added to the resting voltage. Empty where there is no shift.
    pub shift: &'static [(f64, f64)],
    /// Meter and spread between batteries, ± volts.
    pub spread: f64,
    /// Charge (0 to 1) and specific gravity of the acid at 26.7 °C, both rising; none without acid.
    pub gravity: Option<&'static [(f64, f64)]>,
    /// Charge (0 to 1) to recharge below where the manual gives no voltage.
    pub threshold: f64,
}

/// Meter and spread between batteries, ± volts. Common practice, no source.
const SPREAD: f64 = 0.05;

const FLOODED_ANTIMONY: Parameters = Parameters {
    chemistry: Chemistry::FloodedAntimony,
    lost: [0.05, 0.12, 0.40],
    q10: [1.5, 2.0, 2.3],
    resting: FLOODED_RESTING,
    shift: LEAD_ACID_SHIFT,
    spread: SPREAD,
    // US Army TM 5-4210-230-14&P-1, truck service manual, battery section, table 2.
    gravity: Some(&[(0.0, 1.120), (1.0, 1.265)]),
    // US Army TM 5-3820-256-24-4, battery section, storage: charge at SG 1.225, which is 75 %.
    threshold: 0.75,
};

const FLOODED_CALCIUM: Parameters = Parameters {
    chemistry: Chemistry::FloodedCalcium,
    lost: [0.015, 0.03, 0.13],
    q10: [1.2, 2.0, 2.3],
    ..FLOODED_ANTIMONY
};

const AGM: Parameters = Parameters {
    chemistry: Chemistry::Agm,
    lost: [0.01, 0.03, 0.05],
    q10: [1.2, 2.0, 2.3],
    resting: AGM_RESTING,
    // Inferred from the resting voltages; no source states it.
    gravity: Some(&[(0.0, 1.100), (1.0, 1.290)]),
    ..FLOODED_ANTIMONY
};

const LIFEPO4: Parameters = Parameters {
    chemistry: Chemistry::LiFePO4,
    // 2 % (an installation manual), 3 % and 2 to 5 % (sellers) a month; the low value is from memory.
    lost: [0.005, 0.02, 0.05],
    // Assumed: no measurement found. 1.0 stands for a loss to the battery's own electronics.
    q10: [1.0, 1.5, 2.0],
    resting: LIFEPO4_RESTING,
    shift: &[],
    // Hysteresis and spread between makers: assumed.
    spread: 0.06,
    gravity: None,
    // Lower end of the 40 to 60 % that two sellers advise for storage; weak.
    threshold: 0.40,
};

/// Source: an open dataset of resting voltages (ElectricalAge2, lead_acid_12v/ds.csv, 26.7 °C) that cites a state-of-charge
/// sheet; equilibrium potentials of the acid give the same within 0.015 V.
const FLOODED_RESTING: &[(f64, f64)] =
    &[(0.0, 11.89), (0.25, 12.06), (0.50, 12.24), (0.75, 12.45), (1.0, 12.65)];

/// Source: the same dataset (gel), a vehicle maker's AGM charging table, a motorcycle maker's battery bulletin.
const AGM_RESTING: &[(f64, f64)] =
    &[(0.0, 11.80), (0.25, 12.00), (0.50, 12.30), (0.75, 12.60), (1.0, 12.80)];

/// Source: four times the open-circuit potentials of an open LFP/graphite cell set (FaradayInstitution/BPX), smoothed with a
/// battery seller's storage note; from 10 V, 2.5 V a cell, for an empty one (common practice, no source).
const LIFEPO4_RESTING: &[(f64, f64)] = &[
    (0.00, 10.00),
    (0.05, 12.55),
    (0.10, 12.75),
    (0.20, 12.92),
    (0.30, 13.07),
    (0.40, 13.10),
    (0.50, 13.11),
    (0.60, 13.15),
    (0.70, 13.22),
    (0.80, 13.27),
    (0.90, 13.29),
    (1.00, 13.35),
];

/// Source: the open dataset of [`FLOODED_RESTING`], columns −17.8 to 48.9 °C (0 to 120 °F).
const LEAD_ACID_SHIFT: &[(f64, f64)] = &[
    (-17.8, -0.134),
    (-12.2, -0.108),
    (-6.7, -0.084),
    (-1.1, -0.062),
    (4.4, -0.044),
    (10.0, -0.028),
    (15.6, -0.016),
    (21.1, -0.007),
    (26.7, 0.0),
    (32.2, 0.005),
    (37.8, 0.008),
    (43.3, 0.011),
    (48.9, 0.013),
];
