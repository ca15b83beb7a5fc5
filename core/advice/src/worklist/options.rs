//! How a work list is made, and how far it goes.

use super::list::CutShort;
use crate::forecast;

/// How a work list is made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Options {
    /// How candidates are weighed: few draws at few frequencies.
    pub screening: forecast::Options,
    /// How each step's gain is stated.
    pub stating: forecast::Options,
    /// At most so many steps.
    pub most_steps: usize,
    /// No further step is looked for once so many parts were looked at in weighing changes: a change weighed in a house of
    /// 30 parts counts 30.
    pub most_weighed: usize,
}

impl Default for Options {
    fn default() -> Self {
        let stating = forecast::Options::default();
        Self {
            screening: forecast::Options { draws: 16, points: 28, settles: false, ..stating },
            stating,
            most_steps: 24,
            most_weighed: 1_000_000,
        }
    }
}

impl Options {
    /// Whether a list of so many steps ends here, after so much weighing.
    pub(super) fn cut_short(&self, steps: usize, weighed: usize) -> Option<CutShort> {
        if steps >= self.most_steps {
            Some(CutShort::Steps)
        } else {
            (weighed >= self.most_weighed).then_some(CutShort::Size)
        }
    }
}
