//! What holds at the door whatever somebody does: each deed gives a screen, none is an error, and whenever the system
//! ends the app, the token leads back to the same screen with what was half typed.

use guide::Deed;
use proptest::prelude::*;

use crate::hand::{at, given, press, settled};
use crate::throws::{Throw, throw};
use crate::whole_house;

/// Deeds by chance; after every third one the app is ended and opened again.
fn walk(home: &std::path::Path, throws: &[Throw], begin: impl FnOnce(&door::Door)) {
    let mut door = at(home, None, None);
    begin(&door);
    for (place, throw) in throws.iter().enumerate() {
        let screen = settled(&door);
        assert!(!screen.keys().is_empty() || screen.back, "{}: no way on", screen.name);
        assert!(!screen.title.trim().is_empty(), "{}", screen.name);
        let deed = throw.on(&screen);
        let shown =
            door.act(deed.clone()).unwrap_or_else(|error| panic!("{}: {deed:?}: {error}", screen.name));
        assert!(!shown.name.is_empty());
        let shown = settled(&door);
        for block in &shown.blocks {
            if let guide::screen::Block::Figure(figure) = block {
                let drawn = door.figure(figure.figure.clone()).unwrap();
                assert!(drawn.is_some_and(|drawn| !drawn.marks.is_empty()), "{}", figure.figure);
            }
        }
        if place % 3 == 2 {
            let token = if place % 2 == 0 { door.suspend() } else { door.token() }.unwrap();
            drop(door);
            door = at(home, Some(token.clone()), None);
            let again = settled(&door);
            assert_eq!(again.place, shown.place, "after {deed:?}: {token}");
            assert_eq!(given(&again), given(&shown), "{}: after {deed:?}: {token}", shown.name);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 16, max_shrink_iters: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn from_nothing_on(throws in proptest::collection::vec(throw(), 1..40)) {
        let home = tempfile::tempdir().unwrap();
        walk(home.path(), &throws, |_| {});
    }

    #[test]
    fn in_a_new_survey(throws in proptest::collection::vec(throw(), 1..40)) {
        let home = tempfile::tempdir().unwrap();
        walk(home.path(), &throws, |door| {
            press(door, "new");
            door.act(Deed::Write { key: "name".into(), words: "Mill House".into() }).unwrap();
            press(door, "make");
        });
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 6, max_shrink_iters: 20, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn in_a_house_that_has_everything(throws in proptest::collection::vec(throw(), 1..30)) {
        let home = tempfile::tempdir().unwrap();
        whole_house::fill(home.path());
        walk(home.path(), &throws, |door| {
            let screen = settled(door);
            let open = screen.keys().into_iter().find(|key| key.starts_with("open:")).unwrap();
            press(door, open);
        });
    }
}
