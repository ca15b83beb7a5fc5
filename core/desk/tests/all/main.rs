//! All checks of the `legwork` command, in one program: linking costs more than running most of them.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a command that cannot be run fails the test, and helpers stand outside the test functions"
)]

mod bad_sheets;
mod bad_use;
mod demo;
mod documented;
mod examples;
mod files;
mod hostile_text;
mod json;
mod json_record;
mod kept_safe;
mod label_photo;
mod label_photo_read;
#[cfg(target_os = "linux")]
mod large_sheets;
mod measured;
mod more_commands;
mod one_verdict;
mod photos;
mod random_sheets;
mod round_trip;
mod said;
mod samples;
mod set;
mod sheet_page;
mod support;
mod surveys;
mod together;
#[cfg(unix)]
mod told_alike;
mod villa;
mod words;
mod worked_out;
