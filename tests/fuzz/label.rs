//! The text of a label.

use label::read;
use serde_json::Value;

use crate::shape;
use crate::target::{Target, Verdict};

pub const TARGET: Target = Target {
    name: "label",
    weight: 1.0,
    most_bytes: 8 * 1024,
    check,
    shape: shape::lines,
    words: &[
        b"MHz",
        b"GHz",
        b"dB",
        b"-3.5",
        b"5-1002",
        b"2-WAY",
        b"OUT1:",
        b"TAP",
        b"1/2",
        b"\xE2\x88\x92",
        b"\xE2\x80\x93",
        b"DC PASS",
        b"ISO",
        b"1.234.567",
        b"99999999999999999999",
        b"16x16",
        b"54-1002 MHz",
        b"RETURN",
        b"\xEF\xBC\x95",
    ],
    most_memory: 16 << 20,
};

/// Any text is read; reading it twice gives the same, every number is one, and what is said about it can be told.
fn check(input: &[u8]) -> Result<Verdict, String> {
    let text = String::from_utf8_lossy(input);
    let reading = read(&text);
    if reading != read(&text) {
        return Err("read in two ways".into());
    }
    let told: Value = serde_json::from_str(&telling::doubts::json_line(&reading))
        .map_err(|error| format!("its JSON is none: {error}"))?;
    let members = telling::doubts::json(&reading);
    if told != members {
        return Err("its JSON reads back as something else".into());
    }
    let frequencies = [
        reading.low,
        reading.high,
        reading.stop_low,
        reading.stop_high,
        reading.return_low,
        reading.return_high,
        reading.satellite_low,
        reading.satellite_high,
    ];
    if frequencies.iter().flatten().any(|found| !found.0.is_finite() || found.0 < 0.0) {
        return Err(format!("a frequency that is none: {reading:?}"));
    }
    let losses = [reading.tap, reading.gain, reading.rejection, reading.isolation, reading.return_loss];
    let mut levels = losses.iter().flatten().chain(&reading.leg_losses);
    if levels.any(|found| !found.0.is_finite()) {
        return Err(format!("a loss that is none: {reading:?}"));
    }
    if reading.leg_losses.len() > 32 {
        return Err("more legs than a splitter can have".into());
    }
    let doubts = telling::doubts::in_english(&reading.doubts);
    if doubts.len() != reading.doubts.len() || doubts.iter().any(|doubt| doubt.trim().is_empty()) {
        return Err(format!("a doubt without words: {reading:?}"));
    }
    let named: Vec<&str> = members
        .as_object()
        .into_iter()
        .flatten()
        .filter(|(_, value)| !value.is_null())
        .map(|(name, _)| name.as_str())
        .collect();
    let way = format!("{:?} {} {:?}", reading.kind, named.join(" "), reading.leg_losses.len());
    let blank = reading.is_blank();
    Ok(if blank { Verdict::refused(format!("{:?}", reading.doubts.len())) } else { Verdict::taken(way) })
}
