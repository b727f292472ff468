//! What each column holds: by its name, in any usual spelling, or by its cells where the names are missing.

use crate::entry::{self, Entry};
use crate::facts::{self, About, Home, Id, Kind, TABLE};
use crate::storage::cells::{Line, MOST_COLUMNS, Names};
use crate::units::{self, Dimension, Unit};

/// What the cells of a column are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Part {
    /// A fact as it stands.
    Fact(Id),
    /// A page of the manual, for the note.
    Page,
    /// Lowest torque.
    Lowest,
    /// Highest torque.
    Highest,
    /// Unit of the row's torques.
    Unit,
}

/// A column as it was recognized.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Column {
    /// `None` for what is not known: its cells go into the note.
    pub part: Option<Part>,
    /// The unit in its name.
    pub unit: Option<&'static Unit>,
}

/// The thread of a fastener: a page whose table does not have it yet offers no column for it.
pub(super) const THREAD: Id = Id(77);

/// Names besides a fact's own label and key, as [`fold`] leaves them.
static NAMES: &[(Part, &[&str])] = &[
    (
        Part::Fact(facts::FASTENER_NAME.id()),
        &["name", "part", "item", "bolt", "nut", "screw", "component", "location", "description"],
    ),
    (
        Part::Fact(facts::TORQUE.id()),
        &[
            "tighteningtorque",
            "tightening",
            "figure",
            "spec",
            "specification",
            "torquespec",
            "torquespecification",
            "torquevalue",
            "torquefigure",
        ],
    ),
    (Part::Fact(facts::ADAPTER.id()), &["crowfoot"]),
    (Part::Fact(facts::ADAPTER_LENGTH.id()), &["crowfootlength"]),
    (Part::Fact(facts::ADAPTER_ANGLE.id()), &["crowfootangle"]),
    (Part::Fact(facts::SELF_LOCKING.id()), &["selflocking", "locknut"]),
    (Part::Fact(facts::PREVAILING_TORQUE.id()), &["prevailing", "drag"]),
    (Part::Fact(THREAD), &["thread", "size", "threadsize", "boltsize", "screwsize"]),
    (
        Part::Fact(facts::FASTENER_NOTE.id()),
        &["note", "notes", "remark", "remarks", "comment", "comments"],
    ),
    (Part::Fact(facts::STAGES.id()), &["stage", "steps", "passes", "sequence"]),
    (Part::Fact(facts::BOLTS.id()), &["count", "quantity", "qty", "pieces", "howmany"]),
    (
        Part::Fact(facts::THREAD_DRESSING.id()),
        &["dressing", "threadlock", "threadlocker", "lubricant", "lubrication"],
    ),
    (Part::Fact(facts::MIND.id()), &["flags", "remarksflags", "mindflags"]),
    (Part::Fact(facts::TURN.id()), &["turns"]),
    (
        Part::Lowest,
        &[
            "min",
            "lowest",
            "minimum",
            "low",
            "lower",
            "from",
            "mintorque",
            "minimumtorque",
            "lowesttorque",
            "lowertorque",
            "torquemin",
            "torqueminimum",
            "torquelow",
            "torquefrom",
        ],
    ),
    (
        Part::Highest,
        &[
            "max",
            "highest",
            "maximum",
            "high",
            "upper",
            "to",
            "maxtorque",
            "maximumtorque",
            "highesttorque",
            "uppertorque",
            "torquemax",
            "torquemaximum",
            "torquehigh",
            "torqueto",
        ],
    ),
    (Part::Unit, &["unit", "units", "torqueunit"]),
    (Part::Page, &["page", "pages", "manualpage"]),
];

impl Part {
    /// The fact that its cells go into.
    pub fn id(self) -> Id {
        match self {
            Part::Fact(id) => id,
            Part::Page => facts::FASTENER_NOTE.id(),
            Part::Lowest | Part::Highest | Part::Unit => facts::TORQUE.id(),
        }
    }

    /// Whether its cells are torques of the manual.
    pub fn is_torque(self) -> bool {
        self.id() == facts::TORQUE.id() && self != Part::Unit
    }

