//! One blank: label, text as typed, its own unit as a button, a hint, how it was read, and why it is not taken.

use super::browser;
use super::line::Told;
use super::page::{Desk, Page};
use crate::entry::{self, Entry};
use crate::facts::{self, About, Choice, Id, Kind};
use crate::show;
use crate::words::{fasteners, page as words};
use leptos::{html, prelude::*};

/// How a blank is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Dress {
    /// With its label above and its hint below.
    Whole,
    /// In the folded row: label and blank.
    Short,
    /// In a sentence: the blank alone, its label for those who do not see the sentence.
    Inline,
}

/// A blank for a fact on the desk at hand. `scope` keeps its ids apart from those of the same fact elsewhere.
#[component]
pub fn EntryField(id: Id, #[prop(into)] scope: String, dress: Dress) -> impl IntoView {
    let about = facts::about(id)?;
    let desk = expect_context::<Desk>();
    let name = format!("{scope}-{}", about.key);
    let field = Field {
        about,
        name,
        dress,
        page: expect_context(),
        told: use_context(),
        desk: StoredValue::new(desk),
    };
    Some(match &about.kind {
        Kind::Choice(choices) if dress == Dress::Inline => field.list(choices).into_any(),
        Kind::Choice(choices) => field.pills(choices).into_any(),
        _ => field.text().into_any(),
    })
}

#[derive(Clone)]
struct Field {
    about: &'static About,
    name: String,
    dress: Dress,
    page: Page,
    /// The line around it, which speaks its answer after typing.
    told: Option<Told>,
    desk: StoredValue<Desk>,
}

impl Field {
    fn entry(&self) -> Entry {
        self.desk.with_value(|it| it.signal(self.about.id)).get()
    }

    fn typed(&self, text: String) {
        self.page.typed(&self.desk.get_value(), self.about.id, text);
        if let Some(told) = self.told {
            told.after_typing(self.page);
        }
    }

    /// Why the entry is not taken: its own reader first, then what the line's laws say.
    fn refusal(&self) -> Option<String> {
        let own = facts::refusal(self.about, &self.entry()).map(|it| it.to_string());
        own.or_else(|| self.told.and_then(|it| it.panel.with(|panel| panel.refusal(self.about.id))))
    }

    fn text(self) -> impl IntoView {
        let Self { about, ref name, dress, page, .. } = self;
        let [hint_id, note_id] = ["hint", "note"].map(|it| format!("{name}-{it}"));
        let described = match dress {
            Dress::Whole => format!("{note_id} {hint_id}"),
            Dress::Short | Dress::Inline => note_id.clone(),
        };
        let refused = {
            let field = self.clone();
            Memo::new(move |_| field.refusal())
        };
        let echo = {
            let field = self.clone();
            Memo::new(move |_| facts::echo(about, &field.entry()))
        };
        let list = (about.id == facts::FASTENER_NAME.id()).then(|| format!("{name}-list"));
        let value = {
            let field = self.clone();
            move || field.entry().text
        };
        let typed = {
            let field = self.clone();
            move |text: String| field.typed(text)
        };
        let width = {
            let field = self.clone();
            move || field.entry().text.chars().count().clamp(4, 24).to_string()
        };
        let wide = matches!(about.kind, Kind::Temperatures | Kind::Dose | Kind::Text);
        view! {
            <div class="blank" class:inline=dress == Dress::Inline class:short=dress == Dress::Short class:wide=wide>
                <label for=name.clone() class:aloud=dress == Dress::Inline>{about.label}</label>
                <span class="in" class:refused=move || refused.get().is_some()>
                    <input
                        id=name.clone()
                        type="text"
                        inputmode=keypad(about)
                        autocomplete="off"
                        autocapitalize="off"
                        spellcheck="false"
                        list=list.clone()
                        size=width
                        prop:value=value
                        aria-describedby=described
                        aria-invalid=move || refused.get().is_some().then_some("true")
                        on:input:target=move |event| typed(event.target().value())
                    />
                    {about.signed().then(|| self.clone().sign())}
                    {(about.kind == Kind::Day).then(|| self.clone().calendar())}
                    {(!about.offered(page.set.get_untracked()).is_empty()).then(|| self.clone().unit())}
                </span>
                {list.map(|list| view! {
                    <datalist id=list>{fasteners::all().map(|it| view! { <option value=it></option> }).collect_view()}</datalist>
                })}
                <span id=note_id class="note">
                    {move || match refused.get() {
                        Some(why) => view! { <span class="care">{why}</span> }.into_any(),
                        None => view! { <span class="echo">{move || echo.get().filter(|_| dress != Dress::Inline)}</span> }.into_any(),
                    }}
                </span>
                {(dress == Dress::Whole).then(|| view! { <span id=hint_id class="hint">{about.hint}</span> })}
            </div>
        }
    }

