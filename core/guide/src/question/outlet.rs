//! Outlets: which room, what is plugged in, and those that nobody has come to yet.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Asked, Is, PartKind, Plugged, Reply, Room, field};
use phrase::Phrase;

use super::answer::{Answer, Told, UNSURE, not_answered};
use super::leads_to::free_tag;
use super::router::is_asked_since_modem;
use crate::place::{Choice, Key, Place, Question};
use crate::screen::WritingKind;
use crate::session::{Pending, SurveySnapshot};
use crate::view::{Offer, ScreenBuilder};

/// What may be plugged in, in the order in which it is offered.
const DEVICES: [Plugged; 8] = [
    Plugged::Tv,
    Plugged::TvBox,
    Plugged::Modem,
    Plugged::MocaGateway,
    Plugged::SatelliteReceiver,
    Plugged::FibreBox,
    Plugged::PowerSupply,
    Plugged::Other,
];

/// One thing that may be picked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum AtOutlet {
    Device(Plugged),
    Nothing,
    Unsure,
}

impl Choice for AtOutlet {
    fn key(&self) -> String {
        match self {
            Self::Device(device) => device.key(),
            Self::Nothing => "nothing".into(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            "nothing" => Some(Self::Nothing),
            UNSURE => Some(Self::Unsure),
            key => Plugged::of(key).map(Self::Device),
        }
    }
}

/// What is plugged in at an outlet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum PluggedAnswer {
    /// These devices; none if nothing is.
    Devices(Vec<Plugged>),
    /// Somebody looked and could not tell.
    Unsure,
}

impl PluggedAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, outlet: SubjectId) {
        let words = |at: AtOutlet| Phrase::new(format!("at-outlet-{}", at.key()));
        let offer = |at: AtOutlet| Offer::new(&at, words(at));
        let devices = DEVICES.iter().map(|device| AtOutlet::Device(*device));
        let mut offers: Vec<_> = devices.chain([AtOutlet::Nothing]).map(offer).collect();
        offers.push(Offer::unsure(&AtOutlet::Unsure));
        let plugged = snapshot.survey.parts.get(&outlet).and_then(|part| part.plugged.clone());
        let now = match &plugged {
            Some(devices) if devices.is_empty() => vec![AtOutlet::Nothing],
            Some(devices) => devices.iter().map(|device| AtOutlet::Device(*device)).collect(),
            None => {
                snapshot.survey.answer(outlet, Asked::Plugged).map(|_| AtOutlet::Unsure).into_iter().collect()
            }
        };
        builder.choice(&Key::Plugged, &Question::Plugged(outlet).phrase(snapshot), true, offers, &now);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let picked: Vec<AtOutlet> = pending.picked(&Key::Plugged).unwrap_or_default();
        if picked.is_empty() {
            return Err(not_answered());
        }
        if picked.contains(&AtOutlet::Unsure) {
            return Ok(Self::Unsure);
        }
        let is_picked = |device: &Plugged| picked.contains(&AtOutlet::Device(*device));
        Ok(Self::Devices(DEVICES.into_iter().filter(is_picked).collect()))
    }

    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>, outlet: SubjectId) -> Answer {
        match self {
            Self::Devices(devices) => {
                let answer = Answer::new().says(outlet, field::part::PLUGGED, &devices);
                // Where the modem is, the router mostly is: whoever could not tell is asked once more.
                if devices.contains(&Plugged::Modem) && is_asked_since_modem(snapshot) {
                    return answer.then(Place::Ask(Question::RouterAt));
                }
                answer
            }
            Self::Unsure => Answer::new().asked(outlet, Asked::Plugged, Reply::Unsure),
        }
    }
}

/// The rooms by name.
fn rooms<'a>(snapshot: &SurveySnapshot<'a>) -> impl Iterator<Item = &'a Room> {
    let mut rooms: Vec<_> = snapshot.survey.rooms.values().collect();
    rooms.sort_by(|a, b| (&a.name, a.id).cmp(&(&b.name, b.id)));
    rooms.into_iter().take(150)
}

/// The room of an outlet: one that is there, or a new one by its name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum RoomOfAnswer {
    /// A room that is there.
    Known(SubjectId),
    /// A new one.
    New(String),
}

