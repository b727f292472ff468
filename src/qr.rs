//! A text as a QR code, for paper: ISO/IEC 18004, byte mode, versions 1 to 20. What the standard prints as a table and can be
//! computed is computed: field, generators, capacities, places of patterns, format and version bits.
//!
//! Level M, of which some 15 % may be unreadable. Version 20 takes 666 bytes, and no link is longer.

/// Codewords of error correction in each block, and blocks: table 9, level M, versions 1 to 20.
#[rustfmt::skip]
static LEVELS: [[u8; 2]; 20] = [
    [10, 1], [16, 1], [26, 1], [18, 2], [24, 2], [16, 4], [18, 4], [22, 4], [22, 5], [26, 5],
    [30, 5], [22, 8], [22, 9], [24, 9], [24, 10], [28, 10], [28, 11], [26, 13], [26, 14], [26, 16],
];

/// Light margin that a reader needs round the code, modules.
pub const QUIET: usize = 4;

/// A code: dark and light modules.
#[derive(Debug, PartialEq)]
pub struct Qr {
    /// Modules along a side.
    pub side: usize,
    /// Which of the eight masks lies on it.
    pub mask: usize,
    /// Row after row: [`DARK`], before the mask, and [`FIXED`].
    cells: Vec<u8>,
}

const DARK: u8 = 1;
/// A module of a pattern: no data stand there, and no mask lies on it.
const FIXED: u8 = 2;

impl Qr {
    /// The smallest code of these bytes; `None` where they are too many for version 20: over 666.
    ///
    /// ```
    /// use torpor::qr::Qr;
    /// assert_eq!(Qr::of(b"#1.").map(|it| it.side), Some(21));
    /// assert_eq!(Qr::of(&[0; 667]), None);
    /// ```
    pub fn of(text: &[u8]) -> Option<Self> {
        for (at, [correction, blocks]) in LEVELS.iter().enumerate() {
            let version = at + 1;
            let mut qr = Self::blank(version);
            let room = qr.cells.iter().filter(|it| **it == 0).count() / 8;
            let [correction, blocks] = [*correction, *blocks].map(usize::from);
            let data = room - correction * blocks;
            let long = usize::from(version > 9);
            if text.len() + 2 + long <= data {
                qr.lay(&woven(&codewords(text, long, data), correction, blocks, room));
                qr.mask_best();
                return Some(qr);
            }
        }
        None
    }

