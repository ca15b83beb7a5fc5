//! What follows from the survey: what gets through, what is wrong, what to change, privacy, the test, the handover.
//!
//! What takes a while is worked out beside: [`waiting`] says how far it is. Keys that several of these screens share are
//! read in [`keys`].

mod after;
mod compare;
mod doors;
mod ended;
mod finding;
mod findings;
mod forecast;
mod handover;
mod keys;
mod map;
mod numbers;
mod part;
mod placing;
mod private;
mod put_back;
mod reading;
mod room;
mod shown;
mod step;
mod telling;
mod test;
mod test_socket;
mod tests;
mod unknowns;
mod waiting;
mod work;
mod written;

use facts::fact::SubjectId;
use house::record::ChangeKind;
use serde::{Deserialize, Serialize};

use crate::deed::Deed;
use crate::error::Result;
use crate::guide::{Guide, OpenSurvey};
use crate::place::Move;
use crate::scene::Scene;
use crate::screen::Screen;

pub(super) use doors::{door, doors};
pub(crate) use numbers::TestKind;

/// A screen of this folder.
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

pub(super) fn show(open: &OpenSurvey, scene: &Scene<'_>, place: &ResultPlace) -> Screen {
    match place {
        ResultPlace::Forecast => forecast::show(open, scene),
        ResultPlace::Room(outlet) => room::show(open, scene, *outlet),
        ResultPlace::Map => map::show(open, scene),
        ResultPlace::Part(part) => part::show(scene, *part),
        ResultPlace::Unknowns => unknowns::show(open, scene),
        ResultPlace::Findings => findings::show(open, scene),
        ResultPlace::Finding(name) => finding::show(open, scene, name),
        ResultPlace::Work => work::show(open, scene),
        ResultPlace::Step(change) => step::show(open, scene, *change),
        ResultPlace::After(work) => after::show(scene, *work),
        ResultPlace::Ended(work) => ended::show(scene, *work),
        ResultPlace::Placing => placing::show(scene),
        ResultPlace::Private => private::show(scene),
        ResultPlace::Tests => tests::show(scene),
        ResultPlace::Test(outlet) => test::show(scene, *outlet),
        ResultPlace::Numbers(outlet, kind) => numbers::show(scene, *outlet, *kind),
        ResultPlace::Reading(reading) => reading::show(scene, *reading),
        ResultPlace::StillFine => tests::show_still_fine(scene),
        ResultPlace::Compare => compare::show(open, scene),
        ResultPlace::Handover => handover::show(open, scene),
    }
}

pub(super) fn take(guide: &mut Guide, place: &ResultPlace, deed: &Deed) -> Result<Move> {
    if let Some(step) = keys::take(guide, deed)? {
        return Ok(step);
    }
    match place {
        ResultPlace::Step(change) => step::take(guide, *change, deed),
        ResultPlace::After(work) => after::take(guide, *work, deed),
        ResultPlace::Ended(work) => ended::take(guide, *work, deed),
        ResultPlace::Placing => placing::take(guide, deed),
        ResultPlace::Private => private::take(guide, deed),
        ResultPlace::Test(outlet) => test::take(guide, *outlet, deed),
        ResultPlace::Numbers(outlet, kind) => numbers::take(guide, *outlet, *kind, deed),
        ResultPlace::Reading(reading) => reading::take(guide, *reading, deed),
        ResultPlace::StillFine => tests::take_still_fine(guide, deed),
        ResultPlace::Work => work::take(guide, deed),
        ResultPlace::Handover => handover::take(guide, deed),
        _ => Ok(Move::Stay),
    }
}
