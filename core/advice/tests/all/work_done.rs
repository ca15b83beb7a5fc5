//! Changes that were made, written as facts.
#![expect(clippy::expect_used, reason = "a failed test is what is wanted")]

use advice::AdviceError;
use advice::forecast::Options as Draws;
use advice::worklist::{Options, Step, WorkList, worklist, worklist_watched};
use facts::fact::Removal;
use house::record::{CableKind, ChangeKind, Outcome, OutcomeKind, Survey, field};
use houses::change_cases::cases;

use crate::written::Written;

/// Few draws: what is asked is which steps there are.
fn quick() -> Options {
    let draws = Draws { draws: 8, seed: 1, points: 89, settles: false };
    Options { screening: draws, stating: draws, most_steps: 12, ..Options::default() }
}

fn list(survey: &Survey) -> WorkList {
    worklist(survey, &quick()).expect("a sound survey")
}

fn name(step: &Step) -> String {
    step.change.phrase(&step.before).id.trim_start_matches("change-").to_owned()
}

const DONE: Outcome = Outcome { end: OutcomeKind::Done, others_fine: None };

fn same_house(found: &Survey, wanted: &Survey, what: &str) {
    assert_eq!(found.unread, Vec::new(), "{what}");
    assert_eq!(found.parts, wanted.parts, "{what}");
    assert_eq!(found.runs, wanted.runs, "{what}");
    assert_eq!(found.rooms, wanted.rooms, "{what}");
    for part in wanted.parts.keys() {
        assert_eq!(found.wiring.feed(*part), wanted.wiring.feed(*part), "{what}");
    }
    assert_eq!(found.wiring.loose(), wanted.wiring.loose(), "{what}");
}

/// What is in memory after a change, and what is on the disk once it was written down as done, are the same house.
#[test]
fn a_change_written_as_done_folds_to_the_changed_house() {
    for case in cases() {
        let house = case.there.survey();
        let mut written = Written::of(&house);
        let before = written.survey();
        same_house(&before, &house, case.name);
        let found = list(&before);
        let mut seen = false;
        for step in &found.steps {
            seen |= name(step) == case.name;
            let now = written.survey();
            let edits = step
                .change
                .done(&now, &advice::worklist::applied(step.change, &now), &written.ledger, DONE)
                .expect("a change is facts");
            written.write(&edits);
            let after = written.survey();
            same_house(&after, &advice::worklist::applied(step.change, &now), &name(step));
            let works: Vec<_> = after
                .works
                .values()
                .filter(|work| work.change == step.change && work.outcome == DONE)
                .collect();
            // Whatever the house is called since, the work keeps the names of the house that it was proposed for.
            assert!(works.iter().any(|work| work.what(&after) == step.change.phrase(&now)), "{}", name(step));
        }
        assert!(seen, "{} is not in its own list", case.name);
        let now = written.survey();
        same_house(&now, &found.house_when_done, case.name);
        // And what it was found as can still be told.
        let as_found = now.as_found(&written.ledger).expect("a fold").expect("work is recorded");
        // A house of the tests that has work in it already is written in one act, as no house is.
        if before.works.is_empty() {
            same_house(&as_found, &before, case.name);
        }
    }
}

