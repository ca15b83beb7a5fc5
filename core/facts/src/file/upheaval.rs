//! Whether a file would turn a survey upside down: a mistake, or harm. It is asked about first.

use std::collections::{BTreeMap, BTreeSet};

use crate::error::Result;
use crate::fact::{Fact, FactId, Ledger, Removal, SubjectId, SurveyId, reserved};

/// How much of what a survey shows a file would remove or move.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Upheaval {
    /// How many things the survey shows: parts, runs, rooms, notes and all else that is of a kind.
    pub things: usize,
    /// How many of them would be hidden, or would be of another kind.
    pub gone: usize,
    /// How many parts the survey shows.
    pub parts: usize,
    /// How many of them would go, or get their signal from elsewhere.
    pub parts_changed: usize,
}

impl Upheaval {
    /// Whether the file is taken only after a yes: more than half of all things, or of all parts, would not be what or where
    /// they are.
    pub const fn asks_first(&self) -> bool {
        self.gone * 2 > self.things || self.parts_changed * 2 > self.parts
    }

    /// What facts that are taken in would do to what is held.
    pub(super) fn of<'a>(
        held: &Ledger,
        survey: SurveyId,
        new: impl IntoIterator<Item = &'a Fact>,
    ) -> Result<Self> {
        let mut touched: BTreeMap<SubjectId, Vec<&Fact>> = BTreeMap::new();
        for fact in new.into_iter().filter(|fact| !held.contains(fact.id())) {
            touched.entry(fact.subject()).or_default().push(fact);
        }
        touched.remove(&survey.subject());
        let mut found = Self::default();
        for subject in held.subjects().filter(|&subject| subject != survey.subject()) {
            if let Some(is) = kind(held, subject) {
                found.things += 1;
                found.parts += usize::from(is == reserved::PART);
            }
        }
        for (&subject, new) in &touched {
            let Some(is) = kind(held, subject) else { continue };
            let after = after(held, subject, new)?;
            let is_gone = kind(&after, subject) != Some(is);
            found.gone += usize::from(is_gone);
            found.parts_changed +=
                usize::from(is == reserved::PART && (is_gone || is_moved(held, &after, subject)));
        }
        Ok(found)
    }
}

/// What kind of thing a subject is, unless it is hidden.
fn kind(ledger: &Ledger, subject: SubjectId) -> Option<&str> {
    let is = ledger.shown(subject, reserved::IS)?.value().as_str()?;
    (!matches!(ledger.removal(subject), Removal::Removed { .. })).then_some(is)
}

fn is_moved(held: &Ledger, after: &Ledger, subject: SubjectId) -> bool {
    let feed = |ledger: &Ledger| ledger.shown(subject, reserved::FEED).map(|fact| fact.value().clone());
    let before = feed(held).filter(|feed| !feed.is_null());
    before.is_some_and(|before| feed(after) != Some(before))
}

/// What would be known of one subject. A fact replaces facts of its own subject only.
fn after(held: &Ledger, subject: SubjectId, new: &[&Fact]) -> Result<Ledger> {
    let mut after = Ledger::new();
    let known = held.fields(subject).flat_map(|name| held.history(subject, name));
    let mut facts: Vec<&Fact> = known.collect();
    let ids: BTreeSet<FactId> = facts.iter().map(|fact| fact.id()).collect();
    facts.extend(new.iter().filter(|fact| !ids.contains(&fact.id())));
    facts.sort_by_key(|fact| fact.id());
    for fact in facts {
        after.insert(fact.clone())?;
    }
    Ok(after)
}
