//! One blank: label, text as typed, its own unit as a button, a hint, how it was read, and why it is not taken.

use super::browser;
use super::line::Told;
use super::live::{act, nothing, part, text, typed};
use super::page::{Desk, Page};
use crate::entry::{self, Entry};
use crate::facts::{self, About, Choice, Id, Kind};
use crate::show;
use crate::units;
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

/// A blank for a fact on `desk`. `scope` keeps its ids apart from those of the same fact elsewhere; `told` is the line
/// around it, which speaks its answer after typing.
pub fn blank(
    page: Page,
    desk: &Desk,
    told: Option<Told>,
    id: Id,
    scope: &str,
    dress: Dress,
) -> AnyView {
    let Some(about) = facts::about(id) else { return nothing() };
    let field = Field {
        about,
        name: format!("{scope}-{}", about.key),
        dress,
        page,
        told,
        desk: desk.clone(),
    };
    match &about.kind {
        Kind::Choice(choices) if dress == Dress::Inline => field.list(choices),
        Kind::Choice(choices) => field.pills(choices),
        _ => field.text(),
    }
}

#[derive(Clone)]
struct Field {
    about: &'static About,
    name: String,
    dress: Dress,
    page: Page,
    told: Option<Told>,
    desk: Desk,
}

impl Field {
    fn entry(&self) -> Entry {
        self.desk.signal(self.about.id).get()
    }

    fn typed(&self, text: String) {
        self.page.typed(&self.desk, self.about.id, text);
        self.say_soon();
    }

    fn say_soon(&self) {
        if let Some(told) = self.told {
            told.say_soon(self.page);
        }
    }

    /// Why the entry is not taken: its own reader first, then what the line's laws say.
    fn refusal(&self) -> Option<String> {
        let own = facts::refusal(self.about, &self.entry()).map(|it| it.to_string());
        own.or_else(|| self.told.and_then(|it| it.panel.with(|panel| panel.refusal(self.about.id))))
    }

    /// Why the entry is not taken, or how it was read.
    fn note(self) -> AnyView {
        let Self { about, dress, .. } = self;
        let note = part(move || match self.refusal() {
            Some(why) => view! { <span class="care">{why}</span> }.into_any(),
            None if dress == Dress::Inline => nothing(),
            None => match facts::echo(about, &self.entry()) {
                Some(echo) => view! { <span class="echo">{echo}</span> }.into_any(),
                None => nothing(),
            },
        });
        note.into_any()
    }

    fn text(self) -> AnyView {
        let Self { about, ref name, dress, .. } = self;
        let [hint_id, note_id] = ["hint", "note"].map(|it| format!("{name}-{it}"));
        let described = match dress {
            Dress::Whole => format!("{note_id} {hint_id}"),
            Dress::Short | Dress::Inline => note_id.clone(),
        };
        let [value, shown, invalid, take] = std::array::from_fn(|_| self.clone());
        let width = text(move || shown.entry().text.chars().count().clamp(4, 24).to_string());
        let invalid = text(move || invalid.refusal().is_some().to_string());
        let class = match dress {
            Dress::Whole => "blank",
            Dress::Short => "blank short",
            Dress::Inline => "blank inline",
        };
        let label_class = if dress == Dress::Inline { "aloud" } else { "" };
        let names = if about.id == facts::FASTENER_NAME.id() {
            format!("{name}-list")
        } else {
            String::new()
        };
        let list = if names.is_empty() {
            nothing()
        } else {
            let names_of =
                fasteners::all().map(|it| view! { <option value=it></option> }.into_any());
            view! { <datalist id=names.clone()>{names_of.collect_view()}</datalist> }.into_any()
        };
        let sign = if about.signed() { self.clone().sign() } else { nothing() };
        let calendar = if about.kind == Kind::Day { self.clone().calendar() } else { nothing() };
        let unit = self.clone().unit();
        let hint = match dress {
            Dress::Whole => view! { <span id=hint_id class="hint">{about.hint}</span> }.into_any(),
            Dress::Short | Dress::Inline => nothing(),
        };
        view! {
            <div class=class>
                <label for=name.clone() class=label_class>{about.label}</label>
                <span class="in">
                    <input
                        id=name.clone()
                        type="text"
                        inputmode=keypad(about)
                        autocomplete="off"
                        autocapitalize="off"
                        spellcheck="false"
                        list=names
                        size=width
                        prop:value=text(move || value.entry().text)
                        aria-describedby=described
                        aria-invalid=invalid
                        on:input=typed(move |text| take.typed(text))
                    />
                    {sign} {calendar} {unit}
                </span>
                {list}
                <span id=note_id class="note">{self.note()}</span>
                {hint}
            </div>
        }
        .into_any()
    }

