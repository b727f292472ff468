//! What the paper says: the steps of both sides with the season's days between them, the torques, and where the figures come
//! from. What is not known yet is a rule to write on.

use super::dates::days;
use super::{Asked, Held, Line, Panel, Row, Side, Step, drawer, needs, row, season, torque};
use crate::entry::Entry;
use crate::facts::{self, Facts, Id};
use crate::garage::{Entries, Kept, Subject};
use crate::show::{self, Figure, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{labels, notes, paper as words};
use chrono::NaiveDate;

/// So many empty rows where no fastener is known yet.
const EMPTY_ROWS: usize = 12;

/// A bike's plan, as it stands on paper.
#[derive(Debug, Clone, PartialEq)]
pub struct Paper {
    /// The bike's name.
    pub name: Option<String>,
    /// Both dates; days stored, where it stands, how cold it gets.
    pub season: Vec<Field>,
    /// What is to be bought.
    pub needs: Vec<String>,
    /// Lay-up, then wake-up.
    pub sides: [Vec<Task>; 2],
    /// What is done between the two, with its days, in the order of the first of them.
    pub between: Vec<(&'static str, Vec<NaiveDate>)>,
    /// The torque list; rows without anything where there is none.
    pub torques: Vec<Listed>,
    /// What the figures come from, by the step that they belong to.
    pub sources: Vec<(&'static str, Vec<&'static str>)>,
}

/// Something that is known, or a rule to write it on.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    /// What it is.
    pub label: &'static str,
    /// As it was read.
    pub says: Option<String>,
    /// What is written behind the rule.
    pub unit: &'static str,
}

/// A step.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Task {
    /// Its place on its side.
    pub number: usize,
    /// What is done.
    pub title: &'static str,
    /// It is ticked.
    pub done: bool,
    /// Why it is left out; then nothing more is said of it.
    pub left_out: Option<String>,
    /// Numbers and days, the one that stands large first.
    pub figures: Vec<(String, Figure)>,
    /// What it asks.
    pub fields: Vec<Field>,
    /// How it is done.
    pub says: Vec<String>,
    /// What needs care.
    pub cares: Vec<String>,
}

/// A fastener.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Listed {
    /// What its owner calls it.
    pub name: Option<String>,
    /// Its thread, and what it wants besides.
    pub mind: Vec<String>,
    /// As the manual has it.
    pub manual: String,
    /// What to set, with what, and in which passes.
    pub row: Option<Row>,
    /// What needs care.
    pub cares: Vec<String>,
}

/// Answers that stand beside the one in a line's head.
const BESIDE: [&str; 2] = [labels::REAR_SET_AT, labels::CLUTCH_CHANGE_BY];

impl Paper {
    /// The paper of a bike.
    pub fn of(kept: &Kept, set: UnitSet) -> Self {
        let mut paper = Self {
            name: facts::BIKE_NAME.known(kept),
            season: Vec::new(),
            needs: needs(kept, set),
            sides: [Vec::new(), Vec::new()],
            between: Vec::new(),
            torques: Vec::new(),
            sources: Vec::new(),
        };
        let stored = season(kept, set);
        let days = stored.figure_text().map(|it| it.trim_end().to_owned());
        let asked = [
            facts::PARK_DATE.id(),
            facts::RIDE_DATE.id(),
            facts::WHERE_IT_STANDS.id(),
            facts::COLDEST_NIGHT.id(),
        ];
        paper.season.extend(asked.map(|it| field(kept, it, set)));
        paper.season.insert(2, Field { label: labels::DAYS_STORED, says: days, unit: "" });
        let drawer = drawer(&kept.garage);
        paper.torques(kept, &drawer, set);
        for (at, side) in Side::ALL.into_iter().enumerate() {
            let steps = side.steps().iter().enumerate().filter(|(_, it)| it.is_asked(kept));
            paper.sides[at] = steps
                .map(|(place, it)| Task { number: place + 1, ..paper.task(kept, it, set) })
                .collect();
        }
        for (key, day, what) in self::days(kept) {
            // Both dates stand at the head.
            if matches!(key.as_str(), "park" | "ride") {
                continue;
            }
            match paper.between.iter_mut().find(|it| it.0 == what) {
                Some((_, days)) => days.push(day),
                None => paper.between.push((what, vec![day])),
            }
        }
        if paper.torques.is_empty() {
            paper.torques = vec![Listed::default(); EMPTY_ROWS];
        }
        paper.between.sort_unstable_by_key(|(_, days)| days.first().copied());
        paper
    }

