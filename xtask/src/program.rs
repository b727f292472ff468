//! Other programs: found, asked for their version, run.

use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::{Outcome, root};

/// The cargo that runs this chore, in the project's root.
pub fn cargo<const N: usize>(words: [&str; N]) -> Outcome<Command> {
    let mut cargo = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    cargo.args(words).current_dir(root()?);
    Ok(cargo)
}

/// Runs a command to its end, its words going to the terminal.
pub fn run(command: &mut Command) -> Outcome {
    let shown = shown(command);
    match command.status() {
        Ok(status) if status.success() => Ok(()),
        Ok(status) => {
            Err(format!("`{shown}` ended with {status}; what it printed above says why."))
        }
        Err(why) => {
            Err(format!("`{shown}` could not be started ({why}); is it installed and on PATH?"))
        }
    }
}

/// Runs a command to its end and gives what it printed; its complaints go to the terminal.
pub fn ask(command: &mut Command) -> Outcome<String> {
    let shown = shown(command);
    match command.stderr(Stdio::inherit()).output() {
        Ok(output) if output.status.success() => {
            Ok(String::from_utf8_lossy(&output.stdout).into_owned())
        }
        Ok(output) => {
            Err(format!("`{shown}` ended with {}; what it printed above says why.", output.status))
        }
        Err(why) => {
            Err(format!("`{shown}` could not be started ({why}); is it installed and on PATH?"))
        }
    }
}

/// The first program of this name on PATH.
pub fn on_path(name: &str) -> Option<PathBuf> {
    let file = format!("{name}{}", env::consts::EXE_SUFFIX);
    env::split_paths(&env::var_os("PATH")?)
        .map(|folder| folder.join(&file))
        .find(|path| path.is_file())
}

/// The first number that `--version` prints, such as `0.21.14`, or none if the program does not run.
pub fn version(program: &Path) -> Option<String> {
    let output = Command::new(program).arg("--version").stderr(Stdio::null()).output().ok()?;
    let text = String::from_utf8(output.stdout).ok().filter(|_| output.status.success())?;
    let number = |word: &&str| word.starts_with(|first: char| first.is_ascii_digit());
    text.split_whitespace().find(number).map(str::to_owned)
}

/// PATH with these folders looked at first.
pub fn path_with(folders: &[PathBuf]) -> Outcome<OsString> {
    let old = env::var_os("PATH").unwrap_or_default();
    env::join_paths(folders.iter().cloned().chain(env::split_paths(&old))).map_err(|why| {
        format!("PATH cannot be put together ({why}): move the tool cache out of such a folder.")
    })
}

fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program());
    let name = program.file_stem().unwrap_or(command.get_program()).to_string_lossy();
    let words = command.get_args().map(|word| format!(" {}", word.to_string_lossy()));
    let all: String = words.collect();
    // A long argument (a script, say) tells the reader nothing.
    let head: String = all.chars().take(120).collect();
    format!("{name}{head}")
}
