//! What Trunk leaves in the built page and nobody needs: code that is never called, the long names by which script and
//! wasm call each other, white space. The page works without any of this, only larger: 50 kB on the wire.

use std::collections::BTreeSet;
use std::fs;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::program::{ask, run};
use crate::setup::Tools;
use crate::{Outcome, root};

/// What the page's wasm makes use of; wasm-opt's `--all-features` makes one that no browser takes.
const FEATURES: [&str; 6] = [
    "--enable-bulk-memory",
    "--enable-reference-types",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-multivalue",
];

/// Measured on the wire, not by the file. The names come last: their list is printed.
const PASSES: [&str; 9] = [
    "--low-memory-unused",
    "--flatten",
    "--rereloop",
    "-Oz",
    "--flatten",
    "--rereloop",
    "-Oz",
    "-Oz",
    "--minify-imports-and-exports-and-modules",
];

/// Makes the page in `dist` lean.
pub fn lean(tools: &Tools, dist: &Path) -> Outcome {
    let files = files(dist)?;
    let wasm = files.iter().find(|it| it.to_string_lossy().ends_with("_bg.wasm"));
    let wasm = wasm.ok_or_else(|| format!("{} has no wasm; build it again.", dist.display()))?;
    let script = PathBuf::from(wasm.to_string_lossy().replace("_bg.wasm", ".js"));
    if let Some(wasm_opt) = tools.wasm_opt.as_ref().filter(|it| runs(it)) {
        shrink(wasm_opt, wasm, &script)?;
    }
    let (script, wasm) = (script.as_path(), wasm.as_path());
    let Some(esbuild) = &tools.esbuild else { return named_anew(dist, script, wasm) };
    for file in files.iter().filter(|it| it.extension().is_some_and(|it| it == "js")) {
        let flags = ["--minify", "--format=esm", "--allow-overwrite", "--log-level=warning"];
        let out = format!("--outfile={}", file.display());
        run(Command::new(esbuild).args(flags).arg(out).arg(file))?;
    }
    named_anew(dist, script, wasm)
}

