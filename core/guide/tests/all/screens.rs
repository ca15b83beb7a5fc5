//! Every screen of the guide as plain text, to be read as one voice; and that none is without.
//!
//! From the surveys and from the overview every key is pressed that only leads on, breadth first; what stands behind a
//! form, a file or a decision is reached by a few deeds. The first screen of each name is kept.

use std::collections::BTreeSet;

use crate::screens_walk::Walk;

#[test]
fn every_screen_as_text() {
    let mut walk = Walk::over_everything();
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
    let missing: Vec<_> = guide::screen_names().into_iter().filter(|name| !shown.contains(name)).collect();
    assert!(missing.is_empty(), "no snapshot of {missing:?}");
}
