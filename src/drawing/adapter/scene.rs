//! Where wrench, adapter and fastener stand, and how they look.

use super::super::shape::{Point, along, at, capsule, circle, line};
use crate::digits;
use crate::torque::cosine;
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// How the picture is laid out.
pub(super) struct Layout {
    pub(super) width: f64,
    /// Kept for texts and the led-on line left of drive and fastener, and for the grip right of the hand.
    pub(super) sides: [f64; 2],
    /// Farthest that the fastener may stand off the line of the handle.
    pub(super) tall: f64,
    /// Radius of the angle's arc, and of one that goes past the adapter's own dimension.
    pub(super) arc: [f64; 2],
    pub(super) grip: f64,
}

/// One column of the page, a phone's or half of a wide one's.
pub(super) const LAYOUT: Layout =
    Layout { width: 328.0, sides: [74.0, 44.0], tall: 190.0, arc: [36.0, 25.0], grip: 36.0 };

/// Half the height of the hand.
pub(super) const HAND: f64 = 15.0;
/// Where the arrow of the pull ends.
pub(super) const PULL: f64 = 48.0;

/// What stands where, in the picture's own units.
pub(super) struct Scene {
    pub(super) hand: Point,
    pub(super) drive: Point,
    pub(super) fastener: Point,
    /// Units a meter.
    pub(super) scale: f64,
    /// Turned from the led-on line, 0 to half a turn, radians; its cosine and sine.
    pub(super) turn: f64,
    pub(super) way: [f64; 2],
    /// 1 with the adapter above the handle, −1 below.
    pub(super) side: f64,
    /// Drive to fastener, and how much of it lies ahead along the handle.
    pub(super) reach: f64,
    pub(super) ahead: f64,
    pub(super) grip: f64,
    /// Half sizes of the marks, small where the adapter is.
    pub(super) link: f64,
    pub(super) hexagon: f64,
    pub(super) square: f64,
    pub(super) arc: f64,
}

impl Scene {
    pub(super) fn new(
        layout: &Layout,
        more_left: f64,
        [wrench, adapter]: [f64; 2],
        turn: f64,
    ) -> Self {
        let within = turn - (turn / TAU).round() * TAU;
        // Straight back is neither up nor down.
        let side = if within < 0.0 && within > SLACK - PI { -1.0 } else { 1.0 };
        let turn = within.abs();
        let way = [cosine(turn), cosine(turn - FRAC_PI_2)];
        let [ahead, off] = way.map(|it| adapter * it);
        let [left, right] = [ahead.max(0.0), wrench.max(-ahead)];
        let before = layout.sides[0] + more_left;
        let room = layout.width - before - layout.sides[1];
        let fits = room / (left + right);
        let scale = if off * fits > layout.tall { layout.tall / off } else { fits };
        let spare = room - (left + right) * scale;
        let drive = [before + spare / 2.0 + left * scale, 0.0];
        let reach = adapter * scale;
        let mark = |most: f64, share: f64| if none(reach) { most } else { most.min(reach * share) };
        Self {
            hand: [drive[0] + wrench * scale, 0.0],
            drive,
            fastener: [drive[0] - ahead * scale, -side * off * scale],
            scale,
            turn,
            way,
            side,
            reach,
            ahead: ahead * scale,
            grip: layout.grip.min(wrench * scale * 0.45),
            link: mark(13.0, 0.5),
            hexagon: mark(9.0, 0.34),
            square: if none(reach) { 4.0 } else { mark(5.5, 0.2) },
            arc: layout.arc[usize::from(turn > PAST)],
        }
    }

    /// From the drive, so far in a direction that is given ahead along the handle and off it to the adapter's side.
    pub(super) fn toward(&self, [ahead, off]: [f64; 2], by: f64) -> Point {
        along(self.drive, [-ahead, -self.side * off], by)
    }

    /// Across the adapter, to the side where its dimension stands, and how far off.
    pub(super) fn across(&self) -> ([f64; 2], f64) {
        let [cosine, sine] = self.way;
        if self.turn > PAST { ([sine, -cosine], self.arc + 12.0) } else { ([-sine, cosine], 25.0) }
    }

    pub(super) fn wrench(&self) -> String {
        let [hand, drive] = [self.hand[0], self.drive[0]];
        let [start, end] = [hand - self.grip, hand + self.grip];
        let head = self.link + 3.0;
        let handle = format!("M{}H{}", at([drive + head, -4.0]), digits::plain(start, 1));
        let under = format!("M{}H{}", at([drive + head, 4.0]), digits::plain(start, 1));
        let round = (self.grip * 0.4).min(8.0);
        let grip = capsule([start + round, 0.0], [end - round, 0.0], round);
        format!("{}{handle}{under}{grip}", circle(self.drive, head))
    }

    pub(super) fn fingers(&self) -> String {
        let half = (self.grip * 0.115).min(5.0);
        let finger = |at: f64| {
            let x = self.hand[0] + at * 2.0 * half;
            capsule([x, half - HAND], [x, HAND - half], half)
        };
        [-1.5, -0.5, 0.5, 1.5].map(finger).concat()
    }

    pub(super) fn link(&self) -> String {
        capsule(self.drive, self.fastener, self.link)
    }

    pub(super) fn pull(&self) -> String {
        let x = self.hand[0];
        let shaft = line([x, HAND + 2.0], [x, PULL - 1.0]);
        format!(
            "{shaft}M{}L{}L{}",
            at([x - 5.0, PULL - 9.0]),
            at([x, PULL]),
            at([x + 5.0, PULL - 9.0])
        )
    }
}

/// From here on the adapter's dimension stands on its outer side: on the inner one the handle comes too near. Radians.
pub(super) const PAST: f64 = 1.92;

/// Slack for angles that were rounded on the way, radians.
const SLACK: f64 = 1e-9;

fn none(reach: f64) -> bool {
    reach == 0.0
}
