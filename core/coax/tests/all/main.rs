//! All checks of the physics, in one program: linking costs more than running them.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a test fails by panicking, and its helpers stand outside the test functions"
)]

mod changes;
mod houses;
mod laws;
mod linear;
mod link_anchors;
mod link_laws;
mod published;
#[expect(dead_code, reason = "the example `time_tree` uses all of it")]
mod reference;
mod reference_networks;
mod refusals;
mod touchstone;
mod trade;
mod twin;
