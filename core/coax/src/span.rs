//! A value that is not known exactly: what is likely, and the ends between which it lies.

use serde::{Deserialize, Serialize};

/// How well a figure is backed. Shown beside every figure that a user sees.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Backing {
    /// Read in a published source; the text names it.
    Published(&'static str),
    /// Computed from published figures or a definition; the text says how.
    Derived(&'static str),
    /// What the trade does, with no source behind it.
    CommonPractice,
    /// From memory; not checked against a document.
    FromMemory,
    /// Our own estimate, held against a published anchor that the text names.
    Estimate(&'static str),
}

/// A range `low <= likely <= high` of one quantity, in whatever unit the holder says.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Span {
    /// Nothing below this is thought possible.
    pub low: f64,
    /// The most likely value.
    pub likely: f64,
    /// Nothing above this is thought possible.
    pub high: f64,
}

impl Span {
    /// A range from its three figures, put in order if they are not.
    pub fn new(low: f64, likely: f64, high: f64) -> Self {
        let (low, high) = if low <= high { (low, high) } else { (high, low) };
        Self { low, likely: likely.clamp(low, high), high }
    }

    /// A value known exactly.
    pub const fn exact(value: f64) -> Self {
        Self { low: value, likely: value, high: value }
    }

    /// A range whose likely value is its middle.
    pub fn between(low: f64, high: f64) -> Self {
        Self::new(low, f64::midpoint(low, high), high)
    }

    /// Whether the ends coincide.
    pub fn is_exact(self) -> bool {
        self.low >= self.high
    }

    /// The value at `p` (0 to 1) of the triangular distribution over this range: its inverse cumulative
    /// distribution. `p = 0` is `low`, `p = 1` is `high`.
    pub fn quantile(self, p: f64) -> f64 {
        let width = self.high - self.low;
        if width <= 0.0 {
            return self.likely;
        }
        let peak = (self.likely - self.low) / width;
        if p < peak {
            self.low + width * (p * peak).sqrt()
        } else {
            self.high - width * ((1.0 - p) * (1.0 - peak)).sqrt()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_run_from_end_to_end_and_peak_at_the_likely_value() {
        let span = Span::new(1.0, 3.0, 10.0);
        assert!((span.quantile(0.0) - 1.0).abs() < 1e-12);
        assert!((span.quantile(1.0) - 10.0).abs() < 1e-12);
        // The triangular distribution has (likely - low) / (high - low) of its mass below the peak.
        assert!((span.quantile(2.0 / 9.0) - 3.0).abs() < 1e-12);
        assert!((Span::exact(4.0).quantile(0.3) - 4.0).abs() < 1e-12);
    }
}
