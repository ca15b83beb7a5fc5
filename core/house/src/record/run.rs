//! One cable between two parts.

use super::closed_list::closed_list;
use coax::Span;
use coax::estimates::house as estimates;
use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

closed_list! {
    /// The cable's series, from the print on its jacket.
    pub enum CableKind ("value-cable") {
        /// 6 series.
        Six = "six",
        /// 59 series: thinner, more loss.
        FiftyNine = "fifty_nine",
        /// 7 series.
        Seven = "seven",
        /// 11 series: thicker, less loss.
        Eleven = "eleven",
        /// Not legible or not looked at.
        Unknown = "unknown",
    }
}

closed_list! {
    /// The state of a connector.
    pub enum Connector ("value-connector") {
        /// A compression connector, tight.
        Compression = "compression",
        /// A crimped connector, tight.
        Crimp = "crimp",
        /// A push-on connector.
        PushOn = "push_on",
        /// A twist-on connector: works loose, leaks.
        TwistOn = "twist_on",
        /// Green or white with corrosion, or wet.
        Corroded = "corroded",
        /// Turned by hand only.
        HandTight = "hand_tight",
        /// Conductors twisted together, or a connector that has come off in part.
        BadJoint = "bad_joint",
        /// Not looked at.
        Unknown = "unknown",
    }
}

impl Connector {
    /// Whether this connector is known to be poor: it costs signal and leaks.
    pub fn is_poor(self) -> bool {
        matches!(self, Self::TwistOn | Self::Corroded | Self::HandTight | Self::BadJoint | Self::PushOn)
    }
}

closed_list! {
    /// How a length is known.
    pub enum LengthKnown ("value-known") {
        /// With a tape, or from the foot or metre marks on the jacket at both ends.
        Measured = "measured",
        /// Paced along the way it is thought to take.
        Paced = "paced",
        /// Guessed.
        Guessed = "guessed",
    }
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
    /// Of two parts that are screwed together with nothing but a fitting between them.
    pub const SCREWED_ON: Self =
        Self { metres: 0.03, low_metres: 0.01, high_metres: 0.06, known: LengthKnown::Measured };

    /// Whether there is no cable at all, only what joins two parts that are screwed together.
    pub fn is_screwed_on(&self) -> bool {
        self.high_metres <= Self::SCREWED_ON.high_metres
    }

    /// A length with the range that its way of knowing deserves (`coax::estimates::house`).
    pub fn stated(metres: f64, known: LengthKnown) -> Self {
        let times = match known {
            LengthKnown::Measured => estimates::LENGTH_MEASURED,
            LengthKnown::Paced => estimates::LENGTH_PACED,
            LengthKnown::Guessed => estimates::LENGTH_GUESSED,
        }
        .span;
        Self { metres, low_metres: metres * times.low, high_metres: metres * times.high, known }
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
