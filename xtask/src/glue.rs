//! The script that wasm-bindgen writes beside the wasm: what of it is called, and what nobody here calls.

use std::collections::BTreeSet;

use crate::Outcome;

/// The script without classes that wasm-bindgen exports for a crate below, nor the other way to start it: nobody here
/// makes one, and without them nobody calls what stands behind them.
pub fn without_classes(script: &str) -> Outcome<String> {
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
        None => Ok(kept.replace("export { initSync, ", "export { ")),
    }
}

/// The script without what it offers the wasm and that does not ask for it, and without functions that nobody calls then.
pub fn without_unasked(script: &str, asked: &[String]) -> String {
    let offered = |line: &str| {
        let name = line.strip_prefix("        ")?.strip_suffix(") {")?.split_once(": function(")?.0;
        (!name.starts_with(' ')).then(|| name.to_owned())
    };
    // Where it may throw, `}, arguments); },`.
    let offer_ends = |line: &str| line.starts_with("        }") && line.ends_with("},");
    let unasked = |line: &str| offered(line).is_some_and(|it| !asked.contains(&it));
    let mut script = without(script, offer_ends, unasked);
    loop {
        let function = |line: &str| {
            let line = line.strip_prefix("async ").unwrap_or(line);
            Some(line.strip_prefix("function ")?.split_once('(')?.0.to_owned())
        };
        let uncalled = |line: &str| function(line).is_some_and(|it| mentions(&script, &it) == 1);
        let less = without(&script, |line| line == "}", uncalled);
        if less.len() == script.len() {
            return script;
        }
        script = less;
    }
}

/// The lines without those from one that begins something to the one that ends it.
fn without(script: &str, ends: impl Fn(&str) -> bool, begins: impl Fn(&str) -> bool) -> String {
    let mut kept = String::new();
    let mut inside = false;
    for line in script.lines() {
        inside |= begins(line);
        if !inside {
            kept.push_str(line);
            kept.push('\n');
        }
        inside &= !ends(line);
    }
    kept
}

/// How often a name stands in the script, as all of a word.
fn mentions(script: &str, name: &str) -> usize {
    let part = |it: char| it.is_ascii_alphanumeric() || matches!(it, '_' | '$');
    let alone = |(at, _): &(usize, &str)| {
        let before = script[..*at].chars().next_back();
        let after = script[at + name.len()..].chars().next();
        !before.is_some_and(part) && !after.is_some_and(part)
    };
    script.match_indices(name).filter(alone).count()
}

/// What the script calls of the wasm.
pub fn called(script: &str) -> BTreeSet<&str> {
    let name = |rest: &'_ str| rest.find(|it: char| !it.is_ascii_alphanumeric() && it != '_');
    let uses = script.split("wasm.").skip(1);
    uses.filter_map(|rest| Some(&rest[..name(rest)?])).collect()
}

/// The script with the short names that wasm-opt printed: `["module", "import", "short"]` and `["export", "short"]`.
pub fn renamed(script: &str, names: &str) -> Outcome<String> {
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
    fn what_is_not_asked_for_goes_with_what_only_it_called() {
        let script = "function all() {\n    const import0 = {\n        __a: function(x) {\n            return one(x);\n        },\n        __b: function() { return handle(function(x) {\n            return two(x);\n        }, arguments); },\n    };\n}\nfunction one(x) {\n    return x;\n}\nfunction two(x) {\n    return deep(x);\n}\nasync function deep(x) {\n    return wasm.c;\n}\nall();\n";
        let text = without_unasked(script, &["__a".to_owned()]);
        assert_eq!(
            text,
            "function all() {\n    const import0 = {\n        __a: function(x) {\n            return one(x);\n        },\n    };\n}\nfunction one(x) {\n    return x;\n}\nall();\n"
        );
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
