//! One thing on the coax: an entry, a splitter, an outlet.

use std::collections::BTreeMap;
use std::sync::Arc;

use coax::Megahertz;
use coax::model::Measured;
use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

use crate::rating::{Band, PartRating};

/// What a part is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PartKind {
    /// Where a cable comes in from the street, the antenna or the dish.
    Entry,
    /// The block that bonds the cable's shield at the entry.
    GroundBlock,
    /// The low-pass filter that keeps the coax network in the house.
    EntryFilter,
    /// Divides the signal evenly or not between its legs.
    Splitter,
    /// Takes a little off the through line.
    Tap,
    /// Lifts the signal of the TV or modem bands.
    Amplifier,
    /// Two cables screwed together.
    Barrel,
    /// Where a device is plugged in.
    Outlet,
    /// A 75-ohm cap as a part of its own, at the end of a run.
    Terminator,
    /// Passes high frequencies only: keeps TV and modem bands apart from the coax network's.
    HighPassFilter,
    /// Joins satellite and antenna or cable signals on one wire, or parts them.
    SatelliteCombiner,
    /// Takes a fixed loss off every signal.
    Pad,
    /// Feeds DC into the coax for an amplifier.
    PowerInserter,
    /// A part found whose kind is not known yet.
    Unknown,
}

/// Where a part gets its signal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Feed {
    /// From one port of another part, over a run if one is known.
    From(FeedFrom),
    /// Somebody looked: nothing feeds it. It heads a tree with no street link.
    Nothing,
}

/// One port of another part, and the run between.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FeedFrom {
    /// The feeding part.
    pub part: SubjectId,
    /// Its port: 1 and up are its outputs (an amplifier's unamplified port comes after its outputs).
    pub port: u8,
    /// The run between the two; `None` while it is not recorded (a run of unknown cable and length).
    pub run: Option<SubjectId>,
}

/// What stands on a port that feeds no part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PortEnd {
    /// A 75-ohm cap.
    Capped,
    /// Nothing.
    Open,
    /// A cable leaves and nobody knows where to.
    LooseEnd,
}

/// What kind of signal comes in at an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EntryKind {
    /// The cable company's drop.
    Cable,
    /// A roof or indoor antenna.
    Antenna,
    /// A dish.
    Satellite,
    /// A fibre box that puts TV or internet on the coax.
    FibreBox,
    /// Not known.
    Unknown,
}

/// Whether an entry is joined to the world outside.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum EntryState {
    /// The line is live or at least joined.
    Connected,
    /// Somebody saw the loose end: nothing is joined to it.
    CutOff,
    /// Not known; treated as connected where that is the careful side.
    Unknown,
}

/// What is plugged in at an outlet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Plugged {
    /// A TV set.
    Tv,
    /// A TV box of the provider or one's own.
    TvBox,
    /// The cable modem, or a modem and router in one.
    Modem,
    /// A gateway that itself speaks MoCA.
    MocaGateway,
    /// A satellite receiver.
    SatelliteReceiver,
    /// A fibre box that reaches the router over coax.
    FibreBox,
    /// The DC supply of an amplifier.
    PowerSupply,
    /// A device that is not known.
    Other,
}

impl Plugged {
    /// Whether it is a box that may have a second socket for the next cable; a TV set and a power supply have none
    /// (common practice, no source).
    pub const fn may_pass_on(self) -> bool {
        !matches!(self, Self::Tv | Self::PowerSupply)
    }
}

/// A MoCA adapter at an outlet, there or planned.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Adapter {
    /// MoCA version as written on it: `1.0`, `1.1`, `2.0`, `2.0 bonded`, `2.5`.
    pub version: String,
    /// Its Ethernet port in Mb/s: 100, 1000, 2500 or 10000.
    pub ethernet_mbps: u32,
    /// Whether it bridges the coax to the router's network.
    pub bridge: bool,
}

/// How an adapter and a device share one outlet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sharing {
    /// By the adapter's own through port.
    ThroughPort,
    /// By a splitter at the outlet.
    Splitter,
}

