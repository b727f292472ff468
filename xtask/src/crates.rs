//! What of the page's code is of which crate, told by the names of functions. wasm-bindgen still has these names; what runs
//! after it has not, so these are shares of what the compiler made, not of what travels.

use std::collections::{BTreeMap, HashMap};

use crate::hollow::function_names;
use crate::wasm::{Reader, imports, sections};

/// Bytes of code by crate, most first; none where the module cannot be read or has no names.
pub fn by_crate(wasm: &[u8]) -> Option<Vec<(String, usize)>> {
    let (mut imported, mut names, mut code) = (0, BTreeMap::new(), None);
    for (id, body) in sections(wasm)? {
        match id {
            0 => names.append(&mut function_names(body).unwrap_or_default()),
            2 => imported = imports(body)?.1,
            10 => code = Some(body),
            _ => {}
        }
    }
    if names.is_empty() {
        return None;
    }
    let mut it = Reader(code?);
    let mut sums: HashMap<String, usize> = HashMap::new();
    for at in imported..imported + it.number()? {
        let name = names.get(&at).and_then(|it| crate_of(it)).unwrap_or("no name");
        *sums.entry(name.to_owned()).or_default() += it.sized()?.len();
    }
    let mut sums: Vec<_> = sums.into_iter().collect();
    sums.sort_by(|one, other| other.1.cmp(&one.1).then_with(|| one.0.cmp(&other.0)));
    Some(sums)
}

/// The crate in whose source a function stands: the first path of its name, or of what it implements a trait for, or of the
/// trait where that is for any type.
fn crate_of(name: &str) -> Option<&str> {
    let is_word = |it: char| it.is_ascii_alphanumeric() || it == '_';
    let mut rest = name;
    while let Some(start) = rest.find(is_word) {
        let from = &rest[start..];
        let (word, behind) = from.split_at(from.find(|it| !is_word(it)).unwrap_or(from.len()));
        // Behind a crate's name its hash may stand in brackets.
        let hash = behind.strip_prefix('[').and_then(|it| it.split_once(']'));
        let leads_on = hash.map_or(behind, |(_, it)| it).starts_with("::");
        if leads_on && word.starts_with(|first: char| first.is_ascii_lowercase() || first == '_') {
            return Some(word);
        }
        rest = behind;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wasm::{HEAD, put_sized};

    #[test]
    fn a_name_tells_its_crate() {
        for (name, expected) in [
            ("torpor::view::page::Page::open::h0123456789abcdef", Some("torpor")),
            ("core[c5930c85a12de822]::fmt::write", Some("core")),
            ("<torpor::entry::Entry as core::clone::Clone>::clone", Some("torpor")),
            ("<&mut T as core::fmt::Write>::write_str", Some("core")),
            ("<[chrono::naive::NaiveDate] as alloc::slice::Own>::own", Some("chrono")),
            ("<F as wasm_bindgen::closure::Into>::call", Some("wasm_bindgen")),
            ("core::ptr::drop_in_place<torpor::plan::Panel>", Some("core")),
            ("main", None),
            ("__wbindgen_malloc", None),
        ] {
            assert_eq!(crate_of(name), expected, "{name}");
        }
    }

    /// Two functions of one crate and one without a name, of 4, 5 and 3 bytes.
    #[test]
    fn bytes_are_added_up() {
        let mut wasm = HEAD.to_vec();
        wasm.push(10);
        put_sized(&mut wasm, b"\x03\x04abcd\x05abcde\x03abc");
        let mut names = vec![2];
        for (at, name) in [(0, "one::a"), (1, "<one::b as two::C>::d")] {
            names.push(at);
            put_sized(&mut names, name.as_bytes());
        }
        let mut section = b"\x04name\x01".to_vec();
        put_sized(&mut section, &names);
        wasm.push(0);
        put_sized(&mut wasm, &section);
        let expected = vec![("one".to_owned(), 9), ("no name".to_owned(), 3)];
        assert_eq!(by_crate(&wasm), Some(expected));
        assert_eq!(by_crate(HEAD), None);
    }
}