    /// Whether a module is dark.
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        let cell = self.cell(x, y);
        (cell & DARK > 0) != (cell & FIXED == 0 && self.turns(x, y))
    }

    /// Its dark modules as an SVG path, one unit each, with the quiet zone left free.
    pub fn path(&self) -> String {
        let mut path = String::new();
        for y in 0..self.side {
            let mut wide = 0;
            for x in 0..=self.side {
                if x < self.side && self.is_dark(x, y) {
                    wide += 1;
                } else if wide > 0 {
                    let [x, y] = [x - wide + QUIET, y + QUIET];
                    path.push_str(&format!("M{x} {y}h{wide}v1h-{wide}z"));
                    wide = 0;
                }
            }
        }
        path
    }

    #[inline(never)]
    fn cell(&self, x: usize, y: usize) -> u8 {
        self.cells.get(y * self.side + x).copied().unwrap_or_default()
    }

    #[inline(never)]
    fn put(&mut self, x: usize, y: usize, cell: u8) {
        if let Some(it) = self.cells.get_mut(y * self.side + x) {
            *it = cell;
        }
    }

    fn fix(&mut self, x: usize, y: usize, bits: u32, bit: usize) {
        self.put(x, y, FIXED | (bits >> bit & 1) as u8);
    }

    /// Rings round a middle: dark where `dark` has the ring's bit.
    fn rings(&mut self, [at_x, at_y]: [usize; 2], size: usize, dark: u32) {
        for y in 0..=2 * size {
            for x in 0..=2 * size {
                let ring = x.abs_diff(size).max(y.abs_diff(size));
                // Before the first is past the last.
                let [x, y] = [(at_x + x).wrapping_sub(size), (at_y + y).wrapping_sub(size)];
                if x < self.side && y < self.side {
                    self.fix(x, y, dark, ring);
                }
            }
        }
    }

    /// All patterns of a version, with nothing between them.
    fn blank(version: usize) -> Self {
        let side = 17 + 4 * version;
        let mut qr = Self { side, mask: 0, cells: vec![0; side * side] };
        // Finders in three corners, with their separators.
        for middle in [[3, 3], [side - 4, 3], [3, side - 4]] {
            qr.rings(middle, 4, 0b01011);
        }
        // Alignment: between the seventh module and the seventh from the end, evenly by twos; what is left over is before the
        // second.
        let gaps = version / 7 + usize::from(version > 1);
        for at in 0..(gaps + 1) * (gaps + 1) * usize::from(version > 1) {
            let place = |it: usize| match gaps - it {
                0 => 6,
                _ => side - 7 - it * ((4 * version + 4).div_ceil(2 * gaps) * 2),
            };
            let [x, y] = [place(at % (gaps + 1)), place(at / (gaps + 1))];
            if qr.cell(x, y) == 0 {
                qr.rings([x, y], 2, 0b101);
            }
        }
        for at in 8..side - 8 {
            qr.fix(at, 6, 1, at % 2);
            qr.fix(6, at, 1, at % 2);
        }
        let bits = checked(version as u32, 0b1_1111_0010_0101);
        for at in 0..if version < 7 { 0 } else { 18 } {
            let [long, short] = [side - 11 + at % 3, at / 3];
            qr.fix(long, short, bits, at);
            qr.fix(short, long, bits, at);
        }
        qr.mark_mask();
        qr
    }

    /// Level, of which M is 0, and mask, twice.
    fn mark_mask(&mut self) {
        let side = self.side;
        let bits = checked(self.mask as u32, 0b101_0011_0111) ^ 0b101_0100_0001_0010;
        for at in 0..8 {
            // Round the first finder, past the timing patterns; then along the other two.
            self.fix(8, at + at / 6, bits, at);
            self.fix(side - 1 - at, 8, bits, at);
            if at < 7 {
                self.fix(if at > 5 { 7 } else { at }, 8, bits, 14 - at);
                self.fix(8, side - 1 - at, bits, 14 - at);
            }
        }
        self.fix(8, side - 8, 1, 0);
    }

    /// Codewords in columns of two, from the right, up and down by turns; the column of the timing pattern is left out.
    fn lay(&mut self, codewords: &[u8]) {
        let mut bit = 0;
        let pairs = self.side / 2;
        for pair in 0..pairs {
            for step in 0..2 * self.side {
                let y = if pair % 2 == 0 { self.side - 1 - step / 2 } else { step / 2 };
                // Left of the timing pattern all stand one further.
                let x = self.side - 1 - 2 * pair - step % 2 - usize::from(pair + 3 >= pairs);
                if self.cell(x, y) == 0 {
                    // What is left over at the end is light.
                    let word = codewords.get(bit / 8).copied().unwrap_or_default();
                    self.put(x, y, word >> (7 - bit % 8) & 1);
                    bit += 1;
                }
            }
        }
    }

    /// Whether the mask turns a module round.
    fn turns(&self, x: usize, y: usize) -> bool {
        let [both, product] = [x + y, x * y % 2 + x * y % 3];
        0 == match self.mask {
            0 => both % 2,
            1 => y % 2,
            2 => x % 3,
            3 => both % 3,
            4 => (x / 3 + y / 2) % 2,
            5 => product,
            6 => product % 2,
            _ => (both + x * y % 3) % 2,
        }
    }

    fn mask_best(&mut self) {
        let mut best = (usize::MAX, 0);
        for mask in 0..8 {
            self.mask = mask;
            self.mark_mask();
            best = best.min((self.penalty(), mask));
        }
        self.mask = best.1;
        self.mark_mask();
    }

    /// How hard it is on a reader: runs, blocks of two by two, what looks like a finder, more dark than light.
    fn penalty(&self) -> usize {
        let side = self.side;
        let (mut points, mut dark) = (0, 0);
        for line in 0..2 * side {
            let row = line / 2;
            // The quiet zone is light.
            let (mut run, mut window) = (0, 0);
            for at in 0..side + 4 {
                let [x, y] = if line % 2 == 0 { [at, row] } else { [row, at] };
                let module = usize::from(at < side && self.is_dark(x, y));
                run = if at > 0 && module == window & 1 { run + 1 } else { 1 };
                window = (window << 1 | module) & 0b111_1111_1111;
                if window == 0b101_1101_0000 || window == 0b000_0101_1101 {
                    points += 40;
                }
                if at < side && run > 4 {
                    points += if run == 5 { 3 } else { 1 };
                }
                dark += module;
                // Each block once, by its last module.
                if x < side && y < side && at > 0 && row > 0 && line % 2 == 0 {
                    let of = |x, y| usize::from(self.is_dark(x, y));
                    let four = module + of(x - 1, y) + of(x, y - 1) + of(x - 1, y - 1);
                    points += if four % 4 == 0 { 3 } else { 0 };
                }
            }
        }
        // Every module was counted twice: so many twentieths from a half.
        let all = side * side;
        points + (dark * 10).abs_diff(all * 10) / all * 10
    }
}

