//! Random histories of several copies that write, remove and exchange facts: every copy ends up the same.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

use proptest::prelude::*;
use serde_json::{Value, json};

use super::testing::{author, subject};
use super::{ActId, AuthorId, Edit, Fact, FactClock, FactId, Ledger, SubjectId};

const FIELDS: [&str; 3] = ["length", "feed", "tag"];
const SUBJECTS: u128 = 3;

#[derive(Debug, Clone)]
enum Step {
    Write(Vec<(u128, usize, Value)>),
    Remove(u128),
    BringBack(u128),
    /// Everything ever said about a field of a subject, as far as this copy knows.
    Forget(u128, usize),
    /// The wall clock is set, forwards or back, but never so that others must refuse what it dates.
    SetClock(u64),
    /// Makes a file of everything; others may take it in much later.
    Pack,
    /// Takes in the file of that number, counted around, its facts turned by that many places.
    Take(usize, usize),
}

fn steps() -> impl Strategy<Value = Vec<(usize, Step)>> {
    let value = prop_oneof![
        Just(Value::Null),
        (0..3).prop_map(|number| json!(number)),
        (0..3).prop_map(|metres| json!({"known": "measured", "likely_m": metres})),
    ];
    let edit = (0..SUBJECTS, 0..FIELDS.len(), value);
    let step = prop_oneof![
        6 => prop::collection::vec(edit, 1..4).prop_map(Step::Write),
        1 => (0..SUBJECTS).prop_map(Step::Remove),
        1 => (0..SUBJECTS).prop_map(Step::BringBack),
        1 => (0..SUBJECTS, 0..FIELDS.len()).prop_map(|(about, field)| Step::Forget(about, field)),
        1 => (0_u64..1_790_000_000_000).prop_map(Step::SetClock),
        2 => Just(Step::Pack),
        3 => (any::<usize>(), any::<usize>()).prop_map(|(file, turn)| Step::Take(file, turn)),
    ];
    prop::collection::vec((0_usize..3, step), 1..40)
}

struct Copy {
    ledger: Ledger,
    clock: FactClock,
    wall: Arc<AtomicU64>,
    author: AuthorId,
}

impl Copy {
    fn new(number: u128) -> Self {
        let wall = Arc::new(AtomicU64::new(1_760_000_000_000));
        let read = Arc::clone(&wall);
        let clock = FactClock::with_wall(move || read.load(Ordering::Relaxed));
        Self { ledger: Ledger::new(), clock, wall, author: author(number) }
    }

    fn write(&mut self, edits: &[Edit]) -> Vec<Fact> {
        let facts = self.ledger.plan(ActId::random(), self.author, &mut self.clock, edits).unwrap();
        for fact in &facts {
            assert!(self.ledger.insert(fact.clone()).unwrap());
        }
        facts
    }

    fn take(&mut self, file: &[Fact], turn: usize) {
        let mut facts = file.to_vec();
        if !facts.is_empty() {
            let places = turn % facts.len();
            facts.rotate_left(places);
        }
        // A fact twice in one file is still one.
        facts.extend(file.first().cloned());
        self.ledger.merge(facts, &mut self.clock).unwrap();
    }
}

