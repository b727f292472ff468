//! The page's wasm in the form in which it travels: what is alike stands together, so that whatever compresses the files of
//! a host finds it. `src/unpack.js` undoes it before the browser compiles.
//!
//! A number is LEB128 without a sign. A packed module is
//!
//! 1. the size of the wasm that reads the codes, and that wasm (`src/unpack.wat`);
//! 2. the module's size; the size of what stands before the bodies of its functions; the sizes of 256 streams;
//! 3. for each of 256 codes its form, then for each how many bytes it stands for, then for each its stream; then three
//!    tables of 256 bytes, of what the next code adds to the stream (the first is all 0); then the bytes that the codes
//!    stand for;
//! 4. what stands before the bodies; the streams. The second of these is the codes, from which all that follows is made.
//!
//! A code's form: in its lowest four bits how many bytes follow from its stream, or 15 for a number of any size; 16 for a
//! word of four bytes that is made of those, each from the next stream, as below; 32 times the number of the table that the
//! next code is looked up in; 128 where a function ends.
//!
//! A body is written without its size. A code is an instruction with whatever in it is hardly ever different (the
//! alignment, the type of a block), without its number. What does not fit is divided: the types of a call through a table
//! and its table, the ways of a jump, the declarations of locals. Data is words of text, and pointers with lengths behind
//! them, byte by byte in streams of their own.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::ops::Range;

use crate::body::{instructions, locals};
use crate::wasm::{HEAD, Reader, put, put_sized, segments};

/// A number of any size follows.
const NUMBER: u8 = 15;
/// A word of the data, by its bytes: a pointer, a length, a function's place in the table.
const WORD: u8 = 16;
const POINTER: u8 = WORD | 3;
const LENGTH: u8 = WORD | 2;
const PLACE: u8 = WORD | 4;
/// Pointers have three bytes.
const WIDEST: usize = 1 << 24;
/// The table that the next code is looked up in: for a local, for a constant.
const LOCAL: u8 = 32;
const CONSTANT: u8 = 64;
/// A function ends.
const END: u8 = 128;

/// What a code says.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Code {
    /// Codes of one role share their streams.
    role: Role,
    form: u8,
    bytes: Vec<u8>,
}

#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Role {
    Text,
    Plain,
    Pointer,
    Length,
    Read,
    Write,
    Constant,
    Load,
    Store,
    Call,
    Way,
    Ways,
    Global,
    Long,
    Float,
    Type,
    Locals,
    Place,
}

/// From this stream on there are those of constants.
const CONSTANTS: u8 = 128;
/// More bytes of constants than this are worth a stream.
const OFTEN: usize = 30;

/// The first of a role's streams: that of the codes is 1.
fn stream(role: Role) -> u8 {
    match role {
        Role::Text => 0,
        Role::Constant => CONSTANTS,
        it => it as u8 * 4,
    }
}

/// A code with what goes to its stream.
type Token = (Code, Vec<u8>);

/// The module in that form, with what reads its codes at the head; or a sentence that says why not.
pub fn pack(wasm: &[u8], reader: &[u8]) -> Result<Vec<u8>, &'static str> {
    if wasm.len() >= 1 << 21 {
        return Err("it is over 2 MiB");
    }
    let (before, bodies, after) = divided(wasm).ok_or("its sections are not those known here")?;
    let mut tokens = Vec::new();
    for body in bodies {
        function(body, &mut tokens).ok_or("it makes use of an instruction that is new here")?;
    }
    if data(after, &mut tokens).is_none() {
        // Of another form than this linker's.
        plain(after, &mut tokens);
    }
    let mut out = Vec::new();
    put_sized(&mut out, reader);
    write(wasm.len(), before, &tokens, &mut out)
        .ok_or("it has more than 256 sorts of instructions")?;
    Ok(out)
}

/// The functions' bodies.
type Bodies<'a> = Vec<&'a [u8]>;

/// The module up to the first body, the bodies, and what follows.
fn divided(wasm: &[u8]) -> Option<(&[u8], Bodies<'_>, &[u8])> {
    let mut it = Reader(wasm.strip_prefix(HEAD)?);
    while it.byte()? != 10 {
        it.sized()?;
    }
    let mut bodies = Vec::new();
    let mut section = Reader(it.sized()?);
    let after = it.0;
    let count = section.number()?;
    let before = wasm.len() - after.len() - section.0.len();
    for _ in 0..count {
        bodies.push(section.sized()?);
    }
    section.0.is_empty().then_some((wasm.get(..before)?, bodies, after))
}

