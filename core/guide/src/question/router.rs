//! Where the coax meets the router: which outlet gets the bridge adapter, whether the router speaks MoCA itself.

use std::collections::BTreeSet;

use facts::fact::SubjectId;
use house::naming;
use house::record::{
    Adapter, Asked, Is, NetworkPlan, Part, PartKind, Plugged, Reply, Room, field, reading_order,
};
use phrase::Phrase;

use super::answer::{Answer, Told, UNSURE, not_answered};
use super::leads_to::free_tag;
use crate::place::{Choice, Key, replies};
use crate::session::{Pending, Standing, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

fn outlets<'a>(snapshot: &SurveySnapshot<'a>) -> Vec<&'a Part> {
    let parts = reading_order(snapshot.survey).into_iter().filter_map(|id| snapshot.survey.parts.get(&id));
    parts.filter(|part| part.kind == PartKind::Outlet).take(150).collect()
}

/// The outlet that carries the bridge: an adapter that is one, or a router that speaks MoCA itself.
pub(crate) fn bridge<'a>(snapshot: &SurveySnapshot<'a>) -> Option<&'a Part> {
    outlets(snapshot).into_iter().find(|part| {
        part.adapter.as_ref().is_some_and(|adapter| adapter.bridge)
            || part.plugged.iter().flatten().any(|device| *device == Plugged::MocaGateway)
    })
}

/// The most rooms that are offered.
const MOST_ROOMS: usize = 100;

/// The rooms that were named and of which no outlet is known yet.
fn rooms_to_come<'a>(
    snapshot: &SurveySnapshot<'a>,
    found: &[&Part],
) -> impl Iterator<Item = &'a Room> + use<'a> {
    let known: BTreeSet<SubjectId> = found.iter().filter_map(|part| part.room).collect();
    let mut rooms: Vec<_> = snapshot.survey.rooms.values().filter(|room| !known.contains(&room.id)).collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    rooms.into_iter().take(MOST_ROOMS)
}

/// Whether an outlet came by this answer alone: nobody found its cable, and nothing else is said of it.
fn is_only_said(snapshot: &SurveySnapshot<'_>, part: &Part) -> bool {
    let survey = snapshot.survey;
    part.feed.is_none()
        && part.plugged.is_none()
        && survey.wiring.fed_from(part.id).is_empty()
        && survey.readings_at(part.id).next().is_none()
        && survey.photos_of(Some(part.id)).next().is_none()
        && survey.notes_on(Some(part.id)).next().is_none()
}

/// Whether it is to be asked now which outlet is at the router: nobody could tell, or was asked, and a modem was found
/// since.
pub(super) fn is_asked_since_modem(snapshot: &SurveySnapshot<'_>) -> bool {
    let reply = snapshot.survey.reply(snapshot.survey.id, Asked::RouterAt);
    bridge(snapshot).is_none() && matches!(reply, None | Some(Reply::Unsure))
}

/// Which outlet is near the router.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum RouterAtAnswer {
    /// This one.
    Outlet(SubjectId),
    /// The one in this room, which nobody has come to yet.
    Room(SubjectId),
    /// None is.
    None,
    /// Somebody looked and could not tell.
    Unsure,
}

impl Choice for RouterAtAnswer {
    fn key(&self) -> String {
        match self {
            Self::Outlet(outlet) => Key::Part(*outlet).to_string(),
            Self::Room(room) => Key::Room(*room).to_string(),
            Self::None => "none".into(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            "none" => Some(Self::None),
            UNSURE => Some(Self::Unsure),
            key => match Key::of(key)? {
                Key::Part(outlet) => Some(Self::Outlet(outlet)),
                Key::Room(room) => Some(Self::Room(room)),
                _ => None,
            },
        }
    }
}

impl RouterAtAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let mut found = outlets(snapshot);
        // Where the modem is, the router mostly is, or it is the same box.
        found.sort_by_key(|part| !part.has_internet_box());
        // What each would give the rooms, once that is worked out.
        let places = match snapshot.standing {
            Standing::Ready(worked) => worked.list.places.as_slice(),
            _ => &[],
        };
        let offer = |part: &Part| {
            let offer = Offer::new(&Self::Outlet(part.id), naming::of_part(snapshot.survey, part));
            match places.iter().find(|place| place.outlet == part.id) {
                Some(place) => offer.about(place.phrase()),
                None if part.has_internet_box() => offer.about(Phrase::new("router-at-modem")),
                None => offer,
            }
        };
        let mut offers: Vec<_> = found.iter().copied().map(offer).collect();
        offers.extend(rooms_to_come(snapshot, &found).map(|room| {
            let words = Phrase::new("leads-room").phrase("room", naming::of_room(snapshot.survey, room));
            Offer::new(&Self::Room(room.id), words)
        }));
        offers.push(Offer::new(&Self::None, Phrase::new("router-at-none")));
        offers.push(Offer::unsure(&Self::Unsure));
        let asked = match snapshot.survey.reply(snapshot.survey.id, Asked::RouterAt) {
            Some(Reply::None) => Some(Self::None),
            Some(Reply::Unsure) => Some(Self::Unsure),
            _ => None,
        };
        let now = bridge(snapshot).map(|part| Self::Outlet(part.id)).or(asked);
        builder.choice(&Key::Outlet, &Phrase::new("ask-router-at"), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Outlet).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let survey = snapshot.survey;
        let mut answer = Answer::new();
        for part in outlets(snapshot) {
            let is_bridge = part.adapter.as_ref().is_some_and(|adapter| adapter.bridge);
            if is_bridge && Self::Outlet(part.id) != self {
                answer.edits.push(if is_only_said(snapshot, part) {
                    snapshot.ledger.remove(part.id)
                } else {
                    field::part::ADAPTER.clear(part.id)
                });
            }
        }
        match self {
            // It is there, and waits for whoever finds its cable.
            Self::Room(room) => {
                let outlet = SubjectId::random();
                let tag = free_tag(survey, PartKind::Outlet, 0);
                answer
                    .is(outlet, Is::Part)
                    .says(outlet, field::part::KIND, &PartKind::Outlet)
                    .says(outlet, field::part::TAG, &tag)
                    .says(outlet, field::part::ROOM, &room)
                    .says(outlet, field::part::ADAPTER, &Adapter::AT_ROUTER)
                    .asked(survey.id, Asked::RouterAt, Reply::Yes)
            }
            Self::Outlet(outlet) => {
                let known = survey.parts.get(&outlet).and_then(|part| part.adapter.clone());
                let adapter = known.unwrap_or(Adapter::AT_ROUTER);
                let answer = answer.asked(survey.id, Asked::RouterAt, Reply::Yes);
                answer.says(outlet, field::part::ADAPTER, &Adapter { bridge: true, ..adapter })
            }
            Self::None => answer.asked(survey.id, Asked::RouterAt, Reply::None),
            Self::Unsure => answer.asked(survey.id, Asked::RouterAt, Reply::Unsure),
        }
    }
}

