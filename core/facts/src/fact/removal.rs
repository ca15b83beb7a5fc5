//! Removing, which hides a subject only as long as nobody said anything that the remover had not seen.
//!
//! A removal is a fact of the field [`REMOVED`] whose value lists the ids seen: `{"seen":["...", ...]}`. Bringing
//! back is a fact with the value null over it.

use std::collections::BTreeSet;

use serde_json::{Value, json};

use super::edit::Edit;
use super::id::{AuthorId, FactId, SubjectId};
use super::{Fact, Ledger};

/// The field that says whether its subject is removed.
pub const REMOVED: &str = "removed";

/// Whether a subject is removed.
#[derive(Debug, Clone, PartialEq)]
pub enum Removal<'a> {
    /// Nobody removed it, or it was brought back.
    Present,
    /// Removed, and nothing unseen is live on it: hide it. It can be brought back.
    Removed {
        /// Who removed it.
        by: AuthorId,
        /// The removal; the newest, if several people removed it.
        fact: &'a Fact,
    },
    /// Removed by some while others changed it: it stays, and people are told.
    ChangedSince {
        /// The removals, by id.
        removed: Vec<&'a Fact>,
        /// The live facts that no remover had seen, by id; among them a fact of the field [`REMOVED`] if somebody
        /// brought the subject back without having seen every removal.
        changed: Vec<&'a Fact>,
    },
}

impl Ledger {
    /// Whether a subject is removed. Where several people removed it, what any of them saw counts as seen.
    pub fn removal(&self, subject: SubjectId) -> Removal<'_> {
        let removals = self.live(subject, REMOVED);
        // Of most subjects nobody ever said so, and then what else is live on them says nothing.
        if removals.is_empty() {
            return Removal::Present;
        }
        removal_of(removals, self.live_on(subject).collect())
    }

    /// The edit that removes a subject as it stands now.
    pub fn remove(&self, subject: SubjectId) -> Edit {
        self.remove_with(subject, [])
    }

    /// The same, which has also seen what is about to be said.
    pub(crate) fn remove_with(&self, subject: SubjectId, said: impl IntoIterator<Item = FactId>) -> Edit {
        let mut seen: Vec<FactId> = self.live_on(subject).map(Fact::id).collect();
        seen.sort_unstable();
        seen.extend(said);
        Edit::new(subject, REMOVED, json!({ "seen": seen }))
    }

    /// The live facts on a subject, removals aside.
    fn live_on(&self, subject: SubjectId) -> impl Iterator<Item = &Fact> {
        let fields = self.fields(subject).filter(|&field| field != REMOVED);
        fields.flat_map(move |field| self.live(subject, field))
    }
}

/// What removals and what else is live on a subject come to.
pub(crate) fn removal_of<'a>(removals: Vec<&'a Fact>, mut said: Vec<&'a Fact>) -> Removal<'a> {
    let (back, removed): (Vec<&Fact>, Vec<&Fact>) =
        removals.into_iter().partition(|fact| fact.value().is_null());
    let Some(&newest) = removed.last() else { return Removal::Present };
    let seen: BTreeSet<FactId> = removed.iter().flat_map(|fact| seen_by(fact)).collect();
    said.retain(|fact| !seen.contains(&fact.id()));
    let mut changed: Vec<&Fact> = said.into_iter().chain(back).collect();
    if changed.is_empty() {
        return Removal::Removed { by: newest.by(), fact: newest };
    }
    changed.sort_by_key(|fact| fact.id());
    Removal::ChangedSince { removed, changed }
}

impl Edit {
    /// The edit that brings a removed subject back.
    pub fn bring_back(subject: SubjectId) -> Self {
        Self::new(subject, REMOVED, Value::Null)
    }
}

/// The ids that a removal lists. What is not an id is passed over, so a malformed removal has seen nothing and
/// hides nothing.
fn seen_by(removal: &Fact) -> impl Iterator<Item = FactId> {
    let listed = removal.value().get("seen").and_then(Value::as_array);
    listed.into_iter().flatten().filter_map(|id| serde_json::from_value(id.clone()).ok())
}

#[cfg(test)]
mod tests {
    use super::super::testing::*;
    use super::super::{ActId, FactClock};
    use super::*;

