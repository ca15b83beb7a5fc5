//! A whole survey as one typed document.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::{Part, Photo, Room, Run, Service, ServiceKind, Wiring};
use crate::fact::SubjectId;

/// How the internet reaches the house and what the plan gives.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Internet {
    /// The plan's rate towards the house, Mb/s.
    pub down_mbps: f64,
    /// The plan's rate from the house, Mb/s.
    pub up_mbps: f64,
}

/// Whose wiring it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ownership {
    /// The household's own.
    Own,
    /// A landlord's.
    Rented,
}

/// The building.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Building {
    /// Whose wiring it is.
    pub ownership: Ownership,
    /// Whether the coax is shared with other homes.
    pub shared: bool,
}

/// The network to be built: what each adapter is unless its outlet says otherwise.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NetworkPlan {
    /// MoCA version: `1.0`, `1.1`, `2.0`, `2.0 bonded`, `2.5`.
    pub version: String,
    /// Ethernet port of the adapters, Mb/s.
    pub ethernet_mbps: u32,
}

impl Default for NetworkPlan {
    fn default() -> Self {
        Self { version: "2.5".into(), ethernet_mbps: 2500 }
    }
}

/// A note on any record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// Its identity.
    pub id: SubjectId,
    /// What it is about.
    pub about: Option<SubjectId>,
    /// Its text.
    pub text: String,
}

/// What was measured.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", tag = "what")]
pub enum ReadingKind {
    /// A level at one frequency.
    Level {
        /// Frequency, MHz.
        mhz: f64,
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
}

/// One reading.
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Its identity.
    pub id: SubjectId,
    /// The part it was taken at.
    pub about: Option<SubjectId>,
    /// What was measured.
    pub measured: ReadingKind,
}

/// A whole survey as one typed document.
#[derive(Debug, Clone, PartialEq)]
pub struct Survey {
    /// Its identity, which is the subject of the facts about the survey itself.
    pub id: SubjectId,
    /// Its name.
    pub name: Option<String>,
    /// Where the house is, in the owner's words.
    pub place: Option<String>,
    /// The internet plan.
    pub internet: Option<Internet>,
    /// The building.
    pub building: Option<Building>,
    /// The network to be built.
    pub network: NetworkPlan,
    /// Everything on the coax.
    pub parts: BTreeMap<SubjectId, Part>,
    /// The cables between.
    pub runs: BTreeMap<SubjectId, Run>,
    /// The rooms.
    pub rooms: BTreeMap<SubjectId, Room>,
    /// What else uses the coax.
    pub services: BTreeMap<SubjectId, Service>,
    /// Notes.
    pub notes: BTreeMap<SubjectId, Note>,
    /// Photos.
    pub photos: BTreeMap<SubjectId, Photo>,
    /// What was measured.
    pub readings: BTreeMap<SubjectId, Reading>,
    /// How the parts hang together.
    pub wiring: Wiring,
    /// Fields whose value this version cannot read: kept, never shown as something else.
    pub unread: Vec<(SubjectId, String)>,
}

impl Survey {
    /// An empty survey.
    pub fn new(id: SubjectId) -> Self {
        Self {
            id,
            name: None,
            place: None,
            internet: None,
            building: None,
            network: NetworkPlan::default(),
            parts: BTreeMap::new(),
            runs: BTreeMap::new(),
            rooms: BTreeMap::new(),
            services: BTreeMap::new(),
            notes: BTreeMap::new(),
            photos: BTreeMap::new(),
            readings: BTreeMap::new(),
            wiring: Wiring::default(),
            unread: Vec::new(),
        }
    }

    /// Whether a service of this kind was named.
    pub fn has_service(&self, kind: ServiceKind) -> bool {
        self.services.values().any(|service| service.kind == kind)
    }

    /// The photos of a part or run, by id; with `None`, those that nobody has assigned yet.
    pub fn photos_of(&self, subject: Option<SubjectId>) -> impl Iterator<Item = &Photo> {
        self.photos.values().filter(move |photo| photo.of == subject)
    }

    /// The notes on a subject; with `None`, those on the survey as a whole.
    pub fn notes_on(&self, subject: Option<SubjectId>) -> impl Iterator<Item = &Note> {
        self.notes.values().filter(move |note| note.about == subject)
    }

    /// The name of the room an outlet is in.
    pub fn room_of(&self, part: &Part) -> Option<&Room> {
        self.rooms.get(&part.room?)
    }

    /// Works out [`wiring`](Self::wiring) anew from the parts' feeds. Call after changing any feed in memory.
    pub fn rewire(&mut self) {
        self.wiring = self.wiring.replayed(&self.parts);
    }
}
