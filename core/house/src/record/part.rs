//! One thing on the coax: an entry, a splitter, an outlet.

use super::closed_list::closed_list;
use std::collections::BTreeMap;
use std::sync::Arc;

use coax::Megahertz;
use coax::model::Measured;
use coax::trade::SATELLITE_HIGH;
use facts::fact::SubjectId;
use label::{Doubt, LabelReading};
use serde::{Deserialize, Serialize};

use crate::rating::{Band, PartRating, read_print};

closed_list! {
    /// What a part is.
    pub enum PartKind ("part") {
        /// Where a cable comes in from the street, the antenna or the dish.
        Entry = "entry",
        /// The block that bonds the cable's shield at the entry.
        GroundBlock = "ground_block",
        /// The low-pass filter that keeps the coax network in the house.
        EntryFilter = "entry_filter",
        /// Divides the signal evenly or not between its legs.
        Splitter = "splitter",
        /// Takes a little off the through line.
        Tap = "tap",
        /// Lifts the signal of the TV or modem bands.
        Amplifier = "amplifier",
        /// Two cables screwed together.
        Barrel = "barrel",
        /// Where a device is plugged in.
        Outlet = "outlet",
        /// A 75-ohm cap as a part of its own, at the end of a run.
        Terminator = "terminator",
        /// Passes high frequencies only: keeps TV and modem bands apart from the coax network's.
        HighPassFilter = "high_pass_filter",
        /// Joins satellite and antenna or cable signals on one wire, or parts them.
        SatelliteCombiner = "satellite_combiner",
        /// Takes a fixed loss off every signal.
        Pad = "pad",
        /// Feeds DC into the coax for an amplifier.
        PowerInserter = "power_inserter",
        /// A part found whose kind is not known yet.
        Unknown = "unknown",
    }
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

closed_list! {
    /// What stands on a port that feeds no part.
    pub enum PortEnd ("value-end") {
        /// A 75-ohm cap.
        Capped = "capped",
        /// Nothing.
        Open = "open",
        /// A cable leaves and nobody knows where to.
        LooseEnd = "loose_end",
        /// A cable leaves for another home: no advice touches it.
        AnotherHome = "another_home",
    }
}

closed_list! {
    /// What kind of signal comes in at an entry.
    pub enum EntryKind ("value-entry_kind") {
        /// The cable company's drop.
        Cable = "cable",
        /// A roof or indoor antenna.
        Antenna = "antenna",
        /// A dish.
        Satellite = "satellite",
        /// A fibre box that puts TV or internet on the coax.
        FibreBox = "fibre_box",
        /// Not known.
        Unknown = "unknown",
    }
}

closed_list! {
    /// Whether an entry is joined to the world outside.
    pub enum EntryState ("value-entry_state") {
        /// The line is live or at least joined.
        Connected = "connected",
        /// Somebody saw the loose end: nothing is joined to it.
        CutOff = "cut_off",
        /// Not known; treated as connected where that is the careful side.
        Unknown = "unknown",
    }
}

closed_list! {
    /// What is plugged in at an outlet.
    pub enum Plugged ("value-plugged") {
        /// A TV set.
        Tv = "tv",
        /// A TV box of the provider or one's own.
        TvBox = "tv_box",
        /// The cable modem, or a modem and router in one.
        Modem = "modem",
        /// A gateway that itself speaks MoCA.
        MocaGateway = "moca_gateway",
        /// A satellite receiver.
        SatelliteReceiver = "satellite_receiver",
        /// A fibre box that reaches the router over coax.
        FibreBox = "fibre_box",
        /// The DC supply of an amplifier.
        PowerSupply = "power_supply",
        /// A device that is not known.
        Other = "other",
    }
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
    /// MoCA version as written on it: `1.0`, `1.1`, `2.0`, `2.0 bonded`, `2.5`; `None` while nobody said: then it is what
    /// the plan of the network has.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub version: Option<String>,
    /// Its Ethernet port in Mb/s: 100, 1000, 2500 or 10000; `None` as for the version.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ethernet_mbps: Option<u32>,
    /// Whether it bridges the coax to the router's network.
    pub bridge: bool,
}

impl Adapter {
    /// The adapter at the router of which nobody said more: it is as the plan of the network has it.
    pub const AT_ROUTER: Self = Self { version: None, ethernet_mbps: None, bridge: true };
}

closed_list! {
    /// What may lie between an adapter and what uses the network there.
    pub enum NetworkPiece ("value-network_piece") {
        /// A network cable (twisted pair) laid in the house.
        Run = "run",
        /// A switch.
        Switch = "switch",
    }
}

/// What lies behind the adapter of an outlet, on the side away from the coax: towards the devices of the room, or towards
/// the router.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BehindAdapter {
    /// What is there; empty where nothing but a short network cable is.
    pub pieces: Vec<NetworkPiece>,
    /// The slowest of it, Mb/s: 100, 1000, 2500 or 10000; `None` while nobody said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mbps: Option<u32>,
}

closed_list! {
    /// How an adapter and a device share one outlet.
    pub enum Sharing ("value-sharing") {
        /// By the adapter's own through port.
        ThroughPort = "through_port",
        /// By a splitter at the outlet.
        Splitter = "splitter",
    }
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
    /// What lies behind that adapter; `None` while nobody said.
    pub behind_adapter: Option<BehindAdapter>,
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

    /// Whether the box that brings the internet is plugged in: a modem, by itself or in one with the router, or a fibre box. The router
    /// mostly stands beside it.
    pub fn has_internet_box(&self) -> bool {
        let is_one =
            |device: &Plugged| matches!(device, Plugged::Modem | Plugged::MocaGateway | Plugged::FibreBox);
        self.plugged.iter().flatten().any(is_one)
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
            behind_adapter: None,
            sharing: None,
            device_filter: false,
            measured: None,
            entry_kind: EntryKind::Unknown,
            entry_state: EntryState::Unknown,
        }
    }

    /// Whether it is where a cable comes in.
    pub fn is_entry(&self) -> bool {
        self.kind == PartKind::Entry
    }

    /// What is printed on it, as it is read on such a part; `None` where nothing is.
    pub fn read_print(&self) -> Option<LabelReading> {
        let is_splitter = self.kind == PartKind::Splitter;
        let mut reading = read_print(self.label.as_deref()?, is_splitter, self.rating.legs);
        // Where somebody said that there is such a port, nothing is unclear.
        reading.doubts.retain(|doubt| *doubt != Doubt::PassiveUnclear || !self.rating.modem_port);
        Some(reading)
    }

    /// Whether it is an entry by which something may come in: nobody said that it is cut off.
    pub fn is_joined_entry(&self) -> bool {
        self.is_entry() && self.entry_state != EntryState::CutOff
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

    /// Whether its label names satellite signals, or a band that holds all of them without naming the network.
    pub fn is_for_satellite(&self) -> bool {
        let words = self.label.as_deref().unwrap_or_default().to_lowercase();
        let named = words
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| matches!(word, "satellite" | "sat" | "lnb"));
        let wide = self.rating.band.is_some_and(|band| band.high_mhz >= SATELLITE_HIGH.value());
        named || (wide && !self.rating.says_moca)
    }

    /// What is known of a free port; `None` where nobody looked.
    pub fn end(&self, port: u8) -> Option<PortEnd> {
        self.ends.get(&port).copied()
    }
}
