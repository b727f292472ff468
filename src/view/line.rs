//! One line of the sheet: its head with the answer large, and its calculator when it is unfolded.

use super::answer::{AnswerShown, Workings, figure, slug};
use super::entry_field::{Dress, EntryField};
use super::page::{Desk, Page};
use crate::facts::Lack;
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
    pub fn new(line: Line, desk: Desk, page: Page) -> Self {
        let panel = Memo::new(move |_| line.panel(&desk, page.set.get()));
        Self { panel, pending: StoredValue::new(None) }
    }

    /// Says the line's answer once, a second after typing stops.
    pub fn after_typing(self, page: Page) {
        if let Some(handle) = self.pending.get_value() {
            handle.clear();
        }
        let say = move || {
            if let Some(Some(words)) = self.panel.try_with_untracked(|it| it.head.spoken()) {
                page.say(&words);
            }
        };
        self.pending.set_value(set_timeout_with_handle(say, SAID_AFTER).ok());
    }
}

/// A line of the lay-up side.
#[component]
pub fn LineView(line: Line, number: usize) -> impl IntoView {
    let page = expect_context::<Page>();
    let told = Told::new(line, expect_context::<Desk>(), page);
    provide_context(told);
    let said = line.words();
    let id = format!("line-{}", line.key());
    let [title_id, panel_id] = ["title", "panel"].map(|it| format!("{id}-{it}"));
    let (titled_by, controls, scope) = (title_id.clone(), panel_id.clone(), id.clone());
    let open = Memo::new(move |_| page.open.with(|it| it.contains(&line)));
    let turn = move |_| {
        let now = open.get_untracked();
        page.open.update(|it| {
            if now {
                it.remove(&line);
            } else {
                it.insert(line);
            }
        });
        let fragment = if now { "layup".to_owned() } else { format!("layup/{}", line.key()) };
        super::browser::replace_fragment(&fragment);
    };
    let extra = move || (line == Line::Torques).then(|| view! { <super::torques::Kept /> });
    view! {
        <li class="line" class:open=open>
            <section aria-labelledby=titled_by id=id>
                <div class="fold">
                    <span class="no" aria-hidden="true">{number}</span>
                    <div class="what">
                        <h3>
                            <button type="button" id=title_id aria-expanded=move || open.get().to_string() aria-controls=controls on:click=turn>
                                <span class="mk" aria-hidden="true">{move || if open.get() { "▾" } else { "▸" }}</span>
                                {said.title}
                            </button>
                        </h3>
                        <p class="why">{said.reason}</p>
                    </div>
                    <Head told scope=scope.clone() open />
                </div>
                <div id=panel_id>
                    {move || open.get().then(|| view! { <PanelView told scope=scope.clone() /> {extra()} })}
                </div>
            </section>
        </li>
    }
}

/// The answer in the line's head; where it lacks a fact and the line is folded, that fact's blank.
#[component]
pub fn Head(
    told: Told,
    #[prop(into)] scope: String,
    #[prop(into)] open: Signal<bool>,
) -> impl IntoView {
    let panel = told.panel;
    let label = Memo::new(move |_| panel.with(|it| it.head.label));
    let lacking = Memo::new(move |_| {
        panel.with(|it| match &it.head.figure {
            Figure::Lacks(lacks) if !open.get() => {
                lacks.first().map(|first| (first.id(), lacks.len() - 1))
            }
            _ => None,
        })
    });
    let note = move || panel.with(|it| it.note.clone());
    let blank_scope = format!("{scope}-head");
    view! {
        {move || {
            let scope = scope.clone();
            match lacking.get() {
                Some((id, more)) => view! {
                    <div class="fig lacking">
                        <p class="care">{words::NEEDS} {more_words(more)}</p>
                        <EntryField id scope=blank_scope.clone() dress=Dress::Short />
                    </div>
                }
                .into_any(),
                None => view! {
                    <div class="fig">
                        {move || {
                            let id = format!("{scope}-{}", slug(label.get()));
                            view! {
                                <span class="cap" id=id.clone()>{label.get()}</span>
                                <output aria-live="off" aria-labelledby=id>{move || panel.with(|it| figure(it.head.clone()))}</output>
                            }
                        }}
                        <small class="why">{note}</small>
                    </div>
                }
                .into_any(),
            }
        }}
    }
}

fn more_words(more: usize) -> Option<String> {
    (more > 0).then(|| words::and_more(more))
}

/// The calculator of a line: blanks, answers, working, cautions.
#[component]
pub fn PanelView(told: Told, #[prop(into)] scope: String) -> impl IntoView {
    let panel = told.panel;
    let quick = expect_context::<Desk>().quick;
    let blanks = Memo::new(move |_| {
        panel.with(|it| {
            let lacks_stated =
                |id| it.all().flat_map(|it| it.lacks()).map(Lack::id).any(|lack| lack == id);
            // What the sheet's first sentence has already is asked here only where it stands alone or is lacking.
            let stated = it.stated.iter().copied().filter(|id| quick || lacks_stated(*id));
            stated.chain(it.blanks.iter().copied()).collect::<Vec<_>>()
        })
    });
    let labels = Memo::new(move |_| {
        panel.with(|it| it.answers.iter().map(|it| it.label).collect::<Vec<_>>())
    });
    let warnings = move || panel.with(|it| it.warnings.clone());
    let cautions = panel.with_untracked(|it| it.cautions);
    let answer_scope = scope.clone();
    view! {
        <div class="panel">
            <div class="blanks">
                <For each=move || blanks.get() key=|id| *id let:id>
                    <EntryField id scope=scope.clone() dress=Dress::Whole />
                </For>
            </div>
            <div class="answers">
                {move || warnings().into_iter().map(|it| view! { <p class="warning">{it}</p> }).collect_view()}
                <For each=move || labels.get() key=|label| *label let:label>
                    <AnswerShown panel label scope=answer_scope.clone() />
                </For>
            </div>
            <Workings panel />
            <ul class="cautions">{cautions.iter().map(|it| view! { <li>{*it}</li> }).collect_view()}</ul>
        </div>
    }
}
