//! Undo by act, settling, removed things, stories, drafts.

#![expect(clippy::unwrap_used, reason = "a test stops where its preparation fails")]

use facts::FactsError;
use facts::act::UndoFault;
use facts::fact::{ActId, AuthorId, Edit, Fact, Ledger, Removal, SubjectId};
use facts::store::{Draft, MAX_DRAFT_BYTES, Store};
use house::document::Document;
use house::record::fold;
use proptest::prelude::*;
use serde_json::{Value, json};
use tempfile::TempDir;

fn survey() -> (TempDir, Store) {
    let home = TempDir::new().unwrap();
    let store = Store::create(&home.path().join("house.legwork"), AuthorId::random()).unwrap();
    (home, store)
}

/// A second copy of the same survey on another device.
fn second(home: &TempDir, first: &Store) -> Store {
    let folder = home.path().join("second.legwork");
    let mut copy = Store::create_with(&folder, AuthorId::random(), first.survey_id(), |_| Ok(())).unwrap();
    copy.write_facts(first.ledger().facts().cloned().collect()).unwrap();
    copy
}

fn exchange(one: &mut Store, two: &mut Store) {
    let facts: Vec<Fact> = one.ledger().facts().cloned().collect();
    two.write_facts(facts).unwrap();
    let facts: Vec<Fact> = two.ledger().facts().cloned().collect();
    one.write_facts(facts).unwrap();
}

fn shown(store: &Store, subject: SubjectId, field: &str) -> Value {
    store.ledger().shown(subject, field).map_or(Value::Null, |fact| fact.value().clone())
}

fn undo_fault(result: Result<ActId, FactsError>) -> UndoFault {
    match result {
        Err(FactsError::Undo(fault)) => fault,
        other => unreachable!("{other:?}"),
    }
}

#[test]
fn an_edit_is_undone_and_the_undo_too() {
    let (_home, mut store) = survey();
    let run = SubjectId::random();
    store.write(&[Edit::new(run, "length", 12)]).unwrap();
    let act = store.write(&[Edit::new(run, "length", 15), Edit::new(run, "tag", "R1")]).unwrap();
    let undone = store.undo(act).unwrap();
    assert_eq!((shown(&store, run, "length"), shown(&store, run, "tag")), (json!(12), Value::Null));
    assert_eq!(undo_fault(store.undo(act)), UndoFault::ReplacedSince);
    store.undo(undone).unwrap();
    assert_eq!((shown(&store, run, "length"), shown(&store, run, "tag")), (json!(15), json!("R1")));
    assert_eq!(undo_fault(store.undo(ActId::random())), UndoFault::Nothing);
    assert!(store.ledger().disagreements().is_empty());
}

#[test]
fn what_an_act_created_is_removed_and_can_come_back() {
    let (_home, mut store) = survey();
    let part = SubjectId::random();
    let created = store.write(&[Edit::new(part, "is", "part"), Edit::new(part, "kind", "tap")]).unwrap();
    let undone = store.undo(created).unwrap();
    assert!(fold(store.ledger(), store.survey_id()).unwrap().parts.is_empty());
    assert_eq!(
        facts::act::removed(store.ledger()).iter().map(|thing| thing.subject).collect::<Vec<_>>(),
        [part]
    );
    assert_eq!(undo_fault(store.undo(created)), UndoFault::ChangedSince);
    store.undo(undone).unwrap();
    assert_eq!(store.ledger().removal(part), Removal::Present);
    let records = fold(store.ledger(), store.survey_id()).unwrap();
    assert_eq!(records.parts[&part].kind, house::record::PartKind::Tap);
    // Somebody adds to it: the creation is not offered to be undone any more.
    let tagged = store.write(&[Edit::new(part, "tag", "S1")]).unwrap();
    assert_eq!(undo_fault(store.undo(created)), UndoFault::ChangedSince);
    store.undo(tagged).unwrap();
    assert_eq!(shown(&store, part, "tag"), Value::Null);
}

