//! How a forecast is made: how often and at how many frequencies a house is drawn.

use super::outcome::Forecast;

/// The most parts drawn in all draws together: 60 parts are drawn 200 times, and a house of more parts less often, so that
/// a house is forecast about as fast as that, however large.
const MOST_PARTS_DRAWN: usize = 12_000;

/// However large a house is, it is drawn so often: the lowest and the highest tenth are then of three draws each.
const FEWEST_DRAWS: u32 = 32;

/// So often a house is drawn before it is asked whether that does; then twice as often, and again.
pub(super) const FIRST_DRAWS: u32 = 128;

/// At so many frequencies, 5 MHz apart, a house is looked at before it is asked whether they do; then at twice as many.
const FIRST_POINTS: usize = 111;

/// How a forecast is made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Options {
    /// Draws over the unknowns, at the most.
    pub draws: u32,
    /// The seed: the same seed gives the same forecast.
    pub seed: u64,
    /// Frequencies over Extended D, at the most.
    pub points: usize,
    /// Whether fewer draws and frequencies do, as soon as every rate stands (`settled.rs`), and where a house has many parts; else
    /// it takes just so many.
    pub settles: bool,
}

impl Default for Options {
    /// 256 draws and 441 frequencies, 1.25 MHz apart, at the most.
    fn default() -> Self {
        Self { draws: 256, seed: 1, points: 441, settles: true }
    }
}

impl Options {
    /// Just as another forecast was made: the two can be held against each other draw by draw.
    #[must_use]
    pub fn as_made(forecast: &Forecast) -> Self {
        Self { draws: forecast.draws, seed: forecast.seed, points: forecast.frequencies, settles: false }
    }

    /// How often a house of so many parts is drawn at the most.
    pub(super) fn draws_over(&self, parts: usize) -> u32 {
        if !self.settles {
            return self.draws.max(1);
        }
        let affordable = u32::try_from(MOST_PARTS_DRAWN / parts.max(1)).unwrap_or(u32::MAX);
        self.draws.clamp(1, affordable.max(FEWEST_DRAWS))
    }

    /// At how many frequencies a house is looked at first.
    pub(super) fn first_points(&self) -> usize {
        let all = self.points.max(16);
        if self.settles { all.min(FIRST_POINTS) } else { all }
    }
}
