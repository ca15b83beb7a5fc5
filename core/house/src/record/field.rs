//! Fields as typed constants: what is written of a thing, and by which name it is looked up. They come from the table.
//!
//! ```
//! # use facts::fact::SubjectId;
//! # use house::record::{Is, PartKind, PortEnd, field};
//! let splitter = SubjectId::random();
//! let edits = [
//!     Is::Part.begin(splitter),
//!     field::part::KIND.set(splitter, &PartKind::Splitter),
//!     field::part::TAG.set(splitter, "S1"),
//!     field::END.set(splitter, 3_u8, &PortEnd::Open),
//!     field::part::WHERE.clear(splitter),
//! ];
//! assert_eq!(edits[1].field, "kind");
//! assert_eq!(edits[1].value, "splitter");
//! ```

use std::fmt;
use std::marker::PhantomData;

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::table::{every_field, fields_apart};
use super::{Is, PortEnd};
use facts::fact::{Edit, SubjectId};

/// A field's name as it stands in facts.
pub type FieldName = &'static str;

/// A value of a field: plain data that is one JSON value in a fact, and is that value again when read.
pub trait FieldValue: Serialize + ToOwned<Owned: DeserializeOwned> + PartialEq {}

impl<T: ?Sized + Serialize + ToOwned<Owned: DeserializeOwned> + PartialEq> FieldValue for T {}

/// A field whose values are of type `T`.
pub struct Field<T: ?Sized> {
    name: FieldName,
    value: PhantomData<fn(&T)>,
}

impl<T: ?Sized> Clone for Field<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: ?Sized> Copy for Field<T> {}

impl<T: ?Sized> fmt::Debug for Field<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name)
    }
}

impl<T: ?Sized + FieldValue> Field<T> {
    const fn new(name: FieldName) -> Self {
        Self { name, value: PhantomData }
    }

    /// Its name in the file.
    pub const fn name(self) -> FieldName {
        self.name
    }

    /// The edit that gives it a value. A value that JSON cannot hold (infinity, not a number) is refused when the edit
    /// is written.
    pub fn set(self, subject: SubjectId, value: &T) -> Edit {
        Edit::stating(subject, self.name, value)
    }

    /// The edit that empties it.
    pub fn clear(self, subject: SubjectId) -> Edit {
        Edit::new(subject, self.name, Value::Null)
    }

    /// The edit that gives it a value, or empties it where there is none.
    pub fn put(self, subject: SubjectId, value: Option<&T>) -> Edit {
        value.map_or_else(|| self.clear(subject), |value| self.set(subject, value))
    }

    /// What a fact says, if this release can read it.
    pub fn read(self, value: &Value) -> Option<T::Owned> {
        T::Owned::deserialize(value).ok()
    }
}

/// Fields that are counted: `end.3` is what is on port 3.
pub struct Numbered<T: ?Sized> {
    stem: FieldName,
    value: PhantomData<fn(&T)>,
}

impl<T: ?Sized> Clone for Numbered<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: ?Sized> Copy for Numbered<T> {}

impl<T: ?Sized> fmt::Debug for Numbered<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}.N", self.stem)
    }
}

impl<T: ?Sized + FieldValue> Numbered<T> {
    const fn new(stem: FieldName) -> Self {
        Self { stem, value: PhantomData }
    }

    /// The name of the field of this number.
    pub fn name(self, number: usize) -> String {
        format!("{}.{number}", self.stem)
    }

    /// The number that a field of this kind has.
    pub fn number<N: std::str::FromStr>(self, name: &str) -> Option<N> {
        name.strip_prefix(self.stem)?.strip_prefix('.')?.parse().ok()
    }

    /// The edit that gives the field of a number a value.
    pub fn set(self, subject: SubjectId, number: impl Into<usize>, value: &T) -> Edit {
        Edit::stating(subject, self.name(number.into()), value)
    }

