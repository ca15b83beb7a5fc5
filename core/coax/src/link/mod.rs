//! The link: from the power a path lets through, frequency by frequency, to the rates of two nodes.
//!
//! A node sends its power evenly over a channel's subcarriers. What arrives, over thermal noise, ingress and the two
//! nodes' own imperfection, decides how many bits each subcarrier carries ([`BitLoading`]); their sum is the PHY
//! rate, what the medium access leaves of it the MAC rate, and the slower Ethernet port caps the net rate
//! ([`LinkRate`]). All nodes of a network share one channel in time ([`shared`]).
//!
//! Not here: how the path's transfer comes about, and any word for a user.

mod best;
mod bits;
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
mod version;

pub use best::{Best, best_placement};
pub use bits::{MeanBits, bits, snr_for_bits};
pub use channel::{
    Channel, EXTENDED_D_HIGH, EXTENDED_D_LOW, Placement, PrimaryOffset, Side, placements, placements_avoiding,
};
pub use draw::LinkDraw;
pub use error::LinkError;
pub use ethernet::{EthernetPort, frames_per_second, tcp_payload_rate};
pub use latency::round_trip_added;
pub use loading::BitLoading;
pub use mac::{least_mac_rate_1_1, mac_rate};
pub use mask::{MaskGrid, frequencies_of_mask, mask_of_frequencies};
pub use noise::{noise_density, thermal_noise};
pub use rate::{Limit, LinkRate, Node, rate};
pub use version::{Figure, Version, common, most_nodes};
