//! JSON, read and written: RFC 8259. serde_json would cost the page 17 kB on the wire.

use crate::entry::text::{cut, from, past, place};

/// Values within values; what is saved here needs three.
const DEEPEST: usize = 16;

/// A value.
#[derive(Debug, Clone, PartialEq)]
pub enum Json {
    /// `null`, `true`, `false` or a number, as it is written.
    Bare(String),
    /// A text.
    Text(String),
    /// Values in their order.
    List(Vec<Json>),
    /// Values by name, in their order.
    Map(Vec<(String, Json)>),
}

impl Json {
    /// A text.
    pub fn text(text: &str) -> Self {
        Self::Text(text.to_owned())
    }

    /// The value of a name.
    pub fn get(&self, name: &str) -> Option<&Json> {
        match self {
            Self::Map(all) => all.iter().find(|it| it.0 == name).map(|it| &it.1),
            _ => None,
        }
    }

    /// Reads one value and nothing behind it; `None` for what is no JSON.
    ///
    /// ```
    /// use torpor::storage::json::Json;
    /// let read = Json::read(r#" {"day": "Nov 14 \u2013 15", "all": [1.5e3, null]} "#).unwrap();
    /// assert_eq!(read.get("day"), Some(&Json::text("Nov 14 – 15")));
    /// assert_eq!(Json::read("[1,]"), None);
    /// ```
    pub fn read(text: &str) -> Option<Self> {
        let (value, rest) = value(text, DEEPEST)?;
        blank(rest).is_empty().then_some(value)
    }

    /// The value as text, a name or an element a line; but a few names of plain values share one.
    pub fn written(&self) -> String {
        let mut text = String::new();
        self.write(&mut text, "\n");
        text
    }

    fn write(&self, into: &mut String, indent: &str) {
        let mut deeper = format!("{indent} ");
        let mut indent = indent;
        let [open, close] = match self {
            Self::Bare(it) => return into.push_str(it),
            Self::Text(it) => return quote(into, it),
            Self::List(_) => ['[', ']'],
            Self::Map(_) => ['{', '}'],
        };
        if let Self::Map(all) = self
            && all.len() < 6
            && all.iter().all(|it| matches!(it.1, Self::Bare(_) | Self::Text(_)))
        {
            (deeper, indent) = (String::from(" "), " ");
        }
        into.push(open);
        let mut first = true;
        let mut next = |into: &mut String| {
            if !std::mem::take(&mut first) {
                into.push(',');
            }
            into.push_str(&deeper);
        };
        match self {
            Self::List(all) => all.iter().for_each(|it| {
                next(into);
                it.write(into, &deeper);
            }),
            Self::Map(all) => all.iter().for_each(|(name, it)| {
                next(into);
                quote(into, name);
                into.push_str(": ");
                it.write(into, &deeper);
            }),
            _ => {}
        }
        into.push_str(indent);
        into.push(close);
    }
}

fn quote(into: &mut String, text: &str) {
    into.push('"');
    for it in text.chars() {
        match it {
            '"' | '\\' => into.extend(['\\', it]),
            '\n' => into.push_str("\\n"),
            '\t' => into.push_str("\\t"),
            // No other control stands in what is kept here; a blank does for it.
            it if it.is_control() => into.push(' '),
            it => into.push(it),
        }
    }
    into.push('"');
}

fn blank(text: &str) -> &str {
    past(text, |it| matches!(it, ' ' | '\t' | '\r' | '\n'))
}

fn value(text: &str, deep: usize) -> Option<(Json, &str)> {
    let text = blank(text);
    match text.chars().next()? {
        '"' => quoted(text).map(|(it, rest)| (Json::Text(it), rest)),
        '[' => several(text, ']', deep, value).map(|(it, rest)| (Json::List(it), rest)),
        '{' => several(text, '}', deep, named).map(|(it, rest)| (Json::Map(it), rest)),
        _ => {
            let end =
                place(text, |it| !it.is_ascii_alphanumeric() && !matches!(it, '.' | '+' | '-'));
            let (bare, rest) = cut(text, end.unwrap_or(text.len()));
            is_bare(bare).then(|| (Json::Bare(bare.to_owned()), rest))
        }
    }
}

