//! What the page's wasm can do without and no optimizer may drop by itself: the words and the ways of a panic, what stands
//! in tables for callers that are gone, and the places in the source that a panic would name.
//!
//! A panic on the page ends in `unreachable` either way (`panic = "abort"`), which the browser raises as a RuntimeError
//! and `boot.js` answers with the rescue panel. So the functions that lead there become that one instruction; wasm-opt
//! then drops what was made ready for them at every call. A page without wasm-opt is not hollowed out: there, and in
//! `cargo xtask serve`, a panic still says in the console what it was.

use std::collections::{BTreeMap, BTreeSet};

use crate::Outcome;
use crate::wasm::{HEAD, Reader, imports, put, put_sized, sections, segments};

/// Parts of the names of functions that are not reached on a page that lives. A name that is not there any more breaks
/// nothing, only its bytes come back; the build prints how many there were.
const NEVER: [&str; 25] = [
    // Where every panic comes through, and what only panics ask.
    "core::panicking::",
    "std::panicking::panic",
    "std::panicking::begin_panic",
    "std::panicking::rust_panic",
    "::rust_begin_unwind",
    "::rust_panic",
    "::__rust_end_short_backtrace",
    "::slice_index_fail",
    "::slice_error_fail",
    "::len_mismatch_fail",
    "::unwrap_failed",
    "::expect_failed",
    "::assert_failed",
    "::panic_already_borrowed",
    "::panic_already_mutably_borrowed",
    "::panic_on_ord_violation",
    "::panic_poisoned",
    "::panic_access_error",
    "wasm_bindgen::__rt::borrow_fail",
    // No memory left.
    "raw_vec::capacity_overflow",
    "raw_vec::handle_error",
    "::handle_alloc_error",
    "::__rust_alloc_error_handler",
    "std::alloc::rust_oom",
    // What is printed for programmers, nowhere but in panics.
    " as core::fmt::Debug>::fmt",
];

/// The same for Torpor alone: another page may need them.
const NEVER_IN_TORPOR: [&str; 7] = [
    // Our own words for a panic.
    "torpor::main::{{closure}}",
    "torpor::view::live::gone",
    // Streams and promises that a crate below hands to scripts; the classes for that are left out of ours (`glue.rs`).
    "wasm_streams::",
    "futures_util::",
    "futures_core::",
    "js_sys::futures::",
    "server_fn::",
];

/// Its way of printing a day for people is that for programmers.
const BUT: &str = "chrono::";

const TRAP: [u8; 3] = [0, 0x00, 0x0b];

/// A place in the source as a panic holds it: where its path is, how long that is, line and column.
const PLACE: usize = 16;

/// What came of it.
pub struct Hollow {
    pub wasm: Vec<u8>,
    /// How many functions were replaced.
    pub functions: usize,
    /// How many places in the source were wiped out.
    pub places: usize,
}

/// Hollows a module out that still has its names: Torpor's, or another page's.
pub fn hollow(wasm: &[u8], torpor: bool) -> Outcome<Hollow> {
    let broken = || "The page's wasm cannot be read; build it again.".to_owned();
    let sections = sections(wasm).ok_or_else(broken)?;
    let mut imported = 0;
    let mut names = BTreeMap::new();
    for (id, body) in &sections {
        match id {
            0 => names.append(&mut function_names(body).unwrap_or_default()),
            2 => imported = imports(body).ok_or_else(broken)?.1,
            _ => {}
        }
    }
    let mut all = Hollow { wasm: HEAD.to_vec(), functions: 0, places: 0 };
    for (id, body) in sections {
        let body = match id {
            10 => bodies(body, imported, &names, torpor, &mut all.functions).ok_or_else(broken)?,
            11 => data(body, &mut all.places).ok_or_else(broken)?,
            _ => body.to_vec(),
        };
        all.wasm.push(id);
        put_sized(&mut all.wasm, &body);
    }
    Ok(all)
}

/// The functions' names, where a custom section holds them.
pub fn function_names(section: &[u8]) -> Option<BTreeMap<usize, String>> {
    let mut it = Reader(section);
    let mut names = BTreeMap::new();
    if it.text()? == "name" {
        while !it.0.is_empty() {
            let (functions, body) = (it.byte()? == 1, it.sized()?);
            let mut it = Reader(body);
            for _ in 0..if functions { it.number()? } else { 0 } {
                names.insert(it.number()?, it.text()?);
            }
        }
    }
    Some(names)
}

fn bodies(
    section: &[u8],
    imported: usize,
    names: &BTreeMap<usize, String>,
    torpor: bool,
    replaced: &mut usize,
) -> Option<Vec<u8>> {
    let mut it = Reader(section);
    let count = it.number()?;
    let mut all = Vec::new();
    put(&mut all, count);
    for at in imported..imported + count {
        let mut body = it.sized()?;
        if names.get(&at).is_some_and(|it| never(it, torpor)) {
            body = &TRAP;
            *replaced += 1;
        }
        put_sized(&mut all, body);
    }
    Some(all)
}

/// Whether a function of this name is not reached.
fn never(name: &str, torpor: bool) -> bool {
    let mut plain = String::new();
    // A crate's name may have its hash in brackets behind it: core[c5930c85a12de822]::panicking.
    for (at, part) in name.split('[').enumerate() {
        let rest = part.split_once(']').filter(|(hash, _)| {
            at > 0 && hash.len() == 16 && hash.bytes().all(|it| it.is_ascii_hexdigit())
        });
        match rest {
            Some((_, rest)) => plain.push_str(rest),
            None if at > 0 => {
                plain.push('[');
                plain.push_str(part);
            }
            None => plain.push_str(part),
        }
    }
    let ours = if torpor { &NEVER_IN_TORPOR[..] } else { &[] };
    NEVER.iter().chain(ours).any(|it| plain.contains(it)) && !plain.contains(BUT)
}

/// The data with zeros for the places in the source, which cost next to nothing on the wire. Only a record whose path is
/// a whole source file's, with a line and a column that can be, is taken for one.
fn data(section: &[u8], wiped: &mut usize) -> Option<Vec<u8>> {
    let mut all = section.to_vec();
    let Some(segments) = segments(section) else { return Some(all) };
    let mut paths = BTreeSet::new();
    for (address, at, size) in &segments {
        let first = (4 - address % 4) % 4;
        for at in (*at + first..at + size).step_by(4).take_while(|it| it + PLACE <= at + size) {
            let word = |place: usize| -> Option<usize> {
                let bytes = section.get(at + 4 * place..at + 4 * place + 4)?;
                usize::try_from(u32::from_le_bytes(bytes.try_into().ok()?)).ok()
            };
            let (path, long, line, column) = (word(0)?, word(1)?, word(2)?, word(3)?);
            let known = (1..20_000).contains(&line) && (1..400).contains(&column);
            let Some(path) = segments.iter().filter(|_| known).find_map(|(address, at, size)| {
                let from = path.checked_sub(*address)?;
                let to = from.checked_add(long).filter(|it| it <= size)?;
                let it = std::str::from_utf8(section.get(at + from..at + to)?).ok()?;
                is_source(it).then_some((at + from, at + to))
            }) else {
                continue;
            };
            paths.insert(path);
            all.get_mut(at..at + PLACE)?.fill(0);
            *wiped += 1;
        }
    }
    for (from, to) in paths {
        all.get_mut(from..to)?.fill(0);
    }
    Some(all)
}

fn is_source(path: &str) -> bool {
    let known = |it: u8| it.is_ascii_alphanumeric() || b"/._-+\\:".contains(&it);
    path.ends_with(".rs") && path.contains("src") && path.bytes().all(known)
}
