//! Texts that travel: what hides in one, and a text without it.

/// Control characters, those that turn the direction of writing or end a line, and those that show nothing.
pub(super) fn hides(it: char) -> bool {
    it.is_control()
        || matches!(
            it,
            '\u{ad}' | '\u{61c}' | '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}'
        )
        || matches!(it, '\u{2060}'..='\u{206f}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

/// A text as it may travel: a tab or a line's end as a space, without whatever else [`hides`].
pub(super) fn plain(text: &str) -> String {
    let shown = |it: char| match it {
        '\t' | '\n' | '\r' => Some(' '),
        it => Some(it).filter(|it| !hides(*it)),
    };
    text.trim().chars().filter_map(shown).collect()
}
