//! The whole job at a glance: every stage and how far it is. From here one goes anywhere.

use phrase::{Arg, Phrase};

use super::doors::{field, result, share};
use super::more;
use crate::deed::Deed;
use crate::place::{Move, Place, Stage};
use crate::question::{how_far, journey, next};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::Scene;
use crate::view::Sketch;

pub(crate) fn show(scene: &Scene<'_>) -> Screen {
    let mut sketch = Sketch::new(scene.language, scene.pending(), &Phrase::new("overview"));
    sketch.words(WordsRole::Lead, &Phrase::new("overview-lead"));
    let legs = journey(scene);
    let rows = Stage::ALL
        .into_iter()
        .map(|stage| {
            let of = legs.iter().filter(|leg| leg.question.stage() == stage).count();
            let done = legs.iter().filter(|leg| leg.question.stage() == stage && leg.answered).count();
            let says = Phrase::new("stage-how-far")
                .with("done", Arg::Count(done as u64))
                .with("of", Arg::Count(of as u64));
            sketch.row(Some(stage.key().into()), &stage.phrase(), Some(&says), None).stage(done, of)
        })
        .collect();
    sketch.rows(&Phrase::new("overview-stages"), rows);
    for (name, doors) in [
        ("overview-results", result::doors(scene)),
        ("overview-field", field::doors(scene)),
        ("overview-share", share::doors(scene)),
    ] {
        more::rows(
            &mut sketch,
            name,
            doors.into_iter().filter(|(key, ..)| !more::is_rare(scene, key)).collect(),
        );
    }
    if !scene.memory.later.is_empty() {
        sketch.press("put-off", &Phrase::new("put-off"), PressWeight::Other);
    }
    sketch.press("more", &Phrase::new("overview-more"), PressWeight::Other);
    if next(scene).is_some() {
        sketch.press("next", &Phrase::new("overview-next"), PressWeight::Main);
    }
    sketch.press("out", &Phrase::new("to-surveys"), PressWeight::Quiet);
    sketch.screen.how_far = Some(how_far(scene));
    sketch.screen
}

pub(crate) fn take(deed: &Deed) -> Move {
    let Some(key) = deed.key() else { return Move::Stay };
    match key {
        "next" => Move::Next,
        "put-off" => Move::Go(Place::PutOff),
        "more" => Move::Go(Place::More),
        "out" => Move::Out,
        key => Stage::ALL
            .into_iter()
            .find(|stage| stage.key() == key)
            .map(Place::Stage)
            .or_else(|| result::door(key))
            .or_else(|| field::door(key))
            .or_else(|| share::door(key))
            .map_or(Move::Stay, Move::Go),
    }
}
