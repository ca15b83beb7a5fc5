//! The screens of what follows from a survey.

use facts::fact::SubjectId;
use house::record::ChangeKind;
use serde::{Deserialize, Serialize};

use super::choice::choices;
use super::key::Key;

choices! {
    /// What kind of test was run, and over what.
    #[derive(PartialOrd, Ord, Serialize, Deserialize)]
    #[serde(rename_all = "snake_case")]
    TestKind {
        /// Within the house, over wire all the way.
        House "house",
        /// Within the house, partly by radio.
        HouseRadio "house-radio",
        /// To the internet, over wire all the way.
        Internet "internet",
        /// To the internet, partly by radio.
        InternetRadio "internet-radio",
        /// Read off an adapter's own page.
        Page "page",
        /// Whether it has a link at all.
        Link "link",
    }
}

/// A screen of what follows from the survey.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum ResultPlace {
    /// What gets through to each room.
    Forecast,
    /// The same for one outlet, both ways, with where the loss arises.
    Room(SubjectId),
    /// The wiring map and the loss over frequency.
    Map,
    /// One part.
    Part(SubjectId),
    /// What is not known, what is worth going back for first.
    Unknowns,
    /// What is wrong or at risk.
    Findings,
    /// One of them, by its kind and place.
    Finding(String),
    /// The work list.
    Work,
    /// One change.
    Step(ChangeKind),
    /// After a change: is everything else still fine?
    After(SubjectId),
    /// A piece of work that is over.
    Ended(SubjectId),
    /// Place the adapters.
    Placing,
    /// Keep it private.
    Private,
    /// The outlet test, room by room.
    Tests,
    /// What kind of test was run at an outlet.
    Test(SubjectId),
    /// What such a test said.
    Numbers(SubjectId, TestKind),
    /// One reading.
    Reading(SubjectId),
    /// Whether TV and modem are still fine after all work.
    StillFine,
    /// Forecast against test.
    Compare,
    /// Handover.
    Handover,
}

impl ResultPlace {
    /// The screen of a key that leads to one of the stages.
    pub(crate) fn of_key(key: &Key) -> Option<Self> {
        Some(match key {
            Key::Forecast => Self::Forecast,
            Key::Map => Self::Map,
            Key::Unknowns => Self::Unknowns,
            Key::Findings => Self::Findings,
            Key::Work => Self::Work,
            Key::Placing => Self::Placing,
            Key::Private => Self::Private,
            Key::Tests => Self::Tests,
            Key::StillFine => Self::StillFine,
            Key::Compare => Self::Compare,
            Key::Handover => Self::Handover,
            _ => return None,
        })
    }

    /// Whether it tells of what takes a while to work out.
    pub(crate) fn wants_results(&self) -> bool {
        match self {
            Self::Forecast
            | Self::Room(_)
            | Self::Map
            | Self::Part(_)
            | Self::Unknowns
            | Self::Findings
            | Self::Finding(_)
            | Self::Work
            | Self::Step(_)
            | Self::After(_)
            | Self::Compare
            | Self::Handover => true,
            Self::Ended(_)
            | Self::Placing
            | Self::Private
            | Self::Tests
            | Self::Test(_)
            | Self::Numbers(..)
            | Self::Reading(_)
            | Self::StillFine => false,
        }
    }
}
