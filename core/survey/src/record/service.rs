//! What uses the coax besides the network to be built.

use serde::{Deserialize, Serialize};

use crate::fact::SubjectId;

/// A service on the coax.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ServiceKind {
    /// TV from the cable company.
    CableTv,
    /// Internet through a cable modem.
    CableInternet,
    /// TV from an antenna.
    AntennaTv,
    /// TV from a dish.
    SatelliteTv,
    /// A coax network that the provider runs (TV boxes that talk to each other).
    ProviderNetwork,
    /// A fibre box that reaches the router over coax.
    FibreLink,
}

/// A service as found.
#[derive(Debug, Clone, PartialEq)]
pub struct Service {
    /// Its identity.
    pub id: SubjectId,
    /// What it is.
    pub kind: ServiceKind,
    /// The highest frequency it uses, MHz, where known (a modem may reach 1218).
    pub top_mhz: Option<f64>,
}
