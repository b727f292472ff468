//! The page's wasm in the form in which it travels: what is alike stands together, so that whatever compresses the files of
//! a host finds it. `src/unpack.js` undoes it before the browser compiles.
//!
//! A number is LEB128 without a sign. A packed module is
//!
//! 1. the module's size; the size of what stands before the bodies of its functions; the sizes of 256 streams;
//! 2. for each of 256 codes its form, then for each how many bytes it stands for, then for each its stream; then three
//!    tables of 256 bytes, of what the next code adds to the stream (the first is all 0); then the bytes that the codes
//!    stand for;
//! 3. what stands before the bodies; the streams. The second of these is the codes, from which all that follows is made.
//!
//! A code's form: in its lowest four bits how many bytes follow from its stream, or 15 for a number of any size; 16 where
//! each of those has the next stream; 32 times the number of the table that the next code is looked up in; 128 where a
//! function ends.
//!
//! A body is written without its size. A code is an instruction with whatever in it is hardly ever different (the
//! alignment, the type of a block), without its number. What does not fit is divided: the types of a call through a table
//! and its table, the ways of a jump, the declarations of locals. Data is words of text, and pointers with lengths behind
//! them, byte by byte in streams of their own.

use std::collections::BTreeMap;

use crate::body::{instructions, locals};
use crate::wasm::{HEAD, Reader, put};

/// A number of any size follows.
const NUMBER: u8 = 15;
/// Each byte has a stream of its own.
const APART: u8 = 16;
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
    /// What is no stream's, and in its place the stream of the codes.
    Plain,
    Pointer,
    Length,
    Read,
    Write,
    Constant,
    Load,
    LoadMore,
    Store,
    StoreMore,
    Call,
    Way,
    Ways,
    Global,
    Long,
    Float,
    Type,
    Locals,
}

/// A code with what goes to its stream.
type Token<'a> = (Code, &'a [u8]);

/// The module in that form, or a sentence that says why not.
pub fn pack(wasm: &[u8]) -> Result<Vec<u8>, &'static str> {
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
    write(wasm.len(), before, &tokens).ok_or("it has more than 256 sorts of instructions")
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
fn function<'a>(body: &'a [u8], tokens: &mut Vec<Token<'a>>) -> Option<()> {
    let code = |role, form, bytes: &[u8]| Code { role, form, bytes: bytes.to_vec() };
    let declared = locals(&mut Reader(body))?;
    let mut head = vec![u8::try_from(declared.len()).ok().filter(|it| *it < 0x80)?];
    for (count, of_type) in declared {
        tokens.push((code(Role::Locals, NUMBER, &head), count));
        head = vec![of_type];
    }
    tokens.push((code(Role::Locals, 0, &head), &[]));
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
            0x28 => Role::Load,
            0x29..=0x35 => Role::LoadMore,
            0x36 => Role::Store,
            0x37..=0x3e => Role::StoreMore,
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
                tokens.push((code(role, end, &bytes), &[]));
            }
            Role::Load | Role::LoadMore | Role::Store | Role::StoreMore => {
                let (align, offset) = number(it.rest)?;
                let mut bytes = vec![it.code];
                bytes.extend(align);
                tokens.push((code(role, more, &bytes), offset));
            }
            Role::Type => {
                let (of_type, table) = number(it.rest)?;
                tokens.push((code(role, more, &[it.code]), of_type));
                tokens.push((code(role, 0, table), &[]));
            }
            Role::Ways => {
                let (count, mut rest) = number(it.rest)?;
                tokens.push((code(role, more, &[it.code]), count));
                while !rest.is_empty() {
                    let (way, others) = number(rest)?;
                    tokens.push((code(role, more, &[]), way));
                    rest = others;
                }
            }
            _ => tokens.push((code(role, more, &[it.code]), it.rest)),
        }
    }
    (all.last()?.code == 0x0b).then_some(())
}

/// The data, which is the last section. Nothing is added where it has another form.
fn data<'a>(section: &'a [u8], tokens: &mut Vec<Token<'a>>) -> Option<()> {
    let mut it = Reader(section);
    it.byte().filter(|it| *it == 11)?;
    it.number()?;
    let mut segments = Vec::new();
    for _ in 0..it.number()? {
        // Active, at an address known now.
        it.take(2).filter(|it| *it == [0, 0x41])?;
        let address = it.number()?;
        it.byte()?;
        let size = it.number()?;
        let at = section.len() - it.0.len();
        it.take(size)?;
        segments.push((address, at, size));
    }
    it.0.is_empty().then_some(())?;
    let from = segments.first()?.0;
    let to = segments.last().map(|(address, _, size)| address + size)?;
    let mut done = 0;
    for (address, at, size) in segments {
        let first = at + size.min(address.wrapping_neg() % 4);
        plain(section.get(done..first)?, tokens);
        let mut before = Role::Text;
        let words = section.get(first..at + size)?.chunks_exact(4);
        done = at + size - words.remainder().len();
        for word in words {
            let value = u32::from_le_bytes(word.try_into().ok()?) as usize;
            let (role, form) = match value {
                _ if (from..to).contains(&value) => (Role::Pointer, 4 | APART),
                0..0x1_0000 if before == Role::Pointer => (Role::Length, 4 | APART),
                _ => (Role::Text, 4),
            };
            tokens.push((Code { role, form, bytes: Vec::new() }, word));
            before = role;
        }
    }
    plain(section.get(done..)?, tokens);
    Some(())
}

