//! What the guide shows and takes, as the languages of the phones get it.
//!
//! Each record is the guide's own: `build.rs` writes it out once more from the guide's source, and `uniffi::remote` makes its
//! way across and emits nothing else. What each is for stands in `docs/screens.md`.

use guide::Deed;
#[cfg_attr(
    not(test),
    expect(clippy::wildcard_imports, reason = "whatever the guide shows is written out below")
)]
use guide::screen::*;

include!(concat!(env!("OUT_DIR"), "/shown.rs"));
