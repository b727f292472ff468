//! One line of the sheet: its head with the answer large, and its calculator when it is unfolded.

use super::answer::{answer, figure, workings};
use super::browser;
use super::entry_field::{Dress, blank};
use super::live::{act, each, flag, paragraph, part, steady_flag, text, while_so};
use super::page::{Desk, Page};
use crate::facts::{Id, Lack};
use crate::plan::{Line, Panel};
use crate::show::Figure;
use crate::words::page as words;
use leptos::prelude::*;
use std::time::Duration;

/// A line's answers, for the blanks inside of it.
#[derive(Clone, Copy)]
pub struct Told {
    /// Computed again when one of the facts it asked for changes.
    pub panel: Memo<Panel>,
    pending: StoredValue<Option<TimeoutHandle>>,
}

/// So long after the last letter the answer is said aloud.
const SAID_AFTER: Duration = Duration::from_secs(1);

impl Told {
    /// The answers of a line from the facts on a desk.
    pub fn new(line: Line, desk: &Desk, page: Page) -> Self {
        let desk = desk.clone();
        let panel = Memo::new(move |_| line.panel(&desk, page.set.get()));
        Self { panel, pending: StoredValue::new(None) }
    }

    /// Says the line's answer once, a second after typing stops.
    pub fn say_soon(self, page: Page) {
        if let Some(handle) = self.pending.get_value() {
            handle.clear();
        }
        let say = move || {
            // The line may be gone by now.
            if let Some(Some(words)) = self.panel.try_with_untracked(|it| it.head.spoken()) {
                page.say(&words);
            }
        };
        self.pending.set_value(set_timeout_with_handle(say, SAID_AFTER).ok());
    }
}

/// A line of the lay-up side; `below` stands under its calculator.
pub fn line(
    page: Page,
    desk: &Desk,
    line: Line,
    number: usize,
    below: fn(Page, &Desk, Told) -> AnyView,
) -> AnyView {
    let told = Told::new(line, desk, page);
    let said = line.words();
    let id = format!("line-{}", line.key());
    let [title_id, panel_id] = ["title", "panel"].map(|it| format!("{id}-{it}"));
    let open = steady_flag(move || page.open.with(|it| it.contains(&line)));
    let turn = move || {
        let now = open.get_untracked();
        page.open.update(|it| {
            if now {
                it.remove(&line);
            } else {
                it.insert(line);
            }
        });
        let fragment = if now { "layup".to_owned() } else { format!("layup/{}", line.key()) };
        browser::replace_fragment(&fragment);
    };
    let title = text(move || said.title.to_owned());
    let fold = fold_button(title_id.clone(), panel_id.clone(), open, title, turn);
    let head = head(page, desk, told, &id, open);
    let inside = {
        let (desk, scope) = (desk.clone(), id.clone());
        while_so(open, move || {
            [panel(page, &desk, told, &scope), below(page, &desk, told)].collect_view().into_any()
        })
    };
    view! {
        <li class="line" class:open=open>
            <section aria-labelledby=title_id id=id>
                <div class="fold">
                    <span class="no" aria-hidden="true">{number}</span>
                    <div class="what">
                        <h3>{fold}</h3>
                        <p class="why">{said.reason}</p>
                    </div>
                    {head}
                </div>
                <div id=panel_id>{inside}</div>
            </section>
        </li>
    }
    .into_any()
}

/// The title of something that folds: a button with a mark that shows whether it is open.
pub fn fold_button(
    id: String,
    controls: String,
    open: Signal<bool>,
    title: Signal<String>,
    turn: impl FnMut() + 'static,
) -> AnyView {
    let mark = text(move || if open.get() { "▾" } else { "▸" }.to_owned());
    let expanded = text(move || open.get().to_string());
    view! {
        <button type="button" id=id aria-expanded=expanded aria-controls=controls on:click=act(turn)>
            <span class="mk" aria-hidden="true">{mark}</span>
            {title}
        </button>
    }
    .into_any()
}

/// The answer in the line's head; where it lacks a fact and the line is folded, that fact's blank.
pub fn head(page: Page, desk: &Desk, told: Told, scope: &str, open: Signal<bool>) -> AnyView {
    let panel = told.panel;
    // First fact that is lacking, and how many more.
    let lacking = Memo::new(move |_| {
        panel.with(|it| match &it.head.figure {
            Figure::Lacks(lacks) if !open.get() => {
                lacks.first().map(|first| (first.id(), lacks.len() - 1))
            }
            _ => None,
        })
    });
    let (desk, scope) = (desk.clone(), scope.to_owned());
    let head = part(move || match lacking.get() {
        Some((id, more)) => {
            let more = if more > 0 { words::and_more(more) } else { String::new() };
            let blank = blank(page, &desk, Some(told), id, &format!("{scope}-head"), Dress::Short);
            view! {
                <div class="fig lacking">
                    {blank}
                    <p class="care">{format!("{}{more}", words::NEEDED)}</p>
                </div>
            }
            .into_any()
        }
        None => {
            let id = format!("{scope}-answer-0");
            let labelled_by = id.clone();
            let label = text(move || panel.with(|it| it.head.label).to_owned());
            let shown = part(move || panel.with(|it| figure(&it.head)));
            let note = text(move || panel.with(|it| it.note.clone()));
            view! {
                <div class="fig">
                    <span class="cap" id=id>{label}</span>
                    <output aria-live="off" aria-labelledby=labelled_by>{shown}</output>
                    <small class="why">{note}</small>
                </div>
            }
            .into_any()
        }
    });
    head.into_any()
}

/// The calculator of a line: blanks, answers, working, cautions.
pub fn panel(page: Page, desk: &Desk, told: Told, scope: &str) -> AnyView {
    let panel = told.panel;
    let quick = desk.quick;
    let asked = Memo::new(move |_| {
        panel.with(|it| {
            let lacks =
                |id| it.all().flat_map(|it| it.lacks()).map(Lack::id).any(|lack| lack == id);
            // What the sheet's first sentence has already is asked here only where it stands alone or is lacking.
            let stated = it.stated.iter().copied().filter(|id| quick || lacks(*id));
            stated.chain(it.blanks.iter().copied()).map(|it| usize::from(it.0)).collect::<Vec<_>>()
        })
    });
    let blanks = {
        let (desk, scope) = (desk.clone(), scope.to_owned());
        each(asked.into(), move |id| {
            blank(page, &desk, Some(told), Id(id as u16), &scope, Dress::Whole)
        })
    };
    let warnings = part(move || {
        panel.with(|it| {
            it.warnings.iter().map(|it| paragraph("warning", it.clone())).collect_view().into_any()
        })
    });
    let (count, cautions) = panel.with_untracked(|it| (it.answers.len(), it.cautions));
    let answers = (1..=count).map(|at| answer(panel, at, scope)).collect_view();
    let cautions = cautions.iter().map(|it| view! { <li>{*it}</li> }.into_any()).collect_view();
    view! {
        <div class="panel">
            <div class="blanks">{blanks}</div>
            <div class="answers">{warnings} {answers}</div>
            {workings(panel)}
            <ul class="cautions">{cautions}</ul>
        </div>
    }
    .into_any()
}

/// Always open: a quick sum's head.
pub fn unfolded() -> Signal<bool> {
    flag(|| true)
}
