//! Makes the built page one that is never mixed with another build: index.html names every file by its content and says what
//! the wasm's bytes are, and a worker keeps all files of the build together (`src/worker.js`).

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::files::{content, files, name_in, read, rename, write};
use crate::program::{ask, run};
use crate::setup::Tools;
use crate::{Outcome, root};

const INDEX: &str = "index.html";

/// Its address must stay, or browsers would never hear of a newer one.
const WORKER: &str = "sw.js";

/// Asked for by its content, but under a name that stays: where an old index.html comes out of a cache, there is still a
/// script that brings the rescue panel.
const BOOT: &str = "boot.js";

/// What Trunk only copies; each before those that name it.
const UNNAMED: [&str; 3] = ["icon-64.png", "icon-512.png", "manifest.webmanifest"];

/// Node.js has SHA-256 built in; the library of Rust has not.
const DIGEST: &str = "
const { readFileSync } = require('node:fs');
const hash = require('node:crypto').createHash('sha256');
for (const file of process.argv.slice(1)) hash.update(readFileSync(file));
console.log(hash.digest('base64'));
";

/// Seals the page in `dist`, after which none of its files may change.
pub fn seal(tools: &Tools, dist: &Path) -> Outcome {
    let index = dist.join(INDEX);
    for name in UNNAMED {
        name_by_content(dist, name)?;
    }
    let boot = format!("./{BOOT}");
    write(
        &index,
        &put_in(&read(&index)?, &boot, &format!("{boot}?{}", content(&[&dist.join(BOOT)])?))?,
    )?;
    let mut files: Vec<String> = files(dist)?.iter().map(|it| name_in(dist, it)).collect();
    files.retain(|it| it != INDEX && it != WORKER);
    // The order in which the worker puts them behind each other.
    files.sort();

    let wasm = files.iter().find(|it| it.ends_with(".wasm"));
    let wasm = wasm.ok_or_else(|| format!("{} has no wasm; build it again.", dist.display()))?;
    let integrity = digest(&[dist.join(wasm)])?;
    let said = format!("data-integrity=\"sha256-{integrity}\" data-wasm=");
    write(&index, &put_in(&read(&index)?, "data-wasm=", &said)?)?;

    let all: Vec<PathBuf> =
        [INDEX.to_owned()].iter().chain(&files).map(|it| dist.join(it)).collect();
    let template = read(&root()?.join("src/worker.js"))?;
    let worker = put_in(&template, "{build}", &digest(&all)?)?;
    let worker = put_in(&worker, "{files}", &files.join("\",\""))?;
    let file = dist.join(WORKER);
    write(&file, &worker)?;
    let Some(esbuild) = &tools.esbuild else { return Ok(()) };
    // In a function of its own, so that its names can be short.
    run(Command::new(esbuild)
        .args(["--minify", "--format=iife", "--allow-overwrite", "--log-level=warning"])
        .arg(format!("--outfile={}", file.display()))
        .arg(&file))
}

/// Gives a file a name made of its content, there and wherever it is named.
fn name_by_content(dist: &Path, name: &str) -> Outcome {
    let before = dist.join(name);
    let (stem, kind) = name.rsplit_once('.').unwrap_or((name, ""));
    let after = format!("{stem}-{}.{kind}", content(&[&before])?);
    rename(&before, &dist.join(&after))?;
    for naming in [INDEX, "manifest.webmanifest"].map(|it| dist.join(it)) {
        // The manifest is the last one and named by then.
        if naming.exists() {
            write(&naming, read(&naming)?.replace(&format!("./{name}"), &format!("./{after}")))?;
        }
    }
    Ok(())
}

/// The one place of `what` replaced.
fn put_in(text: &str, what: &str, with: &str) -> Outcome<String> {
    match text.matches(what).count() {
        1 => Ok(text.replace(what, with)),
        count => Err(format!("`{what}` stands {count} times where it should stand once.")),
    }
}

/// SHA-256 in base64 of what stands in files, one behind the other.
fn digest(files: &[PathBuf]) -> Outcome<String> {
    let told = ask(Command::new("node").args(["-e", DIGEST, "--"]).args(files));
    let told = told.map_err(|why| format!("{why} The page is sealed with Node.js."))?;
    Ok(told.trim().to_owned())
}
