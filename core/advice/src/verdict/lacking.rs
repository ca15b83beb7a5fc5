//! What keeps rooms from a figure: the one thing, or the few, that somebody has to say first.

use facts::fact::SubjectId;
use house::naming;
use house::record::{Asked, Reply, Room, Survey};
use phrase::{Arg, Phrase};

use super::wish::WishMeasured;
use crate::forecast::{Node, Reach, nodes_of, reach_on_trees};

/// What is missing before anything can be worked out for a room.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lack {
    /// Nobody said which outlet is at the router.
    Router,
    /// Somebody said that none is: one nearby has to do, and nobody said which.
    OutletNearRouter,
    /// Nobody traced from where this part, which leads to the room or to the router, gets its signal.
    Feed(SubjectId),
    /// Nobody said which cable leads to this room.
    Outlet(SubjectId),
}

impl Lack {
    /// Its name in JSON.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Router => "router",
            Self::OutletNearRouter => "outlet_near_router",
            Self::Feed(_) => "feed",
            Self::Outlet(_) => "outlet",
        }
    }

    /// What is missing, as the end of a sentence.
    pub fn phrase(self, survey: &Survey) -> Phrase {
        let phrase = Phrase::new(format!("lack-{}", self.name().replace('_', "-")));
        match self {
            Self::Router | Self::OutletNearRouter => phrase,
            Self::Feed(part) => phrase.phrase("part", naming::part(survey, part)),
            Self::Outlet(room) => match survey.rooms.get(&room) {
                Some(room) => phrase.phrase("room", naming::of_room(survey, room)),
                None => phrase.phrase("room", naming::thing(survey, room)),
            },
        }
    }
}

/// The rooms that wish for something and of which nothing can be told yet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lacking {
    /// How many rooms away from the router wish for something.
    pub asked: usize,
    /// Those of which nothing is told, each with what is missing, in the order of their names.
    pub rooms: Vec<(SubjectId, Lack)>,
    /// What is missing where no room wishes for anything.
    house: Option<Lack>,
}

impl Lacking {
    /// In a survey as it stands: the rooms whose wish is [`Met::NotKnown`](super::Met::NotKnown) once it is worked out.
    pub fn of(survey: &Survey) -> Self {
        let nodes = nodes_of(survey);
        let bridge = nodes.first().filter(|node| node.bridge).copied();
        let bridge_room = bridge.and_then(|bridge| survey.parts.get(&bridge.outlet)?.room);
        let mut rooms: Vec<_> = survey.rooms.values().filter(|room| Some(room.id) != bridge_room).collect();
        rooms.retain(|room| room.wish.is_some());
        rooms.sort_by(|a, b| a.name.cmp(&b.name));
        let search = Search { survey, nodes: &nodes, bridge };
        let lacks = rooms.iter().filter_map(|room| Some((room.id, search.lack(room)?))).collect();
        let house = bridge.is_none().then(|| no_bridge(survey));
        Self { asked: rooms.len(), rooms: lacks, house }
    }

    /// Whether no room at all has a figure, or can have one.
    pub fn is_of_all(&self) -> bool {
        match self.asked {
            0 => self.house.is_some(),
            asked => self.rooms.len() == asked,
        }
    }

    /// What is missing, each thing once, what most rooms wait for first.
    pub fn lacks(&self) -> Vec<Lack> {
        let mut lacks: Vec<Lack> = self.house.filter(|_| self.asked == 0).into_iter().collect();
        for (_, lack) in &self.rooms {
            if !lacks.contains(lack) {
                lacks.push(*lack);
            }
        }
        let wait = |lack: &Lack| self.rooms.iter().filter(|(_, of)| of == lack).count();
        lacks.sort_by_key(|lack| std::cmp::Reverse(wait(lack)));
        lacks
    }

    /// That it cannot be told yet of all rooms, or of which, and what is missing; `None` where nothing is.
    pub fn phrase(&self, survey: &Survey) -> Option<Phrase> {
        let lacks = self.lacks();
        if lacks.is_empty() {
            return None;
        }
        let several = |phrases: Vec<Phrase>| {
            Arg::Several(phrases.into_iter().map(|phrase| Arg::Phrase(Box::new(phrase))).collect())
        };
        let why = several(lacks.iter().map(|lack| lack.phrase(survey)).collect());
        if self.is_of_all() {
            return Some(Phrase::new("lacking-all").with("why", why));
        }
        let rooms = self.rooms.iter().filter_map(|(room, _)| survey.rooms.get(room));
        let rooms = several(rooms.map(|room| naming::of_room(survey, room)).collect());
        Some(Phrase::new("lacking-some").with("rooms", rooms).with("why", why))
    }
}

fn no_bridge(survey: &Survey) -> Lack {
    match survey.reply(survey.id, Asked::RouterAt) {
        Some(Reply::None) => Lack::OutletNearRouter,
        _ => Lack::Router,
    }
}

struct Search<'a> {
    survey: &'a Survey,
    nodes: &'a [Node],
    bridge: Option<Node>,
}

impl Search<'_> {
    /// What is missing for a room; `None` where it was measured, or where something follows from what is known.
    fn lack(&self, room: &Room) -> Option<Lack> {
        let survey = self.survey;
        let is_here = |node: &&Node| {
            let of_room = survey.parts.get(&node.outlet).and_then(|part| part.room) == Some(room.id);
            let is_bridge = self.bridge.is_some_and(|bridge| bridge.outlet == node.outlet);
            !is_bridge && (of_room || room.served_from == Some(node.outlet))
        };
        let here: Vec<_> = self.nodes.iter().filter(is_here).collect();
        let wish = room.wish?;
        if here.iter().any(|node| WishMeasured::at(survey, wish, node.outlet).is_some()) {
            return None;
        }
        if self.bridge.is_none() {
            return Some(no_bridge(survey));
        }
        // Of several outlets one that can be told of is enough.
        let lacks: Vec<_> = here
            .iter()
            .map(|node| match reach_on_trees(survey, self.bridge, node) {
                Reach::NoBridge => Some(no_bridge(survey)),
                Reach::Loose(part) => Some(Lack::Feed(part)),
                Reach::Estimated(_) | Reach::NoChannel | Reach::OtherTree | Reach::FedByNothing(_) => None,
            })
            .collect();
        match lacks.first() {
            None => Some(Lack::Outlet(room.id)),
            Some(first) if lacks.iter().all(Option::is_some) => *first,
            Some(_) => None,
        }
    }
}
