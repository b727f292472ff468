//! Metric threads M5 to M20: as they are written, and the dimensions that strength and friction go by.

use super::joint::SQRT_3;
use crate::{
    digits,
    entry::{leading, text::past},
};
use std::fmt;
use uom::si::{
    area::square_millimeter,
    f64::{Area, Length},
    length::millimeter,
};

/// What the standards say of one nominal diameter.
#[derive(Debug, PartialEq, Eq)]
struct Size {
    /// Millimeters.
    diameter: u8,
    /// Twentieths of a millimeter, the coarse one first; 0 for no further one.
    pitches: [u8; 3],
    /// Diameter of the face under a hexagon head, hundredths of a millimeter.
    face: u16,
    /// Hole that the bolt goes through, tenths of a millimeter.
    hole: u8,
}

const fn size(diameter: u8, pitches: [u8; 3], face: u16, hole: u8) -> Size {
    Size { diameter, pitches, face, hole }
}

/// Pitches: ISO 262, its coarse and fine ones for bolts and nuts, and M14×1.25 of ISO 261. Face: ISO 4014 grade A, least
/// dw. Hole: ISO 273 medium. All from reprints that were opened; M18 is of another reprint than the rest.
static SIZES: [Size; 9] = [
    size(5, [16, 0, 0], 688, 55),
    size(6, [20, 0, 0], 888, 66),
    size(8, [25, 20, 0], 1163, 90),
    size(10, [30, 25, 20], 1463, 110),
    size(12, [35, 30, 25], 1663, 135),
    size(14, [40, 30, 25], 1937, 155),
    size(16, [40, 30, 0], 2249, 175),
    size(18, [50, 40, 30], 2534, 200),
    size(20, [50, 40, 30], 2819, 220),
];

/// A metric thread. Two spellings of one thread are equal: M10 is M10×1.5.
///
/// ```
/// use torpor::torque::Thread;
/// # fn main() -> Result<(), torpor::torque::ThreadError> {
/// assert_eq!(Thread::read("m 10 x 1,25")?.to_string(), "M10×1.25");
/// assert_eq!(Thread::read("M10")?, Thread::read("M10×1.5")?);
/// # Ok(()) }
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Thread {
    size: &'static Size,
    pitch: u8,
}

/// What may stand between diameter and pitch: a manual writes M10×1.25, M10-1.25, M10 P1.25 or 10 x 1.25 mm.
fn joins(it: char) -> bool {
    it.is_whitespace() || matches!(it, '×' | 'x' | 'X' | '*' | '-' | '–' | '−' | 'P' | 'p')
}

impl Thread {
    /// Reads a thread. Without a pitch it is the coarse one; a bare "10" is refused, as it may be a wrench's size.
    ///
    /// # Errors
    /// [`ThreadError`].
    pub fn read(text: &str) -> Result<Self, ThreadError> {
        let text = text.trim();
        let text = text.strip_suffix("mm").unwrap_or(text);
        let named = text.strip_prefix(['M', 'm']);
        let number = |text| match leading(text) {
            // A fraction is no number of a metric thread.
            Ok(Some(it)) if it.plain.is_some() => Ok((it.value, it.rest.trim())),
            _ => Err(ThreadError::Unread),
        };
        let (diameter, rest) = number(named.unwrap_or(text))?;
        if rest.is_empty() && named.is_none() {
            return Err(ThreadError::Unread);
        }
        let size = SIZES.iter().find(|it| f64::from(it.diameter) == diameter);
        let size = size.ok_or(ThreadError::Size)?;
        let coarse = Self { size, pitch: size.pitches[0] };
        if rest.is_empty() {
            return Ok(coarse);
        }
        let (pitch, rest) = number(past(rest, joins))?;
        let same = |it: &Self| (it.pitch_mm() - pitch).abs() < 1e-9;
        match coarse.pitches().find(same) {
            _ if !rest.is_empty() => Err(ThreadError::Unread),
            found => found.ok_or(ThreadError::Pitch(coarse)),
        }
    }

    /// The threads of its diameter, the coarse one first.
    fn pitches(self) -> impl Iterator<Item = Self> {
        let known = self.size.pitches.into_iter().filter(|it| *it > 0);
        known.map(move |pitch| Self { pitch, ..self })
    }

