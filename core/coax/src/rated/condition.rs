//! The state of connectors.

use crate::estimates::parts;
use crate::span::Span;

/// In what state a connector or a joint was found, better before worse.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
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
    /// Whether it is known to be poor: it loses by itself what it loses, whatever the other end of its run is like.
    pub fn is_poor(self) -> bool {
        self >= Self::HandTight
    }

    /// The loss it adds, in dB: of sound connectors and of those nobody looked at that of both of a run.
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
