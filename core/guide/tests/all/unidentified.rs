//! A part of which nobody knew what it is, and what it turns out to be: the same part, with all that hangs on it.

use facts::fact::{AuthorId, SubjectId};
use facts::store::Store;
use guide::Deed;
use house::record::{PartKind, Survey, fold};

use crate::described::{Person, five_outlets};
use crate::homeowner::{Walk, choices, pick, press};

fn survey(walk: &Walk) -> Survey {
    let store = Store::open(&walk.guide.open_folder().unwrap(), AuthorId::random()).unwrap();
    fold(store.ledger(), store.survey_id()).unwrap()
}

fn tagged(house: &Survey, tag: &str) -> SubjectId {
    house
        .parts
        .values()
        .find(|part| part.tag.as_deref() == Some(tag))
        .unwrap_or_else(|| panic!("no {tag}"))
        .id
}

/// A house up to the question what is behind its way in.
fn at_way_in() -> Walk {
    let mut walk = Walk::begun(guide::english);
    let mut person = Person::of(five_outlets());
    while walk.guide.screen().name != "ask-leads-to" {
        for deed in person.answer(&walk, &walk.guide.screen()) {
            walk.act(&deed);
        }
    }
    walk
}

/// Behind the way in something that nobody knows, and a filter at the end of the cable behind that.
fn with_unknown() -> Walk {
    let mut walk = at_way_in();
    walk.act(&pick("leads", &["other"]));
    walk.act(&press("unsure"));
    walk.act(&pick("leads", &["filter-behind-cable"]));
    walk
}

/// Leaves questions for later until one comes.
fn later_until(walk: &mut Walk, name: &str) {
    while walk.guide.screen().name != name {
        let key = if walk.guide.screen().name == "enough" { "next" } else { "later" };
        walk.act(&press(key));
    }
}

#[test]
fn a_ground_block_is_among_what_is_behind_a_way_in() {
    let mut walk = at_way_in();
    walk.act(&pick("leads", &["ground-block"]));
    let screen = walk.guide.screen();
    assert!(screen.name == "ask-leads-to" && screen.title.contains("G1"), "{}", screen.title);
    let options = &choices(&screen).next().unwrap().options;
    assert!(!options.iter().any(|option| option.key == "ground-block"), "there is one already");
    // It is not asked for again: of the questions at the way in it is settled.
    later_until(&mut walk, "ask-joined");
    walk.act(&pick("joined", &["connected"]));
    assert_eq!(walk.guide.screen().name, "ask-entry-filter");
    let house = survey(&walk);
    assert!(house.runs[&house.wiring.feed(tagged(&house, "G1")).unwrap().run.unwrap()].is_jumper());
}

#[test]
fn it_may_be_the_ground_block_that_is_asked_for_later() {
    let mut walk = with_unknown();
    let before = survey(&walk);
    later_until(&mut walk, "ask-ground-block");
    let unknown = tagged(&before, "P1");
    walk.act(&pick("seen", &[&format!("part:{unknown}")]));
    let after = survey(&walk);
    assert_eq!(after.parts[&unknown].kind, PartKind::GroundBlock);
    assert_eq!(after.parts.len(), before.parts.len(), "no second one");
    let filter = tagged(&after, "F1");
    assert_eq!(after.wiring.feed(filter).unwrap().part, unknown);
}

#[test]
fn it_takes_the_place_of_one_that_was_only_said_to_be_there() {
    let mut walk = with_unknown();
    later_until(&mut walk, "ask-ground-block");
    let place = walk.guide.screen().place;
    walk.act(&pick("seen", &["yes"]));
    let two = survey(&walk);
    let unknown = tagged(&two, "P1");
    assert_eq!(two.wiring.feed(unknown).unwrap().part, tagged(&two, "G1"));
    while walk.guide.screen().place != place {
        walk.act(&Deed::Back);
    }
    walk.act(&pick("seen", &[&format!("part:{unknown}")]));
    let one = survey(&walk);
    assert_eq!(one.parts.len() + 1, two.parts.len());
    assert_eq!(one.wiring.feed(unknown).unwrap().part, tagged(&one, "E1"));
    assert_eq!(one.wiring.feed(tagged(&one, "F1")).unwrap().part, unknown);
}

#[test]
fn told_to_be_of_a_kind_it_stays_where_it_is() {
    let mut walk = at_way_in();
    let place = walk.guide.screen().place;
    walk.act(&pick("leads", &["other"]));
    walk.act(&press("unsure"));
    walk.act(&pick("leads", &["filter-behind-cable"]));
    let before = survey(&walk);
    while walk.guide.screen().place != place {
        walk.act(&Deed::Back);
    }
    walk.act(&pick("leads", &["splitter"]));
    let after = survey(&walk);
    let part = tagged(&after, "P1");
    assert_eq!(after.parts[&part].kind, PartKind::Splitter);
    assert_eq!(after.parts.len(), before.parts.len(), "no second one, and nothing came loose");
    assert_eq!(after.wiring.feed(tagged(&after, "F1")).unwrap().part, part);
}
