//! What was found in a house, and what follows from it.

pub mod error;
pub mod fact;
pub mod figure;
pub mod file;
pub mod finding;
pub mod forecast;
pub mod forget;
pub mod home;
pub mod label;
pub mod level;
pub mod naming;
pub mod photo;
pub mod rating;
pub mod record;
pub mod report;
pub mod store;
pub mod story;
pub mod verdict;
pub mod whole_file;
pub mod words;
pub mod worklist;

pub use error::SurveyError;
