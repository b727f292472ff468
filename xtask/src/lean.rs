//! What Trunk leaves in the built page and nobody needs: code that is never called, what a panic would say (`hollow.rs`),
//! the long names by which script and wasm call each other (`glue.rs`), an order of functions and of their bytes that
//! compresses badly (`order.rs`, `pack.rs`), white space. The page works without any of this, only larger: where wasm-opt
//! cannot run it stays as Trunk built it, 90 kB more on the wire.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::Outcome;
use crate::files::{bytes, content, files, read, rename, scratch, write};
use crate::glue::{called, renamed, without_classes, without_unasked};
use crate::hollow::hollow;
use crate::order::ordered;
use crate::packed::Packed;
use crate::program::{ask, run};
use crate::setup::Tools;
use crate::types::numbered;
use crate::wasm::{imports, sections};

/// What the page's wasm makes use of; wasm-opt's `--all-features` makes one that no browser takes.
const FEATURES: [&str; 6] = [
    "--enable-bulk-memory",
    "--enable-reference-types",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-multivalue",
];

/// Measured on the wire, not by the file.
const PASSES: [&str; 7] =
    ["--low-memory-unused", "--flatten", "--rereloop", "-Oz", "--flatten", "--rereloop", "-Oz"];

/// The list of short names is printed.
const LAST: [&str; 3] = ["--low-memory-unused", "-Oz", "--minify-imports-and-exports-and-modules"];

/// Zeros between data cost less on the wire than the address of what follows them. What is called once stays a function of
/// its own, and what is worked out twice is: both are more alike than as parts of something else (0.6 and 1.2 kB).
const ALWAYS: [&str; 3] = [
    "--skip-pass=memory-packing",
    "--one-caller-inline-max-function-size=10",
    "--skip-pass=local-cse",
];

/// Makes the page in `dist` lean. Where it is not Torpor, what another page may need stays, and the wasm is not packed, as
/// that takes a script which unpacks it.
pub fn lean(tools: &Tools, dist: &Path, torpor: bool) -> Outcome {
    let files = files(dist)?;
    let wasm = files.iter().find(|it| it.to_string_lossy().ends_with("_bg.wasm"));
    let wasm = wasm.ok_or_else(|| format!("{} has no wasm; build it again.", dist.display()))?;
    let script = PathBuf::from(wasm.to_string_lossy().replace("_bg.wasm", ".js"));
    let mut packed = None;
    if let Some(wasm_opt) = tools.wasm_opt.as_ref().filter(|it| runs(it)) {
        shrink(wasm_opt, wasm, &script, torpor)?;
        if torpor {
            packed = Packed::instead_of(wasm_opt, wasm, &script, dist)?;
        }
    }
    if let Some(esbuild) = &tools.esbuild {
        minify(esbuild, &files)?;
    }
    if let Some(packed) = &packed {
        packed.check(&script)?;
        packed.is_taken()?;
    }
    named_anew(dist, &script, packed.as_ref().map_or(wasm, |it| &it.file))
}

fn minify(esbuild: &Path, files: &[PathBuf]) -> Outcome {
    for file in files.iter().filter(|it| it.extension().is_some_and(|it| it == "js")) {
        let flags = [
            "--minify",
            "--format=esm",
            "--tree-shaking=true",
            "--allow-overwrite",
            "--log-level=warning",
        ];
        let out = format!("--outfile={}", file.display());
        run(Command::new(esbuild).args(flags).arg(out).arg(file))?;
    }
    Ok(())
}

/// Names script and wasm by what is in them now: Trunk named them before, and a script from a cache would call a wasm of
/// another build by names that are not its own.
fn named_anew(dist: &Path, script: &Path, wasm: &Path) -> Outcome {
    let name = |file: &Path| file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let (before, after) = (name(script), format!("torpor-{}", content(&[script, wasm])?));
    for file in [script, wasm] {
        let named = file.to_string_lossy().replace(&before, &after);
        rename(file, Path::new(&named))?;
    }
    for file in [dist.join("index.html"), dist.join(format!("{after}.js"))] {
        write(&file, read(&file)?.replace(&before, &after))?;
    }
    Ok(())
}

/// Whether wasm-opt can do its work on this machine at all, so that a fault in the code is not laid on it.
fn runs(wasm_opt: &Path) -> bool {
    let tried = || {
        let (empty, out) = (scratch("empty.wasm")?, scratch("empty-opt.wasm")?);
        write(&empty, b"\0asm\x01\0\0\0")?;
        run(Command::new(wasm_opt).arg("-Oz").arg(&empty).arg("-o").arg(&out))
    };
    let tried: Outcome = tried();
    if let Err(why) = &tried {
        println!("   {why}\n   Going on without wasm-opt: the page works, only larger.");
    }
    tried.is_ok()
}

fn shrink(wasm_opt: &Path, wasm: &Path, script: &Path, torpor: bool) -> Outcome {
    let (whole, types) = numbered(&bytes(wasm)?)?;
    let hollow = hollow(&whole, torpor)?;
    println!(
        "   Hollowed out: {} functions that are not reached, {} places in the source; {types} types numbered.",
        hollow.functions, hollow.places
    );
    let part = scratch("part.wasm")?;
    write(&part, &hollow.wasm)?;
    let text = without_classes(&read(script)?)?;
    drop_uncalled(wasm_opt, &part, &text)?;
    ask(Command::new(wasm_opt)
        .args(FEATURES)
        .args(ALWAYS)
        .args(PASSES)
        .arg(&part)
        .arg("-o")
        .arg(&part))?;
    // The wasm asks for less now; without what was there for that the script calls less of the wasm in its turn.
    let asked = asked(&bytes(&part)?).ok_or("What wasm-opt wrote cannot be read.")?;
    let text = without_unasked(&text, &asked);
    drop_uncalled(wasm_opt, &part, &text)?;
    let names = ask(Command::new(wasm_opt)
        .args(FEATURES)
        .args(ALWAYS)
        .args(LAST)
        .arg(&part)
        .arg("-o")
        .arg(wasm))?;
    write(wasm, &ordered(&bytes(wasm)?)?)?;
    write(script, renamed(&text, &names)?)
}

/// The names of what the wasm asks of the script.
fn asked(wasm: &[u8]) -> Option<Vec<String>> {
    let sections = sections(wasm)?;
    let (_, section) = sections.iter().find(|(id, _)| *id == 2)?;
    Some(imports(section)?.0)
}

/// Drops in place what the script does not call.
fn drop_uncalled(wasm_opt: &Path, wasm: &Path, script: &str) -> Outcome {
    let graph = scratch("called.json")?;
    write(&graph, roots(&called(script)))?;
    // Beside wasm-opt in its package, and a twin of it.
    let metadce = wasm_opt.with_file_name("wasm-metadce");
    if !metadce.is_file() {
        return Err(format!(
            "{} is missing beside wasm-opt; both are in its package.",
            metadce.display()
        ));
    }
    ask(Command::new(metadce)
        .args(FEATURES)
        .arg("--graph-file")
        .args([&graph, wasm])
        .arg("-o")
        .arg(wasm))
    .map(drop)
}

/// The graph that wasm-metadce wants: what is called from outside.
fn roots(called: &BTreeSet<&str>) -> String {
    let one = |it: &&str| format!("{{\"name\":\"out {it}\",\"export\":\"{it}\",\"root\":true}}");
    format!("[{}]", called.iter().map(one).collect::<Vec<_>>().join(","))
}
