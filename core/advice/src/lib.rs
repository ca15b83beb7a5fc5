//! What follows from a house: what gets through, what is wrong or at risk, what to change and in which order, what is not
//! known. Nothing here writes, draws or speaks: what there is to say is kinds and phrases.
//!
//! ```
//! use advice::forecast::{Options, forecast};
//! use facts::fact::SubjectId;
//! use house::record::{Part, PartKind, Survey};
//!
//! # fn main() -> Result<(), advice::AdviceError> {
//! let mut survey = Survey::new(SubjectId::random());
//! let part = Part::new(SubjectId::random(), PartKind::Splitter);
//! survey.parts.insert(part.id, part);
//! survey.rewire();
//!
//! // Nobody said where the network starts, so nothing is claimed of any room.
//! let found = forecast(&survey, &Options::default())?;
//! assert!(found.bridge.is_none() && found.rooms.is_empty());
//! # Ok(())
//! # }
//! ```
//!
//! From below upwards: `forecast` (rates), `adapters` (how many there are, and where each goes), `level` (levels of the other services), `verdict` (what readings say, and whether
//! a room gets what it wishes), `finding` (what is wrong), `suspect` (what is most likely at fault where a test failed),
//! `unknown` (what is left open), `worklist` (what to do, and where the network could start), `kept` (all of it as bytes, to be found again).

pub mod adapters;
mod beside;
mod entry_filter;
mod error;
pub mod finding;
pub mod forecast;
pub mod kept;
pub mod level;
pub mod suspect;
pub mod unknown;
pub mod verdict;
mod weighed;
pub mod worklist;

pub use entry_filter::{Against, EntryFilter, NotWanted, entry_filter};
pub use error::AdviceError;
