//! The homeowner's way through an invented house of three outlets, deed by deed, in every language, and each of its
//! screens as plain text.

use crate::homeowner::{House, TONGUES, Tongue, Walk};
use crate::plain;

/// The most answers that a homeowner is asked for in a house of three outlets before there is a forecast.
const MOST_ANSWERS: usize = 60;

/// Walks from a new survey until no question is open; returns every screen as it was asked, and the answers given.
fn walked(tongue: Tongue) -> (Vec<(String, String)>, usize) {
    let mut walk = Walk::begun(tongue);
    let mut house = House::new();
    let (mut screens, mut answers) = (Vec::new(), 0);
    while let screen = walk.guide.screen()
        && screen.name.starts_with("ask-")
    {
        screens.push((screen.name.clone(), plain::show(&screen, &walk.language).0));
        for deed in house.answer(&walk, &screen) {
            let before = walk.guide.screen();
            walk.act(&deed);
            let after = walk.guide.screen();
            // What is only typed or ticked is no answer yet: an answer leads on to another screen.
            answers += usize::from((&before.name, &before.title) != (&after.name, &after.title));
        }
        assert!(screens.len() < 2 * MOST_ANSWERS, "the questions do not end: {}", screen.name);
    }
    let last = walk.guide.screen();
    screens.push((last.name.clone(), plain::show(&last, &walk.language).0));
    (screens, answers)
}

#[test]
fn a_house_of_three_outlets_takes_few_answers_in_every_language() {
    for tongue in TONGUES {
        let (screens, answers) = walked(tongue);
        println!("{answers} answers over {} screens", screens.len());
        assert!(answers <= MOST_ANSWERS, "{answers} answers");
        // Each screen but the last was answered: what is not counted was not asked.
        assert_eq!(answers, screens.len() - 1);
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
