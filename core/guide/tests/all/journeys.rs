//! The homeowner's way through an invented house of three outlets, deed by deed, in every language, and each of its
//! screens as plain text.

use crate::described::answers;
use crate::homeowner::{House, TONGUES, Tongue, Walk, asks};
use crate::plain;

/// The most answers that a homeowner is asked for in a house of three outlets until nothing is open.
const MOST_ANSWERS: usize = 50;

/// Walks from a new survey until no question is open; returns every screen as it was asked, and the answers given.
fn walked(tongue: Tongue) -> (Vec<(String, String)>, usize) {
    let mut walk = Walk::begun(tongue);
    let mut house = House::new();
    let (mut screens, mut given) = (Vec::new(), 0);
    while let screen = walk.guide.screen()
        && asks(&screen)
    {
        screens.push((screen.name.clone(), plain::show(&screen, &walk.language).0));
        for deed in house.answer(&walk, &screen) {
            given += answers(&deed);
            walk.act(&deed);
        }
        assert!(screens.len() < 2 * MOST_ANSWERS, "the questions do not end: {}", screen.name);
    }
    let last = walk.guide.screen();
    screens.push((last.name.clone(), plain::show(&last, &walk.language).0));
    (screens, given)
}

#[test]
fn a_house_of_three_outlets_takes_few_answers_in_every_language() {
    for tongue in TONGUES {
        let (screens, answers) = walked(tongue);
        println!("{answers} answers over {} screens", screens.len());
        assert!(answers <= MOST_ANSWERS, "{answers} answers");
    }
}

#[test]
fn every_question_as_text() {
    let (screens, _) = walked(guide::english);
    // What follows is drawn by chance over the things of the house, whose ids differ each time.
    let questions = screens.split_last().unwrap().1;
    for (step, (name, text)) in questions.iter().enumerate() {
        insta::with_settings!({prepend_module_to_snapshot => false, omit_expression => true}, {
            insta::assert_snapshot!(format!("{:02}-{name}", step + 1), text);
        });
    }
}
