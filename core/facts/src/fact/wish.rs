//! What a file asks to be forgotten here, held back until somebody agrees.
//!
//! Authors are names and no keys, so nobody can tell whose wish it is: whoever could forget by sending a file could wipe a
//! survey by sending one. So of what a file brings, a fact that tells to forget is held back unless nothing would be lost
//! by it, and so is the bare frame of a fact that still says something here.

use std::collections::{BTreeMap, BTreeSet};

use super::forget::{FORGET, named_by};
use super::id::{AuthorId, FactId, SubjectId};
use super::{Fact, Ledger};

/// What came, parted.
#[derive(Debug, Default, PartialEq)]
pub(crate) struct HeldBack {
    /// What is taken in.
    pub(crate) admitted: Vec<Fact>,
    /// What waits for a yes: facts that tell to forget, and frames of facts that are held whole.
    pub(crate) waiting: Vec<Fact>,
}

/// What somebody wants forgotten here.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Wish {
    /// What it speaks of.
    pub subject: SubjectId,
    /// Which of its fields.
    pub field: String,
    /// In whose name it is told: a claim, no proof. Nothing if a file just came without what was said.
    pub by: Option<AuthorId>,
}

/// Parts what a file brings to what is held. `refused` is what somebody said no to here
/// ([`Store::refuse_wishes`](crate::store::Store::refuse_wishes)): it is in neither part, since it is not asked again and no
/// yes to something else is one to it. What stands over such a word has no place without it. What was forgotten here before it
/// came is admitted as the frame that is left of it.
pub(crate) fn hold_back(held: &Ledger, facts: Vec<Fact>, refused: &BTreeSet<FactId>) -> HeldBack {
    let frames: BTreeSet<FactId> = facts.iter().filter(|fact| fact.is_forgotten()).map(Fact::id).collect();
    // Gone already: forgotten here, or a frame alone, or one by the time it comes.
    let is_gone = |id: FactId| match held.fact(id) {
        Some(held) => held.is_forgotten() || held.field() == FORGET,
        None => frames.contains(&id) || held.tells_to_forget(id),
    };
    let mut facts = facts;
    // A fact has a greater id than those it replaces.
    facts.sort_by_key(Fact::id);
    let (mut parted, mut admitted, mut out) = (HeldBack::default(), BTreeSet::new(), BTreeSet::new());
    for mut fact in facts {
        let id = fact.id();
        // Only a word stands over a word, and a file may tell one whose ground waits since an earlier file.
        let stands_on = |over: &FactId| held.contains(*over) || admitted.contains(over);
        let waits = if held.contains(id) {
            fact.is_forgotten()
        } else {
            fact.field() == FORGET && !(named_by(&fact).all(is_gone) && fact.over().iter().all(stands_on))
        };
        if !waits {
            admitted.insert(id);
            if held.tells_to_forget(id) {
                fact.forget();
            }
            parted.admitted.push(fact);
            continue;
        }
        let is_out = |over: &FactId| !held.contains(*over) && (refused.contains(over) || out.contains(over));
        if refused.contains(&id) || fact.over().iter().any(is_out) {
            out.insert(id);
        } else {
            parted.waiting.push(fact);
        }
    }
    parted
}

