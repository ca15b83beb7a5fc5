//! How many bits a path carries, frequency by frequency, ready to be read off for any channel.

use std::sync::Arc;

use crate::link::bits::{Hearing, MeanBits};
use crate::link::candidates::Candidates;
use crate::link::carried::{Carried, Pair};
use crate::link::channel::{Channel, Placement};
use crate::link::draw::LinkDraw;
use crate::link::error::LinkError;
use crate::link::noise::noise_density;
use crate::link::rate::{LinkRate, Node};
use crate::link::used::Used;
use crate::link::version::{Version, common};
use crate::quantity::{Decibels, Megahertz};

/// Below this a mean number of bits is the rounding left over by sums, not a link.
const NO_BITS: f64 = 1e-9;

/// Bits loaded over frequency from one node to another, in one draw. One pass over the path serves all placements:
/// the running integral over frequency is kept, so a channel costs two look-ups.
///
/// Bits between two frequencies of the grid are taken on the straight line between them, and averaged over the band
/// of the channel that its used subcarriers fill. A grid of about 1 MHz shows the notches that echoes of a house cut.
#[derive(Debug, Clone)]
pub struct BitLoading<'g> {
    path: Arc<PathPower<'g>>,
    bits: Vec<f64>,
    /// Integral of `bits` over frequency from the first grid point to each.
    integral: Vec<f64>,
    /// The least mean power transfer of a channel that still carries bits.
    least_transfer: f64,
    pair: Pair,
}

impl<'g> BitLoading<'g> {
    /// The loading from `from` to `to` over a path that lets `power_transfer` (|S|^2, one for each frequency of
    /// `grid`) through. Errors name the first frequency or transfer that is not usable.
    pub fn new(
        grid: &'g [Megahertz],
        power_transfer: impl Into<Vec<f64>>,
        from: Node,
        to: Node,
        draw: &LinkDraw,
    ) -> Result<Self, LinkError> {
        Self::over(&Arc::new(PathPower::new(grid, power_transfer)?), from, to, draw)
    }

    /// The same over a path that was looked at: both ways of a pair, or what several draws make of their nodes.
    pub fn over(path: &Arc<PathPower<'g>>, from: Node, to: Node, draw: &LinkDraw) -> Result<Self, LinkError> {
        let version = common(from.version, to.version);
        let sent = Decibels(draw.tx_power.value()).power() / version.used_width().hertz();
        let noise = noise_density(draw.noise_figure, draw.ingress);
        let gap = (draw.gap + draw.margin).power();
        let imperfection = (-draw.snr_cap(version)).power();
        let curve = MeanBits::new(version.most_bits().value, draw.subcarrier_spread);
        let unhindered = curve.at(1.0 / (gap * imperfection));
        // Over the gap, SNR is heard / (noise + heard x imperfection) / gap.
        let (scale, floor, own) = (sent, gap * noise, gap * imperfection);
        if !(scale.is_finite() && floor.is_normal() && own.is_normal() && unhindered.is_finite()) {
            return Err(LinkError::Draw);
        }
        let mut bits = vec![0.0; path.transfer.len()];
        curve.over(&path.transfer, Hearing { scale, floor, own }, &mut bits);
        let integral = running_integral(path.grid, &bits);
        Ok(Self {
            path: Arc::clone(path),
            bits,
            integral,
            least_transfer: (draw.least_received - draw.tx_power).power(),
            pair: Pair {
                unhindered,
                version,
                port: from.port.min(to.port).payload_rate(),
                mac_efficiency: draw.mac_efficiency.of(version),
                full_phy: draw.full_phy(version),
            },
        })
    }

    /// The version the two nodes speak.
    pub fn version(&self) -> Version {
        self.pair.version
    }

    /// Mean bits of a subcarrier at each frequency of the grid.
    pub fn bits(&self) -> &[f64] {
        &self.bits
    }

    /// Mean bits a subcarrier of `channel`, over the band its used subcarriers fill: none where less arrives in it than a node
    /// works with. An end of the grid may fall short
    /// of that band by one step of the grid; by more is an error.
    pub fn mean_bits(&self, channel: Channel) -> Result<f64, LinkError> {
        Ok(self.mean_over(Used::by(self.pair.version, channel, self.path.grid)?))
    }

    fn mean_over(&self, used: Used) -> f64 {
        let path = &self.path;
        // No mean lies below the least of all.
        if path.least < self.least_transfer && used.mean(&path.transfer, &path.integral) < self.least_transfer
        {
            return 0.0;
        }
        let mean = used.mean(&self.bits, &self.integral);
        if mean < NO_BITS { 0.0 } else { mean.min(f64::from(self.pair.version.most_bits().value)) }
    }

