//! The guide as a shell meets it: one binary, a module a theme.
#![expect(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where its preparation fails"
)]

/// A screen as text, as the terminal shows it.
#[path = "../../../desk/src/clean.rs"]
mod clean;
#[path = "../../../desk/src/plain/show.rs"]
mod plain;

mod described;
mod hand;
mod homeowner;
mod person;
mod result_house;
mod result_others;
mod screens_walk;
mod shell;
mod shell_drawn;
mod source;
mod throws;
mod whole_house;

mod by_pass;
mod cautions;
mod door;
mod errors;
mod explained;
mod few_answers;
mod field;
mod field_large;
mod field_parts;
mod jacket_photo;
mod journeys;
mod label_photo;
mod label_standing;
mod lacking;
mod laws;
mod long_work;
mod looking;
mod outputs;
mod result;
mod result_adapters;
mod result_places;
mod result_proof;
mod router_at;
mod screens;
mod share;
mod shells;
mod surveys;
mod token;
mod unidentified;
mod words;
