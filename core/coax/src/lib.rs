//! The physics of a house's coaxial wiring tree: pure functions, no clock, no input or output.
//!
//! Parts are found as ratings ([`rated`]: ranges), drawn to concrete multiports ([`model`]), joined to a [`Network`],
//! checked to be a [`Tree`], evaluated on a [`FrequencyGrid`] and solved exactly.
//!
//! A splitter and two outlets:
//!
//! ```
//! use coax::model::{Cable, Model, Splitter};
//! use coax::{Decibels, End, FrequencyGrid, Megahertz, Metres, Network, Wanted};
//!
//! # fn main() -> Result<(), coax::CoaxError> {
//! let mut house = Network::new();
//! let legs = [Decibels(3.5), Decibels(3.5)];
//! let splitter = house.add(Model::Splitter(Splitter::new(&legs, Decibels(25.0), Decibels(18.0))?));
//! let run = house.add(Model::Cable(Cable::new(Metres(10.0), 75.0, 0.66, 0.0008, 0.83)?));
//! house.join(splitter, 1, run, 0);
//! house.end(splitter, 0, End::Open); // the street's cable is off
//! let desk = house.outlet(run, 1);
//! let router = house.outlet(splitter, 2);
//!
//! let band = FrequencyGrid::even(Megahertz(1125.0), Megahertz(1675.0), 64)?;
//! let solution = house.tree(splitter)?.sample(&band)?.solve(Wanted::All)?;
//! let loss = solution.loss(desk, router);
//! assert_eq!(loss.len(), 64);
//! // Up one leg, back from the open input, down the other: at least twice 3.5 dB less what isolation adds.
//! assert!(loss.iter().all(|loss| loss.value() > 5.0));
//! # Ok(())
//! # }
//! ```

pub mod dice;
pub mod error;
pub mod estimates;
pub mod grid;
mod lanes;
pub mod link;
mod look;
pub mod model;
mod multiport;
pub mod quantity;
pub mod rated;
pub mod scatter;
pub mod solve;
pub mod span;
pub mod touchstone;
pub mod trade;
pub mod typed;

pub use dice::{Dice, Throw};
pub use error::CoaxError;
pub use estimates::Estimate;
pub use grid::FrequencyGrid;
pub use link::{EthernetPort, LinkDraw, LinkError, LinkRate, Node, Placement, Version};
pub use model::Model;
pub use num_complex::Complex64;
pub use quantity::{
    Celsius, DecibelMillivolts, DecibelMilliwatts, Decibels, MegabitsPerSecond, Megahertz, Metres,
    Milliseconds,
};
pub use scatter::ScatterMatrix;
pub use solve::{
    BranchNumbers, Branches, End, Network, NumberedBranches, OutletIndex, PartIndex, Powers, RootPowers,
    Sampled, Samples, Solution, Sweep, Tree, Wanted, cores,
};
pub use span::{Backing, Span};
pub use touchstone::TouchstoneError;