    /// The rates when the network, of `nodes_in_network` nodes, runs at `placement`.
    pub fn rate(&self, placement: &Placement, nodes_in_network: usize) -> Result<LinkRate, LinkError> {
        let channels = placement.channels_for(self.pair.version);
        let mut bits = 0.0;
        for &channel in channels {
            bits += self.mean_bits(channel)?;
        }
        Ok(self.pair.rate_of(bits, channels.len(), nodes_in_network))
    }

    /// The rates at each of several placements, in their order: what a channel carries is worked out once for all placements
    /// that share it.
    pub fn rates(
        &self,
        candidates: &Candidates,
        nodes_in_network: usize,
    ) -> Result<Vec<LinkRate>, LinkError> {
        let carried = self.carried(candidates)?;
        let rate = |placement| carried.rate(candidates, placement, nodes_in_network);
        Ok((0..candidates.placements().len()).map(rate).collect())
    }

    /// What each channel of some placements carries: all that the rate at any of them hangs on, in little memory.
    pub fn carried(&self, candidates: &Candidates) -> Result<Carried, LinkError> {
        let Some(seen) = candidates.seen_by(self.pair.version) else {
            return Ok(Carried::new(self.pair, Vec::new()));
        };
        let bits = if let Some(used) = candidates.used_on(self.path.grid, seen) {
            used.iter().map(|used| self.mean_over(*used)).collect()
        } else {
            let bits = seen.channels.iter().map(|channel| self.mean_bits(*channel));
            bits.collect::<Result<_, LinkError>>()?
        };
        Ok(Carried::new(self.pair, bits))
    }
}

/// Rates from `from` to `to` over a path, when their network of `nodes_in_network` nodes runs at `placement`.
/// For several placements of one path, make a [`BitLoading`] once and ask that.
pub fn rate(
    grid: &[Megahertz],
    power_transfer: &[f64],
    from: Node,
    to: Node,
    placement: &Placement,
    nodes_in_network: usize,
    draw: &LinkDraw,
) -> Result<LinkRate, LinkError> {
    BitLoading::new(grid, power_transfer, from, to, draw)?.rate(placement, nodes_in_network)
}

/// What a path lets through, ready to be read off for any channel.
#[derive(Debug, Clone)]
pub struct PathPower<'g> {
    grid: &'g [Megahertz],
    transfer: Vec<f64>,
    /// Integral of the power transfer over frequency from the first grid point to each.
    integral: Vec<f64>,
    /// The least of it.
    least: f64,
}

impl<'g> PathPower<'g> {
    /// Of a path that lets `power_transfer` (|S|^2, one for each frequency of `grid`) through. Errors name the first frequency or
    /// transfer that is not usable.
    pub fn new(grid: &'g [Megahertz], power_transfer: impl Into<Vec<f64>>) -> Result<Self, LinkError> {
        let transfer = power_transfer.into();
        check(grid, &transfer)?;
        let least = transfer.iter().copied().fold(f64::INFINITY, f64::min);
        Ok(Self { grid, integral: running_integral(grid, &transfer), transfer, least })
    }
}

fn check(grid: &[Megahertz], power_transfer: &[f64]) -> Result<(), LinkError> {
    if grid.len() != power_transfer.len() {
        return Err(LinkError::Lengths { frequencies: grid.len(), transfers: power_transfer.len() });
    }
    if grid.len() < 2 {
        let frequency = grid.first().copied().unwrap_or_default();
        return Err(LinkError::Grid { place: grid.len().saturating_sub(1), frequency });
    }
    let mut last = 0.0;
    for (place, (&frequency, &transfer)) in grid.iter().zip(power_transfer).enumerate() {
        if !(frequency.value().is_finite() && frequency.value() > last) {
            return Err(LinkError::Grid { place, frequency });
        }
        if !(transfer.is_finite() && transfer >= 0.0) {
            return Err(LinkError::Transfer { frequency, transfer });
        }
        last = frequency.value();
    }
    Ok(())
}

fn running_integral(grid: &[Megahertz], values: &[f64]) -> Vec<f64> {
    let mut integral = vec![0.0; grid.len()];
    let mut sum = 0.0;
    let steps = grid.windows(2).zip(values.windows(2));
    for ((frequencies, values), integral) in steps.zip(integral.iter_mut().skip(1)) {
        if let (&[low, high], &[here, next]) = (frequencies, values) {
            sum += 0.5 * (high - low).value() * (here + next);
            *integral = sum;
        }
    }
    integral
}
