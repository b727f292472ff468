//! Wrench, adapter and fastener, drawn to scale: which length is which, and from where the angle counts.
//!
//! The handle lies level with the hand at the right, so that a pull toward the reader tightens. The drive is at height 0;
//! an angle over 0° turns the adapter up, one under 0° down, and the lengths along the handle stand on the other side.

mod pen;
mod scene;

use super::Label;
use super::place::EDGE;
use super::shape::{hexagon, square};
use crate::digits;
use crate::show;
use crate::units::{Measure, UnitSet};
use crate::words::drawings as words;
use crate::working::Quantity;
use pen::{Pen, Row};
use scene::{LAYOUT, Scene};
use uom::si::f64::{Angle, Length};

/// Wrench, adapter and fastener with their lengths, angle and lever.
#[derive(Debug, Clone, PartialEq)]
pub struct AdapterDrawing {
    /// Left, top, width and height of the picture.
    pub frame: [f64; 4],
    /// Whether all is known and so drawn at one scale.
    pub to_scale: bool,
    /// Middle of the hand.
    pub hand: [f64; 2],
    /// Middle of the square drive.
    pub drive: [f64; 2],
    /// Middle of the fastener.
    pub fastener: [f64; 2],
    /// Handle, grip and head of the wrench, as an SVG path.
    pub wrench: String,
    /// Fingers around the grip.
    pub fingers: String,
    /// The adapter; empty for none.
    pub adapter: String,
    /// Head of the fastener.
    pub hexagon: String,
    /// The square drive.
    pub square: String,
    /// The line of the handle, led on beyond the drive, from which the angle counts; empty without an adapter.
    pub extension: String,
    /// The angle; empty for 0° and without an adapter.
    pub arc: String,
    /// The pull at the hand, square to the handle.
    pub pull: String,
    /// Dimension lines.
    pub dimensions: String,
    /// Texts that matter: lengths and angle.
    pub figures: Vec<Label>,
    /// Quiet texts: what is what.
    pub names: Vec<Label>,
    /// What is to be careful about.
    pub cares: Vec<Label>,
    /// All of it in one sentence.
    pub told: String,
}

/// Usual proportions, for the sketch: wrench and adapter, meters, and the angle, radians.
const USUAL: (f64, f64, f64) = (0.28, 0.07, std::f64::consts::FRAC_PI_3);

/// Draws wrench and adapter. `wrench`: hand to square drive; `adapter`: drive to fastener, 0 for none; `angle`: from the
/// line of the handle, 0° straight out. What is not known, or is no length, is sketched in usual proportions.
pub fn adapter(
    wrench: Option<Length>,
    adapter: Option<Length>,
    angle: Option<Angle>,
    set: UnitSet,
) -> AdapterDrawing {
    let base = |it: Option<Length>| it.map(Quantity::base).filter(|it| it.is_finite());
    let wrench = base(wrench).filter(|it| *it > 0.0);
    let adapter = base(adapter).filter(|it| *it >= 0.0);
    let angle = angle.map(Quantity::base).filter(|it| it.is_finite());
    let none = adapter == Some(0.0);
    let to_scale = wrench.is_some() && adapter.is_some() && (none || angle.is_some());

    let layout = &LAYOUT;
    let (long, short) = match (wrench, adapter) {
        (Some(wrench), Some(adapter)) if to_scale => (wrench, adapter),
        _ => (USUAL.0, if none { 0.0 } else { USUAL.1 }),
    };
    let turn = if none { 0.0 } else { angle.unwrap_or(USUAL.2) };
    // The words for an angle take more room than its figure.
    let words_left = if none || angle.is_some() { 0.0 } else { 34.0 };
    let scene = Scene::new(layout, words_left, [long, short], turn);
    let mut pen = Pen::new(layout, &scene);

    let unit = Measure::Span.usual(set);
    let length = |meters: f64| {
        let number = unit.map_or(meters, |it| it.of_base(meters));
        format!("{}\u{a0}{}", digits::brief(number, 4), unit.map_or("", |it| it.symbol))
    };
    let degrees = angle.map(|it| format!("{}°", digits::brief(it.to_degrees(), 4)));
    let lever = long + scene.ahead / scene.scale;
    // Rounding on the way makes no lever.
    let lever = Some(lever).filter(|it| to_scale && *it > 1e-9 * long);
    // What is computed has no more digits than a tape measure shows.
    let lever = lever.map(|it| show::rounded(Measure::Span, Length::of_base(it), set));

    let wrench_row = Row {
        ends: [scene.drive[0], scene.hand[0]],
        figure: wrench.map(length),
        words: words::WRENCH,
    };
    let lever_row = Row {
        ends: [scene.fastener[0], scene.hand[0]],
        figure: lever.clone(),
        words: words::LEVER,
    };
    // The shorter stands nearer, so that no line crosses another's text.
    let no_lever = to_scale && lever.is_none();
    let rows = match none || no_lever {
        true => vec![wrench_row],
        false if scene.ahead < 0.0 => vec![lever_row, wrench_row],
        false => vec![wrench_row, lever_row],
    };
    let rows_at: Vec<f64> = rows.iter().map(|it| pen.row(&scene, it)).collect();
    if !none {
        pen.adapter_dimension(&scene, adapter.map(length));
        pen.angle(&scene, degrees.as_deref());
    }
    pen.names(&scene);
    let cares = if no_lever { pen.care(words::NO_LEVER) } else { Vec::new() };
    pen.sign(if to_scale { words::TO_SCALE } else { words::NOT_TO_SCALE });
    pen.lead_out(&scene, &rows, &rows_at);

    let told = match (to_scale, wrench, adapter) {
        (true, Some(wrench), Some(adapter)) => {
            let [reach, turned] = [length(adapter), degrees.unwrap_or_default()];
            let adapter = (!none).then_some([reach.as_str(), turned.as_str()]);
            words::told(&length(wrench), adapter, lever.as_deref())
        }
        _ if none => words::TOLD_SKETCH_STRAIGHT.to_owned(),
        _ => words::TOLD_SKETCH.to_owned(),
    };
    let [top, bottom] = pen.places.reach();
    let Pen { extension, arc, dimensions, figures, names, .. } = pen;
    AdapterDrawing {
        frame: [0.0, top - EDGE, layout.width, bottom - top + 2.0 * EDGE],
        to_scale,
        hand: scene.hand,
        drive: scene.drive,
        fastener: scene.fastener,
        wrench: scene.wrench(),
        fingers: scene.fingers(),
        adapter: if none { String::new() } else { scene.link() },
        hexagon: hexagon(scene.fastener, scene.hexagon),
        square: square(scene.drive, scene.square),
        extension,
        arc,
        pull: scene.pull(),
        dimensions,
        figures,
        names,
        cares,
        told,
    }
}
