//! The numbers by which a type is told from others. The compiler makes them of all that a type is: sixteen bytes that
//! nothing packs, in the data and wherever a value is asked whether it is of that type. Here they become 1, 2, 3 …; they are
//! compared and nothing else, so only whether two are the same means anything. 1.4 kB on the wire.

use std::collections::BTreeMap;

use crate::Outcome;
use crate::body::instructions;
use crate::hollow::function_names;
use crate::wasm::{HEAD, Reader, imports, put, put_sized, sections, segments};

/// Part of the name of a function that gives a type's number.
const GIVES: &str = "any::Any>::type_id";

/// The bytes of half a number: it is asked for in halves.
const HALF: usize = 8;

/// A module that still has its names, with small numbers for its types; how many there are.
pub fn numbered(wasm: &[u8]) -> Outcome<(Vec<u8>, usize)> {
    renumbered(wasm).ok_or_else(|| {
        "The numbers of the types in the page's wasm cannot be told: does it make use of an instruction that is new here?"
            .to_owned()
    })
}

fn renumbered(wasm: &[u8]) -> Option<(Vec<u8>, usize)> {
    let sections = sections(wasm)?;
    let section = |wanted: u8| sections.iter().find(|(id, _)| *id == wanted).map(|(_, it)| *it);
    let imported = section(2).map_or(Some(0), |it| Some(imports(it)?.1))?;
    let named = sections.iter().filter(|(id, _)| *id == 0);
    let names: BTreeMap<usize, String> =
        named.filter_map(|(_, it)| function_names(it)).flatten().collect();
    let (mut data, places) = match section(11) {
        Some(it) => (it.to_vec(), segments(it).unwrap_or_default()),
        None => Default::default(),
    };
    let mut bodies = Vec::new();
    let mut code = Reader(section(10)?);
    for _ in 0..code.number()? {
        bodies.push(code.sized()?);
    }

    // By what half of a number was, what it becomes. That other bytes are the same by chance is not to be feared: a half
    // has 64 bits.
    let mut now = BTreeMap::new();
    let mut given = BTreeMap::new();
    let mut types = 0;
    for (body, at) in bodies.iter().zip(imported..) {
        if !names.get(&at).is_some_and(|it| it.contains(GIVES)) {
            continue;
        }
        let mut halves = Vec::new();
        for it in instructions(body)?.iter().filter(|it| it.code == 0x29) {
            let mut rest = Reader(it.rest);
            rest.number()?;
            halves.extend(place(&places, rest.number()?));
        }
        // Of another form than this compiler's, it keeps its number.
        if let [one, other] = halves[..] {
            types += 1;
            given.insert(at, types);
            for at in [one, other] {
                let half = data.get_mut(at..at + HALF)?;
                now.insert(<[u8; HALF]>::try_from(&*half).ok()?, types);
            }
        }
    }
    for at in 0..data.len().saturating_sub(HALF - 1) {
        let half = data.get_mut(at..at + HALF)?;
        if let Some(number) = now.get(&<[u8; HALF]>::try_from(&*half).ok()?) {
            half.copy_from_slice(&u64::to_le_bytes(*number));
        }
    }

    let mut out = HEAD.to_vec();
    for (id, body) in &sections {
        out.push(*id);
        match id {
            10 => {
                let mut code = Vec::new();
                put(&mut code, bodies.len());
                for (body, at) in bodies.iter().zip(imported..) {
                    let number = given.get(&at);
                    put_sized(&mut code, &asking(body, &now, number)?);
                }
                put_sized(&mut out, &code);
            }
            11 => put_sized(&mut out, &data),
            _ => put_sized(&mut out, body),
        }
    }
    Some((out, usize::try_from(types).ok()?))
}

/// Where in the section of data the half at an address stands.
fn place(segments: &[(usize, usize, usize)], address: usize) -> Option<usize> {
    segments.iter().find_map(|(from, at, size)| {
        let place = address.checked_sub(*from)?;
        (place + HALF <= *size).then_some(at + place)
    })
}

