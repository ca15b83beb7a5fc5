//! Whether the adapter at an outlet has a link at all, as its lamp for the coax shows.

use facts::fact::SubjectId;
use house::record::{LinkState, ReadingKind, Survey};
use phrase::Phrase;

use crate::place::{Key, choices};
use crate::session::Pending;
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// How the link stands.
    LinkStands {
        /// It hears no other adapter.
        Absent "none",
        /// It is there at times, and gone at others.
        ComesAndGoes "comes-and-goes",
        /// It stays.
        Steady "steady",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

impl LinkStands {
    /// What is written of it; nothing where nobody can tell.
    const fn state(self) -> Option<LinkState> {
        match self {
            Self::Absent => Some(LinkState::Absent),
            Self::ComesAndGoes => Some(LinkState::ComesAndGoes),
            Self::Steady => Some(LinkState::Steady),
            Self::Unsure => None,
        }
    }

    const fn of_state(state: LinkState) -> Self {
        match state {
            LinkState::Absent => Self::Absent,
            LinkState::ComesAndGoes => Self::ComesAndGoes,
            LinkState::Steady => Self::Steady,
        }
    }
}

fn written(survey: &Survey, outlet: SubjectId) -> Option<(SubjectId, LinkState)> {
    survey.readings_at(outlet).find_map(|reading| match reading.measured {
        ReadingKind::Link { state } => Some((reading.id, state)),
        _ => None,
    })
}

/// Asks how it stands.
pub(super) fn ask(builder: &mut ScreenBuilder<'_>, survey: &Survey, outlet: SubjectId) {
    let offer = |stands: &LinkStands| match stands {
        LinkStands::Unsure => Offer::unsure(stands),
        stands => Offer::new(stands, Phrase::new(format!("test-link-{}", stands.word()))),
    };
    let offers = LinkStands::ALL.iter().map(offer).collect();
    let now = written(survey, outlet).map(|(_, state)| LinkStands::of_state(state));
    builder.choice(&Key::LinkStands, &Phrase::new("test-link"), false, offers, &now);
}

/// What was answered.
pub(super) fn told(pending: &Pending) -> Option<LinkState> {
    pending.one::<LinkStands>(&Key::LinkStands)?.state()
}

/// The reading that says it already.
pub(super) fn reading(survey: &Survey, outlet: SubjectId) -> Option<SubjectId> {
    written(survey, outlet).map(|(reading, _)| reading)
}
