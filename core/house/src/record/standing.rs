//! The order of a house and the keys of its things, from how they hang together and what is told of them.
//!
//! Nothing here looks at an id, except between two things that are told alike in every way. So a house that is told
//! twice, by other people or in another order, is reckoned the same: the draws over what nobody knows are thrown by
//! these keys, and what is equal otherwise stands in this order.

use std::cell::OnceCell;
use std::cmp::Ordering;
use std::collections::HashMap;
use std::fmt::Debug;

use facts::fact::SubjectId;
use uuid::Uuid;

use super::tag_order::tag_order;
use super::{Named, Part, PartKind, Room, Run, Service, Survey};

/// What keys and digests are made under, so that they are nobody else's.
const STANDING: Uuid = Uuid::from_u128(0x6b1f_3c52_90d4_5e7a_a1c8_27d3_4be6_90f1);

/// A key for each part and run of a survey.
#[derive(Debug, Clone, Default)]
pub(super) struct StandKeys(HashMap<SubjectId, [u8; 16]>);

/// Keys are derived from what a survey says; they are no part of it.
impl PartialEq for StandKeys {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

impl StandKeys {
    /// Whether no key was given yet: the survey is new from its facts.
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The key of a part or run.
    pub(super) fn get(&self, id: SubjectId) -> Option<[u8; 16]> {
        self.0.get(&id).copied()
    }

    /// Gives a key to whatever has none: by where it stands now. What a change brings is told from what stood at that
    /// place before.
    pub(super) fn give(&mut self, survey: &Survey) {
        let lacks = |id: &SubjectId| !self.0.contains_key(id);
        if !survey.parts.keys().any(lacks) && !survey.runs.keys().any(lacks) {
            return;
        }
        let when = if self.0.is_empty() { "found" } else { "brought" };
        for (id, standing) in standings(survey) {
            self.0.entry(id).or_insert_with(|| hashed(&format!("{when} {standing}")).into_bytes());
        }
    }
}

/// Where each part and run stands: the legs of the splits on the way down from the head of its tree, what it is, and the
/// how-manieth of its kind it is since the last split. So what is screwed in between, or taken out, leaves the rest as it was.
fn standings(survey: &Survey) -> Vec<(SubjectId, String)> {
    let wiring = &survey.wiring;
    let is_head = |part: &&Part| wiring.feed(part.id).is_none();
    let mut told = Vec::with_capacity(survey.parts.len() + survey.runs.len());
    let mut heads: HashMap<PartKind, usize> = HashMap::new();
    let mut next: Vec<(SubjectId, String, HashMap<PartKind, usize>)> = Vec::new();
    for head in survey.parts.values().filter(is_head) {
        let nth = counted(&mut heads, head.kind);
        next.push((head.id, format!("{} {nth}: ", head.kind.name()), HashMap::new()));
    }
    while let Some((id, way, mut row)) = next.pop() {
        let Some(part) = survey.parts.get(&id) else { continue };
        let nth = counted(&mut row, part.kind);
        let standing = format!("{way}{} {nth}", part.kind.name());
        if let Some(run) = wiring.feed(id).and_then(|feed| feed.run) {
            told.push((run, format!("run to {standing}")));
        }
        let children = wiring.fed_from(id);
        for (place, child) in children.iter().enumerate() {
            if part.outputs() == 1 && children.len() == 1 {
                next.push((*child, way.clone(), row.clone()));
            } else {
                let port = wiring.feed(*child).map_or(0, |feed| feed.port);
                let before = children.iter().take(place);
                let twisted =
                    before.filter(|other| wiring.feed(**other).is_some_and(|feed| feed.port == port)).count();
                next.push((*child, format!("{standing}, {port}.{twisted}; "), HashMap::new()));
            }
        }
        told.push((id, standing));
    }
    let unused = survey.runs.keys().filter(|run| wiring.fed_over(**run).is_none());
    told.extend(unused.enumerate().map(|(nth, run)| (*run, format!("unused run {nth}"))));
    told
}

/// How many of a kind came before, and one more from now on.
fn counted(of: &mut HashMap<PartKind, usize>, kind: PartKind) -> usize {
    let count = of.entry(kind).or_insert(0);
    *count += 1;
    *count - 1
}

/// Puts parts, runs, rooms and services of a survey into the order of the house. The wiring is to be worked out anew after
/// it.
pub(super) fn put_in_order(survey: &mut Survey) {
    let order = Told::of(survey).parts_in_order();
    let place: HashMap<_, _> = order.into_iter().enumerate().map(|(place, id)| (id, place)).collect();
    let at = |id: &SubjectId| place.get(id).copied().unwrap_or(usize::MAX);
    let fed_over: HashMap<_, _> =
        survey.wiring.feeds().filter_map(|(part, feed)| Some((feed.run?, at(&part)))).collect();
    let fed = |run: &Run| fed_over.get(&run.id).copied().unwrap_or(usize::MAX);
    let mut first_outlet: HashMap<SubjectId, usize> = HashMap::new();
    for part in survey.parts.values() {
        if let Some(room) = part.room {
            let first = first_outlet.entry(room).or_insert(usize::MAX);
            *first = at(&part.id).min(*first);
        }
    }
    survey.parts.sort_by(|a, _, b, _| at(a).cmp(&at(b)));
    survey.runs.sort_by(|_, a, _, b| {
        fed(a).cmp(&fed(b)).then_with(|| by_debug(&run_without_ids(a), &run_without_ids(b)))
    });
    let outlet = |room: &Room| first_outlet.get(&room.id);
    survey.rooms.sort_by(|_, a, _, b| {
        tag_order(Some(&a.name))
            .cmp(&tag_order(Some(&b.name)))
            .then_with(|| outlet(a).cmp(&outlet(b)))
            .then_with(|| by_debug(&a.wish, &b.wish))
    });
    let entry = |service: &Service| service.entry.map(|entry| at(&entry));
    survey.services.sort_by(|_, a, _, b| {
        (a.kind, entry(a))
            .cmp(&(b.kind, entry(b)))
            .then_with(|| by_debug(&service_without_ids(a), &service_without_ids(b)))
    });
}

/// What is told of the parts of a survey.
struct Told<'a> {
    survey: &'a Survey,
    /// For each part a digest of all that is told of it and of what hangs below; worked out only where two are alike else.
    digests: OnceCell<HashMap<SubjectId, Uuid>>,
}

