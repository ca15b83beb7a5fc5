//! Which version and which network socket an adapter has, as far as anybody said.

use facts::fact::SubjectId;

use super::{Adapter, NetworkPlan, Survey};

/// The version that a newer adapter has: the newest that is sold at retail (from memory).
pub const NEWEST_VERSION: &str = "2.5";

/// The port that a newer adapter has, Mb/s: what those of [`NEWEST_VERSION`] mostly have (common practice, no source).
pub const NEWEST_PORT_MBPS: u32 = 2500;

/// The network socket (Ethernet port) of an adapter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct AdapterPort {
    /// Its line rate, Mb/s.
    pub mbps: u32,
    /// Whether somebody said so, of the adapter or of the plan; else it is what adapters of its version mostly have.
    pub is_stated: bool,
}

impl NetworkPlan {
    /// The port of its adapters.
    pub fn port(&self) -> AdapterPort {
        stated_or_usual(self.ethernet_mbps, &self.version)
    }
}

impl Survey {
    /// The version of an adapter as it is written; that of the plan where nobody said.
    pub fn version_of<'a>(&'a self, adapter: Option<&'a Adapter>) -> &'a str {
        adapter.and_then(|adapter| adapter.version.as_deref()).unwrap_or(&self.network.version)
    }

    /// The outlet at the start of the network whose adapter has to be renewed too where a newer one at `outlet` shall gain
    /// anything: two adapters speak the newest version that both know. `None` where it is the newest already, or the same.
    pub fn bridge_to_renew(&self, outlet: SubjectId) -> Option<SubjectId> {
        let older = |adapter: &Adapter| adapter.bridge && self.version_of(Some(adapter)) != NEWEST_VERSION;
        let bridge = self.parts.values().find(|part| part.adapter.as_ref().is_some_and(older))?;
        (bridge.id != outlet).then_some(bridge.id)
    }

    /// The port of an adapter: its own, else that of the plan.
    pub fn port_of(&self, adapter: Option<&Adapter>) -> AdapterPort {
        let own = adapter.and_then(|adapter| adapter.ethernet_mbps);
        stated_or_usual(own.or(self.network.ethernet_mbps), self.version_of(adapter))
    }
}

/// Adapters of [`NEWEST_VERSION`] mostly have a port of 2.5 Gb/s, older ones of 1 Gb/s (common practice, no source).
fn stated_or_usual(stated: Option<u32>, version: &str) -> AdapterPort {
    let usual = if version == NEWEST_VERSION { NEWEST_PORT_MBPS } else { 1000 };
    AdapterPort { mbps: stated.unwrap_or(usual), is_stated: stated.is_some() }
}