/// Names script and wasm by what is in them now: Trunk named them before, and a script from a cache would call a wasm of
/// another build by names that are not its own.
fn named_anew(dist: &Path, script: &Path, wasm: &Path) -> Outcome {
    let mut hasher = DefaultHasher::new();
    for file in [script, wasm] {
        fs::read(file)
            .map_err(|why| format!("{} cannot be read ({why}).", file.display()))?
            .hash(&mut hasher);
    }
    let name = |file: &Path| file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let (before, after) = (name(script), format!("torpor-{:016x}", hasher.finish()));
    for file in [script, wasm] {
        let named = file.to_string_lossy().replace(&before, &after);
        fs::rename(file, &named).map_err(|why| format!("{named} cannot be written ({why})."))?;
    }
    for file in [dist.join("index.html"), dist.join(format!("{after}.js"))] {
        write(&file, read(&file)?.replace(&before, &after).as_bytes())?;
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

fn shrink(wasm_opt: &Path, wasm: &Path, script: &Path) -> Outcome {
    let text = without_classes(&read(script)?)?;
    let called = called(&text);
    let graph = scratch("called.json")?;
    write(&graph, roots(&called).as_bytes())?;
    // Beside wasm-opt in its package, and a twin of it.
    let called_only = scratch("called.wasm")?;
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
        .arg(&called_only))?;
    let names = ask(Command::new(wasm_opt)
        .args(FEATURES)
        .args(PASSES)
        .arg(&called_only)
        .arg("-o")
        .arg(wasm))?;
    write(script, renamed(&text, &names)?.as_bytes())
}

/// The script without classes that wasm-bindgen exports for a crate below: nobody here makes one, and without them
/// nobody calls what stands behind them.
fn without_classes(script: &str) -> Outcome<String> {
    let mut kept = String::new();
    let mut classes = Vec::new();
    let mut until = None;
    for line in script.lines() {
        let end = match until {
            Some(end) => end,
            None => match line.strip_prefix("export class ") {
                Some(rest) => {
                    classes.extend(rest.split_whitespace().next());
                    // All of it on one line is over at once.
                    if rest.ends_with('}') { "" } else { "}" }
                }
                None if line.starts_with("const ") && line.contains("Finalization = ") => ";",
                None if line.starts_with("if (Symbol.dispose)") => "",
                None => {
                    kept.push_str(line);
                    kept.push('\n');
                    continue;
                }
            },
        };
        let over = if end == "}" { line == end } else { line.ends_with(end) };
        until = (!over).then_some(end);
    }
    match classes.into_iter().find(|it| kept.contains(it)) {
        Some(used) => {
            Err(format!("The script makes use of its class `{used}`, which was to be left out."))
        }
        None => Ok(kept),
    }
}

/// What the script calls of the wasm.
fn called(script: &str) -> BTreeSet<&str> {
    let name = |rest: &'_ str| rest.find(|it: char| !it.is_ascii_alphanumeric() && it != '_');
    let uses = script.split("wasm.").skip(1);
    uses.filter_map(|rest| Some(&rest[..name(rest)?])).collect()
}

/// The graph that wasm-metadce wants: what is called from outside.
fn roots(called: &BTreeSet<&str>) -> String {
    let one = |it: &&str| format!("{{\"name\":\"out {it}\",\"export\":\"{it}\",\"root\":true}}");
    format!("[{}]", called.iter().map(one).collect::<Vec<_>>().join(","))
}

/// The script with the short names that wasm-opt printed: `["module", "import", "short"]` and `["export", "short"]`.
fn renamed(script: &str, names: &str) -> Outcome<String> {
    // Seen neither here nor by the check at the end.
    if script.contains("wasm[") || script.contains("wasm?") {
        return Err("The script calls the wasm in a way that is not known here.".to_owned());
    }
    let mut script = script.to_owned();
    for line in names.lines() {
        let quoted: Vec<&str> = line.split('"').skip(1).step_by(2).collect();
        let (long, short) = match quoted.as_slice() {
            [module, import, short] => {
                // The one module is always called so, and not printed.
                script = script.replace(&format!("\"{module}\": "), "\"a\": ");
                (format!("        {import}: "), format!("        \"{short}\": "))
            }
            // Behind a name stands what is no part of one; so no name is taken for the head of a longer one.
            [export, short] => {
                for after in ["(", ",", ")", ";", ".", " "] {
                    script = script.replace(
                        &format!("wasm.{export}{after}"),
                        &format!("wasm[\"{short}\"]{after}"),
                    );
                }
                continue;
            }
            _ => continue,
        };
        if !script.contains(&long) {
            return Err(format!(
                "The script does not have `{}`, which the wasm asks for.",
                long.trim()
            ));
        }
        script = script.replace(&long, &short);
    }
    match called(&script).first() {
        Some(left) => Err(format!("The script calls `{left}`, which the wasm does not have.")),
        None => Ok(script),
    }
}

fn files(folder: &Path) -> Outcome<Vec<PathBuf>> {
    let told = |why| format!("{} cannot be read ({why}).", folder.display());
    Ok(fs::read_dir(folder).map_err(told)?.flatten().map(|it| it.path()).collect())
}

fn scratch(name: &str) -> Outcome<PathBuf> {
    Ok(root()?.join("target").join(name))
}

fn read(file: &Path) -> Outcome<String> {
    fs::read_to_string(file).map_err(|why| format!("{} cannot be read ({why}).", file.display()))
}

fn write(file: &Path, bytes: &[u8]) -> Outcome {
    fs::write(file, bytes).map_err(|why| format!("{} cannot be written ({why}).", file.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SCRIPT: &str = "export class Sink {\n    free() {\n        wasm.sink_free(0);\n    }\n}\nif (Symbol.dispose) Sink.x = 1;\nconst SinkFinalization = (typeof F === 'undefined')\n    ? { }\n    : new F(it => wasm.sink_free(it));\nfunction imports() {\n    const import0 = {\n        __wbg_view_3b: function(a) {\n            return wasm.memory.buffer;\n        },\n    };\n    return { \"./torpor_bg.js\": import0 };\n}\nwasm.__start();\n";

    #[test]
    fn classes_go_and_what_is_called_stays() {
        let text = without_classes(SCRIPT).unwrap_or_default();
        assert!(!text.contains("Sink") && text.starts_with("function imports()"), "{text}");
        assert_eq!(called(&text).into_iter().collect::<Vec<_>>(), ["__start", "memory"]);
    }

    #[test]
    fn names_become_short_on_both_sides() {
        let names = r#"{ "imports": [ ["./torpor_bg.js", "__wbg_view_3b", "$a"], ],
            ["memory", "a"],
            ["__start", "b"]"#
            .replace("{ \"imports\": [ ", "");
        let text =
            renamed(&without_classes(SCRIPT).unwrap_or_default(), &names).unwrap_or_else(|why| why);
        for part in
            ["\"$a\": function(a)", "wasm[\"a\"].buffer", "wasm[\"b\"]()", "{ \"a\": import0 }"]
        {
            assert!(text.contains(part), "{part} in {text}");
        }
        assert!(renamed(SCRIPT, "[\"./torpor_bg.js\", \"__wbg_gone_1\", \"d\"]").is_err());
        assert!(renamed(SCRIPT, "").is_err(), "a name was left");
    }
}
