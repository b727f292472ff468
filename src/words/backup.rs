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
    HINT: "Every bike with its seasons and logbook, and the garage, names and notes included, in one file that people can read. Keep it outside of this browser.";
    ABOUT: "Saved by Torpor. Of a fact, text and unit count; value and means stand there for people. Edit it or not: it is shown before anything of it is taken.";
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
    DUE: "Parked and not backed up since: what is kept in one browser only can get lost.";
    NOT_READ: "This file could not be read: a backup file is a text of at most 32 MB.";
    NO_BACKUP: "This is no backup file. One is saved here as torpor-backup and its day; what the rescue panel copied is taken, too.";
    A_LOGBOOK: "This is a logbook, no backup file: open it under “The logbook as a file”, below the logbook.";
    NEWER: "This backup was made by a newer Torpor: reload the page, then open it again. Nothing of it is taken.";
    NAMELESS: "a record whose name is lost";
    TOO_MANY: "what comes behind the first 8192 records: no store holds so many";
    NO_STORE: "This browser keeps nothing here, so a backup cannot be restored.";
    GARAGE: "Garage, shelf and wrenches";
    WAS_OPEN: "Which bike was open";
    SET_ASIDE: "A damaged record that was set aside";
    FASTENERS: "Fasteners";
    WRENCHES: "Wrenches";
    ENTRIES: "Entries";
    SEASONS: "Seasons";
    OPEN_FASTENER: "The fastener being filled in";
    OTHERS: "What a newer page wrote";
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
/// A bike's season.
pub fn season(bike: &str) -> String {
    format!("{bike}: season")
}
/// A bike's seasons that are over.
pub fn past(bike: &str) -> String {
    format!("{bike}: past seasons")
}
/// A bike's logbook.
pub fn logbook(bike: &str) -> String {
    format!("{bike}: logbook")
}
/// A bike's calendar and the like.
pub fn other(bike: &str) -> String {
    format!("{bike}: page’s own notes")
}
/// A bike that was removed.
pub fn removed(name: &str) -> String {
    format!("{name} (removed)")
}
/// What is set in both, or in one of them.
pub fn differs(label: &str, here: &str, file: &str) -> String {
    format!("{label}: {here} here, {file} in the file")
}
/// A fact that this page does not know.
pub fn unknown(number: u16) -> String {
    format!("Fact {number}")
}
/// Entries of a list, and how many the file adds.
pub fn more(label: &str, here: usize, new: usize) -> String {
    format!("{label}: {here} here, {new} more in the file")
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
    format!("{name}: missing, the file is cut off or was cut")
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