impl<'a> Told<'a> {
    fn of(survey: &'a Survey) -> Self {
        Self { survey, digests: OnceCell::new() }
    }

    /// Every part, each tree from its head down, legs in order, loose parts last.
    fn parts_in_order(&self) -> Vec<SubjectId> {
        let wiring = &self.survey.wiring;
        let mut heads: Vec<_> = wiring.heads().iter().copied().map(|head| (false, head)).collect();
        heads.extend(wiring.loose().keys().map(|head| (true, *head)));
        heads.sort_by(|(loose_a, a), (loose_b, b)| loose_a.cmp(loose_b).then_with(|| self.trees(*a, *b)));
        let mut order = Vec::with_capacity(self.survey.parts.len());
        let mut next: Vec<_> = heads.into_iter().rev().map(|(_, head)| head).collect();
        while let Some(id) = next.pop() {
            order.push(id);
            let mut children = wiring.fed_from(id).to_vec();
            let port = |child: &SubjectId| wiring.feed(*child).map(|feed| feed.port);
            children.sort_by(|a, b| port(a).cmp(&port(b)).then_with(|| self.trees(*a, *b)));
            next.extend(children.into_iter().rev());
        }
        order
    }

    /// The order of two trees: by what is told of their heads, then of what hangs below.
    fn trees(&self, a: SubjectId, b: SubjectId) -> Ordering {
        let parts = &self.survey.parts;
        let (Some(one), Some(other)) = (parts.get(&a), parts.get(&b)) else { return Ordering::Equal };
        let room = |part: &Part| self.survey.room_of(part).map(|room| tag_order(Some(&room.name)));
        let seen = |part: &Part| (part.kind != PartKind::Entry, tag_order(part.tag.as_deref()), part.kind);
        seen(one)
            .cmp(&seen(other))
            .then_with(|| one.place.cmp(&other.place))
            .then_with(|| room(one).cmp(&room(other)))
            .then_with(|| {
                let digests = self.digests.get_or_init(|| self.digests());
                digests.get(&a).cmp(&digests.get(&b))
            })
    }

    fn digests(&self) -> HashMap<SubjectId, Uuid> {
        let wiring = &self.survey.wiring;
        let mut digests = HashMap::new();
        let heads = wiring.heads().iter().chain(wiring.loose().keys());
        // Feeders come before what they feed, so that backwards all that hangs on a part is digested before it.
        for id in heads.flat_map(|head| wiring.below(*head)).collect::<Vec<_>>().into_iter().rev() {
            let run = wiring.feed(id).and_then(|feed| self.survey.runs.get(&feed.run?)).map(run_without_ids);
            let room = |part: &Part| self.survey.room_of(part).map(|room| (room.name.clone(), room.wish));
            let part = self.survey.parts.get(&id).map(|part| (part_without_ids(part), room(part)));
            let below = wiring.fed_from(id).iter();
            let mut below: Vec<_> = below
                .map(|child| (wiring.feed(*child).map(|feed| feed.port), digests.get(child).copied()))
                .collect();
            below.sort_unstable();
            digests.insert(id, hashed(&format!("{part:?} {run:?} {below:?}")));
        }
        digests
    }
}

fn hashed(text: &str) -> Uuid {
    Uuid::new_v5(&STANDING, text.as_bytes())
}

/// The order of two things by all that is told of them.
fn by_debug(a: &impl Debug, b: &impl Debug) -> Ordering {
    format!("{a:?}").cmp(&format!("{b:?}"))
}

fn nobody() -> SubjectId {
    SubjectId::from_uuid(Uuid::nil())
}

fn part_without_ids(part: &Part) -> Part {
    Part { id: nobody(), feed: None, room: None, ..part.clone() }
}

fn run_without_ids(run: &Run) -> Run {
    Run { id: nobody(), ..run.clone() }
}

fn service_without_ids(service: &Service) -> Service {
    Service { id: nobody(), entry: None, ..service.clone() }
}
