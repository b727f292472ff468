//! The tools that build the page: found where they fit, otherwise installed once a user and version.

use std::env;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::files::rename;
use crate::program::{ask, cargo, on_path, run, version};
use crate::report::step;
use crate::{Outcome, root};

const TARGET: &str = "wasm32-unknown-unknown";
const TRUNK: &str = "0.21.14";
const WASM_OPT: &str = "132";
const ESBUILD: &str = "0.28.2";

/// What the page is built with.
#[derive(Clone)]
pub struct Tools {
    pub trunk: PathBuf,
    pub wasm_bindgen: PathBuf,
    /// The page works without, only larger.
    pub wasm_opt: Option<PathBuf>,
    /// Makes the scripts small; the page works without, only larger.
    pub esbuild: Option<PathBuf>,
}

/// Finds or installs all that the page is built with.
pub fn set_up() -> Outcome<Tools> {
    let cache = Cache::open()?;
    wasm_target()?;
    fetch_crates()?;
    let bindgen = locked_version("wasm-bindgen")?;
    let trunk = tool(&cache, "trunk", TRUNK, |folder| {
        // Without its default features Trunk cannot download, and has nothing to: both tools that it needs are here.
        install_crate(&cache, folder, "trunk", TRUNK, &["--locked", "--no-default-features"])
    })?;
    let wasm_bindgen = tool(&cache, "wasm-bindgen", &bindgen, |folder| {
        let crate_name = "wasm-bindgen-cli";
        install_crate(&cache, folder, crate_name, &bindgen, &["--locked"]).or_else(|why| {
            // Its lock file may name a crate that a registry mirror does not have yet.
            println!("   {why}\n   Once more with the newest crates that fit.");
            install_crate(&cache, folder, crate_name, &bindgen, &[])
        })
    })?;
    let or_without = |tool: Outcome<PathBuf>| {
        tool.inspect_err(|why| {
            println!("   {why}\n   Going on without: the page works, only larger.");
        })
        .ok()
    };
    let wasm_opt = or_without(wasm_opt_in(&cache));
    let esbuild = or_without(tool(&cache, "esbuild", ESBUILD, |folder| {
        install_package(folder, &format!("esbuild@{ESBUILD}"))
    }));
    Ok(Tools { trunk, wasm_bindgen, wasm_opt, esbuild })
}

/// Finds or installs wasm-opt alone, for a test that needs nothing else.
#[cfg(test)]
pub fn wasm_opt() -> Outcome<PathBuf> {
    wasm_opt_in(&Cache::open()?)
}

/// The same in a cache that is open already: opened once more it would wait for itself.
fn wasm_opt_in(cache: &Cache) -> Outcome<PathBuf> {
    tool(cache, "wasm-opt", WASM_OPT, |folder| {
        install_package(folder, &format!("binaryen@{WASM_OPT}.0.0"))
    })
}

/// A program from npm, in a folder of its own.
fn install_package(folder: &Path, package: &str) -> Outcome {
    let npm = on_path("npm").ok_or("npm was not found.")?;
    let quiet = ["--no-audit", "--no-fund", "--loglevel=error"];
    run(Command::new(npm)
        .args(["install", "--global"])
        .args(quiet)
        .arg("--prefix")
        .arg(folder)
        .arg(package))
}

fn wasm_target() -> Outcome {
    let manual = format!("Install the standard library for {TARGET} beside your Rust by hand.");
    let sysroot = ask(Command::new("rustc").args(["--print", "sysroot"]).current_dir(root()?))?;
    if Path::new(sysroot.trim()).join("lib/rustlib").join(TARGET).is_dir() {
        return Ok(());
    }
    let Some(rustup) = on_path("rustup") else {
        return Err(format!(
            "Rust for the browser is missing, and rustup too, which would bring it. {manual}"
        ));
    };
    step("Rust for the browser", None, || {
        run(Command::new(rustup).args(["target", "add", TARGET]).current_dir(root()?))
            .map_err(|why| format!("{why} {manual}"))
    })
    .map(drop)
}

/// Trunk builds offline, so all crates must be here before.
fn fetch_crates() -> Outcome {
    let here = cargo(["fetch", "--locked", "--offline"])?
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    if here.is_ok_and(|status| status.success()) {
        return Ok(());
    }
    step("Fetching the crates that Cargo.lock names", None, || {
        run(&mut cargo(["fetch", "--locked"])?)
    })
    .map(drop)
}

