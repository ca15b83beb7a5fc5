//! The set of facts of one survey, in memory.
//!
//! A ledger depends only on which facts it holds, never on the order in which they came. It only grows.

use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::Fact;
use super::clock::FactClock;
use super::fault::FactFault;
use super::forget::{FORGET, named_by};
use super::history::History;
use super::id::{ActId, FactId, SubjectId};
use crate::error::{FactsError, Result};

/// All facts of a survey, found by id, by subject and field, and by act.
#[derive(Debug, Clone, Default)]
pub struct Ledger {
    facts: BTreeMap<FactId, Fact>,
    subjects: BTreeMap<SubjectId, Fields>,
    acts: BTreeMap<ActId, BTreeSet<FactId>>,
    /// What the facts of the field [`FORGET`] name, held or not: it is forgotten whenever it comes.
    to_forget: BTreeSet<FactId>,
}

/// What a batch of facts changed in a ledger.
#[derive(Debug, Clone, Default)]
pub(crate) struct Taken {
    /// The facts that are new, by id.
    pub new: Vec<FactId>,
    /// The facts that were forgotten, as they were before; some may be new in the same batch.
    pub forgotten: Vec<Fact>,
}

/// What was ever said about one subject, by field.
type Fields = BTreeMap<Arc<str>, History>;

/// Two ledgers are equal if they hold the same facts.
impl PartialEq for Ledger {
    fn eq(&self, other: &Self) -> bool {
        self.facts == other.facts
    }
}

impl Ledger {
    /// A ledger without facts.
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a fact; returns false if it is held already. For facts from this survey's own store: what comes from
    /// elsewhere goes through [`Ledger::merge`], which also looks at the date. A forgotten fact makes the one that
    /// is held forgotten too.
    ///
    /// # Errors
    /// [`FactsError::FactDiffers`] if another fact holds its id; [`FactsError::ReplacesUnknown`] or
    /// [`FactsError::ReplacesElsewhere`] if it replaces a fact that is not held, or one of another subject or
    /// field. The ledger is then as it was.
    pub fn insert(&mut self, fact: Fact) -> Result<bool> {
        let mut taken = Taken::default();
        self.put(fact, &mut taken)?;
        Ok(!taken.new.is_empty())
    }

    fn put(&mut self, mut fact: Fact, taken: &mut Taken) -> Result<()> {
        let id = fact.id();
        if let Some(held) = self.facts.get(&id) {
            if !held.is_same(&fact) {
                return Err(FactsError::FactDiffers { id });
            }
            if fact.is_forgotten() {
                taken.forgotten.extend(self.forget_held(id));
            }
            return Ok(());
        }
        check_over(&self.facts, &fact)?;
        index(self.subjects.entry(fact.subject()).or_default(), &fact);
        self.acts.entry(fact.act()).or_default().insert(id);
        let named: Vec<FactId> = named_by(&fact).collect();
        if fact.field() != FORGET && self.to_forget.contains(&id) {
            fact.forget();
        }
        self.facts.insert(id, fact);
        taken.new.push(id);
        for named in named {
            self.to_forget.insert(named);
            taken.forgotten.extend(self.forget_held(named));
        }
        Ok(())
    }

    /// The ledger of the facts of a store, which come by id: what [`Ledger::insert`] makes of one after the other, at half
    /// the price.
    ///
    /// # Errors
    /// As [`Ledger::insert`].
    pub(crate) fn of_ascending(facts: Vec<(FactId, Fact)>) -> Result<Self> {
        let mut ledger = Self::new();
        if !facts.is_sorted_by(|(one, _), (two, _)| one < two) {
            facts.into_iter().try_for_each(|(_, fact)| ledger.insert(fact).map(drop))?;
            return Ok(ledger);
        }
        // A map of what comes in order is laid out at once. A fact only ever replaces older ones, so whatever it replaces
        // stands before it.
        ledger.facts = facts.into_iter().collect();
        let mut acts: BTreeMap<ActId, Vec<FactId>> = BTreeMap::new();
        let mut facts = ledger.facts.values().peekable();
        // An act says one thing after the other about a subject.
        while let Some(first) = facts.peek().copied() {
            let of_act = acts.entry(first.act()).or_default();
            let fields = ledger.subjects.entry(first.subject()).or_default();
            let goes_with_first =
                |fact: &&Fact| fact.act() == first.act() && fact.subject() == first.subject();
            while let Some(fact) = facts.next_if(goes_with_first) {
                check_over(&ledger.facts, fact)?;
                index(fields, fact);
                of_act.push(fact.id());
                ledger.to_forget.extend(named_by(fact));
            }
        }
        ledger.acts = acts.into_iter().map(|(act, ids)| (act, ids.into_iter().collect())).collect();
        for id in ledger.to_forget.clone() {
            ledger.forget_held(id);
        }
        Ok(ledger)
    }

