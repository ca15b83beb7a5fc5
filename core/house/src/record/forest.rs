//! The wiring of a house: a forest of trees, made from the parts' feeds.
//!
//! Feeds are replayed in the order in which they were stated; one that would close a loop, sit too deep, or name a
//! port that is not there is left out and its part is *loose*: found, not yet traced. (M. Kleppmann et al., "A
//! highly-available move operation for replicated trees", IEEE TPDS 2021.)

use std::collections::{BTreeMap, BTreeSet};

use facts::fact::SubjectId;

use super::{Feed, FeedFrom, Part, PartKind};

/// A tree deeper than this is not wiring of a house.
pub const MOST_DEEP: usize = 256;

/// Why a part is loose.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LooseReason {
    /// Nobody has said yet what feeds it.
    NotTraced,
    /// Its feed would close a loop.
    Loop,
    /// Its feed would sit more than [`MOST_DEEP`] parts below the head of its tree.
    TooDeep,
    /// The feeding part has no such port.
    NoSuchPort,
    /// The feeding part is not in the survey (removed, or not received).
    FeederGone,
}

/// How the parts hang together.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Wiring {
    feeds: BTreeMap<SubjectId, FeedFrom>,
    children: BTreeMap<SubjectId, Vec<SubjectId>>,
    heads: Vec<SubjectId>,
    loose: BTreeMap<SubjectId, LooseReason>,
    order: Vec<SubjectId>,
}

impl Wiring {
    /// The wiring of `parts`, their feeds replayed in the order `stated` (parts not in it come last, by id).
    pub fn replay(parts: &BTreeMap<SubjectId, Part>, stated: &[SubjectId]) -> Self {
        let mut wiring = Self { order: stated.to_vec(), ..Self::default() };
        let known: BTreeSet<_> = stated.iter().copied().collect();
        let rest = parts.keys().copied().filter(|id| !known.contains(id));
        for id in stated.iter().copied().chain(rest) {
            let Some(part) = parts.get(&id) else { continue };
            match &part.feed {
                Some(Feed::From(feed)) => match wiring.refusal(parts, id, feed) {
                    None => {
                        wiring.feeds.insert(id, feed.clone());
                    }
                    Some(reason) => {
                        wiring.loose.insert(id, reason);
                    }
                },
                Some(Feed::Nothing) => wiring.heads.push(id),
                None if part.kind == PartKind::Entry => wiring.heads.push(id),
                None => {
                    wiring.loose.insert(id, LooseReason::NotTraced);
                }
            }
        }
        for (child, feed) in &wiring.feeds {
            wiring.children.entry(feed.part).or_default().push(*child);
        }
        for siblings in wiring.children.values_mut() {
            siblings.sort_by_key(|child| (wiring.feeds.get(child).map(|feed| feed.port), *child));
        }
        wiring.heads.sort_unstable();
        wiring
    }

    /// The wiring after a change in memory: the feeds replayed in the same order as before.
    #[must_use]
    pub fn replayed(&self, parts: &BTreeMap<SubjectId, Part>) -> Self {
        Self::replay(parts, &self.order)
    }

    fn refusal(
        &self,
        parts: &BTreeMap<SubjectId, Part>,
        id: SubjectId,
        feed: &FeedFrom,
    ) -> Option<LooseReason> {
        let Some(feeder) = parts.get(&feed.part) else { return Some(LooseReason::FeederGone) };
        if feed.port == 0 || feed.port > feeder.outputs() {
            return Some(LooseReason::NoSuchPort);
        }
        let mut above = feed.part;
        for _ in 0..MOST_DEEP {
            if above == id {
                return Some(LooseReason::Loop);
            }
            match self.feeds.get(&above) {
                Some(next) => above = next.part,
                None => return None,
            }
        }
        Some(LooseReason::TooDeep)
    }

    /// The feed that holds for a part.
    pub fn feed(&self, id: SubjectId) -> Option<&FeedFrom> {
        self.feeds.get(&id)
    }

    /// Every feed that holds, by the part that is fed.
    pub fn feeds(&self) -> impl Iterator<Item = (SubjectId, &FeedFrom)> {
        self.feeds.iter().map(|(part, feed)| (*part, feed))
    }

    /// The part that a run feeds.
    pub fn fed_over(&self, run: SubjectId) -> Option<SubjectId> {
        self.feeds().find(|(_, feed)| feed.run == Some(run)).map(|(part, _)| part)
    }

    /// The parts fed from `id`, by port.
    pub fn fed_from(&self, id: SubjectId) -> &[SubjectId] {
        self.children.get(&id).map_or(&[], Vec::as_slice)
    }

    /// The part or parts on one port of `id`: more than one is a state to settle.
    pub fn on_port(&self, id: SubjectId, port: u8) -> impl Iterator<Item = SubjectId> + '_ {
        self.fed_from(id)
            .iter()
            .copied()
            .filter(move |child| self.feeds.get(child).is_some_and(|feed| feed.port == port))
    }

    /// Heads of trees: entries, and parts that somebody saw to have no feed.
    pub fn heads(&self) -> &[SubjectId] {
        &self.heads
    }

    /// Loose parts with the reason, by id. What hangs below a loose part hangs on it still.
    pub fn loose(&self) -> &BTreeMap<SubjectId, LooseReason> {
        &self.loose
    }

    /// The way up from a part to the head of its tree, the part itself first.
    pub fn way_up(&self, id: SubjectId) -> Vec<SubjectId> {
        let mut way = vec![id];
        let mut at = id;
        while let Some(feed) = self.feeds.get(&at) {
            way.push(feed.part);
            at = feed.part;
            if way.len() > MOST_DEEP + 1 {
                break;
            }
        }
        way
    }

    /// The head of the tree that a part is on.
    pub fn head_of(&self, id: SubjectId) -> SubjectId {
        self.way_up(id).last().copied().unwrap_or(id)
    }

    /// The parts behind one, as long as each is the only one fed by the one before it.
    pub fn in_row(&self, id: SubjectId) -> impl Iterator<Item = SubjectId> + '_ {
        let only = |id: &SubjectId| match self.fed_from(*id) {
            [only] => Some(*only),
            _ => None,
        };
        std::iter::successors(only(&id), only)
    }

    /// Every part of the tree headed by `head`, feeders before what they feed.
    pub fn below(&self, head: SubjectId) -> Vec<SubjectId> {
        let mut found = vec![head];
        let mut next = 0;
        while let Some(&at) = found.get(next) {
            found.extend_from_slice(self.fed_from(at));
            next += 1;
        }
        found
    }

    /// The parts on the way from one part to another, both included; `None` if they are not on one tree.
    pub fn way_between(&self, from: SubjectId, to: SubjectId) -> Option<Vec<SubjectId>> {
        let up = self.way_up(from);
        let down = self.way_up(to);
        let meet = up.iter().copied().find(|id| down.contains(id))?;
        let mut way: Vec<_> = up.into_iter().take_while(|id| *id != meet).collect();
        way.push(meet);
        let tail: Vec<_> = down.into_iter().take_while(|id| *id != meet).collect();
        way.extend(tail.into_iter().rev());
        Some(way)
    }
}
