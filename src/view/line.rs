//! One line of the sheet: its head with the answer large, and its calculator when it is unfolded.

use super::answer::{answer, figure, workings};
use super::boxed::{Does, Gives};
use super::browser;
use super::element::{El, button, el, span, while_so};
use super::entry_field::{Dress, blank};
use super::leaf::Leaves;
use super::live::{Derived, Live};
use super::page::{Desk, Page};
use super::{season_line, torque_drawing, torques};
use crate::facts::{Id, Lack};
use crate::plan::{Accept, Held, Line, Panel, Pictured};
use crate::show::Shown;
use crate::units::UnitSet;
use crate::words::page as words;
use leptos::prelude::*;
use std::rc::Rc;
use std::time::Duration;

/// A line's answers, for the blanks inside of it.
#[derive(Clone, Copy)]
pub struct Told {
    /// Computed again when one of the facts it asked for changes.
    pub panel: Derived<Panel>,
    pending: Live<Option<TimeoutHandle>>,
}

/// So long after the last letter the answer is said aloud.
const SAID_AFTER: Duration = Duration::from_secs(1);

/// A row that is left changes this much later, so that it does not move what is being pressed.
const LEFT_AFTER: Duration = Duration::from_millis(500);

impl Told {
    /// The answers of a line from the facts on a desk.
    pub fn new(line: Line, desk: &Desk, page: Page) -> Self {
        if line == Line::Battery && !desk.quick {
            return Self { panel: page.battery, pending: Live::new(None) };
        }
        Self::of(desk, page, move |desk, drawer, set| line.panel(desk, drawer, set))
    }

    /// The answers of any calculator from the facts on a desk.
    pub fn of(
        desk: &Desk,
        page: Page,
        panel: impl Fn(&Desk, &[Held], UnitSet) -> Panel + Send + Sync + 'static,
    ) -> Self {
        let desk = desk.clone();
        let panel = move || panel(&desk, &desk.drawer(), page.set.get());
        Self::from(Box::new(panel))
    }

    fn from(panel: Box<dyn Gives<Panel> + Send + Sync>) -> Self {
        Self { panel: Derived::new(move |_| panel.give()), pending: Live::new(None) }
    }

    /// Says the line's answer once, a second after typing stops.
    pub fn say_soon(self, page: Page) {
        if let Some(handle) = self.pending.get_untracked() {
            handle.clear();
        }
        let say = move || {
            // The line may be gone by now.
            if let Some(Some(words)) = self.panel.try_with_untracked(Panel::spoken) {
                page.say(&words);
            }
        };
        self.pending.set(set_timeout_with_handle(say, SAID_AFTER).ok());
    }
}

/// The button of something that folds, with a mark that shows whether it is open; its title is still to be added.
pub fn fold_button(
    id: &str,
    open: impl Fn() -> bool + 'static,
    turn: impl FnMut() + 'static,
) -> El {
    folding(id, Rc::new(open), Box::new(turn))
}

fn folding(id: &str, open: Rc<dyn Gives<bool>>, turn: Box<dyn Does>) -> El {
    let expanded = open.clone();
    let mark = move || if open.give() { "▾" } else { "▸" }.to_owned();
    el("button")
        .set("type", "button")
        .set("id", id)
        .live("aria-expanded", move || expanded.give().to_string())
        .pressed(turn)
        .child(el("span").class("mk").set("aria-hidden", "true").live_text(mark))
}

/// Whether a line is unfolded.
type Open = Option<Derived<bool>>;

/// The answer in the line's head; where it lacks a fact and the line is folded, that fact's blank. `None`: what does not
/// fold is always open.
pub fn head(page: Page, desk: &Desk, told: Told, scope: &str, open: Open) -> El {
    let panel = told.panel;
    // The blank that is being filled in stays until it is left: with its first letter its fact is lacking no more.
    let held = Live::new(None::<Id>);
    let lacking = Derived::new(move |_| {
        let first = panel.with(|it| it.head.lacks().first().map(Lack::id));
        if open.is_none_or(Derived::get) { None } else { held.get().or(first) }
    });
    let (desk, scope, heads) = (desk.clone(), scope.to_owned(), heads(panel));
    el("div").class("fig").part(move || match lacking.get() {
        Some(id) => {
            let blank = blank(page, &desk, Some(told), id, &format!("{scope}-head"), Dress::Short);
            let known = move || panel.with(|it| it.head.lacks().is_empty());
            let row = el("div").class("lacking").child(blank).child(
                el("p")
                    .live("class", move || if known() { "why" } else { "care" }.to_owned())
                    .live_text(move || panel.with(|it| still_needed(it, id))),
            );
            let here = row.element();
            let leave = move |_| {
                let here = here.clone();
                let left = move || {
                    if !browser::holds_focus(&here) {
                        held.set(None);
                    }
                };
                browser::after(LEFT_AFTER, left);
            };
            vec![row.on("focusin", move |_| held.set(Some(id))).on("focusout", leave)]
        }
        None => {
            let mut all: Vec<El> =
                (0..heads.get()).flat_map(|at| answer(panel, at, &scope)).collect();
            all.push(el("small").class("why").live_text(move || panel.with(|it| it.note.clone())));
            // A warning is not to wait until the line is unfolded.
            let warning = move || panel.with(|it| it.warnings.first().cloned().unwrap_or_default());
            all.push(el("small").class("care").live_text(warning));
            all
        }
    })
}