/// A body as codes.
fn function(body: &[u8], tokens: &mut Vec<Token>) -> Option<()> {
    let code = |role, form, bytes: &[u8]| Code { role, form, bytes: bytes.to_vec() };
    let mut put = |code, number: &[u8]| tokens.push((code, number.to_vec()));
    let declared = locals(&mut Reader(body))?;
    let mut head = vec![u8::try_from(declared.len()).ok().filter(|it| *it < 0x80)?];
    for (count, of_type) in declared {
        put(code(Role::Locals, NUMBER, &head), count);
        head = vec![of_type];
    }
    put(code(Role::Locals, 0, &head), &[]);
    let all = instructions(body)?;
    let last = all.len().checked_sub(1)?;
    for (at, it) in all.iter().enumerate() {
        let role = match it.code {
            0x20 => Role::Read,
            0x21 | 0x22 => Role::Write,
            0x23..=0x26 => Role::Global,
            0x41 => Role::Constant,
            0x42 => Role::Long,
            0x44 => Role::Float,
            0x28..=0x35 => Role::Load,
            0x36..=0x3e => Role::Store,
            0x10 => Role::Call,
            0x0c | 0x0d => Role::Way,
            0x0e => Role::Ways,
            0x11 => Role::Type,
            _ => Role::Plain,
        };
        let more = match role {
            Role::Read => LOCAL | NUMBER,
            Role::Constant => CONSTANT | NUMBER,
            Role::Float => 8,
            _ => NUMBER,
        };
        match role {
            Role::Plain => {
                let mut bytes = vec![it.code];
                bytes.extend(it.rest);
                let end = if at == last { END } else { 0 };
                put(code(role, end, &bytes), &[]);
            }
            Role::Load | Role::Store => {
                let (align, offset) = number(it.rest)?;
                let mut bytes = vec![it.code];
                bytes.extend(align);
                put(code(role, more, &bytes), offset);
            }
            Role::Type => {
                let (of_type, table) = number(it.rest)?;
                put(code(role, more, &[it.code]), of_type);
                put(code(role, 0, table), &[]);
            }
            Role::Ways => {
                let (count, mut rest) = number(it.rest)?;
                put(code(role, more, &[it.code]), count);
                while !rest.is_empty() {
                    let (way, others) = number(rest)?;
                    put(code(role, more, &[]), way);
                    rest = others;
                }
            }
            _ => put(code(role, more, &[it.code]), it.rest),
        }
    }
    (all.last()?.code == 0x0b).then_some(())
}

/// The data, which is the last section. Nothing is added where it has another form.
fn data(section: &[u8], tokens: &mut Vec<Token>) -> Option<()> {
    let pieces = section.strip_prefix(&[11]).and_then(|it| Reader(it).sized())?;
    let segments = segments(pieces)?;
    let before = section.len() - pieces.len();
    let from = segments.first()?.0;
    let to = segments.last().map(|(address, _, size)| address + size).filter(|it| *it <= WIDEST)?;
    let mut done = 0;
    let (mut expected, mut place) = (0, 0);
    for (address, at, size) in segments {
        let at = before + at;
        let first = at + size.min(address.wrapping_neg() % 4);
        plain(section.get(done..first)?, tokens);
        let words = section.get(first..at + size)?.chunks_exact(4);
        done = at + size - words.remainder().len();
        let words: Vec<u32> =
            words.filter_map(|it| Some(u32::from_le_bytes(it.try_into().ok()?))).collect();
        let mut before = Role::Text;
        for (at, value) in words.iter().enumerate() {
            let value = *value;
            let (role, form, bytes) = match value {
                _ if (from..to).contains(&(value as usize)) => {
                    let more = value.wrapping_sub(expected);
                    expected = value;
                    (Role::Pointer, POINTER, more)
                }
                0..0x1_0000 if before == Role::Pointer => {
                    expected += value;
                    (Role::Length, LENGTH, value)
                }
                _ if value == place + 1 || value > place && table(words.get(at..)?) => {
                    let more = value - place;
                    place = value;
                    (Role::Place, PLACE, more)
                }
                _ => (Role::Text, 4, value),
            };
            let bytes = bytes.to_le_bytes().into_iter().take(usize::from(form & 15)).collect();
            tokens.push((Code { role, form, bytes: Vec::new() }, bytes));
            before = role;
        }
    }
    plain(section.get(done..)?, tokens);
    Some(())
}

/// Whether a trait's table may begin with these words: a function's place, a size, an alignment, another place.
fn table(words: &[u32]) -> bool {
    const PLACES: u32 = 0x1000;
    let [drop, size, align, method, ..] = words else { return false };
    *drop < PLACES
        && (1..PLACES).contains(method)
        && matches!(align, 1 | 4 | 8)
        && size % align == 0
}

/// Bytes as they are.
fn plain(bytes: &[u8], tokens: &mut Vec<Token>) {
    let code = Code { role: Role::Text, form: 1, bytes: Vec::new() };
    tokens.extend(bytes.iter().map(|it| (code.clone(), vec![*it])));
}

/// The first number's bytes and the rest.
fn number(bytes: &[u8]) -> Option<(&[u8], &[u8])> {
    let ends = bytes.iter().position(|it| *it < 0x80)?;
    bytes.split_at_checked(ends + 1)
}

