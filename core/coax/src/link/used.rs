//! Where on a grid of frequencies the band lies that the used subcarriers of a channel fill.

use crate::link::channel::Channel;
use crate::link::error::LinkError;
use crate::link::version::Version;
use crate::quantity::Megahertz;

/// Where on a grid the used band of a channel lies.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Used {
    from: Spot,
    to: Spot,
    /// How wide it is, MHz.
    width: f64,
}

impl Used {
    /// That of a channel in a version. An end of the grid may fall short of the band by one step of the grid; by more is an error.
    pub fn by(version: Version, channel: Channel, grid: &[Megahertz]) -> Result<Self, LinkError> {
        let half = version.used_width() * 0.5;
        let (from, to) = (channel.centre - half, channel.centre + half);
        let ends = (grid.first(), grid.get(1), grid.iter().rev().nth(1), grid.last());
        let (Some(&low), Some(&second), Some(&last_but_one), Some(&high)) = ends else {
            return Err(LinkError::Grid { place: 0, frequency: Megahertz(0.0) });
        };
        if from < low - (second - low) || to > high + (high - last_but_one) {
            return Err(LinkError::Uncovered { low, high, from, to });
        }
        let (from, to) = (from.value().max(low.value()), to.value().min(high.value()));
        if to <= from {
            return Err(LinkError::Uncovered { low, high, from: Megahertz(from), to: Megahertz(to) });
        }
        Ok(Self { from: Spot::of(from, grid), to: Spot::of(to, grid), width: to - from })
    }

    /// The mean over it of values, one for each frequency of the grid, of which the integral to each grid point is known.
    pub fn mean(self, values: &[f64], integral: &[f64]) -> f64 {
        (self.to.integral(values, integral) - self.from.integral(values, integral)) / self.width
    }
}

/// Where on a grid a frequency lies.
#[derive(Debug, Clone, Copy)]
struct Spot {
    /// Between which point and the next.
    cell: usize,
    /// The integral from that point to here of a straight line between the two, MHz: so much of what it is at that point, and so
    /// much of what it rises to the next.
    of_level: f64,
    of_rise: f64,
}

impl Spot {
    /// Of a frequency within the grid.
    fn of(frequency: f64, grid: &[Megahertz]) -> Self {
        let above = first_above(frequency, grid);
        let cell = above.clamp(1, grid.len().saturating_sub(1).max(1)) - 1;
        let Some(&[low, high]) = grid.get(cell..cell + 2) else {
            return Self { cell: 0, of_level: 0.0, of_rise: 0.0 };
        };
        let along = frequency - low.value();
        Self { cell, of_level: along, of_rise: along * along / (2.0 * (high - low).value()) }
    }

    /// Integral over frequency from the first grid point to here, of values of which the integral to each grid point is known.
    fn integral(self, values: &[f64], integral: &[f64]) -> f64 {
        let (Some(&[here, next]), Some(before)) =
            (values.get(self.cell..self.cell + 2), integral.get(self.cell))
        else {
            return 0.0;
        };
        before + self.of_level * here + self.of_rise * (next - here)
    }
}

/// Which point of a grid is the first above a frequency: looked for from where it lies on an even grid.
fn first_above(frequency: f64, grid: &[Megahertz]) -> usize {
    let (Some(low), Some(high)) = (grid.first(), grid.last()) else { return 0 };
    let along = (frequency - low.value()) / (high.value() - low.value()) * (grid.len() - 1) as f64;
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a guess; the cast saturates"
    )]
    let mut above = (along as usize).min(grid.len());
    while grid.get(above).is_some_and(|point| point.value() <= frequency) {
        above += 1;
    }
    while above
        .checked_sub(1)
        .and_then(|below| grid.get(below))
        .is_some_and(|point| point.value() > frequency)
    {
        above -= 1;
    }
    above
}
