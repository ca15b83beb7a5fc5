//! Whether an amplifier has a way round it for the room network.

use facts::fact::SubjectId;
use house::record::{Asked, Reply, field};
use phrase::Phrase;

use crate::place::{Key, Question, choices};
use crate::question::answer::{Answer, Told, not_answered};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// What an amplifier's label says of a by-pass.
    ByPassAnswer {
        /// It names one.
        Yes "yes",
        /// It names none.
        No "no",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

impl ByPassAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
        let offer = |says: &Self| match says {
            Self::Unsure => Offer::unsure(says),
            says => Offer::new(says, Phrase::new(format!("by-pass-{}", says.word()))),
        };
        let survey = snapshot.survey;
        let now = match survey.parts.get(&part).and_then(|part| part.rating.by_pass()) {
            Some(true) => Some(Self::Yes),
            Some(false) => Some(Self::No),
            None => survey.reply(part, Asked::ByPass).map(|_| Self::Unsure),
        };
        let offers = Self::ALL.iter().map(offer).collect();
        builder.choice(&Key::ByPass, &Question::ByPass(part).phrase(snapshot), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::ByPass).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Answer {
        let mut rating = snapshot.survey.parts.get(&part).map(|part| part.rating.clone()).unwrap_or_default();
        let before = rating.moca_bypass;
        rating.moca_bypass = match self {
            Self::Yes => Some(true),
            Self::No => Some(false),
            Self::Unsure => None,
        };
        let answer = match self {
            Self::Unsure => Answer::new().asked(part, Asked::ByPass, Reply::Unsure),
            Self::Yes | Self::No => Answer::new(),
        };
        if rating.moca_bypass == before { answer } else { answer.says(part, field::part::RATING, &rating) }
    }
}
