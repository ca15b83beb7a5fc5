//! Typed records folded from facts: what the rest of the program works on.
//!
//! This folder knows what a part, a run or a room is. It does not know how facts are stored, what follows from a
//! record (forecast, findings) or how it is shown.

mod adapter_link;
#[cfg(test)]
mod as_written;
mod asked;
mod back;
mod change;
mod closed_list;
mod difference;
#[cfg(test)]
mod documented;
mod done;
mod earlier;
pub mod field;
mod fold;
mod forest;
mod found;
mod incoming;
mod is;
#[cfg(test)]
mod laws;
mod longest;
mod measurement;
mod member;
mod other_home;
mod part;
mod photo;
pub mod possible;
mod power;
mod reading;
mod reading_order;
mod room;
mod run;
mod service;
mod standing;
mod survey;
mod table;
mod tag_order;
mod without;
mod work;

pub use adapter_link::{AdapterPort, NEWEST_PORT_MBPS, NEWEST_VERSION};
pub use asked::{Asked, Reply};
pub use change::{ChangeKind, OutletCheck};
pub use closed_list::{Named, Worded};
pub use difference::Differs;
pub use done::edits_between;
pub use fold::fold;
pub use forest::{LooseReason, MOST_DEEP, Wiring};
pub use incoming::{Incoming, Sureness, may_come_in, satellite_on};
pub use is::Is;
pub use longest::{LONGEST_TAG, fits, too_long};
pub use measurement::{MOST_MEASUREMENT_BYTES, MeasurementIntake, take_in};
pub use other_home::{OtherHomesLeg, is_shared, leg_of, other_homes_leg};
pub use part::{
    Adapter, BehindAdapter, EntryKind, EntryState, Feed, FeedFrom, NetworkPiece, Part, PartKind, Plugged,
    PortEnd, Sharing,
};
pub use photo::{Photo, PhotoRole};
pub use power::{PowerPath, breaks_power, may_carry_power, power_paths};
pub use reading::{HowMeasured, LinkState, Reading, ReadingKind, TestReach};
pub use reading_order::{Row, Rows, Stands, reading_order, rows};
pub use room::{Room, Wish};
pub use run::{CableKind, Connector, LengthKnown, Run, RunLength};
pub use service::{
    ModemBands, ModemGeneration, OtherNetwork, PowerFeed, Service, ServiceKind, SingleCable, TvSignal,
};
pub use survey::{Building, Internet, NetworkPlan, Note, Ownership, Survey};
pub(crate) use table::every_field;
pub use tag_order::{TagOrder, tag_order};
pub use without::Without;
pub use work::{Before, Outcome, OutcomeKind, Work};
