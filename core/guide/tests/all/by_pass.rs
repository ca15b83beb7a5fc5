//! The guide asks whether an amplifier has a by-pass, and what is answered settles what hangs on it.

use guide::Screen;
use house::record::{CableKind, Named, Plugged, Reply};
use houses::{House, good_house, part_id};

use crate::result_house::Walk;

/// Between the splitter and the office, with a gain that is known.
fn house() -> House {
    good_house()
        .amplifier("A1", 1)
        .with(|amplifier| amplifier.rating.gain_db = Some(15.0))
        .from("S1", 2)
        .over(CableKind::Six, 5.0)
        .at("O2")
        .plugged(&[Plugged::Tv])
        .from("A1", 1)
        .wish("Office", 1500.0)
}

fn said(screen: &Screen) -> String {
    screen.spoken().join("\n")
}

fn key(screen: &Screen, begins: &str) -> String {
    let keys = screen.keys();
    let found = keys.iter().find(|key| key.starts_with(begins));
    (*found.unwrap_or_else(|| panic!("{} has no {begins}", screen.name))).to_owned()
}

/// The guide over the house, once this was answered from the list of what is worth going back for.
fn answered(option: &str) -> Walk {
    let mut walk = Walk::of(&house().survey());
    let screen = walk.go("forecast");
    assert!(said(&screen).contains("whether it has a MoCA by-pass"), "{}", said(&screen));
    let asked = walk.press(&key(&screen, "ask:"));
    assert_eq!(asked.name, "ask-by-pass");
    walk.pick("by-pass", option);
    walk
}

fn rating(walk: &Walk) -> (Option<bool>, Option<f64>) {
    let survey = walk.survey();
    let rating = &survey.parts[&part_id(&house().survey(), "A1")].rating;
    (rating.moca_bypass, rating.gain_db)
}

#[test]
fn what_hangs_on_it_is_told_until_somebody_looked() {
    let mut walk = Walk::of(&house().survey());
    let screen = walk.go("forecast");
    assert!(said(&screen).contains("depends on a MoCA by-pass"), "{}", said(&screen));
    let room = walk.press(&key(&screen, "room:"));
    assert!(
        said(&room).contains("It depends on whether A1 (an amplifier) has a MoCA by-pass"),
        "{}",
        said(&room)
    );
    for (option, has) in [("yes", Some(true)), ("no", Some(false))] {
        let mut walk = answered(option);
        // What else was known of it stays.
        assert_eq!(rating(&walk), (has, Some(15.0)));
        let screen = walk.go("forecast");
        assert!(!said(&screen).contains("depends on"), "{option}: {}", said(&screen));
        let found =
            walk.go("findings").keys().iter().any(|key| key.starts_with("finding:amplifier-no-bypass"));
        assert_eq!(found, has == Some(false));
    }
}

#[test]
fn who_could_not_tell_leaves_two_worlds_and_is_not_asked_again() {
    let mut walk = answered("unsure");
    assert_eq!(rating(&walk), (None, Some(15.0)));
    let asked = walk.survey().asked.values().any(|reply| reply == Reply::Unsure.name());
    assert!(asked);
    let screen = walk.go("findings");
    assert!(screen.keys().iter().any(|key| key.starts_with("finding:amplifier-bypass-decides")));
}
