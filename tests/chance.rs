//! Random numbers whose seed is new in each run and always printed.

use std::hash::{BuildHasher, RandomState};

/// The seed that was asked for, or a new one. Printed, so that a run can be repeated.
pub fn seed(asked: Option<u64>) -> u64 {
    let seed = asked.unwrap_or_else(|| RandomState::new().hash_one("seed"));
    eprintln!("--seed {seed}");
    seed
}

/// `SplitMix64` (G. L. Steele Jr. et al., "Fast splittable pseudorandom number generators", OOPSLA 2014).
pub struct Chance(pub u64);

impl Chance {
    /// 64 random bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// A number below `bound`, which is small: the tiny bias of the remainder does not matter here.
    pub fn below(&mut self, bound: usize) -> usize {
        usize::try_from(self.bits() % bound.max(1) as u64).unwrap_or(0)
    }

    /// One of several.
    pub fn pick<'a, T>(&mut self, from: &'a [T]) -> Option<&'a T> {
        from.get(self.below(from.len()))
    }
}