    /// Nominal diameter, d.
    pub fn diameter(self) -> Length {
        Length::new::<millimeter>(self.diameter_mm())
    }

    /// Pitch, P.
    pub fn pitch(self) -> Length {
        Length::new::<millimeter>(self.pitch_mm())
    }

    /// Pitch diameter, d2 = d − 3/4 · H, H = P · √3 / 2. Source: ISO 68-1, ISO 724.
    pub fn pitch_diameter(self) -> Length {
        Length::new::<millimeter>(self.pitch_diameter_mm())
    }

    /// Minor diameter of the bolt's thread, d3 = d − 17/12 · H. Source: ISO 724, ISO 898-1.
    pub fn minor_diameter(self) -> Length {
        Length::new::<millimeter>(self.minor_diameter_mm())
    }

    /// Stress area, As = π / 4 · ((d2 + d3) / 2)². Source: ISO 898-1.
    pub fn stress_area(self) -> Area {
        Area::new::<square_millimeter>(self.stress_area_mm2())
    }

    /// Mean diameter of the ring that rubs under a hexagon head, DKm = (dw + dh) / 2. Source: ISO 4014, ISO 273 medium.
    pub fn bearing_diameter(self) -> Length {
        Length::new::<millimeter>(self.bearing_mm())
    }

    pub(super) fn diameter_mm(self) -> f64 {
        f64::from(self.size.diameter)
    }

    pub(super) fn pitch_mm(self) -> f64 {
        f64::from(self.pitch) / 20.0
    }

    pub(super) fn pitch_diameter_mm(self) -> f64 {
        self.diameter_mm() - self.pitch_mm() * SQRT_3 * (3.0 / 8.0)
    }

    fn minor_diameter_mm(self) -> f64 {
        self.diameter_mm() - self.pitch_mm() * SQRT_3 * (17.0 / 24.0)
    }

    /// Diameter of a rod with the stress area.
    pub(super) fn stress_diameter_mm(self) -> f64 {
        (self.pitch_diameter_mm() + self.minor_diameter_mm()) / 2.0
    }

    pub(super) fn stress_area_mm2(self) -> f64 {
        std::f64::consts::FRAC_PI_4 * self.stress_diameter_mm() * self.stress_diameter_mm()
    }

    pub(super) fn bearing_mm(self) -> f64 {
        (f64::from(self.size.face) / 100.0 + f64::from(self.size.hole) / 10.0) / 2.0
    }
}

/// "M10" where the pitch is the coarse one, else "M10×1.25".
impl fmt::Display for Thread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "M{}", self.size.diameter)?;
        if self.pitch == self.size.pitches[0] {
            return Ok(());
        }
        write!(f, "×{}", digits::shortest(self.pitch_mm()))
    }
}

/// Why a text is not taken as a thread.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ThreadError {
    /// No metric thread: an inch or a pipe thread, a wrench's size, or nothing of the kind.
    Unread,
    /// A diameter that is not in the table.
    Size,
    /// A pitch that this diameter has not; with its coarse thread.
    Pitch(Thread),
}

impl fmt::Display for ThreadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let coarse = match self {
            Self::Unread => {
                return f.write_str(
                    "has to be a metric thread: write for example M10, or M10×1.25 where it is fine",
                );
            }
            Self::Size => {
                return f.write_str(
                    "has to be M5, M6, M8, M10, M12, M14, M16, M18 or M20: write for example M10×1.25",
                );
            }
            Self::Pitch(coarse) => *coarse,
        };
        write!(f, "{coarse} is known with pitch ")?;
        let known: Vec<Thread> = coarse.pitches().collect();
        for (at, it) in known.iter().enumerate() {
            let last = at > 0 && at + 1 == known.len();
            let before = if last {
                " or "
            } else if at > 0 {
                ", "
            } else {
                ""
            };
            write!(f, "{before}{}", digits::shortest(it.pitch_mm()))?;
        }
        match known.get(1) {
            Some(fine) => write!(f, ": write for example {fine}"),
            None => write!(f, " only: write {coarse}"),
        }
    }
}

impl std::error::Error for ThreadError {}