replies! {
    /// Whether the router itself speaks MoCA.
    RouterSpeaksAnswer {
        /// It does not.
        No = No,
        /// It does.
        Yes = Yes,
        /// Somebody looked and could not tell.
        Unsure = Unsure,
    }
}

impl RouterSpeaksAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |speaks: &Self| match speaks {
            Self::Unsure => Offer::unsure(speaks),
            speaks => Offer::new(speaks, Phrase::new(format!("router-speaks-{}", speaks.word()))),
        };
        let offers = Self::ALL.iter().map(offer).collect();
        let now = snapshot.survey.reply(snapshot.survey.id, Asked::RouterSpeaks).and_then(Self::of_reply);
        builder.choice(&Key::Speaks, &Phrase::new("ask-router-speaks"), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Speaks).ok_or_else(not_answered)
    }

    /// A router that speaks MoCA takes the place of the bridge adapter: one or the other, never both.
    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let answer = Answer::new().asked(snapshot.survey.id, Asked::RouterSpeaks, self.reply());
        let Some(outlet) = bridge(snapshot) else { return answer };
        let plugged: Vec<Plugged> = outlet.plugged.clone().unwrap_or_default();
        let but = |left_out: Plugged| -> Vec<Plugged> {
            plugged.iter().copied().filter(|device| *device != left_out).collect()
        };
        match self {
            Self::Yes => {
                let mut devices = but(Plugged::Modem);
                if !devices.contains(&Plugged::MocaGateway) {
                    devices.push(Plugged::MocaGateway);
                }
                let answer = answer.clears(outlet.id, field::part::ADAPTER);
                answer.says(outlet.id, field::part::PLUGGED, &devices)
            }
            Self::No | Self::Unsure if plugged.contains(&Plugged::MocaGateway) => {
                let answer = answer.says(outlet.id, field::part::PLUGGED, &but(Plugged::MocaGateway));
                answer.says(outlet.id, field::part::ADAPTER, &Adapter::AT_ROUTER)
            }
            Self::No | Self::Unsure => answer,
        }
    }
}

replies! {
    /// Which adapters there are or shall be, by the version that stands on them.
    AdaptersAnswer {
        /// None yet.
        None = None,
        /// MoCA 2.5.
        V2_5 = Moca25,
        /// Bonded MoCA 2.0.
        V2_0Bonded = Moca20Bonded,
        /// MoCA 2.0.
        V2_0 = Moca20,
        /// MoCA 1.1.
        V1_1 = Moca11,
        /// Somebody looked and could not tell.
        Unsure = Unsure,
    }
}

impl AdaptersAnswer {
    /// The version as it stands on the adapter. Nobody said yet which Ethernet port it has.
    fn plan(self) -> NetworkPlan {
        let version = match self {
            Self::None | Self::Unsure => return NetworkPlan::default(),
            Self::V2_5 => "2.5",
            Self::V2_0Bonded => "2.0 bonded",
            Self::V2_0 => "2.0",
            Self::V1_1 => "1.1",
        };
        NetworkPlan { version: version.into(), ..NetworkPlan::default() }
    }

    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let offer = |adapters: &Self| match adapters {
            Self::Unsure => Offer::unsure(adapters),
            adapters => Offer::new(adapters, Phrase::new(format!("adapters-{}", adapters.word()))),
        };
        let offers = Self::ALL.iter().map(offer).collect();
        let now = snapshot.survey.reply(snapshot.survey.id, Asked::Adapters).and_then(Self::of_reply);
        builder.choice(&Key::Adapters, &Phrase::new("ask-adapters"), false, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        pending.one(&Key::Adapters).ok_or_else(not_answered)
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let survey = snapshot.survey;
        // How many there are was asked of adapters of any version.
        let owned = survey.network.owned.filter(|_| !matches!(self, Self::None | Self::Unsure));
        let plan = NetworkPlan { owned, ..self.plan() };
        let answer = Answer::new().asked(survey.id, Asked::Adapters, self.reply());
        let answer = answer.says(survey.id, field::survey::NETWORK, &plan);
        // A bridge that was placed before takes the version too, unless somebody said its own.
        match bridge(snapshot).and_then(|part| Some((part.id, part.adapter.as_ref()?))) {
            Some((id, adapter)) if adapter.version.as_ref() == Some(&survey.network.version) => {
                let adapter = Adapter { bridge: adapter.bridge, ..Adapter::AT_ROUTER };
                answer.says(id, field::part::ADAPTER, &adapter)
            }
            _ => answer,
        }
    }
}