/// Steps back and forward over one field, over a thing that was created, and over a removal.
#[test]
fn undo_and_redo_go_step_by_step() {
    let (home, mut store) = survey();
    assert_eq!((store.undo_last().unwrap(), store.redo_last().unwrap()), (None, None));
    let part = SubjectId::random();
    let states = |store: &Store| {
        let records = store.survey().unwrap();
        records.parts.get(&part).map(|part| (part.tag.clone(), part.kind, part.place.clone()))
    };
    let mut expected = vec![states(&store)];
    store.write(&[Edit::new(part, "is", "part"), Edit::new(part, "kind", "tap")]).unwrap();
    expected.push(states(&store));
    for edit in [("tag", "S1"), ("tag", "S2"), ("where", "cellar"), ("tag", "S3"), ("kind", "splitter")] {
        store.write(&[Edit::new(part, edit.0, edit.1)]).unwrap();
        expected.push(states(&store));
    }
    store.remove(&[part]).unwrap();
    expected.push(states(&store));
    // Somebody else's words are no step of mine.
    let mut other = second(&home, &store);
    other.write(&[Edit::new(SubjectId::random(), "is", "note")]).unwrap();
    exchange(&mut store, &mut other);
    let steps = expected.len() - 1;
    for round in [steps, 3, steps] {
        for back in 1..=round {
            assert!(store.undo_last().unwrap().is_some());
            assert_eq!(states(&store), expected[steps - back], "{back} back");
        }
        // The program ends and starts again.
        let folder = store.folder().to_owned();
        store = Store::open(&folder, store.author()).unwrap();
        for forward in 1..=round {
            assert!(store.redo_last().unwrap().is_some());
            assert_eq!(states(&store), expected[steps - round + forward], "{forward} forward");
        }
        assert_eq!(store.redo_last().unwrap(), None);
    }
    // After two steps back something new is done: there is nothing to do again any more.
    store.undo_last().unwrap();
    store.undo_last().unwrap();
    store.write(&[Edit::new(part, "tag", "S9")]).unwrap();
    assert_eq!(store.steps().redo, None);
    store.undo_last().unwrap();
    assert_eq!(states(&store), expected[steps - 2]);
    assert!(store.ledger().disagreements().is_empty());
}

#[test]
fn an_action_done_again_is_undone_by_its_first_id_too() {
    let (home, mut store) = survey();
    let run = SubjectId::random();
    store.write(&[Edit::new(run, "length", 12)]).unwrap();
    let act = store.write(&[Edit::new(run, "length", 15)]).unwrap();
    for _ in 0..3 {
        store.undo(act).unwrap();
        assert_eq!(shown(&store, run, "length"), 12);
        assert_eq!(undo_fault(store.undo(act)), UndoFault::ReplacedSince);
        store.redo_last().unwrap();
        assert_eq!(shown(&store, run, "length"), 15);
    }
    // Two people undo it apart: both say the same, and nobody disagrees.
    let mut other = second(&home, &store);
    store.undo(act).unwrap();
    other.undo(act).unwrap();
    exchange(&mut store, &mut other);
    for copy in [&store, &other] {
        assert_eq!(shown(copy, run, "length"), 12);
        assert!(copy.ledger().disagreements().is_empty());
    }
}

#[test]
fn removing_and_bringing_back_are_undone_like_anything() {
    let (_home, mut store) = survey();
    let (one, two) = (SubjectId::random(), SubjectId::random());
    store.write(&[Edit::new(one, "is", "room"), Edit::new(two, "is", "room")]).unwrap();
    let removed = store.remove(&[one, two]).unwrap();
    assert_eq!(facts::act::removed(store.ledger()).len(), 2);
    assert_eq!(store.summary().progress.rooms, 0);
    store.undo(removed).unwrap();
    assert_eq!((facts::act::removed(store.ledger()).len(), store.summary().progress.rooms), (0, 2));
    store.remove(&[one]).unwrap();
    let back = store.bring_back(&[one]).unwrap();
    store.undo(back).unwrap();
    assert_eq!(facts::act::removed(store.ledger()).len(), 1);
}

