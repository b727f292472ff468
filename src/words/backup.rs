//! Words of the backup file.

macro_rules! words {
    ($($name:ident: $words:literal;)*) => { $(#[doc = $words] pub const $name: &str = $words;)* };
}
words! {
    BACKUP: "Backup file";
    SAVE: "Save a backup file";
    OPEN: "Open a backup file";
    WHY: "What you enter is kept only in this browser, on this device. Clear its data or lose the device and it is gone: keep a file elsewhere.";
    HINT: "Every bike, season and logbook and the garage, with names and notes, in one file that people can read.";
    ABOUT: "Of each fact text and unit count; value is for people. Change both or take value out.";
    NEVER: "No backup yet.";
    NOTHING: "Nothing is kept here yet, so there is nothing to save.";
    RESTORE: "Restore";
    SAME: ": same as here";
    NEW: ": new";
    DIFFERS: ": changed since ";
    NAMELESS: "a record whose name is lost";
    LOOK: "Look at both";
    ONLY_IN_THE_FILE: "Only in the file";
    IN_THE_FILE: "in the file ";
    CHOOSE: "Choose…";
    STAYS: " (stays with Merge)";
    ONLY_HERE: "Only here: goes with “Take the file’s”";
    ORPHAN: ": left out, as its bike is not in this file";
    CHECK: "Torques and other figures from a file: check each against the manual.";
    NO_FACT: "wants a text, or {\"text\": \"15\", \"unit\": \"L\"}";
    NO_LIST: "wants facts, fastener or wrench";
    TWICE: "there twice";
    TWO_VALUES: "text and value differ; wants the same in both";
    UNREAD: "not readable, so yours stays";
    HIDDEN: "hidden characters";
    MERGE: "Merge";
    TAKE: "Take the file’s";
    LEAVE: "Leave as it is";
    WHAT_MERGE_IS: "Merge keeps what either has; of a fact given in both, the one typed last; a time still to come counts for nothing.";
    NOT_TAKEN: "Not taken from this file:";
    STANDS: ": stands here otherwise and is left as it is";
    CHANGED_SINCE: ": not all taken back, as it was changed since";
    DUE: "Save a backup file now: this browser is the only place where it is kept.";
    NOT_READ: "This file could not be read: a backup file is a text of at most 32 MB.";
    NO_BACKUP: "This is no backup file: one is named torpor-backup and a day. What the rescue panel copied is taken, too.";
    NEWER: "This backup was made by a newer Torpor: reload the page, then open it again. Nothing of it is taken.";
    NO_STORE: "This browser keeps nothing here, so a backup cannot be restored.";
    GARAGE: "Garage, shelf and wrenches";
    SEASON: ": season";
    PAST: ": past season";
    LOGBOOK: ": logbook";
    OTHER: ": what the page noted";
    REMOVED: " (removed)";
}

/// Name of the file.
pub fn file_name(day: &str) -> String {
    format!("torpor-backup-{day}.json")
}
/// When it was saved last.
pub fn last(day: &str) -> String {
    format!("Last backup: {day}.")
}
/// Entries of a logbook, and how many of those in the file are not here.
pub fn entries(new: usize) -> String {
    format!("Entries, {new} of them new")
}
/// A record that is broken, cut off or gone.
pub fn lost(name: &str) -> String {
    format!("{name}: damaged or missing")
}
/// A record of a newer page.
pub fn newer(name: &str) -> String {
    format!("{name}: of a newer Torpor: reload the page")
}
/// The day of a file.
pub fn made(day: &str) -> String {
    format!("File of {day}.")
}
/// Where nothing was chosen for a record that differs.
pub fn choose(name: &str) -> String {
    format!("Choose first what becomes of {name}: nothing is restored yet.")
}
/// Said after a restore: facts taken, left, and what could not be read.
pub fn restored([taken, kept]: [usize; 2], wrong: usize) -> String {
    let what = if wrong == 0 { "The backup" } else { "What is whole of the backup" };
    format!(
        "{what} is restored. Facts taken: {taken}, kept as they are here: {kept}, not readable: {wrong}."
    )
}
/// A record that is none of ours, or comes again.
pub fn not_ours(name: &str) -> String {
    format!("{name}: no record of Torpor’s, or there twice")
}
/// A fact that cannot be read.
pub fn wrong_fact(name: &str, fact: &str, why: &str) -> String {
    format!("{name}, {fact}: {why}")
}
