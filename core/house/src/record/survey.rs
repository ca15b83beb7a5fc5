//! A whole survey as one typed document.

use std::collections::BTreeMap;
use std::sync::Arc;

use coax::model::Measured;
use coax::trade::SIDE_BY_SIDE;
use facts::fact::{PhotoImage, SubjectId};
use indexmap::IndexMap;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::closed_list::closed_list;
use super::standing::{StandKeys, put_in_order};
use super::{
    Asked, EntryKind, Feed, Incoming, Part, PartKind, Photo, Plugged, Reading, Room, Run, Service,
    ServiceKind, Wiring, Wish, Work,
};

/// How the internet reaches the house and what the plan gives.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Internet {
    /// The plan's rate towards the house, Mb/s.
    pub down_mbps: f64,
    /// The plan's rate from the house, Mb/s.
    pub up_mbps: f64,
}

closed_list! {
    /// Whose wiring it is.
    pub enum Ownership {
        /// The household's own.
        Own = "own",
        /// A landlord's.
        Rented = "rented",
    }
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
    /// Ethernet port of the adapters, Mb/s; `None` while nobody said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ethernet_mbps: Option<u32>,
    /// How many of them there are already; `None` while nobody said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub owned: Option<u32>,
}

impl Default for NetworkPlan {
    fn default() -> Self {
        Self { version: "2.5".into(), ethernet_mbps: None, owned: None }
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
    pub parts: IndexMap<SubjectId, Part>,
    /// The cables between.
    pub runs: IndexMap<SubjectId, Run>,
    /// The rooms.
    pub rooms: IndexMap<SubjectId, Room>,
    /// What else uses the coax.
    pub services: IndexMap<SubjectId, Service>,
    /// Notes.
    pub notes: BTreeMap<SubjectId, Note>,
    /// Measurements of parts by an instrument.
    pub measurements: BTreeMap<SubjectId, Arc<Measured>>,
    /// Photos.
    pub photos: BTreeMap<SubjectId, Photo>,
    /// What was measured.
    pub readings: BTreeMap<SubjectId, Reading>,
    /// What was done of the work list, and what could not be, in the order in which it was.
    pub works: IndexMap<SubjectId, Work>,
    /// For each reading the works that were done after it was taken, in the order in which they were done.
    pub done_since: BTreeMap<SubjectId, Vec<SubjectId>>,
    /// How questions were answered that no other field answers, as it stands in the file.
    pub asked: BTreeMap<(SubjectId, Asked), Value>,
    /// How the parts hang together.
    pub wiring: Wiring,
    /// Fields whose value this version cannot read: kept, never shown as something else.
    pub unread: Vec<(SubjectId, String)>,
    /// Fields whose value cannot be ([`possible`](super::possible)): kept as told, and nothing is worked out from it.
    pub impossible: Vec<(SubjectId, String)>,
    pub(super) keys: StandKeys,
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
            parts: IndexMap::new(),
            runs: IndexMap::new(),
            rooms: IndexMap::new(),
            services: IndexMap::new(),
            notes: BTreeMap::new(),
            measurements: BTreeMap::new(),
            photos: BTreeMap::new(),
            readings: BTreeMap::new(),
            works: IndexMap::new(),
            done_since: BTreeMap::new(),
            asked: BTreeMap::new(),
            wiring: Wiring::default(),
            unread: Vec::new(),
            impossible: Vec::new(),
            keys: StandKeys::default(),
        }
    }

    /// Whether a service of this kind was named.
    pub fn has_service(&self, kind: ServiceKind) -> bool {
        self.services.values().any(|service| service.kind == kind)
    }

    /// Whether cable internet may reach above a frequency, MHz, as far as anybody said: its modem is of a generation that
    /// may, or nobody knows which it is.
    pub fn may_internet_reach_above(&self, mhz: f64) -> bool {
        self.services_of(ServiceKind::CableInternet)
            .any(|service| service.may_reach_mhz().is_none_or(|reaches| reaches > mhz))
    }

    /// Whether what is plugged in at an outlet is a modem.
    pub fn has_modem_at(&self, outlet: SubjectId) -> bool {
        let plugged = self.parts.get(&outlet).and_then(|part| part.plugged.as_ref());
        plugged.is_some_and(|plugged| plugged.contains(&Plugged::Modem))
    }

    /// The photos of a part or run, by id; with `None`, those that nobody has assigned yet.
    pub fn photos_of(&self, subject: Option<SubjectId>) -> impl Iterator<Item = &Photo> {
        self.photos.values().filter(move |photo| photo.of == subject)
    }

    /// The photo of this picture that was taken in before; the first where there are several.
    pub fn photo_with(&self, image: &PhotoImage) -> Option<&Photo> {
        self.photos.values().find(|photo| photo.image.sha256 == image.sha256)
    }

    /// The notes on a subject; with `None`, those on the survey as a whole.
    pub fn notes_on(&self, subject: Option<SubjectId>) -> impl Iterator<Item = &Note> {
        self.notes.values().filter(move |note| note.about == subject)
    }

    /// The name of the room an outlet is in.
    pub fn room_of(&self, part: &Part) -> Option<&Room> {
        self.rooms.get(&part.room?)
    }

    /// What is wished for at an outlet: for its own room, else for a room without coax that is served from here.
    pub fn wish_at(&self, outlet: SubjectId) -> Option<Wish> {
        let own = self.parts.get(&outlet).and_then(|part| self.room_of(part)?.wish);
        let served = || self.rooms.values().find(|room| room.served_from == Some(outlet));
        own.or_else(|| served()?.wish)
    }

    /// What was measured at a part.
    pub fn readings_at(&self, part: SubjectId) -> impl Iterator<Item = &Reading> {
        self.readings.values().filter(move |reading| reading.about == Some(part))
    }

    /// Services of one kind.
    pub fn services_of(&self, kind: ServiceKind) -> impl Iterator<Item = &Service> {
        self.services.values().filter(move |service| service.kind == kind)
    }

    /// Whether the run that feeds a part is on the street's side, so that only the provider may work on it: it comes
    /// from the entry of a cable company, or of nobody knows what, or leads to the ground block behind such an entry.
    pub fn is_street_side(&self, to: SubjectId) -> bool {
        let way = self.wiring.way_up(to);
        let street = way.last().is_some_and(|head| {
            let fibre = self.parts.get(head).is_some_and(|head| head.entry_kind == EntryKind::FibreBox);
            !fibre && Incoming::at(self, *head).may_bring_cable()
        });
        let of_kind = |id: &SubjectId, kind| self.parts.get(id).is_some_and(|part| part.kind == kind);
        let from_entry = way.get(1).is_some_and(|feeder| of_kind(feeder, PartKind::Entry));
        // A house has few ground blocks and long ways below its splitters: upwards from each is the short way to ask.
        let leads_to_block = || {
            let mut blocks = self.parts.values().filter(|part| part.kind == PartKind::GroundBlock);
            blocks.any(|block| self.wiring.way_up(block.id).contains(&to))
        };
        street && way.len() > 1 && (from_entry || leads_to_block())
    }

    /// The parts in a row behind one, up to and with the first that has several outputs or none.
    pub fn to_first_split(&self, from: SubjectId) -> Vec<SubjectId> {
        let mut row = Vec::new();
        for id in self.wiring.in_row(from) {
            row.push(id);
            if self.parts.get(&id).is_none_or(|part| part.outputs() != 1) {
                break;
            }
        }
        row
    }

    /// The first output of a part with a cable that is known, else its first: where what is put behind the part goes.
    pub fn port_in_use(&self, part: SubjectId) -> u8 {
        let ports = self.parts.get(&part).map_or(1, Part::outputs);
        (1..=ports).find(|port| self.wiring.on_port(part, *port).next().is_some()).unwrap_or(1)
    }

    /// Whether a part and the one that feeds it hang at one spot, as far as is known: the run between is short, or nobody
    /// measured it and both are noted at one place.
    pub fn hang_side_by_side(&self, upper: &Part, lower: &Part) -> bool {
        let run = self.wiring.feed(lower.id).and_then(|feed| self.runs.get(&feed.run?));
        match run.and_then(|run| run.length) {
            Some(length) => length.metres <= SIDE_BY_SIDE.value(),
            None => upper.place.is_some() && upper.place == lower.place,
        }
    }

    /// The outputs of a part on which nothing hangs and at which nobody looked: what is there is not known. While the
    /// outputs were never counted, one at least is.
    pub fn unseen_outputs(&self, part: &Part) -> usize {
        let free = |port: &u8| self.wiring.on_port(part.id, *port).next().is_none();
        let unseen = (1..=part.outputs()).filter(free).filter(|port| part.end(*port).is_none()).count();
        let counted = part.rating.legs > 0 || !matches!(part.kind, PartKind::Splitter | PartKind::Tap);
        if counted { unseen } else { unseen.max(1) }
    }

    /// Whether somebody saw that an outlet is fed by nothing, and it feeds nothing either: no cable that leads anywhere.
    pub fn is_dead_outlet(&self, part: &Part) -> bool {
        part.kind == PartKind::Outlet
            && part.feed == Some(Feed::Nothing)
            && self.wiring.fed_from(part.id).is_empty()
    }

    /// Works out [`wiring`](Self::wiring) anew from the parts' feeds. Call after changing any feed in memory. The first time
    /// it also puts parts, runs, rooms and services into the order of the house, which no id decides; what comes later
    /// stands last.
    pub fn rewire(&mut self) {
        self.wiring = self.wiring.replayed(&self.parts);
        if self.keys.is_empty() {
            put_in_order(self);
            self.wiring = self.wiring.replayed(&self.parts);
        }
        let mut keys = std::mem::take(&mut self.keys);
        keys.give(self);
        self.keys = keys;
    }

    /// The key by which a part or run throws its dice: by where it stands in the house as it was found, so that a house
    /// told twice is reckoned the same and a change leaves the throws of all else as they were.
    pub fn dice_key(&self, id: SubjectId) -> [u8; 16] {
        self.keys.get(id).unwrap_or_else(|| id.uuid().into_bytes())
    }

    /// The place of a part in the order of the house; parts that are not there come last.
    pub fn place_in_order(&self, part: SubjectId) -> usize {
        self.parts.get_index_of(&part).unwrap_or(usize::MAX)
    }
}
