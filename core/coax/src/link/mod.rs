//! The link: from the power a path lets through, frequency by frequency, to the rates of two nodes.
//!
//! A node sends its power evenly over a channel's subcarriers. What arrives, over thermal noise, ingress and the two
//! nodes' own imperfection, decides how many bits each subcarrier carries ([`BitLoading`]); their sum is the PHY
//! rate, what the medium access leaves of it the MAC rate, and the slower Ethernet port caps the net rate
//! ([`LinkRate`]). All nodes of a network share one channel in time ([`shared`]).
//!
//! ```
//! use coax::link::{self, EthernetPort, LinkDraw, Node, Version};
//! use coax::{Decibels, Megahertz};
//!
//! # fn main() -> Result<(), link::LinkError> {
//! // A path that loses 40 dB at every frequency of Extended D.
//! let grid: Vec<Megahertz> = (0..=550).map(|step| Megahertz(1125.0 + f64::from(step))).collect();
//! let path = vec![Decibels(-40.0).power(); grid.len()];
//! let adapter = Node { version: Version::V2_5, port: EthernetPort::Gigabit };
//! let places = link::Candidates::new(link::placements(Version::V2_5));
//! let pair = link::BitLoading::new(&grid, path.as_slice(), adapter, adapter, &LinkDraw::likely())?;
//! // Five channels together: the gigabit ports, not the coax, set the pace.
//! let widest = &pair.rates(&places, 2)?[0];
//! assert_eq!(widest.limit, link::Limit::EthernetPort);
//! # Ok(())
//! # }
//! ```
//!
//! Not here: how the path's transfer comes about, and any word for a user.

mod bits;
mod candidates;
mod carried;
mod carried_in_draws;
mod channel;
mod draw;
mod error;
mod ethernet;
mod latency;
mod loading;
mod mac;
mod mask;
mod noise;
mod rate;
pub mod shared;
mod used;
mod version;

pub use bits::{MeanBits, bits, snr_for_bits};
pub use candidates::Candidates;
pub use carried::Carried;
pub use carried_in_draws::CarriedInDraws;
pub use channel::{
    Channel, EXTENDED_D_HIGH, EXTENDED_D_LOW, Placement, PrimaryOffset, Side, placements, placements_avoiding,
};
pub use draw::{LinkDraw, MacEfficiency};
pub use error::LinkError;
pub use ethernet::{EthernetPort, frames_per_second, tcp_payload_rate};
pub use latency::round_trip_added;
pub use loading::{BitLoading, PathPower, rate};
pub use mac::{least_mac_rate_1_1, mac_rate};
pub use mask::{MaskGrid, frequencies_of_mask, mask_of_frequencies};
pub use noise::{noise_density, thermal_noise};
pub use rate::{Limit, LinkRate, Node, USABLE};
pub use version::{Figure, SUBCARRIER_SPACING, Version, common, most_nodes};
