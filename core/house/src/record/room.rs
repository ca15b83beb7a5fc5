//! A room and what its people want of the network.

use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

/// The speed wished for in a room.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Wish {
    /// Towards the room, Mb/s.
    pub down_mbps: f64,
    /// From the room, Mb/s.
    pub up_mbps: f64,
}

/// A room.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// Its identity.
    pub id: SubjectId,
    /// Its name.
    pub name: String,
    /// The speed wished for; `None` where no network is wanted.
    pub wish: Option<Wish>,
    /// For a room without coax: the outlet of another room from which it is served, by a network cable or radio.
    pub served_from: Option<SubjectId>,
}
