//! Parts on a bench: alone or in a chain, between matched ends.

use coax::{Decibels, Metres, model::Cable, model::Link};
use coax::{
    End, FrequencyGrid, Megahertz, Model, Network, OutletIndex, PartIndex, ScatterMatrix, Solution, Wanted,
};

pub fn solved(network: &Network, frequencies: &FrequencyGrid) -> Solution {
    network.tree(PartIndex(0)).unwrap().sample(frequencies).unwrap().solve(Wanted::All).unwrap()
}

pub fn at(megahertz: f64) -> FrequencyGrid {
    FrequencyGrid::new(vec![Megahertz(megahertz)]).unwrap()
}

pub fn lossless(length: f64, impedance: f64, velocity: f64) -> Model {
    Model::Cable(Cable::new(Metres(length), impedance, 0.0, 0.0, velocity).unwrap())
}

/// A joint without loss that reflects this return loss.
pub fn reflecting(return_loss: f64) -> Model {
    Model::Link(Link::reflecting(Decibels(return_loss)).unwrap())
}

pub fn chain(models: Vec<Model>) -> (Network, OutletIndex, OutletIndex) {
    let mut network = Network::new();
    let parts: Vec<_> = models.into_iter().map(|model| network.add(model)).collect();
    for pair in parts.windows(2) {
        network.join(pair[0], 1, pair[1], 0);
    }
    let near = network.outlet(parts[0], 0);
    let far = network.outlet(*parts.last().unwrap(), 1);
    (network, near, far)
}

/// A two-port whose far end is open: its reflection.
pub fn open_ended(model: Model, megahertz: f64) -> coax::Complex64 {
    let mut network = Network::new();
    let part = network.add(model);
    let outlet = network.outlet(part, 0);
    network.end(part, 1, End::Open);
    solved(&network, &at(megahertz)).reflection(outlet).unwrap()[0]
}

pub fn loss(solution: &Solution, to: OutletIndex, from: OutletIndex) -> f64 {
    solution.loss(to, from)[0].value()
}

/// One part's matrix at one frequency.
pub fn matrix(model: &Model, megahertz: f64) -> ScatterMatrix {
    let mut matrix = ScatterMatrix::new(0);
    model.scatter(Megahertz(megahertz), &mut matrix);
    matrix
}

/// Loss in dB between two ports of a part on its own.
pub fn part_loss(model: &Model, to: usize, from: usize, megahertz: f64) -> f64 {
    -20.0 * matrix(model, megahertz).at(to, from).norm().log10()
}
