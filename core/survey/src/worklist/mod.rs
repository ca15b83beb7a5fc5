//! What to change, in which order, with the gain of each change worked out.
//!
//! A change is a function on the records in memory: the forecast of the changed house against the forecast of the
//! house as found, draw by draw with the same dice, is its gain. This folder does not know how a change is shown or
//! recorded as done.
//!
//! To add a change: a variant in [`ChangeKind`], its effect in `effect.rs`, where it is proposed in `propose.rs`, what
//! speaks against it in `refusal.rs`, its parts and minutes in `effort.rs`, and its words in `words/en/changes.ftl`.

mod change;
mod effect;
mod effort;
mod order;
mod propose;
mod propose_more;
mod refusal;
mod services;
mod shopping;

pub use change::ChangeKind;
pub use effort::{Effort, PartNeeded};
pub use order::{Gain, Options, Step, WorkList, worklist};
pub use refusal::Refusal;
