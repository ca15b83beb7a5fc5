//! How many answers the guide asks for, counted as [`crate::described`] says, in three houses and once more where
//! nothing can be told.

use guide::screen::Block;
use guide::{Deed, Screen};

use crate::described::{Described, Person, amplified, answers, five_outlets, three_outlets, which_is_which};
use crate::homeowner::{Walk, press};

/// What a walk through all questions came to.
#[derive(Debug, Default)]
struct Walked {
    /// Answers until enough was asked for a first forecast.
    first: Option<usize>,
    /// Answers until all was asked that may change much.
    worth: Option<usize>,
    /// Answers to the end.
    all: usize,
    /// The names of the questions, in order.
    asked: Vec<String>,
    /// The screens of enough, in order, and the last one.
    told: Vec<Screen>,
}

/// Walks from a new survey until no question is open.
fn walked(mut person: Person) -> Walked {
    let mut walk = Walk::begun(guide::english);
    let mut walked = Walked::default();
    let mut before: Option<(String, u32, u32)> = None;
    loop {
        let screen = walk.guide.screen();
        if let Some(far) = &screen.how_far {
            let part = far.words.split(':').next().unwrap_or_default().to_owned();
            // Within a part the total never jumps: an answer that finds something new brings its own few questions.
            if let Some((last, done, of)) = &before
                && *last == part
            {
                assert!(far.done >= *done && far.of <= of + 4, "{of} -> {}: {}", far.of, screen.title);
                // Nor does it shrink, when it turns out that some of them matter little.
                assert!(far.of >= *of, "{of} -> {}: {}", far.of, screen.title);
            }
            before = Some((part, far.done, far.of));
        }
        match screen.name.as_str() {
            "enough" => {
                if walked.first.is_none() {
                    walked.first = Some(walked.all);
                } else {
                    walked.worth = Some(walked.all);
                }
                walked.told.push(screen);
                walk.act(&press("next"));
            }
            name if name.starts_with("ask-") => {
                // Why it is asked before it is known how much it matters is said once of a kind of question.
                let not_weighed = walk.language.say(&phrase::Phrase::new("reason-not-weighed"));
                let is_said = screen.spoken().contains(&not_weighed.as_str());
                assert!(!is_said || !walked.asked.iter().any(|before| before == name), "{name}");
                walked.asked.push(name.to_owned());
                for deed in person.answer(&walk, &screen) {
                    walked.all += answers(&deed);
                    walk.act(&deed);
                }
                let after = walk.guide.screen();
                assert!(after.notices.is_empty(), "{name}: {:?}", after.notices);
                assert!(walked.asked.len() < 150, "the questions do not end: {:?}", walked.asked);
            }
            _ => {
                walked.told.push(screen);
                return walked;
            }
        }
    }
}

fn counted(name: &str, house: Described) -> Walked {
    let walked = walked(Person::of(house));
    println!("{name}: {:?} {:?} {} {:?}", walked.first, walked.worth, walked.all, walked.asked);
    walked
}

#[test]
fn a_house_of_five_outlets_has_a_first_forecast_after_20_answers_and_all_that_matters_after_45() {
    let walked = counted("five outlets", five_outlets());
    assert!(walked.first.unwrap() <= 20, "{:?}", walked.first);
    assert!(walked.worth.unwrap() <= 45, "{:?}", walked.worth);
    // The kind of all cables was told with the first one: of those left the length alone is taken for granted.
    let good_enough = walked.told[1].spoken().join(" ");
    assert!(good_enough.contains("cable may be") || good_enough.contains("cables may be"), "{good_enough}");
    assert!(!good_enough.contains("of any usual kind"), "{good_enough}");
}

#[test]
fn a_house_of_three_outlets_takes_fewer() {
    let walked = counted("three outlets", three_outlets());
    assert!(walked.first.unwrap() <= 16, "{:?}", walked.first);
    assert!(walked.worth.unwrap() <= 36, "{:?}", walked.worth);
}

