//! The names of fields, in one place: they are part of the file format and never change meaning.

/// A field's name as it stands in facts.
pub type FieldName = &'static str;

/// What kind of record a subject is: `"survey"`, `"part"`, `"run"`, `"room"`, `"service"`, `"reading"`, `"note"`,
/// `"photo"`.
pub const IS: FieldName = "is";
/// A display name (survey, room).
pub const NAME: FieldName = "name";
/// Where the house is, in the owner's words.
pub const PLACE: FieldName = "place";
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
/// Highest frequency that a service uses.
pub const TOP: FieldName = "top_mhz";
/// [`PhotoImage`](super::PhotoImage): the file of a photo.
pub const IMAGE: FieldName = "image";
/// The part or run that a photo shows (a subject id).
pub const OF: FieldName = "of";
/// [`PhotoRole`](super::PhotoRole).
pub const ROLE: FieldName = "role";

/// The field that says what is on a free port: `end.3`.
pub fn end_field(port: u8) -> String {
    format!("end.{port}")
}

/// The port that such a field speaks of.
pub(super) fn port_of_end_field(field: &str) -> Option<u8> {
    field.strip_prefix("end.")?.parse().ok()
}
