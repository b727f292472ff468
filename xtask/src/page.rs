//! The page itself, built by Trunk.

use std::env;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

use crate::lean::lean;
use crate::program::{path_with, run};
use crate::release::release;
use crate::report::step;
use crate::seal::seal;
use crate::setup::{Tools, set_up};
use crate::{Outcome, root, sizes};

/// Sets up, builds into dist/, holds the result against its budget and makes a zip of it.
pub fn build_and_measure() -> Outcome {
    let tools = set_up()?;
    step("Building the page", Some("two to three minutes the first time"), || build(&tools))?;
    sizes::check(&dist()?)?;
    release(&dist()?)
}

/// Where the page is built to.
pub fn dist() -> Outcome<PathBuf> {
    Ok(root()?.join("dist"))
}

/// Builds the page.
pub fn build(tools: &Tools) -> Outcome {
    run(&mut trunk(tools, "build")?)?;
    let dist = dist()?;
    lean(tools, &dist, true)?;
    seal(tools, &dist)
}

/// Builds the smallest page beside it, with the same profile and made lean the same way, and gives the folder.
pub fn build_smallest(tools: &Tools) -> Outcome<PathBuf> {
    let root = root()?;
    run(trunk(tools, "build")?.current_dir(root.join("xtask/smallest")))?;
    let dist = root.join("target/smallest");
    lean(tools, &dist, false)?;
    Ok(dist)
}

/// Room for what functions keep in memory while they run: sixteen times the 8 kB that all tests in the browser take at most
/// (`page.test.mjs` holds it). Data stands behind it, and its addresses are a byte shorter than behind the usual
/// mebibyte: 0.7 kB on the wire.
const STACK: &str = "-Clink-arg=-zstack-size=131072";

/// LLVM neither works out on one of two ways what is needed after both, nor counts along with a loop what follows from its
/// place: each saves some work and takes code. 0.4 and 1.9 kB on the wire.
const SMALLER: &str = "-Cllvm-args=-enable-pre=false -Cllvm-args=-disable-lsr";

/// Where cargo unpacks crates, where that is a single folder without a space in its name.
fn crates_folder() -> Option<PathBuf> {
    let home = env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| env::home_dir().map(|it| it.join(".cargo")))?;
    let mut registries = fs::read_dir(home.join("registry/src")).ok()?.flatten();
    let only = registries.next()?.path().join("");
    (registries.next().is_none() && !only.to_string_lossy().contains(' ')).then_some(only)
}

/// Trunk with its tools on PATH.
pub fn trunk(tools: &Tools, verb: &str) -> Outcome<Command> {
    let folders: Vec<PathBuf> =
        tools.wasm_bindgen.parent().map(PathBuf::from).into_iter().collect();
    let mut trunk = Command::new(&tools.trunk);
    trunk.args([verb, "--offline", "true"]).current_dir(root()?).env("PATH", path_with(&folders)?);
    // Trunk makes styles small for a release only; the profile is `page` either way, index.html says so.
    trunk.args(["--release", "true"]);
    // Trunk reads this as a boolean and refuses the usual `1`.
    if env::var_os("NO_COLOR").is_some() {
        trunk.env("NO_COLOR", "true");
    }
    // The messages of faults name the files of crates: from here on, not from this user's home, which is nobody's business
    // on the net and takes bytes.
    let mut flags = format!("{SMALLER} {STACK}");
    if let Some(crates) = crates_folder() {
        flags.push_str(&format!(" --remap-path-prefix={}=", crates.display()));
    }
    trunk.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", flags);
    // Trunk's own stack says nothing about a fault in the page.
    trunk.env_remove("RUST_BACKTRACE");
    Ok(trunk)
}
