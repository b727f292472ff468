//! Cutting and searching of short texts. Plain loops for one sort of pattern, and cuts that cannot fail: the standard library's
//! search is made for long texts, its index refuses a cut within a letter in a message of its own, and each pattern of
//! another type brings all of the search again.

/// A text in two, where `at` is the place of a letter or the end.
#[inline(never)]
pub(crate) fn cut(text: &str, at: usize) -> (&str, &str) {
    text.split_at_checked(at).unwrap_or((text, ""))
}

/// What is left of a text from a place on.
#[inline(never)]
pub(crate) fn from(text: &str, at: usize) -> &str {
    cut(text, at).1
}

/// Where the first letter of a sort stands.
#[inline(never)]
pub(crate) fn place(text: &str, sort: fn(char) -> bool) -> Option<usize> {
    text.char_indices().find(|(_, it)| sort(*it)).map(|(at, _)| at)
}

/// Whether a letter stands in a text.
#[inline(never)]
pub(crate) fn has(text: &str, letter: char) -> bool {
    count(text, letter) > 0
}

/// How often a letter stands in a text.
#[inline(never)]
pub(crate) fn count(text: &str, letter: char) -> usize {
    text.chars().filter(|it| *it == letter).count()
}

/// A text without the letters of a sort at its start.
#[inline(never)]
pub(crate) fn past(text: &str, sort: fn(char) -> bool) -> &str {
    text.trim_start_matches(sort)
}

/// A text without the letters of a sort at its end.
#[inline(never)]
pub(crate) fn without_end(text: &str, sort: fn(char) -> bool) -> &str {
    text.trim_end_matches(sort)
}

/// What stands between letters of a sort, but for what is blank.
#[inline(never)]
pub(crate) fn parts(text: &str, sort: fn(char) -> bool) -> Vec<&str> {
    text.split(sort).filter(|it| !it.trim().is_empty()).collect()
}

/// Whether a letter is a digit: for the functions above.
pub(crate) fn digit(it: char) -> bool {
    it.is_ascii_digit()
}

/// A decimal's digits without noughts that say nothing, nor a point at their end.
#[inline(never)]
pub(crate) fn without_noughts(decimal: &str) -> &str {
    if has(decimal, '.') {
        without_end(without_end(decimal, |it| it == '0'), |it| it == '.')
    } else {
        decimal
    }
}

/// A text with another one in place of each `from`.
pub(crate) fn replaced(text: &str, from: &str, to: &str) -> String {
    debug_assert!(!from.is_empty(), "nothing is everywhere");
    let (mut all, mut rest) = (String::new(), text);
    while let Some(next) = rest.chars().next() {
        if let Some(behind) = rest.strip_prefix(from) {
            all.push_str(to);
            rest = behind;
        } else {
            all.push(next);
            rest = self::from(rest, next.len_utf8());
        }
    }
    all
}

/// Texts with another one between. The standard library's way is compiled for each length of what stands between.
#[inline(never)]
pub(crate) fn joined<T: AsRef<str>>(all: &[T], between: &str) -> String {
    let mut text = String::new();
    for (at, it) in all.iter().enumerate() {
        if at > 0 {
            text.push_str(between);
        }
        text.push_str(it.as_ref());
    }
    text
}

/// Control characters, those that turn the direction of writing or end a line, and those that show nothing.
pub(crate) fn hides(it: char) -> bool {
    it.is_control()
        || matches!(
            it,
            '\u{ad}' | '\u{61c}' | '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}'
        )
        || matches!(it, '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

/// A text as it may travel: a tab or a line's end as a space, without whatever else [`hides`].
pub(crate) fn plain(text: &str) -> String {
    let shown = |it: char| match it {
        '\t' | '\n' | '\r' => Some(' '),
        it => Some(it).filter(|it| !hides(*it)),
    };
    text.trim().chars().filter_map(shown).collect()
}
