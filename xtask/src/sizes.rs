//! What a first visit downloads.

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::Outcome;
use crate::program::ask;

/// A first visit in a garage at the edge of a network: on 1 Mbit/s the whole product takes two seconds. Its first landing
/// had 150 KiB; the rest is for the parts that came and come after it.
const BUDGET: u64 = 250 * 1024;

/// What it is meant to be.
const AIM: u64 = 180 * 1024;

/// Node.js compresses, at the level of a careful host. Its zlib has brotli built in and the checks need Node.js
/// anyway; the crate would have to be built in every clean checkout.
const COMPRESS: &str = "
const { readFileSync } = require('node:fs');
const { brotliCompressSync } = require('node:zlib');
for (const file of process.argv.slice(1)) console.log(brotliCompressSync(readFileSync(file)).length);
";

/// Prints the size of every file and fails when they are together over the budget.
pub fn check(dist: &Path) -> Outcome {
    let mut files = Vec::new();
    collect(dist, &mut files)
        .map_err(|why| format!("The built page in dist/ cannot be read ({why})."))?;
    files.sort_by_key(|(_, raw)| std::cmp::Reverse(*raw));

    let paths = files.iter().map(|(path, _)| path);
    let compressed =
        ask(Command::new("node").args(["-e", COMPRESS, "--"]).args(paths)).map_err(|why| {
            format!("{why} The page is built; its compressed size is measured with Node.js.")
        })?;
    let compressed: Vec<u64> = compressed.lines().filter_map(|line| line.parse().ok()).collect();
    if compressed.len() != files.len() {
        return Err(
            "Node.js did not give one size for each file; is its version at least 20?".to_owned()
        );
    }

    println!("\n{:>12} {:>12}", "bytes", "brotli");
    for ((path, raw), brotli) in files.iter().zip(&compressed) {
        let name = path.strip_prefix(dist).unwrap_or(path);
        println!("{raw:>12} {brotli:>12}  {}", name.display());
    }
    let raw: u64 = files.iter().map(|(_, raw)| raw).sum();
    let brotli: u64 = compressed.iter().sum();
    println!("{raw:>12} {brotli:>12}  all, of {BUDGET} allowed in brotli ({AIM} is the aim)");

    if brotli > BUDGET {
        let over = brotli - BUDGET;
        return Err(format!(
            "The page is {over} bytes over its budget: make it smaller before anything is added."
        ));
    }
    Ok(())
}

fn collect(folder: &Path, files: &mut Vec<(std::path::PathBuf, u64)>) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let kind = entry.file_type()?;
        // Trunk keeps its half-built page in a hidden folder of dist/.
        let hidden = entry.file_name().to_string_lossy().starts_with('.');
        if kind.is_dir() && !hidden {
            collect(&entry.path(), files)?;
        } else if kind.is_file() {
            files.push((entry.path(), entry.metadata()?.len()));
        }
    }
    Ok(())
}
