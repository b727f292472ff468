//! Ticks of the steps, each with its entry in the logbook; the first of a season gives it its mark.

use super::page::{Desk, Owner, Page, Saving};
use super::past;
use crate::entry::text::joined;
use crate::facts::{self, Facts};
use crate::logbook::Logbook;
use crate::plan::{self, Step};
use crate::words::logbook as words;
use leptos::prelude::untrack;

impl Page {
    /// Ticks a step, or opens it again.
    pub fn tick(self, step: &'static Step, desk: &Desk) {
        if !self.begin_season(desk) {
            return;
        }
        let done = untrack(|| step.is_done(desk));
        // What is done after all is not left out.
        if !done && untrack(|| step.left_out(desk)).is_some() {
            let (id, text) = untrack(|| step.leaving_out(desk, ""));
            self.typed(desk, id, text);
        }
        self.set_tick(step, desk, !done);
        let title = step.said.title;
        let line = if step.looks { words::looked_at(title) } else { title.to_owned() };
        let figures = if done { String::new() } else { self.figures(step) };
        let back = move || self.set_tick(step, &Desk::of_bike(self), done);
        let tag = untrack(|| step.tag(desk, self.today.get_untracked()));
        self.log_tick(tag, title, &line, !done, &figures, Box::new(back));
    }

    /// What a step's tick writes beside it: the figures of its calculator, or what was due.
    fn figures(self, step: &Step) -> String {
        let (kept, set) = (self.kept(), self.set.get_untracked());
        if step.lists_due {
            let due = plan::due(&self.logbook(), &kept, self.today.get_untracked(), set);
            let due: Vec<&str> = due.iter().map(|it| it.1.as_str()).collect();
            return plan::shortened(&joined(&due, "; "));
        }
        step.sum.map(|it| plan::figures(it, &kept, set)).unwrap_or_default()
    }

    /// Gives the season its mark with its first tick. Ticks of another winter, whose dates were moved on, are put away first; false
    /// where they could not be kept there, which is said, and stand.
    pub fn begin_season(self, desk: &Desk) -> bool {
        if untrack(|| plan::is_stale(desk)) && !past::put_ticks_away(self) {
            // A box that was pressed shows its step again.
            let mark = desk.signal(facts::SEASON_MARK.id());
            mark.set(mark.get_untracked());
            return false;
        }
        let today = self.today.get_untracked();
        for (id, text) in untrack(|| plan::begun(desk, today)) {
            self.typed(desk, id, text);
        }
        true
    }

    /// Writes the entry of a tick, or takes it out again with the tick; `back` sets the tick as it was.
    pub fn log_tick(
        self,
        tag: String,
        title: &str,
        line: &str,
        done: bool,
        figures: &str,
        back: Box<dyn Fn() + Send + Sync>,
    ) {
        let (kept, today) = (self.kept(), self.today.get_untracked());
        if done {
            // Opened by a slip and ticked again, it is the entry that it was.
            let before = self.book.opened.get_untracked();
            let before = before.filter(|it| it.own.entry(facts::LOG_STEP.id()).text == tag);
            let key = match before {
                Some(row) => {
                    let key = row.key;
                    self.put_in_book(row);
                    self.book.opened.set_untracked(None);
                    key
                }
                None => self.add_to_book(Logbook::of_tick(&tag, line, today, figures, &kept)),
            };
            // What is kept nowhere is in no book.
            let kept = self.saving.get_untracked() == Saving::Kept
                && matches!(self.owner.get_untracked(), Owner::Own(_));
            self.can_undo_by(words::ticked(title, kept), move || {
                back();
                self.take_out_of_book(key);
            });
        } else {
            let key = self.logbook().ticked(&tag).map(|it| it.key);
            let out = key.and_then(|it| self.take_out_of_book(it));
            self.book.opened.set_untracked(out.clone());
            let said = if out.is_some() { words::open_again(title) } else { words::open(title) };
            self.can_undo_by(said, move || {
                back();
                if let Some(row) = &out {
                    self.put_in_book(row.clone());
                }
            });
        }
    }

    /// Sets a step's tick and no more.
    fn set_tick(self, step: &'static Step, desk: &Desk, done: bool) {
        let (id, text) = untrack(|| step.ticked(desk, done));
        self.typed(desk, id, text);
    }
}
