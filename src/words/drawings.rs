//! Words in the pictures of the torque line, and the sentences that stand for them.

/// Where the hand holds.
pub const HAND: &str = "hand at mid-grip";
/// The same in two lines.
pub const HAND_NARROW: [&str; 2] = ["hand at", "mid-grip"];
/// At the arrow, where there is room.
pub const PULL_SQUARE: &[&str] = &["pull square", "to the handle"];
/// At the arrow, where there is none.
pub const PULL: &str = "pull";
/// The wrench's end.
pub const DRIVE: &str = "square drive";
/// The same in two lines.
pub const DRIVE_NARROW: [&str; 2] = ["square", "drive"];
/// What is tightened.
pub const FASTENER: &str = "fastener";
/// The wrench's length.
pub const WRENCH: &[&str] = &["wrench length,", "hand to square drive"];
/// The adapter's length while it is not known.
pub const ADAPTER_LENGTH: &[&str] = &["adapter length,", "drive to fastener"];
/// The adapter's angle while it is not known.
pub const ADAPTER_ANGLE: &[&str] = &["adapter", "angle"];
/// The lever.
pub const LEVER: &[&str] = &["lever: hand to fastener,", "along the handle"];
/// Where the fastener is behind the hand.
pub const NO_LEVER: &[&str] = &["no lever: the fastener", "is not ahead of the hand"];
/// Where angles count from.
pub const ZERO: &str = "0°";
/// Under the picture, once all is known.
pub const TO_SCALE: &str = "drawn to scale";
/// Under the picture, before.
pub const NOT_TO_SCALE: &str = "sketch, not to scale";
/// How the angle counts.
pub const ANGLE_COUNTS: &str = "The adapter’s angle counts from the line of the handle: straight out is 0°, square to it 90°, pointing back at the hand 180°. \
     Some manuals count from the handle instead, with 180° straight out: there, enter 180° less the manual’s angle.";

/// The adapter's length at its dimension.
pub fn adapter(length: &str) -> String {
    format!("adapter {length}")
}

/// The picture in a sentence, once all is known; `adapter` is its length and angle.
pub fn told(wrench: &str, adapter: Option<[&str; 2]>, lever: Option<&str>) -> String {
    let adapter = match adapter {
        Some([length, angle]) => {
            format!("adapter {length}, turned {angle} from the line of the handle")
        }
        None => "socket straight on it, no adapter".to_owned(),
    };
    let lever = match lever {
        Some(lever) => format!("hand to fastener, along the handle, {lever}"),
        None => "the fastener is not ahead of the hand, so there is no lever".to_owned(),
    };
    format!("Drawn to scale: hand to square drive {wrench}, {adapter}; {lever}.")
}

/// The picture in a sentence, before all is known.
pub const TOLD_SKETCH: &str = "Sketch, not to scale: wrench length from the hand at mid-grip to the square drive, adapter length from there to the fastener, \
     adapter angle from the line of the handle.";
/// The same without an adapter.
pub const TOLD_SKETCH_STRAIGHT: &str = "Sketch, not to scale: wrench length from the hand at mid-grip to the square drive, socket straight on it, no adapter.";

/// Over the bolts on a circle.
pub const PATTERN: &str = "Tightening order";
/// Under the bolts on a circle.
pub const PATTERN_CAPTION: &str = "A usual order for bolts on a circle. Where the manual gives an order of its own, that one comes first.";

/// The order of the bolts in a sentence, each by its place around the circle.
pub fn pattern(places: &[usize]) -> String {
    let mut told = format!(
        "{} bolts on a circle, counted clockwise from the top, in the order of tightening: ",
        places.len()
    );
    for (at, place) in places.iter().enumerate() {
        let before = if at == 0 { "" } else { ", " };
        told.push_str(&format!("{before}{}", place + 1));
    }
    told.push('.');
    told
}