/// What the next code adds to the stream of a local that is read.
fn local(next: &Code) -> u8 {
    match next.role {
        Role::Read => 1,
        Role::Constant => 2,
        Role::Load => 3,
        _ => 0,
    }
}

/// Brotli tells what follows by the classes of the two bytes before, and of each class is a range of bytes. These keep
/// apart what is followed by different things; 0.7 kB on the wire.
fn class(code: &Code) -> Range<usize> {
    match (code.role, code.bytes.first().copied().unwrap_or_default()) {
        (Role::Read, _) => 0..1,
        (Role::Constant, _) => 255..256,
        // Takes values and leaves none.
        (Role::Store, _) | (Role::Write, 0x21) => 1..16,
        (Role::Way, 0x0d) | (Role::Plain, 0x02 | 0x03 | 0x05 | 0x1a | 0xfc) => 1..16,
        // Comparisons.
        (Role::Plain, 0x45..=0x66) => 16..64,
        (Role::Plain, 0x0b) if code.form == END => 16..64,
        // Work with doubles, and with words of 64 bits.
        (Role::Float, _) | (Role::Write, _) | (Role::Load, 0x2b) => 240..255,
        (Role::Plain, 0x6c | 0x7c..=0x8a | 0x99..=0xa6) => 240..255,
        // Leaves a word.
        (Role::Load, 0x28 | 0x2c..=0x2f) | (Role::Global, 0x23) => 192..240,
        (Role::Plain, 0x1b | 0x67..=0x78 | 0xa7) => 192..240,
        // Goes elsewhere.
        (Role::Call | Role::Way | Role::Global | Role::Locals, _) => 128..192,
        (Role::Plain, 0x00 | 0x04 | 0x0b | 0x0f) => 128..192,
        _ => 64..128,
    }
}

/// A place for each code, those that are met most first; none where there are too many.
fn placed(tokens: &[Token]) -> Option<Vec<Option<&Code>>> {
    let mut counted: BTreeMap<&Code, usize> = BTreeMap::new();
    for (code, _) in tokens {
        *counted.entry(code).or_default() += 1;
    }
    let mut codes: Vec<(&Code, usize)> = counted.into_iter().collect();
    codes.sort_by_key(|(_, count)| Reverse(*count));
    let mut places = vec![None; 256];
    for (code, _) in codes {
        let mut all = class(code).chain(64..256).chain(0..64);
        let free = all.find(|at| places.get(*at).is_some_and(Option::is_none))?;
        *places.get_mut(free)? = Some(code);
    }
    Some(places)
}

fn write(size: usize, before: &[u8], tokens: &[Token], out: &mut Vec<u8>) -> Option<()> {
    let places = placed(tokens)?;
    let place = places.iter().zip(0..=255);
    let place: BTreeMap<&Code, u8> = place.filter_map(|(it, at)| Some(((*it)?, at))).collect();
    let codes = tokens.iter().map(|(it, _)| place.get(it).copied());
    let codes: Vec<u8> = codes.collect::<Option<_>>()?;

    // Constants before a code that many stand before have a stream of their own.
    let mut constants = [0; 256];
    for (next, (code, number)) in codes.iter().skip(1).zip(tokens) {
        let more = if code.role == Role::Constant { number.len() } else { 0 };
        *constants.get_mut(usize::from(*next))? += more;
    }
    let mut near = [[0; 256], [0; 256], [0; 256]];
    let [_, locals, numbers] = &mut near;
    let mut often = 0;
    for (at, code) in places.iter().enumerate() {
        *locals.get_mut(at)? = code.map_or(0, local);
        if *constants.get(at)? > OFTEN && often < 255 - CONSTANTS {
            often += 1;
            *numbers.get_mut(at)? = often;
        }
    }

    let mut streams = vec![Vec::new(); 256];
    for (at, (code, number)) in tokens.iter().enumerate() {
        let table = near.get(usize::from(code.form >> 5 & 3))?;
        let next = codes.get(at + 1).map_or(0, |it| usize::from(*it));
        let stream = usize::from(stream(code.role) + *table.get(next)?);
        for (at, byte) in number.iter().enumerate() {
            let apart = if code.form & WORD == 0 { 0 } else { at };
            streams.get_mut(stream + apart)?.push(*byte);
        }
    }
    *streams.get_mut(1)? = codes;

    put(out, size);
    put(out, before.len());
    streams.iter().for_each(|it| put(out, it.len()));
    let known = |of: &dyn Fn(&Code) -> u8| places.iter().map(|it| it.map_or(0, of)).collect();
    let (forms, longs, whence): (Vec<u8>, Vec<u8>, Vec<u8>) =
        (known(&|it| it.form), known(&|it| it.bytes.len() as u8), known(&|it| stream(it.role)));
    for table in [forms, longs, whence] {
        out.extend(table);
    }
    out.extend(near.as_flattened());
    places.iter().flatten().for_each(|it| out.extend(&it.bytes));
    out.extend(before);
    streams.iter().for_each(|it| out.extend(it));
    Some(())
}