/// Put back, the house is as it was found, whatever was said of the work meanwhile; and it can be done again.
#[test]
fn a_change_put_back_leaves_the_house_as_it_was_found() {
    for case in cases() {
        let mut written = Written::of(&case.there.survey());
        let before = written.survey();
        let Some(step) = list(&before).steps.into_iter().find(|step| name(step) == case.name) else {
            panic!("{} is not in its own list", case.name)
        };
        for _ in 0..2 {
            let house = written.survey();
            let edits = step
                .change
                .done(&house, &advice::worklist::applied(step.change, &house), &written.ledger, DONE)
                .expect("facts");
            let work = edits.iter().find(|edit| edit.field == field::CHANGE).expect("a work").subject;
            written.write(&edits);
            let after = written.survey();
            same_house(&after, &advice::worklist::applied(step.change, &house), case.name);
            let told = Outcome { others_fine: Some(false), ..DONE };
            written.write(&[after.works[&work].ended_as(told)]);
            let work = written.survey().works[&work].clone();
            assert_eq!(work.outcome, told);
            let edits = work.put_back(&written.survey(), &written.ledger, Some(false)).expect("facts");
            written.write(&edits.expect("nothing else was written"));
            let back = written.survey();
            same_house(&back, &before, case.name);
            assert_eq!(back.works[&work.id].outcome.end, OutcomeKind::PutBack);
            let half = back.parts.keys().chain(back.runs.keys()).chain(back.rooms.keys());
            for subject in half.copied() {
                assert_eq!(written.ledger.removal(subject), Removal::Present, "{}", case.name);
            }
        }
    }
}

/// What somebody wrote over it since is not lost to a step put back.
#[test]
fn a_change_written_over_is_not_put_back_behind_the_back() {
    let case = cases().into_iter().find(|case| case.name == "replace-run").expect("a case");
    let mut written = Written::of(&case.there.survey());
    let house = written.survey();
    let to = houses::part_id(&house, "O2");
    let edits = ChangeKind::ReplaceRun { to }
        .done(
            &house,
            &advice::worklist::applied(ChangeKind::ReplaceRun { to }, &house),
            &written.ledger,
            DONE,
        )
        .expect("facts");
    written.write(&edits);
    // Somebody read the new cable's jacket.
    let run = house.wiring.feed(to).and_then(|feed| feed.run).expect("a run");
    written.write(&[field::run::CABLE.set(run, &CableKind::Seven)]);
    let survey = written.survey();
    let work = survey.works.values().next().expect("a work");
    assert_eq!(work.put_back(&survey, &written.ledger, None).expect("facts"), None);
}

/// A change that could not be made leaves the house as it is, and is not proposed again.
#[test]
fn what_could_not_be_done_is_not_proposed_again() {
    for case in cases() {
        let house = case.there.survey();
        for end in [OutcomeKind::CouldNot, OutcomeKind::PutBack] {
            let mut written = Written::of(&house);
            let before = written.survey();
            let found = list(&before);
            let step = found.steps.iter().find(|step| name(step) == case.name).expect("a case");
            if step.before != before {
                continue;
            }
            written.write(&step.change.ended(Outcome { end, others_fine: Some(false) }));
            let after = written.survey();
            same_house(&after, &before, case.name);
            assert_eq!(after.works.len(), before.works.len() + 1);
            let again = list(&after);
            assert!(again.steps.iter().all(|other| other.change != step.change), "{}", case.name);
        }
    }
}

#[test]
fn a_watched_work_list_tells_how_far_it_is_and_is_the_same() {
    let house = cases().remove(3).there.survey();
    let mut told = Vec::new();
    let watched = worklist_watched(&house, &quick(), &mut |share| {
        told.push(share);
        true
    })
    .expect("a sound survey");
    assert_eq!(watched, list(&house));
    assert!(told.len() > 2 && told.windows(2).all(|pair| pair[0] <= pair[1]), "{told:?}");
    assert!(told.iter().all(|share| (0.0..=1.0).contains(share)));
}

#[test]
fn a_stopped_work_list_is_none() {
    let house = cases().remove(3).there.survey();
    let mut asked = 0_i32;
    let whole = worklist_watched(&house, &quick(), &mut |_| {
        asked += 1;
        true
    });
    assert!(whole.is_ok());
    for most in 0..asked {
        let mut left = most;
        let stopped = worklist_watched(&house, &quick(), &mut |_| {
            left -= 1;
            left >= 0
        });
        assert!(matches!(stopped, Err(AdviceError::Stopped)), "after {most}");
    }
}
