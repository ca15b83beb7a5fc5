//! One cable between two parts.

use coax::Span;
use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

/// The cable's series, from the print on its jacket.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CableKind {
    /// 6 series.
    Six,
    /// 59 series: thinner, more loss.
    FiftyNine,
    /// 7 series.
    Seven,
    /// 11 series: thicker, less loss.
    Eleven,
    /// Not legible or not looked at.
    Unknown,
}

/// The state of a connector.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Connector {
    /// A compression connector, tight.
    Compression,
    /// A crimped connector, tight.
    Crimp,
    /// A push-on connector.
    PushOn,
    /// A twist-on connector: works loose, leaks.
    TwistOn,
    /// Green or white with corrosion, or wet.
    Corroded,
    /// Turned by hand only.
    HandTight,
    /// Conductors twisted together, or a connector that has come off in part.
    BadJoint,
    /// Not looked at.
    Unknown,
}

impl Connector {
    /// Whether this connector is known to be poor: it costs signal and leaks.
    pub fn is_poor(self) -> bool {
        matches!(self, Self::TwistOn | Self::Corroded | Self::HandTight | Self::BadJoint | Self::PushOn)
    }
}

/// How a length is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LengthKnown {
    /// With a tape, or from the foot or metre marks on the jacket at both ends.
    Measured,
    /// Paced along the way it is thought to take.
    Paced,
    /// Guessed.
    Guessed,
}

/// A length with its range and how it is known: one decision, one fact.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct RunLength {
    /// The likely length, metres.
    pub metres: f64,
    /// The shortest it can be, metres.
    pub low_metres: f64,
    /// The longest it can be, metres.
    pub high_metres: f64,
    /// How it is known.
    pub known: LengthKnown,
}

impl RunLength {
    /// A length with the range that its way of knowing deserves: measured 2 %, paced 20 %, guessed a third less to
    /// half more (common practice, no source).
    pub fn stated(metres: f64, known: LengthKnown) -> Self {
        let (low, high) = match known {
            LengthKnown::Measured => (0.98, 1.02),
            LengthKnown::Paced => (0.8, 1.2),
            LengthKnown::Guessed => (0.67, 1.5),
        };
        Self { metres, low_metres: metres * low, high_metres: metres * high, known }
    }

    /// The range in metres.
    pub fn span(&self) -> Span {
        Span::new(self.low_metres, self.metres, self.high_metres)
    }
}

/// One cable between two parts.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// Its identity.
    pub id: SubjectId,
    /// The mark on tape.
    pub tag: Option<String>,
    /// Its series.
    pub cable: CableKind,
    /// Its length; `None` while nobody said.
    pub length: Option<RunLength>,
    /// The connector nearer the street.
    pub connector_near: Connector,
    /// The connector nearer the outlet.
    pub connector_far: Connector,
}

/// The longest run that is only what joins two parts side by side, metres.
const LONGEST_JUMPER_METRES: f64 = 1.0;

impl Run {
    /// Whether it is only what joins two parts side by side (a jumper): nobody measures those.
    pub fn is_jumper(&self) -> bool {
        self.length.is_some_and(|length| length.high_metres <= LONGEST_JUMPER_METRES)
    }

    /// A run of which nothing is known.
    pub fn new(id: SubjectId) -> Self {
        Self {
            id,
            tag: None,
            cable: CableKind::Unknown,
            length: None,
            connector_near: Connector::Unknown,
            connector_far: Connector::Unknown,
        }
    }

    /// Whether either connector is known to be poor.
    pub fn has_poor_connector(&self) -> bool {
        self.connector_near.is_poor() || self.connector_far.is_poor()
    }
}
