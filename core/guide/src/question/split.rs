//! Splitters, taps and amplifiers: how many legs, how powered, where a loose part gets its signal.

use advice::finding::Caution;
use facts::fact::SubjectId;
use house::naming;
use house::record::{Asked, Feed, Is, PartKind, PortEnd, Reply, field, reading_order};
use phrase::Phrase;

use super::answer::{Answer, Told, UNSURE, not_answered};
use super::house::cautions_of_tracing;
use super::leads_to::{free_tag, join, no_guess};
use crate::number::Quantity;
use crate::place::{Choice, Key, LabelFigure, Question, replies};
use crate::screen::WordsRole;
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// How many outputs a part has.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct LegsAnswer(u8);

impl LegsAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
        let legs = snapshot.survey.parts.get(&part).map(|part| part.rating.legs).filter(|legs| *legs > 0);
        let name = Question::Legs(part).phrase(snapshot);
        builder.number(&Key::Legs, &name, None, Quantity::Count, legs.map(f64::from));
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let legs = pending.number(&Key::Legs, Quantity::Count)?.ok_or_else(not_answered)?;
        if !(1.0..=16.0).contains(&legs) {
            return Err(Phrase::new("legs-out-of-range"));
        }
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "1 to 16")]
        let legs = legs as u8;
        Ok(Self(legs))
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Answer {
        let mut rating = snapshot.survey.parts.get(&part).map(|part| part.rating.clone()).unwrap_or_default();
        LabelFigure::Legs.put(&mut rating, f64::from(self.0));
        Answer::new().says(part, field::part::RATING, &rating)
    }
}

replies! {
    /// How an amplifier is powered.
    PoweredAnswer {
        /// By its own plug.
        Plug = Plug,
        /// Over the coax.
        Coax = Coax,
        /// Not at all.
        Off = Off,
        /// Somebody looked and could not tell.
        Unsure = Unsure,
    }
}

impl PoweredAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
        let offer = |powered: &Self| match powered {
            Self::Unsure => Offer::unsure(powered),
            powered => Offer::new(powered, Phrase::new(format!("powered-{}", powered.word()))),
        };
        let offers = Self::ALL.iter().map(offer).collect();
        let now = snapshot.survey.reply(part, Asked::Powered).and_then(Self::of_reply);
        builder.choice(&Key::Powered, &Question::Powered(part).phrase(snapshot), false, offers, &now);
        builder.caution(&Caution::PoweredLeg.phrase());
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Powered).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, part: SubjectId) -> Answer {
        Answer::new().asked(part, Asked::Powered, self.reply())
    }
}

/// Where a loose part gets its signal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum FedByAnswer {
    /// From an output of a part.
    Output(SubjectId, u8),
    /// From a way in that nobody had come to yet.
    Outside,
    /// From nothing.
    Nothing,
    /// Somebody looked and could not tell.
    Unsure,
}

impl Choice for FedByAnswer {
    fn key(&self) -> String {
        match self {
            Self::Output(part, port) => Key::PortOf(*part, *port).to_string(),
            Self::Outside => "outside".into(),
            Self::Nothing => "nothing".into(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            "outside" => Some(Self::Outside),
            "nothing" => Some(Self::Nothing),
            UNSURE => Some(Self::Unsure),
            key => match Key::of(key)? {
                Key::PortOf(part, port) => Some(Self::Output(part, port)),
                _ => None,
            },
        }
    }
}

/// Free ports that may feed a loose part.
fn feeders(snapshot: &SurveySnapshot<'_>, loose: SubjectId) -> Vec<(SubjectId, u8)> {
    let survey = snapshot.survey;
    let mut found = Vec::new();
    let parts = reading_order(survey).into_iter().filter_map(|id| survey.parts.get(&id));
    for part in parts.filter(|part| part.kind != PartKind::Outlet || part.rating.passes_on) {
        if survey.wiring.head_of(part.id) == survey.wiring.head_of(loose) {
            continue;
        }
        let free = |port: &u8| {
            let others = part.end(*port) == Some(PortEnd::AnotherHome);
            !others && survey.wiring.on_port(part.id, *port).next().is_none()
        };
        found.extend((1..=part.outputs()).filter(free).map(|port| (part.id, port)));
    }
    // A port with a cable of which nobody knows where it leads comes first.
    found.sort_by_key(|(part, port)| {
        let end = survey.parts.get(part).and_then(|part| part.end(*port));
        (end != Some(PortEnd::LooseEnd), end == Some(PortEnd::Capped))
    });
    found.truncate(150);
    found
}

impl FedByAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, part: SubjectId) {
        let mut offers: Vec<_> = feeders(snapshot, part)
            .into_iter()
            .map(|(feeder, port)| {
                Offer::new(&Self::Output(feeder, port), naming::port(snapshot.survey, feeder, port))
            })
            .collect();
        offers.push(Offer::new(&Self::Outside, Phrase::new("fed-by-outside")));
        offers.push(Offer::new(&Self::Nothing, Phrase::new("fed-by-nothing")));
        offers.push(Offer::unsure(&Self::Unsure));
        let unsure = snapshot.survey.reply(part, Asked::FedBy) == Some(Reply::Unsure);
        let now = unsure.then_some(Self::Unsure);
        builder.words(WordsRole::How, &Phrase::new("fed-by-how"));
        builder.choice(&Key::Feeder, &Question::FedBy(part).phrase(snapshot), false, offers, &now);
        cautions_of_tracing(snapshot, builder);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Feeder).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, part: SubjectId) -> Told<Answer> {
        match self {
            Self::Nothing => Ok(Answer::new().says(part, field::part::FEED, &Feed::Nothing)),
            Self::Outside => {
                let entry = SubjectId::random();
                let answer =
                    Answer::new().is(entry, Is::Part).says(entry, field::part::KIND, &PartKind::Entry);
                let tag = free_tag(snapshot.survey, PartKind::Entry, 0);
                Ok(join(answer.says(entry, field::part::TAG, &tag), part, entry, 1))
            }
            Self::Unsure => Ok(Answer::new().asked(part, Asked::FedBy, Reply::Unsure)),
            Self::Output(feeder, port) => {
                if !feeders(snapshot, part).contains(&(feeder, port)) {
                    return Err(not_answered());
                }
                let mut answer = Answer::new();
                let has_end = snapshot.survey.parts.get(&feeder).is_some_and(|part| part.end(port).is_some());
                if has_end {
                    answer = answer.with(field::END.clear(feeder, port));
                }
                Ok(no_guess(join(answer, part, feeder, port), snapshot, part))
            }
        }
    }
}
