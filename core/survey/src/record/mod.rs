//! Typed records folded from facts: what the rest of the program works on.
//!
//! This folder knows what a part, a run or a room is. It does not know how facts are stored, what follows from a
//! record (forecast, findings) or how it is shown.

pub mod field;
mod fold;
mod forest;
mod part;
mod photo;
mod room;
mod run;
mod service;
mod survey;

pub use fold::{MOST_PARTS, fold};
pub use forest::{LooseReason, MOST_DEEP, Wiring};
pub use part::{Adapter, EntryKind, EntryState, Feed, FeedFrom, Part, PartKind, Plugged, PortEnd};
pub use photo::{Photo, PhotoImage, PhotoRole};
pub use room::{Room, Wish};
pub use run::{CableKind, Connector, LengthKnown, Run, RunLength};
pub use service::{Service, ServiceKind};
pub use survey::{Building, Internet, NetworkPlan, Note, Ownership, Reading, ReadingKind, Survey};
