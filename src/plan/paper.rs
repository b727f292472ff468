//! What the paper says: the steps of both sides with the season's days between them, the torques, and where the figures come
//! from. What is not known yet is a rule to write on.

use super::dates::days;
use super::{
    Asked, Held, Line, OwnSteps, Panel, Row, Side, Step, drawer, due_told, needs, row, season,
    torque,
};
use crate::entry::Entry;
use crate::entry::text::joined;
use crate::facts::{self, Facts, Id};
use crate::garage::{Entries, Kept, Subject};
use crate::show::{self, Figure, Shown};
use crate::units::{Measure, UnitSet};
use crate::words::{labels, notes, page, paper as words};
use chrono::NaiveDate;

/// So many empty rows where no fastener is known yet.
const EMPTY_ROWS: usize = 12;

/// A bike's plan, as it stands on paper.
#[derive(Debug, Default)]
pub struct Paper {
    /// The bike's name.
    pub name: Option<String>,
    /// Both dates; days stored, where it stands, how cold it gets.
    pub season: Vec<Field>,
    /// What is to be bought.
    pub needs: Vec<String>,
    /// Lay-up, then wake-up.
    pub sides: [Vec<Task>; 2],
    /// What is done between the two, with its days, what is done more than once together.
    pub between: Vec<(&'static str, Vec<NaiveDate>)>,
    /// The torque list; rows without anything where there is none.
    pub torques: Vec<Listed>,
    /// What else the steps need care for, each with its step: both sides have them in sight.
    pub cautions: Vec<[&'static str; 2]>,
    /// Calculators, each with a document that its figures come from; those of one stand together.
    pub sources: Vec<[&'static str; 2]>,
}

/// Something that is known, or a rule to write it on.
#[derive(Debug)]
pub struct Field {
    /// What it is.
    pub label: &'static str,
    /// As it was read.
    pub says: Option<String>,
    /// In which it would be written.
    pub unit: &'static str,
}

/// A step.
#[derive(Debug, Default)]
pub struct Task {
    /// Its place among those of its side that the bike has, from 1.
    pub number: usize,
    /// What is done.
    pub title: String,
    /// It is ticked.
    pub done: bool,
    /// It is left out; nothing but why is said of it.
    pub left_out: bool,
    /// Numbers and days with what they are, the one in the line's head first.
    pub figures: Vec<(String, Figure)>,
    /// What it asks.
    pub fields: Vec<Field>,
    /// How it is done.
    pub says: String,
    /// What needs care.
    pub cares: Vec<String>,
}

/// A fastener.
#[derive(Debug, Default)]
pub struct Listed {
    /// What its owner calls it.
    pub name: String,
    /// Its thread, and what it wants besides.
    pub mind: String,
    /// As the manual has it.
    pub manual: String,
    /// What to set, with what, and in which passes.
    pub row: Option<Row>,
    /// What needs care.
    pub cares: Vec<String>,
}

/// The paper of a bike; `due` is what its logbook and its intervals make due.
pub fn paper(kept: &Kept, due: &[(bool, String)], set: UnitSet) -> Paper {
    let mut paper =
        Paper { name: facts::BIKE_NAME.known(kept), needs: needs(kept, set), ..Paper::default() };
    for id in [
        facts::PARK_DATE.id(),
        facts::RIDE_DATE.id(),
        facts::WHERE_IT_STANDS.id(),
        facts::COLDEST_NIGHT.id(),
    ] {
        put(&mut paper.season, kept, id, set);
    }
    // What is refused is not known.
    if super::night_refused(kept, set).is_some()
        && let Some(it) = paper.season.last_mut()
    {
        it.says = None;
    }
    let says = season(kept, set).figure_text();
    paper.season.insert(2, Field { label: labels::DAYS_STORED, says, unit: "" });
    let drawer = drawer(&kept.garage);
    for own in &kept.bike.fasteners {
        list(&mut paper, kept, own, &drawer, set, false);
    }
    list(&mut paper, kept, &kept.bike.scratch, &drawer, set, true);
    for (at, side) in Side::ALL.into_iter().enumerate() {
        for step in side.steps() {
            if step.is_asked(kept) {
                let number = paper.sides[at].len() + 1;
                let mut task = task(&mut paper, kept, step, number, set);
                if step.lists_due && !task.left_out {
                    let [past, to_come] = [true, false].map(|it| due_told(due, it));
                    task.cares.extend(Some(past).filter(|it| !it.is_empty()));
                    task.says = joined(&[&task.says, &to_come], " ");
                }
                paper.sides[at].push(task);
            }
        }
        let own = OwnSteps::of(side, kept);
        for title in &own.titles {
            let (number, done) = (paper.sides[at].len() + 1, own.is_done(title));
            paper.sides[at].push(Task { number, title: title.clone(), done, ..Task::default() });
        }
    }
    for (key, day, what) in days(kept) {
        // Both dates stand at the head.
        if key == "park" || key == "ride" {
            continue;
        }
        match paper.between.last_mut() {
            Some(it) if it.0 == what => it.1.push(day),
            _ => paper.between.push((what, vec![day])),
        }
    }
    if paper.torques.is_empty() {
        paper.torques.resize_with(EMPTY_ROWS, Listed::default);
    }
    paper
}

fn task(paper: &mut Paper, kept: &Kept, step: &Step, number: usize, set: UnitSet) -> Task {
    let left_out = step.left_out(kept);
    let mut task = Task {
        number,
        title: step.said.title.to_owned(),
        done: step.is_done(kept),
        left_out: left_out.is_some(),
        ..Task::default()
    };
    if let Some(why) = left_out {
        task.says = joined(&[page::LEFT_OUT, &why], "");
        return task;
    }
    let again = step.side == Side::WakeUp;
    let mut says = Vec::new();
    for (at, how) in step.said.how.iter().enumerate() {
        if step.care == Some(at) {
            task.cares.push((*how).to_owned());
        } else if step.sum.is_some() && !again {
            // Beside its calculator's own there is no room on the first page: it stands with the torques.
            paper.cautions.push([step.said.title, *how]);
        } else {
            says.push(*how);
        }
    }
    for id in step.blanks {
        put(&mut task.fields, kept, *id, set);
    }
    let mut note = String::new();
    match step.sum {
        Some(Line::Torques) => note = words::fasteners(paper.torques.len()),
        Some(line) => {
            let mut panel = line.panel(kept, &[], set);
            cite(paper, line, &panel);
            // In spring the meter is read, and what it should show stands beside it; the rest was said when it was put away.
            let battery = again && line == Line::Battery;
            if !battery {
                note = std::mem::take(&mut panel.note);
                task.cares.append(&mut panel.warnings);
            }
            if !again {
                for lack in panel.head.lacks() {
                    put(&mut task.fields, kept, lack.id(), set);
                }
                let (first, rest) = panel.cautions.split_at(panel.cautions.len().min(1));
                task.cares.extend(first.iter().map(|it| (*it).to_owned()));
                paper.cautions.extend(rest.iter().map(|it| [step.said.title, *it]));
            }
            figures(&mut task.figures, &panel, battery);
        }
        None => {}
    }
    says.push(&note);
    task.says = joined(&says, " ");
    // What is asked in autumn is not asked again.
    if again {
        let asked =
            |label| paper.sides[0].iter().any(|it| it.fields.iter().any(|it| it.label == label));
        task.fields.retain(|it| it.says.is_some() || !asked(it.label));
    }
    task
}

/// The figures of a calculator that are work to do.
fn figures(figures: &mut Vec<(String, Figure)>, panel: &Panel, battery: bool) {
    let mut push = |label: &str, it: &Shown| figures.push((label.to_owned(), it.figure.clone()));
    for (label, it) in &panel.steps {
        push(label, it);
    }
    // In spring the volts stand in place of the charge.
    let instead = battery && panel.head.lacks().is_empty();
    if panel.steps.is_empty() && !instead {
        push(panel.head.label, &panel.head);
    }
    for it in &panel.answers {
        let beside = it.label == labels::REAR_SET_AT
            || it.label == labels::CLUTCH_CHANGE_BY
            || (instead && it.label == labels::VOLTAGE_ON_RIDE_DATE);
        if beside && it.working.is_some() {
            push(it.label, it);
        }
    }
}

/// Lists a fastener; the `open` one where there is anything to set.
fn list(paper: &mut Paper, kept: &Kept, own: &Entries, drawer: &[Held], set: UnitSet, open: bool) {
    let from = Subject { own, rest: kept };
    let asked = Asked::of(&from);
    let mut listed = fastener(&asked, own);
    if open && listed.manual.is_empty() {
        return;
    }
    let panel = torque(&from, drawer, set);
    cite(paper, Line::Torques, &panel);
    listed.cares = panel.warnings;
    listed.row = Some(row(&asked, drawer, set));
    paper.torques.push(listed);
}

fn fastener(asked: &Asked, own: &Entries) -> Listed {
    let read = |id: Id| {
        let entry = own.entry(id);
        facts::about(id).map_or(String::new(), |it| facts::as_read(it, &entry))
    };
    let mut manual = read(facts::TORQUE.id());
    let mut mind =
        vec![read(facts::THREAD.id()), joined(&asked.mind, ", "), read(facts::FASTENER_NOTE.id())];
    if let (true, Ok(it)) = (asked.by_table, &asked.manual) {
        manual = show::rounded_in(Measure::Torque, it.aim(), asked.unit);
        mind.push(notes::BY_TABLE.to_owned());
    }
    if manual.is_empty() {
        manual = read(facts::TURN.id());
    }
    mind.retain(|it| !it.is_empty());
    let name = asked.name.clone().unwrap_or_default();
    Listed { name, mind: joined(&mind, ", "), manual, ..Listed::default() }
}

/// Notes down what a calculator's answers come from, each document once.
fn cite(paper: &mut Paper, line: Line, panel: &Panel) {
    let mut one = |it: &Shown| {
        let Some(it) = &it.working else { return };
        let cited = [line.words().quick, it.source()];
        if !paper.sources.contains(&cited) {
            // Tires are worked out on both sides; those of one calculator stand together.
            let last = paper.sources.iter().rposition(|it| it[0] == cited[0]);
            paper.sources.insert(last.map_or(paper.sources.len(), |it| it + 1), cited);
        }
    };
    one(&panel.head);
    for it in &panel.answers {
        one(it);
    }
    for (_, it) in &panel.steps {
        one(it);
    }
}

/// A fact as it was read, or a rule for it; each once.
fn put(fields: &mut Vec<Field>, kept: &Kept, id: Id, set: UnitSet) {
    let Some(about) = facts::about(id) else { return };
    if fields.iter().any(|it| it.label == about.label) {
        return;
    }
    let entry = kept.entry(id);
    // What is refused is not known.
    let known = !entry.is_blank() && facts::refusal(about, &entry).is_none();
    let says = known.then(|| facts::as_read(about, &entry));
    let unit = about.unit_for(&Entry::default(), set).map_or("", |it| it.shown());
    fields.push(Field { label: about.label, says, unit });
}
