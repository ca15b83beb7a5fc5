//! Closed lists to choose from: each answer with the key of its option.

use facts::fact::FactId;
use facts::file::LeftOut;
use house::record::{
    CableKind, Connector, EntryKind, LengthKnown, ModemGeneration, Named, PartKind, PhotoRole, Plugged,
    ServiceKind, SingleCable, TvSignal,
};
use telling::report::Extent;

use super::key::Key;

/// An answer out of a list. Its key is the option's on the screen; what is picked comes back by it.
pub(crate) trait Choice: Sized + Clone {
    /// The key of its option.
    fn key(&self) -> String;

    /// The answer whose option has this key.
    fn of(key: &str) -> Option<Self>;
}

/// A list of answers of our own: an enum, every one of it in order, and its keys.
macro_rules! choices {
    ($(#[$doc:meta])* $name:ident { $($(#[$of:meta])* $choice:ident $key:literal,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub(crate) enum $name {
            $($(#[$of])* $choice,)*
        }

        impl $name {
            /// Every one, in the order in which they are offered.
            pub(crate) const ALL: &'static [Self] = &[$(Self::$choice,)*];

            /// The key of its option, and the end of its message's name.
            pub(crate) const fn word(self) -> &'static str {
                match self {
                    $(Self::$choice => $key,)*
                }
            }
        }

        impl $crate::place::Choice for $name {
            fn key(&self) -> String {
                self.word().into()
            }

            fn of(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|choice| choice.word() == key)
            }
        }
    };
}

pub(crate) use choices;

/// A list of answers that are written as replies: an enum of some of the replies of the document, in order.
macro_rules! replies {
    ($(#[$doc:meta])* $name:ident { $($(#[$of:meta])* $choice:ident = $reply:ident,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub(crate) enum $name {
            $($(#[$of])* $choice,)*
        }

        impl $name {
            /// Every one, in the order in which they are offered.
            pub(crate) const ALL: &'static [Self] = &[$(Self::$choice,)*];

            /// The reply that it is written as.
            pub(crate) const fn reply(self) -> house::record::Reply {
                match self {
                    $(Self::$choice => house::record::Reply::$reply,)*
                }
            }

            /// The answer that was written as a reply.
            pub(crate) fn of_reply(reply: house::record::Reply) -> Option<Self> {
                Self::ALL.iter().copied().find(|choice| choice.reply() == reply)
            }

            /// The key of its option, and the end of its message's name.
            pub(crate) fn word(self) -> &'static str {
                house::record::Named::name(self.reply())
            }
        }

        impl $crate::place::Choice for $name {
            fn key(&self) -> String {
                self.word().into()
            }

            fn of(key: &str) -> Option<Self> {
                Self::of_reply(house::record::Named::of_name(key)?)
            }
        }
    };
}

pub(crate) use replies;

/// The closed lists of the document: an option is called as the value is in the file.
macro_rules! as_in_file {
    ($($list:ty)*) => {
        $(impl Choice for $list {
            fn key(&self) -> String {
                self.name().into()
            }

            fn of(key: &str) -> Option<Self> {
                Self::of_name(key)
            }
        })*
    };
}

as_in_file! {
    CableKind Connector EntryKind LengthKnown ModemGeneration PartKind PhotoRole Plugged ServiceKind SingleCable
    TvSignal
}

/// A fact, by its id.
impl Choice for FactId {
    fn key(&self) -> String {
        self.to_string()
    }

    fn of(key: &str) -> Option<Self> {
        serde_json::from_value(key.into()).ok()
    }
}

/// An option that stands for a thing of the house.
impl Choice for Key {
    fn key(&self) -> String {
        self.to_string()
    }

    fn of(key: &str) -> Option<Self> {
        Self::of(key)
    }
}

/// What may stay out of a file, in the order in which it is offered.
pub(crate) const MAY_STAY_OUT: [LeftOut; 5] = LeftOut::ALL;

impl Choice for LeftOut {
    fn key(&self) -> String {
        self.word().into()
    }

    fn of(key: &str) -> Option<Self> {
        MAY_STAY_OUT.into_iter().find(|left_out| left_out.key() == key)
    }
}

/// How much of the report is written.
impl Choice for Extent {
    fn key(&self) -> String {
        match self {
            Self::Whole => "whole",
            Self::OnePage => "one-page",
        }
        .into()
    }

    fn of(key: &str) -> Option<Self> {
        [Self::Whole, Self::OnePage].into_iter().find(|extent| extent.key() == key)
    }
}

/// An output of the part that is shown, by its number.
impl Choice for u8 {
    fn key(&self) -> String {
        self.to_string()
    }

    fn of(key: &str) -> Option<Self> {
        key.parse().ok()
    }
}

choices! {
    /// What one may stand in front of.
    StandsAt {
        /// An outlet.
        Outlet "outlet",
        /// A splitter.
        Splitter "splitter",
        /// An amplifier.
        Amplifier "amplifier",
        /// Another part.
        Other "other",
        /// Where cable comes in.
        Entry "entry",
    }
}
