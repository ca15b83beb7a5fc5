//! The connectors at the ends of the cables.

use facts::fact::SubjectId;
use house::record::{Asked, Connector, Reply, field};
use phrase::Phrase;

use super::answer::{Answer, Told, UNSURE, not_answered};
use crate::place::{Choice, Key, replies};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// How a connector may be, in the order in which it is offered.
const CONNECTORS: [Connector; 7] = [
    Connector::Compression,
    Connector::Crimp,
    Connector::PushOn,
    Connector::TwistOn,
    Connector::Corroded,
    Connector::HandTight,
    Connector::BadJoint,
];

replies! {
    /// How the connectors are, all at once.
    ConnectorsAnswer {
        /// Good.
        Good = Good,
        /// Some are not.
        Some = Some,
        /// Somebody looked and could not tell.
        Unsure = Unsure,
    }
}

impl ConnectorsAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |connectors: &Self| match connectors {
            Self::Unsure => Offer::unsure(connectors),
            connectors => Offer::new(connectors, Phrase::new(format!("connectors-{}", connectors.word()))),
        };
        let offers = Self::ALL.iter().map(offer).collect();
        let now = snapshot.survey.reply(snapshot.survey.id, Asked::Connectors).and_then(Self::of_reply);
        builder.choice(&Key::Connectors, &Phrase::new("ask-connectors"), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Connectors).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let mut answer = Answer::new().asked(snapshot.survey.id, Asked::Connectors, self.reply());
        if self != Self::Good {
            return answer;
        }
        for run in snapshot.survey.runs.values() {
            for (name, connector) in [
                (field::run::CONNECTOR_NEAR, run.connector_near),
                (field::run::CONNECTOR_FAR, run.connector_far),
            ] {
                if connector == Connector::Unknown {
                    answer = answer.says(run.id, name, &Connector::Compression);
                }
            }
        }
        answer
    }
}

/// How one connector is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum ConnectorSeen {
    /// Like this.
    Is(Connector),
    /// Somebody looked and could not tell.
    Unsure,
}

impl Choice for ConnectorSeen {
    fn key(&self) -> String {
        match self {
            Self::Is(connector) => connector.key(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        let connector = Connector::of(key).filter(|connector| CONNECTORS.contains(connector));
        Some(connector.map_or(Self::Unsure, Self::Is))
    }
}

/// How the two connectors of a cable are; `None` where nobody said.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct ConnectorsOfAnswer {
    near: Option<ConnectorSeen>,
    far: Option<ConnectorSeen>,
}

impl ConnectorsOfAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, run: SubjectId) {
        let found = snapshot.survey.runs.get(&run);
        for (key, connector) in
            [(Key::Near, found.map(|run| run.connector_near)), (Key::Far, found.map(|run| run.connector_far))]
        {
            let seen = CONNECTORS.iter().map(|connector| ConnectorSeen::Is(*connector));
            let offer = |seen: ConnectorSeen| Offer::new(&seen, Phrase::new(format!("plug-{}", seen.key())));
            let mut offers: Vec<_> = seen.map(offer).collect();
            offers.push(Offer::unsure(&ConnectorSeen::Unsure));
            let now = connector.filter(|connector| CONNECTORS.contains(connector)).map(ConnectorSeen::Is);
            builder.choice(&key, &Phrase::new(format!("plug-at-{key}")), false, offers, &now);
        }
    }

    pub(super) fn read(pending: &Pending) -> Self {
        Self { near: pending.one(&Key::Near), far: pending.one(&Key::Far) }
    }

    pub(super) fn answer(self, run: SubjectId) -> Answer {
        let mut answer = Answer::new().asked(run, Asked::Connectors, Reply::Yes);
        for (seen, name) in [(self.near, field::run::CONNECTOR_NEAR), (self.far, field::run::CONNECTOR_FAR)] {
            let connector = match seen {
                None => continue,
                Some(ConnectorSeen::Is(connector)) => connector,
                Some(ConnectorSeen::Unsure) => Connector::Unknown,
            };
            answer = answer.says(run, name, &connector);
        }
        answer
    }
}
