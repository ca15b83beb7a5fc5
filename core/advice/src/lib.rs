//! What follows from a house: what gets through, what is wrong or at risk, what to change and in which order, what is not
//! known. Nothing here writes, draws or speaks: what there is to say is kinds and phrases.

mod error;
pub mod finding;
pub mod forecast;
pub mod level;
pub mod unknown;
pub mod wish;
pub mod worklist;

pub use error::AdviceError;
