//! Every visible word stands in src/words: none in the view.

use super::source::{Source, root, sources};
use std::collections::BTreeSet;

/// Attributes whose values nobody reads on the page.
const UNSEEN: &[&str] = &[
    "class",
    "id",
    "for",
    "rel",
    "type",
    "role",
    "href",
    "name",
    "d",
    "points",
    "viewBox",
    "transform",
    "xmlns",
    "width",
    "height",
    "inputmode",
    "autocomplete",
    "autocapitalize",
    "spellcheck",
    "enterkeyhint",
    "tabindex",
    "fill",
    "stroke",
    "aria-live",
    "aria-hidden",
    "aria-describedby",
    "aria-labelledby",
    "aria-controls",
    "aria-current",
    "datetime",
    "value",
    "target",
    "method",
    "lang",
    "dir",
    "x",
    "y",
    "cx",
    "cy",
    "r",
    "rx",
    "ry",
    "x1",
    "x2",
    "y1",
    "y2",
    "dx",
    "dy",
    "list",
    "preserveAspectRatio",
    "stroke-dasharray",
    "stroke-width",
    "stroke-linecap",
    "stroke-linejoin",
    "text-anchor",
    "dominant-baseline",
    "marker-end",
    "marker-start",
    "scope",
    "accept",
    "step",
    "min",
    "max",
    "size",
    "maxlength",
];

/// The text without what is filled in and without escapes.
fn bare(text: &str) -> String {
    let mut out = String::new();
    let mut depth = 0u32;
    for it in text.chars() {
        match it {
            '{' => depth += 1,
            '}' => depth = depth.saturating_sub(1),
            it if depth == 0 => out.push(it),
            _ => out.push(' '),
        }
    }
    out.replace("\\n", " ").replace("\\u", " ")
}

/// How many words a person would read: two letters or more together, spaces around.
fn words(text: &str) -> usize {
    let word = |it: &str| {
        let it = it.trim_matches(|it: char| !it.is_alphanumeric());
        it.chars().count() > 1 && it.chars().all(|it| it.is_alphabetic() || "'’-".contains(it))
    };
    bare(text).split_whitespace().filter(|it| word(it)).count()
}

/// Class names that the sheet knows.
fn classes() -> BTreeSet<String> {
    let sheet = std::fs::read_to_string(root().join("style/sheet.css")).unwrap();
    let name = |it: &str| -> String {
        it.chars().take_while(|it| it.is_ascii_alphanumeric() || "-_".contains(*it)).collect()
    };
    sheet.split('.').skip(1).map(name).filter(|it| !it.is_empty()).collect()
}

/// What a text is for, by the code before it and the text before it.
enum Place {
    /// Value of an attribute that nobody reads, a class, or words for a programmer.
    Unseen,
    /// An element's own text, or an attribute that is shown or read aloud.
    Shown,
    /// Anything else.
    Unknown,
}

fn place(before: &str, last: &str) -> Place {
    let before: String = before.split_whitespace().collect();
    if before.ends_with(".set(\"\",") || before.ends_with(".live(\"\",") {
        return if UNSEEN.contains(&last) { Place::Unseen } else { Place::Shown };
    }
    if before.ends_with(".class(") || before.ends_with("throw_str(") {
        return Place::Unseen;
    }
    let own = [".text(", "paragraph(\"\",", "span(\"\",", "button(\"\","];
    if own.iter().any(|it| before.ends_with(it)) { Place::Shown } else { Place::Unknown }
}

/// Texts of the view that a visitor would read: one word where an element's text stands, two words anywhere else.
fn visible(source: &Source, classes: &BTreeSet<String>) -> Vec<String> {
    let mut found = Vec::new();
    let mut last = "";
    for (before, text) in &source.texts {
        let seen = match place(before, last) {
            Place::Unseen => false,
            Place::Shown => words(text) > 0,
            Place::Unknown => {
                words(text) > 1 && !text.split_whitespace().all(|it| classes.contains(it))
            }
        };
        if seen {
            found.push(format!("{}: \"{text}\"", source.name));
        }
        last = text;
    }
    found
}

#[test]
fn every_visible_word_stands_in_words() {
    let (mut found, mut texts, classes) = (Vec::new(), 0, classes());
    for source in sources("src").iter().filter(|it| it.name.starts_with("src/view")) {
        texts += source.texts.len();
        found.extend(visible(source, &classes));
    }
    assert!(texts > 300 && classes.len() > 40, "{texts} texts, {} classes", classes.len());
    assert!(found.is_empty(), "words outside of src/words:\n{}", found.join("\n"));
}