    /// Drops what a held fact says; returns it as it was, or nothing if nothing changes. What tells to forget is
    /// never forgotten: whether a fact is would then depend on the order in which they came.
    pub(crate) fn forget_held(&mut self, id: FactId) -> Option<Fact> {
        let held = self.facts.get_mut(&id)?;
        if held.is_forgotten() || held.field() == FORGET {
            return None;
        }
        let was = held.clone();
        held.forget();
        Some(was)
    }

    /// Takes in facts from elsewhere, in any order, all or none. Facts that are held already are passed over.
    /// Raises the clock, and returns the ids that are new here, in order.
    ///
    /// # Errors
    /// As [`Ledger::insert`], and [`FactsError::FromTheFuture`] for a new fact more than a year ahead.
    /// Ledger and clock are then as they were.
    pub fn merge(
        &mut self,
        facts: impl IntoIterator<Item = Fact>,
        clock: &mut FactClock,
    ) -> Result<Vec<FactId>> {
        let new = self.insert_all(facts, |fact| clock.check(fact.id()))?.new;
        if let Some(&greatest) = new.last() {
            clock.raise(greatest);
        }
        Ok(new)
    }

    /// Inserts facts in any order, all or none, each new one only if `admit` lets it in.
    pub(crate) fn insert_all(
        &mut self,
        facts: impl IntoIterator<Item = Fact>,
        admit: impl Fn(&Fact) -> Result<()>,
    ) -> Result<Taken> {
        let mut facts: Vec<Fact> = facts.into_iter().collect();
        // A fact has a greater id than those it replaces, so this order never meets one before its origin.
        facts.sort_by_key(Fact::id);
        let mut taken = Taken::default();
        for fact in facts {
            let admitted = if self.contains(fact.id()) { Ok(()) } else { admit(&fact) };
            if let Err(error) = admitted.and_then(|()| self.put(fact, &mut taken)) {
                self.take_back(taken);
                return Err(error);
            }
        }
        Ok(taken)
    }

    /// Undoes what a batch changed, as if it had never come. Nothing else may have been added since.
    pub(crate) fn take_back(&mut self, taken: Taken) {
        for was in taken.forgotten {
            self.facts.insert(was.id(), was);
        }
        let mut told = false;
        let mut touched: BTreeMap<(SubjectId, Arc<str>), BTreeSet<FactId>> = BTreeMap::new();
        for id in &taken.new {
            let Some(fact) = self.facts.remove(id) else { continue };
            told |= fact.field() == FORGET;
            if let Some(of_act) = self.acts.get_mut(&fact.act()) {
                of_act.remove(id);
                if of_act.is_empty() {
                    self.acts.remove(&fact.act());
                }
            }
            touched.entry((fact.subject(), fact.shared_field())).or_default().insert(*id);
        }
        for ((subject, field), gone) in touched {
            let Some(fields) = self.subjects.get_mut(&subject) else { continue };
            if let Some(history) = fields.get_mut(&field) {
                history.unsay(&gone, |id| self.facts.get(&id).map_or(&[], Fact::over));
            }
            fields.retain(|_, history| !history.is_empty());
            if fields.is_empty() {
                self.subjects.remove(&subject);
            }
        }
        if told {
            self.to_forget = self.facts.values().flat_map(named_by).collect();
        }
    }

    /// How many facts there are.
    pub fn len(&self) -> usize {
        self.facts.len()
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.facts.is_empty()
    }

    /// Whether the fact is held.
    pub fn contains(&self, id: FactId) -> bool {
        self.facts.contains_key(&id)
    }

    /// Whether a fact is forgotten whenever it comes: some fact that is held tells to.
    pub(crate) fn tells_to_forget(&self, id: FactId) -> bool {
        self.to_forget.contains(&id)
    }

    /// One fact.
    pub fn fact(&self, id: FactId) -> Option<&Fact> {
        self.facts.get(&id)
    }

    /// All facts, by id.
    pub fn facts(&self) -> impl DoubleEndedIterator<Item = &Fact> {
        self.facts.values()
    }

