//! The names of fields, in one place: they are part of the file format and never change meaning.

use facts::fact::reserved;

/// A field's name as it stands in facts.
pub type FieldName = &'static str;

/// What kind of record a subject is: `"survey"`, `"part"`, `"run"`, `"room"`, `"service"`, `"reading"`, `"note"`,
/// `"photo"`, `"measurement"`, `"work"`.
pub const IS: FieldName = reserved::IS;
/// A display name (survey, room).
pub const NAME: FieldName = reserved::NAME;
/// Where the house is, in the owner's words.
pub const PLACE: FieldName = reserved::PLACE;
/// [`Internet`](super::Internet).
pub const INTERNET: FieldName = "internet";
/// [`Building`](super::Building).
pub const BUILDING: FieldName = "building";
/// [`NetworkPlan`](super::NetworkPlan).
pub const NETWORK: FieldName = "network";
/// [`PartKind`](super::PartKind) of a part, [`ServiceKind`](super::ServiceKind) of a service.
pub const KIND: FieldName = "kind";
/// The mark written on tape.
pub const TAG: FieldName = "tag";
/// [`Feed`](super::Feed).
pub const FEED: FieldName = "feed";
/// What is printed on a part.
pub const LABEL: FieldName = "label";
/// [`PartRating`](crate::rating::PartRating) typed by a person, which wins over what the label reader makes of the label.
pub const RATING: FieldName = "rating";
/// Where a part sits, in words.
pub const WHERE: FieldName = "where";
/// The room of an outlet (a subject id).
pub const ROOM: FieldName = "room";
/// A list of [`Plugged`](super::Plugged).
pub const PLUGGED: FieldName = "plugged";
/// [`Adapter`](super::Adapter).
pub const ADAPTER: FieldName = "adapter";
/// [`EntryKind`](super::EntryKind).
pub const ENTRY_KIND: FieldName = "entry_kind";
/// [`EntryState`](super::EntryState).
pub const ENTRY_STATE: FieldName = "entry_state";
/// [`CableKind`](super::CableKind).
pub const CABLE: FieldName = "cable";
/// [`RunLength`](super::RunLength).
pub const LENGTH: FieldName = "length";
/// [`Connector`](super::Connector) at the end nearer the street.
pub const CONNECTOR_NEAR: FieldName = "connector_near";
/// [`Connector`](super::Connector) at the end nearer the outlet.
pub const CONNECTOR_FAR: FieldName = "connector_far";
/// [`Wish`](super::Wish).
pub const WISH: FieldName = "wish";
/// The text of a note.
pub const TEXT: FieldName = "text";
/// What a note or a reading is about (a subject id).
pub const ABOUT: FieldName = "about";
/// [`Reading`](super::Reading)'s content.
pub const MEASURED: FieldName = "measured";
/// The output of a part that a reading was taken at (a number from 1).
pub const PORT: FieldName = "port";
/// Highest frequency that a service uses.
pub const TOP: FieldName = "top_mhz";
/// The entry by which a service comes in (a subject id).
pub const ENTRY: FieldName = "entry";
/// [`TvSignal`](super::TvSignal).
pub const SIGNAL: FieldName = "signal";
/// [`ModemBands`](super::ModemBands).
pub const MODEM: FieldName = "modem";
/// [`SingleCable`](super::SingleCable).
pub const SINGLE_CABLE: FieldName = "single_cable";
/// [`OtherNetwork`](super::OtherNetwork): of a service, a network that is not ours.
pub const OTHER_NETWORK: FieldName = "other_network";
/// [`PowerFeed`](super::PowerFeed).
pub const POWER: FieldName = "power";
/// [`HowMeasured`](super::HowMeasured).
pub const HOW: FieldName = "how";
/// The outlet of another room that serves this room (a subject id).
pub const SERVED_FROM: FieldName = "served_from";
/// [`Sharing`](super::Sharing): how an adapter and a device share an outlet.
pub const SHARING: FieldName = "sharing";
/// Whether a filter sits at the port of the device at an outlet.
pub const DEVICE_FILTER: FieldName = "device_filter";
/// [`PhotoImage`](super::PhotoImage): the file of a photo.
pub const IMAGE: FieldName = reserved::IMAGE;
/// The part or run that a photo shows (a subject id).
pub const OF: FieldName = "of";
/// [`PhotoRole`](super::PhotoRole).
pub const ROLE: FieldName = "role";

/// The [`ChangeKind`](super::ChangeKind) that a piece of work is about.
pub const CHANGE: FieldName = "change";
/// The [`Outcome`](super::Outcome) of a piece of work.
pub const OUTCOME: FieldName = "outcome";

/// The measurement of a part by an instrument (a subject id).
pub const MEASUREMENT: FieldName = "measurement";
/// How many ports the part of a measurement has.
pub const PORTS: FieldName = "ports";
/// SHA-256 of a measurement's text, in lower-case hexadecimal.
pub const DIGEST: FieldName = "digest";

/// The field that holds a piece of a measurement's text, counted from 0: `text.0`.
pub fn text_field(piece: usize) -> String {
    format!("text.{piece}")
}

/// The field that says what is on a free port: `end.3`.
pub fn end_field(port: u8) -> String {
    format!("end.{port}")
}

/// What the names of the fields begin with that say how a question about a subject was answered.
const ASKED: &str = "asked.";

/// The field that says how a question about a subject was answered where no other field says it: `asked.label` is
/// `"unsure"` where somebody looked and could not tell, `asked.entry_filter` is `"no"` where none was found.
pub fn asked_field(question: &str) -> String {
    format!("{ASKED}{question}")
}

/// The question that such a field answers.
pub(super) fn question_of_asked_field(field: &str) -> Option<&str> {
    field.strip_prefix(ASKED)
}

/// The port that such a field speaks of.
pub(super) fn port_of_end_field(field: &str) -> Option<u8> {
    field.strip_prefix("end.")?.parse().ok()
}