#[test]
fn a_removed_thing_that_others_changed_is_flagged() {
    let (home, mut store) = survey();
    let part = SubjectId::random();
    store.write(&[Edit::new(part, "is", "part")]).unwrap();
    let mut other = second(&home, &store);
    store.remove(&[part]).unwrap();
    other.write(&[Edit::new(part, "tag", "S1")]).unwrap();
    exchange(&mut store, &mut other);
    for copy in [&store, &other] {
        let flagged = facts::act::changed_after_removal(copy.ledger());
        assert_eq!(flagged.len(), 1);
        assert_eq!(flagged[0].removed[0].by(), store.author());
        assert_eq!(flagged[0].changed[0].by(), other.author());
        assert!(facts::act::removed(copy.ledger()).is_empty());
        assert_eq!(copy.summary().progress.parts, 1);
    }
}

#[test]
fn a_disagreement_is_settled_by_a_choice_in_every_copy_and_the_choice_can_be_undone() {
    let (home, mut store) = survey();
    let run = SubjectId::random();
    store.write(&[Edit::new(run, "is", "run"), Edit::new(run, "tag", "R1")]).unwrap();
    let mut other = second(&home, &store);
    store.write(&[Edit::new(run, "tag", "R2")]).unwrap();
    other.write(&[Edit::new(run, "tag", "R3")]).unwrap();
    exchange(&mut store, &mut other);
    let found = store.ledger().disagreements();
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].origin[0].value(), "R1");
    let mine = found[0].sides.iter().find(|side| side.by() == store.author()).unwrap().id();
    let stranger = found[0].origin[0].id();
    assert!(matches!(store.settle(run, "tag", stranger), Err(FactsError::NothingToSettle)));
    let act = store.settle(run, "tag", mine).unwrap();
    assert!(matches!(store.settle(run, "tag", mine), Err(FactsError::NothingToSettle)));
    exchange(&mut store, &mut other);
    for copy in [&store, &other] {
        assert!(copy.ledger().disagreements().is_empty());
        assert_eq!(shown(copy, run, "tag"), "R2");
    }
    other.undo(act).unwrap();
    exchange(&mut store, &mut other);
    for copy in [&store, &other] {
        let found = copy.ledger().disagreements();
        let mut sides: Vec<_> = found[0].sides.iter().filter_map(|side| side.value().as_str()).collect();
        // Both were written within one millisecond, perhaps: either may have the greater id.
        sides.sort_unstable();
        assert_eq!(sides, ["R2", "R3"]);
    }
}

#[test]
fn undoing_one_side_of_a_disagreement_leaves_the_other() {
    let (home, mut store) = survey();
    let run = SubjectId::random();
    store.write(&[Edit::new(run, "tag", "R1")]).unwrap();
    let mut other = second(&home, &store);
    let mine = store.write(&[Edit::new(run, "tag", "R2")]).unwrap();
    other.write(&[Edit::new(run, "tag", "R3")]).unwrap();
    exchange(&mut store, &mut other);
    store.undo(mine).unwrap();
    exchange(&mut store, &mut other);
    for copy in [&store, &other] {
        assert!(copy.ledger().disagreements().is_empty());
        assert_eq!(shown(copy, run, "tag"), "R3");
    }
}

#[test]
fn forgetting_and_what_was_forgotten_is_not_undone() {
    let (_home, mut store) = survey();
    let home = store.survey_id().subject();
    let act = store.write(&[Edit::new(home, "place", "1 Nowhere Lane")]).unwrap();
    store.forget_field(home, "place").unwrap();
    assert_eq!(undo_fault(store.undo(act)), UndoFault::Forgotten);
    let forgetting = facts::act::acts(store.ledger())[0].id;
    assert_eq!(undo_fault(store.undo(forgetting)), UndoFault::Forgets);
    // What stood before is gone: the newer value is undone to an empty field.
    let newer = store.write(&[Edit::new(home, "place", "2 Nowhere Lane")]).unwrap();
    store.undo(newer).unwrap();
    assert_eq!(shown(&store, home, "place"), Value::Null);
}

