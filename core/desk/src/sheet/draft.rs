//! What a sheet states: first each table by itself, then the whole with its references joined.

use std::collections::BTreeMap;

use house::rating::PartRating;
use house::record::{
    Adapter, Building, CableKind, Connector, EntryKind, EntryState, HowMeasured, Internet, MeasurementIntake,
    ModemBands, NetworkPlan, OtherNetwork, PartKind, Plugged, PortEnd, ReadingKind, RunLength, ServiceKind,
    Sharing, SingleCable, TvSignal, Wish,
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

/// A `[[room]]`.
#[derive(Debug, Clone, PartialEq)]
pub struct RoomRow {
    /// Its name.
    pub name: String,
    /// The speed wished for.
    pub wish: Option<Wish>,
    /// The outlet of another room that serves it, by its place in [`Sheet::parts`].
    pub served_from: Option<usize>,
    /// Notes on it.
    pub notes: Vec<String>,
}

/// A `[[service]]`.
#[derive(Debug, Clone, PartialEq)]
pub struct ServiceRow {
    /// What it is.
    pub kind: ServiceKind,
    /// The highest frequency it uses, MHz.
    pub top_mhz: Option<f64>,
    /// The entry by which it comes in, by its place in [`Sheet::parts`].
    pub entry: Option<usize>,
    /// How TV is sent.
    pub signal: Option<TvSignal>,
    /// The modem's bands.
    pub modem: Option<ModemBands>,
    /// How several satellite receivers share one cable.
    pub single_cable: Option<SingleCable>,
    /// A network that is not ours.
    pub network: Option<OtherNetwork>,
    /// Where DC goes in and what it feeds, by their places in [`Sheet::parts`].
    pub power: Option<(usize, usize)>,
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

/// A `[[reading]]`.
#[derive(Debug, Clone, PartialEq)]
pub struct ReadingRow {
    /// The part it was taken at, by its place in [`Sheet::parts`].
    pub at: Option<usize>,
    /// What was measured.
    pub measured: ReadingKind,
    /// How.
    pub how: Option<HowMeasured>,
    /// Notes on it.
    pub notes: Vec<String>,
}

/// A sheet without mistakes, every reference joined.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sheet {
    /// The table `[survey]`.
    pub about: About,
    /// The rooms.
    pub rooms: Vec<RoomRow>,
    /// The services.
    pub services: Vec<ServiceRow>,
    /// The parts.
    pub parts: Vec<PartRow>,
    /// The readings.
    pub readings: Vec<ReadingRow>,
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
    pub row: RoomRow,
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
    pub row: ServiceRow,
    /// The field `entry`.
    pub entry: Option<Field<'s>>,
    /// The field `power`.
    pub power: Option<PowerDraft<'s>>,
}

/// A reading whose reference is still a name.
pub struct ReadingDraft<'s> {
    /// What it says.
    pub row: ReadingRow,
    /// The field `at`.
    pub at: Option<Field<'s>>,
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