/// Bits with those of their error correction behind them (Bose, Chaudhuri, Hocquenghem), by a generator.
fn checked(bits: u32, generator: u32) -> u32 {
    let size = generator.ilog2();
    let mut rest = bits << size;
    while rest >> size > 0 {
        rest ^= generator << (rest.ilog2() - size);
    }
    bits << size | rest
}

/// A text as codewords that fill `room`: byte mode, its length in one byte or in two (`long`), the text, an end, padding.
fn codewords(text: &[u8], long: usize, room: usize) -> Vec<u8> {
    let mut words = Vec::with_capacity(room);
    // Mode and end are half a codeword each: between them all stands across two.
    let mut half = 4;
    let length = (text.len() as u16).to_be_bytes();
    for part in [length.split_at(1 - long).1, text] {
        for byte in part {
            words.push(half << 4 | byte >> 4);
            half = byte & 15;
        }
    }
    words.push(half << 4);
    let mut pad = 0xec;
    while words.len() < room {
        words.push(pad);
        pad ^= 0xec ^ 0x11;
    }
    words
}

/// Data in blocks, each with its error correction (Reed and Solomon), woven into one another.
fn woven(data: &[u8], correction: usize, blocks: usize, room: usize) -> Vec<u8> {
    // The product of all (x − 2^i), the highest power left out.
    let mut generator = vec![0; correction];
    generator[correction - 1] = 1;
    let mut root = 1;
    for _ in 0..correction {
        let mut lower = 0;
        for it in generator.iter_mut().rev() {
            let own = *it;
            *it = times(own, root) ^ lower;
            lower = own;
        }
        root = times(root, 2);
    }
    let (short, over) = (data.len() / blocks, data.len() % blocks);
    let mut all = vec![0; room];
    let mut words = data.iter();
    for block in 0..blocks {
        let long = (block + over).checked_sub(blocks);
        let mut rest = vec![0; correction];
        for at in 0..short + usize::from(long.is_some()) {
            let word = words.next().copied().unwrap_or_default();
            // First words of all blocks, then second ones …; what only longer ones have comes last.
            let to = long.filter(|_| at == short).unwrap_or(block);
            all[at * blocks + to] = word;
            let factor = word ^ rest.remove(0);
            rest.push(0);
            for (it, by) in rest.iter_mut().zip(&generator) {
                *it ^= times(*by, factor);
            }
        }
        for (at, it) in rest.into_iter().enumerate() {
            all[data.len() + at * blocks + block] = it;
        }
    }
    all
}

/// A product in the field of 256 elements, modulo x^8 + x^4 + x^3 + x^2 + 1.
fn times(a: u8, mut b: u8) -> u8 {
    let (mut a, mut product) = (u16::from(a), 0);
    while b > 0 {
        product ^= a * u16::from(b & 1);
        a <<= 1;
        a ^= 0x11d * (a >> 8);
        b >>= 1;
    }
    product as u8
}
