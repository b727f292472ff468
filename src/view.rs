//! The page: reads the live sheet, lays out lines, entries and answers. Computes nothing and names no quantity.

mod answer;
mod backup;
mod bench;
mod bikes;
mod book;
mod boxed;
mod browser;
mod calendar;
mod desk;
mod drawer;
mod element;
mod entry_field;
mod follow;
mod garage;
mod held;
mod kept;
mod leaf;
mod line;
mod link;
mod live;
mod log_file;
mod logbook;
mod look;
mod needs;
mod own_steps;
mod page;
mod paper;
mod past;
mod picture;
mod preview;
mod quick_sum;
mod records;
mod rows;
mod season;
mod season_life;
mod season_line;
mod sheet;
mod step;
mod table;
mod tabs;
mod ticks;
mod torque_drawing;
mod torque_list;
mod torques;
mod undo;

use crate::plan::address::Address;
use crate::words::{cautions, page as words};
use element::{El, button, el, paragraph, while_so};
use page::{Owner, Page, Saving};

pub use browser::say;

/// Lays the whole page out in the document's body, in place of the shell that stood there while it loaded.
pub fn lay_out() {
    let page = Page::open();
    kept::keep(page);
    browser::on_hash_change(move || {
        page.read_address();
        if !to_step(page) {
            browser::scroll_to_top();
        }
    });
    browser::on_resize(move || {
        let narrow = browser::is_narrow();
        if page.narrow.get_untracked() != narrow {
            page.narrow.set(narrow);
        }
    });
    browser::on_print(move || paper::lay_out(page), paper::put_away);
    browser::on_show(move || {
        page.today.set(browser::today());
        // What other tabs did while this one slept was told to nobody.
        kept::look_again(page);
    });

    let content = move || match page.address.get() {
        Address::Sheet(side, ..) => sheet::sheet(page, side),
        Address::Bench(side, stop) => {
            // Nothing is typed there, but another tab may be.
            page.tabs.laid.track();
            bench::bench(page, side, stop)
        }
        Address::Quick(sum) => quick_sum::page(page, sum),
        Address::Link(fragment) => preview::preview(page, &fragment),
        Address::Unknown(body) => {
            let mut all = vec![paragraph("care", &format!("{}{body}", words::UNKNOWN_ADDRESS))];
            all.extend(sheet::sheet(page, None));
            all
        }
    };
    let kept_here = move || match page.saving.get() {
        Saving::Kept if matches!(page.owner.get(), Owner::Own(_)) && !page.tabs.gone.get() => {
            words::KEPT_HERE.to_owned()
        }
        _ => String::new(),
    };
    let undo = move || {
        let undo = page.undo.with(|it| it.last().cloned());
        let row = undo.map(|undo| {
            let take_back = button("quiet", words::UNDO, move || page.take_back());
            // Whoever pressed a button that is gone goes on from here.
            browser::focus_soon(&take_back);
            let close = button("quiet", "×", move || page.undo.set(Vec::new()));
            let close = close.set("aria-label", words::CLOSE);
            paragraph("notice", &format!("{} ", undo.said)).child(take_back).child(close)
        });
        row.into_iter().collect()
    };
    let own = move || matches!(page.owner.get(), Owner::Own(_));
    // With what stands above it.
    let foot = el("footer")
        .live_so("hidden", move || !page.whole.get())
        .child(quick_sum::offer())
        .child(paragraph("", cautions::MANUAL_DECIDES))
        .child(el("p").set("id", "kept-here").live_text(kept_here))
        .child(while_so("p", own, move || vec![backup::last_words(page)]));
    let all = el("div")
        .class("page")
        .child(garage::top(page))
        .child(notices(page))
        .child(el("main").part(content))
        .child(foot)
        .child(
            el("div")
                .class("undo")
                .child(tabs::asked(page))
                .child(el("div").set("role", "status").part(undo)),
        )
        .child(el("p").class("aloud").set("role", "status").live_text(move || page.spoken.get()));
    browser::replace_shell(&all.element());
    let rest = move || {
        page.whole.set(true);
        browser::after(std::time::Duration::ZERO, || browser::tell("torpor-whole"));
    };
    // Who is on the way further down is not to see the head first.
    if to_step(page) || browser::was_further_down() { rest() } else { browser::after_frame(rest) }
}

/// A step's own address opens the page there; whether it is one.
fn to_step(page: Page) -> bool {
    let Address::Sheet(_, Some(step), _) = page.address.get_untracked() else { return false };
    browser::show(&format!("line-{}", step.choice.key));
    true
}

/// What has to be said above the sheet: storage that fails, records set aside, the last removal.
fn notices(page: Page) -> El {
    let said = move || {
        let saving = match page.saving.get() {
            Saving::Kept => None,
            Saving::Blocked => Some(words::NOT_KEPT.to_owned()),
            Saving::Failed(why) => Some(format!("{}{why}{}", words::NOT_SAVED, words::TRIED_AGAIN)),
        };
        saving
            .into_iter()
            .chain(page.notices.get())
            .map(|it| paragraph("notice care", &it))
            .chain(
                (!matches!(page.saving.get(), Saving::Kept))
                    .then(|| el("p").child(backup::save_button(page))),
            )
            .collect()
    };
    let began = move || {
        if !page.began.get() {
            return Vec::new();
        }
        let back = button("quiet", words::SHOW_EXAMPLE, move || page.lay_example());
        let close = button("quiet", "×", move || page.began.set(false));
        let close = close.set("aria-label", words::CLOSE);
        vec![paragraph("notice", words::OWN_STARTED).text(" ").child(back).child(close)]
    };
    el("div")
        .child(el("div").set("role", "status").part(began))
        .child(el("div").set("role", "status").part(move || look::line(page)))
        .child(el("div").set("role", "alert").part(said))
        .child(el("div").set("role", "alert").part(move || tabs::said(page)))
}
