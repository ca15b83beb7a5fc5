//! Which network sockets the adapters and the router have, how many adapters there are, and whether they are in use
//! already.

use advice::adapters::adapters_needed;
use house::record::{Asked, BehindAdapter, NetworkPlan, Part, Reply, Survey, field};
use phrase::{Arg, Phrase};

use super::answer::{Answer, Told, not_answered};
use super::router::bridge;
use crate::place::{Choice, Key, choices};
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

/// How many adapters there are, beside how many the network needs, and whether they are in use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum HowMany {
    /// As many as are needed or more, and all are plugged in and running.
    InUse,
    /// As many as are needed or more, and not all are.
    Enough,
    /// So many: fewer than are needed.
    Fewer(u32),
}

impl Choice for HowMany {
    fn key(&self) -> String {
        match self {
            Self::InUse => "yes".into(),
            Self::Enough => "no".into(),
            Self::Fewer(count) => format!("{FEWER}{count}"),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            "yes" => Some(Self::InUse),
            "no" => Some(Self::Enough),
            key => key.strip_prefix(FEWER)?.parse().ok().map(Self::Fewer),
        }
    }
}

/// What the keys of smaller numbers begin with.
const FEWER: &str = "only-";

/// The most numbers that are offered.
const MOST_FEWER: u32 = 15;

impl HowMany {
    /// How many the network needs.
    fn needed(survey: &Survey) -> u32 {
        u32::try_from(adapters_needed(survey).len()).unwrap_or(u32::MAX)
    }

    fn draw(survey: &Survey, builder: &mut ScreenBuilder<'_>) {
        let needed = Self::needed(survey);
        let count = |number: u32| Arg::Count(number.into());
        let words = |id: &str, number: u32| {
            Phrase::new(id).with("count", count(number)).with("needed", count(needed))
        };
        let mut offers = vec![
            Offer::new(&Self::InUse, words("how-many-in-use", needed)),
            Offer::new(&Self::Enough, words("how-many-enough", needed)),
        ];
        let fewer = (1..needed).rev().take(MOST_FEWER as usize);
        offers.extend(fewer.map(|number| Offer::new(&Self::Fewer(number), words("how-many-only", number))));
        let placed = survey.reply(survey.id, Asked::AdaptersPlaced);
        let now = match (survey.network.owned, placed) {
            (Some(owned), _) if owned < needed => Some(Self::Fewer(owned)),
            (_, Some(Reply::Yes)) => Some(Self::InUse),
            (_, Some(_)) => Some(Self::Enough),
            (_, None) => None,
        };
        builder.choice(&Key::Placed, &words("how-many", needed), false, offers, &now);
    }

    /// How many there are.
    fn owned(self, survey: &Survey) -> u32 {
        match self {
            Self::InUse | Self::Enough => Self::needed(survey).max(survey.network.owned.unwrap_or(0)),
            Self::Fewer(count) => count,
        }
    }

    const fn placed(self) -> Reply {
        match self {
            Self::InUse => Reply::Yes,
            Self::Enough | Self::Fewer(_) => Reply::No,
        }
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
    how_many: Option<HowMany>,
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
            HowMany::draw(survey, builder);
        }
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let told = Self {
            adapters: pending.one(&Key::Socket),
            router: pending.one(&Key::BehindRate),
            how_many: pending.one(&Key::Placed),
        };
        if told == (Self { adapters: None, router: None, how_many: None }) {
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
        let plan = NetworkPlan {
            ethernet_mbps: self.adapters.map_or(survey.network.ethernet_mbps, Port::mbps),
            owned: self.how_many.map(|many| many.owned(survey)).or(survey.network.owned),
            ..survey.network.clone()
        };
        if plan != survey.network {
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
        match self.how_many {
            Some(many) => answer.asked(survey.id, Asked::AdaptersPlaced, many.placed()),
            None => answer,
        }
    }
}
