//! The outlet at the router: any room that was named, before its cable is found; and asked again once the modem is.

use guide::Deed;

use crate::described::{Person, five_outlets};
use crate::homeowner::{Walk, choices, pick, press};

/// Answers until a question comes.
fn to_question(walk: &mut Walk, person: &mut Person, name: &str) {
    while walk.guide.screen().name != name {
        let screen = walk.guide.screen();
        let deeds = match screen.name.as_str() {
            "enough" => vec![press("next")],
            _ => person.answer(walk, &screen),
        };
        for deed in deeds {
            walk.act(&deed);
        }
    }
}

/// The words of the options of the only choice.
fn offered(walk: &Walk) -> Vec<String> {
    let screen = walk.guide.screen();
    let options = choices(&screen).flat_map(|choice| choice.options.iter());
    options.map(|option| option.words.to_lowercase()).collect()
}

#[test]
fn every_room_that_was_named_may_have_it_before_any_cable_is_found() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(five_outlets());
    to_question(&mut walk, &mut person, "ask-router-at");
    let offers = offered(&walk);
    for room in five_outlets().rooms {
        let word = walk.word(&format!("room-{room}")).to_lowercase();
        assert!(offers.iter().any(|offer| offer.contains(&word)), "{word}: {offers:?}");
    }
    // Once it is said it is an outlet that was found, and its cable is one of those behind the splitter.
    to_question(&mut walk, &mut person, "ask-outputs");
    let office = walk.word("room-office").to_lowercase();
    let of_office: Vec<_> = offered(&walk).into_iter().filter(|offer| offer.contains(&office)).collect();
    assert!(of_office[0].contains("o1"), "{of_office:?}");
    to_question(&mut walk, &mut person, "ask-adapters");
    walk.act(&pick("adapters", &["none"]));
    // It is traced by that: nobody is asked where it is fed, and every room has a figure.
    let enough = walk.guide.screen();
    assert_eq!(enough.title, walk.word("enough-forecast"), "{:?}", enough.spoken());
}

#[test]
fn an_outlet_that_was_only_named_goes_when_another_is_at_the_router() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(five_outlets());
    to_question(&mut walk, &mut person, "ask-router-at");
    let place = walk.guide.screen().place;
    for _ in 0..3 {
        let screen = walk.guide.screen();
        let choice = choices(&screen).next().unwrap();
        let room = choice.options.iter().find(|option| option.key.starts_with("room:")).unwrap();
        walk.act(&pick(&choice.key, &[&room.key]));
        walk.act(&Deed::Back);
        assert_eq!(walk.guide.screen().place, place);
    }
    let screen = walk.guide.screen();
    let options = &choices(&screen).next().unwrap().options;
    assert_eq!(options.iter().filter(|option| option.key.starts_with("part:")).count(), 1, "{options:?}");
    assert_eq!(options.iter().filter(|option| option.key.starts_with("room:")).count(), 4, "{options:?}");
}

#[test]
fn who_could_not_tell_is_asked_again_once_the_modem_is_found() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(five_outlets());
    to_question(&mut walk, &mut person, "ask-router-at");
    walk.act(&pick("outlet", &["unsure"]));
    to_question(&mut walk, &mut person, "ask-plugged");
    let mut asked = 0;
    while walk.guide.screen().name == "ask-plugged" {
        let screen = walk.guide.screen();
        let office = screen.title.to_lowercase().contains(&walk.word("room-office").to_lowercase());
        let plugged = if office { "modem" } else { "tv" };
        for deed in [pick("plugged", &[plugged]), press("next")] {
            walk.act(&deed);
        }
        if walk.guide.screen().name == "ask-router-at" {
            asked += 1;
            let screen = walk.guide.screen();
            let first = &choices(&screen).next().unwrap().options[0];
            assert!(first.words.contains(&walk.word("room-office")), "{first:?}");
            assert_eq!(first.about, walk.word("router-at-modem"));
            walk.act(&pick("outlet", &[&first.key]));
        }
    }
    assert_eq!(asked, 1);
}