/// A body with the small numbers where it asks for a type.
fn asking(body: &[u8], now: &BTreeMap<[u8; HALF], u64>, gives: Option<&u64>) -> Option<Vec<u8>> {
    let mut out = Vec::new();
    let mut done = 0;
    for it in &instructions(body)? {
        let number = match it.code {
            0x42 => now.get(&signed(it.rest).to_le_bytes()),
            0x29 => gives,
            _ => None,
        };
        if let Some(number) = number {
            out.extend(body.get(done..it.at)?);
            if it.code == 0x29 {
                // Instead of the address.
                out.push(0x1a);
            }
            out.push(0x42);
            // One zero bit more than the number has, for its sign.
            let mut number = *number;
            while number > 0x3f {
                out.push((number & 0x7f) as u8 | 0x80);
                number >>= 7;
            }
            out.push(number as u8);
            done = it.at + 1 + it.rest.len();
        }
    }
    out.extend(body.get(done..)?);
    Some(out)
}

/// A number with a sign.
pub fn signed(bytes: &[u8]) -> i64 {
    let mut number = 0;
    let mut shift = 0;
    for byte in bytes {
        number |= i64::from(byte & 0x7f) << shift;
        shift += 7;
    }
    let negative = bytes.last().is_some_and(|it| it & 0x40 != 0);
    if negative && shift < 64 { number | -1 << shift } else { number }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ONE: u64 = 0x8123_4567_89ab_cdef;
    const OTHER: u64 = 0x7edc_ba98_7654_3210;

    /// Two functions: one of the name gives the number of a type, which stands in the data at 8; the other asks for it.
    fn module(name: &[u8]) -> Vec<u8> {
        let ask = |half: u64| {
            let mut out = vec![0x42];
            let mut left = half as i64;
            for _ in 0..9 {
                out.push(left as u8 | 0x80);
                left >>= 7;
            }
            out.push(left as u8 & 0x7f);
            out
        };
        let gives = b"\0\x41\0\x29\x03\x08\x1a\x41\0\x29\x03\x10\x1a\x0b";
        let asks =
            [b"\0", &ask(ONE)[..], b"\x1a", &ask(OTHER), b"\x1a", &ask(5), b"\x1a\x0b"].concat();
        let mut code = vec![2];
        put_sized(&mut code, gives);
        put_sized(&mut code, &asks);
        let mut data = b"\x01\0\x41\0\x0b".to_vec();
        let bytes = [b"before..", &ONE.to_le_bytes()[..], &OTHER.to_le_bytes(), b"after"].concat();
        put_sized(&mut data, &bytes);
        let mut names = vec![1, 0];
        put_sized(&mut names, name);
        let mut custom = b"\x04name\x01".to_vec();
        put_sized(&mut custom, &names);
        let mut out = b"\0asm\x01\0\0\0\x01\x04\x01\x60\0\0\x03\x03\x02\0\0".to_vec();
        for (id, body) in [(10, code), (11, data), (0, custom)] {
            out.push(id);
            put_sized(&mut out, &body);
        }
        out
    }

    #[test]
    fn a_type_has_one_small_number_wherever_it_is_told_or_asked_for() -> Outcome {
        let (wasm, types) = numbered(&module(b"<T as core::any::Any>::type_id::h0"))?;
        assert_eq!(types, 1);
        let section = |wanted| {
            let all = sections(&wasm).unwrap_or_default();
            all.iter().find(|(id, _)| *id == wanted).map(|(_, it)| it.to_vec()).unwrap_or_default()
        };
        let gives = b"\x0e\0\x41\0\x1a\x42\x01\x1a\x41\0\x1a\x42\x01\x1a\x0b";
        let asks = b"\0\x42\x01\x1a\x42\x01\x1a\x42\x85\x80\x80\x80\x80\x80\x80\x80\x80\0\x1a\x0b";
        let mut code = [b"\x02", &gives[..]].concat();
        put_sized(&mut code, asks);
        assert_eq!(section(10), code);
        let data = [b"\x01\0\x41\0\x0b\x1dbefore..", &1u64.to_le_bytes()[..], &1u64.to_le_bytes()];
        assert_eq!(section(11), [&data.concat()[..], b"after"].concat());
        Ok(())
    }

    #[test]
    fn a_number_that_no_type_has_stays() -> Outcome {
        let other = module(b"<T as core::any::Other>::number");
        assert_eq!(numbered(&other)?, (other, 0));
        Ok(())
    }
}