    /// The unit that a bare number means, and a button to change it where there is a choice.
    fn unit(self) -> AnyView {
        let about = self.about;
        if about.offered(self.page.set.get_untracked()).is_empty() {
            return nothing();
        }
        let shown = self.clone();
        let symbol = text(move || {
            about
                .unit_for(&shown.entry(), shown.page.set.get())
                .map_or_else(String::new, |it| it.symbol.to_owned())
        });
        if about.offered(units::UnitSet::Metric).len() < 2 {
            return view! { <span class="unit">{symbol}</span> }.into_any();
        }
        let next = move || {
            let set = self.page.set.get_untracked();
            let now = about.unit_for(&untrack(|| self.entry()), set);
            let offered = about.offered(set);
            let at = now.and_then(|now| offered.iter().position(|it| *it == now));
            if let Some(next) = offered.get(at.map_or(0, |it| it + 1)).or(offered.first()) {
                self.page.change_unit(&self.desk, about.id, next.code);
                self.say_soon();
            }
        };
        let name = text(move || words::change_unit(about.label, &symbol.get()));
        view! { <button type="button" class="unit" aria-label=name on:click=act(next)>{symbol}</button> }.into_any()
    }

    /// Turns the sign: many decimal keypads have none.
    fn sign(self) -> AnyView {
        let label = format!("{}: {}", words::CHANGE_SIGN, self.about.label);
        let turn = move || {
            let now = untrack(|| self.entry()).text;
            let trimmed = now.trim_start();
            let turned = trimmed
                .strip_prefix(['-', '−'])
                .map_or_else(|| format!("−{trimmed}"), str::to_owned);
            self.typed(turned);
        };
        small_button(label, "±", turn)
    }

    /// The browser's own calendar, for those who would rather pick a day than type it.
    fn calendar(self) -> AnyView {
        let picker = NodeRef::<html::Input>::new();
        let label = format!("{}: {}", words::PICK_A_DAY, self.about.label);
        let open = move || {
            if let Some(input) = picker.get_untracked() {
                browser::show_picker(&input);
            }
        };
        let now = self.clone();
        let day = move || {
            entry::day(&now.entry()).ok().flatten().map(entry::day_written).unwrap_or_default()
        };
        let picked = move |text: String| {
            if let Ok(Some(day)) = entry::day(&Entry::new(text, 0)) {
                self.typed(show::plain_day(day));
            }
        };
        view! {
            {small_button(label, "▾", open)}
            <input type="date" class="picker" tabindex="-1" aria-hidden="true" node_ref=picker prop:value=text(day) on:change=typed(picked) />
        }
        .into_any()
    }

    /// A choice as a row of pills.
    fn pills(self, choices: &'static [Choice]) -> AnyView {
        let Self { about, ref name, dress, .. } = self;
        let note_id = format!("{name}-note");
        let described = note_id.clone();
        let pills = choices.iter().map(|choice| self.clone().pill(choices, choice)).collect_view();
        let (class, hint) = match dress {
            Dress::Whole => ("blank", view! { <span class="hint">{about.hint}</span> }.into_any()),
            Dress::Short | Dress::Inline => ("blank short", nothing()),
        };
        view! {
            <fieldset class=class aria-describedby=described>
                <legend>{about.label}</legend>
                <div class="pills">{pills}</div>
                <span id=note_id class="note">{self.note()}</span>
                {hint}
            </fieldset>
        }
        .into_any()
    }

    fn pill(self, choices: &'static [Choice], choice: &'static Choice) -> AnyView {
        let id = format!("{}-{}", self.name, choice.key);
        let group = self.name.clone();
        let now = self.clone();
        let checked = Signal::derive(move || {
            facts::chosen(choices, &now.entry()).is_some_and(|it| it.code == choice.code)
        });
        view! {
            <span class="pill">
                <input
                    type="radio"
                    id=id.clone()
                    name=group
                    value=choice.key
                    prop:checked=checked
                    on:change=typed(move |_| self.typed(choice.key.to_owned()))
                />
                <label for=id>{choice.label}</label>
            </span>
        }
        .into_any()
    }

    /// A choice as a list to choose from, for a sentence.
    fn list(self, choices: &'static [Choice]) -> AnyView {
        let Self { about, ref name, .. } = self;
        let now = self.clone();
        let chosen = text(move || {
            facts::chosen(choices, &now.entry()).map_or_else(String::new, |it| it.key.to_owned())
        });
        let options =
            choices.iter().map(|it| view! { <option value=it.key>{it.label}</option> }.into_any());
        let name = name.clone();
        view! {
            <span class="blank inline">
                <label for=name.clone() class="aloud">{about.label}</label>
                <span class="in">
                    <select id=name prop:value=chosen on:change=typed(move |text| self.typed(text))>
                        <option value="" disabled>"…"</option>
                        {options.collect_view()}
                    </select>
                </span>
            </span>
        }
        .into_any()
    }
}

fn small_button(label: String, sign: &'static str, does: impl FnMut() + 'static) -> AnyView {
    view! { <button type="button" class="unit" aria-label=label on:click=act(does)>{sign}</button> }
        .into_any()
}

/// Which keypad a phone brings up: digits where a number is enough, letters where a range, a ratio or a text may stand.
fn keypad(about: &About) -> &'static str {
    match about.kind {
        Kind::Quantity { range: false, .. } => "decimal",
        _ => "text",
    }
}
