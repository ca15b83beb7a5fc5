//! The state of connectors.

use crate::estimates::parts;
use crate::span::Span;

/// In what state a run's connectors, or a joint, were found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Condition {
    /// Compression or crimp connectors, clean and tightened.
    Sound,
    /// Not looked at.
    #[default]
    Unsure,
    /// Only turned on by hand, or loose.
    HandTight,
    /// Connectors that are twisted onto the cable.
    TwistOn,
    /// Green, white or rusty.
    Corroded,
    /// Conductors twisted together by hand, or a connector whose shield is off: degraded, not dead.
    BadJoint,
}

impl Condition {
    /// The loss it adds, in dB.
    pub fn loss(self) -> Span {
        match self {
            Self::Sound => parts::SOUND_LOSS.span,
            Self::Unsure => parts::UNSURE_LOSS.span,
            Self::HandTight => parts::HAND_TIGHT_LOSS.span,
            Self::TwistOn => parts::TWIST_ON_LOSS.span,
            Self::Corroded => parts::CORRODED_LOSS.span,
            Self::BadJoint => parts::BAD_JOINT_LOSS.span,
        }
    }

    /// The return loss of a joint in this state, in dB.
    pub fn return_loss(self) -> Span {
        match self {
            Self::Sound | Self::Unsure => parts::JOINT_RETURN_LOSS.span,
            Self::HandTight | Self::TwistOn | Self::Corroded => parts::BAD_JOINT_RETURN_LOSS.span,
            Self::BadJoint => parts::BAD_JOINT_ECHO.span,
        }
    }

    /// Whether a run in this state sends back so much from one of its ends that its echoes count.
    pub fn is_heard_as_an_echo(self) -> bool {
        self == Self::BadJoint
    }
}
