//! Words of the backup file.

macro_rules! words {
    ($($name:ident: $words:literal;)*) => { $(#[doc = $words] pub const $name: &str = $words;)* };
}
words! {
    BACKUP: "Backup file";
    SAVE: "Save a backup file";
    OPEN: "Open a backup file";
    OR_A_BACKUP: " or ";
    OPEN_A_BACKUP: "open a backup";
    HINT: "Every bike, season and logbook and the garage, with names and notes, in one file that people can read.";
    ABOUT: "Of each fact, text and unit count; value and means are for people.";
    NEVER: "No backup yet.";
    NOTHING: "Nothing is kept here yet, so there is nothing to save.";
    RESTORE: "Restore";
    RESTORED: "The backup is restored.";
    SAME: "Everything in this file stands here already.";
    NEW: "new";
    MERGE: "Merge";
    TAKE: "Take the file’s";
    LEAVE: "Leave as it is";
    WHAT_MERGE_IS: "Merge keeps what either has; of a fact given in both, the one typed last.";
    NOT_TAKEN: "Not taken from this file:";
    STANDS: "stands here otherwise and is left as it is";
    CHANGED: "not as it was saved: changed by hand or damaged, so look at it";
    DUE: "Parked, and no backup since: one browser alone can lose it.";
    NOT_READ: "This file could not be read: a backup file is a text of at most 32 MB.";
    NO_BACKUP: "This is no backup file: one is named torpor-backup and a day. What the rescue panel copied is taken, too.";
    A_LOGBOOK: "This is a logbook: open it below the logbook, under “The logbook as a file”.";
    NEWER: "This backup was made by a newer Torpor: reload the page, then open it again. Nothing of it is taken.";
    NAMELESS: "a record whose name is lost";
    TOO_MANY: "more than 8192 records, the rest is left out";
    NO_STORE: "This browser keeps nothing here, so a backup cannot be restored.";
    GARAGE: "Garage, shelf and wrenches";
    SET_ASIDE: "What the page noted for itself";
    SEASON: ": season";
    PAST: ": past season";
    LOGBOOK: ": logbook";
    OTHER: ": what the page noted";
    REMOVED: " (removed)";
    FASTENERS: "Fasteners";
    WRENCHES: "Wrenches";
    OTHER_FACT: "A fact of a newer page";
    NOTHING_SAID: "—";
}

/// Name of the file.
pub fn file_name(day: &str) -> String {
    format!("torpor-backup-{day}.json")
}
/// When it was saved last.
pub fn last(day: &str) -> String {
    format!("Last backup: {day}.")
}
/// What is set in both, or in one of them.
pub fn differs(label: &str, here: &str, file: &str) -> String {
    format!("{label}: {here} here, {file} in the file")
}
/// Entries of a logbook, and how many the file adds.
pub fn more(here: usize, new: usize) -> String {
    format!("Entries: {here} here, {new} more in the file")
}
/// How many things differ.
pub fn count(differing: usize) -> String {
    format!("{differing} differ{}", if differing == 1 { "s" } else { "" })
}
/// A record that is cut off or broken.
pub fn damaged(name: &str) -> String {
    format!("{name}: damaged")
}
/// A record that the file names and does not hold.
pub fn missing(name: &str) -> String {
    format!("{name}: missing")
}
/// A record that stands there twice.
pub fn twice(name: &str) -> String {
    format!("{name}: there twice, the first one counts")
}
/// A record that is none of ours.
pub fn not_ours(name: &str) -> String {
    format!("{name}: no record of Torpor’s")
}
/// A record of a newer page.
pub fn newer(name: &str) -> String {
    format!("{name}: written by a newer Torpor")
}
/// A fact that cannot be read.
pub fn wrong_fact(name: &str, fact: &str) -> String {
    format!("{name}, {fact}: wants a text, or {{\"text\": \"15\", \"unit\": \"L\"}}")
}
/// How many more there are.
pub fn and_more(count: usize) -> String {
    format!("and {count} more")
}
/// After it was handed over.
pub fn saved(name: &str) -> String {
    format!("Saved as {name}.")
}
