//! Forgetting: dropping what facts said, here and in every copy that takes the word.
//!
//! A fact of the field [`FORGET`] lists the ids to forget: `{"facts":["...", ...]}`. It has a subject of its own,
//! so that nobody ever replaces it. What it names loses its value and keeps its frame, so that all histories still
//! agree; and it stays forgotten, also when an older file brings the value again. What its author had not seen is
//! not touched.

use serde_json::{Value, json};

use super::edit::Edit;
use super::id::{FactId, SubjectId};
use super::{Fact, Ledger};

/// The field that tells which facts to forget.
pub const FORGET: &str = "forget";

/// How many ids one fact lists: 36 characters each, with quotes and comma, stay below the longest value.
const IDS_A_FACT: usize = 200;

impl Ledger {
    /// The edits that make everything ever said about a field of a subject forgotten, as far as it is known here.
    pub fn forget_field(&self, subject: SubjectId, field: &str) -> Vec<Edit> {
        self.forget_facts(self.history(subject, field))
    }

    /// The edits that make these facts forgotten. What is forgotten already, or tells to forget, is passed over.
    pub fn forget_facts<'a>(&self, facts: impl IntoIterator<Item = &'a Fact>) -> Vec<Edit> {
        let mut ids: Vec<FactId> = facts
            .into_iter()
            .filter(|fact| !fact.is_forgotten() && fact.field() != FORGET)
            .map(Fact::id)
            .collect();
        ids.sort_unstable();
        ids.dedup();
        ids.chunks(IDS_A_FACT)
            .map(|chunk| Edit::new(SubjectId::random(), FORGET, json!({ "facts": chunk })))
            .collect()
    }
}

/// The ids that a fact tells to forget. What is not an id is passed over.
pub(super) fn named_by(fact: &Fact) -> impl Iterator<Item = FactId> {
    let listed =
        if fact.field() == FORGET { fact.value().get("facts").and_then(Value::as_array) } else { None };
    listed.into_iter().flatten().filter_map(|id| serde_json::from_value(id.clone()).ok())
}

#[cfg(test)]
mod tests {
    use super::super::testing::*;
    use super::super::{ActId, FactClock};
    use super::*;

    fn told(ledger: &Ledger, edits: &[Edit]) -> Vec<Fact> {
        ledger.plan(ActId::random(), author(1), &mut FactClock::with_wall(|| 50), edits).unwrap()
    }

    /// A history of two facts and the word to forget both.
    fn history() -> (Vec<Fact>, Vec<Fact>) {
        let first = fact(FactId::at(1), "place", &json!("12 Elm"), &[]);
        let second = fact(FactId::at(2), "place", &json!("14 Elm"), &[first.id()]);
        let mut ledger = Ledger::new();
        ledger.insert_all([first.clone(), second.clone()], |_| Ok(())).unwrap();
        let forget = told(&ledger, &ledger.forget_field(subject(1), "place"));
        (vec![first, second], forget)
    }

    #[test]
    fn what_is_forgotten_stays_so_in_whatever_order_it_comes() {
        let (said, forget) = history();
        let (mut before, mut after) = (Ledger::new(), Ledger::new());
        before.insert_all(said.clone(), |_| Ok(())).unwrap();
        before.insert_all(forget.clone(), |_| Ok(())).unwrap();
        for fact in forget.into_iter().chain(said.clone()) {
            after.insert(fact).unwrap();
        }
        assert_eq!(before, after);
        assert_eq!(before.to_lines().unwrap(), after.to_lines().unwrap());
        assert!(!before.to_lines().unwrap().contains("Elm"));
        // The older file with the values, again.
        before.insert_all(said, |_| Ok(())).unwrap();
        assert_eq!(before, after);
        let shown = before.shown(subject(1), "place").unwrap();
        assert!(shown.is_forgotten() && shown.value().is_null());
    }

    #[test]
    fn a_forgotten_fact_alone_carries_the_word() {
        let (said, forget) = history();
        let mut sender = Ledger::new();
        sender.insert_all(said.iter().cloned().chain(forget), |_| Ok(())).unwrap();
        let mut taker = Ledger::new();
        taker.insert_all(said, |_| Ok(())).unwrap();
        let frames = sender.facts().filter(|fact| fact.field() == "place").cloned();
        let taken = taker.insert_all(frames, |_| Ok(())).unwrap();
        assert_eq!((taken.new.len(), taken.forgotten.len()), (0, 2));
        assert!(!taker.to_lines().unwrap().contains("Elm"));
    }

    #[test]
    fn what_the_forgetter_had_not_seen_is_shown_and_no_disagreement_with_nothing() {
        let (said, forget) = history();
        let unseen = fact(FactId::at(3), "place", &json!("16 Elm"), &[said[0].id()]);
        let mut ledger = Ledger::new();
        ledger.insert_all(said.into_iter().chain([unseen.clone()]).chain(forget), |_| Ok(())).unwrap();
        assert_eq!(ledger.live(subject(1), "place").len(), 2);
        assert_eq!(ledger.shown(subject(1), "place"), Some(&unseen));
        assert!(ledger.disagreements().is_empty());
    }

    #[test]
    fn the_word_to_forget_cannot_be_forgotten() {
        let (said, forget) = history();
        let mut ledger = Ledger::new();
        ledger.insert_all(said.into_iter().chain(forget.clone()), |_| Ok(())).unwrap();
        assert!(ledger.forget_facts(&forget).is_empty());
        let forged = Edit::new(subject(9), FORGET, json!({"facts": [forget[0].id(), 7, "x"]}));
        let forged = told(&ledger, &[forged]);
        ledger.insert_all(forged, |_| Ok(())).unwrap();
        assert_eq!(ledger.fact(forget[0].id()), Some(&forget[0]));
    }

    #[test]
    fn a_long_history_fits_into_facts() {
        let mut ledger = Ledger::new();
        let mut last = None;
        for ms in 1..=450 {
            let next = fact(FactId::at(ms), "place", &json!(ms), last.as_slice());
            last = Some(next.id());
            ledger.insert(next).unwrap();
        }
        let facts = told(&ledger, &ledger.forget_field(subject(1), "place"));
        assert_eq!(facts.len(), 3);
        ledger.insert_all(facts, |_| Ok(())).unwrap();
        assert!(ledger.history(subject(1), "place").iter().all(|fact| fact.is_forgotten()));
    }
}