/// What of what is known would be lost if everything that waits were agreed to, by subject and field.
pub(crate) fn wishes<'a, 'k>(
    known: impl Fn(FactId) -> Option<&'k Fact>,
    waiting: impl IntoIterator<Item = &'a Fact>,
) -> Vec<Wish> {
    let mut found: BTreeMap<(SubjectId, &str), Option<AuthorId>> = BTreeMap::new();
    for fact in waiting {
        let (by, named): (_, Vec<FactId>) = if fact.field() == FORGET {
            (Some(fact.by()), named_by(fact).collect())
        } else {
            (None, vec![fact.id()])
        };
        for fact in named.into_iter().filter_map(&known) {
            if !fact.is_forgotten() && fact.field() != FORGET {
                let author = found.entry((fact.subject(), fact.field())).or_default();
                *author = author.or(by);
            }
        }
    }
    found.into_iter().map(|((subject, field), by)| Wish { subject, field: field.to_owned(), by }).collect()
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::super::testing::*;
    use super::super::{ActId, FactClock};
    use super::*;

    const NONE: BTreeSet<FactId> = BTreeSet::new();

    fn held(facts: &[&Fact]) -> Ledger {
        let mut ledger = Ledger::new();
        ledger.insert_all(facts.iter().copied().cloned(), |_| Ok(())).unwrap();
        ledger
    }

    fn told(ledger: &Ledger, facts: &[&Fact]) -> Fact {
        let edits = ledger.forget_facts(facts.iter().copied());
        ledger.plan(ActId::random(), author(7), &mut FactClock::with_wall(|| 50), &edits).unwrap().remove(0)
    }

    fn frame(fact: &Fact) -> Fact {
        let over = fact.over().to_vec();
        Fact::forgotten(fact.id(), fact.act(), fact.by(), fact.subject(), fact.field(), over).unwrap()
    }

    #[test]
    fn what_would_be_lost_here_waits_and_the_rest_is_taken() {
        let place = fact(FactId::at(1), "place", &json!("12 Elm"), &[]);
        let ledger = held(&[&place]);
        let (word, tag) = (told(&ledger, &[&place]), fact(FactId::at(60), "tag", &json!("S1"), &[]));
        let parted = hold_back(&ledger, vec![word.clone(), frame(&place), tag.clone()], &NONE);
        assert_eq!(parted.admitted, [tag]);
        assert_eq!(parted.waiting.len(), 2);
        let lost = wishes(|id| ledger.fact(id), &parted.waiting);
        assert_eq!(lost, [Wish { subject: subject(1), field: "place".into(), by: Some(author(7)) }]);
    }

    #[test]
    fn what_is_gone_already_or_was_never_here_waits_for_nobody() {
        let place = fact(FactId::at(1), "place", &json!("12 Elm"), &[]);
        let word = told(&held(&[&place]), &[&place]);
        // Never here, and the file has no more than the frame.
        let parted = hold_back(&Ledger::new(), vec![word.clone(), frame(&place)], &NONE);
        assert!(parted.waiting.is_empty() && parted.admitted.len() == 2);
        // Forgotten here by another word.
        let gone = held(&[&frame(&place)]);
        assert!(hold_back(&gone, vec![word], &NONE).waiting.is_empty());
    }

    #[test]
    fn a_word_about_what_comes_with_it_or_may_come_later_waits() {
        let place = fact(FactId::at(1), "place", &json!("12 Elm"), &[]);
        let word = told(&held(&[&place]), &[&place]);
        let parted = hold_back(&Ledger::new(), vec![word.clone(), place.clone()], &NONE);
        assert_eq!((parted.admitted, parted.waiting), (vec![place], vec![word.clone()]));
        assert_eq!(hold_back(&Ledger::new(), vec![word.clone()], &NONE).waiting, [word]);
    }

    #[test]
    fn what_stands_over_a_word_that_waits_waits_too() {
        let place = fact(FactId::at(1), "place", &json!("12 Elm"), &[]);
        let word = told(&held(&[&place]), &[&place]);
        let over = Fact::new(
            FactId::at(70),
            act(3),
            author(7),
            word.subject(),
            FORGET,
            &json!({"facts": []}),
            vec![word.id()],
        );
        let over = over.unwrap();
        let ledger = held(&[&place]);
        assert_eq!(hold_back(&ledger, vec![word.clone(), over.clone()], &NONE).waiting.len(), 2);
        // Also where the word itself came with an earlier file and waits since.
        assert_eq!(hold_back(&ledger, vec![over.clone()], &NONE).waiting.len(), 1);
        // One over a word that was refused goes with it, whichever of them comes; one over another waits.
        let refused = BTreeSet::from([word.id()]);
        for came in [vec![word.clone(), over.clone()], vec![over.clone()]] {
            assert_eq!(hold_back(&ledger, came, &refused), HeldBack::default());
        }
        let refused = BTreeSet::from([FactId::at(99)]);
        assert_eq!(hold_back(&ledger, vec![word, over], &refused).waiting.len(), 2);
    }

    #[test]
    fn what_stands_over_a_fact_whose_frame_waits_or_was_refused_is_taken() {
        let place = fact(FactId::at(1), "place", &json!("12 Elm"), &[]);
        let next = fact(FactId::at(2), "place", &json!("14 Elm"), &[place.id()]);
        let (ledger, came) = (held(&[&place]), vec![frame(&place), next.clone()]);
        let parted = hold_back(&ledger, came.clone(), &NONE);
        assert_eq!(parted, HeldBack { admitted: vec![next.clone()], waiting: vec![frame(&place)] });
        let parted = hold_back(&ledger, came, &BTreeSet::from([place.id()]));
        assert_eq!(parted, HeldBack { admitted: vec![next], waiting: vec![] });
    }
}
