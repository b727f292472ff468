//! The page in a real browser: Chromium and the packages of tests/browser.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::program::{ask, on_path, run};
use crate::report::step;
use crate::{Outcome, root};

/// Finds Chromium, or installs Debian's where that is allowed.
pub fn chromium() -> Outcome<PathBuf> {
    if let Some(given) = env::var_os("CHROMIUM").map(PathBuf::from) {
        let missing = || format!("CHROMIUM names {}, which is no file.", given.display());
        return given.is_file().then(|| given.clone()).ok_or_else(missing);
    }
    if let Some(found) = installed() {
        return Ok(found);
    }
    let manual = "Install Chromium or Chrome, or set CHROMIUM to where it is.";
    let root_user = ask(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0");
    if !root_user || on_path("apt-get").is_none() {
        return Err(format!("The page's tests need a Chromium and none was found. {manual}"));
    }
    step("Installing Chromium", Some("about a minute, once"), || {
        run(Command::new("apt-get").args(["update", "-qq"]))?;
        run(Command::new("apt-get")
            .args(["install", "-y", "-qq", "--no-install-recommends", "chromium"])
            .env("DEBIAN_FRONTEND", "noninteractive"))
    })
    .map_err(|why| format!("{why} {manual}"))?;
    installed().ok_or_else(|| format!("apt-get installed no Chromium. {manual}"))
}

fn installed() -> Option<PathBuf> {
    ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"]
        .into_iter()
        .find_map(on_path)
}

/// Installs what the tests run with, unless that is already what the lock file names.
pub fn packages() -> Outcome {
    let folder = root()?.join("tests/browser");
    let lock = folder.join("package-lock.json");
    let done = folder.join("node_modules/.installed-lock.json");
    let same =
        |a: &Path, b: &Path| fs::read(a).ok().zip(fs::read(b).ok()).is_some_and(|(a, b)| a == b);
    if same(&lock, &done) {
        return Ok(());
    }
    let npm =
        on_path("npm").ok_or("The page's tests need Node.js 20 or newer with npm: install it.")?;
    step("Installing the packages of tests/browser", Some("a few seconds"), || {
        run(Command::new(npm)
            .args(["ci", "--no-audit", "--no-fund", "--loglevel=error"])
            .current_dir(&folder))?;
        fs::copy(&lock, &done)
            .map(drop)
            .map_err(|why| format!("{} cannot be written ({why}).", done.display()))
    })
    .map(drop)
}

/// Measures the page in dist/ beside the smallest one; gives what was measured, a line for each figure.
pub fn pace(chromium: &Path, smallest: &Path) -> Outcome<String> {
    ask(Command::new("node")
        .arg("pace.mjs")
        .arg(smallest)
        .current_dir(root()?.join("tests/browser"))
        .env("CHROMIUM", chromium))
}

/// Runs the tests against the page in dist/.
pub fn tests(chromium: &Path) -> Outcome {
    // In their own folder, where Node.js finds them by name: a folder as an argument means another thing since 22.
    run(Command::new("node")
        .args(["--test", "--test-reporter=spec"])
        .current_dir(root()?.join("tests/browser"))
        .env("CHROMIUM", chromium))
}