impl RoomOfAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>, outlet: SubjectId) {
        let room = snapshot.survey.parts.get(&outlet).and_then(|part| part.room);
        let now = room.map(Key::Room);
        let offer = |room: &Room| Offer::new(&Key::Room(room.id), naming::of_room(snapshot.survey, room));
        let offers = rooms(snapshot).map(offer).collect();
        builder.choice(&Key::InRoom, &Question::RoomOf(outlet).phrase(snapshot), false, offers, &now);
        builder.writing(&Key::NewRoom, &Phrase::new("room-new"), None, WritingKind::Name, "");
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        if let Some(name) = pending.written(&Key::NewRoom).filter(|name| !name.is_empty()) {
            return Ok(Self::New(name.to_owned()));
        }
        match pending.one(&Key::InRoom) {
            Some(Key::Room(room)) => Ok(Self::Known(room)),
            _ => Err(not_answered()),
        }
    }

    pub(super) fn answer(self, outlet: SubjectId) -> Answer {
        let (answer, room) = match self {
            Self::Known(room) => (Answer::new(), room),
            Self::New(name) => {
                let id = SubjectId::random();
                (Answer::new().is(id, Is::Room).says(id, field::room::NAME, &name), id)
            }
        };
        answer.says(outlet, field::part::ROOM, &room)
    }
}

/// One thing that may be picked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum MoreAt {
    Room(SubjectId),
    No,
    Unsure,
}

impl Choice for MoreAt {
    fn key(&self) -> String {
        match self {
            Self::Room(room) => Key::Room(*room).to_string(),
            Self::No => "no".into(),
            Self::Unsure => UNSURE.into(),
        }
    }

    fn of(key: &str) -> Option<Self> {
        match key {
            "no" => Some(Self::No),
            UNSURE => Some(Self::Unsure),
            key => match Key::of(key)? {
                Key::Room(room) => Some(Self::Room(room)),
                _ => None,
            },
        }
    }
}

/// Outlets that nobody has come to yet, by their rooms.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct MoreOutletsAnswer {
    rooms: Vec<SubjectId>,
    unsure: bool,
}

impl MoreOutletsAnswer {
    pub(super) fn draw(snapshot: &SurveySnapshot<'_>, builder: &mut ScreenBuilder<'_>) {
        let mut offers = vec![Offer::new(&MoreAt::No, Phrase::new("more-outlets-no"))];
        let words =
            |room: &Room| Phrase::new("leads-room").phrase("room", naming::of_room(snapshot.survey, room));
        offers.extend(rooms(snapshot).map(|room| Offer::new(&MoreAt::Room(room.id), words(room))));
        offers.push(Offer::unsure(&MoreAt::Unsure));
        builder.choice(&Key::More, &Phrase::new("ask-more-outlets"), true, offers, None::<&MoreAt>);
    }

    pub(super) fn read(pending: &Pending) -> Told<Self> {
        let picked: Vec<MoreAt> = pending.picked(&Key::More).unwrap_or_default();
        if picked.is_empty() {
            return Err(not_answered());
        }
        let room = |more: &MoreAt| match more {
            MoreAt::Room(room) => Some(*room),
            MoreAt::No | MoreAt::Unsure => None,
        };
        Ok(Self { rooms: picked.iter().filter_map(room).collect(), unsure: picked.contains(&MoreAt::Unsure) })
    }

    /// Outlets found that nobody has traced yet are loose parts, to be joined later.
    pub(super) fn answer(self, snapshot: &SurveySnapshot<'_>) -> Answer {
        let reply = if self.unsure { Reply::Unsure } else { Reply::No };
        let mut answer = Answer::new().asked(snapshot.survey.id, Asked::MoreOutlets, reply);
        for (skip, room) in self.rooms.into_iter().enumerate() {
            let id = SubjectId::random();
            answer = answer.is(id, Is::Part).says(id, field::part::KIND, &PartKind::Outlet);
            answer = answer.says(id, field::part::TAG, &free_tag(snapshot.survey, PartKind::Outlet, skip));
            answer = answer.says(id, field::part::ROOM, &room);
        }
        answer
    }
}
