//! The whole job at a glance: every stage and how far it is. From here one goes anywhere.

use phrase::{Arg, Phrase};

use super::doors::{field, result, share};
use super::more;
use crate::done::Done;
use crate::place::{Key, Move, Place, Stage};
use crate::question::{Onward, how_far, journey, onward};
use crate::screen::{PressWeight, Screen, WordsRole};
use crate::session::SurveySnapshot;
use crate::view::ScreenBuilder;

pub(crate) fn show(snapshot: &SurveySnapshot<'_>) -> Screen {
    let mut builder = ScreenBuilder::new(snapshot.language, snapshot.pending(), &Phrase::new("overview"));
    builder.words(WordsRole::Lead, &Phrase::new("overview-lead"));
    let questions = journey(snapshot);
    let rows = Stage::ALL
        .into_iter()
        .map(|stage| {
            let of = questions.iter().filter(|on_way| on_way.question.stage() == stage).count();
            let done =
                questions.iter().filter(|on_way| on_way.question.stage() == stage && on_way.answered).count();
            let says = Phrase::new("stage-how-far")
                .with("done", Arg::Count(done as u64))
                .with("of", Arg::Count(of as u64));
            builder.row(Some(key_of(stage)), &stage.phrase(), Some(&says), None).stage(done, of)
        })
        .collect();
    builder.rows(&Phrase::new("overview-stages"), rows);
    for (name, doors) in [
        ("overview-results", result::doors(snapshot)),
        ("overview-field", field::doors(snapshot)),
        ("overview-share", share::doors(snapshot)),
    ] {
        more::rows(
            &mut builder,
            name,
            doors.into_iter().filter(|(key, ..)| !more::is_rare(snapshot, key)).collect(),
        );
    }
    if !snapshot.memory.later.is_empty() {
        builder.press(&Key::PutOff, &Phrase::new("put-off"), PressWeight::Other);
    }
    builder.press(&Key::More, &Phrase::new("overview-more"), PressWeight::Other);
    if onward(snapshot) != Onward::Done {
        builder.press(&Key::Next, &Phrase::new("overview-next"), PressWeight::Main);
    }
    builder.press(&Key::Out, &Phrase::new("to-surveys"), PressWeight::Quiet);
    builder.screen.how_far = Some(how_far(snapshot));
    builder.screen
}

/// The key of a stage's row.
fn key_of(stage: Stage) -> Key {
    match stage {
        Stage::House => Key::House,
        Stage::WayIn => Key::WayIn,
        Stage::Splits => Key::Splits,
        Stage::Cables => Key::Cables,
        Stage::Outlets => Key::Outlets,
        Stage::Router => Key::Router,
    }
}

pub(crate) fn take(done: &Done) -> Move {
    let Some(key) = done.pressed() else { return Move::Stay };
    match key {
        Key::Next => Move::Next,
        Key::PutOff => Move::Go(Place::PutOff),
        Key::More => Move::Go(Place::More),
        Key::Out => Move::Out,
        key => Stage::ALL
            .into_iter()
            .find(|stage| key_of(*stage) == *key)
            .map(Place::Stage)
            .or_else(|| result::door(key))
            .or_else(|| field::door(key))
            .or_else(|| share::door(key))
            .map_or(Move::Stay, Move::Go),
    }
}
