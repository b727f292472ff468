//! A text as a QR code, for paper: ISO/IEC 18004, byte mode, versions 1 to 25. What the standard prints as a table and can be
//! computed is computed: field, generators, capacities, places of patterns, format and version bits.
//!
//! Level M (some 15 % may be unreadable) up to version 20, which takes 666 bytes; what is longer gets level L.

use crate::entry::text::joined;

/// Codewords of error correction in each block, and blocks: table 9, level M, versions 1 to 20 …
#[rustfmt::skip]
const LEVEL_M: [[u8; 2]; 20] = [
    [10, 1], [16, 1], [26, 1], [18, 2], [24, 2], [16, 4], [18, 4], [22, 4], [22, 5], [26, 5],
    [30, 5], [22, 8], [22, 9], [24, 9], [24, 10], [28, 10], [28, 11], [26, 13], [26, 14], [26, 16],
];
/// … and level L from version [`FIRST_L`] on: those before it take less than version 20 at level M.
const LEVEL_L: [[u8; 2]; 8] =
    [[30, 6], [28, 7], [28, 8], [28, 8], [28, 9], [30, 9], [30, 10], [26, 12]];
const FIRST_L: usize = 18;

/// Light margin that a reader needs round the code, modules.
pub const QUIET: usize = 4;

/// A code: dark and light modules.
#[derive(Debug, Clone, PartialEq)]
pub struct Qr {
    /// Modules along a side.
    pub side: usize,
    /// Level L, where M has no room.
    pub low: bool,
    /// Which of the eight masks lies on it.
    pub mask: usize,
    /// Row after row: [`DARK`] and [`FIXED`].
    cells: Vec<u8>,
}

const DARK: u8 = 1;
/// A module of a pattern: no data stand there, and no mask lies on it.
const FIXED: u8 = 2;

impl Qr {
    /// The smallest code of a text; `None` where it is too long for version 25: over 1273 bytes.
    ///
    /// ```
    /// use torpor::qr::Qr;
    /// assert_eq!(Qr::of("#1.").map(|it| it.side), Some(21));
    /// assert_eq!(Qr::of(&"x".repeat(1274)), None);
    /// ```
    pub fn of(text: &str) -> Option<Self> {
        let level_m = (1..).zip(&LEVEL_M).map(|(version, it)| (version, false, it));
        let level_l = (FIRST_L..).zip(&LEVEL_L).map(|(version, it)| (version, true, it));
        level_m.chain(level_l).find_map(|(version, low, [correction, blocks])| {
            let mut qr = Self::blank(version, low);
            let room = qr.cells.iter().filter(|it| **it & FIXED == 0).count() / 8;
            let [correction, blocks] = [*correction, *blocks].map(usize::from);
            let data = codewords(text.as_bytes(), version, room - correction * blocks)?;
            qr.lay(&woven(&data, correction, blocks, room));
            let masked = |mask| {
                let mut qr = qr.clone();
                qr.put_on(mask);
                qr
            };
            (0..8).map(masked).min_by_key(Self::penalty)
        })
    }