/// So many answers stand in the head.
fn heads(panel: Derived<Panel>) -> Derived<usize> {
    Derived::new(move |_| panel.with(Panel::heads))
}

/// Under the blank in a folded row: how much the answer still lacks, or the answer.
fn still_needed(panel: &Panel, id: Id) -> String {
    let more = panel.head.lacks().iter().filter(|it| it.id() != id).count();
    match panel.spoken() {
        Some(answer) => answer,
        None if more > 0 => format!("{}{}", words::NEEDED, words::and_more(more)),
        None => words::NEEDED.to_owned(),
    }
}

/// The calculator of a line: blanks, answers, working, cautions.
pub fn panel(page: Page, desk: &Desk, told: Told, scope: &str) -> El {
    let panel = told.panel;
    let quick = desk.quick;
    let asked = Derived::new(move |before: Option<&Vec<u16>>| {
        // One that was shown stays: it may be lacking no more with its first letter.
        let shown = |id: Id| before.is_some_and(|it| it.contains(&id.0));
        panel.with(|it| it.asked(|id| quick || shown(id)).map(|it| it.0).collect::<Vec<u16>>())
    });
    let blank = {
        let (desk, scope) = (desk.clone(), scope.to_owned());
        move |id: usize| blank(page, &desk, Some(told), Id(id as u16), &scope, Dress::Whole)
    };
    let blanks = el("div")
        .class("blanks")
        .each(move || asked.get().into_iter().map(usize::from).collect(), blank.clone());
    let warnings = move |leaves: &Leaves| {
        panel.with(|it| {
            for it in &it.warnings {
                leaves.next("p", "warning").text(it);
            }
        });
    };
    let count = Derived::new(move |_| panel.with(|it| it.answers.len()));
    let (here, heads) = (scope.to_owned(), heads(panel));
    let answers = move || {
        let one = |at| el("div").class("answer").children(answer(panel, at, &here));
        (heads.get()..=count.get()).map(one).collect()
    };
    let note = move || panel.with(|it| it.note.clone());
    let answers = el("div")
        .class("answers")
        .child(el("p").class("why said").live_text(note))
        .child(el("div").leaves(warnings))
        .child(el("div").part(answers))
        .children(torques::offers(page, desk, told, scope))
        .child(steps(panel, scope))
        .child(accept(page, desk, panel))
        .child(pictures(page, panel));
    let cautions = panel.with_untracked(|it| it.cautions);
    el("div")
        .class("panel")
        .child(el("div").child(blanks).child(more(told, scope, blank)))
        .child(answers)
        .child(workings(panel))
        .child(el("ul").class("cautions").children(cautions.iter().map(|it| el("li").text(it))))
}

/// The battery's and the adapter's picture among those of a calculator; any other number is so many bolts.
const BATTERY: usize = 1000;
const ADAPTER: usize = 1001;

/// What is drawn of a calculator. A picture stays as long as there is one of its sort, and follows the measures.
fn pictures(page: Page, panel: Derived<Panel>) -> El {
    let pictured = Derived::new(move |_| panel.with(|it| it.pictured));
    let which = move || {
        let Pictured { adapter, bolts, battery } = pictured.get();
        let battery = battery.then_some(BATTERY);
        let bolts = bolts.map(|it| it as usize);
        battery.into_iter().chain(adapter.map(|_| ADAPTER)).chain(bolts).collect()
    };
    el("div").class("pictures").each(which, move |it| match it {
        BATTERY => season_line::battery(page, panel),
        ADAPTER => torque_drawing::adapter(page, pictured),
        bolts => torque_drawing::pattern(bolts),
    })
}

/// A figure that was found, with the button that keeps it as a fact.
fn accept(page: Page, desk: &Desk, panel: Derived<Panel>) -> El {
    let found = Derived::new(move |_| panel.with(|it| it.accept.clone()));
    let desk = desk.clone();
    el("div").part(move || {
        let offer = found.get().map(|Accept { id, entry, words }| {
            let desk = desk.clone();
            button("do", &words, move || page.put(&desk, id, entry.text.clone(), entry.unit))
        });
        offer.into_iter().collect()
    })
}

/// Blanks that few need, behind a button.
fn more(told: Told, scope: &str, blank: impl Fn(usize) -> El + Clone + 'static) -> El {
    let panel = told.panel;
    let any = move || panel.with(|it| !it.more.is_empty());
    let name = format!("{scope}-more");
    while_so("div", any, move || {
        let open = Live::new(false);
        let turn = move || open.update(|it| *it = !*it);
        let fold = fold_button(&name, move || open.get(), turn).class("more").text(words::MORE);
        let ids = move || panel.with(|it| it.more.iter().map(|it| usize::from(it.0)).collect());
        let blank = blank.clone();
        let inside = move || vec![el("div").class("blanks").each(ids, blank.clone())];
        vec![fold, while_so("div", move || open.get(), inside)]
    })
}

/// Passes one after another, each with what to set.
fn steps(panel: Derived<Panel>, scope: &str) -> El {
    let scope = scope.to_owned();
    el("ol").class("steps").part(move || {
        panel.with(|it| {
            let step = |(at, (what, shown)): (usize, &(String, Shown))| {
                let id = format!("{scope}-step-{at}");
                let output = el("output").set("aria-live", "off").set("aria-labelledby", &id);
                el("li")
                    .class("answer")
                    .child(span("cap", what).set("id", &id))
                    .child(output.holding(&|leaves| figure(leaves, shown)))
            };
            it.steps.iter().enumerate().map(step).collect()
        })
    })
}
