//! One blank: label, text as typed, its own unit as a button, a hint, how it was read, and why it is not taken.

use super::browser;
use super::element::{El, Words, el, span};
use super::leaf::Leaves;
use super::line::Told;
use super::live::Derived;
use super::page::{Desk, Page};
use crate::entry::text::joined;
use crate::entry::{self, Entry};
use crate::facts::{self, About, Choice, Id, Kind};
use crate::show;
use crate::units::UnitSet;
use crate::words::{fasteners, page as words};
use leptos::prelude::*;
use std::ops::Deref;
use std::sync::Arc;

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
pub fn blank(page: Page, desk: &Desk, told: Option<Told>, id: Id, scope: &str, dress: Dress) -> El {
    let Some(about) = facts::about(id) else { return el("span") };
    let name = format!("{scope}-{}", about.key);
    let field = Field(Arc::new(Inside { about, name, dress, page, told, desk: desk.clone() }));
    match &about.kind {
        Kind::Choice(choices) if dress == Dress::Inline || is_long(choices) => field.list(choices),
        Kind::Choice(choices) => field.pills(choices, false),
        Kind::Several(choices) => field.pills(choices, true),
        _ => field.text(),
    }
}

/// More choices than these, with more letters in all, are a list to choose from.
const MOST_PILLS: [usize; 2] = [7, 90];

fn is_long(choices: &[Choice]) -> bool {
    let letters: usize = choices.iter().map(|it| it.label.len()).sum();
    choices.len() > MOST_PILLS[0] && letters > MOST_PILLS[1]
}

/// What stands beside an entry.
#[derive(Debug, Clone, PartialEq)]
enum Beside {
    /// Why it is not taken.
    Refused(String),
    /// How it was read, where that is not plain.
    Read(Option<String>),
}

/// A handle: every closure of a blank has one.
#[derive(Clone)]
struct Field(Arc<Inside>);

impl Deref for Field {
    type Target = Inside;

    fn deref(&self) -> &Inside {
        &self.0
    }
}

