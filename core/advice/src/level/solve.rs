//! Gains between an entry and the outlets below it, draw by draw.

use std::collections::BTreeMap;

use coax::{Dice, FrequencyGrid, Megahertz, OutletIndex, Sweep};
use facts::fact::SubjectId;
use house::record::Survey;

use super::Options;
use crate::error::AdviceError;
use crate::forecast::{Circuit, MeteredAt, Terminal};

/// A level is that of a channel, not of one frequency: power is averaged over these offsets, MHz.
const WITHIN_CHANNEL: [f64; 3] = [-2.0, 0.0, 2.0];

/// The lowest frequency looked at, MHz.
const LEAST_MHZ: f64 = 0.5;

/// Gains in dB (negative: a loss), one a draw and frequency.
pub(super) type Draws = Vec<Vec<f64>>;

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
    each_draw(&circuit, entry, mhz, options, |terminal, down, up| {
        if let Terminal::Device(outlet) = terminal {
            gains.down.entry(outlet).or_default().push(down);
            gains.up.entry(outlet).or_default().push(up);
        }
    })?;
    Ok(gains)
}

/// The gains from an entry to a meter, one list a draw with one figure for each frequency; empty where the meter is not on
/// the tree of that entry.
pub(super) fn solve_to_meter(
    survey: &Survey,
    entry: SubjectId,
    meter: MeteredAt,
    mhz: &[f64],
    options: &Options,
) -> Result<Draws, AdviceError> {
    let mut draws = Draws::new();
    let circuit = Circuit::for_meter(survey, entry, meter);
    each_draw(&circuit, entry, mhz, options, |terminal, down, _| {
        if terminal == Terminal::Meter {
            draws.push(down);
        }
    })?;
    Ok(draws)
}

/// Solves a circuit draw by draw; what is found between the street and each device or meter goes to `found`, downwards
/// and upwards, one figure for each frequency.
fn each_draw(
    circuit: &Circuit,
    entry: SubjectId,
    mhz: &[f64],
    options: &Options,
    mut found: impl FnMut(Terminal, Vec<f64>, Vec<f64>),
) -> Result<(), AdviceError> {
    let points = points(mhz);
    let grid = FrequencyGrid::new(points.iter().copied().map(Megahertz).collect())?;
    let mut sweep = Sweep::on(grid);
    for draw in 0..u64::from(options.draws.max(1)) {
        let drawn = circuit.drawn(|key| Dice::thrown(options.seed, draw, key))?;
        let Some(street) = drawn.terminals.get(&Terminal::Street(entry)).copied() else { return Ok(()) };
        let ends: Vec<(Terminal, OutletIndex)> = drawn
            .terminals
            .iter()
            .filter(|(terminal, _)| matches!(terminal, Terminal::Device(_) | Terminal::Meter))
            .map(|(terminal, at)| (*terminal, *at))
            .collect();
        let wanted: Vec<_> = ends.iter().flat_map(|(_, at)| [(*at, street), (street, *at)]).collect();
        let swept = sweep.powers(&[&drawn.tree], &wanted)?;
        for (powers, place) in
            swept.iter().flat_map(|powers| (0..ends.len()).map(move |place| (powers, place)))
        {
            let Some((terminal, _)) = ends.get(place) else { continue };
            let down = channels(mhz, &points, powers.of(2 * place));
            found(*terminal, down, channels(mhz, &points, powers.of(2 * place + 1)));
        }
    }
    Ok(())
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

/// The gain at each frequency where so much power gets through at each point.
fn channels(mhz: &[f64], points: &[f64], power: &[f64]) -> Vec<f64> {
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
