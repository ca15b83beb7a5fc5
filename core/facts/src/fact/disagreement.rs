//! Disagreements: two people decided differently without seeing each other's decision.

use std::collections::BTreeSet;

use super::id::{FactId, SubjectId};
use super::{Fact, Ledger, REMOVED};

/// Several live facts about one field with different values. It ends, in every copy, when one fact replaces all.
#[derive(Debug, Clone, PartialEq)]
pub struct Disagreement<'a> {
    /// What they speak of.
    pub subject: SubjectId,
    /// The field they disagree on.
    pub field: &'a str,
    /// The live facts, by id; the last one is shown. Two of them may say the same while a third does not.
    pub sides: Vec<&'a Fact>,
    /// The newest facts that all sides know of, whose value they all came from, by id. Empty if each side was
    /// written into an empty field.
    pub origin: Vec<&'a Fact>,
}

impl Ledger {
    /// All disagreements, by subject and field. Whether a subject is removed is no field to disagree on:
    /// see [`Ledger::removal`].
    pub fn disagreements(&self) -> Vec<Disagreement<'_>> {
        let subjects = self.subjects();
        let fields = subjects.flat_map(|subject| self.fields(subject).map(move |field| (subject, field)));
        fields.filter_map(|(subject, field)| self.disagreement(subject, field)).collect()
    }

    /// The disagreement on one field, if there is one.
    pub fn disagreement<'a>(&'a self, subject: SubjectId, field: &'a str) -> Option<Disagreement<'a>> {
        let mut sides = self.live(subject, field);
        // Nobody can choose what nobody can read any more.
        sides.retain(|side| !side.is_forgotten());
        let first = sides.first()?.value();
        if field == REMOVED || sides.iter().all(|side| side.value() == first) {
            return None;
        }
        let origin = self.common_origin(&sides);
        Some(Disagreement { subject, field, sides, origin })
    }

    /// The facts that every side replaced, straight or through others, and that no other such fact replaced.
    fn common_origin(&self, sides: &[&Fact]) -> Vec<&Fact> {
        let shared = sides
            .iter()
            .map(|side| self.ancestors(side))
            .reduce(|shared, ancestors| shared.intersection(&ancestors).copied().collect())
            .unwrap_or_default();
        let shared: Vec<&Fact> = shared.into_iter().filter_map(|id| self.fact(id)).collect();
        let replaced: BTreeSet<FactId> = shared.iter().flat_map(|fact| fact.over().iter().copied()).collect();
        shared.into_iter().filter(|fact| !replaced.contains(&fact.id())).collect()
    }

    fn ancestors(&self, fact: &Fact) -> BTreeSet<FactId> {
        let mut found = BTreeSet::new();
        let mut left = fact.over().to_vec();
        while let Some(id) = left.pop() {
            if found.insert(id)
                && let Some(fact) = self.fact(id)
            {
                left.extend_from_slice(fact.over());
            }
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::super::testing::*;
    use super::*;

    fn ledger(facts: &[&Fact]) -> Ledger {
        let mut ledger = Ledger::new();
        for fact in facts {
            ledger.insert((*fact).clone()).unwrap();
        }
        ledger
    }

    #[test]
    fn appears_with_both_sides_and_their_origin_and_ends_when_settled() {
        let older = fact(FactId::at(1), "length", &json!(10), &[]);
        let origin = fact(FactId::at(2), "length", &json!(12), &[older.id()]);
        let left = fact(FactId::at(3), "length", &json!(15), &[origin.id()]);
        let right = fact(FactId::at(4), "length", &json!(19), &[origin.id()]);
        let further = fact(FactId::at(5), "length", &json!(20), &[right.id()]);
        let mut ledger = ledger(&[&older, &origin, &left, &right, &further]);
        let expected = Disagreement {
            subject: subject(1),
            field: "length",
            sides: vec![&left, &further],
            origin: vec![&origin],
        };
        assert_eq!(ledger.disagreements(), [expected]);
        assert_eq!(ledger.shown(subject(1), "length"), Some(&further));

        let settled = fact(FactId::at(6), "length", &json!(15), &[left.id(), further.id()]);
        ledger.insert(settled.clone()).unwrap();
        assert!(ledger.disagreements().is_empty());
        assert_eq!(ledger.live(subject(1), "length"), [&settled]);
    }

    #[test]
    fn two_who_say_the_same_agree() {
        let one = fact(FactId::at(1), "length", &json!(15), &[]);
        let two = fact(FactId::at(2), "length", &json!(15.0), &[]);
        assert!(ledger(&[&one, &two]).disagreements().is_empty());
        let three = fact(FactId::at(3), "length", &json!(16), &[]);
        let ledger = ledger(&[&one, &two, &three]);
        let found = ledger.disagreement(subject(1), "length").unwrap();
        assert_eq!(found.sides, [&one, &two, &three]);
        assert!(found.origin.is_empty());
    }

    #[test]
    fn who_replaced_only_one_side_does_not_settle() {
        let one = fact(FactId::at(1), "length", &json!(15), &[]);
        let two = fact(FactId::at(2), "length", &json!(16), &[]);
        let over_one = fact(FactId::at(3), "length", &json!(17), &[one.id()]);
        let ledger = ledger(&[&one, &two, &over_one]);
        assert_eq!(ledger.disagreement(subject(1), "length").unwrap().sides, [&two, &over_one]);
    }
}