    fn task(&mut self, kept: &Kept, step: &Step, set: UnitSet) -> Task {
        let title = step.said.title;
        let left_out = step.left_out(kept);
        if left_out.is_some() {
            return Task { title, left_out, ..Task::default() };
        }
        let mut task = Task { title, done: step.is_done(kept), ..Task::default() };
        for (at, how) in step.said.how.iter().enumerate() {
            let to = if step.care == Some(at) { &mut task.cares } else { &mut task.says };
            to.push((*how).to_owned());
        }
        task.fields.extend(step.blanks.iter().map(|it| field(kept, *it, set)));
        match step.sum {
            Some(Line::Torques) => task.says.push(words::fasteners(self.torques.len())),
            Some(line) => {
                let panel = line.panel(kept, &[], set);
                self.cite(line.words().quick, &panel);
                task.take(kept, step, line, panel, set);
            }
            None => {}
        }
        task
    }

    fn torques(&mut self, kept: &Kept, drawer: &[Held], set: UnitSet) {
        let asked =
            [facts::TORQUE.id(), facts::TURN.id(), facts::THREAD.id(), facts::FASTENER_NAME.id()];
        let open = Some(&kept.bike.scratch)
            .filter(|own| asked.iter().any(|it| !own.entry(*it).is_blank()));
        for own in kept.bike.fasteners.iter().chain(open) {
            let from = Subject { own, rest: kept };
            let panel = torque(&from, drawer, set);
            self.cite(Line::Torques.words().quick, &panel);
            self.torques.push(fastener(&from, own, drawer, panel, set));
        }
    }

    /// Notes down what a calculator's answers come from, each document once.
    fn cite(&mut self, of: &'static str, panel: &Panel) {
        let found = panel.all().chain(panel.steps.iter().map(|it| &it.1));
        let found = found.filter_map(|it| Some(it.working.as_ref()?.source()));
        let at = self.sources.iter().position(|it| it.0 == of).unwrap_or(self.sources.len());
        for source in found {
            if at == self.sources.len() {
                self.sources.push((of, Vec::new()));
            }
            let own = &mut self.sources[at].1;
            if !own.contains(&source) {
                own.push(source);
            }
        }
    }
}

impl Task {
    /// Takes what a calculator says.
    fn take(&mut self, kept: &Kept, step: &Step, line: Line, panel: Panel, set: UnitSet) {
        let again = step.side == Side::WakeUp;
        // In spring the meter is read: what it should show stands beside it.
        let volts = panel.answer(labels::VOLTAGE_ON_RIDE_DATE).cloned();
        let head = volts.filter(|it| again && it.lacks().is_empty()).unwrap_or(panel.head);
        let known = |it: &&Shown| matches!(it.figure, Figure::Number { .. } | Figure::Day { .. });
        let beside = panel.answers.iter().filter(|it| BESIDE.contains(&it.label)).filter(known);
        // Once is enough.
        for lack in head.lacks().iter().filter(|_| !again) {
            self.fields.push(field(kept, lack.id(), set));
        }
        if panel.steps.is_empty() {
            let all = std::iter::once(&head).chain(beside);
            self.figures = all.map(|it| (it.label.to_owned(), it.figure.clone())).collect();
        } else {
            self.figures = panel.steps.into_iter().map(|(of, it)| (of, it.figure)).collect();
        }
        // What the battery will do was said when it was put away.
        if line != Line::Battery || !again {
            self.says.extend(Some(panel.note).filter(|it| !it.is_empty()));
            self.cares.extend(panel.warnings);
        }
        self.cares.extend(panel.cautions.first().filter(|_| !again).map(|it| (*it).to_owned()));
    }
}

/// A fact as it was read, or a rule for it.
fn field(kept: &Kept, id: Id, set: UnitSet) -> Field {
    let Some(about) = facts::about(id) else { return Field { label: "", says: None, unit: "" } };
    let entry = kept.entry(id);
    // What is refused is not known.
    let known = !entry.is_blank() && facts::refusal(about, &entry).is_none();
    let says = known.then(|| facts::as_read(about, &entry));
    let unit = about.unit_for(&Entry::default(), set).map_or("", |it| it.symbol);
    Field { label: about.label, says, unit }
}

fn fastener(
    from: &dyn Facts,
    own: &Entries,
    drawer: &[Held],
    panel: Panel,
    set: UnitSet,
) -> Listed {
    let asked = Asked::of(from);
    let read = |id: Id| {
        let entry = own.entry(id);
        let about = facts::about(id).filter(|_| !entry.is_blank())?;
        Some(facts::as_read(about, &entry))
    };
    let mut mind: Vec<String> = read(facts::THREAD.id()).into_iter().collect();
    mind.extend(asked.mind.iter().map(|it| (*it).to_owned()));
    mind.extend(read(facts::FASTENER_NOTE.id()));
    let by_table = asked.manual.as_ref().ok().filter(|_| asked.by_table).map(|it| {
        mind.push(notes::BY_TABLE.to_owned());
        show::rounded_in(Measure::Torque, it.aim(), asked.unit)
    });
    let manual = read(facts::TORQUE.id()).or(by_table).or_else(|| read(facts::TURN.id()));
    Listed {
        name: asked.name.clone(),
        mind,
        manual: manual.unwrap_or_default(),
        row: Some(row(&asked, drawer, set)),
        cares: panel.warnings,
    }
}
