//! The chores of the project: `cargo xtask help` lists them.
//!
//! Std only, since every clean checkout builds it before it does anything else.

mod bench;
mod body;
mod browser;
mod crates;
mod deny;
mod figures;
mod files;
mod glue;
mod hollow;
mod lean;
mod native;
mod order;
mod pack;
mod packed;
mod page;
mod program;
mod release;
mod report;
mod seal;
mod serve;
mod setup;
mod sizes;
mod test;
mod types;
mod wasm;
mod zip;

use std::env;
use std::path::PathBuf;
use std::process::ExitCode;

/// What a chore gives back: a failure is a sentence that says what to do.
type Outcome<T = ()> = Result<T, String>;

const HELP: &str = "\
Torpor's chores: cargo xtask <chore>

  serve [--port N]   set up, build the page and serve it on this machine; builds again on every change
  test               set up, then check everything: format, lints, tests, the page's size, the page in a browser
  build              set up and build the page into dist/, ready for any folder of any static host, and a zip of it
  bench              measure bytes and times beside the smallest page that Leptos makes; four to ten minutes
  deny               hold what comes from outside against deny.toml: licenses, doubles, where it is from (needs cargo-deny)
  help               print this

The first set-up builds Trunk and wasm-bindgen-cli, six to ten minutes; later ones find them in the tool cache.";

fn main() -> ExitCode {
    let words: Vec<String> = env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let outcome = match words[..] {
        ["serve"] => serve::serve(serve::PORT),
        ["serve", "--port", port] => serve::port(port).and_then(serve::serve),
        ["test"] => test::test(),
        ["build"] => page::build_and_measure(),
        ["bench"] => bench::bench(),
        ["deny"] => deny::deny(),
        [] | ["help" | "--help" | "-h"] => {
            println!("{HELP}");
            Ok(())
        }
        _ => Err(format!("`{}` is no chore of this project.\n\n{HELP}", words.join(" "))),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("\n{why}");
            ExitCode::FAILURE
        }
    }
}

/// The project's root folder.
fn root() -> Outcome<PathBuf> {
    let xtask = env::var_os("CARGO_MANIFEST_DIR")
        .ok_or("The chores find the project through cargo: start them as `cargo xtask`.")?;
    let root = PathBuf::from(xtask).parent().map(PathBuf::from);
    root.ok_or_else(|| {
        "The folder xtask has no folder above it: clone the project again.".to_owned()
    })
}
