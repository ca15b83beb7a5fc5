//! How likely a part or a run is at fault by what its records say, before anybody looks: for the room network, and for the levels
//! of the other services.

use house::record::{CableKind, Connector, LengthKnown, Part, PartKind, Run};
use serde::{Deserialize, Serialize};

pub(crate) use weights::CLEARED;

/// How likely something is at fault against a part of the same kind of which all is known and good, 1. All of these are
/// common practice, no source.
mod weights {
    /// A part that was measured by an instrument.
    pub const MEASURED: f64 = 0.3;
    /// A run of which all is known and good: two connectors, and cable that nobody opened.
    pub const SOUND_RUN: f64 = 0.8;
    /// A splitter of which nobody knows the band.
    pub const BAND_UNKNOWN: f64 = 5.0;
    /// A splitter that is not made for the band.
    pub const NOT_FOR_BAND: f64 = 6.0;
    /// A part of which nobody knows what it is.
    pub const KIND_UNKNOWN: f64 = 6.0;
    /// An amplifier of which nobody knows whether it has a by-pass.
    pub const BYPASS_UNKNOWN: f64 = 6.0;
    /// An amplifier without one.
    pub const NO_BYPASS: f64 = 8.0;
    /// An amplifier, of a level that is missing: without its power, or with the wrong one, it gives nothing.
    pub const AMPLIFIER_OF_LEVEL: f64 = 5.0;
    /// A connector known to be poor.
    pub const POOR_CONNECTOR: f64 = 5.0;
    /// A connector that nobody looked at.
    pub const CONNECTOR_UNKNOWN: f64 = 1.2;
    /// Cable of which nobody knows the series, or how long it is.
    pub const CABLE_UNKNOWN: f64 = 1.0;
    /// A length that was guessed.
    pub const LENGTH_GUESSED: f64 = 0.4;
    /// A stretch over which another room's test went well.
    pub const CLEARED: f64 = 0.1;
}

/// Why something is suspected first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Ground {
    /// It is known to be poor, or not made for the band.
    Poor,
    /// The tests of several rooms failed that all get their signal over it.
    Shared,
    /// Too little is known of it.
    NotKnown,
    /// Nothing is known against it.
    Nothing,
}

impl Ground {
    /// Its name in data, and for a message to choose by: `not_known`.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Poor => "poor",
            Self::Shared => "shared",
            Self::NotKnown => "not_known",
            Self::Nothing => "nothing",
        }
    }
}

/// How likely a part is at fault where the room network suffers, and why.
pub(crate) fn part_weight(part: &Part) -> (f64, Ground) {
    let rated = &part.rating;
    if part.measured.is_some() {
        return (weights::MEASURED, Ground::Nothing);
    }
    match part.kind {
        PartKind::Splitter | PartKind::Tap if rated.doubtful => (weights::BAND_UNKNOWN, Ground::NotKnown),
        PartKind::Splitter | PartKind::Tap => match rated.made_for_moca() {
            Some(true) => (1.0, Ground::Nothing),
            Some(false) => (weights::NOT_FOR_BAND, Ground::Poor),
            None => (weights::BAND_UNKNOWN, Ground::NotKnown),
        },
        PartKind::Amplifier => match rated.by_pass() {
            Some(true) => (1.0, Ground::Nothing),
            Some(false) => (weights::NO_BYPASS, Ground::Poor),
            None => (weights::BYPASS_UNKNOWN, Ground::NotKnown),
        },
        PartKind::Unknown => (weights::KIND_UNKNOWN, Ground::NotKnown),
        _ => (1.0, Ground::Nothing),
    }
}

/// How likely a run is at fault, of either, and why.
pub(crate) fn run_weight(run: Option<&Run>) -> (f64, Ground) {
    let Some(run) = run else {
        let unknown = 2.0 * weights::CONNECTOR_UNKNOWN + 2.0 * weights::CABLE_UNKNOWN;
        return (weights::SOUND_RUN + unknown, Ground::NotKnown);
    };
    let of_connector = |connector: Connector| match connector {
        Connector::Unknown => weights::CONNECTOR_UNKNOWN,
        poor if poor.is_poor() => weights::POOR_CONNECTOR,
        _ => 0.0,
    };
    let of_cable = if run.cable == CableKind::Unknown { weights::CABLE_UNKNOWN } else { 0.0 };
    let of_length = match run.length.map(|length| length.known) {
        _ if run.is_jumper() => 0.0,
        None => weights::CABLE_UNKNOWN,
        Some(LengthKnown::Guessed) => weights::LENGTH_GUESSED,
        Some(_) => 0.0,
    };
    let more = of_connector(run.connector_near) + of_connector(run.connector_far) + of_cable + of_length;
    let ground = match more {
        _ if run.has_poor_connector() => Ground::Poor,
        more if more > 0.0 => Ground::NotKnown,
        _ => Ground::Nothing,
    };
    (weights::SOUND_RUN + more, ground)
}

/// How likely a part takes a level that is missing. What it does in the band of the room network tells nothing of that.
pub(crate) fn part_weight_of_level(part: &Part) -> f64 {
    match part.kind {
        _ if part.measured.is_some() => weights::MEASURED,
        PartKind::Amplifier => weights::AMPLIFIER_OF_LEVEL,
        PartKind::Unknown => weights::KIND_UNKNOWN,
        _ => 1.0,
    }
}
