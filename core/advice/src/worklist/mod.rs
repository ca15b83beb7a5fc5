//! What to change, in which order, with the gain of each change worked out.
//!
//! A change is a function on the records in memory: the forecast of the changed house against the forecast of the
//! house as found, draw by draw with the same dice, is its gain. This folder does not know how a change is shown or
//! recorded as done, and writes nothing.
//!
//! To add a change: a variant in [`ChangeKind`](house::record::ChangeKind) with its phrase beside it; its cautions in
//! `care.rs`, its effect in `effect.rs`, where it is proposed in `propose.rs` or `propose_more.rs`, what speaks against it
//! in `refusal.rs` (what it does to the other services is looked at for every change, in `services.rs`), its parts and
//! minutes in `effort.rs`; its words with `.why`, `.how`, `.check` and `.back` in telling's `changes.ftl`; and in
//! `tests/houses/src/change_cases.rs` one house where it must be and one where it must not.

mod bridge_places;
mod care;
mod checks;
mod effect;
mod effort;
mod exchanges;
mod gain;
mod known_rates;
mod list;
mod need;
mod nothing;
mod options;
mod order;
mod other_list;
mod others;
mod plan;
mod price;
mod propose;
mod propose_more;
mod prospect;
mod rank;
mod refusal;
mod rewire;
mod same_work;
mod search;
mod services;
mod shopping;
mod stake;
mod stated;
mod step;
mod to_buy;
mod watch;
mod whole;

pub use bridge_places::{BridgePlace, bridge_places};
pub use care::{cautions_at, cautions_in, cautions_of, is_such_work};
pub use effect::applied;
pub use effort::{Effort, PartNeeded, effort};
pub use gain::{Gain, RoomRates};
pub use list::{CutShort, FailedRoom, OtherList, OtherStep, Searched, WorkList};
pub use need::is_wanted_anyway;
pub use nothing::nothing_to_do;
pub use options::Options;
pub use other_list::chosen;
#[cfg(test)]
pub(crate) use propose::proposals as proposed;
pub use refusal::Refusal;
pub use services::refusal;
pub use shopping::adapters_to_get;
#[cfg(test)]
pub(crate) use stake::open;
pub use stake::{Stake, stakes};
pub use step::Step;
pub use whole::{worklist, worklist_watched};
