//! What uses the coax besides the network to be built.

use super::closed_list::closed_list;
use coax::trade::{CABLE_TOP, CABLE_TOP_3_1, CABLE_TOP_4_0};
use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

use crate::rating::Band;

closed_list! {
    /// A service on the coax.
    pub enum ServiceKind ("service") {
        /// TV from the cable company.
        CableTv = "cable_tv",
        /// Internet through a cable modem.
        CableInternet = "cable_internet",
        /// TV from an antenna.
        AntennaTv = "antenna_tv",
        /// TV from a dish.
        SatelliteTv = "satellite_tv",
        /// A coax network that the provider runs (TV boxes that talk to each other).
        ProviderNetwork = "provider_network",
        /// A fibre box that reaches the router over coax.
        FibreLink = "fibre_link",
        /// DC that one thing on the coax sends to another: to an amplifier, a mast preamplifier, a dish's converter.
        PowerOverCoax = "power_over_coax",
    }
}

closed_list! {
    /// How a TV service is sent.
    pub enum TvSignal ("value-signal") {
        /// Analog channels only.
        Analog = "analog",
        /// Digital channels only.
        Digital = "digital",
        /// Both.
        Both = "both",
    }
}

closed_list! {
    /// Generation of the cable modem, by the DOCSIS version printed on it or on its page.
    pub enum ModemGeneration {
        /// 3.0 or older.
        V3_0 = "3.0",
        /// 3.1.
        V3_1 = "3.1",
        /// 4.0.
        V4_0 = "4.0",
    }
}

impl ModemGeneration {
    /// The highest frequency that a modem of this generation may be made for, MHz: 1002 up to 3.0, 1218 for 3.1 (1794
    /// as an option), 1794 for 4.0 (from memory; 1218 and later 1794 as upper edges: broadbandtechreport.com, 2015-06-03).
    pub const fn may_reach_mhz(self) -> f64 {
        match self {
            Self::V3_0 => CABLE_TOP.value(),
            Self::V3_1 => CABLE_TOP_3_1.value(),
            Self::V4_0 => CABLE_TOP_4_0.value(),
        }
    }
}

/// What is known of a cable modem's bands. The top of what it receives is [`Service::top_mhz`].
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct ModemBands {
    /// Its generation.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub generation: Option<ModemGeneration>,
    /// Upper edge of what it sends, MHz: 42, 65, 85, 204, or 396 or 684 where the split is ultra-high.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub upstream_top_mhz: Option<f64>,
}

closed_list! {
    /// How several satellite receivers share one cable.
    pub enum SingleCable ("value-single_cable") {
        /// EN 50494:2007.
        En50494 = "en50494",
        /// EN 50607:2015.
        En50607 = "en50607",
    }
}

/// A coax network that is not ours: the provider's, or the link of a fibre box. It is never given a password, cut by
/// a filter or taken for an intruder.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct OtherNetwork {
    /// Its MoCA version, where known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub version: Option<String>,
    /// The bands that its channels take, where known.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub bands: Vec<Band>,
    /// How many nodes it has; 0 while not known.
    #[serde(skip_serializing_if = "is_zero")]
    pub nodes: u32,
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "the signature that serde asks for")]
fn is_zero(number: &u32) -> bool {
    *number == 0
}

/// Who powers whom over the coax.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct PowerFeed {
    /// The part where DC goes in: an inserter, or the outlet with a supply or a receiver.
    pub from: SubjectId,
    /// The part that needs it: an amplifier, or the entry behind which a preamplifier or dish stands.
    pub to: SubjectId,
}

/// A service as found.
#[derive(Debug, Clone, PartialEq)]
pub struct Service {
    /// Its identity.
    pub id: SubjectId,
    /// What it is.
    pub kind: ServiceKind,
    /// The highest frequency it uses towards the house, MHz, where known (a modem may reach 1218).
    pub top_mhz: Option<f64>,
    /// The entry by which it comes in, where known.
    pub entry: Option<SubjectId>,
    /// For TV: analog, digital or both.
    pub signal: Option<TvSignal>,
    /// For cable internet: the modem.
    pub modem: Option<ModemBands>,
    /// For cable internet: whether it drops out now and then, as whoever uses it says.
    pub drops_out: bool,
    /// For a dish: how several receivers share one cable.
    pub single_cable: Option<SingleCable>,
    /// For a network that is not ours: its channels and nodes.
    pub network: Option<OtherNetwork>,
    /// For DC: who powers whom.
    pub power: Option<PowerFeed>,
}

impl Service {
    /// A service of which only the kind is known.
    pub fn new(id: SubjectId, kind: ServiceKind) -> Self {
        Self {
            id,
            kind,
            top_mhz: None,
            entry: None,
            signal: None,
            modem: None,
            drops_out: false,
            single_cable: None,
            network: None,
            power: None,
        }
    }

    /// Whether it comes through the cable company's drop.
    pub fn is_cable(&self) -> bool {
        matches!(self.kind, ServiceKind::CableTv | ServiceKind::CableInternet)
    }

    /// The upper edge of what the modem sends, MHz, where known.
    pub fn upstream_top_mhz(&self) -> Option<f64> {
        self.modem?.upstream_top_mhz
    }

    /// The highest frequency that the service uses or, where nobody said, may use by the modem's generation, MHz.
    pub fn may_reach_mhz(&self) -> Option<f64> {
        self.top_mhz.or_else(|| self.modem?.generation.map(ModemGeneration::may_reach_mhz))
    }
}
