//! What was ever said about one field of one subject.

use std::collections::BTreeSet;

use super::id::FactId;

/// Which facts speak of the field, and which of them no other fact replaces. Of most fields one thing was said and no more,
/// and that needs no sets.
#[derive(Debug, Clone)]
pub(super) struct History {
    /// The only one, while there is nothing in `often`.
    once: FactId,
    often: Option<Box<Often>>,
}

/// Facts by their ids.
#[derive(Debug, Clone)]
struct Often {
    all: BTreeSet<FactId>,
    /// Those that no other fact replaces.
    live: BTreeSet<FactId>,
}

impl History {
    /// That of a field of which one thing was said.
    pub(super) const fn of(id: FactId) -> Self {
        Self { once: id, often: None }
    }

    /// Adds a fact that replaces others. Nothing held can replace it, because whoever replaces it must know it.
    pub(super) fn say(&mut self, id: FactId, over: &[FactId]) {
        let often = self.as_often();
        often.all.insert(id);
        often.live.insert(id);
        for over in over {
            often.live.remove(over);
        }
    }

    /// Takes facts out, as if they had never been said; `over` is what a fact that stays replaces.
    pub(super) fn unsay<'a>(&mut self, gone: &BTreeSet<FactId>, over: impl Fn(FactId) -> &'a [FactId]) {
        let often = self.as_often();
        often.all.retain(|id| !gone.contains(id));
        let replaced: BTreeSet<FactId> = often.all.iter().flat_map(|&id| over(id).iter().copied()).collect();
        often.live = often.all.difference(&replaced).copied().collect();
    }

    /// Whether nothing was said.
    pub(super) fn is_empty(&self) -> bool {
        self.all().next().is_none()
    }

    /// All facts.
    pub(super) fn all(&self) -> impl DoubleEndedIterator<Item = FactId> {
        let (once, often) = self.parts();
        once.into_iter().chain(often.into_iter().flat_map(|often| often.all.iter().copied()))
    }

    /// Those that no other fact replaces.
    pub(super) fn live(&self) -> impl DoubleEndedIterator<Item = FactId> {
        let (once, often) = self.parts();
        once.into_iter().chain(often.into_iter().flat_map(|often| often.live.iter().copied()))
    }

    fn parts(&self) -> (Option<FactId>, Option<&Often>) {
        let often = self.often.as_deref();
        (often.is_none().then_some(self.once), often)
    }

    fn as_often(&mut self) -> &mut Often {
        let once = self.once;
        self.often.get_or_insert_with(|| {
            let only = BTreeSet::from([once]);
            Box::new(Often { all: only.clone(), live: only })
        })
    }
}
