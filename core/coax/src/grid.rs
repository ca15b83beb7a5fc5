//! The frequencies at which a network is looked at.

use crate::error::CoaxError;
use crate::quantity::Megahertz;

/// Finite, positive, strictly rising frequencies: 1 to 100,000 of them.
#[derive(Debug, Clone, PartialEq)]
pub struct FrequencyGrid {
    frequencies: Vec<Megahertz>,
}

impl FrequencyGrid {
    /// The most frequencies a grid may hold.
    pub const MOST: usize = 100_000;

    /// A grid of exactly these frequencies.
    ///
    /// # Errors
    /// [`CoaxError::BadFrequency`] if there are none or too many, or if one is not finite, not above 0 MHz or not
    /// above the one before it.
    pub fn new(frequencies: Vec<Megahertz>) -> Result<Self, CoaxError> {
        let bad = |why: String| Err(CoaxError::BadFrequency { why });
        if frequencies.is_empty() {
            return bad("there are none".into());
        }
        if frequencies.len() > Self::MOST {
            return bad(format!("there are {}", frequencies.len()));
        }
        let mut last = Megahertz(0.0);
        for (index, &frequency) in frequencies.iter().enumerate() {
            if !frequency.value().is_finite() {
                return bad(format!("number {index} is {frequency}, which is not a finite number"));
            }
            if frequency <= last {
                return bad(format!("number {index} is {frequency}, which is not above {last}"));
            }
            last = frequency;
        }
        Ok(Self { frequencies })
    }

    /// `points` frequencies evenly spread from `low` to `high`, both included (one point: `low` alone).
    ///
    /// # Errors
    /// As [`FrequencyGrid::new`].
    pub fn even(low: Megahertz, high: Megahertz, points: usize) -> Result<Self, CoaxError> {
        if points > Self::MOST {
            return Err(CoaxError::BadFrequency { why: format!("there are {points}") });
        }
        let step = if points > 1 { (high - low).value() / (points - 1) as f64 } else { 0.0 };
        Self::new((0..points).map(|k| Megahertz(low.value() + step * k as f64)).collect())
    }

    /// The frequencies, rising.
    pub fn frequencies(&self) -> &[Megahertz] {
        &self.frequencies
    }

    /// How many frequencies there are; never 0.
    #[expect(clippy::len_without_is_empty, reason = "a grid is never empty")]
    pub fn len(&self) -> usize {
        self.frequencies.len()
    }
}