    /// Two people with a copy each, whose ids never collide.
    struct Copy {
        ledger: Ledger,
        clock: FactClock,
        author: AuthorId,
    }

    impl Copy {
        fn new(number: u128) -> Self {
            Self { ledger: Ledger::new(), clock: FactClock::with_wall(|| 0), author: author(number) }
        }

        fn write(&mut self, edit: Edit) {
            let facts = self.ledger.plan(ActId::random(), self.author, &mut self.clock, &[edit]).unwrap();
            self.ledger.merge(facts, &mut self.clock).unwrap();
        }

        fn set(&mut self, field: &str, value: &Value) {
            self.write(Edit::new(subject(1), field, value.clone()));
        }

        fn remove(&mut self) {
            self.write(self.ledger.remove(subject(1)));
        }

        fn take(&mut self, other: &Self) {
            self.ledger.merge(other.ledger.facts().cloned(), &mut self.clock).unwrap();
        }

        fn is_removed(&self) -> bool {
            matches!(self.ledger.removal(subject(1)), Removal::Removed { .. })
        }
    }

    /// Two copies that know the same two facts about the subject.
    fn pair() -> (Copy, Copy) {
        let (mut one, mut two) = (Copy::new(1), Copy::new(2));
        one.set("kind", &json!("splitter"));
        one.set("tag", &json!("S1"));
        two.take(&one);
        (one, two)
    }

    #[test]
    fn hides_and_can_be_brought_back() {
        let (mut one, mut two) = pair();
        assert_eq!(one.ledger.removal(subject(1)), Removal::Present);
        one.remove();
        two.take(&one);
        assert!(matches!(two.ledger.removal(subject(1)), Removal::Removed { by, .. } if by == author(1)));
        two.write(Edit::bring_back(subject(1)));
        one.take(&two);
        assert_eq!(one.ledger.removal(subject(1)), Removal::Present);
        assert_eq!(one.ledger.shown(subject(1), "tag").unwrap().value(), &json!("S1"));
        one.remove();
        assert!(one.is_removed());
    }

    #[test]
    fn what_the_remover_had_not_seen_keeps_it() {
        let (mut one, mut two) = pair();
        one.remove();
        two.set("tag", &json!("S2"));
        one.take(&two);
        two.take(&one);
        for copy in [&one, &two] {
            let Removal::ChangedSince { removed, changed } = copy.ledger.removal(subject(1)) else {
                panic!("hidden");
            };
            assert_eq!(removed.iter().map(|fact| fact.by()).collect::<Vec<_>>(), [author(1)]);
            assert_eq!(changed, [copy.ledger.shown(subject(1), "tag").unwrap()]);
        }
        one.remove();
        two.take(&one);
        assert!(two.is_removed());
    }

    #[test]
    fn a_note_added_by_the_remover_later_shows_it_again() {
        let (mut one, _) = pair();
        one.remove();
        one.set("note", &json!("behind the shelf"));
        assert!(matches!(one.ledger.removal(subject(1)), Removal::ChangedSince { .. }));
    }

    #[test]
    fn two_who_remove_have_seen_what_either_saw() {
        let (mut one, mut two) = pair();
        one.set("tag", &json!("S7"));
        one.remove();
        two.set("legs", &json!(2));
        two.remove();
        one.take(&two);
        assert!(one.is_removed());
        assert!(one.ledger.disagreements().is_empty());
    }

    #[test]
    fn brought_back_by_one_and_removed_again_by_another_stays() {
        let (mut one, mut two) = pair();
        one.remove();
        two.take(&one);
        two.write(Edit::bring_back(subject(1)));
        one.write(Edit::bring_back(subject(1)));
        one.remove();
        one.take(&two);
        let Removal::ChangedSince { changed, .. } = one.ledger.removal(subject(1)) else { panic!("hidden") };
        assert_eq!(changed.iter().map(|fact| fact.by()).collect::<Vec<_>>(), [author(2)]);
    }

    #[test]
    fn a_malformed_removal_hides_nothing() {
        for value in [json!(true), json!({"seen": "all"}), json!({"seen": [1, "x"]}), json!([])] {
            let (mut one, _) = pair();
            one.set(REMOVED, &value);
            assert!(!one.is_removed(), "{value}");
        }
    }
}
