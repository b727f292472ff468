//! The order of a module's functions. It means nothing to whoever runs it; brotli, though, packs what is alike better when
//! it stands together: 4 kB on the wire.

use std::cmp::Reverse;

use crate::Outcome;
use crate::body::instructions;
use crate::wasm::{HEAD, Reader, imports, put, put_sized, sections};

/// A number up to here takes one byte: for the functions that are called most.
const SHORT: usize = 128;

struct Function<'a> {
    was: usize,
    of_type: usize,
    body: &'a [u8],
    /// Where in the body another function's number stands, and that number.
    names: Vec<(usize, usize)>,
    calls: usize,
}

/// The module with its functions in order: those that are called most, then by type and by what is in them.
pub fn ordered(wasm: &[u8]) -> Outcome<Vec<u8>> {
    put_in_order(wasm).ok_or_else(|| {
        "The functions of the page's wasm cannot be put in order: does it make use of an instruction that is new here?"
            .to_owned()
    })
}

fn put_in_order(wasm: &[u8]) -> Option<Vec<u8>> {
    let sections = sections(wasm)?;
    let section = |wanted: u8| sections.iter().find(|(id, _)| *id == wanted).map(|(_, it)| *it);
    let imported = section(2).map_or(Some(0), |it| Some(imports(it)?.1))?;
    let (mut types, mut bodies) = (Reader(section(3)?), Reader(section(10)?));
    let mut all = Vec::new();
    types.number()?;
    for at in 0..bodies.number()? {
        let (of_type, body) = (types.number()?, bodies.sized()?);
        let names = names(body)?;
        all.push(Function { was: imported + at, of_type, body, names, calls: 0 });
    }
    let called: Vec<usize> = all.iter().flat_map(|it| &it.names).map(|(_, named)| *named).collect();
    for named in called {
        if let Some(at) = named.checked_sub(imported) {
            all.get_mut(at)?.calls += 1;
        }
    }
    all.sort_by_key(|it| Reverse(it.calls));
    let most = SHORT.saturating_sub(imported).min(all.len());
    all.get_mut(most..)?.sort_by_key(|it| (it.of_type, it.body));

    let mut now: Vec<usize> = (0..imported + all.len()).collect();
    for (at, it) in all.iter().enumerate() {
        *now.get_mut(it.was)? = imported + at;
    }
    let mut out = HEAD.to_vec();
    // Custom ones say who made it, and nobody asks.
    for (id, body) in sections.iter().filter(|(id, _)| *id != 0) {
        let body = match id {
            3 => {
                let mut out = counted(&all);
                all.iter().for_each(|it| put(&mut out, it.of_type));
                out
            }
            7 => exports(body, &now)?,
            // The function that starts is not in use by wasm-bindgen's modules.
            8 => return None,
            9 => elements(body, &now)?,
            10 => {
                let mut out = counted(&all);
                for it in &all {
                    put_sized(&mut out, &renumbered(it, &now)?);
                }
                out
            }
            _ => body.to_vec(),
        };
        out.push(*id);
        put_sized(&mut out, &body);
    }
    Some(out)
}

fn counted(all: &[Function]) -> Vec<u8> {
    let mut out = Vec::new();
    put(&mut out, all.len());
    out
}

fn renumbered(function: &Function, now: &[usize]) -> Option<Vec<u8>> {
    let mut out = Vec::new();
    let mut rest = function.body;
    for (at, named) in &function.names {
        let mut it = Reader(rest);
        out.extend(it.take(at - (function.body.len() - rest.len()))?);
        it.skip(1)?;
        put(&mut out, *now.get(*named)?);
        rest = it.0;
    }
    out.extend(rest);
    Some(out)
}

fn exports(section: &[u8], now: &[usize]) -> Option<Vec<u8>> {
    let mut it = Reader(section);
    let count = it.number()?;
    let mut out = Vec::new();
    put(&mut out, count);
    for _ in 0..count {
        put_sized(&mut out, it.sized()?);
        let (kind, at) = (it.byte()?, it.number()?);
        out.push(kind);
        put(&mut out, if kind == 0 { *now.get(at)? } else { at });
    }
    Some(out)
}

/// The tables' functions: a list with its place, or one that is only there to be named.
fn elements(section: &[u8], now: &[usize]) -> Option<Vec<u8>> {
    let mut it = Reader(section);
    let count = it.number()?;
    let mut out = Vec::new();
    put(&mut out, count);
    for _ in 0..count {
        let kind = it.byte()?;
        out.push(kind);
        let before = it.0;
        match kind {
            0 => {
                it.byte().filter(|it| *it == 0x41)?;
                it.skip(1)?;
                it.byte().filter(|it| *it == 0x0b)?;
            }
            1 | 3 => drop(it.byte()?),
            _ => return None,
        }
        out.extend(before.get(..before.len() - it.0.len())?);
        let functions = it.number()?;
        put(&mut out, functions);
        for _ in 0..functions {
            put(&mut out, *now.get(it.number()?)?);
        }
    }
    it.0.is_empty().then_some(out)
}

/// Where a body names another function: in a call, or as a value.
fn names(body: &[u8]) -> Option<Vec<(usize, usize)>> {
    let all = instructions(body)?;
    let naming = all.iter().filter(|it| matches!(it.code, 0x10 | 0xd2));
    naming.map(|it| Some((it.at + 1, Reader(it.rest).number()?))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two types, one import; functions 1 (of type 1) and 2 (of type 0): 1 calls 2 and 0, 2 does nothing. 1 is exported
    /// and stands in the table.
    const MODULE: &[u8] = b"\0asm\x01\0\0\0\x01\x08\x02\x60\0\0\x60\x01\x7f\0\
        \x02\x07\x01\x01a\x01b\0\0\x03\x03\x02\x01\0\x07\x05\x01\x01f\0\x01\
        \x09\x07\x01\0\x41\0\x0b\x01\x01\x0a\x0b\x02\x06\0\x10\x02\x10\0\x0b\x02\0\x0b";

    #[test]
    fn whoever_is_called_most_comes_first_and_is_called_by_its_new_number() {
        let expected = b"\0asm\x01\0\0\0\x01\x08\x02\x60\0\0\x60\x01\x7f\0\
            \x02\x07\x01\x01a\x01b\0\0\x03\x03\x02\0\x01\x07\x05\x01\x01f\0\x02\
            \x09\x07\x01\0\x41\0\x0b\x01\x02\x0a\x0b\x02\x02\0\x0b\x06\0\x10\x01\x10\0\x0b";
        assert_eq!(ordered(MODULE), Ok(expected.to_vec()));
    }

    #[test]
    fn what_is_not_known_is_left_alone() {
        let mut unknown = MODULE.to_vec();
        let at = unknown.len() - 2;
        unknown[at] = 0xff;
        assert!(ordered(&unknown).is_err());
    }
}