/// The version of a crate in Cargo.lock: the tool and the crate must agree to the last digit.
pub fn locked_version(name: &str) -> Outcome<String> {
    let lock = fs::read_to_string(root()?.join("Cargo.lock")).map_err(|why| {
        format!("Cargo.lock cannot be read ({why}): take it from the repository again.")
    })?;
    let mut lines = lock.lines().skip_while(|line| *line != format!("name = \"{name}\"")).skip(1);
    let found = lines.next().and_then(|line| line.strip_prefix("version = \"")?.strip_suffix('"'));
    found.map(str::to_owned).ok_or_else(|| {
        format!("Cargo.lock does not name {name}: take it from the repository again.")
    })
}

/// A tool of exactly this version: from PATH, from the cache, or installed into the cache.
fn tool(
    cache: &Cache,
    name: &str,
    wanted: &str,
    install: impl FnOnce(&Path) -> Outcome,
) -> Outcome<PathBuf> {
    let fits = |path: &PathBuf| version(path).is_some_and(|found| found == wanted);
    if let Some(found) = on_path(name).filter(fits) {
        return Ok(found);
    }
    // The folder has the name of what is installed, which for one of them is not that of the program.
    let package = if name == "wasm-bindgen" { "wasm-bindgen-cli" } else { name };
    let home = cache.folder.join(format!("{package}-{wanted}"));
    let program = home.join("bin").join(format!("{name}{}", env::consts::EXE_SUFFIX));
    if fits(&program) {
        return Ok(program);
    }
    // As measured on two cores.
    let about = match name {
        "trunk" => "four to eight minutes, once",
        "wasm-bindgen" => "about two minutes, once",
        _ => "a few seconds, once",
    };
    step(&format!("Installing {package} {wanted}"), Some(about), || {
        // Built beside and moved when whole, so that an interrupted install is never taken for a tool.
        let part = cache.folder.join(format!("{package}-{wanted}.part"));
        clear(&part)?;
        install(&part).map_err(|why| {
            format!("{why} Once the cause is gone run the same chore again, or put {name} {wanted} on PATH yourself.")
        })?;
        clear(&home)?;
        rename(&part, &home)?;
        if fits(&program) {
            return Ok(program);
        }
        Err(format!(
            "It was installed but `{} --version` does not say {wanted}; delete {} and try again.",
            program.display(),
            home.display()
        ))
    })
    .map(|(program, _)| program)
}

fn install_crate(
    cache: &Cache,
    folder: &Path,
    name: &str,
    wanted: &str,
    flags: &[&str],
) -> Outcome {
    // A build folder that stays until the tool is whole: an interrupted build goes on where it was.
    let build = cache.folder.join(format!("{name}-{wanted}.build"));
    let mut command = cargo(["install", name, "--version", &format!("={wanted}")])?;
    command.args(flags).arg("--root").arg(folder).env("CARGO_TARGET_DIR", &build);
    // Four minutes in place of fifteen; the tool's own speed matters little.
    for (key, value) in
        [("LTO", "off"), ("OPT_LEVEL", "0"), ("CODEGEN_UNITS", "16"), ("DEBUG", "0")]
    {
        command.env(format!("CARGO_PROFILE_RELEASE_{key}"), value);
    }
    run(&mut command)?;
    clear(&build)
}

fn clear(folder: &Path) -> Outcome {
    match fs::remove_dir_all(folder) {
        Err(why) if folder.exists() => {
            Err(format!("{} cannot be deleted ({why}).", folder.display()))
        }
        _ => Ok(()),
    }
}

/// Where tools stay between clean checkouts: `target/` is empty in each of those.
struct Cache {
    folder: PathBuf,
    /// Held until the set-up ends, so that two at once do not install into each other.
    _lock: File,
}

impl Cache {
    fn open() -> Outcome<Self> {
        let base =
            env::var_os("XDG_CACHE_HOME").map(PathBuf::from).filter(|path| path.is_absolute());
        let base = base.or_else(|| env::home_dir().map(|home| home.join(".cache")));
        let folder = base
            .ok_or("No home folder is known: set XDG_CACHE_HOME to a folder for the tools.")?
            .join("torpor");
        let told = |why| {
            format!(
                "{} cannot be used for the tools ({why}): set XDG_CACHE_HOME to another.",
                folder.display()
            )
        };
        fs::create_dir_all(&folder).map_err(told)?;
        let lock = File::create(folder.join("lock")).map_err(told)?;
        if lock.try_lock().is_err() {
            println!("Another set-up is running; waiting for it to end.");
            lock.lock().map_err(told)?;
        }
        Ok(Self { folder, _lock: lock })
    }
}
