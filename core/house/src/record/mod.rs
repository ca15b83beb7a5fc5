//! Typed records folded from facts: what the rest of the program works on.
//!
//! This folder knows what a part, a run or a room is. It does not know how facts are stored, what follows from a
//! record (forecast, findings) or how it is shown.

pub mod asked;
mod back;
mod change;
mod difference;
pub mod field;
mod fold;
mod forest;
mod measurement;
mod part;
mod photo;
mod power;
mod reading;
mod reading_order;
mod room;
mod run;
mod service;
mod survey;
mod work;

pub use change::ChangeKind;
pub use difference::edits_between;
pub use fold::fold;
pub use forest::{LooseReason, MOST_DEEP, Wiring};
pub use measurement::{MOST_MEASUREMENT_BYTES, MeasurementIntake, take_in};
pub use part::{Adapter, EntryKind, EntryState, Feed, FeedFrom, Part, PartKind, Plugged, PortEnd, Sharing};
pub use photo::{Photo, PhotoRole};
pub use power::{PowerPath, power_paths};
pub use reading::{HowMeasured, Reading, ReadingKind, TestReach};
pub use reading_order::{Row, Rows, Stands, reading_order, rows};
pub use room::{Room, Wish};
pub use run::{CableKind, Connector, LengthKnown, Run, RunLength};
pub use service::{
    ModemBands, ModemGeneration, OtherNetwork, PowerFeed, Service, ServiceKind, SingleCable, TvSignal,
};
pub use survey::{Building, Internet, NetworkPlan, Note, Ownership, Survey};
pub use work::{Before, Outcome, OutcomeKind, Work};
