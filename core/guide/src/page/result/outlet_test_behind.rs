//! What lies behind the adapter of an outlet, away from the coax: network cables in the wall and switches, the slowest of which
//! holds every test that goes through them.

use facts::fact::SubjectId;
use house::record::{BehindAdapter, NetworkPiece, Survey};
use phrase::Phrase;

use super::outlet_test_socket::{Socket, offers};
use crate::place::{Key, choices};
use crate::screen::WordsRole;
use crate::session::Pending;
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// What lies between the adapter and the computer.
    Behind {
        /// A short network cable.
        Nothing "nothing",
        /// A network cable in the wall.
        Run "run",
        /// A switch.
        Switch "switch",
        /// Both.
        Both "both",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

impl Behind {
    /// The pieces; `None` where nobody can tell.
    fn pieces(self) -> Option<Vec<NetworkPiece>> {
        Some(match self {
            Self::Nothing => Vec::new(),
            Self::Run => vec![NetworkPiece::Run],
            Self::Switch => vec![NetworkPiece::Switch],
            Self::Both => vec![NetworkPiece::Run, NetworkPiece::Switch],
            Self::Unsure => return None,
        })
    }

    fn of(behind: &BehindAdapter) -> Self {
        let has = |piece| behind.pieces.contains(&piece);
        match (has(NetworkPiece::Run), has(NetworkPiece::Switch)) {
            (false, false) => Self::Nothing,
            (true, false) => Self::Run,
            (false, true) => Self::Switch,
            (true, true) => Self::Both,
        }
    }
}

fn known(survey: &Survey, outlet: SubjectId) -> Option<&BehindAdapter> {
    survey.parts.get(&outlet)?.behind_adapter.as_ref()
}

/// Asks what it is, and for the slowest of it.
pub(super) fn ask(builder: &mut ScreenBuilder<'_>, survey: &Survey, outlet: SubjectId) {
    let name = Phrase::new("test-behind");
    let offer = |behind: &Behind| match behind {
        Behind::Unsure => Offer::unsure(behind),
        behind => Offer::new(behind, Phrase::new(format!("test-behind-{}", behind.word()))),
    };
    let now = known(survey, outlet).map(Behind::of);
    builder.choice(&Key::Behind, &name, false, Behind::ALL.iter().map(offer).collect(), &now);
    let rate = known(survey, outlet).and_then(|behind| Socket::of_mbps(behind.mbps?));
    builder.choice(&Key::BehindRate, &Phrase::new("test-behind-rate"), false, offers(), &rate);
    builder.words(WordsRole::Aside, &name.attribute("why"));
}

/// What lies there, if anything was answered that is not written yet.
pub(super) fn told(pending: &Pending, survey: &Survey, outlet: SubjectId) -> Option<BehindAdapter> {
    let before = known(survey, outlet);
    let pieces = pending.one::<Behind>(&Key::Behind).and_then(Behind::pieces);
    let rate = pending.one::<Socket>(&Key::BehindRate);
    if pieces.is_none() && rate.is_none() {
        return None;
    }
    let behind = BehindAdapter {
        pieces: pieces.or_else(|| before.map(|before| before.pieces.clone())).unwrap_or_default(),
        mbps: match rate {
            Some(rate) => rate.mbps(),
            None => before.and_then(|before| before.mbps),
        },
    };
    (before != Some(&behind)).then_some(behind)
}
