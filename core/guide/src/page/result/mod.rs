//! What follows from the survey: what gets through, what is wrong, what to change, privacy, the test, the handover.
//!
//! What takes a while is worked out beside: [`waiting`] says how far it is. Keys that several of these screens share are
//! read in [`keys`].

pub(crate) mod after;
mod bars;
pub(crate) mod compare;
pub(crate) mod ended;
pub(crate) mod finding;
pub(crate) mod findings;
pub(crate) mod forecast;
pub(crate) mod handover;
pub(crate) mod keys;
pub(crate) mod map;
pub(crate) mod numbers;
pub(crate) mod outlet_test;
mod outlet_test_behind;
mod outlet_test_link;
mod outlet_test_socket;
pub(crate) mod outlet_tests;
pub(crate) mod part;
pub(crate) mod placing;
pub(crate) mod private;
mod put_back;
pub(crate) mod reading;
pub(crate) mod room;
pub(crate) mod step;
mod still_fine;
mod telling;
pub(crate) mod unknowns;
mod waiting;
pub(crate) mod work;
mod written;
