//! Words of the page around the lines.

macro_rules! words {
    ($($name:ident: $words:literal;)*) => { $(#[doc = $words] pub const $name: &str = $words;)* };
}
words! {
    NAME: "Torpor";
    EXAMPLE: "Example";
    YOUR_BIKE: "Your bike";
    LAY_UP: "Lay-up";
    WAKE_UP: "Wake-up";
    GONE: "looked at a value that is no more";
    SIDES: "Sides of the sheet";
    DONE: "Done: ";
    LEFT_OUT: "Left out: ";
    LEAVE_OUT: "Leave it out because";
    LEAVE_OUT_HINT: "With a reason here it counts as seen to; clear it to bring it back";
    WORKING: "Working";
    SOURCE: "Source: ";
    HOLDS: "Holds: ";
    GARAGE: "Garage";
    LINK: "Link";
    QUICK_SUMS: "Quick sums";
    QUICK_SUM: "Quick sum";
    SHEET: "The whole sheet";
    UNITS_ARE: "Units: ";
    NEEDS: "needs ";
    NOT_YET_KNOWN: "—";
    NEEDED: "needed for the answer";
    TOOLS: "Tools";
    HAD_A_BIKE: "Had a bike here? Open its backup file above, or ";
    PASTE_A_LINK: "paste a link";
    PURPOSE: "Your manual’s figures in; what to set, pour, dose and do out, before winter.";
    START_YOUR_OWN: "Start your own";
    ONE_FIGURE: "Only one figure?";
    INVENTED: "The bike below is invented: type over any blank and yours begins, kept in this browser only.";
    OWN_STARTED: "Your own bike has begun; the example is put away and nothing of it is mixed in.";
    SHOW_EXAMPLE: "Show the example";
    PARKED: "Parked ";
    IN: " in ";
    RIDES: ", rides ";
    COLDEST: ". Coldest night ";
    DAYS: " days";
    TWELVE_MONTHS: ", twelve months looked at";
    KEEP_FASTENER: "Keep this fastener";
    KEPT_FASTENERS: "Torque list";
    NEW_FASTENER: "One more fastener";
    NO_FIGURE: "No figure in the manual?";
    WAS_SET_WRONG: "Tightened already? What it got";
    WRENCH_TAKEN: "Wrench for it";
    BEST_WRENCH: "the one that serves best";
    DRAWER: "Wrench drawer, for all your bikes";
    ANOTHER_WRENCH: "Add a wrench";
    MOVE_UP: "Move up";
    MOVE_DOWN: "Move down";
    MORE: "More about it";
    REMOVE: "Remove";
    UNDO: "Undo";
    CLOSE: "Close";
    OPEN: "Open";
    COPY: "Copy";
    COPIED: "Copied.";
    WITH_NAMES: "Send what you wrote, too: names, own steps, reasons, places";
    LINK_HINT: "All but the logbook stands in this address itself; nothing is sent anywhere. Whoever gets it sees the figures. Keep it as a bookmark: it survives where a browser drops what it keeps.";
    TOO_MUCH_FOR_A_LINK: "This is more than a link takes (666 characters): leave the names out, or save the backup file instead.";
    YOUR_LINK: "Your link";
    LINK_HERE: "Paste a link you were sent";
    LOOK_AT_IT: "Look at it";
    SHARED_BIKE: "A bike from a link";
    SHARED_HINT: "Nothing is kept yet. Torques and other figures from a link: check each against the manual.";
    HERE: "here ";
    IN_THE_LINK: "in the link ";
    DIFFERENT: "Different";
    ONLY_IN_THE_LINK: "Only in the link";
    ONLY_HERE: "Only here";
    OF_THE_GARAGE: "Garage: only its blanks are filled";
    COMPARED_OTHER: ", the bike on your sheet; it may be another one.";
    COMPARED_SAME: ", the same bike.";
    REPLACE: "Replace mine";
    REPLACE_HINT: "Replacing writes the link’s figures over yours; what only you have stays. ";
    REPLACE_COPY: "A copy as it was goes to the archive in Garage first.";
    REPLACE_NO_COPY: "Undo alone takes it back.";
    ONLY_LOOK: "Look without keeping";
    CHECKED: "I have checked them";
    LOOKED_AT: "Only looked at: nothing of it is kept. ";
    BACK_TO_MINE: "Back to mine";
    KEEP_AS_NEW: "Keep as a new bike";
    LEAVE_IT: "Throw the link away";
    MADE_ON: "Made on ";
    BIKES_HERE: "Bikes kept in this browser";
    NO_BIKES: "None yet: the first blank you fill in starts yours.";
    NEW_BIKE: "New bike";
    KEPT_HERE: "Kept in this browser only, as you type: keep the link or a backup file too.";
    NOT_KEPT: "Nothing is kept here now: what you type is gone when you close the page. Keep the link or a backup file instead.";
    NOT_SAVED: "The last change could not be kept: ";
    STORE_FULL: "the browser’s store for this site is full";
    STORE_TORN: "the browser’s store holds something else than what was written";
    NEWER: "What was typed since is not kept: take the link or a backup file along before you reload.";
    RELOAD: "Reload";
    TRIED_AGAIN: ". The page tries again; keep the link or a backup file meanwhile.";
    EMPTIED: "What this browser kept of the bike was removed outside of this page. It stands here as long as the page is open: take the link or a backup file.";
    KEEP_IT: "Keep it again";
    WRITTEN_AGAIN: "What this browser kept was removed outside of this page. It is written again, as this page knew it.";
    UNKNOWN_ADDRESS: "This address opens nothing here: ";
    CHANGE_SIGN: "Change sign";
    TO: " to ";
    NOTHING_SAVED: "Nothing is kept of a quick sum.";
    SET_ASIDE: "A record kept in this browser ";
}

/// How many more facts a line lacks.
pub fn and_more(count: usize) -> String {
    format!(", and {count} more")
}
/// How an entry was read.
pub fn read_as(what: &str) -> String {
    format!("read as {what}")
}
/// Over a bike whose figures came from a link, on the page and on paper.
pub fn from_link(day: &str) -> String {
    format!("Figures from a link, {day}: check each against the manual. ")
}
/// Name of the button that changes a unit.
pub fn change_unit(unit: &str) -> String {
    format!("{unit}, change unit")
}
/// Fastener of the torque list without a name.
pub fn fastener(number: usize) -> String {
    format!("Fastener {number}")
}
/// Said after a table was taken in.
pub fn added(count: usize) -> String {
    format!("{count} added.")
}
/// A wrench of a link.
pub fn wrench(number: usize) -> String {
    format!("Wrench {number}")
}
/// Over the fold of what does not differ.
pub fn same(count: usize) -> String {
    if count == 1 { "1 fact is the same".to_owned() } else { format!("{count} facts are the same") }
}
/// Behind an entry of a link that no blank takes.
pub fn refused(why: &str) -> String {
    format!("refused: {why}")
}
/// Said before what a bike in a link is compared with.
pub fn compared(name: &str) -> String {
    format!("Compared with {name}")
}
/// The copy of a bike as it was before it was replaced.
pub fn before_link(name: &str) -> String {
    format!("{name}, before the link")
}
/// A bike of a link beside one of the same name.
pub fn from_a_link(name: &str) -> String {
    format!("{name} (from a link)")
}
/// Said after a bike was replaced.
pub fn replaced(name: &str) -> String {
    format!("{name} has what the link says.")
}
/// Said after a fastener was kept.
pub fn kept(name: &str) -> String {
    format!("{name} is in the list.")
}
/// Where a fact was changed here and in another tab.
pub fn changed_twice(label: &str, mine: bool) -> String {
    let stands = if mine { ", and that stands here now" } else { ", too" };
    format!("{label} was changed in another tab{stands}. ")
}
/// Keeps what was typed here.
pub fn keep_mine(text: &str) -> String {
    format!("Keep {}", shown(text))
}
/// Takes what was typed in another tab; or back what was typed here.
pub fn take(text: &str, mine: bool) -> String {
    format!("Take {} {}", if mine { "back" } else { "the other’s" }, shown(text))
}
fn shown(text: &str) -> &str {
    if text.is_empty() { "blank" } else { text }
}
/// Said after a removal.
pub fn removed(name: &str) -> String {
    format!("{name} is removed.")
}
/// Behind what is accepted, where a number in bar is more likely one in psi.
pub const PSI: &str = "; is it psi?";

/// At a day on which something was done.
pub const STILL_TO_COME: &str = "that day is still to come";
/// The button that opens a calendar at a blank.
pub fn pick_a_day(label: &str) -> String {
    format!("Pick a day: {label}")
}
