//! What only a panic would have said: sentences in the data that nothing points at any more, once what leads to a panic is
//! hollowed out and wasm-opt has dropped what was made ready for it. No optimizer drops them, as it cannot tell where one ends;
//! the compiler could, and whatever it pointed at begins where another ends. 0.5 kB on the wire.

use std::collections::BTreeSet;

use crate::Outcome;
use crate::body::instructions;
use crate::types::signed;
use crate::wasm::{HEAD, Reader, put_sized, sections, segments};

/// An optimizer may point somewhere before or behind what is meant, and add the rest later. All that is as near as this to
/// where only it points stays as it is.
const NEAR: usize = 1024;

/// Fewer letters are no sentence, but a table of letters perhaps, in which places are counted.
const LETTERS: usize = 10;

/// The module that is left with zeros for such sentences, and how many there were; before it was hollowed out it was `whole`.
pub fn silent(whole: &[u8], left: &[u8]) -> Outcome<(Vec<u8>, usize)> {
    silenced(whole, left).ok_or_else(|| {
        "What the page's wasm points at cannot be told: does it make use of an instruction that is new here?"
            .to_owned()
    })
}

fn silenced(whole: &[u8], left: &[u8]) -> Option<(Vec<u8>, usize)> {
    let (before, now) = (pointed(whole)?, pointed(left)?);
    let moved: BTreeSet<usize> = now.difference(&before).copied().collect();
    let mut out = HEAD.to_vec();
    let mut count = 0;
    for (id, body) in sections(left)? {
        let mut body = body.to_vec();
        if id == 11 {
            for (from, at, size) in segments(&body).unwrap_or_default() {
                let ends = before.range(from..from + size).skip(1).copied().chain([from + size]);
                for (begins, ends) in before.range(from..from + size).zip(ends) {
                    let near = begins.saturating_sub(NEAR)..ends + NEAR;
                    let it = body.get_mut(at + begins - from..at + ends - from)?;
                    if !now.contains(begins) && moved.range(near).next().is_none() && said(it) {
                        it.fill(0);
                        count += 1;
                    }
                }
            }
        }
        out.push(id);
        put_sized(&mut out, &body);
    }
    Some((out, count))
}

/// Every number in a module that could be where something in its data begins, or near it.
fn pointed(wasm: &[u8]) -> Option<BTreeSet<usize>> {
    let sections = sections(wasm)?;
    let section = |wanted: u8| sections.iter().find(|(id, _)| *id == wanted).map(|(_, it)| *it);
    let data = section(11)?;
    let segments = segments(data)?;
    let from = segments.first()?.0;
    let to = segments.last().map(|(address, _, size)| address + size)?;
    let mut all = BTreeSet::new();
    let mut code = Reader(section(10)?);
    for _ in 0..code.number()? {
        for it in instructions(code.sized()?)? {
            let mut rest = Reader(it.rest);
            match it.code {
                0x41 => drop(all.insert(rest.number()?)),
                // Two in one.
                0x42 => {
                    let both = signed(it.rest) as u64;
                    all.extend([both as u32 as usize, (both >> 32) as usize]);
                }
                0x28..=0x3e => {
                    rest.number()?;
                    all.insert(rest.number()?);
                }
                _ => {}
            }
        }
    }
    for (address, at, size) in segments {
        let first = at + size.min(address.wrapping_neg() % 4);
        for word in data.get(first..at + size)?.chunks_exact(4) {
            all.insert(u32::from_le_bytes(word.try_into().ok()?) as usize);
        }
    }
    Some(all.range(from.saturating_sub(NEAR)..to + NEAR).copied().collect())
}

/// Whether these bytes are a sentence, as it is or in the parts of a `format!`.
fn said(bytes: &[u8]) -> bool {
    let letters = bytes.iter().filter(|it| it.is_ascii_lowercase() || **it == b' ').count();
    letters >= LETTERS && letters * 10 >= bytes.len() * 6
}

#[cfg(test)]
mod tests {
    use super::*;

    const DATA: &[u8] = b"what is said on the pagewhat is said of a faulttable of numbers, here";

    /// A module with one function, which has these numbers; the data begins at 4096.
    fn module(numbers: &[usize]) -> Vec<u8> {
        let mut body = vec![0];
        for number in numbers {
            // In two bytes, without a sign: up to 8191.
            body.extend([0x41, (number & 0x7f) as u8 | 0x80, (number >> 7) as u8, 0x1a]);
        }
        body.push(0x0b);
        let mut code = vec![1];
        put_sized(&mut code, &body);
        let mut data = b"\x01\0\x41\x80\x20\x0b".to_vec();
        put_sized(&mut data, DATA);
        let mut out = HEAD.to_vec();
        for (id, body) in [(10, code), (11, data)] {
            out.push(id);
            put_sized(&mut out, &body);
        }
        out
    }

    fn left(numbers: &[usize]) -> Outcome<(String, usize)> {
        let (wasm, count) = silent(&module(&[4096, 4120, 4143]), &module(numbers))?;
        Ok((String::from_utf8_lossy(&wasm[wasm.len() - DATA.len()..]).into_owned(), count))
    }

    #[test]
    fn only_what_nothing_points_at_any_more_is_gone() -> Outcome {
        let (text, count) = left(&[4096, 4143])?;
        assert_eq!(count, 1);
        let gone = "what is said on the page\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0table of numbers, here";
        assert_eq!(text, gone);
        assert_eq!(left(&[4096, 4120, 4143])?.1, 0);
        Ok(())
    }

    #[test]
    fn what_an_optimizer_points_near_to_stays() -> Outcome {
        assert_eq!(left(&[4096, 4143, 4200])?.1, 0);
        Ok(())
    }

    #[test]
    fn a_table_is_no_sentence() {
        assert!(said(b"\x12range start index \xc0\" out of range\0"));
        for table in [&b"0123456789abcdef"[..], b"abc def", &[16, 0, 0, 0, 17, 0, 0, 0]] {
            assert!(!said(table));
        }
    }
}
