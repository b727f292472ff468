//! What comes from outside, held against deny.toml.

use crate::Outcome;
use crate::program::{cargo, on_path, run};

/// Whether cargo-deny is at hand. It is not installed for the tests: that would build some hundreds of crates more in every fresh place.
pub fn at_hand() -> bool {
    on_path("cargo-deny").is_some()
}

/// Checks the licenses, doubles and sources of all crates; what is already fetched is enough for it.
pub fn deny() -> Outcome {
    if !at_hand() {
        return Err(
            "cargo-deny was not found: `cargo install cargo-deny --locked` builds it.".to_owned()
        );
    }
    run(&mut cargo(["deny", "--offline", "--locked", "check", "licenses", "bans", "sources"])?)
}
