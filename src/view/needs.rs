//! The needs list, at the foot of the lay-up side.

use super::browser;
use super::element::{El, button, el, paragraph, while_so};
use super::line::fold_button;
use super::live::Live;
use super::page::Page;
use crate::entry::text::joined;
use crate::plan;
use crate::words::{needs as words, page};
use leptos::prelude::untrack;

/// The list, folded at first.
pub fn needs(page: Page) -> El {
    let open = Live::new(false);
    let turn = move || open.update(|it| *it = !*it);
    let title = "needs-title";
    let fold = fold_button(title, move || open.get(), turn).text(words::NEEDS);
    el("section")
        .class("needs")
        .set("aria-labelledby", title)
        .child(el("h3").child(fold))
        .child(while_so("div", move || open.get(), move || inside(page)))
}

fn inside(page: Page) -> Vec<El> {
    let needs = move || {
        page.changes.track();
        plan::needs(&page.kept(), page.set.get())
    };
    let rows = move || match needs() {
        none if none.is_empty() => vec![el("li").class("why").text(words::NOTHING)],
        all => all.iter().map(|it| el("li").text(it)).collect(),
    };
    let field = el("textarea")
        .class("aloud")
        .set("aria-hidden", "true")
        .set("tabindex", "-1")
        .set("readonly", "");
    let field = field.live_value(move || joined(&needs(), "\n"));
    let copied = field.element();
    let copy = button("quiet", page::COPY, move || {
        browser::copy(&copied, &untrack(|| joined(&needs(), "\n")));
    });
    vec![
        el("ul").class("how").part(rows),
        field,
        el("p").child(copy),
        paragraph("hint", words::HINT),
    ]
}
