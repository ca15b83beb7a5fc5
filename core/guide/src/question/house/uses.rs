//! What uses the coax today.

use facts::fact::SubjectId;
use house::record::{Asked, Is, Reply, Service, ServiceKind, field};
use phrase::Phrase;

use crate::place::{Choice, Key};
use crate::question::answer::{Answer, Told, UNSURE, not_answered};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// Services that a homeowner can tell by what stands in the house.
const SERVICES: [ServiceKind; 6] = [
    ServiceKind::CableTv,
    ServiceKind::CableInternet,
    ServiceKind::AntennaTv,
    ServiceKind::SatelliteTv,
    ServiceKind::ProviderNetwork,
    ServiceKind::FibreLink,
];

/// One thing that may be picked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Use {
    Service(ServiceKind),
    Nothing,
    Unsure,
}

impl Choice for Use {
    fn key(&self) -> String {
        match self {
            Self::Service(kind) => kind.key(),
            Self::Nothing => "nothing".into(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            "nothing" => Some(Self::Nothing),
            UNSURE => Some(Self::Unsure),
            kind => ServiceKind::of(kind).map(Self::Service),
        }
    }
}

/// What uses the coax.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(in crate::question) enum UsesAnswer {
    /// These do.
    Services(Vec<ServiceKind>),
    /// Nothing does.
    Nothing,
    /// Somebody looked and could not tell.
    Unsure,
}

impl UsesAnswer {
    pub(in crate::question) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let mut offers: Vec<_> = SERVICES
            .into_iter()
            .map(|kind| {
                let words = Phrase::new(format!("uses-{}", kind.key()));
                let about = words.attribute("about");
                Offer::new(&kind, words).about(about)
            })
            .collect();
        offers.push(Offer::new(&Use::Nothing, Phrase::new("uses-nothing")));
        offers.push(Offer::unsure(&Use::Unsure));
        let mut now: Vec<_> =
            snapshot.survey.services.values().map(|service| Use::Service(service.kind)).collect();
        now.extend(match snapshot.survey.reply(snapshot.survey.id, Asked::Uses) {
            Some(Reply::No) => Some(Use::Nothing),
            Some(Reply::Unsure) => Some(Use::Unsure),
            _ => None,
        });
        builder.choice(&Key::Uses, &Phrase::new("ask-uses"), true, offers, &now);
    }

    pub(in crate::question) fn read(pending: &Pending) -> Told<Self> {
        let picked = pending.picked_keys(&Key::Uses).unwrap_or_default();
        if picked.is_empty() {
            return Err(not_answered());
        }
        let picked: Vec<Use> = pending.picked(&Key::Uses).unwrap_or_default();
        if picked.contains(&Use::Unsure) {
            return Ok(Self::Unsure);
        }
        if picked.contains(&Use::Nothing) {
            return Ok(Self::Nothing);
        }
        let service = |one: Use| match one {
            Use::Service(kind) => Some(kind),
            Use::Nothing | Use::Unsure => None,
        };
        Ok(Self::Services(picked.into_iter().filter_map(service).collect()))
    }

    pub(in crate::question) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let (services, reply) = match self {
            Self::Services(services) => (services, Reply::Yes),
            Self::Nothing => (Vec::new(), Reply::No),
            Self::Unsure => (Vec::new(), Reply::Unsure),
        };
        let mut answer = Answer::new();
        for kind in SERVICES {
            let wanted = services.contains(&kind);
            let there: Vec<&Service> = snapshot.survey.services_of(kind).collect();
            if wanted && there.is_empty() {
                let id = SubjectId::random();
                answer = answer.is(id, Is::Service).says(id, field::service::KIND, &kind);
            }
            for service in there.iter().filter(|_| !wanted) {
                answer.edits.push(snapshot.ledger.remove(service.id));
            }
        }
        answer.asked(snapshot.survey.id, Asked::Uses, reply)
    }
}