    /// The unit that a bare number means, and a button to change it.
    fn unit(self) -> impl IntoView {
        let about = self.about;
        let set = self.page.set;
        let field = self.clone();
        let unit =
            Memo::new(move |_| about.unit_for(&field.entry(), set.get()).map_or(0, |it| it.code));
        let symbol = move || crate::units::by_code(unit.get()).map_or("", |it| it.symbol);
        let next = move |_| {
            let offered = about.offered(set.get_untracked());
            let now = offered.iter().position(|it| it.code == unit.get_untracked());
            let next = offered.get(now.map_or(0, |it| it + 1)).or(offered.first());
            if let Some(next) = next {
                self.page.change_unit(&self.desk.get_value(), about.id, next.code);
                if let Some(told) = self.told {
                    told.after_typing(self.page);
                }
            }
        };
        let several = move || about.offered(set.get()).len() > 1;
        view! {
            {move || if several() {
                view! {
                    <button type="button" class="unit" aria-label=move || words::change_unit(about.label, symbol()) on:click=next>
                        {symbol}
                    </button>
                }
                .into_any()
            } else {
                view! { <span class="unit">{symbol}</span> }.into_any()
            }}
        }
    }

    /// Turns the sign: many decimal keypads have none.
    fn sign(self) -> impl IntoView {
        let label = format!("{}: {}", words::CHANGE_SIGN, self.about.label);
        let turn = move |_| {
            let text = self.entry().text;
            let trimmed = text.trim_start();
            let turned = trimmed
                .strip_prefix(['-', '−'])
                .map_or_else(|| format!("−{trimmed}"), str::to_owned);
            self.typed(turned);
        };
        view! { <button type="button" class="unit" aria-label=label on:click=turn>"±"</button> }
    }

    /// The browser's own calendar, for those who would rather pick a day than type it.
    fn calendar(self) -> impl IntoView {
        let picker = NodeRef::<html::Input>::new();
        let label = format!("{}: {}", words::PICK_A_DAY, self.about.label);
        let open = move |_| {
            if let Some(input) = picker.get_untracked() {
                browser::show_picker(&input);
            }
        };
        let now = self.clone();
        let picked = move |text: String| {
            if let Ok(Some(day)) = entry::day(&Entry::new(text, 0)) {
                self.typed(show::plain_day(day));
            }
        };
        view! {
            <button type="button" class="unit" aria-label=label on:click=open>"▾"</button>
            <input
                type="date"
                class="picker"
                tabindex="-1"
                aria-hidden="true"
                node_ref=picker
                prop:value=move || entry::day(&now.entry()).ok().flatten().map(entry::day_written).unwrap_or_default()
                on:change:target=move |event| picked(event.target().value())
            />
        }
    }

    /// A choice as a row of pills.
    fn pills(self, choices: &'static [Choice]) -> impl IntoView {
        let Self { about, ref name, dress, .. } = self;
        let note_id = format!("{name}-note");
        let described = note_id.clone();
        let pills = choices
            .iter()
            .map(|choice| {
                let id = format!("{name}-{}", choice.key);
                let [now, typed] = [self.clone(), self.clone()];
                view! {
                    <span class="pill">
                        <input
                            type="radio"
                            id=id.clone()
                            name=name.clone()
                            value=choice.key
                            prop:checked=move || facts::chosen(choices, &now.entry()).is_some_and(|it| it.code == choice.code)
                            on:change=move |_| typed.typed(choice.key.to_owned())
                        />
                        <label for=id>{choice.label}</label>
                    </span>
                }
            })
            .collect_view();
        let field = self.clone();
        view! {
            <fieldset class="blank choice" class:short=dress == Dress::Short aria-describedby=described>
                <legend>{about.label}</legend>
                <div class="pills">{pills}</div>
                <span id=note_id class="note care">{move || field.refusal()}</span>
                {(dress == Dress::Whole).then(|| view! { <span class="hint">{about.hint}</span> })}
            </fieldset>
        }
    }

    /// A choice as a list to choose from, for a sentence.
    fn list(self, choices: &'static [Choice]) -> impl IntoView {
        let Self { about, ref name, .. } = self;
        let [now, typed] = [self.clone(), self.clone()];
        let chosen = move || facts::chosen(choices, &now.entry()).map_or("", |it| it.key);
        let is_blank = {
            let chosen = chosen.clone();
            move || chosen().is_empty()
        };
        view! {
            <span class="blank inline">
                <label for=name.clone() class="aloud">{about.label}</label>
                <span class="in">
                    <select id=name.clone() prop:value=chosen on:change:target=move |event| typed.typed(event.target().value())>
                        <option value="" disabled=true selected=is_blank>"…"</option>
                        {choices.iter().map(|it| view! { <option value=it.key>{it.label}</option> }).collect_view()}
                    </select>
                </span>
            </span>
        }
    }
}

/// Which keypad a phone brings up: digits where a number is enough, letters where a range, a ratio or a text may stand.
fn keypad(about: &About) -> &'static str {
    match about.kind {
        Kind::Quantity { range: false, .. } => "decimal",
        _ => "text",
    }
}
