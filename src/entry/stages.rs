//! Passes of a tightening: "70 % then 100 %", "20 N·m, 45 N·m", "30 N·m then 90°".

use super::{
    Entry, LONGEST, quantity,
    refusal::{Refusal, quoted},
    text::{parts, replaced},
};
use crate::units::Dimension;
use crate::working::Quantity;
use uom::si::f64::{Angle, Ratio, Torque};

/// One pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Stage {
    /// Share of the figure.
    Share(Ratio),
    /// Torque of its own.
    Torque(Torque),
    /// So far on, from where the wrench clicked.
    Turn(Angle),
}

/// More passes than any manual has.
const MOST: usize = 8;

/// Reads passes with "then", a comma, a semicolon, an arrow or a plus between them. `Ok(None)` for a blank. A bare number
/// before another with a unit has that unit: "70, 100 %".
///
/// # Errors
/// What is no share, torque or angle; passes that go down; a share over 100 %; a turn with nothing before it.
///
/// ```
/// use torpor::entry::{Entry, Stage, stages};
/// let read = stages(&Entry::new("70 % then 100 %", 0)).unwrap().unwrap();
/// assert_eq!(read.len(), 2);
/// assert!(matches!(read[1], Stage::Share(it) if it.value == 1.0));
/// ```
pub fn stages(entry: &Entry) -> Result<Option<Vec<Stage>>, Refusal> {
    if entry.is_blank() {
        return Ok(None);
    }
    if entry.text.chars().count() > LONGEST {
        return Err(Refusal::TooLong);
    }
    let text = parted(&entry.text);
    let parts = parts(&text, |it| it == ';');
    let mut stages = Vec::new();
    for (at, part) in parts.iter().enumerate() {
        let stage = stage(part, None).or_else(|| {
            let behind = parts[at + 1..].iter().find_map(|it| unit_of(it))?;
            stage(part, Some(behind))
        });
        stages.push(stage.ok_or_else(|| Refusal::NotStages { text: quoted(part) })?);
    }
    let ascends = |pair: &[Stage]| match pair {
        [Stage::Share(one), Stage::Share(other)] => one.base() < other.base(),
        [Stage::Torque(one), Stage::Torque(other)] => one.base() < other.base(),
        // A share and a torque are told apart only with the figure: the line's law looks at them.
        _ => true,
    };
    let whole = |it: &Stage| match it {
        Stage::Share(share) => share.base() > 0.0 && share.base() <= 1.0 + 1e-9,
        Stage::Torque(torque) => torque.base() > 0.0,
        Stage::Turn(angle) => angle.base() > 0.0,
    };
    let turned_first = matches!(stages.first(), Some(Stage::Turn(_)) | None);
    if stages.len() > MOST
        || turned_first
        || !stages.windows(2).all(ascends)
        || !stages.iter().all(whole)
    {
        return Err(Refusal::StageOrder);
    }
    Ok(Some(stages))
}

/// The text with a semicolon between its passes. A comma between two digits belongs to a number.
fn parted(text: &str) -> String {
    let mut text = replaced(text, ", ", ";");
    for sign in ["then", "Then", "THEN", "→", "->", "+"] {
        text = replaced(&text, sign, ";");
    }
    let mut before = ' ';
    let parted = text.chars().map(|it| {
        let ends = it == ',' && !before.is_ascii_digit();
        before = it;
        if ends { ';' } else { it }
    });
    parted.collect()
}

const SORTS: [Dimension; 3] = [Dimension::Ratio, Dimension::Torque, Dimension::Angle];

fn stage(part: &str, unit: Option<u8>) -> Option<Stage> {
    let entry = Entry::new(part, unit.unwrap_or_default());
    let read = quantity(&entry, &SORTS).ok().flatten().filter(|it| it.bounds.is_none())?;
    let unit = read.unit?;
    Some(match unit.dimension {
        Dimension::Ratio => Stage::Share(Ratio::of_base(read.value)),
        Dimension::Angle => Stage::Turn(Angle::of_base(read.value)),
        _ => Stage::Torque(Torque::of_base(read.value)),
    })
}

fn unit_of(part: &str) -> Option<u8> {
    let read = quantity(&Entry::new(part, 0), &SORTS).ok().flatten()?;
    read.unit.map(|it| it.code)
}