#[test]
fn a_draft_survives_and_becomes_one_fact() {
    let (_home, mut store) = survey();
    let note = SubjectId::random();
    for (second, text) in ["behind", "behind the", "behind the shelf"].into_iter().enumerate() {
        let draft =
            Draft { subject: note, field: "text".into(), text: text.into(), saved_ms: 1000 * second as u64 };
        if second == 0 {
            store.save_draft(&draft).unwrap();
        } else {
            assert!(store.save_draft_unsynced(&draft).unwrap());
        }
    }
    assert!(store.ledger().is_empty());
    // The process dies: what was saved is there.
    let (folder, author) = (store.folder().to_owned(), store.author());
    std::mem::forget(store);
    let mut store = Store::open(&folder, author).unwrap();
    let drafts = store.drafts().unwrap();
    assert_eq!((drafts.len(), drafts[0].text.as_str()), (1, "behind the shelf"));
    store.finish_draft(Edit::new(note, "text", drafts[0].text.clone())).unwrap();
    assert_eq!((store.ledger().len(), store.drafts().unwrap().len()), (1, 0));
    // Left without a change: no fact, and no draft either.
    let same = Draft { saved_ms: 9, ..drafts[0].clone() };
    store.save_draft(&same).unwrap();
    store.finish_draft(Edit::new(note, "text", same.text.clone())).unwrap();
    assert_eq!((store.ledger().len(), store.drafts().unwrap().len()), (1, 0));

    store.save_draft(&same).unwrap();
    let too_long = Edit::new(note, "text", "x".repeat(9000));
    assert!(matches!(store.finish_draft(too_long), Err(FactsError::Fact(_))));
    assert_eq!(store.drafts().unwrap(), [same]);
    assert!(store.drop_draft(note, "text").unwrap());
    assert!(!store.drop_draft(note, "text").unwrap());
    let long =
        Draft { subject: note, field: "text".into(), text: "x".repeat(MAX_DRAFT_BYTES + 1), saved_ms: 0 };
    assert!(matches!(store.save_draft(&long), Err(FactsError::DraftTooLong { .. })));
}

#[test]
fn a_draft_that_need_not_be_on_the_disk_is_not_saved_while_somebody_writes() {
    let (_home, mut store) = survey();
    let other = rusqlite::Connection::open(store.folder().join("survey.db")).unwrap();
    other.execute_batch("BEGIN IMMEDIATE").unwrap();
    let draft =
        Draft { subject: SubjectId::random(), field: "text".into(), text: "half".into(), saved_ms: 1 };
    // That it does not wait before it says so is shown where its settings are at hand, in the store's own tests.
    assert!(!store.save_draft_unsynced(&draft).unwrap());
    assert!(store.drafts().unwrap().is_empty());
    other.execute_batch("ROLLBACK").unwrap();
    assert!(store.save_draft_unsynced(&draft).unwrap());
    assert_eq!(store.drafts().unwrap(), [draft]);
}

/// A thing removed before anything was said of it, then removed again with what was said: the second removal hides
/// what is hidden already, and can be undone and redone all the same.
#[test]
fn removing_what_is_hidden_already_can_be_undone_and_redone() {
    let (_home, mut store) = survey();
    let room = SubjectId::random();
    store.write(&[Edit::new(room, "is", "room"), Edit::new(room, "tag", 1)]).unwrap();
    store.remove(&[room]).unwrap();
    // Another copy's view of the same removal: it had seen more than is live now.
    let more = json!({ "seen": [store.ledger().shown(room, "is").unwrap().id(), store.ledger().shown(room, "tag").unwrap().id(), store.ledger().shown(room, "removed").unwrap().id()] });
    store.write(&[Edit::new(room, "removed", more)]).unwrap();
    let again = store.remove(&[room]).unwrap();
    assert_eq!(store.ledger().of_act(again).len(), 1, "the second removal says something of its own");
    let hidden = |store: &Store| matches!(store.ledger().removal(room), Removal::Removed { .. });
    let undone = store.undo(again).unwrap();
    assert!(hidden(&store));
    store.undo(undone).unwrap();
    assert!(hidden(&store));
}

