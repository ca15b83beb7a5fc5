//! Which network sockets the adapters and the router have, and whether the adapters are in use already.

use house::record::{Asked, BehindAdapter, Part, Reply, Survey, field};
use phrase::Phrase;

use super::answer::{Answer, Told, not_answered};
use super::router::bridge;
use crate::place::{Key, choices, replies};
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

choices! {
    /// A network socket by its line rate, the most usual first.
    Port {
        /// 1 Gb/s.
        Gigabit "1g",
        /// 2.5 Gb/s.
        TwoAndAHalf "2.5g",
        /// 100 Mb/s.
        Hundred "100m",
        /// Somebody looked and could not tell.
        Unsure "unsure",
    }
}

impl Port {
    const fn mbps(self) -> Option<u32> {
        match self {
            Self::Gigabit => Some(1000),
            Self::TwoAndAHalf => Some(2500),
            Self::Hundred => Some(100),
            Self::Unsure => None,
        }
    }

    fn of_mbps(mbps: u32) -> Option<Self> {
        Self::ALL.iter().copied().find(|port| port.mbps() == Some(mbps))
    }

    fn draw(builder: &mut ScreenBuilder<'_>, key: &Key, name: &Phrase, now: Option<u32>, was_asked: bool) {
        let offer = |port: &Self| match port {
            Self::Unsure => Offer::unsure(port),
            port => Offer::new(port, Phrase::new(format!("port-{}", port.word().replace('.', "-")))),
        };
        let now = match now {
            Some(mbps) => Self::of_mbps(mbps),
            None => was_asked.then_some(Self::Unsure),
        };
        builder.choice(key, name, false, Self::ALL.iter().map(offer).collect(), &now);
    }
}

replies! {
    /// Whether the adapters are in use.
    InUse {
        /// They are.
        Yes = Yes,
        /// They are not, or not all.
        No = No,
    }
}

/// Whether somebody has adapters, whatever they are.
pub(super) fn has_adapters(survey: &Survey) -> bool {
    !matches!(survey.reply(survey.id, Asked::Adapters), None | Some(Reply::None | Reply::Unsure))
}

/// The outlet where an adapter of its own joins the router: a router that speaks MoCA has no socket between.
fn at_router<'a>(snapshot: &SurveySnapshot<'a>) -> Option<&'a Part> {
    bridge(snapshot).filter(|part| part.adapter.is_some())
}

/// Whether there is anything to ask.
pub(super) fn are_asked(snapshot: &SurveySnapshot<'_>) -> bool {
    has_adapters(snapshot.survey) || at_router(snapshot).is_some()
}

/// Which sockets there are, as far as that was picked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct PortsAnswer {
    adapters: Option<Port>,
    router: Option<Port>,
    in_use: Option<InUse>,
}

impl PortsAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let survey = snapshot.survey;
        let was_asked = survey.answer(survey.id, Asked::Ports).is_some();
        if let Some(part) = at_router(snapshot) {
            let now = part.behind_adapter.as_ref().and_then(|behind| behind.mbps);
            Port::draw(builder, &Key::BehindRate, &Phrase::new("ports-router"), now, was_asked);
        }
        if has_adapters(survey) {
            let now = survey.network.ethernet_mbps;
            Port::draw(builder, &Key::Socket, &Phrase::new("ports-adapters"), now, was_asked);
            let offer = |in_use: &InUse| Offer::new(in_use, Phrase::new(format!("in-use-{}", in_use.word())));
            let now = survey.reply(survey.id, Asked::AdaptersPlaced).and_then(InUse::of_reply);
            let offers = InUse::ALL.iter().map(offer).collect();
            builder.choice(&Key::Placed, &Phrase::new("ports-in-use"), false, offers, &now);
        }
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let told = Self {
            adapters: pending.one(&Key::Socket),
            router: pending.one(&Key::BehindRate),
            in_use: pending.one(&Key::Placed),
        };
        if told == (Self { adapters: None, router: None, in_use: None }) {
            Err(not_answered())
        } else {
            Ok(told)
        }
    }

    /// What was not picked is not known; what stands already is not written again.
    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let survey = snapshot.survey;
        let told = [self.adapters, self.router].into_iter().flatten();
        let reply =
            if told.into_iter().any(|port| port != Port::Unsure) { Reply::Yes } else { Reply::Unsure };
        let mut answer = Answer::new().asked(survey.id, Asked::Ports, reply);
        if let Some(port) = self.adapters.filter(|port| port.mbps() != survey.network.ethernet_mbps) {
            let plan = house::record::NetworkPlan { ethernet_mbps: port.mbps(), ..survey.network.clone() };
            answer = answer.says(survey.id, field::survey::NETWORK, &plan);
        }
        if let (Some(port), Some(part)) = (self.router, at_router(snapshot)) {
            let before = part.behind_adapter.clone();
            let mbps = port.mbps();
            if before.as_ref().and_then(|behind| behind.mbps) != mbps {
                let pieces = before.map(|behind| behind.pieces).unwrap_or_default();
                answer = answer.says(part.id, field::part::BEHIND_ADAPTER, &BehindAdapter { pieces, mbps });
            }
        }
        match self.in_use {
            Some(in_use) => answer.asked(survey.id, Asked::AdaptersPlaced, in_use.reply()),
            None => answer,
        }
    }
}