    /// The unit that a name's end spells for it.
    fn unit(self, spelling: &str) -> Option<&'static Unit> {
        let about = facts::about(self.id()).filter(|_| self != Part::Unit)?;
        let Kind::Quantity { limits, .. } = &about.kind else { return None };
        let short = spelling.strip_prefix("in").unwrap_or(spelling);
        let of = |limit: &facts::Limit| {
            let sort = limit.unit.dimension;
            unit(spelling, sort).or_else(|| unit(short, sort))
        };
        limits.iter().find_map(of)
    }
}

/// The unit of a folded spelling.
fn unit(spelling: &str, sort: Dimension) -> Option<&'static Unit> {
    let ours = |it: &&Unit| it.dimension == sort && it.spellings().contains(&spelling);
    units::ALL.iter().copied().find(ours)
}

/// The facts that a table of fasteners holds. The wrench taken is left out: its key says something in one garage only.
pub(super) fn held() -> impl Iterator<Item = &'static About> {
    let taken = facts::TAKEN_WRENCH.id();
    TABLE.iter().copied().filter(move |it| it.home == Home::Fastener && it.id != taken)
}

/// Letters and digits in lower case; a sign for degrees as a word.
pub(super) fn fold(text: &str) -> String {
    let mut folded = String::new();
    for it in text.chars() {
        if it.is_ascii_alphanumeric() {
            folded.push(it.to_ascii_lowercase());
        } else if matches!(it, '°' | 'º') {
            folded.push_str("deg");
        }
    }
    folded
}

/// What is left of a folded text behind a spelling, folded on the way.
fn behind<'a>(folded: &'a str, spelling: &str) -> Option<&'a str> {
    let mut rest = folded.as_bytes();
    for it in spelling.bytes() {
        if it.is_ascii_alphanumeric() {
            if rest.first() != Some(&it.to_ascii_lowercase()) {
                return None;
            }
            rest = &rest[1..];
        }
    }
    // A folded text has no letters of more than one byte.
    folded.get(folded.len() - rest.len()..)
}

/// The column that a name means, with the unit at its end: "Torque (N·m)", "min, ft-lb".
pub(super) fn named(name: &str) -> Column {
    let folded = fold(name);
    let Some(first) = folded.bytes().next() else { return Column::default() };
    let mut best = Column::default();
    let mut left = folded.len();
    // A name that is spelled out wins over a shorter one with an end that happens to be a unit.
    let mut look = |part: Part, spelling: &str| {
        let Some(rest) = behind(&folded, spelling).filter(|it| it.len() < left) else { return };
        let unit = part.unit(rest);
        if facts::about(part.id()).is_some() && (rest.is_empty() || unit.is_some()) {
            best = Column { part: Some(part), unit };
            left = rest.len();
        }
    };
    for about in held() {
        look(Part::Fact(about.id), about.label);
        look(Part::Fact(about.id), about.key);
    }
    for (part, spellings) in NAMES {
        for spelling in *spellings {
            if spelling.as_bytes()[0] == first {
                look(*part, spelling);
            }
        }
    }
    if best.part.is_none() {
        // "ft-lb" alone heads a column of torques.
        let unit = unit(&folded, Dimension::Torque);
        best = Column { part: unit.map(|_| Part::Fact(facts::TORQUE.id())), unit };
    }
    best
}

/// Whether a row holds names of columns.
pub(super) fn names(line: &Line) -> Names {
    let few = line.cells.len() <= MOST_COLUMNS;
    match few.then(|| header(line)).flatten() {
        Some(columns) if sure(&columns) => Names::Several,
        Some(_) => Names::Some,
        None => Names::None,
    }
}

/// The columns of a row of names. What comes twice is taken once, but notes, and torques in units of their own.
pub(super) fn of_names(names: &[String]) -> Vec<Column> {
    let mut columns: Vec<Column> = Vec::new();
    for name in names {
        let mut column = named(name);
        let note = facts::FASTENER_NOTE.id();
        let again = |it: &Column| {
            let same_unit = it.unit == column.unit || it.unit.is_none() || column.unit.is_none();
            let torque = column.part == Some(Part::Fact(facts::TORQUE.id()));
            it.part == column.part && (same_unit || !torque)
        };
        if column.part.is_some_and(|it| it.id() != note) && columns.iter().any(again) {
            column = Column::default();
        }
        columns.push(column);
    }
    columns
}

