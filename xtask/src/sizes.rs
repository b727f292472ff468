//! What a first visit downloads.

use std::path::Path;
use std::process::Command;

use crate::Outcome;
use crate::files::{files, name_in};
use crate::program::ask;

/// A first visit in a garage at the edge of a network: on 1 Mbit/s the whole product takes two seconds. Its first landing
/// had 150 KiB; the rest is for the parts that came and come after it.
pub const BUDGET: u64 = 250 * 1024;

/// What it is meant to be.
pub const AIM: u64 = 180 * 1024;

/// Node.js compresses, at the level of a careful host. Its zlib has brotli built in and the checks need Node.js
/// anyway; the crate would have to be built in every clean checkout.
const COMPRESS: &str = "
const { readFileSync } = require('node:fs');
const { brotliCompressSync, gzipSync } = require('node:zlib');
for (const file of process.argv.slice(1)) {
  const raw = readFileSync(file);
  console.log(raw.length, gzipSync(raw, { level: 9 }).length, brotliCompressSync(raw).length);
}
";

/// Bytes of a file or of all: raw, with gzip, with brotli.
pub type Bytes = [u64; 3];

/// Prints the size of every file and fails when they are together over the budget.
pub fn check(dist: &Path) -> Outcome {
    let files = of(dist)?;
    println!("\n{:>12} {:>12}", "bytes", "brotli");
    for (name, [raw, _, brotli]) in &files {
        println!("{raw:>12} {brotli:>12}  {name}");
    }
    let [raw, _, brotli] = sum(&files);
    println!("{raw:>12} {brotli:>12}  all, of {BUDGET} allowed in brotli ({AIM} is the aim)");
    hold(&files)
}

/// Fails when files are together over the budget.
pub fn hold(files: &[(String, Bytes)]) -> Outcome {
    let [.., brotli] = sum(files);
    if brotli > BUDGET {
        let over = brotli - BUDGET;
        return Err(format!(
            "The page is {over} bytes over its budget: make it smaller before anything is added."
        ));
    }
    Ok(())
}

/// What files are together, each compressed by itself, as a visit asks for them.
pub fn sum(files: &[(String, Bytes)]) -> Bytes {
    let mut all = [0; 3];
    for (_, bytes) in files {
        for (sum, it) in all.iter_mut().zip(bytes) {
            *sum += it;
        }
    }
    all
}

/// Every file of a built page with its bytes, the largest first.
pub fn of(dist: &Path) -> Outcome<Vec<(String, Bytes)>> {
    let files = files(dist)?;
    let told =
        ask(Command::new("node").args(["-e", COMPRESS, "--"]).args(&files)).map_err(|why| {
            format!("{why} The page is built; its compressed size is measured with Node.js.")
        })?;
    let bytes = |line: &str| -> Option<Bytes> {
        let all: Vec<u64> = line.split(' ').filter_map(|it| it.parse().ok()).collect();
        all.try_into().ok()
    };
    let told: Vec<Bytes> = told.lines().filter_map(bytes).collect();
    if told.len() != files.len() {
        return Err(
            "Node.js did not give the sizes of each file; is its version at least 20?".to_owned()
        );
    }
    let mut all: Vec<_> = files.iter().map(|it| name_in(dist, it)).zip(told).collect();
    all.sort_by_key(|(_, [raw, ..])| std::cmp::Reverse(*raw));
    Ok(all)
}
