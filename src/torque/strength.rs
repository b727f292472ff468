//! How strong a bolt is by its stamp, and how slippery its threads may be by what is on them.

use super::Thread;
use uom::si::{f64::Pressure, pressure::megapascal};

/// Property class of a bolt, stamped on its head.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PropertyClass {
    /// 4.6
    P4_6,
    /// 4.8
    P4_8,
    /// 5.6
    P5_6,
    /// 5.8
    P5_8,
    /// 6.8
    P6_8,
    /// 8.8
    P8_8,
    /// 9.8, up to M16.
    P9_8,
    /// 10.9
    P10_9,
    /// 12.9
    P12_9,
    /// A2-70, stainless, under M20.
    A2_70,
    /// A4-80, stainless, under M20.
    A4_80,
}

/// Proof stress and least yield, N/mm², in the order of the classes; 8.8 for d ≤ 16. Source: EN ISO 898-1:2013 Table 3.
/// Stainless: Rp0.2 for both, ISO 3506-1, which defines no proof stress for bolts.
static STRESSES: [[u16; 2]; 11] = [
    [225, 240],
    [310, 340],
    [280, 300],
    [380, 420],
    [440, 480],
    [580, 640],
    [650, 720],
    [830, 940],
    [970, 1100],
    [450, 450],
    [600, 600],
];

impl PropertyClass {
    /// Stress at which the bolt must not yet have stretched for good, Sp. `None` where the standard has no such bolt.
    pub fn proof_stress(self, thread: Thread) -> Option<Pressure> {
        self.stresses(thread).map(|[proof, _]| Pressure::new::<megapascal>(proof))
    }

    /// Least stress at which it yields: ReL, Rpf or Rp0.2. `None` where the standard has no such bolt.
    pub fn yield_stress(self, thread: Thread) -> Option<Pressure> {
        self.stresses(thread).map(|[_, least]| Pressure::new::<megapascal>(least))
    }

    /// Both, N/mm².
    pub(super) fn stresses(self, thread: Thread) -> Option<[f64; 2]> {
        let diameter = thread.diameter_mm();
        match self {
            Self::P8_8 if diameter > 16.0 => Some([600.0, 660.0]),
            Self::P9_8 if diameter > 16.0 => None,
            Self::A2_70 | Self::A4_80 if diameter >= 20.0 => None,
            _ => STRESSES.get(self as usize).map(|it| it.map(f64::from)),
        }
    }
}

/// Friction class of VDI 2230, by what is on threads and face. Class E, bare stainless or aluminum, is not offered: its
/// friction is 0.30 or more without an upper end, so that no torque can be said to tighten the bolt at all.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FrictionClass {
    /// Solid lubricants in top coats or pastes, waxes.
    A,
    /// Greases and oils.
    B,
    /// As delivered, lightly oiled; zinc plated.
    C,
    /// Galvanized, without lubricant. Zinc plate without lubricant stands in C and D of the guideline; by D it would be
    /// overloaded wherever C is right, so C is where it is offered.
    D,
}

impl FrictionClass {
    /// Least and most coefficient of friction. Source: VDI 2230 Table A5, as two fastener suppliers reprint it.
    pub fn range(self) -> [f64; 2] {
        match self {
            Self::A => [0.04, 0.10],
            Self::B => [0.08, 0.16],
            Self::C => [0.14, 0.24],
            Self::D => [0.20, 0.35],
        }
    }
}