    /// All facts as canonical lines, by id, each ended by a line feed. Equal ledgers give equal bytes.
    ///
    /// # Errors
    /// None for facts made by this crate.
    pub fn to_lines(&self) -> Result<String, FactFault> {
        self.facts().try_fold(String::new(), |mut lines, fact| {
            lines.push_str(&fact.to_line()?);
            lines.push('\n');
            Ok(lines)
        })
    }

    /// Everything that any fact speaks of, removed things included.
    pub fn subjects(&self) -> impl Iterator<Item = SubjectId> {
        self.subjects.keys().copied()
    }

    /// The fields of a subject that were ever written, by name.
    pub fn fields(&self, subject: SubjectId) -> impl Iterator<Item = &str> {
        self.subjects.get(&subject).into_iter().flat_map(Fields::keys).map(AsRef::as_ref)
    }

    /// The story of a field: all that was ever said about it, by id.
    pub fn history(&self, subject: SubjectId, field: &str) -> Vec<&Fact> {
        self.held(self.history_of(subject, field).map(History::all).into_iter().flatten())
    }

    /// The facts about a field that no other fact replaces, by id.
    pub fn live(&self, subject: SubjectId, field: &str) -> Vec<&Fact> {
        self.held(self.history_of(subject, field).map(History::live).into_iter().flatten())
    }

    /// The live fact with the greatest id of those that still say something, or the greatest at all if none does.
    /// Where it is one of several, see [`Ledger::disagreements`].
    pub fn shown(&self, subject: SubjectId, field: &str) -> Option<&Fact> {
        let live = self.history_of(subject, field)?.live();
        let mut newest_first = live.rev().filter_map(|id| self.facts.get(&id));
        let newest = newest_first.next()?;
        if !newest.is_forgotten() {
            return Some(newest);
        }
        newest_first.find(|fact| !fact.is_forgotten()).or(Some(newest))
    }

    /// The facts of one action of the user, by id.
    pub fn of_act(&self, act: ActId) -> Vec<&Fact> {
        self.held(self.acts.get(&act).into_iter().flatten().copied())
    }

    fn history_of(&self, subject: SubjectId, field: &str) -> Option<&History> {
        self.subjects.get(&subject)?.get(field)
    }

    fn held(&self, ids: impl Iterator<Item = FactId>) -> Vec<&Fact> {
        ids.filter_map(|id| self.facts.get(&id)).collect()
    }
}

/// Whether what a fact replaces is held, and of the same field.
fn check_over(held: &BTreeMap<FactId, Fact>, fact: &Fact) -> Result<()> {
    let id = fact.id();
    for &over in fact.over() {
        match held.get(&over) {
            None => return Err(FactsError::ReplacesUnknown { id, missing: over }),
            Some(held) if held.subject() != fact.subject() || held.field() != fact.field() => {
                return Err(FactsError::ReplacesElsewhere { id, other: over });
            }
            Some(_) => {}
        }
    }
    Ok(())
}

