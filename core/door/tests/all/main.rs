//! The door as a phone meets it: one binary, a module a theme.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test stops where its preparation fails")]

#[path = "../../../guide/tests/all/throws.rs"]
mod throws;
#[path = "../../../guide/tests/all/whole_house.rs"]
#[expect(dead_code, reason = "the guide's own tests ask for more of it")]
mod whole_house;

mod hand;
mod label_photo;
mod laws;
mod reached;
mod source;
mod told;