/// The columns that a row names, where it holds names and no torque.
pub(super) fn header(line: &Line) -> Option<Vec<Column>> {
    let columns = of_names(&line.cells);
    let named = columns.iter().any(|it| it.part.is_some());
    (named && line.cells.iter().all(|it| torque(it).is_none())).then_some(columns)
}

/// Whether columns are surely those of a row of names, wherever it stands: a torque among them and another.
pub(super) fn sure(columns: &[Column]) -> bool {
    let known = columns.iter().filter(|it| it.part.is_some()).count();
    known > 1 && columns.iter().any(|it| it.part.is_some_and(Part::is_torque))
}

/// Whether a text reads as a torque, and if so whether it has a unit of its own.
fn torque(text: &str) -> Option<bool> {
    let starts = entry::text::past(text.trim_start(), |it| matches!(it, '~' | '≈' | '.'));
    if !starts.starts_with(|it: char| {
        it.is_ascii_digit()
            || matches!(it, '½' | '¼' | '¾' | '⅓' | '⅔' | '+' | 'a' | 'A' | 'c' | 'C')
    }) {
        return None;
    }
    let read = entry::quantity(&Entry::new(text, entry::form::NONE), &[Dimension::Torque]);
    read.ok().flatten().map(|it| it.unit.is_some())
}

/// What a column's cells look like.
#[derive(Clone, Default)]
struct Looks {
    said: usize,
    torques: usize,
    with_unit: usize,
    threads: usize,
    /// 1, 2, 3: rows numbered.
    numbered: usize,
    number: Option<u32>,
}

/// The columns of rows without names, as far as that is safe: a torque only where no other column could be it.
pub(super) fn guessed(lines: &[Line]) -> Vec<Column> {
    let mut looks: Vec<Looks> = Vec::new();
    for line in lines {
        for (at, cell) in line.cells.iter().enumerate() {
            if looks.len() <= at {
                looks.push(Looks::default());
            }
            let it = &mut looks[at];
            if cell.trim().is_empty() {
                continue;
            }
            let number = entry::plain_count(&Entry::new(cell.as_str(), entry::form::NONE));
            let before = it.number.and_then(|it| it.checked_add(1));
            it.numbered += usize::from(before.is_some() && before == number);
            it.number = number;
            it.said += 1;
            if is_thread(cell) {
                it.threads += 1;
            } else if let Some(with_unit) = torque(cell) {
                it.torques += 1;
                it.with_unit += usize::from(with_unit);
            }
        }
    }
    let mut columns = vec![Column::default(); looks.len()];
    let most = |count: usize, it: &Looks| count * 2 > it.said;
    let thread = looks.iter().position(|it| most(it.threads, it));
    let numbers = |it: &&Looks| most(it.torques, it) && it.numbered + 1 < it.said.max(2);
    let clear = looks.iter().position(|it| most(it.with_unit, it));
    let only = looks.iter().filter(numbers).count() == 1;
    let torque = clear.or_else(|| looks.iter().position(|it| only && numbers(&it)));
    let name = looks.iter().position(|it| it.said > 0 && !most(it.threads + it.torques, it));
    let note = facts::FASTENER_NOTE.id();
    for (at, column) in columns.iter_mut().enumerate() {
        let id = match Some(at) {
            it if it == torque => facts::TORQUE.id(),
            it if it == thread && facts::about(THREAD).is_some() => THREAD,
            it if it == name => facts::FASTENER_NAME.id(),
            _ => note,
        };
        column.part = Some(Part::Fact(id));
    }
    columns
}

/// "M8", "m10 × 1.25", "1/4-20", "3/8-24 UNF".
fn is_thread(text: &str) -> bool {
    let text = text.trim();
    let digit = |it: &str| it.starts_with(|it: char| it.is_ascii_digit());
    if !digit(text) {
        return text.strip_prefix(['M', 'm']).is_some_and(digit);
    }
    let says = |two: [u8; 2]| text.as_bytes().windows(2).any(|it| it == two);
    says(*b"UN") || says(*b"BS") || (entry::text::has(text, '/') && entry::text::has(text, '-'))
}
