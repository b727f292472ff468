//! As much of a module's binary form as is asked here: <https://webassembly.github.io/spec/core/binary/>.

/// The sections with their numbers, in their order.
pub fn sections(wasm: &[u8]) -> Option<Vec<(u8, &[u8])>> {
    let mut it = Reader(wasm.strip_prefix(HEAD)?);
    let mut all = Vec::new();
    while !it.0.is_empty() {
        all.push((it.byte()?, it.sized()?));
    }
    Some(all)
}

/// What every module begins with: the magic and the version.
pub const HEAD: &[u8] = b"\0asm\x01\0\0\0";

/// The names of what is imported, from that section, and how many of those are functions.
pub fn imports(section: &[u8]) -> Option<(Vec<String>, usize)> {
    let mut it = Reader(section);
    let (mut names, mut functions) = (Vec::new(), 0);
    for _ in 0..it.number()? {
        it.text()?;
        names.push(it.text()?);
        match it.byte()? {
            0 => {
                functions += 1;
                it.number()?;
            }
            3 => drop(it.take(2)?),
            // wasm-bindgen's modules have memory and tables of their own.
            _ => return None,
        }
    }
    Some((names, functions))
}

/// The pieces of data: the address of each, where in the section it stands, its size. Each is active, at an address known
/// now; others do not come from this linker.
pub fn segments(section: &[u8]) -> Option<Vec<(usize, usize, usize)>> {
    let mut all = Vec::new();
    let mut it = Reader(section);
    for _ in 0..it.number()? {
        it.take(2).filter(|it| *it == [0, 0x41])?;
        let address = it.number()?;
        it.byte()?;
        let size = it.number()?;
        let at = section.len() - it.0.len();
        it.take(size)?;
        all.push((address, at, size));
    }
    Some(all)
}

/// Appends a number.
pub fn put(to: &mut Vec<u8>, mut number: usize) {
    while number > 0x7f {
        to.push((number & 0x7f) as u8 | 0x80);
        number >>= 7;
    }
    to.push(number as u8);
}

/// Appends bytes with their count before them.
pub fn put_sized(to: &mut Vec<u8>, bytes: &[u8]) {
    put(to, bytes.len());
    to.extend(bytes);
}

/// What is still to be read.
pub struct Reader<'a>(pub &'a [u8]);

impl<'a> Reader<'a> {
    pub fn byte(&mut self) -> Option<u8> {
        self.take(1)?.first().copied()
    }

    pub fn take(&mut self, count: usize) -> Option<&'a [u8]> {
        let (head, rest) = self.0.split_at_checked(count)?;
        self.0 = rest;
        Some(head)
    }

    /// Without a sign; of those with one only what is not negative is asked for here, and for these it is the same.
    pub fn number(&mut self) -> Option<usize> {
        let mut number = 0;
        for shift in (0..35).step_by(7) {
            let byte = self.byte()?;
            number |= usize::from(byte & 0x7f) << shift;
            if byte < 0x80 {
                return Some(number);
            }
        }
        None
    }

    pub fn sized(&mut self) -> Option<&'a [u8]> {
        let size = self.number()?;
        self.take(size)
    }

    pub fn text(&mut self) -> Option<String> {
        String::from_utf8(self.sized()?.to_vec()).ok()
    }

    /// Skips numbers, of whatever size and sign.
    pub fn skip(&mut self, count: usize) -> Option<()> {
        for _ in 0..count {
            while self.byte()? >= 0x80 {}
        }
        Some(())
    }
}