struct Inside {
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
        let signal = self.desk.signal(self.about.id);
        let typed = signal.get_untracked();
        self.page.tabs.ask(self.about, &self.desk, signal, typed, true);
        if let Some(told) = self.told {
            told.say_soon(self.page);
        }
    }

    /// Beside the entry why it is not taken, its own reader first, then what the line's laws say; or how it was read. A
    /// letter in one blank runs through the notes of all: what hangs on the entry alone is worked out once.
    fn note(&self, id: &str, invalid: Option<Words>) -> El {
        let field = self.clone();
        let own = Derived::new(move |_| {
            let entry = field.entry();
            match facts::refusal(field.about, &entry) {
                Some(why) => Beside::Refused(why.to_string()),
                // A sentence is not to be split by it: there it is heard, and seen below.
                None if field.dress == Dress::Inline => Beside::Read(None),
                None => Beside::Read(facts::echo(field.about, &entry)),
            }
        });
        let (told, about, field) = (self.told, self.about, self.clone());
        let say = move |leaves: &Leaves| {
            own.with(|own| {
                let law = || told?.panel.with(|panel| panel.refusal(about.id));
                let why = match own {
                    Beside::Refused(why) => Some(why.clone()),
                    Beside::Read(_) => law(),
                };
                if let Some(invalid) = &invalid {
                    invalid.say(if why.is_some() { "true" } else { "false" });
                }
                if let Some(why) = &why {
                    leaves.next("span", "care").text(why);
                } else if facts::to_come(about, &field.entry(), field.page.today.get()) {
                    leaves.next("span", "care").text(words::STILL_TO_COME);
                }
                match (own, why) {
                    (Beside::Read(Some(read)), _) => {
                        leaves.next("span", "echo").text(read);
                    }
                    // What a law refuses may have been read in another unit than was meant.
                    (Beside::Read(None), Some(_)) if field.dress != Dress::Inline => {
                        let read = facts::as_read(about, &field.entry());
                        leaves.next("span", "echo").text(&words::read_as(&read));
                    }
                    _ => {}
                }
            });
        };
        let class = if self.dress == Dress::Inline { "note aloud" } else { "note" };
        el("span").set("id", id).class(class).leaves(say)
    }

    fn label(&self) -> El {
        let class = if self.dress == Dress::Inline { "aloud" } else { "" };
        el("label").set("for", &self.name).class(class).text(self.about.label)
    }

    /// The hint, where there is room for it.
    fn hint(&self) -> Option<El> {
        let hint = || span("hint", self.about.hint).set("id", &format!("{}-hint", self.name));
        (self.dress == Dress::Whole).then(hint)
    }

    fn text(self) -> El {
        let Inside { about, ref name, dress, page, .. } = *self.0;
        let note = format!("{name}-note");
        let described =
            if dress == Dress::Whole { format!("{note} {name}-hint") } else { note.clone() };
        let [value, width, take] = std::array::from_fn(|_| self.clone());
        let rows = match about.kind {
            Kind::ThreadTorques => "3",
            // Twelve numbers are more than a phone's line; a line's end parts them as a space does.
            _ if about.id == facts::MONTHLY_MEANS.id() => "2",
            _ => "",
        };
        let input = if rows.is_empty() {
            el("input").set("type", "text").set("inputmode", keypad(about))
        } else {
            el("textarea").set("rows", rows)
        };
        let input = input
            .set("id", name)
            .set("autocomplete", "off")
            .set("autocapitalize", "off")
            .set("spellcheck", "false")
            .set("aria-describedby", &described)
            .live("size", move || width.entry().text.chars().count().clamp(4, 24).to_string())
            .live_typed(
                move || value.entry().text,
                move || page.tabs.is_merging(),
                move |text, late| {
                    if late {
                        let theirs = take.desk.signal(about.id);
                        let entry = theirs.get_untracked();
                        page.tabs.ask(about, &take.desk, theirs, entry, false);
                    }
                    take.typed(text);
                },
            );
        let invalid = input.attribute("aria-invalid");
        // What is typed over the example takes the place of its figure, not a place behind it.
        let filled = input.element();
        let input = input.on("focus", move |_| {
            if page.is_example_untracked() {
                browser::select(&filled);
            }
        });
        let mut row = el("span").class("in");
        let mut names = None;
        if about.id == facts::FASTENER_NAME.id() {
            let list = format!("{name}-list");
            names = Some(
                el("datalist")
                    .set("id", &list)
                    .children(fasteners::all().map(|it| el("option").set("value", it))),
            );
            row = row.child(input.set("list", &list));
        } else {
            row = row.child(input);
        }
        if about.signed() {
            row = row.child(self.clone().sign());
        }
        if about.kind == Kind::Day {
            row = row.children(self.clone().calendar());
        }
        let row = row.maybe(self.clone().unit());
        let class = match dress {
            Dress::Whole => "blank",
            Dress::Short => "blank short",
            Dress::Inline => "blank inline",
        };
        let tag = if dress == Dress::Inline { "span" } else { "div" };
        el(tag)
            .class(class)
            .child(self.label())
            .child(row)
            .maybe(names)
            .maybe(self.hint())
            .child(self.note(&note, Some(invalid)))
    }

    /// The unit that a bare number means, and a button to change it where there is a choice.
    fn unit(self) -> Option<El> {
        let about = self.about;
        let several = match about.offered(UnitSet::Metric).len() {
            0 => return None,
            count => count > 1,
        };
        let [shown, named] = std::array::from_fn(|_| self.clone());
        let symbol = |field: &Self| {
            about
                .unit_for(&field.entry(), field.page.set.get())
                .map_or_else(String::new, |it| it.shown().to_owned())
        };
        if !several {
            return Some(el("span").class("unit").live_text(move || symbol(&shown)));
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
        let name = move || words::change_unit(&symbol(&named));
        let button =
            el("button").set("type", "button").class("unit").live("aria-label", name).press(next);
        Some(button.live_text(move || symbol(&shown)))
    }

    /// Turns the sign: many decimal keypads have none.
    fn sign(self) -> El {
        let turn = move || {
            let now = untrack(|| self.entry()).text;
            let trimmed = now.trim_start();
            let turned = trimmed
                .strip_prefix(['-', '−'])
                .map_or_else(|| format!("−{trimmed}"), str::to_owned);
            self.typed(turned);
        };
        small_button(words::CHANGE_SIGN, "±", turn)
    }

    /// The browser's own calendar, for those who would rather pick a day than type it.
    fn calendar(self) -> [El; 2] {
        let now = self.clone();
        let label = self.about.label;
        let picker = el("input")
            .set("type", "hidden")
            .class("picker")
            .set("tabindex", "-1")
            .set("aria-hidden", "true")
            .live_value(move || {
                entry::day(&now.entry()).ok().flatten().map(entry::day_written).unwrap_or_default()
            })
            .take("change", move |text| {
                if let Ok(Some(day)) = entry::day(&Entry::new(text, 0)) {
                    self.typed(show::plain_day(day));
                }
            });
        let opened = picker.element();
        [
            small_button(&words::pick_a_day(label), "▾", move || browser::show_picker(&opened)),
            picker,
        ]
    }

    /// A choice as a row of pills; of `several` any may be pressed in.
    fn pills(self, choices: &'static [Choice], several: bool) -> El {
        let note = format!("{}-note", self.name);
        let class = if self.dress == Dress::Whole { "blank" } else { "blank short" };
        let pills = choices.iter().map(|choice| self.clone().pill(choices, choice, several));
        el("fieldset")
            .class(class)
            .set("aria-describedby", &note)
            .child(el("legend").text(self.about.label))
            .child(el("div").class("pills").children(pills))
            .maybe(self.hint())
            .child(self.note(&note, None))
    }

    fn pill(self, choices: &'static [Choice], choice: &'static Choice, several: bool) -> El {
        let id = format!("{}-{}", self.name, choice.key);
        let [now, again] = std::array::from_fn(|_| self.clone());
        let checked = move || {
            if several {
                facts::several_keys(choices, &now.entry())
                    .split_whitespace()
                    .any(|it| it == choice.key)
            } else {
                facts::chosen(choices, &now.entry()).is_some_and(|it| it.code == choice.code)
            }
        };
        let input = el("input")
            .set("type", if several { "checkbox" } else { "radio" })
            .set("id", &id)
            .set("name", &self.name)
            .set("value", choice.key)
            .live_so("checked", checked)
            .take("change", move |_| {
                let text = if several {
                    turned(choices, &untrack(|| self.entry()), choice.key)
                } else {
                    choice.key.to_owned()
                };
                self.typed(text);
            });
        // A choice that was made by mistake is taken back by pressing it again: a click comes before its change.
        let input = input.on("click", move |_| {
            let chosen = untrack(|| facts::chosen(choices, &again.entry()));
            if !several && chosen.is_some_and(|it| it.code == choice.code) {
                again.typed(String::new());
            }
        });
        el("span").class("pill").child(input).child(el("label").set("for", &id).text(choice.label))
    }

    /// A choice as a list to choose from: in a sentence, or where there are many.
    fn list(self, choices: &'static [Choice]) -> El {
        let [now, take] = std::array::from_fn(|_| self.clone());
        let options = choices.iter().map(|it| el("option").set("value", it.key).text(it.label));
        let list = el("select")
            .set("id", &self.name)
            .child(el("option").set("value", "").text(self.about.label))
            .children(options)
            .live_value(move || {
                facts::chosen(choices, &now.entry())
                    .map_or_else(String::new, |it| it.key.to_owned())
            })
            .take("change", move |text| take.typed(text));
        let class = if self.dress == Dress::Inline { "blank inline" } else { "blank" };
        el("span")
            .class(class)
            .child(self.label())
            .child(el("span").class("in").child(list))
            .maybe(self.hint())
    }
}

/// The keys of several choices with one of them turned on or off.
fn turned(choices: &[Choice], entry: &Entry, key: &str) -> String {
    let keys = facts::several_keys(choices, entry);
    let mut keys: Vec<&str> = keys.split_whitespace().collect();
    match keys.iter().position(|it| *it == key) {
        Some(at) => drop(keys.remove(at)),
        None => keys.push(key),
    }
    joined(&keys, " ")
}

fn small_button(label: &str, sign: &str, does: impl FnMut() + 'static) -> El {
    el("button").set("type", "button").class("unit").set("aria-label", label).text(sign).press(does)
}

/// Which keypad a phone brings up: digits where a number is enough, letters where a range, a ratio or a text may stand.
fn keypad(about: &About) -> &'static str {
    match about.kind {
        Kind::Quantity { range: false, .. } => "decimal",
        _ => "text",
    }
}