/// Plays a history; returns the copies and all that was ever written.
fn play(copies: usize, steps: &[(usize, Step)]) -> (Vec<Copy>, Vec<Fact>) {
    let mut all: Vec<Copy> = (1..).take(copies).map(Copy::new).collect();
    let (mut files, mut written): (Vec<Vec<Fact>>, Vec<Fact>) = (Vec::new(), Vec::new());
    for (who, step) in steps {
        let copy = &mut all[who % copies];
        match step {
            Step::Write(edits) => {
                let edits: Vec<Edit> = edits
                    .iter()
                    .map(|(about, field, value)| Edit::new(subject(*about), FIELDS[*field], value.clone()))
                    .collect();
                written.extend(copy.write(&edits));
            }
            Step::Remove(about) => {
                let edit = copy.ledger.remove(subject(*about));
                written.extend(copy.write(&[edit]));
            }
            Step::BringBack(about) => written.extend(copy.write(&[Edit::bring_back(subject(*about))])),
            Step::Forget(about, field) => {
                let edits = copy.ledger.forget_field(subject(*about), FIELDS[*field]);
                written.extend(copy.write(&edits));
            }
            Step::SetClock(now) => copy.wall.store(*now, Ordering::Relaxed),
            Step::Pack => files.push(copy.ledger.facts().cloned().collect()),
            Step::Take(file, turn) => {
                if let Some(file) = files.get(file % files.len().max(1)) {
                    copy.take(file, *turn);
                }
            }
        }
    }
    (all, written)
}

/// Everyone takes in what everyone has, twice, from a different neighbour first.
fn exchange(copies: &mut [Copy], turn: usize) {
    let files: Vec<Vec<Fact>> = copies.iter().map(|copy| copy.ledger.facts().cloned().collect()).collect();
    for (place, copy) in copies.iter_mut().enumerate() {
        for step in 0..2 * files.len() {
            copy.take(&files[(place + turn + step) % files.len()], turn + step);
        }
    }
}

/// The live facts by the definition, from the bare facts: those that no fact replaces.
fn live_by_definition(facts: &[Fact]) -> BTreeMap<(SubjectId, String), BTreeSet<FactId>> {
    let replaced: BTreeSet<FactId> = facts.iter().flat_map(|fact| fact.over().iter().copied()).collect();
    let mut live: BTreeMap<_, BTreeSet<FactId>> = BTreeMap::new();
    for fact in facts.iter().filter(|fact| !replaced.contains(&fact.id())) {
        live.entry((fact.subject(), fact.field().to_owned())).or_default().insert(fact.id());
    }
    live
}

/// The ids that the facts of the field `forget` list, from their values alone.
fn told_to_forget(facts: &[Fact]) -> Vec<FactId> {
    let told = facts.iter().filter(|fact| fact.field() == "forget");
    told.flat_map(|fact| serde_json::from_value::<Vec<FactId>>(fact.value()["facts"].clone()).unwrap())
        .collect()
}