/// Bytes as they are.
fn plain<'a>(bytes: &'a [u8], tokens: &mut Vec<Token<'a>>) {
    let code = Code { role: Role::Text, form: 1, bytes: Vec::new() };
    tokens.extend(bytes.chunks(1).map(|it| (code.clone(), it)));
}

/// The first number's bytes and the rest.
fn number(bytes: &[u8]) -> Option<(&[u8], &[u8])> {
    let ends = bytes.iter().position(|it| *it < 0x80)?;
    bytes.split_at_checked(ends + 1)
}

/// What a neighbor adds to a stream; what is rare shares the first.
fn add(table: u8, neighbor: &Code, at: usize, often: bool) -> u8 {
    let first = neighbor.bytes.first().copied().unwrap_or_default();
    match table {
        LOCAL => match (neighbor.role, first) {
            (Role::Read, _) => 1,
            (Role::Constant, _) => 2,
            (Role::Load | Role::LoadMore, _) => 3,
            _ => 0,
        },
        CONSTANT if often => 1 + at as u8,
        _ => 0,
    }
}

fn write(size: usize, before: &[u8], tokens: &[Token]) -> Option<Vec<u8>> {
    let mut counted: BTreeMap<&Code, usize> = BTreeMap::new();
    for (code, _) in tokens {
        *counted.entry(code).or_default() += 1;
    }
    let mut codes: Vec<&Code> = counted.keys().copied().collect();
    codes.sort_by_key(|it| (std::cmp::Reverse(counted.get(it).copied()), *it));
    let at: BTreeMap<&Code, usize> = codes.iter().enumerate().map(|(at, it)| (*it, at)).collect();
    if codes.len() > 256 {
        return None;
    }
    let order: Vec<usize> =
        tokens.iter().map(|(it, _)| at.get(it).copied()).collect::<Option<_>>()?;

    // How many bytes of constants stand before each code.
    let mut constants = [0; 256];
    for (pair, (code, number)) in order.windows(2).zip(tokens) {
        if code.role == Role::Constant {
            *constants.get_mut(*pair.get(1)?)? += number.len();
        }
    }
    let mut near = [[0; 256]; 3];
    let mut often = 0;
    for (at, code) in codes.iter().enumerate() {
        for (table, all) in near.iter_mut().enumerate() {
            let many = *constants.get(at)? > 99 && often < 99;
            *all.get_mut(at)? = add(table as u8 * 32, code, often, many);
            often += usize::from(many && table == 2);
        }
    }
    let mut streams = vec![Vec::new(); 256];
    let base = |role: Role| match role {
        Role::Text => 0,
        Role::Plain => 1,
        Role::Constant => 128,
        it => it as usize * 4,
    };
    for (i, (code, number)) in tokens.iter().enumerate() {
        let table = usize::from(code.form >> 5 & 3);
        let more = order.get(i + 1).map_or(Some(&0), |it| near.get(table)?.get(*it))?;
        let stream = base(code.role) + usize::from(*more);
        for (at, byte) in number.iter().enumerate() {
            let apart = if code.form & APART == 0 { 0 } else { at };
            streams.get_mut(stream + apart)?.push(*byte);
        }
    }
    *streams.get_mut(base(Role::Plain))? = order.iter().map(|it| *it as u8).collect();

    let mut out = Vec::new();
    put(&mut out, size);
    put(&mut out, before.len());
    streams.iter().for_each(|it| put(&mut out, it.len()));
    let each = |of: &dyn Fn(&Code) -> usize| {
        let mut all: Vec<u8> = codes.iter().map(|it| of(it) as u8).collect();
        all.resize(256, 0);
        all
    };
    out.extend(each(&|it| usize::from(it.form)));
    out.extend(each(&|it| it.bytes.len()));
    out.extend(each(&|it| base(it.role)));
    out.extend(near.as_flattened());
    codes.iter().for_each(|it| out.extend(&it.bytes));
    out.extend(before);
    streams.iter().for_each(|it| out.extend(it));
    Some(out)
}