    /// Whether a module is dark.
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        self.cells[y * self.side + x] & DARK > 0
    }

    /// Its dark modules as an SVG path, one unit each, with the quiet zone left free.
    pub fn path(&self) -> String {
        let mut path = Vec::new();
        for y in 0..self.side {
            let mut from = None;
            for x in 0..=self.side {
                let dark = x < self.side && self.is_dark(x, y);
                match (from, dark) {
                    (None, true) => from = Some(x),
                    (Some(first), false) => {
                        let [x0, y, wide] = [first + QUIET, y + QUIET, x - first];
                        path.push(format!("M{x0} {y}h{wide}v1h-{wide}z"));
                        from = None;
                    }
                    _ => {}
                }
            }
        }
        joined(&path, "")
    }

    fn fix(&mut self, x: usize, y: usize, dark: bool) {
        self.cells[y * self.side + x] = FIXED | u8::from(dark);
    }

    /// Whether a module belongs to a pattern.
    fn is_fixed(&self, x: usize, y: usize) -> bool {
        self.cells[y * self.side + x] & FIXED > 0
    }

    /// Rings round a middle, from it outward: dark where `dark` has the ring's bit.
    fn rings(&mut self, middle: [usize; 2], size: usize, dark: u8) {
        for y in 0..=2 * size {
            for x in 0..=2 * size {
                let ring = x.abs_diff(size).max(y.abs_diff(size));
                let [x, y] = [x + middle[0], y + middle[1]].map(|it| it.wrapping_sub(size));
                if x < self.side && y < self.side {
                    self.fix(x, y, dark >> ring & 1 > 0);
                }
            }
        }
    }

    /// All patterns of a version, with nothing between them.
    fn blank(version: usize, low: bool) -> Self {
        let side = 17 + 4 * version;
        let mut qr = Self { side, low, mask: 0, cells: vec![0; side * side] };
        // Finders in three corners, with their separators.
        for middle in [[3, 3], [side - 4, 3], [3, side - 4]] {
            qr.rings(middle, 4, 0b01011);
        }
        if version > 1 {
            // Between the seventh module and the seventh from the end, evenly by twos; what is left over is before the second.
            let gaps = version / 7 + 1;
            let step = (4 * version + 4).div_ceil(2 * gaps) * 2;
            let places: Vec<usize> = (0..gaps).map(|it| side - 7 - it * step).chain([6]).collect();
            for y in &places {
                for x in &places {
                    if !qr.is_fixed(*x, *y) {
                        qr.rings([*x, *y], 2, 0b101);
                    }
                }
            }
        }
        for at in 8..side - 8 {
            qr.fix(at, 6, at % 2 == 0);
            qr.fix(6, at, at % 2 == 0);
        }
        if version >= 7 {
            let bits = checked(version as u32, 0b1_1111_0010_0101);
            for at in 0..18 {
                let [long, short] = [side - 11 + at % 3, at / 3];
                qr.fix(long, short, bits >> at & 1 > 0);
                qr.fix(short, long, bits >> at & 1 > 0);
            }
        }
        qr.format();
        qr
    }

    /// Level and mask, twice.
    fn format(&mut self) {
        let level = u32::from(self.low) << 3;
        let bits = checked(level | self.mask as u32, 0b101_0011_0111) ^ 0b101_0100_0001_0010;
        for at in 0..15 {
            let dark = bits >> at & 1 > 0;
            // Round the first finder, past the timing patterns; then along the other two.
            match at {
                0..8 => {
                    self.fix(8, at + at / 6, dark);
                    self.fix(self.side - 1 - at, 8, dark);
                }
                _ => {
                    self.fix(15 - at - at / 9, 8, dark);
                    self.fix(8, self.side + at - 15, dark);
                }
            }
        }
        self.fix(8, self.side - 8, true);
    }

    /// Codewords in columns of two, from the right, up and down by turns; the column of the timing pattern is left out.
    fn lay(&mut self, codewords: &[u8]) {
        let mut bits = codewords.iter().flat_map(|it| (0..8).rev().map(move |bit| it >> bit & 1));
        for pair in (0..self.side / 2).rev() {
            let right = 2 * pair + 1 + usize::from(pair > 2);
            for step in 0..self.side {
                let up = (self.side / 2 - pair) % 2 == 1;
                let y = if up { self.side - 1 - step } else { step };
                for x in [right, right - 1] {
                    if !self.is_fixed(x, y) {
                        // What is left over at the end is light.
                        self.cells[y * self.side + x] = bits.next().unwrap_or(0);
                    }
                }
            }
        }
    }

    fn put_on(&mut self, mask: usize) {
        self.mask = mask;
        for y in 0..self.side {
            for x in 0..self.side {
                let turns = match mask {
                    0 => (x + y) % 2,
                    1 => y % 2,
                    2 => x % 3,
                    3 => (x + y) % 3,
                    4 => (x / 3 + y / 2) % 2,
                    5 => x * y % 2 + x * y % 3,
                    6 => (x * y % 2 + x * y % 3) % 2,
                    _ => ((x + y) % 2 + x * y % 3) % 2,
                } == 0;
                let cell = &mut self.cells[y * self.side + x];
                if turns && *cell & FIXED == 0 {
                    *cell ^= DARK;
                }
            }
        }
        self.format();
    }

    /// How hard it is on a reader: runs, blocks of two by two, what looks like a finder, more dark than light.
    fn penalty(&self) -> usize {
        let side = self.side;
        let (mut points, mut dark) = (0, 0);
        for turned in [false, true] {
            for row in 0..side {
                // The quiet zone is light.
                let (mut run, mut last, mut window) = (0, 2, 0);
                for at in 0..side + 4 {
                    let module = at < side
                        && if turned { self.is_dark(row, at) } else { self.is_dark(at, row) };
                    let module = u16::from(module);
                    window = (window << 1 | module) & 0b111_1111_1111;
                    if window == 0b101_1101_0000 || window == 0b000_0101_1101 {
                        points += 40;
                    }
                    if at >= side {
                        continue;
                    }
                    run = if module == last { run + 1 } else { 1 };
                    last = module;
                    points += match run {
                        0..5 => 0,
                        5 => 3,
                        _ => 1,
                    };
                    dark += usize::from(module);
                }
            }
        }
        for y in 1..side {
            for x in 1..side {
                let four = [[x, y], [x - 1, y], [x, y - 1], [x - 1, y - 1]];
                let dark = four.iter().filter(|[x, y]| self.is_dark(*x, *y)).count();
                points += if dark % 4 == 0 { 3 } else { 0 };
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

/// A text as codewords that fill `room`; `None` where it takes more.
fn codewords(text: &[u8], version: usize, room: usize) -> Option<Vec<u8>> {
    let long = version > 9;
    if text.len() + 2 + usize::from(long) > room {
        return None;
    }
    // Byte mode, length, text and end, in halves of codewords: all of them are whole ones.
    let length = text.len();
    let mut halves = vec![4];
    let wide = if long { 4 } else { 2 };
    halves.extend((0..wide).rev().map(|it| (length >> (4 * it) & 15) as u8));
    halves.extend(text.iter().flat_map(|it| [it >> 4, it & 15]));
    halves.push(0);
    let words = halves.chunks(2).map(|it| it.iter().fold(0, |word, half| word << 4 | half));
    Some(words.chain([0xec, 0x11].into_iter().cycle()).take(room).collect())
}

/// Data in blocks, each with its error correction (Reed and Solomon), woven into one another.
fn woven(data: &[u8], correction: usize, blocks: usize, room: usize) -> Vec<u8> {
    // The product of all (x − 2^i), the highest power left out.
    let mut generator = vec![0; correction];
    generator[correction - 1] = 1;
    let mut root = 1;
    for _ in 0..correction {
        for at in 0..correction {
            let next = generator.get(at + 1).copied().unwrap_or(0);
            generator[at] = times(generator[at], root) ^ next;
        }
        root = times(root, 2);
    }
    let short = data.len() / blocks;
    let shorts = blocks - data.len() % blocks;
    let mut words: Vec<(usize, u8)> = Vec::with_capacity(room);
    let mut checks = Vec::with_capacity(room);
    let mut rest = data;
    for block in 0..blocks {
        let (own, others) = rest.split_at(short + usize::from(block >= shorts));
        rest = others;
        let mut remainder = vec![0; correction];
        for word in own {
            let factor = word ^ remainder[0];
            remainder.rotate_left(1);
            remainder[correction - 1] = 0;
            for (at, it) in generator.iter().enumerate() {
                remainder[at] ^= times(*it, factor);
            }
        }
        words.extend(own.iter().copied().enumerate());
        checks.extend(remainder.into_iter().enumerate());
    }
    // First words of all blocks, then second ones …
    let mut all = Vec::with_capacity(room);
    for part in [words, checks] {
        for place in 0..=short.max(correction) {
            all.extend(part.iter().filter(|it| it.0 == place).map(|it| it.1));
        }
    }
    all
}

/// A product in the field of 256 elements, modulo x^8 + x^4 + x^3 + x^2 + 1.
fn times(mut a: u8, mut b: u8) -> u8 {
    let mut product = 0;
    while b > 0 {
        if b & 1 > 0 {
            product ^= a;
        }
        a = a << 1 ^ if a >> 7 > 0 { 0x1d } else { 0 };
        b >>= 1;
    }
    product
}
