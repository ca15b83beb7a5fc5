//! How all of it is told: languages and their words, figures as marks, the report.

pub mod doubts;
pub mod figure;
pub mod report;
pub mod words;
