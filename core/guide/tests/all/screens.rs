//! Every screen of the guide as plain text, to be read as one voice; and that none is without.
//!
//! From the surveys and from the overview every key is pressed that only leads on, breadth first; what stands behind a
//! form, a file or a decision is reached by a few deeds. The first screen of each name is kept.

use std::collections::BTreeSet;

use crate::screens_walk::{Do, Walk};

/// What is done from the overview for the screens that no press alone leads to.
const INSIDE: &[&[Do]] = &[
    // A question that is left for later.
    &[Do::Press("cables"), Do::Press("ask:"), Do::Press("later"), Do::Overview, Do::Press("put-off")],
    &[Do::Press("free-here"), Do::Press("at:splitter"), Do::Back],
    // A speed that is not among those offered.
    &[
        Do::Press("more"),
        Do::Press("free-rooms"),
        Do::Row("Office"),
        Do::Press("wish"),
        Do::Press("other-speed"),
    ],
    // An outlet test.
    &[Do::Press("tests"), Do::Press("test:"), Do::Pick("kind", "house")],
    // One change that is done.
    &[Do::Press("work"), Do::Press("step:0"), Do::Press("done"), Do::Pick("fine", "yes"), Do::Overview],
    &[Do::Press("work"), Do::Press("ended:")],
    // Forgetting, as far as its second question.
    &[Do::Press("more"), Do::Press("things"), Do::Row("note"), Do::Press("forget"), Do::Press("forget")],
    // A file that is written.
    &[Do::Press("pack"), Do::File("mill.lwk")],
    // No adapters yet: they are placed after the work.
    &[
        Do::Press("router"),
        Do::Row("adapters"),
        Do::Pick("adapters", "none"),
        Do::Overview,
        Do::Press("placing"),
    ],
];

#[test]
fn every_screen_as_text() {
    let mut walk = Walk::over_everything();
    walk.lead_on_outside();
    walk.lead_on_inside();
    for deeds in INSIDE {
        walk.inside(deeds);
    }
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
