//! The questions by their identity: what is asked, and about which thing. What an answer says stands in `question`.

use facts::fact::SubjectId;
use serde::{Deserialize, Serialize};

use super::stage::Stage;

/// One thing to ask.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Question {
    /// Whose the wiring is, and whether others share it.
    Whose,
    /// What uses the coax today.
    Uses,
    /// How new the cable modem is.
    ModemAge,
    /// What the internet plan gives.
    Plan,
    /// What must not be cut off.
    Depends,
    /// Which rooms there are.
    Rooms,
    /// What is wanted in a room.
    Wish(SubjectId),
    /// The same, by two numbers.
    WishOther(SubjectId),
    /// How cables come into the house.
    WaysIn,
    /// Whether an entry is joined to the world outside.
    Joined(SubjectId),
    /// Whether a ground block was seen at an entry.
    GroundBlock(SubjectId),
    /// Whether an entry filter is there.
    EntryFilter(SubjectId),
    /// What is printed on a part.
    Label(SubjectId),
    /// Whether what was read off a label is right.
    LabelRead(SubjectId),
    /// How many outputs a part has.
    Legs(SubjectId),
    /// Where a port of a part leads.
    LeadsTo(SubjectId, u8),
    /// Where all outputs of a part lead.
    Outputs(SubjectId),
    /// Whether an amplifier has a by-pass.
    ByPass(SubjectId),
    /// How an amplifier is powered.
    Powered(SubjectId),
    /// What is printed on a cable's jacket, how long it is, and how that is known.
    #[serde(alias = "length")]
    Cable(SubjectId),
    /// How long a cable is, from the marks on its jacket.
    Marks(SubjectId),
    /// How the connectors are, all at once.
    Connectors,
    /// How the two connectors of one cable are.
    ConnectorsOf(SubjectId),
    /// What is plugged in at an outlet.
    Plugged(SubjectId),
    /// Which room an outlet is in.
    RoomOf(SubjectId),
    /// Outlets that nobody has come to yet.
    MoreOutlets,
    /// Where a loose part gets its signal.
    FedBy(SubjectId),
    /// Which outlet is near the router.
    RouterAt,
    /// Whether the router itself speaks MoCA.
    RouterSpeaks,
    /// Which adapters there are or shall be.
    Adapters,
    /// Which network sockets adapters and router have, and whether the adapters are in use.
    Ports,
    /// Whether the internet drops out, of a modem beside an adapter.
    DropsOut,
}

impl Question {
    /// The names of all questions.
    pub(crate) const NAMES: [&str; 32] = [
        "whose",
        "uses",
        "modem-age",
        "plan",
        "depends",
        "rooms",
        "wish",
        "wish-other",
        "ways-in",
        "joined",
        "ground-block",
        "entry-filter",
        "label",
        "label-read",
        "legs",
        "leads-to",
        "outputs",
        "by-pass",
        "powered",
        "cable",
        "marks",
        "connectors",
        "connectors-of",
        "plugged",
        "room-of",
        "more-outlets",
        "fed-by",
        "router-at",
        "router-speaks",
        "adapters",
        "ports",
        "drops-out",
    ];

    /// Its name, the same in every language; its words are the message `ask-<name>`.
    pub(crate) const fn name(&self) -> &'static str {
        match self {
            Self::Whose => "whose",
            Self::Uses => "uses",
            Self::ModemAge => "modem-age",
            Self::Plan => "plan",
            Self::Depends => "depends",
            Self::Rooms => "rooms",
            Self::Wish(_) => "wish",
            Self::WishOther(_) => "wish-other",
            Self::WaysIn => "ways-in",
            Self::Joined(_) => "joined",
            Self::GroundBlock(_) => "ground-block",
            Self::EntryFilter(_) => "entry-filter",
            Self::Label(_) => "label",
            Self::LabelRead(_) => "label-read",
            Self::Legs(_) => "legs",
            Self::LeadsTo(..) => "leads-to",
            Self::Outputs(_) => "outputs",
            Self::ByPass(_) => "by-pass",
            Self::Powered(_) => "powered",
            Self::Cable(_) => "cable",
            Self::Marks(_) => "marks",
            Self::Connectors => "connectors",
            Self::ConnectorsOf(_) => "connectors-of",
            Self::Plugged(_) => "plugged",
            Self::RoomOf(_) => "room-of",
            Self::MoreOutlets => "more-outlets",
            Self::FedBy(_) => "fed-by",
            Self::RouterAt => "router-at",
            Self::RouterSpeaks => "router-speaks",
            Self::Adapters => "adapters",
            Self::Ports => "ports",
            Self::DropsOut => "drops-out",
        }
    }

    /// The stage that it belongs to.
    pub(crate) const fn stage(&self) -> Stage {
        match self {
            Self::Whose
            | Self::Uses
            | Self::ModemAge
            | Self::Plan
            | Self::Depends
            | Self::Rooms
            | Self::Wish(_)
            | Self::WishOther(_) => Stage::House,
            Self::WaysIn | Self::Joined(_) | Self::GroundBlock(_) | Self::EntryFilter(_) => Stage::WayIn,
            Self::Label(_)
            | Self::LabelRead(_)
            | Self::Legs(_)
            | Self::LeadsTo(..)
            | Self::Outputs(_)
            | Self::FedBy(_)
            | Self::ByPass(_)
            | Self::Powered(_) => Stage::Splits,
            Self::Cable(_) | Self::Marks(_) | Self::Connectors | Self::ConnectorsOf(_) => Stage::Cables,
            Self::Plugged(_) | Self::RoomOf(_) | Self::MoreOutlets => Stage::Outlets,
            Self::RouterAt | Self::RouterSpeaks | Self::Adapters | Self::Ports | Self::DropsOut => {
                Stage::Router
            }
        }
    }
}
