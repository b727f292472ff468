//! Reading a spelling as a unit, with those that the US and Britain use for different amounts.

use crate::entry::replaced;

use super::{
    ALL, Dimension, IMP_FL_OZ, IMP_GAL, IMP_MPG, IMP_PT, IMP_QT, US_FL_OZ, US_GAL, US_MPG, US_PT,
    US_QT, Unit,
};

/// Spellings that the US and Britain use for different amounts, with what each takes them for.
static SHARED_SPELLINGS: &[(&[&str], &Unit, &Unit)] = &[
    (&["gal", "gals", "gallon", "gallons"], &US_GAL, &IMP_GAL),
    (&["qt", "qts", "quart", "quarts"], &US_QT, &IMP_QT),
    (&["pt", "pts", "pint", "pints"], &US_PT, &IMP_PT),
    (&["floz", "oz", "fluidounce", "fluidounces", "ounce", "ounces"], &US_FL_OZ, &IMP_FL_OZ),
    (&["mpg"], &US_MPG, &IMP_MPG),
];

/// Folds a spelling to the form that [`Unit::spellings`] hold: lower case, without spaces, dots and hyphens.
fn fold(spelling: &str) -> String {
    let folded = |it: char| match it {
        '·' | '⋅' | '•' | '.' | '*' | '-' | '–' | '−' | '_' | '×' | '\'' | '’' => None,
        '²' => Some('2'),
        '³' => Some('3'),
        'º' => Some('°'),
        it => Some(it.to_ascii_lowercase()).filter(|it| !it.is_whitespace()),
    };
    let folded: String = spelling.chars().filter_map(folded).collect();
    replaced(&replaced(&folded, "litre", "liter"), "metre", "meter")
}

/// A spelling read as a unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Spelled {
    /// One meaning.
    Clear(&'static Unit),
    /// The US and Britain differ by a fifth; `taken` is what it was read as, `other` what it might have meant.
    Shared {
        /// What it is read as.
        taken: &'static Unit,
        /// What it might have meant.
        other: &'static Unit,
    },
}

impl Spelled {
    /// The unit it is read as.
    pub fn unit(self) -> &'static Unit {
        match self {
            Spelled::Clear(unit) | Spelled::Shared { taken: unit, .. } => unit,
        }
    }
}

impl Unit {
    /// Whether the US and Britain have one each of its name: it tells whose a label's are.
    pub fn is_national(&self) -> bool {
        SHARED_SPELLINGS.iter().any(|(_, us, imp)| *us == self || *imp == self)
    }
}

/// Reads a spelling of a unit of `dimension`. A bare "gal", "qt", "pt", "oz" or "mpg" is taken as British where
/// `beside`, the unit that the blank shows, is British; else as American.
///
/// ```
/// use torpor::units::{self, Dimension, Spelled};
/// assert_eq!(units::spelled("ft-lbs", Dimension::Torque, None), Some(Spelled::Clear(&units::LBF_FT)));
/// let taken = units::spelled("gal", Dimension::Volume, None).map(Spelled::unit);
/// assert_eq!(taken, Some(&units::US_GAL));
/// ```
pub fn spelled(spelling: &str, dimension: Dimension, beside: Option<&Unit>) -> Option<Spelled> {
    let folded = fold(spelling);
    let ours = |it: &&Unit| it.dimension == dimension;
    if let Some((_, us, imp)) =
        SHARED_SPELLINGS.iter().find(|(all, us, _)| ours(us) && all.contains(&folded.as_str()))
    {
        let british = beside.is_some_and(|it| SHARED_SPELLINGS.iter().any(|(.., imp)| *imp == it));
        let (taken, other) = if british { (*imp, *us) } else { (*us, *imp) };
        return Some(Spelled::Shared { taken, other });
    }
    let known = |it: &&Unit| it.spellings.contains(&folded.as_str()) || fold(it.symbol) == folded;
    ALL.iter().copied().filter(ours).find(known).map(Spelled::Clear)
}
