//! The look as numbers: `tokens.toml` is the one place where an ink, a size or a width stands, and from it the file of
//! each shell is made: CSS for the page and the report, resources for Android, constants for Swift. `signs.toml` is the same
//! of the small drawn signs.
//!
//! `cargo run -p look` writes them anew; a test fails where one of them says something else, and computes the contrast
//! of every pair of inks that meet. What each token is for says `docs/look.md`.
//!
//! ```
//! let tokens = look::Tokens::of_project()?;
//! assert!(look::css(&tokens).contains("--text:"));
//! # Ok::<(), look::LookError>(())
//! ```

#![expect(
    clippy::format_push_string,
    clippy::format_collect,
    reason = "a few hundred lines, made once: what is easiest to read"
)]

mod android;
mod contrast;
mod css;
mod error;
mod sign;
mod swift;
mod tokens;

use std::collections::BTreeMap;

pub use contrast::{Pair, contrast, pairs};
pub use css::css;
pub use error::LookError;
pub use sign::{SIGN_BOX, Sign, Step, Way, signs_of_project};
pub use tokens::{CableLine, Ink, Inks, Print, Tokens, Type, Types};

/// A file that is made: its path beside `tokens.toml`, and what stands in it.
pub struct Made {
    /// The path.
    pub path: String,
    /// The whole text.
    pub text: String,
}

/// Every file that is made from the tokens and the signs.
pub fn made(tokens: &Tokens, signs: &BTreeMap<String, Sign>) -> Vec<Made> {
    let made = |path: &str, text| Made { path: path.to_owned(), text };
    let mut all = vec![
        made("look.css", css(tokens)),
        made("signs.rs", sign::rust(signs)),
        made("android/values/look.xml", android::by_day(tokens)),
        made("android/values-night/look.xml", android::by_night(tokens)),
        made("ios/Look.swift", swift::swift(tokens)),
        made("ios/Signs.swift", sign::swift(signs)),
    ];
    all.extend(
        signs
            .iter()
            .map(|(name, one)| made(&format!("android/drawable/sign_{name}.xml"), sign::android(one))),
    );
    all
}
