//! Memory for waves that are all forgotten together and then written anew: taken piece by piece, never given back.

use std::ops::Range;

use super::wave::Wave;

/// It grows by so many at least (1 MB, which is not there before something is written to it): each time it grows, all may be moved.
const LEAST_GROWTH: usize = 8_192;

/// Waves one after the other.
#[derive(Debug, Default)]
pub(super) struct Arena {
    waves: Vec<Wave>,
    taken: usize,
}

impl Arena {
    /// Forgets all, and keeps the memory.
    pub fn forget(&mut self) {
        self.taken = 0;
    }

    /// How many are taken.
    pub fn taken(&self) -> usize {
        self.taken
    }

    /// Takes so many; what stands there is of no use.
    pub fn take(&mut self, count: usize) -> Range<usize> {
        let taken = self.taken..self.taken + count;
        self.taken = taken.end;
        if self.waves.len() < taken.end {
            if self.waves.capacity() < taken.end {
                self.waves.reserve(LEAST_GROWTH.max(taken.end - self.waves.len()));
            }
            self.waves.resize(taken.end, Wave::ZERO);
        }
        taken
    }

    /// Those that were taken.
    pub fn all(&self) -> &[Wave] {
        &self.waves
    }

    /// Some of those, to write to.
    pub fn at(&mut self, taken: Range<usize>) -> &mut [Wave] {
        &mut self.waves[taken]
    }
}