fn live_in(ledger: &Ledger) -> BTreeMap<(SubjectId, String), BTreeSet<FactId>> {
    let fields = ledger.subjects().flat_map(|about| ledger.fields(about).map(move |field| (about, field)));
    fields
        .map(|(about, field)| {
            let ids = ledger.live(about, field).iter().map(|fact| fact.id()).collect();
            ((about, field.to_owned()), ids)
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn every_copy_ends_up_with_the_same_bytes(copies in 2_usize..4, steps in steps(), turn in 0_usize..50) {
        let (mut copies, written) = play(copies, &steps);
        exchange(&mut copies, turn);
        let lines = copies[0].ledger.to_lines().unwrap();
        let live = live_by_definition(&written);
        prop_assert_eq!(copies[0].ledger.len(), written.len());
        for copy in &copies {
            prop_assert_eq!(&copy.ledger.to_lines().unwrap(), &lines);
            prop_assert_eq!(&live_in(&copy.ledger), &live);
            for id in told_to_forget(&written) {
                prop_assert!(copy.ledger.fact(id).is_none_or(|fact| fact.is_forgotten() && fact.value().is_null()));
            }
            prop_assert_eq!(copy.ledger.disagreements(), copies[0].ledger.disagreements());
            for about in (0..SUBJECTS).map(subject) {
                prop_assert_eq!(copy.ledger.removal(about), copies[0].ledger.removal(about));
            }
        }
        let mut read = Ledger::new();
        for line in lines.lines() {
            read.insert(Fact::from_line(line).unwrap()).unwrap();
        }
        prop_assert_eq!(&read, &copies[0].ledger);
    }

    #[test]
    fn a_ledger_laid_out_at_once_is_that_of_one_fact_after_the_other(
        steps in steps(), turn in 0_usize..50, places in 0_usize..9
    ) {
        let (mut copies, written) = play(3, &steps);
        exchange(&mut copies, turn);
        let mut facts: Vec<(FactId, Fact)> = written.into_iter().map(|fact| (fact.id(), fact)).collect();
        facts.sort_by_key(|(id, _)| *id);
        // As they were before anybody told to forget any.
        let mut one_by_one = Ledger::new();
        for (_, fact) in &facts {
            one_by_one.insert(fact.clone()).unwrap();
        }
        let at_once = Ledger::of_ascending(facts.clone()).unwrap();
        for ledger in [&one_by_one, &copies[0].ledger] {
            prop_assert_eq!(&at_once, ledger);
            prop_assert_eq!(live_in(&at_once), live_in(ledger));
            for (id, fact) in &facts {
                prop_assert_eq!(at_once.of_act(fact.act()), ledger.of_act(fact.act()));
                prop_assert_eq!(at_once.tells_to_forget(*id), ledger.tells_to_forget(*id));
                let [found, known] =
                    [&at_once, ledger].map(|ledger| ledger.history(fact.subject(), fact.field()));
                prop_assert_eq!(found, known);
            }
        }
        // Out of their order they are taken one by one, and what comes before what it replaces is refused.
        let length = facts.len();
        facts.rotate_left(places.min(length));
        let one_by_one = facts.iter().try_fold(Ledger::new(), |mut ledger, (_, fact)| {
            ledger.insert(fact.clone()).map(|_| ledger)
        });
        match (Ledger::of_ascending(facts), one_by_one) {
            (Ok(found), Ok(known)) => prop_assert_eq!(found, known),
            (found, known) => prop_assert!(found.is_err() && known.is_err()),
        }
    }

    #[test]
    fn whoever_settles_settles_for_all(steps in steps(), turn in 0_usize..50) {
        let (mut copies, _) = play(3, &steps);
        exchange(&mut copies, turn);
        let settle: Vec<Edit> = copies[0]
            .ledger
            .disagreements()
            .iter()
            .map(|found| Edit::new(found.subject, found.field, found.sides[0].value().clone()))
            .collect();
        copies[0].write(&settle);
        exchange(&mut copies, turn);
        for copy in &copies {
            prop_assert!(copy.ledger.disagreements().is_empty());
            for edit in &settle {
                prop_assert_eq!(copy.ledger.shown(edit.subject, &edit.field).unwrap().value(), &edit.value);
            }
        }
    }

    #[test]
    fn a_refused_merge_leaves_no_trace(steps in steps(), turn in 0_usize..50) {
        let (mut copies, _) = play(2, &steps);
        let mut file: Vec<Fact> = copies[1].ledger.facts().cloned().collect();
        let (stranger, place) = (FactId::at(1), turn % (file.len() + 1));
        let over = vec![stranger];
        let hole = Fact::new(FactId::at(2), ActId::random(), author(9), subject(0), FIELDS[0], &json!(1), over);
        file.insert(place, hole.unwrap());
        let (lines, live) = (copies[0].ledger.to_lines().unwrap(), live_in(&copies[0].ledger));
        // The hole is older than the rest, so that also the newest of the file comes after it; and once the newest.
        let late = FactId::at(1_790_000_000_001);
        let last = Fact::new(late, ActId::random(), author(9), subject(1), FIELDS[1], &json!(1), vec![stranger]);
        let Copy { ledger, clock, .. } = &mut copies[0];
        clock.raise(late);
        prop_assert!(ledger.merge(file.clone(), clock).is_err());
        file.remove(place);
        file.push(last.unwrap());
        prop_assert!(ledger.merge(file, clock).is_err());
        prop_assert_eq!(ledger.to_lines().unwrap(), lines);
        prop_assert_eq!(live_in(ledger), live);
    }
}
