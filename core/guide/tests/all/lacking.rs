//! Where no room can have a figure yet: nobody says that enough is asked, or that there is nothing to do.

use guide::Screen;
use guide::screen::{Block, PressWeight};
use phrase::Phrase;

use crate::described::{Described, Found, Person, five_outlets};
use crate::homeowner::{Walk, press};

/// Answers until the screen that ends a round, and that screen.
fn to_enough(walk: &mut Walk, person: &mut Person) -> Screen {
    while walk.guide.screen().name != "enough" {
        for deed in person.answer(walk, &walk.guide.screen()) {
            walk.act(&deed);
        }
    }
    walk.guide.screen()
}

/// The keys of the presses that come first.
fn presses(screen: &Screen) -> Vec<String> {
    let pressed = screen.blocks.iter().filter_map(|block| match block {
        Block::Press(press) => Some(press.key.clone()),
        _ => None,
    });
    pressed.collect()
}

fn said(walk: &Walk, screen: &Screen, id: &str) -> bool {
    screen.spoken().join(" ").contains(&walk.language.say(&Phrase::new(id)))
}

#[test]
fn what_is_not_enough_for_any_figure_is_not_called_so_and_asks_for_the_one_thing() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::unsure(five_outlets());
    for round in 1..=2 {
        let enough = to_enough(&mut walk, &mut person);
        assert_eq!(enough.title, walk.word("enough-lacking"), "round {round}");
        assert!(enough.spoken().join(" ").contains(&walk.word("lack-router")), "{:?}", enough.spoken());
        // It was answered by “not sure”: it stands beside the way on, which would else lead in a circle.
        assert_eq!(presses(&enough)[0], "forecast");
        walk.act(&press(&presses(&enough)[1]));
        assert_eq!(walk.guide.screen().name, "ask-router-at", "round {round}");
        walk.act(&guide::Deed::Back);
        assert_eq!(walk.guide.screen().name, "enough");
        walk.act(&press("next"));
    }
}

#[test]
fn an_empty_work_list_says_that_it_cannot_be_told_yet_where_nothing_can() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::unsure(five_outlets());
    to_enough(&mut walk, &mut person);
    walk.act(&press("forecast"));
    assert_eq!(walk.guide.screen().name, "forecast");
    for key in ["overview", "work"] {
        walk.act(&press(key));
    }
    let work = walk.guide.screen();
    assert!(!said(&walk, &work, "answer-nothing-to-do"), "{:?}", work.spoken());
    assert!(work.spoken().join(" ").contains(&walk.word("lack-router")), "{:?}", work.spoken());
}

#[test]
fn a_house_with_a_figure_in_every_room_lacks_nothing() {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(five_outlets());
    let enough = to_enough(&mut walk, &mut person);
    assert_eq!(enough.title, walk.word("enough-forecast"));
    assert_eq!(presses(&enough)[0], "forecast");
    assert!(!presses(&enough).iter().any(|key| key.starts_with("ask")), "{:?}", presses(&enough));
}

/// Asked for an outlet that nobody has come to, and told that there is none, nobody is led there again by the way on.
#[test]
fn the_way_on_leads_in_no_circle() {
    let mut walk = Walk::begun(guide::english);
    let mut house = Described { first: Found::Outlet("office", "modem"), ..five_outlets() };
    house.rooms = &["office", "guest"];
    let mut person = Person::of(house);
    while walk.guide.screen().name != "forecast" {
        let screen = walk.guide.screen();
        let deeds = match screen.name.as_str() {
            "enough" => vec![press("next")],
            _ => person.answer(&walk, &screen),
        };
        for deed in deeds {
            walk.act(&deed);
        }
    }
    let screen = walk.guide.screen();
    let main = screen.blocks.iter().find_map(|block| match block {
        Block::Press(press) if press.weight == PressWeight::Main => Some(press.key.as_str()),
        _ => None,
    });
    assert_eq!(main, Some("findings"), "{:?}", screen.spoken());
}