/// Adds a fact to what was said about its subject.
fn index(fields: &mut Fields, fact: &Fact) {
    match fields.entry(fact.shared_field()) {
        Entry::Vacant(entry) => {
            entry.insert(History::of(fact.id()));
        }
        Entry::Occupied(mut entry) => entry.get_mut().say(fact.id(), fact.over()),
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::super::FactId;
    use super::super::testing::*;
    use super::*;

    fn id(ms: u64) -> FactId {
        FactId::at(ms)
    }

    fn values(facts: &[&Fact]) -> Vec<serde_json::Value> {
        facts.iter().map(|fact| fact.value().clone()).collect()
    }

    #[test]
    fn the_same_fact_twice_is_one() {
        let mut ledger = Ledger::new();
        let first = fact(id(1), "length", &json!(15), &[]);
        assert!(ledger.insert(first.clone()).unwrap());
        assert!(!ledger.insert(first).unwrap());
        assert_eq!(ledger.len(), 1);
    }

    #[test]
    fn another_fact_under_a_held_id_is_refused() {
        let mut ledger = Ledger::new();
        let first = fact(id(1), "length", &json!(15), &[]);
        ledger.insert(first.clone()).unwrap();
        let forged = fact(first.id(), "length", &json!(16), &[]);
        let error = ledger.insert(forged).unwrap_err();
        assert!(matches!(error, FactsError::FactDiffers { id } if id == first.id()));
        assert_eq!(values(&ledger.live(subject(1), "length")), [json!(15)]);
    }

    #[test]
    fn what_is_replaced_must_be_known_and_of_the_same_field() {
        let mut ledger = Ledger::new();
        let length = fact(id(1), "length", &json!(15), &[]);
        let unknown = id(2);
        ledger.insert(length.clone()).unwrap();
        let error = ledger.insert(fact(id(3), "length", &json!(16), &[unknown])).unwrap_err();
        assert!(matches!(error, FactsError::ReplacesUnknown { missing, .. } if missing == unknown));
        let error = ledger.insert(fact(id(3), "series", &json!("6"), &[length.id()])).unwrap_err();
        assert!(matches!(error, FactsError::ReplacesElsewhere { other, .. } if other == length.id()));
        let elsewhere =
            Fact::new(id(3), act(1), author(1), subject(2), "length", &json!(1), vec![length.id()]);
        let error = ledger.insert(elsewhere.unwrap()).unwrap_err();
        assert!(matches!(error, FactsError::ReplacesElsewhere { other, .. } if other == length.id()));
        assert_eq!(ledger.len(), 1);
        assert_eq!(ledger.fields(subject(1)).collect::<Vec<_>>(), ["length"]);
        assert_eq!(ledger.subjects().collect::<Vec<_>>(), [subject(1)]);
    }

    #[test]
    fn a_replaced_fact_is_no_longer_live_and_stays_in_the_story() {
        let mut ledger = Ledger::new();
        let first = fact(id(1), "length", &json!(15), &[]);
        let second = fact(id(2), "length", &json!(20), &[first.id()]);
        ledger.insert(first.clone()).unwrap();
        ledger.insert(second.clone()).unwrap();
        assert_eq!(ledger.live(subject(1), "length"), [&second]);
        assert_eq!(ledger.shown(subject(1), "length"), Some(&second));
        assert_eq!(ledger.history(subject(1), "length"), [&first, &second]);
        assert_eq!(ledger.of_act(first.act()), [&first]);
        assert_eq!(ledger.shown(subject(1), "series"), None);
    }

    #[test]
    fn a_merge_with_one_wrong_fact_changes_nothing() {
        let mut ledger = Ledger::new();
        let mut clock = FactClock::with_wall(|| 10);
        let first = fact(id(1), "length", &json!(15), &[]);
        ledger.insert(first.clone()).unwrap();
        let before = (ledger.clone(), clock.next_id());
        let right = fact(id(5), "length", &json!(20), &[first.id()]);
        let other = Fact::new(id(6), act(9), author(2), subject(7), "tag", &json!("S2"), vec![]).unwrap();
        let wrong = fact(id(900_000), "length", &json!(21), &[id(4)]);
        ledger.merge([wrong, right, other], &mut clock).unwrap_err();
        assert_eq!(ledger, before.0);
        assert_eq!(ledger.live(subject(1), "length"), [&first]);
        assert_eq!(ledger.subjects().collect::<Vec<_>>(), [subject(1)]);
        assert!(ledger.of_act(act(9)).is_empty());
        assert_eq!(clock.next_id().ms(), before.1.ms() + 1);
    }

    #[test]
    fn a_merge_takes_facts_in_any_order_and_raises_the_clock() {
        let mut ledger = Ledger::new();
        let mut clock = FactClock::with_wall(|| 10);
        let first = fact(id(100), "length", &json!(15), &[]);
        let second = fact(id(700), "length", &json!(20), &[first.id()]);
        let new = ledger.merge([second.clone(), first.clone(), second.clone()], &mut clock).unwrap();
        assert_eq!(new, [first.id(), second.id()]);
        assert_eq!(clock.next_id().ms(), 701);
    }

    #[test]
    fn facts_of_the_far_future_are_refused_unless_already_held() {
        let mut ledger = Ledger::new();
        let mut clock = FactClock::with_wall(|| 10);
        // The year 9999: 253,370,764,800 s after 1970 (GNU date).
        let late = fact(id(253_370_764_800_000), "length", &json!(15), &[]);
        let error = ledger.merge([late.clone()], &mut clock).unwrap_err();
        assert!(matches!(error, FactsError::FromTheFuture { .. }));
        // Written here while this device's own clock stood wrong: it must stay readable.
        ledger.insert(late.clone()).unwrap();
        assert_eq!(ledger.merge([late], &mut clock).unwrap(), []);
    }
}