/// One thing on the coax, as far as it is known.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Its identity.
    pub id: SubjectId,
    /// What it is.
    pub kind: PartKind,
    /// The mark on tape.
    pub tag: Option<String>,
    /// Where it sits, in words.
    pub place: Option<String>,
    /// The feed as last stated. Whether it holds is [`Wiring`](super::Wiring)'s to say.
    pub feed: Option<Feed>,
    /// What is printed on it.
    pub label: Option<String>,
    /// What it is rated for: typed, or read from the label.
    pub rating: PartRating,
    /// What is on the ports that feed nothing.
    pub ends: BTreeMap<u8, PortEnd>,
    /// The room of an outlet.
    pub room: Option<SubjectId>,
    /// What is plugged in at an outlet; `None` while nobody looked.
    pub plugged: Option<Vec<Plugged>>,
    /// The adapter at an outlet.
    pub adapter: Option<Adapter>,
    /// How the adapter and the device at an outlet share it; `None` while nothing is there for it yet.
    pub sharing: Option<Sharing>,
    /// Whether a filter that stops the MoCA band sits at the port of the device at an outlet.
    pub device_filter: bool,
    /// How an instrument found it: port 1 of the file faces the street, the others are its outputs in order. It goes
    /// before what the part is rated for.
    pub measured: Option<Arc<Measured>>,
    /// For an entry: what comes in.
    pub entry_kind: EntryKind,
    /// For an entry: whether it is joined to the world outside.
    pub entry_state: EntryState,
}

impl Part {
    /// Whether it is there to stop the MoCA band at the entry: an entry filter, or a ground block with one built in, which
    /// says so by its stop band or its rejection.
    pub fn is_entry_filter(&self) -> bool {
        let built_in = self.rating.stop_band.is_some() || self.rating.rejection_db.is_some();
        self.kind == PartKind::EntryFilter || (self.kind == PartKind::GroundBlock && built_in)
    }

    /// A part of which only the kind is known.
    pub fn new(id: SubjectId, kind: PartKind) -> Self {
        Self {
            id,
            kind,
            tag: None,
            place: None,
            feed: None,
            label: None,
            rating: PartRating::default(),
            ends: BTreeMap::new(),
            room: None,
            plugged: None,
            adapter: None,
            sharing: None,
            device_filter: false,
            measured: None,
            entry_kind: EntryKind::Unknown,
            entry_state: EntryState::Unknown,
        }
    }

    /// The number of ports on the house side, 1 up to this: outputs, plus an amplifier's unamplified port.
    pub fn outputs(&self) -> u8 {
        match self.kind {
            PartKind::Outlet => u8::from(self.rating.passes_on),
            PartKind::Terminator => 0,
            PartKind::Splitter | PartKind::Tap => self.rating.legs.max(2),
            PartKind::SatelliteCombiner => 2,
            PartKind::Amplifier => self.rating.legs.max(1) + u8::from(self.rating.modem_port),
            PartKind::Entry
            | PartKind::GroundBlock
            | PartKind::EntryFilter
            | PartKind::Barrel
            | PartKind::HighPassFilter
            | PartKind::Pad
            | PartKind::PowerInserter
            | PartKind::Unknown => 1,
        }
    }

    /// Whether it is an outlet where the cable goes on through a box: the outlet passes it on, and a box is plugged in
    /// that may.
    pub fn passes_on_through_box(&self) -> bool {
        let boxed = || self.plugged.iter().flatten().any(|device| device.may_pass_on());
        self.kind == PartKind::Outlet && self.rating.passes_on && boxed()
    }

    /// What an instrument found, if that was over all of this band and at each port.
    pub fn measured_over(&self, band: Band) -> Option<&Arc<Measured>> {
        let has_ports = !matches!(self.kind, PartKind::Entry | PartKind::Outlet | PartKind::Terminator);
        self.measured.as_ref().filter(|measured| {
            has_ports
                && measured.ports() == usize::from(self.outputs()) + 1
                && measured.covers(Megahertz(band.low_mhz), Megahertz(band.high_mhz))
        })
    }

    /// What is known of a free port; `None` where nobody looked.
    pub fn end(&self, port: u8) -> Option<PortEnd> {
        self.ends.get(&port).copied()
    }
}
