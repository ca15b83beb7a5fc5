//! Throws that are the same for the same seed, for ever and on every machine.

use rand_chacha::ChaCha8Rng;
use rand_core::{Rng, SeedableRng};

/// Seeded dice.
pub struct Dice(ChaCha8Rng);

impl Dice {
    /// The dice of a seed.
    pub fn new(seed: u64) -> Self {
        let mut bytes = [0; 32];
        bytes[..8].copy_from_slice(&seed.to_le_bytes());
        Self(ChaCha8Rng::from_seed(bytes))
    }

    /// A value evenly spread over 0 up to (not including) 1.
    pub fn unit(&mut self) -> f64 {
        // 53 bits: every value is a multiple of 2^-53.
        (self.0.next_u64() >> 11) as f64 * (1.0 / (1_u64 << 53) as f64)
    }

    /// Whether something comes that comes in this share of all throws, 0 to 1.
    pub fn chance(&mut self, share: f64) -> bool {
        self.unit() < share
    }

    /// A number below `count`, which is above 0.
    pub fn below(&mut self, count: usize) -> usize {
        // The bias of the remainder is far below what a few thousand houses could show.
        usize::try_from(self.0.next_u64() % count as u64).expect("below a count")
    }

    /// One of several, each as often as the others.
    pub fn pick<T: Clone>(&mut self, from: &[T]) -> T {
        from[self.below(from.len())].clone()
    }

    /// One of several, each as often as its number says.
    pub fn weighed<T: Clone>(&mut self, from: &[(u32, T)]) -> T {
        let all: u32 = from.iter().map(|(weight, _)| weight).sum();
        let mut thrown = u32::try_from(self.below(all as usize)).expect("below a sum of u32");
        let hit = from.iter().find(|(weight, _)| {
            let here = thrown < *weight;
            thrown = thrown.saturating_sub(*weight);
            here
        });
        hit.expect("the throw is below the sum").1.clone()
    }

    /// A value between two others, to a tenth: what stands in a sheet reads back as the same number.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        ((low + self.unit() * (high - low)) * 10.0).round() / 10.0
    }
}