#[test]
fn finds_what_is_visible() {
    let classes = ["line", "wide", "care"].map(str::to_owned).into();
    let seen = |raw: &str| {
        let (code, texts) = super::source::cut(raw);
        visible(&Source { name: "x".into(), raw: raw.into(), code, texts }, &classes).len()
    };
    for raw in [
        "el(\"p\").text(\"Add fuel\")",
        "el(\"p\").text(\"Add\")",
        "el(\"p\").text(\"care\")",
        "paragraph(\"care\", \"Add\")",
        "paragraph(\n    \"care\",\n    \"line wide\",\n)",
        "span(\"wide\", \"missing\")",
        "button(\"do\", \"Keep\", leave)",
        "el(\"input\").set(\"aria-label\", \"unit\")",
        "el(\"input\").set(\"title\", \"Change unit\")",
        "el(\"input\").set(\"placeholder\", \"from the manual\")",
        "format!(\"{label} is missing here\")",
        "let text = \"Not known\";",
        "let text = \"Line wide\";",
    ] {
        assert_eq!(seen(raw), 1, "{raw}");
    }
    for raw in [
        "el(\"p\").class(\"one two\").set(\"id\", \"a\").text(words::ADD)",
        "el(\"p\").set(\"autocomplete\", \"street address\")",
        "span(\"line wide\", words::ADD)",
        "let class = if open { \"line wide\" } else { \"line\" };",
        "span(\"wide\", \" · \").text(\"±\")",
        "svg(\"path\").set(\"d\", \"M0 0 L1 1\")",
        "format!(\"{note_id} {hint_id}\")",
        "match it { Line::Fuel => \"fuel\" }",
        "throw_str(\"no such element\")",
        "// two words\nlet a: Vec<&'static str> = vec![\"x\"];",
    ] {
        assert_eq!(seen(raw), 0, "{raw}");
    }
}

/// What stands there before the page runs is what the page then says.
#[test]
fn the_shell_says_what_the_page_is_for() {
    let shell = std::fs::read_to_string(root().join("index.html")).expect("index.html");
    let said = format!("<p class=\"purpose\">{}</p>", torpor::words::page::PURPOSE);
    assert!(shell.contains(&said), "index.html does not say: {said}");
}

/// Typographic apostrophes, as in print: one of each kind beside the other looks like a slip.
#[test]
fn apostrophes_are_typographic() {
    let mut straight = Vec::new();
    for Source { name, texts, .. } in sources("src/words") {
        for (_, text) in texts {
            let letters: Vec<char> = text.chars().collect();
            let between =
                |it: &[char]| it[1] == '\'' && it[0].is_alphabetic() && it[2].is_ascii_lowercase();
            straight.extend(letters.windows(3).any(between).then(|| format!("{name}: {text}")));
        }
    }
    assert!(straight.is_empty(), "straight apostrophes:\n{}", straight.join("\n"));
}

/// Words that nothing says are dead, which the compiler does not tell of what is public.
#[test]
fn every_word_is_said_somewhere() {
    let all = sources("src");
    let mut unsaid = Vec::new();
    for source in all.iter().filter(|it| it.name.starts_with("src/words/")) {
        for line in source.code.lines().map(str::trim) {
            let rest = ["pub const ", "pub fn "].iter().find_map(|it| line.strip_prefix(it));
            let name: String = rest
                .unwrap_or(line)
                .chars()
                .take_while(|it| it.is_alphanumeric() || *it == '_')
                .collect();
            let of_a_list = rest.is_none()
                && line.get(name.len()..).is_some_and(|it| it.starts_with(": \""))
                && name.chars().all(|it| it.is_ascii_uppercase() || it == '_');
            // Facts and steps are called by their number.
            if (rest.is_none() && !of_a_list) || source.name.ends_with("facts.rs") {
                continue;
            }
            let said = all.iter().any(|it| {
                // In the text of a `format!` as well.
                let times = it.raw.matches(name.as_str()).count();
                if it.name == source.name { times > 1 } else { it.names(&name) }
            });
            unsaid.extend((!said).then(|| format!("{}: {name}", source.name)));
        }
    }
    assert!(unsaid.is_empty(), "words that nothing says:\n{}", unsaid.join("\n"));
}
