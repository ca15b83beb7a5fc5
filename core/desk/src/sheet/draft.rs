//! What a sheet states: first each table by itself, then the whole with its references joined.
//!
//! Rooms, services and readings are records. What is told of the survey, a part and a run is a row: a record holds
//! "unknown" where nobody said anything, and a rating with what is read from the label; a sheet states neither.

use std::collections::BTreeMap;

use house::rating::PartRating;
use house::record::{
    Adapter, BehindAdapter, Building, CableKind, Connector, EntryKind, EntryState, Internet,
    MeasurementIntake, NetworkPlan, PartKind, Plugged, PortEnd, Reading, Room, RunLength, Service, Sharing,
};

use super::table::{Field, Section};

/// The table `[survey]`.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct About {
    /// The survey's name.
    pub name: Option<String>,
    /// Where the house is, in the owner's words.
    pub place: Option<String>,
    /// The internet plan.
    pub internet: Option<Internet>,
    /// The building.
    pub building: Option<Building>,
    /// The network to be built.
    pub network: Option<NetworkPlan>,
    /// Notes on the whole.
    pub notes: Vec<String>,
}

/// A record as a sheet tells it, with the notes on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Told<T> {
    /// The record.
    pub record: T,
    /// Notes on it.
    pub notes: Vec<String>,
}

/// A run, told with the part at its house end.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RunRow {
    /// Its tag.
    pub tag: Option<String>,
    /// Its series.
    pub cable: Option<CableKind>,
    /// Its length.
    pub length: Option<RunLength>,
    /// The connector nearer the street.
    pub near: Option<Connector>,
    /// The connector nearer the outlet.
    pub far: Option<Connector>,
}

/// What feeds a part.
#[derive(Debug, Clone, PartialEq)]
pub enum FeedRow {
    /// Somebody looked: nothing.
    Nothing,
    /// A port of another part.
    From {
        /// Which part, by its place in [`Sheet::parts`].
        part: usize,
        /// Its port.
        port: u8,
        /// The run between.
        run: Option<RunRow>,
    },
}

/// What a `[[part]]` says of the part alone.
#[derive(Debug, Clone, PartialEq)]
pub struct PartRow {
    /// Its tag.
    pub tag: String,
    /// What it is.
    pub kind: PartKind,
    /// What is printed on it.
    pub label: Option<String>,
    /// What it is rated for, as typed.
    pub rating: Option<PartRating>,
    /// Where it sits.
    pub place: Option<String>,
    /// What feeds it; `None` where it is not traced yet.
    pub feed: Option<FeedRow>,
    /// What is on its free ports.
    pub ends: BTreeMap<u8, PortEnd>,
    /// Its room, by its place in [`Sheet::rooms`].
    pub room: Option<usize>,
    /// What is plugged in.
    pub plugged: Option<Vec<Plugged>>,
    /// Its adapter.
    pub adapter: Option<Adapter>,
    /// What lies behind that adapter.
    pub behind_adapter: Option<BehindAdapter>,
    /// How adapter and device share an outlet.
    pub sharing: Option<Sharing>,
    /// Whether a filter sits at the device's port.
    pub device_filter: Option<bool>,
    /// What comes in at an entry.
    pub entry_kind: Option<EntryKind>,
    /// Whether an entry is joined to the world outside.
    pub entry_state: Option<EntryState>,
    /// How an instrument found it.
    pub measured: Option<MeasurementIntake>,
    /// Notes on it.
    pub notes: Vec<String>,
}

impl PartRow {
    /// A part of which nothing but this is told.
    pub fn bare(tag: String, kind: PartKind) -> Self {
        Self {
            tag,
            kind,
            label: None,
            rating: None,
            place: None,
            feed: None,
            ends: BTreeMap::new(),
            room: None,
            plugged: None,
            adapter: None,
            behind_adapter: None,
            sharing: None,
            device_filter: None,
            entry_kind: None,
            entry_state: None,
            measured: None,
            notes: Vec::new(),
        }
    }
}

/// A sheet without mistakes, every reference joined.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sheet {
    /// The table `[survey]`.
    pub about: About,
    /// The rooms.
    pub rooms: Vec<Told<Room>>,
    /// The services.
    pub services: Vec<Told<Service>>,
    /// The parts.
    pub parts: Vec<PartRow>,
    /// The readings.
    pub readings: Vec<Told<Reading>>,
}

/// A port as a sheet names it.
#[derive(Clone)]
pub struct PortDraft<'s> {
    /// Where it is named.
    pub field: Field<'s>,
    /// Its name: a number, `out`, `modem` or `through`.
    pub name: String,
}

/// A part whose references are still names.
pub struct PartDraft<'s> {
    /// What it says of itself.
    pub row: PartRow,
    /// What its label states.
    pub of_label: PartRating,
    /// Its table.
    pub section: Section<'s>,
    /// The field `tag`.
    pub tag: Option<Field<'s>>,
    /// The field `from`.
    pub from: Option<Field<'s>>,
    /// The field `port`.
    pub port: Option<PortDraft<'s>>,
    /// The run that feeds it, if any of its fields is told.
    pub run: Option<RunRow>,
    /// The field `run_tag`.
    pub run_tag: Option<Field<'s>>,
    /// The field `measured`.
    pub measured: Option<Field<'s>>,
    /// The field `room`.
    pub room: Option<Field<'s>>,
    /// What is on its ports.
    pub ends: Vec<(PortDraft<'s>, PortEnd)>,
}

/// A room with the field that names it.
pub struct RoomDraft<'s> {
    /// What it says.
    pub room: Told<Room>,
    /// The field `name`.
    pub name: Option<Field<'s>>,
    /// The field `served_from`.
    pub served_from: Option<Field<'s>>,
}

/// Who powers whom, still by name.
pub struct PowerDraft<'s> {
    /// The field `from`.
    pub from: Field<'s>,
    /// The field `to`.
    pub to: Field<'s>,
}

/// A service whose references are still names.
pub struct ServiceDraft<'s> {
    /// What it says.
    pub service: Told<Service>,
    /// The field `entry`.
    pub entry: Option<Field<'s>>,
    /// The field `power`.
    pub power: Option<PowerDraft<'s>>,
}

/// A reading whose reference is still a name.
pub struct ReadingDraft<'s> {
    /// What it says.
    pub reading: Told<Reading>,
    /// The field `at`.
    pub at: Option<Field<'s>>,
    /// The output of that part.
    pub port: Option<PortDraft<'s>>,
}

/// A house whose references are still names.
pub struct HouseDraft<'s> {
    /// The table `[survey]`.
    pub about: About,
    /// The rooms.
    pub rooms: Vec<RoomDraft<'s>>,
    /// The services.
    pub services: Vec<ServiceDraft<'s>>,
    /// The parts.
    pub parts: Vec<PartDraft<'s>>,
    /// The readings.
    pub readings: Vec<ReadingDraft<'s>>,
}
