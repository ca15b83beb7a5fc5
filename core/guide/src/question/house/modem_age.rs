//! How new the cable modem is.

use house::record::{Asked, ModemBands, ModemGeneration, Reply, Service, ServiceKind, field};
use phrase::Phrase;

use crate::place::{Key, choices};
use crate::question::answer::{Answer, Told, not_answered};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// How new the cable modem is, by the version of DOCSIS that it speaks.
    ModemAgeAnswer {
        /// DOCSIS 3.0.
        V3_0 "30",
        /// DOCSIS 3.1.
        V3_1 "31",
        /// DOCSIS 4.0.
        V4_0 "40",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

fn modem<'a>(snapshot: &SurveySnapshot<'a>) -> Option<&'a Service> {
    snapshot.survey.services_of(ServiceKind::CableInternet).next()
}

impl ModemAgeAnswer {
    fn of_generation(generation: ModemGeneration) -> Self {
        match generation {
            ModemGeneration::V3_0 => Self::V3_0,
            ModemGeneration::V3_1 => Self::V3_1,
            ModemGeneration::V4_0 => Self::V4_0,
        }
    }

    fn generation(self) -> Option<ModemGeneration> {
        match self {
            Self::V3_0 => Some(ModemGeneration::V3_0),
            Self::V3_1 => Some(ModemGeneration::V3_1),
            Self::V4_0 => Some(ModemGeneration::V4_0),
            Self::Unsure => None,
        }
    }

    pub(in crate::question) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |age: &Self| match age {
            Self::Unsure => Offer::unsure(age),
            age => Offer::new(age, Phrase::new(format!("modem-{}", age.word()))),
        };
        let now = modem(snapshot).and_then(|service| service.modem?.generation).map(Self::of_generation);
        let offers = Self::ALL.iter().map(offer).collect();
        builder.choice(&Key::Modem, &Phrase::new("ask-modem-age"), false, offers, &now);
    }

    pub(in crate::question) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Modem).ok_or_else(not_answered)
    }

    pub(in crate::question) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Told<Answer> {
        let service = modem(snapshot).ok_or_else(not_answered)?;
        match self.generation() {
            None => Ok(Answer::new().asked(service.id, Asked::ModemAge, Reply::Unsure)),
            generation => {
                let bands = ModemBands { generation, ..service.modem.unwrap_or_default() };
                Ok(Answer::new().says(service.id, field::service::MODEM, &bands))
            }
        }
    }
}
