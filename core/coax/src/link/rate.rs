//! What two nodes reach over a path.

use crate::estimates::link::USABLE_RATE;
use crate::link::ethernet::EthernetPort;
use crate::link::version::Version;
use crate::quantity::MegabitsPerSecond;
use serde::{Deserialize, Serialize};

/// A node: an adapter, or a gateway with one built in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Node {
    /// The newest version it supports.
    pub version: Version,
    /// Its Ethernet port.
    pub port: EthernetPort,
}

/// What keeps a link from being faster.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Limit {
    /// The path: its loss or its notches.
    Path,
    /// The older node's version: the path gives all that its nodes can use.
    Version,
    /// The slower of the two Ethernet ports.
    EthernetPort,
    /// The band: fewer channels are free, or usable where the network runs, than the version could use.
    Band,
}

/// Rates from one node to another with the network to themselves. All zero if they do not link.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinkRate {
    /// PHY rate: bits on the wire, as adapters show it on their own page.
    pub phy: MegabitsPerSecond,
    /// MAC rate: what passes over the coax, before the Ethernet ports. Time on the shared coax counts by this.
    pub mac: MegabitsPerSecond,
    /// Net rate: MAC rate, capped by the slower Ethernet port's TCP payload.
    pub net: MegabitsPerSecond,
    /// What keeps it from being faster.
    pub limit: Limit,
    /// Whether the path lets through all that the nodes can use on these channels: nothing better could be read off it.
    pub is_clean: bool,
}

/// Below this net rate a link counts as none.
pub const USABLE: MegabitsPerSecond = MegabitsPerSecond(USABLE_RATE.span.likely);

impl LinkRate {
    /// That of two nodes that do not link.
    pub const NONE: Self = {
        let none = MegabitsPerSecond(0.0);
        Self { phy: none, mac: none, net: none, limit: Limit::Path, is_clean: false }
    };

    /// Whether the nodes hear each other well enough to be a network.
    pub fn links(&self) -> bool {
        self.phy.value() > 0.0
    }
}
