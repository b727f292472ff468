//! Words of the owner's own steps.

/// The blank.
pub const ADD_OWN: &str = "Add a step of your own";
/// Its button.
pub const ADD: &str = "Add";
/// Where all letters are used up.
pub const NO_ROOM: &str = "No room for more on this side: remove one, or give one a shorter name.";
/// Where its title is in the list.
pub const THERE_ALREADY: &str = "There is one of that name, or it is too long.";
/// For whoever hears the list.
pub const OWN_STEPS: &str = "Steps of your own";