fn named(text: &str, deep: usize) -> Option<((String, Json), &str)> {
    let (name, rest) = quoted(blank(text))?;
    let (value, rest) = value(blank(rest).strip_prefix(':')?, deep)?;
    Some(((name, value), rest))
}

/// The value that a text begins with, and what stands behind it.
pub(super) fn first(text: &str) -> Option<(Json, &str)> {
    value(text, DEEPEST)
}

fn several<T>(
    text: &str,
    close: char,
    deep: usize,
    one: fn(&str, usize) -> Option<(T, &str)>,
) -> Option<(Vec<T>, &str)> {
    let deep = deep.checked_sub(1)?;
    let mut rest = blank(from(text, 1));
    let mut all = Vec::new();
    if let Some(rest) = rest.strip_prefix(close) {
        return Some((all, rest));
    }
    loop {
        let (it, behind) = one(rest, deep)?;
        all.push(it);
        let behind = blank(behind);
        if let Some(rest) = behind.strip_prefix(close) {
            return Some((all, rest));
        }
        rest = behind.strip_prefix(',')?;
    }
}

/// A text between quotes, which `text` starts with.
fn quoted(text: &str) -> Option<(String, &str)> {
    let mut rest = text.strip_prefix('"')?.chars();
    let mut said = String::new();
    loop {
        match rest.next()? {
            '"' => return Some((said, rest.as_str())),
            '\\' => said.push(match rest.next()? {
                'b' => '\u{8}',
                'f' => '\u{c}',
                'n' => '\n',
                'r' => '\r',
                't' => '\t',
                'u' => {
                    let (unit, behind) = unit(rest.as_str())?;
                    rest = behind.chars();
                    let low = behind.strip_prefix("\\u").and_then(self::unit);
                    match (char::from_u32(unit), low) {
                        (Some(it), _) => it,
                        // Beyond the first plane two units make a letter.
                        (None, Some((low @ 0xdc00..0xe000, behind))) if unit < 0xdc00 => {
                            rest = behind.chars();
                            char::from_u32(0x10000 + ((unit - 0xd800) << 10) + (low - 0xdc00))?
                        }
                        _ => char::REPLACEMENT_CHARACTER,
                    }
                }
                it @ ('"' | '\\' | '/') => it,
                _ => return None,
            }),
            it if it < ' ' => return None,
            it => said.push(it),
        }
    }
}

/// Four digits of a letter's number.
fn unit(text: &str) -> Option<(u32, &str)> {
    let (digits, rest) = text.split_at_checked(4)?;
    let all = digits.chars().all(|it| it.is_ascii_hexdigit());
    all.then(|| u32::from_str_radix(digits, 16).ok()).flatten().map(|it| (it, rest))
}

fn is_bare(text: &str) -> bool {
    if matches!(text, "null" | "true" | "false") {
        return true;
    }
    let text = text.strip_prefix('-').unwrap_or(text);
    let (whole, rest) = digits(text);
    let rest = match rest.strip_prefix('.') {
        Some(rest) => Some(digits(rest)).filter(|it| it.0 > 0).map(|it| it.1),
        None => Some(rest),
    };
    let rest = rest.and_then(|rest| match rest.strip_prefix(['e', 'E']) {
        Some(rest) => {
            let rest = rest.strip_prefix(['+', '-']).unwrap_or(rest);
            Some(digits(rest)).filter(|it| it.0 > 0).map(|it| it.1)
        }
        None => Some(rest),
    });
    whole > 0 && (whole == 1 || !text.starts_with('0')) && rest == Some("")
}

fn digits(text: &str) -> (usize, &str) {
    let rest = past(text, |it| it.is_ascii_digit());
    (text.len() - rest.len(), rest)
}
