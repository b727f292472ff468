//! What the hostile tests share: numbers out of one seed, and bytes bent by them.
// Each test takes what it needs of this.
#![allow(dead_code)]

/// Numbers after numbers out of one seed: xorshift64* (Vigna, "An experimental exploration of Marsaglia's xorshift
/// generators, scrambled"); the same on every run, so that a failure comes again.
pub struct Dice(u64);

/// A seed for each of two threads.
pub const SEEDS: [u64; 2] = [0x9E37_79B9_7F4A_7C15, 0xD1B5_4A32_D192_ED03];

impl Dice {
    pub fn of(seed: u64) -> Self {
        Self(seed)
    }
    pub fn roll(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 16
    }
    pub fn below(&mut self, end: usize) -> usize {
        (self.roll() % end as u64) as usize
    }
    pub fn one_of<'a>(&mut self, all: &[&'a str]) -> &'a str {
        all[self.below(all.len())]
    }
    /// Changes some of `bytes`: single bits, whole bytes, odd values, cuts and doublings.
    pub fn bend(&mut self, bytes: &mut Vec<u8>) {
        for _ in 0..=self.below(3) {
            let at = self.below(bytes.len().max(1));
            match (self.below(6), bytes.get_mut(at)) {
                (0, Some(byte)) => *byte ^= 1 << self.below(8),
                (1, Some(byte)) => *byte = self.roll() as u8,
                (2, Some(byte)) => *byte = [0, 1, 0x7f, 0x80, 0xff][self.below(5)],
                (3, Some(_)) => bytes.truncate(at),
                (4, Some(_)) => drop(bytes.remove(at)),
                _ => bytes.insert(at.min(bytes.len()), self.roll() as u8),
            }
        }
    }
}
