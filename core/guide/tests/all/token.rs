//! Ended by the system and opened again by the token: the same screen comes again, on every screen there is.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use guide::screen::{Block, WayTaken};
use guide::{Deed, Screen};

use crate::person::{Person, says};
use crate::screens_walk::Walk;
use crate::whole_house::guide_at;

/// A screen without what was said about the last deed and how one came to it.
fn without_deed(mut screen: Screen) -> Screen {
    screen.notices.clear();
    screen.way = WayTaken::Same;
    screen
}

/// Ends the guide of a walk and comes back by its token, in a guide of its own.
fn comes_back(walk: &mut Walk) {
    let shown = walk.guide.screen();
    // What goes on beside ends with the app.
    if shown.name == "long-work" {
        return;
    }
    walk.guide.suspend().unwrap();
    let token = walk.guide.token().unwrap();
    assert!(token.len() < 4_000, "{}: {} bytes", shown.name, token.len());
    let home = walk.home().to_owned();
    assert!(!token.contains(&*home.display().to_string()), "{}: {token}", shown.name);
    let mut again = guide_at(&home);
    again.restore(&token).unwrap();
    again.settle_long_work();
    let restored = again.screen();
    assert_eq!(restored.place, shown.place, "{}: {token}", shown.name);
    assert_eq!(without_deed(restored), without_deed(shown), "{token}");
    drop(again);
    walk.guide.resume().unwrap();
    walk.guide.settle_long_work();
}

#[test]
fn every_screen_comes_back_by_its_token() {
    let mut walk = Walk::over_everything();
    walk.tried = Some(comes_back);
    walk.through_everything();
    let shown: BTreeSet<_> = walk.shown.keys().cloned().collect();
    let missing: Vec<_> = guide::screen_names().into_iter().filter(|name| !shown.contains(name)).collect();
    assert!(missing.is_empty(), "not come to: {missing:?}");
}

#[test]
fn what_is_half_typed_outside_any_survey_comes_back() {
    let mut ann = Person::new();
    ann.press("new");
    ann.act(&Deed::Write { key: "name".into(), words: "Mill Hou".into() });
    let token = ann.guide.token().unwrap();
    let mut again = guide_at(ann.home.path());
    again.restore(&token).unwrap();
    says(&again.screen(), "Mill Hou");
}

/// What stands in the field of a new survey's name.
fn name_field(screen: &Screen) -> &str {
    let field = screen.blocks.iter().find_map(|block| match block {
        Block::Writing(writing) => Some(&*writing.text),
        _ => None,
    });
    field.unwrap()
}

#[test]
fn the_half_typed_name_of_a_new_survey_stands_there_again_until_it_is_made() {
    let mut ann = Person::new();
    for leave in [Deed::Back, Deed::Press { key: "out".into() }] {
        ann.press("new");
        ann.write("name", "Mill Hou");
        ann.act(&leave);
        // On another screen that asks for a name it stands not.
        ann.press("device");
        assert_eq!(name_field(&ann.guide.screen()), "");
        ann.press("out");
        ann.press("new");
        assert_eq!(name_field(&ann.guide.screen()), "Mill Hou");
        ann.act(&Deed::Back);
    }
    // Also when the app was ended meanwhile.
    let token = ann.guide.token().unwrap();
    ann.restart();
    ann.guide.restore(&token).unwrap();
    ann.press("new");
    assert_eq!(name_field(&ann.guide.screen()), "Mill Hou");
    ann.press("make");
    ann.leave();
    ann.press("new");
    assert_eq!(name_field(&ann.guide.screen()), "");
}

#[test]
fn a_token_that_cannot_be_used_leads_to_the_surveys() {
    let mut ann = Person::new();
    ann.make("Mill House");
    let good = ann.guide.token().unwrap();
    ann.leave();
    let outside = tempfile::tempdir().unwrap();
    let elsewhere = |way: &str| format!(r#"{{"version":1,"survey":"{way}","outside":"surveys"}}"#);
    let bad = [
        String::new(),
        "half {".into(),
        "[]".into(),
        r#"{"version":2,"survey":"Mill House.legwork"}"#.into(),
        elsewhere("../Mill House.legwork"),
        elsewhere(&outside.path().display().to_string()),
        elsewhere("gone.legwork"),
        elsewhere(""),
        r#"{"version":1,"outside":{"survey":"../elsewhere"}}"#.into(),
        good.replace("Mill House", "Weir House"),
    ];
    for token in bad {
        let mut guide = guide_at(ann.home.path());
        guide.restore(&token).unwrap();
        assert_eq!(guide.screen().name, "surveys", "{token}");
        assert!(guide.screen().notices.is_empty(), "{token}");
        says(&guide.screen(), "Mill House");
    }
    let mut guide = guide_at(ann.home.path());
    guide.restore(&good).unwrap();
    assert_eq!(guide.screen().name, "overview");
}

/// The first survey of Ann's as a file.
fn packed(ann: &mut Person, to: &Path) {
    ann.go("pack");
    ann.file(to);
    assert!(fs::metadata(to).unwrap().len() > 100);
}

#[test]
fn a_file_from_outside_is_looked_into_wherever_one_is_and_after_a_kill() {
    let mut ann = Person::named("Ann");
    ann.make("Mill House");
    let place = tempfile::tempdir().unwrap();
    let file = place.path().join("house.lwk");
    packed(&mut ann, &file);
    // In the middle of her own survey: it is the one that is open, and the file belongs to it.
    ann.guide.receive(&file.display().to_string()).unwrap();
    ann.guide.settle_long_work();
    let screen = ann.on("sent");
    assert!(screen.keys().contains(&"there"), "{:?}", screen.keys());
    let token = ann.guide.token().unwrap();
    let mut again = guide_at(ann.home.path());
    again.restore(&token).unwrap();
    again.settle_long_work();
    assert_eq!(again.screen().keys(), screen.keys());
    drop(again);
    // On a device that has no survey yet, just opened by it.
    let other = tempfile::tempdir().unwrap();
    let mut bob = guide_at(other.path());
    bob.receive(&file.display().to_string()).unwrap();
    bob.settle_long_work();
    assert!(bob.screen().keys().contains(&"take"), "{:?}", bob.screen().keys());
    // Its copy is gone when the app comes back: then it is asked for.
    let token = bob.token().unwrap();
    fs::remove_file(&file).unwrap();
    bob.restore(&token).unwrap();
    bob.settle_long_work();
    assert_eq!(bob.screen().name, "sent");
    assert!(!bob.screen().keys().contains(&"take"));
}

#[test]
fn the_language_of_the_system_may_change_meanwhile() {
    let mut ann = Person::new();
    ann.make("Mill House");
    let english = ann.guide.screen();
    ann.guide.speak(guide::language_of("ar-XB", telling::words::Figures::default()));
    let turned = ann.guide.screen();
    assert!(turned.right_to_left && turned.title != english.title);
    assert_eq!(turned.place, english.place);
    ann.guide.speak(guide::language_of("en-GB", telling::words::Figures::default()));
    assert_eq!(ann.guide.screen(), english);
}
