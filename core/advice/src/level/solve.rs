//! Gains between an entry and the outlets below it, draw by draw.

use std::collections::BTreeMap;

use coax::{Complex64, Dice, FrequencyGrid, Megahertz, OutletIndex, Solution, Wanted};
use facts::fact::SubjectId;
use house::record::Survey;

use super::Options;
use crate::error::AdviceError;
use crate::forecast::{Circuit, Terminal};

/// A level is that of a channel, not of one frequency: power is averaged over these offsets, MHz.
const WITHIN_CHANNEL: [f64; 3] = [-2.0, 0.0, 2.0];

/// The lowest frequency looked at, MHz.
const LEAST_MHZ: f64 = 0.5;

/// Gains in dB (negative: a loss), one a draw and frequency.
type Draws = Vec<Vec<f64>>;

/// What every outlet below one entry gets from it, and sends to it.
pub(super) struct Gains {
    mhz: Vec<f64>,
    down: BTreeMap<SubjectId, Draws>,
    up: BTreeMap<SubjectId, Draws>,
}

impl Gains {
    /// The gains from the entry to an outlet at one of the frequencies asked for, one a draw.
    pub(super) fn down(&self, outlet: SubjectId, mhz: f64) -> Vec<f64> {
        self.at(&self.down, outlet, mhz)
    }

    /// The gains from an outlet to the entry.
    pub(super) fn up(&self, outlet: SubjectId, mhz: f64) -> Vec<f64> {
        self.at(&self.up, outlet, mhz)
    }

    fn at(&self, all: &BTreeMap<SubjectId, Draws>, outlet: SubjectId, mhz: f64) -> Vec<f64> {
        let Some(place) = self.mhz.iter().position(|known| (known - mhz).abs() < 1e-9) else {
            return Vec::new();
        };
        all.get(&outlet)
            .map_or_else(Vec::new, |draws| draws.iter().filter_map(|draw| draw.get(place).copied()).collect())
    }
}

/// Solves the tree of an entry at some frequencies, MHz.
pub(super) fn solve(
    survey: &Survey,
    entry: SubjectId,
    mhz: &[f64],
    options: &Options,
) -> Result<Gains, AdviceError> {
    let mut gains = Gains { mhz: mhz.to_vec(), down: BTreeMap::new(), up: BTreeMap::new() };
    if mhz.is_empty() {
        return Ok(gains);
    }
    let circuit = Circuit::for_levels(survey, entry);
    let points = points(mhz);
    let grid = FrequencyGrid::new(points.iter().copied().map(Megahertz).collect())?;
    for draw in 0..u64::from(options.draws.max(1)) {
        let drawn = circuit.drawn(|key| Dice::thrown(options.seed, draw, key))?;
        let Some(street) = drawn.terminals.get(&Terminal::Street(entry)).copied() else { return Ok(gains) };
        let devices: Vec<(SubjectId, OutletIndex)> = drawn
            .terminals
            .iter()
            .filter_map(|(terminal, at)| match terminal {
                Terminal::Device(outlet) => Some((*outlet, *at)),
                _ => None,
            })
            .collect();
        let wanted: Vec<_> = devices.iter().flat_map(|(_, at)| [(*at, street), (street, *at)]).collect();
        let solution = drawn.tree.sample(&grid)?.solve(Wanted::Pairs(&wanted))?;
        for (outlet, at) in devices {
            let down = channels(mhz, &points, &solution, at, street);
            gains.down.entry(outlet).or_default().push(down);
            gains.up.entry(outlet).or_default().push(channels(mhz, &points, &solution, street, at));
        }
    }
    Ok(gains)
}

fn point(mhz: f64, offset: f64) -> f64 {
    (mhz + offset).max(LEAST_MHZ)
}

fn points(mhz: &[f64]) -> Vec<f64> {
    let mut points: Vec<f64> =
        mhz.iter().flat_map(|mhz| WITHIN_CHANNEL.map(|offset| point(*mhz, offset))).collect();
    points.sort_by(f64::total_cmp);
    points.dedup();
    points
}

fn channels(
    mhz: &[f64],
    points: &[f64],
    solution: &Solution,
    to: OutletIndex,
    from: OutletIndex,
) -> Vec<f64> {
    let Some(transfer) = solution.transfer(to, from) else { return vec![f64::NEG_INFINITY; mhz.len()] };
    let power: Vec<f64> = transfer.iter().map(Complex64::norm_sqr).collect();
    let at = |wanted: f64| {
        let place = points.partition_point(|point| *point < wanted);
        power.get(place).copied().unwrap_or_default()
    };
    let of_channel = |mhz: &f64| {
        let sum: f64 = WITHIN_CHANNEL.iter().map(|offset| at(point(*mhz, *offset))).sum();
        10.0 * (sum / WITHIN_CHANNEL.len() as f64).log10()
    };
    mhz.iter().map(of_channel).collect()
}
