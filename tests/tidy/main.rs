//! The project's own rules, kept by reading its files.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod documents;
mod source;
mod words;

use source::{Source, files, root, sources};

/// Whether a file may know the browser and the clock.
fn outermost(name: &str) -> bool {
    name.starts_with("src/view")
        // What the browser works out as every machine does, it may.
        || matches!(name, "src/main.rs" | "src/storage/browser.rs" | "src/maths.rs")
        || name.starts_with("src/storage/browser/")
}

#[track_caller]
fn none(found: Vec<String>, rule: &str) {
    assert!(found.is_empty(), "{rule}:\n{}", found.join("\n"));
}

/// Each file of `from` that names one of `words`.
fn naming(from: &[Source], words: &[&str]) -> Vec<String> {
    let mut found = Vec::new();
    for source in from {
        found.extend(
            words.iter().filter(|it| source.names(it)).map(|it| format!("{}: {it}", source.name)),
        );
    }
    found
}

fn inner() -> Vec<Source> {
    let all = sources("src");
    assert!(all.len() > 40, "the source was found");
    all.into_iter().filter(|it| !outermost(&it.name)).collect()
}

#[test]
fn only_the_outermost_layer_knows_the_browser() {
    let found = naming(
        &inner(),
        &[
            "leptos",
            "reactive_graph",
            "web_sys",
            "js_sys",
            "gloo",
            "gloo_storage",
            "wasm_bindgen",
            "console_error_panic_hook",
        ],
    );
    none(found, "a browser crate outside of view, the browser store, maths.rs and main.rs");
}

#[test]
fn only_the_outermost_layer_has_a_clock() {
    let found =
        naming(&inner(), &["Utc", "Local", "SystemTime", "Instant", "Date::now", "Date::new_0"]);
    none(found, "a clock outside of view, the browser store and main.rs");
}

#[test]
fn the_view_never_names_uom() {
    let view: Vec<_> =
        sources("src").into_iter().filter(|it| it.name.starts_with("src/view")).collect();
    none(naming(&view, &["uom"]), "the view lays out what show has said");
}

#[test]
fn the_domain_knows_neither_view_nor_storage() {
    // All but those two, what is built from all of them, and the addresses, one of which is a link.
    let apart = ["src/view", "src/storage", "src/lib.rs", "src/main.rs", "src/plan/address.rs"];
    let domain: Vec<_> = sources("src")
        .into_iter()
        .filter(|it| !apart.iter().any(|apart| it.name.starts_with(apart)))
        .collect();
    assert!(domain.len() > 100, "{} files", domain.len());
    // Fuel and tires have a storage of their own.
    let imports = |it: &&Source| {
        let code = it.code.split_whitespace().collect::<String>();
        let listed = code.split("crate::{").skip(1).any(|list| {
            let list = list.split(';').next().unwrap_or_default();
            list.contains("view::") || list.contains("storage::")
        });
        listed || code.contains("crate::view") || code.contains("crate::storage")
    };
    let found = domain.iter().filter(imports).map(|it| it.name.clone()).collect();
    none(found, "a domain module that imports view or storage");
}

/// Each law says where it comes from and where it holds.
#[test]
fn every_law_has_source_and_range() {
    let mut laws = 0;
    for source in sources("src") {
        let said = |block: &str,
                    field: &str,
                    texts: &mut std::slice::Iter<'_, (String, String)>| {
            let at = block
                .find(&format!("{field}:"))
                .unwrap_or_else(|| panic!("{}: a law without {field}: {block}", source.name));
            let value = block[at + field.len() + 1..].trim_start();
            if value.starts_with("\"\"") {
                let (_, text) =
                    texts.find(|(before, _)| before.ends_with(&format!("{field}:"))).unwrap();
                assert!(!text.trim().is_empty(), "{}: a law with an empty {field}", source.name);
                return;
            }
            let name: String = value
                .chars()
                .take_while(|it| it.is_alphanumeric() || "_.:".contains(*it))
                .collect();
            let of_another = name.ends_with(&format!(".{field}"));
            let own = source.raw.split(&format!("const {name}: &str =")).nth(1);
            let own = own.is_some_and(|it| {
                it.trim_start().starts_with('"') && !it.trim_start().starts_with("\"\"")
            });
            // Sources stand together in src/source.rs, where each is a text.
            let gathered = name.strip_prefix("source::").is_some_and(|it| {
                let texts = std::fs::read_to_string(root().join("src/source.rs")).unwrap();
                let text = texts.split(&format!("    {it}: \"")).nth(1);
                text.is_some_and(|it| !it.starts_with('"'))
            });
            assert!(
                of_another || own || gathered,
                "{}: {field}: {name} is not a text",
                source.name
            );
        };
        let mut texts = source.texts.iter();
        for (at, _) in source.code.match_indices("Law {") {
            if source.code[..at].ends_with(|it: char| it.is_alphanumeric() || it == '_')
                || source.code[..at].ends_with("struct ")
                || source.code[..at].ends_with("impl ")
            {
                continue;
            }
            let block = source.code[at..].split_once('}').unwrap().0;
            laws += 1;
            said(block, "source", &mut texts);
            said(block, "holds", &mut texts);
        }
    }
    assert!(laws > 25, "{laws} laws were found");
}

