//! Every word that the page shows stands here.

pub mod backup;
pub mod bench;
pub mod cautions;
pub mod choices;
pub mod dates;
pub mod drawings;
pub mod facts;
pub mod fasteners;
pub mod fuel;
pub mod garage;
pub mod labels;
pub mod lines;
pub mod logbook;
pub mod needs;
pub mod notes;
pub mod oil;
pub mod own_steps;
pub mod page;
pub mod paper;
pub mod season_line;
pub mod steps;
pub mod table;
pub mod upkeep;

/// Months, January first.
pub const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// Weekdays, Monday first.
pub const WEEKDAYS: [&str; 7] = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
