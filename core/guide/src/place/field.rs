//! The screens of field work.

use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

/// A screen of field work without being led.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum FieldPlace {
    /// All parts.
    Parts,
    /// One part.
    Part(SubjectId),
    /// What a part is called and where it is.
    Edit(SubjectId),
    /// A new part: behind another, or loose.
    Add(Option<SubjectId>),
    /// All cables.
    Runs,
    /// One cable.
    Run(SubjectId),
    /// All rooms.
    Rooms,
    /// One room.
    Room(SubjectId),
    /// What else uses the coax.
    Services,
    /// One service.
    Service(SubjectId),
    /// Photos in a row.
    Burst,
    /// Photos that are still to be said what they show.
    Assign,
    /// One photo.
    Photo(SubjectId),
    /// Where to measure.
    MeterAt,
    /// Readings of a meter at a part.
    Meter(SubjectId),
    /// What one stands in front of.
    Here,
    /// The questions of the part that one stands in front of, one after the other.
    Stand(SubjectId),
}
