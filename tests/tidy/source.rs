//! Rust source cut into code, texts and remarks, well enough to keep rules by.

use std::path::{Path, PathBuf};

/// A source file.
pub struct Source {
    /// From the project's root, with forward slashes.
    pub name: String,
    /// As it is.
    pub raw: String,
    /// Without remarks and tests, and with every text as "".
    pub code: String,
    /// Texts, each with the end of the code before it.
    pub texts: Vec<(String, String)>,
}

pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// All files under a folder or the file itself, by name.
pub fn files(under: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut open = vec![root().join(under)];
    while let Some(path) = open.pop() {
        if path.is_dir() {
            open.extend(std::fs::read_dir(&path).unwrap().map(|it| it.unwrap().path()));
        } else if path.exists() {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// All Rust files under a folder.
pub fn sources(under: &str) -> Vec<Source> {
    let rust = |it: &PathBuf| it.extension().is_some_and(|it| it == "rs");
    files(under).into_iter().filter(rust).map(|it| Source::read(&it)).collect()
}

impl Source {
    fn read(path: &Path) -> Self {
        let name = path.strip_prefix(root()).unwrap().to_string_lossy().replace('\\', "/");
        let raw = std::fs::read_to_string(path).unwrap();
        let (code, texts) = cut(&raw);
        // Tests of a module stand at its end.
        let code = code.split("#[cfg(test)]\nmod").next().unwrap().to_owned();
        Self { name, raw, code, texts }
    }

    /// Whether the code holds `word` as a whole word.
    pub fn names(&self, word: &str) -> bool {
        let part = |it: char| it.is_alphanumeric() || it == '_';
        self.code.match_indices(word).any(|(at, _)| {
            !self.code[..at].ends_with(part) && !self.code[at + word.len()..].starts_with(part)
        })
    }
}

/// Code with every text as "", and the texts, each with the last of the code before it.
pub fn cut(raw: &str) -> (String, Vec<(String, String)>) {
    let mut code = String::new();
    let mut texts = Vec::new();
    let mut rest = raw;
    while let Some(first) = rest.chars().next() {
        let hashes = rest.strip_prefix('r').map(|it| it.len() - it.trim_start_matches('#').len());
        let raw_text = hashes.filter(|count| {
            rest[1 + count..].starts_with('"')
                && !code.ends_with(|it: char| it.is_alphanumeric() || it == '_')
        });
        if rest.starts_with("//") {
            rest = rest.find('\n').map_or("", |end| &rest[end..]);
        } else if rest.starts_with("/*") {
            rest = rest.find("*/").map_or("", |end| &rest[end + 2..]);
        } else if let Some(count) = raw_text {
            let close = format!("\"{}", "#".repeat(count));
            let body = &rest[count + 2..];
            let end = body.find(&close).unwrap_or(body.len());
            texts.push((before(&code), body[..end].to_owned()));
            code.push_str("\"\"");
            rest = body.get(end + close.len()..).unwrap_or("");
        } else if first == '"' {
            let body = &rest[1..];
            let mut escaped = false;
            let end = body.find(|it| {
                let ends = it == '"' && !escaped;
                escaped = it == '\\' && !escaped;
                ends
            });
            let end = end.unwrap_or(body.len());
            texts.push((before(&code), body[..end].to_owned()));
            code.push_str("\"\"");
            rest = body.get(end + 1..).unwrap_or("");
        } else if let Some(end) = letter(rest) {
            code.push_str("' '");
            rest = &rest[end..];
        } else {
            code.push(first);
            rest = &rest[first.len_utf8()..];
        }
    }
    (code, texts)
}

/// The length of a single letter in quotes; a lifetime is none.
fn letter(rest: &str) -> Option<usize> {
    let body = rest.strip_prefix('\'')?;
    let mut letters = body.char_indices();
    let (_, first) = letters.next()?;
    if first == '\\' {
        let skipped = 2 + body[1..].chars().next()?.len_utf8();
        return rest[skipped..].find('\'').map(|it| skipped + it + 1);
    }
    letters.next().filter(|(_, it)| *it == '\'').map(|(at, _)| at + 2)
}

fn before(code: &str) -> String {
    let code = code.trim_end();
    let from = code.char_indices().rev().nth(39).map_or(0, |(at, _)| at);
    code[from..].to_owned()
}

#[test]
fn cuts_well() {
    let (code, texts) = cut(
        "let a = \"b \\\" // c\"; // d \"e\"\nlet f: &'g str = 'h'; let i = '\\''; r#\"j \"k\" l\"#; /* m */ n('\"', '\\u{ad}')",
    );
    assert_eq!(code, "let a = \"\"; \nlet f: &'g str = ' '; let i = ' '; \"\";  n(' ', ' ')");
    let texts: Vec<_> =
        texts.iter().map(|(before, text)| (before.as_str(), text.as_str())).collect();
    assert_eq!(texts[0], ("let a =", "b \\\" // c"));
    assert_eq!(texts[1].1, "j \"k\" l");
    assert_eq!(texts.len(), 2);
}
