//! What was measured.

use super::closed_list::closed_list;
use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

/// What was measured.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "what")]
pub enum ReadingKind {
    /// A level at one frequency: at an entry what comes in, at an outlet what gets there.
    Level {
        /// Frequency, MHz.
        mhz: f64,
        /// Level, dBmV.
        dbmv: f64,
    },
    /// How clean a digital channel arrives: the modulation error ratio (MER) at one frequency.
    ErrorRatio {
        /// Frequency, MHz.
        mhz: f64,
        /// Ratio, dB.
        db: f64,
    },
    /// The level at which the modem sends, from its own page.
    ModemSends {
        /// Level, dBmV.
        dbmv: f64,
    },
    /// Throughput between the bridge and an outlet, each way.
    Throughput {
        /// Towards the room, Mb/s.
        down_mbps: f64,
        /// From the room, Mb/s.
        up_mbps: f64,
    },
    /// A PHY rate from an adapter's own page.
    PhyRate {
        /// Mb/s.
        mbps: f64,
    },
    /// A round trip.
    RoundTrip {
        /// Milliseconds.
        ms: f64,
    },
    /// Power on the way from the bridge to this adapter, from the adapters' own pages. What is sent is turned down
    /// where the path is good, so only the difference tells the loss.
    Power {
        /// Sent by the bridge, dBm.
        sent_dbm: f64,
        /// Received here, dBm.
        received_dbm: f64,
    },
    /// How many nodes an adapter sees on its network, itself included.
    NodesSeen {
        /// The number.
        count: u32,
    },
    /// Packets lost on the way to an outlet.
    PacketLoss {
        /// Share lost, percent.
        percent: f64,
        /// Whether the network was busy meanwhile.
        under_load: bool,
    },
    /// Whether the adapter hears the others at all, as its lamp for the coax or its page shows.
    Link {
        /// How it stands.
        state: LinkState,
    },
    /// Internet speed that comes and goes.
    Swings {
        /// The slowest seen, Mb/s.
        low_mbps: f64,
        /// The fastest seen, Mb/s.
        high_mbps: f64,
        /// Whether it goes with heat or the time of day.
        with_heat_or_hour: bool,
    },
}

impl ReadingKind {
    /// The loss that two powers tell, dB.
    pub fn path_loss_db(self) -> Option<f64> {
        match self {
            Self::Power { sent_dbm, received_dbm } => Some(sent_dbm - received_dbm),
            _ => None,
        }
    }
}

closed_list! {
    /// How the link of an adapter stands.
    pub enum LinkState {
        /// It hears no other adapter.
        Absent = "none",
        /// It is there at times, and gone at others.
        ComesAndGoes = "comes_and_goes",
        /// It stays.
        Steady = "steady",
    }
}

closed_list! {
    /// Between what a speed test ran.
    pub enum TestReach ("value-reach") {
        /// To a server on the internet.
        Internet = "internet",
        /// Within the house.
        House = "house",
        /// Told by an adapter's own page.
        AdapterPage = "adapter_page",
    }
}

/// How a reading was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct HowMeasured {
    /// Between what.
    pub reach: TestReach,
    /// Whether any part of the way was by radio.
    pub over_radio: bool,
    /// The slowest network socket that the test went through, that of a computer for one, Mb/s: 100, 1000, 2500 or
    /// 10000; `None` while nobody said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub socket_mbps: Option<u32>,
}

impl HowMeasured {
    /// Taken this way, with nothing said of the sockets.
    pub const fn new(reach: TestReach, over_radio: bool) -> Self {
        Self { reach, over_radio, socket_mbps: None }
    }
}

/// One reading.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Its identity.
    pub id: SubjectId,
    /// The part it was taken at.
    pub about: Option<SubjectId>,
    /// The output of that part, 1 and up; `None` at its input, or where it has only one place to measure at.
    pub port: Option<u8>,
    /// What was measured.
    pub measured: ReadingKind,
    /// How; `None` while nobody said.
    pub how: Option<HowMeasured>,
}
