//! The page itself, built by Trunk.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::program::{path_with, run};
use crate::report::step;
use crate::setup::{Tools, set_up};
use crate::{Outcome, root, sizes};

/// Sets up, builds into dist/ and holds the result against its budget.
pub fn build_and_measure() -> Outcome {
    let tools = set_up()?;
    step("Building the page", Some("two to three minutes the first time"), || build(&tools))?;
    sizes::check(&dist()?)
}

/// Where the page is built to.
pub fn dist() -> Outcome<PathBuf> {
    Ok(root()?.join("dist"))
}

/// Builds the page.
pub fn build(tools: &Tools) -> Outcome {
    let built = run(&mut trunk(tools, "build")?);
    match &tools.wasm_opt {
        Some(wasm_opt) if built.is_err() && !optimizes(wasm_opt)? => {
            println!(
                "   {} cannot run here. Once more without: the page works, only larger.",
                wasm_opt.display()
            );
            run(&mut trunk(&Tools { wasm_opt: None, ..tools.clone() }, "build")?)
        }
        _ => built,
    }?;
    minify(tools)
}

/// Makes the built scripts small: Trunk leaves them as they are.
fn minify(tools: &Tools) -> Outcome {
    let Some(esbuild) = &tools.esbuild else { return Ok(()) };
    let dist = dist()?;
    let told = |why| format!("{} cannot be read ({why}).", dist.display());
    for file in fs::read_dir(&dist).map_err(told)?.flatten().map(|it| it.path()) {
        if file.extension().is_some_and(|it| it == "js") {
            let flags = ["--minify", "--format=esm", "--allow-overwrite", "--log-level=warning"];
            let out = format!("--outfile={}", file.display());
            run(Command::new(esbuild).args(flags).arg(out).arg(&file))?;
        }
    }
    Ok(())
}

/// Whether wasm-opt can do its work on this machine at all, so that a fault in the code is not laid on it.
fn optimizes(wasm_opt: &Path) -> Outcome<bool> {
    let (empty, out) = (root()?.join("target/empty.wasm"), root()?.join("target/empty-opt.wasm"));
    fs::write(&empty, b"\0asm\x01\0\0\0")
        .map_err(|why| format!("{} cannot be written ({why}).", empty.display()))?;
    Ok(run(Command::new(wasm_opt).arg("-Oz").arg(&empty).arg("-o").arg(&out)).is_ok())
}

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
    let programs = [Some(&tools.wasm_bindgen), tools.wasm_opt.as_ref()];
    let folders: Vec<PathBuf> = programs
        .into_iter()
        .flatten()
        .filter_map(|path| path.parent().map(PathBuf::from))
        .collect();
    let mut trunk = Command::new(&tools.trunk);
    trunk.args([verb, "--offline", "true"]).current_dir(root()?).env("PATH", path_with(&folders)?);
    // Trunk runs wasm-opt for a release only; the profile is `page` either way, index.html says so.
    trunk.args(["--release", if tools.wasm_opt.is_some() { "true" } else { "false" }]);
    // Trunk reads this as a boolean and refuses the usual `1`.
    if env::var_os("NO_COLOR").is_some() {
        trunk.env("NO_COLOR", "true");
    }
    // The messages of faults name the files of crates: from here on, not from this user's home, which is nobody's business
    // on the net and takes bytes.
    if let Some(crates) = crates_folder() {
        trunk.env(
            "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS",
            format!("--remap-path-prefix={}=", crates.display()),
        );
    }
    // Trunk's own stack says nothing about a fault in the page.
    trunk.env_remove("RUST_BACKTRACE");
    Ok(trunk)
}