#[test]
fn a_house_with_an_amplifier_a_tap_and_parts_without_print_takes_what_it_has() {
    let walked = counted("amplified", amplified());
    assert!(walked.first.unwrap() <= 32, "{:?}", walked.first);
    assert!(walked.worth.unwrap() <= 62, "{:?}", walked.worth);
    // Of every amplifier it is asked whether it lets the network pass.
    assert!(walked.asked.iter().any(|name| name == "ask-by-pass"));
}

/// The house of the fifth trial: 33 lines were typed there until it said “enough”, and no room had a figure.
#[test]
fn who_does_not_know_which_cable_is_which_has_a_figure_for_every_room_after_20_answers() {
    let walked = walked(Person::blind(which_is_which()));
    println!("which is which: {:?} {:?} {} {:?}", walked.first, walked.worth, walked.all, walked.asked);
    assert!(walked.first.unwrap() <= 20, "{:?}", walked.first);
    assert!(walked.worth.unwrap() <= 45, "{:?}", walked.worth);
    let english = guide::english(telling::words::Figures::default());
    let enough = &walked.told[0];
    assert_eq!(enough.title, english.say(&phrase::Phrase::new("enough-forecast")), "{:?}", enough.spoken());
    assert!(!enough.spoken().join(" ").contains("nothing can be told yet"), "{:?}", enough.spoken());
}

#[test]
fn who_is_sure_of_nothing_comes_to_what_can_be_told_all_the_same() {
    let walked = walked(Person::unsure(five_outlets()));
    println!("unsure: {:?} {:?} {} {:?}", walked.first, walked.worth, walked.all, walked.asked);
    let said = |screen: &Screen| screen.spoken().join(" ");
    assert!(walked.all <= 35, "{}", walked.all);
    assert!(said(&walked.told[0]).contains("not sure"), "{}", said(&walked.told[0]));
    // What can be told is told, and why no more.
    let last = walked.told.last().unwrap();
    assert_eq!(last.name, "forecast");
    let why =
        guide::english(telling::words::Figures::default()).say(&phrase::Phrase::new("forecast-no-bridge"));
    assert!(said(last).contains(&why), "{}", said(last));
}

#[test]
fn what_an_answer_may_change_is_one_figure_wherever_it_is_told() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(five_outlets());
    while walk.guide.screen().name != "enough" {
        for deed in person.answer(&walk, &walk.guide.screen()) {
            walk.act(&deed);
        }
    }
    for key in ["forecast", "unknowns"] {
        walk.act(&press(key));
    }
    let rows = walk.guide.screen().blocks.into_iter().filter_map(|block| match block {
        Block::Rows(rows) => Some(rows.rows),
        _ => None,
    });
    // One question may settle several unknowns: the first row of it tells of most.
    let mut told: Vec<(String, String)> = Vec::new();
    for row in rows.flatten().filter(|row| row.remark.contains("Mb/s")) {
        let key = row.key.unwrap();
        if !told.iter().any(|(known, _)| *known == key) {
            told.push((key, row.remark));
        }
    }
    assert!(told.len() > 3, "{told:?}");
    for (key, remark) in told {
        walk.act(&press(&key));
        let screen = walk.guide.screen();
        assert!(screen.spoken().contains(&remark.as_str()), "{remark}: {:?}", screen.spoken());
        walk.act(&Deed::Back);
    }
}

/// Short, ready-made cables between boxes are told with one touch for all of them.
#[test]
fn jumpers_are_asked_about_once() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(amplified());
    let mut said = false;
    for _ in 0..200 {
        let screen = walk.guide.screen();
        match screen.name.as_str() {
            "enough" => walk.act(&press("next")),
            "ask-cable" if screen.keys().contains(&"all-short") => {
                assert!(!said, "asked again: {}", screen.title);
                said = true;
                walk.act(&press("all-short"));
            }
            name if name.starts_with("ask-") => {
                assert!(!said || !screen.keys().contains(&"short"), "asked again: {}", screen.title);
                person.answer(&walk, &screen).iter().for_each(|deed| walk.act(deed));
            }
            _ => break,
        }
    }
    assert!(said, "no house with two such cables");
}
