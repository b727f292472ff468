//! Words of the logbook and of the season's life.

macro_rules! words {
    ($($name:ident: $words:literal;)*) => { $(#[doc = $words] pub const $name: &str = $words;)* };
}
words! {
    LOGBOOK: "Logbook";
    EMPTY: "Nothing yet: a tick on either side writes here, with its figures.";
    NONE_FOUND: "No entry has that.";
    SEARCH: "Search the logbook";
    LINE: "What";
    YEAR: "Year";
    ALL: "all";
    ADD: "Add an entry";
    MORE: "Show more";
    DUE_LIST: "Due";
    NOT_IN_THE_BOOK: "not in the logbook yet";
    ODOMETER_LACKS: "by distance not known: needs today’s odometer and the one of that day";
    BEFORE_RIDE: "before the ride";
    READS_LESS: "the odometer reads less than it did then: check both";
    MORE_CAME_OUT: "More came out than went in: fuel or water in the oil, or a figure that is off.";
    NO_DAY: "no day";
    UNNAMED: "Entry";
    AS_A_FILE: "The logbook as a file";
    SAVE_CSV: "Save as CSV";
    SAVE_JSON: "Save as JSON";
    BRING_IN: "Open a CSV or JSON file";
    FILE_NOT_READ: "This file could not be read: it is no text, or over 8 MB.";
    NOT_A_LOGBOOK: "No logbook: as CSV its first row names the columns, Day and What was done among them; as JSON it is one that was saved here.";
    PLANNED: "Planned. Tick a step’s number when it is done.";
    PARKED: "Lay-up has begun";
    OUT: "Out again";
    NEXT_SEASON: "Begin the next season";
    NEXT_HINT: "Puts this one’s days, levels and ticks away; the bike’s figures stay.";
    NEXT_BEGUN: "The next season begins; the last one is put away with its ticks.";
    PAST_SEASONS: "Past seasons";
    BRING_BACK: "Bring back";
    TICKS_PUT_AWAY: "The park date is another winter’s: the ticks so far are put away. The logbook’s past seasons bring them back.";
}

/// A thing and what is said of it.
pub fn of(what: &str, said: &str) -> String {
    format!("{what}: {said}")
}
/// Name of a file that the logbook of a bike is saved in, without its ending.
pub fn file_name(bike: &str, day: &str) -> String {
    format!("{bike} logbook {day}")
}
/// How many are past.
pub fn due_now(past: usize) -> String {
    if past == 0 { "nothing past".to_owned() } else { format!("{past} past") }
}
/// Days left until one, or past it.
pub fn by_day(left: i64, day: &str) -> String {
    let days = counted(left.unsigned_abs() as usize, "day");
    match left {
        0 => format!("today, {day}"),
        past if past < 0 => format!("{days} past, since {day}"),
        _ => format!("in {days}, {day}"),
    }
}
fn counted(count: usize, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}
/// Distance left, or past it.
pub fn by_distance(past: bool, long: &str) -> String {
    if past { format!("{long} past") } else { format!("{long} left") }
}
/// A season that is over.
pub fn past_season(park: &str, ride: &str, done: [usize; 2]) -> String {
    let [down, up] = done.map(|it| counted(it, "step"));
    format!("{park} to {ride}: {down} of the lay-up done, {up} of the wake-up")
}
/// What a tick writes that says something was looked at.
pub fn looked_at(title: &str) -> String {
    format!("{title}, looked at")
}
/// After a tick.
pub fn ticked(title: &str, kept: bool) -> String {
    format!("Done: {title}.{}", if kept { " It is in the logbook." } else { "" })
}
/// After an entry was taken out.
pub fn struck_out(line: &str) -> String {
    format!("The entry {line} is out of the logbook.")
}
/// After a tick was taken away that had no entry.
pub fn open(title: &str) -> String {
    format!("{title} is open again.")
}
/// After a tick was taken away.
pub fn open_again(title: &str) -> String {
    format!("{title} is open again; its entry is out of the logbook.")
}
/// The button that takes entries in.
pub fn take_in(count: usize) -> String {
    format!("Add {count}")
}
/// What a file holds.
pub fn summary(new: usize, known: usize, wrong: usize) -> String {
    format!("{new} new, {known} in the logbook already, {wrong} not understood")
}
/// A row that is not taken.
pub fn wrong_row(number: usize, why: &str) -> String {
    format!("Row {number}: {why}")
}