    /// The edit that empties the field of a number.
    pub fn clear(self, subject: SubjectId, number: impl Into<usize>) -> Edit {
        Edit::new(subject, self.name(number.into()), Value::Null)
    }

    /// What a fact says, if this release can read it.
    pub fn read(self, value: &Value) -> Option<T::Owned> {
        T::Owned::deserialize(value).ok()
    }
}

/// The typed fields of each record.
macro_rules! typed {
    ($($record:ident $($Record:ident)? {
        $($(#[doc = $about:literal])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        $(
            #[doc = concat!("Fields of each ", stringify!($record), ".")]
            pub mod $record {
                use super::*;

                $($(#[doc = $about])+ pub const $NAME: Field<$value> = Field::new($name);)+
            }
        )+
    };
}

every_field!(typed);
fields_apart!(typed);

/// What is on a port that feeds no part, by its number from 1: `end.3`.
pub const END: Numbered<PortEnd> = Numbered::new("end");
/// A piece of a measurement's text, counted from 0: `text.0`.
pub const TEXT_PIECE: Numbered<str> = Numbered::new("text");

/// What kind of record a subject is: an [`Is`].
pub const IS: FieldName = "is";

// Names alone, for what is looked up in a ledger.
/// The name of [`survey::NAME`].
pub const NAME: FieldName = survey::NAME.name();
/// The name of [`survey::PLACE`].
pub const PLACE: FieldName = survey::PLACE.name();
/// The name of [`survey::INTERNET`].
pub const INTERNET: FieldName = survey::INTERNET.name();
/// The name of [`survey::BUILDING`].
pub const BUILDING: FieldName = survey::BUILDING.name();
/// The name of [`survey::NETWORK`].
pub const NETWORK: FieldName = survey::NETWORK.name();
/// The name of [`part::KIND`].
pub const KIND: FieldName = part::KIND.name();
/// The name of [`part::TAG`].
pub const TAG: FieldName = part::TAG.name();
/// The name of [`part::FEED`].
pub const FEED: FieldName = part::FEED.name();
/// The name of [`part::LABEL`].
pub const LABEL: FieldName = part::LABEL.name();
/// The name of [`part::RATING`].
pub const RATING: FieldName = part::RATING.name();
/// The name of [`part::WHERE`].
pub const WHERE: FieldName = part::WHERE.name();
/// The name of [`part::ROOM`].
pub const ROOM: FieldName = part::ROOM.name();
/// The name of [`part::PLUGGED`].
pub const PLUGGED: FieldName = part::PLUGGED.name();
/// The name of [`part::ADAPTER`].
pub const ADAPTER: FieldName = part::ADAPTER.name();
/// The name of [`part::ENTRY_KIND`].
pub const ENTRY_KIND: FieldName = part::ENTRY_KIND.name();
/// The name of [`part::ENTRY_STATE`].
pub const ENTRY_STATE: FieldName = part::ENTRY_STATE.name();
/// The name of [`run::CABLE`].
pub const CABLE: FieldName = run::CABLE.name();
/// The name of [`run::LENGTH`].
pub const LENGTH: FieldName = run::LENGTH.name();
/// The name of [`run::CONNECTOR_NEAR`].
pub const CONNECTOR_NEAR: FieldName = run::CONNECTOR_NEAR.name();
/// The name of [`run::CONNECTOR_FAR`].
pub const CONNECTOR_FAR: FieldName = run::CONNECTOR_FAR.name();
/// The name of [`room::WISH`].
pub const WISH: FieldName = room::WISH.name();
/// The name of [`note::TEXT`].
pub const TEXT: FieldName = note::TEXT.name();
/// The name of [`note::ABOUT`].
pub const ABOUT: FieldName = note::ABOUT.name();
/// The name of [`reading::MEASURED`].
pub const MEASURED: FieldName = reading::MEASURED.name();
/// The name of [`reading::PORT`].
pub const PORT: FieldName = reading::PORT.name();
/// The name of [`service::TOP`].
pub const TOP: FieldName = service::TOP.name();
/// The name of [`service::ENTRY`].
pub const ENTRY: FieldName = service::ENTRY.name();
/// The name of [`service::SIGNAL`].
pub const SIGNAL: FieldName = service::SIGNAL.name();
/// The name of [`service::MODEM`].
pub const MODEM: FieldName = service::MODEM.name();
/// The name of [`service::DROPS_OUT`].
pub const DROPS_OUT: FieldName = service::DROPS_OUT.name();
/// The name of [`service::SINGLE_CABLE`].
pub const SINGLE_CABLE: FieldName = service::SINGLE_CABLE.name();
/// The name of [`service::OTHER_NETWORK`].
pub const OTHER_NETWORK: FieldName = service::OTHER_NETWORK.name();
/// The name of [`service::POWER`].
pub const POWER: FieldName = service::POWER.name();
/// The name of [`reading::HOW`].
pub const HOW: FieldName = reading::HOW.name();
/// The name of [`room::SERVED_FROM`].
pub const SERVED_FROM: FieldName = room::SERVED_FROM.name();
/// The name of [`part::SHARING`].
pub const SHARING: FieldName = part::SHARING.name();
/// The name of [`part::DEVICE_FILTER`].
pub const DEVICE_FILTER: FieldName = part::DEVICE_FILTER.name();
/// The name of [`photo::IMAGE`].
pub const IMAGE: FieldName = photo::IMAGE.name();
/// The name of [`photo::OF`].
pub const OF: FieldName = photo::OF.name();
/// The name of [`photo::ROLE`].
pub const ROLE: FieldName = photo::ROLE.name();
/// The name of [`photo::FILE_NAME`].
pub const FILE_NAME: FieldName = photo::FILE_NAME.name();
/// The name of [`photo::TAKEN`].
pub const TAKEN: FieldName = photo::TAKEN.name();
/// The name of [`photo::PRINT`].
pub const PRINT: FieldName = photo::PRINT.name();
/// The name of [`work::CHANGE`].
pub const CHANGE: FieldName = work::CHANGE.name();
/// The name of [`work::OUTCOME`].
pub const OUTCOME: FieldName = work::OUTCOME.name();
/// The name of [`part::MEASUREMENT`].
pub const MEASUREMENT: FieldName = part::MEASUREMENT.name();
/// The name of [`measurement::PORTS`].
pub const PORTS: FieldName = measurement::PORTS.name();
/// The name of [`measurement::DIGEST`].
pub const DIGEST: FieldName = measurement::DIGEST.name();

impl Is {
    /// The edit that begins a record of this kind.
    pub fn begin(self, subject: SubjectId) -> Edit {
        Edit::stating(subject, IS, &self)
    }
}

/// A line of the table as data, for what must cover every field.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Line {
    /// The record that has the field.
    pub record: &'static str,
    /// The field's name; `.N` stands for a number.
    pub name: &'static str,
    /// What it is.
    pub about: &'static str,
}

/// The lines of each record.
macro_rules! lines {
    ($($record:ident $($Record:ident)? {
        $($(#[doc = $about:literal])+ $NAME:ident $name:literal: $value:ty
            $(=> $member:ident $(if $only:ident)?)?;)+
    })+) => {
        &[$($(Line { record: stringify!($record), name: $name, about: concat!($($about),+) },)+)+]
    };
}

const OF_RECORDS: &[Line] = every_field!(lines);
const APART: &[Line] = fields_apart!(lines);
const BY_HAND: &[Line] = &[
    Line { record: "anything", name: IS, about: "What kind of record it is." },
    Line { record: "part", name: "end.N", about: "What is on port N, which feeds no part." },
    Line { record: "measurement", name: "text.N", about: "Piece N of the text, counted from 0." },
];

/// Every field but the questions ([`super::Asked`]).
pub fn lines() -> impl Iterator<Item = &'static Line> {
    OF_RECORDS.iter().chain(APART).chain(BY_HAND)
}
