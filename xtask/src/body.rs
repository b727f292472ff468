//! The body of a function, instruction by instruction:
//! <https://webassembly.github.io/spec/core/binary/instructions.html>.

use crate::wasm::Reader;

/// One instruction as it stands in a body.
pub struct Instruction<'a> {
    /// Where in the body it begins.
    pub at: usize,
    /// Its first byte.
    pub code: u8,
    /// What stands behind that: numbers, types.
    pub rest: &'a [u8],
}

/// What a body declares: how many locals of which type. After that the body is instructions.
pub fn locals<'a>(it: &mut Reader<'a>) -> Option<Vec<(&'a [u8], u8)>> {
    let mut all = Vec::new();
    for _ in 0..it.number()? {
        let before = it.0;
        it.skip(1)?;
        all.push((before.get(..before.len() - it.0.len())?, it.byte()?));
    }
    Some(all)
}

/// The instructions of a body, or none where one of them is not known here.
pub fn instructions(body: &[u8]) -> Option<Vec<Instruction<'_>>> {
    let mut it = Reader(body);
    locals(&mut it)?;
    let mut all = Vec::new();
    while !it.0.is_empty() {
        let at = body.len() - it.0.len();
        let code = it.byte()?;
        let before = it.0;
        operands(code, &mut it)?;
        all.push(Instruction { at, code, rest: before.get(..before.len() - it.0.len())? });
    }
    Some(all)
}

/// Reads past what stands behind an instruction's first byte.
fn operands(code: u8, it: &mut Reader) -> Option<()> {
    match code {
        // A block, a way out, a call, a local, a global, a table; a number written out; a function as a value.
        0x02..=0x04 | 0x0c | 0x0d | 0x10 | 0x20..=0x26 | 0x41 | 0x42 | 0xd2 => it.skip(1),
        // A way out of many.
        0x0e => {
            let ways = it.number()?;
            it.skip(ways + 1)
        }
        // A call through a table; memory.
        0x11 | 0x28..=0x3e => it.skip(2),
        // A choice with its types.
        0x1c => it.sized().map(drop),
        0x3f | 0x40 | 0xd0 => it.byte().map(drop),
        0x43 => it.take(4).map(drop),
        0x44 => it.take(8).map(drop),
        0xfc => match it.number()? {
            0..=7 => Some(()),
            9 | 11 | 13 | 15..=17 => it.skip(1),
            8 | 10 | 12 | 14 => it.skip(2),
            _ => None,
        },
        // Whatever has nothing behind it.
        0x00 | 0x01 | 0x05 | 0x0b | 0x0f | 0x1a | 0x1b | 0x45..=0xc4 | 0xd1 => Some(()),
        _ => None,
    }
}
