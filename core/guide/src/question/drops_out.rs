//! Whether the internet drops out, of a modem beside an adapter.

use house::record::{Asked, Reply, Service, ServiceKind, field};
use phrase::Phrase;

use crate::place::{Key, choices};
use crate::question::answer::{Answer, Told, not_answered};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// Whether the internet drops out now and then.
    DropsOutAnswer {
        /// It does.
        Yes "yes",
        /// It does not, as far as is known.
        No "no",
        /// Somebody could not tell.
        Unsure "unsure",
    }
}

fn internet<'a>(snapshot: &SurveySnapshot<'a>) -> Option<&'a Service> {
    snapshot.survey.services_of(ServiceKind::CableInternet).next()
}

impl DropsOutAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |drops: &Self| match drops {
            Self::Unsure => Offer::unsure(drops),
            drops => Offer::new(drops, Phrase::new(format!("free-drops-{}", drops.word()))),
        };
        let now =
            internet(snapshot).and_then(|service| match snapshot.survey.reply(service.id, Asked::DropsOut) {
                _ if service.drops_out => Some(Self::Yes),
                Some(Reply::No) => Some(Self::No),
                _ => None,
            });
        let offers = Self::ALL.iter().map(offer).collect();
        builder.choice(&Key::Drops, &Phrase::new("ask-drops-out"), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Drops).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Told<Answer> {
        let service = internet(snapshot).ok_or_else(not_answered)?;
        let says = |drops: bool| {
            let answer = Answer::new();
            if service.drops_out == drops {
                answer
            } else {
                answer.says(service.id, field::service::DROPS_OUT, &drops)
            }
        };
        Ok(match self {
            Self::Yes => says(true),
            Self::No => says(false).asked(service.id, Asked::DropsOut, Reply::No),
            Self::Unsure => says(false).asked(service.id, Asked::DropsOut, Reply::Unsure),
        })
    }
}
