//! What the documents say is there is there.

use super::source::{files, root};

const DOCUMENTS: [&str; 3] = ["README.md", "DEVELOPERS.md", "SECURITY.md"];

fn read(name: &str) -> String {
    std::fs::read_to_string(root().join(name)).unwrap()
}

/// The pieces of a text that stand in backquotes.
fn quoted(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

/// Chores that they name can be done.
#[test]
fn documents_name_real_chores() {
    let help = std::fs::read_to_string(root().join("xtask/src/main.rs")).unwrap();
    for name in DOCUMENTS {
        let text = read(name);
        for after in text.split("cargo xtask ").skip(1) {
            let chore: String = after.chars().take_while(char::is_ascii_lowercase).collect();
            assert!(help.contains(&format!("[\"{chore}\"")), "{name}: cargo xtask {chore}");
        }
        if name == "README.md" {
            for command in ["cargo xtask serve", "cargo xtask test"] {
                assert!(text.contains(command), "{name} says how to {command}");
            }
        }
    }
}

/// Files and folders that they name exist: from the root, or somewhere in one of its folders.
#[test]
fn documents_name_real_files() {
    let all: Vec<_> = ["src", "tests", "xtask", "style"].into_iter().flat_map(files).collect();
    let mut missing = Vec::new();
    for name in DOCUMENTS {
        let text = read(name);
        // Blocks of commands are no names.
        let prose: String = text.split("```").step_by(2).collect();
        for path in quoted(&prose).filter(|it| !it.contains([' ', '<', '{', '*', '(', '#'])) {
            let kinds = [".rs", ".mjs", ".js", ".md", ".css", ".html"];
            let is_path = path.contains('/') || kinds.iter().any(|it| path.ends_with(it));
            let made = ["dist/", "target/", "sw.js", "application/wasm"];
            if is_path && !path.starts_with('.') && !made.iter().any(|it| path.starts_with(it)) {
                let there = root().join(path).exists()
                    || ["src", "tests"].iter().any(|it| root().join(it).join(path).exists())
                    || all.iter().any(|it| it.ends_with(path));
                missing.extend((!there).then(|| format!("{name}: {path}")));
            }
        }
    }
    assert!(missing.is_empty(), "named, but not there:\n{}", missing.join("\n"));
}

/// Each test in the README's table of faults stands in the file that the table names.
#[test]
fn the_table_of_faults_names_real_tests() {
    let text = read("README.md");
    let table = text.split("## ").find(|it| it.starts_with("What may happen")).unwrap();
    let mut checked = 0;
    for row in table.lines().filter(|it| it.starts_with("| ")).skip(1) {
        let tests = row.trim_end_matches([' ', '|']).rsplit('|').next().unwrap();
        for (file, said) in
            tests.split('`').skip(1).step_by(2).zip(tests.split('`').skip(2).step_by(2))
        {
            let Some(titles) = said.strip_prefix(": ") else { continue };
            let path = files("tests").into_iter().find(|it| it.ends_with(file)).unwrap();
            let source = std::fs::read_to_string(path).unwrap();
            for title in titles.split([',', ';']) {
                for part in title.split('…').map(str::trim).filter(|it| !it.is_empty()) {
                    assert!(source.contains(part), "{file} has no test of “{part}”");
                    checked += 1;
                }
            }
        }
    }
    assert!(checked > 20, "{checked} titles");
}
