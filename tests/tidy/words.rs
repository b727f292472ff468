//! Every visible word stands in src/words: none in the view.

use super::source::{Source, sources};

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

/// The attribute that a text is the value of, where it stands right behind its name.
fn attribute(before: &str) -> Option<&str> {
    let before = before.strip_suffix('=')?;
    let start = before.rfind(|it: char| !it.is_alphanumeric() && !"-:_".contains(it));
    Some(&before[start.map_or(0, |at| at + 1)..])
}

/// Texts of the view that a visitor would read: two words in a text, or one standing as an element's own.
fn visible(source: &Source) -> Vec<String> {
    let mut found = Vec::new();
    for (before, text) in &source.texts {
        let unseen = attribute(before).is_some_and(|it| {
            UNSEEN.contains(&it)
                || ["class:", "style:", "on:"].iter().any(|kind| it.starts_with(kind))
        });
        let element = before.ends_with('>') && !before.ends_with("=>") && !before.ends_with("->");
        let read = words(text);
        if !unseen && (read > 1 || (element && read > 0)) {
            found.push(format!("{}: \"{text}\"", source.name));
        }
    }
    // Words without quotes between two tags.
    for (at, _) in source.code.match_indices("</") {
        let from = source.code[..at].rfind(['>', '<', '{', '}', '"', ';']).map_or(0, |it| it + 1);
        let text = &source.code[from..at];
        if source.code[..from].ends_with('>') && words(text) > 0 {
            found.push(format!("{}: {text}", source.name));
        }
    }
    found
}

#[test]
fn every_visible_word_stands_in_words() {
    let mut found = Vec::new();
    for source in sources("src").iter().filter(|it| it.name.starts_with("src/view")) {
        found.extend(visible(source));
    }
    assert!(found.is_empty(), "words outside of src/words:\n{}", found.join("\n"));
}

#[test]
fn finds_what_is_visible() {
    let seen = |raw: &str| {
        let (code, texts) = super::source::cut(raw);
        visible(&Source { name: "x".into(), raw: raw.into(), code, texts }).len()
    };
    for raw in [
        "view! { <p>\"Add fuel\"</p> }",
        "view! { <p>\"Add\"</p> }",
        "view! { <p>Add fuel</p> }",
        "view! { <button aria-label=\"Change unit\">\"±\"</button> }",
        "view! { <input placeholder=\"from the manual\"/> }",
        "format!(\"{label} is missing here\")",
        "let text = \"Not known\";",
    ] {
        assert_eq!(seen(raw), 1, "{raw}");
    }
    for raw in [
        "view! { <p class=\"line wide\" id=\"a\">{words::ADD}</p> }",
        "view! { <b class=\"a b\">\" · \"</b> }",
        "view! { <path d=\"M0 0 L1 1\"/> }",
        "format!(\"{note_id} {hint_id}\")",
        "match it { Line::Fuel => \"fuel\" }",
        "// two words\nlet a: Vec<&'static str> = vec![\"x\"];",
        "view! { <p>\"±\"</p><p>\"▾\"</p> }",
    ] {
        assert_eq!(seen(raw), 0, "{raw}");
    }
}