#[derive(Debug, Clone)]
enum Step {
    Write(Vec<(usize, usize, u8)>),
    Remove(usize),
    BringBack(usize),
    /// Brings a thing back and writes its tag, in one act.
    BringBackWith(usize, u8),
    Undo(usize),
}

fn steps() -> impl Strategy<Value = Vec<Step>> {
    let edit = (0_usize..3, 0_usize..3, 0_u8..4);
    let step = prop_oneof![
        5 => prop::collection::vec(edit, 1..4).prop_map(Step::Write),
        1 => (0_usize..3).prop_map(Step::Remove),
        1 => (0_usize..3).prop_map(Step::BringBack),
        1 => (0_usize..3, 0_u8..4).prop_map(|(about, value)| Step::BringBackWith(about, value)),
        2 => any::<usize>().prop_map(Step::Undo),
    ];
    prop::collection::vec(step, 1..12)
}

/// All that is shown: the values of all fields, and what is hidden.
fn picture(ledger: &Ledger, subjects: &[SubjectId]) -> Vec<(Value, bool)> {
    let fields = ["is", "tag", "length"];
    subjects
        .iter()
        .flat_map(|&subject| {
            // A thing that nobody can see shows nothing.
            let hidden = matches!(ledger.removal(subject), Removal::Removed { .. });
            let shown = move |field: &str| {
                ledger.shown(subject, field).map_or(Value::Null, |fact| fact.value().clone())
            };
            fields.map(
                |field| if hidden { (Value::Null, false) } else { (shown(field), !shown("is").is_null()) },
            )
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(20) })]

    /// Whatever is done and undone, one undo shows what was shown before, two show what was shown after; and the
    /// summary that is kept is the one that the facts give.
    #[test]
    fn undo_shows_what_was_shown_before(steps in steps()) {
        let (_home, mut store) = survey();
        let subjects: Vec<SubjectId> = (0..3).map(|_| SubjectId::random()).collect();
        let mut acts = Vec::new();
        for step in steps {
            let before = picture(store.ledger(), &subjects);
            let done = match step {
                Step::Write(edits) => {
                    let edits: Vec<Edit> = edits
                        .into_iter()
                        .map(|(about, field, value)| {
                            let value = if field == 0 { json!("room") } else if value == 0 { Value::Null } else { json!(value) };
                            Edit::new(subjects[about], ["is", "tag", "length"][field], value)
                        })
                        .collect();
                    store.write(&edits)
                }
                Step::Remove(about) => store.remove(&[subjects[about]]),
                Step::BringBack(about) => store.bring_back(&[subjects[about]]),
                Step::BringBackWith(about, value) => store
                    .write(&[Edit::bring_back(subjects[about]), Edit::new(subjects[about], "tag", value)]),
                Step::Undo(which) if acts.is_empty() => { let _ = which; continue }
                Step::Undo(which) => store.undo(acts[which % acts.len()]),
            };
            let Ok(act) = done else { continue };
            acts.push(act);
            if facts::act::can_undo(store.ledger(), act).is_ok() {
                let after = picture(store.ledger(), &subjects);
                let undone = store.undo(act).unwrap();
                prop_assert_eq!(picture(store.ledger(), &subjects), before);
                let redone = store.undo(undone).unwrap();
                prop_assert_eq!(picture(store.ledger(), &subjects), after);
                acts.extend([undone, redone]);
            }
            let rooms = fold(store.ledger(), store.survey_id()).unwrap().rooms.len();
            prop_assert_eq!(store.summary().progress.rooms, rooms as u64);
        }
    }
}
