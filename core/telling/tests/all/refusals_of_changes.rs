//! What speaks against a change: each reason where it must be given and nowhere else, in words.

use std::collections::BTreeSet;

use house::record::Survey;
use houses::refusal_cases::{Change, cases};
use telling::words::{Figures, Language};

/// The reason given for a case's change in a house, by its message.
fn reason(survey: &Survey, change: Change) -> Option<String> {
    let refusal = advice::worklist::refusal(change(survey), survey)?;
    Some(refusal.why(survey).id.trim_start_matches("refusal-").to_owned())
}

#[test]
fn every_reason_has_a_case() {
    let messages: BTreeSet<_> = include_str!("../../words/en/changes.ftl")
        .lines()
        .filter_map(|line| line.strip_prefix("refusal-")?.split_once(" =").map(|(id, _)| id))
        .collect();
    let covered: BTreeSet<_> = cases().iter().map(|case| case.name).collect();
    assert_eq!(covered, messages);
}

#[test]
fn every_reason_is_given_where_it_must_be_and_not_where_it_must_not() {
    for case in cases() {
        assert_eq!(reason(&case.there.survey(), case.change).as_deref(), Some(case.name));
        assert_ne!(reason(&case.absent.survey(), case.change).as_deref(), Some(case.name));
    }
}

#[test]
fn reasons_are_whole_sentences() {
    let language = Language::english(Figures::default());
    for case in cases() {
        let survey = case.there.survey();
        let refusal = advice::worklist::refusal((case.change)(&survey), &survey).expect("refused");
        let said = language.say(&refusal.why(&survey));
        assert!(said.ends_with('.') && !said.contains(['{', '}']) && !said.starts_with("refusal-"), "{said}");
    }
}