#[test]
fn no_unsafe_code() {
    let mut all = sources("src");
    all.extend(sources("xtask/src"));
    none(naming(&all, &["unsafe"]), "unsafe");
}

#[test]
fn nothing_is_unwrapped_outside_of_tests() {
    let mut found = Vec::new();
    for source in sources("src") {
        for word in
            [".unwrap()", ".expect(", "panic!(", "todo!(", "unimplemented!(", "unreachable!("]
        {
            found.extend(source.code.contains(word).then(|| format!("{}: {word}", source.name)));
        }
    }
    none(found, "a panic outside of tests");
}

/// chrono's formatting costs the page 13 KB.
#[test]
fn days_are_written_by_our_own_hand() {
    let mut found = Vec::new();
    for source in sources("src") {
        found.extend(source.code.contains(".format(").then(|| source.name.clone()));
    }
    none(found, "chrono's .format(");
    let manifest = std::fs::read_to_string(root().join("Cargo.toml")).unwrap();
    let chrono = manifest.lines().find(|it| it.starts_with("chrono")).unwrap();
    assert!(chrono.contains("default-features = false") && !chrono.contains("clock"), "{chrono}");
}

/// Text is text: whatever came in a link never becomes markup, and nothing builds code out of text.
#[test]
fn no_text_becomes_markup() {
    let mut found = Vec::new();
    for path in files("src").into_iter().chain(files("index.html")) {
        let text = std::fs::read_to_string(&path).unwrap();
        let rust = path.extension().is_some_and(|it| it == "rs");
        let text = if rust { source::cut(&text).0 } else { text };
        for word in [
            "inner_html",
            "innerHTML",
            "outerHTML",
            "insertAdjacentHTML",
            "document.write",
            "eval(",
            "srcdoc",
            "set_inner_html",
            "set_outer_html",
            "javascript:",
        ] {
            found.extend(text.contains(word).then(|| format!("{}: {word}", path.display())));
        }
    }
    none(found, "text made into markup or code");
}

/// No request leaves the origin: there is no address of another one to send it to.
#[test]
fn no_address_of_another_host() {
    let mut found = Vec::new();
    for path in ["src", "style", "index.html"].into_iter().flat_map(files) {
        let Ok(text) = std::fs::read_to_string(&path) else { continue };
        for (at, _) in text.match_indices("://") {
            // The name of SVG's namespace; nothing is fetched from it.
            let namespace = text[..at].ends_with("\"http")
                && text[at..].starts_with("://www.w3.org/2000/svg\"");
            let line = text[..at].lines().count();
            found.extend((!namespace).then(|| format!("{}:{line}", path.display())));
        }
    }
    none(found, "an address with a host");
}

#[test]
fn the_root_holds_what_it_should() {
    let known = [
        "Cargo.toml",
        "Cargo.lock",
        "README.md",
        "DEVELOPERS.md",
        "SECURITY.md",
        "deny.toml",
        "LICENSE-APACHE",
        "LICENSE-MIT",
        "Trunk.toml",
        "index.html",
        "style",
        "tests",
        "src",
        "xtask",
        ".cargo",
        ".ci",
        ".git",
        ".gitignore",
        ".readme",
        ".rustfmt.toml",
    ];
    let ignored = std::fs::read_to_string(root().join(".gitignore")).unwrap();
    let ignored: Vec<&str> = ignored.lines().map(|it| it.trim_matches('/')).collect();
    let mut found = Vec::new();
    for item in std::fs::read_dir(root()).unwrap() {
        let name = item.unwrap().file_name().to_string_lossy().into_owned();
        let at_home = known.contains(&name.as_str()) || ignored.contains(&name.as_str());
        found.extend((!at_home).then_some(name));
    }
    none(found, "a file or folder at the root that the architecture does not know");
    for name in ["Cargo.toml", "Trunk.toml", "index.html", "style", "tests", "src"] {
        assert!(root().join(name).exists(), "{name} is gone");
    }
}

#[test]
fn no_file_is_too_long_to_read() {
    let mut found = Vec::new();
    for path in files("src") {
        let lines = std::fs::read_to_string(&path).unwrap().lines().count();
        found.extend((lines > 450).then(|| format!("{}: {lines} lines", path.display())));
    }
    none(found, "over 450 lines");
}

/// Nothing that is committed names a folder of somebody's machine.
#[test]
fn no_path_of_a_machine() {
    let home = ["/ho", "me/"].concat();
    let users = ["/Us", "ers/"].concat();
    let mut found = Vec::new();
    let all = [
        "src",
        "style",
        "index.html",
        "Cargo.toml",
        "Trunk.toml",
        "README.md",
        "DEVELOPERS.md",
        "xtask/src",
        ".ci",
        ".cargo",
    ];
    for path in all.into_iter().flat_map(files) {
        let Ok(text) = std::fs::read_to_string(&path) else { continue };
        for word in [home.as_str(), users.as_str(), "C:\\"] {
            found.extend(text.contains(word).then(|| format!("{}: {word}", path.display())));
        }
    }
    none(found, "a path of one machine");
}
