//! Every screen of the guide as plain text, to be read as one voice; and that none is without.
//!
//! From the surveys and from the overview every key is pressed that only leads on, breadth first; what stands behind a
//! form, a file or a decision is reached by a few deeds. The first screen of each name is kept.

use std::collections::BTreeSet;
use std::fs;

use crate::screens_walk::{Walk, shells, shells_anew};

#[test]
fn every_screen_as_text() {
    let mut walk = Walk::over_everything();
    walk.keep_home_for_shells();
    walk.through_everything();
    let shown: BTreeSet<_> = walk.shown.keys().cloned().collect();
    for (name, text) in &walk.shown {
        insta::with_settings!({
            prepend_module_to_snapshot => false,
            omit_expression => true,
            snapshot_path => "snapshots/screens",
        }, {
            insta::assert_snapshot!(name.clone(), text);
        });
    }
    assert_ways(&walk);
    // What is traced by what goes dead has an order of work of its own, wherever the method stands: with its supply out an
    // amplifier lets nothing through.
    let traced: Vec<_> = walk.shown.iter().filter(|(_, text)| text.contains("ee what goes dead:")).collect();
    assert!(traced.len() >= 2, "{traced:?}");
    for (name, text) in traced {
        for words in ["leave an amplifier’s own plug in", "With a tone tracer, and before", "thunderstorm"]
        {
            assert!(text.contains(words), "{name} lacks {words}");
        }
        assert!(!text.contains("First pull the mains plugs"), "{name}");
    }
    let missing: Vec<_> = guide::screen_names().into_iter().filter(|name| !shown.contains(name)).collect();
    assert!(missing.is_empty(), "no snapshot of {missing:?}");
}

/// The shells' tests walk the same ways, over the home folder of the run that wrote them: `tests/shells`. Ids are others in
/// every run. `LEGWORK_SHELLS=anew` writes both anew.
fn assert_ways(walk: &Walk) {
    let ways: String = walk.ways.iter().flat_map(|way| [way.as_str(), "\n"]).collect();
    if let Some(shells) = shells_anew() {
        fs::write(shells.join("ways"), &ways).unwrap();
        return;
    }
    let known = fs::read_to_string(shells().join("ways")).unwrap();
    let anew = "write them anew: LEGWORK_SHELLS=anew cargo test -p guide --test all every_screen";
    assert_eq!(without_ids(&known), without_ids(&ways), "{anew}");
}

/// The same with every id (a UUID, RFC 9562) as a star.
fn without_ids(ways: &str) -> String {
    let is_id =
        |word: &str| word.len() == 36 && word.chars().all(|sign| sign == '-' || sign.is_ascii_hexdigit());
    let words = ways.split_inclusive([':', ',', ' ', '\n', '/']).map(|word| {
        let bare = word.trim_end_matches([':', ',', ' ', '\n', '/']);
        if is_id(bare) { format!("*{}", &word[bare.len()..]) } else { word.to_owned() }
    });
    words.collect()
}
