//! What the terminal says while a chore runs.

use std::fmt;
use std::time::{Duration, Instant};

use crate::Outcome;

/// Runs one step under its name, with how long it is likely to take where that is worth knowing.
pub fn step<T>(
    name: &str,
    about: Option<&str>,
    work: impl FnOnce() -> Outcome<T>,
) -> Outcome<(T, Duration)> {
    match about {
        Some(about) => println!("\n== {name} ({about})"),
        None => println!("\n== {name}"),
    }
    let start = Instant::now();
    let outcome = work();
    let took = start.elapsed();
    match outcome {
        Ok(value) => {
            println!("   {name}: done in {}", Shown(took));
            Ok((value, took))
        }
        Err(why) => Err(format!("{name}: failed after {}. {why}", Shown(took))),
    }
}

/// A duration as a person reads it.
pub struct Shown(pub Duration);

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let seconds = self.0.as_secs();
        if seconds < 60 {
            write!(f, "{:.1} s", self.0.as_secs_f64())
        } else {
            write!(f, "{} min {:02} s", seconds / 60, seconds % 60)
        }
    }
}
